/** What a plan does about dust and wet coats in one room, in words. */
import { t } from "../../../../grammar/src/translate.ts";
import { shortMomentText, timeText, weekdayText } from "../../core/measure/figures.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import { andList } from "../../core/model/suggest.ts";
import { isoAfter } from "../../core/schedule/iso-after.ts";
import { keyAt, splitKey } from "../../core/schedule/shop/shop-input.ts";
import type { Dust, DustWork } from "../../core/schedule/types.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { markdownCode as code } from "../../escape/markdown.ts";
import { type PlanLine, planLines, rowsOf, surfacesText } from "./job-plan.ts";

/** Less is within what work takes more or less than planned. */
const LEAST_HOURS = 0.5;

/** That dust flies onto wet coats, or what it costs that it does not: one line at most. */
export function dustNote(result: JobResult): readonly string[] {
  const { dust } = result.schedule;
  if (dust === undefined) return [];
  return dust.meetings.length === 0 ? keptApartNote(dust) : meetingNote(result, dust);
}

/** Said of the jobs of a shop together as well. */
export function keptApartNote({ meetings, laterHours = 0 }: Dust): readonly string[] {
  if (meetings.length > 0 || laterHours < LEAST_HOURS) return [];
  return [
    t`Dusty work waits until wet coats are dry to the touch, which puts off the last work by ${formatDuration(laterHours)}. ` +
      t`With dust extraction at the tool it need not: say \`"with extraction"\` behind the step.`,
  ];
}

function meetingNote(result: JobResult, dust: Dust): readonly string[] {
  const own = (ids: readonly string[]): readonly string[] => ownItems(dust, ids);
  const meetings = dust.meetings.filter(({ dusty, wet }) => own([...dusty.items, ...wet.items]).length > 0);
  const [first] = meetings;
  if (first === undefined) return [];
  const dateOf = (hours: number): string => isoAfter(result.schedule, hours - (dust.inShop?.later ?? 0))!;
  const [at, until] = [dateOf(first.from), dateOf(first.wetUntil)];
  const again = meetings.length > 1 ? t`, and at ${meetings.length - 1} more times` : "";
  const end = `${at.slice(0, 10) === until.slice(0, 10) ? "" : `${weekdayText(until)} `}${timeText(until)}`;
  const textOf = ({ items }: DustWork, what: (job: string) => string): string => {
    const mine = own(items);
    return mine.length > 0 ? workText(result, mine) : what(code(otherJob(dust, items)));
  };
  return [
    t`Dust on ${shortMomentText(at)}: ${textOf(first.dusty, (job) => t`work of ${job}`)}, while ${textOf(first.wet, (job) => t`a coat of ${job}`)} is wet until ${end}${again}. ` +
      t`Cover what is wet, do it in another room or with dust extraction, and wipe down damp before the next coat.`,
  ];
}

/** Those of the job itself, as it calls them. */
function ownItems({ inShop }: Dust, ids: readonly string[]): readonly string[] {
  if (inShop === undefined) return ids;
  return ids.map(splitKey).flatMap(([key, id]) => (key === keyAt(inShop.place) ? [id] : []));
}

/** The name of the job whose the first of the tasks is. */
const otherJob = ({ inShop }: Dust, [id]: readonly string[]): string =>
  inShop!.names.find((_, place) => keyAt(place) === splitKey(id!)[0])!;

/** `` `sand 180` (seat, all 4) `` */
function workText(result: JobResult, items: readonly string[]): string {
  const ids = new Set(items);
  const lines: readonly PlanLine[] = planLines(result).filter(({ id }) => ids.has(id));
  return andList(rowsOf(lines).map((row) => `${code(row.what)} (${surfacesText(row)})`));
}
