/**
 * What would let a job end earlier: the same job planned again with one thing changed, each time alone in its shop.
 *
 * The changes are those that a shop can make: an hour more on one day of the week, one more pair of hands, air that is
 * 3 C warmer, another material of the same family, a start on the next day (which helps where a recoat window would have
 * closed over a night or a Sunday). Every change is a plan, made with a part of the usual search: what is told of it can
 * be reached, and at times a little more. This is for reports and for who asks, never for a keystroke; `MOST_MATERIALS`
 * and the days of the week bound how many.
 */
import { createChecker } from "./check.ts";
import { dayAfter, hoursBetween } from "./measure/iso-dates.ts";
import type { Material, ModelDeclaration, OpeningSpan, Shop } from "./model/model.ts";
import type { Program, ProgramFile } from "./model/program.ts";
import { planWorkRoughly } from "./schedule/plan.ts";
import type { JobResult } from "./totals/job-totals.ts";

export type Change =
  | { readonly kind: "hour"; readonly weekday: number }
  | { readonly kind: "hands"; readonly crew: number }
  | { readonly kind: "warmer"; readonly temperature: number }
  | { readonly kind: "material"; readonly from: Material; readonly to: Material }
  | { readonly kind: "later start"; readonly date: string };

export interface Help {
  readonly change: Change;
  /** The job with that change, planned alone. */
  readonly result: JobResult;
  /** Hours by which the last work and the full use come earlier, 0 or more. */
  readonly lastWorkH: number;
  /** Undefined where full use is not known. */
  readonly fullUseH?: number;
  /** Without the change no plan keeps all windows. */
  readonly makesPlan?: true;
}

const WARMER_C = 3;
/** Above this nobody heats a shop for a finish; common practice, no source. */
const WARMEST_C = 30;
const MOST_MATERIALS = 4;
const MIDNIGHT = 24 * 60;
/** Less than a step of the plan helps nobody. */
const LEAST_H = 1 / 12;

/**
 * The changes that bring the last work or the full use forward and put neither off, the most helpful first. Empty where
 * the job has no dates, with or without them. `before` is the job planned alone.
 */
export function whatHelps(program: Program, before: JobResult): readonly Help[] {
  const { job, shop } = before;
  if (shop === undefined || job.start === undefined) return [];
  return [...changesFor(program, before, shop)]
    .flatMap(({ change, from, to }) => {
      const changed = withModel(program, from, to);
      const result = createChecker(changed, { plan: planWorkRoughly }).alone(to.kind === "job" ? to : job);
      return helpOf(change, before, result) ?? [];
    })
    .sort((a, b) => b.lastWorkH - a.lastWorkH || (b.fullUseH ?? 0) - (a.fullUseH ?? 0));
}

interface Edit {
  readonly change: Change;
  readonly from: ModelDeclaration;
  readonly to: ModelDeclaration;
}

function* changesFor(program: Program, { job, needs, record }: JobResult, shop: Shop): Generator<Edit> {
  for (const weekday of new Set(shop.hours?.map((span) => span.weekday))) {
    const hours = hourMore(shop.hours!, weekday);
    if (hours) yield { change: { kind: "hour", weekday }, from: shop, to: { ...shop, hours } };
  }
  const crew = shop.crew + 1;
  yield { change: { kind: "hands", crew }, from: shop, to: { ...shop, crew } };
  const air = shop.air;
  if (air && air.value.temperature + WARMER_C <= WARMEST_C) {
    const temperature = air.value.temperature + WARMER_C;
    const warm = { ...air, value: { ...air.value, temperature } };
    yield { change: { kind: "warmer", temperature }, from: shop, to: { ...shop, air: warm } };
  }
  for (const [from, to] of otherMaterials(
    program,
    needs.map(({ material }) => material),
  ))
    yield { change: { kind: "material", from, to }, from, to: { ...to, ...namedAs(from) } };
  // What has begun begins no later.
  if (record) return;
  const start = job.start!;
  const date = dayAfter(start.date);
  yield { change: { kind: "later start", date }, from: job, to: { ...job, start: { ...start, date } } };
}

/** The last closing of that day an hour later, midnight at the latest; undefined where it is open till then. */
function hourMore(hours: readonly OpeningSpan[], weekday: number): readonly OpeningSpan[] | undefined {
  const last = hours.filter((span) => span.weekday === weekday).toSorted((a, b) => b.closes - a.closes)[0];
  // What closes before it opens goes on past midnight.
  if (!last || last.closes < last.opens || last.closes + 60 > MIDNIGHT) return undefined;
  return hours.map((span) => (span === last ? { ...span, closes: last.closes + 60 } : span));
}

/** Pairs of one that the job uses and another of its family that stands in the same stock. */
function otherMaterials(
  program: Program,
  used: readonly Material[],
): readonly (readonly [Material, Material])[] {
  const pairs = used.flatMap((from) => {
    const stock = program.files.get(from.file)?.declarations ?? [];
    return stock.flatMap(({ lowered: { model } }): readonly (readonly [Material, Material])[] =>
      model?.kind === "material" &&
      model.name !== from.name &&
      from.family !== undefined &&
      model.family?.name === from.family.name
        ? [[from, model]]
        : [],
    );
  });
  return pairs.slice(0, MOST_MATERIALS);
}

/** So that the recipes that name the one find the other. */
const namedAs = ({ name, file, declaration, namePlace, headPlace }: Material) => ({
  name,
  file,
  declaration,
  namePlace,
  headPlace,
});

/** The program with one declaration's meaning replaced. */
function withModel(program: Program, from: ModelDeclaration, to: ModelDeclaration): Program {
  const file = program.files.get(from.file);
  if (!file) return program;
  const declarations = file.declarations.map((declaration) =>
    declaration.lowered.model === from
      ? { ...declaration, lowered: { ...declaration.lowered, model: to } }
      : declaration,
  );
  const byKey = new Map(declarations.map((declaration) => [declaration.tree.key, declaration]));
  const changed: ProgramFile = { ...file, declarations, byKey };
  return { ...program, files: new Map([...program.files, [file.id, changed]]) };
}

function helpOf(change: Change, before: JobResult, result: JobResult): Help | undefined {
  if (before.schedule.status === "impossible")
    return result.totals.last_work === null ? undefined : { change, result, lastWorkH: 0, makesPlan: true };
  const lastWorkH = earlier(before.totals.last_work, result.totals.last_work);
  const fullUseH = earlier(before.totals.full_use, result.totals.full_use);
  if (lastWorkH === undefined || lastWorkH < 0 || (fullUseH ?? 0) < 0) return undefined;
  // To begin later and end no later is a help in itself.
  const least = change.kind === "later start" ? 0 : LEAST_H - 1e-6;
  if (Math.max(lastWorkH, fullUseH ?? 0) < least) return undefined;
  return { change, result, lastWorkH, ...(fullUseH === undefined ? {} : { fullUseH }) };
}

const earlier = (before: string | null, after: string | null): number | undefined =>
  before === null || after === null ? undefined : hoursBetween(after, before);
