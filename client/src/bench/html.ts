/** Small parts that the blocks of the bench view are made of. Whatever a person wrote goes through `text` or `prose`. */
import { htmlText as text } from "../../../server/src/escape/html.ts";

export { text };

/** Names in backticks as code. */
export const prose = (said: string): string =>
  said
    .split("`")
    .map((part, i) => (i % 2 === 0 ? text(part) : `<code>${text(part)}</code>`))
    .join("");

/** For attributes and titles, which have no markup. */
export const plain = (said: string): string => text(said.replaceAll("`", ""));

/** A button that leads to a line. */
export const link = (at: number | undefined, html: string, key: string): string =>
  at === undefined
    ? `<span>${html}</span>`
    : `<button type="button" class="link" data-at="${at}" data-key="${text(key)}">${html}</button>`;
