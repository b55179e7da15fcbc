/** Every recipe of the corpus gets exactly the findings that it is marked with, but for the list of known misses. */
import { describe, expect, test } from "vitest";
import { disagreements, keyOf, readCorpus } from "./cases.ts";
import { knownMisses } from "./known-misses.ts";

const cases = readCorpus();

const known = (kind: "miss" | "false alarm") =>
  new Set(knownMisses.filter((miss) => miss.kind === kind).map((miss) => miss.key));

describe("a case of the corpus", () => {
  test.each(cases.map((one) => [one.name, one] as const))("%s", (_, one) => {
    const { misses, alarms } = disagreements(one);
    expect({
      misses: misses.map(keyOf).filter((key) => !known("miss").has(key)),
      alarms: alarms.map(keyOf).filter((key) => !known("false alarm").has(key)),
    }).toEqual({ misses: [], alarms: [] });
  });
});

describe("the list of known misses", () => {
  const open = cases.flatMap((one) => {
    const { misses, alarms } = disagreements(one);
    return [
      ...misses.map((mark) => `miss ${keyOf(mark)}`),
      ...alarms.map((mark) => `false alarm ${keyOf(mark)}`),
    ];
  });

  test("holds only what is still missed", () => {
    expect(knownMisses.filter((miss) => !open.includes(`${miss.kind} ${miss.key}`))).toEqual([]);
  });
});
