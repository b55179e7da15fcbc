/** What there is to say on a rule, for a terminal. */
import type { Rule } from "../core/rules/rule.ts";
import { wrap } from "./display-text.ts";
import type { TextStyle } from "./findings-text.ts";

export function ruleText(rule: Rule, { colours, columns }: TextStyle): string {
  const { summary, why, remedy, sources } = rule.docs;
  const part = (title: string, text: string): string =>
    [colours.bold(title), ...wrap(text, columns - 2).map((line) => `  ${line}`)].join("\n");
  const example = (title: string, text: string): string =>
    [
      colours.bold(title),
      ...text
        .trim()
        .split("\n")
        .map((line) => `  ${line.replace("#!", "# ←")}`.trimEnd()),
    ].join("\n");
  return `${[
    `${colours.bold(rule.id)}  ${rule.severity}, ${rule.group}`,
    wrap(summary, columns).join("\n"),
    part("Why", why),
    part("What to do", remedy),
    part("Sources", sources.join("; ")),
    ...rule.failing.slice(0, 1).map(({ title, text }) => example(`Found: ${title}`, text)),
    ...rule.passing.slice(0, 1).map(({ title, text }) => example(`Not found: ${title}`, text)),
  ].join("\n\n")}\n`;
}

/** All rules by group, a line each. */
export function rulesText(rules: readonly Rule[], { colours, columns }: TextStyle): string {
  const groups = [...new Set(rules.map(({ group }) => group))].toSorted();
  const names = Math.max(0, ...rules.map(({ id }) => id.length));
  return groups
    .map((group) => {
      const lines = rules
        .filter((rule) => rule.group === group)
        .flatMap(({ id, docs }) =>
          wrap(docs.summary, Math.max(30, columns - names - 4)).map(
            (line, i) => `  ${(i === 0 ? id : "").padEnd(names)}  ${line}`,
          ),
        );
      return `${colours.bold(group)}\n${lines.join("\n")}\n`;
    })
    .join("\n");
}
