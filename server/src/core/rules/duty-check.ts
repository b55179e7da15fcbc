/**
 * What the rules about unstated safety duties share: which lines need a duty, whether it is in force there, and the
 * one finding for a recipe, at the first line that lacks it, so that ten sanding lines do not say the same ten times.
 */

import { lookUp } from "../../../../grammar/src/look-up.ts";
import { lowerFirst, t, translated } from "../../../../grammar/src/translate.ts";
import type { Fix, RelatedPlace } from "../findings.ts";
import type { Hazard } from "../knowledge/chemical-schema.ts";
import { chemical, isA } from "../knowledge/chemicals.ts";
import { negates } from "../knowledge/denials.ts";
import {
  alternatives,
  type BroughtDuty,
  type DutyWord,
  dutyByWord,
  materialDuties,
  methodDuties,
  stepDuties,
  TWO_PART_DUTIES,
} from "../knowledge/duties.ts";
import { vapourCanIgnite } from "../knowledge/flammable.ts";
import { labelSays } from "../knowledge/label-words.ts";
import { holdsHazard, mentionsOf } from "../knowledge/named-chemicals.ts";
import { clausesOf } from "../knowledge/text-words.ts";
import type { Material } from "../model/model.ts";
import { onceFor } from "../once.ts";
import { type Place, placeKey } from "../place.ts";
import { sentence, withoutFullStop } from "../sentence.ts";
import type { Action, LayerAction, MaterialUse, StepAction } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import type { Moment } from "../surface/state.ts";
import { mentionsOfLine } from "./chemical-uses.ts";
import { MISSING_DUTIES } from "./group-missing-duties.ts";
import type { Report, RuleChecks, RunContext } from "./rule.ts";
import { textOf } from "./spoken-words.ts";
import { notStated, related, undertakeDuties, useName } from "./texts.ts";
import { isTwoPart, needsSuppliedAir } from "./two-part.ts";
import { saysSandedWet } from "./work-words.ts";

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
  action.duties.has(duty) || alternatives(duty).some((word) => action.duties.has(word));

type Why = (run: SurfaceRun) => string;

/** The check of a rule for one duty; `why` is the sentence on what it matters for. */
export const dutyChecks = (
  duty: DutyWord,
  why: Why,
  needOf: NeedOf = (moment) => needFor(moment.action, duty),
): RuleChecks => ({ onRun: (ctx) => checkDuty(ctx, duty, why, needOf) });

function checkDuty({ run, report }: RunContext, duty: DutyWord, why: Why, needOf: NeedOf): void {
  // Whoever follows this recipe may state the duty; the runs of the others look in here.
  if (run.followed) return;
  // In the open air nobody has to move it.
  if (duty === "ventilate" && run.shop?.outdoors) return;
  for (const moments of byAppliedRecipe(run)) {
    const lacking: { readonly action: Action; readonly need: Need }[] = [];
    for (const moment of moments) {
      const need = isStated(moment.action, duty) ? undefined : needOf(moment, run);
      if (need) lacking.push({ action: moment.action, need });
    }
    const first = lacking[0];
    if (!first) continue;
    const lines = new Set(lacking.map(({ action }) => placeKey(action.place)));
    report(first.action, dutyReport(duty, why(run), first.action, first.need, lines.size - 1));
  }
}

/** The moments of a run, cut where one applied recipe ends and the next begins. Every duty asks. */
const byAppliedRecipe = onceFor((run: SurfaceRun): readonly (readonly Moment<Action>[])[] => {
  if (!run.job) return [run.moments];
  const groups = new Map<string, Moment<Action>[]>();
  let [last, group]: [Place | undefined, Moment<Action>[] | undefined] = [undefined, undefined];
  for (const moment of run.moments) {
    const apply = moment.action.frames[0];
    // Lines of one recipe follow each other.
    if (group === undefined || apply !== last) {
      const key = apply ? placeKey(apply) : "";
      group = groups.get(key) ?? [];
      groups.set(key, group);
      last = apply;
    }
    group.push(moment);
  }
  return [...groups.values()];
});

