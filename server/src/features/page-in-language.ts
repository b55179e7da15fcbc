/**
 * A page on rules in the language of the client. Pages are written in English; what a paragraph, a heading, an item or a cell
 * says is looked up as it stands, and what is found in an example is told anew by the rules themselves, in English too where the
 * page has but a mark for it. So no page has a second copy, and what has no text in the language stays English.
 */
import { spokenLanguage, translated } from "../../../grammar/src/translate.ts";
import { quoteMarkdown, reportedMarkdown } from "../core/rules/explain.ts";
import { FOUND_HERE } from "../core/rules/found-here.ts";
import { findingsOfExample, reportedIn } from "./rule-facts.ts";

/** Markdown in, Markdown out. Levels at the head of a finding stay English: whoever shows the page reads them. */
export function pageInLanguage(packed: string): string {
  const markdown = packed.includes(FOUND_HERE) ? withFound(packed) : packed;
  if (spokenLanguage() === "en") return markdown;
  const rule = /^# ([a-z-]+)$/mu.exec(markdown)?.[1] ?? "";
  const blocks = blocksOf(markdown);
  let quotes: readonly string[] = [];
  const said = blocks.map((block, at) => {
    if (block.startsWith(RECIPE)) {
      quotes = quotesOf(block, quotesBehind(blocks, at));
      return block;
    }
    if (block.startsWith("```")) return block;
    if (block.startsWith(">")) {
      const [quote = block, ...rest] = quotes;
      quotes = rest;
      return quote;
    }
    return block
      .split("\n")
      .map((line) => lineSaid(line, rule))
      .join("\n");
  });
  return `${said.join("\n\n")}\n`;
}

const RECIPE = "```finish\n";

/** With what is found in each recipe where the mark for it stands. */
function withFound(markdown: string): string {
  const blocks = blocksOf(markdown);
  const told = blocks.map((block, at) => {
    if (block !== FOUND_HERE) return block;
    const text = recipeIn(blocks[at - 1]!);
    return findingsOfExample(text)
      .map((finding) => reportedMarkdown(reportedIn(text, finding)))
      .join("\n\n");
  });
  return `${told.filter((block) => block !== "").join("\n\n")}\n`;
}

/** The text of a recipe in its fence. */
const recipeIn = (block: string): string => `${block.slice(RECIPE.length, block.lastIndexOf("\n"))}\n`;

/** Parts of a page with blank lines between; a fence is one part, whatever is in it. */
function blocksOf(markdown: string): readonly string[] {
  const blocks: string[] = [];
  let lines: string[] = [];
  let isFenced = false;
  for (const line of markdown.trimEnd().split("\n")) {
    if (line.startsWith("```")) isFenced = !isFenced;
    if (line !== "" || isFenced) lines.push(line);
    else {
      blocks.push(lines.join("\n"));
      lines = [];
    }
  }
  return [...blocks, lines.join("\n")];
}

/** How many findings a page tells of the recipe before them. */
function quotesBehind(blocks: readonly string[], recipe: number): number {
  const rest = blocks.slice(recipe + 1);
  const end = rest.findIndex((block) => !block.startsWith(">") && !block.startsWith("```text\n"));
  return rest.slice(0, end < 0 ? rest.length : end).filter((block) => block.startsWith(">")).length;
}

/** None where they are not those of the page: then the page's own stay. */
function quotesOf(block: string, count: number): readonly string[] {
  if (count === 0) return [];
  const findings = findingsOfExample(recipeIn(block));
  return findings.length === count ? findings.map(quoteMarkdown) : [];
}

function lineSaid(line: string, rule: string): string {
  if (line.startsWith("|")) {
    const cells = line.split(/(?<!\\)\|/u);
    return cells.map((cell) => cell.replace(/\S(?:.*\S)?/u, (text) => textSaid(text, rule))).join("|");
  }
  return line.replace(/^((?:#+|-) )?(.*)$/u, (_, sign: string | undefined, text: string) =>
    [sign ?? "", textSaid(text, rule)].join(""),
  );
}

/** `Warning · Waits and air` is two texts, and the title of an example has a colon behind it; a text may name the rule. */
function textSaid(text: string, rule: string): string {
  const said = whole(text, rule);
  if (said !== text) return said;
  if (text.endsWith(":")) return `${whole(text.slice(0, -1), rule)}:`;
  return text.includes(" · ")
    ? text
        .split(" · ")
        .map((part) => whole(part, rule))
        .join(" · ")
    : text;
}

function whole(text: string, rule: string): string {
  const said = translated(text);
  if (said !== text || rule === "") return said;
  return translated(text.replaceAll(rule, "{0}")).replaceAll("{0}", rule);
}
