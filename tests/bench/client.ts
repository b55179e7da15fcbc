/**
 * Drives a language server over standard input and output, as an editor does, and reads from `/proc` what it costs:
 * processor time of all its threads (nanoseconds of the scheduler) and memory. Runs on Linux.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import process from "node:process";
import type { Server } from "./servers.ts";

export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface Change {
  readonly start: Position;
  readonly end: Position;
  readonly text: string;
}

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly message: string };
}

const CAPABILITIES = {
  workspace: {
    configuration: true,
    workspaceFolders: true,
    didChangeConfiguration: {},
    diagnostics: { refreshSupport: true },
    codeLens: { refreshSupport: true },
    inlayHint: { refreshSupport: true },
  },
  textDocument: {
    synchronization: {},
    publishDiagnostics: { versionSupport: true },
    hover: { contentFormat: ["markdown"] },
    completion: { completionItem: { snippetSupport: true } },
    formatting: {},
    inlayHint: {},
    semanticTokens: {
      requests: { full: true },
      tokenTypes: ["class", "keyword", "property", "enumMember", "variable", "number", "function", "type"],
      tokenModifiers: [],
      formats: ["relative"],
    },
  },
};

const PATIENCE_MS = 120_000;

export class Client {
  readonly server: Server;
  readonly #child: ChildProcess;
  readonly #answers = new Map<number, (message: Message) => void>();
  readonly #published = new Map<string, (version: number | undefined) => void>();
  readonly #versions = new Map<string, number>();
  #provides: Readonly<Record<string, unknown>> = {};
  readonly #threads = new Map<string, number>();
  #whenTold: (() => void) | undefined;
  #lastId = 0;
  #pending: Buffer = Buffer.alloc(0);

  constructor(server: Server, env: NodeJS.ProcessEnv = {}) {
    this.server = server;
    this.#child = spawn(process.execPath, [...server.command, "--stdio"], {
      env: { ...process.env, ...env },
      stdio: ["pipe", "pipe", "ignore"],
    });
    this.#child.stdout!.on("data", (chunk: Buffer) => this.#take(chunk));
  }

  async initialize(): Promise<void> {
    const { initializationOptions, settings, pullsDiagnostics } = this.server;
    const textDocument = { ...CAPABILITIES.textDocument, ...(pullsDiagnostics && { diagnostic: {} }) };
    const answer = await this.request("initialize", {
      processId: process.pid,
      rootUri: null,
      workspaceFolders: null,
      capabilities: { ...CAPABILITIES, textDocument },
      initializationOptions,
    });
    this.#provides = Object(Reflect.get(Object(answer), "capabilities"));
    this.notify("initialized", {});
    this.notify("workspace/didChangeConfiguration", { settings });
  }

  /** Whether the server says that it answers a request, such as `hover`. */
  provides(what: string): boolean {
    return Boolean(this.#provides[`${what}Provider`]);
  }

  async open(uri: string, text: string): Promise<void> {
    const { languageId } = this.server;
    this.#versions.set(uri, 1);
    const shown = this.#whenPublished(uri, 1);
    this.notify("textDocument/didOpen", { textDocument: { uri, languageId, version: 1, text } });
    await this.#diagnosed(uri, shown);
  }

  close(uri: string): void {
    this.notify("textDocument/didClose", { textDocument: { uri } });
  }

  /** Sends an edit; its diagnostics are waited for by `fresh`. */
  change(uri: string, { start, end, text }: Change): void {
    const version = (this.#versions.get(uri) ?? 1) + 1;
    this.#versions.set(uri, version);
    const contentChanges = [{ range: { start, end }, text }];
    this.notify("textDocument/didChange", { textDocument: { uri, version }, contentChanges });
  }

  /** An edit, and the diagnostics of the text that it makes. */
  async keystroke(uri: string, change: Change): Promise<void> {
    const shown = this.#whenPublished(uri, (this.#versions.get(uri) ?? 1) + 1);
    this.change(uri, change);
    await this.#diagnosed(uri, shown);
  }

  /** Resolves when the server next says that what it shows of jobs is new, as it does when they are planned. */
  planned(): Promise<void> {
    const told = new Promise<void>((resolve) => {
      this.#whenTold = resolve;
    });
    return this.#patiently(told, "plan");
  }

  async request(method: string, params: unknown): Promise<unknown> {
    this.#lastId += 1;
    const id = this.#lastId;
    const answer = new Promise<Message>((resolve) => this.#answers.set(id, resolve));
    this.#send({ id, method, params });
    const { result, error } = await this.#patiently(answer, method);
    if (error) throw new Error(`${this.server.name}, ${method}: ${error.message}`);
    return result;
  }

  notify(method: string, params: unknown): void {
    this.#send({ method, params });
  }

  async stop(): Promise<void> {
    const ended = new Promise((resolve) => this.#child.once("exit", resolve));
    await this.request("shutdown", null);
    this.notify("exit", null);
    // A profile is written at the end.
    const timer = setTimeout(() => this.#child.kill("SIGKILL"), 20_000);
    await ended;
    clearTimeout(timer);
  }

  /** Milliseconds that all threads have had so far; of those that have ended, as far as was seen last. */
  cpuMs(): number {
    const tasks = `/proc/${this.#child.pid}/task`;
    for (const task of readdirSync(tasks)) {
      const had = scheduledMs(`${tasks}/${task}/schedstat`);
      this.#threads.set(task, Math.max(had, this.#threads.get(task) ?? 0));
    }
    return [...this.#threads.values()].reduce((sum, had) => sum + had, 0);
  }

  /** Milliseconds that the thread which takes the messages has had so far. */
  answeringMs(): number {
    return scheduledMs(`/proc/${this.#child.pid}/task/${this.#child.pid}/schedstat`);
  }

  /** Megabytes held at this moment. */
  memoryMb(): number {
    const status = readFileSync(`/proc/${this.#child.pid}/status`, "utf8");
    return Number(/VmRSS:\s+(\d+)/u.exec(status)![1]) / 1024;
  }

  async #diagnosed(uri: string, published: Promise<void>): Promise<void> {
    if (this.server.pullsDiagnostics) {
      await this.request("textDocument/diagnostic", { textDocument: { uri } });
    } else await this.#patiently(published, "diagnostics");
  }

  #whenPublished(uri: string, wanted: number): Promise<void> {
    if (this.server.pullsDiagnostics) return Promise.resolve();
    return new Promise((resolve) => {
      this.#published.set(uri, (version) => {
        // Some servers do not say which version they speak of; the next answer is taken for that of this edit.
        if (version !== undefined && version < wanted) return;
        this.#published.delete(uri);
        resolve();
      });
    });
  }

  async #patiently<T>(answer: Promise<T>, what: string): Promise<T> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<never>((_, reject) => {
      timer = setTimeout(() => reject(new Error(`${this.server.name}: no ${what} came.`)), PATIENCE_MS);
    });
    try {
      return await Promise.race([answer, late]);
    } finally {
      clearTimeout(timer);
    }
  }

  #send(message: Message): void {
    const body = Buffer.from(JSON.stringify({ jsonrpc: "2.0", ...message }));
    this.#child.stdin!.write(Buffer.concat([Buffer.from(`Content-Length: ${body.length}\r\n\r\n`), body]));
  }

  #take(chunk: Buffer): void {
    this.#pending = this.#pending.length === 0 ? chunk : Buffer.concat([this.#pending, chunk]);
    for (;;) {
      const head = this.#pending.indexOf("\r\n\r\n");
      if (head < 0) return;
      const length = Number(/Content-Length: *(\d+)/iu.exec(this.#pending.toString("latin1", 0, head))![1]);
      const end = head + 4 + length;
      if (this.#pending.length < end) return;
      const message: Message = JSON.parse(this.#pending.toString("utf8", head + 4, end));
      this.#pending = this.#pending.subarray(end);
      this.#receive(message);
    }
  }

  #receive({ id, method, params, result, error }: Message): void {
    if (method === undefined) {
      this.#answers.get(id!)?.({ result, error });
      this.#answers.delete(id!);
    } else if (method === "textDocument/publishDiagnostics") {
      const { uri, version } = params as { readonly uri: string; readonly version?: number };
      this.#published.get(uri)?.(version);
    } else if (id !== undefined) {
      if (method === "workspace/codeLens/refresh") this.#whenTold?.();
      const { items } = Object(params) as { readonly items?: readonly { readonly section?: string }[] };
      const answer = method === "workspace/configuration" ? items?.map((item) => this.#setting(item)) : null;
      this.#send({ id, result: answer });
    }
  }

  #setting({ section }: { readonly section?: string }): unknown {
    return this.server.settings[section ?? ""] ?? null;
  }
}

const scheduledMs = (file: string): number => {
  try {
    return Number(readFileSync(file, "utf8").split(" ")[0]) / 1e6;
  } catch {
    return 0;
  }
};
