/**
 * The bench view: one page beside the text that draws the job at the caret. It follows the caret and the typing; what it
 * draws comes from the server as data, and what is clicked in it leads back to the line.
 */
import {
  commands,
  Disposable,
  type ExtensionContext,
  env,
  l10n,
  Range,
  Selection,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import {
  BENCH,
  BENCH_EXPORTS,
  type BenchAnswer,
  type BenchExportParams,
  type BenchParams,
} from "../../server/src/lsp/custom-requests.ts";
import { targetOf } from "./active-recipe.ts";
import { benchPage } from "./bench/page.ts";
import { nonceOf } from "./nonce.ts";
import { offerRecipe } from "./offer-recipe.ts";
import type { ReportsNews } from "./reports-changed.ts";
import { copySheet, saveExport } from "./save-export.ts";

/** After the last key or move of the caret, ms. */
const PAUSE = 150;

export const registerBenchView = (
  context: ExtensionContext,
  client: BaseLanguageClient,
  news: ReportsNews,
): Disposable => {
  let open: BenchPanel | undefined;
  return Disposable.from(
    commands.registerCommand("finishwright.showBenchView", async (given?: unknown) => {
      const target = targetOf(client, given);
      if (target === undefined) {
        return offerRecipe(l10n.t("the bench view draws its jobs."));
      }
      const uri = client.protocol2CodeConverter.asUri(target.uri);
      if (open === undefined) {
        open = new BenchPanel(context, client, news, { uri, job: target.job });
        open.panel.onDidDispose(() => {
          open = undefined;
        });
      } else open.show(uri, target.job);
    }),
    new Disposable(() => open?.panel.dispose()),
  );
};

class BenchPanel {
  readonly panel: WebviewPanel;
  readonly #client: BaseLanguageClient;
  #uri: Uri;
  #job: string | undefined;
  /** The last with a drawing. */
  #answer: BenchAnswer | undefined;
  /** What is drawn, by its file and its name. */
  #drawn: { readonly uri: Uri; readonly job: string } | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** Of what was asked last: an answer to an earlier question is thrown away. */
  #asked = 0;

  constructor(
    { extensionUri }: ExtensionContext,
    client: BaseLanguageClient,
    news: ReportsNews,
    { uri, job }: { readonly uri: Uri; readonly job: string | undefined },
  ) {
    this.#client = client;
    this.#uri = uri;
    this.#job = job;
    const folder = Uri.joinPath(extensionUri, "client", "dist");
    this.panel = window.createWebviewPanel(
      "finishwright.bench",
      l10n.t("Bench view"),
      { viewColumn: ViewColumn.Beside, preserveFocus: true },
      { enableScripts: true, localResourceRoots: [folder], retainContextWhenHidden: true },
    );
    const { webview } = this.panel;
    const script = webview.asWebviewUri(Uri.joinPath(folder, "bench.js")).toString();
    webview.html = benchPage(nonceOf(), script, webview.cspSource, {
      language: env.language,
      bundle: l10n.bundle ?? {},
    });
    const listening = Disposable.from(
      webview.onDidReceiveMessage((message: unknown) => this.#told(message)),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (document.languageId === "finish") this.#soon();
      }),
      window.onDidChangeTextEditorSelection(({ textEditor, selections }) => {
        const { document } = textEditor;
        const line = selections[0]?.active.line;
        if (document.languageId !== "finish" || line === undefined) return;
        this.#uri = document.uri;
        this.#job = undefined;
        void webview.postMessage({ type: "caret", uri: this.#asUri(document.uri), line });
        this.#soon();
      }),
      news.onChange(() => this.#soon()),
    );
    this.panel.onDidDispose(() => {
      clearTimeout(this.#timer);
      listening.dispose();
    });
  }

  show(uri: Uri, job: string | undefined): void {
    this.#uri = uri;
    this.#job = job;
    this.panel.reveal(undefined, true);
    this.#soon();
  }

  #asUri(uri: Uri): string {
    return this.#client.code2ProtocolConverter.asUri(uri);
  }

  #soon(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#draw(), PAUSE);
  }

  async #draw(): Promise<void> {
    this.#asked += 1;
    const asked = this.#asked;
    const answer = await this.#ask();
    if (answer === null || asked !== this.#asked) return;
    // A text that cannot be read just now leaves the drawing as it was, and so the lines that it leads to.
    if (answer.bench !== undefined) {
      this.#answer = answer;
      this.panel.title = l10n.t("Bench view: {0}", answer.bench.title);
    }
    await this.panel.webview.postMessage({ type: "bench", answer });
  }

  /** Of the job at the caret; where there is none, as in a file of recipes or of stock, of the job that was drawn last. */
  async #ask(): Promise<BenchAnswer | null> {
    const uri = this.#uri;
    const asked = this.#asUri(uri);
    const editor = window.visibleTextEditors.find(({ document }) => this.#asUri(document.uri) === asked);
    const before = this.#drawn?.uri.toString() === uri.toString() ? this.#drawn.job : undefined;
    const answer = await this.#request({
      textDocument: { uri: asked },
      ...(this.#job === undefined ? {} : { job: this.#job }),
      ...(before === undefined ? {} : { before }),
      ...(editor ? { line: editor.selection.active.line } : {}),
    });
    if (answer?.bench !== undefined) {
      this.#drawn = { uri, job: answer.bench.name };
      return answer;
    }
    if (this.#drawn === undefined || before !== undefined) return answer;
    const { uri: last, job } = this.#drawn;
    const again = await this.#request({ textDocument: { uri: this.#asUri(last) }, job });
    return again?.bench === undefined ? answer : again;
  }

  #request(params: BenchParams): Promise<BenchAnswer | null> {
    return this.#client.sendRequest<BenchAnswer | null>(BENCH, params);
  }

  async #told(message: unknown): Promise<void> {
    if (typeof message !== "object" || message === null || !("type" in message)) return;
    if (message.type === "ready") await this.#draw();
    if (message.type === "job" && "name" in message && typeof message.name === "string") {
      this.#uri = this.#drawn?.uri ?? this.#uri;
      this.#job = message.name;
      await this.#draw();
    }
    if (message.type === "reveal" && "at" in message && typeof message.at === "number")
      await this.#reveal(message.at, "moves" in message && message.moves === true);
    const action = message.type === "action" && "action" in message ? message.action : undefined;
    const as = BENCH_EXPORTS.find((each) => each === action);
    if (as !== undefined) await this.#export(as);
  }

  async #reveal(at: number, moves: boolean): Promise<void> {
    const place = this.#answer?.bench?.places[at];
    if (place === undefined) return;
    const uri = this.#client.protocol2CodeConverter.asUri(place.uri);
    const shown = window.visibleTextEditors.find(
      ({ document }) => document.uri.toString() === uri.toString(),
    );
    const editor = await window.showTextDocument(uri, {
      viewColumn: shown?.viewColumn ?? ViewColumn.One,
      preserveFocus: !moves,
    });
    const start = this.#client.protocol2CodeConverter.asPosition(place);
    editor.selection = new Selection(start, start);
    editor.revealRange(new Range(start, start), TextEditorRevealType.InCenterIfOutsideViewport);
  }

  async #export(as: BenchExportParams["as"]): Promise<void> {
    if (this.#drawn === undefined) return;
    const { uri, job } = this.#drawn;
    if (as === "markdown") await copySheet(this.#client, uri, job);
    else await saveExport(this.#client, { uri, job, as });
  }
}
