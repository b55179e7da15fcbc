/** `diff` with revisions, and as a driver of Git: in repositories of their own, through Git itself. */
import { execFileSync } from "node:child_process";
import { mkdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { JOB, STOCK } from "./bench.ts";
import { type CliInput, runCli } from "./run-cli.ts";

const git = (folder: string, ...args: readonly string[]): string =>
  execFileSync(
    "git",
    ["-c", "user.name=A", "-c", "user.email=a@example.org", "-c", "commit.gpgsign=false", ...args],
    { cwd: folder, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] },
  );

type Texts = Readonly<Record<string, string>>;

function write(folder: string, files: Texts): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
    writeFileSync(path.join(folder, name), text);
  }
}

function commit(folder: string, message: string): void {
  git(folder, "add", "-A");
  git(folder, "commit", "-q", "-m", message);
}

/** A repository with two commits, `one` and `two`, and what is not committed on top. */
const repository =
  (one: Texts, two: Texts, top: Texts = {}): NonNullable<CliInput["prepare"]> =>
  (folder) => {
    git(folder, "init", "-q", "-b", "trunk");
    write(folder, one);
    commit(folder, "one");
    git(folder, "tag", "one");
    write(folder, two);
    commit(folder, "two");
    git(folder, "tag", "two");
    write(folder, top);
  };

const BEFORE = { "shelf/stock.finish": STOCK, "shelf/job.finish": JOB };
const SLOWER = { "shelf/stock.finish": STOCK.replace("recoat 2 h", "recoat 3 h") };
const MORE = { "shelf/job.finish": JOB.replace("coats: number = 2", "coats: number = 3") };

interface Told {
  readonly files: readonly {
    readonly after: string | null;
    readonly before: string | null;
    readonly changes: readonly {
      readonly kind: string;
      readonly figures: Readonly<Record<string, unknown>>;
    }[];
  }[];
}

async function told(argv: readonly string[], input: CliInput): Promise<Told["files"]> {
  const { stdout, stderr } = await runCli(["diff", "--format", "json", ...argv], input);
  expect(stderr).toBe("");
  return (JSON.parse(stdout) as Told).files;
}

const hoursIn = (files: Told["files"]): unknown =>
  files.flatMap(({ changes }) => changes).find(({ kind }) => kind === "job")?.figures.elapsed_h;

