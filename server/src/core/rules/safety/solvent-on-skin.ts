/**
 * Hands washed in solvent: it takes the fat out of the skin, and goes through it.
 */
import type { TradeRule } from "../rule.ts";
import { clausesOfLine, NEGATIONS } from "../spoken-words.ts";

export const solventOnSkin: TradeRule = {
  id: "solvent-on-skin",
  group: "safety",
  severity: "warning",
  docs: {
    summary: "A note or the words of a step say to wash or wipe hands or skin with a solvent or bleach.",
    why: "Solvent takes the fat out of the skin, carries paint and resin into it, and is taken up by the body. Cracked skin becomes dermatitis.",
    remedy: "Wash skin with soap and water, or with a hand cleaner that is made for it.",
    sources: ["29 CFR 1910.141(d) on washing; solvents and dermatitis, from memory, confidence high"],
  },
  failing: [
    {
      title: "Drips off the fingers",
      text: `recipe oiled {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  note   "Wipe drips off your hands with acetone." #! solvent-on-skin
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Soap and water",
      text: `recipe oiled {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  note   "Wash your hands with soap after work with thinner. Never clean skin with acetone."
  note   "Wipe the hand rail with mineral spirits."
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  checks: {
    onRun: ({ run, report }) => {
      for (const { action } of run.moments) {
        if (!clausesOfLine(action).some(isOnSkin)) continue;
        report(action, {
          headline: "These words put solvent on the skin",
          why: "Solvent goes through the skin and takes the fat out of it, and carries resin in with it.",
          remedy: "Write `wash with soap and water` instead, or name a hand cleaner that is made for skin.",
        });
      }
    },
  },
};

const WASHING = new Set(["wash", "wipe", "clean", "scrub", "rub", "rinse", "dip", "get", "take", "remove"]);
const SKIN = new Set(["hand", "skin", "finger", "arm", "knuckle", "palm"]);
/** "Hand rail", "finger joint": parts of the piece. */
const PARTS = new Set([
  "rail",
  "hold",
  "grip",
  "joint",
  "plate",
  "plane",
  "wheel",
  "pull",
  "rest",
  "cut",
  "carved",
]);
const SOLVENTS = new Set([
  ...["acetone", "thinner", "spirit", "turpentine", "turp", "solvent", "alcohol", "petrol", "gasoline"],
  ...["kerosene", "paraffin", "naphtha", "xylene", "toluene", "bleach", "stripper"],
]);

/** A verb of washing, then skin, then `with` or `in`, and a solvent straight after. */
function isOnSkin(keys: readonly string[]): boolean {
  const verb = keys.findIndex((key) => WASHING.has(key));
  const skin = keys.findIndex((key, at) => at > verb && SKIN.has(key) && !PARTS.has(keys[at + 1] ?? ""));
  if (verb < 0 || skin < 0 || keys.slice(0, skin).some((key) => NEGATIONS.has(key))) return false;
  const by = keys.findIndex((key, at) => at > skin && (key === "with" || key === "in" || key === "using"));
  return by >= 0 && keys.slice(by + 1, by + 5).some((key) => SOLVENTS.has(key));
}
