/** What stands at the top level: declarations as snippets, the paths of `use`, and the parameters of a recipe. */
import { translated } from "../../../../grammar/src/translate.ts";
import type { Token } from "../../../../grammar/src/tree.ts";
import { DECLARATION_WORDS, METHODS, PARAMETER_TYPES } from "../../../../grammar/src/vocabulary.ts";
import { usesTransitively } from "../../core/model/program.ts";
import { otherWordCard } from "../hover/word-cards.ts";
import { relativePath } from "../relative-path.ts";
import { materialOffers, recipeOffers } from "./names.ts";
import { type CompletionContext, hole, isComma, type Offer } from "./offer.ts";
import { unitOffers } from "./units.ts";

const SNIPPETS: Readonly<Record<string, string>> = {
  use: `use "${hole(1, "stock.finish")}"$0`,
  material: `material ${hole(1, "name")} "${hole(2, "Title")}" {\n  family ${hole(3, "waterborne polyurethane")}$0\n}`,
  piece: `piece ${hole(1, "name")} "${hole(2, "Title")}" {\n  surface ${hole(3, "top")} {\n    shape ${hole(4, "panel")} ${hole(5, "1200 mm")} x ${hole(6, "600 mm")}\n    wood  ${hole(7, "oak")}$0\n  }\n}`,
  shop: `shop ${hole(1, "name")} "${hole(2, "Title")}" {\n  air   ${hole(3, "20 C")}, ${hole(4, "50 % RH")}\n  hours ${hole(5, "Mon")} to ${hole(6, "Fri")} ${hole(7, "09:00")} to ${hole(8, "17:00")}$0\n}`,
  recipe: `recipe ${hole(1, "name")}(${hole(2, "clear: material")}) {\n  $0\n}`,
  job: `job ${hole(1, "name")} "${hole(2, "Title")}" {\n  piece ${hole(3, "piece")}\n  apply ${hole(4, "recipe")}() to ${hole(5, "all")}$0\n}`,
};

export function declarationOffers(): readonly Offer[] {
  return Object.entries(DECLARATION_WORDS).map(([label, { doc, example }]) => ({
    label,
    kind: "keyword" as const,
    detail: example,
    documentation: translated(doc),
    ...(SNIPPETS[label] ? { snippet: SNIPPETS[label] } : {}),
  }));
}

/** In the first line of a declaration. */
export function headOffers(ctx: CompletionContext): readonly Offer[] {
  const { before } = ctx.cursor;
  const word = before[0]!.text;
  if (word === "use") return before.length === 1 ? pathOffers(ctx) : [];
  if (word !== "recipe") return [];
  const opens = before.findIndex(({ text }) => text === "(");
  if (opens < 0 || before.some(({ text }) => text === ")")) return [];
  return parameterPartOffers(ctx, before.slice(opens + 1));
}

function parameterPartOffers(ctx: CompletionContext, tokens: readonly Token[]): readonly Offer[] {
  const part = tokens.slice(tokens.findLastIndex((token) => isComma(token)) + 1);
  const last = part.at(-1);
  const type = part[1]?.text === ":" ? part[2]?.text : undefined;
  if (last?.text === ":") {
    return PARAMETER_TYPES.map((label) => {
      const documentation = otherWordCard(label);
      return { label, kind: "word" as const, ...(documentation ? { documentation } : {}) };
    });
  }
  if (ctx.cursor.afterNumber) return type === "duration" ? unitOffers("time") : [];
  if (last?.text !== "=") return [];
  const own = { ...ctx, recipe: undefined };
  if (type === "method") return METHODS.map((label) => ({ label, kind: "word" as const }));
  if (type === "material") return materialOffers(own);
  if (type === "recipe")
    return recipeOffers(ctx)
      .filter(({ kind }) => kind === "recipe")
      .map(({ snippet: _, ...offer }) => offer);
  return [];
}

/** Files that are known and not used yet, relative to this one; not those that lead back here. */
export function pathOffers({ program, file, cursor }: CompletionContext): readonly Offer[] {
  const { string, text } = cursor;
  const own = string && text.slice(string.start, string.end);
  const uses = program.files.get(file)?.uses ?? [];
  const used = new Set(uses.filter(({ path }) => path !== own).map(({ target }) => target));
  return [...program.files.keys()]
    .filter((id) => id !== file && !used.has(id) && !usesTransitively(program, id, file))
    .flatMap((id) => {
      const path = relativePath(file, id);
      if (path === undefined) return [];
      return [{ label: path, kind: "file" as const, ...(string ? {} : { insert: `"${path}"` }) }];
    })
    .toSorted((a, b) => (a.label < b.label ? -1 : 1));
}
