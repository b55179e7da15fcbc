/**
 * A dated job in a shop whose hours are not stated: it counts as open day and night, and work is planned for the night.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import { momentText } from "../../measure/figures.ts";
import { tasksById } from "../../totals/planned-tasks.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

/** Before the first of these hours of the day, and from the second on, hardly anybody is at work. */
const DAY_BEGINS = 6;
const DAY_ENDS = 22;

export const hoursNotStated: TradeRule = {
  id: "hours-not-stated",
  group: "schedule",
  severity: "hint",
  docs: {
    summary: "A job with a start is planned for the night, since its shop states no hours.",
    why: "Without `hours` a shop counts as open day and night. The dates of the job are then earlier than anybody would be there to do the work.",
    remedy: "Write the hours of the shop, such as `hours Mon to Fri 08:00 to 17:00`.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "The second coat falls into the night",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop shed {
  air 21 C, 50 % RH
}

recipe two_coats {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_polyurethane
  wait   14 h
  layer  oil_polyurethane
  wait   until cured
}

job shelves {
  piece shelf
  in    shed
  start 2027-03-08 09:00 #! hours-not-stated
  apply two_coats to top
}
`,
    },
  ],
  passing: [
    {
      title: "The hours are stated",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop shed {
  air   21 C, 50 % RH
  hours Mon to Sat 08:00 to 18:00
}

recipe two_coats {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_polyurethane
  wait   14 h
  layer  oil_polyurethane
  wait   until cured
}

job shelves {
  piece shelf
  in    shed
  start 2027-03-08 09:00
  apply two_coats to top
}
`,
    },
    {
      title: "All of it is done by day",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop shed {
  air 21 C, 50 % RH
}

recipe one_coat {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_polyurethane
  wait   until cured
}

job shelves {
  piece shelf
  in    shed
  start 2027-03-08 09:00
  apply one_coat to top
}
`,
    },
  ],
  readsPlan: true,
  checks: {
    onJob: ({ job, runs, schedule, reportAt }) => {
      const shop = runs[0]?.shop;
      if (!job.start || !shop || shop.hours || schedule.status !== "planned") return;
      const tasks = tasksById(runs);
      const atNight = schedule.items.find(
        ({ id, startAt }) =>
          startAt !== undefined && isNight(startAt) && (tasks.get(id)?.action.op ?? "wait") !== "wait",
      );
      if (!atNight) return;
      reportAt(job.start.place, {
        headline: t`Work is planned for the night: \`${shop.name}\` states no \`hours\``,
        why: t`A shop without hours counts as open day and night, so work is planned for ${momentText(atNight.startAt!)}, and the dates of this job come out too early.`,
        remedy: t`Give the shop its working hours, for example \`hours Mon to Fri 08:00 to 17:00\`.`,
        related: [related(shop.namePlace, t`The shop`)],
      });
    },
  },
};

/** A local ISO date-time. */
function isNight(at: string): boolean {
  const hour = Number(at.slice(11, 13));
  return hour < DAY_BEGINS || hour >= DAY_ENDS;
}
