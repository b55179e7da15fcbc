/**
 * Lye or acid that is left in the wood: it goes on working under the coat, and burns whoever sands it.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { RelatedPlace } from "../../findings.ts";
import type { DutyWord } from "../../knowledge/duties.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { placeKey } from "../../place.ts";
import type { Action, LayerAction, StepAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isDrySanding, type Residue, reactiveIn, residuesBefore } from "../chemical-residues.ts";
import { isStated } from "../duty-check.ts";
import { isWooden } from "../queries.ts";
import type { MomentContext, RunContext, TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine, textOf } from "../spoken-words.ts";
import { related } from "../texts.ts";
import { toldLines } from "../told-lines.ts";

export const causticOrAcidLeftIn: TradeRule = {
  id: "caustic-or-acid-left-in",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "Wood that was washed with lye or a strong acid, or bleached with one, is sanded or coated and was not rinsed since. Coated after a rinse with water alone, it is a hint to neutralise it.",
    why: "Lye and acid crystals go on working in the wood: they soften and discolour the finish over them, and their dust burns eyes and lungs when the wood is sanded.",
    remedy:
      "Rinse with plenty of water. Then neutralise lye with a vinegar rinse and acid with baking soda or borax in water, rinse again, and let the wood dry.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "Wood bleach that does not say what it holds is sanded before a rinse",
      text: `recipe bleached {
  for    wood
  safety gloves, eye_protection, dust_mask
  step   bleach with wood_bleach
  wait   overnight
  step   sand 180 #! caustic-or-acid-left-in
  step   dust
  step   clean with water
  wait   72 h
}
`,
    },
    {
      title: "Oxalic acid for ink spots, oiled the next day",
      text: `material spot_acid "Oxalic acid in water" {
  family cleaner
}

recipe spotted {
  for    wood
  safety gloves, eye_protection, wet_rags
  step   clean with spot_acid
  wait   48 h
  layer  drying_oil, wiped off #! caustic-or-acid-left-in
  wait   until cured
}
`,
    },
    {
      title: "Oxalic acid that dried in the wood, sanded",
      text: `material spot_acid "Oxalic acid in water" {
  family wood bleach
}

recipe spotted {
  for    wood
  safety gloves, eye_protection, dust_mask
  step   bleach with spot_acid
  wait   48 h
  step   sand 180, 220 #! caustic-or-acid-left-in
  step   dust
}
`,
    },
    {
      title: "Lye rinsed with water alone: a hint",
      text: `material lye_wash "Lye for pale softwood" {
  family cleaner
}

recipe pale {
  for    wood
  safety gloves, eye_protection, wet_rags
  step   clean with lye_wash
  step   clean with water
  wait   72 h
  layer  drying_oil, wiped off #! caustic-or-acid-left-in
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Rinsed by the words of the step",
      text: `material oxalic "Oxalic acid bleach" {
  family wood bleach
}
recipe bleached {
  for    wood
  safety dust_mask, gloves, eye_protection, ventilate
  step   bleach with oxalic, leave 30 min
  step   clean "rinse twice with clean water"
  step   clean "baking soda in water to neutralise, then rinse"
  wait   48 h
  step   sand 150
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "A note between two rinses neutralises the lye",
      text: `material lye_starch "Lye in starch paste" {
  family paint stripper
}
recipe stripped {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate, dust_mask, no_ignition, wet_rags
  step   strip with lye_starch
  step   clean with water
  note   "Wash with three parts of vinegar to one of water to stop the lye."
  step   clean with water
  wait   72 h
  step   sand 150
  step   dust
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "Neutralised, rinsed and dried",
      text: `material lye_wash "Lye for pale softwood" {
  family cleaner
}

material sour "Vinegar rinse" {
  family cleaner
}

recipe pale {
  for    wood
  safety gloves, eye_protection, wet_rags
  step   clean with lye_wash
  step   clean with water
  step   clean with sour
  step   clean with water
  wait   72 h
  layer  drying_oil, wiped off
  wait   until cured
}
`,
    },
  ],
  checks: { onLayer, onStep, onRun },
};

const isLeft = ({ hazards, neutralised }: Residue): boolean =>
  !neutralised && (hazards.includes("strong base") || hazards.includes("strong acid"));

const causeOf = ({ step }: Residue): string => `residue of ${placeKey(step.place)}`;

const kindOf = ({ hazards }: Residue): string => (hazards.includes("strong base") ? t`Lye` : t`Acid`);

const neutraliserOf = ({ hazards }: Residue): string =>
  hazards.includes("strong base") ? t`a vinegar rinse` : t`baking soda or borax in water`;

const putOn = (residue: Residue): RelatedPlace =>
  related(residue.step.place, t`\`${residue.use.name}\` goes on here`);

function onLayer({ before, run, index, report }: MomentContext<LayerAction>): void {
  // Stripping residue and bleach have findings of their own, which ask for the same rinse.
  if (before.residue || isWooden(run) === "no") return;
  const residue = residuesBefore(run)[index]!.find(
    (it) => isLeft(it) && it.step.verb !== "bleach" && !it.sanded,
  );
  if (!residue) return;
  report({
    severity: residue.rinsed ? "hint" : "warning",
    headline: residue.rinsed
      ? t`\`${residue.use.name}\` was rinsed with water but not neutralised`
      : t`\`${residue.use.name}\` was never rinsed out of the wood`,
    why: t`${kindOf(residue)} that stays in the wood discolours and softens the finish, and its dust burns.`,
    remedy: residue.rinsed
      ? t`Neutralise it with ${neutraliserOf(residue)} and rinse again, or test the damp wood with indicator paper.`
      : howToRinse(residue),
    related: [putOn(residue)],
    causes: [causeOf(residue)],
  });
}

/** Dry crystals of oxalic acid or lye are what burns nose and lungs. */
function onStep(ctx: MomentContext<StepAction>): void {
  const { action, run, index, report } = ctx;
  if (!isDrySanding(action) || isWooden(run) === "no") return;
  const residues = residuesBefore(run)[index]!;
  const residue = residues.find((it) => isLeft(it) && !it.rinsed && !it.sanded);
  if (!residue) {
    if (residues.length === 0) reportUnnamedBleach(ctx);
    return;
  }
  const isRinsedNext = run.moments
    .slice(index + 1)
    .find((each) => each.action.op === "layer" || isWash(each.action));
  const isGuarded =
    action.verb === "scuff" &&
    ["dust_mask", "eye_protection", "gloves"].every((duty) => isStated(action, duty as DutyWord)) &&
    isRinsedNext !== undefined &&
    isWash(isRinsedNext.action);
  report({
    // Loose salts are rubbed off lye-treated softwood by hand, and it is washed then: common practice, no source.
    ...(isGuarded ? { severity: "information" as const } : {}),
    headline: t`The dust of \`${residue.use.name}\` burns: it was never rinsed out`,
    why: t`${kindOf(residue)} dries to crystals in the wood, and sanding throws them into eyes, nose and lungs.`,
    remedy: howToRinse(residue),
    related: [putOn(residue)],
    causes: [causeOf(residue)],
  });
}

