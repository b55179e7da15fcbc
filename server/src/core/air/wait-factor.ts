/**
 * How many times longer than its label a material takes to dry in the air of the shop, and why.
 *
 * A label's times hold in the label's rated air. There is one law for each way of drying: water leaves in proportion to
 * the vapour-pressure deficit (common practice, no source); oxidation and other reactions halve their speed with every
 * 10 C less (the rule of J. H. van 't Hoff, Études de dynamique chimique, 1884, from memory); solvents leave by their
 * vapour pressure, exp(4700 (1/T − 1/T rated)) (Clausius and Clapeyron; the constant is typical, no source).
 * Warm or dry air never shortens a label's time, so no factor is below 1. Every factor is finite: shop air is taken at
 * 99.9 % humidity at most, where a waterborne film hardly dries at all.
 */
import type { Drying } from "../knowledge/family-schema.ts";
import type { OpeningSpan } from "../model/model.ts";
import { vapourPressureDeficitKPa } from "./psychrometrics.ts";

/** Temperature in C, humidity in percent. */
export interface RatedAir {
  readonly temperature: number;
  readonly humidity: number;
}

export interface ShopAir {
  readonly temperature: number;
  readonly humidity?: number;
}

/** The air of a shop by day and, where it differs then, while it is closed. */
export interface DayAndNightAir extends ShopAir {
  readonly night?: ShopAir & { readonly hours?: readonly OpeningSpan[] };
}

/** What lengthens a label's times, or why nothing does. Temperatures in C, humidity in percent, deficits in kPa. */
export type FactorCause =
  | { readonly law: "air not stated" }
  | { readonly law: "does not dry" }
  /** The label states no air of its own, and the shop's is as ordinary as what it must be meant for. */
  | { readonly law: "ordinary air"; readonly shop: ShopAir }
  /** A night is taken whatever the air, because it is longer than what the air asks for. */
  | { readonly law: "a night" }
  /** What does not dry within a night: by day in the one air, while the shop is closed in the other. */
  | { readonly law: "day and night"; readonly day: WaitFactor; readonly night: WaitFactor }
  | {
      /** Water leaves in proportion to the vapour-pressure deficit. */
      readonly law: "water";
      readonly shop: RatedAir;
      readonly rated: RatedAir;
      readonly shopDeficitKPa: number;
      readonly ratedDeficitKPa: number;
      /** The shop states no humidity, so the label's counts. */
      readonly isHumidityAssumed: boolean;
    }
  | {
      /** Half as quick with every 10 C less. */
      readonly law: "reaction";
      readonly shopC: number;
      readonly ratedC: number;
      /** By how much the shop is colder, within the bounds of the law. */
      readonly colderC: number;
    }
  | {
      /** The solvent leaves by its vapour pressure, which goes by the temperatures in kelvin. */
      readonly law: "solvent";
      readonly shopC: number;
      readonly ratedC: number;
      readonly shopK: number;
      readonly ratedK: number;
    };

export interface WaitFactor {
  /** 1 or more, finite. Multiplies `touch`, the earliest `recoat`, and `cure`. */
  readonly factor: number;
  /** For words see `surface/wait-words.ts`. */
  readonly cause: FactorCause;
}

/** The label's times as they are, where no air of a shop is known. */
export const AIR_NOT_STATED: WaitFactor = { factor: 1, cause: { law: "air not stated" } };

/** The factor on a label's times for a way of drying, the label's air and the shop's air (undefined: not known). */
export function waitFactor(drying: Drying, rated: RatedAir, air: ShopAir | undefined): WaitFactor {
  if (air === undefined) return AIR_NOT_STATED;
  switch (drying) {
    case "waterborne":
      return waterborne(rated, air);
    case "oxidising":
    case "reacting":
      return reacting(rated, air);
    case "solvent release":
      return solventRelease(rated, air);
    case "none":
      return { factor: 1, cause: { law: "does not dry" } };
  }
}

/**
 * Room air that a label means which names none: 19 C or more and 55 % RH or less. Paint is tested at 23 ± 2 C and
 * 50 ± 5 % RH (ISO 3270:1984; ASTM D1640), and European labels are written for 20 C, the other standard atmosphere of
 * ISO 554:1976; from memory, confidence high. One degree
 * less is as near to it as a room thermometer tells (common practice, no source). What is warmer or drier never shortens a time.
 */
const ORDINARY = { coolestC: 19, dampestPercent: 55 } as const;

/** The factor on times of a label that states no air of its own; in ordinary room air it is 1. */
export function ordinaryWaitFactor(drying: Drying, typical: RatedAir, air: ShopAir | undefined): WaitFactor {
  const by = waitFactor(drying, typical, air);
  if (air === undefined || by.factor === 1) return by;
  const isOrdinary = air.temperature >= ORDINARY.coolestC && (air.humidity ?? 0) <= ORDINARY.dampestPercent;
  return isOrdinary ? { factor: 1, cause: { law: "ordinary air", shop: air } } : by;
}

/** Air as damp as this counts as the dampest: nearer to saturation the law runs off to infinity. */
export const DAMPEST_PERCENT = 99.9;
/** Colder or hotter than this no figure of the laws means anything; it also keeps exponents finite. */
const COLDEST_C = -40;
const HOTTEST_C = 100;
/** Kelvin; enthalpy of evaporation over the gas constant of a typical lacquer solvent, as the notation states it. */
export const SOLVENT_K = 4700;

function waterborne(rated: RatedAir, air: ShopAir): WaitFactor {
  const humidity = air.humidity ?? rated.humidity;
  const ratedDeficitKPa = deficit(rated.temperature, Math.min(rated.humidity, DAMPEST_PERCENT));
  const shopDeficitKPa = deficit(air.temperature, Math.min(humidity, DAMPEST_PERCENT));
  return {
    factor: atLeastOne(ratedDeficitKPa / shopDeficitKPa),
    cause: {
      law: "water",
      shop: { temperature: air.temperature, humidity },
      rated,
      shopDeficitKPa,
      ratedDeficitKPa,
      isHumidityAssumed: air.humidity === undefined,
    },
  };
}

function reacting(rated: RatedAir, air: ShopAir): WaitFactor {
  const colderC = clamp(rated.temperature) - clamp(air.temperature);
  return {
    factor: atLeastOne(2 ** (colderC / 10)),
    cause: { law: "reaction", shopC: air.temperature, ratedC: rated.temperature, colderC },
  };
}

function solventRelease(rated: RatedAir, air: ShopAir): WaitFactor {
  const shopK = clamp(air.temperature) + 273.15;
  const ratedK = clamp(rated.temperature) + 273.15;
  return {
    factor: atLeastOne(Math.exp(SOLVENT_K * (1 / shopK - 1 / ratedK))),
    cause: { law: "solvent", shopC: air.temperature, ratedC: rated.temperature, shopK, ratedK },
  };
}

/** A ratio a few bits above 1 is rounding: air like the label's leaves the label's time alone. */
const atLeastOne = (raw: number): number => (raw > 1 + 1e-9 ? raw : 1);

const clamp = (temperatureC: number): number => Math.min(Math.max(temperatureC, COLDEST_C), HOTTEST_C);
const deficit = (temperatureC: number, humidity: number): number =>
  vapourPressureDeficitKPa(clamp(temperatureC), humidity);
