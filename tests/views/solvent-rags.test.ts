/** Every danger that stands on a line of a sheet is explained before the steps: rags wet with a solvent as well. */
import { expect, test } from "vitest";
import { analyse } from "../harness/check-text.ts";

const job = (step: string): string => `material spirits {
  family mineral spirits
}
piece box {
  surface lid {
    shape    area 1 m2
    wood     beech
    existing paste wax
  }
}
recipe cleaned {
  safety gloves, ventilate, no_ignition
  ${step}
}
job boxes {
  piece box
  apply cleaned to lid
}
`;

const labels = (step: string): readonly string[] => {
  const [sheet] = analyse({ "a.finish": job(step) }).sheets("a.finish");
  return sheet!.duties.filter(({ stated }) => stated).map(({ label }) => label);
};

test("where a step leaves rags with a solvent that burns, the sheet says what to do with them", () => {
  expect(labels("step dewax with spirits")).toContain("Solvent rags");
});

test("where none does, it does not", () => {
  expect(labels("step clean with soap")).not.toContain("Solvent rags");
});
