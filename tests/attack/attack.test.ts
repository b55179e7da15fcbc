/**
 * The attacks, shortly and with fixed seeds: what they look for is not there, and what they look for they would find. The
 * long run is `npm run attack`.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { edits } from "./edits.ts";
import { files } from "./files.ts";
import { type Attack, type Flaw, signatureOf } from "./flaws.ts";
import { type Look, leastOf, rowOf } from "./growth.ts";
import { exponentOf } from "./growth-fit.ts";
import { readOptions } from "./options.ts";
import { pictures } from "./pictures.ts";
import { protocol } from "./protocol.ts";
import { attackInRounds } from "./rounds.ts";
import { soakFlaws } from "./soak.ts";
import { closingTable } from "./table.ts";
import { keepsRemarks, texts } from "./texts.ts";

const SEED = 20270308;

async function flawsOf<Input>(attack: Attack<Input>, count: number): Promise<readonly Flaw[]> {
  const flaws: Flaw[] = [];
  for (const input of fc.sample(attack.input, { seed: SEED, numRuns: count }))
    flaws.push(...(await attack.check(input)));
  return flaws;
}

describe("nothing is found", () => {
  test("by hostile texts", async () => expect(await flawsOf(texts, 12)).toEqual([]));
  test("by edits", async () => expect(await flawsOf(edits, 2)).toEqual([]));
  test("by what is sent to the server", async () => expect(await flawsOf(protocol, 3)).toEqual([]));
  test("in odd folders", async () => expect(await flawsOf(files, 3)).toEqual([]));
  test("by pictures", async () => expect(await flawsOf(pictures, 150)).toEqual([]));
  test("in memory", async () => expect(await soakFlaws({ turns: 5, texts: [""] })).toEqual([]));
});

describe("what is there is found", () => {
  const planted = (kind: Flaw["kind"]): Attack<string> => ({
    name: "planted",
    runs: 200,
    input: fc.string({ maxLength: 40 }),
    check: async (text) => (text.includes("a") ? [{ kind, detail: "an a" }] : []),
  });

  test("made as small as can be, with its seed, and once for every kind", async () => {
    let rounds = 0;
    const outcome = await attackInRounds(planted("lost"), 7, () => ++rounds > 300);
    expect(outcome.counts.lost).toBeGreaterThan(1);
    expect(outcome.failures).toHaveLength(1);
    expect(outcome.failures[0]).toMatchObject({ part: "planted", flaw: { kind: "lost", detail: "an a" } });
    const again = await attackInRounds(planted("lost"), outcome.failures[0]!.seed, () => true);
    expect(again.inputs).toBe(1);
    expect(closingTable([outcome], []).isClean).toBe(false);
    expect(closingTable([outcome], []).text).toMatch(/inputs, 0 crashes, .* [1-9]\d* lost, 0 leaks: FAILED$/);
  });

  test("however its names and figures differ", () => {
    const flaw = (detail: string): Flaw => ({ kind: "crash", detail });
    expect(signatureOf(flaw("no `a` in line 3"))).toBe(signatureOf(flaw("no `bc` in line 44")));
    expect(signatureOf(flaw("no `a` in line 3"))).not.toBe(signatureOf(flaw("no `a` in file 3")));
  });
});

describe("exponents", () => {
  const points = (cost: (size: number) => number) =>
    [1000, 2000, 4000, 8000, 16_000].map((size) => ({ size, seconds: cost(size) }));

  test("of n log n is one, of what is linear a little less, of a square nearly two", () => {
    expect(exponentOf(points((n) => n * Math.log2(n) * 1e-4))).toBeCloseTo(1, 6);
    expect(exponentOf(points((n) => n * 1e-3))).toBeLessThan(1);
    expect(exponentOf(points((n) => n * n * 1e-6))).toBeGreaterThan(1.75);
  });

  test("of what costs too little to be measured there is none", () => {
    expect(exponentOf(points(() => 0.001))).toBeUndefined();
  });
});

test("the words behind the command are read, and others refused", () => {
  expect(readOptions(["--minutes", "3", "--seed", "9", "--only", "soak", "--only", "texts"])).toEqual({
    minutes: 3,
    seed: 9,
    parts: ["texts", "soak"],
  });
  expect(() => readOptions(["--minutes", "long"])).toThrow("`--minutes` needs a number behind it.");
  expect(() => readOptions(["--only", "all"])).toThrow("`--only` needs one of growth,");
  expect(() => readOptions(["--fast"])).toThrow("`--fast` is no option");
});

test("growth is told of the least that each size costs, and what grows all the same is found", () => {
  const lookAt = (seconds: readonly number[]): Look => ({
    shape: "planted",
    limit: 4000,
    reached: 4000,
    points: new Map([["part", seconds.map((each, at) => ({ size: 500 * 2 ** at, seconds: each }))]]),
  });
  // In proportion to n log2 n, but for a collection of garbage at the last size of one and the third of the other.
  const [even, first, second] = [
    [0.045, 0.1, 0.22, 0.48],
    [0.045, 0.1, 0.22, 0.9],
    [0.045, 0.1, 0.4, 0.48],
  ].map((each) => lookAt(each));
  expect(rowOf(first!).exponent).toBeGreaterThan(1.2);
  expect(leastOf(first!, second!)).toEqual(even);
  expect(rowOf(leastOf(first!, second!)).exponent).toBeLessThan(1.05);
  const squares = lookAt([0.05, 0.2, 0.8, 3.2]);
  expect(rowOf(leastOf(squares, squares)).exponent).toBeGreaterThan(1.6);
});

test("words may come into the quotes behind them, and nothing that was quoted may go", () => {
  const before = 'step inspect use "filler haze"\n# look closely\n';
  expect(keepsRemarks(before, 'step inspect "use filler haze"\n# look closely\n')).toBe(true);
  expect(keepsRemarks(before, 'step inspect "use filler"\n# look closely\n')).toBe(false);
  expect(keepsRemarks(before, 'step inspect "use filler haze"\n')).toBe(false);
  expect(keepsRemarks('step look so."\n', 'step inspect "look so.\\""\n')).toBe(true);
  expect(keepsRemarks('step dust "by air"twice\n', 'step dust "by air, twice"\n')).toBe(true);
  expect(keepsRemarks('step dust "by air" twice\n', 'step dust "by hand, twice"\n')).toBe(false);
  expect(keepsRemarks("step veneer it\n", 'step "veneer it"\n')).toBe(true);
  expect(keepsRemarks("safety gloves, use wet_rags\n", 'safety gloves, "use wet rags"\n')).toBe(true);
});
