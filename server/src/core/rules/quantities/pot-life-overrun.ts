/**
 * One coat on all the pieces takes longer than a mixed two-part material can be used. Every coat is taken to be mixed
 * fresh, so waits between coats do not count.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { formatDuration } from "../../measure/format-amount.ts";
import type { Material } from "../../model/model.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { coatHoursOnAll } from "../../totals/task-plan.ts";
import { tellingSentences } from "../hazard-words.ts";
import type { RunContext, TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine } from "../spoken-words.ts";
import { fitting, related, useName } from "../texts.ts";
import { toldLines } from "../told-lines.ts";

export const potLifeOverrun: TradeRule = {
  id: "pot-life-overrun",
  group: "quantities",
  severity: "warning",
  docs: {
    summary: "Putting on one coat takes longer than the mixed two-part material can be used.",
    why: "Past its pot life a two-part material thickens and hardens in the pot and the gun, and what still goes on does not flow or hold.",
    remedy:
      "Mix in portions that are used up within the pot life, do fewer pieces at a time, or work faster.",
    sources: ["common practice, no source: the label's pot life"],
  },
  failing: [
    {
      title: "Mixed in the morning for the next day",
      text: `material part_b "Hardener" {
  family hardener
}
material bar_clear "Two-part clear" {
  family   waterborne two part polyurethane
  mix      10:1 with part_b
  pot_life 4 h
}
recipe bar {
  for    wood
  safety gloves, eye_protection, ventilate
  layer  bar_clear, by roller
  wait   overnight
  layer  bar_clear, by roller, "from the pot mixed yesterday morning, kept under a lid" #! pot-life-overrun
  wait   until cured
  note   "What is mixed in the morning does fine for the next day if the lid is on." #! pot-life-overrun
  step   "mix enough at once for all four coats" #! pot-life-overrun
  note   "Mix enough of both for today and tomorrow." #! pot-life-overrun
}
`,
    },
    {
      title: "What is left goes on the next day",
      text: `material hardener {
  family acetone
}

material two_part {
  family   conversion varnish
  mix      10:1 with hardener
  pot_life 4 h
}

recipe two_coats {
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  note   "What is left in the pot goes on the next day, just stir it." #! pot-life-overrun
  note   "Stir the hardener into the whole tin at noon, put the lid on, and spray from it again the next day." #! pot-life-overrun
  layer  two_part, by hvlp
  wait   until cured
}
`,
    },
    {
      title: "Five hours for a pot of four",
      text: `material hardener {
  family acetone
}

material two_part {
  family   conversion varnish
  mix      10:1 with hardener
  pot_life 4 h
}

recipe one_coat {
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  two_part, by hvlp, takes 5 h #! pot-life-overrun
  wait   until cured
}
`,
    },
    {
      title: "Twenty pieces, one after another",
      text: `material two_part {
  family   conversion varnish
  pot_life 4 h
}

piece door {
  surface front {
    shape panel 600 mm x 500 mm
    wood  MDF
    wear  light
  }
}

recipe one_coat {
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  two_part, by hvlp, takes 15 min #! pot-life-overrun
  wait   until cured
}

job doors {
  piece door x 20
  apply one_coat to front
}
`,
    },
  ],
  passing: [
    {
      title: "A tin that is stirred whole, mixed in portions and mixed afresh",
      text: `material two_part {
  family   conversion varnish
  pot_life 4 h
}

recipe two_coats {
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  note   "Stir the whole tin in the morning, and take from it what you mix the next day."
  note   "Never mix the hardener into the whole tin to spray from it the next day."
  note   "Mix the whole tin for the eight doors, and the next day a fresh one with the same hardener."
  note   "Mix the two parts anew for all three coats, each time only enough for that coat."
  note   "Mix a new small batch for every coat and throw away what is left after two hours."
  layer  two_part, by hvlp
  wait   until cured
}
`,
    },
    {
      title: "Twenty small tops from one gun, which is set up once",
      text: `material two_part "Two-part coating" {
  family   two part polyurethane
  pot_life 1 h
  mix      2:1 with part_b
}
material part_b "Hardener" {
  family hardener
}
piece bedside {
  surface top {
    shape panel 500 mm x 420 mm
    wood  maple
  }
}
shop booth {
  crew 1
}
recipe sprayed {
  for    wood
  safety supplied_air, gloves, eye_protection, ventilate, no_ignition
  layer  two_part, by hvlp
  wait   until cured
}
job tops {
  piece bedside x 20
  in    booth
  apply sprayed to top
}
`,
    },
    {
      title: "Sixteen pieces in four hours",
      text: `material two_part {
  family   conversion varnish
  pot_life 4 h
}

piece door {
  surface front {
    shape panel 600 mm x 500 mm
    wood  MDF
    wear  light
  }
}

recipe one_coat {
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  two_part, by hvlp, takes 15 min
  wait   until cured
}

job doors {
  piece door x 16
  apply one_coat to front
}
`,
    },
  ],
  checks: {
    onRun: inWords,
    onLayer: ({ action, run, report }) => {
      const material = action.use.material;
      const family = material?.family;
      // A filler is mixed a lump at a time; what one lump takes only its label tells.
      const isMixedAtOnce = family?.twoPart && family.role !== "filler";
      const life = material?.potLife?.value ?? (isMixedAtOnce ? family.potLife : undefined);
      if (!material || life === undefined) return;
      const takes = coatHoursOnAll(run, action);
      if (takes <= life + 1e-6) return;
      const name = useName(action.use);
      report({
        headline: t`One coat takes ${formatDuration(takes)}, and the pot life is ${formatDuration(life)}`,
        why:
          run.pieces > 1
            ? t`One coat of ${name} on ${run.pieces} pieces takes longer than it can be used once it is mixed. Past its pot life it thickens, and what still goes on does not flow out or hold.`
            : t`One coat of ${name} takes longer than it can be used once it is mixed. Past its pot life it thickens, and what still goes on does not flow out or hold.`,
        remedy: t`Mix in portions that are used up in time, or do fewer pieces at once.`,
        related: material.potLife?.place ? [related(material.potLife.place, t`The label's pot life`)] : [],
      });
    },
  },
};

/** What stood overnight, or is left from another day, and is used after all. */
const LEFT_OVER =
  /\b(?:what(?:['’]s|\s+is)?\s+(?:left|stands?|remains|over)|left[\s-]?overs?|the\s+(?:rest|remainder)|yesterday['’]s|mix(?:ed)?\s+(?:\S+\s+){0,4}?for\s+the\s+whole\s+(?:week|job|weekend))\b/iu;
const NEXT_DAY =
  /\b(?:next\s+(?:day|morning|week)|tomorrow|overnight|in\s+the\s+morning|days?\s+later|second\s+day|yesterday['’]s|(?:mon|tues|wednes|thurs|fri|satur|sun)day|whole\s+(?:week|weekend))\b/iu;
const USED =
  /\b(?:goes?\s+on|do(?:es)?\s+for|us(?:e|ed|ing)|appl(?:y|ied|ies)|spray\w*|brush\w*|stir\w*|roll\w*)\b/iu;
const DAY =
  "monday|monday's|tuesday|tuesday's|wednesday|wednesday's|thursday|thursday's|friday|friday's|saturday|saturday's|sunday|sunday's|tomorrow|tomorrow's|next_day|day_after|next_morning|weekend|week|days|fortnight|another_day";
const YESTERDAY = "yesterday|yesterday's|day_before|night_before|evening_before|last_night";
/** One mix for coats of several days. */
const FOR_DAYS = phrases(
  `same|mixed|catalysed|catalyzed can|tin|pot|batch|mix|mixture|cup|lot|bucket ... does|do|serves|lasts|good|use|used|goes|for|keeps|again ... ${DAY} !fresh !harden* !throw* !new`,
  `mixed|stirred|catalysed|catalyzed ... does|do|lasts|good|fine|keeps|holds|serves ... ${DAY} !fresh !harden* !throw* !new !each !not !never`,
  `mix|stir|catalyse|catalyze|activate ... whole|all|enough ... ${DAY} ... ${DAY} !fresh !each !part_a`,
  `mix|stir|catalyse|catalyze|activate ... enough|all|whole ... today ... ${DAY} !fresh !each !part_a`,
  `mix|stir|catalyse|catalyze ... enough|whole .. for|can|tin ... week|weekend|days|fortnight !fresh !each`,
  `pot|mix|mixture|batch|tin|can|cup|lot|left|rest|bucket ... mixed|catalysed|catalyzed|stirred ... ${YESTERDAY} !fresh !harden* !throw* !thrown !new !not !never`,
  `mixed|catalysed|catalyzed ... ${YESTERDAY} ... lid|covered|sealed|kept|still|again !fresh !harden* !throw* !thrown !not !never`,
  `mixed|catalysed|catalyzed ${YESTERDAY} !fresh !harden* !throw* !thrown !not !never`,
  "mix|mixture|batch|pot|cup .. keeps|lasts|good|usable ... days|week|weekend|fortnight !fresh !unmixed !parts",
);
const pastIt = (): string =>
  t`Past its pot life it thickens and hardens, and what still goes on does not flow out or hold.`;

/** One mix for all coats, however far apart they come. */
const MIX = "mix|mixed|mixing|stir|stirred|catalyse|catalyze|activate|blend ...";
const FOR_ALL_COATS = phrases(
  `${MIX} both|all|two|three|every|whole|entire coats|coat|layers !each !fresh !new !separate* !between`,
  `${MIX} all|the two|three|four|five|six coats|layers !each !fresh !new !separate* !between`,
  `${MIX} coats|coat|layers ... at_once|in_one_go|together|one_batch|one_lot|in_advance|beforehand !each !fresh !new`,
  "both|all|two|three coats|layers ... from|out_of|with|of one|same|that|single mix|batch|pot|cup|mixture|lot|mixing",
  "half .. now|first|morning ... half|rest ... after|later|second|afternoon|lunch|evening !fresh",
  "second|next|last|third coat ... from|out_of|with same|first|morning's|leftover mix|batch|pot|cup|mixture|lot !fresh !new",
);
/** Hardener that goes into all there is, and material that is taken from that same mix. */
const WHOLE_MIXED =
  /\b(?:(?:mix|stir|pour|add|put|tip|blend|empty)\w*\s+(?:\S+\s+){0,3}?(?:hardener|catalyst|activator|(?:part|component)\s+b)\s+(?:in(?:to)?|to|with)\s+(?:\S+\s+){0,2}?(?:whole|entire|full|all)|(?:catalyse|catalyze|activate)\s+(?:the\s+)?(?:whole|entire|full|all))\b/iu;
const TAKEN_AGAIN =
  /\b(?:(?:from|out\s+of|with|of)\s+(?:it|that|the\s+same)|the\s+same\s+(?:can|tin|pot|mix\w*|batch|bucket)|again|still)\b/iu;
const MIXED_AFRESH = /\b(?:fresh\w*|new|another)\b/iu;
const THROWN_AWAY = /\b(?:throw\w*|thrown|waste|harden(?:s|ed|ing)?|bin|dispos\w*|discard\w*|depot)\b/iu;

function inWords({ run, report }: RunContext): void {
  const short = run.moments.flatMap(({ action }) => {
    const material = action.op === "layer" ? action.use.material : undefined;
    const life =
      material?.potLife?.value ?? (material?.family?.twoPart ? material.family.potLife : undefined);
    return material && life !== undefined && life < 24 ? [{ material, life }] : [];
  })[0];
  if (!short) return;
  const { material, life } = short;
  const longest = hoursFromMixing(run, material);
  for (const action of toldLines(run))
    if (longest > life && saidOnLine(action, FOR_ALL_COATS) !== undefined)
      report(action, {
        headline: t`Mixed for coats ${formatDuration(longest)} apart; its pot life is ${formatDuration(life)}`,
        why: pastIt(),
        remedy: t`Mix fresh for each coat, only as much as is used up in time.`,
        related: material.potLife?.place ? [related(material.potLife.place, t`The label's pot life`)] : [],
      });
    else if (
      saidOnLine(action, FOR_DAYS) !== undefined ||
      tellingSentences(action, LEFT_OVER, NEXT_DAY, USED).some((each) => !THROWN_AWAY.test(each)) ||
      tellingSentences(action, WHOLE_MIXED, TAKEN_AGAIN, NEXT_DAY, USED).some(
        (each) => !THROWN_AWAY.test(each) && !MIXED_AFRESH.test(each),
      )
    )
      report(action, {
        headline: fitting([
          t`\`${material.name}\` is used a day after mixing; its pot life is ${formatDuration(life)}`,
          t`Used a day after mixing; the pot life is ${formatDuration(life)}`,
        ]),
        why: pastIt(),
        remedy: t`Mix fresh for each coat, only as much as is used up in time; let what is left harden and take it where your local waste service says.`,
        related: material.potLife?.place ? [related(material.potLife.place, t`The label's pot life`)] : [],
      });
}

/** Hours that are sure to pass between the first and the last coat of a material. */
function hoursFromMixing({ moments }: SurfaceRun, material: Material): number {
  const coats = moments.filter(({ action }) => action.op === "layer" && action.use.material === material);
  const [first, last] = [coats[0], coats.at(-1)];
  return first && last ? last.before.clock.hours - first.after.clock.hours : 0;
}
