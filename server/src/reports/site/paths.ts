/** Names of pages: plain letters that every host and every disk takes, each for one entry alone. */
import type { Library, LibraryEntry } from "../../views/site/model.ts";

const FOLDERS = { recipe: "recipes", piece: "pieces", job: "jobs" } as const;

/** Names that Windows keeps for itself, whatever stands behind the point. */
const RESERVED = /^(?:con|prn|aux|nul|com\d|lpt\d)$/u;

/**
 * `recipes/stained-top.html`; where several entries of a kind have one name, the file stands before it, and where that is
 * not enough, a number behind it.
 */
export function pagePaths(
  { recipes, pieces, jobs }: Library,
  label: (file: string) => string,
): ReadonlyMap<string, string> {
  const paths = new Map<string, string>();
  for (const entries of [recipes, pieces, jobs] as readonly (readonly LibraryEntry[])[]) {
    const counts = new Map<string, number>();
    for (const { name } of entries) counts.set(slug(name), (counts.get(slug(name)) ?? 0) + 1);
    const taken = new Set<string>();
    for (const { kind, key, name, file } of entries) {
      const isAlone = counts.get(slug(name)) === 1;
      const wanted = isAlone ? slug(name) : `${slug(label(file).replace(/\.finish$/iu, ""))}-${slug(name)}`;
      let free = wanted;
      for (let number = 2; taken.has(free); number++) free = `${wanted}-${number}`;
      taken.add(free);
      paths.set(key, `${FOLDERS[kind]}/${free}.html`);
    }
  }
  return paths;
}

/** `recipes/stained-top.html` has its sheet at `sheets/stained-top.html`. */
export const sheetPath = (page: string): string => page.replace(/^recipes\//u, "sheets/");

function slug(name: string): string {
  const plain = name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, "-")
    .replace(/^-|-$/gu, "");
  return plain === "" || RESERVED.test(plain) ? `x-${plain}`.replace(/-$/u, "") : plain;
}
