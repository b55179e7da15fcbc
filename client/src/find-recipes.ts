/**
 * *Find Recipes*: a line to type what is looked for, with what matches below it while one types. The server reads the words
 * and knows the recipes; choosing a match leads to it.
 */
import {
  commands,
  Disposable,
  l10n,
  type QuickPick,
  type QuickPickItem,
  Range,
  ThemeIcon,
  Uri,
  window,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import {
  FIND,
  type FindAnswer,
  type FindParams,
  type FoundPlace,
} from "../../server/src/lsp/custom-requests.ts";
import type { ReportsNews } from "./reports-changed.ts";

const ICONS: Readonly<Record<FoundPlace["kind"], string>> = {
  job: "checklist",
  piece: "symbol-structure",
  recipe: "list-ordered",
  surface: "symbol-field",
};

/** Searches to begin with. */
const EXAMPLES = ["oak flat clear", "wear:hard for:children", "family:wax hours:4", "shop:mill cost:80"];

/** After the last key, ms. */
const PAUSE = 150;

interface Item extends QuickPickItem {
  readonly found?: FoundPlace;
  /** A search that it stands for. */
  readonly said?: string;
}

/** With a text as its argument the command begins with that search. */
export const registerFindRecipes = (client: BaseLanguageClient, news: ReportsNews): Disposable =>
  commands.registerCommand("finishwright.findRecipes", (said?: unknown) =>
    openSearch(client, news, typeof said === "string" ? said : ""),
  );

const openSearch = (client: BaseLanguageClient, news: ReportsNews, said: string): void => {
  const pick: QuickPick<Item> = window.createQuickPick();
  pick.title = l10n.t("Find Recipes");
  pick.placeholder = l10n.t("Wood, finish, material, room, wear, or at most so many hours: oak flat clear");
  pick.keepScrollPosition = true;
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** Of what was asked last: an answer to an earlier question is thrown away. */
  let asked = 0;
  const ask = async (): Promise<void> => {
    asked += 1;
    const mine = asked;
    if (pick.value.trim() === "") {
      show(pick, EXAMPLES.map(exampleItem), undefined);
      return;
    }
    pick.busy = true;
    try {
      const params: FindParams = { said: pick.value };
      const answer = await client.sendRequest<FindAnswer | null>(FIND, params);
      if (mine === asked) show(pick, itemsOf(answer), answer ?? undefined);
    } catch {
      if (mine === asked) show(pick, itemsOf(null), undefined);
    } finally {
      if (mine === asked) pick.busy = false;
    }
  };
  const soon = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void ask(), PAUSE);
  };
  const listening = Disposable.from(
    pick,
    pick.onDidChangeValue(soon),
    news.onChange(soon),
    pick.onDidAccept(() => {
      const [item] = pick.activeItems;
      if (item?.said !== undefined) {
        pick.value = item.said;
        soon();
      } else if (item?.found) {
        pick.hide();
        void goTo(client, item.found);
      }
    }),
    pick.onDidHide(() => {
      clearTimeout(timer);
      asked += 1;
      listening.dispose();
    }),
  );
  pick.value = said;
  void ask();
  pick.show();
};

/** What was understood stands in the title, where it is read before the matches. */
const show = (pick: QuickPick<Item>, items: readonly Item[], answer: FindAnswer | undefined): void => {
  const understood = answer?.understood.join(", ") ?? "";
  pick.title = understood === "" ? l10n.t("Find Recipes") : l10n.t("Find Recipes: {0}", understood);
  pick.items = items;
};

/** The editor itself is to leave none of them out: they match by more than their names. */
const itemsOf = (answer: FindAnswer | null): readonly Item[] => {
  if (answer === null) return [told(l10n.t("The search failed. The output of Finishwright says more."))];
  if (answer.refusal !== undefined) return [told(plain(answer.refusal))];
  if (answer.found.length === 0)
    return [told(l10n.t("Nothing matches all of that. Ask for less, or in other words."))];
  const items = answer.found.map(
    (found): Item => ({
      label: found.title,
      description: found.detail,
      detail: `${found.file}:${found.start.line + 1}`,
      iconPath: new ThemeIcon(ICONS[found.kind]),
      alwaysShow: true,
      found,
    }),
  );
  return answer.more === 0 ? items : [...items, told(l10n.t("{0} more match. Ask for more.", answer.more))];
};

const told = (label: string): Item => ({ label, alwaysShow: true });
const exampleItem = (said: string): Item => ({ label: said, description: l10n.t("for example"), said });

/** A list shows no Markdown. */
const plain = (text: string): string => text.replaceAll("`", "");

const goTo = (client: BaseLanguageClient, { uri, start }: FoundPlace): Thenable<unknown> => {
  const place = client.protocol2CodeConverter.asPosition(start);
  return commands.executeCommand("vscode.open", Uri.parse(uri), { selection: new Range(place, place) });
};
