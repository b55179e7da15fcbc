/**
 * Finishwright as a library, bundled into `library.cjs`. What it offers is told in `server/library.d.cts`, which is what its
 * users' compilers read; the functions here have the types of that file, so that the two cannot drift apart.
 */
import path from "node:path/posix";
import { applyChanges, formatFile } from "../../../grammar/src/format.ts";
import { parseFile } from "../../../grammar/src/parse.ts";
import type * as library from "../../library.d.cts";
import { readMoment } from "../core/measure/iso-dates.ts";
import { isPackagePath } from "../core/model/package-path.ts";
import { printedTotals } from "../core/totals/print.ts";
import { createAnalyst } from "../features/analyst.ts";
import type { Analysis } from "../features/types.ts";
import { findingsJson } from "../reports/findings-json.ts";
import { scheduleJson } from "../reports/schedule-text.ts";

/** A text without a name is called so. */
const NAMELESS = "recipe.finish";

export const check: typeof library.check = (recipes, options) => {
  const { analysis, names } = analysed(recipes, options);
  const reported = (file: string) => ({
    label: file,
    text: analysis.text(file) ?? "",
    findings: analysis.findings(file),
  });
  return read<readonly library.Finding[]>(findingsJson({ files: names.map(reported), other: reported }));
};

export const totals: typeof library.totals = (recipes, options) => {
  const { analysis, names } = analysed(recipes, options);
  return names.flatMap((file) =>
    analysis.jobs(file).map((result) => ({ file, ...printedTotals(result.totals) })),
  );
};

export const plan: typeof library.plan = (recipes, options) => {
  const { analysis, names } = analysed(recipes, options);
  return names.flatMap((file) => {
    const { jobs } = read<{ readonly jobs: readonly Omit<library.JobPlan, "file">[] }>(
      scheduleJson(analysis.jobs(file)),
    );
    return jobs.map((job) => ({ file, ...job }));
  });
};

export const format: typeof library.format = (text) =>
  applyChanges(text, formatFile(parseFile(text)).changes);

/** What the reports print is what a library gives, so that there is one shape of each. */
const read = <T>(json: string): T => JSON.parse(json) as T;

function analysed(
  recipes: library.Recipes,
  { today }: library.Options = {},
): {
  readonly analysis: Analysis;
  readonly names: readonly string[];
} {
  const given = typeof recipes === "string" ? { [NAMELESS]: recipes } : recipes;
  const texts = Object.entries(given).map(([name, text]) => [path.normalize(name), text] as const);
  const analyst = createAnalyst({
    // A recipe of a package is passed by that very name.
    resolve: (from, used) =>
      isPackagePath(used) ? path.normalize(used) : path.join(path.dirname(from), used.replaceAll("\\", "/")),
    ...(today === undefined ? {} : { parts: { today: momentOf(today) } }),
  });
  for (const [name, text] of texts) analyst.setFile(name, text);
  for (const missing of analyst.missingFiles())
    analyst.setAbsent(missing, "it is not among the texts that were given");
  return { analysis: analyst.analysis(), names: texts.map(([name]) => name) };
}

/** As `--today` takes it. */
function momentOf(today: string): string {
  const moment = readMoment(today);
  if (moment === undefined)
    throw new RangeError("`today` is year-month-day, such as 2027-03-10, or 2027-03-10T14:00.");
  return moment;
}
