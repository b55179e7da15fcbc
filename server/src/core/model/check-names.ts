/**
 * Checks the names of one file against its program: duplicates over the file and all it uses, `use` lines that find
 * nothing, go round or are of no use, and the names inside every declaration.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Finding } from "../findings.ts";
import { findingAt, findingIn } from "../language-findings.ts";
import { onceFor } from "../once.ts";
import { type Outcome, valueIn } from "../outcome.ts";
import type { FileId } from "../place.ts";
import { findingsOf, MOST_SUGGESTIONS, type Suggestions } from "../resolution/problems.ts";
import { isDeclaring } from "../resolution/reference.ts";
import { type Resolution, referenceAt } from "../resolution/resolve.ts";
import { jobGraph } from "./job-graph.ts";
import type { LocalFinding, ModelDeclaration } from "./model.ts";
import { isPackagePath, packagePath } from "./package-path.ts";
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

/** What the names in one declaration come to. */
export interface DeclarationNames {
  readonly findings: readonly Finding[];
  /** The files that declare what is named. */
  readonly files: readonly FileId[];
  /** How many names were not known, each of which asks for a suggestion. */
  readonly unknown: number;
}

/** The names in a declaration of this file; a suggestion is made for so many of those that are not known. */
export type NamesIn = (declaration: ProgramDeclaration, suggestions: number) => DeclarationNames;

/** What is wrong with the names in a declaration; so many suggestions are made at most. */
export function namesInDeclaration(
  file: FileId,
  { tree, lowered }: ProgramDeclaration,
  resolution: Resolution,
  scope: Scope,
  most: number,
): DeclarationNames {
  const suggestions: Suggestions = { left: most };
  const findings = [
    ...findingsOf(resolution.problems, scope, suggestions),
    ...orderFindings(lowered.model, resolution, scope),
  ];
  return {
    findings: findings.map((finding) => findingIn(file, tree.key, finding)),
    files: filesNamed(resolution),
    unknown: most - suggestions.left,
  };
}

const filesNamed = ({ references }: Resolution): readonly FileId[] => [
  ...new Set(
    references.flatMap((reference) =>
      isDeclaring(reference) ? [] : reference.referents.flatMap(({ place }) => place?.file ?? []),
    ),
  ),
];

/** A job may not follow itself, over `after` or `existing as left by`, and must leave the surface that goes on from it. */
function orderFindings(
  model: ModelDeclaration | undefined,
  resolution: Resolution,
  scope: Scope,
): readonly LocalFinding[] {
  if (model?.kind === "job" && model.after && jobGraph(scope).comesAfterItself(model)) {
    return [
      {
        rule: "follow-cycle",
        span: model.after.place.span,
        message: t`\`${model.name}\` would come after itself\nName an earlier job.`,
      },
    ];
  }
  if (model?.kind !== "piece") return [];
  return model.surfaces.flatMap(({ name, asLeftBy }): readonly LocalFinding[] => {
    const [meant] = (asLeftBy && referenceAt(resolution, asLeftBy.place.span.start)?.referents) ?? [];
    if (!asLeftBy || meant?.kind !== "job" || meant.model?.kind !== "job") return [];
    const { span } = asLeftBy.place;
    // A job that works on this very piece starts from bare wood; later jobs start from what it leaves.
    if (jobGraph(scope).leadsBack(meant.model, model)) {
      const message = t`\`${asLeftBy.job}\` starts from what a job on this piece leaves, so each needs the other first\nDescribe the piece as it was before the first job.`;
      return [{ rule: "follow-cycle", span, message }];
    }
    if (jobGraph(scope).hasSurface(meant.model, name)) return [];
    const message = t`\`${asLeftBy.job}\` has no surface \`${name}\` to leave layers on.`;
    return [{ rule: "unknown-name", span, message }];
  });
}

/**
 * `names` are those in the declarations of the file with all suggestions, `namesIn` brings them with fewer. `mayRepeat`:
 * whether the file and all it uses may declare a name twice.
 */
export function checkNames(
  program: Program,
  file: ProgramFile,
  names: readonly Outcome<DeclarationNames>[],
  namesIn: NamesIn,
  mayRepeat: boolean,
): readonly Finding[] {
  const named = new Set<FileId>();
  const findings: Finding[] = [];
  let left = MOST_SUGGESTIONS;
  for (const row of tellingRows(names)) {
    let found = valueIn(names[row]!);
    if (found.unknown > left) found = namesIn(file.declarations[row]!, left);
    left = Math.max(0, left - found.unknown);
    findings.push(...found.findings);
  }
  if (file.uses.length > 0)
    for (const outcome of names) for (const target of valueIn(outcome).files) named.add(target);
  return [...findings, ...(mayRepeat ? duplicates(program, file) : []), ...checkUses(program, file, named)];
}

