/**
 * The safety duties of a surface's work: where each is stated, and which a step brings that the recipe does not state. What
 * is not stated is shown as well, because a sheet is worked from.
 *
 * Nothing here says that the work is safe, with the duties or without; the texts defer to those who can tell.
 */

import { lookUp } from "../../../../grammar/src/look-up.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import { alternatives, DUTIES, type Duty, type DutyWord } from "../../core/knowledge/duties.ts";
import { airChangesText } from "../../core/measure/figures.ts";
import { isStated, needFor } from "../../core/rules/duty-check.ts";
import { type Action, type MaterialUse, OTHER_WORK } from "../../core/surface/actions.ts";
import { BY_ITS_LABEL, FOR_BOTH, GEAR_WORDS, STRIPPER_VAPOUR, THIN_VENEER, wornTogether } from "./gear.ts";
import type { SheetDuty, SheetProcedure } from "./model.ts";
import { capital, words } from "./words.ts";

/** A step, coat or wait with its place in the run. */
export interface PlacedAction {
  readonly index: number;
  readonly action: Action;
}

export interface DutySpan {
  readonly duty: Duty;
  readonly label: string;
  readonly stated: boolean;
  /** Places of the actions that it holds for, or, where it is not stated, of those that bring it. */
  readonly indexes: readonly number[];
}

/**
 * In the order in which they begin; those that begin together in the order of the table. Duties that were answered before
 * the work, such as a test that a laboratory has made, are left out.
 */
export function dutySpans(
  steps: readonly PlacedAction[],
  isAnswered: (word: DutyWord) => boolean = () => false,
): readonly DutySpan[] {
  const spans = DUTIES.filter(({ word }) => !isAnswered(word)).flatMap((duty) => [
    ...statedSpans(duty, steps),
    ...missingSpan(duty, steps),
  ]);
  return spans.toSorted((a, b) => a.indexes[0]! - b.indexes[0]!);
}

/** A span for every row of steps for which the duty is stated, and with the same air. */
function statedSpans(duty: Duty, steps: readonly PlacedAction[]): readonly DutySpan[] {
  const spans: { readonly label: string; readonly indexes: number[] }[] = [];
  let open: (typeof spans)[number] | undefined;
  for (const { index, action } of steps) {
    const inForce = action.duties.get(duty.word);
    const label = inForce && labelOf(duty.word, inForce.airChanges);
    if (label !== undefined && open?.label === label) open.indexes.push(index);
    else if (label === undefined) open = undefined;
    else {
      open = { label, indexes: [index] };
      spans.push(open);
    }
  }
  return spans.map((span) => ({ duty, stated: true, ...span }));
}

function missingSpan(duty: Duty, steps: readonly PlacedAction[]): readonly DutySpan[] {
  const indexes = steps.flatMap(({ index, action }) =>
    needFor(action, duty.word) && !isStated(action, duty.word) ? [index] : [],
  );
  return indexes.length > 0 ? [{ duty, label: labelOf(duty.word), stated: false, indexes }] : [];
}

/** What to have on and what can hurt, in the words of a line. */
export interface LineDuties {
  readonly wear: readonly string[];
  readonly dangers: readonly string[];
}

/**
 * Tells, of one step after the other, what stands on its line: what the step itself brings; of the duties in force those
 * that concern work of its kind, or all where nobody but the person at the bench knows what is done; and what concerns
 * no step, where it begins. A coat that nothing is known for defers to the label, so that nobody takes bare
 * hands for fine.
 */
