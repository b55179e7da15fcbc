/** `check --cache`: it says what `check` says, and looks only into what has changed. */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { cacheFolder } from "../../server/src/cli/cache-folder.ts";
import type { CliIo } from "../../server/src/cli/io.ts";
import { run } from "../../server/src/cli/main.ts";
import { nodeFiles } from "../../server/src/cli/node-files.ts";
import { runGit } from "../../server/src/cli/node-git.ts";
import { nodeWatch } from "../../server/src/cli/node-watch.ts";
import { type AnalystOptions, createAnalyst } from "../../server/src/features/analyst.ts";
import { plan } from "../harness/planner.ts";

const root = mkdtempSync(path.join(tmpdir(), "finishwright-cache-"));
afterAll(() => rmSync(root, { recursive: true }));

type Texts = Readonly<Record<string, string | undefined>>;

const job = (name: string, more = ""): string =>
  `job ${name} {\n  piece desk\n  in mill\n  start 2027-03-08\n${more}  apply sealed to top\n}\n`;

const SHOP = `shop mill {
  room 3 m x 3 m x 2.5 m
  air 20 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}
`;
const BASE = `use "shop.finish"
piece desk {
  surface top {
    shape panel 2000 mm x 1000 mm x 30 mm
    wood oak
  }
}
recipe sealed {
  safety vapour_respirator, no_ignition, ventilate, gloves
  layer nitrocellulose_lacquer x 3 {
    wait until recoat
  }
  wait until cured
}
`;
const lone = (grit: number): string =>
  `recipe coat {\n  step sand 120\n  layer drying_oil\n  step sand ${grit}\n}\n`;

/** What each file may hold; the first is what it begins with, and undefined is no file. */
const VARIANTS: Readonly<Record<string, readonly (string | undefined)[]>> = {
  "shop.finish": [SHOP, SHOP.replace("20 C", "12 C"), SHOP.replace("mill", "barn"), undefined],
  "base.finish": [BASE, BASE.replace(" x 3", " x 2"), BASE.replace("oak", "pine"), `${BASE}${lone(40)}`],
  "first.finish": [
    `use "base.finish"\n${job("first")}`,
    `use "base.finish"\n${job("first", "  ready 2027-03-09\n")}`,
  ],
  "second.finish": [undefined, `use "./base.finish"\n${job("second")}`, `use "shop.finish"\n${lone(40)}`],
  "user.finish": [
    'use "shared.finish"\nrecipe waxed {\n  layer house_wax\n  layer hall_clear\n}\n',
    'use "shared.finish"\nrecipe waxed {\n  layer hall_clear\n}\n',
    `use "shared.finish"\nuse "base.finish"\n${job("third")}`,
    'use "pkg:kit/wax.finish"\nrecipe waxed {\n  layer kit_wax\n}\n',
  ],
  "shared.finish": [
    "material house_wax {\n  family paste wax\n}\nmaterial hall_clear {\n  family waterborne polyurethane\n}\n",
    "material house_wax {\n  family drying oil\n}\nmaterial hall_clear {\n  family waterborne polyurethane\n",
    undefined,
  ],
  "node_modules/kit/wax.finish": [
    undefined,
    "material kit_wax {\n  family paste wax\n}\n",
    "material kit_wax {\n",
  ],
  "sub/node_modules/kit/wax.finish": [undefined, "material kit_wax {\n  family shellac\n}\n"],
  "sub/inner.finish": ['use "pkg:kit/wax.finish"\nrecipe inner {\n  layer kit_wax\n}\n', lone(40)],
  "lone.finish": [lone(180), lone(40), "", "recipe {"],
  "empty.finish": ["", '# speaks of "lone.finish"\n', 'use "lone.finish"\n'],
  "finishwright.config.json": [
    undefined,
    '{ "rules": { "unused-name": "error" } }',
    '{ "rules": { "coat-over-wax": "hint" }, "units": "us" }',
  ],
};
const START: Texts = Object.fromEntries(Object.entries(VARIANTS).map(([name, [first]]) => [name, first]));

