/**
 * Examples of a rule's page: a recipe, and what is said of it. The page has the marked lines below the recipe, so that it can
 * be read as text; here they are taken back to the recipe, where an editor would mark them.
 */
import type { Block } from "./markdown.ts";

/** A stretch of a line, the line from 0, the columns from 0 in code units, `to` not included. */
export interface Mark {
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

export interface ExampleFinding {
  readonly severity: string;
  readonly rule: string;
  readonly headline: string;
  /** Why, and what to do. */
  readonly more: readonly string[];
  readonly marks: readonly Mark[];
}

export interface Example {
  readonly kind: "example";
  readonly lines: readonly string[];
  readonly findings: readonly ExampleFinding[];
}

export type Part = Exclude<Block, { readonly kind: "details" }> | Example | FoldedParts;

interface FoldedParts {
  readonly kind: "details";
  readonly summary: string;
  readonly blocks: readonly Part[];
}

/** Recipes with the findings that stand below them, all other blocks as they are. */
export function partsOf(blocks: readonly Block[]): readonly Part[] {
  const parts: Part[] = [];
  for (let at = 0; at < blocks.length; at += 1) {
    const block = blocks[at]!;
    if (block.kind === "details") parts.push({ ...block, blocks: partsOf(block.blocks) });
    else if (block.kind === "code" && block.language === "finish") {
      const findings: ExampleFinding[] = [];
      for (;;) {
        const found = findingOf(block.lines, blocks[at + 1], blocks[at + 2]);
        if (found === undefined) break;
        findings.push(found);
        at += 2;
      }
      parts.push({ kind: "example", lines: block.lines, findings });
    } else parts.push(block);
  }
  return parts;
}

const SAID = /^(Error|Warning|Information|Hint) `([a-z0-9-]+)`: (.+)$/u;

function findingOf(
  lines: readonly string[],
  excerpt: Block | undefined,
  quote: Block | undefined,
): ExampleFinding | undefined {
  if (excerpt?.kind !== "code" || excerpt.language !== "text" || quote?.kind !== "quote") return undefined;
  const [first = "", ...more] = quote.paragraphs;
  const said = SAID.exec(first);
  if (said === null) return undefined;
  const [, severity, rule, headline] = said;
  const marks = marksOf(lines, excerpt.lines);
  return { severity: severity!.toLowerCase(), rule: rule!, headline: headline!, more, marks };
}

/** ` 4 |   step dewax` and `   |   ^^^^^^^^^^` below it; `…` stands for lines between that are marked whole. */
function marksOf(lines: readonly string[], excerpt: readonly string[]): readonly Mark[] {
  const marks: Mark[] = [];
  let line = 0;
  let isCut = false;
  for (const row of excerpt) {
    const bar = row.indexOf("|");
    const number = row.slice(0, bar).trim();
    const behind = row.slice(bar + 2);
    if (number !== "") {
      const next = Number(number) - 1;
      if (isCut) for (let at = line + 1; at < next; at += 1) marks.push(wholeLine(lines, at));
      isCut = false;
      line = next;
    } else if (behind === "…") isCut = true;
    else marks.push({ line, from: behind.indexOf("^"), to: behind.length });
  }
  return marks;
}

const wholeLine = (lines: readonly string[], line: number): Mark => {
  const text = lines[line] ?? "";
  return { line, from: text.length - text.trimStart().length, to: text.trimEnd().length };
};
