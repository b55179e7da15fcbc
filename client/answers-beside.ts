/**
 * Puts what a person asks the language server for (hover, completion, renaming) into a bundle of its own, `answers.cjs`,
 * which is loaded when the first is asked for. It looks into what the server holds, and compares it by what it is (tokens,
 * families), so that nothing may be there twice: that bundle has only the modules that the server does not have, and takes all
 * else from the server, which hands out exactly what they import.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { type BuildOptions, build, type Plugin } from "esbuild";
import { staysWhole } from "./told-beside.ts";

const ROOT = path.resolve(import.meta.dirname, "..");
const ANSWERS = "server/src/entry/answers.ts";

/** How esbuild is to make the two without knowing of each other. */
export interface Apart {
  readonly server: BuildOptions;
  readonly answers: BuildOptions;
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
const FEATURES = /[\\/](?:features|requests|entry)[\\/].*\.ts$/;

/** For the server: those functions are called in the other bundle, and what that takes is handed out. */
export const answersBeside = (apart: () => Apart): Plugin => ({
  name: "answers-beside",
  setup(build) {
    callBeside(build);
    build.onLoad({ filter: /[\\/]entry[\\/]language-server\.ts$/ }, async ({ path: file }) => {
      const shared = await sharedOf(apart);
      const taken = shared.map(({ module, name }, index) => {
        const from = path.relative(path.dirname(file), path.join(ROOT, module)).split(path.sep).join("/");
        return `import { ${name} as shared${index} } from "${from}";`;
      });
      const handed = `export const shared = () => [${shared.map((_, index) => `shared${index}`).join()}];`;
      return { contents: [...taken, handed, readFileSync(file, "utf8")].join("\n"), loader: "ts" };
    });
  },
});

/** For the answers: modules of the server are what the server hands out. Node keeps one copy of its bundle. */
export const sharedWithServer = (apart: () => Apart): Plugin => ({
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
      const names = (await sharedOf(apart)).flatMap((each, index) =>
        each.module === module ? [`export const ${each.name} = shared[${index}];`] : [],
      );
      if (names.length === 0) return undefined;
      return { contents: ['import { shared } from "server-shares";', ...names].join("\n"), loader: "js" };
    });
  },
});

function callBeside({ onLoad, onResolve }: Pick<Setup, "onLoad" | "onResolve">): void {
  onLoad({ filter: FEATURES }, ({ path: file }) => {
    if (!ASKED.has(nameOf(file))) return undefined;
    const names = [...readFileSync(file, "utf8").matchAll(/^export (?:async )?(?:function|const) (\w+)/gmu)];
    const calls = names.map(
      ([, name]) => `export const ${name} = (...given) => require("./answers.cjs").${name}(...given);`,
    );
    return { contents: calls.join("\n"), loader: "js" };
  });
  onResolve({ filter: /^\.\/answers\.cjs$/ }, ({ path: name }) => ({ path: name, external: true }));
}

/** What the modules that only the answers have import from those that the server has; the same for all of a build. */
let known: Promise<readonly Shared[]> | undefined;
const sharedOf = (apart: () => Apart): Promise<readonly Shared[]> => {
  known ??= findShared(apart());
  return known;
};

async function findShared({ server, answers }: Apart): Promise<readonly Shared[]> {
  const { metafile } = await build({
    ...asText(server),
    metafile: true,
    plugins: [{ name: "calling", setup: callBeside }, ...(server.plugins ?? [])],
  });
  const inServer = new Set(
    Object.values(metafile.outputs).flatMap(({ inputs }) =>
      Object.entries(inputs).flatMap(([name, { bytesInOutput }]) =>
        bytesInOutput > 0 ? [nameOf(name)] : [],
      ),
    ),
  );
  // What is handed out may need modules that the server by itself has no use for. Then they are the server's.
  for (;;) {
    const shared = await importedByAnswers(answers, inServer);
    const size = inServer.size;
    const open = shared.map(({ module }) => module);
    for (let module = open.pop(); module !== undefined; module = open.pop()) {
      for (const { path: used } of metafile.inputs[module]?.imports ?? []) {
        if (inServer.has(used) || ASKED.has(used) || !(used in metafile.inputs)) continue;
        inServer.add(used);
        open.push(used);
      }
    }
    if (inServer.size === size) return shared;
  }
}

/** What the modules of the answers that are not the server's import from those that are. */
async function importedByAnswers(
  answers: BuildOptions,
  inServer: ReadonlySet<string>,
): Promise<readonly Shared[]> {
  const beside: Plugin = {
    name: "beside",
    setup: ({ onResolve }) =>
      onResolve({ filter: /^\.{1,2}\/.*\.ts$/ }, ({ path: name, resolveDir, pluginData }) => {
        const file = path.resolve(resolveDir, name);
        if (staysWhole(pluginData, file)) return undefined;
        const module = nameOf(file);
        return inServer.has(module) && !ASKED.has(module) ? { path: file, external: true } : undefined;
      }),
  };
  const { outputFiles } = await build({
    ...asText(answers),
    format: "esm",
    plugins: [beside, ...(answers.plugins ?? [])],
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
  const once = new Map(found.map((each) => [`${each.module} ${each.name}`, each]));
  return [...once].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, each]) => each);
}
