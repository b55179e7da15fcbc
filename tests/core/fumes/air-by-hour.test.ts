/** What the air of a room is asked for hour by hour, worked by hand. */
import { describe, expect, test } from "vitest";
import { type AirHour, airByHour } from "../../../server/src/core/fumes/air-by-hour.ts";
import { datedReleases, VERDICTS_BY_GRAVITY } from "../../../server/src/core/fumes/job-air.ts";
import type { JobResult } from "../../../server/src/core/totals/job-totals.ts";
import { analyse } from "../../harness/check-text.ts";
import { sampleAnalyst, sampleNames, sampleText } from "../../harness/samples.ts";

/** Three boards of 2 m2 under a varnish of 10 m2/L and 400 g/L: 240 g a coat, off at half of the time to touch dry. */
const results = (fields: string, jobs: string, touch = "8 h", layer = "layer varnish, takes 1 h") =>
  analyse({
    "test.finish": `material varnish {
  family oil varnish
  covers 10 m2/L
  voc    400 g/L
  touch  ${touch}
  recoat 48 h
  rated  21 C, 50 % RH
}
piece board {
  surface face {
    shape area 2 m2
    wood  beech
  }
}
shop room {
  air  21 C, 50 % RH
  room 50 m3, 2 air changes/h
  crew 3
${fields}}
recipe work {
  ${layer}
}
${jobs}`,
  }).jobs("test.finish");

const job = (name: string, start: string): string => `job ${name} {
  piece board x 3
  in    room
  ${start}
  apply work to face
  spare 0 %
}
`;

const hoursOf = (result: JobResult, others: readonly JobResult[] = []): readonly AirHour[] =>
  airByHour(
    {
      ...result,
      name: result.job.name,
      shop: result.shop!,
      air: result.air!,
      isShared: result.job.start !== undefined,
    },
    others.flatMap((other) => datedReleases({ ...other, name: other.job.name })),
  );

const changes = (hours: readonly AirHour[]) =>
  hours.map(({ hour, need }) => [hour, Math.round(need.airChangesPerH * 1000) / 1000, need.limit]);

describe("a coat that leaves from 0 to 5 h, 48 g in each", () => {
  // By the shift, after n hours: n · 48 000 mg / 350 mg/m3 / 8 h · 5 = n · 85.71 m3/h, / 50 m3 = n · 1.714.
  // By 15 minutes: 12 000 / 1800 / 0.25 h · 5 = 133.3 m3/h, / 50 m3 = 2.667.
  const expected = [
    [0, 2.667, "short"],
    [1, 3.429, "shift"],
    [2, 5.143, "shift"],
    [3, 6.857, "shift"],
    [4, 8.571, "shift"],
  ];

  test("asks for more with every hour, and for nothing once it has left", () => {
    const [it] = results("", job("it", "start 2027-03-08 09:00"));
    const hours = hoursOf(it!);
    expect(changes(hours)).toEqual(expected);
    expect(new Set(hours.map(({ verdict }) => verdict))).toEqual(new Set(["short"]));
    expect(hours[0]!.there).toMatchObject({ by: "room", airChangesPerH: 2 });
    expect(hours[4]!.mostBy).toMatchObject({ op: "layer" });
  });

  test("asks for the same without dates, whatever others do", () => {
    const [it, other] = results(
      "",
      `${job("it", 'note "no date"')}${job("other", "start 2027-03-08 09:00")}`,
    );
    expect(changes(hoursOf(it!, [other!]))).toEqual(expected);
  });

  test("counts what another job gives off in the same hours, and says whose it is", () => {
    const [it, other] = results(
      "",
      `${job("it", "start 2027-03-08 09:00")}${job("other", "start 2027-03-08 09:00")}`,
    );
    const [first] = hoursOf(it!, [other!]).filter(({ others }) => others.length > 0);
    expect(first!.others).toEqual(["other"]);
    const last = hoursOf(it!, [other!]).at(-1)!;
    const alone = hoursOf(it!).at(-1)!;
    expect(last.need.m3PerH).toBeGreaterThan(alone.need.m3PerH * 1.2);
  });
});

test("overnight nobody breathes it, and in the morning what has left since the opening counts", () => {
  // On from 15:00 to 16:00, off until 12:00 of the next day: 240 g in 21 h.
  const hoursField = "  hours Mon to Fri 08:00 to 16:00\n";
  const [it] = results(hoursField, job("it", "start 2027-03-08 15:00"), "40 h");
  const hours = new Map(hoursOf(it!).map((each) => [each.hour, each.need]));
  // 01:00: the stretch of a shift would begin at 18:00.
  expect(hours.get(10)).toMatchObject({ limit: "fire" });
  // 09:00 to 10:00: 2 h · 240 g / 21 h = 22.86 g; / 0.35 g/m3 / 8 h · 5 / 50 m3 = 0.816.
  expect(hours.get(18)).toMatchObject({ limit: "shift", fromH: 17 });
  expect(hours.get(18)!.airChangesPerH).toBeCloseTo(0.8163, 3);
});

/** Of the room: more than what the tables need, and less. */
test.each(["16", "5"])(
  "with %s air changes the greatest hour of every sample is its worst stretch, and the gravest verdict that of the job",
  (changesPerH) => {
    const analyst = sampleAnalyst();
    const shop = sampleText("shop.finish");
    analyst.setFile("shop.finish", shop.replace("16 air changes/h", `${changesPerH} air changes/h`));
    const analysis = analyst.analysis();
    const all = sampleNames.flatMap((name) => analysis.jobs(name)).filter(({ air }) => air?.worst);
    expect(all.length).toBeGreaterThan(2);
    for (const result of all) {
      const others = all.filter((each) => each !== result && each.shop === result.shop);
      const hours = hoursOf(result, others);
      const { coats } = result.air!;
      const most = Math.max(...coats.map(({ together }) => together.m3PerH));
      expect(Math.max(...hours.map(({ need }) => need.m3PerH)) / most).toBeCloseTo(1, 6);
      const gravest = (verdicts: readonly (typeof coats)[number]["verdict"][]) =>
        Math.max(...verdicts.map((verdict) => VERDICTS_BY_GRAVITY.indexOf(verdict)));
      expect(gravest(hours.map(({ verdict }) => verdict))).toBe(gravest(coats.map(({ verdict }) => verdict)));
    }
  },
);
