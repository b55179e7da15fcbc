/**
 * Adds up a job: areas, film, litres, containers, hours, dates, fumes and money. What the text does not state enough
 * for is `null`; nothing is invented.
 */

import type { JobAir } from "../fumes/job-air.ts";
import { vapoursOf } from "../fumes/task-vapour.ts";
import { vocGrams } from "../fumes/voc.ts";
import { cents } from "../measure/figures.ts";
import type { ProgramView, Remembered } from "../memory/memory.ts";
import type { Job, Material, Shop } from "../model/model.ts";
import type { Scope } from "../model/program.ts";
import { Noted, type Outcome, outcomeOf, outcomes, soundIn, valueIn } from "../outcome.ts";
import type { FileId } from "../place.ts";
import { cheapestContainers } from "../quantities/containers.ts";
import type { DateVoid } from "../rules/voids.ts";
import { BEING_PLANNED, isBeingPlanned } from "../schedule/being-planned.ts";
import type { Planner } from "../schedule/plan-cache.ts";
import { planKey } from "../schedule/plan-key.ts";
import type { ShopPlans } from "../schedule/shop/plan-shop.ts";
import type { Schedule, ScheduleInput } from "../schedule/types.ts";
import { hasWork } from "../surface/has-work.ts";
import { type Runner, type SurfaceRun, startsFromOthers } from "../surface/run.ts";
import { litresForLater } from "./earned.ts";
import { type Draw, jobDraws, jobNeeds, type Need } from "./needs.ts";
import { chainKey } from "./planned-tasks.ts";
import { type RecordSums, recordedHours, recordedNeeds } from "./recorded-amounts.ts";
import { type Begun, begunOf, leftToPlan, withDone } from "./recorded-plan.ts";
import { createShops, type JobInShop } from "./shop-plans.ts";
import { sum, sumOrNull } from "./sums.ts";
import { suppliesOf } from "./supplies.ts";
import {
  areHoursEstimated,
  handsOnHours,
  hoursAreKnown,
  scheduleInput,
  waitsAreKnown,
  workInSessions,
} from "./task-plan.ts";
import type { ContainerCount, JobTotals, MaterialTotals, SurfaceTotals } from "./types.ts";
import { useDates } from "./use-dates.ts";
import { isBuiltInWater } from "./water.ts";

/** Everything computed of a job; `totals` is what is printed. */
export interface JobResult {
  readonly job: Job;
  readonly shop?: Shop;
  readonly runs: readonly SurfaceRun[];
  readonly draws: readonly Draw[];
  readonly needs: readonly MaterialNeed[];
  /** Litres in stock after this job, of every material that it or an earlier job drew on. */
  readonly left: ReadonlyMap<Material, number>;
  readonly schedule: Schedule;
  readonly totals: JobTotals;
  readonly prices: JobPrices;
  /** The verdict on its air, with all jobs that share its room; where its shop states a room. */
  readonly air?: JobAir;
  /** Of a job that has been begun by its record. */
  readonly record?: RecordSums;
  /** Its air depends on jobs of its room that are still being planned. */
  readonly awaitsAir?: true;
  /** Why no date of it can be promised; the totals and the plan then have none. Absent where they can. */
  readonly voided?: VoidedDates;
  /** What would keep its dates from being promised, by rules that the project has switched off; absent where there is nothing. */
  readonly unchecked?: readonly DateVoid[];
}

export interface VoidedDates {
  /** One at least. */
  readonly by: readonly DateVoid[];
  /** As it is planned all the same: its hours are taken in the shop, and rules look at it. */
  readonly planned: JobResult;
}

/** Without any date that the plan came to: the work in its order, and how long it takes by hand, stand. */
export function withoutDates(planned: JobResult, by: readonly DateVoid[]): JobResult {
  const none = null;
  return {
    ...planned,
    schedule: isBeingPlanned(planned.schedule) ? planned.schedule : undated(planned.schedule),
    totals: {
      ...planned.totals,
      elapsed_h: none,
      finish: none,
      last_work: none,
      light_use: none,
      full_use: none,
      in_service: none,
    },
    voided: { by, planned },
  };
}

function undated({ startAt: _, finishAt: __, lastWorkAt: ___, items, ...plan }: Schedule): Schedule {
  return { ...plan, items: items.map(({ startAt: ____, endAt: _____, ...item }) => item) };
}

