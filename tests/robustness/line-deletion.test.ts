/**
 * Deleting any single line of any sample crashes nothing, and costs only what depends on the declaration that was
 * damaged: every other declaration keeps its findings, word for word.
 */
import { describe, expect, it } from "vitest";
import { parseFile } from "../../grammar/src/parse.ts";
import { tokensOfBody } from "../../grammar/src/tokens-of.ts";
import type { DeclarationTree, FileTree } from "../../grammar/src/tree.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { Analyst } from "../../server/src/features/types.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { plan } from "../harness/planner.ts";
import { sampleNames, sampleText } from "../harness/samples.ts";
import { shareOf } from "../harness/share.ts";

const declarations = (tree: FileTree): readonly DeclarationTree[] =>
  tree.pieces.filter((piece): piece is DeclarationTree => piece.kind === "declaration");

/** Findings by declaration key, positions relative to the declaration. */
function byDeclaration(
  tree: FileTree,
  findings: readonly FileFinding[],
): ReadonlyMap<string, readonly string[]> {
  const map = new Map<string, string[]>();
  for (const declaration of declarations(tree)) {
    // Whether a `use` line is of use depends on every line of the file, so that hint may come and go.
    const inside = findings.filter(
      (f) =>
        !(f.rule === "unused-name" && declaration.body.syntax.kind === "use") &&
        f.span.start >= declaration.offset &&
        f.span.start < declaration.offset + declaration.length,
    );
    map.set(
      declaration.key,
      inside.map(
        (f) =>
          `${f.span.start - declaration.offset}-${f.span.end - declaration.offset} ${f.rule} ${f.message}`,
      ),
    );
  }
  return map;
}

/** Words of a declaration's text: whoever mentions the damaged one's name, over others too, depends on it. */
function dependents(all: readonly DeclarationTree[], damaged: DeclarationTree): ReadonlySet<string> {
  const nameOf = (d: DeclarationTree) => d.body.syntax.name?.text;
  const keys = new Set([damaged.key]);
  const names = new Set([nameOf(damaged)]);
  for (let grew = true; grew; ) {
    grew = false;
    for (const declaration of all) {
      const mentions = tokensOfBody(declaration.body).some((t) => t.kind === "word" && names.has(t.text));
      // What a job brings may stand on the lines of its recipes, and whoever uses a changed file depends on it.
      if (!keys.has(declaration.key) && (mentions || damaged.body.syntax.kind === "use")) {
        keys.add(declaration.key);
        names.add(nameOf(declaration));
        grew = true;
      }
    }
  }
  const dependentJobs = all.filter((d) => keys.has(d.key) && d.body.syntax.kind === "job");
  for (const job of dependentJobs) {
    for (const recipe of all.filter((d) => d.body.syntax.kind === "recipe")) {
      if (tokensOfBody(job.body).some((t) => t.kind === "word" && t.text === nameOf(recipe)))
        keys.add(recipe.key);
    }
  }
  return keys;
}

function analystWithout(name: string): Analyst {
  const analyst = createAnalyst({ resolve: (_, path) => path, plan });
  for (const other of sampleNames) if (other !== name) analyst.setFile(other, sampleText(other));
  return analyst;
}

describe.each(sampleNames)("%s", (name) => {
  const text = sampleText(name);
  const lines = text.split("\n");
  const looked = new Set(shareOf([...lines.keys()], 12));
  const tree = parseFile(text);
  const analyst = analystWithout(name);
  analyst.setFile(name, text);
  const before = byDeclaration(tree, analyst.analysis().findings(name));

  it("keeps the findings of undamaged declarations", () => {
    let offset = 0;
    for (const [index, line] of lines.entries()) {
      const start = offset;
      offset += line.length + 1;
      if (!looked.has(index)) continue;
      const damagedText = [...lines.slice(0, index), ...lines.slice(index + 1)].join("\n");
      const damagedTree = parseFile(damagedText);
      analyst.setFile(name, damagedText);
      const analysis = analyst.analysis();
      const after = byDeclaration(damagedTree, analysis.findings(name));
      analysis.totals(name);
      analysis.symbols(name);
      analysis.hover(name, start);
      analysis.completions(name, start);
      const damaged = declarations(tree).find((d) => start >= d.offset && start < d.offset + d.length);
      if (!damaged) continue;
      const touched = dependents(declarations(tree), damaged);
      for (const [key, findings] of before) {
        if (!touched.has(key))
          expect(after.get(key), `line ${index + 1} of ${name} deleted; ${key}`).toEqual(findings);
      }
    }
  });
});
