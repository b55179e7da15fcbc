/**
 * How long a material needs to a stage: what its label states, what the air of a shop makes of it, and why. The
 * simulation, the plan, the rules on waits, hints, hover and sheets all read this one time.
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

export type Stage = "touch" | "recoat" | "cured";

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

/** What was put on, as far as its times go: a coat, or a filling. */
export interface Drying {
  readonly material?: Material | undefined;
  /** Where the material is not known, and its family is. */
  readonly family?: Family | undefined;
  readonly factor: number;
  readonly factorCause: FactorCause;
}

/** The label's hours to a stage, or the family's; undefined where neither states any. */
export function labelHours(material: Material, stage: Stage): number | undefined {
  if (stage === "touch") return material.touch?.value;
  if (stage === "recoat") return material.recoat?.value.earliest;
  return material.cure?.value;
}

const STATED_IN = { touch: "touch", recoat: "recoat", cured: "cure" } as const;

/** Whether the material's own text states the time to a stage. */
export const statesTime = (material: Material | undefined, stage: Stage): boolean =>
  material?.[STATED_IN[stage]]?.origin === "stated";

function familyHours(family: Family | undefined, stage: Stage): number | undefined {
  if (stage === "touch") return family?.touch;
  if (stage === "recoat") return family?.recoat?.[0];
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
export const factorOf = (air: ShopAir | undefined, material: Material | undefined): WaitFactor =>
  material?.family ? waitFactor(material.family.drying, material.rated.value, air) : AIR_NOT_STATED;

/** The time of a material in the air of a shop; undefined where neither it nor its family states one. */
export function dryingTime(
  air: ShopAir | undefined,
  material: Material,
  stage: Stage,
): DryingTime | undefined {
  const { factor, cause } = factorOf(air, material);
  return dryingTimeOf({ material, factor, factorCause: cause }, stage);
}

/** The time of something that was put on, in the air that it was put on in. */
export function dryingTimeOf(
  { material, family, factor, factorCause }: Drying,
  stage: Stage,
): DryingTime | undefined {
  const label = (material && labelHours(material, stage)) ?? familyHours(family, stage);
  if (label === undefined) return undefined;
  const isTypical = !statesTime(material, stage);
  const tooCold = coldOf(material, factorCause);
  const time: DryingTime = {
    stage,
    label,
    isTypical,
    factor,
    hours: label * factor,
    cause: factorCause,
    ...(tooCold ? { tooCold } : {}),
  };
  const isFiller = (material?.family ?? family)?.role === "filler";
  return isFiller && stage === "recoat" && isTypical && time.hours < NIGHT_H ? aNight(time) : time;
}

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
