/** All rules by group, a line each, for a terminal; what there is to say on one is in `core/rules/explain.ts`. */
import { GROUP_TITLES } from "../core/rules/explain.ts";
import type { Rule, RuleGroup } from "../core/rules/rule.ts";
import { wrap } from "./display-text.ts";
import type { TextStyle } from "./findings-text.ts";

export function rulesText(rules: readonly Rule[], { colours, columns }: TextStyle): string {
  const names = Math.max(0, ...rules.map(({ id }) => id.length));
  return (Object.keys(GROUP_TITLES) as readonly RuleGroup[])
    .flatMap((group) => {
      const own = rules.filter((rule) => rule.group === group);
      if (own.length === 0) return [];
      const lines = own.flatMap(({ id, docs }) =>
        wrap(docs.summary, Math.max(30, columns - names - 4)).map(
          (line, i) => `  ${(i === 0 ? id : "").padEnd(names)}  ${line}`,
        ),
      );
      return [`${colours.bold(GROUP_TITLES[group])}\n${lines.join("\n")}\n`];
    })
    .join("\n");
}
