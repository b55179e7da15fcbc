/**
 * The bundles: what is run outside the project's own tools, each in one file without dependencies. `server.cjs` and
 * `finishwright.cjs` only start `language-server.cjs` and `command-line.cjs`, so that these come out of V8's cache.
 *
 * What runs on a machine (the VS Code extension, the language server, the command line) is CommonJS for Node 20: VS Code
 * loads an extension that way, and users run the command line on the Node that they have. What runs in a browser is for
 * browsers alone: nothing of Node may get into it, and `node:` imports end the build. The extension is CommonJS there
 * too, and `.cjs` because in a package of ES modules the web host takes everything else for one, which it cannot load
 * (it knows that ending from VS Code 1.103 on); the server is a plain script, as a Web Worker loads it.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { BuildOptions, Plugin } from "esbuild";
import type { Report } from "../server/src/core/rules/rule.ts";
import { type Apart, answersBeside, sharedWithServer } from "./answers-beside.ts";
import { heldForMachine, takenFromWeb } from "./extension-beside.ts";
import { tighter } from "./packing/tighter.ts";
import { telling, untold } from "./told-beside.ts";
import { withoutExplanations } from "./without-explanations.ts";

export const ROOT = path.resolve(import.meta.dirname, "..");

export interface Bundle {
  readonly entry: string;
  readonly out: string;
  readonly runsIn: "node" | "browser";
  readonly format: "cjs" | "iife";
  /** Run by its own name, so it gets a first line for the shell and the right to run. */
  readonly program?: true;
  /** Explains no rule, so that the explanations and examples of the rules are left out: see `without-explanations.ts`. */
  readonly withoutExplanations?: true;
  /** Loads `job-reports.cjs` when the first report, sheet or drawing of a job is asked for. */
  readonly withReportsBeside?: true;
  /** Plans are made in a thread, by `planning.cjs`; should one have to be made here after all, that is loaded for it. */
  readonly withPlannerBeside?: true;
  /** What counts the record of a job is loaded from `record.cjs` for the first job that has one; see `recordBeside`. */
  readonly withRecordBeside?: true;
  /** The server loads `answers.cjs` for the first hover or completion; that takes from the server what both use. */
  readonly answers?: "beside" | "alone";
  /** Takes from the server what both use; these modules of it the server calls in it. */
  readonly isCalled?: readonly RegExp[];
}

/** The server and its answers take the same out, so that what both have is the same. */
const OF_THE_SERVER = {
  withoutExplanations: true,
  withReportsBeside: true,
  withPlannerBeside: true,
  withRecordBeside: true,
} as const;

/** What the server loads besides, and what of it the server calls. */
const OF_A_TAKER = { withoutExplanations: true, withPlannerBeside: true } as const;
/** What `job-reports.ts` exports for sheets and the drawing of a job, by the module that it comes from. */
const REPORTED_BESIDE = [
  { module: /[\\/]views[\\/]sheet[\\/]sheet\.ts$/, name: "sheetsOf" },
  { module: /[\\/]views[\\/]bench[\\/]bench\.ts$/, name: "benchOf" },
];
const RECORD =
  /[\\/](?:core[\\/](?:record[\\/]amend|totals[\\/]recorded-(?:plan|amounts)|model[\\/]lower-record|rules[\\/](?:trouble-causes|recorded-coats)|knowledge[\\/]troubles)|features[\\/](?:record-next|repair-to-write|completion[\\/]record-lines|hover[\\/]record-cards))\.ts$/;
const RECORD_RULES = /[\\/]core[\\/]rules[\\/]record[\\/][a-z-]+\.ts$/;

