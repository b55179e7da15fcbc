/**
 * What is measured of each server, as rows of one table: processor time beside the time on the clock, since the clock of a
 * machine with other work tells little. Every keystroke makes a text that was not there before.
 */
import { Client, type Position } from "./client.ts";
import { FLOOR, placeIn, type Server } from "./servers.ts";

/** A figure of a server; undefined where it has no answer to give. */
export interface Figure {
  readonly cpuMs?: number;
  readonly wallMs?: number;
  readonly megabytes?: number;
}

export interface Row {
  readonly what: string;
  /** By the name of the server. */
  readonly figures: Readonly<Record<string, Figure>>;
}

export interface Options {
  readonly starts: number;
  /** Keystrokes before those that count: somebody who types has typed for a while. */
  readonly warm: number;
  readonly keystrokes: number;
  readonly sizes: readonly number[];
  readonly documents: number;
  readonly burst: number;
  readonly idleMs: number;
}

/** Rows under names that servers share, gathered in the order in which they first come. */
export class Table {
  readonly #rows = new Map<string, Record<string, Figure>>();

  set(what: string, server: string, figure: Figure): void {
    const row = this.#rows.get(what) ?? {};
    row[server] = figure;
    this.#rows.set(what, row);
  }

  get rows(): readonly Row[] {
    return [...this.#rows].map(([what, figures]) => ({ what, figures }));
  }
}

const sleep = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

export const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** Processor time and time on the clock of some work of a server. */
async function measured(
  client: Client,
  work: () => Promise<void>,
): Promise<Required<Omit<Figure, "megabytes">>> {
  const [cpu, began] = [client.cpuMs(), performance.now()];
  await work();
  const wallMs = performance.now() - began;
  // What a server still does after its answer belongs to the answer.
  await sleep(30);
  return { cpuMs: client.cpuMs() - cpu, wallMs };
}

/** Time on the clock, and what the thread that answers had of it: others may be planning meanwhile. */
async function answered(client: Client, work: () => Promise<unknown>): Promise<Figure> {
  const [cpu, began] = [client.answeringMs(), performance.now()];
  await work();
  return { cpuMs: client.answeringMs() - cpu, wallMs: performance.now() - began };
}

const medianOf = (figures: readonly Figure[]): Figure => ({
  cpuMs: median(figures.map(({ cpuMs }) => cpuMs!)),
  wallMs: median(figures.map(({ wallMs }) => wallMs!)),
});

const uriOf = (server: Server, name: string): string => `file:///bench/${name}${server.ending}`;

/** Types three digits at a place, over those that were typed last. */
export function typist(place: Position): () => { start: Position; end: Position; text: string } {
  let typed = 0;
  return () => {
    const length = typed === 0 ? 0 : 3;
    const text = String(101 + ((typed * 397) % 899));
    typed += 1;
    return { start: place, end: { ...place, character: place.character + length }, text };
  };
}

/** From the start of the process to the first diagnostics of a small text. */
export async function coldStart(server: Server, { starts }: Options, table: Table): Promise<void> {
  const run = async (env: NodeJS.ProcessEnv): Promise<Figure> => {
    const began = performance.now();
    const client = new Client(server, env);
    await client.initialize();
    await client.open(uriOf(server, "small"), server.text(26));
    const figure = { wallMs: performance.now() - began, cpuMs: client.cpuMs() };
    await client.stop();
    return figure;
  };
  const runs = async (env: NodeJS.ProcessEnv): Promise<Figure> => {
    const figures: Figure[] = [];
    for (let start = 0; start < starts; start += 1) figures.push(await run(env));
    return medianOf(figures);
  };
  // Once for the cache, where the server keeps one.
  await run({});
  table.set("cold start to first diagnostics", server.name, await runs({}));
  const without = await runs({ NODE_DISABLE_COMPILE_CACHE: "1" });
  table.set("the same without V8's compile cache", server.name, without);
}

/** Half a second each where a server waits on purpose: of those fewer tell as much. */
const strokesFor = (server: Server, { warm, keystrokes: all }: Options) => {
  const share = server.waits ? 5 : 1;
  return { warm: Math.ceil(warm / share), strokes: Math.ceil(all / share) };
};

/** Keystrokes with fresh diagnostics, by length of the text and by place; then memory once all is quiet. */
export async function keystrokes(server: Server, options: Options, table: Table): Promise<void> {
  const { warm, strokes } = strokesFor(server, options);
  for (const size of options.sizes) {
    const text = server.text(size);
    const client = new Client(server);
    await client.initialize();
    const uri = uriOf(server, `keys-${size}`);
    const opened = await measured(client, () => client.open(uri, text));
    table.set(`open ${size} lines`, server.name, opened);
    for (const [where, place] of Object.entries(server.places)) {
      const type = typist(placeIn(text, place));
      for (let early = 0; early < warm; early += 1) await client.keystroke(uri, type());
      await sleep(500);
      const [before, answeringBefore] = [client.cpuMs(), client.answeringMs()];
      const walls: number[] = [];
      for (let stroke = 0; stroke < strokes; stroke += 1) {
        const began = performance.now();
        await client.keystroke(uri, type());
        walls.push(performance.now() - began);
      }
      await sleep(300);
      const perStroke = (ms: number): number => ms / strokes;
      const cpuMs = perStroke(client.answeringMs() - answeringBefore);
      table.set(`keystroke in a ${where}, ${size} lines`, server.name, { cpuMs, wallMs: median(walls) });
      const all = { cpuMs: perStroke(client.cpuMs() - before) };
      table.set(
        `the same in all threads, collecting and plans among it: ${where}, ${size}`,
        server.name,
        all,
      );
      // What is typed elsewhere changes amounts, and no plan.
      if (server.plansLater && where === "recipe") {
        const planned = await measured(client, async () => {
          const told = client.planned();
          await client.keystroke(uri, type());
          await told;
        });
        table.set(`the same to the plan that it changes, ${size} lines`, server.name, planned);
      }
    }
    await quiet(client);
    await sleep(options.idleMs);
    table.set(`memory after it, ${size} lines`, server.name, { megabytes: client.memoryMb() });
    await client.stop();
  }
}

/** What it costs to send an answer that needs no working out. */
async function sent(answer: unknown, times: number): Promise<Figure> {
  const client = new Client(FLOOR);
  await client.initialize();
  client.notify("bench/keep", { answer });
  const figures: Figure[] = [];
  for (let time = 0; time < times; time += 1)
    figures.push(await answered(client, () => client.request("bench/send", {})));
  await client.stop();
  return medianOf(figures);
}

/** Answers asked for at once after an edit; beside ours, the same answer from a server that has it ready. */
export async function requests(server: Server, options: Options, table: Table): Promise<void> {
  const formatting = { options: { tabSize: 2, insertSpaces: true } };
  const { warm, strokes } = strokesFor(server, options);
  for (const size of options.sizes.filter((each) => each >= 1000)) {
    const text = server.text(size);
    const lines = text.split("\n").length;
    const place = placeIn(text, Object.values(server.places)[0]!);
    const whole = { range: { start: { line: 0, character: 0 }, end: { line: lines, character: 0 } } };
    const asked: readonly (readonly [string, string, string, object])[] = [
      ["hover", "hover", "textDocument/hover", { position: { ...place, character: place.character - 1 } }],
      ["completion", "completion", "textDocument/completion", { position: place }],
      ["formatting", "documentFormatting", "textDocument/formatting", formatting],
      ["semantic colours", "semanticTokens", "textDocument/semanticTokens/full", {}],
      ["inlay hints", "inlayHint", "textDocument/inlayHint", whole],
    ];
    const client = new Client(server);
    await client.initialize();
    const uri = uriOf(server, `requests-${size}`);
    await client.open(uri, text);
    const type = typist(place);
    for (const [what, provider, method, params] of asked) {
      if (!client.provides(provider)) continue;
      const figures: Figure[] = [];
      let answer: unknown;
      for (let time = 0; time < (warm + strokes) / 4; time += 1) {
        figures.push(
          await answered(client, async () => {
            client.change(uri, type());
            answer = await client.request(method, { textDocument: { uri }, ...params });
          }),
        );
        // The diagnostics of this edit must not be counted with the next answer.
        await client.keystroke(uri, type());
      }
      const row = `${what} after an edit, ${size} lines`;
      table.set(row, server.name, medianOf(figures.slice(Math.floor(warm / 4))));
      if (server.isMeasured) table.set(row, FLOOR.name, await sent(answer, figures.length));
    }
    await client.stop();
  }
}

/** Edits sent without waiting for any, and the diagnostics after the last. */
export async function burst(server: Server, { burst: edits }: Options, table: Table): Promise<void> {
  const text = server.text(1000);
  const client = new Client(server);
  await client.initialize();
  const uri = uriOf(server, "burst");
  await client.open(uri, text);
  const type = typist(placeIn(text, Object.values(server.places)[0]!));
  const figure = await measured(client, async () => {
    for (let edit = 1; edit < edits; edit += 1) client.change(uri, type());
    await client.keystroke(uri, type());
  });
  table.set(`burst of ${edits} edits, 1000 lines, to the diagnostics of the last`, server.name, figure);
  await client.stop();
}

/**
 * Until a server has done next to nothing for a second: what it does by itself is over. Next to nothing is `mostMs` of the
 * processor in a quarter of a second; one that is profiled never does less than the profiler.
 */
export async function quiet(client: Client, mostMs = 3): Promise<void> {
  for (let [before, still] = [client.cpuMs(), 0]; still < 4; ) {
    await sleep(250);
    const now = client.cpuMs();
    still = now - before < mostMs ? still + 1 : 0;
    before = now;
  }
}

/**
 * Many documents opened at once and asked about: when the one opened last, which a person looks at, has its diagnostics,
 * when all have, and when all that follows from it is done; then a keystroke in one of them.
 */
export async function manyDocuments(server: Server, options: Options, table: Table): Promise<void> {
  const { documents } = options;
  const { strokes } = strokesFor(server, options);
  const text = server.text(26);
  const client = new Client(server);
  await client.initialize();
  const uris = Array.from({ length: documents }, (_, i) => uriOf(server, `many-${i}`));
  const [cpu, began] = [client.cpuMs(), performance.now()];
  const soFar = (): Figure => ({ cpuMs: client.cpuMs() - cpu, wallMs: performance.now() - began });
  let looked: Figure = {};
  const answers = uris.map((uri) => client.open(uri, text));
  await Promise.all([
    ...answers,
    answers.at(-1)!.then(() => {
      looked = soFar();
    }),
  ]);
  const all = soFar();
  table.set(`${documents} documents opened, to the diagnostics of the one looked at`, server.name, looked);
  table.set(`to those of all ${documents}`, server.name, all);
  await quiet(client);
  table.set("to all that follows, plans among it", server.name, { cpuMs: soFar().cpuMs });
  const type = typist(placeIn(text, Object.values(server.places)[0]!));
  await client.keystroke(uris[0]!, type());
  const { cpuMs, wallMs } = await measured(client, async () => {
    for (let stroke = 0; stroke < strokes; stroke += 1) await client.keystroke(uris[0]!, type());
  });
  const figure = { cpuMs: cpuMs / strokes, wallMs: wallMs / strokes };
  table.set(`keystroke with ${documents} documents open`, server.name, figure);
  await quiet(client);
  await sleep(options.idleMs);
  table.set(`memory with ${documents} documents open`, server.name, { megabytes: client.memoryMb() });
  await client.stop();
}
