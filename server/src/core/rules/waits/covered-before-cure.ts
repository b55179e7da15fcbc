/**
 * A line that tells to stack, wrap or blanket a piece whose last coat has not cured. Only plain words count: a text that
 * warns of it, or puts it off, says nothing here.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isLayer, lastIndexOf } from "../../surface/run-index.ts";
import { hasReached, isFilm, topCoat } from "../../surface/state.ts";
import type { RunContext, TradeRule } from "../rule.ts";
import {
  briefCoatName,
  missingTo,
  namedByParameter,
  neededIn,
  shortWait,
  timePlaces,
} from "../short-wait.ts";
import { plainlySays, textOf } from "../spoken-words.ts";
import { insertAbove, layerBelow } from "../texts.ts";

const COVERED =
  /\bstack(?:ed|ing)?\s+(?:them|it|the|all|up|face|flat|on)\b|\b(?:bubble[\s-]?)?wrap(?:ped|ping)?\s+(?:them|it|the|all|up|each|every|in)\b|\b(?:moving|furniture|packing)?\s*blankets?\b/iu;
/** Paper round a block, a rack, and whatever keeps the pieces apart. */
const HARMLESS =
  /\b(?:paper|grit|block|cork|rags?|cloths?|brush(?:es)?|rollers?|hardware|screws?|knobs?|tape|foil|spacers?|stickers?|battens?|racks?|apart|gap|dust|cure|cured|fire)\b/iu;

export const coveredBeforeCure: TradeRule = {
  id: "covered-before-cure",
  group: "waits",
  severity: "hint",
  docs: {
    summary: "A line tells to stack, wrap or blanket the piece before its last coat has cured.",
    why: "A film that is dry but not cured is still soft: it takes the print of whatever lies on it, and under a wrap it cannot give off the rest of its solvent.",
    remedy: "Wait for the cure first, or leave air between the pieces with spacers.",
    sources: ["common practice, no source"],
  },
  failing: [
    {
      title: "Wrapped after a day",
      text: `recipe delivered {
  for   wood
  layer waterborne_polyurethane
  wait  24 h
  note  "Wrap it in blankets for the van." #! covered-before-cure
}
`,
    },
  ],
  passing: [
    {
      title: "After the cure, or with spacers, or as a warning",
      text: `recipe delivered {
  for   wood
  layer waterborne_polyurethane
  note  "Do not stack the shelves yet."
  wait  24 h
  note  "Stack the shelves with spacers between."
  wait  until cured
  note  "Wrap it in blankets for the van."
}
`,
    },
  ],
  looksAt: ({ isSpoken }) => isSpoken,
  checks: { onRun: (ctx) => checkRun(ctx) },
};

const PLACES_OF_TEXT = ["refit", "inspect"];

function checkRun({ run, units, report }: RunContext): void {
  run.moments.forEach(({ action, before }, index) => {
    const speaks = action.op === "note" || (action.op === "step" && PLACES_OF_TEXT.includes(action.verb));
    const text = (speaks && textOf(action)) || "";
    if (!before.certain || !plainlySays(text, COVERED) || HARMLESS.test(text)) return;
    const top = topCoat(before);
    if (top?.origin !== "new" || !isFilm(top)) return;
    const missing = missingTo(before, top, "cured");
    if (!missing) return;
    // `handled-before-dry` has this line already.
    if (action.op === "step" && action.verb === "refit" && hasReached(before, top, "touch") === "no") return;
    const { needed, had } = missing;
    const name = briefCoatName(top);
    report(
      action,
      shortWait(
        neededIn({ run, units }, needed, had),
        {
          headlines: (after, need) =>
            [name, t`its coat`].map((coat) =>
              after
                ? t`Covered ${after} after ${coat}, which cures in ${need}`
                : t`Covered straight after ${coat}, which cures in ${need}`,
            ),
          why: t`A film that is dry but not cured takes the print of whatever lies on it, and sticks to it.`,
          instead: "wait until cured",
          otherwise: t`leave air between the pieces with spacers`,
          ...namedByParameter(top),
          level: "hint",
        },
        {
          related: [layerBelow(top), ...timePlaces(run, needed, top.material)],
          fixes: isLastCoat(run, index)
            ? [insertAbove("undertaking", action, t`Wait until it has cured`, ["wait  until cured"])]
            : [],
        },
      ),
    );
  });
}

const isLastCoat = (run: SurfaceRun, index: number): boolean => lastIndexOf(run, isLayer) < index;
