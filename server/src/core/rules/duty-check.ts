/**
 * What the rules about unstated safety duties share: which lines need a duty, whether it is in force there, and the
 * one finding for a recipe, at the first line that lacks it, so that ten sanding lines do not say the same ten times.
 */
import type { Fix, RelatedPlace } from "../findings.ts";
import {
  alternatives,
  type BroughtDuty,
  type DutyWord,
  dutyByWord,
  materialDuties,
  methodDuties,
  stepDuties,
} from "../knowledge/duties.ts";
import { labelSays } from "../knowledge/label-words.ts";
import { namesChemical } from "../knowledge/named-chemicals.ts";
import type { Material } from "../model/model.ts";
import { type Place, placeKey } from "../place.ts";
import { sentence } from "../sentence.ts";
import type { Action, LayerAction, MaterialUse, StepAction } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import type { Moment } from "../surface/state.ts";
import { MISSING_DUTIES } from "./finding-groups.ts";
import type { Report, RuleChecks, RunContext } from "./rule.ts";
import { related, undertakeDuties, useName } from "./texts.ts";

/** Who brings the duty and why, as two parts of one sentence, and the word on the line that names it. */
export interface Need {
  readonly who: string;
  readonly reason: string;
  /** The line that is the cause. */
  readonly cause?: RelatedPlace;
}

export type NeedOf = (moment: Moment<Action>, run: SurfaceRun) => Need | undefined;

/** Whether a duty, or one that does its work as well, is in force at an action. */
export const isStated = (action: Action, duty: DutyWord): boolean =>
  [duty, ...alternatives(duty)].some((word) => action.duties.has(word));

type Why = string | ((run: SurfaceRun) => string);

/** The check of a rule for one duty; `why` is the sentence on what it matters for. */
export const dutyChecks = (
  duty: DutyWord,
  why: Why,
  needOf: NeedOf = (moment) => needFor(moment.action, duty),
): RuleChecks => ({ onRun: (ctx) => checkDuty(ctx, duty, why, needOf) });

function checkDuty({ run, report }: RunContext, duty: DutyWord, why: Why, needOf: NeedOf): void {
  // Whoever follows this recipe may state the duty; the runs of the others look in here.
  if (run.followed) return;
  for (const moments of byAppliedRecipe(run)) {
    const lacking = moments.flatMap((moment) => {
      const need = isStated(moment.action, duty) ? undefined : needOf(moment, run);
      return need ? [{ action: moment.action, need }] : [];
    });
    const first = lacking[0];
    if (!first) continue;
    const lines = new Set(lacking.map(({ action }) => placeKey(action.place)));
    const reason = typeof why === "string" ? why : why(run);
    report(first.action, dutyReport(duty, reason, first.action, first.need, lines.size - 1));
  }
}

/** The moments of a run, cut where one applied recipe ends and the next begins. */
function byAppliedRecipe(run: SurfaceRun): readonly (readonly Moment<Action>[])[] {
  if (run.kind === "assumed") return [run.moments];
  const groups = new Map<string, Moment<Action>[]>();
  for (const moment of run.moments) {
    const apply = moment.action.frames[0];
    const key = apply ? placeKey(apply) : "";
    const group = groups.get(key);
    if (group) group.push(moment);
    else groups.set(key, [moment]);
  }
  return [...groups.values()];
}

function dutyReport(duty: DutyWord, why: string, action: Action, need: Need, more: number): Report {
  const { doc, defer } = dutyByWord(duty)!;
  const reason = `${sentence(need.who)} ${need.reason}`;
  const others = more > 0 ? ` So ${more === 1 ? "does 1 more line" : `do ${more} more lines`} below.` : "";
  return {
    headline: `Nothing above this line states \`${duty}\``,
    why: `${reason}. ${why}${others}`,
    remedy: `${doc.slice(0, -1)}, and state \`safety ${duty}\` above this line; ${defer.charAt(0).toLowerCase()}${defer.slice(1)}`,
    ...(need.cause ? { related: [need.cause] } : {}),
    fixes: [stateDuty(action, duty)],
    // Lead is a matter of its own: nobody may overlook it in a list.
    ...(duty === "lead_safe" ? {} : { part: { group: MISSING_DUTIES, name: duty, reason } }),
  };
}

/** Puts the `safety` line where it reaches everything below: above the coat block or the `follow`, not inside it. */
const stateDuty = (action: Action, duty: DutyWord): Fix =>
  undertakeDuties(statementOfOwnRecipe(action), [duty]);

