/**
 * Reads a `material` declaration: stated figures in canonical units, the rest from its family.
 */

import { closestWord } from "../../../../grammar/src/closest-word.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import type {
  FieldStatement,
  FieldValue,
  MaterialDeclaration,
  Quantity,
  Ratio,
  Span,
  Title,
  Words,
} from "../../../../grammar/src/tree.ts";
import { UNIT_ALIASES } from "../../../../grammar/src/units.ts";
import { FIELDS } from "../../../../grammar/src/vocabulary.ts";
import { insteadOfFamily } from "../knowledge/choices.ts";
import { familyByName, family as familyNamed, leavesLayer } from "../knowledge/families.ts";
import { familiesNear } from "../knowledge/families-near.ts";
import type { FamilyName } from "../knowledge/family-names.ts";
import type { Family } from "../knowledge/family-schema.ts";
import { familiesOpen, familySaid, openFamily } from "../knowledge/open-families.ts";
import { COLOURS, RAGS, SHEENS, sheenOfGloss, wordList } from "../knowledge/words.ts";
import { percentText } from "../measure/figures.ts";
import { quantityText, readQuantity } from "../measure/read-quantity.ts";
import { findUnit, litresOfGrams, spreadingRateOfWeight, toCanonical } from "../measure/units.ts";
import {
  DURATION,
  fieldsByWord,
  type Lowering,
  NOT_KNOWN,
  NOT_NEGATIVE,
  notesIn,
  onlyItem,
  POSITIVE,
  placeOf,
  readAmount,
  readMoney,
  readNumber,
  readRange,
  readWord,
  readWorse,
  report,
  SHARE,
  stated,
  THINNING,
} from "./lowering.ts";
import type { ContainerSize, Fact, Material, Named } from "./model.ts";
import { orList } from "./suggest.ts";

/** Air of a label that states none: laboratory air of ASTM D1640, 23 degrees C and 50 % (from memory). */
const RATED_DEFAULT = { temperature: 23, humidity: 50 } as const;

type Fields = ReadonlyMap<string, readonly FieldStatement[]>;
type Form<F extends FieldValue["form"]> = Extract<FieldValue, { form: F }>;

function form<F extends FieldValue["form"]>(
  fields: Fields,
  word: string,
  wanted: F,
): { value: Form<F>; span: Span } | undefined {
  const statement = fields.get(word)?.[0];
  return statement && statement.value.form === wanted
    ? { value: statement.value as Form<F>, span: statement.span }
    : undefined;
}

