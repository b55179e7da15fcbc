/** `repair`: what the editor writes for a trouble of the record, on the command line. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { TROUBLES } from "../../grammar/src/vocabulary.ts";
import { analyse } from "../harness/check-text.ts";
import { runCli } from "./run-cli.ts";

const TEXT = (...records: readonly string[]): string => `material hall_clear {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h
}

piece table {
  surface top {
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
  step   sand 120
  step   dust
  layer  hall_clear x 2, by pad
  wait   until cured
}

job tables {
  piece table
  in    room
  start 2027-03-08 09:00
  apply coated to top
${records.map((line) => `  done  ${line}\n`).join("")}}

# The end.
`;
const FIRST = "2027-03-08 10:00 coat 1 of hall_clear, trouble";
const SECOND = "2027-03-08 15:00 coat 2 of hall_clear, trouble";

/** The text with what the editor offers on the line of the trouble. */
function asTheEditor(text: string, trouble: string): string {
  const at = text.indexOf(`trouble ${trouble}`);
  const [edit] = analyse({ "a.finish": text }).repairToWrite("a.finish", { start: at, end: at })!.edits;
  return text.slice(0, edit!.span.start) + edit!.text + text.slice(edit!.span.end);
}

async function repair(text: string, ...more: readonly string[]) {
  let after = "";
  const outcome = await runCli(["repair", "a.finish", ...more], {
    files: { "a.finish": text },
    look: (folder) => {
      after = readFileSync(path.join(folder, "a.finish"), "utf8");
    },
  });
  return { ...outcome, text: after };
}

test.each(TROUBLES)("of %s is the text that the editor writes", async (trouble) => {
  const text = TEXT(`${FIRST} ${trouble}`);
  const written = asTheEditor(text, trouble);
  const printed = await repair(text);
  expect(printed).toMatchObject({ status: 0, text, stderr: "" });
  expect(written).toContain(`}\n\n${printed.stdout}\n# The end.\n`);
  const outcome = await repair(text, "--write");
  expect(outcome).toMatchObject({ status: 0, text: written });
  expect(outcome.stdout).toBe(`${/recipe (repair_\S+)/u.exec(written)![1]!}\n`);
});

test("of two troubles are two recipes, in the order of the record; with the line ends of the file", async () => {
  const text = TEXT(`${FIRST} blush`, `${SECOND} runs`).replaceAll("\n", "\r\n");
  const outcome = await repair(text, "--write");
  expect(outcome.stdout).toBe("repair_blush_top\nrepair_runs_top\n");
  expect(outcome.stderr).toBe("2 recipes added to `a.finish`. Apply them where they belong.\n");
  expect(outcome.text).not.toMatch(/[^\r]\n/u);
  expect(outcome.text.indexOf("repair_runs_top")).toBeGreaterThan(outcome.text.indexOf("repair_blush_top"));
});

test("what is there already is not written again", async () => {
  const once = (await repair(TEXT(`${FIRST} blush`), "--write")).text;
  const again = await repair(once, "--write");
  expect(again).toMatchObject({
    status: 0,
    text: once,
    stdout: "",
    stderr: "`repair_blush_top` is in the file already and is left as it is.\n",
  });
});

test("where nothing went wrong, that is said", async () => {
  const { status, stdout, stderr } = await repair(TEXT("2027-03-08 10:00 coat 1 of hall_clear"));
  expect({ status, stdout }).toEqual({ status: 0, stdout: "" });
  expect(stderr).toContain("No coat of `a.finish` has a trouble in its record.");
});

test("a job that is not there, and standard input to be written, are wrong use", async () => {
  expect((await repair(TEXT(`${FIRST} blush`), "--job", "chairs")).status).toBe(2);
  const outcome = await runCli(["repair", "-", "--write"], { files: {}, input: TEXT(`${FIRST} blush`) });
  expect(outcome.status).toBe(2);
  expect(outcome.stderr).toContain("standard input cannot be written to");
});
