/**
 * Answers that a person asks for with the pointer or the keys, bundled beside the server and loaded for the first of them:
 * see `client/answers-beside.ts`, which takes the list from here.
 */
export * from "../features/call-hierarchy.ts";
export * from "../features/completion/completion.ts";
export * from "../features/formatting.ts";
export * from "../features/hover/hover.ts";
export * from "../features/job-to-write.ts";
export * from "../features/rename/rename.ts";
export * from "../features/selections.ts";
export * from "../features/signatures.ts";
export * from "../features/workshop.ts";
export * from "../features/workspace-symbols.ts";
