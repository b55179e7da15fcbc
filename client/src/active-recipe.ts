/**
 * The recipe that a command is about: the one with the caret, else one that is to be seen, else one that is open at all,
 * so that commands also work from a report, a preview or the walkthrough.
 */
import { type TextDocument, type Uri, window, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import type { ReportTarget } from "../../server/src/lsp/custom-requests.ts";

const LANGUAGE = "finish";

const isRecipe = ({ languageId }: TextDocument): boolean => languageId === LANGUAGE;

export const activeRecipe = (): TextDocument | undefined => {
  const visible = window.visibleTextEditors.map(({ document }) => document);
  const active = window.activeTextEditor?.document;
  return [...(active ? [active] : []), ...visible, ...openedLast()].find(isRecipe);
};

const openedLast = (): readonly TextDocument[] => workspace.textDocuments.toReversed();

/**
 * What a command is to work on: a job of a lens or of the tree, a file of the explorer, or else the recipe at hand. Menus give
 * a file's address, lenses and the tree what names the file and the job.
 */
export const targetOf = (client: BaseLanguageClient, given: unknown): ReportTarget | undefined => {
  if (isAddress(given)) return { uri: client.code2ProtocolConverter.asUri(given) };
  if (typeof given === "object" && given !== null && "uri" in given && typeof given.uri === "string") {
    const job = "job" in given && typeof given.job === "string" ? { job: given.job } : {};
    return { uri: given.uri, ...job };
  }
  const document = activeRecipe();
  return document && { uri: client.code2ProtocolConverter.asUri(document.uri) };
};

const isAddress = (given: unknown): given is Uri =>
  typeof given === "object" && given !== null && "scheme" in given && "path" in given;
