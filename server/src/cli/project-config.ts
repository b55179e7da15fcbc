/**
 * The project that a file belongs to: its folder, and its configuration, the nearest `finishwright.config.json` in the
 * file's folder or above. What is wrong in one is said once, whatever number of files it holds for.
 */
import path from "node:path";
import { CONFIG_FILE_NAME, DEFAULT_CONFIG, type ProjectConfig, readConfig } from "../features/config.ts";
import { labelFor } from "./find-files.ts";
import type { CliIo } from "./io.ts";
import { recipesIn } from "./permits.ts";

export interface ProjectConfigs {
  /** Looks for the configuration of a file; what is wrong in one that is read for the first time. */
  find(file: string): Promise<readonly string[]>;
  /** The configuration of a file that was looked for. */
  readonly of: (file: string) => ProjectConfig;
  /** The folder of the project of a file that was looked for. */
  readonly folder: (file: string) => string;
  /** The folder whose jobs share their shops with those of a file that was looked for: of the project file, else its own. */
  readonly folderOfJobs: (file: string) => string;
}

/** What holds in a folder. */
interface Project {
  readonly config: ProjectConfig;
  /** Where its project file is, or its version control; undefined where it has neither. */
  readonly root?: string;
  readonly hasFile: boolean;
}

export function createProjectConfigs(io: CliIo): ProjectConfigs {
  const byFolder = new Map<string, Project>();
  const of = (file: string): Project | undefined => byFolder.get(path.dirname(file));
  return {
    find: async (file) => {
      const problems: string[] = [];
      await lookUp(io, path.dirname(file), byFolder, problems);
      return problems;
    },
    of: (file) => of(file)?.config ?? DEFAULT_CONFIG,
    folder: (file) => of(file)?.root ?? path.dirname(file),
    folderOfJobs: (file) => {
      const project = of(file);
      return (project?.hasFile ? project.root : undefined) ?? path.dirname(file);
    },
  };
}

/** From the nearest folder that is known, or the top, down to this one. */
async function lookUp(
  io: CliIo,
  folder: string,
  byFolder: Map<string, Project>,
  problems: string[],
): Promise<void> {
  const unknown: string[] = [];
  let above: Project | undefined;
  for (let next = folder; above === undefined; next = path.dirname(next)) {
    above = byFolder.get(next);
    if (above === undefined) unknown.push(next);
    if (next === path.dirname(next)) above ??= { config: DEFAULT_CONFIG, hasFile: false };
  }
  for (const next of unknown.reverse()) {
    above = await projectIn(io, next, above, problems);
    byFolder.set(next, above);
  }
}

async function projectIn(io: CliIo, folder: string, above: Project, problems: string[]): Promise<Project> {
  const file = path.join(folder, CONFIG_FILE_NAME);
  if ((await io.files.kind(file)) === "file") {
    const read = await io.files.read(file, { ...recipesIn([folder]), purpose: "project" });
    const content = "text" in read ? readConfig(read.text) : undefined;
    const complaints = content?.complaints ?? ["reason" in read ? `it ${read.reason}.` : ""];
    problems.push(...complaints.map((complaint) => `\`${labelFor(io.cwd, file)}\`: ${complaint}`));
    return { config: content?.config ?? DEFAULT_CONFIG, root: folder, hasFile: true };
  }
  // A project file above holds for a folder under version control below it, and is the nearest there is.
  if (above.hasFile) return above;
  const isVersioned = (await io.files.kind(path.join(folder, ".git"))) !== "missing";
  return isVersioned ? { ...above, root: folder } : above;
}
