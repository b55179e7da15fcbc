/** How long a `wait` line is on one surface of a job, beside what the label asks for in the shop's air, with the reason. */

import { t, translated } from "../../../../grammar/src/translate.ts";
import { factorText } from "../../core/measure/figures.ts";
import { exactDuration, formatDuration, roundedUpHours } from "../../core/measure/format-amount.ts";
import type { WaitAction } from "../../core/surface/actions.ts";
import type { DryingTime, Stage } from "../../core/surface/drying-time.ts";
import type { Dries } from "../../core/surface/state.ts";
import { reasonSentences } from "../../core/surface/wait-words.ts";
import { markdownCode as code } from "../../escape/markdown.ts";
import { type Anchor, anchorIn } from "../last-put-on.ts";
import { type LineRun, plannedText, whereText } from "./line-run.ts";

const STAGES: readonly Stage[] = ["touch", "recoat", "stackable", "cured"];

/** What one surface of one job waits for on this line, and why. */
export function waitRunText(line: LineRun): string {
  const { action, before, after, dries } = line.times[0]!;
  const wait = action as WaitAction;
  const anchor = anchorIn(before);
  const passed = after.clock.hours - before.clock.hours;
  const stated = wait.hours === undefined ? "" : formatDuration(wait.hours);
  const says = wait.until
    ? untilText(dries, anchor, passed)
    : wait.overnight
      ? t`${formatDuration(passed)} at least`
      : stated || t`its length is not known`;
  const beside = !wait.until && anchor ? `; ${besideLabel(anchor)}` : "";
  return `${whereText(line)}${says}${beside}.${oftenText(line)}${plannedText(line)}`;
}

/** Of a wait between coats, how often it comes and what that makes. */
function oftenText({ times }: LineRun): string {
  const hours = times.map(({ before, after }) => after.clock.hours - before.clock.hours);
  const [first] = hours;
  if (times.length < 2 || first === undefined) return "";
  const total = hours.reduce((sum, each) => sum + each, 0);
  const isEven = hours.every((each) => Math.abs(each - first) < 1e-9) && first > 0;
  const sum = isEven ? `: ${times.length} × ${formatDuration(first)} = ${formatDuration(total)}` : "";
  return t` Done ${times.length} times${sum}.`;
}

function untilText(dries: Dries | undefined, anchor: Anchor | undefined, passed: number): string {
  if (!anchor) return t`nothing was put on before, so nothing needs to dry`;
  if (!anchor.material) return t`${code(anchor.name)} is not known here, so neither is its time`;
  const needed = neededText(dries?.time);
  if (!needed) return t`${code(anchor.name)} states no time for it`;
  const gone =
    anchor.waited > 0 ? t`, ${formatDuration(anchor.waited)} of it gone: ${formatDuration(passed)} left` : "";
  return t`${code(anchor.name)} needs ${needed.text}${gone}${needed.reason}`;
}

/** Stages that the last coat will have reached, and those that it will not. */
function besideLabel({ name, material, drying }: Anchor): string {
  if (!material) return t`${code(name)} is not known here`;
  const times = STAGES.flatMap((stage) => {
    const needed = neededText(drying[stage]);
    return needed
      ? [
          {
            text: `${translated(stage === "touch" ? "touch-dry" : stage)} ${needed.text}`,
            reason: needed.factor > 1 ? needed.reason : "",
          },
        ]
      : [];
  });
  if (times.length === 0) return t`${code(name)} states no times`;
  return t`${code(name)} needs ${times.map(({ text }) => text).join(", ")}${times[0]!.reason}`;
}

function neededText(
  needed: DryingTime | undefined,
): { readonly text: string; readonly factor: number; readonly reason: string } | undefined {
  if (!needed) return undefined;
  const { label, factor, hours } = needed;
  const text =
    factor === 1
      ? formatDuration(label)
      : `${formatDuration(label)} × ${factorText(factor)} = ${exactDuration(roundedUpHours(hours))}`;
  return { text, factor, reason: `. ${reasonSentences(needed).join(". ")}` };
}
