/**
 * Reads texts with a renaming made and compares what every name in them means with what it meant before.
 *
 * This holds the promise of a renaming whatever its reason to fail: a parameter that hides the new name, a built-in
 * material of that name used somewhere, a word that the notation takes for its own in one place only.
 */
import { parseFile } from "../../../../grammar/src/parse.ts";
import { t } from "../../../../grammar/src/translate.ts";
import { createChecker } from "../../core/check.ts";
import { type Program, type ProgramFile, programFile } from "../../core/model/program.ts";
import type { FileId } from "../../core/place.ts";
import type { Referent } from "../../core/resolution/reference.ts";
import type { FileEdit } from "../../views/places/file-finding.ts";
import { createNames, type Names, type Occurrence } from "../names/names.ts";
import { lineWords, type Reader, thingWords } from "./words.ts";

/** A sentence about the first name that would change its meaning. A name that meant nothing may come to mean something. */
export function changeOfMeaning(
  before: Names,
  edits: readonly FileEdit[],
  reader: Reader,
): string | undefined {
  const byFile = editsByFile(edits);
  const after = createNames(createChecker(edited(before.program, byFile)));
  const comparison: Comparison = {
    before,
    after,
    wasDeclared: declarationsIn(before),
    isDeclared: declarationsIn(after),
    reader,
  };
  for (const file of before.program.files.keys()) {
    const change = changeIn(comparison, file, byFile.get(file) ?? []);
    if (change) return change;
  }
  return undefined;
}

interface Comparison {
  readonly before: Names;
  readonly after: Names;
  readonly wasDeclared: ReadonlyMap<string, string>;
  readonly isDeclared: ReadonlyMap<string, string>;
  readonly reader: Reader;
}

function changeIn(comparison: Comparison, file: FileId, edits: readonly FileEdit[]): string | undefined {
  const { before, after, reader } = comparison;
  const [old, now] = [before.inFile(file), after.inFile(file)];
  const starts = movedStarts(old, edits);
  for (const [index, was] of old.entries()) {
    const is = now[index];
    if (!is || is.use.role !== was.use.role || is.span.start !== starts[index]) {
      const word = edits[0]?.text ?? was.use.name.text;
      return t`In ${lineWords(reader, file, was.span.start)} the notation would read \`${word}\` as a word of its own.`;
    }
    const change = changeOf(comparison, was, is);
    if (change) return t`In ${lineWords(reader, file, was.span.start)} ${change}`;
  }
  const [first] = edits;
  const isBroken = nProblems(before.program, file) < nProblems(after.program, file);
  return first && (isBroken || now.length > old.length)
    ? t`In ${lineWords(reader, file, first.span.start)} the notation would not read \`${first.text}\` as a name.`
    : undefined;
}

function changeOf(
  { wasDeclared, isDeclared }: Comparison,
  was: Occurrence,
  is: Occurrence,
): string | undefined {
  if (meaning(was.referents, wasDeclared) === meaning(is.referents, isDeclared)) return undefined;
  const [word, things] = [`\`${is.use.name.text}\``, thingWords(is.referents)];
  if (was.referents.length > 0)
    return t`${word} would mean ${things} instead of ${thingWords(was.referents)}.`;
  return was.use.role === "argument-name"
    ? t`${word} means nothing yet, and would mean ${things}.`
    : undefined;
}

/** In the order of the text. */
function editsByFile(edits: readonly FileEdit[]): ReadonlyMap<FileId, readonly FileEdit[]> {
  const byFile = new Map<FileId, FileEdit[]>();
  for (const edit of edits.toSorted((a, b) => a.span.start - b.span.start)) {
    const list = byFile.get(edit.file) ?? [];
    list.push(edit);
    byFile.set(edit.file, list);
  }
  return byFile;
}

/** The program with the edits made. */
function edited(program: Program, edits: ReadonlyMap<FileId, readonly FileEdit[]>): Program {
  const files = [...program.files].map(([id, file]) => [id, editedFile(file, edits.get(id) ?? [])] as const);
  return { ...program, files: new Map(files) };
}

function editedFile(file: ProgramFile, edits: readonly FileEdit[]): ProgramFile {
  if (edits.length === 0) return file;
  const { tree, uses } = file;
  const starts = [0, ...edits.map(({ span }) => span.end)];
  const kept = starts.map((start, index) => tree.text.slice(start, edits[index]?.span.start));
  const text = kept.map((part, index) => part + (edits[index]?.text ?? "")).join("");
  // Names stand in no path, so that every path leads where it led.
  const resolve = (_: FileId, path: string): FileId => uses.find((use) => use.path === path)?.target ?? path;
  return programFile(file.id, parseFile(text, tree), resolve, file);
}

/** Where names come to stand. */
function movedStarts(names: readonly Occurrence[], edits: readonly FileEdit[]): readonly number[] {
  let [next, shift] = [0, 0];
  return names.map(({ span }) => {
    for (let edit = edits[next]; edit && edit.span.end <= span.start; edit = edits[next]) {
      shift += edit.text.length - (edit.span.end - edit.span.start);
      next += 1;
    }
    return span.start + shift;
  });
}

/** Every declared thing by the number of its name in its file, which is the same before and after. */
function declarationsIn(names: Names): ReadonlyMap<string, string> {
  const numbered = (file: FileId): readonly (readonly [string, string])[] =>
    names
      .inFile(file)
      .flatMap(({ isDeclaration, referents }: Occurrence, index) =>
        isDeclaration ? referents.map(({ key }) => [key, `${file} ${index}`] as const) : [],
      );
  return new Map([...names.program.files.keys()].flatMap(numbered));
}

const meaning = (referents: readonly Referent[], declared: ReadonlyMap<string, string>): string =>
  referents
    .map(({ key }) => declared.get(key) ?? key)
    .sort()
    .join("\n");

function nProblems(program: Program, file: FileId): number {
  return (program.files.get(file)?.tree.pieces ?? []).reduce((sum, piece) => {
    if (piece.kind === "trivia") return sum;
    return sum + (piece.kind === "stray" ? piece.problems : piece.body.problems).length;
  }, 0);
}
