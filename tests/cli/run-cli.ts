/**
 * Runs the command line in this process on a folder of its own: what it wrote, and how it ended.
 *
 * Files are given by name with their text or bytes. `forbidden` names files and folders that answer as if nobody might
 * read them, because the tests may run as a user who may read everything.
 */
import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { Readable } from "node:stream";
import { fileURLToPath } from "node:url";
import type { CliFiles, CliIo } from "../../server/src/cli/io.ts";
import { run } from "../../server/src/cli/main.ts";
import { nodeFiles, readStream } from "../../server/src/cli/node-files.ts";
import { runGit } from "../../server/src/cli/node-git.ts";
import { nodeWatch, type Watch } from "../../server/src/cli/node-watch.ts";
import { type AnalystOptions, createAnalyst } from "../../server/src/features/analyst.ts";
import { plan } from "../harness/planner.ts";

export interface CliInput {
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
  readonly forbidden?: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
  readonly isTTY?: boolean;
  readonly columns?: number;
  /** Below the folder of the files. */
  readonly cwd?: string;
  /** On standard input. */
  readonly input?: string | Uint8Array;
  /** Somebody who answers questions. */
  readonly ask?: CliIo["ask"];
  /** Changes the folder before the command runs. */
  readonly prepare?: (folder: string) => void;
  /** Looks at the folder once the command has ended. */
  readonly look?: (folder: string) => void;
  /** Other parts of the analysis than the usual, to see what becomes of a fault in them. */
  readonly parts?: AnalystOptions["parts"];
  /** Another build of the program. */
  readonly build?: string;
  /** What is told of changes, given the folder of the files. */
  readonly watch?: (folder: string) => Watch;
  /** Comes between the reading of a file and its writing. */
  readonly beforeWriting?: (file: string) => void;
}

export interface CliOutcome {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
  /** The temporary folder, which is gone. */
  readonly folder: string;
}

const HOME = fileURLToPath(new URL("../..", import.meta.url));

export async function runCli(argv: readonly string[], input: CliInput = {}): Promise<CliOutcome> {
  const folder = await mkdtemp(path.join(tmpdir(), "finishwright-"));
  try {
    await writeFiles(folder, input.files ?? {});
    input.prepare?.(folder);
    const written = { stdout: "", stderr: "" };
    const output = (stream: "stdout" | "stderr") => ({
      write: (text: string) => {
        written[stream] += text;
      },
      isTTY: input.isTTY ?? false,
      columns: input.columns ?? 80,
    });
    const io: CliIo = {
      createAnalyst: (options) =>
        createAnalyst({ plan, ...options, ...(input.parts ? { parts: input.parts } : {}) }),
      readInput: () => readStream(Readable.from([Buffer.from(input.input ?? "")])),
      ...(input.ask ? { ask: input.ask } : {}),
      stdout: output("stdout"),
      stderr: output("stderr"),
      cwd: path.join(folder, input.cwd ?? ""),
      env: input.env ?? {},
      files: filesWithout(folder, input),
      git: runGit,
      watch: () => input.watch?.(folder) ?? nodeWatch(),
      version: "1.2.3",
      processors: 1,
      build: () => input.build ?? "one",
      cacheFolder: () => path.join(folder, ".caches"),
      home: HOME,
      now: () => "2027-03-01T08:00:00Z",
      startLanguageServer: async () => output("stdout").write("serving\n"),
    };
    const args = argv.map((arg) => arg.replaceAll("<folder>", folder));
    const status = await run(args, io);
    input.look?.(folder);
    return { status, ...written, folder };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

export async function writeFiles(
  folder: string,
  files: Readonly<Record<string, string | Uint8Array>>,
): Promise<void> {
  for (const [name, content] of Object.entries(files)) {
    const file = path.join(folder, name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, content);
  }
}

function filesWithout(folder: string, { forbidden = [], beforeWriting }: CliInput): CliFiles {
  const isForbidden = (file: string): boolean => forbidden.includes(path.relative(folder, file));
  return {
    ...nodeFiles,
    recipes: async (below) => {
      const found = await nodeFiles.recipes(below);
      const closed = forbidden.filter((name) => found.files.some((file) => file.startsWith(`${name}/`)));
      const isClosed = (file: string): boolean => closed.some((name) => file.startsWith(`${name}/`));
      return { ...found, files: found.files.filter((file) => !isClosed(file)), closed };
    },
    read: async (file, permit) =>
      isForbidden(file)
        ? { reason: "may not be read: you have no permission for it" }
        : nodeFiles.read(file, permit),
    replace: async (file, read, text) => {
      beforeWriting?.(file);
      return nodeFiles.replace(file, read, text);
    },
  };
}