export function lowerMaterial(ctx: Lowering, syntax: MaterialDeclaration, named: Named): Material {
  const fields = fieldsByWord(ctx, "material", syntax.fields, syntax.headSpan);
  const family = readFamily(ctx, fields);
  const facts = family?.family;
  const density = readFact(ctx, fields, "density", ["density"], POSITIVE)?.fact;
  const gramsPerLitre = density?.value;
  const covers = readCovers(ctx, fields, gramsPerLitre);
  const sold = readSold(ctx, fields, gramsPerLitre);
  const sandable = readFact(ctx, fields, "sandable", ["time"], DURATION)?.fact;
  return {
    ...named,
    docs: [
      named.docs,
      ...notesIn(syntax.fields),
      ...madeUp(fields),
      ...saidOfRecoat(fields),
      // Its words may name a chemical, as those of a title do.
      ...(family?.written === undefined ? [] : [`Called ${family.written}.`]),
    ]
      .filter((text) => text !== "")
      .join("\n\n"),
    kind: "material",
    builtIn: false,
    ...familyPart(ctx, family),
    covers: covers === "not known" ? undefined : (covers ?? fromFamily(facts?.covers)),
    solids: readFact(ctx, fields, "solids", ["share"], SHARE)?.fact ?? fromFamily(facts?.solids),
    touch: readFact(ctx, fields, "touch", ["time"], DURATION)?.fact ?? fromFamily(facts?.touch),
    recoat: readRecoat(ctx, fields) ?? sandableFilling(facts, sandable) ?? familyRecoat(facts),
    stackable: readFact(ctx, fields, "stackable", ["time"], DURATION)?.fact,
    sandable,
    cure: readFact(ctx, fields, "cure", ["time"], DURATION)?.fact ?? fromFamily(facts?.cure),
    rated: readRated(ctx, fields) ?? familyRated(facts),
    limits: readLimits(ctx, fields) ?? fromFamily(facts?.limits),
    voc: readFact(ctx, fields, "voc", ["density"], NOT_NEGATIVE)?.fact ?? fromFamily(facts?.voc),
    sheen: readSheen(ctx, fields),
    colour: readColour(ctx, fields) ?? familyColour(facts),
    thin: readThin(ctx, fields, facts) ?? familyThin(facts),
    sold,
    soldPlace: fieldPlace(ctx, fields, "packs"),
    onHand: readOnHand(ctx, fields, gramsPerLitre),
    onHandPlace: fieldPlace(ctx, fields, "on_hand"),
    flash:
      readFact(ctx, fields, "flash", ["temperature"], { words: "a temperature" })?.fact ??
      fromFamily(facts?.flash),
    potLife: readFact(ctx, fields, "pot_life", ["time"], DURATION)?.fact,
    selfHeatingRags: readRags(ctx, fields) ??
      fromFamily(facts?.ragsSelfHeat) ?? { value: false, origin: "default" },
    mix: readMix(ctx, fields),
    density,
    cut: readFact(ctx, fields, "cut", ["density"], POSITIVE)?.fact,
    batch: readBatch(ctx, fields),
    weighed: [
      ...(covers === "not known" ? (["covers"] as const) : []),
      ...(sold.length === 0 && isSoldByWeight(fields) ? (["packs"] as const) : []),
      ...(sold.length === 0 &&
      form(fields, "packs", "packs")?.value.sizes.some(({ amount }) => isCounted(amount))
        ? (["counted"] as const)
        : []),
    ],
  };
}

/** The material that is always in scope for a family, with the family's figures only. */
export function builtInMaterial(name: string, family: Family): Material {
  const place = { file: "", declaration: "", span: { start: 0, end: 0 } };
  return {
    kind: "material",
    builtIn: true,
    file: "",
    declaration: "",
    name,
    docs: "",
    namePlace: place,
    headPlace: place,
    family,
    familyName: family.name,
    covers: fromFamily(family.covers),
    solids: fromFamily(family.solids),
    touch: fromFamily(family.touch),
    recoat: familyRecoat(family),
    cure: fromFamily(family.cure),
    rated: familyRated(family),
    limits: fromFamily(family.limits),
    voc: fromFamily(family.voc),
    colour: familyColour(family),
    thin: familyThin(family),
    sold: [],
    weighed: [],
    onHand: 0,
    flash: fromFamily(family.flash),
    selfHeatingRags: { value: family.ragsSelfHeat, origin: "family" },
  };
}

const fromFamily = <T>(value: T | undefined): Fact<T> | undefined =>
  value === undefined ? undefined : { value, origin: "family" };

const familyRecoat = (family: Family | undefined): Material["recoat"] =>
  family?.recoat && fromFamily({ earliest: family.recoat[0], latest: family.recoat[1] ?? undefined });

/** A filling is sanded before it is coated, so from then on it can be worked on. */
const sandableFilling = (family: Family | undefined, sandable: Material["sandable"]): Material["recoat"] =>
  sandable && family?.role === "filler"
    ? { ...sandable, value: { earliest: sandable.value, latest: undefined } }
    : undefined;

const familyRated = (family: Family | undefined): Material["rated"] =>
  family ? { value: family.rated, origin: "family" } : { value: RATED_DEFAULT, origin: "default" };

