/** A job as an editor draws it, from its result and its sheet: see `model.ts`. Nothing is calculated here. */

import { t, translated } from "../../../../grammar/src/translate.ts";
import { byGravity } from "../../core/findings.ts";
import { currencyText, dayText, moneyText } from "../../core/measure/figures.ts";
import { formatNumber } from "../../core/measure/format-amount.ts";
import { figuresIn, type ShownFigures } from "../../core/measure/shown-figures.ts";
import { type Place, placeKey } from "../../core/place.ts";
import { isBeingPlanned } from "../../core/schedule/being-planned.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { type Task, tasksById } from "../../core/totals/planned-tasks.ts";
import { alsoNeeded, sandpaperNeeded } from "../also-needed.ts";
import { roomHours, roomInWords } from "../fumes/room-hours.ts";
import { unpromised } from "../missing-inputs.ts";
import type { FileSpan } from "../places/file-finding.ts";
import { briefReason, jobDates } from "../schedule/job-dates.ts";
import { isDated, type PlanLine, planLines } from "../schedule/job-plan.ts";
import type { ShopSource } from "../schedule/shop-weeks.ts";
import type { SectionCoat } from "../section/model.ts";
import { actionTitle } from "../sheet/action-title.ts";
import { inTitles } from "../sheet/bench-order.ts";
import type { Sheet, SheetFinding, SheetStep } from "../sheet/model.ts";
import { stepNumbers } from "../sheet/procedure.ts";
import { titleOf } from "../sheet/words.ts";
import { shoppingList } from "../shopping-list.ts";
import { WORTH_COLUMNS, worthTable } from "../worth.ts";
import { costsOf } from "./costs.ts";
import type {
  Bench,
  BenchBar,
  BenchCoat,
  BenchFinding,
  BenchMaterial,
  BenchOther,
  BenchStep,
  BenchSurface,
} from "./model.ts";
import { neighboursOf } from "./neighbours.ts";
import { nextWork } from "./next-work.ts";
import { otherJobs } from "./others.ts";
import { shopClock } from "./shop-clock.ts";
import { shopLoad } from "./shop-load.ts";

/** More bars than these on a surface say nothing to an eye. */
const MOST_BARS = 600;
/** A plan of longer than so many days is drawn without the hours at which the shop is shut. */
const MOST_SHUT_DAYS = 120;

/** `sheet` is that of the job; `spanOf` tells where a place stands now; `source` knows the other jobs of its shop. */
export function benchOf(
  result: JobResult,
  sheet: Sheet,
  spanOf: (place: Place) => FileSpan | undefined,
  source: ShopSource,
): Bench<FileSpan> {
  const places = new Places(spanOf);
  const { schedule, runs, job } = result;
  const at = places.of(job.namePlace);
  const shown = SHOWN_FACTS.map(translated);
  const lines = planLines(result);
  const neighbours = neighboursOf(result, source);
  const { others, othersLeft } = otherJobs(result, neighbours, (place) => places.of(place));
  const surfaces = runs.map((run, i) => surfaceOf(lines, run, sheet, i, places, neverCured(result, run)));
  const materials = new Map(result.needs.map(({ material }) => [material.name, material]));
  const titles = new Map(runs.map(({ label }, i) => [label, surfaces[i]!.title]));
  return {
    name: job.name,
    title: sheet.title,
    ...(at === undefined ? {} : { at }),
    facts: sheet.facts.filter(({ name }) => shown.includes(name)),
    // Which line a date waits for is drawn in the days; here its name in the text would be read as a word.
    dates: jobDates(result).map(({ field, name, at: known, text, reason }) => ({
      name: translated(name),
      // Nobody knows a cure of weeks to the hour.
      text: field === "full_use" && known !== undefined ? dayText(known) : text,
      reason: known === undefined ? inTitles(reason, materials) : briefReason(reason),
    })),
    ...nextWork(sheet, result),
    isSound: unpromised(result) === undefined && !sheet.findings.some(({ severity }) => severity === "error"),
    plan: isBeingPlanned(schedule) ? "being planned" : schedule.items.length > 0 ? "planned" : "none",
    ...(isDated(result) && schedule.startAt !== undefined ? { startAt: schedule.startAt } : {}),
    endHours: schedule.elapsedHours,
    surfaces,
    others,
    othersLeft,
    days: shopLoad(result, neighbours, source),
    shut: shutHours(result, others),
    air: airOf(result, sheet, neighbours, places),
    materials: materialsOf(result, places, figuresIn(sheet.units)),
    alsoNeeded: [...sandpaperNeeded(runs), ...alsoNeeded(runs)],
    currency: currencyText(result.shop?.currency ?? ""),
    costs: costsOf(result),
    ...worthOf(result),
    gaps: sheet.gaps,
    findings: sheet.findings.map((finding) => findingOf(finding, places, titles)),
    places: places.all,
  };
}

