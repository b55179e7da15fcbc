/** *Open the Language on One Page*: the reference, whose head is the page that teaches the language. */
import { commands, type Disposable, type ExtensionContext, Uri } from "vscode";
import { LANGUAGE_PAGE } from "./rule-pages.ts";
import { showMarkdown } from "./show-markdown.ts";

export const registerLanguagePage = ({ extensionUri }: ExtensionContext): Disposable =>
  commands.registerCommand("finishwright.openLanguage", () =>
    showMarkdown(
      extensionUri.scheme === "file"
        ? Uri.joinPath(extensionUri, "server", "docs", "language.md")
        : Uri.parse(LANGUAGE_PAGE),
    ),
  );
