/** What would let a job end earlier, in words. */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { WEEKDAYS } from "../../../../grammar/src/vocabulary.ts";
import { dayText, degreesText, momentText, printed } from "../../core/measure/figures.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import { endOfDateWanted } from "../../core/measure/iso-dates.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import type { Change, Help } from "../../core/what-helps.ts";
import { markdownCode as code } from "../../escape/markdown.ts";

/** Whether the job is not done by the day it is wanted. */
export const isLate = ({ job: { ready }, totals: { finish } }: JobResult): boolean =>
  ready !== undefined && finish !== null && finish > endOfDateWanted(ready);

/** Whether something can be done about when it ends: nothing of what is over, or of what has no date in any case. */
export const mayBeHelped = ({ record, schedule, voided }: JobResult): boolean =>
  voided === undefined && (record === undefined || schedule.items.some(({ done }) => !done));

/** `one more pair of hands, 3 at work: last work 1 day 2 h earlier, full use 3 h earlier` */
export function helpText({ change, lastWorkH, fullUseH, makesPlan, result }: Help): string {
  const { last_work } = result.totals;
  if (makesPlan && last_work !== null)
    return t`${changeText(change)}: a plan is possible, last work ${momentText(last_work)}`;
  const gains = [
    ...(lastWorkH > 0 ? [t`last work ${formatDuration(lastWorkH)} earlier`] : []),
    ...(fullUseH ? [t`full use ${formatDuration(fullUseH)} earlier`] : []),
  ];
  return `${changeText(change)}: ${gains.join(", ") || t`done on the same date`}`;
}

function changeText(change: Change): string {
  switch (change.kind) {
    case "hour":
      return t`open an hour longer on ${translated(WEEKDAYS[change.weekday - 1] ?? "")}`;
    case "hands":
      return t`one more pair of hands, ${change.crew} at work`;
    case "warmer":
      return t`warmer air, ${degreesText(change.temperature)}`;
    case "material":
      return t`${code(change.to.name)} in place of ${code(change.from.name)}`;
    case "later start":
      return t`start a day later, on ${dayText(change.date)}`;
  }
}

/** The same for programs. */
export const helpJson = (help: Help) => ({
  what: helpText(help),
  kind: help.change.kind,
  last_work_earlier_h: help.makesPlan ? null : printed(help.lastWorkH),
  full_use_earlier_h: help.makesPlan || help.fullUseH === undefined ? null : printed(help.fullUseH),
  last_work: help.result.totals.last_work,
  full_use: help.result.totals.full_use,
});