export const BUNDLES: readonly Bundle[] = [
  { entry: "client/src/extension.ts", out: "client/dist/extension.cjs", runsIn: "node", format: "cjs" },
  { entry: "server/src/entry/server.ts", out: "server/dist/server.cjs", runsIn: "node", format: "cjs" },
  {
    entry: "server/src/entry/language-server.ts",
    out: "server/dist/language-server.cjs",
    runsIn: "node",
    format: "cjs",
    ...OF_THE_SERVER,
    answers: "beside",
  },
  {
    entry: "server/src/entry/answers.ts",
    out: "server/dist/answers.cjs",
    runsIn: "node",
    format: "cjs",
    ...OF_THE_SERVER,
    answers: "alone",
  },
  {
    entry: "server/src/entry/record.ts",
    out: "server/dist/record.cjs",
    runsIn: "node",
    format: "cjs",
    ...OF_A_TAKER,
    isCalled: [RECORD, RECORD_RULES],
  },
  { entry: "server/src/entry/planning.ts", out: "server/dist/planning.cjs", runsIn: "node", format: "cjs" },
  {
    entry: "server/src/reports/job-reports.ts",
    out: "server/dist/job-reports.cjs",
    runsIn: "node",
    format: "cjs",
    ...OF_A_TAKER,
    withRecordBeside: true,
    isCalled: REPORTED_BESIDE.map(({ module }) => module),
  },
  {
    entry: "server/src/entry/finishwright.ts",
    out: "server/dist/finishwright.cjs",
    runsIn: "node",
    format: "cjs",
    program: true,
  },
  {
    entry: "server/src/entry/command-line.ts",
    out: "server/dist/command-line.cjs",
    runsIn: "node",
    format: "cjs",
  },
  {
    entry: "server/src/entry/library.ts",
    out: "server/dist/library.cjs",
    runsIn: "node",
    format: "cjs",
    withoutExplanations: true,
  },
  { entry: "client/src/bench/main.ts", out: "client/dist/bench.js", runsIn: "browser", format: "iife" },
  {
    entry: "client/src/extension-web.ts",
    out: "client/dist/extension-web.cjs",
    runsIn: "browser",
    format: "cjs",
  },
  {
    entry: "server/src/entry/worker.ts",
    out: "server/dist/worker.js",
    runsIn: "browser",
    format: "iife",
    withoutExplanations: true,
    withRecordBeside: true,
  },
];

const EXTENSION = "client/dist/extension.cjs";
const EXTENSION_WEB = "client/dist/extension-web.cjs";
const ANSWERS = "server/dist/answers.cjs";
const LANGUAGE_SERVER = "server/dist/language-server.cjs";
const SERVERS: readonly string[] = [LANGUAGE_SERVER, "server/dist/worker.js"];

const TAKERS = BUNDLES.filter(({ isCalled }) => isCalled !== undefined);

/** The server and what takes from it as they would be without knowing of each other. */
const apart = (): Apart => {
  const optionsOf = (which: Bundle["answers"]): BuildOptions => {
    const bundle = BUNDLES.find(({ answers }) => answers === which)!;
    return buildOptions({ ...bundle, answers: undefined }, false);
  };
  const others = TAKERS.map(({ isCalled, ...bundle }) => ({
    options: buildOptions(bundle, false),
    called: isCalled!,
  }));
  return { server: optionsOf("beside"), answers: optionsOf("alone"), others };
};

/** Bundles that the extension does not have. */
const OF_NPM: ReadonlySet<string> = new Set([
  "server/dist/finishwright.cjs",
  "server/dist/command-line.cjs",
  "server/dist/library.cjs",
]);

/** How esbuild makes a bundle. */
export const buildOptions = (bundle: Bundle, minify: boolean): BuildOptions => ({
  absWorkingDir: ROOT,
  entryPoints: [bundle.entry],
  outfile: bundle.out,
  bundle: true,
  format: bundle.format,
  external: ["vscode"],
  minify,
  legalComments: "none",
  // In ASCII each sign of another kind is six bytes.
  charset: "utf8",
  logLevel: "warning",
  plugins: [
    ...(bundle.out === ANSWERS ? [telling] : []),
    ...(bundle.out === EXTENSION ? [takenFromWeb] : []),
    ...(bundle.out === EXTENSION_WEB ? [heldForMachine] : []),
    ...(bundle.answers === "beside" ? [answersBeside(apart)] : []),
    ...(bundle.answers === "alone" ? [sharedWithServer(apart)] : []),
    ...(bundle.isCalled
      ? [
          sharedWithServer(
            apart,
            TAKERS.findIndex(({ out }) => out === bundle.out),
          ),
        ]
      : []),
    ...(bundle.out === LANGUAGE_SERVER ? [untold] : []),
    ...(bundle.withRecordBeside ? [recordBeside(bundle)] : []),
    ...(bundle.withoutExplanations ? [withoutExplanations] : []),
    ...(bundle.withReportsBeside ? [reportsBeside] : []),
    ...(bundle.withPlannerBeside ? [plannerBeside] : []),
    ...(SERVERS.includes(bundle.out) ? [slimMessages] : []),
    ...(bundle.out === "server/dist/worker.js" ? [tightStyle, withoutMessagesOfSchemas] : []),
    ...(minify && !OF_NPM.has(bundle.out) ? [tighter(bundle.runsIn === "node" ? "es2023" : "es2022")] : []),
  ],
  ...(minify ? shortNames(bundle) : {}),
  ...(bundle.runsIn === "node" ? forNode(bundle) : FOR_BROWSERS),
});

