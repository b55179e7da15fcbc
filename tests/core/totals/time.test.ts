/**
 * Hours and dates of a job against timelines made by hand. 2027-03-08 is a Monday. Hands-on times are stated, so that
 * the tool's own table does not matter.
 */
import { describe, expect, test } from "vitest";
import { board, clear, job, onlyJob, recipe } from "./job-text.ts";

const WEEK = "hours Mon to Fri 09:00 to 17:00";
const shop = (...lines: readonly string[]) => ["shop room {", ...lines, "}", ""].join("\n");
const QUICK = clear("recoat 2 h to 24 h", "cure 21 days", "rated 21 C, 50 % RH");

interface Setup {
  readonly materials?: string;
  readonly shop?: string;
  readonly pieces?: string;
  readonly job?: readonly string[];
  readonly recipe: readonly string[];
}

const timesOf = (setup: Setup) => {
  const { hands_on_h, elapsed_h, finish, in_service } = onlyJob(
    (setup.materials ?? QUICK) +
      board() +
      (setup.shop ?? shop(WEEK)) +
      recipe(...setup.recipe) +
      job(setup.pieces ?? "board", "face", ...(setup.job ?? ["in room", "start 2027-03-08 09:00"])),
  );
  return { hands_on_h, elapsed_h, finish, in_service };
};

