/**
 * Puts the record of a job into the actions of one of its surfaces: what was done, piece by piece, when, and how it
 * differs from the recipe.
 *
 * A line stands for the next action of its kind on the surface, and for all before it: whoever records a coat has done
 * what goes before it. A coat of another material than any that the recipe still has is the next coat out of another can;
 * one after the last coat, or of the material that was put on last, is a coat more.
 */
import { hoursBetween, momentAfter } from "../measure/iso-dates.ts";
import type { JobRecord, Material } from "../model/model.ts";
import { type Action, type LayerAction, OTHER_WORK } from "../surface/actions.ts";

/** An action that was done on a piece. */
export interface Done {
  /** The line that says so, or that stands for it as well. */
  readonly record: JobRecord;
  /** The line tells of this action itself. */
  readonly isNamed?: true;
  /** Hands-on hours of all that the line stands for on this piece, where they are stated. */
  readonly tookHours?: number;
  /** Of the mix, on this piece, where it is stated. */
  readonly usedLitres?: number;
  /** Not done on this piece: a coat more that others got. */
  readonly leftOut?: true;
}

export type Difference =
  | { readonly kind: "extra coat"; readonly record: JobRecord; readonly coat: LayerAction }
  | {
      readonly kind: "another material";
      readonly record: JobRecord;
      readonly planned: LayerAction;
      readonly material: Material;
    }
  /** Nothing of the kind is left on the surface. */
  | { readonly kind: "no such step"; readonly record: JobRecord; readonly isKnown: boolean }
  | { readonly kind: "no such piece"; readonly record: JobRecord; readonly pieces: number };

export interface SurfaceRecord {
  /** By piece, and by the index of the action. */
  readonly done: readonly ReadonlyMap<number, Done>[];
  /** By piece: so many actions are over. */
  readonly reached: readonly number[];
  readonly differences: readonly Difference[];
}

/** A line of the record for one surface. */
export interface SurfaceLine {
  readonly record: JobRecord;
  /** What it names, where that is known. */
  readonly material?: Material;
  /** The part of its figures that one piece of this surface has, 0 to 1. */
  readonly share: number;
}

/**
 * The actions as they were done and are still to be done, and the record by their indices. Undefined where the record is
 * not at hand: see `recordBeside` of `client/bundles.ts`.
 */
export function amend(
  actions: readonly Action[],
  pieces: number,
  lines: readonly SurfaceLine[],
): { readonly actions: readonly Action[]; readonly record: SurfaceRecord } | undefined {
  const rows: Row[] = actions.map((action) => ({ action, done: [] }));
  const reached = Array.from({ length: pieces }, () => 0);
  const differences: Difference[] = [];
  for (const line of lines) {
    const all = line.record.facts.pieces ?? reached.map((_, piece) => piece + 1);
    const meant = all.filter((piece) => piece <= pieces).map((piece) => piece - 1);
    if (meant.length < all.length) differences.push({ kind: "no such piece", record: line.record, pieces });
    if (meant.length === 0) continue;
    const from = Math.min(...meant.map((piece) => reached[piece]!));
    const found = line.record.syntax.coat ? coatOf(rows, from, line) : stepOf(rows, from, line);
    if (found.difference) differences.push(found.difference);
    if (found.index === undefined) continue;
    if (found.extra) {
      rows.splice(found.index, 0, { action: found.extra, done: [] });
      reached.forEach((count, piece) => {
        if (meant.includes(piece) || count < found.index!) return;
        reached[piece] = count + 1;
      });
      for (let piece = 0; piece < pieces; piece += 1)
        if (!meant.includes(piece)) rows[found.index]!.done[piece] = { record: line.record, leftOut: true };
    } else if (found.instead) rows[found.index]!.action = found.instead;
    for (const piece of meant) {
      markDone(rows, reached[piece]!, found.index, piece, line);
      reached[piece] = Math.max(reached[piece]!, found.index + 1);
    }
  }
  return {
    actions: rows.map(({ action }, index) => ({ ...action, index })),
    record: {
      done: reached.map(
        (_, piece) =>
          new Map(
            rows.flatMap(({ done }, index): readonly (readonly [number, Done])[] =>
              done[piece] ? [[index, done[piece]]] : [],
            ),
          ),
      ),
      reached,
      differences,
    },
  };
}

interface Row {
  action: Action;
  /** By piece. */
  readonly done: (Done | undefined)[];
}

interface Found {
  readonly index?: number;
  /** The coat to put in at the index. */
  readonly extra?: LayerAction;
  /** The coat in place of the one at the index. */
  readonly instead?: LayerAction;
  readonly difference?: Difference;
}

