/** The sample files, read once; used files are supplied along with each. */
import { readdirSync, readFileSync } from "node:fs";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { Analyst } from "../../server/src/features/types.ts";
import { plan } from "./planner.ts";

const folder = new URL("../../samples/", import.meta.url);

export const sampleNames: readonly string[] = readdirSync(folder)
  .filter((name) => name.endsWith(".finish"))
  .sort();

export const sampleText = (name: string): string => readFileSync(new URL(name, folder), "utf8");

/** An analyst that has all samples. */
export function sampleAnalyst(): Analyst {
  const analyst = createAnalyst({ resolve: (_, path) => path, plan });
  for (const name of sampleNames) analyst.setFile(name, sampleText(name));
  return analyst;
}
