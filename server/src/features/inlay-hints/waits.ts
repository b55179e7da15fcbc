/**
 * What a wait has to be, in the air of the shop: to the stage that is waited for, or, where hours are stated, to what
 * the next layer needs. Oil below a waterborne layer must cure; everything else must be ready to recoat. Stated waits
 * that fall short before the next layer are said to.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { WaitStatement } from "../../../../grammar/src/tree.ts";
import { exactDuration, roundedUpHours } from "../../core/measure/format-amount.ts";
import { mustCureFirst } from "../../core/rules/layers/waterborne-over-uncured-oil.ts";
import { lastPutOn, type Stage, sureHours, waitedOf } from "../../core/surface/state.ts";
import { isWithinMargin, shortfallOf } from "../../core/surface/wait-margin.ts";
import { type Anchor, anchorIn } from "../../views/last-put-on.ts";
import type { LineRun } from "../../views/sums/line-run.ts";
import { waitRunText } from "../../views/sums/wait-run.ts";
import { bullets, firstFew } from "../markdown.ts";
import type { HintText } from "./hint-text.ts";

interface Needed {
  readonly stage: Stage;
  readonly hours: number;
  /** The shop is colder than the label allows, so that no wait can be relied on. */
  readonly isTooCold: boolean;
  readonly short: "no" | "slightly" | "yes";
}

export function waitHint(wait: WaitStatement, runs: readonly LineRun[]): HintText | undefined {
  const all = runs.flatMap((line) => neededOn(wait, line) ?? []);
  const [longest] = all.toSorted((a, b) => b.hours - a.hours);
  if (!longest) return undefined;
  const several = new Set(all.map(({ hours }) => toldText(hours))).size > 1;
  const told = toldText(longest.hours);
  const duration = several ? t`up to ${told}` : told;
  const isCold = all.some(({ isTooCold, short }) => isTooCold && (wait.until || short !== "no"));
  const short = (["yes", "slightly"] as const).find((how) => all.some((each) => each.short === how)) ?? "no";
  if (!isCold && short === "no" && longest.stage !== "cured" && statesAlready(duration, runs))
    return undefined;
  return {
    // The rules say then that it may never dry through; hours beside it would be a second answer.
    text: isCold
      ? t`${WARNING} too cold here to dry in any wait`
      : wait.until
        ? duration
        : statedText(longest, duration, short),
    markdown: bullets([...new Set(firstFew(runs, waitRunText))]),
  };
}

/** Hints have one colour for all, so what is amiss begins with a sign. */
const WARNING = "⚠";

/** What is needed is what the line says, which needs no saying again. */
const statesAlready = (duration: string, runs: readonly LineRun[]): boolean =>
  runs.every(({ times: [first] }) => {
    const action = first?.action;
    return action?.op === "wait" && action.hours !== undefined && exactDuration(action.hours) === duration;
  });

/** A needed time as findings tell it. */
const toldText = (hours: number): string => exactDuration(roundedUpHours(hours));

/** What `until` waits for stands on its line; of stated hours it is said what they are measured by. */
const statedText = ({ stage }: Needed, duration: string, short: Needed["short"]): string =>
  stage === "cured" ? NEEDS_CURE[short](duration) : NEEDS[short](duration);

const NEEDS = {
  yes: (time: string) => t`${WARNING} too short, needs ${time}`,
  slightly: (time: string) => t`${WARNING} slightly short, needs ${time}`,
  no: (time: string) => t`needs ${time}`,
} as const;

const NEEDS_CURE = {
  yes: (time: string) => t`${WARNING} too short, needs ${time} to cure`,
  slightly: (time: string) => t`${WARNING} slightly short, needs ${time} to cure`,
  no: (time: string) => t`needs ${time} to cure`,
} as const;

function neededOn(wait: WaitStatement, line: LineRun): Needed | undefined {
  const { action, before, index } = line.times[0]!;
  const anchor = anchorIn(before);
  if (action.op !== "wait" || !anchor?.material) return undefined;
  const next = line.run.moments.find((moment, i) => i > index && moment.action.op === "layer");
  const stage = action.until ?? (next ? stageFor(anchor, next.action) : "cured");
  const needed = anchor.drying[stage];
  if (!needed) return undefined;
  const { hours } = needed;
  const isTooCold = needed.tooCold !== undefined;
  if (wait.until) return { stage, hours, isTooCold, short: "no" };
  // Earlier waits have brought it already: this one waits for something else.
  if (anchor.waited >= hours) return undefined;
  return {
    stage,
    hours,
    isTooCold,
    short: next === undefined ? "no" : fallsShort(next.before, stage, hours),
  };
}

/** What the last coat must have reached before this layer goes on. */
function stageFor({ material }: Anchor, next: LineRun["times"][number]["action"]): Stage {
  const over = next.op === "layer" ? next.use.material?.family : undefined;
  const below = material?.family;
  return over?.drying === "waterborne" && below && mustCureFirst(below) ? "cured" : "recoat";
}

/** Whether all that is stated up to the next layer is less than what is needed; silent where a time is not known. */
function fallsShort(
  before: LineRun["times"][number]["before"],
  stage: Stage,
  hours: number,
): Needed["short"] {
  const last = lastPutOn(before);
  const waited = last && waitedOf(before, last);
  if (!waited || waited.open || waited.reached.includes(stage) || waited.reached.includes("cured"))
    return "no";
  if (sureHours(waited) >= hours - 1e-6) return "no";
  return isWithinMargin(shortfallOf({ hours }, sureHours(waited))) ? "slightly" : "yes";
}
