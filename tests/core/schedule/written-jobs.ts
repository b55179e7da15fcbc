/** Every job of the samples, the corpus and the recipes written blind, as the planner is asked for it. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { planWork } from "../../../server/src/core/schedule/plan.ts";
import type { Schedule, ScheduleInput } from "../../../server/src/core/schedule/types.ts";
import { createAnalyst } from "../../../server/src/features/analyst.ts";
import { shareOf } from "../../harness/share.ts";

/** From here. */
const WRITTEN = ["../../../samples/", "../../corpus/", "../../blind/"];

/**
 * By the place of its file; jobs that nothing is to be done for are left out. Of the files of each folder one of so many is
 * looked at, see `shareOf`.
 */
export function writtenJobs(
  folders: readonly string[] = WRITTEN,
  oneOf = 1,
): readonly (readonly [string, ScheduleInput])[] {
  const jobs: [string, ScheduleInput][] = [];
  for (const folder of folders)
    readGroups(
      [folder],
      (place, input) => {
        if (input.chains.length > 0) jobs.push([place, input]);
        return planWork({ chains: [] });
      },
      oneOf,
    );
  return jobs;
}

/** The jobs that share a shop, as the planner is asked for all of them together. */
export function writtenShops(
  ...folders: readonly (readonly [folder: string, groups?: RegExp])[]
): readonly (readonly [string, ScheduleInput])[] {
  const shops: [string, ScheduleInput][] = [];
  for (const folder of folders)
    readGroups(folder, (place, input) => {
      if (input.jobs !== undefined) shops.push([place, input]);
      return planWork(input);
    });
  return shops;
}

/** Checks files of each group of a folder together, with what they use, and with this planner. */
function readGroups(
  [folder, groups = /^/u]: readonly [folder: string, groups?: RegExp],
  plan: (place: string, input: ScheduleInput) => Schedule,
  oneOf = 1,
): void {
  const root = fileURLToPath(new URL(folder, import.meta.url));
  const names = readdirSync(root, { recursive: true, encoding: "utf8" }).filter(
    (name) => name.endsWith(".finish") && groups.test(dirname(name)),
  );
  for (const group of new Set(names.map((name) => dirname(name)))) {
    const all = names.filter((name) => dirname(name) === group).toSorted();
    const files = shareOf(all, oneOf);
    const place = `${folder.split("/").at(-2)}/${group}`;
    const analyst = createAnalyst({
      resolve: (from, path) => new URL(path, `file:///${from}`).pathname.slice(1),
      parts: { plan: (input) => plan(place, input) },
    });
    const read = (name: string): void => analyst.setFile(name, readFileSync(`${root}${name}`, "utf8"));
    files.forEach(read);
    for (let used = analyst.missingFiles(); used.length > 0; used = analyst.missingFiles())
      for (const file of used)
        if (all.includes(file)) read(file);
        else analyst.setAbsent(file, "there is no such file");
    const analysis = analyst.analysis();
    for (const name of files) analysis.findings(name);
  }
}
