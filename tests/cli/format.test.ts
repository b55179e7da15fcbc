/** `format`: files in place, `--check`, standard input, what cannot be read or written, exit status. */
import {
  chmodSync,
  lstatSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import process from "node:process";
import { describe, expect, test } from "vitest";
import { type CliInput, type CliOutcome, runCli } from "./run-cli.ts";

const MESSY = "shop   s {\ncrew 2\n}\n";
const NEAT = "shop s {\n  crew 2\n}\n";
/** Line 2 has a syntax error. */
const BROKEN = "shop   s {\n crew = 2\nair 18C\n}\n";
const BROKEN_NEAT = "shop s {\n crew = 2\n  air 18 C\n}\n";

const NOBODY = 65534;

/** What the command did, and what the files are afterwards. */
async function runFormat(
  argv: readonly string[],
  input: CliInput = {},
): Promise<CliOutcome & { readonly after: Readonly<Record<string, string>> }> {
  const after: Record<string, string> = {};
  const look = (folder: string): void => {
    input.look?.(folder);
    for (const name of readdirSync(folder, { recursive: true, encoding: "utf8" })) {
      const file = path.join(folder, name);
      if (statSync(file).isFile()) after[name] = readFileSync(file, "utf8");
    }
  };
  return { ...(await runCli(["format", ...argv], { ...input, look })), after };
}

describe("in place", () => {
  test("files and folders are brought to the layout, and those that changed are named", async () => {
    const files = { "a.finish": MESSY, "b.finish": NEAT, "c/d.finish": MESSY, "c/e.txt": MESSY };
    expect(await runFormat(["a.finish", "b.finish", "c"], { files })).toMatchObject({
      status: 0,
      stdout: "a.finish\nc/d.finish\n",
      stderr: "Formatted 2 of 3 files.\n",
      after: { "a.finish": NEAT, "b.finish": NEAT, "c/d.finish": NEAT, "c/e.txt": MESSY },
    });
  });

  test("without a path it is the folder itself", async () => {
    const { stdout, after } = await runFormat([], { files: { "a.finish": MESSY } });
    expect(stdout).toBe("a.finish\n");
    expect(after["a.finish"]).toBe(NEAT);
  });

  test("what is laid out is not written", async () => {
    let writes = 0;
    const beforeWriting = (): void => {
      writes += 1;
    };
    const outcome = await runFormat([], { files: { "a.finish": NEAT }, beforeWriting });
    expect(outcome).toMatchObject({ status: 0, stdout: "", stderr: "1 file, nothing to format.\n" });
    expect(writes).toBe(0);
  });

  test("mode, link, line ends and byte order mark stay, and nothing is left behind", async () => {
    const files = { "a.finish": `\ufeff${MESSY.replaceAll("\n", "\r\n")}`, "links/x.txt": "" };
    const { status, after } = await runFormat(["<folder>/links/l.finish"], {
      files,
      prepare: (folder) => {
        chmodSync(path.join(folder, "a.finish"), 0o640);
        symlinkSync("../a.finish", path.join(folder, "links", "l.finish"));
      },
      look: (folder) => {
        expect(lstatSync(path.join(folder, "links", "l.finish")).isSymbolicLink()).toBe(true);
        expect(statSync(path.join(folder, "a.finish")).mode & 0o777).toBe(0o640);
        expect(readdirSync(folder).sort()).toEqual(["a.finish", "links"]);
      },
    });
    expect(status).toBe(0);
    expect(after["a.finish"]).toBe(`\ufeff${NEAT.replaceAll("\n", "\r\n")}`);
  });

  test("a file that somebody changes meanwhile is left to them", async () => {
    const theirs = "shop   t {\n}\n";
    const outcome = await runFormat(["a.finish"], {
      files: { "a.finish": MESSY },
      beforeWriting: (file) => writeFileSync(file, theirs),
    });
    expect(outcome).toMatchObject({ status: 2, stdout: "", after: { "a.finish": theirs } });
    expect(outcome.stderr).toBe(
      "finishwright: `a.finish` has changed since it was read and is left as it is. Format it again.\n",
    );
  });

  test("a file that goes away before it is written is no accident", async () => {
    const outcome = await runFormat(["a.finish"], {
      files: { "a.finish": MESSY },
      beforeWriting: (file) => rmSync(file),
    });
    expect(outcome).toMatchObject({ status: 2, stdout: "", after: {} });
    expect(outcome.stderr).toMatch(/^finishwright: `a\.finish` cannot be written: .*\n$/u);
  });

  test("a file without the right to write it stays, and nothing is left behind", async () => {
    // A superuser may write everything, and is somebody else for as long as it takes.
    const isSuperuser = process.geteuid?.() === 0;
    const outcome = await runFormat(["a.finish"], {
      files: { "a.finish": MESSY },
      prepare: (folder) => chmodSync(path.join(folder, "a.finish"), 0o440),
      beforeWriting: () => {
        if (isSuperuser) process.seteuid?.(NOBODY);
      },
      look: (folder) => {
        if (isSuperuser) process.seteuid?.(0);
        expect(readdirSync(folder)).toEqual(["a.finish"]);
      },
    });
    expect(outcome).toMatchObject({ status: 2, stdout: "", after: { "a.finish": MESSY } });
    expect(outcome.stderr).toBe(
      "finishwright: `a.finish` may not be written: you have no permission for it or its folder. " +
        "Ask for it, or leave the file out.\n",
    );
  });
});

describe("syntax errors", () => {
  test("the lines without one are formatted, the others are named, and the status is 1", async () => {
    const outcome = await runFormat(["a.finish"], { files: { "a.finish": BROKEN } });
    expect(outcome).toMatchObject({
      status: 1,
      stdout: "a.finish\n",
      stderr:
        "finishwright: Line 2 of `a.finish` is left as it is, because of syntax errors. " +
        "`finishwright check a.finish` says what is wrong.\nFormatted 1 of 1 file.\n",
      after: { "a.finish": BROKEN_NEAT },
    });
  });

  test("lines are named by where they stand afterwards", async () => {
    const files = { "a.finish": "\n\nshop s {\n  crew = 2\n\n\n  air: 18 C\n  room\n}\n" };
    const { stderr, after } = await runFormat(["a.finish"], { files });
    expect(after["a.finish"]).toBe("shop s {\n  crew = 2\n\n  air: 18 C\n  room\n}\n");
    expect(stderr).toContain("Lines 2 and 4 to 5 of `a.finish` are left as they are");
    expect((await runFormat(["--check"], { files })).stderr).toContain("Lines 4 and 7 to 8 of");
  });
});

describe("--check", () => {
  test("lists what would change, changes nothing, and ends with 1", async () => {
    const files = { "a.finish": MESSY, "b.finish": NEAT };
    expect(await runFormat(["--check", "."], { files })).toMatchObject({
      status: 1,
      stdout: "a.finish\n",
      stderr: "1 of 2 files would change. `finishwright format` formats them.\n",
      after: files,
    });
  });

  test("ends with 0 where nothing would change", async () => {
    expect(await runFormat(["--check", "b.finish"], { files: { "b.finish": NEAT } })).toMatchObject({
      status: 0,
      stdout: "",
      stderr: "1 file, nothing to format.\n",
    });
  });
});

describe("standard input", () => {
  test("is written to standard output in its layout, and to nowhere else", async () => {
    expect(await runFormat(["-"], { input: MESSY })).toMatchObject({ status: 0, stdout: NEAT, stderr: "" });
    expect(await runFormat(["-"], { input: NEAT })).toMatchObject({ status: 0, stdout: NEAT, stderr: "" });
    expect(await runFormat(["-"], { input: "" })).toMatchObject({ status: 0, stdout: "", stderr: "" });
    expect((await runFormat(["-"], { input: `\ufeff${MESSY}` })).stdout).toBe(`\ufeff${NEAT}`);
  });

  test("keeps lines with syntax errors and says so", async () => {
    const outcome = await runFormat(["-"], { input: BROKEN });
    expect(outcome).toMatchObject({ status: 1, stdout: BROKEN_NEAT });
    expect(outcome.stderr).toContain("Line 2 of standard input is left as it is");
  });

  test("can be checked", async () => {
    expect(await runFormat(["--check", "-"], { input: MESSY })).toMatchObject({ status: 1, stdout: "-\n" });
    expect(await runFormat(["--check", "-"], { input: NEAT })).toMatchObject({ status: 0, stdout: "" });
  });

  test("that is no text ends with 2 and writes nothing", async () => {
    const outcome = await runFormat(["-"], { input: Uint8Array.of(0x23, 0xe9, 0x0a) });
    expect(outcome).toMatchObject({ status: 2, stdout: "" });
    expect(outcome.stderr).toBe(
      "finishwright: standard input is not UTF-8 text: byte E9 in line 1 is none. Save it as UTF-8.\n",
    );
  });

  test("stands alone", async () => {
    const outcome = await runFormat(["-", "a.finish"], { files: { "a.finish": MESSY }, input: MESSY });
    expect(outcome).toMatchObject({ status: 2, stdout: "", after: { "a.finish": MESSY } });
    expect(outcome.stderr).toContain("`-` is standard input and stands alone, without files.");
  });
});

describe("what cannot be read", () => {
  test("is named, and the rest is formatted all the same", async () => {
    const outcome = await runFormat(["latin.finish", "locked.finish", "none.finish", "a.finish"], {
      files: { "a.finish": MESSY, "locked.finish": MESSY, "latin.finish": Uint8Array.of(0x23, 0xe9, 0x0a) },
      forbidden: ["locked.finish"],
    });
    expect(outcome).toMatchObject({ status: 2, stdout: "a.finish\n" });
    expect(outcome.after["a.finish"]).toBe(NEAT);
    expect(outcome.after["locked.finish"]).toBe(MESSY);
    expect(outcome.stderr).toContain("`latin.finish` is not UTF-8 text");
    expect(outcome.stderr).toContain("`locked.finish` may not be read");
    expect(outcome.stderr).toContain("There is no `none.finish`");
    expect(outcome.stderr).toMatch(/\nFormatted 1 of 1 file\.\n$/u);
  });

  test("alone has no summary", async () => {
    const outcome = await runFormat(["none.finish"]);
    expect(outcome).toMatchObject({ status: 2, stdout: "" });
    expect(outcome.stderr.split("\n")).toHaveLength(2);
  });
});
