/** `care`: what stands on a card, and what never does. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { runCli } from "./run-cli.ts";

/**
 * Coated on Monday 8 March 2027 from 09:00 to 09:30, in the air of the label: light use is a day later, full use seven
 * days later. Everything that a workshop keeps to itself has a word of its own here.
 */
const jobWith = ({
  family = "waterborne acrylic",
  existing = "",
  piece = "",
} = {}): string => `## secret-material
material clear_2 "Pale clear" {
  family ${family}
  covers 10 m2/L
  recoat 2 h
  cure   7 days
  rated  21 C, 50 % RH
  sold   1 L for 43.21
}
## secret-piece
piece board_3 "Reading board" {
  bought 12.34
  note   "secret-note"
${piece}
  surface face_1 "Face" {
    shape area 2 m2
    wood  beech
${existing}
  }
  surface back_1 "Back" {
    shape area 1 m2
    wood  beech
  }
}
shop mill_4 {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}
recipe work_5 {
  layer clear_2, takes 30 min
}
job job_6 "secret-job" {
  piece    board_3
  owner    "secret-owner"
  delivery "secret-delivery"
  note     "secret-note"
  in       mill_4
  start    2027-03-08 09:00
  apply    work_5() to face_1
}
`;

const care = (text: string, ...more: readonly string[]) =>
  runCli(["care", "job.finish", ...more], { files: { "job.finish": text } });

const flat = (text: string): string => text.replace(/\s+/gu, " ");

describe("what stands on it", () => {
  test("the dates in their order, each with what is allowed", async () => {
    const text = flat((await care(jobWith())).stdout);
    expect(text).toContain("Last work Mon 8 Mar 2027 09:30 ");
    expect(text).toContain("Light use from Tue 9 Mar 2027 09:30: set things down with care");
    expect(text).toContain("Full use from Mon 15 Mar 2027 09:30: ");
    expect(text).toContain("Wet cleaning from Mon 15 Mar 2027 09:30: ");
  });

  test("what it was finished with, and what was left alone", async () => {
    const text = flat((await care(jobWith())).stdout);
    expect(text).toContain("Face beech; from the bottom up: Pale clear (waterborne acrylic, clear), 1 coat");
    expect(text).toContain("Back nothing was done to it");
    expect(text).toContain("Face. On top: a waterborne clear film.");
    expect(text).toContain(
      "the labels and safety data sheets of the products, local codes and licensed practice",
    );
  });

  test("care follows what is on top", async () => {
    expect(flat((await care(jobWith({ family: "dewaxed shellac" }))).stdout)).toContain(
      "Alcohol, which dissolves it",
    );
    const oiled = flat((await care(jobWith({ family: "drying oil" }))).stdout);
    expect(oiled).toContain("On top: an oil finish.");
    expect(oiled).toContain("can catch fire by themselves");
    const stained = flat((await care(jobWith({ family: "gel stain" }))).stdout);
    expect(stained).toContain("On top: gel stain, which needs a coat over it.");
    expect(stained).toContain("Nothing wet.");
  });

  test("old coatings that may hold lead are named", async () => {
    const text = flat(
      (await care(jobWith({ existing: "    existing alkyd paint", piece: "  built 1936" }))).stdout,
    );
    expect(text).toContain(
      "Face: old coatings are left on it and may hold lead. Do not sand, scrape or heat it.",
    );
    expect(text).toContain("old alkyd paint, 1 coat; Pale clear");
    expect(text).toContain("Repair Not by yourself: old coatings below may hold lead.");
    expect(text).not.toContain("grit");
  });

  test("what is not known says so", async () => {
    const { stdout } = await care(
      jobWith()
        .replace("  in       mill_4\n", "")
        .replace(/ {2}start .*\n/u, ""),
    );
    const text = flat(stdout);
    expect(text).toContain("Full use from not known; ask whoever finished it");
    expect(text).not.toContain("These dates are those of the plan");
  });
});

describe("what never stands on it", () => {
  const SECRETS = /secret-\w+|43[.,]21|12[.,]34|\w+_\d|job\.finish/gu;

  test.each(["text", "markdown", "html"])("nothing of the workshop, as %s", async (format) => {
    const { stdout, status } = await care(jobWith(), "--format", format);
    expect(status).toBe(0);
    expect(stdout.match(SECRETS)).toBeNull();
  });

  test("what is asked for by name, and nothing with it", async () => {
    const owner = await care(jobWith(), "--with", "owner");
    expect(owner.stdout.match(SECRETS)).toEqual(["secret-owner"]);
    const both = await care(jobWith(), "--with", "delivery, owner");
    expect(both.stdout.match(SECRETS)).toEqual(["secret-owner", "secret-delivery"]);
  });

  test("what cannot be asked for is told", async () => {
    expect(await care(jobWith(), "--with", "owner,keys")).toMatchObject({
      status: 2,
      stdout: "",
      stderr:
        "finishwright: `--with owner,keys`: `keys` cannot be asked for. It takes `owner`, `people`, `prices`, `delivery` or `photos`, with a comma between several.\n",
    });
  });
});

test("the two oak tables of the samples are one card for each", async () => {
  const read = (name: string): string =>
    readFileSync(new URL(`../../samples/${name}`, import.meta.url), "utf8");
  const names = ["reading-tables.finish", "recipes.finish", "shop.finish", "stock.finish"];
  const { stdout, status, stderr } = await runCli(["care", names[0]!], {
    files: Object.fromEntries(names.map((name) => [name, read(name)])),
  });
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  await expect(stdout).toMatchFileSnapshot("care-reading-tables.txt");
});

test("a file without jobs has no card", async () => {
  expect(await care("recipe bare {\n  step dust\n}\n")).toMatchObject({
    status: 0,
    stdout: "",
    stderr: expect.stringContaining("has no job that works on a piece, so there is no card"),
  });
});

describe("written to a file", () => {
  let away = "";
  beforeAll(() => {
    away = mkdtempSync(path.join(tmpdir(), "finishwright-care-"));
  });
  afterAll(() => rmSync(away, { recursive: true }));

  test("over what was made before, and over nothing else", async () => {
    const file = path.join(away, "card.html");
    expect((await care(jobWith(), "-o", file)).status).toBe(0);
    expect((await care(jobWith({ family: "paste wax" }), "-o", file)).status).toBe(0);
    const made = readFileSync(file, "utf8");
    expect(made).toContain("On top: wax.");
    writeFileSync(file, made.replace("Reading board", "Her board"));
    const refused = await care(jobWith(), "-o", file);
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain("is a care card that has been edited since it was made");
    writeFileSync(file, "mine\n");
    expect((await care(jobWith(), "-o", file)).stderr).toContain("was not made by `care`");
    expect(readFileSync(file, "utf8")).toBe("mine\n");
    expect((await care(jobWith(), "-o", file, "--overwrite")).status).toBe(0);
  });

  test("never over a recipe", async () => {
    const file = path.join(away, "other.finish");
    const { status, stderr } = await care(jobWith(), "-o", file, "--overwrite");
    expect(status).toBe(2);
    expect(stderr).toContain("is a recipe, and the care card would overwrite it");
    expect(existsSync(file)).toBe(false);
    expect((await care(jobWith(), "--overwrite")).status).toBe(2);
  });
});
