/**
 * The server as a process, sent what no client should send: methods that are none, parameters that are none, messages out
 * of order, cancellations of everything, broken headers, bytes that are no message.
 *
 * Every request that came whole is answered once. Where the bytes were broken the server may also end, with a word on the
 * log. Afterwards a question is answered or the server has ended; when its input closes it ends in any case.
 */
import fc from "fast-check";
import type { Attack, Flaw } from "./flaws.ts";
import { hostileText } from "./hostile-texts.ts";
import { isAlive, watch } from "./processes.ts";
import { SOUND_TEXTS } from "./sound-texts.ts";
import { framed, startWire, type Wire } from "./wire.ts";

type Step =
  | { readonly how: "request"; readonly method: string; readonly params: unknown }
  | { readonly how: "notification"; readonly method: string; readonly params: unknown }
  | { readonly how: "cancel"; readonly back: number }
  | { readonly how: "answer"; readonly id: unknown }
  | { readonly how: "burst"; readonly method: string; readonly times: number }
  | { readonly how: "raw"; readonly bytes: string };

export interface Talk {
  readonly initialize: "first" | "never" | "late";
  readonly steps: readonly Step[];
  /** The whole in so many bytes at a time. */
  readonly chunk: number;
  readonly shutdown: boolean;
}

const URIS = [
  "file:///shop/a.finish",
  "file:///shop/b.finish",
  "untitled:Untitled-1",
  "file:///shop/\ud800.finish",
  "file:///%",
  "file://server/share/a.finish",
  "",
  "nonsense",
  "memfs:/a.finish",
];
const REQUESTS = [
  "textDocument/hover",
  "textDocument/completion",
  "textDocument/definition",
  "textDocument/references",
  "textDocument/documentHighlight",
  "textDocument/documentSymbol",
  "textDocument/documentLink",
  "textDocument/prepareRename",
  "textDocument/rename",
  "textDocument/prepareCallHierarchy",
  "callHierarchy/incomingCalls",
  "callHierarchy/outgoingCalls",
  "textDocument/signatureHelp",
  "textDocument/semanticTokens/full",
  "textDocument/semanticTokens/full/delta",
  "textDocument/semanticTokens/range",
  "textDocument/foldingRange",
  "textDocument/selectionRange",
  "textDocument/inlayHint",
  "textDocument/codeLens",
  "textDocument/formatting",
  "textDocument/rangeFormatting",
  "textDocument/rangesFormatting",
  "textDocument/codeAction",
  "textDocument/diagnostic",
  "workspace/symbol",
  "workspace/willRenameFiles",
  "finishwright/report",
  "finishwright/rules",
  "initialize",
  "no/such/method",
  "$/noSuchMethod",
  "",
];
const NOTIFICATIONS = [
  "initialized",
  "textDocument/didOpen",
  "textDocument/didChange",
  "textDocument/didClose",
  "textDocument/didSave",
  "workspace/didChangeWatchedFiles",
  "workspace/didChangeConfiguration",
  "workspace/didChangeWorkspaceFolders",
  "$/setTrace",
  "$/progress",
  "no/such/notification",
];

const number = fc.oneof(fc.nat(40), fc.constantFrom(-1, 0, 2 ** 31, 2 ** 53, -0.5, 1e300));
const position = fc.record({ line: number, character: number });
const range = fc.record({ start: position, end: position });
const textDocument = fc.record({
  uri: fc.constantFrom(...URIS),
  version: number,
  languageId: fc.constant("finish"),
  text: fc.oneof(fc.constantFrom(...SOUND_TEXTS), hostileText),
});
/** With everything that any method asks for; what a method doesn't know it leaves alone. */
const sensible = fc.record({
  textDocument,
  position,
  range,
  ranges: fc.array(range, { maxLength: 3 }),
  positions: fc.array(position, { maxLength: 3 }),
  contentChanges: fc.array(
    fc.oneof(fc.record({ text: hostileText }), fc.record({ range, text: fc.string({ maxLength: 9 }) })),
    {
      maxLength: 3,
    },
  ),
  context: fc.constant({ includeDeclaration: true, diagnostics: [], triggerKind: 1 }),
  options: fc.constant({ tabSize: 2, insertSpaces: true }),
  newName: fc.oneof(
    fc.constantFrom("other", "", "x", "__proto__", "\ud800", "a b"),
    fc.string({ maxLength: 9 }),
  ),
  query: fc.string({ maxLength: 9 }),
  kind: fc.constantFrom("totals", "schedule", "shopping", "sheet", "none"),
  changes: fc.array(fc.record({ uri: fc.constantFrom(...URIS), type: fc.nat(4) }), { maxLength: 3 }),
  files: fc.array(fc.record({ oldUri: fc.constantFrom(...URIS), newUri: fc.constantFrom(...URIS) }), {
    maxLength: 2,
  }),
  previousResultId: fc.constantFrom("1", "", "x"),
  item: fc.record({
    name: fc.constant("a"),
    uri: fc.constantFrom(...URIS),
    range,
    selectionRange: range,
    kind: fc.nat(30),
  }),
  settings: fc.constantFrom(
    null,
    {},
    { finishwright: 3 },
    { finishwright: { findings: { lowest: "error" } } },
  ),
  event: fc.constantFrom({ added: [], removed: [] }, {}, null),
  value: fc.constant("off"),
  capabilities: fc.constant({}),
});
const params = fc.oneof(
  { arbitrary: sensible, weight: 8 },
  {
    arbitrary: fc
      .tuple(sensible, fc.constantFrom("textDocument", "position", "range", "contentChanges", "context"))
      .map(([all, key]) => ({ ...all, [key]: null })),
    weight: 2,
  },
  {
    arbitrary: fc.constantFrom<unknown>(
      null,
      {},
      [],
      [1, 2],
      [{}],
      { textDocument: {} },
      { textDocument: "x" },
    ),
    weight: 2,
  },
  { arbitrary: fc.jsonValue({ maxDepth: 3 }), weight: 1 },
);

