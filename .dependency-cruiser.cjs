/**
 * Layers point one way: grammar → analysis core → views of a job → editor features → adapters (LSP,
 * command line, reports) → client.
 * Each rule below forbids one way round; `npm run layers` fails on the first import that goes against them.
 */
const { builtinModules } = require("node:module");

const from = (path, pathNot) => (pathNot ? { path, pathNot } : { path });

module.exports = {
  forbidden: [
    {
      name: "no-circles",
      comment: "Modules that import each other, if only for types, cannot be read one after the other.",
      severity: "error",
      from: {},
      to: { circular: true },
    },
    {
      name: "grammar-knows-nothing-else",
      severity: "error",
      from: from("^grammar/src"),
      to: { pathNot: "^grammar/src" },
    },
    {
      name: "core-is-pure",
      comment:
        "The analysis core takes and gives plain data: no protocol, no files, no features, no adapters.",
      severity: "error",
      from: from("^server/src/core"),
      to: {
        pathNot: ["^grammar/src", "^server/src/core", "node_modules/(zod|temporal-polyfill|temporal-spec)"],
      },
    },
    {
      name: "tables-are-checked-by-the-tests",
      comment:
        "The tables came with the program: the tests hold them against their schemas, and no start does. Their types may be had.",
      severity: "error",
      from: from("^server/src"),
      to: { path: "^server/src/core/knowledge/.*-schema\\.ts$", dependencyTypesNot: ["type-only"] },
    },
    {
      name: "views-of-a-job",
      comment:
        "Views say what a job comes to as data for people: figures, sums, plans, lists, sheets. They know of no editor and no report.",
      severity: "error",
      from: from("^server/src/views"),
      to: {
        pathNot: [
          "^grammar/src",
          "^server/src/core",
          "^server/src/escape",
          "^server/src/views",
          "node_modules/(temporal-polyfill|diff)",
        ],
      },
    },
    {
      name: "features-in-editor-terms",
      comment: "Editor features speak offsets and plain data; no protocol types, no files.",
      severity: "error",
      from: from("^server/src/features"),
      to: {
        pathNot: [
          "^grammar/src",
          "^server/src/core",
          "^server/src/escape",
          "^server/src/features",
          "^server/src/reading",
          "^server/src/views",
          "node_modules/zod",
        ],
      },
    },
    {
      name: "reports-are-plain",
      severity: "error",
      from: from("^server/src/reports"),
      to: {
        pathNot: [
          "^grammar/src",
          "^server/src/core",
          "^server/src/escape",
          "^server/src/features",
          "^server/src/reports",
          "^server/src/views",
          "node_modules/(picocolors|get-east-asian-width)",
        ],
      },
    },
    {
      name: "command-line-knows-no-server",
      severity: "error",
      from: from("^server/src/cli"),
      to: { path: ["^server/src/lsp", "^client", "node_modules/vscode-"] },
    },
    {
      name: "server-knows-no-command-line",
      severity: "error",
      from: from("^server/src/lsp"),
      to: { path: ["^server/src/cli", "^client/src"] },
    },
    {
      name: "protocol-only-in-its-adapter",
      severity: "error",
      from: from("^(server|grammar)", "^server/src/(lsp|entry)"),
      to: { path: "node_modules/vscode-" },
    },
    {
      name: "client-is-thin",
      comment:
        "The extension talks to the server over the protocol only, and knows by name what they added to it.",
      severity: "error",
      from: from("^client/src", "^client/src/(bench|pages)/"),
      to: {
        path: ["^server", "^grammar"],
        pathNot: ["^server/src/lsp/custom-requests.ts$", "^server/src/starter/"],
      },
    },
    {
      name: "pages-are-made-inert",
      comment: "The pages on rules and the language have of the server what makes text inert in them.",
      severity: "error",
      from: from("^client/src/pages/"),
      to: { path: ["^server", "^grammar"], pathNot: ["^server/src/escape/html.ts$"] },
    },
    {
      name: "starter-is-plain",
      comment:
        "Questions and texts of a new recipe, for the command line and for the client, which has no server yet.",
      severity: "error",
      from: from("^server/src/starter"),
      to: { pathNot: ["^server/src/starter"] },
    },
    {
      name: "bench-view-draws-as-sheets-do",
      comment: "The page beside the text has the drawing of the sheets, and what makes text inert in it.",
      severity: "error",
      from: from("^client/src/bench/"),
      to: {
        path: ["^server", "^grammar"],
        pathNot: [
          "^server/src/lsp/custom-requests.ts$",
          "^server/src/views/(bench|section)/model.ts$",
          "^server/src/reports/section-svg.ts$",
          "^server/src/escape/(html|printed-units).ts$",
          "^grammar/src/binary-search.ts$",
        ],
      },
    },
    {
      name: "node-modules-of-node-at-the-edges",
      comment: "Files, processes and the clock are reached through adapters only.",
      severity: "error",
      from: from("^(grammar|server)/src", "^server/src/(cli|entry)"),
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "reading-is-plain",
      comment:
        "Bytes to text, and the words for what cannot be read, in the client's language, for every adapter that reads files.",
      severity: "error",
      from: from("^server/src/reading"),
      to: { pathNot: ["^server/src/reading", "^grammar/src/translate\\.ts$"] },
    },
    {
      name: "escape-is-plain",
      comment: "Text made inert for each target, for everything that shows some; it knows nothing else.",
      severity: "error",
      from: from("^server/src/escape"),
      to: { pathNot: ["^server/src/escape"] },
    },
    {
      name: "nothing-of-node-in-the-browser",
      comment: "What the web's entries lead to must run without Node.",
      severity: "error",
      from: from("^(server/src/entry/worker|client/src/extension-web)\\.ts$"),
      to: { path: `^(node:)?(${builtinModules.join("|")})$`, reachable: true },
    },
    {
      name: "nothing-imports-tests",
      severity: "error",
      from: from("^(grammar|server|client)"),
      to: { path: "^tests" },
    },
  ],
  options: {
    tsConfig: { fileName: "tsconfig.json" },
    tsPreCompilationDeps: true,
    doNotFollow: { path: "node_modules" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "require", "node", "default", "types"],
    },
    exclude: { path: "(^|/)dist/" },
  },
};
