/**
 * `textDocument/codeAction`: the fixes of the findings at the caret, the gravest first, then for each finding its
 * explanation and the comment that allows it; then the job that a recipe lacks, and last what can be recorded as done, where
 * the client has a clock for it.
 *
 * Findings below the level that the user asked for are not shown, so their fixes are not offered either.
 */
import type { CodeAction, CodeActionParams, Diagnostic, Range, WorkspaceEdit } from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import { t } from "../../../../grammar/src/translate.ts";
import type { Span } from "../../../../grammar/src/tree.ts";
import { byGravity } from "../../core/findings.ts";
import { memo } from "../../core/once.ts";
import type { FileId } from "../../core/place.ts";
import { allowingIn } from "../../features/allow-here.ts";
import type { FileEdit, FileFindingPart } from "../../views/places/file-finding.ts";
import { partsOf } from "../../views/places/finding-parts.ts";
import { FIX_ALL } from "../capabilities.ts";
import type { ClientFacts } from "../client-facts.ts";
import { EXPLAIN_COMMAND, RECORD_COMMAND } from "../custom-requests.ts";
import type { Snapshot } from "../files.ts";
import { spanOf, touches } from "../from-lsp.ts";
import { marksOf } from "../line-marks.ts";
import { CodeActionKind } from "../protocol.ts";
import { recordCommand } from "../record-command.ts";
import type { Session } from "../session.ts";
import { isShown, shownLevels } from "../settings.ts";
import { toCodeAction, toRange, toWorkspaceEdit } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const codeAction = async (session: Session, params: CodeActionParams): Promise<CodeAction[]> => {
  const [quick, all] = [asksForFixes(params), asksForAll(params)];
  if (!quick && !all) return [];
  const file = fileIdOf(params.textDocument.uri);
  await session.files.settled(file);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return [];
  const span = spanOf(document, params.range);
  const { facts, rulePage, settings } = session;
  const levels = shownLevels(settings);
  const fixing = all ? fixAll(snapshot.analysis.fixAll(file, levels), snapshot, facts) : [];
  if (!quick) return fixing;
  // All of the lines, as the words at which a finding is marked may be those of another.
  const lines = wholeLines(document, params.range);
  const near = snapshot.analysis
    .findings(file)
    .filter((finding) => touches(finding.span, lines) && isShown(finding.severity, settings));
  const answered = marksOf(near, document, snapshot, facts, rulePage)
    .filter(
      ({ finding, diagnostic }) =>
        touches(finding.span, span) || touches(spanOf(document, diagnostic.range), span),
    )
    .toSorted((a, b) => byGravity(a.finding, b.finding))
    .map(({ finding, diagnostic }) => {
      // The client's own copy of the diagnostic, so that it can tell which one an action is about.
      const known = params.context.diagnostics.filter((each) => isSame(each, diagnostic));
      return { finding, diagnostics: known.length > 0 ? known : [diagnostic] };
    });
  const { jobToWrite, repairToWrite } = snapshot.analysis;
  const written = jobToWrite(file, span) ?? repairToWrite(file, span);
  const allowing = memo((of: FileId) => allowingIn(snapshot.analysis.text(of) ?? ""));
  return [
    ...answered.flatMap(({ finding, diagnostics }) =>
      finding.fixes.map((fix) => toCodeAction(fix, diagnostics, snapshot, facts)),
    ),
    ...answered.flatMap(({ finding, diagnostics }) =>
      partsOf(finding).flatMap((part) => [
        ...explain(part, diagnostics, facts),
        ...allow(part, allowing(part.file)(part), diagnostics, snapshot, facts),
      ]),
    ),
    ...(written ? [toCodeAction(written, [], snapshot, facts)] : []),
    ...(facts.commands.has(RECORD_COMMAND)
      ? snapshot.analysis.nextToRecord(file, span).map((next) => {
          const command = recordCommand(next, params.textDocument.uri, document, snapshot.versionOf(file));
          return { title: command.title, kind: CodeActionKind.QuickFix, command };
        })
      : []),
    ...fixing,
  ];
};

const wholeLines = (document: TextDocument, { start, end }: Range): Span => ({
  start: document.offsetAt({ line: start.line, character: 0 }),
  end: document.offsetAt({ line: end.line + 1, character: 0 }),
});

/** Those that change neither what is done nor what is promised; what is left when they are done may have more of them. */
const fixAll = (edits: readonly FileEdit[], snapshot: Snapshot, facts: ClientFacts): CodeAction[] =>
  edits.length === 0
    ? []
    : [
        {
          title: t`Fix all that is safe to fix`,
          kind: FIX_ALL,
          edit: toWorkspaceEdit(edits, snapshot, facts),
        },
      ];

const commandAction = (title: string, command: string, argument: unknown): CodeAction => ({
  title,
  kind: CodeActionKind.QuickFix,
  command: { title, command, arguments: [argument] },
});

/** Where the client shows pages of rules by a command of its own. */
const explain = ({ rule }: FileFindingPart, diagnostics: Diagnostic[], facts: ClientFacts): CodeAction[] =>
  facts.commands.has(EXPLAIN_COMMAND)
    ? [
        {
          ...commandAction(t`Explain ${rule}`, EXPLAIN_COMMAND, rule),
          diagnostics,
        },
      ]
    : [];

/** Puts the comment there; its reason is left to be written, and until then it allows nothing. */
function allow(
  part: FileFindingPart,
  edit: FileEdit | undefined,
  diagnostics: Diagnostic[],
  snapshot: Snapshot,
  facts: ClientFacts,
): CodeAction[] {
  if (edit === undefined) return [];
  return [
    {
      title: t`Allow ${part.rule} here, with a reason`,
      kind: CodeActionKind.QuickFix,
      diagnostics,
      edit: toCommentEdit(edit, snapshot, facts),
    },
  ];
}

/** With the caret where the reason goes, for a client that can put it there. */
function toCommentEdit(edit: FileEdit, snapshot: Snapshot, facts: ClientFacts): WorkspaceEdit {
  const plain = toWorkspaceEdit([edit], snapshot, facts);
  const document = snapshot.document(edit.file);
  if (!facts.snippetEdits || !facts.versionedEdits || document === undefined) return plain;
  const value = `${edit.text.trimEnd()} $0${/\r?\n$/u.exec(edit.text)![0]}`;
  return {
    documentChanges: [
      {
        textDocument: { uri: snapshot.uriOf(edit.file), version: snapshot.versionOf(edit.file) ?? null },
        edits: [{ range: toRange(document, edit.span), snippet: { kind: "snippet", value } }],
      },
    ],
  };
}

/** Kinds are a tree: who asks for `quickfix`, or for everything, gets fixes. */
const asksForFixes = (params: CodeActionParams): boolean =>
  params.context.only?.some((kind) => kind === "" || kind === CodeActionKind.QuickFix) ?? true;

/** Only where somebody asks for it, as a client does when a file is saved: it has no place among the fixes of a line. */
const asksForAll = ({ context: { only = [] } }: CodeActionParams): boolean =>
  only.some((kind) => kind !== "" && (kind === FIX_ALL || FIX_ALL.startsWith(`${kind}.`)));

const isSame = (a: Diagnostic, b: Diagnostic): boolean =>
  a.code === b.code &&
  a.message === b.message &&
  a.range.start.line === b.range.start.line &&
  a.range.start.character === b.range.start.character;
