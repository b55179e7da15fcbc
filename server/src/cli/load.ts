/**
 * Reads the files that were asked for, and those that they use, into one analysis.
 *
 * A used file that cannot be read is a finding on its `use` line; a file that was asked for and cannot be read is a
 * problem of the run.
 */
import path from "node:path";
import type { Analysis } from "../features/types.ts";
import { type AskedFile, findFiles, labelFor } from "./find-files.ts";
import { type CliIo, warn } from "./io.ts";
import { createProjectConfigs } from "./project-config.ts";

export interface Loaded {
  readonly analysis: Analysis;
  /** Only those that could be read. */
  readonly asked: readonly AskedFile[];
  /** Whether every path led to files, and every file, configuration included, could be read. */
  readonly complete: boolean;
  /** How reports name a file, asked for or used. */
  readonly label: (file: string) => string;
}

/** Loads what the paths lead to. What went wrong has been said on stderr. */
export async function load(io: CliIo, paths: readonly string[]): Promise<Loaded> {
  const found = await findFiles(io.files, io.cwd, paths);
  const configs = createProjectConfigs(io);
  const analyst = io.createAnalyst({
    resolve: (from, used) => path.resolve(path.dirname(from), used),
    config: configs.of,
    ...(io.onFault ? { onFault: io.onFault } : {}),
  });
  const asked: AskedFile[] = [];
  const problems = [...found.problems];
  for (const file of found.files) {
    const read = await io.files.read(file.path);
    if ("text" in read) {
      analyst.setFile(file.path, read.text);
      asked.push(file);
      problems.push(...(await configs.find(file.path)));
    } else {
      problems.push(`\`${file.label}\` ${read.reason}.`);
    }
  }
  for (let missing = analyst.missingFiles(); missing.length > 0; missing = analyst.missingFiles()) {
    for (const file of missing) {
      const read = await io.files.read(file);
      if ("text" in read) analyst.setFile(file, read.text);
      else analyst.setAbsent(file, `it ${read.reason}`);
    }
  }
  for (const problem of problems) warn(io, problem);
  const labels = new Map(asked.map((file) => [file.path, file.label]));
  return {
    analysis: analyst.analysis(),
    asked,
    complete: problems.length === 0,
    label: (file) => labels.get(file) ?? labelFor(io.cwd, file),
  };
}
