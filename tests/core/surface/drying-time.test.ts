/** The one needed time: the label's hours, what the air of a shop makes of them, and a night for fillers that state none. */
import { describe, expect, it } from "vitest";
import { dryingTimes } from "../../../server/src/core/surface/drying-time.ts";
import { scheduleInput } from "../../../server/src/core/totals/task-plan.ts";
import { assumedRunsOf, runsOf } from "./run-of.ts";

const material = (fields: string) => {
  const [run] = assumedRunsOf(`material it {\n  ${fields}\n}\nrecipe r {\n  layer it\n}\n`);
  const { action } = run!.moments[0]!;
  if (action.op !== "layer" || !action.use.material) throw new Error("no layer");
  return action.use.material;
};

describe("the needed time", () => {
  it("is the label's in the label's air, and without a shop", () => {
    const oil = material("family gel stain\n  cure 72 h\n  rated 21 C, 50 % RH");
    expect(dryingTimes(undefined, oil).cured).toMatchObject({
      label: 72,
      factor: 1,
      hours: 72,
      isTypical: false,
    });
    expect(dryingTimes({ temperature: 25, humidity: 40 }, oil).cured?.hours).toBe(72);
  });

  it("is the label's times the factor of the shop's air", () => {
    // 2^((21 − 9) / 10) = 2^1.2 = 2.2974; 72 h · 2.2974 = 165.4 h
    const oil = material("family gel stain\n  cure 72 h\n  rated 21 C, 50 % RH");
    const time = dryingTimes({ temperature: 9, humidity: 88 }, oil).cured;
    expect(time?.factor).toBeCloseTo(2.2974, 4);
    expect(time?.hours).toBeCloseTo(165.41, 2);
    expect(time?.cause).toEqual({ law: "reaction", shopC: 9, ratedC: 21, colderC: 12 });
  });

  it("says whether the figure is the label's or the family's", () => {
    const clear = material("family waterborne polyurethane\n  recoat 2 h");
    expect(dryingTimes(undefined, clear).recoat?.isTypical).toBe(false);
    expect(dryingTimes(undefined, clear).cured?.isTypical).toBe(true);
  });
});

describe("a filler that states no time", () => {
  const wood = material("family wood filler");

  it("takes a night of 12 h, also where its family's figure is less in this air", () => {
    expect(dryingTimes(undefined, wood).recoat).toMatchObject({ label: 12, factor: 1, hours: 12 });
    expect(dryingTimes({ temperature: 15, humidity: 60 }, wood).recoat?.hours).toBe(12);
  });

  it("takes longer than a night where the air asks for it", () => {
    // 12 % instead of 50 % of the deficit at 21 C: (1 − 0.5) / (1 − 0.88) = 4.167; 4 h · 4.167 = 16.67 h
    const time = dryingTimes({ temperature: 21, humidity: 88 }, wood).recoat;
    expect(time?.label).toBe(4);
    expect(time?.hours).toBeCloseTo(16.667, 2);
  });

  it("goes by its label where that states one", () => {
    const quick = material("family wood filler\n  recoat 3 h");
    expect(dryingTimes(undefined, quick).recoat).toMatchObject({ label: 3, hours: 3, isTypical: false });
  });
});

describe("a wait until a stage carries the time that it waits for", () => {
  const job = (...lines: readonly string[]) => `
material slow {
  family gel stain
  cure 72 h
  rated 21 C, 50 % RH
}
shop cold {
  air 9 C 88 % RH
}
piece board {
  surface face {
    shape area 1 m2
    wood beech
  }
}
recipe work {
${lines.map((line) => `  ${line}\n`).join("")}}
job work_on_it {
  piece board
  in cold
  apply work to face
}
`;
  const ofWait = (text: string) => {
    const run = runsOf(text).get("work_on_it face")!;
    return run.moments.find(({ action }) => action.op === "wait")!;
  };

  it("in the air of the shop", () => {
    const { before, after, dries } = ofWait(job("layer slow", "wait until cured"));
    // 72 h × 2^((21 − 9) / 10) = 165.41 h, as above
    expect(dries?.time).toMatchObject({ stage: "cured", label: 72 });
    expect(dries?.time?.hours).toBeCloseTo(165.41, 2);
    expect(after.clock.hours - before.clock.hours).toBeCloseTo(165.41, 2);
  });

  it("but none where what was put on is gone, and then nothing is planned for it", () => {
    const text = job("layer slow", "step strip", "wait until cured");
    expect(ofWait(text).dries).toBeUndefined();
    const [run] = [...runsOf(text).values()];
    const [chain] = scheduleInput(run!.job!, run!.shop, [run!]).chains;
    expect(chain!.items.at(-1)).toMatchObject({ kind: "wait", hours: 0 });
  });
});
