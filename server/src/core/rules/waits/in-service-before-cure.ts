/**
 * Furniture that goes back into use before its film is hard: the date wanted comes before the cure, or the recipe for
 * a surface of hard wear ends while its last film is still soft.
 */

import { momentText } from "../../measure/figures.ts";
import { endOfDateWanted, momentAfter } from "../../measure/iso-dates.ts";
import type { LayerAction } from "../../surface/actions.ts";
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
import { related } from "../texts.ts";

export const inServiceBeforeCure: TradeRule = {
  id: "in-service-before-cure",
  group: "waits",
  severity: "warning",
  // Over oil that is not hard the last film does not get hard either.
  secondaryTo: ["child-or-food-surface", "waterborne-over-uncured-oil"],
  docs: {
    summary:
      "The date wanted comes before the full cure, or the recipe for a surface of hard wear ends before it.",
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
      title: "Wanted a week after the last coat",
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
  ready 2027-03-15 #! in-service-before-cure
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
  checks: {
    onRun: ({ run, report }) => {
      if (run.kind === "assumed" || run.surface?.wear.value !== "hard" || !run.final.certain) return;
      // A later job goes on from here before the piece is used.
      if (run.continued) return;
      const film = lastFilm(run);
      const last = run.moments.findLast(({ action }) => action.op !== "note")?.action;
      const missing = film && missingTo(run.final, film, "cured");
      if (!last || !missing) return;
      const { needed, had } = missing;
      const over = layerOver(run, film);
      report(
        last,
        shortWait(
          neededIn(run, needed, had),
          {
            headlines: (after, need) =>
              [briefCoatName(film), "its last coat"].map((name) =>
                [
                  after ? `Put to use ${after} after ${name}` : `The recipe ends with ${name}`,
                  needed.tooCold ? "which may never cure here" : `which cures in ${need}`,
                ].join(", "),
              ),
            why: `\`${run.label}\` is for hard wear: until it is hard through, the film scratches, takes rings and sticks to what stands on it.`,
            instead: "wait until cured",
            ...(over ? { where: `above \`${over.use.name}\`` } : {}),
            also: "keep the piece out of use until then",
            ...namedByParameter(film),
            level: "warning",
            hasMargin: false,
          },
          {
            related: [
              { place: film.place, message: "The last film goes on here" },
              ...timePlaces(run, needed, film.material),
              ...(run.surface.wear.place ? [related(run.surface.wear.place, "The wear of the surface")] : []),
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
      ctx.reportAt(job.ready.place, {
        headline: `Wanted by ${dayText(end)}, but cured only on ${dayText(totals.in_service)}`,
        why: `The work is done on ${momentText(totals.finish)}, in time, but the last layer has its full cure only on ${momentText(totals.in_service)}: a film that is dry but not hard marks, sticks and scratches in use.`,
        remedy:
          "Agree on a later date, start earlier, or hand the piece over with a word about careful use until then.",
        ...(uncuredLast ? { causes: [uncured(uncuredLast)] } : {}),
        related: lastLayers(ctx),
      });
    },
  },
};

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
    return coat ? [{ place: coat.place, message: `The last layer of \`${run.label}\` goes on here` }] : [];
  });
