/** Waits for changes of recipes on a real disk. */
import { type FSWatcher, watch } from "node:fs";
import path from "node:path";

export interface WatchedFolder {
  readonly folder: string;
  /** With everything below it. */
  readonly isDeep: boolean;
}

/** Told of changes in folders until it is closed. */
export interface Watch {
  /** Watches these as well; those that are watched already change nothing. One that cannot be watched is left out. */
  add(folders: readonly WatchedFolder[]): void;
  /** Whether a recipe or a project file has changed since this was asked last, as soon as one has; false when it is over. */
  next(): Promise<boolean>;
  close(): void;
}

/** Editors and version control write several files, or one in several goes. */
const QUIET_MS = 150;

const isRead = (name: string): boolean => name.endsWith(".finish") || name === "finishwright.config.json";

const isLeftOut = (file: string): boolean =>
  file.split(path.sep).some((part) => part === "node_modules" || part === ".git");

export function nodeWatch(): Watch {
  const watchers = new Map<string, FSWatcher>();
  let [isChanged, isClosed] = [false, false];
  let settle: ReturnType<typeof setTimeout> | undefined;
  let waiting: ((isMore: boolean) => void) | undefined;
  const answer = (): void => {
    if (!waiting || !(isChanged || isClosed)) return;
    const asked = waiting;
    waiting = undefined;
    isChanged = false;
    asked(!isClosed);
  };
  const changed = (file: string | null): void => {
    // Some systems do not say which file.
    if (file !== null && (isLeftOut(file) || !isRead(path.basename(file)))) return;
    clearTimeout(settle);
    settle = setTimeout(() => {
      isChanged = true;
      answer();
    }, QUIET_MS);
  };
  return {
    add: (folders) => {
      for (const { folder, isDeep } of folders) {
        const key = `${isDeep} ${folder}`;
        if (isClosed || watchers.has(key)) continue;
        try {
          const watcher = watch(folder, { recursive: isDeep }, (_, file) => changed(file));
          // A folder that is gone is found missing by the next check, which says so.
          watchers.set(
            key,
            watcher.on("error", () => changed(null)),
          );
        } catch {
          // It is gone, or none: the check says that better.
        }
      }
    },
    next: () =>
      new Promise((resolve) => {
        waiting = resolve;
        answer();
      }),
    close: () => {
      isClosed = true;
      clearTimeout(settle);
      for (const watcher of watchers.values()) watcher.close();
      answer();
    },
  };
}
