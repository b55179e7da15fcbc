/** *Open the Language on One Page*: the reference, whose head is the page that teaches the language. */
import { commands, type Disposable } from "vscode";
import { showPage } from "./page-view.ts";
import { LANGUAGE_PAGE } from "./rule-pages.ts";

export const registerLanguagePage = (): Disposable =>
  commands.registerCommand("finishwright.openLanguage", () => showPage(LANGUAGE_PAGE));
