/**
 * Checks the names of one file against its program: duplicates over the file and all it uses, `use` lines that find
 * nothing, go round or are of no use, and the names inside every declaration.
 */

import type { Declaration } from "../../../../grammar/src/tree.ts";
import type { FileId, Place } from "../place.ts";
import { type CheckResult, MOST_SUGGESTIONS, type Suggestions } from "./check-context.ts";
import { checkJob, checkMaterialNames, checkPiece } from "./check-job.ts";
import { checkRecipe } from "./check-recipe.ts";
import type { LocalFinding, ModelDeclaration } from "./model.ts";
import {
  modelsOf,
  type Program,
  type ProgramDeclaration,
  type ProgramFile,
  reachableFiles,
  type Scope,
  usesTransitively,
} from "./program.ts";

import { MAX_SEEN_FILES, useGraph } from "./use-graph.ts";

export interface PlacedFinding extends Omit<LocalFinding, "span" | "related" | "fix"> {
  readonly place: Place;
  readonly related: readonly { readonly place: Place; readonly message: string }[];
  readonly fix?: { readonly title: string; readonly place: Place; readonly text: string };
}

/** What the names in one declaration come to. */
export interface DeclarationNames {
  readonly findings: readonly PlacedFinding[];
  /** The files that declare what is named. */
  readonly files: readonly FileId[];
  /** How many names were not known, each of which asks for a suggestion. */
  readonly unknown: number;
}

/** The names in a declaration of this file; a suggestion is made for so many of those that are not known. */
export type NamesIn = (declaration: ProgramDeclaration, suggestions: number) => DeclarationNames;

export function placeFinding(file: string, declaration: string, finding: LocalFinding): PlacedFinding {
  const at = (span: LocalFinding["span"]): Place => ({ file, declaration, span });
  return {
    rule: finding.rule,
    message: finding.message,
    place: at(finding.span),
    related: (finding.related ?? []).map((r) => ({ place: at(r.span), message: r.message })),
    ...(finding.fix
      ? { fix: { title: finding.fix.title, place: at(finding.fix.span), text: finding.fix.text } }
      : {}),
  };
}

/** Checks the names inside one declaration against the scope of its file. */
export function checkDeclarationNames(
  model: ModelDeclaration | undefined,
  syntax: Declaration,
  scope: Scope,
  suggestions: Suggestions = { left: MOST_SUGGESTIONS },
): CheckResult {
  if (model?.kind === "recipe" && syntax.kind === "recipe")
    return checkRecipe(model, syntax, scope, suggestions);
  if (model?.kind === "job" && syntax.kind === "job") return checkJob(model, syntax, scope, suggestions);
  if (model?.kind === "piece") return checkPiece(model, scope, suggestions);
  if (model?.kind === "material" && syntax.kind === "material")
    return checkMaterialNames(model, syntax, scope, suggestions);
  return { findings: [], references: [] };
}

/** Checks the names in one declaration, and puts what is found into its file. */
export function namesInDeclaration(
  file: FileId,
  { tree, lowered: { model, syntax } }: ProgramDeclaration,
  scope: Scope,
  most: number,
): DeclarationNames {
  const suggestions: Suggestions = { left: most };
  const { findings, references } = checkDeclarationNames(model, syntax, scope, suggestions);
  return {
    findings: findings.map((finding) => placeFinding(file, tree.key, finding)),
    files: [...new Set(references.flatMap(({ target }) => target?.file ?? []))],
    unknown: most - suggestions.left,
  };
}

/** `mayRepeat`: whether the file and all it uses may declare a name twice. */
export function checkNames(
  program: Program,
  file: ProgramFile,
  namesIn: NamesIn,
  mayRepeat: boolean,
): readonly PlacedFinding[] {
  const named = new Set<FileId>();
  let left = MOST_SUGGESTIONS;
  const findings = file.declarations.flatMap((declaration) => {
    let found = namesIn(declaration, left === 0 ? 0 : MOST_SUGGESTIONS);
    if (left > 0 && found.unknown > left) found = namesIn(declaration, left);
    left = Math.max(0, left - found.unknown);
    for (const target of found.files) named.add(target);
    return found.findings;
  });
  return [...findings, ...(mayRepeat ? duplicates(program, file) : []), ...checkUses(program, file, named)];
}

/** Whether one of these files, or two of them, declare something of one kind and name twice. */
export function repeatsNames(program: Program, files: readonly FileId[]): boolean {
  const seen = new Set<string>();
  return files.some((id) => {
    const file = program.files.get(id);
    return (file ? modelsOf(file) : []).some(({ kind, name }) => {
      const key = `${kind} ${name}`;
      const isKnown = seen.has(key);
      seen.add(key);
      return isKnown;
    });
  });
}

