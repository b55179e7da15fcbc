/**
 * The pages on rules and on the language as a reader sees them: recipes in colours, and the lines that findings stand on
 * marked. The editor shows every page of `rule-pages.ts` by this, also where a person follows the link of a finding.
 */
import {
  commands,
  Disposable,
  type ExtensionContext,
  l10n,
  type Uri,
  ViewColumn,
  type WebviewPanel,
  window,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import {
  COLOURED,
  type ColouredWord,
  PAGE,
  pageTitle,
  type Page as ToldPage,
  withoutMarks,
} from "../../server/src/lsp/custom-requests.ts";
import { nonceOf } from "./nonce.ts";
import { OPEN_PAGE, PAGE_NAME } from "./pages/inline.ts";
import { pageHtml, recipesOf } from "./pages/page.ts";
import { isOnRules, pageUri, readPage } from "./rule-pages.ts";

/** As the manifest names the view of `finishwright-rules:/**`. */
export const PAGE_VIEW = "finishwright.page";

/** A page without colours is better than none while the server is slow to come up, ms. */
const PATIENCE = 1000;

export const registerPageView = (
  { extensionUri }: ExtensionContext,
  client: BaseLanguageClient,
): Disposable =>
  Disposable.from(
    window.registerCustomEditorProvider(
      PAGE_VIEW,
      {
        openCustomDocument: (uri) => ({ uri, dispose: () => {} }),
        async resolveCustomEditor({ uri }, panel) {
          panel.webview.options = { enableCommandUris: [OPEN_PAGE], localResourceRoots: [] };
          const text = await readPage(extensionUri, uri);
          await fill(panel, { text, isTold: isOnRules(uri) }, client);
        },
      },
      { supportsMultipleEditorsPerDocument: true, webviewOptions: { enableFindWidget: true } },
    ),
    commands.registerCommand(OPEN_PAGE, async (name: unknown) => {
      if (typeof name !== "string" || !PAGE_NAME.test(name)) return;
      await commands.executeCommand("vscode.openWith", pageUri(name), PAGE_VIEW, { preview: true });
    }),
  );

interface Page {
  readonly text: string;
  /** What it says has texts in other languages; the pages on the language are in English alone. */
  readonly isTold: boolean;
}

/** Beside what is being edited. */
export const showPage = async (uri: Uri): Promise<void> => {
  const viewColumn = window.activeTextEditor === undefined ? ViewColumn.Active : ViewColumn.Beside;
  await commands.executeCommand("vscode.openWith", uri, PAGE_VIEW, { viewColumn, preview: true });
};

/** The page of a rule begins with its plain title, as its tab does; its id, which is typed, stands below. */
const titled = (markdown: string): string =>
  markdown.replace(
    /^# ([a-z]+(?:-[a-z]+)*)\n\n([^\n]+)$/mu,
    (_, id: string, level: string) => `# ${pageTitle(id)}\n\n${level} · \`${id}\``,
  );

type Colours = readonly (readonly ColouredWord[])[];

async function fill({ webview }: WebviewPanel, page: Page, client: BaseLanguageClient): Promise<void> {
  const alone: ToldPage = { text: withoutMarks(page.text), language: "en" };
  const show = ({ text, language }: ToldPage, coloured: Colours): void => {
    webview.html = pageHtml(titled(text), coloured, nonceOf(), {
      tag: language,
      bundle: language === "en" ? {} : (l10n.bundle ?? {}),
    });
  };
  const found = Promise.all([toldBy(client, page, alone), coloursOf(recipesOf(page.text), client)]);
  const early = await Promise.race([found, new Promise<void>((wake) => setTimeout(wake, PATIENCE))]);
  if (early === undefined) show(alone, []);
  const [told, colours] = early ?? (await found);
  if (early !== undefined || told !== alone || colours.length > 0) show(told, colours);
}

/** With what is found in its examples, and in the language of the editor where the server has it; `alone` where it is down. */
async function toldBy(
  client: BaseLanguageClient,
  { text, isTold }: Page,
  alone: ToldPage,
): Promise<ToldPage> {
  if (!isTold) return alone;
  try {
    return (await client.sendRequest<ToldPage | null>(PAGE, { text })) ?? alone;
  } catch {
    return alone;
  }
}

/** One after the other, so that what is typed meanwhile is answered in between. None where the server is down. */
async function coloursOf(
  texts: readonly string[],
  client: BaseLanguageClient,
): Promise<readonly (readonly ColouredWord[])[]> {
  const coloured: (readonly ColouredWord[])[] = [];
  try {
    for (const text of texts)
      coloured.push(await client.sendRequest<readonly ColouredWord[]>(COLOURED, { text }));
    return coloured;
  } catch {
    return [];
  }
}
