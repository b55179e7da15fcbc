/** What the signs of the drawings mean, each beside a small picture of it. */
import { text } from "./html.ts";
import type { L10n } from "./l10n.ts";

/** Of a small picture, px. */
const WIDE = 26;
const TALL = 14;

export interface Sign {
  /** Shapes in a field of 26 × 14 px. */
  readonly svg: string;
  readonly means: string;
}

/** A line of them; who hears the page has the same in words from the lists and tables behind the drawings. */
export const keyHtml = (signs: readonly Sign[], l10n: L10n): string =>
  `<p class="key second"><span class="hidden">${text(l10n.t("In the drawing:"))}</span>${signs
    .map(
      ({ svg, means }) =>
        `<span><svg aria-hidden="true" width="${WIDE}" height="${TALL}" viewBox="0 0 ${WIDE} ${TALL}">${svg}</svg> ${text(means)}</span>`,
    )
    .join(" ")}</p>`;

/** Two slanted strokes through a line: the scale does not go on from one side to the other. */
export const breakMark = (x: number, y: number): string =>
  `<path class="gap" d="M${x - 2} ${y + 5}l4 -10h4l-4 10z"/><path class="break" d="M${x - 2} ${y + 5}l4 -10M${x + 2} ${y + 5}l4 -10"/>`;