/** The declarations of which something is said; looked for once a list, which most edits leave as it is. */
const tellingRows = onceFor((names: readonly Outcome<DeclarationNames>[]): readonly number[] =>
  names.flatMap((outcome, row) => {
    const { findings, unknown } = valueIn(outcome);
    return findings.length + unknown > 0 ? [row] : [];
  }),
);

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

function duplicates(program: Program, file: ProgramFile): readonly Finding[] {
  const first = new Map<string, ModelDeclaration>();
  const own = new Set(modelsOf(file));
  const findings: Finding[] = [];
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
    const message = [
      other.file === model.file
        ? t`There already is a ${translated(model.kind)} \`${model.name}\``
        : t`There already is a ${translated(model.kind)} \`${model.name}\` in a file that this one uses`,
      t`Names are unique over a file and all that it uses: give this one another name.`,
    ].join("\n");
    const related = [{ place: other.namePlace, message: t`The other \`${model.name}\`` }];
    findings.push(findingAt("duplicate-name", model.namePlace, message, related));
  }
  return findings;
}

/** Two used files declare the same name: shown at the `use` line that brings the second one in. */
function duplicateOfUsed(
  program: Program,
  file: ProgramFile,
  model: ModelDeclaration,
  other: ModelDeclaration,
): readonly Finding[] {
  // Where one of the two files already sees the other, the finding is that file's own.
  if (usesTransitively(program, model.file, other.file) || usesTransitively(program, other.file, model.file))
    return [];
  const link = file.uses.find(
    ({ target }) => target === model.file || usesTransitively(program, target, model.file),
  );
  if (!link) return [];
  return [
    findingAt(
      "duplicate-name",
      link.place,
      t`Two of the used files declare a ${translated(model.kind)} \`${model.name}\`\nNames are unique over a file and all that it uses: rename one of them.`,
      [
        { place: other.namePlace, message: t`One` },
        { place: model.namePlace, message: t`The other` },
      ],
    ),
  ];
}

function checkUses(program: Program, file: ProgramFile, named: ReadonlySet<FileId>): readonly Finding[] {
  if (file.uses.length === 0) return [];
  const findings: Finding[] = [];
  const onlyPassesOn = file.declarations.every((d) => d.lowered.syntax.kind === "use");
  // While a part of the file cannot be read, nobody knows what it would name.
  const broken = file.tree.pieces.some(
    (piece) => piece.kind === "stray" || (piece.kind === "declaration" && piece.body.problems.length > 0),
  );
  const seen = new Set<string>();
  const needed = neededUses(program, file, named);
  if (useGraph(program).sight(file.id).files.length === MAX_SEEN_FILES && file.uses[0]) {
    const message = t`This file uses ${MAX_SEEN_FILES} files or more, directly or not\nThe names of those beyond that are not known here: use fewer files.`;
    findings.push(findingAt("use-not-found", file.uses[0].place, message));
  }
  for (const use of file.uses) {
    const plain = (rule: string, message: string) => findings.push(findingAt(rule, use.place, message));
    const reason = program.absent.get(use.target);
    if (isPackagePath(use.path) && packagePath(use.path) === undefined)
      plain(
        "use-not-found",
        t`"${use.path}" does not say which file of which package\nWrite the name of the package and a recipe in it, such as "pkg:shared-finishes/clears.finish".`,
      );
    else if (reason !== undefined)
      plain("use-not-found", t`The file "${use.path}" cannot be used: ${reason}\n${whereLooked(use.path)}`);
    else if (use.target === file.id || usesTransitively(program, use.target, file.id)) {
      plain(
        "use-cycle",
        use.target === file.id
          ? t`This file uses itself\nIt sees its own declarations anyway.\nTake the line out.`
          : t`Circular \`use\`: the two files use each other\n"${use.path}" uses this file, too.\nMove what both need into a third file.`,
      );
    } else if (seen.has(use.target))
      plain("repeated-field", t`"${use.path}" is used twice\nKeep one of the two lines.`);
    else if (!onlyPassesOn && !broken && program.files.has(use.target) && !needed.has(use.target)) {
      plain("unused-name", t`Nothing here names anything from "${use.path}"\nTake the line out.`);
    }
    seen.add(use.target);
  }
  return findings;
}

function whereLooked(path: string): string {
  const asked = packagePath(path);
  return asked === undefined
    ? t`The path is relative to this file.`
    : t`Packages are looked for in the folders \`node_modules\` from this file up to the root of its repository: install \`${asked.name}\` with npm, or fix the name.`;
}

/** The used files that declare what is named here, or lead to one that does. */
const neededUses = (program: Program, file: ProgramFile, named: ReadonlySet<FileId>): ReadonlySet<FileId> =>
  useGraph(program).leadingTo(
    file.uses.map(({ target }) => target),
    named,
  );
