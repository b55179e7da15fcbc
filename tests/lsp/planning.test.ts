/** Plans come in a second answer: what is said before, what is said then, and what is answered meanwhile. */
import { expect, test, vi } from "vitest";
import type { CodeLens, Hover, InlayHint } from "vscode-languageserver";
import { planWork } from "../../server/src/core/schedule/plan.ts";
import type { Schedule, ScheduleInput } from "../../server/src/core/schedule/types.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { createPlanning, type PlanMaker } from "../../server/src/lsp/planning.ts";
import { createTurns, SLICE_MS } from "../../server/src/lsp/slices.ts";
import { type Client, startClient, VSCODE } from "./harness.ts";

const URI = "file:///shop/late.finish";

const textOf = (hours: string): string => `material clear {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h
}

recipe coats {
  for wood
  safety dust_mask, ventilate
  step sand 120
  step dust
  layer clear x 2 {
    wait ${hours} h
  }
  wait until cured
}

piece table {
  surface top {
    shape area 2 m2
    wood  beech
  }
}

shop mill {
  air   20 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}

job order {
  piece table
  in    mill
  start 2027-03-08
  ready 2027-03-09
  apply coats to top
}
`;

/** A planner that waits until it is let go on, and again once it is held. */
function heldPlanner() {
  let release = (): void => {};
  let held = Promise.resolve();
  const hold = (): void => {
    held = new Promise((resolve) => {
      release = resolve;
    });
  };
  hold();
  const maker: PlanMaker = {
    async make(input) {
      await held;
      return planWork(input);
    },
  };
  return { host: { createAnalyst, planMaker: () => maker }, hold, release: () => release() };
}

const rulesIn = async (client: Client): Promise<readonly string[]> =>
  (await client.findings(URI)).map((line) => /\S+ (\S+):/u.exec(line)![1]!);

const PLAIN = {
  ...VSCODE,
  workspace: { ...VSCODE.workspace, codeLens: { refreshSupport: true }, inlayHint: { refreshSupport: true } },
};

test("what needs a plan comes when it is made, and the client is told to ask again", async () => {
  const { host, release } = heldPlanner();
  const client = await startClient({ host, capabilities: PLAIN });
  await client.open(URI, textOf("24"));
  const first = await rulesIn(client);
  expect(first).not.toContain("late");
  const document = { textDocument: { uri: URI } };
  const lenses = async () =>
    (await client.request<CodeLens[]>("textDocument/codeLens", document)).map(
      ({ command }) => command!.title,
    );
  expect((await lenses())[0]).toMatch(/^being planned/u);
  const job = { ...document, position: { line: 29, character: 5 } };
  const hover = async () =>
    ((await client.request<Hover>("textDocument/hover", job)).contents as { value: string }).value;
  expect(await hover()).toContain("full use being planned");
  const whole = { ...document, range: { start: { line: 0, character: 0 }, end: { line: 40, character: 0 } } };
  const hints = async () =>
    JSON.stringify(
      (await client.request<InlayHint[]>("textDocument/inlayHint", whole)).map(({ label }) => label),
    );
  expect(await hints()).toContain("being planned");

  release();
  await client.take("workspace/diagnostic/refresh");
  await client.take("workspace/codeLens/refresh");
  await client.take("workspace/inlayHint/refresh");
  expect(await rulesIn(client)).toEqual(expect.arrayContaining([...first, "late"]));
  expect((await lenses())[0]).toMatch(/^last work /u);
  expect(await hover()).not.toContain("being planned");
  expect(await hints()).not.toContain("being planned");
  // That a file was opened is news for what else is drawn.
  await client.take("workspace/codeLens/refresh");
  await client.take("workspace/inlayHint/refresh");
  await client.end();
});

