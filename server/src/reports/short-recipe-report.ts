/** Short recipes as text, Markdown and HTML, laid out once as care cards are. */
import { t } from "../../../grammar/src/translate.ts";
import { type Inline, plain } from "../escape/prose.ts";
import { capital } from "../views/sheet/words.ts";
import type { RecipeFact, RecipePart, ShortRecipe } from "../views/short-recipe.ts";
import { cardsReport } from "./care-report.ts";
import type { Block, LaidOut } from "./sheet-document.ts";
import type { SheetFormat } from "./sheet-report.ts";

export const shortRecipeReport = (recipes: readonly ShortRecipe[], format: SheetFormat): string =>
  cardsReport(recipes.map(laidOut), format);

const usual = (): string =>
  t`These are the usual cautions, no more: keeping to them does not make the work safe. Read the label and the safety data sheet of every product first, and follow local codes and licensed practice where they ask for more.`;
const foot = (): string =>
  t`This recipe tells how one job was planned or done, and certifies nothing as safe. Try it on a hidden spot first: your wood, your air and your products are others.`;

function laidOut({ title, handedOn, parts, materials, air, duties, cautions }: ShortRecipe): LaidOut {
  return {
    sort: t`Recipe`,
    title,
    origin: plain(t`in short`),
    head: handedOn.length > 0 ? [facts(handedOn)] : [],
    sections: [
      { title: t`What it takes`, blocks: materials.length > 0 ? [facts(materials)] : [] },
      {
        title: t`Take care`,
        blocks: [
          paragraph(plain(usual())),
          ...(duties.length > 0 ? [facts(duties)] : []),
          ...(cautions.length > 0 ? [bullets(cautions.map(plain))] : []),
        ],
      },
      ...parts.map((part, at) => ({
        title: part.surfaces.join(", "),
        blocks: partBlocks(part, at === 0 ? air : undefined),
      })),
    ].filter(({ blocks }) => blocks.length > 0),
    foot: foot(),
  };
}

const partBlocks = ({ made, steps }: RecipePart, air: string | undefined): readonly Block[] => [
  ...(made.length === 1 ? made.map(({ text }) => paragraph(plain(`${capital(text)}.`))) : [facts(made)]),
  ...(air === undefined ? [] : [paragraph(plain(t`The waits are for air of ${air}.`))]),
  { kind: "numbers", start: 1, items: steps.map((step) => plain(`${step}.`)) },
];

const paragraph = (text: Inline): Block => ({ kind: "paragraph", text });
const bullets = (items: readonly Inline[]): Block => ({ kind: "bullets", items });
const facts = (rows: readonly RecipeFact[]): Block => ({
  kind: "facts",
  rows: rows.map(({ name, text }) => ({ name, text: plain(text) })),
});