/** What all pieces of a job cost or bring together; `null` where the price of one of them is not stated. */
export interface JobPrices {
  /** As bought; 0 where nothing is stated, and in a job after another, which paid for them. */
  readonly bought: number;
  readonly forNew: number | null;
  readonly forSale: number | null;
  /** Pieces without a price of a new one, and without one at which they sell. */
  readonly withoutNew: readonly string[];
  readonly withoutSale: readonly string[];
}

export interface MaterialNeed extends Need {
  /** What is in stock before this job; for a job `after` another, what that left. */
  readonly onHand: number;
  readonly totals: MaterialTotals;
}

export interface Totaller {
  /** In a shop with other jobs, by the plan of all of them. */
  result(job: Job): JobResult;
  /** As if no other job were done in its shop. */
  alone(job: Job): JobResult;
  /** As `result`, as far as the plan of its shop is known; it is not asked for. */
  atHand(job: Job): JobResult;
  /** What `result` needs before there are plans; what fails then fails again there. */
  prepareIfSound(job: Job): void;
  /** The same for jobs of a file, given their runs, in steps; the list is the same object while all is as it was. */
  prepareAll(
    file: FileId,
    jobs: readonly Job[],
    runs: readonly Outcome<readonly SurfaceRun[]>[],
  ): Generator<void, readonly Outcome<UnplannedJob>[]>;
  /** As `result` of each of the prepared jobs of a file, in steps. */
  resultsOf(
    file: FileId,
    prepared: readonly Outcome<UnplannedJob>[],
  ): Generator<void, readonly Outcome<JobResult>[]>;
  shopPlans(shop: Shop): ShopPlans<JobInShop>;
}

export interface TotallerParts {
  readonly runner: Pick<Runner, "job">;
  readonly scopeOf: (file: FileId) => Scope;
  readonly remembered: Remembered<ProgramView>;
  readonly plan: Planner;
  /** The files whose jobs may be done in a shop. */
  readonly filesOf: (shop: Shop) => readonly FileId[];
  /** The jobs of such a file that are done in the shop on known dates; they share its people and its room. */
  readonly jobsIn: (shop: Shop, file: FileId) => readonly Job[];
  /** A local ISO date or date-time before which nothing more is done; without it, jobs go on from their last record. */
  readonly today?: string;
  /** Notes on what is to be planned of a job where a plan that was kept has it; without it, none was. */
  readonly kept?: KeptNotes;
}

export type KeptNotes = (job: Job, runs: readonly SurfaceRun[], input: ScheduleInput) => ScheduleInput;

/** What is known of a job before it is planned, and what is to be planned. */
export interface UnplannedJob extends Omit<JobResult, "schedule" | "totals" | "air"> {
  readonly totals: UnplannedTotals;
  /** Of what is left to do. */
  readonly input: ScheduleInput;
  readonly begun?: Begun;
  /** Of a job that has been begun: as it was before anything was done. */
  readonly asPlanned?: UnplannedJob;
  /** See the function of this name. */
  readonly startsFromOthers: boolean;
}

type UnplannedTotals = Omit<
  JobTotals,
  "elapsed_h" | "finish" | "last_work" | "light_use" | "full_use" | "in_service"
>;

/** Litres in stock, see `JobResult.left`. */
type Stock = JobResult["left"];

