/**
 * A wait on a sheet: what is waited for, how long that is in the air of this shop, and why it is longer than the label
 * says. Each reason is given once for a material; after that the factor stands for it.
 */

import { t, translated } from "../../../../grammar/src/translate.ts";
import { factorText } from "../../core/measure/figures.ts";
import { exactDuration, formatDuration, roundedUpHours } from "../../core/measure/format-amount.ts";
import type { ShownFigures } from "../../core/measure/shown-figures.ts";
import type { Material } from "../../core/model/model.ts";
import type { Action, WaitAction } from "../../core/surface/actions.ts";
import type { DryingTime } from "../../core/surface/drying-time.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import { type Moment, type Stage, topCoat } from "../../core/surface/state.ts";
import { shortReasonText } from "../../core/surface/wait-words.ts";
import { type Anchor, anchorIn } from "../last-put-on.ts";
import { capital, titleOf } from "./words.ts";

export interface WaitWords {
  readonly title: string;
  readonly details: readonly string[];
}

/** `explained` holds the materials whose longer times were explained; this adds to it. */
export function waitWords(
  run: SurfaceRun,
  index: number,
  moment: Moment<Action> & { readonly action: WaitAction },
  explained: Set<Material>,
  say: ShownFigures,
): WaitWords {
  const { action, before } = moment;
  const anchor = anchorIn(before);
  const title = waitTitle(action);
  if (action.until) {
    return {
      title,
      details: [...untilDetails(anchor, moment.dries?.time, explained, say), ...windowDetails(run, index)],
    };
  }
  const overnight = action.overnight
    ? [
        run.shop?.hours
          ? t`To the next opening of the shop, and 12 h at least.`
          : t`12 h at least; 16 h are assumed where no hours are known.`,
      ]
    : [];
  return {
    title,
    details: [...overnight, ...besideDetails(anchor, explained, say), ...windowDetails(run, index)],
  };
}

/** `Wait 2 h: until it can be stacked`, `Wait until it has cured` */
export function waitTitle({ until, overnight, hours, syntax: { what } }: WaitAction): string {
  if (until) return translated(UNTIL[until]);
  const title = overnight
    ? t`Wait overnight`
    : hours === undefined
      ? t`Wait (how long is to be chosen)`
      : t`Wait ${formatDuration(hours)}`;
  return what ? `${title}: ${what.value}` : title;
}

export const UNTIL: Readonly<Record<Stage, string>> = {
  touch: "Wait until it is dry to the touch",
  recoat: "Wait until the next coat can go on",
  stackable: "Wait until the pieces can be stacked",
  cured: "Wait until it has cured",
};

function untilDetails(
  anchor: Anchor | undefined,
  needed: DryingTime | undefined,
  explained: Set<Material>,
  say: ShownFigures,
): readonly string[] {
  if (!anchor) return [t`Nothing was put on before, so nothing needs to dry.`];
  const { material } = anchor;
  if (!material) return [t`How long depends on the material that is chosen.`];
  if (!needed) return [t`${capital(titleOf(material))} states no time for it: the label decides.`];
  const { label, factor, hours, isTypical } = needed;
  const source = isTypical
    ? t`${formatDuration(label)} is typical of its kind, the label decides`
    : t`${formatDuration(label)} by its label`;
  const here =
    factor > 1
      ? t`; in this shop's air × ${factorText(factor)} = ${exactDuration(roundedUpHours(hours))}`
      : "";
  return [
    `${capital(titleOf(material))}: ${source}${here}.`,
    ...reasonDetails(material, needed, explained, say),
  ];
}

/** Stated times beside what the last coat needs. */
function besideDetails(
  anchor: Anchor | undefined,
  explained: Set<Material>,
  say: ShownFigures,
): readonly string[] {
  const material = anchor?.material;
  if (!material) return [];
  const stages = (["recoat", "cured"] as const).flatMap((stage) => {
    const needed = anchor.drying[stage];
    return needed ? [{ stage, needed }] : [];
  });
  const [first] = stages;
  if (!first) return [];
  const times = stages.map(({ stage, needed }) =>
    stage === "recoat"
      ? t`ready for a coat after ${neededText(needed)}`
      : t`cured after ${neededText(needed)}`,
  );
  const here = first.needed.factor > 1 ? t` in this shop's air` : "";
  return [
    t`${capital(titleOf(material))} is ${times.join(", ")}${here}.`,
    ...reasonDetails(material, first.needed, explained, say),
  ];
}

/** `2 h × 1.34 = 2 h 41 min`, or the label's time alone. */
const neededText = ({ label, factor, hours }: DryingTime): string =>
  factor === 1
    ? formatDuration(label)
    : `${formatDuration(label)} × ${factorText(factor)} = ${exactDuration(roundedUpHours(hours))}`;

function reasonDetails(
  material: Material,
  { factor, cause }: DryingTime,
  explained: Set<Material>,
  say: ShownFigures,
): readonly string[] {
  if (factor <= 1 || explained.has(material)) return [];
  explained.add(material);
  return [shortReasonText(cause, say)];
}

function windowDetails(run: SurfaceRun, index: number): readonly string[] {
  const latest = windowAfter(run, index);
  if (latest === undefined) return [];
  return [t`The next coat goes on within ${formatDuration(latest)} of this one; after that, sand first.`];
}

/** Hours: the latest end of the recoat window, where the next coat goes on what has not been sanded. */
export function windowAfter(run: SurfaceRun, index: number): number | undefined {
  const following = run.moments.slice(index + 1);
  const next = following.find(({ action }) => action.op === "layer" || action.op === "wait");
  const last = run.moments[index]?.after;
  const below = next?.action.op === "layer" ? topCoat(next.before) : undefined;
  const latest = below?.material?.recoat?.value.latest;
  const isSame = last && topCoat(last)?.serial === below?.serial;
  if (below?.origin !== "new" || !isSame || below.abrasions.length > 0) return undefined;
  return latest;
}