function duplicates(program: Program, file: ProgramFile): readonly PlacedFinding[] {
  const first = new Map<string, ModelDeclaration>();
  const own = new Set(modelsOf(file));
  const findings: PlacedFinding[] = [];
  const used = reachableFiles(program, file.id).filter((id) => id !== file.id);
  for (const id of used) {
    for (const model of program.files.has(id) ? modelsOf(program.files.get(id)!) : []) {
      const key = `${model.kind} ${model.name}`;
      const other = first.get(key);
      if (!other) first.set(key, model);
      else if (other.file !== model.file) findings.push(...duplicateOfUsed(program, file, model, other));
    }
  }
  for (const model of own) {
    const key = `${model.kind} ${model.name}`;
    const other = first.get(key);
    if (!other) {
      first.set(key, model);
      continue;
    }
    findings.push({
      rule: "duplicate-name",
      place: model.namePlace,
      message: `There already is a ${model.kind} \`${model.name}\`${other.file === model.file ? "" : " in a file that this one uses"}. Names are unique over a file and all that it uses: give this one another name.`,
      related: [{ place: other.namePlace, message: `The other \`${model.name}\`` }],
    });
  }
  return findings;
}

/** Two used files declare the same name: shown at the `use` line that brings the second one in. */
function duplicateOfUsed(
  program: Program,
  file: ProgramFile,
  model: ModelDeclaration,
  other: ModelDeclaration,
): readonly PlacedFinding[] {
  // Where one of the two files already sees the other, the finding is that file's own.
  if (usesTransitively(program, model.file, other.file) || usesTransitively(program, other.file, model.file))
    return [];
  const link = file.uses.find(
    ({ target }) => target === model.file || usesTransitively(program, target, model.file),
  );
  if (!link) return [];
  return [
    {
      rule: "duplicate-name",
      place: link.place,
      message: `Two of the used files declare a ${model.kind} \`${model.name}\`. Names are unique over a file and all that it uses: rename one of them.`,
      related: [
        { place: other.namePlace, message: "One" },
        { place: model.namePlace, message: "The other" },
      ],
    },
  ];
}

function checkUses(
  program: Program,
  file: ProgramFile,
  named: ReadonlySet<FileId>,
): readonly PlacedFinding[] {
  if (file.uses.length === 0) return [];
  const findings: PlacedFinding[] = [];
  const onlyPassesOn = file.declarations.every((d) => d.lowered.syntax.kind === "use");
  // While a part of the file cannot be read, nobody knows what it would name.
  const broken = file.tree.pieces.some(
    (piece) => piece.kind === "stray" || (piece.kind === "declaration" && piece.body.problems.length > 0),
  );
  const seen = new Set<string>();
  const needed = neededUses(program, file, named);
  if (reachableFiles(program, file.id).length === MAX_SEEN_FILES && file.uses[0]) {
    findings.push({
      rule: "use-not-found",
      place: file.uses[0].place,
      message: `This file uses ${MAX_SEEN_FILES} files or more, directly or not. The names of those beyond that are not known here: use fewer files.`,
      related: [],
    });
  }
  for (const use of file.uses) {
    const plain = (rule: string, message: string) =>
      findings.push({ rule, place: use.place, message, related: [] });
    const reason = program.absent.get(use.target);
    if (reason !== undefined)
      plain(
        "use-not-found",
        `The file "${use.path}" cannot be used: ${reason}. The path is relative to this file.`,
      );
    else if (use.target === file.id || usesTransitively(program, use.target, file.id)) {
      plain(
        "use-cycle",
        use.target === file.id
          ? "This file uses itself. It sees its own declarations anyway. Take the line out."
          : `Circular \`use\`: the two files use each other. "${use.path}" uses this file, too. Move what both need into a third file.`,
      );
    } else if (seen.has(use.target))
      plain("repeated-field", `"${use.path}" is used twice. Keep one of the two lines.`);
    else if (!onlyPassesOn && !broken && program.files.has(use.target) && !needed.has(use.target)) {
      plain("unused-name", `Nothing here names anything from "${use.path}". Take the line out.`);
    }
    seen.add(use.target);
  }
  return findings;
}

/** The used files that declare what is named here, or lead to one that does. */
const neededUses = (program: Program, file: ProgramFile, named: ReadonlySet<FileId>): ReadonlySet<FileId> =>
  useGraph(program).leadingTo(
    file.uses.map(({ target }) => target),
    named,
  );
