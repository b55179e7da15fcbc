/**
 * How long a material needs to a stage: what its label states, what the air of a shop makes of it, and why. The
 * simulation makes it once for what is put on; the plan, the rules on waits, fumes, hints, hover and sheets read it there.
 */

import {
  AIR_NOT_STATED,
  type DayAndNightAir,
  type FactorCause,
  ordinaryWaitFactor,
  type WaitFactor,
  waitFactor,
} from "../air/wait-factor.ts";
import type { Family } from "../knowledge/family-schema.ts";
import type { Material, OpeningSpan } from "../model/model.ts";
import { hoursThroughNights } from "../schedule/drying-nights.ts";
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
  /** label × factor. Where the night's air counts, the longest that it takes, begun while the shop is open. */
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
const factorOf = (air: DayAndNightAir | undefined, material: Material | undefined): WaitFactor =>
  material?.family
    ? (material.rated.origin === "stated" ? waitFactor : ordinaryWaitFactor)(
        material.family.drying,
        material.rated.value,
        air,
      )
    : AIR_NOT_STATED;

/**
 * The same hours in air that is worse while the shop is closed: the longest that they take, begun at any time while it is
 * open. What dries within a night by the night's air alone takes the day's time, since by the morning it is dry.
 */
function inBothAirs(
  label: number,
  day: WaitFactor,
  night: WaitFactor | undefined,
  hours: readonly OpeningSpan[] | undefined,
  forWork: boolean,
): { readonly hours: number; readonly factor: number; readonly cause: FactorCause } {
  const byDay = label * day.factor;
  if (night === undefined || night.factor <= day.factor) return { ...day, hours: byDay };
  const most = hoursThroughNights(byDay, label * night.factor, hours, forWork);
  if (most <= byDay) return { ...day, hours: byDay };
  return { hours: most, factor: most / label, cause: { law: "day and night", day, night } };
}

/** The times of a material in the air of a shop (undefined: not known). They are worked out once for both. */
export function dryingTimes(air: DayAndNightAir | undefined, material: Material | undefined): DryingTimes {
  if (!material) return {};
  const inAir = KNOWN.get(material) ?? new WeakMap<object, DryingTimes>();
  KNOWN.set(material, inAir);
  const known = inAir.get(air ?? LABEL_AIR) ?? timesInAir(material, air);
  inAir.set(air ?? LABEL_AIR, known);
  return known;
}

/**
 * The times of what was put on and dried in air that was measured then, which tells nothing of the weeks in which it cures:
 * these count in the air of the shop, but are never shorter than in the measured one.
 */
export function timesInMeasuredAir(
  measured: DayAndNightAir,
  shop: DayAndNightAir | undefined,
  material: Material | undefined,
): DryingTimes {
  const then = dryingTimes(measured, material);
  const later = dryingTimes(shop, material).cured;
  return shop && then.cured && later && later.hours > then.cured.hours ? { ...then, cured: later } : then;
}

function timesInAir(material: Material, air: DayAndNightAir | undefined): DryingTimes {
  const night = air?.night && factorOf(air.night, material);
  return timesOf(material, material.family, (label, stage) =>
    inBothAirs(label, factorOf(air, material), night, air?.night?.hours, stage !== "cured"),
  );
}

const KNOWN = new WeakMap<Material, WeakMap<object, DryingTimes>>();
/** Stands for air that is not known. */
const LABEL_AIR = {};

/** The times of what was put on without a material that is known, by the label's own air. */
export const familyTimes = (family: Family | undefined): DryingTimes =>
  timesOf(undefined, family, (hours) => ({ ...AIR_NOT_STATED, hours }));

function timesOf(
  material: Material | undefined,
  family: Family | undefined,
  inAir: (label: number, stage: Stage) => Pick<DryingTime, "hours" | "factor" | "cause">,
): DryingTimes {
  const times: Partial<Record<Stage, DryingTime>> = {};
  for (const stage of STAGES) {
    const label = (material && labelHours(material, stage)) ?? familyHours(family, stage);
    if (label === undefined) continue;
    const isTypical = !statesTime(material, stage);
    const air = inAir(label, stage);
    const tooCold = coldOf(material, air.cause);
    const time: DryingTime = {
      stage,
      label,
      isTypical,
      ...air,
      ...(tooCold ? { tooCold } : {}),
    };
    // What a hardener sets, sets through; the rest dries from outside, deep fillings slowly.
    const isFiller = family?.role === "filler" && family.drying !== "reacting";
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
  if (cause.law === "day and night") {
    const { day, night } = cause;
    return shopTemperature((night.factor > day.factor ? night : day).cause);
  }
  if (cause.law === "water" || cause.law === "ordinary air") return cause.shop.temperature;
  return cause.law === "reaction" || cause.law === "solvent" ? cause.shopC : undefined;
}
