/**
 * The work on all surfaces as one list in the order of time, as a person at the bench goes through it: waits are no
 * lines of their own but stand behind what is waited for, and what is done on several surfaces in one go is one line.
 */

import { t } from "../../../../grammar/src/translate.ts";
import { dayText } from "../../core/measure/figures.ts";
import type { Named } from "../../core/model/model.ts";
import { fingerprintOf } from "./fingerprint.ts";
import { inOneGo } from "./goes.ts";
import { hoursAfterOnStep } from "./hours-after.ts";
import {
  type BenchGroup,
  type BenchList,
  type BenchPlace,
  type BenchRow,
  MOST_PIECES,
  type SheetProcedure,
  type SheetStep,
  type UseFrom,
} from "./model.ts";
import { stepKeys } from "./step-keys.ts";
import { stripParts } from "./strip-parts.ts";

export function benchList(owner: Named, procedures: readonly SheetProcedure[]): BenchList {
  const fingerprint = fingerprintOf([owner.name, ...procedures.map(({ title }) => title)]);
  const rows = procedures.map((procedure) => rowsOf(procedure));
  const isDated = rows.flat().some(({ startAt }) => startAt !== undefined);
  return { fingerprint, groups: isDated ? byDay(together(rows.flat())) : bySurface(procedures, rows) };
}

const bySurface = (
  procedures: readonly SheetProcedure[],
  rows: readonly (readonly BenchRow[])[],
): readonly BenchGroup[] =>
  procedures.flatMap(({ title }, i) => (rows[i]!.length > 0 ? [{ title, rows: rows[i]! }] : []));

function byDay(rows: readonly BenchRow[]): readonly BenchGroup[] {
  const days = new Map<string, BenchRow[]>();
  for (const row of rows) {
    const date = row.startAt?.slice(0, 10) ?? "";
    days.set(date, [...(days.get(date) ?? []), row]);
  }
  return [...days]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([date, list]) => ({
      title: date === "" ? t`Without a date` : dayText(date),
      ...(date === "" ? {} : { date }),
      rows: list.toSorted(byStart),
    }));
}

const byStart = (a: BenchRow, b: BenchRow): number =>
  (a.startAt ?? "") < (b.startAt ?? "") ? -1 : (a.startAt ?? "") > (b.startAt ?? "") ? 1 : 0;

/** Surfaces that have the same done to them at the same time. */
function together(rows: readonly BenchRow[]): readonly BenchRow[] {
  const merged = new Map<string, BenchRow>();
  for (const row of rows) {
    const { title, startAt, endAt, pieces, then, details, strip } = row;
    const parts = strip?.lines.join(" ");
    const key = [title, startAt, endAt, pieces.join(" "), then?.at, then?.until, details.length, parts].join(
      "\n",
    );
    const other = merged.get(key);
    merged.set(key, other ? joined(other, row) : row);
  }
  return [...merged.values()];
}

function joined(a: BenchRow, b: BenchRow): BenchRow {
  const union = <T>(one: readonly T[], two: readonly T[]): readonly T[] => [...new Set([...one, ...two])];
  const litres = a.litres === undefined || b.litres === undefined ? undefined : a.litres + b.litres;
  const { litres: _, done, ...rest } = a;
  return {
    ...rest,
    fingerprint: fingerprintOf([a.fingerprint, b.fingerprint]),
    steps: [...a.steps, ...b.steps],
    places: [...a.places, ...b.places],
    details: union(a.details, b.details),
    atHand: union(a.atHand ?? [], b.atHand ?? []),
    notes: union(a.notes, b.notes),
    cautions: union(a.cautions, b.cautions),
    wear: union(a.wear, b.wear),
    dangers: union(a.dangers, b.dangers),
    findings: union(a.findings, b.findings),
    ...(litres === undefined ? {} : { litres }),
    ...doneIn(
      done?.flatMap(({ piece, at }) => {
        const other = b.done?.find((each) => each.piece === piece);
        return other ? [{ piece, at: [at, other.at].toSorted()[1]! }] : [];
      }),
    ),
  };
}

const doneIn = (done: BenchRow["done"]): Pick<BenchRow, "done"> => (done && done.length > 0 ? { done } : {});

/** One for every time at which some of the pieces have it done. */
function rowsOf(procedure: SheetProcedure): readonly BenchRow[] {
  const { pieces, entries } = procedure;
  const keys = stepKeys(procedure);
  const lastStep = entries.findLastIndex((entry) => entry.kind === "step" && entry.op !== "wait");
  const rows: BenchRow[] = [];
  let notes: string[] = [];
  for (const [index, entry] of entries.entries()) {
    if (entry.kind === "note" || entry.kind === "open") notes.push(entry.text);
    if (entry.kind !== "step" || entry.op === "wait" || entry.number === undefined) continue;
    const step: ListedStep = {
      procedure,
      entry: { ...entry, op: entry.op, number: entry.number },
      key: keys.get(entry.number)!,
      notes,
      waits: waitsAfter(entries.slice(index + 1)),
      isLastCoat: index === lastStep && entry.op === "layer",
    };
    rows.push(...timesOf(entry, pieces).map((time) => rowOf(step, time)));
    notes = [];
  }
  return rows;
}

