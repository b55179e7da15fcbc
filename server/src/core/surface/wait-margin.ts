/**
 * How grave it is that something has had less time than it needs.
 *
 * Label times are no exact bounds, so a shortfall of at most 5 % of the needed time (label × air), and never more than
 * 4 h, is a hint. Beyond that the rule's own level holds, and there is no second allowance; but where the figure is the
 * family's and not the label's, an error is one only when more than a quarter is missing. The figures are common
 * practice, no source. The margin is for times to dry or cure before the next work alone: never for cure before use, by
 * children or with food, nor for rags, vapour, ignition, lead, mixing, pot life, or the latest end of a window.
 */
import { isAtLeast, type Severity } from "../findings.ts";
import type { DryingTime } from "./drying-time.ts";

/** Percent of the needed time. A project can set it smaller, never larger. */
export const WAIT_MARGIN_PERCENT = 5;
/** However long the needed time is, hours. */
export const WAIT_MARGIN_H = 4;
/** Percent of a typical time that must be missing before an error stays one. */
const TYPICAL_ERROR_PERCENT = 25;
/** Percent and hours below this are noise of calculation. */
const NOISE = 1e-6;

export interface Shortfall {
  /** Hours that are missing. */
  readonly hours: number;
  /** The same in percent of the needed time; 0 where no time is needed. */
  readonly percent: number;
}

/** What is missing of a needed time after `had` hours. */
export function shortfallOf({ hours }: Pick<DryingTime, "hours">, had: number): Shortfall {
  const missing = Math.max(0, hours - had);
  return { hours: missing, percent: hours > 0 ? (missing / hours) * 100 : 0 };
}

/** Whether so little is missing that it is within a margin (percent; 5 at most counts). */
export const isWithinMargin = (
  { hours, percent }: Shortfall,
  marginPercent: number = WAIT_MARGIN_PERCENT,
): boolean =>
  percent <= Math.min(marginPercent, WAIT_MARGIN_PERCENT) + NOISE && hours <= WAIT_MARGIN_H + NOISE;

/** The level of a rule beyond the margin: an error on a typical figure needs more than a quarter missing. */
export const levelBeyondMargin = (
  level: Severity,
  { percent }: Shortfall,
  { isTypical }: Pick<DryingTime, "isTypical">,
): Severity =>
  level === "error" && isTypical && percent <= TYPICAL_ERROR_PERCENT + NOISE ? "warning" : level;

/** The level of a finding on a shortfall, where the rule's own is `level`. Undefined where nothing is missing. */
export function shortfallLevel(
  level: Severity,
  needed: Pick<DryingTime, "hours" | "isTypical">,
  had: number,
  marginPercent?: number,
): Severity | undefined {
  const missing = shortfallOf(needed, had);
  if (missing.hours <= NOISE) return undefined;
  return isWithinMargin(missing, marginPercent)
    ? mildest(level, "hint")
    : levelBeyondMargin(level, missing, needed);
}

const mildest = (a: Severity, b: Severity): Severity => (isAtLeast(a, b) ? b : a);
