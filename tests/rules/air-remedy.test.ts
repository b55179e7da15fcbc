/** The figures that a remedy for the air names pass every test of its finding. */
import { expect, test } from "vitest";
import { airRemedy, dryEnough, workingWarmth } from "../../server/src/core/rules/group-bad-air.ts";
import { findingsOf } from "../harness/check-text.ts";

/**
 * By the Magnus form of Alduchov and Eskridge (1996), at 10 C: 17.625 · 10 / (243.04 + 10) = 0.69653.
 * 85 %: ln 0.85 = −0.16252, sum 0.53401, dew point 243.04 · 0.53401 / (17.625 − 0.53401) = 7.59 C: 2.41 C, too near.
 * 80 %: ln 0.80 = −0.22314, sum 0.47339, dew point 243.04 · 0.47339 / (17.625 − 0.47339) = 6.71 C: 3.29 C, enough.
 */
const porch = {
  units: "metric",
  air: { temperature: 9, humidity: 88 },
  limits: { low: 10, high: 30, humidity: 85 },
  ignition: true,
} as const;

test("at 10 C the 85 % of a label is too near the dew point, and 80 % is not", () => {
  expect(dryEnough(10, [porch])).toBe(80);
});

test("the strictest label counts", () => {
  expect(dryEnough(10, [porch, { ...porch, limits: { humidity: 65 } }])).toBe(65);
});

test("a cold shop with a heater: the work goes elsewhere, and to what air", () => {
  expect(airRemedy(["too cold", "too damp", "near its dew point"], [porch])).toBe(
    "Finish in another room, aired by open windows, where nobody lives, sleeps or eats, and where nothing burns, glows or sparks (no electric heater or fan, and no switch used), at 18 to 22 C and 40 to 60 % RH, heated by hot-water radiators, and air it until nothing smells any more. Write that room as another `shop` with `ignition none`, and name it in the job (`in …`); or coat in a warm, dry season with the heater gone. Bring the cleaned piece in before you coat it, until it is as warm as the room and its wood has 6 to 12 % moisture by a meter, which after a damp room may take weeks. In the cold no wait is long enough.",
  );
});

test("wood is damp from 80 % on, where it comes to 16 %, and is not in drier air near its dew point", () => {
  const kinds = ["near its dew point"];
  const at = (humidity: number) =>
    airRemedy(kinds, [{ units: "metric", air: { temperature: 18, humidity }, ignition: false }]);
  expect(at(80)).toContain("6 to 12 % moisture by a meter");
  expect(at(79)).not.toContain("moisture");
});

test("work that frees lead stays out of the warm room", () => {
  expect(airRemedy(["too cold"], [{ ...porch, lead: true }])).toContain(
    "Never sand or strip there what may hold lead. Write that room as another `shop` with `ignition none`. Split the work: cleaning and sanding stay in this recipe and job; the coats get a recipe and a job of their own, `in` that shop and `after` this job; or coat in a warm, dry season with the heater gone.",
  );
});

test("one limit for one thing: the label's is told as the reason, and the dew point's only without it", () => {
  expect(airRemedy(["too damp", "near its dew point"], [porch])).not.toMatch(/at (?:least|most)/u);
  const damp = { units: "metric", air: { temperature: 18, humidity: 84 }, ignition: false } as const;
  expect(airRemedy(["near its dew point"], [damp])).toContain("40 to 60 % RH (at most 80 % RH)");
});

test("warmth to work in is not the limit, and keeps to it where the limit is warmer", () => {
  expect(workingWarmth("metric", 10, 32)).toBe("18 to 22 C");
  expect(workingWarmth("metric", 21, 32)).toBe("21 to 23 C");
  expect(workingWarmth("metric", 18, 20)).toBe("18 to 20 C");
  expect(workingWarmth("metric", 10, 15)).toBe("15 C");
  // 18 C are 64.4 F, 22 C 71.6 F.
  expect(workingWarmth("us", 10, 32)).toBe("64 to 72 F");
});

test("what bears the air is named, and nothing that the shop's heater can light", () => {
  const cold = {
    units: "metric",
    air: { temperature: 6, humidity: 60 },
    limits: { low: 10 },
    ignition: false,
  } as const;
  expect(airRemedy(["too cold"], [cold])).toContain("or use what bears this air, such as alkyd paint.");
  expect(airRemedy(["too cold"], [{ ...cold, ignition: true }])).not.toContain("alkyd");
  const damp = {
    units: "metric",
    air: { temperature: 20, humidity: 78 },
    limits: { humidity: 70 },
    ignition: true,
  } as const;
  expect(airRemedy(["too damp"], [damp])).toContain("such as waterborne polyurethane");
});

test("the air that the remedy names has no finding left, and that of the label alone has", () => {
  const shop = (air: string): readonly string[] =>
    findingsOf(`piece shelf {
  built 2015
  surface top {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}
shop cellar {
  air ${air}
}
recipe one_coat {
  layer waterborne_polyurethane
  wait  until cured
}
job shelves {
  piece shelf
  in    cellar
  apply one_coat to top
}
`).map(({ rule }) => rule);
  expect(shop("10 C, 80 % RH")).toEqual([]);
  expect(shop("10 C, 85 % RH")).toContain("near-dew-point");
});
