/**
 * `textDocument/codeLens`: what every job comes to, above it.
 *
 * A client with commands for it gets a lens for each part, which leads to the plan, the totals or the gravest finding, and
 * one that records what is next as done; any other gets one that is only read.
 */
import type { CancellationToken, CodeLens, CodeLensParams, Command } from "vscode-languageserver";
import type { TextDocument } from "vscode-languageserver-textdocument";
import { shownText } from "../../escape/shown-text.ts";
import type { JobLens, JobLensPart } from "../../features/types.ts";
import type { ClientFacts } from "../client-facts.ts";
import { type FindingTarget, LENS_COMMANDS, RECORD_COMMAND, type ReportTarget } from "../custom-requests.ts";
import { recordCommand } from "../record-command.ts";
import type { Session } from "../session.ts";
import { shownLevels } from "../settings.ts";
import { toRange } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";
import { wholePlans } from "../whole-answers.ts";

export const codeLens = async (
  session: Session,
  params: CodeLensParams,
  token: CancellationToken,
): Promise<CodeLens[]> => {
  const { facts, settings } = session;
  if (!settings.jobLenses) return [];
  const { uri } = params.textDocument;
  const file = fileIdOf(uri);
  await session.files.settled(file);
  await wholePlans(session, file, session.facts.refreshesCodeLenses, token);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return [];
  const levels = shownLevels(settings);
  const lenses = snapshot.analysis.jobLenses(file, levels);
  if (facts.commands.size === 0) return lenses.map((lens) => readLens(lens, document));
  return lenses.flatMap((lens) => {
    const [next] = facts.commands.has(RECORD_COMMAND) ? snapshot.analysis.nextToRecord(file, lens.span) : [];
    const commands = [
      ...lens.parts.map((part) => commandOf(part, targetOf(lens, part, uri, document), facts)),
      ...(next ? [recordLens(recordCommand(next, uri, document, snapshot.versionOf(file)))] : []),
    ];
    return commands.map((command) => ({ range: toRange(document, lens.span), command }));
  });
};

/** What the protocol asks for where nothing is to happen on a click. */
const NO_COMMAND = "";

const readLens = ({ span, parts }: JobLens, document: TextDocument): CodeLens => ({
  range: toRange(document, span),
  command: { title: titleText(parts.map(({ text }) => text).join(" · ")), command: NO_COMMAND },
});

/** Some editors draw `$(name)` in a lens as a picture; with a blank between it is what it is. */
const titleText = (text: string): string => shownText(text).replaceAll("$(", "$ (");

const recordLens = (command: Command): Command => ({ ...command, title: titleText(command.title) });

const commandOf = ({ kind, text }: JobLensPart, target: unknown, facts: ClientFacts): Command => {
  const command = LENS_COMMANDS[kind];
  const title = titleText(text);
  return facts.commands.has(command)
    ? { title, command, arguments: [target] }
    : { title, command: NO_COMMAND };
};

const targetOf = (
  { job }: JobLens,
  { first }: JobLensPart,
  uri: string,
  document: TextDocument,
): ReportTarget | FindingTarget =>
  first === undefined ? { uri, job } : { uri, start: document.positionAt(first.start) };