function markDone(
  rows: readonly Row[],
  from: number,
  index: number,
  piece: number,
  { record, share }: SurfaceLine,
): void {
  const { tookHours } = record.facts;
  const done: Done = { record, ...(tookHours === undefined ? {} : { tookHours: tookHours * share }) };
  for (let at = from; at < index; at += 1) rows[at]!.done[piece] ??= done;
  const used = usedLitres(record, rows[index]!.action);
  rows[index]!.done[piece] = {
    ...done,
    isNamed: true,
    ...(used === undefined ? {} : { usedLitres: used * share }),
  };
}

/** When the work that a line tells of began: its hands-on time before its end. */
export const beginOf = ({ at, facts }: JobRecord): string =>
  momentAfter(at, -Math.round((facts.tookHours ?? 0) * 60) * 60, "minute");

/** Weights by the density of the material; undefined where that is not stated. */
function usedLitres({ facts: { used } }: JobRecord, action: Action): number | undefined {
  if (!used || used.dimension === "volume") return used?.value;
  const material = action.op === "layer" || action.op === "step" ? action.use?.material : undefined;
  const density = material?.density?.value;
  return density === undefined ? undefined : used.value / density;
}

function stepOf(rows: readonly Row[], from: number, { record, material }: SurfaceLine): Found {
  const { verb, what } = record.syntax;
  const isOne = ({ action }: Row): boolean =>
    action.op === "step" &&
    (verb === undefined
      ? action.verb === OTHER_WORK && action.what === what?.value
      : action.verb === verb.text && (material === undefined || action.use?.material === material));
  const index = rows.findIndex((row, at) => at >= from && isOne(row));
  if (index >= 0) return { index };
  return { difference: { kind: "no such step", record, isKnown: rows.some(isOne) } };
}

const layerIn = (row: Row | undefined): LayerAction | undefined =>
  row?.action.op === "layer" ? row.action : undefined;

function coatOf(rows: readonly Row[], from: number, { record, material }: SurfaceLine): Found {
  const number = record.syntax.coat?.number?.value;
  const hasNumber = (layer: LayerAction): boolean => number === undefined || layer.coat === number;
  const isOne = (row: Row): boolean => {
    const layer = layerIn(row);
    return (
      layer !== undefined && hasNumber(layer) && (material === undefined || layer.use.material === material)
    );
  };
  const next = rows.findIndex((row, at) => at >= from && isOne(row));
  const lastAt = rows.findLastIndex((row, at) => at < from && layerIn(row) !== undefined);
  const last = layerIn(rows[lastAt]);
  const isMore = number === undefined || (last !== undefined && number > last.coat);
  if (next >= 0) return { index: next, ...measuredIn(rows[next]!, record) };
  const isKnown = rows.some((row, at) => at < from && isOne(row));
  if (last && isMore && (material === undefined || last.use.material === material))
    return extraCoat(rows, from, lastAt, record, material);
  const ahead = rows.findIndex((row, at) => {
    const layer = layerIn(row);
    return at >= from && layer !== undefined && hasNumber(layer);
  });
  const planned = layerIn(rows[ahead]);
  if (planned && material) {
    return {
      index: ahead,
      instead: withAir(outOf(planned, material, record), record),
      difference: { kind: "another material", record, planned, material },
    };
  }
  if (last && isMore && !isKnown) return extraCoat(rows, from, lastAt, record, material);
  return { difference: { kind: "no such step", record, isKnown } };
}

function extraCoat(
  rows: readonly Row[],
  from: number,
  lastAt: number,
  record: JobRecord,
  material: Material | undefined,
): Found {
  const last = layerIn(rows[lastAt])!;
  const lastEnd = rows[lastAt]!.done.find((done) => done !== undefined)?.record.at ?? record.at;
  const { ifNeeded: _, batch: __, between: ___, ...plain } = last;
  const again =
    material === undefined || material === last.use.material ? plain : outOf(plain, material, record);
  const coat: LayerAction = withAir(
    {
      ...again,
      coat: last.coat + 1,
      coats: last.coat + 1,
      restedHours: Math.max(0, hoursBetween(lastEnd, beginOf(record))),
    },
    record,
  );
  return { index: from, extra: coat, difference: { kind: "extra coat", record, coat } };
}

/** The same coat out of another can: what was mixed into the planned one is not known of it. */
function outOf(
  { thinned: _, tinted: __, hardener: ___, ...layer }: LayerAction,
  material: Material,
  record: JobRecord,
): LayerAction {
  const place = { ...record.place, span: record.syntax.material?.span ?? record.place.span };
  return { ...layer, use: { name: material.name, place, material } };
}

const withAir = (layer: LayerAction, { facts: { air } }: JobRecord): LayerAction =>
  air ? { ...layer, measuredAir: air } : layer;

function measuredIn(row: Row, record: JobRecord): Pick<Found, "instead"> {
  return record.facts.air ? { instead: withAir(layerIn(row)!, record) } : {};
}
