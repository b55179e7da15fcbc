/**
 * Workspace symbols: every declaration and surface of all files whose name has the letters of the query in their order,
 * or whose title has the query in it.
 */
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import type { Program, ProgramDeclaration } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { WorkspaceSymbolInfo } from "./types.ts";

/** Nobody reads a longer list; another letter narrows it. */
const MOST = 500;

export function workspaceSymbols(program: Program, query: string): readonly WorkspaceSymbolInfo[] {
  const letters = query.replace(/\s+/gu, "").toLowerCase();
  const words = query.trim().toLowerCase();
  return [...program.files.values()]
    .flatMap((file) => file.declarations.flatMap((declaration) => symbolsIn(file.id, declaration)))
    .flatMap(({ symbol, title }) => {
      const rank = nameRank(symbol.name.toLowerCase(), letters) ?? titleRank(title.toLowerCase(), words);
      return rank === undefined ? [] : [{ symbol, rank }];
    })
    .sort((a, b) => a.rank - b.rank || a.symbol.name.length - b.symbol.name.length)
    .slice(0, MOST)
    .map(({ symbol }) => symbol);
}

interface Titled {
  readonly symbol: WorkspaceSymbolInfo;
  readonly title: string;
}

function symbolsIn(file: FileId, { tree }: ProgramDeclaration): readonly Titled[] {
  const { syntax } = tree.body;
  const { kind, name, title } = syntax;
  const own: readonly Titled[] =
    name && kind !== "use"
      ? [
          {
            symbol: { name: name.text, kind, file, nameSpan: absoluteSpan(tree, name.span) },
            title: title?.value ?? "",
          },
        ]
      : [];
  const surfaces = (kind === "piece" ? syntax.fields : []).flatMap((field): readonly Titled[] => {
    if (field.kind !== "surface" || !field.name) return [];
    const nameSpan = absoluteSpan(tree, field.name.span);
    const container = name && { container: name.text };
    return [{ symbol: { name: field.name.text, kind: "surface", ...container, file, nameSpan }, title: "" }];
  });
  return [...own, ...surfaces];
}

/** 0 for the name itself, then its beginning, the beginning of a word in it, its middle, its letters here and there. */
function nameRank(name: string, letters: string): number | undefined {
  if (name === letters) return 0;
  if (name.startsWith(letters)) return 1;
  const plain = name.replaceAll("_", "");
  if (name.includes(`_${letters}`) || plain.startsWith(letters)) return 2;
  if (name.includes(letters) || plain.includes(letters)) return 3;
  return hasInOrder(name, letters) ? 4 : undefined;
}

const titleRank = (title: string, words: string): number | undefined =>
  title.includes(words) ? 5 : undefined;

function hasInOrder(name: string, letters: string): boolean {
  let from = 0;
  for (const letter of letters) {
    const at = name.indexOf(letter, from);
    if (at < 0) return false;
    from = at + letter.length;
  }
  return true;
}
