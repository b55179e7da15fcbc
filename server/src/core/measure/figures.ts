/**
 * Every figure that a person reads, each kind in one format: in findings, hovers, hints, lists, sheets and reports.
 *
 * What a reader is to calculate again has more decimals (`exact…`); everything else is rounded to what can be measured at
 * the bench. Figures for programs are numbers, rounded by `printed`.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { WEEKDAYS } from "../../../../grammar/src/vocabulary.ts";
import { formatAmount, formatNumber, roundTo } from "./format-amount.ts";
import { roundedParts } from "./rounded-parts.ts";

// ---------------------------------------------------------------------------------------------------------------
// Amounts

/** `0.25 L`; under a tenth of a litre `40 mL`. */
export const litresText = (litres: number): string => formatAmount({ dimension: "volume", value: litres });

/** `0.0667 L`, for sums. */
export const exactLitres = (litres: number): string => `${formatNumber(litres, 4)} L`;

/** `2 × 0.946 L + 1 × 0.375 L`: cans by what they hold, in the order in which they come. */
export const cansText = (cans: readonly { readonly count: number; readonly litres: number }[]): string =>
  cans.map(({ count, litres }) => `${count} × ${formatNumber(litres, 3)} L`).join(" + ");

/** `1.78 m2` */
export const areaText = (m2: number): string => formatAmount({ dimension: "area", value: m2 });

/** `2 × 1.185 m2 = 2.37 m2`: one with as many decimals as bring a reader who multiplies to `all` as it is told elsewhere. */
export function timesText(count: number, one: number, told: (value: number) => string, unit: string): string {
  const all = told(count * one);
  const ways = Array.from({ length: 8 }, (_, more) => formatNumber(one, 2 + more));
  const way = ways.find((each) => told(count * Number(each)) === all) ?? ways.at(-1)!;
  return `${count} × ${way} ${unit} = ${all}`;
}

/** `1.7816 m2`, for sums. */
export const exactArea = (m2: number): string => `${formatNumber(m2, 4)} m2`;

/** `33 um`: film, wet or dry, and the grains of abrasives. */
export const filmText = (um: number): string => `${formatNumber(um, 0)} um`;

/** `33.3 um`, for sums. */
export const exactFilm = (um: number): string => `${formatNumber(um, 1)} um`;

/** `0.6 mm`: veneer, and what sanding takes. */
export const thicknessText = (mm: number): string => `${formatNumber(mm, 2)} mm`;

/** `43 g`; under ten grams with as many decimals as it needs. */
export const gramsText = (grams: number): string => `${formatNumber(grams, 0)} g`;

/** Figures of a table as they are printed, and what they come to together. */
export interface Addends {
  readonly parts: readonly string[];
  readonly total: string;
}

/** Grams that a reader adds up; `total` where they are all of something that has a figure of its own. */
export const gramsThatAddUp = (grams: readonly number[], total?: number): Addends =>
  thatAddUp(grams, total, (sum) => (sum < 10 ? 1 : 0), "g");

/** Areas that a reader adds up. */
export const areasThatAddUp = (areas: readonly number[]): Addends =>
  thatAddUp(areas, undefined, (sum) => (sum < 1 ? 4 : 2), "m2");

/** Square feet that a reader adds up. */
export const squareFeetThatAddUp = (areas: readonly number[]): Addends =>
  thatAddUp(areas, undefined, (sum) => (sum < 10 ? 2 : 1), "ft2");

/** As many decimals for all as the sum asks for, so that the printed parts come to the printed sum. */
function thatAddUp(
  parts: readonly number[],
  total: number | undefined,
  decimalsOf: (sum: number) => number,
  unit: string,
): Addends {
  const sum = total ?? parts.reduce((all, part) => all + part, 0);
  const decimals = decimalsOf(sum);
  const say = (value: number): string => `${roundTo(value, decimals) + 0} ${unit}`;
  return { parts: roundedParts(parts, decimals, sum).map(say), total: say(sum) };
}

/** `12.5 %` */
export const percentText = (percent: number): string => `${formatNumber(percent, 1)} %`;

