/**
 * When the turn of a line comes, and of a wait when it is over: the date and time of the plan, hours after the start
 * where the plan has no dates, and without a plan the waits that were stated before it.
 */

import { t } from "../../../../grammar/src/translate.ts";
import { monthDayText, shortMomentText, timeText } from "../../core/measure/figures.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import { isBeingPlanned } from "../../core/schedule/being-planned.ts";
import { sentence } from "../../core/sentence.ts";
import { itemOf } from "../../core/totals/planned-tasks.ts";
import { beingPlannedText, noDateText, type Unpromised, unpromised } from "../../views/missing-inputs.ts";
import { isDated } from "../../views/schedule/job-plan.ts";
import { type LineRun, plannedText, whereText } from "../../views/sums/line-run.ts";
import { bullets, code } from "../markdown.ts";
import type { HintText } from "./hint-text.ts";

interface Turn {
  /** Sorts turns of one job. */
  readonly hours: number;
  /** A local ISO date-time, where the plan has dates. */
  readonly at?: string;
}

export function elapsedHint(runs: readonly LineRun[]): HintText | undefined {
  const isWait = runs[0]?.times[0]?.action.op === "wait";
  const byJob = new Map<LineRun["result"], LineRun[]>();
  for (const run of runs) {
    const known = byJob.get(run.result);
    if (known) known.push(run);
    else byJob.set(run.result, [run]);
  }
  const kept = [...byJob.keys()].flatMap((job) => (job && unpromised(job)) ?? []);
  if (kept.length > 0 && kept.length === byJob.size)
    return { text: kept[0]!.brief, markdown: bullets([...new Set(kept.flatMap(whyNot))]) };
  if ([...byJob.keys()].some((job) => job && isBeingPlanned(job.schedule)))
    return { text: beingPlannedText(), markdown: sentence(`${beingPlannedText()}.`) };
  const turns = [...byJob.values()].flatMap((lines) => firstTurn(lines) ?? []);
  const text = turnsText(turns);
  return text === "" ? undefined : { text: isWait ? t`to ${text}` : text, markdown: reason(runs) };
}

const whyNot = ({ reasons }: Unpromised): readonly string[] =>
  reasons.map((each) => `${noDateText()}: ${each}`);

/** The one, or over several jobs the first and the last. */
function turnsText(turns: readonly Turn[]): string {
  const texts = [...new Set(turns.map(turnText))];
  const dates = turns.flatMap(({ at }) => at ?? []).toSorted();
  const [first, last] = [dates[0], dates.at(-1)];
  if (texts.length < 2 || first === undefined || last === undefined) {
    return texts.length > 1 ? `${texts[0]} … ${texts.at(-1)}` : (texts[0] ?? "");
  }
  return first.slice(0, 10) === last.slice(0, 10)
    ? `${shortMomentText(first)} … ${timeText(last)}`
    : `${monthDayText(first)} … ${monthDayText(last)}`;
}

const turnText = ({ hours, at }: Turn): string =>
  at === undefined ? afterStart(hours) : shortMomentText(at);

/** The earliest turn over the surfaces and pieces of one job. */
function firstTurn(lines: readonly LineRun[]): Turn | undefined {
  const turns = lines.flatMap((line) => plannedTurns(line) ?? statedTurn(line) ?? []);
  return turns.toSorted((a, b) => a.hours - b.hours)[0];
}

/** Undefined where there is no plan, or one with a wait in it whose length is not known. */
function plannedTurns({ result, run, times }: LineRun): readonly Turn[] | undefined {
  if (!result || result.totals.elapsed_h === null) return undefined;
  const dated = isDated(result);
  return Array.from({ length: run.pieces }, (_, piece) => piece).flatMap((piece): readonly Turn[] => {
    const item = itemOf(result.schedule, run, piece, times[0]!.index);
    if (!item) return [];
    const isWait = times[0]!.action.op === "wait";
    const at = isWait ? item.endAt : item.startAt;
    return [{ hours: isWait ? item.end : item.start, ...(dated && at ? { at } : {}) }];
  });
}

/** Nothing until something was waited for before the line, and nothing after a wait whose length is not known. */
function statedTurn({ times }: LineRun): Turn | undefined {
  const { action, before, after } = times[0]!;
  const { certain, clock } = action.op === "wait" ? after : before;
  if (!certain || clock.unknown > 0 || before.clock.hours === 0) return undefined;
  return { hours: clock.hours };
}

const afterStart = (hours: number): string => (hours < 1 / 120 ? t`start` : `+${formatDuration(hours)}`);

function reason(runs: readonly LineRun[]): string {
  const planned = runs.map((line) => `${whereText(line)}${plannedText(line).trim()}`);
  const withDates = runs.flatMap((line, i) => (plannedText(line) === "" ? [] : [planned[i]!]));
  if (withDates.length > 0) return bullets(withDates);
  const jobs = [...new Set(runs.flatMap(({ result }) => (result ? [code(result.job.name)] : [])))];
  if (jobs.length === 0) return t`After the start, by the waits that the recipe states.`;
  return t`After the start of ${jobs.join(", ")}; dates need \`in\` and \`start\` in the job.`;
}