const SHOWN_FACTS: readonly string[] = ["Owner", "Shop", "Air", "After the job", "Wanted by", "Hands-on"];

/** Places by their numbers, each once. */
class Places {
  readonly all: FileSpan[] = [];
  readonly #known = new Map<Place, number | undefined>();
  readonly #spanOf: (place: Place) => FileSpan | undefined;

  constructor(spanOf: (place: Place) => FileSpan | undefined) {
    this.#spanOf = spanOf;
  }

  of(place: Place): number | undefined {
    if (this.#known.has(place)) return this.#known.get(place);
    const span = this.#spanOf(place);
    const at = span && this.add(span);
    this.#known.set(place, at);
    return at;
  }

  add(span: FileSpan): number {
    this.all.push(span);
    return this.all.length - 1;
  }
}

const findingOf = (
  { severity, lines: [headline = "", ...lines], at, surfaces = [] }: SheetFinding,
  places: Places,
  titles: ReadonlyMap<string, string>,
): BenchFinding => ({
  severity,
  headline,
  lines,
  where: surfaces.map((label) => titles.get(label) ?? label),
  at: places.add(at),
});

// ---------------------------------------------------------------------------------------------------------------
// Surfaces

function surfaceOf(
  lines: readonly PlanLine[],
  run: SurfaceRun,
  sheet: Sheet,
  index: number,
  places: Places,
  never: ReadonlyMap<number, string>,
): BenchSurface {
  const { section, title, area, wear, substrate } = sheet.surfaces[index]!;
  const steps = sheet.procedures[index]!.entries.filter((entry): entry is SheetStep => entry.kind === "step");
  const found = new Map(steps.map((step) => [step.index, step.findings.map((each) => each - 1)] as const));
  const onCoats = new Set(section.coats.flatMap((coat) => found.get(coat.index) ?? []));
  const elsewhere = sheet.findings.flatMap(({ number, surfaces }) =>
    !onCoats.has(number - 1) &&
    (surfaces?.includes(run.label) || steps.some(({ findings }) => findings.includes(number)))
      ? [number - 1]
      : [],
  );
  const numbers = stepNumbers(run);
  const bars = barsOf(lines, run, numbers);
  return {
    title,
    about: [substrate, area, wear && t`${wear} wear`].filter(Boolean),
    section,
    coats: section.coats.map((coat) =>
      coatOf(
        coat,
        run,
        bars,
        found.get(coat.index) ?? [],
        never.get(coat.index),
        places,
        figuresIn(sheet.units),
      ),
    ),
    bars,
    steps: run.moments.flatMap(({ action }, i): readonly BenchStep[] => {
      if (action.op === "note" || action.op === "open") return [];
      const number = numbers[i];
      const at = places.of(action.place);
      const [gravest] = (found.get(i) ?? []).map((each) => sheet.findings[each]!).toSorted(byGravity);
      return [
        {
          index: i,
          ...(number === undefined ? {} : { number }),
          kind: action.op,
          what: actionTitle(action),
          ...(at === undefined ? {} : { at }),
          ...(gravest === undefined ? {} : { gravest: gravest.severity }),
        },
      ];
    }),
    findings: elsewhere,
  };
}

/**
 * The coats of a run, by the positions of their actions, that never cure, and why: those that suffer, and the new ones below
 * that they are put on.
 */
function neverCured({ voided }: JobResult, { label, moments }: SurfaceRun): ReadonlyMap<number, string> {
  const never = new Map<number, string>();
  const layers = moments.flatMap(({ action }, index) => (action.op === "layer" ? [index] : []));
  for (const { brief, causes } of voided?.by ?? []) {
    const here = new Set(causes.flatMap(({ surface, place }) => (surface === label ? placeKey(place) : [])));
    for (const [at, index] of layers.entries()) {
      if (!here.has(placeKey(moments[index]!.action.place))) continue;
      const below = layers[at - 1];
      for (const coat of below === undefined ? [index] : [below, index])
        if (!never.has(coat)) never.set(coat, brief);
    }
  }
  return never;
}

function coatOf(
  { index, litres }: SectionCoat,
  run: SurfaceRun,
  bars: readonly BenchBar[],
  findings: readonly number[],
  never: string | undefined,
  places: Places,
  say: ShownFigures,
): BenchCoat {
  const moment = run.moments[index]!;
  const at = places.of(moment.action.place);
  const ends = bars.filter((bar) => bar.index === index).map(({ end }) => end);
  const drying = moment.after.layers.at(-1)?.drying;
  return {
    ...(at === undefined ? {} : { at }),
    takes: litres === undefined ? "" : say.litres(litres),
    ...(ends.length === 0 ? {} : { onAt: Math.max(...ends) }),
    ...(drying?.touch ? { touchH: drying.touch.hours } : {}),
    ...(drying?.recoat ? { recoatH: drying.recoat.hours } : {}),
    ...(drying?.cured ? { curedH: drying.cured.hours } : {}),
    ...(never === undefined ? {} : { never }),
    findings,
  };
}

/** One for each stretch of time in which the same is done, whatever the number of its pieces. */
function barsOf(
  lines: readonly PlanLine[],
  run: SurfaceRun,
  numbers: readonly (number | undefined)[],
): readonly BenchBar[] {
  const tasks = tasksById([run]);
  const bars = new Map<string, BenchBar & { readonly pieces: number[] }>();
  for (const { id, kind, start, end, slack, closes } of lines) {
    const task: Task | undefined = tasks.get(id);
    if (task === undefined) continue;
    const { index } = task;
    const step = numbers[index];
    const key = `${index} ${start} ${end}`;
    const same = bars.get(key);
    if (same) same.pieces.push(task.piece + 1);
    else if (bars.size < MOST_BARS) {
      const open = closes === undefined ? {} : { closes };
      const numbered = step === undefined ? {} : { step };
      bars.set(key, { index, ...numbered, kind, start, end, pieces: [task.piece + 1], slack, ...open });
    }
  }
  return [...bars.values()];
}

// ---------------------------------------------------------------------------------------------------------------
// The shop

/** From the first work of the jobs that are drawn to a day after the last. */
function shutHours({ schedule, shop }: JobResult, others: readonly BenchOther[]): Bench<unknown>["shut"] {
  const bars = others.flatMap(({ rows }) => rows.flatMap((row) => row.bars));
  const fromH = bars.reduce((least, { start }) => Math.min(least, start), 0);
  const toH = bars.reduce((most, { end }) => Math.max(most, end), schedule.elapsedHours);
  if (toH - fromH > MOST_SHUT_DAYS * 24) return [];
  return shopClock(shop, schedule.startAt, fromH)?.shutBetween(fromH, toH + 24) ?? [];
}

function airOf(
  result: JobResult,
  sheet: Sheet,
  others: readonly JobResult[],
  places: Places,
): Bench<unknown>["air"] {
  const { shop } = result;
  const { state, hours, worst, missing, night } = roomHours(result, others);
  const room = shop && (shop.room?.place ?? shop.namePlace);
  const at = room && places.of(room);
  return {
    state,
    room: roomInWords(result),
    ...(at === undefined ? {} : { at }),
    hours: hours.map(({ mostBy, ...hour }) => {
      const line = mostBy && places.of(mostBy.place);
      return { ...hour, ...(line === undefined ? {} : { at: line }) };
    }),
    worst,
    missing,
    ...(night === undefined ? {} : { night }),
    said: sheet.fumes ? [`${sheet.fumes.gist} ${withTitles(sheet.fumes.text, others)}`] : [],
  };
}

/** Other jobs by their titles. */
function withTitles(text: string, jobs: readonly JobResult[]): string {
  const titles = new Map(jobs.map(({ job }) => [job.name, titleOf(job)]));
  return text.replaceAll(/`([^`]*)`/gu, (whole, name: string) =>
    titles.has(name) ? t`“${titles.get(name)!}”` : whole,
  );
}

// ---------------------------------------------------------------------------------------------------------------
// Materials and money

function materialsOf(result: JobResult, places: Places, say: ShownFigures): readonly BenchMaterial[] {
  return shoppingList([result]).flatMap(({ items }) =>
    items.map(({ material, litres, onHand, containers, cost, gaps }) => {
      const at = places.of(material.namePlace);
      return {
        title: titleOf(material),
        ...(at === undefined ? {} : { at }),
        takes: litres === null ? t`not known` : say.litres(litres),
        onHand: onHand > 0 ? say.litres(onHand) : "",
        cans: containers.flatMap((can) =>
          Array.from({ length: Math.min(can.count, 50) }, () => `${formatNumber(can.litres, 3)} L`),
        ),
        price: cost ? moneyText(cost) : "",
        gaps,
      };
    }),
  );
}

function worthOf(result: JobResult): Pick<Bench<unknown>, "worth"> {
  const table = worthTable(result);
  if (!table) return {};
  const rows = table.rows.map(({ name, figures }) => ({ name, figures }));
  return { worth: { ...table, columns: WORTH_COLUMNS.map(translated), rows } };
}
