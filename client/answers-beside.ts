/**
 * Puts what a person asks the language server for (hover, completion, renaming) into a bundle of its own, `answers.cjs`,
 * which is loaded when the first is asked for. It looks into what the server holds, and compares it by what it is (tokens,
 * families), so that nothing may be there twice: that bundle has only the modules that the server does not have, and takes all
 * else from the server, which hands out exactly what they import.
 *
 * Other bundles that the server loads (reports, the record of a job) take from it what it keeps for itself or the answers
 * anyway. What it would have to keep for them alone stays with them, so that the server starts no slower.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { type BuildOptions, build, type Metafile, type Plugin } from "esbuild";
import { staysWhole } from "./told-beside.ts";

const ROOT = path.resolve(import.meta.dirname, "..");
const ANSWERS = "server/src/entry/answers.ts";

/** A bundle that takes modules from the server. */
export interface Taker {
  readonly options: BuildOptions;
  /** Modules whose functions the server calls in that bundle, so that the bundle has them itself. */
  readonly called: readonly RegExp[];
}

/** How esbuild is to make them without knowing of each other. */
export interface Apart {
  readonly server: BuildOptions;
  readonly answers: BuildOptions;
  readonly others: readonly Taker[];
}

/** A name that a module of the server hands out to the answers. */
interface Shared {
  /** From the project's folder, with `/`. */
  readonly module: string;
  readonly name: string;
}

type Setup = Parameters<Plugin["setup"]>[0];

const nameOf = (file: string): string =>
  path.relative(ROOT, path.resolve(ROOT, file)).split(path.sep).join("/");

/** The modules whose functions the server calls in the other bundle. */
const ASKED: ReadonlySet<string> = new Set(
  [...readFileSync(path.join(ROOT, ANSWERS), "utf8").matchAll(/^export \* from "(.+)";$/gmu)].map(
    ([, name]) => nameOf(path.resolve(ROOT, path.dirname(ANSWERS), name!)),
  ),
);
const SOURCES = /\.ts$/;

/** For the server: those functions are called in the other bundle, and what that and the others take is handed out. */
export const answersBeside = (apart: () => Apart): Plugin => ({
  name: "answers-beside",
  setup(build) {
    callBeside(build);
    handOut(build, async () => (await sharingOf(apart)).all);
  },
});

/** The server with a list of what others take from it. */
function handOut({ onLoad }: Pick<Setup, "onLoad">, sharedOf: () => Promise<readonly Shared[]>): void {
  onLoad({ filter: /[\\/]entry[\\/]language-server\.ts$/ }, async ({ path: file }) => {
    const shared = await sharedOf();
    const taken = shared.map(({ module, name }, index) => {
      const from = path.relative(path.dirname(file), path.join(ROOT, module)).split(path.sep).join("/");
      return `import { ${name} as shared${index} } from "${from}";`;
    });
    const handed = `export const shared = () => [${shared.map((_, index) => `shared${index}`).join()}];`;
    return { contents: [...taken, handed, readFileSync(file, "utf8")].join("\n"), loader: "ts" };
  });
}

/**
 * For the answers or, by its place among `others`, another: modules of the server are what the server hands out. Node
 * keeps one copy of its bundle.
 */
export const sharedWithServer = (apart: () => Apart, other?: number): Plugin => ({
  name: "shared-with-server",
  setup({ onLoad, onResolve }) {
    onResolve({ filter: /^\.\/language-server\.cjs$/ }, ({ path: name }) => ({ path: name, external: true }));
    onResolve({ filter: /^server-shares$/ }, () => ({ path: "shared", namespace: "server-shares" }));
    onLoad({ filter: /.*/, namespace: "server-shares" }, () => ({
      contents: 'export const shared = require("./language-server.cjs").shared();',
      loader: "js",
    }));
    onLoad({ filter: /\.ts$/ }, async ({ path: file }) => {
      const module = nameOf(file);
      const { all, answers, others } = await sharingOf(apart);
      const taken = other === undefined ? answers : others[other]!;
      if (!taken.some((each) => each.module === module)) return undefined;
      const names = all.flatMap((each, index) =>
        each.module === module ? [`export const ${each.name} = shared[${index}];`] : [],
      );
      return { contents: ['import { shared } from "server-shares";', ...names].join("\n"), loader: "js" };
    });
  },
});

function callBeside({ onLoad, onResolve }: Pick<Setup, "onLoad" | "onResolve">): void {
  onLoad({ filter: SOURCES }, ({ path: file }) => {
    if (!ASKED.has(nameOf(file))) return undefined;
    const names = [...readFileSync(file, "utf8").matchAll(/^export (?:async )?(?:function|const) (\w+)/gmu)];
    const calls = names.map(
      ([, name]) => `export const ${name} = (...given) => require("./answers.cjs").${name}(...given);`,
    );
    return { contents: calls.join("\n"), loader: "js" };
  });
  onResolve({ filter: /^\.\/answers\.cjs$/ }, ({ path: name }) => ({ path: name, external: true }));
}

