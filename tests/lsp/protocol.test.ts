/**
 * What the Language Server Protocol 3.17 (base protocol, lifecycle messages) says of messages that come out of turn or
 * hold what they must not, over the real streams of the built server. `npm run build` makes it.
 */
import { afterEach, describe, expect, test } from "vitest";
import { HANDLERS } from "../../server/src/lsp/handlers.ts";
import { PARAMS } from "../../server/src/lsp/params.ts";
import { VSCODE } from "./harness.ts";
import { framed, type RawServer, startRaw } from "./raw-server.ts";

/** Codes of JSON-RPC 2.0 and of the protocol. */
const PARSE_ERROR = -32700;
const INVALID_REQUEST = -32600;
const METHOD_NOT_FOUND = -32601;
const INVALID_PARAMS = -32602;
const NOT_INITIALIZED = -32002;

const started: RawServer[] = [];
const start = (): RawServer => {
  const server = startRaw();
  started.push(server);
  return server;
};
afterEach(() => {
  for (const { process } of started.splice(0)) process.kill("SIGKILL");
});

const request = (id: number | string, method: string, params?: unknown) => ({
  jsonrpc: "2.0",
  id,
  method,
  ...(params === undefined ? {} : { params }),
});
const notification = (method: string, params?: unknown) => ({
  jsonrpc: "2.0",
  method,
  ...(params === undefined ? {} : { params }),
});
const initialize = (id: number) =>
  request(id, "initialize", { processId: null, rootUri: null, capabilities: {} });

const HOVER = { textDocument: { uri: "file:///a.finish" }, position: { line: 0, character: 0 } };

describe("the order of messages", () => {
  test("nothing before `initialize`, `initialize` once, nothing but `exit` after `shutdown`", async () => {
    const server = start();
    server.send(request(1, "textDocument/hover", HOVER));
    server.send(notification("textDocument/didOpen", {}));
    server.send(request(2, "shutdown"));
    expect((await server.answer(1)).error?.code).toBe(NOT_INITIALIZED);
    expect((await server.answer(2)).error?.code).toBe(NOT_INITIALIZED);
    server.send(request(3, "initialize"));
    server.send(request(4, "initialize", { capabilities: "all" }));
    server.send(request(5, "initialize", [1, 2]));
    for (const id of [3, 4, 5]) expect((await server.answer(id)).error?.code, `${id}`).toBe(INVALID_PARAMS);
    server.send(initialize(6));
    expect((await server.answer(6)).result).toHaveProperty("capabilities");
    server.send(initialize(7));
    expect((await server.answer(7)).error?.code).toBe(INVALID_REQUEST);
    server.send(notification("initialized", {}));
    server.send(request(8, "textDocument/hover", HOVER));
    expect(await server.answer(8)).toMatchObject({ result: null });
    server.send(request(9, "shutdown"));
    expect(await server.answer(9)).toMatchObject({ result: null });
    server.send(request(10, "textDocument/hover", HOVER));
    server.send(request(11, "shutdown"));
    for (const id of [10, 11]) expect((await server.answer(id)).error?.code, `${id}`).toBe(INVALID_REQUEST);
    server.send(notification("exit"));
    expect(await server.ended).toEqual([0, null]);
  });

  test.each([
    ["before `initialize`", []],
    ["without `shutdown`", [initialize(1)]],
  ])("`exit` %s ends with 1", async (_, before) => {
    const server = start();
    for (const message of before) server.send(message);
    server.send(notification("exit"));
    expect(await server.ended).toEqual([1, null]);
  });

  test("input that closes after `shutdown` ends with 0, without it with 1", async () => {
    const [polite, rude] = [start(), start()];
    for (const server of [polite, rude]) {
      server.send(initialize(1));
      await server.answer(1);
    }
    polite.send(request(2, "shutdown"));
    await polite.answer(2);
    polite.process.stdin.end();
    rude.process.stdin.end();
    expect(await polite.ended).toEqual([0, null]);
    expect(await rude.ended).toEqual([1, null]);
  });
});