/** What is used of the library for messages, here and in its own modules for Node and for browsers. */
const USED_OF_MESSAGES: ReadonlySet<string> = new Set([
  "AbstractMessageBuffer",
  "AbstractMessageReader",
  "AbstractMessageWriter",
  "ConnectionStrategy",
  "Disposable",
  "Emitter",
  "NullLogger",
  "ReadableStreamMessageReader",
  "ResponseError",
  "WriteableStreamMessageWriter",
  "createMessageConnection",
]);

/** A text without a part that must be in it, or the library is another than was looked at. */
function without(text: string, part: RegExp, instead = ""): string {
  if (!part.test(text))
    throw new Error(`${part} is no longer in the library for messages: look at it again.`);
  return text.replace(part, instead);
}

/**
 * The library for messages passes on all that it has, and on a machine loads what makes up names of pipes and listens at
 * them, Node's ciphers among it, which cost a sixteenth of a start. Nobody here asks for either.
 */
const slimMessages: Plugin = {
  name: "slim-messages",
  setup({ onLoad }) {
    onLoad({ filter: /vscode-jsonrpc[\\/]lib[\\/]common[\\/]api\.js$/ }, ({ path: file }) => {
      const lines = without(readFileSync(file, "utf8"), /^const sharedArrayCancellation_1 = .*$/mu).split(
        "\n",
      );
      const isUsed = (line: string): boolean => {
        if (/^exports\..* = void 0;$/u.test(line)) return false;
        const name = /^Object\.defineProperty\(exports, "(\w+)", \{ enumerable/u.exec(line)?.[1];
        return name === undefined || USED_OF_MESSAGES.has(name);
      };
      return { contents: lines.filter(isUsed).join("\n"), loader: "js" };
    });
    onLoad({ filter: /vscode-jsonrpc[\\/]lib[\\/]common[\\/]linkedMap\.js$/ }, ({ path: file }) => {
      // A queue is only added to, looked up and taken from.
      const all = without(readFileSync(file, "utf8"), /^class LRUCache[\s\S]*/mu);
      const unwalked = without(all, /^ {4}forEach\([\s\S]*?(?=^ {4}addItemFirst\()/mu);
      return { contents: without(unwalked, /^ {4}toJSON\([\s\S]*?(?=^\})/mu), loader: "js" };
    });
    onLoad({ filter: /vscode-jsonrpc[\\/]lib[\\/]common[\\/]messages\.js$/ }, ({ path: file }) => {
      // Messages are sent by their names, so there are no types of them with so many arguments.
      const all = readFileSync(file, "utf8");
      const contents = without(
        all,
        /^class (?:Request|Notification)Type\d extends [\s\S]*?^exports\.\w+Type\d = \w+;$/gmu,
      );
      return { contents, loader: "js" };
    });
    onLoad({ filter: /vscode-jsonrpc[\\/]lib[\\/]node[\\/]main\.js$/ }, ({ path: file }) => {
      const all = readFileSync(file, "utf8");
      // Readers and writers of ports and sockets stand between those of processes and of streams.
      const withoutPorts = without(
        all,
        /^class PortMessageReader[\s\S]*^exports\.SocketMessageWriter = .*$/mu,
      );
      const withoutPipes = without(withoutPorts, /^const XDG_RUNTIME_DIR[\s\S]*/mu);
      const withoutTheirNames = withoutPipes.replaceAll(/^exports\.(?:generate|create)\w+ = .*$/gmu, "");
      const contents = withoutTheirNames.replaceAll(/^const (?:path|os|fs|crypto_1|net_1) = .*$/gmu, "");
      return { contents, loader: "js" };
    });
    onLoad({ filter: /vscode-jsonrpc[\\/]lib[\\/]node[\\/]ril\.js$/ }, ({ path: file }) => {
      const eager = without(readFileSync(file, "utf8"), /^const crypto_1 = .*$/mu);
      return {
        contents: without(eager, /\(0, crypto_1\.randomUUID\)/u, 'require("crypto").randomUUID'),
        loader: "js",
      };
    });
  },
};

/** The reports are plain functions of plain data, so nothing is amiss if something of the server is there twice. */
const reportsBeside: Plugin = {
  name: "reports-beside",
  setup({ onLoad, onResolve }) {
    for (const { module, name } of REPORTED_BESIDE) {
      onLoad({ filter: module }, () => ({
        contents: `export const ${name} = (...given) => require("./job-reports.cjs").${name}(...given);`,
        loader: "js",
      }));
    }
    onResolve({ filter: /^\.\/job-reports\.cjs$/ }, ({ path }) => ({ path, external: true }));
    onResolve({ filter: /\/reports\/job-reports\.ts$/ }, ({ kind }) =>
      kind === "dynamic-import" ? { path: "./job-reports.cjs", external: true } : undefined,
    );
  },
};

/** What `planning.ts` exports for it. */
const PLANNER_BESIDE = 'export const planWork = (input) => require("./planning.cjs").planWork(input);';

const plannerBeside: Plugin = {
  name: "planner-beside",
  setup({ onLoad, onResolve }) {
    onLoad({ filter: /[\\/]core[\\/]schedule[\\/]plan\.ts$/ }, () => ({
      contents: PLANNER_BESIDE,
      loader: "js",
    }));
    onResolve({ filter: /^\.\/planning\.cjs$/ }, ({ path }) => ({ path, external: true }));
  },
};

/** What is wrong with a message is told to who wrote the client; an editor in a browser brings its own, which is sound. */
const withoutMessagesOfSchemas: Plugin = {
  name: "without-messages-of-schemas",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]zod[\\/]v4[\\/]locales[\\/]en\.js$/ }, () => ({
      contents: 'export default () => ({ localeError: () => "Invalid input" });',
      loader: "js",
    }));
  },
};

