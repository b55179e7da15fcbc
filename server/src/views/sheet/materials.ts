/**
 * What stands on the bench: every material of a job with its litres, what is on hand and the tins to open, and what its
 * label says; for a recipe by itself the same without amounts.
 */
import {
  airText,
  cansText,
  degreesText,
  humidityText,
  litresText,
  percentText,
} from "../../core/measure/figures.ts";
import { formatAmount, formatDuration, formatNumber } from "../../core/measure/format-amount.ts";
import type { Fact, Material } from "../../core/model/model.ts";
import type { MaterialUse } from "../../core/surface/actions.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { JobResult, MaterialNeed } from "../../core/totals/job-totals.ts";
import type { ContainerCount } from "../../core/totals/types.ts";
import type { SheetMaterial } from "./model.ts";
import { capital, docsOf, sortText, titleOf } from "./words.ts";

/** In the order of first use. */
export function sheetMaterials(
  runs: readonly SurfaceRun[],
  result: JobResult | undefined,
): readonly SheetMaterial[] {
  const needs = new Map(result?.needs.map((need) => [need.material, need]));
  return usedMaterials(runs).map((material) => {
    const title = capital(titleOf(material));
    return {
      title,
      ...(material.builtIn || title.toLowerCase() === material.name ? {} : { name: material.name }),
      sort: sortText(material),
      ...amounts(material, needs.get(material), result !== undefined),
      docs: docsOf(material),
      notes: labelNotes(material),
    };
  });
}

/** Every material that the runs put on, use or mix in. */
export function usedMaterials(runs: readonly SurfaceRun[]): readonly Material[] {
  const uses = runs.flatMap(({ moments }) =>
    moments.flatMap(({ action }): readonly (MaterialUse | undefined)[] => {
      if (action.op === "step") return [action.use];
      if (action.op !== "layer") return [];
      return [action.use, action.hardener?.use, action.thinned?.thinner, action.tinted?.tint];
    }),
  );
  return [...new Set(uses.flatMap((use) => use?.material ?? []))];
}

type Amounts = Pick<SheetMaterial, "takes" | "onHand" | "open">;

function amounts(material: Material, need: MaterialNeed | undefined, inJob: boolean): Amounts {
  if (!inJob) return { takes: "", onHand: "", open: "" };
  const onHand = need?.onHand ?? material.onHand;
  const there = onHand > 0 ? litresText(onHand) : "";
  // Cleaning and stripping go on till it is done, unless the material says how far it goes.
  if (!need) return { takes: "as needed", onHand: there, open: "" };
  const { litres, containers, cost } = need.totals;
  if (litres === null) return { takes: "not known", onHand: there, open: "not known" };
  const takes = litresText(litres);
  if (cost === null) return { takes, onHand: there, open: "not known" };
  return {
    takes,
    onHand: there,
    open: containers.length === 0 ? "enough on hand" : cansToOpen(material, containers),
  };
}

/** By the sizes as the text writes them: `2 × 946 mL`. */
function cansToOpen(material: Material, containers: readonly ContainerCount[]): string {
  const labels = containers.map(
    ({ litres }) => material.sold.find((size) => Math.abs(size.litres - litres) < 1e-9)?.label,
  );
  if (labels.some((label) => label === undefined)) return cansText(containers);
  return containers.map(({ count }, i) => `${count} × ${labels[i]}`).join(" + ");
}

/** What the label says, then what the family is known for, then what to look out for. */
function labelNotes(material: Material): readonly string[] {
  const figures = figuresOf(material);
  const label = figures.filter(({ origin }) => origin === "stated");
  const family = figures.filter(({ origin }) => origin !== "stated");
  return [
    ...(label.length > 0 ? [`Label${figuresText(material, label)}`] : []),
    ...(family.length > 0 ? [`Typical of its kind, the label decides${figuresText(material, family)}`] : []),
    ...cautions(material),
  ];
}

/** Times hold in the air that they are rated at, so that stands with them. */
function figuresText({ rated }: Material, figures: readonly Figure[]): string {
  const { temperature, humidity } = rated.value;
  const air = figures.some(({ isTime }) => isTime) ? ` (times at ${airText({ temperature, humidity })})` : "";
  return `${air}: ${figures.map(({ text }) => text).join("; ")}.`;
}

interface Figure {
  readonly text: string;
  readonly origin: Fact<unknown>["origin"];
  readonly isTime: boolean;
}

function figuresOf(material: Material): readonly Figure[] {
  const { covers, touch, recoat, stackable, sandable, cure, limits, thin, mix, potLife, cut, batch } =
    material;
  const figure = <T>(
    fact: Fact<T> | undefined,
    say: (value: T) => string,
    isTime = false,
  ): readonly Figure[] => (fact ? [{ text: say(fact.value), origin: fact.origin, isTime }] : []);
  return [
    ...figure(covers, (value) => `covers ${formatAmount({ dimension: "spreading rate", value })}`),
    ...figure(touch, (hours) => `touch-dry after ${formatDuration(hours)}`, true),
    ...figure(recoat, recoatText, true),
    ...figure(stackable, (hours) => `stackable after ${formatDuration(hours)}`, true),
    ...figure(sandable, (hours) => `sandable after ${formatDuration(hours)}`, true),
    ...figure(cure, (hours) => `cured after ${formatDuration(hours)}`, true),
    ...figure(limits, limitsText),
    // What cleans, strips or thins is used as it comes.
    ...(material.family?.group === "auxiliary" ? [] : figure(thin, thinText)),
    ...figure(mix, ({ a, b, by }) => `mixed ${a}:${b} by ${by}`),
    ...figure(cut, (value) => `cut ${formatNumber(value, 0)} g/L`),
    ...figure(batch, (value) => `batch ${value}`),
    ...figure(potLife, (hours) => `pot life ${formatDuration(hours)}`),
  ];
}

const thinText = ({ thinner, upTo }: NonNullable<Material["thin"]>["value"]): string =>
  `thinned with ${thinner}${upTo === undefined ? "" : `, up to ${percentText(upTo)}`}`;

const recoatText = ({ earliest, latest }: NonNullable<Material["recoat"]>["value"]): string =>
  `next coat after ${formatDuration(earliest)}${latest === undefined ? "" : `, without sanding until ${formatDuration(latest)}`}`;

function limitsText({ low, high, humidity }: NonNullable<Material["limits"]>["value"]): string {
  const range =
    low !== undefined && high !== undefined
      ? `${degreesText(low)} to ${degreesText(high)}`
      : low !== undefined
        ? `${degreesText(low)} or more`
        : high !== undefined
          ? `${degreesText(high)} or less`
          : "";
  const damp = humidity === undefined ? "" : `at most ${humidityText(humidity)}`;
  return `put on at ${[range, damp].filter((part) => part !== "").join(", ")}`;
}

function cautions({ flash, selfHeatingRags }: Material): readonly string[] {
  return [
    ...(flash ? [`Its vapour can be lit: flash point ${degreesText(flash.value)}.`] : []),
    ...(selfHeatingRags.value ? ["Its rags can heat up and catch fire by themselves."] : []),
  ];
}