const familyColour = (family: Family | undefined): Material["colour"] =>
  family?.ambering
    ? { value: "amber", origin: "family" }
    : family?.role === "clear"
      ? { value: "clear", origin: "family" }
      : undefined;

const familyThin = (family: Family | undefined): Material["thin"] =>
  family?.thinners[0] === undefined
    ? undefined
    : fromFamily({ thinner: family.thinners[0], upTo: family.thinUpTo });

function fieldPlace(ctx: Lowering, fields: Fields, word: string) {
  const statement = fields.get(word)?.[0];
  return statement && placeOf(ctx, statement.span);
}

/** A family as it is written: of a word that may be several, a row with the graver of them. */
interface FamilyRead {
  readonly family: Family;
  readonly span: Span;
  /** What it is called where that is no family's name. */
  readonly written?: string;
}

function readFamily(ctx: Lowering, fields: Fields): FamilyRead | undefined {
  const field = form(fields, "family", "words");
  if (!field) return undefined;
  const items = field.value.items;
  // `shellac, dewaxed`
  const [first, second, ...more] = items;
  const turned =
    first?.kind === "words" && second?.kind === "words" && more.length === 0
      ? `${second.text} ${first.text}`
      : undefined;
  const said = turned === undefined ? undefined : (familyByName(turned) ?? familySaid(turned));
  if (said) return { family: said, span: { start: first!.span.start, end: second!.span.end } };
  const item = onlyItem(ctx, items, FIELDS.material.family!.example);
  if (!item) return undefined;
  const text = item.kind === "title" ? item.value : item.text;
  const family = item.kind === "words" ? familyByName(text) : undefined;
  if (family) return { family, span: item.span };
  const { near, kin } = familiesNear(text);
  const meant = near ? undefined : familySaid(text);
  if (meant) return { family: meant, span: item.span };
  const readings = near ? undefined : familiesOpen(text);
  // Of one kind alone, which its words may still say more of: `caustic stripper`.
  if (readings?.length === 1) return { family: familyNamed(readings[0]!), span: item.span, written: text };
  if (readings) return readOpenFamily(ctx, text, readings, item.span);
  reportUnknownFamily(ctx, item, near, kin);
  return undefined;
}

/** A word that may be several families is asked about, and counts as all of them where one is a danger. */
function readOpenFamily(
  ctx: Lowering,
  text: string,
  readings: readonly FamilyName[],
  span: Span,
): FamilyRead {
  const [fix, ...others] = readings.map((name) => ({ title: t`Change to \`${name}\``, span, text: name }));
  ctx.findings.push({
    rule: "may-be-several",
    span,
    message: t`\`${text}\` may be several families\nUntil you say which, the cautions of all of them count, and it is planned as ${translated(readings[0]!)}.\nWrite the one on the label: ${orList(readings.map((name) => `\`family ${name}\``))}.`,
    ...(fix ? { fix } : {}),
    ...(others.length > 0 ? { others } : {}),
  });
  return { family: openFamily(readings), span, written: text };
}

function reportUnknownFamily(
  ctx: Lowering,
  item: Words | Title,
  near: FamilyName | undefined,
  kin: readonly FamilyName[],
): void {
  const text = item.kind === "title" ? item.value : item.text;
  const written = item.kind === "title" ? `\`"${text}"\`` : `\`${text}\``;
  const { span } = item;
  const instead = insteadOfFamily(text);
  if (instead !== undefined) {
    report(
      ctx,
      "kept-as-note",
      span,
      t`${written} is no family, so nothing is worked out of it\n${translated(instead)}`,
    );
    return;
  }
  if (near === undefined && kin.length === 0) {
    report(
      ctx,
      "material-not-known",
      span,
      t`${written} is not a family that is known here\n${translated(NOT_KNOWN)}\nCompletion behind \`family\` lists all that are.`,
    );
    return;
  }
  const message = t`Unknown family ${written}\n${near ? t`Did you mean \`${near}\`?` : familiesText(kin)}`;
  const fix = near && { title: t`Change to \`${near}\``, span, text: near };
  ctx.findings.push({ rule: "unknown-word", span, message, ...(fix ? { fix } : {}) });
}