/** The style of a sheet is most of its page; a browser needs no blanks in it. */
const tightStyle: Plugin = {
  name: "tight-style",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]reports[\\/]sheet-style\.ts$/ }, ({ path: file }) => {
      const text = readFileSync(file, "utf8");
      const at = text.indexOf("export const SHEET_STYLE");
      const style = text
        .slice(at)
        .replaceAll(" {", "{")
        .replace(/([{};])\s+/gu, "$1")
        .replace(/([:,]) +/gu, "$1");
      return { contents: text.slice(0, at) + style, loader: "ts" };
    });
  },
};

/**
 * Most jobs have no record, so what counts one is in a bundle beside and loaded for the first that has: the functions, and
 * the checks of the rules on records. All of them are pure, so nothing is amiss if something of the server is there twice.
 * A worker can load nothing beside it: in a browser a record is read and not counted, and a finding on it says so.
 */
const recordBeside = ({ runsIn }: Bundle): Plugin => ({
  name: "record-beside",
  setup({ onLoad, onResolve }) {
    const isAtHand = runsIn === "node";
    onLoad({ filter: RECORD }, ({ path: file }) => {
      const names = [...readFileSync(file, "utf8").matchAll(/^export (?:const|function) (\w+)/gmu)];
      const contents = names.map(([, name]) =>
        isAtHand
          ? `export const ${name} = (...given) => require("./record.cjs").${name}(...given);`
          : `export const ${name} = () => undefined;`,
      );
      return { contents: contents.join("\n"), loader: "js" };
    });
    onLoad({ filter: RECORD_RULES }, ({ path: file }) => {
      const text = readFileSync(file, "utf8");
      const said = (pattern: RegExp): string => pattern.exec(text)![1]!;
      const name = said(/^export const (\w+): TradeRule/mu);
      const id = said(/^ {2}id: "([a-z-]+)"/mu);
      const severity = said(/^ {2}severity: "([a-z]+)"/mu);
      const told = { id, group: "record", severity, docs: {} };
      const check = isAtHand
        ? `(job) => { if (job.job.records.length > 0) require("./record.cjs").${name}.checks.onJob(job); }`
        : id === "record-not-in-recipe"
          ? `({ job, reportAt }) => { if (job.uncounted) reportAt(job.uncounted, ${JSON.stringify(NOT_COUNTED)}); }`
          : "undefined";
      const contents = `export const ${name} = { ...${JSON.stringify(told)}, checks: { onJob: ${check} } };`;
      return { contents, loader: "js" };
    });
    onResolve({ filter: /^\.\/record\.cjs$/ }, ({ path }) => ({ path, external: true }));
  },
});

const NOT_COUNTED: Report = {
  severity: "information",
  headline: "The record is not counted in a browser",
  why: "Plan, dates, stock and cost shown here are those of the recipe alone.",
  remedy: "Open the file on your machine to see where the job stands.",
};

const forNode = (bundle: Bundle): BuildOptions => ({
  platform: "node",
  target: "node20",
  // Packages that offer both kinds of module are taken as ES modules, of which unused parts fall away.
  mainFields: ["module", "main"],
  // esbuild leaves `import.meta` empty in CommonJS; this is what it says there.
  define: { "import.meta.url": "importMetaUrl" },
  banner: {
    js: `${bundle.program ? "#!/usr/bin/env node\n" : ""}const importMetaUrl = require("node:url").pathToFileURL(__filename).href;`,
  },
});

