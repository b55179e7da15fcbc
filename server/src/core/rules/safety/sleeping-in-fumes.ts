/**
 * Somebody sleeps where a finish dries.
 */
import type { SurfaceRun } from "../../surface/run.ts";
import type { RunContext, TradeRule } from "../rule.ts";
import { textOf } from "../spoken-words.ts";

export const sleepingInFumes: TradeRule = {
  id: "sleeping-in-fumes",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A note, or the shop's own words, have somebody sleep in the room where a finish is put on or dries.",
    why: "A finish gives off vapour for days, most of it in the first night, and whoever sleeps there breathes it for hours without noticing.",
    remedy:
      "Work and let it dry in another room, or let nobody sleep there until the smell is gone; babies and pregnant women not before the full cure.",
    sources: [
      "US EPA, An Introduction to Indoor Air Quality, on volatile organic compounds (from memory)",
      "common practice, no source, for the full cure",
    ],
  },
  failing: [
    {
      title: "In so many words",
      text: `recipe wardrobe {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  note   "It is done in the bedroom, where the family sleeps meanwhile." #! sleeping-in-fumes
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "The shop is a nursery",
      text: `piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

shop nursery "Nursery on the first floor" {
  air 21 C, 50 % RH
}

recipe clear {
  for   wood
  layer waterborne_polyurethane #! sleeping-in-fumes
  wait  until cured
}

job lid {
  piece box
  in    nursery
  apply clear to lid
}
`,
    },
  ],
  passing: [
    {
      title: "Nobody sleeps there; and a wardrobe from a bedroom",
      text: `## For the wardrobe of the guest bedroom.
recipe wardrobe {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  note   "Nobody sleeps in the room until it is cured."
  note   "It goes back to the bedroom once it is cured."
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  checks: { onRun: check },
};

const SLEEPS = /\b(?:sleeps?|sleeping|asleep|(?:spends?|stays?)\s+the\s+night|in\s+bed)\b/iu;
const ROOM =
  /\b(?:room|beside|here|there|where|next\s+to|in\s+the\s+(?:loft|studio|workshop|shop|shed)|overnight|bedroom|nursery)\b/iu;
const IN_BEDROOM =
  /\b(?:in|inside)\s+(?:the|a|her|his|my|our|their)\s+(?:\w+\s+){0,2}?(?:bedroom|nursery|dormitory|children['’]s\s+room|baby['’]s\s+room)\b/iu;
const DRIES =
  /\b(?:dr(?:y|ies|ied|ying)|done|work(?:ed)?|coat(?:ed)?|brush(?:ed)?|spray(?:ed)?|varnish(?:ed)?|paint(?:ed)?|cures?|cured|left|stand[s]?)\b/iu;
const DENIED =
  /\b(?:no|not|nobody|none|never|nor|without|until|till|once|after|empty|elsewhere|another)\b|n['’]t\b/iu;
const BEDROOM =
  /\b(?:bedroom|nursery|dormitory|children['’]s\s+room|baby['’]s\s+room|sleeping\s+(?:room|quarters))\b/iu;

const speaks = (text: string): boolean =>
  text
    .split(/[.;!?\n]/u)
    .some(
      (part) =>
        !DENIED.test(part) &&
        ((SLEEPS.test(part) && ROOM.test(part)) || (IN_BEDROOM.test(part) && DRIES.test(part))),
    );

function check({ run, report }: RunContext): void {
  const first = run.moments.find(({ action }) => action.op === "layer")?.action;
  if (!first) return;
  const note = run.moments.find(({ action }) => speaks(textOf(action) ?? ""))?.action;
  if (note) report(note, REPORT);
  else if (isBedroom(run)) report(first, { ...REPORT, headline: "This shop is a room that people sleep in" });
}

const isBedroom = ({ shop }: SurfaceRun): boolean =>
  shop !== undefined &&
  [shop.title ?? "", shop.docs].some(
    (text) =>
      (BEDROOM.test(text) || speaks(text)) &&
      !/\b(?:former|old|empty|unused|no\s+longer|nobody)\b/iu.test(text),
  );

const REPORT = {
  headline: "Somebody sleeps where this finish dries",
  why: "It gives off vapour for days, most of it in the first night, and a sleeper breathes it for hours without noticing.",
  remedy:
    "Work and let it dry in another room, or let nobody sleep there until the smell is gone; babies and pregnant women not before the full cure.",
} as const;
