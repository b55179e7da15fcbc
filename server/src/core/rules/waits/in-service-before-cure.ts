/**
 * Furniture that goes back into use before its film is hard: the date wanted comes before the cure, or the recipe for
 * a surface of hard wear ends while its last film is still soft.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { momentText } from "../../measure/figures.ts";
import { endOfDateWanted, hoursBetween, momentAfter } from "../../measure/iso-dates.ts";
import { onceFor } from "../../once.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { DryingTime } from "../../surface/drying-time.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { type Coat, hasReached, isFilm } from "../../surface/state.ts";
import { waitForCure } from "../remedy-fixes.ts";
import type { JobContext, TradeRule } from "../rule.ts";
import {
  briefCoatName,
  missingTo,
  namedByParameter,
  neededIn,
  shortWait,
  timePlaces,
  uncured,
} from "../short-wait.ts";
import { textOf } from "../spoken-words.ts";
import { related } from "../texts.ts";

export const inServiceBeforeCure: TradeRule = {
  id: "in-service-before-cure",
  group: "waits",
  severity: "warning",
  // Over oil that is not hard the last film does not get hard either.
  secondaryTo: ["child-or-food-surface", "not-for-this-use", "waterborne-over-uncured-oil"],
  docs: {
    summary:
      "The date wanted comes before the full cure, or the recipe for a surface of hard wear ends before it. Where a film has had days to harden and nobody wears it hard, or where a note says how gently it is used until then, the date of the cure is information.",
    why: "A film that is dry is not yet hard: plates and books stick to it, water marks it, and it scratches.",
    remedy:
      "Give the film its full cure before hard use: a later date, an earlier start, a faster clear, or `wait until cured` at the end.",
    sources: [
      "common practice, no source: the label's full cure before hard use",
      "ASTM D1640: dry-through is not yet the hardness of service",
    ],
  },
  failing: [
    {
      title: "Wanted four days after the last coat",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop warm_room {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}

recipe one_coat {
  layer waterborne_polyurethane
  wait  until recoat
}

job shelves {
  piece shelf
  in    warm_room
  start 2027-03-08 09:00
  ready 2027-03-12 #! in-service-before-cure
  apply one_coat to top
}
`,
    },
    {
      title: "A table top that ends after a day",
      text: `piece table {
  surface top {
    shape panel 800 mm x 800 mm
    wood  beech
    wear  hard
  }
}

recipe three_coats {
  safety dust_mask
  layer  waterborne_polyurethane x 3 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   24 h #! in-service-before-cure
}

job tables {
  piece table
  apply three_coats to top
}
`,
    },
    {
      title: "No wait at all at the end",
      text: `piece table {
  surface top {
    shape panel 800 mm x 800 mm
    wood  beech
    wear  hard
  }
}

recipe three_coats {
  safety dust_mask
  layer  waterborne_polyurethane x 3 { #! in-service-before-cure
    wait until recoat
    step sand 220
    step dust
  }
}

job tables {
  piece table
  apply three_coats to top
}
`,
    },
  ],
  passing: [
    {
      title: "Wanted on the day of the cure",
      text: `material quick_clear {
  family waterborne polyurethane
  cure   7 days
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop warm_room {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}

recipe one_coat {
  layer quick_clear
  wait  until recoat
}

job shelves {
  piece shelf
  in    warm_room
  start 2027-03-08 09:00
  ready 2027-03-15
  apply one_coat to top
}
`,
    },
    {
      title: "Hard wear, and a note says how gently it is used until the cure",
      text: `piece stage {
  surface boards {
    shape area 12 m2
    wood  ash
    wear  hard
  }
}

recipe three_coats {
  safety dust_mask
  layer  waterborne_polyurethane x 3 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   7 days
  note   "Soft shoes only until it has had its month."
}

job floor {
  piece stage
  apply three_coats to boards
}
`,
    },
    {
      title: "A table top that waits for its cure",
      text: `piece table {
  surface top {
    shape panel 800 mm x 800 mm
    wood  beech
    wear  hard
  }
}

recipe three_coats {
  safety dust_mask
  layer  waterborne_polyurethane x 3 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   504 h
}

job tables {
  piece table
  apply three_coats to top
}
`,
    },
    {
      title: "Normal wear may cure in use, and no date is wanted",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

recipe two_coats {
  safety dust_mask
  layer  waterborne_polyurethane x 2 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   24 h
}

job shelves {
  piece shelf
  apply two_coats to top
}
`,
    },
  ],
  looksAt: ({ kind }) => kind !== "assumed",
  checks: {
    onRun: ({ run, units, report }) => {
      if (run.kind === "assumed" || run.surface?.wear.value !== "hard" || !run.final.certain) return;
      // A later job goes on from here before the piece is used.
      if (run.continued) return;
      const film = lastFilm(run);
      const last = run.moments.findLast(({ action }) => action.op !== "note")?.action;
      const missing = film && missingTo(run.final, film, "cured");
      if (!last || !missing) return;
      const { needed, had } = missing;
      const over = layerOver(run, film);
      // Whoever writes how it is to be treated until then has thought of it.
      if (!needed.tooCold && had >= DRY_ENOUGH_H && saysGentleUse(run)) return;
      if (isHardEnough(needed, had)) return;
      report(
        last,
        shortWait(
          neededIn({ run, units }, needed, had),
          {
            headlines: (after, need) =>
              needed.tooCold
                ? [briefCoatName(film), t`The last coat`].map(
                    (name) => t`${name} may never cure in this cold`,
                  )
                : [briefCoatName(film), t`its last coat`].map((name) =>
                    after
                      ? t`Put to use ${after} after ${name}, which cures in ${need}`
                      : t`The recipe ends with ${name}, which cures in ${need}`,
                  ),
            why: t`\`${run.label}\` is for hard wear: until it is hard through, the film scratches, takes rings and sticks to what stands on it.`,
            instead: "wait until cured",
            ...(!over && last.op === "wait"
              ? { tooShort: last }
              : { where: over ? t`above \`${over.use.name}\`` : t`at the end` }),
            ifReplaced: t`whatever goes on here last, end with \`wait until cured\``,
            also: t`keep the piece out of use until then`,
            ...namedByParameter(film),
            level: "warning",
            hasMargin: false,
          },
          {
            related: [
              { place: film.place, message: t`The last film goes on here` },
              ...timePlaces(run, needed, film.material),
              ...(run.surface.wear.place
                ? [related(run.surface.wear.place, t`The wear of the surface`)]
                : []),
            ],
            causes: [uncured(film)],
            fixes: [waitForCure(last, over)],
          },
        ),
      );
    },
    onJob: (ctx) => {
      const { job, totals } = ctx;
      if (!job.ready || totals.finish === null || totals.in_service === null) return;
      const end = endOfDateWanted(job.ready);
      if (totals.finish > end || totals.in_service <= end) return;
      const uncuredLast = ctx.runs
        .map((run) => ({ run, coat: lastCoat(run) }))
        .find(({ run, coat }) => coat && hasReached(run.final, coat, "cured") === "no")?.coat;
      const eased = ctx.runs.every((run) => mayCureInUse(run, end, totals.in_service!));
      ctx.reportAt(job.ready.place, {
        ...(eased ? { severity: "information" as const } : {}),
        headline: t`Wanted by ${dayText(end)}, but cured only on ${dayText(totals.in_service)}`,
        why: t`The work is done on ${momentText(totals.finish)}, in time, but the last layer has its full cure only on ${momentText(totals.in_service)}: a film that is dry but not hard marks, sticks and scratches in use.`,
        remedy: t`Agree on a later date, start earlier, or hand the piece over with a word about careful use until then.`,
        ...(uncuredLast ? { causes: [uncured(uncuredLast)] } : {}),
        related: lastLayers(ctx),
      });
    },
  },
};

/** Hours of drying after which a film bears light use: common practice of labels, no source. */
const DRY_ENOUGH_H = 72;
/** After so many a film with light or normal wear goes on to cure in use, as its label says: common practice, no source. */
const LIGHT_USE_H = 168;

