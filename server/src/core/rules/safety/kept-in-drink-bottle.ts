/**
 * Solvent in a lemonade bottle: somebody drinks it.
 */
import { clausesOf } from "../../knowledge/text-words.ts";
import type { TradeRule } from "../rule.ts";
import { textOf } from "../spoken-words.ts";

export const keptInDrinkBottle: TradeRule = {
  id: "kept-in-drink-bottle",
  group: "safety",
  severity: "warning",
  docs: {
    summary: "A note says to keep or pour something into a bottle or cup that people drink from.",
    why: "Solvents, lyes and finishes in bottles for drinks are swallowed by children and by those who work beside you. A container must say what it holds (29 CFR 1910.1200(f)).",
    remedy: "Keep it in its own can with its own label, closed and locked away from children.",
    sources: ["29 CFR 1910.1200(f): containers at work are labelled"],
  },
  failing: [
    {
      title: "Thinner in a lemonade bottle",
      text: `recipe oiled {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  note   "Keep the rest of the spirits in a lemonade bottle." #! kept-in-drink-bottle
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Its own can, and a warning",
      text: `recipe oiled {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  note   "Keep the rest in its own can, never in a lemonade bottle."
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  checks: {
    onRun: ({ run, report }) => {
      for (const { action } of run.moments) {
        if (!isKeptForDrinking(textOf(action) ?? "")) continue;
        report(action, {
          headline: "Somebody may drink what is kept in this bottle",
          why: "Solvents and lyes in bottles for drinks are swallowed by mistake, mostly by children.",
          remedy: "Keep it in its own can with its own label, closed and out of children's reach.",
        });
      }
    },
  },
};

const KEEPING = new Set(["keep", "store", "pour", "decant", "save", "put", "fill", "tip", "stand"]);
const DRINKS = new Set([
  ...[
    "lemonade",
    "drink",
    "drinking",
    "beer",
    "wine",
    "juice",
    "soda",
    "milk",
    "cola",
    "lemon",
    "cordial",
    "whisky",
  ],
  ...["soft", "water", "coffee", "tea", "squash"],
]);
const VESSELS = new Set(["bottle", "cup", "mug", "flask", "carton", "glass"]);
const NEGATIONS = new Set(["never", "not", "no", "don't", "nobody", "instead", "rather", "avoid", "without"]);

const isKeptForDrinking = (text: string): boolean =>
  clausesOf(text).some((clause) => {
    const keys = clause.map(({ key }) => key);
    const at = keys.findIndex((key, index) => DRINKS.has(key) && VESSELS.has(keys[index + 1] ?? ""));
    return (
      at >= 0 &&
      keys.slice(0, at).some((key) => KEEPING.has(key)) &&
      !keys.slice(0, at).some((key) => NEGATIONS.has(key))
    );
  });
