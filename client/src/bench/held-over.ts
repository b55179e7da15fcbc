/**
 * A job whose plan is being made anew, drawn with the plan of the text before: otherwise the drawing would come and go
 * with every key. Everything else of it is of the text as it is now, and so are the lines that its bars lead to.
 */
import type { Bench, BenchCoat, BenchOther } from "../../../server/src/views/bench/model.ts";

/** `last` is the same job as it was drawn with its last plan. */
export function heldOver<P>(bench: Bench<P>, last: Bench<P>): Bench<P> {
  const { startAt: _, ...rest } = bench;
  return {
    ...rest,
    ...(last.startAt === undefined ? {} : { startAt: last.startAt }),
    plan: "planned",
    dates: last.dates,
    endHours: last.endHours,
    others: othersHeld(bench.others, last.others),
    shut: last.shut,
    air: bench.air.state === "being planned" ? { ...bench.air, ...withoutLines(last.air) } : bench.air,
    surfaces: bench.surfaces.map((surface, i) => {
      const before = last.surfaces[i];
      if (before === undefined) return surface;
      const coats = surface.coats.map((coat, n): BenchCoat => {
        const step = surface.section.coats[n]!.step;
        const same = before.section.coats.findIndex((each) => each.step === step);
        const onAt = before.coats[same]?.onAt;
        return onAt === undefined ? coat : { ...coat, onAt };
      });
      return { ...surface, coats, bars: before.bars };
    }),
  };
}

/** Other jobs of the shop are planned anew with this one. */
export const othersHeld = (
  others: readonly BenchOther[],
  last: readonly BenchOther[],
): readonly BenchOther[] =>
  others.map((other) => {
    const before = other.plan === "being planned" && last.find(({ name }) => name === other.name);
    if (!before) return other;
    const rows = before.rows.map((row) => ({ ...row, bars: row.bars.map(({ at: _, ...bar }) => bar) }));
    return { ...other, note: before.note, rows };
  });

/** Its lines may be others by now. */
const withoutLines = <P>({
  state,
  hours,
  worst,
  missing,
  said,
}: Bench<P>["air"]): Partial<Bench<P>["air"]> => ({
  state,
  worst,
  missing,
  said,
  hours: hours.map(({ at: _, ...hour }) => hour),
});