interface Sharing {
  /** All that the server hands out. */
  readonly all: readonly Shared[];
  readonly answers: readonly Shared[];
  readonly others: readonly (readonly Shared[])[];
}

/** What the modules that only the answers or others have import from those that the server has; the same for all of a build. */
let known: Promise<Sharing> | undefined;
const sharingOf = (apart: () => Apart): Promise<Sharing> => {
  known ??= findSharing(apart());
  return known;
};

async function findSharing({ server, answers, others }: Apart): Promise<Sharing> {
  const { inServer, shared } = await sharedWithAnswers(server, answers);
  const before = bytesIn(await reportOn(server, shared));
  // What the server would have to keep for the others alone.
  const apart = new Set<string>();
  for (;;) {
    const taken = await Promise.all(
      others.map(({ options, called }) =>
        importedBy(
          options,
          (module) => inServer.has(module) && !apart.has(module) && !called.some((each) => each.test(module)),
        ),
      ),
    );
    const all = eachOnce([...shared, ...taken.flat()]);
    const after = bytesIn(await reportOn(server, all));
    const size = apart.size;
    for (const [module, bytes] of after)
      if (bytes > (before.get(module) ?? 0) + RENAMED_BYTES && module !== SERVER) apart.add(module);
    if (apart.size === size) return { all, answers: shared, others: taken };
  }
}

const SERVER = "server/src/entry/language-server.ts";
/** What a module may grow by because what is called alike in others gets other numbers. */
const RENAMED_BYTES = 40;

const bytesIn = ({ outputs }: Metafile): ReadonlyMap<string, number> =>
  new Map(
    Object.values(outputs).flatMap(({ inputs }) =>
      Object.entries(inputs).map(([name, { bytesInOutput }]) => [nameOf(name), bytesInOutput] as const),
    ),
  );

/** esbuild's account of a server that hands out what is given. */
async function reportOn(server: BuildOptions, shared: readonly Shared[]): Promise<Metafile> {
  const calling: Plugin = {
    name: "calling",
    setup(build) {
      callBeside(build);
      handOut(build, async () => shared);
    },
  };
  const { metafile } = await build({
    ...asText(server),
    metafile: true,
    plugins: [calling, ...(server.plugins ?? [])],
  });
  return metafile;
}

async function sharedWithAnswers(server: BuildOptions, answers: BuildOptions) {
  const metafile = await reportOn(server, []);
  const inServer = new Set([...bytesIn(metafile)].flatMap(([name, bytes]) => (bytes > 0 ? [name] : [])));
  // What is handed out may need modules that the server by itself has no use for. Then they are the server's.
  for (;;) {
    const shared = await importedBy(answers, (module) => inServer.has(module) && !ASKED.has(module));
    const size = inServer.size;
    const open = shared.map(({ module }) => module);
    for (let module = open.pop(); module !== undefined; module = open.pop()) {
      for (const { path: used } of metafile.inputs[module]?.imports ?? []) {
        if (inServer.has(used) || ASKED.has(used) || !(used in metafile.inputs)) continue;
        inServer.add(used);
        open.push(used);
      }
    }
    if (inServer.size === size) return { inServer, shared };
  }
}

/** What the modules of a bundle that it has itself import from those that it takes. */
async function importedBy(
  options: BuildOptions,
  isTaken: (module: string) => boolean,
): Promise<readonly Shared[]> {
  const beside: Plugin = {
    name: "beside",
    setup: ({ onResolve }) =>
      onResolve({ filter: /^\.{1,2}\/.*\.ts$/ }, ({ path: name, resolveDir, pluginData }) => {
        const file = path.resolve(resolveDir, name);
        if (staysWhole(pluginData, file)) return undefined;
        return isTaken(nameOf(file)) ? { path: file, external: true } : undefined;
      }),
  };
  const { outputFiles } = await build({
    ...asText(options),
    format: "esm",
    plugins: [beside, ...(options.plugins ?? [])],
  });
  return importedIn(outputFiles![0]!.text);
}

/** Not written, and in long names. */
const asText = (options: BuildOptions) =>
  ({ ...options, minify: false, mangleProps: undefined, mangleCache: undefined, write: false }) as const;

/** esbuild writes what is imported from outside in one statement for each module. */
function importedIn(text: string): readonly Shared[] {
  const statements = [...text.matchAll(/^import \{([^}]*)\} from "([^"]+\.ts)";$/gmu)];
  const found = statements.flatMap(([, names, module]) =>
    names!
      .split(",")
      .map((name) => name.trim().split(" as ")[0]!)
      .filter((name) => name !== "")
      .map((name) => ({ module: nameOf(module!), name })),
  );
  return eachOnce(found);
}

/** In the order of their modules and names. */
function eachOnce(found: readonly Shared[]): readonly Shared[] {
  const once = new Map(found.map((each) => [`${each.module} ${each.name}`, each]));
  return [...once].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, each]) => each);
}
