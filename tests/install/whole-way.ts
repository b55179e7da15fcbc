/**
 * `npm run test:whole-way`: a repository of 200 recipes with a package of shared ones, taken the whole way as its people
 * would: installed from the packed tarball, formatted, committed, checked as in continuous integration, changed in five
 * lines, told apart by what they mean, and made into a site that is read in a browser.
 *
 * What a changed line means is calculated by hand beside it. Ends with `N passed, N failed`, and with 1 if anything failed.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import { pathToFileURL } from "node:url";
import { AXE, violations } from "../editor/axe.ts";
import { launchBrowser, ROOT } from "../editor/editor.ts";
import { sarifProblems } from "../harness/sarif-schema.ts";

const COUNT = 200;
/** Every so many have a piece and a job of their own. */
const WITH_JOB = 10;

const folder = mkdtempSync(path.join(tmpdir(), "finishwright-whole-way-"));
const repository = path.join(folder, "library");

let [passed, failed] = [0, 0];
function expect(what: string, holds: boolean, seen: unknown = ""): void {
  console.log(`${holds ? "ok  " : "FAIL"} ${what}${holds ? "" : `: ${JSON.stringify(seen).slice(0, 2000)}`}`);
  if (holds) passed += 1;
  else failed += 1;
}
const same = (what: string, seen: unknown, wanted: unknown): void =>
  expect(what, JSON.stringify(seen) === JSON.stringify(wanted), { seen, wanted });

interface Ended {
  readonly status: number | null;
  readonly stdout: string;
}

function ended(program: string, args: readonly string[], cwd = repository): Ended {
  const { status, stdout, stderr, error } = spawnSync(program, args, {
    cwd,
    encoding: "utf8",
    maxBuffer: 1 << 28,
    shell: process.platform === "win32",
  });
  if (error) throw error;
  if (stderr !== "" && program !== "git" && program !== "npm") console.log(stderr);
  return { status, stdout };
}

function run(program: string, args: readonly string[], cwd = repository): string {
  const { status, stdout } = ended(program, args, cwd);
  if (status !== 0) throw new Error(`${program} ${args.join(" ")} ended with ${status}\n${stdout}`);
  return stdout;
}
const git = (...args: readonly string[]): string =>
  run("git", ["-c", "user.name=A", "-c", "user.email=a@example.org", "-c", "commit.gpgsign=false", ...args]);
const finishwright = (...args: readonly string[]): Ended =>
  ended("npx", ["--offline", "finishwright", ...args]);

const pack = (of: string): string => {
  const [{ filename }] = JSON.parse(
    run("npm", ["pack", "--json", "--ignore-scripts", "--pack-destination", folder], of),
  ) as [{ readonly filename: string }];
  return path.join(folder, filename);
};

function write(file: string, text: string): void {
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, text);
}

// ---------------------------------------------------------------------------------------------------------------
// The library

const SHARED: Readonly<Record<string, string>> = {
  "package.json": JSON.stringify({
    name: "@town-library/finishes",
    version: "1.0.0",
    author: "The town library",
    license: "CC-BY-4.0",
    files: ["*.finish"],
  }),
  "clears.finish": `material hall_clear "Hall clear" {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h to 24 h
  cure   21 days
  sheen  satin
  packs  1 L for 20.00
}

material office_clear "Office clear" {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 3 h to 24 h
  cure   21 days
  sheen  flat
  packs  1 L for 18.00
}
`,
  "room.finish": `shop mill_room "The mill" {
  air      20 C, 50 % RH
  hours    Mon to Fri 09:00 to 17:00
  labour   20.00 per h
  currency EUR
}
`,
};

const WOODS = ["beech", "maple", "birch", "ash"] as const;
const CLEARS = ["hall_clear", "office_clear"] as const;
const GRITS = ["120, 150", "120, 180", "150, 180"] as const;
const of = <T>(all: readonly T[], place: number): T => all[place % all.length]!;
const numbered = (place: number): string => String(place + 1).padStart(3, "0");
const fileOf = (place: number): string => `recipes/top-${numbered(place)}.finish`;

