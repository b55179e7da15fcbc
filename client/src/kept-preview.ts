/**
 * The Markdown that was shown last of its kind, kept up to date: a preview does not keep its text open for long, and opening
 * it again is what makes the preview read it afresh.
 */
import { TabInputWebview, type Uri, window, workspace } from "vscode";
import { showMarkdown } from "./show-markdown.ts";

export interface KeptPreview {
  show(uri: Uri): Promise<void>;
  /** Its text is another one. */
  refresh(): Promise<void>;
}

export const createKeptPreview = (): KeptPreview => {
  let last: Uri | undefined;
  return {
    show(uri) {
      last = uri;
      return showMarkdown(uri);
    },
    async refresh() {
      const shown = last;
      if (shown === undefined || isOpen(shown)) return;
      if (hasPreview()) await workspace.openTextDocument(shown);
      else last = undefined;
    },
  };
};

const isOpen = (uri: Uri): boolean =>
  workspace.textDocuments.some((document) => document.uri.toString() === uri.toString());

const hasPreview = (): boolean =>
  window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .some(({ input }) => input instanceof TabInputWebview && input.viewType.includes("markdown.preview"));
