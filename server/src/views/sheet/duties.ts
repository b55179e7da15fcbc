/**
 * The safety duties of a surface's work: from which step to which each is stated, and which a step brings that the
 * recipe does not state. What is not stated is shown as well, because a sheet is worked from.
 *
 * Nothing here says that the work is safe, with the duties or without; the texts defer to those who can tell.
 */
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { alternatives, DUTIES, type Duty, type DutyWord } from "../../core/knowledge/duties.ts";
import { airChangesText } from "../../core/measure/figures.ts";
import { isStated, needFor } from "../../core/rules/duty-check.ts";
import type { Action } from "../../core/surface/actions.ts";
import type { SheetDuty, SheetDutyStart } from "./model.ts";
import { capital, stepsText, words } from "./words.ts";

/** A numbered step, coat or wait. */
export interface NumberedAction {
  readonly number: number;
  readonly action: Action;
}

export interface DutySpan {
  readonly duty: Duty;
  readonly label: string;
  readonly stated: boolean;
  /** The steps that it holds for, or, where it is not stated, those that bring it. */
  readonly numbers: readonly number[];
}

/** In the order in which they begin; those that begin together in the order of the table. */
export function dutySpans(steps: readonly NumberedAction[]): readonly DutySpan[] {
  const spans = DUTIES.flatMap((duty) => [...statedSpans(duty, steps), ...missingSpan(duty, steps)]);
  return spans.toSorted((a, b) => a.numbers[0]! - b.numbers[0]!);
}

/** A span for every row of steps for which the duty is stated, and with the same air. */
function statedSpans(duty: Duty, steps: readonly NumberedAction[]): readonly DutySpan[] {
  const spans: { readonly label: string; readonly numbers: number[] }[] = [];
  let open: (typeof spans)[number] | undefined;
  for (const { number, action } of steps) {
    const inForce = action.duties.get(duty.word);
    const label = inForce && labelOf(duty.word, inForce.airChanges);
    if (label !== undefined && open?.label === label) open.numbers.push(number);
    else if (label === undefined) open = undefined;
    else {
      open = { label, numbers: [number] };
      spans.push(open);
    }
  }
  return spans.map((span) => ({ duty, stated: true, ...span }));
}

function missingSpan(duty: Duty, steps: readonly NumberedAction[]): readonly DutySpan[] {
  const numbers = steps.flatMap(({ number, action }) =>
    needFor(action, duty.word) && !isStated(action, duty.word) ? [number] : [],
  );
  return numbers.length > 0 ? [{ duty, label: labelOf(duty.word), stated: false, numbers }] : [];
}

/** Duties that begin with a step; undefined where none does. */
export function dutyStart(
  spans: readonly DutySpan[],
  number: number,
  last: number,
): SheetDutyStart | undefined {
  const duties = spans
    .filter(({ numbers }) => numbers[0] === number)
    .map(({ duty, label, stated, numbers }) => ({
      label,
      doc: duty.doc,
      stated,
      extent: stated && numbers.at(-1) === last ? "from here to the end" : `for ${stepsText(numbers)}`,
    }));
  return duties.length > 0 ? { kind: "duties", duties } : undefined;
}

/** What to have on, or to have done, for this very step. */
export function wearOf(action: Action): readonly string[] {
  const labels = DUTIES.flatMap(({ word }) => {
    if (!needFor(action, word)) return [];
    const inForce = [word, ...alternatives(word)].find((each) => action.duties.has(each)) ?? word;
    return [labelOf(inForce)];
  });
  return [...new Set(labels)];
}

/** Rags can burn hours after the step, so what to do with them is said at the step and not only where it begins. */
export function cautionsOf(action: Action): readonly string[] {
  return DUTIES.filter(({ word }) => word === "wet_rags" && needFor(action, word)).map(({ doc }) => doc);
}

/** Every duty of all surfaces once, the stated ones first, with where each holds. */
export function sheetDuties(
  surfaces: readonly { readonly title: string; readonly spans: readonly DutySpan[] }[],
): readonly SheetDuty[] {
  const merged = new Map<string, { readonly span: DutySpan; readonly where: string[] }>();
  for (const { title, spans } of surfaces) {
    for (const span of spans) {
      const key = `${span.label} ${span.stated}`;
      const entry = merged.get(key) ?? { span, where: [] };
      merged.set(key, entry);
      entry.where.push(`${title === "" ? "" : `${title}, `}${stepsText(span.numbers)}`);
    }
  }
  const order = (word: DutyWord): number => DUTIES.findIndex((duty) => duty.word === word);
  return [...merged.values()]
    .map(({ span: { duty, label, stated }, where }) => ({
      word: duty.word,
      label,
      doc: duty.doc,
      defer: duty.defer,
      where,
      stated,
    }))
    .toSorted((a, b) => Number(b.stated) - Number(a.stated) || order(a.word) - order(b.word));
}

const LABELS: Partial<Readonly<Record<DutyWord, string>>> = {
  hearing: "Hearing protection",
  no_ignition: "No ignition sources",
  keep_out: "Keep others out",
};

function labelOf(word: DutyWord, airChanges?: number): string {
  const label = lookUp(LABELS, word) ?? capital(words(word));
  return airChanges === undefined ? label : `${label}, ${airChangesText(airChanges)}`;
}
