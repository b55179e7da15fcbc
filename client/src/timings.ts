/**
 * What the output channel tells of how things go: versions when it starts, how many recipes were listed, and which answers
 * took long.
 */

/** An answer that takes longer is worth a line, ms. */
const LONG_MS = 1000;

/** Kept back by the server until there is news, so that they say nothing of speed. */
const KEPT_BACK: ReadonlySet<string> = new Set(["workspace/diagnostic"]);

/** `420 ms`, `1.3 s` */
export const durationText = (ms: number): string =>
  ms < LONG_MS ? `${Math.round(ms)} ms` : `${(ms / 1000).toFixed(1)} s`;

/** A line for an answer that took long, by its method of the protocol. */
export const slowText = (method: string, ms: number): string | undefined =>
  ms < LONG_MS || KEPT_BACK.has(method) ? undefined : `${method} took ${durationText(ms)}.`;

export interface Started {
  readonly version: string;
  readonly editor: string;
  readonly editorVersion: string;
  readonly folders: number;
  readonly ms: number;
}

/** `Finishwright 0.1.0 in Visual Studio Code 1.139.1, 1 open folder; started in 420 ms.` */
export const startedText = ({ version, editor, editorVersion, folders, ms }: Started): string =>
  `Finishwright ${version} in ${editor} ${editorVersion}, ${counted(folders, "open folder")}; started in ${durationText(ms)}.`;

/** `12 recipes in the open folders, listed in 34 ms.` */
export const listedText = (recipes: number, ms: number): string =>
  `${counted(recipes, "recipe")} in the open folders, listed in ${durationText(ms)}.`;

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;
