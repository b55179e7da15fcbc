/** What gets into the bundles, by esbuild's own account of them. */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { Metafile } from "esbuild";
import { describe, expect, test } from "vitest";
import { BUNDLES, INNER_NAMES, namesOf, PARSER_NAMES, ROOT, SHARING } from "../../client/bundles.ts";
import { VERBS } from "../../grammar/src/vocabulary.ts";
import { FAMILIES } from "../../server/src/core/knowledge/families.ts";
import { waterborneOverUncuredOil } from "../../server/src/core/rules/layers/waterborne-over-uncured-oil.ts";
import { made, madeShort } from "../harness/bundles.ts";

const reportOf = async (out: string): Promise<Metafile> => (await made(out)).metafile;

const outputOf = (metafile: Metafile, out: string) => {
  const output = metafile.outputs[out];
  if (output === undefined) throw new Error(`Nothing was written for ${out}.`);
  return output;
};

/** Modules of which at least a part is in the bundle. */
const inputsOf = (metafile: Metafile, out: string): readonly string[] =>
  Object.entries(outputOf(metafile, out).inputs)
    .filter(([, { bytesInOutput }]) => bytesInOutput > 0)
    .map(([name]) => path.relative(ROOT, path.resolve(ROOT, name)));

const names = (runsIn: "node" | "browser"): readonly string[] =>
  BUNDLES.filter((bundle) => bundle.runsIn === runsIn).map(({ out }) => out);

