/**
 * Reads a `piece` declaration: its surfaces with areas, what they are made of and what is on them.
 */

import { editDistance } from "../../../../grammar/src/closest-word.ts";
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { t } from "../../../../grammar/src/translate.ts";
import type {
  ExistingLayer,
  FieldStatement,
  FieldValue,
  PieceDeclaration,
  ShapeSyntax,
  SurfaceStatement,
  Title,
  Words,
} from "../../../../grammar/src/tree.ts";
import { FIELDS, SHAPES } from "../../../../grammar/src/vocabulary.ts";
import { shapeArea } from "../geometry/shape-area.ts";
import { familiesNear } from "../knowledge/families-near.ts";
import { FAMILY_NAMES, type FamilyName } from "../knowledge/family-names.ts";
import { LEAD_FINDINGS, LEAD_METHODS, type LeadResult, NOT_TESTED } from "../knowledge/lead.ts";
import { familySaid } from "../knowledge/open-families.ts";
import { SPOT_TESTS } from "../knowledge/spot-tests.ts";
import { SUBSTRATES, substrateByName, woodByName, woodNames } from "../knowledge/woods.ts";
import { EXISTING_STATES, MEANT_FOR, WEAR, wordList } from "../knowledge/words.ts";
import { readOutdoors } from "./lower-outdoors.ts";
import {
  COUNT,
  fieldsByWord,
  type Lowering,
  MOISTURE,
  notesIn,
  onlyItem,
  POSITIVE,
  placeOf,
  readAmount,
  readDate,
  readMoney,
  readNumber,
  readWord,
  report,
  reportSeveral,
  stated,
} from "./lowering.ts";
import type { ExistingCoat, Fact, Named, Piece, ShapePart, Substrate, Surface } from "./model.ts";
import { closest, orList } from "./suggest.ts";

const EXISTING_WORDS: readonly string[] = [...wordList(EXISTING_STATES), ...FAMILY_NAMES];

type Form<F extends FieldValue["form"]> = Extract<FieldValue, { form: F }>;

export function lowerPiece(ctx: Lowering, syntax: PieceDeclaration, named: Named): Piece {
  const fields = fieldsByWord(ctx, "piece", syntax.fields, syntax.headSpan);
  const built = fields.get("built")?.[0]?.value as Form<"number"> | undefined;
  const year = readNumber(ctx, built?.number, {
    min: 1000,
    max: 2200,
    whole: true,
    words: "a year such as 1936",
  });
  const useBy = fields.get("meant_for")?.[0]?.value as Form<"words"> | undefined;
  const useByItem = onlyItem(ctx, useBy?.items ?? [], FIELDS.piece.meant_for!.example);
  const useByWord = readWord(ctx, useByItem, wordList(MEANT_FOR), "kind of user");
  const outdoors = readOutdoors(ctx, fields.get("outdoors")?.[0]);
  const surfaces = syntax.fields.filter((f): f is SurfaceStatement => f.kind === "surface");
  const money = (word: string): number | undefined =>
    readMoney(ctx, (fields.get(word)?.[0]?.value as Form<"money"> | undefined)?.amount);
  return {
    ...named,
    kind: "piece",
    built: year === undefined ? undefined : stated(ctx, year, built!.number!.span),
    bought: money("bought"),
    newPrice: money("new_price"),
    sellPrice: money("sell_price"),
    useBy: useByWord ? stated(ctx, useByWord, useByItem!.span) : { value: "adults", origin: "default" },
    surfaces: distinctSurfaces(ctx, surfaces).map((surface) => ({ ...outdoors, ...surface })),
    notes: notesIn(syntax.fields),
  };
}

function distinctSurfaces(ctx: Lowering, statements: readonly SurfaceStatement[]): readonly Surface[] {
  const seen = new Map<string, SurfaceStatement>();
  return statements.flatMap((statement) => {
    const surface = lowerSurface(ctx, statement);
    if (!statement.name) return [];
    const first = seen.get(statement.name.text);
    if (first) {
      ctx.findings.push({
        rule: "duplicate-name",
        span: statement.name.span,
        message: t`This piece already has a surface \`${statement.name.text}\`\nGive this one another name.`,
        related: [{ span: first.name!.span, message: t`The first surface of this name` }],
      });
      return [];
    }
    seen.set(statement.name.text, statement);
    return [surface];
  });
}

