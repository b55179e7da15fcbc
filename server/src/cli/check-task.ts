/** Looks into a few files by themselves, in a thread or here. */
import type { Fault } from "../core/internal-error.ts";
import type { AnalystOptions } from "../features/analyst.ts";
import type { Analyst } from "../features/types.ts";
import type { CheckAnswer, CheckTask } from "./check-model.ts";
import { dayOf } from "./load.ts";
import { resolveUse } from "./packages.ts";

export function checkTask(
  { files, configs, today }: CheckTask,
  createAnalyst: (options: AnalystOptions) => Analyst,
): CheckAnswer {
  const faults: Fault[] = [];
  const configOf = new Map(files.map((file, index) => [file.path, configs[index]!]));
  const analyst = createAnalyst({
    resolve: resolveUse,
    config: (file) => configOf.get(file)!,
    parts: dayOf(today),
    onFault: (fault) => faults.push(fault),
  });
  for (const { path, text } of files) analyst.setFile(path, text);
  const analysis = analyst.analysis();
  const found = files.map(({ path }) => {
    const isTied = analysis.usedBy(path).length > 1 || analysis.useLinks(path).length > 0;
    return isTied ? null : analysis.findings(path);
  });
  return { found, faults };
}
