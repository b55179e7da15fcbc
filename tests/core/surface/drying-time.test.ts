/** The one needed time: the label's hours, what the air of a shop makes of them, and a night for fillers that state none. */
import { describe, expect, it } from "vitest";
import { dryingTime } from "../../../server/src/core/surface/drying-time.ts";
import { assumedRunsOf } from "./run-of.ts";

const material = (fields: string) => {
  const [run] = assumedRunsOf(`material it {\n  ${fields}\n}\nrecipe r {\n  layer it\n}\n`);
  const { action } = run!.moments[0]!;
  if (action.op !== "layer" || !action.use.material) throw new Error("no layer");
  return action.use.material;
};

describe("the needed time", () => {
  it("is the label's in the label's air, and without a shop", () => {
    const oil = material("family gel stain\n  cure 72 h\n  rated 21 C, 50 % RH");
    expect(dryingTime(undefined, oil, "cured")).toMatchObject({
      label: 72,
      factor: 1,
      hours: 72,
      isTypical: false,
    });
    expect(dryingTime({ temperature: 25, humidity: 40 }, oil, "cured")?.hours).toBe(72);
  });

  it("is the label's times the factor of the shop's air", () => {
    // 2^((21 − 9) / 10) = 2^1.2 = 2.2974; 72 h · 2.2974 = 165.4 h
    const oil = material("family gel stain\n  cure 72 h\n  rated 21 C, 50 % RH");
    const time = dryingTime({ temperature: 9, humidity: 88 }, oil, "cured");
    expect(time?.factor).toBeCloseTo(2.2974, 4);
    expect(time?.hours).toBeCloseTo(165.41, 2);
    expect(time?.cause).toEqual({ law: "reaction", shopC: 9, ratedC: 21, colderC: 12 });
  });

  it("says whether the figure is the label's or the family's", () => {
    const clear = material("family waterborne polyurethane\n  recoat 2 h");
    expect(dryingTime(undefined, clear, "recoat")?.isTypical).toBe(false);
    expect(dryingTime(undefined, clear, "cured")?.isTypical).toBe(true);
  });
});

describe("a filler that states no time", () => {
  const wood = material("family wood filler");

  it("takes a night of 12 h, also where its family's figure is less in this air", () => {
    expect(dryingTime(undefined, wood, "recoat")).toMatchObject({ label: 12, factor: 1, hours: 12 });
    expect(dryingTime({ temperature: 15, humidity: 60 }, wood, "recoat")?.hours).toBe(12);
  });

  it("takes longer than a night where the air asks for it", () => {
    // 12 % instead of 50 % of the deficit at 21 C: (1 − 0.5) / (1 − 0.88) = 4.167; 4 h · 4.167 = 16.67 h
    const time = dryingTime({ temperature: 21, humidity: 88 }, wood, "recoat");
    expect(time?.label).toBe(4);
    expect(time?.hours).toBeCloseTo(16.667, 2);
  });

  it("goes by its label where that states one", () => {
    const quick = material("family wood filler\n  recoat 3 h");
    expect(dryingTime(undefined, quick, "recoat")).toMatchObject({ label: 3, hours: 3, isTypical: false });
  });
});