export function lineDuties(
  spans: readonly DutySpan[],
  steps: readonly PlacedAction[],
): (index: number, action: Action) => LineDuties {
  const open = new Set(spans.map(({ duty }) => duty.word));
  const byHand = new Map(
    steps.flatMap(({ index, action }) => (action.op === "wait" ? [] : [[index, action]])),
  );
  const beginning = new Map<number, DutyWord[]>();
  for (const { duty, stated, indexes } of spans) {
    const lines = indexes.filter((index) => byHand.has(index));
    const [first] = lines;
    if (!stated || first === undefined) continue;
    if (lines.some((index) => isOfLine(byHand.get(index)!, duty.word))) continue;
    beginning.set(first, [...(beginning.get(first) ?? []), duty.word]);
  }
  return (index, action) => {
    const begins = beginning.get(index) ?? [];
    const words = DUTIES.flatMap(({ word }) => {
      // Those of a solvent have a word of their own.
      if (word === "wet_rags" && hasSolventRags(action) && !needFor(action, word)) return [];
      if (begins.includes(word)) return [word];
      if (!open.has(word) || !isOfLine(action, word)) return [];
      return [[word, ...alternatives(word)].find((each) => action.duties.has(each)) ?? word];
    });
    const of = (table: Partial<Readonly<Record<DutyWord, string>>>): readonly string[] => [
      ...new Set(words.flatMap((word) => lookUp(table, word) ?? [])),
    ];
    const wear = wornTogether(of(GEAR));
    const rags = hasSolventRags(action) && !needFor(action, "wet_rags") ? [SOLVENT_RAGS] : [];
    return {
      wear: wear.length === 0 && action.op === "layer" ? [BY_ITS_LABEL] : wear,
      dangers: [...of(DANGERS), ...rags],
    };
  };
}

function isOfLine(action: Action, word: DutyWord): boolean {
  if (needFor(action, word)) return true;
  if (!action.duties.has(word)) return false;
  if (WET_WORK.has(word) && materialOf(action)) return true;
  if (COATING.has(word) && evaporates(action)) return true;
  if (action.op !== "step") return false;
  if (word === "dust_mask" && action.verb === "dust") return true;
  if (word === "lead_test" || word === "lead_safe") return !action.between && FREES_LEAD.has(action.verb);
  return IN_OWN_WORDS.has(action.verb) && !action.use?.material;
}

/** What a duty in force asks for wherever something wet is in hand, for it splashes. */
const WET_WORK: ReadonlySet<DutyWord> = new Set(["gloves", "eye_protection"]);
/** And what it asks for at every coat and solvent; soap and water give off nothing. */
const COATING: ReadonlySet<DutyWord> = new Set([
  "vapour_respirator",
  "supplied_air",
  "ventilate",
  "no_ignition",
]);

const evaporates = (action: Action): boolean =>
  action.op === "layer" ||
  needFor(action, "ventilate") !== undefined ||
  needFor(action, "no_ignition") !== undefined;

function materialOf(action: Action): MaterialUse | undefined {
  return action.op === "layer" || action.op === "step" ? action.use : undefined;
}

/** Where a step wipes with a solvent that burns: 29 CFR 1910.106(e)(9)(iii), combustible waste, from memory. */
const hasSolventRags = (action: Action): boolean =>
  action.op === "step" && action.use !== undefined && needFor(action, "no_ignition") !== undefined;

const SOLVENT_RAGS = "solvent rags";

/** Steps that rub or dissolve what is old. */
const FREES_LEAD: ReadonlySet<string> = new Set(["strip", "scrape", "sand", "scuff", "distress"]);
/** Of these a sheet does not know what is done. */
const IN_OWN_WORDS: ReadonlySet<string> = new Set(["test", "repair", OTHER_WORK]);

const GEAR: Partial<Readonly<Record<DutyWord, string>>> = GEAR_WORDS;

/** Named as dangers: what to do about each stands in the list of cautions. */
const DANGERS: Partial<Readonly<Record<DutyWord, string>>> = {
  ventilate: "fumes",
  no_ignition: "fire",
  wet_rags: "oily rags",
  lead_test: "lead in old paint",
  lead_safe: "lead",
  keep_out: "others in the room",
};

/** Dangers each once, in the order in which lines name them. */
export const inOrderOfDuties = (dangers: readonly string[]): readonly string[] =>
  [STRIPPER_VAPOUR, ...Object.values(DANGERS), SOLVENT_RAGS, THIN_VENEER].filter((danger) =>
    dangers.includes(danger),
  );

