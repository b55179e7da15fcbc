/** A slip of the pen hides no danger: what was probably meant is judged until it is corrected. */
import { describe, expect, test } from "vitest";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { findingsOf } from "../harness/check-text.ts";

const recipe = (step: string, argument: string): string => `material cupboard_white {
  family acrylic paint
  colour white
}
piece cupboard {
  built 1952
  surface door {
    shape    panel 600 mm x 400 mm
    wood     oak
    existing alkyd paint
  }
}
recipe repaint(paint: material) {
  safety gloves, ventilate, no_ignition, wet_rags, dust_mask
  ${step}
  step   dust
  layer  paint x 2
  layer  oil_polyurethane
}
job doors {
  piece cupboard
  apply repaint(${argument}: cupboard_white) to door
}
`;
const rules = (text: string): readonly string[] =>
  findingsOf(text).flatMap((finding) => partsOf(finding).map(({ rule }) => rule));

describe("misspelt words", () => {
  const right = rules(recipe("step scuff 220", "paint"));

  test("the recipe without slips has findings on lead, waits and colour", () => {
    expect(right).toEqual(
      expect.arrayContaining(["lead-not-tested", "recoat-too-early", "ambering-over-white"]),
    );
  });

  test("a verb: the same findings, and the word", () => {
    expect(rules(recipe("step scuf 220", "paint")).toSorted()).toEqual([...right, "unknown-word"].toSorted());
  });

  test("an argument: the same findings, and the word", () => {
    expect(rules(recipe("step scuff 220", "pant")).toSorted()).toEqual(
      [...right, "wrong-argument"].toSorted(),
    );
  });

  test("the finding says what the step is checked as, or that it is not checked", () => {
    const said = (step: string): string | undefined =>
      findingsOf(recipe(step, "paint")).find(({ rule }) => rule === "unknown-word")?.why;
    expect(said("step scuf 220")).toBe("This step is checked as `scuff` until you correct it.");
    expect(said("step xylograph")).toBe("This step is not checked until you correct it.");
  });

  test("and what an argument is checked as, unless another gives that", () => {
    const said = (given: string): string | undefined =>
      findingsOf(recipe("step scuff 220", given)).find(({ rule }) => rule === "wrong-argument")?.why;
    expect(said("pant")).toBe("It is checked as `paint` until you correct it.");
    expect(said("paint: cupboard_white, pant")).toBe("");
  });

  test("a method: misspelt spraying is spraying", () => {
    const sprayed = recipe("step scuff 220", "paint").replace("paint x 2", "paint x 2 by hvlp");
    const slip = sprayed.replace("hvlp", "hvpl");
    expect(rules(slip).toSorted()).toEqual([...rules(sprayed), "unknown-word"].toSorted());
  });
});
