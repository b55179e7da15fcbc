/**
 * `npm run test:install`: packs the npm tarball, installs it into an empty folder without any network, and uses it as
 * somebody would who has only that: the program through `npx`, the library from both kinds of module, and its types.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";

const ROOT = path.resolve(import.meta.dirname, "../..");
const folder = mkdtempSync(path.join(tmpdir(), "finishwright-install-"));

/** What it writes; findings (status 1) are as good an answer as none. */
function run(program: string, args: readonly string[], cwd = folder): string {
  const { status, stdout, stderr, error } = spawnSync(program, args, {
    cwd,
    encoding: "utf8",
    shell: process.platform === "win32",
  });
  if (status === 0 || (status === 1 && program === "npx")) return stdout;
  throw error ?? new Error(`${program} ${args.join(" ")} ended with ${status}\n${stdout}${stderr}`);
}

let failed = 0;
function expect(what: string, holds: boolean, seen: unknown = ""): void {
  console.log(`${holds ? "passed" : "FAILED"}  ${what}${holds ? "" : `: ${String(seen)}`}`);
  if (!holds) failed += 1;
}

const TABLE =
  'material oil "Oil" {\n  family drying oil\n}\nrecipe oiled {\n  for   wood\n  layer oil x 2\n}\n';
const LIBRARY = `check({ "table.finish": ${JSON.stringify(TABLE)} }).length > 0 && totals("").length === 0 && plan("").length === 0`;

try {
  const [{ filename }] = JSON.parse(
    run("npm", ["pack", "--json", "--ignore-scripts", "--pack-destination", folder], ROOT),
  ) as [{ readonly filename: string }];
  writeFileSync(path.join(folder, "package.json"), '{ "name": "shop", "private": true }\n');
  run("npm", ["install", "--offline", "--no-audit", "--no-fund", path.join(folder, filename)]);
  const installed = path.join(folder, "node_modules");
  expect(
    "it brings no other package",
    readdirSync(installed).every((name) => name === "finishwright" || name.startsWith(".")),
    readdirSync(installed),
  );
  const { version } = createRequire(import.meta.url)(path.join(ROOT, "package.json")) as {
    readonly version: string;
  };
  const npx = (...args: readonly string[]): string => run("npx", ["--offline", "finishwright", ...args]);
  expect("npx finishwright --version", npx("--version").trim() === version);
  expect("npx finishwright --help", npx("--help").includes("check"));
  writeFileSync(path.join(folder, "table.finish"), TABLE);
  expect("check", npx("check", "table.finish").includes("table.finish"));
  expect(
    "totals of the samples that come along",
    npx("totals", path.join(installed, "finishwright/samples")).includes("Materials"),
  );
  writeFileSync(path.join(folder, "loose.finish"), TABLE.replaceAll("  ", " "));
  npx("format", "loose.finish");
  expect("format", readFileSync(path.join(folder, "loose.finish"), "utf8") === TABLE);
  expect("diff of two files", npx("diff", "table.finish", "table.finish").includes("No change of meaning"));
  expect("explain", npx("explain", "coat-over-wax").length > 100);

  writeFileSync(
    path.join(folder, "use.mjs"),
    `import { check, plan, totals } from "finishwright";\nconsole.log(${LIBRARY});\n`,
  );
  expect("import", run(process.execPath, ["use.mjs"]).trim() === "true");
  writeFileSync(
    path.join(folder, "use.cjs"),
    `const { check, plan, totals } = require("finishwright");\nconsole.log(${LIBRARY});\n`,
  );
  expect("require", run(process.execPath, ["use.cjs"]).trim() === "true");

  for (const ending of ["mts", "cts"]) {
    writeFileSync(
      path.join(folder, `use.${ending}`),
      'import { check, type Finding, type JobTotals, totals } from "finishwright";\n' +
        'export const found: readonly Finding[] = check("");\nexport const taken: readonly JobTotals[] = totals("");\n',
    );
    const tsc = path.join(ROOT, "node_modules/typescript/bin/tsc");
    const args = ["--noEmit", "--strict", "--module", "node16", "--moduleResolution", "node16"];
    run(process.execPath, [tsc, ...args, `use.${ending}`]);
    expect(`types for .${ending}`, true);
  }
} catch (error) {
  expect("the run", false, error instanceof Error ? error.message : error);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.exitCode = failed === 0 ? 0 : 1;
