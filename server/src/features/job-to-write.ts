/**
 * The job that a recipe lacks which no job applies, where it is clear what it is meant for: the recipe is judged on these
 * surfaces already, and with the job the piece, its plan and its totals are known as well.
 */
import { t } from "../../../grammar/src/translate.ts";
import type { Span } from "../../../grammar/src/tree.ts";
import { newlineOf } from "../../../grammar/src/walk.ts";
import type { Checker } from "../core/check.ts";
import { andList } from "../core/model/suggest.ts";
import type { FileId } from "../core/place.ts";
import type { JobSurface } from "../core/surface/job-surfaces.ts";
import type { FileFix } from "../views/places/file-finding.ts";
import { declarationsAt } from "./declarations-at.ts";

/** The change that writes the job of the recipe at a span, below everything else; undefined where there is none to write. */
export function jobToWrite(checker: Checker, file: FileId, span: Span): FileFix | undefined {
  const found = checker.program.files.get(file);
  const declaration = declarationsAt(found?.declarations ?? [], span)[0];
  const recipe = declaration?.lowered.model;
  if (!found || recipe?.kind !== "recipe") return undefined;
  const surfaces = checker.meantFor(recipe) ?? [];
  // What an argument is to be nobody knows here.
  if (surfaces.length === 0 || recipe.parameterSyntax.some(({ default: value }) => !value)) return undefined;
  const { text } = found.tree;
  const newline = newlineOf(text);
  const pieces = [...new Set(surfaces.map(({ piece }) => piece.name))];
  const names = surfaces.map((each) => nameOf(each, pieces.length));
  const lines = [
    "",
    `job ${freeName(`${recipe.name}_job`, new Set(found.declarations.map(({ tree }) => tree.key.split(" ")[1] ?? "")))} {`,
    ...pieces.map((piece) => `  piece ${piece}`),
    `  apply ${recipe.name} to ${names.join(", ")}`,
    "}",
    "",
  ];
  const end = { start: text.length, end: text.length };
  return {
    title: t`Write the job that applies \`${recipe.name}\` to ${andList(names.map((name) => `\`${name}\``))}`,
    kind: "change",
    edits: [{ file, span: end, text: `${text.endsWith("\n") ? "" : newline}${lines.join(newline)}` }],
  };
}

const nameOf = ({ piece, surface }: JobSurface, pieces: number): string =>
  pieces > 1 ? `${piece.name}.${surface.name}` : surface.name;

function freeName(wanted: string, taken: ReadonlySet<string>): string {
  if (!taken.has(wanted)) return wanted;
  let number = 2;
  while (taken.has(`${wanted}_${number}`)) number += 1;
  return `${wanted}_${number}`;
}