/** Adds up the jobs of one program, without their air; remembers each, because jobs may start from what another left. */
export function createTotaller({
  runner,
  scopeOf,
  remembered,
  plan,
  filesOf,
  jobsIn,
  today,
  kept,
}: TotallerParts): Totaller {
  const known = new Noted<Job, UnplannedJob>();
  const knownOf = (job: Job): UnplannedJob | undefined => {
    const outcome = job.after ? known.get(job) : known.atHand(job);
    return outcome && soundIn(outcome);
  };
  /** What jobs bring to their shops, of files whose jobs have been totalled as a whole. */
  const joining = new Map<FileId, readonly Outcome<Joining>[]>();
  const noted = (unplanned: UnplannedJob): UnplannedJob =>
    kept ? { ...unplanned, input: kept(unplanned.job, unplanned.runs, unplanned.input) } : unplanned;
  const total = (job: Job, stock: Stock | undefined): UnplannedJob => {
    const runs = runner.job(job);
    return remembered.recall("unplanned totals", job, [job, runs, stock, today], (asking) => {
      const before = remembered.last<UnplannedJob>("unplanned totals", job);
      return withInputOf(before, noted(totalJob(job, runs, asking.scopeOf(job.file), stock, today)));
    });
  };
  /** The same object as long as the amounts are the same. */
  const stockAfter = ({ job, left }: UnplannedJob): Stock =>
    remembered.recall("stock", job, [left], () => left, isSameStock);
  /** Alone in its shop, before anything was done; the hours of the plan that the record is held against. */
  const planBefore = ({ job, asPlanned }: UnplannedJob): Schedule | undefined =>
    asPlanned?.shop && areHoursEstimated(asPlanned.runs)
      ? planOf(job, asPlanned.input, "plan before the record")
      : undefined;
  const plansAlone = outcomes((unplanned: UnplannedJob): Schedule => {
    // One after the other, as a job wants one plan at a time.
    const before = planBefore(unplanned);
    return before && isBeingPlanned(before) ? before : planOf(unplanned.job, unplanned.input);
  });
  const alone = (unplanned: UnplannedJob): Schedule => valueIn(plansAlone(unplanned));
  const planOf = (owner: Job, input: ScheduleInput, query = "plan"): Schedule => {
    const before = remembered.recall(query, owner, [input], () => plan(input, owner));
    return isBeingPlanned(before) ? plan(input, owner) : before;
  };
  const shops = createShops({
    remembered,
    plan,
    scopeOf,
    members: (shop) =>
      filesOf(shop).flatMap((file) => {
        const ofFile = joining.get(file) ?? jobsIn(shop, file).map((job) => outcomeOf(() => joiningOf(job)));
        const members: Joining[] = [];
        for (const outcome of ofFile) {
          // What fails is named where the job itself is worked out.
          const member = soundIn(outcome);
          if (member?.shop === shop) members.push(member);
        }
        return members;
      }),
  });
  const joiningOf = (job: Job): Joining => {
    const unplanned = prepared(job);
    return joins(unplanned, alone(unplanned));
  };
  const withSchedule = (query: string, unplanned: UnplannedJob, schedule: Schedule): JobResult =>
    remembered.recall(query, unplanned.job, [unplanned, schedule], () =>
      withPlan(unplanned, schedule, isBeingPlanned(schedule) ? undefined : planBefore(unplanned)),
    );
  const prepared = (job: Job): UnplannedJob => {
    // Back to one that is known, or that starts from nothing, and without recursion: a chain of jobs may be long. A
    // job that comes after itself starts from nothing as well; the names check reports it.
    const chain = new Set<Job>();
    let earlier: Job | undefined = job;
    while (earlier && !knownOf(earlier) && !chain.has(earlier)) {
      chain.add(earlier);
      earlier = earlier.after && scopeOf(earlier.file).jobs.get(earlier.after.job);
    }
    let before = earlier && knownOf(earlier);
    for (const each of [...chain].reverse()) {
      before = total(each, before && stockAfter(before));
      known.set(each, { value: before });
    }
    return knownOf(job)!;
  };
  const scheduleOf = (unplanned: UnplannedJob): Schedule =>
    (isShared(unplanned) ? shops.scheduleOf(unplanned) : undefined) ?? alone(unplanned);
  const withItsPlan = (unplanned: UnplannedJob, schedule: Schedule): JobResult =>
    withSchedule("totals", unplanned, schedule);
  return {
    prepareIfSound: (job) => {
      ifSound(() => prepared(job));
    },
    *prepareAll(file, jobs, runs) {
      return yield* remembered.each(file, {
        query: "unplanned totals",
        ownerOf: (row) => jobs[row]!,
        columns: [jobs, runs],
        // They are given what an earlier job left as well.
        isOpen: (row) => jobs[row]!.after !== undefined,
        ask: (row) => prepared(jobs[row]!),
        onCarried: (carried) => known.setAll(jobs, carried),
      });
    },
    *resultsOf(file, all) {
      const owner = { file, declaration: "" };
      const isSettled = (schedule: Schedule): boolean => !isBeingPlanned(schedule);
      const plans = yield* remembered.rows(
        "plans",
        owner,
        [all],
        (row) => alone(valueIn(all[row]!)),
        isSettled,
      );
      plansAlone.noteAll(all.map(soundIn), plans);
      const members = yield* remembered.rows("in shops", owner, [all, plans], (row) =>
        joins(valueIn(all[row]!), valueIn(plans[row]!)),
      );
      joining.set(file, members);
      const inShops = new Map<Shop, Outcome<ReadonlyMap<Job, Schedule>>>();
      const schedules: (Schedule | undefined)[] = [];
      for (let row = 0; row < all.length; row += 1) {
        const member = soundIn(members[row]!);
        const shop = member?.shop;
        if (shop && !inShops.has(shop)) {
          inShops.set(
            shop,
            outcomeOf(() => shops.schedulesIn(shop)),
          );
          yield;
        }
        const shared = shop && inShops.get(shop)!;
        if (!shared) schedules.push(member?.alone);
        else if ("value" in shared) schedules.push(shared.value.get(member.job) ?? member.alone);
        else schedules.push(undefined);
      }
      // Where one has none, what kept it from having one is thrown again.
      const result = (row: number): JobResult => {
        const unplanned = valueIn(all[row]!);
        return withItsPlan(unplanned, schedules[row] ?? scheduleOf(unplanned));
      };
      return yield* remembered.rows("totals", owner, [all, schedules], result);
    },
    alone: (job) => {
      const unplanned = prepared(job);
      return withSchedule("totals alone", unplanned, alone(unplanned));
    },
    atHand: (job) => {
      const unplanned = prepared(job);
      const isKnown = !isShared(unplanned) || shops.isKnown(unplanned.shop!);
      const schedule = isKnown ? (shops.scheduleOf(unplanned) ?? alone(unplanned)) : BEING_PLANNED;
      return withSchedule("totals at hand", unplanned, schedule);
    },
    result: (job) => {
      const unplanned = prepared(job);
      return withItsPlan(unplanned, scheduleOf(unplanned));
    },
    shopPlans: shops.plansOf,
  };
}