const BROKEN = [
  "Content-Length: 5\r\n\r\n{}",
  "Content-Length: -5\r\n\r\n{}",
  "Content-Length: x\r\n\r\n{}",
  "Content-Length: 99999999999999999999\r\n\r\n{}",
  "Content-Length: 2147483647\r\n\r\n",
  "Content-Length: 0\r\n\r\n",
  "Content-Length: 2\r\nContent-Length: 3\r\n\r\n{}",
  "Content-Length 2\r\n\r\n{}",
  "Content-Length: 2\n\n{}",
  "Content-Type: text/plain\r\n\r\n{}",
  "Content-Length: 4\r\n\r\nnull",
  "Content-Length: 2\r\n\r\n[]",
  "Content-Length: 1\r\n\r\n{",
  "Content-Length: 3\r\nContent-Type: application/vscode-jsonrpc; charset=utf-99\r\n\r\n{ }",
  "\r\n\r\n",
  "GET / HTTP/1.1\r\nHost: localhost\r\n\r\n",
  "\u0000\u0001\u0002\r\n\r\n",
  "X".repeat(100_000),
  `Content-Length: 2\r\nX: ${"y".repeat(100_000)}\r\n\r\n{}`,
];

const step: fc.Arbitrary<Step> = fc.oneof(
  {
    arbitrary: fc.record({
      how: fc.constant("request" as const),
      method: fc.constantFrom(...REQUESTS),
      params,
    }),
    weight: 10,
  },
  {
    arbitrary: fc.record({
      how: fc.constant("notification" as const),
      method: fc.constantFrom(...NOTIFICATIONS),
      params,
    }),
    weight: 8,
  },
  { arbitrary: fc.record({ how: fc.constant("cancel" as const), back: fc.nat(5) }), weight: 3 },
  {
    arbitrary: fc.record({
      how: fc.constant("answer" as const),
      id: fc.constantFrom<unknown>(0, 1, 99, "x", null, {}),
    }),
    weight: 1,
  },
  {
    arbitrary: fc.record({
      how: fc.constant("burst" as const),
      method: fc.constantFrom(
        "textDocument/diagnostic",
        "textDocument/completion",
        "textDocument/hover",
        "workspace/symbol",
      ),
      times: fc.integer({ min: 20, max: 300 }),
    }),
    weight: 1,
  },
);
const steps = fc.oneof(
  { arbitrary: fc.array(step, { minLength: 1, maxLength: 30 }), weight: 4 },
  // Broken bytes at the end, and something behind them that may or may not be understood.
  {
    arbitrary: fc
      .tuple(fc.array(step, { maxLength: 5 }), fc.constantFrom(...BROKEN), fc.array(step, { maxLength: 3 }))
      .map(([before, bytes, after]) => [...before, { how: "raw" as const, bytes }, ...after]),
    weight: 2,
  },
);

const input: fc.Arbitrary<Talk> = fc.record({
  initialize: fc.constantFrom("first", "first", "first", "first", "never", "late"),
  steps,
  chunk: fc.constantFrom(1_000_000, 1_000_000, 7, 1),
  shutdown: fc.boolean(),
});

export const protocol: Attack<Talk> = { name: "protocol", input, runs: 20, check: talkFlaws };

const INITIALIZE = {
  jsonrpc: "2.0",
  id: "first",
  method: "initialize",
  params: { processId: null, rootUri: null, capabilities: { textDocument: { diagnostic: {} } } },
};
const PROBE = "probe";
const CPU_SECONDS = 60;
/** Nothing here waits for anything: files are none, and the client answers at once. */
const ASLEEP_SECONDS = 10;