const familiesText = (kin: readonly string[]): string =>
  kin.length > 0
    ? t`Families of its kind are ${orList(kin)}; completion behind \`family\` lists them all.`
    : t`No family has such a name; completion behind \`family\` lists them all.`;

function familyPart(ctx: Lowering, family: FamilyRead | undefined) {
  if (!family) return {};
  return {
    family: family.family,
    familyName: family.written ?? family.family.name,
    familyPlace: placeOf(ctx, family.span),
  };
}

/** Of a range of these the lower end is worse for the work; of all others the higher one. */
const WORSE_IS_LOW: ReadonlySet<string> = new Set(["covers", "solids", "flash", "pot_life"]);

function readFact<D extends Parameters<typeof readAmount>[2][number]>(
  ctx: Lowering,
  fields: Fields,
  word: string,
  expected: readonly D[],
  limits: Parameters<typeof readAmount>[3],
) {
  const field = form(fields, word, "quantity");
  const worse = WORSE_IS_LOW.has(word) ? "low" : "high";
  const amount = field && readWorse(ctx, field.value.quantity, field.value.to, expected, limits, worse);
  return amount && { dimension: amount.dimension, fact: stated(ctx, amount.value, amount.span) };
}

/**
 * Spreading rate in m2/L. By weight (g/m2) it needs the density; without one litres are not known, and what needs them is
 * not computed. Undefined where it is not stated.
 */
function readCovers(
  ctx: Lowering,
  fields: Fields,
  gramsPerLitre: number | undefined,
): Fact<number> | "not known" | undefined {
  const quantity = form(fields, "covers", "quantity")?.value.quantity;
  if (quantity?.kind === "quantity" && readQuantity(quantity, ["time"]).ok) {
    const time = quantityText(quantity);
    report(
      ctx,
      "wrong-unit",
      quantity.span,
      t`\`covers\` wants area per litre, e.g. \`12 m2/L\`; \`${time}\` is a time.\nIf it is the time to the next coat, write \`recoat ${time}\`; until then a typical time counts. The coverage stands on the can.`,
    );
    return undefined;
  }
  const byCan = quantity?.kind === "quantity" ? coversOfCan(ctx, quantity, fields, gramsPerLitre) : undefined;
  if (byCan !== undefined) return byCan;
  const read = readFact(ctx, fields, "covers", ["spreading rate", "weight by area"] as const, POSITIVE);
  if (!read) return undefined;
  if (read.dimension === "spreading rate") return read.fact;
  if (gramsPerLitre === undefined) return "not known";
  return { ...read.fact, value: spreadingRateOfWeight(read.fact.value, gramsPerLitre) };
}

/** `10 ft2/can`: of the one pack that is stated; undefined where the line does not say so, or which pack is meant. */
function coversOfCan(
  ctx: Lowering,
  quantity: Quantity,
  fields: Fields,
  gramsPerLitre: number | undefined,
): Fact<number> | "not known" | undefined {
  const [part, more] = quantity.parts;
  const area = PER_CAN.exec(part?.unit?.text ?? "")?.[1];
  const unit = area === undefined ? undefined : findUnit(area);
  const [pack, other] = form(fields, "packs", "packs")?.value.sizes ?? [];
  if (!part || more || unit?.dimension !== "area" || !pack?.amount || other) return undefined;
  const held = readQuantity(pack.amount, ["volume", "mass"]);
  if (!held.ok || held.amount.value <= 0 || part.number.value <= 0) return undefined;
  if (held.amount.dimension === "mass" && gramsPerLitre === undefined) return "not known";
  const litres =
    held.amount.dimension === "mass" ? litresOfGrams(held.amount.value, gramsPerLitre!) : held.amount.value;
  return stated(ctx, toCanonical(part.number.value, unit) / litres, quantity.span);
}

