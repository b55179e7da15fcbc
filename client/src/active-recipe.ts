/**
 * The recipe that a command is about: the one with the caret, else one that is to be seen, else one that is open at all,
 * so that commands also work from a report, a preview or the walkthrough.
 */
import { type TextDocument, window, workspace } from "vscode";

const LANGUAGE = "finish";

const isRecipe = ({ languageId }: TextDocument): boolean => languageId === LANGUAGE;

export const activeRecipe = (): TextDocument | undefined => {
  const visible = window.visibleTextEditors.map(({ document }) => document);
  const active = window.activeTextEditor?.document;
  return [...(active ? [active] : []), ...visible, ...openedLast()].find(isRecipe);
};

const openedLast = (): readonly TextDocument[] => workspace.textDocuments.toReversed();
