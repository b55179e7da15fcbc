/** What is to be looked at in a job, the gravest first. */
import type { Bench } from "../../../server/src/views/bench/model.ts";
import { link, prose, text } from "./html.ts";
import type { L10n } from "./l10n.ts";
import { mark } from "./marks.ts";

/** More are behind a line that says how many. */
const MOST_SHOWN = 8;

export function findingsHtml({ findings }: Bench<unknown>, l10n: L10n): string {
  if (findings.length === 0) return "";
  const rows = findings.map(
    ({ severity, headline, lines, where, at }, i) =>
      `<li class="finding" data-key="row ${i}">${mark(severity, l10n)}<div>${link(at, prose(headline), `finding ${i}`)}${where.length === 0 ? "" : ` <span class="second">${text(where.join(", "))}</span>`}${moreOf(lines, l10n)}</div></li>`,
  );
  const list = (some: readonly string[]): string => `<ul class="findings">${some.join("")}</ul>`;
  const rest = rows.slice(MOST_SHOWN);
  const more =
    rest.length === 0
      ? ""
      : `<details data-key="more"><summary>${text(l10n.t("{0} more", rest.length))}</summary>${list(rest)}</details>`;
  return `<h2>${text(l10n.t("What to look at"))} <span class="second">${text(countText(findings, l10n))}</span></h2>${list(rows.slice(0, MOST_SHOWN))}${more}`;
}

/** Folded, as many would bury the others. */
const moreOf = (lines: readonly string[], l10n: L10n): string =>
  lines.length === 0
    ? ""
    : `<details><summary>${text(l10n.t("why and what to do"))}</summary>${lines.map((line) => `<p class="second">${prose(line)}</p>`).join("")}</details>`;

/** `2 errors, 1 warning` */
function countText(findings: Bench<unknown>["findings"], l10n: L10n): string {
  const count = (severity: string): number => findings.filter((each) => each.severity === severity).length;
  const [errors, warnings, notes, hints] = ["error", "warning", "information", "hint"].map(count);
  return [
    errors === 1 ? l10n.t("1 error") : errors! > 1 ? l10n.t("{0} errors", errors!) : "",
    warnings === 1 ? l10n.t("1 warning") : warnings! > 1 ? l10n.t("{0} warnings", warnings!) : "",
    notes === 1 ? l10n.t("1 note") : notes! > 1 ? l10n.t("{0} notes", notes!) : "",
    hints === 1 ? l10n.t("1 hint") : hints! > 1 ? l10n.t("{0} hints", hints!) : "",
  ]
    .filter(Boolean)
    .join(", ");
}