describe("in a shop with hours", () => {
  test("one day at the bench and three weeks of cure", () => {
    // sand 09:00–10:00, dust –10:30, coat –11:30, wait –13:30, sand –14:30, coat –15:30, cured 21 days later.
    const times = timesOf({
      recipe: [
        "step sand 120, takes 1 h",
        "step dust, takes 30 min",
        "layer clear, takes 1 h",
        "wait 2 h",
        "step sand 220, takes 1 h",
        "layer clear, takes 1 h",
        "wait until cured",
      ],
    });
    expect(times).toEqual({
      hands_on_h: 4.5,
      elapsed_h: 510.5, // 6.5 + 21 · 24
      finish: "2027-03-29T15:30:00",
      in_service: "2027-03-29T15:30:00",
    });
  });

  test("finish is the end of what is stated; in service is the cure all the same", () => {
    expect(timesOf({ recipe: ["layer clear, takes 1 h", "wait 2 h"] })).toEqual({
      hands_on_h: 1,
      elapsed_h: 3,
      finish: "2027-03-08T12:00:00",
      in_service: "2027-03-29T10:00:00",
    });
  });

  test("a start without a time is that day's opening, of a closed day the next", () => {
    const work = { recipe: ["layer clear, takes 1 h"] };
    expect(timesOf({ ...work, job: ["in room", "start 2027-03-08"] })).toMatchObject({
      elapsed_h: 1,
      finish: "2027-03-08T10:00:00",
    });
    // 2027-03-13 is a Saturday.
    expect(timesOf({ ...work, job: ["in room", "start 2027-03-13"] })).toMatchObject({
      elapsed_h: 1,
      finish: "2027-03-15T10:00:00",
    });
  });

  test("a start before the opening counts from its own hour", () => {
    // 06:00 to 10:00
    expect(
      timesOf({ job: ["in room", "start 2027-03-08 06:00"], recipe: ["layer clear, takes 1 h"] }),
    ).toMatchObject({ elapsed_h: 4, finish: "2027-03-08T10:00:00" });
  });

  test("what fits into one opening does not go on over a closing", () => {
    // Sanding does not fit before 17:00: Tuesday 09:00–11:00, coat –13:00, wait –15:00: 23 h after 16:00.
    expect(
      timesOf({
        job: ["in room", "start 2027-03-08 16:00"],
        recipe: ["step sand 120, takes 2 h", "layer clear, takes 2 h", "wait 2 h"],
      }),
    ).toMatchObject({ elapsed_h: 23, finish: "2027-03-09T15:00:00" });
    // The coat does not fit before 17:00: 09:00–11:00 on Tuesday.
    expect(
      timesOf({ job: ["in room", "start 2027-03-08 16:00"], recipe: ["layer clear, takes 2 h"] }),
    ).toMatchObject({ elapsed_h: 19, finish: "2027-03-09T11:00:00" });
  });

  test("a coat longer than any day pauses after all", () => {
    // 09:00–17:00 and 09:00–11:00
    expect(timesOf({ recipe: ["layer clear, takes 10 h"] })).toMatchObject({
      finish: "2027-03-09T11:00:00",
      hands_on_h: 10,
    });
  });

  test("overnight is the next morning, twelve hours away or more", () => {
    // Coat to 10:00; 22:00 is closed; Tuesday 09:00.
    const night = { recipe: ["layer clear, takes 1 h", "wait overnight"] };
    expect(timesOf(night)).toMatchObject({ elapsed_h: 24, finish: "2027-03-09T09:00:00" });
    // 2027-03-12 is a Friday: to Monday 09:00, 72 h after the start.
    expect(timesOf({ ...night, job: ["in room", "start 2027-03-12 09:00"] })).toMatchObject({
      elapsed_h: 72,
      finish: "2027-03-15T09:00:00",
    });
    // Tuesday closed.
    expect(timesOf({ ...night, shop: shop(WEEK, "closed 2027-03-09") })).toMatchObject({
      finish: "2027-03-10T09:00:00",
    });
    // No hours stated: open day and night, so 12 h.
    expect(timesOf({ ...night, shop: shop("crew 1") })).toMatchObject({ elapsed_h: 13 });
  });

  test("where a shop is closed for less than twelve hours, no second night is waited for", () => {
    // Coat 19:00–20:00. At 07:00 only 11 h have passed, so at 08:00.
    const late = {
      recipe: ["layer clear, takes 1 h", "wait overnight"],
      job: ["in room", "start 2027-03-08 19:00"],
    };
    expect(timesOf({ ...late, shop: shop("hours Mon to Fri 07:00 to 22:00") })).toMatchObject({
      elapsed_h: 13,
      finish: "2027-03-09T08:00:00",
    });
    // Two openings a day: 08:00 on Tuesday is within the morning's stretch.
    expect(
      timesOf({ ...late, shop: shop("hours Mon to Fri 07:00 to 12:00, Mon to Fri 13:00 to 22:00") }),
    ).toMatchObject({ elapsed_h: 13, finish: "2027-03-09T08:00:00" });
    // The nights of a week round the clock have no opening: 20:00 to 08:00.
    expect(timesOf({ ...late, shop: shop("hours Mon to Fri 00:00 to 24:00") })).toMatchObject({
      elapsed_h: 13,
      finish: "2027-03-09T08:00:00",
    });
  });

  test("the clocks of the shop's wall count where summer time begins", () => {
    // 2027-03-28, a Sunday, has 23 h in Europe. Saturday 10:00 to Monday 09:00 are 47 h on the calendar.
    expect(
      timesOf({
        shop: shop("hours Mon to Sat 09:00 to 17:00"),
        job: ["in room", "start 2027-03-27 09:00"],
        recipe: ["layer clear, takes 1 h", "wait overnight"],
      }),
    ).toMatchObject({ elapsed_h: 48, finish: "2027-03-29T09:00:00" });
  });

  test("a window moves the coat before it", () => {
    // Recoat 8 to 20 h. A coat from 09:00 would be closed on Tuesday at 06:00; begun at 12:00 it is open to 09:00.
    expect(
      timesOf({
        materials: clear("recoat 8 h to 20 h"),
        recipe: ["layer clear, takes 1 h", "wait 8 h", "layer clear, takes 1 h"],
      }),
    ).toMatchObject({ elapsed_h: 25, finish: "2027-03-09T10:00:00" });
    // Sanded between, the window does not matter: 09:00–10:00, sanded 09:00–09:30, coat –10:30.
    expect(
      timesOf({
        materials: clear("recoat 8 h to 20 h"),
        recipe: [
          "layer clear, takes 1 h",
          "wait 8 h",
          "step sand 220, takes 30 min",
          "layer clear, takes 1 h",
        ],
      }),
    ).toMatchObject({ finish: "2027-03-09T10:30:00" });
  });

  test("the crew is shared", () => {
    const two = {
      pieces: "board x 2",
      recipe: ["layer clear, takes 1 h", "wait 2 h", "layer clear, takes 1 h"],
    };
    // One person: 09–10, 10–11, then 12–13 and 13–14.
    expect(timesOf(two)).toMatchObject({ hands_on_h: 4, elapsed_h: 5, finish: "2027-03-08T14:00:00" });
    // Two: both 09–10 and 12–13.
    expect(timesOf({ ...two, shop: shop(WEEK, "crew 2") })).toMatchObject({ elapsed_h: 4 });
  });
});

