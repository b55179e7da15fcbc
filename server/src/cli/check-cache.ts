/**
 * What `check` found before, by all that was read for it, so that only what has changed is looked into again.
 *
 * A file by itself is known by its text. What is found in one that uses others or is used depends on what it uses, on what
 * uses it, and on what that uses; where one of these has a job, on every file that is tied to it by `use`, since jobs share
 * shops, people and air. Its key has the text of each of them. Where not even one of all these files has changed, they are
 * not parsed either.
 *
 * The file is a cache and nothing else: one that is damaged, or of another program, is as good as none.
 */
import { createHash } from "node:crypto";
import path from "node:path";
import type { Program } from "../core/model/program.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { type CliIo, UsageError, warn } from "./io.ts";
import type { Asked, ReadFile } from "./load.ts";

export interface CacheOptions {
  readonly cache?: true;
  readonly cacheFile?: string;
}

/** What was found in files that are tied together by `use`. */
export interface KnownTogether {
  readonly findings: ReadonlyMap<string, readonly FileFinding[]>;
  /** Each file with all that it uses, directly or not. */
  readonly uses: ReadonlyMap<string, readonly string[]>;
  /** Of files that are only used: errors that change what is found where they are used. */
  readonly errors: ReadonlyMap<string, number>;
  /** Of files that are only used. */
  readonly texts: ReadonlyMap<string, string>;
}

export interface CheckCache {
  /** What is found in a file that neither uses others nor is used. */
  alone(file: ReadFile): readonly FileFinding[] | undefined;
  keepAlone(file: ReadFile, findings: readonly FileFinding[]): void;
  /** What was found in these files and those beside them, where nothing of them and of what they use has changed. */
  together(files: readonly ReadFile[]): Promise<KnownTogether | undefined>;
  /** What was found in a file of a program before, by all that has a say in it. */
  inProgram(program: Program): (file: string) => readonly FileFinding[] | undefined;
  /** What was found in a program of these files, and in what they use. */
  keepTogether(files: readonly ReadFile[], program: Program, found: Omit<KnownTogether, "texts">): void;
  write(): Promise<void>;
}

/** The first words of the file, with the number of its form. */
const MARK = "finishwright check cache 1 ";

const hashOf = (...parts: readonly string[]): string => {
  const hash = createHash("sha256");
  for (const part of parts) hash.update(`${part.length}:${part}`);
  return hash.digest("base64url");
};

interface Stored {
  /** The program, and what holds for the whole run. */
  readonly made: string;
  readonly alone: Readonly<Record<string, readonly FileFinding[]>>;
  readonly tied: Readonly<Record<string, readonly FileFinding[]>>;
  readonly together?: StoredTogether;
}

interface StoredTogether {
  /** Of all files that were given. */
  readonly given: string;
  /** Files that are used besides, with a hash of their text or why there is none. */
  readonly used: readonly (readonly [file: string, state: string])[];
  /** Which folder a package was found in, for files of a folder. */
  readonly packages: readonly (readonly [from: string, name: string, folder: string | null])[];
  readonly keys: readonly (readonly [file: string, key: string])[];
  readonly uses: readonly (readonly [file: string, used: readonly string[]])[];
  readonly errors: readonly (readonly [file: string, count: number])[];
}

/** Undefined where none was asked for. Fails as wrong use where the file is somebody else's. */
export async function openCache(
  io: CliIo,
  {
    cache,
    cacheFile,
    paths,
    today,
  }: CacheOptions & { readonly paths: readonly string[]; readonly today?: string },
  asked: Asked,
): Promise<CheckCache | undefined> {
  if (cache !== true && cacheFile === undefined) return undefined;
  const file =
    cacheFile === undefined
      ? path.join(io.cacheFolder(), `check-${hashOf(io.cwd, ...paths).slice(0, 16)}`)
      : path.resolve(io.cwd, cacheFile);
  const text = await io.files.readCache(file);
  if (cacheFile !== undefined) refuseOthers(cacheFile, text);
  const made = hashOf(io.version, io.build(), today ?? "");
  const stored = readStored(text ?? "", made);
  return createCache({ io, asked, file, before: text, isNamed: cacheFile !== undefined }, stored);
}

