/**
 * States of some files for `diff`: as they lie on the disk, in a revision, or with another text of one file. What a
 * revision uses is read from that revision; which levels rules have is what the project says now.
 */
import path from "node:path";
import type { Analysis } from "../features/types.ts";
import { type Permit, refusalOf } from "../reading/may-read.ts";
import type { FilesState } from "../views/changes/model.ts";
import { labelFor } from "./find-files.ts";
import type { GitTree, Repository } from "./git-tree.ts";
import { type CliIo, UsageError, warn } from "./io.ts";
import {
  dayOf,
  hasJob,
  jobsBeside,
  type LoadOptions,
  leftOutOf,
  load,
  MOST_BESIDE,
  mayShareShop,
} from "./load.ts";
import { createPackages, type Packages } from "./packages.ts";
import { foldersToReadAlso, recipesIn, withPackages } from "./permits.ts";
import { createProjectConfigs } from "./project-config.ts";

export interface LoadedState extends FilesState {
  /** How reports name a file. */
  readonly label: (file: string) => string;
  /** What could not be read, in sentences. */
  readonly problems: readonly string[];
  /** Whether everything that was asked for could be read. */
  readonly complete: boolean;
}

/**
 * What lies below a folder, or one file, whose files are known by their paths from there. The other state that it is compared
 * with is no part of its project.
 */
export async function stateAt(
  io: CliIo,
  given: string,
  other: string,
  options: LoadOptions,
): Promise<LoadedState> {
  const apart = path.resolve(io.cwd, other);
  const absolute = path.resolve(io.cwd, given);
  const isFile = (await io.files.kind(absolute)) === "file";
  const root = isFile ? path.dirname(absolute) : absolute;
  const found = isFile || (await io.files.recipes(absolute)).files.length > 0 ? [given] : [];
  return onDisk(io, found, { ...options, isApart: (file) => isBelow(apart, file) }, (file) =>
    isFile && file === absolute ? THE_FILE : below(root, file),
  );
}

/** Two files may have two names. */
const THE_FILE = "";

/** What lies at some places of a repository's working tree. Places where nothing lies have no files. */
export async function workingState(
  io: CliIo,
  { root }: Repository,
  places: readonly string[],
  options: LoadOptions,
): Promise<LoadedState> {
  const found: string[] = [];
  for (const place of places) {
    const absolute = path.resolve(io.cwd, place);
    const kind = await io.files.kind(absolute);
    const isEmpty = kind === "folder" && isBare(await io.files.recipes(absolute));
    if (kind !== "missing" && !isEmpty) found.push(place);
  }
  return onDisk(io, found, options, (file) => below(root, file));
}

const isBare = ({ files, closed, deep }: Awaited<ReturnType<CliIo["files"]["recipes"]>>): boolean =>
  files.length + closed.length + deep.length === 0;

async function onDisk(
  io: CliIo,
  places: readonly string[],
  options: LoadOptions,
  keyOf: FilesState["keyOf"],
): Promise<LoadedState> {
  if (places.length === 0) {
    const analysis = io.createAnalyst({ resolve: createPackages(io.files).resolve }).analysis();
    return stateOf(io, { analysis, asked: [], keyOf, problems: [] });
  }
  const { analysis, asked, label, complete } = await load(io, places, { ...options, withProject: true });
  return { analysis, asked: asked.map((file) => file.path), keyOf, label, problems: [], complete };
}

/** The recipes at some places of a revision. */
export async function revisionState(
  io: CliIo,
  { root }: Repository,
  tree: GitTree,
  places: readonly string[],
  options: LoadOptions,
): Promise<LoadedState> {
  const inRoot = places.map((place) => below(root, path.resolve(io.cwd, place)));
  const names = tree.recipes.filter((name) =>
    inRoot.some((place) => place === "" || name === place || name.startsWith(`${place}/`)),
  );
  const { configs, permit, packages } = await readers(
    io,
    names.map((name) => path.join(root, name)),
    options,
    [root],
  );
  const analyst = io.createAnalyst({
    resolve: packages.resolve,
    config: configs.of,
    parts: dayOf(options.today),
    ...(io.onFault ? { onFault: io.onFault } : {}),
  });
  const asked: string[] = [];
  const problems: string[] = [];
  const texts = await tree.read(names);
  const withJobs: string[] = [];
  for (const [index, read] of texts.entries()) {
    const file = path.join(root, names[index]!);
    if ("text" in read) {
      analyst.setFile(file, read.text);
      asked.push(file);
      if (hasJob(read.text)) withJobs.push(file);
    } else problems.push(`\`${labelFor(io.cwd, file)}\` ${read.reason}.`);
  }
  // The other jobs of the project as they were then, since they share its shops.
  const folders = [...new Set(withJobs.map(configs.folderOfJobs))];
  const others = tree.recipes.filter(
    (name) => !names.includes(name) && folders.some((folder) => isBelow(folder, path.join(root, name))),
  );
  const beside = others.slice(0, MOST_BESIDE);
  for (const [index, read] of (await tree.read(beside)).entries())
    if ("text" in read && mayShareShop(read.text))
      analyst.setFile(path.join(root, beside[index]!), read.text);
  if (others.length > MOST_BESIDE) warn(io, leftOutOf(others.length));
  for (let missing = analyst.missingFiles(); missing.length > 0; missing = analyst.missingFiles()) {
    const isInstalled = missing.map(packages.holds);
    const may = missing.map((file) => refusalOf(file, permit) ?? outside(root, file));
    const found = await tree.read(missing.map((file) => below(root, file)));
    for (const [index, file] of missing.entries()) {
      // A revision says which packages it wants, and has none of them: those that are installed now stand for them.
      const read = isInstalled[index] ? await io.files.read(file, permit) : found[index]!;
      const refused = isInstalled[index] ? undefined : may[index];
      if (refused !== undefined) analyst.setAbsent(file, `it ${refused}`);
      else if ("text" in read) analyst.setFile(file, read.text);
      else analyst.setAbsent(file, `it ${read.reason}`);
    }
  }
  return stateOf(io, { analysis: analyst.analysis(), asked, keyOf: (file) => below(root, file), problems });
}

