/** A word of a closed vocabulary, by the line in which it stands; words that go together are taken together. */
import type { NameUse } from "../../../../grammar/src/names.ts";
import type { FieldStatement, Span } from "../../../../grammar/src/tree.ts";
import { VOCABULARY_OF_FIELD, type VocabularyName } from "../../core/knowledge/vocabularies.ts";
import { figuresHere, type HoverContext } from "./context.ts";
import { troubleCard, verbCard } from "./record-cards.ts";
import { stepCard } from "./step-card.ts";
import { waitCard } from "./wait-card.ts";
import { countryCard, methodCard, otherWordCard, shapeCard, valueCard } from "./word-cards.ts";

interface Said {
  readonly span: Span;
  readonly markdown: string;
}

export function vocabularyCard(ctx: HoverContext, use: NameUse): Said | undefined {
  const { statement } = use;
  const { words, span } = wordsAt(ctx, use);
  const markdown = ((): string | undefined => {
    switch (statement?.kind) {
      case "step":
        return use.name === statement.verb ? stepCard(ctx, statement) : otherWordCard(words);
      case "layer":
        return methodCard(words) ?? otherWordCard(words);
      case "wait":
        return waitCard(ctx, statement);
      case "done":
        return troubleCard(words) ?? verbCard(words);
      case "safety":
        return valueCard("duty", words);
      case "field":
        return fieldWordCard(ctx, statement, words);
      default:
        return otherWordCard(words);
    }
  })();
  return markdown === undefined || markdown === "" ? undefined : { span, markdown };
}

/** `waterborne polyurethane` under a cursor on either of its words. */
function wordsAt(ctx: HoverContext, { name }: NameUse): { readonly words: string; readonly span: Span } {
  const node = ctx.location.path.findLast((each) => each.kind === "words");
  const text = node && "text" in node && typeof node.text === "string" ? node.text : name.text;
  return { words: text, span: node?.span ?? name.span };
}

const BY_FIELD: Readonly<Record<string, VocabularyName>> = {
  ...VOCABULARY_OF_FIELD,
  wood: "wood",
  existing: "existing",
  thin: "family",
};

function fieldWordCard(ctx: HoverContext, statement: FieldStatement, words: string): string | undefined {
  const { form } = statement.value;
  if (form === "shape") return shapeCard(words) ?? otherWordCard(words);
  if (form === "hours") return otherWordCard(words);
  if (form === "lead") return valueCard("lead", words) ?? valueCard("lead_method", words);
  if (statement.keyword.text === "country") return countryCard(words);
  const vocabulary = BY_FIELD[statement.keyword.text];
  return vocabulary && valueCard(vocabulary, words, figuresHere(ctx));
}