function refuseOthers(given: string, text: string | undefined): void {
  const isOwn = text === undefined || text === "" || text.startsWith(MARK);
  if (given !== "" && !/\.finish$/iu.test(given) && isOwn) return;
  throw new UsageError(
    `\`--cache-file\` would overwrite \`${given}\`, which is not a cache of Finishwright. Name a file of its own, such as \`.finishwright-cache\`.`,
  );
}

/** Whatever is not as it was written counts as nothing. */
function readStored(text: string, made: string): Stored {
  const nothing: Stored = { made, alone: {}, tied: {} };
  const end = text.indexOf("\n");
  if (end < 0 || text.slice(0, end) !== `${MARK}${hashOf(text.slice(end + 1))}`) return nothing;
  try {
    const stored: unknown = JSON.parse(text.slice(end + 1));
    const isOurs = typeof stored === "object" && stored !== null && Reflect.get(stored, "made") === made;
    return isOurs ? (stored as Stored) : nothing;
  } catch {
    return nothing;
  }
}

interface Place {
  readonly io: CliIo;
  readonly asked: Asked;
  readonly file: string;
  readonly before: string | undefined;
  readonly isNamed: boolean;
}

function createCache({ io, asked, file, before, isNamed }: Place, stored: Stored): CheckCache {
  const alone = new Map<string, readonly FileFinding[]>();
  const tied = new Map<string, readonly FileFinding[]>();
  let together: StoredTogether | undefined;
  const configKey = keyedConfigs(asked);
  const stateOf = ({ path: name, text }: ReadFile): string => hashOf(name, text, configKey(name));
  const givenKey = (files: readonly ReadFile[]): string =>
    hashOf(...asked.beside.files.map(stateOf), "", ...files.map(stateOf));
  let keysOf: ReadonlyMap<string, string> = new Map();
  return {
    alone(each) {
      const key = stateOf(each);
      const known = Object.hasOwn(stored.alone, key) ? stored.alone[key] : undefined;
      if (known) alone.set(key, known);
      return known;
    },
    keepAlone(each, findings) {
      if (areSound(findings)) alone.set(stateOf(each), findings);
    },
    async together(files) {
      const known = stored.together;
      if (known === undefined || known.given !== givenKey(files)) return undefined;
      const texts = await unchanged(io, asked, known);
      if (texts === undefined) return undefined;
      const findings = new Map<string, readonly FileFinding[]>();
      for (const [name, key] of known.keys) {
        const found = stored.tied[key];
        if (found === undefined) return undefined;
        findings.set(name, found);
        tied.set(key, found);
      }
      together = known;
      return { findings, uses: new Map(known.uses), errors: new Map(known.errors), texts };
    },
    inProgram(program) {
      keysOf = tiedKeys(program, configKey);
      return (name) => {
        const key = keysOf.get(name);
        return key !== undefined && Object.hasOwn(stored.tied, key) ? stored.tied[key] : undefined;
      };
    },
    keepTogether(files, program, { findings, uses, errors }) {
      if (![...findings.values()].every(areSound)) return;
      for (const [name, found] of findings) tied.set(keysOf.get(name)!, found);
      const own = new Set([...asked.beside.files, ...files].map((each) => each.path));
      const isAsked = new Set(files.map((each) => each.path));
      together = {
        given: givenKey(files),
        used: [
          ...[...program.files].flatMap(([name, { tree }]) =>
            own.has(name) ? [] : [[name, textState(tree.text)] as const],
          ),
          ...[...program.absent].map(([name, reason]) => [name, reason] as const),
        ],
        packages: asked.packages.lookups(),
        keys: [...findings.keys()].flatMap((name) =>
          isAsked.has(name) ? [[name, keysOf.get(name)!] as const] : [],
        ),
        uses: [...uses],
        errors: [...errors],
      };
    },
    async write() {
      const now: Stored = {
        made: stored.made,
        alone: Object.fromEntries(alone),
        tied: Object.fromEntries(tied),
        ...(together ? { together } : {}),
      };
      const body = JSON.stringify(now);
      const text = `${MARK}${hashOf(body)}\n${body}`;
      if (text === before) return;
      const failed =
        (await io.files.makeFolder(path.dirname(file))) ??
        (await io.files.write(file, text, (there) =>
          !isNamed || there === "" || there.startsWith(MARK) ? true : "is not a cache of Finishwright",
        ));
      if (failed) warn(io, `The cache \`${file}\` ${failed.reason}. What was found is not kept.`);
    },
  };
}