const outside = (root: string, file: string): string | undefined =>
  isBelow(root, file) ? undefined : "lies outside of the repository, so the revision has nothing of it";

/** One file with this text, which need not lie anywhere; what it uses is read from the disk. */
export async function textState(
  io: CliIo,
  file: string,
  text: string | undefined,
  options: LoadOptions,
): Promise<LoadedState> {
  const { configs, permit, packages } = await readers(io, [file], options, []);
  const analyst = io.createAnalyst({
    resolve: packages.resolve,
    config: configs.of,
    parts: dayOf(options.today),
    ...(io.onFault ? { onFault: io.onFault } : {}),
  });
  if (text !== undefined) {
    analyst.setFile(file, text);
    const asked = [{ path: file, label: labelFor(io.cwd, file), text }];
    const beside = await jobsBeside(io, asked, { configs, permit, isApart: options.isApart });
    for (const other of beside.files) analyst.setFile(other.path, other.text);
    for (const note of beside.notes) warn(io, note);
  }
  for (let missing = analyst.missingFiles(); missing.length > 0; missing = analyst.missingFiles()) {
    for (const used of missing) {
      const read = await io.files.read(used, permit);
      if ("text" in read) analyst.setFile(used, read.text);
      else analyst.setAbsent(used, `it ${read.reason}`);
    }
  }
  const asked = text === undefined ? [] : [file];
  return stateOf(io, { analysis: analyst.analysis(), asked, keyOf: (each) => each, problems: [] });
}

async function readers(
  io: CliIo,
  files: readonly string[],
  { readAlso }: LoadOptions,
  folders: readonly string[],
): Promise<{
  readonly configs: ReturnType<typeof createProjectConfigs>;
  readonly permit: Permit;
  readonly packages: Packages;
}> {
  const also = await foldersToReadAlso(io, readAlso);
  const configs = createProjectConfigs(io);
  // What is wrong in a project file is told where the project is checked.
  for (const file of files) await configs.find(file);
  const projects = folders.length > 0 ? folders : files.map(configs.folder);
  const packages = createPackages(io.files);
  return { configs, permit: withPackages(recipesIn([...projects, ...also]), packages), packages };
}

function stateOf(
  io: CliIo,
  given: {
    readonly analysis: Analysis;
    readonly asked: readonly string[];
    readonly keyOf: FilesState["keyOf"];
    readonly problems: readonly string[];
  },
): LoadedState {
  return { ...given, label: (file) => labelFor(io.cwd, file), complete: given.problems.length === 0 };
}

/** The path from a folder, with `/`; empty for the folder itself. */
function below(root: string, file: string): string {
  return path.relative(root, file).split(path.sep).join("/");
}

function isBelow(root: string, file: string): boolean {
  const relative = path.relative(root, file);
  return relative !== ".." && !relative.startsWith(`..${path.sep}`) && !path.isAbsolute(relative);
}

/** Fails as wrong use where a place lies outside of the repository, or in neither state. */
export async function refuseUnknownPlaces(
  io: CliIo,
  { root }: Repository,
  trees: readonly GitTree[],
  places: readonly string[],
): Promise<void> {
  for (const place of places) {
    const absolute = path.resolve(io.cwd, place);
    if (!isBelow(root, absolute)) {
      throw new UsageError(`\`${place}\` lies outside of the repository \`${root}\`. Name a place in it.`);
    }
    const name = below(root, absolute);
    const isKnown = trees.some(({ recipes }) =>
      recipes.some((recipe) => name === "" || recipe === name || recipe.startsWith(`${name}/`)),
    );
    if (isKnown || (await io.files.kind(absolute)) !== "missing") continue;
    throw new UsageError(
      `There is no \`${place}\`, neither here nor in the revision. Check the spelling, or put \`--\` before paths.`,
    );
  }
}
