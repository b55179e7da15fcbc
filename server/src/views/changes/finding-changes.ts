/** Findings that come and go, by the declaration that they are about. */

import type { FileTree } from "../../../../grammar/src/tree.ts";
import { absoluteSpan } from "../../../../grammar/src/walk.ts";
import { byGravity, type Severity } from "../../core/findings.ts";
import type { FileFinding } from "../places/file-finding.ts";

export interface FindingChange {
  /** `changed`: the same rule says something else, for instance of another figure. */
  readonly kind: "new" | "gone" | "changed";
  readonly rule: string;
  readonly severity: Severity;
  readonly headline: string;
  /** Of `changed`, what it said and how grave it was. */
  readonly was?: { readonly severity: Severity; readonly headline: string };
}

export interface FindingsOfFile {
  /** By `DeclarationTree.key`. */
  readonly byKey: ReadonlyMap<string, readonly FileFinding[]>;
  /** Of lines of no declaration, and of `use` lines. */
  readonly loose: readonly FileFinding[];
}

/** A finding that names a job of the file is about that job, wherever it stands. */
export function findingsByDeclaration(tree: FileTree, findings: readonly FileFinding[]): FindingsOfFile {
  const pieces = tree.pieces.flatMap((piece) =>
    piece.kind === "declaration" && piece.body.syntax.kind !== "use"
      ? [{ key: piece.key, span: absoluteSpan(piece, { start: 0, end: piece.length }) }]
      : [],
  );
  const keys = new Set(pieces.map(({ key }) => key));
  const byKey = new Map<string, FileFinding[]>();
  const loose: FileFinding[] = [];
  for (const finding of findings) {
    const ofJob = `job ${finding.job}`;
    const { start } = finding.span;
    const key =
      finding.job !== undefined && keys.has(ofJob)
        ? ofJob
        : pieces.find(({ span }) => span.start <= start && start < span.end)?.key;
    if (key === undefined) loose.push(finding);
    else byKey.set(key, [...(byKey.get(key) ?? []), finding]);
  }
  return { byKey, loose };
}

/** The gravest first. Findings that say the same are one another's match, then those of one rule in their order. */
export function findingChanges(
  before: readonly FileFinding[],
  after: readonly FileFinding[],
): readonly FindingChange[] {
  const said = ({ rule, severity, headline }: FileFinding): string => `${rule} ${severity} ${headline}`;
  const old = unmatched(before, after, said);
  const now = unmatched(after, before, said);
  const ofRule = ({ rule }: FileFinding): string => rule;
  const gone = unmatched(old, now, ofRule);
  const come = unmatched(now, old, ofRule);
  const partners = old.filter((finding) => !gone.includes(finding));
  const changed = now
    .filter((finding) => !come.includes(finding))
    .map((finding): FindingChange => {
      const at = partners.findIndex(({ rule }) => rule === finding.rule);
      const [was] = partners.splice(at, 1);
      return { ...told("changed", finding), was: { severity: was!.severity, headline: was!.headline } };
    });
  return [
    ...come.map((each) => told("new", each)),
    ...changed,
    ...gone.map((each) => told("gone", each)),
  ].toSorted(byGravity);
}

const told = (kind: FindingChange["kind"], { rule, severity, headline }: FileFinding): FindingChange => ({
  kind,
  rule,
  severity,
  headline,
});

/** Those of `findings` that have no match among `others`, each of which matches one. */
function unmatched(
  findings: readonly FileFinding[],
  others: readonly FileFinding[],
  by: (finding: FileFinding) => string,
): readonly FileFinding[] {
  const left = new Map<string, number>();
  for (const other of others) left.set(by(other), (left.get(by(other)) ?? 0) + 1);
  return findings.filter((finding) => {
    const count = left.get(by(finding)) ?? 0;
    if (count > 0) left.set(by(finding), count - 1);
    return count === 0;
  });
}
