/**
 * What lyes, acids and bleaches a surface still holds, line by line: who put it on, and whether it was rinsed, dried or
 * neutralised since.
 */

import type { Hazard } from "../knowledge/chemical-schema.ts";
import type { Mention } from "../knowledge/chemical-words.ts";
import { chemical, isA } from "../knowledge/chemicals.ts";
import { mentionsOf } from "../knowledge/named-chemicals.ts";
import type { Material } from "../model/model.ts";
import { onceFor } from "../once.ts";
import type { Action, MaterialUse, NoteAction, StepAction } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { phrases } from "./spoken-classes.ts";
import { saidOnLine } from "./spoken-words.ts";

export interface Residue {
  readonly mention: Mention;
  readonly hazards: readonly Hazard[];
  readonly use: MaterialUse;
  readonly step: StepAction;
  /** Time has passed since. */
  readonly waited: boolean;
  readonly rinsed: boolean;
  /** Rinsed, and time has passed after the rinse. */
  readonly dried: boolean;
  readonly neutralised: boolean;
  /** It was sanded dry while it was still in the wood. */
  readonly sanded: boolean;
}

const REACTIVE: readonly Hazard[] = [
  "strong base",
  "strong acid",
  "weak acid",
  "ammonia",
  "chlorine bleach",
  "peroxide",
];

/** What a material says it holds that reacts with others. A bleach that only says "bleach" may be of any kind. */
export const reactiveIn = (material: Material): readonly Mention[] =>
  mentionsOf(material).filter(
    ({ chemical: name, stance }) => stance === "named" && isA(chemical(name), ...REACTIVE),
  );

/** The residues that each moment of a run finds. */
export const residuesBefore = onceFor(({ moments }: SurfaceRun): readonly (readonly Residue[])[] => {
  let residues: readonly Residue[] = [];
  return moments.map(({ action }) => {
    const before = residues;
    residues = after(residues, action);
    return before;
  });
});

function after(residues: readonly Residue[], action: Action): readonly Residue[] {
  if (action.op === "layer") return [];
  if (action.op === "wait") return isTime(action) ? residues.map(dry) : residues;
  if (action.op === "note") return neutralisedByWords(residues, action);
  if (action.op !== "step") return residues;
  const { material } = action.use ?? {};
  const put = material ? reactiveIn(material) : [];
  if (isDrySanding(action)) return residues.map((it) => ({ ...it, sanded: it.sanded || !it.rinsed }));
  const left = rinsedBy(residues, action, put);
  // What goes on again counts from there, so that a surface holds no more residues than there are materials.
  const others = put.length === 0 ? left : left.filter((it) => it.use.material !== material);
  return [...others, ...put.map((mention) => residueOf(mention, action))];
}

/** What a step takes off: with something, or by its own words (`clean "rinse twice"`). */
function rinsedBy(
  residues: readonly Residue[],
  action: StepAction,
  put: readonly Mention[],
): readonly Residue[] {
  if (!isRinse(action)) return residues;
  if (action.use) return residues.map((it) => rinse(it, action.use?.material, put));
  if (saidOnLine(action, RINSED) === undefined) return residues;
  return neutralisedByWords(residues, action).map((it) => ({ ...it, rinsed: true }));
}

/** "Wash with vinegar and water to stop the lye": words between two rinses do what no material of the table can. */
function neutralisedByWords(
  residues: readonly Residue[],
  action: NoteAction | StepAction,
): readonly Residue[] {
  const isFor = ({ hazards }: Residue): boolean =>
    (hazards.includes("strong base") && saidOnLine(action, SOURED) !== undefined) ||
    (hazards.includes("strong acid") && saidOnLine(action, SWEETENED) !== undefined);
  return residues.map((it) => (!it.neutralised && isFor(it) ? { ...it, neutralised: true } : it));
}

const RINSED = phrases(
  "rinse|rinsed|water|hose|swill|flood|sluice !no !not !never !without !don't !dry !skip",
);
const WASHED = "wash|rinse|wipe|flood|swab|sponge|brush|neutralise|neutralize|go";
const SOURED = phrases(
  `${WASHED} ... vinegar|acetic_acid|citric_acid`,
  "vinegar ... neutralis*|neutraliz*|stop*|kill*",
);
const SWEETENED = phrases(
  `${WASHED} ... baking_soda|bicarbonate|borax|washing_soda`,
  "baking_soda|bicarbonate|borax ... neutralis*|neutraliz*|stop*|kill*",
);

const isTime = ({ hours, overnight, until }: Extract<Action, { op: "wait" }>): boolean =>
  overnight || until !== undefined || hours === undefined || hours > 0;

const dry = (it: Residue): Residue => ({ ...it, waited: true, dried: it.rinsed });

/** Sanding that throws what is left in the wood into the air. */
export const isDrySanding = ({ verb, wet }: StepAction): boolean =>
  ["sand", "scuff", "scrape"].includes(verb) && !wet;

const isRinse = ({ verb }: StepAction): boolean => verb === "clean" || verb === "dampen";

/** Water, soap and whatever calls itself a rinse take it off; what reacts with it neutralises it, too. */
function rinse(it: Residue, material: Material | undefined, put: readonly Mention[]): Residue {
  const isWatery = material === undefined || ["water", "none"].includes(material.family?.carrier ?? "water");
  if (!isWatery) return it;
  return {
    ...it,
    rinsed: it.rinsed || put.length === 0,
    neutralised: it.neutralised || neutralises(it.hazards, material, put),
  };
}

function neutralises(
  hazards: readonly Hazard[],
  material: Material | undefined,
  put: readonly Mention[],
): boolean {
  if (!material) return false;
  const said = `${material.title ?? ""} ${material.docs} ${material.name}`.toLowerCase();
  if (said.includes("neutrali")) return true;
  const holds = (...wanted: readonly Hazard[]) =>
    [...put, ...mentionsOf(material).filter(({ stance }) => stance === "named")].some(({ chemical: name }) =>
      isA(chemical(name), ...wanted),
    );
  if (hazards.includes("strong base")) return holds("weak acid", "strong acid");
  return hazards.includes("strong acid") && holds("neutralises acid", "ammonia");
}

const residueOf = (mention: Mention, step: StepAction): Residue => ({
  mention,
  hazards: chemical(mention.chemical).hazards,
  use: step.use!,
  step,
  waited: false,
  rinsed: false,
  dried: false,
  neutralised: false,
  sanded: false,
});
