/** Pieces that follow each other in one go, as a line of the list has them. */
import { hoursBetween } from "../../core/measure/iso-dates.ts";
import type { PlannedTime } from "./model.ts";

/** Pieces follow each other in one go where no longer than this lies between two of them. */
const GO_H = 0.5;

/** One piece after the other, within a day and without a gap, is one go. `planned`: in the order of time. */
export function inOneGo(planned: readonly PlannedTime[]): readonly PlannedTime[] {
  const goes: PlannedTime[] = [];
  for (const time of planned) {
    const before = goes.at(-1);
    const isOn =
      before?.startAt.slice(0, 10) === time.startAt.slice(0, 10) &&
      hoursBetween(before.endAt, time.startAt) <= GO_H;
    if (!before || !isOn) goes.push(time);
    else
      goes[goes.length - 1] = {
        startAt: before.startAt,
        endAt: [before.endAt, time.endAt].toSorted()[1]!,
        pieces: [...before.pieces, ...time.pieces].toSorted((a, b) => a - b),
      };
  }
  return goes;
}
