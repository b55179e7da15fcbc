/**
 * A word that something follows is offered with a blank behind it. When it has been chosen, what may follow is offered by
 * itself, so that a line can be written by choosing alone; where nothing may, nothing is shown.
 */
import type { CompletionItem, CompletionList } from "vscode";

const OFFER_MORE = {
  title: "",
  command: "editor.action.triggerSuggest",
  arguments: [{ auto: true }],
} as const;

/** What completion answered, each word that goes on with the command that does. */
export const goingOn = <Answer extends readonly CompletionItem[] | CompletionList | null | undefined>(
  answer: Answer,
): Answer => {
  const items: readonly CompletionItem[] = answer == null ? [] : "items" in answer ? answer.items : answer;
  for (const item of items)
    if (typeof item.insertText === "string" && item.insertText.endsWith(" "))
      item.command ??= { ...OFFER_MORE, arguments: [...OFFER_MORE.arguments] };
  return answer;
};