/** Rags can burn hours after the step, so what to do with them is said at the step and not only where it begins. */
export function cautionsOf(action: Action): readonly string[] {
  return DUTIES.filter(({ word }) => word === "wet_rags" && needFor(action, word)).map(({ doc }) =>
    translated(doc),
  );
}

/**
 * Every duty of all surfaces once, the stated ones first, with the surfaces on whose work it holds. What is worn at which
 * step stands on the lines, which a range of steps here would only seem to contradict.
 */
export function sheetDuties(
  surfaces: readonly { readonly procedure: SheetProcedure; readonly spans: readonly DutySpan[] }[],
): readonly SheetDuty[] {
  const merged = new Map<string, { readonly span: DutySpan; readonly on: Set<string> }>();
  for (const {
    procedure: { title },
    spans,
  } of surfaces) {
    for (const span of spans) {
      const key = `${span.label} ${span.stated}`;
      const entry = merged.get(key) ?? { span, on: new Set() };
      merged.set(key, entry);
      entry.on.add(title);
    }
  }
  for (const { span, on } of merged.values())
    for (const { procedure } of surfaces) if (isWornOn(procedure, span.duty.word)) on.add(procedure.title);
  const order = (word: DutyWord): number => DUTIES.findIndex((duty) => duty.word === word);
  return [...merged.values()]
    .map(({ span: { duty, label, stated }, on }) => ({
      word: duty.word,
      label,
      doc: translated(duty.doc),
      defer: translated(duty.defer),
      surfaces: [...on],
      stated,
    }))
    .toSorted((a, b) => Number(b.stated) - Number(a.stated) || order(a.word) - order(b.word));
}

/** Also where only another surface's stripper or can asks for it, see `shared-wear.ts`. */
function isWornOn({ entries }: SheetProcedure, word: DutyWord): boolean {
  const gear = lookUp(GEAR, word);
  const items = gear === GEAR_WORDS.vapour_respirator ? [gear, FOR_BOTH] : [gear];
  return entries.some((entry) => entry.kind === "step" && entry.wear.some((item) => items.includes(item)));
}

/** Where a stripper on one surface gives work on others a respirator, see `shared-wear.ts`. */
export const stripperVapour = (procedures: readonly SheetProcedure[]): readonly SheetDuty[] =>
  procedures.some(({ entries }) =>
    entries.some((entry) => entry.kind === "step" && entry.dangers.includes(STRIPPER_VAPOUR)),
  )
    ? [
        {
          label: translated(capital(STRIPPER_VAPOUR)),
          doc: t`Whoever works beside it keeps the respirator on.`,
          defer: t`Its safety data sheet says which, and how much air it needs.`,
          surfaces: [],
          stated: true,
        },
      ]
    : [];

/** Where rags wet with a solvent are left, and nobody has said so of rags already. */
export const solventRags = (actions: readonly Action[]): readonly SheetDuty[] =>
  actions.some((action) => hasSolventRags(action) && !needFor(action, "wet_rags"))
    ? [
        {
          word: "wet_rags",
          label: t`Solvent rags`,
          doc: t`Put rags wet with solvent into a covered metal can at once, and empty it every day.`,
          defer: t`Local fire codes and the safety data sheet say how and where.`,
          surfaces: [],
          stated: true,
        },
      ]
    : [];

/** In the words of the lines, so that who reads one there finds it here. */
export const LABELS: Partial<Readonly<Record<DutyWord, string>>> = {
  vapour_respirator: "Respirator",
  eye_protection: "Goggles",
  hearing: "Ear protection",
  ventilate: "Fumes",
  no_ignition: "Fire",
  wet_rags: "Oily rags catch fire",
  lead_test: "Lead in old paint",
  lead_safe: "Lead",
  keep_out: "Others in the room",
};

function labelOf(word: DutyWord, airChanges?: number): string {
  const label = translated(lookUp(LABELS, word) ?? capital(words(word)));
  return airChanges === undefined ? label : `${label}, ${airChangesText(airChanges)}`;
}