const PER_CAN = /^(\w+)(?:\/| per )(?:can|tin|bottle|jar|pack|tub|bucket|drum|tube)$/iu;

function readRecoat(ctx: Lowering, fields: Fields): Material["recoat"] {
  const range = readRange(ctx, form(fields, "recoat", "range")?.value.range, "time", DURATION);
  return range && stated(ctx, { earliest: range.from, latest: range.to }, range.span);
}

function readRated(ctx: Lowering, fields: Fields): Material["rated"] | undefined {
  const field = form(fields, "rated", "air");
  if (!field) return undefined;
  const temperature = readRange(ctx, field.value.temperature, "temperature", { words: "a temperature" });
  const { value, to } = field.value.humidity ?? {};
  const humidity = readWorse(ctx, value, to, ["share"], SHARE, "low");
  return stated(
    ctx,
    {
      // Of a range the warm and dry end: the air of the shop is compared with the best that the label counts on.
      temperature: temperature?.to ?? temperature?.from ?? RATED_DEFAULT.temperature,
      humidity: humidity?.value ?? RATED_DEFAULT.humidity,
    },
    field.span,
  );
}

function readLimits(ctx: Lowering, fields: Fields): Material["limits"] {
  const field = form(fields, "limits", "air");
  if (!field) return undefined;
  const temperature = readRange(ctx, field.value.temperature, "temperature", { words: "a temperature" });
  const { value, to } = field.value.humidity ?? {};
  const humidity = readWorse(ctx, value, to, ["share"], SHARE, "high");
  return stated(
    ctx,
    { low: temperature?.from, high: temperature?.to, humidity: humidity?.value },
    field.span,
  );
}

function readSheen(ctx: Lowering, fields: Fields): Material["sheen"] {
  const item = onlyItem(
    ctx,
    form(fields, "sheen", "words")?.value.items ?? [],
    FIELDS.material.sheen!.example,
  );
  const units = item?.kind === "words" && /^\d+(?:\.\d+)?$/u.test(item.text) ? Number(item.text) : undefined;
  if (units !== undefined) return stated<string>(ctx, sheenOfGloss(units), item!.span);
  const sheen = readWord(ctx, item, wordList(SHEENS), "sheen");
  return sheen && stated<string>(ctx, sheen, item!.span);
}

function readColour(ctx: Lowering, fields: Fields): Material["colour"] {
  const item = onlyItem(
    ctx,
    form(fields, "colour", "words")?.value.items ?? [],
    FIELDS.material.colour!.example,
  );
  if (!item) return undefined;
  if (item.kind === "title") {
    if (item.value.startsWith("#") && !/^#([0-9a-f]{3}|[0-9a-f]{6})$/i.test(item.value)) {
      report(
        ctx,
        "bad-number",
        item.span,
        t`A colour by its number has three or six hexadecimal digits, such as "#2b3a42".`,
      );
    }
    return stated(ctx, item.value, item.span);
  }
  const colour = readWord(
    ctx,
    item,
    wordList(COLOURS),
    'colour (a colour of your own stands in quotes, such as "#2b3a42")',
  );
  return colour && stated<string>(ctx, colour, item.span);
}

function readThin(ctx: Lowering, fields: Fields, family: Family | undefined): Material["thin"] {
  const field = form(fields, "thin", "thin");
  if (!field?.value.thinner) return undefined;
  const thinner = isThinnerOfLacquer(field.value.thinner.text, family)
    ? "lacquer thinner"
    : readThinner(ctx, field.value.thinner);
  const { from, upTo: most, ratio } = field.value;
  const upTo = ratio
    ? shareOfRatio(ctx, ratio, family)
    : readWorse(ctx, most, from, ["share"], THINNING, "high")?.value;
  return thinner === undefined ? undefined : stated(ctx, { thinner, upTo }, field.span);
}

