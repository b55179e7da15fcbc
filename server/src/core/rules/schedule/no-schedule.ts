/**
 * Waits, recoat windows and opening hours that cannot go together: there is no day on which the job could begin.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import type { RelatedPlace } from "../../findings.ts";
import { formatDuration } from "../../measure/format-amount.ts";
import { andList } from "../../model/suggest.ts";
import { conflictText } from "../../schedule/conflict-text.ts";
import type { Action } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { tasksById } from "../../totals/planned-tasks.ts";
import type { JobContext, TradeRule } from "../rule.ts";
import { useName } from "../texts.ts";

export const noSchedule: TradeRule = {
  id: "no-schedule",
  group: "schedule",
  severity: "error",
  docs: {
    summary: "The waits, recoat windows and opening hours of a job cannot all be kept.",
    why: "However the work is laid out, some coat would come after its window has closed, or the shop is never open.",
    remedy:
      "Open the shop when the window needs it, sand before the coat that comes too late, or choose a material with a longer window.",
    sources: ["arithmetic with the job's own figures"],
  },
  failing: [
    {
      title: "A window that closes while the shop is shut",
      text: `material hasty_clear {
  family oil polyurethane
  recoat 8 h to 12 h
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop mornings {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 13:00
}

recipe two_coats {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  hasty_clear
  wait   8 h
  layer  hasty_clear
  wait   until cured
}

job shelves {
  piece shelf
  in    mornings
  start 2027-03-08 09:00 #! no-schedule
  apply two_coats to top
}
`,
    },
    {
      title: "More pieces together than an opening holds",
      text: `material hasty_clear {
  family oil polyurethane
  recoat 8 h to 12 h
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop mornings {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 13:00
}

recipe two_coats {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  hasty_clear, takes 30 min, together
  wait   until cured
}

job shelves {
  piece shelf x 10
  in    mornings
  start 2027-03-08 09:00 #! no-schedule
  apply two_coats to top
}
`,
    },
  ],
  passing: [
    {
      title: "Sanded, so that no window counts",
      text: `material hasty_clear {
  family oil polyurethane
  recoat 8 h to 12 h
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop mornings {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 13:00
}

recipe two_coats {
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  layer  hasty_clear
  wait   8 h
  step   sand 220
  step   dust
  layer  hasty_clear
  wait   until cured
}

job shelves {
  piece shelf
  in    mornings
  start 2027-03-08 09:00
  apply two_coats to top
}
`,
    },
  ],
  readsPlan: true,
  checks: {
    onJob: (ctx) => {
      const { job, schedule, reportAt } = ctx;
      const conflict = schedule.conflicts[0];
      if (schedule.status !== "impossible" || !job.start || !conflict) return;
      const lines = linesOf(ctx, conflict.items);
      const names = [...new Set(lines.map(({ action }) => actionText(action)))];
      const which = names.length > 0 ? t` for ${andList(names)}` : "";
      reportAt(job.start.place, {
        ...(conflict.isBatch
          ? {
              headline: t`The pieces cannot all be done together`,
              why: t`The work cannot be planned${which}: ${conflictText(conflict.reason)}.`,
              remedy: t`Take out \`together\`, open the shop for longer, or do fewer pieces in one job.`,
            }
          : {
              headline: t`No plan keeps all the waits of this job`,
              why: t`The work cannot be planned${which}: ${conflictText(conflict.reason)}. In every order of the days a coat would come after its window, or nobody could do it.`,
              remedy: t`Open the shop when the window needs it, sand before the coat that comes too late, or take a material with a longer window.`,
            }),
        related: relatedLines(ctx, lines),
      });
    },
  },
};

interface Line {
  readonly run: SurfaceRun;
  readonly action: Action;
}

/** The lines that the scheduler's items stand for. */
function linesOf(ctx: JobContext, ids: readonly string[]): readonly Line[] {
  const tasks = tasksById(ctx.runs);
  return ids.flatMap((id) => tasks.get(id) ?? []);
}

function actionText(action: Action): string {
  switch (action.op) {
    case "layer":
      return t`the layer of ${useName(action.use)}`;
    case "step":
      return `\`step ${action.verb}\``;
    case "wait":
      if (action.overnight) return "`wait overnight`";
      if (action.until) return `\`wait until ${action.until}\``;
      return t`the wait of ${formatDuration(action.hours ?? 0)}`;
    default:
      return t`a part of the recipe`;
  }
}

function relatedLines(ctx: JobContext, lines: readonly Line[]): readonly RelatedPlace[] {
  const seen = new Set<string>();
  const related = lines.flatMap(({ action }): readonly RelatedPlace[] => {
    const key = `${action.place.file} ${action.place.declaration} ${action.place.span.start}`;
    if (seen.has(key)) return [];
    seen.add(key);
    return [{ place: action.place, message: t`Part of the conflict: ${actionText(action)}` }];
  });
  const hours = ctx.runs[0]?.shop?.hoursPlace;
  return hours ? [...related, { place: hours, message: t`The hours of the shop` }] : related;
}
