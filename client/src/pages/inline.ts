/** Text of a page with code and links. Whatever stands in it goes through `text`; a link leads to another page of ours or to a heading. */
import { htmlText as text } from "../../../server/src/escape/html.ts";

export { text };

/** The command of the extension that shows a page by the name of its file. */
export const OPEN_PAGE = "finishwright.openPage";

/** The pages are named alike, and nothing else is led to. */
export const PAGE_NAME = /^[a-z-]+\.md$/u;

const PARTS = /`([^`]+)`|\[([^[\]]+)\]\(([^()[\s]+)\)|\*\*([^*]+)\*\*/gu;

/** `` `code` ``, `[text](page.md)`, `**strong**`. */
export function inline(markdown: string): string {
  let html = "";
  let end = 0;
  for (const { 0: whole, 1: code, 2: label, 3: target, 4: strong, index } of markdown.matchAll(PARTS)) {
    html += text(markdown.slice(end, index));
    if (code !== undefined) html += `<code>${text(code)}</code>`;
    else if (strong !== undefined) html += `<strong>${text(strong)}</strong>`;
    else html += linkHtml(inline(label!), target!);
    end = index + whole.length;
  }
  return html + text(markdown.slice(end));
}

function linkHtml(label: string, target: string): string {
  if (target.startsWith("#")) return `<a href="${text(target)}">${label}</a>`;
  const [page = ""] = target.split("#");
  const name = page.slice(page.lastIndexOf("/") + 1);
  return PAGE_NAME.test(name)
    ? `<a href="command:${OPEN_PAGE}?${encodeURIComponent(JSON.stringify([name]))}">${label}</a>`
    : label;
}

/** As the links to a heading name it. */
export const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, "")
    .replaceAll(" ", "-");
