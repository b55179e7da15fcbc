/**
 * Notes that talk people out of the protection that the work needs: bare hands, a handkerchief over the mouth.
 */

import type { DutyWord } from "../../knowledge/duties.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { needFor } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";
import { clausesOfLine, NEGATIONS } from "../spoken-words.ts";
import { needsSuppliedAir } from "../two-part.ts";

export const noteAgainstProtection: TradeRule = {
  id: "note-against-protection",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A note or the words of a step tell people to do without gloves, goggles, a mask or a respirator that the materials or the work of this recipe need, or with something that does not do its work.",
    why: "Whoever works from the sheet follows the note. A handkerchief, a paper mask or held breath stops no vapour, and what goes through the skin is felt too late.",
    remedy: "Take these words out, and state the duty that the work needs.",
    sources: ["29 CFR 1910.132 to 1910.138"],
  },
  failing: [
    {
      title: "Bare hands, and a handkerchief",
      text: `recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  note   "Spread the stripper with bare hands, it is quicker." #! note-against-protection
  note   "A wet handkerchief over the mouth is enough." #! note-against-protection
  step   strip with paint_stripper
  step   clean with water
}
`,
    },
  ],
  passing: [
    {
      title: "Words that ask for it, and a hand that feels for dust",
      text: `recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  note   "Never without gloves, and no handkerchief instead of the respirator."
  step   strip with paint_stripper
  step   clean with water
  note   "Feel the dry wood with your bare hand: no goo may be left."
}
`,
    },
    {
      title: "Work that needs none",
      text: `recipe washed {
  for  wood
  note "No mask is needed for soap and water."
  step clean with soap
}
`,
    },
  ],
  checks: {
    onRun: ({ run, report }) => {
      for (const { action } of run.moments) {
        const against = talkedAway(clausesOfLine(action));
        const duty = against && neededOf(run, against);
        if (!duty) continue;
        report(action, {
          headline: `These words talk people out of ${against.what}`,
          why: against.why,
          remedy: `Take the words out, and state \`safety ${duty}\` above the first line that needs it.`,
        });
      }
    },
  },
};

interface Against {
  readonly what: string;
  readonly why: string;
  /** Any of these being needed makes the words dangerous; the first that is decides what is to be stated. */
  readonly needed: readonly DutyWord[];
}

const HANDS: Against = {
  what: "gloves",
  why: "The materials of this recipe go through the skin, or burn or dry it, before you feel it.",
  needed: ["gloves"],
};
const EYES: Against = {
  what: "goggles",
  why: "The work of this recipe splashes or throws what harms an eye for good.",
  needed: ["eye_protection"],
};
const LUNGS: Against = {
  what: "a mask",
  why: "A cloth, a paper mask or held breath stops no vapour and hardly any fine dust.",
  needed: ["supplied_air", "vapour_respirator", "dust_mask"],
};
const VAPOUR: Against = { ...LUNGS, needed: ["supplied_air", "vapour_respirator"] };
const MASK: Against = { ...LUNGS, why: "The work of this recipe fills the air with what harms the lungs." };

const GEAR: ReadonlyMap<string, Against> = new Map([
  ["glove", HANDS],
  ["goggle", EYES],
  ["mask", MASK],
  ["respirator", MASK],
]);

const DENYING = new Set([...NEGATIONS, "rather"]);
const NEEDED = new Set(["needed", "necessary", "required", "wanted", "called", "need"]);
const FEELING = new Set(["feel", "feeling", "check", "touch", "test", "palm"]);
const ENOUGH = new Set(["enough", "do", "doe", "serve", "suffice", "fine"]);

function talkedAway(clauses: readonly (readonly string[])[]): Against | undefined {
  for (const clause of clauses) {
    const found = inClause(clause);
    if (found) return found;
  }
  return undefined;
}

function inClause(keys: readonly string[]): Against | undefined {
  const denied = keys.findIndex((key) => DENYING.has(key));
  const deniedBefore = (at: number): boolean => denied >= 0 && denied < at;
  for (const [at, key] of keys.entries()) {
    const next = keys[at + 1] ?? "";
    if (key === "bare" && ["hand", "finger"].includes(next) && !deniedBefore(at))
      return keys.some((it) => FEELING.has(it)) ? undefined : HANDS;
    if (key === "hold" && keys.slice(at, at + 3).includes("breath") && !deniedBefore(at)) return LUNGS;
    if (["handkerchief", "scarf"].includes(key) && !deniedBefore(at) && keys.some((it) => FACE.has(it)))
      return LUNGS;
    const isPoor = ["paper", "dust"].includes(key) && next === "mask" && keys.some((it) => ENOUGH.has(it));
    if (isPoor && !keys.some((it) => DENYING.has(it) || it.startsWith("sand"))) return VAPOUR;
    const gear = GEAR.get(key);
    if (gear && isDispensedWith(keys, at, deniedBefore)) return gear;
  }
  return undefined;
}

const FACE = new Set(["mouth", "nose", "face"]);

/** "Without gloves", "no mask is needed", "goggles are not needed": and not "never without gloves". */
function isDispensedWith(
  keys: readonly string[],
  at: number,
  deniedBefore: (at: number) => boolean,
): boolean {
  const before = keys.slice(Math.max(0, at - 3), at);
  const without = before.lastIndexOf("without");
  // "Without goggles nobody opens the can" asks for them.
  if (without >= 0)
    return !deniedBefore(at - before.length + without) && !keys.slice(at + 1).some((key) => NOBODY.has(key));
  const after = keys.slice(at + 1, at + 6);
  if (LEAVING.has(keys.slice(0, at).findLast((key) => !ARTICLES.has(key)) ?? "") && after[0] === "off")
    return !deniedBefore(at);
  if (after.includes("way") && after.includes("in")) return !deniedBefore(at);
  if (before.includes("no")) return after.some((key) => NEEDED.has(key));
  return after.includes("not") ? after.some((key) => NEEDED.has(key)) : after.includes("unnecessary");
}

const NOBODY = new Set(["nobody", "never", "no", "not", "don't"]);
const LEAVING = new Set(["leave", "take", "keep", "left"]);
const ARTICLES = new Set(["the", "a", "your", "their", "his", "her"]);

function neededOf({ moments }: SurfaceRun, { needed }: Against): DutyWord | undefined {
  return needed.find((duty) =>
    moments.some(({ action }) =>
      duty === "supplied_air"
        ? action.op === "layer" && needsSuppliedAir(action)
        : needFor(action, duty) !== undefined,
    ),
  );
}
