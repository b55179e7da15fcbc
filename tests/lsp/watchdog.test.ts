/**
 * The server ends with its client even while it computes, and names what takes too long while it still does.
 *
 * The clocks here are those of the watchdog itself; a machine that is slow only makes the tests longer.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, test } from "vitest";
import { startRaw } from "./raw-server.ts";

const SPINNING = fileURLToPath(new URL("spinning.ts", import.meta.url));

const started: ChildProcess[] = [];
const run = (args: readonly string[]) => {
  const child = spawn(process.execPath, args, { stdio: ["pipe", "pipe", "pipe"] });
  started.push(child);
  let [said, log] = ["", ""];
  child.stdout.on("data", (chunk: Buffer) => {
    said += chunk.toString();
  });
  child.stderr.on("data", (chunk: Buffer) => {
    log += chunk.toString();
  });
  const until = async (ready: () => boolean): Promise<void> => {
    while (!ready()) await new Promise((resolve) => setTimeout(resolve, 10));
  };
  return {
    child,
    // Not `exit`, which may come before the last of the log.
    ended: once(child, "close"),
    says: (word: string) => until(() => said.includes(word)),
    logs: (word: string) => until(() => log.includes(word)),
    log: () => log,
  };
};
afterEach(() => {
  for (const child of started.splice(0)) child.kill("SIGKILL");
});

/** A process that stands for an editor and does nothing. */
const idle = () => run(["-e", "setInterval(() => {}, 1000)"]);

describe("a thread that hangs", () => {
  test("is ended when its input closes", async () => {
    const spinning = run([SPINNING]);
    spinning.child.stdin.write("go\n");
    await spinning.says("spinning");
    spinning.child.stdin.end();
    expect(await spinning.ended).toEqual([null, "SIGKILL"]);
    expect(spinning.log()).toContain("The input was closed, and the server is still busy, so it is ended.");
  });

  test("is ended when its client ends, though its input stays open", async () => {
    const client = idle();
    const spinning = run([SPINNING, String(client.child.pid)]);
    spinning.child.stdin.write("go\n");
    await spinning.says("spinning");
    client.child.kill("SIGKILL");
    expect(await spinning.ended).toEqual([null, "SIGKILL"]);
    expect(spinning.log()).toContain("The editor has ended");
  });

  test("is named with what it has in hand while it hangs, and lives on", async () => {
    const spinning = run([SPINNING, "-", "1500"]);
    spinning.child.stdin.write("go\n");
    await spinning.logs('Busy for more than 0.1 s; in hand: the check of "a.finish" (since ');
    await spinning.says("done");
    await spinning.logs("Back after ");
    spinning.child.stdin.end();
    expect(await spinning.ended).toEqual([5, null]);
  });
});

describe("a thread that is free", () => {
  test("ends by itself when its client does", async () => {
    const client = idle();
    const spinning = run([SPINNING, String(client.child.pid)]);
    client.child.kill("SIGKILL");
    expect(await spinning.ended).toEqual([7, null]);
  });
});

describe("the built server", () => {
  /** So much to check that it is not done when the grace is over, on any machine. */
  const LONG = Array.from(
    { length: 1000 },
    (_, i) => `recipe r${i} {\n  for wood\n${"  step sand 150\n  layer shellac x 3 wait 2 h\n".repeat(8)}}\n`,
  ).join("\n");

  test.each([
    ["its input closes", (server: ReturnType<typeof startRaw>) => void server.process.stdin.end()],
    ["its client ends", (_: unknown, client: ChildProcess) => void client.kill("SIGKILL")],
  ])("ends while it computes when %s", async (_, leave) => {
    const client = idle();
    const server = startRaw();
    started.push(server.process);
    const uri = "file:///a.finish";
    server.send({
      jsonrpc: "2.0",
      id: 1,
      method: "initialize",
      params: {
        processId: client.child.pid,
        rootUri: null,
        capabilities: { textDocument: { diagnostic: {} } },
      },
    });
    await server.answer(1);
    const textDocument = { uri, languageId: "finish", version: 1, text: LONG };
    server.send({ jsonrpc: "2.0", method: "textDocument/didOpen", params: { textDocument } });
    server.send({ jsonrpc: "2.0", id: 2, method: "textDocument/documentSymbol", params: { textDocument } });
    await server.answer(2);
    server.send({ jsonrpc: "2.0", id: 3, method: "textDocument/diagnostic", params: { textDocument } });
    await new Promise((resolve) => setTimeout(resolve, 300));
    leave(server, client.child);
    const [code, signal] = await server.ended;
    // By the watchdog, or, where the check was over in time, by itself.
    expect([signal ?? code]).toEqual([server.log().includes("still busy") ? "SIGKILL" : 1]);
  });
});