/** Not laid out as the formatter does, which is to do it. Jobs are a fortnight apart, so that each is planned by itself. */
function recipe(place: number): string {
  const number = numbered(place);
  const start = new Date(Date.UTC(2027, 0, 4 + 14 * Math.floor(place / WITH_JOB))).toISOString().slice(0, 10);
  const job = `
piece table_${number} "Table ${number}" {
  surface top {
    shape area 2 m2
    wood ${of(WOODS, place)}
    wear normal
  }
}
job tables_${number} "Tables ${number}" {
  piece table_${number}
  in mill_room
  start ${start}
  apply top_${number} to top
}
`;
  const hasJob = place % WITH_JOB === 0;
  return `use "pkg:@town-library/finishes/clears.finish"
${hasJob ? 'use "pkg:@town-library/finishes/room.finish"\n' : ""}
## Number ${number}: ${of(CLEARS, place).replace("_", " ")} for ${of(WOODS, place)}.
recipe top_${number} "Top ${number}" {
  for wood
  safety dust_mask
  step sand ${of(GRITS, place)}, takes 20 min
  step dust, takes 10 min
  layer ${of(CLEARS, place)} x 2, by pad, takes 15 min, between sand 220
  wait until cured
}
${hasJob ? job : ""}`;
}

function change(place: number, from: string | RegExp, to: string): void {
  const file = path.join(repository, fileOf(place));
  const text = readFileSync(file, "utf8");
  const changed = text.replace(from, to);
  if (changed === text) throw new Error(`${fileOf(place)} has no ${from}`);
  writeFileSync(file, changed);
}

interface Changed {
  readonly files: readonly {
    readonly after: string | null;
    readonly changes: readonly {
      readonly kind: string;
      readonly name: string;
      readonly figures: Readonly<Record<string, { readonly before: unknown; readonly after: unknown }>>;
    }[];
  }[];
}

// ---------------------------------------------------------------------------------------------------------------

