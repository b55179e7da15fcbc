/**
 * Reads texts with a renaming made and compares what every name in them means with what it meant before.
 *
 * This holds the promise of a renaming whatever its reason to fail: a parameter that hides the new name, a built-in
 * material of that name used somewhere, a word that the notation takes for its own in one place only.
 */
import { parseFile } from "../../../../grammar/src/parse.ts";
import { createChecker } from "../../core/check.ts";
import { type Program, type ProgramFile, programFile } from "../../core/model/program.ts";
import type { FileId } from "../../core/place.ts";
import type { Referent } from "../names/referent.ts";
import { createNames, type Names, type Occurrence } from "../names.ts";
import type { FileEdit } from "../types.ts";
import { lineWords, type Reader, thingWords } from "./words.ts";

/** A sentence about the first name that would change its meaning. A name that meant nothing may come to mean something. */
export function changeOfMeaning(
  before: Names,
  edits: readonly FileEdit[],
  reader: Reader,
): string | undefined {
  const after = createNames(createChecker(edited(before.program, edits)));
  const [wasDeclared, isDeclared] = [declarationsIn(before), declarationsIn(after)];
  for (const file of before.program.files.keys()) {
    const [old, now] = [before.inFile(file), after.inFile(file)];
    const own = edits.filter((edit) => edit.file === file);
    const at = (offset: number): string => lineWords(reader, file, offset);
    for (const [index, was] of old.entries()) {
      const is = now[index];
      if (!is || is.use.role !== was.use.role || is.span.start !== moved(was.span.start, own)) {
        return `In ${at(was.span.start)} the notation would read \`${own[0]?.text ?? was.use.name.text}\` as a word of its own.`;
      }
      const same = meaning(was.referents, wasDeclared) === meaning(is.referents, isDeclared);
      if (same || (was.referents.length === 0 && was.use.role !== "argument-name")) continue;
      return `In ${at(was.span.start)} \`${is.use.name.text}\` would mean ${thingWords(is.referents)} instead of ${thingWords(was.referents)}.`;
    }
    const isBroken = nProblems(before.program, file) < nProblems(after.program, file);
    if ((isBroken || now.length > old.length) && own[0]) {
      return `In ${at(own[0].span.start)} the notation would not read \`${own[0].text}\` as a name.`;
    }
  }
  return undefined;
}

/** The program with the edits made. */
function edited(program: Program, edits: readonly FileEdit[]): Program {
  const files = new Map(program.files);
  for (const id of new Set(edits.map(({ file }) => file))) {
    const file = files.get(id);
    if (file)
      files.set(
        id,
        editedFile(
          file,
          edits.filter((edit) => edit.file === id),
        ),
      );
  }
  return { ...program, files };
}

function editedFile(file: ProgramFile, edits: readonly FileEdit[]): ProgramFile {
  const { tree, uses } = file;
  const text = [...edits]
    .sort((a, b) => b.span.start - a.span.start)
    .reduce((done, { span, text: put }) => done.slice(0, span.start) + put + done.slice(span.end), tree.text);
  // Names stand in no path, so that every path leads where it led.
  const resolve = (_: FileId, path: string): FileId => uses.find((use) => use.path === path)?.target ?? path;
  return programFile(file.id, parseFile(text, tree), resolve, file);
}

/** Where an offset between edits comes to stand. */
function moved(offset: number, edits: readonly FileEdit[]): number {
  return edits
    .filter(({ span }) => span.end <= offset)
    .reduce((sum, { span, text }) => sum + text.length - (span.end - span.start), offset);
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
