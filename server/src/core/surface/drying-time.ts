/**
 * How long a material needs to a stage: what its label states, what the air of a shop makes of it, and why. The
 * simulation makes it once for what is put on; the plan, the rules on waits, fumes, hints, hover and sheets read it there.
 */

import {
  AIR_NOT_STATED,
  type FactorCause,
  type ShopAir,
  type WaitFactor,
  waitFactor,
} from "../air/wait-factor.ts";
import type { Family } from "../knowledge/family-schema.ts";
import type { Material } from "../model/model.ts";
import { NIGHT_H } from "../schedule/night.ts";

export type Stage = "touch" | "recoat" | "stackable" | "cured";

export interface DryingTime {
  readonly stage: Stage;
  /** Hours in the label's own air. */
  readonly label: number;
  /** The family's figure, because the material's own text states none. */
  readonly isTypical: boolean;
  /** How many times longer it takes in the air of the shop; 1 or more, and 1 without a shop. */
  readonly factor: number;
  /** label × factor. */
  readonly hours: number;
  /** The shop is colder than the label's lowest temperature: the film may never form there, however long it waits. */
  readonly tooCold?: { readonly shopC: number; readonly lowestC: number };
  readonly cause: FactorCause;
}

/** The times of one coat or filling to all stages, in the air that it was put on in; a stage without any is absent. */
export type DryingTimes = Readonly<Partial<Record<Stage, DryingTime>>>;

/** The label's hours to a stage, or the family's; undefined where neither states any. */
export function labelHours(material: Material, stage: Stage): number | undefined {
  if (stage === "touch") return material.touch?.value;
  if (stage === "recoat") return material.recoat?.value.earliest;
  if (stage === "stackable") return material.stackable?.value;
  return material.cure?.value;
}

const STATED_IN = { touch: "touch", recoat: "recoat", stackable: "stackable", cured: "cure" } as const;

/** Whether the material's own text states the time to a stage. */
export const statesTime = (material: Material | undefined, stage: Stage): boolean =>
  material?.[STATED_IN[stage]]?.origin === "stated";

function familyHours(family: Family | undefined, stage: Stage): number | undefined {
  if (stage === "touch") return family?.touch;
  if (stage === "recoat") return family?.recoat?.[0];
  if (stage === "stackable") return undefined;
  return family?.cure;
}

/** A filler that states no time dries overnight at least (common practice, no source). */
const aNight = (time: DryingTime): DryingTime => ({
  ...time,
  label: NIGHT_H,
  factor: 1,
  hours: NIGHT_H,
  cause: { law: "a night" },
});

/** How the air of a shop (undefined: not known) lengthens the times of a material. */
const factorOf = (air: ShopAir | undefined, material: Material | undefined): WaitFactor =>
  material?.family ? waitFactor(material.family.drying, material.rated.value, air) : AIR_NOT_STATED;

/** The times of a material in the air of a shop (undefined: not known). They are worked out once for both. */
export function dryingTimes(air: ShopAir | undefined, material: Material | undefined): DryingTimes {
  if (!material) return {};
  const inAir = KNOWN.get(material) ?? new WeakMap<object, DryingTimes>();
  KNOWN.set(material, inAir);
  const known = inAir.get(air ?? LABEL_AIR) ?? timesOf(material, material.family, factorOf(air, material));
  inAir.set(air ?? LABEL_AIR, known);
  return known;
}

const KNOWN = new WeakMap<Material, WeakMap<object, DryingTimes>>();
/** Stands for air that is not known. */
const LABEL_AIR = {};

/** The times of what was put on without a material that is known, by the label's own air. */
export const familyTimes = (family: Family | undefined): DryingTimes =>
  timesOf(undefined, family, AIR_NOT_STATED);

function timesOf(
  material: Material | undefined,
  family: Family | undefined,
  { factor, cause }: WaitFactor,
): DryingTimes {
  const times: Partial<Record<Stage, DryingTime>> = {};
  const tooCold = coldOf(material, cause);
  for (const stage of STAGES) {
    const label = (material && labelHours(material, stage)) ?? familyHours(family, stage);
    if (label === undefined) continue;
    const isTypical = !statesTime(material, stage);
    const time: DryingTime = {
      stage,
      label,
      isTypical,
      factor,
      hours: label * factor,
      cause,
      ...(tooCold ? { tooCold } : {}),
    };
    const isFiller = family?.role === "filler";
    times[stage] = isFiller && stage === "recoat" && isTypical && time.hours < NIGHT_H ? aNight(time) : time;
  }
  return times;
}

const STAGES: readonly Stage[] = ["touch", "recoat", "stackable", "cured"];

function coldOf(material: Material | undefined, cause: FactorCause): DryingTime["tooCold"] {
  const lowestC = material?.limits?.value.low;
  const shopC = shopTemperature(cause);
  return lowestC !== undefined && shopC !== undefined && shopC < lowestC ? { shopC, lowestC } : undefined;
}

/** The temperature of the shop, where a law reads it. */
function shopTemperature(cause: FactorCause): number | undefined {
  if (cause.law === "water") return cause.shop.temperature;
  return cause.law === "reaction" || cause.law === "solvent" ? cause.shopC : undefined;
}
