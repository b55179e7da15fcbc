/**
 * Runs Git for what it alone can tell: what a revision is, and what is in it. Nothing here throws.
 *
 * Only commands that read objects are run (`rev-parse`, `merge-base`, `ls-tree`, `diff-tree`, `cat-file`): they run no hook, no filter
 * and no program that the configuration of a repository names, fetch nothing, and ask nobody.
 */
import { spawn } from "node:child_process";
import { codeOf } from "./read-plain.ts";

export interface GitAnswer {
  readonly status: number;
  readonly stdout: Uint8Array;
  readonly stderr: string;
}

export interface GitAsked {
  /** The folder that it runs in. */
  readonly folder: string;
  readonly input?: string;
  /** Output beyond this many bytes is not taken. */
  readonly mostBytes: number;
}

/** What Git answers, or as the end of a sentence that begins with Git why there is no answer. */
export type RunGit = (
  args: readonly string[],
  asked: GitAsked,
) => Promise<GitAnswer | { readonly reason: string }>;

/** A repository that answers later than this has gone away. */
const PATIENCE_MS = 60_000;
const MOST_COMPLAINT = 2000;

export const runGit: RunGit = (args, { folder, input = "", mostBytes }) =>
  new Promise((resolve) => {
    const git = spawn("git", ["--no-pager", ...args], {
      cwd: folder,
      stdio: ["pipe", "pipe", "pipe"],
      windowsHide: true,
      env: { ...process.env, GIT_NO_LAZY_FETCH: "1", GIT_OPTIONAL_LOCKS: "0", GIT_TERMINAL_PROMPT: "0" },
    });
    const chunks: Uint8Array[] = [];
    let size = 0;
    let complaint = "";
    const giveUp = (reason: string): void => {
      clearTimeout(patience);
      git.kill("SIGKILL");
      resolve({ reason });
    };
    const patience = setTimeout(
      () => giveUp("does not respond, so it was ended. Check the disk of the repository"),
      PATIENCE_MS,
    );
    git.stdout.on("data", (chunk: Uint8Array) => {
      size += chunk.length;
      if (size > mostBytes) giveUp("has more to tell of this revision than is read. Compare a smaller part");
      else chunks.push(chunk);
    });
    git.stderr.on("data", (chunk: Uint8Array) => {
      if (complaint.length < MOST_COMPLAINT) complaint += Buffer.from(chunk).toString("utf8");
    });
    // It may have ended before all was asked.
    git.stdin.on("error", () => {});
    git.on("error", (error) =>
      giveUp(
        codeOf(error) === "ENOENT"
          ? "is not installed, or not on the `PATH`. Install it, or compare two files or folders"
          : `cannot be run: ${error.message}`,
      ),
    );
    git.on("close", (status) => {
      clearTimeout(patience);
      resolve({ status: status ?? 1, stdout: Buffer.concat(chunks), stderr: complaint.trim() });
    });
    git.stdin.end(input);
  });
