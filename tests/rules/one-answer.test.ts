/** One question has one answer: what is advised on a line does not contradict or repeat what is advised beside it. */
import { describe, expect, it } from "vitest";
import { findingsOf } from "../harness/check-text.ts";

const found = (text: string, rule: string) => findingsOf(text).find((each) => each.rule === rule);

const PAINTED = (wait: string) => `material trim "Trim enamel" {
  family acrylic paint
  colour white
}
recipe painted {
  for    any
  safety gloves, ventilate, no_ignition, wet_rags
  layer  trim
${wait}  layer  oil_polyurethane
  wait   until cured
}
`;

describe("a clear that should be another", () => {
  it("is not told how long to wait for it, but for what takes its place", () => {
    const finding = found(PAINTED(""), "ambering-over-white");
    expect(finding?.also).toEqual(["Also: whatever goes on here, write `wait until recoat` above it."]);
    expect(finding?.message).not.toContain("1 day");
  });
  it("the same in place of a wait that is too short", () => {
    expect(found(PAINTED("  wait   30 min\n"), "ambering-over-white")?.also).toEqual([
      "Also: whatever goes on here, write `wait until recoat` in place of `wait 30 min`.",
    ]);
  });
  it("with the yellow allowed, the wait for it is told whole", () => {
    const text = PAINTED("").replace(
      "  layer  oil_",
      "  # allow ambering-over-white: ivory is wanted\n  layer  oil_",
    );
    expect(found(text, "recoat-too-early")?.remedy).toContain("`wait 1 day`");
  });
});

const USED = (...steps: readonly string[]) => `piece box "Box" {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing alkyd paint
  }
}
shop mill {
  country US
}
recipe renew {
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
${steps.map((step) => `  ${step}\n`).join("")}  layer  alkyd_paint
  wait   until cured
}
job boxes {
  piece box
  in    mill
  apply renew to lid
}
`;

describe("a used surface", () => {
  const unclean = "coat-on-unclean-surface";
  it("is cleaned before it is scuffed, and dusted after", () => {
    const finding = found(USED("step   scuff 220"), unclean);
    expect(finding?.headline).toBe("This layer goes on sanding dust, on a surface that was never cleaned");
    expect(finding?.remedy).toBe(
      "Clean before the scuffing, which rubs the grease in: `step clean with soap`, `wait overnight`. Dust after it: `step dust`.",
    );
  });
  it("by a fix that leaves nothing to say", () => {
    const cleaned = USED("step   clean with soap", "wait   overnight", "step   scuff 220", "step   dust");
    expect(found(cleaned, unclean)).toBeUndefined();
  });
});