/** `112.00 EUR`; without a currency the bare number. */
export const moneyText = (amount: number, currency?: string): string =>
  `${cents(amount).toFixed(2)}${currency ? ` ${currencyText(currency)}` : ""}`;

/** Without cents, where there is little room. */
export const roundMoneyText = (amount: number, currency?: string): string =>
  `${Math.round(cents(amount))}${currency ? ` ${currencyText(currency)}` : ""}`;

/** A currency may be written in quotes, with anything in it; only what can be part of one is shown behind a figure. */
export const currencyText = (currency: string): string =>
  currency.replace(/[^\p{L}\p{N}\p{Sc} .]/gu, "\ufffd");

// ---------------------------------------------------------------------------------------------------------------
// Air

/** `15 C` */
export const degreesText = (celsius: number): string =>
  formatAmount({ dimension: "temperature", value: celsius });

/** `60 % RH` */
export const humidityText = (percent: number): string => t`${percentText(percent)} RH`;

/** `15 C and 60 % RH`, or as much of it as is known. */
export const airText = ({ temperature, humidity }: ShownAir): string =>
  humidity === undefined
    ? degreesText(temperature)
    : t`${degreesText(temperature)} and ${humidityText(humidity)}`;

export interface ShownAir {
  readonly temperature: number;
  readonly humidity?: number | undefined;
}

/** `3.1`, for where the unit is said beside it. */
export const airChangesNumber = (perHour: number): string => formatNumber(perHour, 1);

/** `3.1 air changes/h` */
export const airChangesText = (perHour: number): string => t`${airChangesNumber(perHour)} air changes/h`;

/** `450 m3/h` */
export const airFlowText = (m3PerH: number): string => `${formatNumber(m3PerH, 0)} m3/h`;

/** `145 m3` */
export const roomText = (m3: number): string => `${formatNumber(m3, 1)} m3`;

/** `1.51`: how many times the label's hours a wait takes. */
export const factorText = (factor: number): string => formatNumber(factor, 2);

// ---------------------------------------------------------------------------------------------------------------
// Dates, of local ISO date-times such as `2027-03-08T09:00`

/** `Mon 8 Mar 2027 09:00`; of a date alone `Mon 8 Mar 2027`. */
export function momentText(iso: string): string {
  const time = timeText(iso);
  return time === "" ? dayText(iso) : `${dayText(iso)} ${time}`;
}

/** `Mon 8 Mar 2027` */
export const dayText = (iso: string): string => `${shortDayText(iso)} ${iso.slice(0, 4)}`;

/** `Mon 8 Mar 09:00`, where the year goes without saying. */
export const shortMomentText = (iso: string): string => `${shortDayText(iso)} ${timeText(iso)}`;

/** `Mon 8 Mar` */
export const shortDayText = (iso: string): string => `${weekdayText(iso)} ${monthDayText(iso)}`;

/** `8 Mar` */
export const monthDayText = (iso: string): string =>
  translated("D MMM")
    .replace("D", String(Number(iso.slice(8, 10))))
    .replace("MMM", translated(MONTHS[Number(iso.slice(5, 7)) - 1] ?? ""));

/** `Mon` */
export function weekdayText(iso: string): string {
  const day = new Date(`${iso.slice(0, 10)}T12:00:00Z`).getUTCDay();
  return translated(WEEKDAYS[(day + 6) % 7] ?? "");
}

/** `09:00`; nothing of a date alone. */
export const timeText = (iso: string): string => iso.slice(11, 16);

export const MONTHS = [
  "Jan",
  "Feb",
  "Mar",
  "Apr",
  "May",
  "Jun",
  "Jul",
  "Aug",
  "Sep",
  "Oct",
  "Nov",
  "Dec",
] as const;

// ---------------------------------------------------------------------------------------------------------------
// Numbers for programs

/** Lengths, litres, hours and grams: to six decimals and never minus zero, so that sums of decimal fractions come out as people write them. */
export const printed = (value: number): number => roundTo(value, 6) + 0;

/** Money, to whole cents. */
export const cents = (amount: number): number => roundTo(amount, 2) + 0;
