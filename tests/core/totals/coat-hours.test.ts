/** How long a mixed pot must last: one coat on all pieces, by hand. */
import { expect, test } from "vitest";
import { coatHoursOnAll } from "../../../server/src/core/totals/task-plan.ts";
import { runsOf } from "../surface/run-of.ts";

const hoursOf = (layer: string, crew: number): number => {
  const [run] = [
    ...runsOf(`piece door {
  surface top {
    shape panel 500 mm x 420 mm
    wood  maple
  }
}
shop booth {
  crew ${crew}
}
recipe sprayed {
  for   wood
  layer two_part_polyurethane, ${layer}
}
job doors {
  piece door x 20
  in    booth
  apply sprayed to top
}
`).values(),
  ];
  const layers = run!.moments.flatMap(({ action }) => (action.op === "layer" ? [action] : []));
  return coatHoursOnAll(run!, layers[0]!);
};

test("stated times are those of each piece, shared by the crew", () => {
  expect(hoursOf("by hvlp, takes 15 min", 1)).toBeCloseTo(5, 12); // 20 · 15 min
  expect(hoursOf("by hvlp, takes 15 min", 3)).toBeCloseTo(1.75, 12); // 7 rounds of three pieces · 15 min
});

test("an estimate sets the gun up once", () => {
  // 0.21 m2 · 3 min/m2 is a minute when begun; 15 min for the gun, 20 · 1 min.
  expect(hoursOf("by hvlp", 1)).toBeCloseTo(35 / 60, 12);
  // Ten rounds of two: 15 + 10 min.
  expect(hoursOf("by hvlp", 2)).toBeCloseTo(25 / 60, 12);
});
