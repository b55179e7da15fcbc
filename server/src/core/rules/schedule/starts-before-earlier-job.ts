/**
 * A job goes on with what another left, and begins before that one is done.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { momentText } from "../../measure/figures.ts";
import type { TradeRule } from "../rule.ts";

export const startsBeforeEarlierJob: TradeRule = {
  id: "starts-before-earlier-job",
  group: "schedule",
  severity: "warning",
  docs: {
    summary: "A job `after` another begins before that one is finished.",
    why: "It takes up the surface as the earlier job leaves it, so what that one still has to do, and its last wait, would be skipped.",
    remedy: "Start on or after the day the earlier job is finished, or start that one sooner.",
    sources: ["arithmetic with the jobs' own dates"],
  },
  failing: [
    {
      title: "A coat more while the last one cures",
      text: jobs("2027-03-10 #! starts-before-earlier-job", "cool_room"),
    },
  ],
  passing: [
    { title: "On the day after", text: jobs("2027-03-16") },
    {
      title: "In one plan of their shop, which begins it when the earlier one is done",
      text: jobs("2027-03-10"),
    },
    { title: "Years later", text: jobs("2031-03-10") },
  ],
  readsPlan: true,
  checks: {
    onJob: ({ job, earlier, schedule, reportAt }) => {
      const { startAt, among } = schedule;
      if (!job.start || !startAt || !earlier?.finish || startAt >= earlier.finish) return;
      // In one plan it begins when the other has ended, whatever its `start` says.
      if (among?.names.includes(earlier.job.name)) return;
      reportAt(job.start.place, {
        headline: t`The job begins before \`${earlier.job.name}\` is finished`,
        why: t`It begins on ${momentText(startAt)}, and the job that it comes after is finished on ${momentText(earlier.finish)}. What that job still has to do, and its last wait, would be cut short.`,
        remedy: t`Start later, or start the earlier job sooner.`,
        related: job.after
          ? [{ place: job.after.place, message: t`It comes after \`${earlier.job.name}\`` }]
          : [],
      });
    },
  },
};

/** A job of a coat that cures within a week, and a second one after it. */
function jobs(start: string, shop = "warm_room"): string {
  return `material quick_clear {
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

shop cool_room {
  air   19 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}

recipe coated {
  safety dust_mask
  layer  quick_clear, takes 30 min
  wait   until cured
}

recipe coated_again {
  safety dust_mask
  step   clean with soap
  step   scuff 320
  step   dust
  layer  quick_clear, takes 30 min
  wait   until cured
}

job first_coat {
  piece shelf
  in    warm_room
  start 2027-03-08
  apply coated to top
}

job second_coat {
  piece shelf
  after first_coat
  in    ${shop}
  start ${start}
  apply coated_again to top
}
`;
}
