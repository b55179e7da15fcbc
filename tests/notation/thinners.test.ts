/** What thins a material is read with blanks and by the name of the built-in material alike. */
import { expect, test } from "vitest";
import { summary } from "../harness/check-text.ts";

const withThinner = (thinner: string): string => `material bench_varnish {
  family oil varnish
  thin   ${thinner}, up to 10 %
}

recipe varnished {
  safety ventilate, no_ignition, wet_rags, gloves
  layer  bench_varnish, thinned 10:1 with mineral_spirits
  wait   until cured
}
`;

test.each(["mineral spirits", "mineral_spirits"])("%s", (thinner) => {
  expect(summary(withThinner(thinner))).toEqual([]);
});

test("and what is neither is still unknown", () => {
  expect(summary(withThinner("mineral_water"))).toContain("3 unknown-word");
});

test("the two mean the same: a wrong thinner is told by both", () => {
  const wrong = (thinner: string): readonly string[] =>
    summary(withThinner(thinner).replace("with mineral_spirits", "with water"));
  expect(wrong("mineral_spirits")).toEqual(wrong("mineral spirits"));
  expect(wrong("mineral_spirits")).toContain("8 wrong-thinner");
});