function lowerSurface(ctx: Lowering, syntax: SurfaceStatement): Surface {
  const fields = fieldsByWord(ctx, "surface", syntax.fields, syntax.span);
  const shapeLines = fields.get("shape") ?? [];
  const shapes = shapeLines.flatMap((statement) => readShape(ctx, statement));
  const existing = fields.get("existing")?.[0];
  const existingValue = existing?.value as Form<"existing"> | undefined;
  const wear = fields.get("wear")?.[0]?.value as Form<"words"> | undefined;
  const wearItem = onlyItem(ctx, wear?.items ?? [], FIELDS.surface.wear!.example);
  const wearWord = readWord(ctx, wearItem, wordList(WEAR), "degree of wear");
  const left = existingValue?.asLeftBy;
  const headPlace = placeOf(ctx, syntax.span);
  return {
    name: syntax.name?.text ?? "",
    ...(syntax.title ? { title: syntax.title.value } : {}),
    namePlace: syntax.name ? placeOf(ctx, syntax.name.span) : headPlace,
    headPlace,
    docs: syntax.docs,
    shapes,
    areaM2: shapes.reduce((sum, part) => sum + part.areaM2, 0),
    ...(shapeLines.length === 0
      ? { areaGap: "no shape" as const }
      : shapes.length < shapeLines.length
        ? { areaGap: "unreadable shape" as const }
        : {}),
    substrate: readSubstrate(ctx, fields.get("wood")?.[0]),
    existing: (existingValue?.layers ?? []).flatMap((layer) => readExisting(ctx, layer)),
    existingPlace: existing && placeOf(ctx, existing.span),
    asLeftBy: left?.job ? { job: left.job.text, place: placeOf(ctx, left.job.span) } : undefined,
    ...readTests(ctx, fields.get("tested") ?? []),
    lead: readLead(ctx, fields.get("lead")?.[0]),
    ...readOutdoors(ctx, fields.get("outdoors")?.[0]),
    ...readMoisture(ctx, fields.get("moisture")?.[0]),
    wear: wearWord ? stated(ctx, wearWord, wearItem!.span) : { value: "normal", origin: "default" },
    notes: [...statesOf(fields), ...notesIn(syntax.fields)],
  };
}

/** What is said in words of the wood and of the layers on it, as notes. */
function statesOf(fields: ReadonlyMap<string, readonly FieldStatement[]>): readonly string[] {
  const wood = fields.get("wood")?.[0]?.value as Form<"wood"> | undefined;
  const layers = (fields.get("existing")?.[0]?.value as Form<"existing"> | undefined)?.layers ?? [];
  return [
    ...(wood?.wood && wood.state ? [`${wood.wood.text}: ${wood.state.value}`] : []),
    ...layers.flatMap(({ material, state }) => (state ? [`${material.text}: ${state.value}`] : [])),
  ];
}