/**
 * `1:20` of a cleaner in water: percent of its own volume. No coat takes more thinner than there is of it, but flakes of
 * shellac; there the ratio may have been turned round, and a limit of 2000 % would hide every coat that is too thin.
 */
function shareOfRatio(ctx: Lowering, ratio: Ratio, family: Family | undefined): number | undefined {
  const a = readNumber(ctx, ratio.a, POSITIVE);
  const b = readNumber(ctx, ratio.b, POSITIVE);
  if (a === undefined || b === undefined) return undefined;
  if (b > a && family && leavesLayer(family) && family.binder !== "shellac") {
    const [turned, share] = [`${ratio.b.text}:${ratio.a.text}`, percentText((100 * a) / b)];
    report(
      ctx,
      "bad-number",
      ratio.span,
      t`A coat takes less thinner than there is of it\nWrite \`${turned}\`, parts of this to parts of thinner, or \`up to ${share}\`.`,
      { title: t`Write \`${turned}\``, span: ratio.span, text: turned },
    );
    return undefined;
  }
  return (100 * b) / a;
}

/** What thins a lacquer is simply called thinner, after its kind or its maker: `PU thinner`, `nitro_thinner`. */
const isThinnerOfLacquer = (text: string, family: Family | undefined): boolean =>
  family?.carrier === "lacquer thinner" && /(?:^|[ _-])thinners?$/iu.test(text);

const THINNERS = ["water", "mineral spirits", "alcohol", "acetone", "lacquer thinner"] as const;

/** The built-in materials are named with `_`, and people write those names here as well. */
function readThinner(ctx: Lowering, words: Parameters<typeof readWord>[1] & object): string | undefined {
  const named = words.kind === "words" ? { ...words, text: words.text.replaceAll("_", " ") } : words;
  const isThinner = named.kind === "words" && (THINNERS as readonly string[]).includes(named.text);
  if (named.kind === "words" && familyByName(named.text)) return named.text;
  return readWord(ctx, isThinner ? named : words, THINNERS, "thinner");
}

function readVolume(
  ctx: Lowering,
  quantity: Quantity | undefined,
  gramsPerLitre: number | undefined,
  zeroAllowed: boolean,
): number | undefined {
  const amount = readAmount(
    ctx,
    quantity,
    ["volume", "mass"] as const,
    zeroAllowed ? NOT_NEGATIVE : POSITIVE,
  );
  if (!amount) return undefined;
  if (amount.dimension === "volume") return amount.value;
  if (gramsPerLitre !== undefined) return litresOfGrams(amount.value, gramsPerLitre);
  const ounces = quantity?.parts.find(({ unit }) => unit?.text === "oz")?.unit;
  if (ounces) {
    report(
      ctx,
      "wrong-unit",
      amount.span,
      t`Ounces on a can of liquid are mostly fluid ones\nWrite \`floz\`, or state the \`density\` if it is a weight.`,
      { title: t`Write \`floz\``, span: ounces.span, text: "floz" },
    );
  }
  return undefined;
}

function readSold(
  ctx: Lowering,
  fields: Fields,
  gramsPerLitre: number | undefined,
): readonly ContainerSize[] {
  const sizes = form(fields, "packs", "packs")?.value.sizes ?? [];
  return sizes.flatMap((size) => {
    if (isCounted(size.amount)) return [];
    const litres = readVolume(ctx, size.amount, gramsPerLitre, false);
    const price = readMoney(ctx, size.price);
    if (litres === undefined || price === undefined) return [];
    const label = size.amount!.parts.map((p) => `${p.number.text} ${p.unit?.text ?? ""}`.trim()).join(" ");
    return [{ litres, price, label }];
  });
}

