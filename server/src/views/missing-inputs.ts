/**
 * Why a figure of a job is not computed: which line is missing from the text, in so many words.
 *
 * Totals say `null` and nothing more; a reader wants to know what to write. Hover, the totals table and the comparison
 * all say it in these words.
 */
import { t } from "../../../grammar/src/translate.ts";
import type { Material } from "../core/model/model.ts";
import { isBeingPlanned } from "../core/schedule/being-planned.ts";
import { conflictText } from "../core/schedule/conflict-text.ts";
import type { OpenAction } from "../core/surface/actions.ts";
import { hasWork } from "../core/surface/has-work.ts";
import type { SurfaceRun } from "../core/surface/run.ts";
import type { JobResult, MaterialNeed } from "../core/totals/job-totals.ts";

export type GapField =
  | "area_m2"
  | "hands_on_h"
  | "elapsed_h"
  | "finish"
  | "last_work"
  | "light_use"
  | "full_use"
  | "in_service"
  | "voc_g"
  | "material_cost"
  | "labour_cost"
  | "total_cost"
  | "saving";

/** What is missing for one figure, each part short enough for a table: "no `start`". Empty when the figure is known. */
export function gapsOf(result: JobResult, field: GapField): readonly string[] {
  if (result.totals[field] !== null) return [];
  const kept = PLAN_FIELDS.has(field) ? unpromised(result) : undefined;
  if (kept) return kept.reasons;
  if (awaitsPlan(result, field)) return [beingPlannedText()];
  return [...new Set(reasons(result, field))];
}

/** What is missing for the litres or the cost of one material of the job. */
export function materialGaps(need: MaterialNeed): readonly string[] {
  const { material, draws, totals } = need;
  const density = ({ name }: Material): string => t`no \`density\` for \`${name}\``;
  if (totals.litres === null) {
    const areas = draws.flatMap(({ run, litres }) => (litres === undefined ? areaGap(run) : []));
    if (areas.length > 0) return [...new Set(areas)];
    const undensed = draws.flatMap((draw) => draw.undensed ?? []);
    if (undensed.length > 0) return [...new Set(undensed.map(density))];
    return [
      material.weighed.includes("covers") ? density(material) : t`no \`covers\` for \`${material.name}\``,
    ];
  }
  if (totals.cost === null) {
    if (material.weighed.includes("counted")) return [t`no volume of a pack of \`${material.name}\``];
    return [
      material.weighed.includes("packs") ? density(material) : t`no \`packs\` for \`${material.name}\``,
    ];
  }
  return [];
}

/** Said in place of a date that cannot be promised, before the reason. */
export const noDateText = (): string => t`no date`;

/** Why a job has no date although it could be planned. */
export interface Unpromised {
  /** Clauses with names in backticks, the first of them enough where there is little room. */
  readonly reasons: readonly string[];
  /** `no date: too cold to dry`, without names of the text. */
  readonly brief: string;
}

/**
 * Whether a date of a job may be told at all: undefined where it may, as far as it is known. All that tells dates asks here:
 * work whose outcome is void has none, however well it can be planned.
 */
export function unpromised({ voided, runs }: JobResult): Unpromised | undefined {
  if (!voided || !hasWork(runs)) return undefined;
  const { by } = voided;
  const named = by.slice(0, MOST_REASONS).map(({ reason }) => reason);
  const left = by.length - named.length;
  return {
    reasons: left > 0 ? [...named, t`${left} more`] : named,
    brief: `${noDateText()}: ${by[0]!.brief}`,
  };
}

/**
 * `a rule that is off says: test for lead first`, to stand with the dates that the project asks for all the same; empty where
 * there is nothing to say. Without names of the text.
 */
export function uncheckedText({ unchecked = [] }: JobResult): string {
  const named = [...new Set(unchecked.map(({ brief }) => brief))].slice(0, MOST_REASONS).join(", ");
  if (named === "") return "";
  return new Set(unchecked.map(({ rule }) => rule)).size === 1
    ? t`a rule that is off says: ${named}`
    : t`rules that are off say: ${named}`;
}

/** More of them say nothing more: each is a finding of its own. */
const MOST_REASONS = 3;

function reasons(result: JobResult, field: GapField): readonly string[] {
  const idle = field === "area_m2" ? [] : workGaps(result);
  return idle.length > 0 ? idle : reasonsAtWork(result, field);
}

/** Why there is nothing to do; empty where there is something. */
function workGaps({ job, runs }: JobResult): readonly string[] {
  if (hasWork(runs)) return [];
  if (job.pieces.length === 0) return [t`no \`piece\``];
  if (job.applies.length === 0) return [t`no \`apply\``];
  if (runs.length === 0) return [t`no surface that an \`apply\` leads to`];
  if (runs.some(({ applied }) => applied.length > 0)) return [t`nothing to do in its recipes`];
  const names = job.applies.flatMap(({ syntax }) => syntax.call?.name.text ?? []);
  return names.length === 0 ? [t`no recipe`] : [...new Set(names)].map((name) => t`no recipe \`${name}\``);
}