/** What a job brings to its shop. */
interface Joining {
  readonly job: Job;
  /** None where the job has no dates: it shares nobody's hours. */
  readonly shop: Shop | undefined;
  readonly input: ScheduleInput;
  readonly alone: Schedule;
  readonly startsFromOthers: boolean;
}

const isShared = ({ shop, job }: UnplannedJob): boolean => shop !== undefined && job.start !== undefined;

const joins = (unplanned: UnplannedJob, alone: Schedule): Joining => ({
  job: unplanned.job,
  shop: isShared(unplanned) ? unplanned.shop : undefined,
  input: unplanned.input,
  alone,
  startsFromOthers: unplanned.startsFromOthers,
});

/** With the former input where it is the same to the planner, so that the plans of its shop are not asked for again. */
const withInputOf = (before: UnplannedJob | undefined, now: UnplannedJob): UnplannedJob =>
  before && planKey(before.input) === planKey(now.input) ? { ...now, input: before.input } : now;

function ifSound<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch {
    // It is named where the job itself is worked out.
    return undefined;
  }
}

function isSameStock(a: Stock, b: Stock): boolean {
  const others = [...b];
  return (
    a.size === b.size &&
    [...a].every(([material, litres], index) => {
      const other = others[index];
      return other?.[0] === material && other[1] === litres;
    })
  );
}

function totalJob(
  job: Job,
  runs: readonly SurfaceRun[],
  scope: Scope,
  stock: Stock | undefined,
  today: string | undefined,
): UnplannedJob {
  const shop = job.shop && scope.shops.get(job.shop.name);
  const onHand = ({ material }: Need): number => stock?.get(material) ?? material.onHand;
  const begun = runs.some((run) => run.record) ? begunOf(job, runs, today) : undefined;
  const planned =
    begun &&
    totalJob(
      job,
      runs.map((run) => run.record?.planned ?? run),
      scope,
      stock,
      undefined,
    );
  const priceOf = (need: Need): MaterialNeed => priced(need, onHand(need));
  const counted = planned && recordedNeeds(job, runs, planned.needs, priceOf, priced);
  const draws = counted?.draws ?? jobDraws(job, runs);
  const needs = counted?.needs ?? jobNeeds(draws).map(priceOf);
  const left = new Map([
    ...(stock ?? []),
    ...needs.map((need) => [need.material, litresForLater(need)] as const),
  ]);
  // Nothing to do is nothing worked out, and not work that takes no time and costs nothing.
  const open = hasUnknownMaterial(runs) || !hasWork(runs);
  const hours = begun ? recordedHours(runs) : undefined;
  const handsOn = hoursAreKnown(runs) && hasWork(runs) ? (hours?.all ?? handsOnHours(runs)) : null;
  const surfaces = runs.map(surfaceTotals);
  const prices = pricesOf(job, scope, stock !== undefined || job.after !== undefined);
  const totals: UnplannedTotals = {
    name: job.name,
    area_m2: sumOrNull(surfaces.map((surface) => surface.area_m2)),
    surfaces,
    materials: needs.map((need) => need.totals),
    hands_on_h: handsOn,
    voc_g: open ? null : vocOf(draws),
    ...money({
      shop,
      prices,
      needs,
      open,
      handsOn,
      supplies: suppliesOf(job, runs),
    }),
  };
  const input = scheduleInput(job, shop, runs, vapoursOf(shop, draws));
  const all = {
    job,
    ...(shop ? { shop } : {}),
    runs,
    draws,
    needs,
    left,
    input,
    totals,
    prices,
    startsFromOthers: startsFromOthers(job, scope),
  };
  if (!begun) return { ...all, input: notBefore(input, today) };
  const record: RecordSums = {
    lastAt: job.records.at(-1)!.at,
    from: begun.from,
    planned: planned!.totals,
    doneHours: hours!.done,
    stock: counted!.stock,
  };
  return { ...all, input: leftToPlan(input, begun), begun, asPlanned: planned!, record };
}