/**
 * Whether a piece may be handed over on the date wanted and cure in use: where its recipe says how gently it is to be used
 * till then, and where it is not worn hard and the recipe itself lets it harden for days, or the cure is only a typical
 * figure and a week has passed.
 */
function mayCureInUse(run: SurfaceRun, end: string, cured: string): boolean {
  const coat = lastCoat(run);
  const missing = coat && missingTo(run.final, coat, "cured");
  if (!coat || !missing) return true;
  const { needed, had } = missing;
  if (needed.tooCold || (run.piece?.useBy && run.piece.useBy.value !== "adults")) return false;
  const byThen = needed.hours - hoursBetween(end, cured);
  if (byThen < DRY_ENOUGH_H) return false;
  if (saysGentleUse(run)) return true;
  if (run.surface?.wear.value === "hard") return isHardEnough(needed, byThen);
  return had >= OWN_HARDENING_H || (needed.isTypical && byThen >= LIGHT_USE_H);
}

/** Two thirds of a cure that no label states bear hard wear as well: the figure is typical. Common practice, no source. */
const isHardEnough = ({ tooCold, isTypical, hours }: DryingTime, had: number): boolean =>
  tooCold === undefined && isTypical && had >= (hours * 2) / 3;

/** Hours at the end of a recipe that nobody waits for a recoat. */
const OWN_HARDENING_H = 96;

