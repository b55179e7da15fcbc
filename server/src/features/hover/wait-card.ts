/** How long a `wait` line is in each job, beside what the label asks for in the shop's air, with the reason. */
import type { WaitStatement } from "../../../../grammar/src/tree.ts";
import { formatDuration, formatNumber } from "../../core/measure/format-amount.ts";
import type { Material } from "../../core/model/model.ts";
import type { WaitAction } from "../../core/surface/actions.ts";
import { factorOf, labelHours } from "../../core/surface/simulate.ts";
import type { Stage, SurfaceState } from "../../core/surface/state.ts";
import { bullets, code, firstFew, type HoverContext, paragraphs } from "./context.ts";
import { type LineRun, plannedText, runsOfLine, whereText } from "./runs-of-line.ts";

const STAGES: readonly Stage[] = ["touch", "recoat", "cured"];

export function waitCard(ctx: HoverContext, wait: WaitStatement): string {
  const runs = runsOfLine(ctx, wait);
  const texts = [...new Set(firstFew(runs, runText))];
  return paragraphs(waitTitle(wait), bullets(texts));
}

function waitTitle(wait: WaitStatement): string {
  if (wait.until) return `**wait until ${wait.until.text}**`;
  return wait.overnight ? "**wait overnight**, to the first opening 12 h or more away" : "**wait**";
}

function runText(line: LineRun): string {
  const { action, before, after } = line.times[0]!;
  const wait = action as WaitAction;
  const anchor = lastPutOn(before);
  const passed = after.clock.hours - before.clock.hours;
  const stated = wait.hours === undefined ? "" : formatDuration(wait.hours);
  const says = wait.until
    ? untilText(line, wait.until, anchor, passed)
    : wait.overnight
      ? `${formatDuration(passed)} at least`
      : stated || "its length is not known";
  const beside = !wait.until && anchor ? `; ${besideLabel(line, anchor)}` : "";
  return `${whereText(line)}${says}${beside}.${plannedText(line)}`;
}

interface Anchor {
  readonly name: string;
  readonly material?: Material;
  readonly waited: number;
}

/** The last coat or filling, from whose end `until` counts. */
function lastPutOn(state: SurfaceState): Anchor | undefined {
  const coat = state.layers.filter(({ origin }) => origin === "new").at(-1);
  const filling = state.fillings.at(-1);
  if (filling && (!coat || filling.waited.hours < coat.waited.hours)) {
    const { use, waited } = filling;
    return anchorOf(use.name, waited.hours, use.material);
  }
  if (!coat) return undefined;
  return anchorOf(coat.what, coat.waited.hours, coat.material);
}

/** By the name of the material where a parameter stands for it. */
const anchorOf = (name: string, waited: number, material: Material | undefined): Anchor => ({
  name: material?.name ?? name,
  waited,
  ...(material ? { material } : {}),
});

function untilText({ run }: LineRun, stage: Stage, anchor: Anchor | undefined, passed: number): string {
  if (!anchor) return "nothing was put on before, so there is nothing to wait for";
  if (!anchor.material) return `${code(anchor.name)} is not known here, so neither is its time`;
  const needed = neededText(run.shop?.air?.value, anchor.material, stage);
  if (!needed) return `${code(anchor.name)} states no time for it`;
  const gone =
    anchor.waited > 0 ? `, ${formatDuration(anchor.waited)} of it gone: ${formatDuration(passed)} left` : "";
  return `${code(anchor.name)} needs ${needed.text}${gone}${needed.reason}`;
}

/** Stages that the last coat will have reached, and those that it will not. */
function besideLabel({ run }: LineRun, anchor: Anchor): string {
  if (!anchor.material) return `${code(anchor.name)} is not known here`;
  const air = run.shop?.air?.value;
  const times = STAGES.flatMap((stage) => {
    const needed = neededText(air, anchor.material!, stage);
    return needed ? [`${stage === "touch" ? "touch-dry" : stage} ${needed.text}`] : [];
  });
  if (times.length === 0) return `${code(anchor.name)} states no times`;
  return `${code(anchor.name)} needs ${times.join(", ")}${factorOf({ ...(air ? { air } : {}) }, anchor.material).factor > 1 ? reasonOf(air, anchor.material) : ""}`;
}

type Air = { readonly temperature: number; readonly humidity?: number } | undefined;

function neededText(
  air: Air,
  material: Material,
  stage: Stage,
): { readonly text: string; readonly reason: string } | undefined {
  const label = labelHours(material, stage);
  if (label === undefined) return undefined;
  const { factor } = factorOf({ ...(air ? { air } : {}) }, material);
  const text =
    factor === 1
      ? formatDuration(label)
      : `${formatDuration(label)} × ${formatNumber(factor, 2)} = ${formatDuration(label * factor)}`;
  return { text, reason: reasonOf(air, material) };
}

function reasonOf(air: Air, material: Material): string {
  const { reason } = factorOf({ ...(air ? { air } : {}) }, material);
  return reason ? `. ${reason.replace(/\.$/u, "")}` : "";
}
