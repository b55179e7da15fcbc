/** Many sheets in one file: each has its own findings, and none looks through those of all the others again. */
import { expect, test } from "vitest";
import { parseFile } from "../../grammar/src/parse.ts";
import { createChecker } from "../../server/src/core/check.ts";
import { programFile } from "../../server/src/core/model/program.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { sheetsOf } from "../../server/src/views/sheet/sheet.ts";
import { analyse } from "../harness/check-text.ts";

const RECIPES = 40;
const TEXT = Array.from(
  { length: RECIPES },
  (_, idx) => `recipe r${idx} {\n  layer nobody_knows_${idx}\n}\n`,
).join("");

test("every recipe's sheet has the findings of its own lines and no others", () => {
  const sheets = analyse({ "a.finish": TEXT }).sheets("a.finish");
  expect(sheets).toHaveLength(RECIPES);
  for (const [idx, { name, findings }] of sheets.entries()) {
    expect(name).toBe(`r${idx}`);
    expect(findings.map(({ rule }) => rule)).toContain("unknown-name");
    expect(findings.every(({ at }) => at.span.start >= TEXT.indexOf(`recipe r${idx} `))).toBe(true);
    const next = TEXT.indexOf(`recipe r${idx + 1} `);
    expect(findings.every(({ at }) => next < 0 || at.span.start < next)).toBe(true);
  }
});

test("findings are asked for once for all sheets, and once worked out are the same", () => {
  const file = programFile("a.finish", parseFile(TEXT), (_, path) => path);
  const checker = createChecker({ files: new Map([["a.finish", file]]), absent: new Map() });
  let asked = 0;
  const findings = (): readonly FileFinding[] => {
    asked += 1;
    return [];
  };
  expect(sheetsOf(checker, "a.finish", findings)).toHaveLength(RECIPES);
  expect(asked).toBe(1);
  const analysis = analyse({ "a.finish": TEXT });
  expect(analysis.findings("a.finish")).toBe(analysis.findings("a.finish"));
});
