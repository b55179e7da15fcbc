/**
 * What the parameters of each message must hold for the server to work with them; what else they hold is left alone.
 *
 * The types of the protocol promise these, and a client may break the promise.
 */

import * as z from "zod/mini";
import en from "zod/v4/locales/en.js";
import {
  BENCH,
  BENCH_EXPORT,
  BENCH_EXPORTS,
  CHANGED,
  COLOURED,
  FIND,
  HANDED_ON,
  PAGE,
  REPORT,
  RULES,
  WORKSHOP,
} from "./custom-requests.ts";

/** The largest number of the protocol. */
const MOST = 2 ** 31 - 1;

const position = z.looseObject({
  line: z.int().check(z.minimum(0), z.maximum(MOST)),
  character: z.int().check(z.minimum(0), z.maximum(MOST)),
});
const range = z.looseObject({ start: position, end: position });
const textDocument = z.looseObject({ uri: z.string() });
const document = z.looseObject({ textDocument });
const place = z.extend(document, { position });
const stretch = z.extend(document, { range });
const item = z.looseObject({ item: z.looseObject({ uri: z.string(), selectionRange: range }) });
const version = z.int();

/** By method; each is made when the first message of its method comes. A method that is not here takes anything. */
export const PARAMS: Readonly<Record<string, () => z.ZodMiniType>> = {
  "textDocument/didOpen": () =>
    z.looseObject({
      textDocument: z.extend(textDocument, { version, text: z.string() }),
    }),
  "textDocument/didChange": () =>
    z.looseObject({
      textDocument: z.extend(textDocument, { version }),
      contentChanges: z.array(z.looseObject({ text: z.string(), range: z.optional(range) })),
    }),
  "textDocument/didClose": () => document,
  "workspace/didChangeWatchedFiles": () =>
    z.looseObject({
      changes: z.array(z.looseObject({ uri: z.string(), type: z.int() })),
    }),
  "workspace/didChangeConfiguration": () => z.looseObject({}),
  "textDocument/hover": () => place,
  "textDocument/documentSymbol": () => document,
  "textDocument/completion": () => place,
  "textDocument/definition": () => place,
  "textDocument/references": () =>
    z.extend(place, { context: z.looseObject({ includeDeclaration: z.boolean() }) }),
  "textDocument/documentHighlight": () => place,
  "textDocument/prepareRename": () => place,
  "textDocument/rename": () => z.extend(place, { newName: z.string() }),
  "workspace/willRenameFiles": () =>
    z.looseObject({
      files: z.array(z.looseObject({ oldUri: z.string(), newUri: z.string() })),
    }),
  "workspace/symbol": () => z.looseObject({ query: z.string() }),
  "textDocument/documentLink": () => document,
  "textDocument/prepareCallHierarchy": () => place,
  "callHierarchy/incomingCalls": () => item,
  "callHierarchy/outgoingCalls": () => item,
  "textDocument/signatureHelp": () => place,
  "textDocument/semanticTokens/full": () => document,
  "textDocument/semanticTokens/full/delta": () => z.extend(document, { previousResultId: z.string() }),
  "textDocument/semanticTokens/range": () => stretch,
  "textDocument/foldingRange": () => document,
  "textDocument/documentColor": () => document,
  "textDocument/colorPresentation": () =>
    z.extend(document, {
      color: z.looseObject({ red: z.number(), green: z.number(), blue: z.number() }),
      range,
    }),
  "textDocument/selectionRange": () => z.extend(document, { positions: z.array(position) }),
  "textDocument/inlayHint": () => stretch,
  "textDocument/codeLens": () => document,
  "textDocument/formatting": () => document,
  "textDocument/rangeFormatting": () => stretch,
  "textDocument/rangesFormatting": () => z.extend(document, { ranges: z.array(range) }),
  "textDocument/codeAction": () =>
    z.extend(stretch, {
      context: z.looseObject({
        diagnostics: z.array(z.looseObject({ range, message: z.string() })),
        only: z.optional(z.array(z.string())),
      }),
    }),
  "textDocument/diagnostic": () => z.extend(document, { previousResultId: z.nullish(z.string()) }),
  "workspace/diagnostic": () =>
    z.looseObject({
      previousResultIds: z.array(z.looseObject({ uri: z.string(), value: z.string() })),
    }),
  [REPORT]: () =>
    z.extend(document, {
      kind: z.enum(["schedule", "totals", "shopping", "sheet"]),
      job: z.optional(z.string()),
    }),
  [BENCH]: () =>
    z.extend(document, {
      job: z.optional(z.string()),
      before: z.optional(z.string()),
      line: z.optional(z.int().check(z.minimum(0), z.maximum(MOST))),
    }),
  [BENCH_EXPORT]: () =>
    z.extend(document, {
      job: z.string(),
      as: z.enum(BENCH_EXPORTS),
      with: z.optional(z.array(z.enum(HANDED_ON))),
    }),
  [COLOURED]: () => z.looseObject({ text: z.string() }),
  [PAGE]: () => z.looseObject({ text: z.string() }),
  [RULES]: () => z.unknown(),
  [WORKSHOP]: () => z.unknown(),
  [FIND]: () => z.looseObject({ said: z.string() }),
  [CHANGED]: () =>
    z.looseObject({
      folder: z.string(),
      before: z.array(z.looseObject({ uri: z.string(), text: z.nullable(z.string()) })),
      renamed: z.array(z.looseObject({ from: z.string(), to: z.string() })),
    }),
};

const made = new Map<string, z.ZodMiniType>();

const schemaOf = (method: string): z.ZodMiniType | undefined => {
  const schema = made.get(method) ?? (Object.hasOwn(PARAMS, method) ? PARAMS[method]!() : undefined);
  if (schema !== undefined) made.set(method, schema);
  return schema;
};

/** What zod says is wrong, in its English words: the small zod has none by itself. */
const ENGLISH = { error: en().localeError };

/** What is wrong with the parameters of a message, in a few words; undefined where nothing is. */
export const wrongParams = (method: string, params: unknown): string | undefined => {
  const issue = schemaOf(method)?.safeParse(params, ENGLISH).error?.issues[0];
  if (issue === undefined) return undefined;
  const at = issue.path.map(String).join(".");
  return `The parameters of \`${method}\` are not those of the protocol${at === "" ? "" : ` at \`${at}\``}: ${issue.message}.`;
};
