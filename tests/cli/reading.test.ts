/**
 * What the command line reads of what a text names: plain recipes of the project, as far as a recipe goes, and nothing
 * that never ends. What it does not read is a finding at the `use` line, and the check fails.
 */
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { open } from "node:fs/promises";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { readPlain } from "../../server/src/cli/read-plain.ts";
import { MAX_DEPTH } from "../../server/src/reading/may-read.ts";
import { MAX_FILE_BYTES } from "../../server/src/reading/reasons.ts";
import { type CliInput, runCli } from "./run-cli.ts";

const MATERIAL = "material floor_oil {\n  family drying oil\n}\n";

/** The findings at `use` lines when `shop/a.finish` uses a path, and how the check ended. */
const using = async (used: string, input: CliInput = {}, argv: readonly string[] = ["shop/a.finish"]) => {
  const files = { "shop/a.finish": `use "${used}"\n`, ...input.files };
  const { status, stdout, stderr } = await runCli(["check", ...argv, "--format", "json"], {
    ...input,
    files,
  });
  const found: readonly { rule: string; message: string }[] = JSON.parse(stdout || "[]");
  return {
    status,
    stderr,
    messages: found.filter(({ rule }) => rule === "use-not-found").map((f) => f.message),
  };
};

test("neither a comment nor a project can hide that a file was not read", async () => {
  const text = '# allow use-not-found: we know\nuse "../../outside.finish"\n';
  const allowed = await using("", { files: { "shop/a.finish": text } });
  expect(allowed.status).toBe(1);
  expect(allowed.messages).toHaveLength(1);
  // The project file itself is at fault then, which is graver.
  const config = JSON.stringify({ rules: { "use-not-found": "off" } });
  const off = await using("../../outside.finish", { files: { "finishwright.config.json": config } });
  expect(off.status).toBe(2);
  expect(off.stderr).toContain("`use-not-found` cannot be set");
  expect(off.messages).toHaveLength(1);
});

const mkfifo = (file: string): void => {
  execFileSync("mkfifo", [file]);
};

describe.skipIf(process.platform === "win32")("no device, pipe or endless file is read", () => {
  test("a pipe that nobody writes to", async () => {
    const outcome = await using("pipe.finish", {
      prepare: (folder) => mkfifo(path.join(folder, "shop", "pipe.finish")),
    });
    expect(outcome.status).toBe(1);
    expect(outcome.messages).toEqual([expect.stringContaining("not a plain file but a device, a pipe")]);
  });

  test("a link to a device", async () => {
    const outcome = await using("zero.finish", {
      prepare: (folder) => symlinkSync("/dev/zero", path.join(folder, "shop", "zero.finish")),
    });
    expect(outcome.status).toBe(1);
    expect(outcome.messages).toEqual([expect.stringContaining("is a link to what is not a recipe")]);
  });

  test.each(["/dev/zero", "/dev/stdin", "/proc/self/environ", "/proc/self/fd/0"])("%s", async (used) => {
    const outcome = await using(used);
    expect(outcome.status).toBe(1);
    expect(outcome.messages).toEqual([expect.stringContaining("its name does not end in `.finish`")]);
  });

  test("a pipe in a folder that is checked is no file, and a link to one is named", async () => {
    const outcome = await runCli(["check", "shop"], {
      files: { "shop/a.finish": MATERIAL },
      prepare: (folder) => {
        mkfifo(path.join(folder, "shop", "pipe.finish"));
        symlinkSync("pipe.finish", path.join(folder, "shop", "linked.finish"));
      },
    });
    expect(outcome.status).toBe(2);
    expect(outcome.stderr).toContain("`shop/linked.finish` is a link to what is not a plain file");
    expect(outcome.stderr.split("\n")).toHaveLength(2);
  });
});

test.skipIf(!existsSync("/proc/kallsyms"))(
  "a file that claims to be empty and is large is read up to the limit, and no further",
  async () => {
    // Linux says of every file of /proc that its size is 0; this one has some ten megabytes.
    const handle = await open("/proc/kallsyms");
    let bytes = 0;
    try {
      const buffer = new Uint8Array(1 << 16);
      for (let read = 1; read > 0 && bytes <= MAX_FILE_BYTES; bytes += read) {
        read = (await handle.read(buffer)).bytesRead;
      }
    } finally {
      await handle.close();
    }
    const result = await readPlain("/proc/kallsyms");
    if (bytes > MAX_FILE_BYTES)
      expect(result).toMatchObject({ reason: expect.stringContaining("larger than 4 MB") });
    else expect(result).toHaveProperty("text");
  },
);

test("a recipe of more than 4 MB is not read, whoever names it", async () => {
  const files = { "shop/big.finish": `# ${"x".repeat(MAX_FILE_BYTES)}` };
  const used = await using("big.finish", { files });
  expect(used).toMatchObject({ status: 1, messages: [expect.stringContaining("larger than 4 MB")] });
  const given = await runCli(["check", "shop/big.finish"], { files });
  expect(given).toMatchObject({ status: 2, stderr: expect.stringContaining("larger than 4 MB") });
});

