/**
 * Many files, many `use` lines, large texts: work in step with what is given, or cut off with a finding.
 *
 * What is compared is the CPU time of this thread for one size and for a multiple of it, in one run.
 */
import { describe, expect, test } from "vitest";
import { MAX_SEEN_FILES } from "../../server/src/core/model/use-graph.ts";
import { BEING_PLANNED } from "../../server/src/core/schedule/being-planned.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { readConfig } from "../../server/src/features/config.ts";
import { VersionedMap } from "../../server/src/features/versioned-map.ts";
import { cpuMs } from "../harness/growth.ts";

const analyst = () => createAnalyst({ resolve: (_, path) => path });
const ruleOf = ({ rule }: { readonly rule: string }): string => rule;

/** The least of three, since anything else that runs only adds. The collector's own threads are not counted. */
const cpuTime = (work: () => void): number => Math.min(...[1, 2, 3].map(() => cpuMs(undefined, work)));

const openOneByOne = (n: number) => (): void => {
  const opened = analyst();
  for (let i = 0; i < n; i++) {
    opened.setFile(`f${i}`, `material m${i} {\n  family drying oil\n}\n`);
    opened.missingFiles();
    opened.analysis().findings(`f${i}`);
  }
};

test("opening files one by one, each with its findings, costs in step with their number", () => {
  openOneByOne(125)();
  // Eight times as many cost 8 times as much; with a copy of all for each it would be 64 times.
  expect(cpuTime(openOneByOne(1000)) / cpuTime(openOneByOne(125))).toBeLessThan(20);
});

const openWithShops = (n: number) => (): void => {
  const opened = createAnalyst({ resolve: (_, path) => path, plan: () => BEING_PLANNED });
  for (let i = 0; i < n; i++) {
    opened.setFile(
      `f${i}`,
      "shop room {\n  hours Mon 09:00 to 17:00\n}\n\njob it {\n  in room\n  start 2027-03-08\n}\n",
    );
    for (const _ of opened.analysis().steps(`f${i}`));
  }
};

test("files that each have a shop of the same name are not looked through for each other's jobs", () => {
  openWithShops(50)();
  // Eight times as many cost 8 times as much; with a look into all for each it would be 64 times.
  expect(cpuTime(openWithShops(480)) / cpuTime(openWithShops(60))).toBeLessThan(20);
});

const hoverAmong = (n: number) => (): void => {
  const opened = analyst();
  for (let i = 0; i < n; i++) opened.setFile(`f${i}`, `material m${i} {\n  family drying oil\n}\n`);
  opened.analysis().hover("f0", 10);
};

test("a material's card costs in step with the files that may use it", () => {
  hoverAmong(250)();
  // Eight times as many cost 8 times as much; to count the jobs of all files for each file would cost 64 times.
  expect(cpuTime(hoverAmong(4000)) / cpuTime(hoverAmong(500))).toBeLessThan(20);
});

const allUseAll = (n: number) => (): void => {
  const ring = analyst();
  const names = Array.from({ length: n }, (_, i) => `f${i}`);
  for (const name of names) {
    const uses = names.filter((other) => other !== name).map((other) => `use "${other}"\n`);
    ring.setFile(name, `${uses.join("")}material m_${name} {\n  family drying oil\n}\n`);
  }
  const analysis = ring.analysis();
  for (const name of names) analysis.findings(name);
};

test("files that all use each other cost in step with their lines", () => {
  allUseAll(20)();
  // Three times as many files have 9 times as many lines; to go through all for each line would cost 81 times.
  expect(cpuTime(allUseAll(90)) / cpuTime(allUseAll(30))).toBeLessThan(25);
});

test("a chain of files is followed to a limit, and a finding says so", () => {
  const chain = analyst();
  const n = MAX_SEEN_FILES + 5;
  for (let i = 0; i < n; i++) chain.setFile(`f${i}`, `use "f${i + 1}"\n`);
  chain.setFile(`f${n}`, "");
  const analysis = chain.analysis();
  expect(analysis.usedBy("f0")).toHaveLength(MAX_SEEN_FILES);
  expect(analysis.findings("f0").map(ruleOf)).toEqual(["use-not-found"]);
  expect(analysis.findings("f10").map(ruleOf)).toEqual([]);
});

describe("a text of more than 4 MB", () => {
  const large = `material oil {\n  family drying oil\n}\n${"#".repeat(4 * 1024 * 1024)}`;

  test("is not checked, and says so where it is and where it is used", () => {
    const files = analyst();
    files.setFile("large", large);
    files.setFile("small", 'use "large"\n');
    const analysis = files.analysis();
    expect(analysis.findings("large")).toEqual([
      expect.objectContaining({
        rule: "not-checked",
        severity: "error",
        headline: "This file is not checked",
        why: expect.stringMatching(/^It is larger than 4 MB/),
      }),
    ]);
    expect(analysis.findings("small").map(ruleOf)).toEqual(["use-not-found"]);
    expect(analysis.formatting("large")).toEqual([]);
  });

  test("is checked again when it is no longer so large", () => {
    const files = analyst();
    files.setFile("large", large);
    files.setFile("large", "");
    expect(files.analysis().findings("large")).toEqual([]);
  });
});

test("of a project file with anything in it the first few entries are named, and the rest counted", () => {
  const entries = Array.from({ length: 5000 }, (_, i) => [`rule-${i}`, "off"]);
  const many = readConfig(JSON.stringify({ rules: Object.fromEntries(entries) }));
  expect(many.complaints).toHaveLength(21);
  expect(many.complaints.at(-1)).toBe("4980 other entries are not understood.");
  const [long] = readConfig(JSON.stringify({ ["k".repeat(3_000_000)]: 1 })).complaints;
  expect(long?.length).toBeLessThan(200);
  const deep = `{ "rules": { "grit-jump": ${"[".repeat(20_000)}${"]".repeat(20_000)} } }`;
  expect(readConfig(deep).complaints).toEqual([expect.stringContaining("`grit-jump` is a list, but takes")]);
});

test("an earlier state of a map is what it was, whatever comes later", () => {
  const first = new VersionedMap(new Map([["a", 1]]));
  const second = first.with("b", 2);
  const third = second.with("a", 3).without("b");
  expect([...third]).toEqual([["a", 3]]);
  expect([...first]).toEqual([["a", 1]]);
  expect(new Map(second)).toEqual(
    new Map([
      ["a", 1],
      ["b", 2],
    ]),
  );
  expect([...first.with("c", 4).keys()]).toEqual(["a", "c"]);
  expect([...first]).toEqual([["a", 1]]);
});

test("the findings of a file are kept as they are while only others change, until one of those uses it", () => {
  const opened = analyst();
  opened.setFile("alone", "material m {\n  covers 3 h\n  family drying oil\n}\n");
  opened.setFile("other", "material n {\n  family drying oil\n}\n");
  const findings = opened.analysis().findings("alone");
  opened.setFile("other", "material o {\n  family drying oil\n}\n");
  expect(opened.analysis().findings("alone")).toBe(findings);
  opened.setFile("other", 'use "alone"\nrecipe r {\n  layer m\n}\n');
  expect(opened.analysis().findings("alone")).not.toBe(findings);
});
