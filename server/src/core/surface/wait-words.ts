/**
 * Why the air of a shop lengthens a label's times, in words: a clause for messages, the sum for workings, and a sentence
 * of both for hover. All of them are made of the data of `air/wait-factor.ts`.
 */

import { DAMPEST_PERCENT, type FactorCause, SOLVENT_K, type WaitFactor } from "../air/wait-factor.ts";
import { airText, degreesText, factorText, humidityText } from "../measure/figures.ts";
import { formatDuration, formatNumber } from "../measure/format-amount.ts";
import { NIGHT_H } from "../schedule/night.ts";

/** `15 C and 60 % RH`: as much of the shop's air as counts; empty where none does. */
export function shopAirText(cause: FactorCause): string {
  switch (cause.law) {
    case "water":
      return cause.isHumidityAssumed ? degreesText(cause.shop.temperature) : airText(cause.shop);
    case "ordinary air":
      return cause.shop.humidity === undefined
        ? degreesText(cause.shop.temperature)
        : airText({ temperature: cause.shop.temperature, humidity: cause.shop.humidity });
    case "reaction":
    case "solvent":
      return degreesText(cause.shopC);
    case "day and night":
      return `${shopAirText(cause.day.cause)}, ${shopAirText(cause.night.cause)} while closed`;
    default:
      return "";
  }
}

/** How the air acts on the label's times, with the figures on both sides; no full stop. */
export function whyText(cause: FactorCause): string {
  switch (cause.law) {
    case "air not stated":
      return "The shop's air is not stated, so the label's times stand";
    case "ordinary air":
      return `The label names no air of its own, and ${shopAirText(cause)} is ordinary room air, so its times stand`;
    case "does not dry":
      return "It does not dry into a film, so the air changes nothing";
    case "a night":
      return `Filler whose label states no time dries overnight, ${formatDuration(NIGHT_H)} at least`;
    case "water":
      return (
        `Water leaves by the vapour-pressure deficit: ${kPa(cause.shopDeficitKPa)} kPa at ` +
        `${airText(cause.shop)}, ${kPa(cause.ratedDeficitKPa)} kPa at the label's ` +
        airText(cause.rated)
      );
    case "reaction":
      return `It hardens by reaction, twice as slowly for every 10 C less: ${bothText(cause)}`;
    case "solvent":
      return `Its solvent leaves by vapour pressure, which falls with the temperature: ${bothText(cause)}`;
    case "day and night":
      return (
        `${whyText(cause.night.cause)} while it is closed, × ${factorText(cause.night.factor)}; ` +
        `by day × ${factorText(cause.day.factor)}. The longest counts that it takes, begun while the shop is open`
      );
  }
}

/** `1.241 / 0.824`: what the factor is calculated from; empty where there is none. */
function sumText(cause: FactorCause): string {
  switch (cause.law) {
    case "water":
      return `${kPa(cause.ratedDeficitKPa)} / ${kPa(cause.shopDeficitKPa)}`;
    case "reaction":
      return `2^(${formatNumber(cause.colderC, 1)} / 10)`;
    case "solvent":
      return `exp(${SOLVENT_K} × (1/${kelvinText(cause.shopK)} K − 1/${kelvinText(cause.ratedK)} K))`;
    default:
      return "";
  }
}

/** What was taken for the shop's air, where it is not what the shop states. */
function notesText(cause: FactorCause): readonly string[] {
  if (cause.law === "day and night")
    return [...new Set([cause.day, cause.night].flatMap((it) => notesText(it.cause)))];
  if (cause.law !== "water") return [];
  return [
    ...(cause.isHumidityAssumed ? ["The shop's humidity is not stated; the label's is used"] : []),
    ...(cause.shop.humidity > DAMPEST_PERCENT
      ? [`Air at ${humidityText(cause.shop.humidity)} dries no water; ${DAMPEST_PERCENT} % is used`]
      : []),
  ];
}

/** All of it, in sentences without their full stops: why, the sum where times are longer, and what was taken for the air. */
export function reasonSentences({ factor, cause }: WaitFactor): readonly string[] {
  const isMeasured = cause.law === "water" || cause.law === "reaction" || cause.law === "solvent";
  const sum =
    factor > 1 && cause.law !== "day and night"
      ? `; times are ${sumText(cause)} = ${factorText(factor)} times the label's`
      : isMeasured
        ? "; the label's times stand, which better air never shortens"
        : "";
  return [`${whyText(cause)}${sum}`, ...notesText(cause)];
}

/** Without the sum, where the factor stands beside the time already. */
export const shortReasonText = (cause: FactorCause): string =>
  `${[whyText(cause), ...notesText(cause)].join(". ")}.`;

const bothText = ({ shopC, ratedC }: { readonly shopC: number; readonly ratedC: number }): string =>
  `${degreesText(shopC)} in the shop, ${degreesText(ratedC)} on the label`;
const kPa = (value: number): string => formatNumber(value, 3);
const kelvinText = (kelvin: number): string => formatNumber(kelvin, 2);
