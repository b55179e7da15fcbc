/**
 * Files that have another name in the second state. What Git tells of two revisions holds; then a file is the same one
 * where its text is the same, and last where most of its lines stand in declarations of the same kind and name.
 */
import type { FileTree } from "../../../../grammar/src/tree.ts";
import type { FilesState } from "./model.ts";
import { writtenDeclarations } from "./written.ts";

/** From what the first state calls a file to what the second calls it. */
export type Renames = ReadonlyMap<string, string>;

/** Of all lines of the longer file, as Git asks for by itself. */
const SAME_AT_LEAST = 0.5;
/** Lines times files: beyond it only files of the same text are looked for. Some seconds of work. */
const MOST_COMPARISONS = 20_000_000;

/** `known` holds where the first name is gone and the second is new. */
export function renamedFiles(before: FilesState, after: FilesState, known: Renames): Renames {
  const gone = onlyIn(before, after);
  const come = onlyIn(after, before);
  const renames = new Map<string, string>();
  const take = (from: string, to: string): void => {
    if (!gone.has(from) || !come.has(to)) return;
    gone.delete(from);
    come.delete(to);
    renames.set(from, to);
  };
  for (const [from, to] of known) take(from, to);
  for (const [from, to] of ofSameText(gone, come)) take(from, to);
  for (const [from, to] of ofSameLines(gone, come)) take(from, to);
  return renames;
}

/** Files that say something, by what the state calls them, in the order of the alphabet. */
function onlyIn(state: FilesState, other: FilesState): Map<string, FileTree> {
  const others = new Set([...other.asked, ...other.analysis.program.files.keys()].map(other.keyOf));
  const trees = state.asked.flatMap((file): readonly (readonly [string, FileTree])[] => {
    const key = state.keyOf(file);
    const tree = state.analysis.program.files.get(file)?.tree;
    return others.has(key) || tree === undefined || tree.text.trim() === "" ? [] : [[key, tree]];
  });
  return new Map(trees.toSorted(([a], [b]) => (a < b ? -1 : 1)));
}

type Trees = ReadonlyMap<string, FileTree>;
type Pair = readonly [from: string, to: string];

function ofSameText(gone: Trees, come: Trees): readonly Pair[] {
  const byText = new Map<string, string[]>();
  for (const [key, { text }] of gone) byText.set(text, [...(byText.get(text) ?? []), key]);
  return [...come].flatMap(([to, { text }]): readonly Pair[] => {
    const left = byText.get(text) ?? [];
    const from = left.find((key) => baseName(key) === baseName(to)) ?? left[0];
    if (from === undefined) return [];
    byText.set(
      text,
      left.filter((key) => key !== from),
    );
    return [[from, to]];
  });
}

const baseName = (key: string): string => key.slice(key.lastIndexOf("/") + 1);

/** The most alike first; a file may stand in several pairs. */
function ofSameLines(gone: Trees, come: Trees): readonly Pair[] {
  const now = [...come].map(([key, tree]) => ({ key, lines: declaredLines(tree) }));
  const lines = now.reduce((sum, each) => sum + each.lines.length, 0);
  if (lines * gone.size > MOST_COMPARISONS) return [];
  const old = [...gone].map(([key, tree]) => countedLines(key, declaredLines(tree)));
  const alike = now.flatMap(({ key: to, lines: said }) =>
    old.flatMap((from) => {
      const same = sharedWith(from.counts, said) / Math.max(from.length, said.length, 1);
      return same < SAME_AT_LEAST ? [] : [{ from: from.key, to, same }];
    }),
  );
  const isMoved = ({ from, to }: { readonly from: string; readonly to: string }): number =>
    baseName(from) === baseName(to) ? 1 : 0;
  return alike
    .toSorted((a, b) => b.same - a.same || isMoved(b) - isMoved(a))
    .map(({ from, to }): Pair => [from, to]);
}

/** Every line with the kind and the name of its declaration. */
const declaredLines = (tree: FileTree): readonly string[] =>
  writtenDeclarations(tree).flatMap(({ kind, key, lines }) =>
    kind === "use" ? [] : lines.map((line) => `${key}\n${line}`),
  );

function countedLines(key: string, lines: readonly string[]) {
  const counts = new Map<string, number>();
  for (const line of lines) counts.set(line, (counts.get(line) ?? 0) + 1);
  return { key, length: lines.length, counts };
}

/** How many of the lines are among those counted, each as often as it is there. */
function sharedWith(counts: ReadonlyMap<string, number>, lines: readonly string[]): number {
  const used = new Map<string, number>();
  let shared = 0;
  for (const line of lines) {
    const times = used.get(line) ?? 0;
    if (times >= (counts.get(line) ?? 0)) continue;
    used.set(line, times + 1);
    shared += 1;
  }
  return shared;
}