const { version }: { readonly version: string } = JSON.parse(
  readFileSync(path.join(ROOT, "package.json"), "utf8"),
);

/**
 * Long names of fields that stay inside the server: written as names alone, never as words in quotes, and in nothing that
 * leaves it. A worker is one bundle; on a machine objects go from one bundle of the server to another, so all of them have
 * the same short name for each.
 */
export const INNER_NAMES =
  /^(?:abrades|abrasions|asLeftBy|blocksTannin|bracesMatch|buildsFilm|canBeStained|carrier|chainClass|declarations|dissolvedBy|dissolvedUncuredBy|evensStain|fillings|filmRangeUm|hardness|hasDefault|headSpan|ifReplaced|lelPercent|molecularWeight|moments|namePlace|namesChemicals|needsClear|nextSerial|nonPreemptive|onlyWhileWet|openBelow|penetrating|raisesGrain|referents|repeatable|reportAt|respellings|secondaryTo|selfHeatingRags|solidsPercent|specificGravity|startsFromOthers|statements|substrate|twoPart|unfitFor|woodTakenMm)$/;

/** What the parser of lines calls its own means; nobody else has a hold of it. */
export const PARSER_NAMES =
  /^(?:afterCall|afterHyphen|airItem|askForWindow|atValue|betweenItem|betweenLast|betweenUnsaid|byWithWords|closeParen|coatsBehind|coatsWithWord|colouredOld|commaBefore|decimalComma|dropRespellings|endOfPart|existingItem|existingState|expectedNext|givenValue|glossUnits|glovesOfKind|goesOnCompound|gritFigures|hasBlankBefore|headName|isAmount|isBetweenSaidLast|isCoatsNext|isEndOfPart|isFigureOfGrit|isHyphenNext|isPartEnd|isRatioNext|isReported|isSaidNext|isShareBehindLimit|isTailWithoutComma|isTextBehind|isTextInWords|isTimeAt|isTimeNext|isVolumeOrWeight|isWordAt|isWordsBehind|keepBetween|leaveOut|longestIn|lowerLimit|mismatch|mixBasis|momentWords|nameOf|openingHours|optionalTail|outdoorsInWords|ownWords|pieceNumbers|plainKeyword|quantityField|quotedWords|ratioBefore|recoveredAt|refused|respell|respelt|restBehindComma|restFrom|restOfPart|restText|saidBefore|saidText|shapeOption|shareOfThinner|sheenInUnits|sheenOfWords|sheenWord|spanned|speltWords|stepBody|surfaceOf|tailList|tailRule|tailsByType|takeRest|takeText|textOfLine|thinnedShare|thinnerBehind|transferTail|unknownTail|useExample|whatWasDone|withMaterial|withUnit|withinOrAfter|wordRun|wornBesides)$/;

/** Fields of `vscode-jsonrpc` that nobody else may use; no object of it leaves the bundle that has it. */
const PRIVATE_NAMES =
  /^_(?:callbacks|capacity|chunks|contexts|emitter|isCancelled|parameterStructures|partialMessageTimeout|totalLength)$/;

/** The names that such an expression lists. */
export const namesOf = ({ source }: RegExp): readonly string[] => source.slice(4, -2).split("|");

const SHORT: Readonly<Record<string, string>> = Object.fromEntries(
  [...namesOf(INNER_NAMES), ...namesOf(PARSER_NAMES)].map((name, idx) => [name, `$${idx.toString(36)}`]),
);

/** The bundles of the language server that objects go between. */
export const SHARING: readonly string[] = [
  "server/dist/language-server.cjs",
  "server/dist/answers.cjs",
  "server/dist/job-reports.cjs",
  "server/dist/planning.cjs",
  "server/dist/record.cjs",
];

/** All that a server calls shortly. */
const SERVER_NAMES = new RegExp(`${INNER_NAMES.source}|${PARSER_NAMES.source}|${PRIVATE_NAMES.source}`);

const shortNames = ({ out }: Bundle): BuildOptions => {
  const names = [...SERVERS, ANSWERS].includes(out)
    ? SERVER_NAMES
    : SHARING.includes(out)
      ? INNER_NAMES
      : undefined;
  return names === undefined ? {} : { mangleProps: names, mangleCache: { ...SHORT } };
};

const FOR_BROWSERS: BuildOptions = {
  platform: "browser",
  target: "es2022",
  define: { FINISHWRIGHT_VERSION: JSON.stringify(version) },
};
