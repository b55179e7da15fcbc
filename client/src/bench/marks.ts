/**
 * Marks of gravity: each has a shape of its own, so that nothing hangs on its colour. An error is a filled octagon with a
 * cross, a warning a triangle, all else a circle.
 */
import { text } from "./html.ts";
import { type L10n, severityText } from "./l10n.ts";

/** Side of a mark, px. */
export const MARK = 14;

const SHAPES = {
  error:
    '<path class="face" d="M4.3 .8h5.4l3.5 3.5v5.4l-3.5 3.5H4.3L.8 9.7V4.3z"/><path class="sign" d="M4.6 4.6l4.8 4.8M9.4 4.6l-4.8 4.8"/>',
  warning: '<path class="face" d="M7 1.2l6 11.3H1z"/><path class="sign" d="M7 5v3.6M7 10v1.4"/>',
  other: '<circle class="face" cx="7" cy="7" r="5.9"/><path class="sign" d="M7 6.2v4M7 3.6v1.3"/>',
} as const;

const kindOf = (severity: string): keyof typeof SHAPES =>
  severity === "error" || severity === "warning" ? severity : "other";

/** The shape alone, 14 px from its left upper corner, to be drawn in a group of the class `mark` and the kind. */
export const markShape = (severity: string): string => SHAPES[kindOf(severity)];

export const markClass = (severity: string): string => `mark ${kindOf(severity)}`;

/** A picture of its own, which says what it means; nothing without a severity. */
export const mark = (severity: string | undefined, l10n: L10n): string =>
  severity === undefined
    ? ""
    : `<svg class="${markClass(severity)}" role="img" aria-label="${text(severityText(severity, l10n))}" width="${MARK}" height="${MARK}" viewBox="0 0 ${MARK} ${MARK}">${markShape(severity)}</svg>`;
