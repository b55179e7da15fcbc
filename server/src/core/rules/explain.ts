/**
 * What a rule says of itself, as plain text for the terminal and as Markdown for its page: renderings of the rule
 * object, so that neither can say anything else than the rule does.
 */
import type { Severity } from "../findings.ts";
import { sentence } from "../sentence.ts";
import type { Rule, RuleExample, RuleGroup } from "./rule.ts";

/** What only running the rule shows. */
export interface RuleFacts {
  /** Whether at least one of its findings comes with a change that resolves it. */
  readonly offersFix: boolean;
  /** What is said of each failing example, in the order of the examples. */
  readonly reported: readonly (readonly ReportedFinding[])[];
}

export interface ReportedFinding {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
  /** The lines that it underlines, numbered, with the marker under them. */
  readonly marked: readonly string[];
}

export const GROUP_TITLES: Readonly<Record<RuleGroup, string>> = {
  language: "The text",
  layers: "Layer over layer",
  preparation: "Preparation",
  waits: "Waits and air",
  colour: "Colour",
  film: "Film and mixing",
  wear: "Wear and use",
  safety: "Safety",
  quantities: "Amounts",
  schedule: "Dates and cost",
  record: "The record of what was done",
  hygiene: "Lines that do nothing",
};

/** No text of ours says that something is safe. */
const CAUTION =
  "The product's label, its safety data sheet and local rules come first; no findings does not mean safe.";

/** An example as it is shown: without the marks of the tests. */
export const exampleText = (example: RuleExample): string =>
  example.text
    .split("\n")
    .map((line) => (line.includes("#!") ? line.slice(0, line.indexOf("#!")).trimEnd() : line))
    .join("\n")
    .trimEnd();

const fixSentence = (facts: RuleFacts): string =>
  facts.offersFix ? "The editor offers a quick fix." : "No automatic fix.";

const allowSentence = (rule: Rule): string =>
  rule.alwaysShown
    ? "No comment allows this finding, and a project cannot set it to another level."
    : `A single finding is allowed by a comment on the line above, \`# allow ${rule.id}: reason\`; a project sets the level in \`finishwright.config.json\`.`;

/** For the terminal, lines of at most `width` columns. */
export function explainText(rule: Rule, facts: RuleFacts, width = 88): string {
  const { docs } = rule;
  const section = (title: string, text: string): string => `${title}\n${wrap(text, width, "  ")}`;
  const examples = (
    title: string,
    list: readonly RuleExample[],
    reported: RuleFacts["reported"] = [],
  ): readonly string[] =>
    list.flatMap((example, index) => [
      `${title}: ${example.title}\n\n${indent(exampleText(example), "    ")}`,
      ...(reported[index] ?? []).map((finding) =>
        [
          ...finding.marked.map((line) => `    ${line}`),
          ...`${finding.severity} ${finding.rule}\n${finding.message}`
            .split("\n")
            .map((line) => wrap(line, width, "    ")),
        ].join("\n"),
      ),
    ]);
  return `${[
    `${rule.id} (${rule.severity})`,
    wrap(docs.summary, width),
    section("Why", docs.why),
    section("What to do", docs.remedy),
    section("Quick fix", fixSentence(facts)),
    ...examples("Reported", rule.failing, facts.reported),
    ...examples("Not reported", rule.passing),
    `Sources\n${docs.sources.map((source) => wrap(source, width, "    ", "  - ")).join("\n")}`,
    ...(rule.group === "safety" ? [wrap(CAUTION, width)] : []),
    wrap(allowSentence(rule).replaceAll("`", ""), width),
  ].join("\n\n")}\n`;
}

/** The page of a rule. */
export function explainMarkdown(rule: Rule, facts: RuleFacts): string {
  const { docs } = rule;
  const examples = (
    title: string,
    list: readonly RuleExample[],
    reported: RuleFacts["reported"] = [],
  ): readonly string[] =>
    list.length === 0
      ? []
      : [
          `## ${title}`,
          ...list.flatMap((example, index) => [
            `${example.title}:`,
            `\`\`\`finish\n${exampleText(example)}\n\`\`\``,
            ...(reported[index] ?? []).map(reportedMarkdown),
          ]),
        ];
  return `${[
    GENERATED,
    `# ${rule.id}`,
    `${sentence(rule.severity)} · ${GROUP_TITLES[rule.group]}`,
    docs.summary,
    "## Why",
    docs.why,
    "## What to do",
    docs.remedy,
    fixSentence(facts),
    ...(rule.group === "safety" ? [CAUTION] : []),
    ...examples("Reported", rule.failing, facts.reported),
    ...examples("Not reported", rule.passing),
    "## Sources",
    docs.sources.map((source) => `- ${source}`).join("\n"),
    "## Levels",
    allowSentence(rule),
  ].join("\n\n")}\n`;
}

/** The marked lines, and below them what is said, a line of the message on a line of its own. */
export const reportedMarkdown = ({ severity, rule, message, marked }: ReportedFinding): string =>
  ["```text", ...marked, "```", "", quoteMarkdown({ severity, rule, message })].join("\n");

/** What is said in a finding, as a quotation. */
export const quoteMarkdown = ({
  severity,
  rule,
  message,
}: Pick<ReportedFinding, "severity" | "rule" | "message">): string =>
  [`${sentence(severity)} \`${rule}\`: ${message.split("\n")[0]}`, ...message.split("\n").slice(1)]
    .map((line) => `> ${line}`)
    .join("\n>\n");

const GENERATED = "<!-- Written by server/tools/write-rule-pages.ts from the rule itself; do not edit. -->";

/** The page that lists all rules, and what goes over what. */
export function indexMarkdown(rules: readonly Rule[], layerMatrix: string): string {
  const groups = (Object.keys(GROUP_TITLES) as readonly RuleGroup[]).flatMap((group) => {
    const own = rules.filter((rule) => rule.group === group).sort((a, b) => (a.id < b.id ? -1 : 1));
    if (own.length === 0) return [];
    const rows = own.map(
      (rule) =>
        `| [\`${rule.id}\`](${rule.id}.md) | ${rule.severity} | ${rule.docs.summary.replaceAll("|", "\\|")} |`,
    );
    return [
      `## ${GROUP_TITLES[group]}`,
      ["| rule | level | says |", "| --- | --- | --- |", ...rows].join("\n"),
    ];
  });
  return `${[
    GENERATED,
    "# Rules",
    "What Finishwright finds in a recipe. Every rule has a page with its reason, its sources and examples, which are also its tests.",
    ...groups,
    "## What goes over what",
    "A row for the layer below, a column for the layer over it; the columns have the numbers of the rows. A verdict is the average behaviour of two families, not of two products: a test patch and the labels decide.",
    layerMatrix.trim(),
  ].join("\n\n")}\n`;
}

const indent = (text: string, by: string): string => text.replace(/^(?=.)/gmu, by);

/** Breaks a paragraph at spaces. `first` stands before the first line, `before` before the others. */
function wrap(text: string, width: number, before = "", first = before): string {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/u)) {
    if (line !== "" && before.length + line.length + 1 + word.length > width) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.map((it, index) => (index === 0 ? first : before) + it).join("\n");
}