describe("what messages hold", () => {
  test("parameters that are none, or of another shape, are answered as such by every request", async () => {
    const server = start();
    server.send(request(0, "initialize", { processId: null, rootUri: null, capabilities: VSCODE }));
    await server.answer(0);
    const methods = Object.keys(PARAMS).filter(
      (method) =>
        !/\/did[A-Z]/.test(method) && !["finishwright/rules", "finishwright/workshop"].includes(method),
    );
    expect(methods.length).toBeGreaterThan(25);
    const wrong = [undefined, {}, [], [1, 2, 3], { textDocument: 5, position: "here", item: null, files: 1 }];
    let id = 0;
    for (const method of methods) {
      for (const params of wrong) {
        id += 1;
        server.send(request(id, method, params));
        const { error } = await server.answer(id);
        expect(error?.code, `${method} ${JSON.stringify(params)}`).toBe(INVALID_PARAMS);
      }
    }
    const negative = { ...HOVER, position: { line: -1, character: 0.5 } };
    server.send(request("text", "textDocument/hover", negative));
    expect((await server.answer("text")).error?.code).toBe(INVALID_PARAMS);
    // A notification has no answer; the next request has.
    for (const method of Object.keys(PARAMS)) server.send(notification(method, { textDocument: 5 }));
    server.send(request("after", "textDocument/hover", HOVER));
    expect(await server.answer("after")).toMatchObject({ result: null });
  });

  test("every message of the server has its parameters checked", () => {
    const unchecked = HANDLERS.map(({ method }) => method).filter((method) => !(method in PARAMS));
    expect(unchecked).toEqual(["textDocument/didSave", "workspace/didChangeWorkspaceFolders"]);
  });

  test("unknown methods, cancelling of nothing, and what is no message at all", async () => {
    const server = start();
    server.send(initialize(1));
    await server.answer(1);
    server.send(request(2, "textDocument/makeCoffee", {}));
    expect((await server.answer(2)).error?.code).toBe(METHOD_NOT_FOUND);
    server.send(request(3, "$/makeCoffee"));
    expect((await server.answer(3)).error?.code).toBe(METHOD_NOT_FOUND);
    server.send(notification("$/makeCoffee"));
    server.send(notification("textDocument/makeCoffee"));
    for (const params of [undefined, {}, { id: 99 }, { id: null }, { id: { a: 1 } }, 5, [1]])
      for (const method of ["$/cancelRequest", "$/progress", "$/setTrace", "window/workDoneProgress/cancel"])
        server.send({ jsonrpc: "2.0", method, ...(params === undefined ? {} : { params }) });
    server.send({ jsonrpc: "2.0", id: 12345, result: "an answer to nothing" });
    for (const nonsense of [null, 5, "text", [], [initialize(7)], {}, { id: {}, method: "shutdown" }]) {
      server.send(nonsense);
      expect((await server.answer(null)).error?.code, JSON.stringify(nonsense)).toBe(INVALID_REQUEST);
    }
    server.write("Content-Length: 4\r\n\r\n{a:}");
    expect((await server.answer(null)).error?.code).toBe(PARSE_ERROR);
    server.write("Content-Length: 0\r\n\r\n");
    expect((await server.answer(null)).error?.code).toBe(PARSE_ERROR);
    server.send(request(4, "shutdown"));
    expect(await server.answer(4)).toMatchObject({ result: null });
    server.send(notification("exit"));
    expect(await server.ended).toEqual([0, null]);
  });
});

describe("a stream that cannot be read ends the server with a word on the log", () => {
  test.each([
    ["no number", "Content-Length: many\r\n\r\n{}", "not a whole number"],
    ["a negative one", "Content-Length: -5\r\n\r\n{}", "not a whole number"],
    ["no length", "Content-Type: application/json\r\n\r\n{}", "must state `Content-Length`"],
    ["two lengths", "Content-Length: 2\r\nContent-Length: 3\r\n\r\n{}", "once"],
    ["a huge length", "Content-Length: 99999999999\r\n\r\n{}", "longer than"],
    ["another protocol", "GET / HTTP/1.1\r\nHost: x\r\n\r\n", "not a header field"],
    ["no end of the header", "x".repeat(5000), "no end of its header"],
  ])("%s", async (_, bytes, word) => {
    const server = start();
    // What came before is still taken.
    server.send(initialize(1));
    await server.answer(1);
    server.write(bytes);
    expect(await server.ended).toEqual([1, null]);
    expect(server.log()).toContain("The messages cannot be read any more");
    expect(server.log()).toContain(word);
  });

  test("frames may be cut anywhere and carry other fields", async () => {
    const server = start();
    const body = JSON.stringify(initialize(1));
    const bytes = `content-type: application/vscode-jsonrpc; charset=utf-8\r\nCONTENT-LENGTH: ${body.length}\r\n\r\n${body}`;
    for (const byte of bytes) server.write(byte);
    expect((await server.answer(1)).result).toHaveProperty("capabilities");
    server.write(framed(request(2, "shutdown")) + framed(notification("exit")));
    expect(await server.ended).toEqual([0, null]);
  });
});
