/**
 * `record --ticks`: what was ticked on a sheet comes back into the recipe.
 *
 * Two tables with a top and a base, sanded and coated twice; 2027-03-08 is a Monday.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import type { BenchRow } from "../../server/src/views/sheet/model.ts";
import { analyse } from "../harness/check-text.ts";
import { runCli } from "./run-cli.ts";

const TEXT = `material hall_clear {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h
  cure   7 days
}

piece table {
  surface top {
    shape area 1 m2
    wood  beech
  }
  surface base {
    shape area 1 m2
    wood  beech
  }
}

shop room {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}

recipe coated {
  for    wood
  safety dust_mask
  step   sand 120, takes 30 min
  step   dust, takes 10 min
  layer  hall_clear x 2, takes 30 min
  wait   until cured
}

job tables {
  piece table x 2
  in    room
  start 2027-03-08 09:00
  apply coated to top
  apply coated to base
}
`;

interface Tick {
  readonly title: string;
  readonly surface: string;
  readonly at: string;
  /** `0`: the one box of a step; `1,2`. */
  readonly pieces: string;
  readonly note?: string;
}

const rowsIn = (text: string): { readonly job: string; readonly rows: readonly BenchRow[] } => {
  const { bench } = analyse({ "a.finish": text }).sheets("a.finish")[0]!;
  return { job: bench.fingerprint, rows: bench.groups.flatMap(({ rows }) => rows) };
};

/** As the page of the sheet copies it. */
function copied(text: string, ticks: readonly Tick[]): string {
  const { job, rows } = rowsIn(text);
  const lines = ticks.map(({ title, surface, at, pieces, note }) => {
    const row = rows.find(
      (each) => each.title === title && each.steps.some((step) => step.surface === surface),
    );
    const keys = row!.steps.filter((step) => step.surface === surface).map(({ key }) => key);
    return [`${keys.join("+")} ${at} ${pieces}`, title, ...(note ? [note] : [])].join(" | ");
  });
  return [`finishwright-ticks 2 ${job}`, ...lines, ""].join("\n");
}

async function pasted(text: string, ticks: string, more: readonly string[] = []) {
  let after = "";
  const outcome = await runCli(["record", "a.finish", "--ticks", "-", ...more], {
    files: { "a.finish": text },
    input: ticks,
    look: (folder) => {
      after = readFileSync(path.join(folder, "a.finish"), "utf8");
    },
  });
  return { ...outcome, text: after, added: outcome.stdout.trimEnd().split("\n") };
}

const MORNING: readonly Tick[] = [
  { title: "Sand with grit 120", surface: "Top", at: "2027-03-08T10:00", pieces: "1,2" },
  { title: "Take the dust off", surface: "Top", at: "2027-03-08T10:20", pieces: "1,2" },
  {
    title: "hall clear, coat 1 of 2",
    surface: "Top",
    at: "2027-03-08T11:20",
    pieces: "1",
    note: 'a "thin" edge',
  },
];

test("what was ticked is recorded, with its time, pieces and note; the rest of the text stays", async () => {
  const { status, text, added, stderr } = await pasted(TEXT, copied(TEXT, MORNING));
  expect(stderr).toBe("3 lines added to `a.finish`.\n");
  expect(status).toBe(0);
  expect(text).toBe(
    TEXT.replace(
      /\}\n$/u,
      `  done  2027-03-08 10:00 sand on top
  done  2027-03-08 10:20 dust on top
  done  2027-03-08 11:20 coat 1 of hall_clear on top, piece 1, note "a \\"thin\\" edge"
}
`,
    ),
  );
  expect(added).toHaveLength(3);
  const [top] = analyse({ "a.finish": text }).jobs("a.finish")[0]!.runs;
  expect(top!.record).toMatchObject({ reached: [3, 2], differences: [] });
});

test("pasted twice adds nothing, though the plan has moved", async () => {
  const ticks = copied(TEXT, MORNING);
  const { text } = await pasted(TEXT, ticks);
  const again = await pasted(text, ticks);
  expect(again.text).toBe(text);
  expect(again).toMatchObject({ status: 0, stdout: "", stderr: "Nothing new to record.\n" });
});

test("ticked on: only what is new is added, and only for the pieces that are new", async () => {
  const { text } = await pasted(TEXT, copied(TEXT, MORNING));
  const more = MORNING.map((tick, at) =>
    at < 2 ? tick : { ...tick, at: "2027-03-08T11:50", pieces: "1,2" },
  );
  const ticks = copied(TEXT, [
    ...more,
    { title: "Sand with grit 120", surface: "Base", at: "2027-03-08T12:30", pieces: "0" },
  ]);
  expect((await pasted(text, ticks)).added).toEqual([
    'done 2027-03-08 11:50 coat 1 of hall_clear on top, piece 2, note "a \\"thin\\" edge"',
    "done 2027-03-08 12:30 sand on base",
  ]);
});

