/**
 * *Explain Finding*: the page of the rule whose finding the caret is on; without one, a list of all rules to choose from.
 */
import {
  commands,
  type Diagnostic,
  type Disposable,
  l10n,
  languages,
  type QuickPickItem,
  QuickPickItemKind,
  window,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { EXPLAIN_COMMAND, RULES, type RuleEntry } from "../../server/src/lsp/custom-requests.ts";
import { showPage } from "./page-view.ts";

const SOURCE = "finishwright";

/** With the name of a rule as its argument the command asks nothing. */
export const registerExplainFinding = (client: BaseLanguageClient): Disposable =>
  commands.registerCommand(EXPLAIN_COMMAND, async (rule?: string) => {
    const rules = await client.sendRequest<readonly RuleEntry[]>(RULES, {});
    const id = typeof rule === "string" ? rule : await askedRule(rules);
    if (id !== undefined) await explain(client, rules, id);
  });

const explain = async (
  client: BaseLanguageClient,
  rules: readonly RuleEntry[],
  id: string,
): Promise<void> => {
  const entry = rules.find((each) => each.id === id);
  if (entry?.page !== undefined) return showPage(client.protocol2CodeConverter.asUri(entry.page));
  void window.showWarningMessage(
    entry === undefined ? l10n.t("There is no rule “{0}”.", id) : `${id}: ${entry.summary}`,
  );
};

const askedRule = async (rules: readonly RuleEntry[]): Promise<string | undefined> => {
  const found = findingsAtCaret();
  const [first] = found;
  if (first === undefined) return chosen(allRules(rules), l10n.t("Which rule?"));
  if (found.length === 1) return ruleOf(first);
  return chosen(
    found.map((finding) => ({ label: ruleOf(finding), detail: plain(finding.message.split("\n")[0]!) })),
    l10n.t("Which finding?"),
  );
};

/** Those that the caret stands in, else those of its line; one of each rule. */
const findingsAtCaret = (): readonly Diagnostic[] => {
  const editor = window.activeTextEditor;
  if (editor === undefined) return [];
  const caret = editor.selection.active;
  const own = languages.getDiagnostics(editor.document.uri).filter(({ source }) => source === SOURCE);
  const inside = own.filter(({ range }) => range.contains(caret));
  const line = own.filter(({ range }) => range.start.line <= caret.line && range.end.line >= caret.line);
  return [...new Map((inside.length > 0 ? inside : line).map((each) => [ruleOf(each), each])).values()];
};

const ruleOf = ({ code }: Diagnostic): string => String(typeof code === "object" ? code.value : (code ?? ""));

/** Under the titles of their groups. */
const allRules = (rules: readonly RuleEntry[]): readonly QuickPickItem[] =>
  rules.flatMap(({ id, group, summary }, i) => {
    const isFirst = rules[i - 1]?.group !== group;
    return [
      ...(isFirst ? [{ label: group, kind: QuickPickItemKind.Separator }] : []),
      { label: id, detail: plain(summary) },
    ];
  });

/** A list shows no Markdown. */
const plain = (text: string): string => text.replaceAll("`", "");

const chosen = async (items: readonly QuickPickItem[], title: string): Promise<string | undefined> => {
  const item = await window.showQuickPick(items, { title, matchOnDetail: true });
  return item?.label;
};
