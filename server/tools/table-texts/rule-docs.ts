/** The explanations of the rules and what else their pages say, which are looked up where a page is shown. */
import { GROUP_TITLES } from "../../src/core/rules/explain.ts";
import { RULES } from "../../src/core/rules/registry.generated.ts";

export const ruleDocTexts = (): readonly string[] => [
  ...RULES.flatMap(({ docs: { summary, why, remedy }, failing, passing }) => [
    summary,
    why,
    remedy,
    ...[...failing, ...passing].map(({ title }) => title),
  ]),
  ...Object.values(GROUP_TITLES),
  ...PAGE_TEXTS,
];

/** As `explain.ts` writes them; the test of the pages in German holds that nothing of theirs is left out. */
const PAGE_TEXTS: readonly string[] = [
  "Error",
  "Warning",
  "Information",
  "Hint",
  "Why",
  "What to do",
  "Reported",
  "Not reported",
  "Sources",
  "Levels",
  "common practice, no source",
  "The editor offers a quick fix.",
  "No automatic fix.",
  "The product's label, its safety data sheet and local rules come first; no findings does not mean safe.",
  "No comment allows this finding, and a project cannot set it to another level.",
  "A single finding is allowed by a comment on the line above, `# allow {0}: reason`; a project sets the level in `finishwright.config.json`.",
  "Rules",
  "What Finishwright finds in a recipe. Every rule has a page with its reason, its sources and examples, which are also its tests.",
  "rule",
  "level",
  "says",
  "What goes over what",
  "A row for the layer below, a column for the layer over it; the columns have the numbers of the rows. A verdict is the average behaviour of two families, not of two products: a test patch and the labels decide.",
];
