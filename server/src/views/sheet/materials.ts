/**
 * What stands on the bench: every material of a job with its litres, what is on hand and the tins to open, and what its
 * label says; for a recipe by itself the same without amounts.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { cansText, humidityText, percentText } from "../../core/measure/figures.ts";
import { formatDuration, formatNumber } from "../../core/measure/format-amount.ts";
import type { ShownFigures } from "../../core/measure/shown-figures.ts";
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
  say: ShownFigures,
): readonly SheetMaterial[] {
  const needs = new Map(result?.needs.map((need) => [need.material, need]));
  return usedMaterials(runs).map((material) => {
    const title = capital(titleOf(material));
    return {
      title,
      ...(material.builtIn || title.toLowerCase() === material.name ? {} : { name: material.name }),
      sort: sortText(material),
      ...amounts(material, needs.get(material), result !== undefined, say),
      docs: docsOf(material),
      notes: labelNotes(material, say),
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

function amounts(
  material: Material,
  need: MaterialNeed | undefined,
  inJob: boolean,
  say: ShownFigures,
): Amounts {
  if (!inJob) return { takes: "", onHand: "", open: "" };
  const onHand = need?.onHand ?? material.onHand;
  const there = onHand > 0 ? say.litres(onHand) : "";
  // Cleaning and stripping go on till it is done, unless the material says how far it goes.
  if (!need) return { takes: t`as needed`, onHand: there, open: "" };
  const { litres, containers, cost } = need.totals;
  if (litres === null) return { takes: t`not known`, onHand: there, open: t`not known` };
  const takes = say.litres(litres);
  if (cost === null) return { takes, onHand: there, open: t`not known` };
  return {
    takes,
    onHand: there,
    open: containers.length === 0 ? t`none, you have enough` : cansToOpen(material, containers),
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
function labelNotes(material: Material, say: ShownFigures): readonly string[] {
  const figures = figuresOf(material, say);
  const label = figures.filter(({ origin }) => origin === "stated");
  const family = figures.filter(({ origin }) => origin !== "stated");
  return [
    ...(label.length > 0 ? [t`Label${figuresText(material, label, say)}`] : []),
    ...(family.length > 0
      ? [t`Typical of its kind, the label decides${figuresText(material, family, say)}`]
      : []),
    ...cautions(material, say),
  ];
}

/** Times hold in the air that they are rated at, so that stands with them. */
function figuresText({ rated }: Material, figures: readonly Figure[], say: ShownFigures): string {
  const { temperature, humidity } = rated.value;
  const air = figures.some(({ isTime }) => isTime)
    ? t` (times at ${say.air({ temperature, humidity })})`
    : "";
  return `${air}: ${figures.map(({ text }) => text).join("; ")}.`;
}

interface Figure {
  readonly text: string;
  readonly origin: Fact<unknown>["origin"];
  readonly isTime: boolean;
}

function figuresOf(material: Material, shown: ShownFigures): readonly Figure[] {
  const { covers, touch, recoat, stackable, sandable, cure, limits, thin, mix, potLife, cut, batch } =
    material;
  const figure = <T>(
    fact: Fact<T> | undefined,
    say: (value: T) => string,
    isTime = false,
  ): readonly Figure[] => (fact ? [{ text: say(fact.value), origin: fact.origin, isTime }] : []);
  return [
    ...figure(covers, (value) => t`covers ${shown.covers(value)}`),
    ...figure(touch, (hours) => t`touch-dry after ${formatDuration(hours)}`, true),
    ...figure(recoat, recoatText, true),
    ...figure(stackable, (hours) => t`stackable after ${formatDuration(hours)}`, true),
    ...figure(sandable, (hours) => t`sandable after ${formatDuration(hours)}`, true),
    ...figure(cure, (hours) => t`cured after ${formatDuration(hours)}`, true),
    ...figure(limits, (value) => limitsText(value, shown)),
    // What cleans, strips or thins is used as it comes.
    ...(material.family?.group === "auxiliary" ? [] : figure(thin, thinText)),
    ...figure(mix, ({ a, b, by }) => t`mixed ${a}:${b} by ${translated(by)}`),
    ...figure(cut, (value) => t`cut ${formatNumber(value, 0)} g/L`),
    ...figure(batch, (value) => t`batch ${value}`),
    ...figure(potLife, (hours) => t`pot life ${formatDuration(hours)}`),
  ];
}

const thinText = ({ thinner, upTo }: NonNullable<Material["thin"]>["value"]): string =>
  upTo === undefined
    ? t`thinned with ${translated(thinner)}`
    : t`thinned with ${translated(thinner)}, up to ${percentText(upTo)}`;

const recoatText = ({ earliest, latest }: NonNullable<Material["recoat"]>["value"]): string =>
  latest === undefined
    ? t`next coat after ${formatDuration(earliest)}`
    : t`next coat after ${formatDuration(earliest)}, without sanding until ${formatDuration(latest)}`;

function limitsText(
  { low, high, humidity }: NonNullable<Material["limits"]>["value"],
  { degrees }: ShownFigures,
): string {
  const range =
    low !== undefined && high !== undefined
      ? t`${degrees(low)} to ${degrees(high)}`
      : low !== undefined
        ? t`${degrees(low)} or more`
        : high !== undefined
          ? t`${degrees(high)} or less`
          : "";
  const damp = humidity === undefined ? "" : t`at most ${humidityText(humidity)}`;
  return t`put on at ${[range, damp].filter((part) => part !== "").join(", ")}`;
}

function cautions({ flash, selfHeatingRags }: Material, { degrees }: ShownFigures): readonly string[] {
  return [
    ...(flash ? [t`Its vapour can be lit: flash point ${degrees(flash.value)}.`] : []),
    ...(selfHeatingRags.value ? [t`Its rags can heat up and catch fire by themselves.`] : []),
  ];
}
