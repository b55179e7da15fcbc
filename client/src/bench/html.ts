/** Small parts that the blocks of the bench view are made of. Whatever a person wrote goes through `text` or `prose`. */
import { htmlText } from "../../../server/src/escape/html.ts";
import { printedUnits } from "../../../server/src/escape/printed-units.ts";

export const text = (said: string): string => htmlText(printedUnits(said));

/** What the script of the page reads again, as it is. */
export const data = htmlText;

/** Names and what is typed in backticks as code, as it is typed. */
export const prose = (said: string): string =>
  said
    .split("`")
    .map((part, i) => (i % 2 === 0 ? text(part) : `<code>${htmlText(part)}</code>`))
    .join("");

/** For attributes and titles, which have no markup. */
export const plain = (said: string): string => text(said.replaceAll("`", ""));

/** A button that leads to a line. */
export const link = (at: number | undefined, html: string, key: string): string =>
  at === undefined
    ? `<span>${html}</span>`
    : `<button type="button" class="link" data-at="${at}" data-key="${data(key)}">${html}</button>`;
