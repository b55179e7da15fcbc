/**
 * Texts that ask for more than is worked out: what is left out is named, and the rest is checked. The bounds are counted,
 * so these tests look at no clock; the figures are counted by hand from the texts.
 */
import { describe, expect, it } from "vitest";
import { schedule } from "../../server/src/core/schedule/schedule.ts";
import type { ScheduleInput } from "../../server/src/core/schedule/types.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { runCli } from "../cli/run-cli.ts";
import { findingsOf, lineOf } from "../harness/check-text.ts";

const large = (text: string) =>
  findingsOf(text)
    .filter(({ rule }) => rule === "not-checked")
    .map(({ span, message }) => `${lineOf(text, span.start)} ${message.split(". ")[0]}`);

const surfaces = (count: number): string =>
  Array.from(
    { length: count },
    (_, i) => `  surface s${i} {\n    shape panel 300 mm x 200 mm\n    wood beech\n  }\n`,
  ).join("");

/** `steps` actions on each surface. */
const job = (steps: number, count: number, pieces: number, jobs = 1, line = 'note "x"'): string => `recipe r {
  for wood
${`  ${line}\n`.repeat(steps)}}
piece box {
  built 2015
${surfaces(count)}}
shop mill {
  open 09:00 to 17:00
}
${Array.from({ length: jobs }, (_, i) => `job j${i} {\n  piece box x ${pieces}\n  in mill\n  start 2027-03-01\n  apply r to all\n}\n`).join("")}`;

const doubling = (levels: number): string =>
  `${Array.from({ length: levels }, (_, i) => `recipe r${i} {\n  for wood\n  follow r${i + 1}\n  follow r${i + 1}\n}\n`).join("\n")}
recipe r${levels} {\n  for wood\n  step sand 150\n  step dust\n}\n`;

describe("what is left out is named", () => {
  it("a recipe that doubles without end, at its own line", () => {
    const found = large(doubling(12));
    // The step of r12 is done 4096 times in r0, 2048 in r1, 1024 in r2 and 512 in r3, the first `follow` doing half of it.
    // The 501st is in the first of r0, r1 and r2, and in the second of r3.
    expect(found.map((line) => line.split(" ")[0])).toEqual(["3", "9", "15", "22"]);
    expect(found[0]).toContain("What comes from here on is not checked");
  });

  it("a text of more than a million signs, each of which would be a token", () => {
    expect(large("}".repeat(1_000_001))).toEqual([
      "1 This file is not checked\nIt has more than a million signs that are neither letters, digits nor blanks, which no recipe has",
    ]);
  });

  it("and not one of three million zeros, which are one token", () => {
    expect(large("\0".repeat(3_000_000))).toEqual([]);
  });

  it("a job with more than 10000 actions on its surfaces", () => {
    // 21 surfaces of 480 notes are 10080; 20 are 9600.
    const text = job(480, 21, 1);
    expect(large(text)).toEqual([
      `${lineOf(text, text.indexOf("job j0"))} The job \`j0\` is not checked\nIt has 10080 steps, coats and waits, and a job may have 10000`,
    ]);
    expect(large(job(480, 20, 1))).toEqual([]);
  });

  it("a job with too much to plan, before anything is planned", () => {
    // 1000 pieces of 11 surfaces of 10 steps are 110000 things.
    const planned: number[] = [];
    const plan = (input: ScheduleInput) => {
      planned.push(input.chains.length);
      return schedule(input);
    };
    const analyst = createAnalyst({ resolve: (_, path) => path, parts: { plan } });
    analyst.setFile("a", job(10, 11, 1000, 1, "step dust"));
    const rules = analyst
      .analysis()
      .findings("a")
      .map(({ rule }) => rule);
    expect(rules).toContain("not-checked");
    expect(planned).toEqual([]);
  });

  it("jobs beyond what is worked out of a file, in their order", () => {
    // 20 surfaces of 480 notes are 9600 actions; 10 jobs have 96000, and the 11th goes beyond 100000.
    const found = large(job(480, 20, 1, 13));
    expect(found.map((line) => /`(j\d+)`/.exec(line)?.[1])).toEqual(["j10", "j11", "j12"]);
  });

  it("recipes beyond what is worked out of a file, in their order", () => {
    // 400 notes each: 250 recipes have 100000, the 251st goes beyond.
    const text = Array.from(
      { length: 253 },
      (_, i) => `recipe r${i} {\n  for wood\n${'  note "x"\n'.repeat(400)}}\n`,
    ).join("\n");
    const found = large(text);
    expect(found.map((line) => /`(r\d+)`/.exec(line)?.[1])).toEqual(["r250", "r251", "r252"]);
  });

  it("findings beyond 10000 of a file, the mildest", () => {
    const text = `recipe r {\n  for wood\n${"  wait\n".repeat(10_100)}}\nrecipe s {\n  for wood\n  step sand 150\n  step dust\n}\n`;
    const found = findingsOf(text);
    expect(found).toHaveLength(10_001);
    const counted = found.filter(({ rule }) => rule === "not-checked");
    expect(counted.map(({ message }) => message)).toEqual([
      // 10100 waits without a time; what else is found is milder.
      expect.stringMatching(
        /^This file has 10[0-9] more findings, which are left out\nOnly the gravest 10000 are shown\.\n/,
      ),
    ]);
    expect(found.some(({ rule }) => rule === "no-dust-mask")).toBe(false);
  });
});

describe("bounds are the same whatever was asked before", () => {
  it("for a job asked about by itself", () => {
    const analyst = createAnalyst({ resolve: (_, path) => path });
    const text = job(480, 20, 1, 12);
    analyst.setFile("a", text);
    const analysis = analyst.analysis();
    expect(analysis.hover("a", text.indexOf("j11") + 1)?.markdown ?? "").not.toContain("Hands-on");
    expect(analysis.jobs("a")).toHaveLength(10);
    expect(analysis.totals("a")).toHaveLength(10);
  });

  it("is no fault of the program", async () => {
    const { status, stdout, stderr } = await runCli(["check", "a.finish"], {
      files: { "a.finish": job(480, 21, 1) },
    });
    expect(status).toBe(1);
    expect(stdout).toContain("not-checked");
    expect(stderr).toBe("");
  });
});

it("what is far below the bounds is planned as before", () => {
  expect(large(job(20, 5, 50))).toEqual([]);
});
