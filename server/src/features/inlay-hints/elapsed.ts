/**
 * When the turn of a line comes: the date and time of the plan, hours after the start where the plan has no dates, and
 * without a plan the waits that were stated before it.
 */
import { formatDuration } from "../../core/measure/format-amount.ts";
import { itemId } from "../../core/totals/task-plan.ts";
import { bullets, code } from "../hover/context.ts";
import { type LineRun, plannedText, whereText } from "../hover/runs-of-line.ts";
import type { HintText } from "../inlay-hints.ts";
import { isDated } from "../job-plan.ts";
import { shortMomentText } from "../spoken.ts";

interface Turn {
  /** Sorts turns of one job. */
  readonly hours: number;
  readonly text: string;
}

export function elapsedHint(runs: readonly LineRun[]): HintText | undefined {
  const jobs = [...new Set(runs.map(({ result }) => result))];
  const turns = jobs.flatMap((job) => firstTurn(runs.filter(({ result }) => result === job)) ?? []);
  const texts = [...new Set(turns.map(({ text }) => text))];
  const [first, second] = texts;
  if (first === undefined) return undefined;
  const text =
    second === undefined ? first : texts.length === 2 ? `${first} · ${second}` : `${first} … ${texts.at(-1)}`;
  return { text, markdown: reason(runs) };
}

/** The earliest turn over the surfaces and pieces of one job. */
function firstTurn(lines: readonly LineRun[]): Turn | undefined {
  const turns = lines.flatMap((line) => plannedTurns(line) ?? statedTurn(line) ?? []);
  return turns.toSorted((a, b) => a.hours - b.hours)[0];
}

/** Undefined where there is no plan, or one with a wait in it whose length is not known. */
function plannedTurns({ result, run, times }: LineRun): readonly Turn[] | undefined {
  if (!result || result.totals.elapsed_h === null) return undefined;
  const dated = isDated(result);
  return Array.from({ length: run.pieces }, (_, piece) => itemId(run, piece, times[0]!.index)).flatMap(
    (id): readonly Turn[] => {
      const item = result.schedule.items.find((each) => each.id === id);
      if (!item) return [];
      if (dated && item.startAt) return [{ hours: item.start, text: shortMomentText(item.startAt) }];
      return [{ hours: item.start, text: afterStart(item.start) }];
    },
  );
}

/** Nothing until something has been waited for, and nothing after a wait whose length is not known. */
function statedTurn({ times }: LineRun): Turn | undefined {
  const { certain, clock } = times[0]!.before;
  if (!certain || clock.unknown > 0 || clock.hours === 0) return undefined;
  return { hours: clock.hours, text: afterStart(clock.hours) };
}

const afterStart = (hours: number): string => (hours < 1 / 120 ? "start" : `+${formatDuration(hours)}`);

function reason(runs: readonly LineRun[]): string {
  const planned = runs.map((line) => `${whereText(line)}${plannedText(line).trim()}`);
  const withDates = runs.flatMap((line, i) => (plannedText(line) === "" ? [] : [planned[i]!]));
  if (withDates.length > 0) return bullets(withDates);
  const jobs = [...new Set(runs.flatMap(({ result }) => (result ? [code(result.job.name)] : [])))];
  if (jobs.length === 0) return "After the start, by the waits that the recipe states.";
  return `After the start of ${jobs.join(", ")}; dates need \`in\` and \`start\` in the job.`;
}