test("a name that leads to another computer is never followed", async () => {
  for (const used of [
    "//nas/stock/oils.finish",
    "\\\\\\\\nas\\\\stock\\\\oils.finish",
    "\\\\\\\\?\\\\UNC\\\\nas\\\\oils.finish",
  ]) {
    const outcome = await using(used);
    expect(outcome.status).toBe(1);
    expect(outcome.messages).toEqual([expect.stringContaining("by way of another computer")]);
  }
});

describe("nothing outside of the project is read", () => {
  const files = { "stock/oils.finish": MATERIAL };
  const OUTSIDE = expect.stringMatching(
    /lies outside of the folders that may be read here.*--read-also FOLDER/s,
  );

  test("a file alone: its own folder and what is below", async () => {
    expect(await using("../stock/oils.finish", { files })).toMatchObject({ status: 1, messages: [OUTSIDE] });
    const below = { "shop/stock/oils.finish": MATERIAL };
    expect((await using("stock/oils.finish", { files: below })).messages).toEqual([]);
  });

  test("a project: the folder of its project file, or of its version control", async () => {
    const project = { ...files, "finishwright.config.json": "{}" };
    expect((await using("../stock/oils.finish", { files: project })).messages).toEqual([]);
    const prepare = (folder: string) => void mkdirSync(path.join(folder, ".git"));
    expect((await using("../stock/oils.finish", { files, prepare })).messages).toEqual([]);
    // The nearest project file says where the project is, also where one further up is under version control.
    const inner = { ...files, "shop/finishwright.config.json": "{}" };
    expect((await using("../stock/oils.finish", { files: inner, prepare })).messages).toEqual([OUTSIDE]);
  });

  test("a folder that was given: all of it", async () => {
    expect((await using("../stock/oils.finish", { files }, ["."])).messages).toEqual([]);
  });

  test("what the person adds on the command line, and nothing else", async () => {
    expect(
      (await using("../stock/oils.finish", { files }, ["shop/a.finish", "--read-also", "stock"])).messages,
    ).toEqual([]);
    const wrong = await runCli(["check", "--read-also", "nowhere"], { files });
    expect(wrong).toMatchObject({ status: 2, stderr: expect.stringContaining("`nowhere` is none") });
  });

  test("a link counts by where it leads, be it the file or a folder on the way", async () => {
    const linked = (target: string, name: string) => (folder: string) =>
      symlinkSync(target, path.join(folder, "shop", name));
    const out = await using("oils.finish", { files, prepare: linked("../stock/oils.finish", "oils.finish") });
    expect(out).toMatchObject({
      status: 1,
      messages: [expect.stringContaining("is a link to what lies outside")],
    });
    const by = await using("stock/oils.finish", { files, prepare: linked("../stock", "stock") });
    expect(by.messages).toEqual([expect.stringContaining("is a link to what lies outside")]);
    const within = { "shop/stock/oils.finish": MATERIAL };
    const inside = await using("oils.finish", {
      files: within,
      prepare: linked("stock/oils.finish", "oils.finish"),
    });
    expect(inside.messages).toEqual([]);
  });

  test("a project that is itself reached by a link is a project like any other", async () => {
    const outcome = await runCli(["check", "door/a.finish"], {
      files: { "shop/a.finish": 'use "oils.finish"\n', "shop/oils.finish": MATERIAL },
      prepare: (folder) => symlinkSync("shop", path.join(folder, "door")),
    });
    expect(outcome).toMatchObject({ status: 0, stderr: "" });
  });

  test("a link in a folder that is checked or formatted leads no further either", async () => {
    const prepare = (folder: string) =>
      symlinkSync("../stock/oils.finish", path.join(folder, "shop", "oils.finish"));
    for (const command of ["check", "format"]) {
      const outcome = await runCli([command, "shop"], {
        files: { ...files, "shop/a.finish": MATERIAL },
        prepare,
      });
      expect(outcome.status).toBe(2);
      expect(outcome.stderr).toContain("`shop/oils.finish` is a link to what lies outside");
    }
  });
});

test("names that no disk has are findings, not accidents", async () => {
  const long = await using(`${"a/".repeat(5000)}b.finish`);
  expect(long).toMatchObject({ status: 1, messages: [expect.stringContaining("more than 4096 characters")] });
  const zero = await using("a\u0000b.finish");
  expect(zero).toMatchObject({ status: 1, messages: [expect.stringContaining("no file name can have")] });
});

test("deep folders are looked into to a limit, with a word; a loop of links is not followed", async () => {
  const deep = Array.from({ length: MAX_DEPTH + 3 }, () => "d").join("/");
  const outcome = await runCli(["check", "."], {
    files: { "d/a.finish": MATERIAL },
    prepare: (folder) => {
      mkdirSync(path.join(folder, deep), { recursive: true });
      writeFileSync(path.join(folder, deep, "b.finish"), MATERIAL);
      symlinkSync("..", path.join(folder, "d", "up"));
    },
  });
  expect(outcome.status).toBe(2);
  expect(outcome.stderr).toContain(`lies more than ${MAX_DEPTH} folders deep and is not looked into`);
  expect(outcome.stderr.split("\n")).toHaveLength(2);
});
