/**
 * Somebody sleeps where a finish dries.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { saidIn } from "../../knowledge/phrases.ts";
import type { Action } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { RunContext, TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine } from "../spoken-words.ts";
import { toldLines } from "../told-lines.ts";

export const sleepingInFumes: TradeRule = {
  id: "sleeping-in-fumes",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A note, or the shop's own words, have somebody sleep, or have children, animals or others stay, in the room where a finish is put on or dries.",
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
      title: "Children help, and the dog stays",
      text: `recipe wardrobe {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  note   "Let the children help with the first coat." #! sleeping-in-fumes
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
      title: "The shed behind the nursery",
      text: `piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}

shop shed "Shed behind the nursery" {
  air 21 C, 50 % RH
}

recipe clear {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}

job lid {
  piece box
  in    shed
  apply clear to lid
}
`,
    },
    {
      title: "Nobody sleeps there; and a wardrobe from a bedroom",
      text: `## For the wardrobe of the guest bedroom.
recipe wardrobe {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  note   "Nobody sleeps in the room until it is cured."
  note   "It goes back to the bedroom once it is cured."
  note   "The nursery is aired two days before the child sleeps there."
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  checks: { onRun: check },
};

const ROOM_OF =
  "bedroom|nursery|dormitory|children's_room|baby's_room|child's_room|kid's_room|sleeping_room|sleeping_quarters";
const DRIES =
  "dry|dries|dried|drying|done|do|work|worked|working|coat|coated|brush*|spray*|varnish*|paint*|cure|left|leave|stand|strip|stripped|oil|wax|finish|lacquer*";
const HERE =
  "other_end|room|beside|here|there|where|next_to|bench|table|workshop|shop|shed|loft|studio|garage|it|corner|overnight|bedroom|nursery|same|while|watch|meanwhile";
/** Who is not there, or only when all is over. */
const NOT_THEN =
  "!elsewhere !nobody !once !until !till !after !cured !empty !gone !goes_outside !moves_out !another !away !afterwards !later !week !weeks !holidays !closed !carved !leave_house !aired !before_the_child !before_anyone !before_anybody !before_he !before_she !before_they !before_sleeping";

/** Somebody is in the room, or it is one that people sleep in. */
const IN_FUMES = phrases(
  `sleep|sleeping|asleep|nap|doze|spend_the_night|stay_the_night|in_bed ... ${HERE} ${NOT_THEN} !cover_sheet`,
  `sleep|sleeping|asleep|nap & room|beside|overnight|bedroom|nursery ${NOT_THEN}`,
  `in|inside|into .. ${ROOM_OF} & ${DRIES} ${NOT_THEN} !bed_from`,
  `${ROOM_OF} .. overnight|same_evening|same_night ${NOT_THEN}`,
  `let|have|get|ask .. CHILD .. help|play|watch|paint|hold|run|brush|join|sit|do|rub|sand|strip|varnish|stir ${NOT_THEN} !soap`,
  `CHILD .. help|plays|watch|watches|paint|holds|join|crawl|run|sits|naps|reads|reading|nearby ... ${HERE}|along|brush|coat|can|usual ${NOT_THEN}`,
  `CHILD .. stay|stays|remain|remains|colour|draw ... ${HERE} ${NOT_THEN}`,
  `CHILD ... hand|hands|pass|passes|fetch|fetches|bring|brings .. me|us|you .. brush|tin|can|paper|rag|cloth|tools|varnish ${NOT_THEN}`,
  `let|have .. CHILD .. pick|peel|scrape|chip|flake|wipe|sweep|stay|colour|draw|touch ${NOT_THEN} !soap`,
  `CHILD|SOMEBODY .. can|may|carry|carries|go|goes|keep|continue .. living|reading|working|playing|sleeping|sitting|watching|eating|learning ... ${HERE}|usual ${NOT_THEN} !another`,
  `PET .. sleep|lies|sits|stay|run|lives|may|can ... in|room|bench|table|where|under|beside|bed|here|there|usual ${NOT_THEN} !out !outside`,
  `PET|budgie's|bird's|parrot's|canary's|dog's|cat's .. cage|basket|bowl|tank .. stay|stand|in|hangs|can ${NOT_THEN} !outside !out`,
  `cot|crib|cradle|pram|playpen|baby's_bed .. stay|stand|in|beside ... room|where|here|varnish|dries|coat ${NOT_THEN} !outside !out !workshop`,
  `CHILD|grandmother|grandma|granny|grandfather|grandpa|mother|wife|husband|sister|family|tenant|guest|lodger|patient .. sits|lives|stay|knits|knitting|rests|lies|reads|watches ... room|beside|while|here ${NOT_THEN}`,
  `SOMEBODY .. meets|meet|gathers|gather|rehearses|waits|wait|sits|sit ... room|beside|hall|here & dries|while|meanwhile|wet ${NOT_THEN}`,
  `pregnant .. sister|wife|friend|woman|helper|daughter|colleague ... help|hold|strip|varnish*|brush*|sand|paint|stir|work|can|may ${NOT_THEN} !away`,
  `bring|put|carry|take|move .. cot|crib|cradle|bed|cabinet|wardrobe|chest|it ... back|into ... ${ROOM_OF}|bedside ... same|wet|tacky|finish*|dries|drying|tonight|evening ${NOT_THEN}`,
  `child|children|kid|family|tenant|guests|readers|pupils|students .. need|needn't|don't .. not|leave|out|move|go !back`,
);

const BEDROOM = phrases(`${ROOM_OF}`);

/** "Shed behind the nursery" is none. */
const namesBedroom = (text: string): boolean =>
  saidIn(BEDROOM, text) !== undefined && !/\b(?:shed|barn|garage|workshop|behind)\b/iu.test(text);

const speaks = (action: Action): boolean => saidOnLine(action, IN_FUMES) !== undefined;

function check({ run, report }: RunContext): void {
  if (!run.moments.some(({ action }) => isFoul(action))) return;
  const note = toldLines(run).find(speaks);
  if (note) report(note, inTheRoom());
  const first = run.moments.find(({ action }) => action.op === "layer")?.action;
  if (!note && first && isBedroom(run))
    report(first, { ...inTheRoom(), headline: t`This shop is a room that people sleep in` });
}

/** Gives off vapour or dust. */
const isFoul = (action: Action): boolean =>
  action.op === "layer" ||
  (action.op === "step" && ["strip", "scrape", "sand", "dewax", "bleach"].includes(action.verb));

const isBedroom = ({ shop }: SurfaceRun): boolean =>
  shop !== undefined &&
  [shop.title ?? "", shop.docs].some(
    (text) =>
      (namesBedroom(text) || saidIn(IN_FUMES, text) !== undefined) &&
      !/\b(?:former|old|empty|unused|no\s+longer|nobody)\b/iu.test(text),
  );

const inTheRoom = () => ({
  headline: t`Somebody is in the room where this finish goes on or dries`,
  why: t`It gives off vapour for days, most of it in the first night. Sleepers, children and animals breathe it for hours, and children touch what is wet.`,
  remedy: t`Work and let it dry in another room, and let nobody sleep or stay there until the smell is gone; babies and pregnant women not before the full cure.`,
});
