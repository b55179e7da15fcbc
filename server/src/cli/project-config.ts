/**
 * The configuration of the project that a file belongs to: the nearest `finishwright.config.json` in its folder or
 * above. What is wrong in it is said once, whatever number of files it holds for.
 */
import path from "node:path";
import { CONFIG_FILE_NAME, DEFAULT_CONFIG, type ProjectConfig, readConfig } from "../features/config.ts";
import { labelFor } from "./find-files.ts";
import type { CliIo } from "./io.ts";

export interface ProjectConfigs {
  /** Looks for the configuration of a file; what is wrong in one that is read for the first time. */
  find(file: string): Promise<readonly string[]>;
  /** The configuration of a file that was looked for. */
  readonly of: (file: string) => ProjectConfig;
}

export function createProjectConfigs(io: CliIo): ProjectConfigs {
  const byFolder = new Map<string, ProjectConfig>();
  return {
    find: async (file) => {
      const problems: string[] = [];
      await configIn(io, path.dirname(file), byFolder, problems);
      return problems;
    },
    of: (file) => byFolder.get(path.dirname(file)) ?? DEFAULT_CONFIG,
  };
}

async function configIn(
  io: CliIo,
  folder: string,
  byFolder: Map<string, ProjectConfig>,
  problems: string[],
): Promise<ProjectConfig> {
  const known = byFolder.get(folder);
  if (known) return known;
  const file = path.join(folder, CONFIG_FILE_NAME);
  const above = path.dirname(folder);
  let config = DEFAULT_CONFIG;
  if ((await io.files.kind(file)) === "file") {
    const read = await io.files.read(file);
    const content = "text" in read ? readConfig(read.text) : undefined;
    const complaints = content?.complaints ?? ["reason" in read ? `it ${read.reason}.` : ""];
    problems.push(...complaints.map((complaint) => `\`${labelFor(io.cwd, file)}\`: ${complaint}`));
    config = content?.config ?? DEFAULT_CONFIG;
  } else if (above !== folder) {
    config = await configIn(io, above, byFolder, problems);
  }
  byFolder.set(folder, config);
  return config;
}
