/**
 * Why the air of a shop lengthens a label's times, in words: a clause for messages, the sum for workings, and a sentence
 * of both for hover. All of them are made of the data of `air/wait-factor.ts`.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { DAMPEST_PERCENT, type FactorCause, SOLVENT_K, type WaitFactor } from "../air/wait-factor.ts";
import { factorText, humidityText } from "../measure/figures.ts";
import { formatDuration, formatNumber } from "../measure/format-amount.ts";
import { figuresIn, type ShownFigures } from "../measure/shown-figures.ts";
import { NIGHT_H } from "../schedule/night.ts";

type AirFigures = Pick<ShownFigures, "air" | "degrees" | "tenDegrees">;
const METRIC = figuresIn("metric");

/** `15 C and 60 % RH`: as much of the shop's air as counts; empty where none does. */
export function shopAirText(cause: FactorCause, say: AirFigures = METRIC): string {
  switch (cause.law) {
    case "water":
      return cause.isHumidityAssumed ? say.degrees(cause.shop.temperature) : say.air(cause.shop);
    case "ordinary air":
      return cause.shop.humidity === undefined
        ? say.degrees(cause.shop.temperature)
        : say.air({ temperature: cause.shop.temperature, humidity: cause.shop.humidity });
    case "reaction":
    case "solvent":
      return say.degrees(cause.shopC);
    case "day and night":
      return t`${shopAirText(cause.day.cause, say)}, ${shopAirText(cause.night.cause, say)} while closed`;
    default:
      return "";
  }
}

/** How the air acts on the label's times, with the figures on both sides; no full stop. */
export function whyText(cause: FactorCause, say: AirFigures = METRIC): string {
  switch (cause.law) {
    case "air not stated":
      return t`The shop's air is not stated, so the label's times stand`;
    case "ordinary air":
      return t`The label names no air of its own, and ${shopAirText(cause, say)} is ordinary room air, so its times stand`;
    case "does not dry":
      return t`It does not dry into a film, so the air changes nothing`;
    case "a night":
      return t`Filler whose label states no time dries overnight, ${formatDuration(NIGHT_H)} at least`;
    case "water":
      return t`Water leaves by the vapour-pressure deficit: ${kPa(cause.shopDeficitKPa)} kPa at ${say.air(cause.shop)}, ${kPa(cause.ratedDeficitKPa)} kPa at the label's ${say.air(cause.rated)}`;
    case "reaction":
      return t`It hardens by reaction, twice as slowly for every ${say.tenDegrees} less: ${bothText(cause, say)}`;
    case "solvent":
      return t`Its solvent leaves by vapour pressure, which falls with the temperature: ${bothText(cause, say)}`;
    case "day and night":
      return t`${whyText(cause.night.cause, say)} while it is closed, × ${factorText(cause.night.factor)}; by day × ${factorText(cause.day.factor)}. The longest counts that it takes, begun while the shop is open`;
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
    ...(cause.isHumidityAssumed ? [t`The shop's humidity is not stated; the label's is used`] : []),
    ...(cause.shop.humidity > DAMPEST_PERCENT
      ? [t`Air at ${humidityText(cause.shop.humidity)} dries no water; ${DAMPEST_PERCENT} % is used`]
      : []),
  ];
}

/** All of it, in sentences without their full stops: why, the sum where times are longer, and what was taken for the air. */
export function reasonSentences({ factor, cause }: WaitFactor): readonly string[] {
  const isMeasured = cause.law === "water" || cause.law === "reaction" || cause.law === "solvent";
  const sum =
    factor > 1 && cause.law !== "day and night"
      ? t`; times are ${sumText(cause)} = ${factorText(factor)} times the label's`
      : isMeasured
        ? t`; the label's times stand, which better air never shortens`
        : "";
  return [`${whyText(cause)}${sum}`, ...notesText(cause)];
}

/** Without the sum, where the factor stands beside the time already. */
export const shortReasonText = (cause: FactorCause, say: AirFigures): string =>
  `${[whyText(cause, say), ...notesText(cause)].join(". ")}.`;

const bothText = (
  { shopC, ratedC }: { readonly shopC: number; readonly ratedC: number },
  { degrees }: AirFigures,
): string => t`${degrees(shopC)} in the shop, ${degrees(ratedC)} on the label`;
const kPa = (value: number): string => formatNumber(value, 3);
const kelvinText = (kelvin: number): string => formatNumber(kelvin, 2);
