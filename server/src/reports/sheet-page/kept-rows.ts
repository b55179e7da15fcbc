/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/** Between what is kept and the boxes and fields of the sheet that show it. */
import { LAID, type PageStep, type Ticked } from "./bench-now.ts";
import type { Kept } from "./kept.ts";
import type { Row } from "./page-rows.ts";

type Field = HTMLInputElement | HTMLTextAreaElement;

/** When a box was ticked, here or by the record of the job, which had it done before this sheet was made. */
const tickOf = ({ ticks }: Kept, step: string, { dataset }: HTMLInputElement): string | undefined =>
  (dataset.done ?? ticks[step]?.[dataset.piece!])?.slice(0, 16);

export const tickedIn =
  (kept: Kept, rowOf: (step: PageStep) => Row): Ticked =>
  (step, piece) => {
    const row = rowOf(step);
    if (piece === LAID) return kept.laid[row.step];
    return tickOf(kept, row.step, row.boxes.find(({ dataset }) => dataset.piece === piece)!);
  };

/** Puts what is kept into the boxes and fields of a sheet. */
export function showKept(article: HTMLElement, rows: readonly Row[], kept: Kept): void {
  for (const { step, boxes, note, at } of rows) {
    const times = boxes.flatMap((box) => tickOf(kept, step, box) ?? []);
    for (const box of boxes) box.checked = tickOf(kept, step, box) !== undefined;
    note.value = kept.notes[step] ?? "";
    at.value = times.toSorted().at(-1) ?? "";
    // What the record has is put right there.
    at.disabled = times.length === 0 || boxes.every(({ dataset }) => dataset.done !== undefined);
  }
  for (const box of article.querySelectorAll<HTMLInputElement>("input[data-got]"))
    box.checked = kept.got[box.dataset.got!] !== undefined;
  article.querySelector<HTMLTextAreaElement>("[data-note-all]")!.value = kept.went;
}

/** Keeps what was ticked or written in a field; false where it is none of these. */
export function takeInput(kept: Kept, field: Field, now: string): boolean {
  const { noteAll, note, at, got, piece } = field.dataset;
  const step = field.closest<HTMLElement>("li.row")?.dataset.step ?? "";
  const time = field instanceof HTMLInputElement && field.checked ? now : undefined;
  if (noteAll !== undefined) kept.went = field.value;
  else if (note !== undefined) kept.notes[step] = field.value;
  else if (at !== undefined && field.value !== "") {
    const pieces = Object.keys(kept.ticks[step] ?? {});
    kept.ticks[step] = Object.fromEntries(pieces.map((each) => [each, field.value.slice(0, 16)]));
  } else if (got !== undefined) kept.got = withTime(kept.got, got, time);
  else if (piece !== undefined) kept.ticks[step] = withTime(kept.ticks[step] ?? {}, piece, time);
  else return false;
  return true;
}

function withTime(
  times: Readonly<Record<string, string>>,
  name: string,
  time: string | undefined,
): Record<string, string> {
  const { [name]: _, ...others } = times;
  return time === undefined ? others : { ...others, [name]: time };
}

/** Ticks what is left of a row, or that it is laid on; what is given back undoes it. */
export function tickRow(kept: Kept, { step, is, boxes }: Row, now: string): () => void {
  const before = kept.ticks[step] ?? {};
  const { laid } = kept;
  if (is.isLeftOn && laid[step] === undefined) kept.laid = { ...laid, [step]: now };
  else {
    const open = boxes.filter((box) => tickOf(kept, step, box) === undefined);
    kept.ticks[step] = { ...before, ...Object.fromEntries(open.map(({ dataset }) => [dataset.piece!, now])) };
  }
  return () => {
    kept.ticks[step] = before;
    kept.laid = withTime(kept.laid, step, laid[step]);
  };
}
