/**
 * Completion: what can stand at the cursor, and nothing else.
 *
 * The place is told from the tokens of the line (`completion/cursor.ts`), names from the model. Filtering by what is
 * typed is the editor's business; the order is ours.
 */
import { plainField } from "../../../../grammar/src/spellings.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import { type BlockKind, FIELDS, STATEMENTS } from "../../../../grammar/src/vocabulary.ts";
import type { Checker } from "../../core/check.ts";
import type { FileId } from "../../core/place.ts";
import type { CompletionEntry } from "../types.ts";
import { callOffers } from "./calls.ts";
import { cursorAt } from "./cursor.ts";
import { fieldOffers } from "./fields.ts";
import { declarationOffers, headOffers, pathOffers } from "./heads.ts";
import { type CompletionContext, entriesOf, hole, type Offer } from "./offer.ts";
import { layerOffers, safetyOffers, stepOffers, waitOffers } from "./recipe-lines.ts";
import { doneOffers } from "./record-lines.ts";

export function completionsAt(checker: Checker, file: FileId, offset: number): readonly CompletionEntry[] {
  const found = checker.program.files.get(file);
  const cursor = found && cursorAt(found.tree, offset);
  if (!found || !cursor) return [];
  const key = cursor.declaration?.key;
  const declaration = key === undefined ? undefined : found.byKey.get(key);
  const model = declaration?.lowered.model;
  const ctx: CompletionContext = {
    program: checker.program,
    file,
    scope: checker.scope(file),
    cursor,
    ...(model?.kind === "recipe" ? { recipe: model } : {}),
    ...(declaration ? { resolution: checker.resolution(file, declaration) } : {}),
  };
  return entriesOf(cursor, offersAt(ctx));
}

function offersAt(ctx: CompletionContext): readonly Offer[] {
  const { block, before, string } = ctx.cursor;
  if (string)
    return block === "head" && before.length === 1 && before[0]!.text === "use" ? pathOffers(ctx) : [];
  if (block === "head") return headOffers(ctx);
  if (block === "file") return before.length === 0 && !ctx.cursor.afterNumber ? declarationOffers() : [];
  return before.length === 0 ? lineWordOffers(ctx, block) : lineOffers(ctx, block);
}

/** Words that start a line: fields not stated yet, the required ones first, and statements. */
function lineWordOffers({ cursor }: CompletionContext, block: Exclude<BlockKind, "file">): readonly Offer[] {
  const words = [
    ...Object.entries(block === "layer" ? {} : FIELDS[block]).map(([label, entry]) => ({
      label,
      entry,
      kind: "field" as const,
    })),
    ...Object.entries(STATEMENTS[block]).map(([label, entry]) => ({
      label,
      entry,
      kind: "keyword" as const,
    })),
  ].filter(({ label, entry }) => entry.repeatable || !cursor.stated.includes(label));
  const isNeeded = ({ label, entry }: (typeof words)[number]): boolean =>
    entry.required === true && !cursor.stated.includes(label);
  return [...words.filter(isNeeded), ...words.filter((word) => !isNeeded(word))].map(
    ({ label, entry, kind }) => ({
      label,
      kind,
      detail: entry.example,
      documentation: entry.required ? t`${translated(entry.doc)} Required.` : translated(entry.doc),
      ...(label === "surface"
        ? { snippet: `surface ${hole(1, "top")} {\n  $0\n}` }
        : { insert: `${label} ` }),
    }),
  );
}

/** Inside a line, by its first word. */
function lineOffers(ctx: CompletionContext, block: Exclude<BlockKind, "file">): readonly Offer[] {
  const [first, ...tokens] = ctx.cursor.before;
  const word = plainField(block, first!.text);
  if (block !== "layer" && Object.hasOwn(FIELDS[block], word)) return fieldOffers(ctx, block, word, tokens);
  if (!Object.hasOwn(STATEMENTS[block], word)) return [];
  switch (word) {
    case "step":
      return stepOffers(ctx, tokens);
    case "layer":
      return layerOffers(ctx, tokens);
    case "wait":
      return waitOffers(ctx, tokens);
    case "safety":
      return safetyOffers(ctx, tokens);
    case "done":
      return doneOffers(ctx, tokens) ?? [];
    case "follow":
    case "apply":
      return callOffers(ctx, tokens);
    default:
      return [];
  }
}
