/**
 * What an edit changes of a file's declarations, for the memory: compared by identity, since unchanged text keeps its
 * meaning as the same object.
 */
import type { ModelDeclaration } from "../model/model.ts";
import type { ProgramDeclaration, ProgramFile } from "../model/program.ts";
import { allNames, KIND_IN_SCOPE, nameKey } from "./recording-scope.ts";

export interface Changes {
  /** Keys of look-ups whose answers may have changed. */
  readonly names: ReadonlySet<string>;
  /** Keys of declarations that are no longer there. */
  readonly gone: readonly string[];
  /** Declarations have come, gone, changed places, or name others than before. */
  readonly isRearranged: boolean;
  /** What declarations meant before and mean now, where none have come, gone or changed places. */
  readonly replaced: readonly Replaced[] | undefined;
}

export interface Replaced {
  readonly before: ModelDeclaration;
  readonly now: ModelDeclaration;
}

/** The changes from one state of a file to the next; undefined where the file is not there. */
export function changesBetween(
  before: ProgramFile | undefined,
  now: ProgramFile | undefined,
  outlineOf: (model: ModelDeclaration) => string,
): Changes {
  const [old, fresh] = differing(before?.declarations ?? [], now?.declarations ?? []);
  const names = new Set<string>();
  const note = ({ lowered: { model } }: ProgramDeclaration): void => {
    if (model && model.name !== "") names.add(nameKey(KIND_IN_SCOPE[model.kind], model.name));
  };
  const isMoved =
    old.length !== fresh.length || old.some(({ tree }, index) => tree.key !== fresh[index]!.tree.key);
  if (isMoved) {
    for (const { lowered } of [...old, ...fresh])
      if (lowered.model) names.add(allNames(KIND_IN_SCOPE[lowered.model.kind]));
  }
  const gone: string[] = [];
  let isRearranged = isMoved;
  for (const declaration of old) {
    const other = now?.byKey.get(declaration.tree.key);
    if (!other) gone.push(declaration.tree.key);
    if (other?.lowered === declaration.lowered) continue;
    note(declaration);
    isRearranged ||= outline(declaration, outlineOf) !== outline(other, outlineOf);
  }
  for (const declaration of fresh)
    if (before?.byKey.get(declaration.tree.key)?.lowered !== declaration.lowered) note(declaration);
  return { names, gone, isRearranged, replaced: isMoved ? undefined : replacedIn(old, fresh) };
}

/** Of declarations with the same keys; undefined where one has lost or got its name. */
function replacedIn(
  old: readonly ProgramDeclaration[],
  fresh: readonly ProgramDeclaration[],
): readonly Replaced[] | undefined {
  const replaced: Replaced[] = [];
  for (const [index, { lowered }] of old.entries()) {
    const [before, now] = [lowered.model, fresh[index]!.lowered.model];
    if (before === now) continue;
    if (!before || !now || before.kind !== now.kind || before.name !== now.name) return undefined;
    replaced.push({ before, now });
  }
  return replaced;
}

const outline = (
  declaration: ProgramDeclaration | undefined,
  outlineOf: (model: ModelDeclaration) => string,
): string => (declaration?.lowered.model ? outlineOf(declaration.lowered.model) : "");

/** Both lists without what they have in common at their beginning and at their end. */
function differing(
  a: readonly ProgramDeclaration[],
  b: readonly ProgramDeclaration[],
): readonly [readonly ProgramDeclaration[], readonly ProgramDeclaration[]] {
  const isSame = (x: ProgramDeclaration | undefined, y: ProgramDeclaration | undefined): boolean =>
    x !== undefined && y !== undefined && (x === y || (x.lowered === y.lowered && x.tree.key === y.tree.key));
  let start = 0;
  while (isSame(a[start], b[start])) start += 1;
  let end = 0;
  const most = Math.min(a.length, b.length) - start;
  while (end < most && isSame(a[a.length - 1 - end], b[b.length - 1 - end])) end += 1;
  return [a.slice(start, a.length - end), b.slice(start, b.length - end)];
}