function dutyReport(duty: DutyWord, why: string, action: Action, need: Need, more: number): Report {
  const { doc, defer } = dutyByWord(duty)!;
  const told = translated(doc);
  const reason = `${sentence(need.who)} ${need.reason}`;
  const others =
    more === 0 ? "" : more === 1 ? t` So does 1 more line below.` : t` So do ${more} more lines below.`;
  return {
    headline: notStated(duty),
    why: `${reason}. ${why}${others}`,
    remedy: t`${withoutFullStop(told)}, and state \`safety ${duty}\` above this line; ${lowerFirst(translated(defer))}`,
    brief: told,
    ...(need.cause ? { related: [need.cause] } : {}),
    fixes: [stateDuty(action, duty)],
    // Lead is a matter of its own: nobody may overlook it in a list.
    ...(duty === "lead_safe"
      ? {}
      : { part: { group: MISSING_DUTIES, names: [duty], reason: need.reason, who: sentence(need.who) } }),
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
  if (action.op === "step") return needOfStep(action, duty) ?? needOfWords(action, duty);
  if (action.op === "note") return needOfWords(action, duty);
  return action.op === "layer" ? needOfLayer(action, duty) : undefined;
}

function needOfStep(step: StepAction, duty: DutyWord): Need | undefined {
  const brought = stepDuties(step.verb, step.wet).find((row) => row.duty === duty);
  if (brought && !saysSandedWet(step.what ?? ""))
    return { who: lookUp(VERB_NOUNS, step.verb)?.() ?? step.verb, reason: brought.reason };
  return step.use && needOfMaterial(step.use, duty);
}

const VERB_NOUNS: Readonly<Record<string, () => string>> = {
  sand: () => t`sanding`,
  scuff: () => t`scuffing`,
  distress: () => t`distressing`,
};

function needOfLayer(layer: LayerAction, duty: DutyWord): Need | undefined {
  // Where nothing less than air from outside will do, no cartridge is asked for.
  if (duty === "vapour_respirator" && needsSuppliedAir(layer)) return undefined;
  const spray = methodDuties(layer.method).find((row) => row.duty === duty);
  return (
    needOfMaterial(layer.use, duty) ??
    (layer.hardener && duty !== "wet_rags" ? needOfMaterial(layer.hardener.use, duty) : undefined) ??
    (layer.thinned && VAPOUR.has(duty) ? needOfMaterial(layer.thinned.thinner, duty) : undefined) ??
    needOfTwoParts(layer, duty) ??
    (spray && { who: t`spraying ${useName(layer.use)}`, reason: spray.reason })
  );
}

function needOfTwoParts(layer: LayerAction, duty: DutyWord): Need | undefined {
  const brought = TWO_PART_DUTIES.find((row) => row.duty === duty);
  return brought && isTwoPart(layer) ? { who: useName(layer.use), reason: brought.reason } : undefined;
}

/** All that a thinner adds to what it thins is its vapour. */
const VAPOUR: ReadonlySet<DutyWord> = new Set(["ventilate", "vapour_respirator", "no_ignition"]);

function needOfMaterial(use: MaterialUse, duty: DutyWord): Need | undefined {
  const material = use.material;
  if (!material?.family) return undefined;
  // The label's own word on rags stands above the family's.
  if (duty === "wet_rags" && !hasSelfHeatingRags(material)) return undefined;
  if ((duty === "ventilate" || duty === "gloves") && isNearlyWithoutSolvent(material)) return undefined;
  if (duty === "no_ignition") {
    if (isNearlyWithoutSolvent(material) || isHardToLight(material)) return undefined;
    if (!material.family.duties.includes(duty) && isEasyToLight(material)) return needOfFlash(use, material);
  }
  // What may not be used is to be replaced; no cartridge makes it fit for use.
  if (duty === "vapour_respirator" && holdsHazard(material, "banned solvent")) return undefined;
  const brought =
    materialDuties(material.family).find((row) => row.duty === duty) ??
    (duty === "wet_rags" ? selfHeating() : labelDuty(material, duty));
  const family = material.familyPlace;
  if (!brought) return needOfChemical(use, material, duty);
  return {
    who: useName(use),
    reason: brought.reason,
    ...(family ? { cause: related(family, t`What it is made of is stated here`) } : {}),
  };
}

/** A flash point that the label states above that of category 3 (29 CFR 1910.106(a)(19)). */
const isHardToLight = ({ flash }: Material): boolean =>
  flash?.origin === "stated" && !vapourCanIgnite(flash.value);

/** One that it states within it, whatever the family. */
const isEasyToLight = ({ flash }: Material): boolean =>
  flash?.origin === "stated" && vapourCanIgnite(flash.value);

const needOfFlash = (use: MaterialUse, { flash }: Material): Need => ({
  who: useName(use),
  reason: t`gives off a vapour that a flame or spark can light (flash point ${flash!.value} C)`,
  ...(flash?.place ? { cause: related(flash.place, t`Its flash point is stated here`) } : {}),
});

/** By its `rags` line or its family, or where its label's own words say so and no `rags` line stands against them. */
export const hasSelfHeatingRags = (material: Material): boolean =>
  material.selfHeatingRags.value ||
  (material.selfHeatingRags.origin !== "stated" && labelSays(material, "self-heating rags") !== undefined);

/** What a label warns of in its own words, whatever the family. */
const labelDuty = (material: Material, duty: DutyWord): BroughtDuty | undefined =>
  duty === "no_ignition" && labelSays(material, "flammable") !== undefined ? flammableLabel() : undefined;

const flammableLabel = (): BroughtDuty => ({
  duty: "no_ignition",
  reason: t`is flammable by its label's words`,
  source: "29 CFR 1910.1200 appendix C, statements on flammable liquids (from memory)",
});

// ---------------------------------------------------------------------------------------------------------------
// Chemicals that the words name

/** What a chemical in a material's own words brings beyond its family. */
function needOfChemical(use: MaterialUse, material: Material, duty: DutyWord): Need | undefined {
  // Most materials name none.
  if (mentionsOf(material).length === 0) return undefined;
  const hazards = hazardsFor(duty).filter((hazard) => ANYWHERE.includes(hazard) || isUsedNeat(material));
  const mention = holdsHazard(material, ...hazards);
  if (!mention) return undefined;
  return {
    who: useName(use),
    reason: t`holds ${translated(chemical(mention.chemical).name)}, which ${chemicalReason(duty)}`,
    cause: related(material.namePlace, t`The material whose words name "${mention.words}"`),
  };
}

/** A note or a quoted text that tells to use something that burns, or to blow with compressed air. */
function needOfWords(action: Action, duty: DutyWord): Need | undefined {
  const text = textOf(action);
  if (text === undefined) return undefined;
  if (duty === "eye_protection" && blowsWithAir(text)) return compressedAir();
  const isFuming = duty === "vapour_respirator" && /\bfum(?:e|ing)\b/iu.test(text);
  const hazards = isFuming ? FUMING : hazardsFor(duty);
  if (hazards.length === 0 || !(isFuming || tellsToDo(text))) return undefined;
  const mention = mentionsOfLine(action).find(({ chemical: name }) => isA(chemical(name), ...hazards));
  const reason = isFuming ? t`needs a cartridge that is approved for ammonia` : chemicalReason(duty);
  return mention && { who: t`the ${translated(mention.chemical)} of this line`, reason };
}

/** Oak is fumed in the vapour of strong ammonia. */
const FUMING: readonly Hazard[] = ["ammonia", "formaldehyde"];

/** 29 CFR 1910.242(b): compressed air for cleaning only with protection against what it throws. */
const compressedAir = (): Need => ({
  who: t`compressed air`,
  reason: t`throws dust and grit into the eyes (29 CFR 1910.242)`,
});

function blowsWithAir(text: string): boolean {
  return clausesOf(text).some((clause) => {
    const keys = clause.map(({ key }) => key);
    const isDenied =
      negates(clause.map(({ text: word }) => word).join(" ")) ||
      keys.some((key) => ["instead", "rather"].includes(key));
    const at = keys.findIndex(
      (key, index) =>
        (["compressed", "compressor"].includes(key) && keys[index + 1] === "air") ||
        (key === "air" && ["line", "gun", "hose", "jet", "nozzle"].includes(keys[index + 1] ?? "")),
    );
    return (
      at >= 0 && !isDenied && keys.some((key) => key.startsWith("blow") || key === "dust" || key === "clean")
    );
  });
}

const CORROSIVE: readonly Hazard[] = [
  "strong base",
  "strong acid",
  "ammonia",
  "chlorine bleach",
  "peroxide",
  "organic peroxide",
  "formaldehyde",
];

function hazardsFor(duty: DutyWord): readonly Hazard[] {
  if (duty === "gloves") return [...CORROSIVE, "isocyanate", "skin poison"];
  if (duty === "eye_protection") return [...CORROSIVE, "isocyanate"];
  return duty === "vapour_respirator" ? ["formaldehyde"] : [];
}

/** A trace of ammonia keeps many a waterborne paint; isocyanate and peroxide hardeners harm in any coating. */
const ANYWHERE: readonly Hazard[] = ["isocyanate", "organic peroxide", "formaldehyde"];

const isUsedNeat = ({ family }: Material): boolean =>
  family?.group === "auxiliary" || family?.role === "stain";

function chemicalReason(duty: DutyWord): string {
  if (duty === "vapour_respirator") return t`needs a cartridge that is approved for formaldehyde`;
  return duty === "gloves" ? t`burns or harms the skin` : t`burns or harms the eyes`;
}

const TELLING = new Set(
  (
    "wash wipe clean dip soak brush pour mix add use strip scrub bleach darken rinse swab spray dissolve with " +
    "apply put lay flood paint sponge"
  ).split(" "),
);

export const tellsToDo = (text: string): boolean =>
  clausesOf(text).some((clause) => clause.some(({ key }) => TELLING.has(key)));

/** Oils and varnishes whose label says that hardly anything evaporates; solvents that count as exempt do all the same. */
function isNearlyWithoutSolvent({ family, voc }: Material): boolean {
  const isCarried = family?.carrier === "mineral spirits" && family.role !== "solvent";
  return isCarried && voc?.origin === "stated" && voc.value <= NEARLY_NO_VOC;
}

/** g/L */
const NEARLY_NO_VOC = 10;

const selfHeating = (): BroughtDuty => ({
  duty: "wet_rags",
  reason: t`leaves rags that can heat up and catch fire by themselves`,
  source: "the material's own `rags` line",
});
