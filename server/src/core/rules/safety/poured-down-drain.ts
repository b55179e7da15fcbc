/**
 * Stripper and thinner poured down the drain: they burn in the sewer, and poison what drinks from the river.
 */
import type { TradeRule } from "../rule.ts";
import { clausesOfLine, NEGATIONS } from "../spoken-words.ts";

export const pouredDownDrain: TradeRule = {
  id: "poured-down-drain",
  group: "safety",
  severity: "warning",
  docs: {
    summary: "A note says to pour stripper, solvent, paint, lye or acid down a drain or onto the ground.",
    why: "Solvent vapour in a drain can explode and comes up in the next house; stripper sludge and old paint are hazardous waste in most places.",
    remedy: "Collect it in a closed can with a label, and take it where your local waste service says.",
    sources: ["40 CFR 261, ignitable and toxic waste; local rules decide (from memory, confidence high)"],
  },
  failing: [
    {
      title: "Leftover stripper in the sink",
      text: `recipe washed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with paint_stripper
  step   clean with water
  note   "Pour the leftover stripper down the sink." #! poured-down-drain
}
`,
    },
  ],
  passing: [
    {
      title: "A closed can, and clean water",
      text: `recipe washed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with paint_stripper
  step   clean with water
  note   "Keep the sludge in a closed can. Never pour thinner into the drain."
  note   "Pour the soapy water down the drain."
}
`,
    },
  ],
  checks: {
    onRun: ({ run, report }) => {
      for (const { action } of run.moments) {
        if (!clausesOfLine(action).some(isPoured)) continue;
        report(action, {
          headline: "This does not belong in the drain or on the ground",
          why: "Solvent vapour in a drain can explode, and stripper, paint and lye are hazardous waste.",
          remedy: "Collect it in a closed, labelled can and take it where your local waste service says.",
        });
      }
    },
  },
};

const POURING = new Set([
  "pour",
  "tip",
  "flush",
  "empty",
  "dump",
  "swill",
  "slosh",
  "rinse",
  "chuck",
  "throw",
]);
const STUFF = new Set([
  ...[
    "stripper",
    "thinner",
    "spirit",
    "solvent",
    "turpentine",
    "turp",
    "acetone",
    "petrol",
    "gasoline",
    "paint",
  ],
  ...["cleaner", "varnish", "lacquer", "lye", "acid", "sludge", "kerosene", "naphtha", "oil", "caustic"],
]);
const PLACES = new Set([
  "sink",
  "drain",
  "toilet",
  "sewer",
  "gully",
  "ditch",
  "river",
  "stream",
  "lawn",
  "ground",
  "gravel",
  "soil",
  "gutter",
  "grate",
  "hedge",
  "flowerbed",
  "basin",
  "loo",
]);

/** A verb of pouring, then what harms, then the drain. */
function isPoured(keys: readonly string[]): boolean {
  const verb = keys.findIndex((key) => POURING.has(key));
  const stuff = keys.findIndex((key, at) => at > verb && STUFF.has(key));
  const place = keys.findIndex((key, at) => at > stuff && PLACES.has(key));
  return verb >= 0 && stuff >= 0 && place >= 0 && !keys.slice(0, place).some((key) => NEGATIONS.has(key));
}
