/** The pages of the rules in one file for the extension, which shows them from it (`client/src/rule-pages.ts`). */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { withoutFound } from "../../server/src/core/rules/found-here.ts";
import { ROOT } from "../bundles.ts";

const FOLDER = path.join(ROOT, "server/docs/rules");

/**
 * JSON: the text of each page by the name of its file, without what the server tells of it and without who wrote the file.
 * Pages of one group stand together, since packing finds what is the same only where it is near.
 */
export function packedRulePages(): string {
  const pages = readdirSync(FOLDER).map((name) => {
    const text = withoutFound(readFileSync(path.join(FOLDER, name), "utf8")).replace(WRITTEN_BY, "");
    return { name, text, place: `${GROUP.exec(text)?.[1] ?? ""}\n${name}` };
  });
  const inOrder = pages.toSorted((a, b) => (a.place < b.place ? -1 : 1));
  return JSON.stringify(Object.fromEntries(inOrder.map(({ name, text }) => [name, text])));
}

const WRITTEN_BY = /^<!-- Written by .*-->\n\n/u;
/** `Error · Safety` below the name of the rule. */
const GROUP = /^# .*\n\n.* · (.*)$/mu;
