/**
 * Answers that a person asks for with the pointer or the keys, bundled beside the server and loaded for the first of them:
 * see `client/answers-beside.ts`, which takes the list from here.
 */

export * from "../features/call-hierarchy.ts";
export * from "../features/completion/completion.ts";
export * from "../features/definition.ts";
export * from "../features/formatting.ts";
export * from "../features/hover/hover.ts";
export * from "../features/job-to-write.ts";
export * from "../features/moved-files.ts";
export * from "../features/page-in-language.ts";
export * from "../features/references.ts";
export * from "../features/rename/rename.ts";
export * from "../features/selections.ts";
export * from "../features/signatures.ts";
export * from "../features/workshop.ts";
export * from "../features/workspace-symbols.ts";
export * from "../lsp/requests/bench.ts";
export * from "../lsp/requests/changed.ts";
export * from "../lsp/requests/coloured.ts";
export * from "../lsp/requests/completion.ts";
export * from "../lsp/requests/definition.ts";
export * from "../lsp/requests/find.ts";
export * from "../lsp/requests/formatting.ts";
export * from "../lsp/requests/hover.ts";
export * from "../lsp/requests/prepare-call-hierarchy.ts";
export * from "../lsp/requests/prepare-rename.ts";
export * from "../lsp/requests/references.ts";
export * from "../lsp/requests/rename.ts";
export * from "../lsp/requests/report.ts";
export * from "../lsp/requests/rules.ts";
export * from "../lsp/requests/selection-range.ts";
export * from "../lsp/requests/signature-help.ts";
export * from "../lsp/requests/will-rename-files.ts";
export * from "../lsp/requests/workshop.ts";
export * from "../lsp/requests/workspace-symbol.ts";
export * from "./list-recipes.ts";
