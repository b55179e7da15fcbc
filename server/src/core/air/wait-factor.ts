/**
 * How many times longer than its label a material takes to dry in the air of the shop, and why.
 *
 * A label's times hold in the label's rated air. The language reference, "Air", gives one law for each way of drying:
 * water leaves in proportion to the vapour-pressure deficit; oxidation and other reactions halve their speed with every
 * 10 C less (the common chemist's rule); solvents leave by their vapour pressure, exp(4700 (1/T − 1/T rated)).
 * Warm or dry air never shortens a label's time, so no factor is below 1. Every factor is finite: shop air is taken at
 * 99.9 % humidity at most, where a waterborne film hardly dries at all.
 */
import type { Drying } from "../knowledge/family-schema.ts";
import { formatNumber } from "../measure/format-amount.ts";
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

export interface WaitFactor {
  /** 1 or more, finite. Multiplies `touch`, the earliest `recoat`, and `cure`. */
  readonly factor: number;
  /** A sentence for hover. */
  readonly reason: string;
}

/** The factor on a label's times for a way of drying, the label's air and the shop's air (undefined: not known). */
export function waitFactor(drying: Drying, rated: RatedAir, air: ShopAir | undefined): WaitFactor {
  if (air === undefined)
    return { factor: 1, reason: "The shop's air is not stated, so the label's times stand." };
  switch (drying) {
    case "waterborne":
      return waterborne(rated, air);
    case "oxidising":
    case "reacting":
      return reacting(rated, air);
    case "solvent release":
      return solventRelease(rated, air);
    case "none":
      return { factor: 1, reason: "It does not dry into a film, so the air changes nothing." };
  }
}

/** Air as damp as this counts as the dampest: nearer to saturation the law runs off to infinity. */
const DAMPEST_PERCENT = 99.9;
/** Colder or hotter than this no figure of the laws means anything; it also keeps exponents finite. */
const COLDEST_C = -40;
const HOTTEST_C = 100;
/** Kelvin; enthalpy of evaporation over the gas constant of a typical lacquer solvent, as the notation states it. */
const SOLVENT_K = 4700;

function waterborne(rated: RatedAir, air: ShopAir): WaitFactor {
  const humidity = air.humidity ?? rated.humidity;
  const capped = Math.min(humidity, DAMPEST_PERCENT);
  const ratedDeficit = deficit(rated.temperature, Math.min(rated.humidity, DAMPEST_PERCENT));
  const shopDeficit = deficit(air.temperature, capped);
  const notes = [
    air.humidity === undefined ? " The shop's humidity is not stated; the label's is used." : "",
    humidity > DAMPEST_PERCENT
      ? ` Air at ${percent(humidity)} dries no water; it is reckoned at ${DAMPEST_PERCENT} %.`
      : "",
  ].join("");
  return atLeastOne(
    ratedDeficit / shopDeficit,
    `Water leaves by the vapour-pressure deficit: ${formatNumber(shopDeficit, 3)} kPa at ${airText(air.temperature, humidity)}, ` +
      `${formatNumber(ratedDeficit, 3)} kPa at the label's ${airText(rated.temperature, rated.humidity)}`,
    `${formatNumber(ratedDeficit, 3)} / ${formatNumber(shopDeficit, 3)}`,
    notes,
  );
}

function reacting(rated: RatedAir, air: ShopAir): WaitFactor {
  const colder = clamp(rated.temperature) - clamp(air.temperature);
  return atLeastOne(
    2 ** (colder / 10),
    `It hardens by reaction, twice as slowly for every 10 C less: ${degrees(air.temperature)} in the shop, ` +
      `${degrees(rated.temperature)} on the label`,
    `2^(${formatNumber(colder, 1)} / 10)`,
    "",
  );
}

function solventRelease(rated: RatedAir, air: ShopAir): WaitFactor {
  const shopK = clamp(air.temperature) + 273.15;
  const ratedK = clamp(rated.temperature) + 273.15;
  return atLeastOne(
    Math.exp(SOLVENT_K * (1 / shopK - 1 / ratedK)),
    `Its solvent leaves by vapour pressure, which falls with the temperature: ${degrees(air.temperature)} in the shop, ` +
      `${degrees(rated.temperature)} on the label`,
    `exp(${SOLVENT_K} × (1/${formatNumber(shopK, 2)} K − 1/${formatNumber(ratedK, 2)} K))`,
    "",
  );
}

function atLeastOne(raw: number, why: string, sum: string, notes: string): WaitFactor {
  // A ratio a few bits above 1 is rounding: air like the label's leaves the label's time alone.
  if (raw > 1 + 1e-9)
    return {
      factor: raw,
      reason: `${why}; times are ${sum} = ${formatNumber(raw, 2)} times the label's.${notes}`,
    };
  return { factor: 1, reason: `${why}; the label's times stand, which better air never shortens.${notes}` };
}

const clamp = (temperatureC: number): number => Math.min(Math.max(temperatureC, COLDEST_C), HOTTEST_C);
const deficit = (temperatureC: number, humidity: number): number =>
  vapourPressureDeficitKPa(clamp(temperatureC), humidity);
const degrees = (temperatureC: number): string => `${formatNumber(temperatureC, 1)} C`;
const percent = (humidity: number): string => `${formatNumber(humidity, 1)} % RH`;
const airText = (temperatureC: number, humidity: number): string =>
  `${degrees(temperatureC)} and ${percent(humidity)}`;