function readTests(ctx: Lowering, statements: readonly FieldStatement[]): Pick<Surface, "tested"> {
  const tested = statements
    .flatMap(({ value }) => (value as Form<"words">).items)
    .flatMap((item) => {
      if (isOtherResult(item)) {
        const text = item.kind === "title" ? item.value : item.text;
        report(
          ctx,
          "not-counted",
          item.span,
          t`\`${text}\` does not count\nNothing is known here of such a result, so it narrows no unknown finish.\nWrite what else the test showed, such as ${orList(SPOT_TESTS.slice(0, 3).map(({ word }) => `\`${word}\``))}.`,
        );
        return [];
      }
      const word = readWord(ctx, item, wordList(SPOT_TESTS), "result of a spot test");
      return word ? [stated(ctx, word, item.span)] : [];
    });
  return tested.length === 0 ? {} : { tested };
}

/** `lacquer thinner wrinkles`: what a known test showed, in words that say neither of its results. */
function isOtherResult(item: Words | Title): boolean {
  const text = (item.kind === "title" ? item.value : item.text).toLowerCase();
  const tests = SPOT_TESTS.map(({ word }) => word.split(" "));
  return tests.some((words) => {
    const test = words.slice(0, -1).join(" ");
    if (!text.startsWith(`${test} `)) return false;
    const result = text.slice(test.length + 1);
    return !tests.some(
      (known) => known.slice(0, -1).join(" ") === test && editDistance(result, known.at(-1)!, 2) <= 2,
    );
  });
}

function readMoisture(ctx: Lowering, statement: FieldStatement | undefined): Pick<Surface, "moisture"> {
  const value = statement?.value as Form<"quantity"> | undefined;
  const read = readAmount(ctx, value?.to ?? value?.quantity, ["share"], MOISTURE);
  return read ? { moisture: stated(ctx, read.value, statement!.span) } : {};
}

function readShape(ctx: Lowering, statement: FieldStatement): readonly ShapePart[] {
  const shape = (statement.value as Form<"shape">).shape;
  if (!shape) return [];
  const result = shapeArea(shape);
  if (!result.ok) {
    // A shape with too few or too many sizes was reported by the parser.
    for (const problem of result.problems.filter(({ rule }) => rule !== "syntax"))
      report(ctx, problem.rule, problem.span, problem.message);
    return [];
  }
  const { areaM2, edgesM2, working } = result;
  const taken = takenFaces(shape);
  return [
    {
      place: placeOf(ctx, statement.span),
      areaM2,
      working,
      edges: statesThickness(shape),
      ...(edgesM2 === undefined ? {} : { edgesM2 }),
      ...(taken ? { taken } : {}),
      ...(taken && statesThickness(shape) ? { openFaces: shape.name.text } : {}),
    },
  ];
}

/** What is counted of a shape whose faces its line leaves open. */
function takenFaces({ name, options }: ShapeSyntax): string | undefined {
  const said = options.map(({ text }) => text);
  if (
    lookUp(SHAPES, name.text)?.options.includes("one face") &&
    !said.some((word) => word.endsWith("face") || word.endsWith("faces"))
  )
    return t`one face is counted: write \`both faces\` where the other is finished too, or \`one face\` to say so`;
  if (said.includes("open"))
    return t`its open face is length x width, and the inside is counted: write \`open front\` where it is length x height`;
  return undefined;
}

/** Whether a shape that lies flat, such as a panel, has its edges counted in. */
function statesThickness({ name, sizes, options }: ShapeSyntax): boolean {
  const all = lookUp(SHAPES, name.text)?.sizes ?? [];
  return (
    all.at(-1) === "thickness?" &&
    sizes.length === all.length &&
    !options.some(({ text }) => text === "no edges")
  );
}

/** A veneer whose thickness is not stated counts as a thin one: sliced veneer is 0.5 to 0.6 mm, common practice, no source. */
const THIN_VENEER_MM = 0.5;

function readSubstrate(ctx: Lowering, statement: FieldStatement | undefined): Substrate {
  const value = statement?.value as Form<"wood"> | undefined;
  const unknown: Substrate = { name: "", kind: "unknown" };
  if (!value?.wood) return unknown;
  const name = plainWood(value.wood.text);
  const sheet = substrateByName(name);
  const wood = sheet ? undefined : woodByName(name);
  const place = placeOf(ctx, value.wood.span);
  const veneer = readAmount(ctx, value.veneer?.thickness, ["length"], POSITIVE);
  if (sheet) {
    if (value.veneer) {
      report(
        ctx,
        "unknown-word",
        value.veneer.span,
        t`Only a species of wood has a veneer; \`${name}\` has none\nName the species, such as \`wood red oak, veneer 0.6 mm\`.`,
      );
    }
    return { name, kind: sheet.kind, place };
  }
  if (name === "unknown") return { ...unknown, ...(place ? { place } : {}) };
  if (!wood) {
    const near = nearWood(name);
    if (near === undefined) {
      const choices = ["unknown", "red oak", "pine", "plywood", "metal"];
      reportSeveral(ctx, value.wood, { what: "wood", choices, counts: t`an unknown wood` });
    } else {
      report(
        ctx,
        "unknown-word",
        value.wood.span,
        t`Unknown wood or substrate \`${name}\`\nDid you mean \`${near}\`?`,
        { title: t`Change to \`${near}\``, span: value.wood.span, text: near },
      );
    }
    return { ...unknown, ...(place ? { place } : {}) };
  }
  const veneerMm = veneer?.value ?? (value.veneer && !value.veneer.thickness ? THIN_VENEER_MM : undefined);
  return { name, kind: "species", place, ...(veneerMm !== undefined ? { veneerMm } : {}) };
}

/** A wood without what is said of its age and its make: `old pine`, `glued pine boards`. */
function plainWood(written: string): string {
  if (isGround(written)) return written;
  const plain = written
    .toLowerCase()
    .replace(
      /^(?:(?:old|reclaimed|glued|laminated|solid|knotty|steamed|aged|dark|light|pale|swedish|european|american|english|nordic|local|bog|swamp|new|planed|rough|veneered|glulam) )+/u,
      "",
    )
    .replace(/ (?:boards?|planks?|wood|timber|strips|staves|slats|veneered)$/u, "");
  return isGround(plain) ? plain : written;
}

const isGround = (name: string): boolean =>
  substrateByName(name) !== undefined || woodByName(name) !== undefined;

/** A wood of which one letter is another, or two in a long name; no wood is guessed from less. */
function nearWood(name: string): string | undefined {
  const near = closest(name, [...woodNames(), ...SUBSTRATES.keys()]);
  return near !== undefined && editDistance(name, near, 2) <= (name.length > 7 ? 2 : 1) ? near : undefined;
}

/** Nothing where a part of it cannot be read: half a result would be taken for a whole one. */
function readLead(ctx: Lowering, statement: FieldStatement | undefined): Fact<LeadResult> | undefined {
  const value = statement?.value as Form<"lead"> | undefined;
  if (!statement || !value) return undefined;
  const finding = readWord(ctx, value.result, wordList(LEAD_FINDINGS), "result of a lead test");
  const method = readWord(ctx, value.method, wordList(LEAD_METHODS), "method of a lead test");
  const date = value.date && readDate(ctx, value.date.text, value.date.span);
  // Lead that was found counts however it was found; that there is none must be known by method and day.
  if (finding === "found")
    return stated(ctx, { finding, method: method ?? "swab", ...(date ? { date } : {}) }, statement.span);
  if (finding === "none_found" && !(value.method && value.date))
    report(
      ctx,
      "not-counted",
      statement.span,
      t`That no lead was found counts by its method and its day\nUntil both are stated, lead is presumed as before.\nWrite, for example, \`lead none_found by laboratory 2026-11-03\`.`,
    );
  if (!finding || finding === NOT_TESTED || !method || !date) return undefined;
  return stated(ctx, { finding, method, date }, statement.span);
}

/** What covers, and what shows the wood; all else may be either, and paint is the graver. */
const OLD_PAINT = /paint|primer|primed|enamel|undercoat|colou?r|chalk|lime|distemper|filler|powder|gesso/iu;
const OLD_CLEAR = /varnish|lacquer|clear|poly|shellac|\boil|\bwax|glaze|stain|polish|seal|finish|epoxy/iu;

function readExistingWord(ctx: Lowering, written: ExistingLayer["material"]): string | undefined {
  const { text, span } = written;
  if (EXISTING_WORDS.includes(text)) return text;
  const { near, kin } = familiesNear(text);
  const meant = near ? undefined : familySaid(text)?.name;
  if (meant) return meant;
  if (!near && !isGround(text)) {
    const open = OLD_PAINT.test(text)
      ? "unknown paint"
      : OLD_CLEAR.test(text)
        ? "unknown clear"
        : "unknown paint";
    const choices = [...new Set([...kin.slice(0, 3), "unknown clear", "unknown paint"])];
    reportSeveral(ctx, written, { what: "old finish", word: "existing", choices, counts: open });
    return open;
  }
  const may = near ? [near] : [...new Set([...kin.slice(0, 3), "unknown clear", "unknown paint", "bare"])];
  const [fix, ...others] = may.map((word) => ({ title: t`Change to \`${word}\``, span, text: word }));
  ctx.findings.push({
    rule: "unknown-word",
    span,
    message: t`Unknown old finish \`${text}\`\n${near ? t`Did you mean \`${near}\`?` : t`Write a family, or what is sure, such as ${orList(may.map((word) => `\`existing ${word}\``))}.`}`,
    ...(fix ? { fix, others } : {}),
  });
  return undefined;
}

function readExisting(ctx: Lowering, layer: ExistingLayer): readonly ExistingCoat[] {
  const coats = layer.coats ? readNumber(ctx, layer.coats, COUNT) : 1;
  const what = readExistingWord(ctx, layer.material);
  if (!what || what === "bare") return [];
  return [
    {
      what: what as FamilyName | "unknown clear" | "unknown paint",
      coats: coats ?? 1,
      place: placeOf(ctx, layer.span),
    },
  ];
}