/** Nothing of a job begins before today. */
function notBefore(input: ScheduleInput, today: string | undefined): ScheduleInput {
  if (input.start === undefined || today === undefined || input.start.slice(0, today.length) >= today)
    return input;
  return { ...input, start: today };
}

/** `before`: the plan of a job that has been begun, before anything was done. */
function withPlan(
  { input: _, begun, asPlanned, totals: unplanned, startsFromOthers: __, ...counted }: UnplannedJob,
  left: Schedule,
  before: Schedule | undefined,
): JobResult {
  const { runs, shop, job } = counted;
  const schedule = begun ? withDone(left, begun, chainKeys(runs)) : left;
  const { record, ...inAll } = counted;
  const held =
    before && record && asPlanned
      ? withRecord(unplanned, { ...inAll, record }, asPlanned, before, left)
      : undefined;
  const rest = held ? { ...counted, record: held.record } : counted;
  const totals = held?.totals ?? (begun ? unplanned : withLabour(unplanned, rest, schedule));
  const planned = schedule.status === "planned" && totals.hands_on_h !== null && waitsAreKnown(runs);
  const dated = planned && shop !== undefined && job.start !== undefined;
  const dates = dated ? useDates(runs, schedule) : undefined;
  const { name, area_m2, surfaces, materials, hands_on_h, ...sums } = totals;
  const all: JobTotals = {
    name,
    area_m2,
    surfaces,
    materials,
    hands_on_h,
    elapsed_h: planned ? schedule.elapsedHours : null,
    finish: dated ? (schedule.finishAt ?? null) : null,
    last_work: dates?.lastWork?.at ?? null,
    light_use: dates?.lightUse?.at ?? null,
    full_use: dates?.fullUse?.at ?? null,
    in_service: dates?.fullUse?.at ?? null,
    ...sums,
  };
  return { ...rest, schedule, totals: all };
}

/** What was planned by the plan that it was planned by, and what it comes to by the record and the plan of the rest. */
function withRecord(
  totals: UnplannedTotals,
  { record, runs, shop }: Pick<UnplannedJob, "runs" | "shop"> & { readonly record: RecordSums },
  asPlanned: UnplannedJob,
  before: Schedule,
  left: Schedule,
): { readonly totals: UnplannedTotals; readonly record: RecordSums } {
  const { all, done } = recordedHours(runs, {
    asPlanned: workInSessions(asPlanned.runs, before),
    left: workInSessions(runs, left),
  });
  return {
    totals: totals.hands_on_h === null ? totals : withHours(totals, shop, all),
    record: { ...record, planned: withLabour(asPlanned.totals, asPlanned, before), doneHours: done },
  };
}

/** Labour by the plan, which sets up once a session; while it is being planned that is not known. */
function withLabour(
  totals: UnplannedTotals,
  { job, runs, shop }: Pick<UnplannedJob, "job" | "runs" | "shop">,
  schedule: Schedule,
): UnplannedTotals {
  if (totals.hands_on_h === null || !shop || !areHoursEstimated(runs)) return totals;
  const isOpen = isBeingPlanned(schedule) && job.start !== undefined;
  const work = isOpen ? undefined : workInSessions(runs, schedule);
  if (!isOpen && work === undefined) return totals;
  return withHours(totals, shop, work ? work.each + work.more : null);
}

/** With other hours, and the money that changes with them; null where they are not known. */
function withHours(totals: UnplannedTotals, shop: Shop | undefined, hands: number | null): UnplannedTotals {
  const rate = shop?.labourPerH;
  if (rate === undefined || totals.labour_cost === null) return { ...totals, hands_on_h: hands };
  const labour = hands === null ? null : cents(hands * rate);
  const more = labour === null ? null : labour - totals.labour_cost;
  return {
    ...totals,
    hands_on_h: hands,
    labour_cost: labour,
    total_cost: totals.total_cost === null || more === null ? null : cents(totals.total_cost + more),
    saving: totals.saving === null || more === null ? null : cents(totals.saving - more),
  };
}

