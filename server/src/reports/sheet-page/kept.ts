/// <reference lib="dom" />
/** What an HTML sheet keeps on the device, in local storage: ticks, notes and what was read on labels. */

export interface Kept {
  /** By step and piece, the local time of the tick; piece 0 is the one box of a step. */
  ticks: Record<string, Record<string, string>>;
  /** By step, when it was laid on that is to be taken off. */
  laid: Record<string, string>;
  /** By step, for how many hours its label says it is left alone. */
  labels: Record<string, string>;
  notes: Record<string, string>;
  /** By material, when it was ready. */
  got: Record<string, string>;
  went: string;
}

export const nothingKept = (): Kept => ({ ticks: {}, laid: {}, labels: {}, notes: {}, got: {}, went: "" });

/** Only what this page wrote is taken; everything else is left out. */
export function readKept(key: string): Kept {
  try {
    const found = entriesOf(JSON.parse(localStorage.getItem(key) ?? "{}"));
    const { went } = found;
    return {
      ticks: Object.fromEntries(
        Object.entries(entriesOf(found.ticks)).map(([step, times]) => [step, textsOf(times)]),
      ),
      laid: textsOf(found.laid),
      labels: textsOf(found.labels),
      notes: textsOf(found.notes),
      got: textsOf(found.got),
      went: typeof went === "string" ? went : "",
    };
  } catch {
    // Nothing is kept here, or nothing that can be read.
    return nothingKept();
  }
}

/** False where the browser keeps nothing. */
export function writeKept(key: string, kept: Kept): boolean {
  try {
    localStorage.setItem(key, JSON.stringify(kept));
    return true;
  } catch {
    return false;
  }
}

const entriesOf = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};

const textsOf = (value: unknown): Record<string, string> =>
  Object.fromEntries(
    Object.entries(entriesOf(value)).filter(
      (entry): entry is [string, string] => typeof entry[1] === "string",
    ),
  );
