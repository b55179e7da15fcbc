/** What runs on the first page of a site: the search through the texts that stand in the page itself. */
import { type SearchText, searched } from "../site/search-text.ts";

const box = document.querySelector<HTMLElement>(".search");
const input = document.querySelector<HTMLInputElement>("#words");
const status = document.querySelector("#found");
const results = document.querySelector("#results");
const data = document.querySelector("#texts")?.textContent;

/** More than these nobody reads. */
const MOST = 50;

if (box && input && status && results && data) {
  const texts: readonly SearchText[] = JSON.parse(data);
  box.hidden = false;
  const search = (): void => {
    const asked = input.value.trim();
    const found = searched(texts, asked);
    results.replaceChildren(...found.slice(0, MOST).map(rowOf));
    status.textContent =
      asked === ""
        ? ""
        : found.length === 0
          ? "Nothing has all of these words. Try fewer, or the beginning of one."
          : `${found.length} found${found.length > MOST ? `, the first ${MOST} of them` : ""}.`;
  };
  input.addEventListener("input", search);
  // A browser may have kept what was typed before.
  search();
}

function rowOf({ path, title, kind }: SearchText): HTMLElement {
  const row = document.createElement("li");
  const link = document.createElement("a");
  link.href = path;
  link.textContent = title;
  const sort = document.createElement("span");
  sort.className = "sort";
  sort.textContent = kind;
  row.append(link, " ", sort);
  return row;
}
