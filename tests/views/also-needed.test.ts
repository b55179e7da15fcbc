/** What a job needs beside cans, as its lines name it. */
import { expect, test } from "vitest";
import { alsoNeeded, sandpaperNeeded } from "../../server/src/views/also-needed.ts";
import { analyse } from "../harness/check-text.ts";

const runsOf = (lines: string) =>
  analyse({
    "a.finish": `piece box {
  surface lid {
    shape    area 1 m2
    wood     oak
    existing bare
  }
}
recipe oiled {
${lines}}
job boxes {
  piece box
  apply oiled to lid
}
`,
  }).jobs("a.finish")[0]!.runs;

test("sandpaper by grit, what puts it on, what is worn, and where oily rags go, each once", () => {
  const runs = runsOf(`  safety dust_mask, gloves, wet_rags
  step   sand 180, 120
  layer  drying_oil, by cloth
  wait   until recoat
  step   scuff 320
  safety vapour_respirator
  layer  oil_varnish x 2, by pad
  wait   until cured
`);
  expect(sandpaperNeeded(runs)).toEqual([{ name: "sandpaper", items: ["grit 120", "grit 180", "grit 320"] }]);
  // Nobody wears a mask and a respirator: one with both filters.
  expect(alsoNeeded(runs)).toEqual([
    { name: "to put it on", items: ["cloth", "pad"] },
    { name: "to wear", items: ["respirator (vapour and dust)", "gloves"] },
    { name: "for oily rags", items: ["a metal can with a lid, and water"] },
  ]);
});

test("nothing that no line names", () => {
  expect(sandpaperNeeded(runsOf("  step dust\n"))).toEqual([]);
  expect(alsoNeeded(runsOf("  step dust\n"))).toEqual([]);
});
