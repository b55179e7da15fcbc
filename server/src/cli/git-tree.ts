/**
 * The recipes of a revision: plain `.finish` files of its tree and nothing else. Links, modules of other repositories and
 * files that are larger than a recipe are refused, as on a disk.
 */
import path from "node:path";
import { decodeText, type ReadText } from "../reading/decode-text.ts";
import { isLookedInto, MAX_DEPTH } from "../reading/may-read.ts";
import { MAX_FILE_BYTES, reasonOf, shortened } from "../reading/reasons.ts";
import { UsageError } from "./io.ts";
import type { GitAsked, RunGit } from "./node-git.ts";

export interface Repository {
  /** The absolute path of its working tree, by way of the folder in which the command runs. */
  readonly root: string;
  /** Undefined where it names no commit. */
  commit(revision: string): Promise<string | undefined>;
  /** The best common ancestor of two commits. */
  mergeBase(a: string, b: string): Promise<string>;
  tree(commit: string): Promise<GitTree>;
  /** Which files of the second commit are those of the first under another name; none where Git cannot tell. */
  renames(before: string, after: string): Promise<ReadonlyMap<string, string>>;
}

export interface GitTree {
  /** Recipes by their paths from the root, with `/`, in order. */
  readonly recipes: readonly string[];
  /** In the order of the paths. */
  read(paths: readonly string[]): Promise<readonly ReadText[]>;
}

/** A name, or the end of a line of `ls-tree`, has some hundred bytes: two million files. */
const MOST_LISTED = 256 * 1024 * 1024;
const SHORT = 64 * 1024;
/** Contents that are asked for in one go. */
const BATCH_BYTES = 64 * 1024 * 1024;

/** The repository that a folder lies in. Fails as wrong use where it lies in none, or Git cannot be run. */
export async function repositoryOf(run: RunGit, cwd: string): Promise<Repository> {
  const up = await asked(run, ["rev-parse", "--show-cdup"], { folder: cwd, mostBytes: SHORT });
  if (up.status !== 0) {
    throw new UsageError(
      `Revisions are those of a Git repository, and \`${cwd}\` is in none (${firstLine(up.stderr)}). Run this in one, or name two files or folders.`,
    );
  }
  const root = path.resolve(cwd, textOf(up.stdout).trim());
  const at: GitAsked = { folder: root, mostBytes: SHORT };
  return {
    root,
    async commit(revision) {
      // It would be taken for an option.
      if (revision === "" || revision.startsWith("-")) return undefined;
      const found = await asked(run, ["rev-parse", "--verify", "--quiet", `${revision}^{commit}`], at);
      return found.status === 0 ? textOf(found.stdout).trim() : undefined;
    },
    async mergeBase(a, b) {
      const found = await asked(run, ["merge-base", a, b], at);
      if (found.status === 0) return textOf(found.stdout).trim();
      throw new UsageError("The two revisions have no common ancestor. Name them apart: `diff A B`.");
    },
    tree: (commit) => treeOf(run, root, commit),
    renames: (before, after) => renamesBetween(run, root, before, after),
  };
}

async function renamesBetween(
  run: RunGit,
  root: string,
  before: string,
  after: string,
): Promise<ReadonlyMap<string, string>> {
  const found = await asked(
    run,
    ["diff-tree", "-r", "-z", "-M", "--diff-filter=R", "--name-status", before, after],
    { folder: root, mostBytes: MOST_LISTED },
  );
  // Contents that were not fetched cannot be compared; what is alike is looked for among the recipes all the same.
  if (found.status !== 0) return new Map();
  // `R100`, the name before, the name after, each ended by a NUL.
  const parts = textOf(found.stdout).split("\0");
  const renames = new Map<string, string>();
  for (let at = 0; at + 2 < parts.length; at += 3) renames.set(parts[at + 1]!, parts[at + 2]!);
  return renames;
}

interface Entry {
  readonly mode: string;
  readonly object: string;
  readonly bytes: number;
}