async function talkFlaws(talk: Talk): Promise<readonly Flaw[]> {
  const wire = startWire();
  try {
    const asked = new Map<unknown, string>();
    const bytes = bytesOf(talk, asked);
    answerRequests(wire);
    for (let at = 0; at < bytes.length; at += talk.chunk) {
      wire.send(bytes.subarray(at, at + talk.chunk));
      if (talk.chunk < 1000 && at > 2000) {
        wire.send(bytes.subarray(at + talk.chunk));
        break;
      }
    }
    const isBroken = talk.steps.some(({ how }) => how === "raw");
    const probed = Promise.race([wire.waitFor(({ id }) => id === PROBE), wire.exited]);
    const verdict = await watch(
      { pid: wire.pid, cpuSeconds: CPU_SECONDS, asleepSeconds: ASLEEP_SECONDS },
      probed,
    );
    return [
      ...(verdict === "too much work" ? [flaw("hang", `more than ${CPU_SECONDS} s of the processor`)] : []),
      ...(verdict === "asleep"
        ? [flaw("hang", `deaf: the last question is never answered${isBroken ? " after broken bytes" : ""}`)]
        : []),
      ...(await (verdict === "ended" ? endFlaws(wire, asked, isBroken) : [])),
    ];
  } finally {
    wire.kill();
  }
}

async function endFlaws(
  wire: Wire,
  asked: ReadonlyMap<unknown, string>,
  isBroken: boolean,
): Promise<readonly Flaw[]> {
  const flaws: Flaw[] = [];
  if (wire.hasExited()) {
    if (wire.said().trim() === "") flaws.push(flaw("crash", "ended without a word"));
    else if (!isBroken) flaws.push(flaw("crash", `ended on whole messages: ${lastLine(wire.said())}`));
    return flaws;
  }
  const allAnswered = (): boolean =>
    isBroken || [...asked.keys()].every((id) => wire.received.some((one) => one.id === id));
  const verdict = await watch(
    { pid: wire.pid, cpuSeconds: CPU_SECONDS, asleepSeconds: ASLEEP_SECONDS },
    Promise.race([wire.waitFor(allAnswered), wire.exited]),
  );
  if (verdict !== "ended" || !allAnswered()) {
    const missing = [...asked].find(([id]) => !wire.received.some((one) => one.id === id));
    flaws.push(flaw("hang", `never answered: ${missing?.[1]}`));
  }
  for (const id of isBroken ? [] : asked.keys()) {
    const count = wire.received.filter((one) => one.id === id && one.method === undefined).length;
    if (count > 1) flaws.push(flaw("crash", `answered ${count} times: ${asked.get(id)}`));
  }
  const accident = /^Unexpected: [^\n]*/m.exec(wire.said())?.[0];
  if (accident) flaws.push(flaw("crash", accident));
  wire.closeInput();
  if (
    (await watch({ pid: wire.pid, cpuSeconds: CPU_SECONDS, asleepSeconds: ASLEEP_SECONDS }, wire.exited)) !==
    "ended"
  ) {
    flaws.push(flaw("leak", "goes on when its input has closed"));
  } else if (isAlive(wire.pid)) flaws.push(flaw("leak", "a process stays behind"));
  return flaws;
}

const flaw = (kind: Flaw["kind"], detail: string): Flaw => ({ kind, detail });

const lastLine = (text: string): string => text.trim().split("\n").at(-1) ?? "";

/** A client answers what it is asked. */
function answerRequests(wire: Wire): void {
  void wire.waitFor((message) => {
    if (message.method !== undefined && message.id !== undefined) {
      wire.send(framed({ jsonrpc: "2.0", id: message.id, result: null }));
    }
    return false;
  });
}

/** All that is sent; `asked` gets the ids of the requests that must be answered. */
function bytesOf({ initialize, steps, shutdown }: Talk, asked: Map<unknown, string>): Buffer {
  const parts: string[] = [];
  const request = (id: unknown, method: string, params: unknown): void => {
    asked.set(id, method);
    parts.push(framed({ jsonrpc: "2.0", id, method, params }));
  };
  const begin = (): void => {
    request("first", INITIALIZE.method, INITIALIZE.params);
    parts.push(framed({ jsonrpc: "2.0", method: "initialized", params: {} }));
  };
  if (initialize === "first") begin();
  let id = 0;
  for (const [idx, each] of steps.entries()) {
    if (initialize === "late" && idx === Math.floor(steps.length / 2)) begin();
    if (each.how === "request") request(++id, each.method, each.params);
    else if (each.how === "notification")
      parts.push(framed({ jsonrpc: "2.0", method: each.method, params: each.params }));
    else if (each.how === "cancel") {
      parts.push(framed({ jsonrpc: "2.0", method: "$/cancelRequest", params: { id: id - each.back } }));
    } else if (each.how === "answer") parts.push(framed({ jsonrpc: "2.0", id: each.id, result: {} }));
    else if (each.how === "raw") parts.push(each.bytes);
    else {
      const params = { textDocument: { uri: URIS[0] }, position: { line: 0, character: 0 }, query: "" };
      for (let time = 0; time < each.times; time += 1) request(++id, each.method, params);
    }
  }
  if (shutdown) request("shutdown", "shutdown", null);
  request(PROBE, shutdown ? "textDocument/hover" : "shutdown", {
    textDocument: { uri: URIS[0] },
    position: { line: 0, character: 0 },
  });
  return Buffer.from(parts.join(""));
}
