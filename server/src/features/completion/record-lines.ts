/** The lines of a record: what was done, on which surface, and what is known of it. */
import { translated } from "../../../../grammar/src/translate.ts";
import type { Token } from "../../../../grammar/src/tree.ts";
import { DONE_FACTS, TROUBLES, VERBS } from "../../../../grammar/src/vocabulary.ts";
import { troubleOf } from "../../core/knowledge/troubles.ts";
import type { TroubleWord } from "../../core/model/model.ts";
import { surfaceOffers } from "./calls.ts";
import { materialOffers } from "./names.ts";
import { afterLastComma, type CompletionContext, hole, isComma, type Offer } from "./offer.ts";
import { unitOffers } from "./units.ts";

/** After `done`. */
export function doneOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] | undefined {
  const last = tokens.at(-1);
  if (!last) return [];
  if (isComma(last)) return factOffers(tokens);
  if (tokens.some((token) => isComma(token))) return factPartOffers(ctx, afterLastComma(tokens));
  const told = tokens.filter(({ kind }) => kind !== "date" && kind !== "time");
  if (told.length === 0) return whatOffers();
  const on = tokens.findIndex(({ text }) => text === "on");
  if (on >= 0) return surfaceOffers(ctx, tokens.slice(on));
  if (last.text === "of" || last.text === "with") return materialOffers(ctx, []);
  const onSurface: Offer = { label: "on", kind: "keyword", insert: "on " };
  if (last.text === "coat" || told.at(-2)?.text === "coat")
    return [{ label: "of", kind: "keyword", insert: "of " }, onSurface];
  return told.length === 1 && last.kind === "word"
    ? [onSurface, { label: "with", kind: "keyword", insert: "with " }]
    : [onSurface];
}

const detailOf = (word: TroubleWord): Pick<Offer, "detail"> => {
  const known = troubleOf(word);
  return known ? { detail: known.looks } : {};
};

const whatOffers = (): readonly Offer[] => [
  { label: "coat", kind: "keyword", detail: "coat 1 of hall_clear", snippet: `coat ${hole(1, "1")} of $0` },
  ...Object.entries(VERBS).map(([label, { doc }]) => ({
    label,
    kind: "verb" as const,
    documentation: translated(doc),
    insert: `${label} `,
  })),
];

function factOffers(tokens: readonly Token[]): readonly Offer[] {
  const said = new Set(tokens.flatMap((token, i) => (isComma(tokens[i - 1]) ? [token.text] : [])));
  return Object.entries(DONE_FACTS)
    .filter(([word]) => !said.has(word))
    .map(([label, { example, doc }]) => ({
      label,
      kind: "keyword" as const,
      detail: example,
      documentation: translated(doc),
      ...(example.includes('"') ? { snippet: `${label} "$0"` } : { insert: `${label} ` }),
    }));
}

function factPartOffers({ cursor }: CompletionContext, [word, ...more]: readonly Token[]): readonly Offer[] {
  if (word?.text === "trouble" && more.length === 0) {
    return TROUBLES.map((label) => ({ label, kind: "word" as const, ...detailOf(label) }));
  }
  if (!cursor.afterNumber) return [];
  if (word?.text === "took") return unitOffers("time");
  return word?.text === "used" ? unitOffers("volume", "mass") : [];
}