function write(folder: string, files: Texts): void {
  for (const [name, text] of Object.entries(files)) {
    const file = path.join(folder, name);
    if (text === undefined) rmSync(file, { force: true });
    else {
      mkdirSync(path.dirname(file), { recursive: true });
      writeFileSync(file, text);
    }
  }
}

function library(files: Texts = START): string {
  const folder = mkdtempSync(path.join(root, "library-"));
  // Packages are looked for up to the root of the repository.
  mkdirSync(path.join(folder, ".git"));
  write(folder, files);
  return folder;
}

interface Ran {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** `read` gets the name of every file that is parsed. */
async function check(
  folder: string,
  args: readonly string[],
  {
    read = [],
    build = "one",
    parts,
  }: { readonly read?: string[]; readonly build?: string; readonly parts?: AnalystOptions["parts"] } = {},
): Promise<Ran> {
  const said = { stdout: "", stderr: "" };
  const output = (stream: keyof typeof said) => ({
    write: (text: string) => {
      said[stream] += text;
    },
    isTTY: false,
    columns: 80,
  });
  const io: CliIo = {
    createAnalyst: (options) => {
      const analyst = createAnalyst({ plan, ...options, ...(parts ? { parts } : {}) });
      return {
        ...analyst,
        setFile(file, text) {
          read.push(path.relative(folder, file));
          analyst.setFile(file, text);
        },
      };
    },
    readInput: () => Promise.reject(new Error("Nothing is read here.")),
    stdout: output("stdout"),
    stderr: output("stderr"),
    cwd: folder,
    env: {},
    files: nodeFiles,
    watch: nodeWatch,
    git: runGit,
    version: "1.2.3",
    processors: 1,
    build: () => build,
    cacheFolder: () => path.join(folder, ".caches"),
    home: folder,
    now: () => "2027-03-01T08:00:00Z",
    startLanguageServer: () => Promise.resolve(),
  };
  const status = await run(["check", ...args], io);
  return { status, ...said };
}

const cacheIn = (folder: string): string => {
  const [name] = readdirSync(path.join(folder, ".caches"));
  return path.join(folder, ".caches", name!);
};

const NAMES = Object.keys(VARIANTS);
const edit = fc
  .nat(NAMES.length - 1)
  .chain((file) =>
    fc.nat(VARIANTS[NAMES[file]!]!.length - 1).map((variant) => [NAMES[file]!, variant] as const),
  );

describe("check --cache", () => {
  test("says what check says, after any edits", { timeout: 600_000 }, async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.array(edit, { minLength: 1, maxLength: 3 }), { minLength: 2, maxLength: 5 }),
        fc.constantFrom("text", "json", "sarif"),
        async (steps, format) => {
          const folder = library();
          const now: Record<string, string | undefined> = { ...START };
          for (const edits of [[], ...steps]) {
            for (const [name, variant] of edits) now[name] = VARIANTS[name]![variant];
            write(folder, now);
            const args = ["--format", format, "--statistics"];
            const plain = await check(folder, args);
            expect(await check(folder, [...args, "--cache"])).toEqual(plain);
            // Nothing has changed since.
            expect(await check(folder, [...args, "--cache"])).toEqual(plain);
          }
          rmSync(folder, { recursive: true });
        },
      ),
      { numRuns: 12, seed: 20261130 },
    );
  });

  test("parses nothing where nothing has changed, and of what is by itself what has", async () => {
    const folder = library({ ...START, "alone.finish": lone(100) });
    await check(folder, ["--cache"]);
    const again: string[] = [];
    await check(folder, ["--cache"], { read: again });
    expect(again).toEqual([]);
    write(folder, { "alone.finish": lone(150) });
    const edited: string[] = [];
    await check(folder, ["--cache"], { read: edited });
    expect(edited).toEqual(["alone.finish"]);
  });

  test("is of no use to another build, for another day and for other paths", async () => {
    const folder = library({ "lone.finish": lone(40) });
    await check(folder, ["--cache"]);
    const parsed = async (args: readonly string[], build?: string): Promise<number> => {
      const read: string[] = [];
      await check(folder, args, { read, ...(build === undefined ? {} : { build }) });
      return read.length;
    };
    expect(await parsed(["--cache"])).toBe(0);
    expect(await parsed(["--cache", "--today", "2027-03-10"])).toBe(1);
    expect(await parsed(["--cache"], "two")).toBe(1);
    expect(await parsed(["--cache"], "two")).toBe(0);
    expect(await parsed(["lone.finish", "--cache"], "two")).toBe(1);
  });

  test("one that is damaged is made anew", { timeout: 120_000 }, async () => {
    const folder = library();
    const plain = await check(folder, []);
    await check(folder, ["--cache"]);
    const sound = readFileSync(cacheIn(folder));
    const damage: readonly ((file: string) => void)[] = [
      (file) => truncateSync(file, 0),
      (file) => truncateSync(file, Math.floor(sound.length / 2)),
      (file) => writeFileSync(file, "{}"),
      (file) => writeFileSync(file, Buffer.from([0, 255, 254, 1])),
      ...[10, 40, 200, sound.length - 3].map((at) => (file: string) => {
        const bytes = Buffer.from(sound);
        bytes[at]! ^= 1;
        writeFileSync(file, bytes);
      }),
      (file) => {
        rmSync(file);
        mkdirSync(file);
      },
    ];
    for (const harm of damage) {
      harm(cacheIn(folder));
      const { status, stdout } = await check(folder, ["--cache"]);
      expect({ status, stdout }).toEqual({ status: plain.status, stdout: plain.stdout });
      if (harm !== damage.at(-1)) expect(readFileSync(cacheIn(folder)).equals(sound)).toBe(true);
    }
  });

  test("keeps nothing of what a fault in this program has cost", async () => {
    const folder = library({ "lone.finish": lone(40) });
    const rules = [
      {
        id: "throws-on-purpose",
        checks: {
          onRun: () => {
            throw new Error("on purpose");
          },
        },
      },
    ] as unknown as NonNullable<NonNullable<AnalystOptions["parts"]>["rules"]>;
    const faulty = await check(folder, ["--cache", "--fail-on", "hint"], { parts: { rules } });
    expect(faulty.stdout).toContain("internal-error");
    const read: string[] = [];
    const { stdout } = await check(folder, ["--cache"], { read });
    expect(read).toEqual(["lone.finish"]);
    expect(stdout).not.toContain("internal-error");
  });

  test("a file that is named is a cache or new", async () => {
    const folder = library({ "lone.finish": lone(40), "notes.txt": "mine\n" });
    for (const name of ["notes.txt", "lone.finish", "new.finish", ""]) {
      const { status, stderr } = await check(folder, ["lone.finish", "--cache-file", name]);
      expect(status).toBe(2);
      expect(stderr).toContain("which is not a cache of Finishwright. Name a file of its own");
    }
    expect(readFileSync(path.join(folder, "notes.txt"), "utf8")).toBe("mine\n");
    const made = await check(folder, ["--cache-file", "kept/cache"]);
    expect(made.stderr).not.toContain("cache");
    expect(readFileSync(path.join(folder, "kept/cache"), "utf8")).toMatch(
      /^finishwright check cache 1 \S+\n\{/u,
    );
    const input = await check(folder, ["-", "--cache"]);
    expect(input.stderr).toContain("standard input is none");
  });
});

test("caches lie where systems have them", () => {
  const folders = [
    cacheFolder({}, "linux", "/home/ada"),
    cacheFolder({ XDG_CACHE_HOME: "/var/ada" }, "linux", "/home/ada"),
    cacheFolder({ XDG_CACHE_HOME: "not/absolute" }, "linux", "/home/ada"),
    cacheFolder({}, "darwin", "/Users/ada"),
  ];
  expect(folders.map((folder) => folder.replaceAll("\\", "/"))).toEqual([
    "/home/ada/.cache/finishwright",
    "/var/ada/finishwright",
    "/home/ada/.cache/finishwright",
    "/Users/ada/Library/Caches/finishwright",
  ]);
  const windows = cacheFolder({ LOCALAPPDATA: "C:/Users/ada/AppData/Local" }, "win32", "C:/Users/ada");
  expect(windows.replaceAll("\\", "/")).toBe("C:/Users/ada/AppData/Local/finishwright");
});
