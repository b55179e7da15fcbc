/** What a search found, for other programs; the shape is told in server/docs/json.md. */
import { cents, printed } from "../core/measure/figures.ts";
import { jsonText } from "../escape/json.ts";
import type { Found, Matched } from "../views/find/model.ts";

/** `place` has the file as the user would name it, and the line from 1. */
export const foundJson = (
  found: readonly Found[],
  place: (found: Found) => { readonly file: string; readonly line: number },
): string =>
  jsonText({
    found: found.map((each) => ({
      kind: each.kind,
      ...place(each),
      name: each.name,
      title: each.title,
      piece: each.piece ?? null,
      matched: each.matched.map(matchedJson),
      jobs: each.jobs,
      hands_on_h: each.figures ? numberOf(each.figures.hours) : null,
      days: each.figures ? numberOf(each.figures.days) : null,
      cost: each.figures?.cost == null ? null : cents(each.figures.cost),
      currency: each.figures?.currency ?? null,
      last_work: each.figures?.lastWork ?? null,
    })),
  });

const numberOf = (value: number | null): number | null => (value === null ? null : printed(value));

const matchedJson = ({ by, what }: Matched): Matched => ({
  by,
  what: typeof what !== "number" ? what : by === "cost" ? cents(what) : printed(what),
});