const isWash = (action: Action): boolean =>
  action.op === "step" && action.verb === "clean" && (action.use?.name ?? "water") === "water";

/**
 * Wood bleach that does not say what it holds is lye with peroxide, or oxalic acid; either leaves what burns. Told at the
 * first sanding.
 */
function reportUnnamedBleach({ before: { bleached }, run, index, report }: MomentContext<StepAction>): void {
  if (!bleached || bleached.rinsed) return;
  const from = run.moments.findLastIndex(
    ({ action }, at) => at < index && action.op === "step" && action.verb === "bleach",
  );
  const { action } = run.moments[from] ?? {};
  if (action?.op !== "step" || (action.use?.material && reactiveIn(action.use.material).length > 0)) return;
  if (run.moments.slice(from, index).some((each) => each.action.op === "step" && isDrySanding(each.action)))
    return;
  report({
    headline: t`The dust of the bleach burns: it was never rinsed out`,
    why: t`Lye or oxalic acid dries to crystals in the wood, and sanding throws them into eyes, nose and lungs.`,
    remedy: t`Rinse it with \`step clean with water\`, neutralise it as its label says, rinse again and let the wood dry.`,
    related: [related(bleached.place, t`Bleached here`)],
    causes: [`residue of ${placeKey(bleached.place)}`],
  });
}

const howToRinse = (residue: Residue): string =>
  t`Rinse it with \`step clean with water\`, neutralise it with ${neutraliserOf(residue)}, rinse again and let the wood dry.`;

