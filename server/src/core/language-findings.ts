/**
 * From what reading and resolving a declaration have found, in spans of that declaration, to findings: with a place, the
 * level of their rule, and their message as headline, reason and remedy.
 */
import type { Span } from "../../../grammar/src/tree.ts";
import { type Finding, type Fix, type RelatedPlace, textOf } from "./findings.ts";
import type { LocalFinding } from "./model/model.ts";
import type { FileId, Place } from "./place.ts";
import { languageSeverity } from "./rules/registry.ts";

/** A finding of a declaration, put into its file. */
export const findingIn = (file: FileId, declaration: string, finding: LocalFinding): Finding =>
  findingBy((span) => ({ file, declaration, span }), finding);

/** A finding whose spans `at` puts into a file. */
export function findingBy(
  at: (span: Span) => Place,
  { rule, span, message, related = [], fix, others = [] }: LocalFinding,
): Finding {
  return {
    ...findingAt(
      rule,
      at(span),
      message,
      related.map((other) => ({ place: at(other.span), message: other.message })),
    ),
    fixes: [...(fix ? [fix] : []), ...others].map(
      (each): Fix => ({
        title: each.title,
        kind: "change",
        edits: [{ place: at(each.span), text: each.text }],
      }),
    ),
  };
}

/** A finding on the notation, at a place that is known. */
export const findingAt = (
  rule: string,
  place: Place,
  message: string,
  related: readonly RelatedPlace[] = [],
): Finding => ({
  rule,
  severity: languageSeverity(rule),
  place,
  ...textOf(message),
  related,
  fixes: [],
});
