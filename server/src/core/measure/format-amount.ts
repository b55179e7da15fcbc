/**
 * Amounts for people: metric, in the unit a finisher would say, rounded to what can be measured at the bench.
 *
 * What is printed can be typed back: `1 day 4 h` and `0.25 L` are quantities of the notation.
 * Rounding is for reading only; nothing is ever computed from a formatted amount.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { Amount, Dimension } from "./units.ts";

/** `rounded` for sheets and messages; `full` for workings, up to six significant digits. */
export type AmountStyle = "rounded" | "full";

/** An amount with its unit, such as `1.78 m2`, `0.25 L`, `36 h`. Not finite: `unknown`. */
export function formatAmount(amount: Amount<Dimension>, style: AmountStyle = "rounded"): string {
  if (!Number.isFinite(amount.value)) return t`unknown`;
  const { value, unit, decimals } = inSpokenUnit(amount);
  const number = formatNumber(value, style === "full" ? 6 : decimals, style);
  return unit === "" ? number : `${number} ${unit}`;
}

/**
 * A duration in hours as `40 min`, `2 h 30 min`, `1 day 4 h`, `21 days`: the two largest parts, rounded.
 * A negative one has a minus sign before it; not finite: `unknown`.
 */
export function formatDuration(hours: number): string {
  if (!Number.isFinite(hours)) return t`unknown`;
  if (hours < 0) return `-${formatDuration(-hours)}`;
  const minutes = Math.round(hours * 60);
  if (minutes === 0 && hours > 0) return `${Math.max(1, Math.round(hours * 3600))} s`;
  if (minutes < 24 * 60)
    return join(part(Math.floor(minutes / 60), "h"), part(minutes % 60, "min")) || "0 min";
  const wholeHours = Math.round(hours);
  const days = Math.floor(wholeHours / 24);
  return join(daysText(days), part(wholeHours % 24, "h"));
}

/** Hours of work, which nobody counts in days of 24 h: `36 h 25 min`, to the minute. Not finite: `unknown`. */
export function formatWork(hours: number): string {
  if (!Number.isFinite(hours) || hours < 0) return formatDuration(hours);
  const minutes = Math.round(hours * 60);
  if (minutes < 60) return formatDuration(hours);
  return join(part(Math.floor(minutes / 60), "h"), part(minutes % 60, "min"));
}

/**
 * A duration to the minute with all its parts, `6 days 9 h 30 min`, for several that must add up in one message. Not
 * finite: `unknown`.
 */
export function exactDuration(hours: number): string {
  if (!Number.isFinite(hours)) return t`unknown`;
  return hours < 0 ? `-${exactDuration(-hours)}` : inParts(hours, daysText);
}

/** The same as it is typed, in the words of the notation whatever language texts are in. Not finite: throws a RangeError. */
export function typedDuration(hours: number): string {
  if (!Number.isFinite(hours)) throw new RangeError(`No duration: ${hours}`);
  return inParts(hours, (days) => part(days, days === 1 ? "day" : "days"));
}

function inParts(hours: number, daysOf: (days: number) => string): string {
  const minutes = Math.round(hours * 60);
  const parts = [
    daysOf(Math.floor(minutes / (24 * 60))),
    part(Math.floor((minutes % (24 * 60)) / 60), "h"),
    part(minutes % 60, "min"),
  ];
  return parts.filter((text) => text !== "").join(" ") || "0 min";
}

const daysText = (days: number): string => (days === 0 ? "" : days === 1 ? t`${days} day` : t`${days} days`);

/**
 * The same for a message, where hours no longer matter: from 60 days on `about 5 months`, from two years `about 3 years`. A
 * month is the twelfth part of a year of 365.25 days.
 */
export function spokenDuration(hours: number): string {
  const days = hours / 24;
  if (!(days >= 60) || !Number.isFinite(days)) return exactDuration(hours);
  return days < 730.5
    ? t`about ${Math.round(days / 30.4375)} months`
    : t`about ${Math.round(days / 365.25)} years`;
}

