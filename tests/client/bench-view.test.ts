/** The panel of the bench view: which job it asks for as the caret moves, and what it leads to. */
import { beforeEach, expect, test, vi } from "vitest";
import type { ExtensionContext } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { registerBenchView } from "../../client/src/bench-view.ts";
import type { BenchAnswer, BenchParams } from "../../server/src/lsp/custom-requests.ts";

type Handler = (given: never) => unknown;

const editor = vi.hoisted(() => {
  const uriOf = (path: string) => ({ path, scheme: "file", toString: () => `file://${path}` });
  return {
    uriOf,
    handlers: {} as Record<string, Handler>,
    commands: new Map<string, (given?: unknown) => Promise<void>>(),
    posted: [] as { readonly type: string; readonly answer?: BenchAnswer }[],
    shown: [] as string[],
    title: "",
    visible: [] as unknown[],
  };
});

vi.mock("vscode", async () => {
  const { l10n } = await import("../harness/l10n.ts");
  const on = (name: string) => (handler: Handler) => {
    editor.handlers[name] = handler;
    return { dispose() {} };
  };
  class Disposable {
    static from = () => ({ dispose() {} });
    dispose(): void {}
  }
  return {
    l10n,
    commands: {
      registerCommand: (name: string, run: () => Promise<void>) => {
        editor.commands.set(name, run);
        return { dispose() {} };
      },
    },
    Disposable,
    env: { language: "en" },
    ProgressLocation: { Window: 10 },
    Range: class {},
    Selection: class {},
    TextEditorRevealType: { InCenterIfOutsideViewport: 2 },
    ViewColumn: { One: 1, Beside: -2 },
    Uri: { joinPath: (_: unknown, ...parts: string[]) => editor.uriOf(parts.join("/")) },
    window: {
      get visibleTextEditors() {
        return editor.visible;
      },
      createWebviewPanel: () => ({
        set title(said: string) {
          editor.title = said;
        },
        reveal() {},
        onDidDispose: on("dispose"),
        webview: {
          html: "",
          cspSource: "vscode-webview:",
          asWebviewUri: String,
          onDidReceiveMessage: on("message"),
          postMessage: async (message: never) => editor.posted.push(message),
        },
      }),
      onDidChangeTextEditorSelection: on("selection"),
      showTextDocument: async (uri: unknown) => {
        editor.shown.push(String(uri));
        return { revealRange() {} };
      },
    },
    workspace: { textDocuments: [], onDidChangeTextDocument: on("change") },
  };
});

const JOBS = editor.uriOf("/shop/jobs.finish");
const STOCK = editor.uriOf("/shop/stock.finish");

/** One job in the first file, none in the other; or nothing that can be read. */
let isReadable = true;
const asked: BenchParams[] = [];
const client = {
  code2ProtocolConverter: { asUri: String },
  protocol2CodeConverter: {
    asUri: (uri: string) => editor.uriOf(uri.slice("file://".length)),
    asPosition: () => ({}),
  },
  sendRequest: async (_: string, params: BenchParams): Promise<BenchAnswer> => {
    asked.push(params);
    const has = isReadable && params.textDocument.uri === String(JOBS);
    const place = { uri: String(STOCK), line: 3, character: 0, endLine: 3 };
    const bench = { name: "chairs", title: "Chairs", places: [place] } as unknown as BenchAnswer["bench"];
    return has ? { jobs: [], notes: [], bench: bench! } : { jobs: [], notes: ["no job"] };
  },
} as unknown as BaseLanguageClient;

const moveTo = async (uri: typeof JOBS): Promise<void> => {
  const document = { languageId: "finish", uri };
  editor.visible = [{ document, selection: { active: { line: 7 } } }];
  editor.handlers.selection!({ textEditor: { document }, selections: [{ active: { line: 7 } }] } as never);
  await vi.advanceTimersByTimeAsync(1_000);
};
const send = (message: unknown) => editor.handlers.message!(message as never);
const lastDrawn = () => editor.posted.filter(({ type }) => type === "bench").at(-1)?.answer;

beforeEach(async () => {
  vi.useFakeTimers();
  isReadable = true;
  asked.length = 0;
  editor.posted.length = 0;
  editor.shown.length = 0;
  const news = { onChange: () => ({ dispose() {} }) };
  registerBenchView(
    { extensionUri: editor.uriOf("/extension") } as unknown as ExtensionContext,
    client,
    news as never,
  );
  await editor.commands.get("finishwright.showBenchView")!({ uri: String(JOBS) });
  await send({ type: "ready" });
});

test("asks for the job at the caret, and says which was drawn before", async () => {
  expect(lastDrawn()?.bench?.name).toBe("chairs");
  expect(editor.title).toBe("Bench view: Chairs");
  await moveTo(JOBS);
  expect(asked.at(-1)).toEqual({ textDocument: { uri: String(JOBS) }, before: "chairs", line: 7 });
});

test("goes on drawing the job where the caret goes to a file without one, as a click on a coat makes it", async () => {
  await send({ type: "reveal", at: 0, moves: false });
  expect(editor.shown).toEqual([String(STOCK)]);
  await moveTo(STOCK);
  expect(asked.slice(-2).map(({ textDocument, job }) => [textDocument.uri, job])).toEqual([
    [String(STOCK), undefined],
    [String(JOBS), "chairs"],
  ]);
  expect(lastDrawn()?.bench?.name).toBe("chairs");
});

test("a text that cannot be read just now is told, and the lines of what is still drawn lead on", async () => {
  isReadable = false;
  await moveTo(JOBS);
  expect(lastDrawn()).toEqual({ jobs: [], notes: ["no job"] });
  expect(editor.title).toBe("Bench view: Chairs");
  await send({ type: "reveal", at: 0, moves: false });
  expect(editor.shown).toEqual([String(STOCK)]);
});

test("what the page may not ask for is passed over", async () => {
  const before = asked.length;
  for (const message of [
    null,
    3,
    {},
    { type: "reveal", at: "0" },
    { type: "reveal", at: 9 },
    { type: "action", action: "rm" },
  ])
    await send(message);
  expect(editor.shown).toEqual([]);
  expect(asked.length).toBe(before);
});