describe("diff of revisions", () => {
  const prepare = repository(BEFORE, SLOWER, MORE);

  test("what a revision uses is read from that revision", async () => {
    // 30 min and 2 × (15 min + 2 h), against 2 × (15 min + 3 h); the job's own text is the same.
    const files = await told(["one", "two"], { prepare });
    expect(hoursIn(files)).toEqual({ before: 5, after: 7 });
    expect(files.map(({ after }) => after)).toEqual(["shelf/job.finish", "shelf/stock.finish"]);
    // Of one file alone, what it uses still differs.
    expect(hoursIn(await told(["one", "two", "--", "shelf/job.finish"], { prepare }))).toEqual({
      before: 5,
      after: 7,
    });
    expect(hoursIn(await told(["one..two"], { prepare }))).toEqual({ before: 5, after: 7 });
  });

  test("one revision, or none for HEAD, is compared with the working tree", async () => {
    // 30 min and 3 × (15 min + 3 h)
    expect(hoursIn(await told(["one"], { prepare }))).toEqual({ before: 5, after: 10.25 });
    expect(hoursIn(await told([], { prepare }))).toEqual({ before: 7, after: 10.25 });
    expect(hoursIn(await told(["one", "job.finish"], { prepare, cwd: "shelf" }))).toEqual({
      before: 5,
      after: 10.25,
    });
  });

  test("a renamed file is followed, between revisions and into the working tree", async () => {
    const moved: CliInput["prepare"] = (folder) => {
      repository(BEFORE, { "notes.txt": "more" })(folder);
      git(folder, "mv", "shelf", "boards");
      write(folder, { "boards/job.finish": MORE["shelf/job.finish"] });
      commit(folder, "moved");
    };
    // 30 min and 2 × (15 min + 2 h), against 3 ×
    const told = { before: "shelf/job.finish", after: "boards/job.finish", renamed: true };
    for (const argv of [["one", "HEAD"], ["one"]]) {
      const { stdout } = await runCli(["diff", "--format", "json", ...argv], { prepare: moved });
      const { files, renamed_only } = JSON.parse(stdout);
      expect(files).toMatchObject([told]);
      expect(hoursIn(files)).toEqual({ before: 5, after: 7.25 });
      expect(renamed_only).toEqual([{ before: "shelf/stock.finish", after: "boards/stock.finish" }]);
    }
  });

  test("Git decides which files of two revisions are the same ones", async () => {
    // Most of its bytes are a comment, which says nothing here: for Git it is the same file, by its lines it is not.
    const comment = "# From the tin, as it was read in the mill.\n".repeat(40);
    const prepare: CliInput["prepare"] = (folder) => {
      repository(
        { "wax.finish": `${comment}material wax {\n  family wax\n}\n` },
        { "notes.txt": "more" },
      )(folder);
      git(folder, "mv", "wax.finish", "oil.finish");
      write(folder, { "oil.finish": `${comment}material oil {\n  family drying oil\n}\n` });
    };
    const committed: CliInput["prepare"] = (folder) => {
      prepare(folder);
      commit(folder, "oil");
    };
    const names = async (argv: readonly string[], input: CliInput) =>
      (await told(argv, input)).map(({ before, after }) => [before, after]);
    expect(await names(["one", "HEAD"], { prepare: committed })).toEqual([["wax.finish", "oil.finish"]]);
    expect(await names(["one"], { prepare })).toEqual([
      [null, "oil.finish"],
      ["wax.finish", null],
    ]);
  });

  test("three dots compare with where the branches parted", async () => {
    const parted: CliInput["prepare"] = (folder) => {
      repository(BEFORE, SLOWER)(folder);
      git(folder, "checkout", "-q", "-b", "side", "one");
      write(folder, MORE);
      commit(folder, "more");
    };
    // On the side the label still says 2 h: 30 min and 3 × (15 min + 2 h).
    expect(hoursIn(await told(["trunk...side"], { prepare: parted }))).toEqual({ before: 5, after: 7.25 });
    expect(hoursIn(await told(["trunk..side"], { prepare: parted }))).toEqual({ before: 7, after: 7.25 });
  });

  test("a file that is gone was there before", async () => {
    const gone: CliInput["prepare"] = (folder) => {
      prepare(folder);
      rmSync(path.join(folder, "shelf/job.finish"));
    };
    const [file] = await told(["HEAD", "--", "shelf/job.finish"], { prepare: gone });
    expect(file).toMatchObject({ before: "shelf/job.finish", after: null });
  });

  test("says what is wrong with what was asked", async () => {
    const said = async (...argv: string[]) => {
      const { status, stderr } = await runCli(["diff", ...argv], { prepare });
      expect(status).toBe(2);
      return stderr;
    };
    expect(await said("three", "--", "shelf")).toContain("There is no revision `three`.");
    expect(await said("one", "nowhere")).toContain(
      "There is no `nowhere`, neither here nor in the revision.",
    );
    expect(await said("one", "two", "trunk")).toContain("Two revisions can be compared, not more.");
    expect(await said("one", "--", "..")).toContain("`..` lies outside of the repository");
    expect(await said("--", "--output=stolen")).toContain("There is no `--output=stolen`");
    const named: CliInput["prepare"] = (folder) => {
      prepare(folder);
      write(folder, { one: "" });
    };
    expect((await runCli(["diff", "one"], { prepare: named })).stderr).toContain(
      "`one` is both a revision and a path.",
    );
  });

  test("outside of a repository there are no revisions", async () => {
    const { status, stderr } = await runCli(["diff", "main"], {
      files: BEFORE,
      prepare: (folder) => writeFileSync(path.join(folder, ".git"), "gitdir: nowhere\n"),
    });
    expect(status).toBe(2);
    expect(stderr).toContain("Revisions are those of a Git repository");
  });

  test("takes nothing of a tree but plain recipes of a recipe's size", async () => {
    const hostile: CliInput["prepare"] = (folder) => {
      write(folder, {
        "secret.txt": "not for you",
        "a.finish": 'use "secret.txt"\nuse "../outside.finish"\nuse "link.finish"\n',
        "big.finish": "#".repeat(4 * 1024 * 1024 + 1),
        "odd\n\u001b name.finish": "material a {\n}\n",
        "node_modules/x/b.finish": "material b {\n}\n",
      });
      write(path.dirname(folder), {});
      symlinkSync("secret.txt", path.join(folder, "link.finish"));
      git(folder, "init", "-q");
      commit(folder, "all");
      git(folder, "tag", "all");
      rmSync(path.join(folder, "a.finish"));
      commit(folder, "less");
    };
    const { status, stdout, stderr } = await runCli(["diff", "all", "HEAD"], { prepare: hostile });
    expect(status).toBe(2);
    expect(stderr).toContain("`big.finish` is larger than 4 MB");
    expect(stderr).toContain("`link.finish` is a link");
    expect(stdout + stderr).not.toContain("\u001b");
    expect(stdout).not.toContain("not for you");
    expect(stdout).not.toContain("node_modules");
    expect(stdout).toContain("a.finish (removed)");
  });
});

describe("in Git itself", () => {
  const driver = (folder: string, use: (folder: string) => void): void => {
    repository(BEFORE, SLOWER, MORE)(folder);
    write(folder, { ".gitattributes": "*.finish diff=finish\n" });
    use(folder);
  };
  const program = path.resolve(import.meta.dirname, "../../server/dist/finishwright.cjs");
  const command = `'${process.execPath}' '${program}'`;

  test("is a diff driver", async () => {
    let said = "";
    await runCli(["--version"], {
      prepare: (folder) =>
        driver(folder, () => {
          said = git(folder, "-c", `diff.finish.command=${command} diff --driver --`, "diff", "--ext-diff");
        }),
    });
    expect(said).toContain("shelf/job.finish\n  Changed recipe: clearing\n    coats  2 → 3 (+1)\n");
    // The shelf is done with what the working tree has: 7 h, and 30 min + 3 × (15 min + 3 h).
    expect(said).toMatch(/elapsed +7 h → 10 h 15 min \(\+3 h 15 min\)/u);
  });

  test("as a diff driver follows a renamed file", async () => {
    let said = "";
    await runCli(["--version"], {
      prepare: (folder) =>
        driver(folder, () => {
          git(folder, "mv", "shelf/job.finish", "shelf/board.finish");
          git(folder, "add", "-A");
          const set = `diff.finish.command=${command} diff --driver --`;
          said = git(folder, "-c", set, "diff", "--ext-diff", "--cached", "-M");
        }),
    });
    expect(said).toContain("shelf/board.finish (renamed from shelf/job.finish)\n");
    expect(said).toMatch(/coats +2 → 3 \(\+1\)/u);
  });

  test("is a text conversion", async () => {
    let said = "";
    await runCli(["--version"], {
      prepare: (folder) =>
        driver(folder, () => {
          said = git(folder, "-c", `diff.finish.textconv=${command} diff --textconv`, "diff", "one", "two");
        }),
    });
    expect(said).toContain("\n-  recoat 2 h to 24 h\n+  recoat 3 h to 24 h\n");
  });
});