async function readSite(site: string): Promise<void> {
  const pages = readdirSync(site, { recursive: true, encoding: "utf8" }).map((name) =>
    name.replaceAll("\\", "/"),
  );
  const html = pages.filter((name) => name.endsWith(".html"));
  same(
    "a page and a sheet for every recipe",
    [
      html.filter((name) => name.startsWith("recipes/")).length,
      html.filter((name) => name.startsWith("sheets/")).length,
    ],
    [COUNT, COUNT],
  );
  const dead = html.flatMap((name) =>
    [...readFileSync(path.join(site, name), "utf8").matchAll(/<(?:a|link) [^>]*?href="([^"#]+)"/gu)]
      .map(([, to]) => path.posix.join(path.posix.dirname(name), to!))
      .filter((to) => !pages.includes(to)),
  );
  same("every link of every page leads to something", dead, []);
  const browser = await launchBrowser();
  try {
    const page = await (await browser.newContext({ bypassCSP: true, reducedMotion: "reduce" })).newPage();
    const wrong: string[] = [];
    // Pages of a kind are made alike: of those of recipes every tenth, and all others.
    const looked = html.filter(
      (name) => !/^(?:recipes|sheets)\//u.test(name) || /^recipes\/top-\d\d1/u.test(name),
    );
    for (const name of looked) {
      await page.goto(pathToFileURL(path.join(site, name)).href);
      await page.evaluate(AXE);
      const found = await violations(page);
      wrong.push(...found.map((each) => `${name}: ${each}`));
    }
    same(`axe-core finds nothing on ${looked.length} pages`, wrong, []);
  } finally {
    await browser.close();
  }
}

try {
  const shared = path.join(folder, "shared");
  for (const [name, text] of Object.entries(SHARED)) write(path.join(shared, name), text);
  write(path.join(repository, "package.json"), '{ "name": "library", "private": true }\n');
  write(path.join(repository, ".gitignore"), "node_modules\n/site\n");
  for (let place = 0; place < COUNT; place++) write(path.join(repository, fileOf(place)), recipe(place));
  run("npm", ["install", "--offline", "--no-audit", "--no-fund", pack(ROOT), pack(shared)]);
  git("init", "-q", "-b", "trunk");

  same("format lays out what was typed", finishwright("format").status, 0);
  same("and then every file is as it should be", finishwright("format", "--check").status, 0);
  git("add", "-A");
  git("commit", "-q", "-m", "one");

  same(
    "check, as in continuous integration, finds no error",
    finishwright("check", "--format", "github").status,
    0,
  );
  same("no warning either", finishwright("check", "--quiet", "--fail-on", "warning").status, 0);
  same(
    "safe fixes and the formatter leave a clean tree",
    [finishwright("check", "--fix").status, finishwright("format").status, git("status", "--porcelain")],
    [0, 0, ""],
  );
  const sarif = finishwright("check", "--format", "sarif", "--fail-on", "hint").stdout;
  same("SARIF is what its schema asks for", sarifProblems(JSON.parse(sarif)), []);

  // One coat more.
  change(1, " x 2,", " x 3,");
  // 2 m2 become 3: two coats at 10 m2/L with a tenth to spare are 0.66 L of 0.44.
  change(10, "area 2 m2", "area 3 m2");
  // A week later.
  change(20, "start 2027-02-01", "start 2027-02-08");
  // Ten minutes more of hands, at 20.00 an hour.
  change(30, "takes 20 min", "takes 30 min");
  // A comment alone, which is on no sheet.
  change(4, "  step", "  # the same as ever\n  step");
  const { files } = JSON.parse(finishwright("diff", "--format", "json").stdout) as Changed;
  const changes = files.flatMap(({ after, changes: all }) =>
    all.map(({ kind, name, figures }) => ({ file: after, kind, name, figures })),
  );
  const told = changes.map(({ file, kind, name }) => `${file}: ${kind} ${name}`);
  same("the change is told where it means something, and a comment means nothing", told, [
    "recipes/top-002.finish: recipe top_002",
    "recipes/top-011.finish: piece table_011",
    "recipes/top-011.finish: job tables_011",
    "recipes/top-021.finish: job tables_021",
    "recipes/top-031.finish: recipe top_031",
    "recipes/top-031.finish: job tables_031",
  ]);
  const figures = (name: string) => changes.find((each) => each.name === name)?.figures ?? {};
  same("a coat more", figures("top_002").coats, { before: 2, after: 3 });
  same("a larger top takes more", figures("tables_011").litres, { before: 0.44, after: 0.66 });
  const days = Object.values(figures("tables_021")).map(
    ({ before, after }) => (Date.parse(`${after}Z`) - Date.parse(`${before}Z`)) / 86_400_000,
  );
  expect(
    "a week later everything is a week later, and nothing else is",
    days.length > 2 && days.every((each) => each === 7),
    figures("tables_021"),
  );
  // Cents are rounded each by itself: 33.33 and 36.67.
  const { hands_on_h: hands, labour_cost: labour } = figures("tables_031");
  const minutes = Math.round((Number(hands?.after) - Number(hands?.before)) * 60);
  const cents = Math.round((Number(labour?.after) - Number(labour?.before)) * 100);
  expect(
    "ten minutes of work at 20.00 an hour are 3.33",
    minutes === 10 && Math.abs(cents - 333) <= 1,
    figures("tables_031"),
  );
  git("checkout", "-q", "--", ".");

  const made = finishwright("site", "recipes", "-o", "site", "--title", "The reading room");
  same("the site is made", made.status, 0);
  await readSite(path.join(repository, "site"));
  same("and lies in nobody's way", git("status", "--porcelain"), "");
} catch (error) {
  expect("the whole way", false, error instanceof Error ? error.message : error);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
