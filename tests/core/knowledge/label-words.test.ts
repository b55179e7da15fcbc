/** Words of labels: phrases as they stand on tins and in H and P statements of the GHS (from memory). */
import { describe, expect, test } from "vitest";
import { type LabelWarning, labelAllows, labelSays } from "../../../server/src/core/knowledge/label-words.ts";

const says = (docs: string, warning: LabelWarning): boolean =>
  labelSays({ title: "A tin", docs }, warning) !== undefined;

const SAID: readonly [string, LabelWarning][] = [
  ["Not for food contact.", "not for food"],
  ["Do not use on surfaces that touch food", "not for food"],
  ["Unsuitable for cutting boards", "not for food"],
  ["Not suitable for toys or children's furniture", "not for children"],
  ["Must not be used on cots", "not for children"],
  ["Contains boiled linseed oil.", "self-heating rags"],
  ["Made from modified tung oil and resin", "self-heating rags"],
  ["Rags with this product can catch fire by themselves", "self-heating rags"],
  ["Never leave rags in a heap, they self-heat", "self-heating rags"],
  ["Rags can catch fire if they are not laid flat", "self-heating rags"],
  ["Danger of spontaneous combustion", "self-heating rags"],
  ["Highly flammable.", "flammable"],
  ["Do not inhale, highly flammable", "flammable"],
  ["H225", "flammable"],
  ["Keep away from heat, sparks and open flames", "flammable"],
  ["Contains lead.", "holds lead"],
  ["A lead-based paint", "holds lead"],
  ["With lead driers, from an old tin", "holds lead"],
];

const NOT_SAID: readonly [string, LabelWarning][] = [
  ["Fit for wood that touches food when cured", "not for food"],
  [
    "Keep out of the reach of children. Do not let children play with it, keep it out of reach",
    "not for children",
  ],
  ["Safe for toys when cured", "not for children"],
  ["Contains no linseed oil", "self-heating rags"],
  ["Rags do not self-heat", "self-heating rags"],
  ["Goes over linseed oil", "self-heating rags"],
  ["Non-flammable", "flammable"],
  ["This is not a flammable liquid", "flammable"],
  ["Contains no lead", "holds lead"],
  ["Lead-free, with lead-free driers", "holds lead"],
  ["Lead time two weeks", "holds lead"],
];

describe("what a label warns of", () => {
  test.each(SAID)("said: %s (%s)", (docs, warning) => expect(says(docs, warning)).toBe(true));
  test.each(NOT_SAID)("not said: %s (%s)", (docs, warning) => expect(says(docs, warning)).toBe(false));
});

test("what a label allows", () => {
  const allowed = (docs: string) => labelAllows({ docs }, "fit for food");
  expect(allowed("The label says it is fit for food boards once cured.")).toBe(true);
  expect(allowed("Food-safe when dry")).toBe(true);
  expect(allowed("Not fit for food")).toBe(false);
  expect(
    labelAllows(
      { docs: "The label says: for toys when fully cured; safe for toys (EN 71-3)." },
      "fit for children",
    ),
  ).toBe(true);
});