async function treeOf(run: RunGit, root: string, commit: string): Promise<GitTree> {
  const listed = await asked(run, ["ls-tree", "-r", "-z", "-l", "--full-tree", commit], {
    folder: root,
    mostBytes: MOST_LISTED,
  });
  if (listed.status !== 0) throw failed(listed.stderr);
  const entries = new Map<string, Entry>();
  for (const line of textOf(listed.stdout).split("\0")) {
    const found = ENTRY.exec(line);
    if (found === null || !/[^/]\.finish$/iu.test(found[4]!)) continue;
    const [, mode = "", object = "", bytes = "", name = ""] = found;
    entries.set(name, { mode, object, bytes: bytes === "-" ? 0 : Number(bytes) });
  }
  return {
    recipes: [...entries.keys()].filter(isLookedAt).toSorted(),
    read: (paths) =>
      readAll(
        run,
        root,
        paths.map((name) => entries.get(name)),
      ),
  };
}

/** Mode, kind, object, size in bytes (`-` for what has none), path. */
const ENTRY = /^(\d{6}) \w+ ([0-9a-f]{40,64}) +(\d+|-)\t(.+)$/su;

/** As on a disk: neither hidden, nor in what is installed, nor too deep. */
function isLookedAt(name: string): boolean {
  const steps = name.split("/");
  return steps.length - 1 <= MAX_DEPTH && steps.every(isLookedInto);
}

/** A link's text would be taken for a recipe, and a module is another repository. */
function refusalOf(entry: Entry | undefined): string | undefined {
  if (entry === undefined) return "does not exist in this revision";
  if (entry.mode === "120000") return reasonOf("linked");
  if (entry.mode !== "100644" && entry.mode !== "100755") return reasonOf("special");
  return entry.bytes > MAX_FILE_BYTES ? reasonOf("too-large") : undefined;
}

async function readAll(
  run: RunGit,
  root: string,
  entries: readonly (Entry | undefined)[],
): Promise<readonly ReadText[]> {
  const texts = new Map<string, ReadText>();
  const wanted = new Map<string, number>();
  for (const entry of entries)
    if (entry && refusalOf(entry) === undefined) wanted.set(entry.object, entry.bytes);
  for (const batch of batches([...wanted])) {
    const bytes = batch.reduce((sum, [, size]) => sum + size, 0);
    const answer = await asked(run, ["cat-file", "--batch"], {
      folder: root,
      input: batch.map(([object]) => `${object}\n`).join(""),
      mostBytes: bytes + batch.length * 200,
    });
    if (answer.status !== 0) throw failed(answer.stderr);
    for (const [object, text] of contents(answer.stdout)) texts.set(object, text);
  }
  return entries.map((entry) => {
    const refused = refusalOf(entry);
    if (refused !== undefined) return { reason: refused };
    return texts.get(entry!.object) ?? { reason: "is not in this repository: its content was not fetched" };
  });
}

function batches(wanted: readonly (readonly [string, number])[]): (readonly [string, number])[][] {
  const all: (readonly [string, number])[][] = [];
  let bytes = Number.POSITIVE_INFINITY;
  for (const each of wanted) {
    bytes += each[1];
    if (bytes > BATCH_BYTES) {
      all.push([]);
      bytes = each[1];
    }
    all.at(-1)!.push(each);
  }
  return all;
}

/** `<object> blob <size>`, a line feed, the content, a line feed; `<object> missing` where there is none. */
function* contents(bytes: Uint8Array): Generator<readonly [object: string, text: ReadText]> {
  for (let at = 0; at < bytes.length; ) {
    const end = bytes.indexOf(LINE_FEED, at);
    if (end < 0) return;
    const [object = "", kind, size] = textOf(bytes.subarray(at, end)).split(" ");
    at = end + 1;
    if (kind !== "blob") continue;
    yield [object, decodeText(bytes.subarray(at, at + Number(size)))];
    at += Number(size) + 1;
  }
}

const LINE_FEED = 0x0a;

const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
const firstLine = (text: string): string => shortened(text.split("\n")[0] ?? "");

const failed = (complaint: string): UsageError =>
  new UsageError(
    `The revision cannot be read: ${firstLine(complaint)}. Check the repository with \`git fsck\`.`,
  );

async function asked(run: RunGit, args: readonly string[], at: GitAsked) {
  const answer = await run(args, at);
  if ("reason" in answer) throw new UsageError(`Git ${answer.reason}.`);
  return answer;
}