/** Litres in stock, 0 where that is not said; of `1/2 tin` nobody knows how much it holds. */
function readOnHand(ctx: Lowering, fields: Fields, gramsPerLitre: Parameters<typeof readVolume>[2]): number {
  const field = form(fields, "on_hand", "quantity");
  const amount = field?.value.quantity as Quantity | undefined;
  if (field && amount?.kind === "quantity" && isCounted(amount)) {
    report(
      ctx,
      "not-counted",
      field.span,
      t`What is in stock does not count\nIt is told in containers, and nothing says what they hold.\nWrite how much is left, such as \`on_hand 0.3 L\`.`,
    );
    return 0;
  }
  return readVolume(ctx, amount, gramsPerLitre, true) ?? 0;
}

/** `1 set for 14.00`, `1 stick`: what it holds is not said, so what needs litres is not known. */
function isCounted(amount: Quantity | undefined): boolean {
  const [part, ...more] = amount?.parts ?? [];
  if (!part || more.length > 0) return false;
  // Nobody sells so few millilitres, so a small number without a unit is one of containers.
  if (part.unit && COUNTED.has(part.unit.text)) return true;
  return part.number.value <= MOST_CONTAINERS && (part.unit === undefined || isThing(part.unit.text));
}

const MOST_CONTAINERS = 10;

/** `1 book`, `1 seat`: a word of letters that is near to no unit. */
const isThing = (word: string): boolean =>
  /^\p{L}{4,20}$/u.test(word) &&
  findUnit(word) === undefined &&
  closestWord(word, Object.keys(UNIT_ALIASES)) === undefined;

const COUNTED: ReadonlySet<string> = new Set(
  "set sets kit kits can cans tin tins pot pots tub tubs bucket buckets drum drums pail pails piece pieces stick sticks tube tubes bottle bottles jar jars cartridge cartridges bag bags box boxes pack packs sheet sheets roll rolls spray_can spray_cans".split(
    " ",
  ),
);

const isSoldByWeight = (fields: Fields): boolean =>
  form(fields, "packs", "packs")?.value.sizes.some(({ amount }) =>
    amount?.parts.some(({ unit }) => unit !== undefined && findUnit(unit.text)?.dimension === "mass"),
  ) ?? false;

function readRags(ctx: Lowering, fields: Fields): Fact<boolean> | undefined {
  const item = onlyItem(ctx, form(fields, "rags", "words")?.value.items ?? [], FIELDS.material.rags!.example);
  const word = readWord(ctx, item, wordList(RAGS), "kind of rags");
  return word && stated(ctx, true, item!.span);
}

function readBatch(ctx: Lowering, fields: Fields): Fact<string> | undefined {
  const item = onlyItem(
    ctx,
    form(fields, "batch", "words")?.value.items ?? [],
    FIELDS.material.batch!.example,
  );
  return item?.kind === "title" ? stated(ctx, item.value, item.span) : undefined;
}

/** How it is made up, as a sentence of its description. */
function madeUp(fields: Fields): readonly string[] {
  const made = form(fields, "mix", "mix")?.value.made?.value;
  return made === undefined ? [] : [t`Mixed: ${made}.`];
}

/** What the label says of the next coat beside its times. */
function saidOfRecoat(fields: Fields): readonly string[] {
  const said = form(fields, "recoat", "range")?.value.what?.value;
  return said === undefined ? [] : [t`Next coat: ${said}.`];
}

function readMix(ctx: Lowering, fields: Fields): Material["mix"] {
  const field = form(fields, "mix", "mix");
  if (!field?.value.ratio) return undefined;
  const a = readNumber(ctx, field.value.ratio.a, POSITIVE);
  const b = readNumber(ctx, field.value.ratio.b, POSITIVE);
  if (a === undefined || b === undefined) return undefined;
  const by = readMixBasis(ctx, field.value.by);
  return stated(ctx, { a, b, hardener: field.value.hardener?.text, by }, field.span);
}

/** Labels that say nothing mean parts by volume. */
function readMixBasis(ctx: Lowering, word: Form<"mix">["by"]): "volume" | "weight" {
  return readWord(ctx, word, MIX_BASES, "way of measuring") ?? "volume";
}

const MIX_BASES = ["weight", "volume"] as const;