test("surfaces that have one line on the sheet have one in the record", async () => {
  const { job, rows } = rowsIn(TEXT);
  const keyOn = (surface: string): string =>
    rows
      .find((row) => row.title === "Take the dust off" && row.steps.some((step) => step.surface === surface))!
      .steps.find((step) => step.surface === surface)!.key;
  const ticks = `finishwright-ticks 2 ${job}\n${keyOn("Top")}+${keyOn("Base")} 2027-03-08T11:00 0 | Dust\n`;
  expect((await pasted(TEXT, ticks)).added).toEqual(["done 2027-03-08 11:00 dust on top and base"]);
});

test("a tick for a step that has become another is told and left out; the others are recorded", async () => {
  const ticks = copied(TEXT, MORNING);
  const finer = TEXT.replace("sand 120", "sand 150");
  const { status, added, stderr } = await pasted(finer, ticks);
  expect(status).toBe(1);
  expect(stderr).toContain("The job has no such step now: Sand with grit 120, 2027-03-08 10:00");
  expect(added).toEqual([
    "done 2027-03-08 10:20 dust on top",
    'done 2027-03-08 11:20 coat 1 of hall_clear on top, piece 1, note "a \\"thin\\" edge"',
  ]);
});

test("ticks of another job change nothing", async () => {
  const ticks = copied(TEXT, MORNING);
  const other = TEXT.replace("job tables", "job desks");
  const { status, text, stderr } = await pasted(other, ticks);
  expect(status).toBe(1);
  expect(text).toBe(other);
  expect(stderr).toContain("`a.finish` has no job with this sheet");
});

test("a tick that comes before one that stands for it already is left out", async () => {
  const [sand, dust, coat] = MORNING as [Tick, Tick, Tick];
  const ticks = copied(TEXT, [{ ...sand, at: "2027-03-08T15:00" }, dust, coat]);
  const { status, added, stderr } = await pasted(TEXT, ticks);
  expect(status).toBe(1);
  expect(added).toHaveLength(2);
  expect(stderr).toContain("It would count for another step: 2027-03-08 15:00 sand on top");
});

test("notes without a tick and how it went are told", async () => {
  const { job, rows } = rowsIn(TEXT);
  const key = rows[0]!.steps[0]!.key;
  const ticks = `finishwright-ticks 2 ${job}\n${key} - - | Sand | blunt paper\n- | It went well\n`;
  const { status, text, stderr } = await pasted(TEXT, ticks);
  expect(status).toBe(1);
  expect(text).toBe(TEXT);
  expect(stderr).toContain("A note without a tick: Sand, blunt paper");
  expect(stderr).toContain("As it went, for a note of the job: It went well");
});

test("--diff prints what would be added, and changes nothing", async () => {
  const { text, stdout } = await pasted(TEXT, copied(TEXT, MORNING), ["--diff"]);
  expect(text).toBe(TEXT);
  expect(stdout).toContain("+  done  2027-03-08 10:00 sand on top\n");
});

test.each([
  ["nothing", ""],
  ["another text", "hello\n"],
  ["an older form", "finishwright-ticks 1 01234567\n"],
])("%s is wrong use", async (_, ticks) => {
  const { status, text, stderr } = await pasted(TEXT, ticks);
  expect(status).toBe(2);
  expect(text).toBe(TEXT);
  expect(stderr).toContain("standard input is not what a sheet copies");
  expect(stderr).toContain("press *Copy what is done*");
});

test("hostile lines record nothing, and do nothing to a terminal", async () => {
  const { job, rows } = rowsIn(TEXT);
  const key = rows[0]!.steps[0]!.key;
  const ticks = [
    `finishwright-ticks 2 ${job}`,
    `${key} 2027-02-30T10:00 1 | no such day`,
    `${key} 2027-03-08T25:00 1 | no such hour`,
    `${key} 2027-03-08T10:00 9 | no such piece`,
    "ffffffff 2027-03-08T10:00 1 | \u001b[31mred",
    `${key} 2027-03-08T10:00 1 | Sand | }\u2028job x { "`,
  ].join("\n");
  const { text, stderr, added } = await pasted(TEXT, ticks);
  expect(added).toEqual(['done 2027-03-08 10:00 sand on top, piece 1, note "} job x { \\""']);
  expect(stderr).not.toContain("\u001b");
  expect(stderr.match(/Not recorded/gu)).toHaveLength(4);
  expect(analyse({ "a.finish": text }).jobs("a.finish")).toHaveLength(1);
});

test("the page of a sheet copies what is read here", async () => {
  const { stdout } = await runCli(["sheet", "a.finish", "--format", "html"], { files: { "a.finish": TEXT } });
  const { job, rows } = rowsIn(TEXT);
  expect(stdout).toContain(`data-job="${job}"`);
  for (const { steps } of rows)
    expect(stdout).toContain(`data-keys="${steps.map(({ key }) => key).join("+")}"`);
  expect(stdout).toContain("finishwright-ticks 2 ");
});