function statementOfOwnRecipe(action: Action): Place {
  const line = action.frames.find((frame) => frame.declaration.startsWith("recipe ")) ?? action.place;
  const block = action.between?.layer;
  return block && block.file === line.file && block.declaration === line.declaration ? block : line;
}

// ---------------------------------------------------------------------------------------------------------------
// What brings a duty

/** What on this line brings the duty, by the tables; undefined also where the material is not known. */
export function needFor(action: Action, duty: DutyWord): Need | undefined {
  if (action.op === "step") return needOfStep(action, duty);
  return action.op === "layer" ? needOfLayer(action, duty) : undefined;
}

function needOfStep(step: StepAction, duty: DutyWord): Need | undefined {
  const brought = stepDuties(step.verb, step.wet).find((row) => row.duty === duty);
  if (brought) return { who: VERB_NOUNS[step.verb] ?? step.verb, reason: brought.reason };
  return step.use && needOfMaterial(step.use, duty);
}

const VERB_NOUNS: Readonly<Record<string, string>> = {
  sand: "sanding",
  scuff: "scuffing",
  distress: "distressing",
};

function needOfLayer(layer: LayerAction, duty: DutyWord): Need | undefined {
  const spray = methodDuties(layer.method).find((row) => row.duty === duty);
  return (
    needOfMaterial(layer.use, duty) ??
    (layer.hardener && duty !== "wet_rags" ? needOfMaterial(layer.hardener.use, duty) : undefined) ??
    (layer.thinned && VAPOUR.has(duty) ? needOfMaterial(layer.thinned.thinner, duty) : undefined) ??
    (spray && { who: `spraying ${useName(layer.use)}`, reason: spray.reason })
  );
}

/** All that a thinner adds to what it thins is its vapour. */
const VAPOUR: ReadonlySet<DutyWord> = new Set(["ventilate", "vapour_respirator"]);

function needOfMaterial(use: MaterialUse, duty: DutyWord): Need | undefined {
  const material = use.material;
  if (!material?.family) return undefined;
  // The label's own word on rags stands above the family's.
  if (duty === "wet_rags" && !hasSelfHeatingRags(material)) return undefined;
  if (duty === "ventilate" && isNearlyWithoutSolvent(material)) return undefined;
  const brought =
    materialDuties(material.family).find((row) => row.duty === duty) ??
    (duty === "wet_rags" ? SELF_HEATING : (causticDuty(material, duty) ?? labelDuty(material, duty)));
  const family = material.familyPlace;
  return (
    brought && {
      who: useName(use),
      reason: brought.reason,
      ...(family ? { cause: related(family, "What it is made of is stated here") } : {}),
    }
  );
}

/** By its `rags` line or its family, or where its label's own words say so and no `rags` line stands against them. */
export const hasSelfHeatingRags = (material: Material): boolean =>
  material.selfHeatingRags.value ||
  (material.selfHeatingRags.origin !== "stated" && labelSays(material, "self-heating rags") !== undefined);

/** What a label warns of in its own words, whatever the family. */
const labelDuty = (material: Material, duty: DutyWord): BroughtDuty | undefined =>
  duty === "no_ignition" && labelSays(material, "flammable") !== undefined ? FLAMMABLE_LABEL : undefined;

const FLAMMABLE_LABEL: BroughtDuty = {
  duty: "no_ignition",
  reason: "is flammable by its label's words",
  source: "29 CFR 1910.1200 appendix C, statements on flammable liquids (from memory)",
};

/** Cleaners run from mild soap to strong lye: one that its own words call caustic asks for gloves and goggles. */
function causticDuty(material: Material, duty: DutyWord): BroughtDuty | undefined {
  if (material.family?.role !== "cleaner" || !namesChemical(material, "lye")) return undefined;
  return CAUSTIC.find((row) => row.duty === duty);
}

const CAUSTIC: readonly BroughtDuty[] = [
  { duty: "gloves", reason: "is caustic by its own words and burns the skin", source: "29 CFR 1910.138" },
  {
    duty: "eye_protection",
    reason: "is caustic by its own words and burns the eyes",
    source: "29 CFR 1910.133",
  },
];

/** Oils and varnishes whose label says that hardly anything evaporates; solvents that count as exempt do all the same. */
function isNearlyWithoutSolvent({ family, voc }: Material): boolean {
  const isCarried = family?.carrier === "mineral spirits" && family.role !== "solvent";
  return isCarried && voc?.origin === "stated" && voc.value <= NEARLY_NO_VOC;
}

/** g/L */
const NEARLY_NO_VOC = 10;

const SELF_HEATING: BroughtDuty = {
  duty: "wet_rags",
  reason: "leaves rags that can heat up and catch fire by themselves",
  source: "the material's own `rags` line",
};
