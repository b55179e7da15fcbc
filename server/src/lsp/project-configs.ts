/**
 * The configuration of the project that a file belongs to: the nearest `finishwright.config.json` above it.
 *
 * Looking for it means asking for it once for every folder on the way up, as far as the server may read, and again when
 * the client says that such a file came, changed or went. What is wrong in one is said once for every time that it is read; the rest of it counts.
 */
import type { FileId } from "../core/place.ts";
import { CONFIG_FILE_NAME, DEFAULT_CONFIG, type ProjectConfig, readConfig } from "../features/config.ts";
import type { FileReader } from "./file-reader.ts";
import type { Log } from "./guard.ts";
import { fileIn, foldersOf } from "./uri.ts";

export interface ProjectConfigs {
  /** What holds for a file, as far as it has been looked for. */
  of(file: FileId): ProjectConfig;
  /** Looks for what holds for a file. */
  look(file: FileId): Promise<void>;
  isConfig(file: FileId): boolean;
  /** Reads a configuration again; whether it says something else now. */
  reread(config: FileId): Promise<boolean>;
  /** Nothing that was found before counts: other folders may be read now. */
  forget(): void;
}

interface Found {
  readonly text: string;
  readonly config: ProjectConfig;
}

export const createProjectConfigs = (reader: FileReader, warn: Log): ProjectConfigs => {
  /** By folder; undefined where there is no configuration. */
  const found = new Map<FileId, Found | undefined>();
  const reading = new Map<FileId, Promise<void>>();

  const read = async (folder: FileId): Promise<void> => {
    const file = fileIn(folder, CONFIG_FILE_NAME);
    const content = await reader.read(file, "project");
    if (!("text" in content)) {
      if (content.isThere === true) warn(`${file}: ${content.reason}.`);
      found.set(folder, undefined);
      return;
    }
    if (content.text === found.get(folder)?.text) return;
    const { config, complaints } = readConfig(content.text);
    for (const complaint of complaints) warn(`${file}: ${complaint}`);
    found.set(folder, { text: content.text, config });
  };

  const readOnce = (folder: FileId): Promise<void> => {
    const running = reading.get(folder) ?? read(folder);
    reading.set(folder, running);
    return running;
  };

  return {
    of(file) {
      const folder = foldersOf(file).find((above) => found.get(above) !== undefined);
      return (folder === undefined ? undefined : found.get(folder)?.config) ?? DEFAULT_CONFIG;
    },
    async look(file) {
      for (const folder of foldersOf(file)) {
        if (reader.outOfReach(fileIn(folder, CONFIG_FILE_NAME), "project") !== undefined) return;
        await readOnce(folder);
        if (found.get(folder) !== undefined) return;
      }
    },
    forget() {
      found.clear();
      reading.clear();
    },
    isConfig: (file) => file.endsWith(`/${CONFIG_FILE_NAME}`),
    async reread(config) {
      const [folder] = foldersOf(config);
      if (folder === undefined) return false;
      const before = found.get(folder)?.text;
      await read(folder);
      return found.get(folder)?.text !== before;
    },
  };
};
