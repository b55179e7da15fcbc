/**
 * Pigments, mordants and preservatives of old recipes that poison for decades.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { isA } from "../../knowledge/chemicals.ts";
import { type NamedChemical, reportChemicals } from "../chemical-uses.ts";
import type { TradeRule } from "../rule.ts";
import { textOf } from "../spoken-words.ts";

export const poisonousIngredient: TradeRule = {
  id: "poisonous-ingredient",
  group: "safety",
  severity: "error",
  docs: {
    summary:
      "A recipe uses, or says to use, white and red lead, arsenic, mercury, chromium(VI) (dichromates), cyanide, pentachlorophenol, creosote, DDT and their like, by any of their names.",
    why: "They poison whoever mixes and sands them, and stay in the piece for those who use it. Bare names of colours, such as emerald green, say nothing of the pigment and count only beside words such as `pigment` or `genuine`.",
    remedy:
      "Use a modern dye, stain, paint or preservative. On an old piece that may hold them, do not sand: ask a conservator.",
    sources: [
      "16 CFR 1303: no paint with more than 90 ppm of lead for consumers, nor on furniture",
      "29 CFR 1910.1018 (arsenic) and 1910.1026 (chromium(VI))",
      "NIOSH Pocket Guide to Chemical Hazards (from memory, confidence high)",
    ],
  },
  failing: [
    {
      title: "A mordant of 1920",
      text: `recipe darkened {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  note   "Darken with a five per cent solution of potassium dichromate." #! poisonous-ingredient
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "The real pigment",
      text: `## Casein, lime and emerald green powder, the real copper arsenite.
material garden_green "Garden green milk paint" {
  family milk paint
}

recipe stool {
  for   wood
  layer garden_green #! poisonous-ingredient
  wait  until recoat
  layer waterborne_acrylic
  wait  until cured
}
`,
    },
    {
      title: "Red lead, as an old primer",
      text: `material foot_primer "Red lead in linseed oil" {
  family alkyd primer
}

recipe foot {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  layer  foot_primer, by brush #! poisonous-ingredient
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Names of colours",
      text: `## Emerald green with a little vermilion; free of arsenic and mercury.
material garden_green "Garden green milk paint" {
  family milk paint
}

recipe stool {
  for   wood
  layer garden_green
  wait  until recoat
  layer waterborne_acrylic
  wait  until cured
}
`,
    },
  ],
  looksAt: ({ namesChemicals }) => namesChemicals,
  checks: {
    onRun: (ctx) =>
      reportChemicals(
        ctx,
        (row, named) => isA(row, "poisonous ingredient") || (isA(row, "lead") && isLeadPigment(named)),
        ({ row, by }) => ({
          why: translated(row.harm),
          remedy:
            by === "piece"
              ? t`Do not sand, scrape or heat it; keep others out and ask a conservator or a laboratory first.`
              : t`${row.instead === undefined ? t`Use another product` : translated(row.instead)}; ask your local waste service where to take what you have.`,
        }),
      ),
  },
};

/** Old lead paint is spoken of by strippers, sealers and notes; only what is put on new or mixed in is meant here. */
const isLeadPigment = ({ by, words, action }: NamedChemical): boolean =>
  !/paint/iu.test(words) &&
  (by === "material" || (by === "line" && action !== undefined && MIXED_IN.test(textOf(action) ?? "")));

const MIXED_IN =
  /\b(?:add|adding|tint|tinted|boil|boiled|mix|mixed|stir|stirred|grind|ground|pinch|drop|drier)\b/iu;
