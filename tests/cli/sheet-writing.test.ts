/**
 * `sheet -o`: what it writes is whole, and goes over nothing that it did not make.
 */
import { createHash } from "node:crypto";
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { createFile, writeReasonOf } from "../../server/src/cli/replace-text.ts";
import { writeOwn } from "../../server/src/cli/write-own.ts";
import { runCli } from "./run-cli.ts";

const RECIPE = "recipe bare {\n  for  wood\n  step dust\n}\n";
const files = { "job.finish": RECIPE };

const away = mkdtempSync(path.join(tmpdir(), "finishwright-sheets-"));
const at = (name: string): string => path.join(away, name);
const read = (name: string): string => readFileSync(at(name), "utf8");
beforeEach(() => {
  for (const name of readdirSync(away)) rmSync(at(name), { recursive: true });
});
afterAll(() => rmSync(away, { recursive: true }));

const sheet = (name: string, ...more: readonly string[]) =>
  runCli(["sheet", "job.finish", "-o", name === "" ? "" : at(name), ...more], { files });

const OTHER =
  "already exists and was not made by `sheet`, so it was not changed. Give another name, or add `--overwrite` to replace it.\n";

describe("over what is there", () => {
  test.each(["a.txt", "a.md", "a.html"])("%s is made again when nobody has touched it", async (name) => {
    expect((await sheet(name)).status).toBe(0);
    const first = read(name);
    expect(
      await runCli(["sheet", "job.finish", "-o", at(name)], {
        files: { "job.finish": RECIPE.replace("bare", "plain") },
      }),
    ).toMatchObject({ status: 0, stderr: "" });
    expect(read(name)).not.toBe(first);
    expect(readdirSync(away)).toEqual([name]);
  });

  test.each(["a.txt", "a.md", "a.html"])("%s with a note written in is left as it is", async (name) => {
    await sheet(name);
    const noted = read(name).replace("Bare", "Bare, as talked over with the librarian");
    writeFileSync(at(name), noted);
    const again = await sheet(name);
    expect(again.status).toBe(2);
    expect(again.stderr).toContain("is a sheet that has been edited since it was made");
    expect(again.stderr).toContain("add `--overwrite`");
    expect(read(name)).toBe(noted);
    expect((await sheet(name, "--overwrite")).status).toBe(0);
    expect(read(name)).not.toBe(noted);
  });

  test("a note behind the last line is one, too", async () => {
    await sheet("a.md");
    writeFileSync(at("a.md"), `${read("a.md")}My note\n`);
    expect((await sheet("a.md")).status).toBe(2);
  });

  test("somebody else's file is left as it is, unless it is told to be replaced", async () => {
    writeFileSync(at("notes.md"), "# My notes\n");
    const refused = await sheet("notes.md");
    expect(refused).toMatchObject({ status: 2, stderr: `finishwright: \`${at("notes.md")}\` ${OTHER}` });
    expect(read("notes.md")).toBe("# My notes\n");
    expect((await sheet("notes.md", "--overwrite")).status).toBe(0);
    expect(read("notes.md")).toMatch(/^# Bare\n/u);
  });

  test("bytes that are no text are somebody else's", async () => {
    writeFileSync(at("a.html"), Uint8Array.of(0xff, 0xfe, 0x00));
    expect((await sheet("a.html")).status).toBe(2);
    expect(readFileSync(at("a.html"))).toEqual(Buffer.from([0xff, 0xfe, 0x00]));
  });

  test("of an empty file nothing is lost", async () => {
    writeFileSync(at("a.txt"), "");
    expect((await sheet("a.txt")).status).toBe(0);
  });

  test("a recipe is never replaced, however it is called and whatever is asked for", async () => {
    for (const name of ["other.finish", "OTHER.FINISH"]) {
      const { status, stderr } = await sheet(name, "--overwrite");
      expect(status).toBe(2);
      expect(stderr).toContain("is a recipe, and the sheet would overwrite it");
      expect(existsSync(at(name))).toBe(false);
    }
  });

  test("`--overwrite` without a file to replace is a slip", async () => {
    const { status, stderr } = await runCli(["sheet", "job.finish", "--overwrite"], { files });
    expect(status).toBe(2);
    expect(stderr).toBe(
      "finishwright: `--overwrite` goes with `-o FILE`: it says that FILE may be replaced.\n",
    );
  });
});

describe("links, modes and what is no file", () => {
  test("a link stays a link, and the mode what it was", async () => {
    await sheet("real.html");
    chmodSync(at("real.html"), 0o604);
    symlinkSync("real.html", at("a.html"));
    expect((await sheet("a.html")).status).toBe(0);
    expect(lstatSync(at("a.html")).isSymbolicLink()).toBe(true);
    expect(statSync(at("real.html")).mode & 0o777).toBe(0o604);
  });

  test("a link to somebody else's file does not lead over it", async () => {
    writeFileSync(at("notes.txt"), "mine\n");
    symlinkSync("notes.txt", at("a.txt"));
    expect((await sheet("a.txt")).status).toBe(2);
    expect(read("notes.txt")).toBe("mine\n");
  });

  test("a link that leads nowhere", async () => {
    symlinkSync("gone.txt", at("a.txt"));
    const { status, stderr } = await sheet("a.txt");
    expect(status).toBe(2);
    expect(stderr).toContain("is a broken link. Remove it, or give another name.");
    expect(existsSync(at("gone.txt"))).toBe(false);
  });

  test("a folder that is none", async () => {
    writeFileSync(at("file"), "x");
    const { status, stderr } = await sheet("file/a.txt");
    expect(status).toBe(2);
    expect(stderr).toContain(`cannot be written: \`${at("file")}\` is not a folder. Choose another place.`);
  });

  test("a folder, and no name at all", async () => {
    mkdirSync(at("folder"));
    expect((await sheet("folder", "--overwrite")).stderr).toContain("is a folder, not a file.");
    expect((await sheet("")).stderr).toContain("`-o` needs the name of a file");
  });

  test("a socket is not replaced by a file", async () => {
    const server = createServer();
    await new Promise<void>((resolve) => server.listen(at("s"), resolve));
    const { stderr } = await sheet("s", "--overwrite");
    expect(stderr).toContain("is neither a file nor a folder");
    expect(statSync(at("s")).isSocket()).toBe(true);
    await new Promise((resolve) => server.close(resolve));
  });

  test("a name that is too long", async () => {
    const { status, stderr } = await sheet(`${"a".repeat(300)}.txt`);
    expect(status).toBe(2);
    expect(stderr).toContain("its name is too long. Give a shorter one.");
  });

  test.each(["EACCES", "EPERM", "EROFS"])("%s is told as what it is", (code) => {
    expect(writeReasonOf(Object.assign(new Error("x"), { code }))).toBe(
      "may not be written: you have no permission for it or its folder. Ask for it, or leave the file out",
    );
  });
});

describe("between looking and writing", () => {
  test("what somebody makes meanwhile is not replaced", async () => {
    writeFileSync(at("a.txt"), "mine\n");
    await expect(createFile(at("a.txt"), "ours\n")).rejects.toMatchObject({ code: "EEXIST" });
    expect(read("a.txt")).toBe("mine\n");
    expect(readdirSync(away)).toEqual(["a.txt"]);
  });

  test("nor what somebody writes into it meanwhile", async () => {
    writeFileSync(at("a.txt"), "before\n");
    const outcome = await writeOwn(at("a.txt"), "ours\n", () => {
      writeFileSync(at("a.txt"), "meanwhile\n");
      return true;
    });
    expect(outcome?.reason).toBe("has changed meanwhile and is left as it is. Try again");
    expect(read("a.txt")).toBe("meanwhile\n");
    expect(readdirSync(away)).toEqual(["a.txt"]);
  });
});

test("the last line says that it was made, with the sum of the rest", async () => {
  await sheet("a.html");
  const text = read("a.html");
  const body = text.slice(0, text.indexOf("<!-- Made"));
  // SHA-256 (FIPS 180-4), the first 128 bits, without blanks at the end.
  const sum = createHash("sha256").update(body.trimEnd()).digest("hex").slice(0, 32);
  expect(text.endsWith(`<!-- Made by finishwright, sum ${sum} -->\n`)).toBe(true);
  const { stdout } = await runCli(["sheet", "job.finish", "--format", "html"], { files });
  expect(body).toBe(stdout);
});