describe("waits until", () => {
  test("count from the end of the last layer", () => {
    // Coat to 10:00, cleaning to 11:00, recoat at 12:00.
    expect(
      timesOf({ recipe: ["layer clear, takes 1 h", "step clean with soap, takes 1 h", "wait until recoat"] }),
    ).toMatchObject({ elapsed_h: 3, finish: "2027-03-08T12:00:00" });
    // Already over: no wait.
    expect(
      timesOf({ recipe: ["layer clear, takes 1 h", "step clean with soap, takes 3 h", "wait until recoat"] }),
    ).toMatchObject({ elapsed_h: 4 });
  });

  test("or of the last filling, and without either there is none", () => {
    const putty = "material putty {\nfamily wood filler\nrecoat 4 h\nrated 21 C, 50 % RH\n}\n";
    expect(
      timesOf({
        materials: QUICK + putty,
        recipe: ["step fill with putty, takes 30 min", "wait until recoat"],
      }),
    ).toMatchObject({ elapsed_h: 4.5 });
    expect(timesOf({ recipe: ["step sand 120, takes 1 h", "wait until cured"] })).toMatchObject({
      elapsed_h: 1,
    });
  });

  test("last longer in cold and damp air, and never shorter", () => {
    const work = { recipe: ["layer clear, takes 1 h", "wait until recoat"] };
    // e(21) = 0.61094 · exp(17.625 · 21 / 264.04) = 2.48189 kPa, e(15) = 0.61094 · exp(17.625 · 15 / 258.04) = 1.70198.
    // 2.48189 · 0.5 / (1.70198 · 0.4) = 1.82279; · 2 h = 3.64558 h = 3 h 38.7 min, in steps of five minutes 3 h 40 min.
    const cold = timesOf({ ...work, shop: shop(WEEK, "air 15 C, 60 % RH") });
    expect(cold.elapsed_h).toBeCloseTo(1 + 3 + 40 / 60, 5);
    // Cure: 504 h · 1.82279 = 918.69 h after 10:00 on the 8th.
    expect(cold.in_service?.slice(0, 13)).toBe("2027-04-15T16");
    expect(timesOf({ ...work, shop: shop(WEEK, "air 28 C, 30 % RH") })).toMatchObject({ elapsed_h: 3 });
  });

  test("double in ten degrees less where oil hardens", () => {
    const oil = "material oil {\nfamily oil varnish\nrecoat 24 h\ncure 10 days\nrated 21 C, 50 % RH\n}\n";
    // Coat to Monday 10:00, 48 h to Wednesday 10:00, coat to 11:00, 20 days.
    expect(
      timesOf({
        materials: oil,
        shop: shop(WEEK, "air 11 C, 50 % RH"),
        recipe: ["layer oil, takes 1 h", "wait until recoat", "layer oil, takes 1 h"],
      }),
    ).toEqual({
      hands_on_h: 2,
      elapsed_h: 50,
      finish: "2027-03-10T11:00:00",
      in_service: "2027-03-30T11:00:00",
    });
  });

  test("of wax that was buffed on do not count from it", () => {
    // Coat to 10:00, buffed to 11:00; the coat's 2 h end at 12:00.
    expect(
      timesOf({
        recipe: ["layer clear, takes 1 h", "step buff with paste_wax, takes 1 h", "wait until recoat"],
      }),
    ).toMatchObject({ elapsed_h: 3 });
  });
});

describe("without a shop or a start", () => {
  const night = ["layer clear, takes 1 h", "wait overnight", "layer clear, takes 1 h"];

  test("the longest chain, day and night; a night is 16 h", () => {
    const times = { elapsed_h: 18, finish: null, in_service: null };
    expect(timesOf({ job: [], recipe: night })).toMatchObject(times);
    expect(timesOf({ job: ["in room"], recipe: night })).toMatchObject(times);
    expect(timesOf({ job: ["start 2027-03-08 09:00"], recipe: night })).toMatchObject(times);
  });

  test("every piece at once", () => {
    expect(timesOf({ job: [], pieces: "board x 5", recipe: ["layer clear, takes 1 h"] })).toMatchObject({
      hands_on_h: 5,
      elapsed_h: 1,
    });
  });
});

describe("hands-on time", () => {
  test("by area, for every coat and piece", () => {
    // 15 min/m2 · 2 m2 = 0.5 h; 3 coats, 2 pieces.
    expect(
      timesOf({ job: [], pieces: "board x 2", recipe: ["layer clear x 3, takes 15 min/m2"] }),
    ).toMatchObject({
      hands_on_h: 3,
    });
  });

  test("a block is done one time fewer than there are coats", () => {
    // 3 · 20 min + 2 · 10 min
    expect(
      timesOf({ job: [], recipe: ["layer clear x 3, takes 20 min {", "step sand 220, takes 10 min", "}"] })
        .hands_on_h,
    ).toBeCloseTo(80 / 60, 6);
  });

  test("the tool's own table where nothing is stated", () => {
    // Dusting: 2 + 2 · 2 = 6 min, in whole five minutes 10.
    expect(timesOf({ job: [], recipe: ["step dust"] }).hands_on_h).toBeCloseTo(1 / 6, 6);
  });
});

test("midnight is the beginning of the next day", () => {
  expect(
    timesOf({ job: ["in room", "start 2027-03-07 24:00"], recipe: ["layer clear, takes 1 h"] }),
  ).toMatchObject({ elapsed_h: 10, finish: "2027-03-08T10:00:00" });
});
