/** When files were changed last: by their repository, where they lie in one and are as it has them, else by the disk. */
import path from "node:path";
import type { CliIo } from "./io.ts";

/** Far more than a date takes. */
const MOST_BYTES = 10_000;
const DATE = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:Z|[+-]\d\d:\d\d)$/u;

/** By file. A repository says the same on every machine, and the disk when the file came to it. */
export async function changedAt(
  io: Pick<CliIo, "git" | "files">,
  files: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const found = new Map<string, string>();
  for (const file of files) {
    const at = (await committedAt(io, file)) ?? (await io.files.changedAt(file));
    if (at !== undefined) found.set(file, at);
  }
  return found;
}

/** Of the last commit that changed it, with its offset from UTC. */
async function committedAt({ git }: Pick<CliIo, "git">, file: string): Promise<string | undefined> {
  const asked = { folder: path.dirname(file), mostBytes: MOST_BYTES };
  const name = `./${path.basename(file)}`;
  const answer = await git(["rev-list", "-1", "--format=%cI", "HEAD", "--", name], asked);
  if ("reason" in answer || answer.status !== 0) return undefined;
  const lines = Buffer.from(answer.stdout).toString("utf8").split("\n");
  return lines.find((line) => DATE.test(line));
}