/** Words on how a piece is treated until its film is hard: "soft shoes only for a month". */
const saysGentleUse = onceFor((run: SurfaceRun): boolean =>
  [
    ...run.moments.map(({ action }) => textOf(action) ?? ""),
    ...[run.recipe, ...run.applied.map(({ recipe }) => recipe), run.piece, run.job].map(
      (named) => named?.docs ?? "",
    ),
    ...(run.piece?.notes ?? []),
    ...(run.job?.notes ?? []),
  ].some((text) => text.split(/[.;!?]\s/u).some((each) => GENTLE.test(each) && MEANWHILE.test(each))),
);

const GENTLE =
  /\b(?:gentl[ey]|care(?:fully?)?|light(?:ly)?|soft|slippers|socks|easy|nothing|no\s+(?:heavy|hot|wet|rugs?|mats?|cloths?|wash\w*|scrub\w*|books?|rings?|cups?|load)|(?:not|never|don't)\s+(?:be\s+)?(?:wash|scrub|load|wip|stack|put|cover)\w*|keep\s+(?:\w+\s+){1,4}off)\b/iu;
const MEANWHILE =
  /\b(?:until|till|for|before|first|after)\b[^.;]{0,40}?\b(?:days?|weeks?|fortnight|months?|cure\w*|hard\w*)\b/iu;

/** The topmost new coat that builds a film. */
const lastFilm = (run: SurfaceRun): Coat | undefined =>
  run.final.layers.findLast((coat) => coat.origin === "new" && isFilm(coat));

/** The layer that goes over the last film, oil or wax: `wait until cured` below it is about that one. */
const layerOver = (run: SurfaceRun, film: Coat): LayerAction | undefined =>
  run.final.layers.find((coat) => coat.serial > film.serial && coat.action)?.action;

const lastCoat = (run: SurfaceRun): Coat | undefined =>
  run.final.layers.findLast((layer) => layer.origin === "new");

/** The day of an ISO date-time; midnight is the end of the day before. */
const dayText = (moment: string): string => momentAfter(moment, -1, "second").split("T")[0]!;

const lastLayers = (ctx: JobContext) =>
  ctx.runs.flatMap((run) => {
    const coat = lastCoat(run);
    return coat ? [{ place: coat.place, message: t`The last layer of \`${run.label}\` goes on here` }] : [];
  });
