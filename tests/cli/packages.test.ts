/** Recipes of installed packages: `use "pkg:NAME/FILE"`. Which package is meant is told by the folders that a test makes. */
import { mkdirSync, symlinkSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { packagePath } from "../../server/src/core/model/package-path.ts";
import { type CliInput, runCli } from "./run-cli.ts";

/** A clear, and a recipe with it in another file of the package. `covers` tells one version from another. */
const shared = (at: string, covers = 10): Readonly<Record<string, string>> => ({
  [`${at}/package.json`]: '{ "name": "shared-finishes", "version": "1.2.0" }',
  [`${at}/clears/hall.finish`]: `material hall_clear {\n  family waterborne polyurethane\n  covers ${covers} m2/L\n  recoat 2 h\n}\n`,
  [`${at}/tops.finish`]:
    'use "clears/hall.finish"\n\nrecipe clear_top {\n  safety dust_mask\n  step sand 180\n  step dust\n  layer hall_clear x 2\n}\n',
});

const job = (used: string): string => `use "${used}"

piece table {
  surface top {
    shape area 2 m2
    wood  maple
  }
}

job tables {
  piece table
  apply clear_top to top
}
`;

const REPOSITORY = { ".git/HEAD": "ref: refs/heads/trunk\n" };

/** Findings of a kind, and the litres of the one material. */
async function outcome(
  files: Readonly<Record<string, string>>,
  more: CliInput & { readonly file?: string } = {},
): Promise<{ readonly litres: number | undefined; readonly stdout: string; readonly stderr: string }> {
  const { file = "jobs/tables.finish", ...input } = more;
  const check = await runCli(["check", file, "--rule", "use-not-found"], { files, ...input });
  const totals = await runCli(["totals", file, "--format", "json"], { files, ...input });
  const parsed = JSON.parse(totals.stdout) as {
    readonly jobs: readonly { readonly materials: readonly { readonly litres: number }[] }[];
  };
  return {
    litres: parsed.jobs[0]?.materials[0]?.litres,
    // Without the breaks of lines.
    stdout: check.stdout.replace(/\s+/gu, " "),
    stderr: check.stderr,
  };
}

/** Two coats on 2 m2 at 10 m2/L, with a tenth to spare. */
const LITRES = 0.44;

describe("a package", () => {
  test("is found in node_modules of a folder above, and what it uses itself is read from it", async () => {
    const { litres, stdout, stderr } = await outcome({
      ...REPOSITORY,
      ...shared("node_modules/shared-finishes"),
      "jobs/tables.finish": job("pkg:shared-finishes/tops.finish"),
    });
    expect(stderr).toBe("");
    expect(stdout).toContain("Nothing found");
    expect(litres).toBeCloseTo(LITRES, 6);
  });

  test("of a scope, and the one that is nearest", async () => {
    const { litres } = await outcome({
      ...REPOSITORY,
      ...shared("node_modules/@town-library/finishes", 10),
      ...shared("jobs/node_modules/@town-library/finishes", 5),
      "jobs/tables.finish": job("pkg:@town-library/finishes/tops.finish"),
    });
    expect(litres).toBeCloseTo(2 * LITRES, 6);
  });

  test("is found below a project file that is not at the root", async () => {
    const { litres, stdout } = await outcome({
      ...REPOSITORY,
      ...shared("node_modules/shared-finishes"),
      "jobs/finishwright.config.json": "{}",
      "jobs/tables.finish": job("pkg:shared-finishes/tops.finish"),
    });
    expect(stdout).toContain("Nothing found");
    expect(litres).toBeCloseTo(LITRES, 6);
  });

  test("may be a link within the repository, as package managers and workspaces make them", async () => {
    const { litres } = await outcome(
      {
        ...REPOSITORY,
        ...shared("packages/shared"),
        "jobs/tables.finish": job("pkg:shared-finishes/tops.finish"),
      },
      {
        prepare: (folder) => {
          mkdirSync(path.join(folder, "node_modules"));
          symlinkSync("../packages/shared", path.join(folder, "node_modules/shared-finishes"));
        },
      },
    );
    expect(litres).toBeCloseTo(LITRES, 6);
  });

  test("is not followed out of the repository, neither upwards nor by a link", async () => {
    const above = await outcome(
      {
        ...shared("node_modules/shared-finishes"),
        "inner/.git/HEAD": "ref: refs/heads/trunk\n",
        "inner/jobs/tables.finish": job("pkg:shared-finishes/tops.finish"),
      },
      { file: "inner/jobs/tables.finish" },
    );
    expect(above.stdout).toContain("cannot be used: it does not exist");
    const linked = await outcome(
      {
        ...shared("outside/shared"),
        "inner/.git/HEAD": "ref: refs/heads/trunk\n",
        "inner/tables.finish": job("pkg:shared-finishes/tops.finish"),
      },
      {
        file: "inner/tables.finish",
        prepare: (folder) => {
          mkdirSync(path.join(folder, "inner/node_modules"));
          symlinkSync("../../outside/shared", path.join(folder, "inner/node_modules/shared-finishes"));
        },
      },
    );
    expect(linked.stdout).toContain("cannot be used: it is a link to what lies outside");
  });

  test("that is not installed is told with what to do", async () => {
    const { stdout } = await outcome({
      ...REPOSITORY,
      "jobs/tables.finish": job("pkg:shared-finishes/tops.finish"),
    });
    expect(stdout).toContain('The file "pkg:shared-finishes/tops.finish" cannot be used: it does not exist');
    expect(stdout).toContain("install `shared-finishes` with npm, or fix the name");
  });

  test("that nothing is named from is told as any file is", async () => {
    const { stdout } = await runCli(["check", "a.finish", "--fail-on", "hint"], {
      files: {
        ...REPOSITORY,
        ...shared("node_modules/shared-finishes"),
        "a.finish": 'use "pkg:shared-finishes/tops.finish"\n\nmaterial b {\n  family shellac\n}\n',
      },
    });
    expect(stdout).toContain('Nothing here names anything from "pkg:shared-finishes/tops.finish"');
  });

  test("is not among the recipes of a folder", async () => {
    const { stdout } = await runCli(["check"], {
      files: {
        ...REPOSITORY,
        ...shared("node_modules/shared-finishes"),
        "a.finish": "shop a {\n  crew 1\n}\n",
      },
    });
    expect(stdout).toContain("Nothing found in 1 file.");
  });
});

test.each([
  ["pkg:a/b.finish", { name: "a", file: "b.finish" }],
  ["pkg:@a/b/c/d.finish", { name: "@a/b", file: "c/d.finish" }],
  ["pkg:a\\b\\c.FINISH", { name: "a", file: "b/c.FINISH" }],
  ["pkg:a", undefined],
  ["pkg:a/", undefined],
  ["pkg:/a.finish", undefined],
  ["pkg:../a.finish", undefined],
  ["pkg:a/../../b.finish", undefined],
  ["pkg:a/./b.finish", undefined],
  ["pkg:.hidden/b.finish", undefined],
  ["pkg:node_modules/b.finish", undefined],
  ["pkg:@a/b.finish", undefined],
  ["pkg:a/package.json", undefined],
  ["pkg:a b/c.finish", undefined],
  ["a/b.finish", undefined],
])("%s", (written, path) => {
  expect(packagePath(written)).toEqual(path);
});

test("a name that says too little is told with an example", async () => {
  const { stdout } = await runCli(["check", "a.finish"], { files: { "a.finish": 'use "pkg:shared"\n' } });
  expect(stdout).toContain('"pkg:shared" does not say which file of which package');
});