/**
 * A needed time as it is told, hours: never less than is needed, to the minute below a day and to the hour from there.
 */
export function roundedUpHours(hours: number): number {
  const steps = hours < 24 ? 60 : 1;
  return Math.ceil(hours * steps - 1e-6) / steps;
}

/** A number with so many decimals, or as many more as two significant digits need; no trailing zeros. */
export function formatNumber(value: number, decimals: number, style: AmountStyle = "rounded"): string {
  if (style === "full") return trimZeros(Number(value.toPrecision(6)));
  const first = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  return trimZeros(roundTo(value, Math.min(MOST_DECIMALS, Math.max(decimals, 1 - first))));
}

/** Rounds to a number of decimals, halves away from zero; noise in the last two bits does not decide a half. */
export function roundTo(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  const scaled = Number((Math.abs(value) * scale).toPrecision(14));
  return (Math.sign(value) * Math.round(scaled)) / scale;
}

const MOST_DECIMALS = 12;

interface Spoken {
  readonly value: number;
  readonly unit: string;
  readonly decimals: number;
}

function inSpokenUnit(amount: Amount<Dimension>): Spoken {
  const { value } = amount;
  const size = Math.abs(value);
  switch (amount.dimension) {
    case "length":
      if (size < 1 && size > 0) return { value: value * 1000, unit: "um", decimals: 0 };
      if (size < 10_000) return { value, unit: "mm", decimals: 1 };
      return { value: value / 1000, unit: "m", decimals: 2 };
    case "area":
      return { value, unit: "m2", decimals: 2 };
    case "volume":
      if (size < 0.1 && size > 0) return { value: value * 1000, unit: "mL", decimals: size < 0.01 ? 1 : 0 };
      return { value, unit: "L", decimals: size < 10 ? 2 : 1 };
    case "time":
      if (size < 1 / 60 && size > 0) return { value: value * 3600, unit: "s", decimals: 0 };
      if (size < 1 && size > 0) return { value: value * 60, unit: "min", decimals: 0 };
      if (size <= 72) return { value, unit: "h", decimals: 1 };
      return { value: value / 24, unit: "days", decimals: 1 };
    case "temperature":
    case "temperature difference":
      return { value, unit: "C", decimals: 1 };
    case "mass":
      return size < 1000
        ? { value, unit: "g", decimals: size < 10 ? 1 : 0 }
        : { value: value / 1000, unit: "kg", decimals: 2 };
    case "density":
      return { value, unit: "g/L", decimals: size < 10 ? 1 : 0 };
    case "spreading rate":
      return { value, unit: "m2/L", decimals: 1 };
    case "weight by area":
      return { value, unit: "g/m2", decimals: size < 10 ? 1 : 0 };
    case "share":
      return { value, unit: "%", decimals: 1 };
    case "air flow":
      return { value, unit: "m3/h", decimals: size < 10 ? 1 : 0 };
    case "air change":
      return { value, unit: t`air changes/h`, decimals: 1 };
    case "time by area":
      return { value: value * 60, unit: "min/m2", decimals: 1 };
    case "number":
      return { value, unit: "", decimals: 2 };
  }
}

const part = (count: number, unit: string): string => (count === 0 ? "" : `${count} ${unit}`);
const join = (first: string, second: string): string =>
  [first, second].filter((text) => text !== "").join(" ");

function trimZeros(value: number): string {
  const text = String(value === 0 ? 0 : value);
  return text.includes("e") ? withoutZeros(value.toFixed(MOST_DECIMALS)) : text;
}

/** A number without the zeros at the end of its decimals; from 10^21 on it has none and stays in powers of ten. */
function withoutZeros(text: string): string {
  if (!text.includes(".")) return text;
  let end = text.length;
  while (text[end - 1] === "0") end -= 1;
  return text.slice(0, text[end - 1] === "." ? end - 1 : end);
}
