/**
 * The work ends after the day it is wanted (or after the time of that day, where one is stated).
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { momentText } from "../../measure/figures.ts";
import { formatDuration } from "../../measure/format-amount.ts";
import { endOfDateWanted } from "../../measure/iso-dates.ts";
import { onFiveMinutes } from "../../totals/use-dates.ts";
import type { TradeRule } from "../rule.ts";

export const late: TradeRule = {
  id: "late",
  group: "schedule",
  severity: "warning",
  docs: {
    summary: "The job's earliest finish comes after the day it is wanted.",
    why: "Drying cannot be hurried: a job that is planned too short is finished over soft coats, or late.",
    remedy:
      "Start earlier, work longer hours or with more people, or choose materials that dry faster; `schedule` shows what holds the job up.",
    sources: ["arithmetic with the job's own dates"],
  },
  failing: [
    {
      title: "Wanted on the day of the last coat",
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

recipe two_coats {
  safety dust_mask
  layer  waterborne_polyurethane, takes 30 min
  wait   24 h
  step   sand 220, takes 30 min
  step   dust, takes 5 min
  layer  waterborne_polyurethane, takes 30 min
  wait   until recoat
}

job shelves {
  piece shelf
  in    warm_room
  start 2027-03-08
  ready 2027-03-08 #! late
  apply two_coats to top
}
`,
    },
    {
      title: "Wanted by noon",
      text: `material quick_clear {
  family waterborne polyurethane
  cure   2 h
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
  layer quick_clear, takes 90 min
  wait  until cured
}

job shelves {
  piece shelf
  in    warm_room
  start 2027-03-08 09:00
  ready 2027-03-08 12:00 #! late
  apply one_coat to top
}
`,
    },
    {
      title: "Two jobs for one pair of hands: 6 h and 3 h are more than a day",
      text: `piece chair {
  built 1958
  surface frame {
    shape    4 of round 36 mm to 28 mm x 440 mm
    wood     beech
    existing oil varnish
  }
}

shop bench_room {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}

recipe washed {
  for  wood
  step clean with soap, takes 1 h
}

job six_chairs {
  piece chair x 6
  in    bench_room
  start 2027-03-08
  ready 2027-03-08 #! late
  apply washed to frame
}

job three_chairs {
  piece chair x 3
  in    bench_room
  start 2027-03-08
  ready 2027-03-08
  apply washed to frame
}
`,
    },
  ],
  passing: [
    {
      title: "Done within the day",
      text: `material quick_clear {
  family waterborne polyurethane
  cure   2 h
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
  layer quick_clear, takes 90 min
  wait  until cured
}

job shelves {
  piece shelf
  in    warm_room
  start 2027-03-08 09:00
  ready 2027-03-08
  apply one_coat to top
}
`,
    },
    {
      title: "Without a shop no date is calculated",
      text: `piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

recipe one_coat {
  layer waterborne_polyurethane
  wait  until cured
}

job shelves {
  piece shelf
  start 2027-03-08 09:00
  ready 2027-03-09
  apply one_coat to top
}
`,
    },
  ],
  readsPlan: true,
  checks: {
    onJob: ({ job, totals, reportAt, schedule }) => {
      if (!job.ready || totals.finish === null) return;
      const end = endOfDateWanted(job.ready);
      if (totals.finish <= end) return;
      const wanted = momentText(job.ready.time ? `${job.ready.date}T${job.ready.time}` : job.ready.date);
      const earliest = momentText(onFiveMinutes(totals.finish));
      const later = schedule.among?.laterHours
        ? t` The people of its shop are at work on other jobs meanwhile: alone it would end ${formatDuration(schedule.among.laterHours)} earlier.`
        : "";
      reportAt(job.ready.place, {
        headline: t`The job cannot be ready before ${earliest}`,
        why: t`It is wanted by ${wanted}; the earliest end is ${earliest}, after ${formatDuration(schedule.elapsedHours)}. Shorter waits would leave soft coats.${later}`,
        remedy: t`Start earlier, add opening hours or people, or choose materials that dry faster.`,
        related: job.start ? [{ place: job.start.place, message: t`The work begins here` }] : [],
      });
    },
  },
};
