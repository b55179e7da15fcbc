/**
 * What the language status of the editor (the braces in the status bar) says of a recipe: how many findings there are, and
 * how the server is. Nothing of it asks for attention but a server that has stopped.
 */
import { Disposable, type DocumentSelector, LanguageStatusSeverity, l10n, languages, window } from "vscode";
import { type BaseLanguageClient, State } from "vscode-languageclient";
import { findingsCount, NOT_SAFE } from "./findings-count.ts";

const RECIPES: DocumentSelector = { language: "finish" };

export const registerStatus = (client: BaseLanguageClient): Disposable =>
  Disposable.from(showFindings(), showServer(client));

const showFindings = (): Disposable => {
  const item = languages.createLanguageStatusItem("finishwright.findings", RECIPES);
  item.name = l10n.t("Findings of the recipe");
  item.command = { command: "workbench.actions.view.problems", title: l10n.t("Show") };
  const update = (): void => {
    const uri = window.activeTextEditor?.document.uri;
    item.detail = l10n.t(NOT_SAFE);
    item.text = findingsCount(
      uri ? languages.getDiagnostics(uri).map(({ severity }) => severity) : [],
      (text) => l10n.t(text),
    );
  };
  update();
  return Disposable.from(
    item,
    window.onDidChangeActiveTextEditor(update),
    languages.onDidChangeDiagnostics(update),
  );
};

const showServer = (client: BaseLanguageClient): Disposable => {
  const item = languages.createLanguageStatusItem("finishwright.server", RECIPES);
  item.name = l10n.t("Finishwright language server");
  const update = (state: State): void => {
    const hasStopped = state === State.Stopped;
    item.text = hasStopped ? l10n.t("Language server stopped") : l10n.t("Language server");
    item.busy = state === State.Starting;
    item.severity = hasStopped ? LanguageStatusSeverity.Error : LanguageStatusSeverity.Information;
    item.command = hasStopped
      ? { command: "finishwright.restartServer", title: l10n.t("Restart") }
      : { command: "finishwright.showOutput", title: l10n.t("Show output") };
  };
  // It is started right after this.
  update(State.Starting);
  return Disposable.from(
    item,
    client.onDidChangeState(({ newState }) => update(newState)),
  );
};
