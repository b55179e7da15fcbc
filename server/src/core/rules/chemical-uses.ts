/**
 * Where a recipe names chemicals: in the words of the materials that its lines use, in notes, in the quoted words of steps,
 * and at the head of the recipe. Each is told once, where it comes first.
 */

import { t, translated } from "../../../../grammar/src/translate.ts";
import { chemicalsIn, type Mention } from "../knowledge/chemical-words.ts";
import { chemical, isA, type KnownChemical } from "../knowledge/chemicals.ts";
import { mentionsOf } from "../knowledge/named-chemicals.ts";
import type { Material, Named } from "../model/model.ts";
import { forRecentTexts, onceFor } from "../once.ts";
import type { Place } from "../place.ts";
import type { Action, MaterialUse } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { usesOf } from "./material-uses.ts";
import type { Report, RunContext } from "./rule.ts";
import { textOf } from "./spoken-words.ts";
import { related } from "./texts.ts";

/** A chemical that a run names, and who says so. */
export interface NamedChemical {
  readonly row: KnownChemical;
  /** As it is written. */
  readonly words: string;
  /** Whose words they are. */
  readonly by: "material" | "line" | "recipe" | "job" | "piece";
  /** The material whose words they are; absent where the recipe itself says it. */
  readonly use?: MaterialUse & { readonly material: Material };
  /** The line; absent where the head of the recipe says it. */
  readonly action?: Action;
  readonly place: Place;
}

/** All chemicals that a run names as held or to be used, each by each material and on each line once, in order. */
export const namedChemicals = onceFor((run: SurfaceRun): readonly NamedChemical[] =>
  firstOfEach([...atHead(run), ...run.moments.flatMap((it) => onLine(it.action))]),
);

/** What the recipe says of itself, or for a piece the piece and the job on it. */
function atHead({ kind, owner, recipe, job, piece, surface }: SurfaceRun): readonly NamedChemical[] {
  if (kind === "assumed") return recipe ? namedBy(recipe, "recipe") : [];
  const ofJob = job ? namedBy(job, "job", job.notes) : [];
  // Told of where the findings of the run stand; a piece of another file has no place there.
  const place = piece && piece.file === owner.file ? piece.namePlace : job?.namePlace;
  const inOldWork = [
    ...(piece ? [...textsOf(piece), ...piece.notes] : []),
    ...(surface ? [surface.title ?? "", surface.docs, ...surface.notes] : []),
  ]
    .flatMap((text) => namedIn(text))
    .filter(({ row }) => isA(row, "poisonous ingredient", "asbestos"));
  return [...ofJob, ...(place ? inOldWork.map((it) => ({ ...it, by: "piece" as const, place })) : [])];
}

const namedBy = (
  named: Named,
  by: "recipe" | "job",
  notes: readonly string[] = [],
): readonly NamedChemical[] =>
  [...textsOf(named), ...notes]
    .flatMap((text) => namedIn(text))
    .map((it) => ({ ...it, by, place: named.namePlace }));

const textsOf = ({ title = "", docs, name }: Named): readonly string[] => [
  title,
  docs,
  name.replaceAll("_", " "),
];

const namedIn = (text: string) =>
  held(chemicalsIn(text, "recipe")).map((mention) => ({
    row: chemical(mention.chemical),
    words: mention.words,
  }));

function onLine(action: Action): readonly NamedChemical[] {
  const byMaterials = usesOf(action).flatMap((use) => {
    const { material } = use;
    if (!material) return [];
    return held(mentionsOf(material)).map((mention) => ({
      by: "material" as const,
      row: chemical(mention.chemical),
      words: mention.words,
      use: { ...use, material },
      action,
      place: action.place,
    }));
  });
  const byWords = mentionsOfLine(action).map((mention) => ({
    by: "line" as const,
    row: chemical(mention.chemical),
    words: mention.words,
    action,
    place: action.place,
  }));
  return [...byMaterials, ...byWords];
}

const held = (mentions: readonly Mention[]): readonly Mention[] =>
  mentions.filter(({ stance }) => stance === "named");

/** The chemicals that the free text of a line tells to use. What is only tested or looked at is not used. */
export function mentionsOfLine(action: Action): readonly Mention[] {
  const text = textOf(action);
  return !text || (action.op === "step" && LOOKING.has(action.verb)) ? NOTHING : heldByText(text);
}

const heldByText = forRecentTexts((text) => held(chemicalsIn(text, "recipe")));

const NOTHING: readonly Mention[] = [];

const LOOKING: ReadonlySet<string> = new Set(["test", "inspect"]);

function firstOfEach(all: readonly NamedChemical[]): readonly NamedChemical[] {
  const first = new Map<unknown, Map<string, NamedChemical>>();
  for (const each of all) {
    const who = each.use?.material ?? `${each.place.declaration}:${each.place.span.start}`;
    const ofOne = first.get(who) ?? new Map<string, NamedChemical>();
    first.set(who, ofOne);
    if (!ofOne.has(each.row.name)) ofOne.set(each.row.name, each);
  }
  return [...first.values()].flatMap((ofOne) => [...ofOne.values()]);
}

/** Reports each chemical of a sort that the run names, in the words that `textFor` gives. */
export function reportChemicals(
  ctx: RunContext,
  isMeant: (row: KnownChemical, named: NamedChemical) => boolean,
  textFor: (named: NamedChemical) => Omit<Report, "headline" | "related" | "at"> & { headline?: string },
): void {
  for (const named of namedChemicals(ctx.run).filter((each) => isMeant(each.row, each))) {
    const report: Report = { headline: headlineOf(named), ...textFor(named), ...placesOf(named) };
    if (named.action) ctx.report(named.action, report);
    else ctx.reportAt(named.place, report);
  }
}

function headlineOf({ row, use, by, action }: NamedChemical): string {
  const name = translated(row.name);
  if (use) return t`\`${use.name}\` holds ${name}`;
  if (by === "piece") return t`This piece may hold ${name}, by its own words`;
  if (by === "recipe") return t`This recipe names ${name}`;
  if (by === "job") return t`This job names ${name}`;
  return action?.op === "note" ? t`This note says to use ${name}` : t`This step says to use ${name}`;
}

function placesOf({ use, words, action }: NamedChemical): Pick<Report, "at" | "related"> {
  if (!use) return {};
  return {
    ...(action?.place.declaration === use.place.declaration ? { at: use.place } : {}),
    related: [related(use.material.namePlace, t`The material whose words name "${words}"`)],
  };
}