describe.each(names("browser"))("%s", (out) => {
  test("has nothing of Node, and of the editor only its API", async () => {
    const metafile = await reportOf(out);
    const imported = [
      ...Object.values(metafile.inputs).flatMap(({ imports }) => imports),
      ...outputOf(metafile, out).imports,
    ].filter(({ external }) => external);
    expect(imported.map((each) => each.path).filter((name) => name !== "vscode")).toEqual([]);
    expect(inputsOf(metafile, out).filter((name) => /vscode-[^/]+\/lib\/node\//.test(name))).toEqual([]);
  });
});

test("the worker brings the whole server, and nothing of the editor", async () => {
  const metafile = await reportOf("server/dist/worker.js");
  expect(outputOf(metafile, "server/dist/worker.js").imports).toEqual([]);
  const inputs = inputsOf(metafile, "server/dist/worker.js");
  expect(inputs).toContain("server/src/lsp/server.ts");
  expect(inputs).toContain("server/src/features/analyst.ts");
  expect(inputs.filter((name) => /^(?:client|server\/src\/cli)\//.test(name))).toEqual([]);
});

const MEGABYTE = 2 ** 20;

/**
 * What an editor has to load before the first findings. The library for messages is 48 kB of it, the words of dangers
 * in notes 45 kB, those of labels and of speech for the words of the notation, and what reads them, 99 kB. What a person asks
 * for is in `answers.cjs`.
 */
const MOST_SERVER_BYTES = MEGABYTE;
/**
 * In a browser the planner and the reports are in the same file, the script and style of a bench sheet among them with 30 kB, and so
 * are the proofs of plans, the words that labels and dictated jobs use with those that may be several things, what compares
 * more than two jobs, figures in two systems of units, the care cards and short recipes, and the search through recipes and what
 * a change means with 39 kB.
 */
const MOST_WORKER_BYTES = 1.4375 * MEGABYTE;

test.each([
  ["server/dist/language-server.cjs", MOST_SERVER_BYTES, false],
  ["server/dist/worker.js", MOST_WORKER_BYTES, true],
])("%s is small, without explanations of rules and schemas of tables", async (out, most, listsRules) => {
  const inputs = inputsOf(await reportOf(out), out);
  expect(inputs.filter((name) => name.endsWith("-schema.ts"))).toEqual([]);
  const [file] = (await madeShort(out)).outputFiles ?? [];
  expect(file!.contents.length).toBeLessThan(most);
  expect(file!.text).not.toContain("#! ");
  const { docs, failing } = waterborneOverUncuredOil;
  expect(file!.text.includes(docs.summary)).toBe(listsRules);
  for (const left of [docs.why, docs.remedy, docs.sources[0]!, failing[0]!.title]) {
    expect(file!.text).not.toContain(left);
  }
});

test.each([
  ["server/dist/worker.js", [...namesOf(INNER_NAMES), ...namesOf(PARSER_NAMES)]],
  ["server/dist/language-server.cjs", [...namesOf(INNER_NAMES), ...namesOf(PARSER_NAMES)]],
  ["server/dist/answers.cjs", [...namesOf(INNER_NAMES), ...namesOf(PARSER_NAMES)]],
  ...SHARING.map((out) => [out, namesOf(INNER_NAMES)] as const),
] as const)(
  "names that are made short in %s stand nowhere in quotes, where they would stay long",
  async (out, names) => {
    const { outputFiles } = await made(out);
    expect(names.length).toBeGreaterThan(10);
    const quoted = new Set(
      outputFiles![0]!.text.match(/(["'`])[A-Za-z]+\1/gu)?.map((word) => word.slice(1, -1)),
    );
    expect(names.filter((name) => quoted.has(name))).toEqual([]);
  },
);

/** What the server sends to pages of the extension, which are bundled by themselves. */
const SENT = [
  "server/src/lsp/custom-requests.ts",
  "server/src/views/bench/model.ts",
  "server/src/views/fumes/room-hours.ts",
  "server/src/views/section/model.ts",
];

test.each(SENT)("nothing in %s has a name that is made short: who gets it would not know it", (file) => {
  const names = [...readFileSync(path.join(ROOT, file), "utf8").matchAll(/^ +readonly (\w+)\??:/gmu)];
  expect(names.length).toBeGreaterThan(5);
  const short = new Set([...namesOf(INNER_NAMES), ...namesOf(PARSER_NAMES)]);
  expect(names.map(([, name]) => name).filter((name) => short.has(name!))).toEqual([]);
});

test("objects that go from one bundle of the server to another have the same names in all of them", async () => {
  const caches = await Promise.all(
    SHARING.map(async (out) => {
      const { mangleCache } = await madeShort(out);
      return Object.fromEntries(namesOf(INNER_NAMES).map((name) => [name, mangleCache?.[name]]));
    }),
  );
  for (const cache of caches) expect(cache).toEqual(caches[0]);
  expect(new Set(Object.values(caches[0]!)).size).toBe(namesOf(INNER_NAMES).length);
});

/** The code of each module in a bundle in long form, where esbuild writes the module's name above it. */
function codeOf(text: string): ReadonlyMap<string, readonly string[]> {
  const code = new Map<string, string[]>();
  let module = "";
  for (const line of text.split("\n").map((each) => each.trim())) {
    module = /^\/\/ ([a-z-]+[/:].*)$/u.exec(line)?.[1] ?? module;
    // Above the first module stands what esbuild itself needs.
    if (module !== "" && line !== "" && !line.startsWith("//"))
      code.set(module, [...(code.get(module) ?? []), line]);
  }
  return code;
}

test("the answers have no module that the server has: they take all of it from there", async () => {
  const [server, answers] = await Promise.all(
    ["server/dist/language-server.cjs", "server/dist/answers.cjs"].map(async (out) =>
      codeOf((await made(out)).outputFiles[0]!.text),
    ),
  );
  const asked = [...server!].flatMap(([module, lines]) =>
    lines.some((line) => line.includes('require("./answers.cjs")')) ? [module] : [],
  );
  expect(asked).toContain("server/src/features/hover/hover.ts");
  expect(asked).toContain("server/src/features/completion/completion.ts");
  for (const module of asked) expect(answers!.get(module)?.length, module).toBeGreaterThan(5);
  const inBoth = [...answers!].filter(([module]) => server!.has(module) && !asked.includes(module));
  expect(inBoth.length).toBeGreaterThan(20);
  const taken = inBoth.filter(([, lines]) => lines.some((line) => /shared\[\d+\]/u.test(line)));
  const own = inBoth.flatMap(([module, lines]) =>
    lines
      .filter((line) => !/^(?:var|const) \w+ = shared\[\d+\];$/u.test(line))
      .map((line) => `${module}: ${line}`),
  );
  expect(own).toEqual([]);
  expect(taken.length).toBe(inBoth.length);
});

test("the extension on a machine has only what starts a process: all else it takes from that for browsers", async () => {
  const [machine, web] = await Promise.all(
    ["client/dist/extension.cjs", "client/dist/extension-web.cjs"].map(
      async (out) => outputOf(await reportOf(out), out).inputs,
    ),
  );
  const ofWeb = new Map(Object.entries(web!).map(([name, { bytesInOutput }]) => [name, bytesInOutput]));
  expect(ofWeb.get("client/src/new-recipe.ts")).toBeGreaterThan(1000);
  // What is taken is a call by the module's name.
  const twice = Object.entries(machine!).filter(
    ([name, { bytesInOutput }]) => (ofWeb.get(name) ?? 0) > 1000 && bytesInOutput > 400,
  );
  expect(twice).toEqual([]);
  expect(Object.keys(machine!)).toContain("client/src/extension.ts");
  const { outputFiles } = await made("client/dist/extension.cjs");
  expect(outputFiles[0]!.text).toContain('.held("client/src/run-extension.ts")');
});

test.each(["server/dist/job-reports.cjs", "server/dist/record.cjs"])(
  "%s takes from the server what that keeps anyway",
  async (out) => {
    const [server, other] = await Promise.all(
      ["server/dist/language-server.cjs", out].map(async (each) => outputOf(await reportOf(each), each)),
    );
    const rules = Object.keys(other!.inputs).filter((name) => /core\/rules\/layers\//.test(name));
    expect(rules).toEqual([]);
    expect((await made(out)).outputFiles[0]!.text).toContain('require("./language-server.cjs")');
    expect(
      Object.keys(server!.inputs).filter((name) => /core\/rules\/layers\//.test(name)).length,
    ).toBeGreaterThan(10);
    expect((await madeShort(out)).outputFiles![0]!.contents.length).toBeLessThan(240_000);
  },
);

test("what tells a word of the grammar or a family is in the answers alone", async () => {
  const [server, answers] = await Promise.all(
    ["server/dist/language-server.cjs", "server/dist/answers.cjs"].map(
      async (out) => (await made(out)).outputFiles[0]!.text,
    ),
  );
  const { doc } = FAMILIES.get("shellac")!;
  for (const told of [VERBS.sand!.doc, doc!, waterborneOverUncuredOil.docs.summary]) {
    expect(server!.includes(told), told).toBe(false);
    expect(answers!.includes(told), told).toBe(true);
  }
});

test("the command line has the explanations", async () => {
  const { outputFiles } = await made("server/dist/command-line.cjs");
  const { docs, failing } = waterborneOverUncuredOil;
  for (const kept of [docs.summary, docs.why, failing[0]!.title]) {
    expect(outputFiles?.[0]?.text).toContain(kept);
  }
});

test.each(["server/dist/server.cjs", "server/dist/finishwright.cjs"])(
  "%s only starts another bundle, which comes out of the cache of compiled code",
  async (out) => {
    const output = outputOf(await reportOf(out), out);
    expect(output.bytes).toBeLessThan(10_000);
  },
);

test.each(names("node"))("%s speaks no language that it does not show", async (out) => {
  const locales = inputsOf(await reportOf(out), out).filter((name) => /zod\/.*\/locales\//.test(name));
  // English is what the library falls back to; the list of all languages is empty where none is asked for.
  expect(locales.filter((name) => !/\/(?:en|index)\.(?:js|mjs|cjs)$/.test(name))).toEqual([]);
});