/** A step of a procedure with what its lines need to know of the others. */
interface ListedStep {
  readonly procedure: SheetProcedure;
  readonly entry: SheetStep & { readonly op: BenchRow["op"]; readonly number: number };
  readonly key: string;
  /** What is noted before it. */
  readonly notes: readonly string[];
  readonly waits: readonly SheetStep[];
  readonly isLastCoat: boolean;
}

function rowOf({ procedure, entry, key, notes, waits, isLastCoat }: ListedStep, time: Time): BenchRow {
  const { title: surface, pieces } = procedure;
  const {
    op,
    number,
    title,
    short = title,
    by,
    coat,
    coats,
    details,
    atHand = [],
    litres,
    done,
    strip,
  } = entry;
  const { cautions, wear, dangers, findings } = entry;
  return {
    fingerprint: fingerprintOf([key, ...time.pieces.map(String)]),
    op,
    steps: [{ surface, number, key }],
    places: [placeOf(procedure, time.pieces)],
    title: short,
    ...(by === undefined ? {} : { by }),
    ...(coat === undefined ? {} : { coat }),
    ...(coats === undefined ? {} : { coats }),
    details: [...details, ...waits.flatMap((wait) => wait.details)],
    atHand,
    notes,
    cautions,
    wear,
    dangers,
    findings,
    ...(litres === undefined ? {} : { litres: (litres * time.pieces.length) / pieces }),
    ...(time.startAt === undefined ? {} : { startAt: time.startAt }),
    ...(time.endAt === undefined ? {} : { endAt: time.endAt }),
    pieces: pieces > MOST_PIECES ? [] : time.pieces,
    of: pieces,
    ...(strip ? { strip: stripParts(strip, pieces > MOST_PIECES ? undefined : time) } : {}),
    ...doneIn(done?.filter(({ piece }) => time.pieces.includes(piece))),
    ...(isLastCoat ? afterLast(entry, waits, time) : thenIn(leftAlone(waits, time.pieces))),
  };
}

function placeOf({ piece, surface, pieces: of }: SheetProcedure, pieces: readonly number[]): BenchPlace {
  return {
    ...(piece === undefined ? {} : { piece }),
    pieces: of === 1 || of > MOST_PIECES ? [] : pieces,
    surface,
  };
}

interface Time {
  readonly pieces: readonly number[];
  readonly startAt?: string;
  readonly endAt?: string;
}

function timesOf({ planned }: SheetStep, pieces: number): readonly Time[] {
  const all = Array.from({ length: pieces }, (_, i) => i + 1);
  if (planned.length === 0) return [{ pieces: all }];
  if (pieces <= MOST_PIECES) return inOneGo(planned);
  // Of many, one line from the first to the last.
  const ends = planned.map(({ endAt }) => endAt).toSorted();
  return [{ pieces: all, startAt: planned[0]!.startAt, endAt: ends.at(-1)! }];
}

/** The waits that begin with the end of a step. */
function waitsAfter(entries: SheetProcedure["entries"]): readonly SheetStep[] {
  const waits: SheetStep[] = [];
  for (const entry of entries) {
    if (entry.kind !== "step") continue;
    if (entry.op !== "wait") break;
    waits.push(entry);
  }
  return waits;
}

function leftAlone(waits: readonly SheetStep[], pieces: readonly number[]): BenchRow["then"] {
  const last = waits.at(-1);
  if (last === undefined) return undefined;
  const ends = last.planned
    .flatMap(({ pieces: of, endAt, firstEndAt = endAt, firstPiece }) =>
      of
        .filter((piece) => pieces.includes(piece))
        .map((piece) => ({ piece, at: piece === firstPiece ? firstEndAt : endAt })),
    )
    .toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  const [first] = ends;
  const at = ends.at(-1)?.at;
  return {
    ...last.wait,
    ...(at === undefined ? {} : { at }),
    ...(first === undefined || first.at === at ? {} : { firstAt: first.at, firstPiece: first.piece }),
  };
}

/**
 * What follows the last coat of a surface. A wait until it has cured is not one for which nobody may touch it: that ends
 * with the time to a next coat, and when it may be used are two other things.
 */
function afterLast(
  { after = {} }: SheetStep,
  waits: readonly SheetStep[],
  { endAt, pieces }: Time,
): Pick<BenchRow, "then" | "light" | "full"> {
  const from = (hours: number | undefined): UseFrom | undefined => {
    if (hours === undefined) return undefined;
    const at = endAt === undefined ? undefined : hoursAfterOnStep(endAt, hours);
    return { hours, ...(at === undefined ? {} : { at }) };
  };
  const [touch, light, full] = [from(after.touch), from(after.light), from(after.full)];
  const isToCure = waits.length === 0 || waits.at(-1)!.wait?.until === "cured";
  const then: BenchRow["then"] = isToCure ? touch && { until: "recoat", ...touch } : leftAlone(waits, pieces);
  return { ...thenIn(then), ...(light ? { light } : {}), ...(full ? { full } : {}) };
}

const thenIn = (then: BenchRow["then"]): Pick<BenchRow, "then"> => (then ? { then } : {});
