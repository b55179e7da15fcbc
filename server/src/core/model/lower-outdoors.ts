/** Reads what reaches a surface, or the work in a shop, outdoors. */
import type { FieldStatement, FieldValue } from "../../../../grammar/src/tree.ts";
import { OUTDOORS, wordList } from "../knowledge/words.ts";
import { type Lowering, readWord, stated } from "./lowering.ts";
import type { Fact, OutdoorsWord } from "./model.ts";

export function readOutdoors(
  ctx: Lowering,
  statement: FieldStatement | undefined,
): { readonly outdoors?: Fact<readonly OutdoorsWord[]> } {
  if (!statement) return {};
  const { items } = statement.value as Extract<FieldValue, { form: "words" }>;
  const words = items.flatMap((item) => readWord(ctx, item, wordList(OUTDOORS), "word for outdoors") ?? []);
  return words.length === 0 ? {} : { outdoors: stated(ctx, words, statement.span) };
}