const chainKeys = (runs: readonly SurfaceRun[]): readonly string[] =>
  runs.flatMap((run) => Array.from({ length: run.pieces }, (_, piece) => chainKey(run, piece)));

function surfaceTotals(run: SurfaceRun): SurfaceTotals {
  const coats = run.moments.flatMap(({ action, after }) =>
    action.op === "layer" ? [after.layers[after.layers.length - 1]!] : [],
  );
  return {
    name: run.label,
    area_m2: run.surface?.areaGap ? null : (run.surface?.areaM2 ?? 0) * run.pieces,
    dry_film_um: sumOrNull(coats.map((coat) => coat.filmUm ?? null)),
  };
}

function priced(need: Need, onHand: number): MaterialNeed {
  const name = need.material.name;
  if (need.litres === undefined)
    return { ...need, onHand, totals: { name, litres: null, containers: [], cost: null } };
  const short = need.litres - onHand;
  if (short <= 1e-9)
    return { ...need, onHand, totals: { name, litres: need.litres, containers: [], cost: 0 } };
  if (need.material.sold.length === 0)
    return { ...need, onHand, totals: { name, litres: need.litres, containers: [], cost: null } };
  const containers: readonly ContainerCount[] = cheapestContainers(short, need.material.sold);
  const cost = cents(sum(containers.map((c) => c.count * c.price)));
  return { ...need, onHand, totals: { name, litres: need.litres, containers, cost } };
}

const hasUnknownMaterial = (runs: readonly SurfaceRun[]): boolean =>
  runs.some((run) =>
    run.moments.some(({ action }) => action.op === "open" || (action.op === "layer" && !action.use.material)),
  );

/** Grams of volatile organic compounds. */
function vocOf(draws: readonly Draw[]): number | null {
  return sumOrNull(
    draws.map(({ material, litres }) => {
      if (isBuiltInWater(material)) return 0;
      const voc = material.voc?.value;
      return voc === undefined || litres === undefined ? null : vocGrams(litres, voc);
    }),
  );
}

type Money = Pick<JobTotals, "material_cost" | "labour_cost" | "total_cost" | "saving">;

interface Spending {
  readonly shop: Shop | undefined;
  readonly prices: JobPrices;
  readonly needs: readonly MaterialNeed[];
  readonly open: boolean;
  readonly handsOn: number | null;
  readonly supplies: number;
}

function money({ shop, prices, needs, open, handsOn, supplies }: Spending): Money {
  const costs = open ? null : sumOrNull(needs.map((need) => need.totals.cost));
  const materialCost = costs === null ? null : cents(costs);
  const rate = shop?.labourPerH;
  const labourCost = rate === undefined || handsOn === null ? null : cents(handsOn * rate);
  // Without a rate nobody is paid; with one, hours that are not known are not free.
  const labour = rate === undefined ? 0 : labourCost;
  const total = sumOrNull([materialCost, labour, supplies, prices.bought]);
  return {
    material_cost: materialCost,
    labour_cost: labourCost,
    total_cost: total === null ? null : cents(total),
    saving: total === null || prices.forNew === null ? null : cents(prices.forNew - total),
  };
}

/** `paidBefore`: the pieces were paid for by an earlier job. */
function pricesOf(job: Job, scope: Scope, paidBefore: boolean): JobPrices {
  const pieces = job.pieces.map(({ piece: name, count }) => ({ name, count, piece: scope.pieces.get(name) }));
  const together = (price: "newPrice" | "sellPrice"): number | null => {
    const each = pieces.map(({ piece, count }) => {
      const one = piece?.[price];
      return one === undefined ? null : one * count;
    });
    return each.length === 0 ? null : sumOrNull(each);
  };
  const without = (price: "newPrice" | "sellPrice"): readonly string[] => [
    ...new Set(pieces.flatMap(({ name, piece }) => (piece?.[price] === undefined ? [name] : []))),
  ];
  return {
    bought: paidBefore ? 0 : sum(pieces.map(({ piece, count }) => (piece?.bought ?? 0) * count)),
    forNew: together("newPrice"),
    forSale: together("sellPrice"),
    withoutNew: without("newPrice"),
    withoutSale: without("sellPrice"),
  };
}