test("an edit that changes the plan takes back what was said of the old one", async () => {
  const { host, hold, release } = heldPlanner();
  release();
  const client = await startClient({ host });
  await client.open(URI, textOf("24"));
  await rulesIn(client);
  await client.take("workspace/diagnostic/refresh");
  expect(await rulesIn(client)).toContain("late");
  hold();
  await client.change(URI, 2, textOf("25"));
  expect(await rulesIn(client)).not.toContain("late");
  release();
  await client.take("workspace/diagnostic/refresh");
  expect(await rulesIn(client)).toContain("late");
  // What leaves the plan alone leaves its findings alone, and asks for nothing.
  await client.change(URI, 3, `# words\n${textOf("25")}`);
  expect(await rulesIn(client)).toContain("late");
  await client.end();
});

test("a client that cannot be told to ask again gets the whole answer", async () => {
  const { host, release } = heldPlanner();
  const { diagnostics: _, ...workspace } = VSCODE.workspace!;
  const client = await startClient({ host, capabilities: { ...VSCODE, workspace } });
  await client.open(URI, textOf("24"));
  let isAnswered = false;
  const answer = rulesIn(client).then((rules) => {
    isAnswered = true;
    return rules;
  });
  const hover = { textDocument: { uri: URI }, position: { line: 29, character: 5 } };
  await client.request("textDocument/hover", hover);
  expect(isAnswered).toBe(false);
  release();
  expect(await answer).toContain("late");
  await client.end();
});

test("a client that does not ask is sent both answers", async () => {
  const { host, release } = heldPlanner();
  const { diagnostic: _, ...textDocument } = VSCODE.textDocument!;
  const client = await startClient({ host, capabilities: { ...VSCODE, textDocument } });
  await client.open(URI, textOf("24"));
  const codes = async () => (await client.pushed()).diagnostics.map(({ code }) => code);
  expect(await codes()).not.toContain("late");
  release();
  expect(await codes()).toContain("late");
  await client.end();
});

/** Recipes, pieces and jobs that all use one material. */
const many = (jobs: number, covers: number): string =>
  `material hall {\n  family waterborne polyurethane\n  covers ${covers} m2/L\n}\n\n` +
  Array.from(
    { length: jobs },
    (_, i) =>
      `recipe way_${i} {\n  for wood\n  step sand 120, 150\n  step dust\n  layer hall x 3 {\n    wait until recoat\n    step sand 220\n    step dust\n  }\n}\n\npiece table_${i} {\n  surface top {\n    shape area 2 m2\n    wood beech\n  }\n}\n\njob order_${i} {\n  piece table_${i}\n  apply way_${i} to top\n}\n`,
  ).join("\n");

test("a hover is answered while a material that very many jobs use is looked into", async () => {
  let taken = 0;
  const counting: typeof createAnalyst = (options) => {
    const analyst = createAnalyst(options);
    return {
      ...analyst,
      analysis: () => {
        const analysis = analyst.analysis();
        function* steps(file: string): Generator<void> {
          for (const step of analysis.steps(file)) {
            taken += 1;
            yield step;
          }
        }
        return { ...analysis, steps };
      },
    };
  };
  const maker: PlanMaker = { make: () => new Promise(() => {}) };
  const client = await startClient({ host: { createAnalyst: counting, planMaker: () => maker } });
  await client.open(URI, many(300, 10));
  await client.pull(URI);
  taken = 0;
  await client.change(URI, 2, many(300, 11));
  const answer = client.pull(URI);
  const position = { line: 0, character: 10 };
  const hover = await client.request<Hover>("textDocument/hover", { textDocument: { uri: URI }, position });
  const atHover = taken;
  expect((hover.contents as { value: string }).value).toMatch(/\d+ more jobs are still being worked out/u);
  expect((await answer).kind).toBe("full");
  // Each recipe and each job takes a step at least, and the hover did not wait for all of them.
  expect(taken).toBeGreaterThanOrEqual(600);
  expect(atHover).toBeLessThan(taken);
  await client.end();
});

test("a slice ends when its time is over, and stale work is given up", async () => {
  let clock = 0;
  let steps = 0;
  function* work(): Generator<void> {
    for (; steps < 100; steps += 1) {
      clock += SLICE_MS / 4;
      yield;
    }
  }
  const looks: number[] = [];
  const isStale = (): boolean => {
    looks.push(steps);
    return looks.length === 5;
  };
  const turns = createTurns(
    () => undefined,
    () => clock,
  );
  expect(await turns.take({ file: URI, begin: work, isStale })).toBe(false);
  // Four steps a slice: messages come in after the 4th, 8th, … and after the fifth slice nothing is wanted any more.
  expect(looks).toEqual([3, 7, 11, 15, 19]);
});

