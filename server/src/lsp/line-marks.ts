/**
 * The findings of a file as diagnostics, in the order of the text and the gravest of one place first.
 *
 * For a client that asks for one mark a line, all findings that begin on a line stand at the words of the gravest: each is a
 * diagnostic of its own, with its rule, page and fixes, and its first related place is the words that it is about. So a line
 * has one wave, whose hover tells all of them, and no list has one less. Who does not ask gets each at its own words. Such an
 * editor shows a message under its line as it stands and cuts off what is longer, so that it comes in short lines.
 */
import type { Diagnostic } from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import { LONGEST_GIST } from "../../../grammar/src/gist.ts";
import { t } from "../../../grammar/src/translate.ts";
import { messageOf } from "../core/findings.ts";
import { byDanger } from "../core/rules/registry.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { linesOf } from "../views/text-lines.ts";
import type { ClientFacts } from "./client-facts.ts";
import type { Snapshot } from "./files.ts";
import { toDiagnostic, toMessage } from "./to-lsp.ts";

export interface Marked {
  readonly finding: FileFinding;
  readonly diagnostic: Diagnostic;
}

export const marksOf = (
  findings: readonly FileFinding[],
  document: TextDocument,
  snapshot: Snapshot,
  facts: ClientFacts,
  rulePage: (rule: string) => string | undefined,
): readonly Marked[] => {
  const marks = findings.toSorted(byPlaceAndGravity).map((finding) => ({
    finding,
    diagnostic: toDiagnostic(finding, document, snapshot, facts, rulePage),
  }));
  if (!facts.marksLines) return marks;
  const lines = new Map<number, Marked[]>();
  for (const mark of marks.map(inShortLines)) {
    const { line } = mark.diagnostic.range.start;
    const others = lines.get(line);
    if (others) others.push(mark);
    else lines.set(line, [mark]);
  }
  return [...lines.values()].flatMap((line) => {
    const [first, ...others] = line.toSorted((a, b) => byDanger(a.finding, b.finding));
    return [first!, ...others.map((mark) => movedTo(first!, mark, document.uri, facts))];
  });
};

/** What waits until the first part of a remedy is done is left to the page of the rule, where the client leads there. */
const shortMessage = ({ finding, diagnostic }: Marked): string | undefined => {
  if (typeof diagnostic.message !== "string") return undefined;
  if (finding.atFirst === undefined || diagnostic.codeDescription === undefined) return diagnostic.message;
  const rest = t`What to do then: see the page of this rule.`;
  return toMessage({ ...finding, message: messageOf({ ...finding, remedy: `${finding.atFirst}\n${rest}` }) });
};

const inShortLines = (mark: Marked): Marked => {
  const message = shortMessage(mark);
  if (message === undefined) return mark;
  const broken = message.split("\n").map(inColumns).join("\n");
  return { ...mark, diagnostic: { ...mark.diagnostic, message: broken } };
};

/** A line broken at blanks to be no longer than a headline may be, which fits into a hover, but not within what is in quotes, which is typed as it stands. */
const inColumns = (line: string): string => {
  const lines = Math.ceil(line.length / LONGEST_GIST);
  // As long as each other, so that none ends with a word by itself; what is typed may need more than that.
  const most = Math.min(LONGEST_GIST, Math.ceil(line.length / lines) + LONGEST_WORD);
  return linesOf(unbroken(line), most).join("\n");
};

const LONGEST_WORD = 8;

/** Words, and what is typed with all of its words. */
function unbroken(line: string): readonly string[] {
  const parts: string[][] = [];
  let isTyped = false;
  for (const word of line.split(" ")) {
    if (isTyped) parts.at(-1)!.push(word);
    else parts.push([word]);
    isTyped = endsTyped(word, isTyped);
  }
  return parts.map((words) => words.join(" "));
}

/** Whether what is typed goes on behind a word: it begins with “, or in German with „, and ends with ” or “. */
const endsTyped = (word: string, isTyped: boolean): boolean => {
  const [begins, ends] = word.includes("„") || (isTyped && !word.includes("”")) ? ["„", "“"] : ["“", "”"];
  const [open, close] = [word.lastIndexOf(begins), word.lastIndexOf(ends)];
  return open === close ? isTyped : open > close;
};

/** What an editor fades stays where it is, for that is what is faded. */
const movedTo = (first: Marked, mark: Marked, uri: string, facts: ClientFacts): Marked => {
  const { range, tags, relatedInformation = [] } = mark.diagnostic;
  const to = first.diagnostic.range;
  if (tags !== undefined || isSame(range, to)) return mark;
  const words = facts.relatedInformation
    ? [{ location: { uri, range }, message: t`It is about these words.` }]
    : [];
  return {
    ...mark,
    diagnostic: { ...mark.diagnostic, range: to, relatedInformation: [...words, ...relatedInformation] },
  };
};

const isSame = (a: Diagnostic["range"], b: Diagnostic["range"]): boolean =>
  a.start.character === b.start.character && a.end.line === b.end.line && a.end.character === b.end.character;

/** Editors show what stands at one place in the order that they got it: the gravest is read first. */
const byPlaceAndGravity = (a: FileFinding, b: FileFinding): number =>
  a.span.start - b.span.start || byDanger(a, b);
