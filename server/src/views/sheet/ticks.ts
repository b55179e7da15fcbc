/**
 * What was ticked on a sheet, as its page copies it, and the lines of the record that it comes to.
 *
 * A job and a step are named by their fingerprints, so that ticks of a sheet that says something else than the recipe does
 * now are told apart and left out. What is recorded already is not recorded again, so the same text may come twice.
 */
import { isDate } from "../../core/measure/iso-dates.ts";
import { inQuotes, piecesWords, recordWords } from "../../core/record/record-lines.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import type { Sheet, SheetProcedure } from "./model.ts";
import { stepNumbers } from "./procedure.ts";
import { stepKeys } from "./step-keys.ts";

/** What is copied of one sheet. */
export interface Ticks {
  /** The fingerprint of its job. */
  readonly job: string;
  readonly rows: readonly TickedRow[];
  /** `As it went`, in the words of the person. */
  readonly went: string;
}

export interface TickedRow {
  /** Of the step on each surface. */
  readonly keys: readonly string[];
  /** Local ISO date-time of the last tick; undefined for a note without one. */
  readonly at?: string;
  /** From 1; none means all of them. */
  readonly pieces: readonly number[];
  readonly name: string;
  readonly note: string;
}

export interface ReadTicks {
  readonly sheets: readonly Ticks[];
  /** Lines that are none of a sheet. */
  readonly unread: readonly string[];
}

const HEAD = /^finishwright-ticks 2 ([0-9a-f]{8})$/u;
const ROW =
  /^([0-9a-f]{8}(?:\+[0-9a-f]{8})*) (\d{4}-\d{2}-\d{2}T(?:[01]\d|2[0-3]):[0-5]\d|-) (\d{1,5}(?:,\d{1,5})*|-)$/u;

/** Reads what a sheet has copied; several sheets may follow each other. */
export function readTicks(text: string): ReadTicks {
  const sheets: { job: string; rows: TickedRow[]; went: string }[] = [];
  const unread: string[] = [];
  for (const line of text.split(/\r?\n/u).map((each) => each.trim())) {
    if (line === "") continue;
    const head = HEAD.exec(line);
    if (head) sheets.push({ job: head[1]!, rows: [], went: "" });
    else {
      const sheet = sheets.at(-1);
      const [what = "", name = "", note = ""] = line.split("|").map((part) => part.trim());
      const row = rowOf(what);
      if (sheet && row) sheet.rows.push({ ...row, name, note });
      else if (sheet && what === "-") sheet.went = name;
      else unread.push(line);
    }
  }
  return { sheets, unread };
}

function rowOf(text: string): Omit<TickedRow, "name" | "note"> | undefined {
  const [, keys, at, pieces] = ROW.exec(text) ?? [];
  if (keys === undefined || (at !== "-" && !isDate(at!.slice(0, 10)))) return undefined;
  const numbers = pieces === "-" ? [] : pieces!.split(",").map(Number);
  return {
    keys: keys.split("+"),
    ...(at === "-" ? {} : { at: at! }),
    pieces: numbers.includes(0) ? [] : [...new Set(numbers)].toSorted((a, b) => a - b),
  };
}

// ---------------------------------------------------------------------------------------------------------------
// The lines of the record

/** A line of the record without `done`, and the steps that it is to stand for. */
export interface TickedLine {
  readonly text: string;
  readonly at: string;
  readonly steps: readonly StepOfPiece[];
}

export interface StepOfPiece {
  readonly key: string;
  /** From 0. */
  readonly piece: number;
}

export interface RecordOfTicks {
  /** In the order of time. */
  readonly lines: readonly TickedLine[];
  /** Ticked for a step that the job does not have, or not any more. */
  readonly stale: readonly TickedRow[];
  /** Noted, and not ticked. */
  readonly unticked: readonly TickedRow[];
}

/** `sheet`: that of the job as it is now. */
export function recordOf({ rows }: Ticks, sheet: Sheet, result: JobResult): RecordOfTicks {
  const steps = stepsOf(sheet, result);
  const lines: TickedLine[] = [];
  const stale: TickedRow[] = [];
  for (const row of rows) {
    if (row.at === undefined) continue;
    const found = row.keys.map((key) => steps.get(key));
    const isThere = (step: Step | undefined): boolean =>
      step !== undefined && row.pieces.every((piece) => piece <= step.run.pieces);
    if (!found.every(isThere)) stale.push(row);
    lines.push(...linesOf(row, row.at, found.filter(isThere) as readonly Step[]));
  }
  return {
    lines: lines.toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0)),
    stale,
    unticked: rows.filter(({ at }) => at === undefined),
  };
}

/** Which of the steps the record of a job tells of by name. */
export function recordedSteps(sheet: Sheet, result: JobResult): (step: StepOfPiece) => boolean {
  const steps = stepsOf(sheet, result);
  return ({ key, piece }) => {
    const step = steps.get(key);
    return step?.run.record?.done[piece]?.get(step.index)?.isNamed === true;
  };
}

interface Step {
  readonly key: string;
  readonly run: SurfaceRun;
  /** Of its moment. */
  readonly index: number;
  readonly words: string;
}

const isDone = ({ run, index }: Step, piece: number): boolean => run.record?.done[piece]?.has(index) ?? false;

function stepsOf({ procedures }: Sheet, { runs }: JobResult): ReadonlyMap<string, Step> {
  return new Map(runs.flatMap((run, at) => stepsIn(run, procedures[at]!).map((step) => [step.key, step])));
}

function stepsIn(run: SurfaceRun, procedure: SheetProcedure): readonly Step[] {
  const keys = stepKeys(procedure);
  return stepNumbers(run).flatMap((number, index): readonly Step[] => {
    const key = number === undefined ? undefined : keys.get(number);
    const words = recordWords(run.moments[index]!.action);
    return key === undefined || words === undefined ? [] : [{ key, run, index, words }];
  });
}

/** One for what is said alike of several surfaces. */
function linesOf({ pieces, note }: TickedRow, at: string, steps: readonly Step[]): readonly TickedLine[] {
  const groups = new Map<string, { readonly steps: Step[]; readonly open: readonly number[] }>();
  for (const step of steps) {
    const asked = pieces.length > 0 ? pieces : Array.from({ length: step.run.pieces }, (_, i) => i + 1);
    const open = asked.filter((piece) => !isDone(step, piece - 1));
    if (open.length === 0) continue;
    const said = `${step.words}${piecesWords(open, step.run.pieces)}`;
    const group = groups.get(said);
    if (group) group.steps.push(step);
    else groups.set(said, { steps: [step], open });
  }
  return [...groups.values()].map(({ steps: said, open }) => ({
    at,
    text: [
      `${at.replace("T", " ")} ${said[0]!.words} on ${said.map(({ run }) => run.label).join(" and ")}`,
      piecesWords(open, said[0]!.run.pieces),
      note === "" ? "" : `, note ${inQuotes(note.replaceAll(/[\p{C}\s]+/gu, " ").slice(0, MOST_NOTE))}`,
    ].join(""),
    steps: said.flatMap(({ key }) => open.map((piece) => ({ key, piece: piece - 1 }))),
  }));
}

/** As long as a note of a sheet may be. */
const MOST_NOTE = 300;
