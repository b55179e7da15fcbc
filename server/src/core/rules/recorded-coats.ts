/** What the rules on records share: the coats that a line of the record tells of, and the job of their examples. */

import { hoursBetween } from "../measure/iso-dates.ts";
import type { JobRecord } from "../model/model.ts";
import { beginOf } from "../record/amend.ts";
import type { LayerAction } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { type Coat, type Moment, topCoat } from "../surface/state.ts";

export interface RecordedCoat {
  readonly run: SurfaceRun;
  readonly record: JobRecord;
  readonly moment: Moment<LayerAction>;
  /** The coat below, where this job put it on, and the line that tells of it. */
  readonly below?: { readonly coat: Coat; readonly record: JobRecord };
}

/** The coats that the record tells of by name, each line once, in the order of surfaces. */
export function recordedCoats(runs: readonly SurfaceRun[]): readonly RecordedCoat[] {
  const seen = new Set<JobRecord>();
  return runs.flatMap((run) =>
    (run.record?.done ?? []).flatMap((done) =>
      [...done].flatMap(([index, { record, isNamed }]): readonly RecordedCoat[] => {
        const moment = run.moments[index]!;
        if (!isNamed || moment.action.op !== "layer" || seen.has(record)) return [];
        seen.add(record);
        const coat = topCoat(moment.before);
        const before = run.moments.findLastIndex(({ action }, at) => at < index && action.op === "layer");
        const named = done.get(before);
        const told = named?.isNamed ? named.record : undefined;
        return [
          {
            run,
            record,
            moment: moment as Moment<LayerAction>,
            ...(coat?.origin === "new" && told ? { below: { coat, record: told } } : {}),
          },
        ];
      }),
    ),
  );
}

export interface NextCoat {
  readonly run: SurfaceRun;
  readonly next: LayerAction;
  /** The coat that it goes on, which this job has put there, and the line that stands for it. */
  readonly below: Coat;
  readonly record: JobRecord;
}

/** The coats that are next over a coat of the record, once for each surface and line. */
export function nextCoats(runs: readonly SurfaceRun[]): readonly NextCoat[] {
  return runs.flatMap((run) => {
    const seen = new Set<JobRecord>();
    return (run.record?.done ?? []).flatMap((done, piece): readonly NextCoat[] => {
      const reached = run.record!.reached[piece]!;
      const isCoat = (at: number): boolean =>
        run.moments[at]!.action.op === "layer" && !done.get(at)?.leftOut;
      const index = run.moments.findIndex((_, at) => at >= reached && isCoat(at));
      if (index < 0) return [];
      const { action, before } = run.moments[index]!;
      const last = run.moments.findLastIndex((_, at) => at < index && isCoat(at));
      const record = done.get(last)?.record;
      const below = topCoat(before);
      if (action.op !== "layer" || !record || below?.origin !== "new" || seen.has(record)) return [];
      seen.add(record);
      return [{ run, next: action, below, record }];
    });
  });
}

/** Hours from the end of one line to the beginning of another: the least and the most, where a line tells the day alone. */
export function hoursApart(
  earlier: JobRecord,
  later: JobRecord,
): { readonly least: number; readonly most: number } {
  const between = hoursBetween(earlier.at, beginOf(later));
  const day = (record: JobRecord): number => (record.syntax.time ? 0 : DAY_H);
  return { least: between - day(later), most: between + day(earlier) };
}

const DAY_H = 24;

/** A job with these lines of the record. */
export const jobWith = (lines: readonly string[]): string => `material hall_clear {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h to 24 h
  cure   7 days
  rated  21 C, 50 % RH
  limits 10 C to 32 C, 85 % RH
}

material floor_clear {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 4 h
  cure   7 days
}

piece shelf {
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}

shop warm_room {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}

recipe coated {
  for    wood
  safety dust_mask
  step   sand 120, 150
  step   dust
  layer  hall_clear x 2, between sand 220
  wait   until cured
}

job shelves {
  piece shelf
  in    warm_room
  start 2027-03-08 09:00
  apply coated to top
${lines.map((line) => `  ${line}\n`).join("")}}
`;