function reasonsAtWork(result: JobResult, field: GapField): readonly string[] {
  switch (field) {
    case "area_m2":
    case "hands_on_h":
      return result.runs.flatMap(areaGap);
    case "elapsed_h":
      return planGaps(result);
    case "finish":
      return [...planGaps(result), ...startGaps(result)];
    case "last_work": {
      const gaps = [...planGaps(result), ...startGaps(result)];
      return gaps.length > 0 ? gaps : [t`nothing to do by hand`];
    }
    case "light_use":
    case "full_use":
    case "in_service":
      return [...planGaps(result), ...startGaps(result), ...cureGaps(result)];
    case "voc_g":
      return result.needs.flatMap((need) =>
        need.totals.litres === null
          ? materialGaps(need)
          : need.material.voc
            ? []
            : [t`no \`voc\` for \`${need.material.name}\``],
      );
    case "material_cost":
      return [...openGaps(result), ...result.needs.flatMap(materialGaps)];
    case "labour_cost":
      if (result.shop?.labourPerH !== undefined) return reasons(result, "hands_on_h");
      return result.shop ? [t`no \`labour\` in \`${result.shop.name}\``] : shopGaps(result);
    case "total_cost":
      return [
        ...(result.totals.material_cost === null ? reasons(result, "material_cost") : []),
        ...(result.shop?.labourPerH !== undefined && result.totals.hands_on_h === null
          ? reasons(result, "hands_on_h")
          : []),
      ];
    case "saving":
      return [
        ...(result.totals.total_cost === null ? reasons(result, "total_cost") : []),
        ...newGaps(result),
      ];
  }
}

function shopGaps({ job, shop }: JobResult): readonly string[] {
  if (shop) return [];
  return [job.shop ? t`no shop \`${job.shop.name}\`` : t`no \`in\` (the shop)`];
}

const startGaps = (result: JobResult): readonly string[] => [
  ...shopGaps(result),
  ...(result.job.start ? [] : [t`no \`start\``]),
];

/** Said in place of all that the plan of a job will tell. */
export const beingPlannedText = (): string => t`being planned`;

/** Whether a figure is only not known yet. */
export const awaitsPlan = ({ schedule, totals, runs, voided }: JobResult, field: GapField): boolean =>
  isBeingPlanned(schedule) &&
  hasWork(runs) &&
  ((PLAN_FIELDS.has(field) && voided === undefined) ||
    // How often is set up.
    (LABOUR_FIELDS.has(field) && totals[field] === null && runs.flatMap(areaGap).length === 0));

/** Whether the air of its room, hour by hour, is only not known yet. */
export const awaitsRoomAir = ({ shop, schedule, awaitsAir }: JobResult): boolean =>
  shop?.room !== undefined && (awaitsAir === true || isBeingPlanned(schedule));

const PLAN_FIELDS: ReadonlySet<GapField> = new Set([
  "elapsed_h",
  "finish",
  "last_work",
  "light_use",
  "full_use",
  "in_service",
]);

const LABOUR_FIELDS: ReadonlySet<GapField> = new Set(["hands_on_h", "labour_cost", "total_cost", "saving"]);

function planGaps(result: JobResult): readonly string[] {
  if (result.schedule.status === "impossible") {
    const [conflict] = result.schedule.conflicts;
    return [conflict ? conflictText(conflict.reason) : t`no plan keeps all windows`];
  }
  if (result.totals.elapsed_h !== null) return [];
  const waits = result.runs.flatMap((run) =>
    run.moments.some(
      ({ action }) =>
        action.op === "wait" && !action.overnight && action.until === undefined && action.hours === undefined,
    )
      ? [t`a \`wait\` whose length is not known`]
      : [],
  );
  const areas = result.totals.hands_on_h === null ? result.runs.flatMap(areaGap) : [];
  return [...openGaps(result), ...waits, ...areas];
}

/** What keeps the area of a run from being known. */
function areaGap({ surface }: SurfaceRun): readonly string[] {
  if (surface?.areaGap === undefined) return [];
  return surface.areaGap === "no shape"
    ? [t`no \`shape\` for \`${surface.name}\``]
    : [t`a \`shape\` of \`${surface.name}\` that cannot be read`];
}

function openGaps(result: JobResult): readonly string[] {
  return result.runs.flatMap((run) =>
    run.moments.flatMap(({ action }) => {
      if (action.op === "open") return [openGap(action)];
      return action.op === "layer" && !action.use.material ? [t`no material \`${action.use.name}\``] : [];
    }),
  );
}

const openGap = ({ missing }: OpenAction): string =>
  missing === undefined ? t`a recipe with too many steps to calculate` : t`no recipe \`${missing}\``;

function cureGaps(result: JobResult): readonly string[] {
  return result.runs.flatMap((run) => {
    const last = run.moments.findLast(({ action }) => action.op === "layer");
    if (last?.action.op !== "layer") return [];
    const { material, drying } = last.after.layers.at(-1)!;
    if (!material) return [t`no material \`${last.action.use.name}\``];
    return drying.cured ? [] : [t`no \`cure\` for \`${material.name}\``];
  });
}

/** What is missing for what new pieces cost. */
export const newGaps = ({ job, prices }: PricedJob): readonly string[] =>
  priceGaps(job, prices.withoutNew, "new_price");

/** What is missing for what the pieces sell for. */
export const saleGaps = ({ job, prices }: PricedJob): readonly string[] =>
  priceGaps(job, prices.withoutSale, "sell_price");

type PricedJob = Pick<JobResult, "job" | "prices">;

const priceGaps = ({ pieces }: JobResult["job"], without: readonly string[], word: string) =>
  pieces.length === 0 ? [t`no \`piece\``] : without.map((piece) => t`no \`${word}\` for \`${piece}\``);