const CORROSIVE =
  "lye|caustic|caustic_soda|bleach|oxalic|oxalic_acid|acid|wood_bleach|drain_cleaner|potash|ammonia|part_a|part_b";
const IS_RINSED = "!rinsed !neutralised !neutralized !until !washed";

/** Words that tell to leave it in, or to sand or brush off what dried. */
const LEFT_IN = phrases(
  `leave|let .. ${CORROSIVE} .. in|on|inside|stay|remain !minutes !minute !hour !hours !overnight !rinse ${IS_RINSED}`,
  `${CORROSIVE} .. stays|remains in|on .. wood|pores|grain|it !minutes !hour !hours !overnight ${IS_RINSED}`,
  `no|not|never|don't|needn't|without|skip|forget|omit|spare rinse|rinsing|neutralising|neutralizing|neutralise|neutralize ... ${CORROSIVE} !before`,
  `no|not|never|don't|needn't wash|washing .. off|out .. ${CORROSIVE} !before`,
  `no|not|never|don't|needn't wash|washing .. ${CORROSIVE} off|out !before`,
  `no|not|needn't|don't .. need|have|bother .. rinse|rinsing|wash|washing|neutralise|neutralize ... ${CORROSIVE}`,
  `${CORROSIVE} .. needn't|need|has|must .. no|not|be .. rins*|wash*|neutralis*|neutraliz* !must_be !has_to !until`,
  `${CORROSIVE} ... need|needn't|requires no|not|be rinsing|rinse|rinsed|washing|neutralising|be_rinsed !needs_to_be !needs_rinsing`,
  `sand|brush|wipe|blow|scrape|sweep|dust|vacuum ... off|away|dry|down ... crystals|white ... ${CORROSIVE}|dry ${IS_RINSED}`,
  `sand|brush|wipe|blow|scrape|sweep|dust ... ${CORROSIVE}|crystals .. crystals|powder|bloom|off|away ${IS_RINSED} !water !wet !before`,
  `${CORROSIVE} ... dries|dry|dried|crystals ... sand|brush|wipe|blow|scrape|sweep ... off|away|down|crystals ${IS_RINSED} !water !wet !rinse`,
  `varnish|oil|coat|paint|lacquer|stain|wax|shellac .. straight|right|directly over|onto|on .. ${CORROSIVE} ${IS_RINSED}`,
  `${CORROSIVE} .. dry|dries|soak|soaks in !rinse !then !minutes`,
  `${CORROSIVE} ... no rinsing|rinse|neutralising`,
  `skip|forget|omit|spare|leave_out .. rinse|rinsing|neutralising|neutralizing ... ${CORROSIVE}`,
);

/** "Strip with lye, then let dry": without a word of a rinse. */
const DRIED_IN = phrases(
  `strip|wash|scrub|brush|dip|bleach|treat|mop|clean|lay|put ... ${CORROSIVE} ... dry|dries|dried ${IS_RINSED} !rinse !water !vinegar !neutralise !before`,
  `${CORROSIVE} ... strip|wash|scrub|bleach ... dry|dries|dried ${IS_RINSED} !rinse !water !vinegar !neutralise !before`,
);

/** Whether a line below, before anything goes on, rinses or neutralises. */
function isRinsedBelow({ moments }: SurfaceRun, action: Action): boolean {
  const below = moments.slice(action.index + 1);
  const end = below.findIndex((each) => each.action.op === "layer");
  return (end < 0 ? below : below.slice(0, end)).some(
    (each) => isWash(each.action) || RINSE_WORDS.test(textOf(each.action) ?? ""),
  );
}

const RINSE_WORDS = /\b(?:rins|neutrali|vinegar)/iu;

function onRun({ run, report }: RunContext): void {
  for (const action of toldLines(run))
    if (
      saidOnLine(action, LEFT_IN) !== undefined ||
      (saidOnLine(action, DRIED_IN) !== undefined && !isRinsedBelow(run, action))
    )
      report(action, {
        headline: t`These words leave lye, acid or bleach in the wood`,
        why: t`It dries to crystals that burn eyes, nose and lungs when they are sanded or brushed, and it spoils the finish.`,
        remedy: t`Rinse it with water, neutralise it as its label says, rinse again and let the wood dry.`,
      });
}
