/** What is to be looked at in a job, the gravest first. */
import type { Bench } from "../../../server/src/views/bench/model.ts";
import { link, prose } from "./html.ts";
import { mark } from "./marks.ts";

/** More are behind a line that says how many. */
const MOST_SHOWN = 12;

export function findingsHtml({ findings }: Bench<unknown>): string {
  if (findings.length === 0) return "";
  const rows = findings.map(
    ({ severity, headline, lines, at }, i) =>
      `<li class="finding" data-key="row ${i}">${mark(severity)}<div>${link(at, prose(headline), `finding ${i}`)}${moreOf(lines)}</div></li>`,
  );
  const list = (some: readonly string[]): string => `<ul class="findings">${some.join("")}</ul>`;
  const rest = rows.slice(MOST_SHOWN);
  const more =
    rest.length === 0
      ? ""
      : `<details data-key="more"><summary>${rest.length} more</summary>${list(rest)}</details>`;
  return `<h2>What to look at <span class="second">${countText(findings)}</span></h2>${list(rows.slice(0, MOST_SHOWN))}${more}`;
}

/** Folded, as many would bury the others. */
const moreOf = (lines: readonly string[]): string =>
  lines.length === 0
    ? ""
    : `<details><summary>why and what to do</summary>${lines.map((line) => `<p class="second">${prose(line)}</p>`).join("")}</details>`;

/** `2 errors, 1 warning` */
function countText(findings: Bench<unknown>["findings"]): string {
  const names = [
    ["error", "errors"],
    ["warning", "warnings"],
    ["information", "notes"],
    ["hint", "hints"],
  ] as const;
  return names
    .flatMap(([severity, several]) => {
      const count = findings.filter((each) => each.severity === severity).length;
      const one = severity === "information" ? "note" : severity;
      return count === 0 ? [] : [`${count} ${count === 1 ? one : several}`];
    })
    .join(", ");
}