/** Work that writes down when it has its turn, of so many slices each. */
function loggingTurns(first?: string) {
  const log: string[] = [];
  const turns = createTurns(
    () => first,
    () => log.length * SLICE_MS,
  );
  const take = (file: string, slices: number) =>
    turns.take({
      file,
      *begin() {
        for (let slice = 0; slice < slices; slice += 1) {
          log.push(file);
          yield;
        }
      },
      isStale: () => false,
    });
  return { log, turns, take };
}

test("one part is done at a time: first for the file that is looked at, then in the order of asking", async () => {
  const { log, take } = loggingTurns("c");
  await Promise.all([take("a", 2), take("b", 2), take("c", 2)]);
  // The first had begun before there was another.
  expect(log).toEqual(["a", "c", "c", "a", "b", "b"]);
});

test("messages that wait come in before the next part, and what fails holds up nothing", async () => {
  const { log, turns, take } = loggingTurns();
  let messages = 0;
  const message = (): void => {
    messages += 1;
    log.push("message");
    turns.messageCame();
    if (messages < 3) setImmediate(message);
  };
  const failing = turns.take({
    file: "a",
    begin: () => {
      setImmediate(message);
      throw new Error("no steps");
    },
    isStale: () => false,
  });
  const following = take("b", 1);
  await expect(failing).rejects.toThrow("no steps");
  expect(await following).toBe(true);
  expect(log).toEqual(["message", "message", "message", "b"]);
});

/** A maker whose plans take as long as the test says, with the clock of the test. */
function slowPlanning() {
  const inputs: ScheduleInput[] = [];
  const news: number[] = [];
  let settle: { resolve(plan: Schedule): void; reject(error: Error): void } | undefined;
  let abandoned = 0;
  const maker: PlanMaker = {
    make: (input) => {
      inputs.push(input);
      return new Promise((resolve, reject) => {
        settle = { resolve, reject };
      });
    },
    abandon: () => {
      abandoned += 1;
      settle?.reject(new Error("given up"));
    },
  };
  // That of the timers that are held, and no other: without them there is none.
  const now = (): number => vi.getMockedSystemTime()!.getTime();
  const planning = createPlanning({ maker, onNews: () => news.push(inputs.length), now });
  return {
    planning,
    inputs,
    news,
    abandoned: () => abandoned,
    finish: () => settle?.resolve(planWork(inputs.at(-1)!)),
  };
}

const task = (hours: number): ScheduleInput => ({
  chains: [{ key: "top", items: [{ kind: "hands", id: "sand", hours, nonPreemptive: false }] }],
});

test("a plan is given up when its job is edited, each time with more patience, and nothing runs when all is done", async () => {
  vi.useFakeTimers();
  try {
    const { planning, inputs, news, abandoned, finish } = slowPlanning();
    const owner = { file: "a.finish", declaration: "order" };
    const given: number[] = [];
    // Somebody types ten keys a second, and every plan would take for ever.
    for (let key = 1; key <= 40; key += 1) {
      planning.plan(task(key), owner);
      await vi.advanceTimersByTimeAsync(100);
      given.push(abandoned());
    }
    // 250, 500, 1000 and 2000 ms, each counted from when it was begun: the fifth has time.
    expect(given.at(-1)).toBe(4);
    finish();
    await vi.advanceTimersByTimeAsync(1);
    expect(inputs.at(-1)).toEqual(task(40)); // then comes what is wanted now
    finish();
    await vi.advanceTimersByTimeAsync(1);
    expect(planning.plan(task(40), owner).elapsedHours).toBe(40);
    expect(news.length).toBeGreaterThan(0);
    expect(vi.getTimerCount()).toBe(0);
  } finally {
    vi.useRealTimers();
  }
});