/** What a fault has cost is looked for again. */
const areSound = (findings: readonly FileFinding[]): boolean =>
  !findings.some(({ rule }) => rule === "internal-error");

const textState = (text: string): string => `=${hashOf(text)}`;

/** The texts of the files that are used besides, where all of them, and all packages, are as they were. */
async function unchanged(
  io: CliIo,
  asked: Asked,
  { used, packages }: StoredTogether,
): Promise<ReadonlyMap<string, string> | undefined> {
  for (const [from, name, folder] of packages)
    if ((asked.packages.find(from, name) ?? null) !== folder) return undefined;
  const texts = new Map<string, string>();
  for (const [name, state] of used) {
    const read = await io.files.read(name, asked.permit);
    if (("text" in read ? textState(read.text) : `it ${read.reason}`) !== state) return undefined;
    if ("text" in read) texts.set(name, read.text);
  }
  return texts;
}

/** What the project says, for each file; the same object for many. */
function keyedConfigs({ configOf }: Asked): (file: string) => string {
  const known = new Map<object, string>();
  return (file) => {
    const config = configOf(file);
    const key = known.get(config) ?? hashOf(JSON.stringify(config));
    known.set(config, key);
    return key;
  };
}

// ---------------------------------------------------------------------------------------------------------------
// What has a say in what is found in a file

/** Beyond so many files that use one, all that are tied to it count, which is found quicker. */
const MOST_USERS = 50;

/** A key for every file of a program: equal only where all that has a say in its findings is. */
function tiedKeys(
  { files, absent }: Program,
  configKey: (file: string) => string,
): ReadonlyMap<string, string> {
  const states = new Map<string, string>();
  const stateOf = (name: string): string => {
    const text = files.get(name)?.tree.text;
    // A text that is refused stands as an empty one, with the reason among the absent.
    const state =
      states.get(name) ??
      hashOf(name, text === undefined ? "" : textState(text), absent.get(name) ?? "", configKey(name));
    states.set(name, state);
    return state;
  };
  const down = new Map([...files].map(([name, { uses }]) => [name, uses.map(({ target }) => target)]));
  const up = new Map<string, string[]>();
  for (const [name, targets] of down)
    for (const target of targets) up.set(target, [...(up.get(target) ?? []), name]);
  const beside = (name: string): readonly string[] => [
    ...(down.get(name) ?? []),
    ...(files.has(name) ? (up.get(name) ?? []) : []),
  ];
  const order = new Map([...files.keys(), ...absent.keys()].map((name, index) => [name, index]));
  const hashAll = (names: ReadonlySet<string>): string =>
    hashOf(...[...names].toSorted((a, b) => order.get(a)! - order.get(b)!).map(stateOf));
  const hasJob = (name: string): boolean =>
    files.get(name)?.declarations.some(({ tree }) => tree.body.syntax.kind === "job") === true;
  const wholes = new Map<string, string>();
  const wholeOf = (name: string): string => {
    const known = wholes.get(name);
    if (known !== undefined) return known;
    const tied = reached([name], beside);
    const key = hashAll(tied);
    for (const each of tied) if (files.has(each)) wholes.set(each, key);
    return key;
  };
  return new Map(
    [...files.keys()].map((name) => {
      const users = reached([name], (each) => up.get(each) ?? [], MOST_USERS);
      const all = users.size > MOST_USERS ? undefined : reached(users, (each) => down.get(each) ?? []);
      const isSmall = all !== undefined && ![...all].some(hasJob);
      return [name, hashOf(stateOf(name), isSmall ? hashAll(all) : wholeOf(name))];
    }),
  );
}

/** All that these lead to, themselves among them; it ends where there are more than `most`. */
function reached(
  from: Iterable<string>,
  next: (name: string) => readonly string[],
  most = Number.POSITIVE_INFINITY,
): ReadonlySet<string> {
  const seen = new Set<string>();
  const open = [...from];
  for (let name = open.pop(); name !== undefined && seen.size <= most; name = open.pop()) {
    if (seen.has(name)) continue;
    seen.add(name);
    open.push(...next(name));
  }
  return seen;
}
