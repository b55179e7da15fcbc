/** *Open the Language on One Page*: the reference, whose head is the page that teaches the language. */
import { commands, type Disposable, Uri } from "vscode";
import { LANGUAGE_PAGE } from "./rule-pages.ts";
import { showMarkdown } from "./show-markdown.ts";

export const registerLanguagePage = (): Disposable =>
  commands.registerCommand("finishwright.openLanguage", () => showMarkdown(Uri.parse(LANGUAGE_PAGE)));
