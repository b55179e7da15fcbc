/** Where the outcome of a job is void no date of it is promised, and every place where one would stand says why. */
import { describe, expect, test } from "vitest";
import { SEVERITIES } from "../../server/src/core/findings.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { calendarReport } from "../../server/src/reports/calendar-report.ts";
import { coloursFor } from "../../server/src/reports/colours.ts";
import { scheduleJson, scheduleText } from "../../server/src/reports/schedule-text.ts";
import { totalsJson } from "../../server/src/reports/totals-json.ts";
import { careCards } from "../../server/src/views/care-card.ts";
import { unpromised } from "../../server/src/views/missing-inputs.ts";
import { jobDates } from "../../server/src/views/schedule/job-dates.ts";
import { keptPlanOf } from "../../server/src/views/schedule/kept-plan.ts";
import { plannedShops } from "../../server/src/views/schedule/shop-weeks.ts";
import { analyse } from "../harness/check-text.ts";
import { plan } from "../harness/planner.ts";

const PLAIN = coloursFor({ isTTY: false, env: {} });

const shopAt = (air: string): string => `shop porch {
  air   ${air}
  hours Mon to Fri 08:00 to 16:00
  currency EUR
  labour 20.00 per h
}
`;

const text = ({ air = "20 C, 50 %", surface = "wood beech", recipe = "", more = "" }): string =>
  `material satin {
  family waterborne polyurethane
  covers 10 m2/L
  limits 10 C to 30 C
  packs  1 L for 20.00
}
piece shelf {
  built 1930
  surface top {
    shape area 1 m2
    ${surface}
  }
}
${shopAt(air)}recipe clear {
  safety dust_mask, ventilate, gloves
  step   dust, takes 10 min
${recipe}  layer  satin, takes 30 min
  wait   until cured
}
job shelves "Shelves" {
  piece shelf
  in    porch
  start 2027-03-08
  apply clear to top
}
${more}`;

const WAX = text({ surface: "wood beech\n    existing paste wax" });
const COLD = text({ air: "9 C, 50 %" });
const LEAD = text({
  surface: "wood beech\n    existing alkyd paint",
  recipe: "  step   scuff 180, takes 10 min\n  step   clean with water\n  wait   overnight\n",
});

const analysisOf = (of: string) => analyse({ "t.finish": of });
const resultOf = (of: string) => analysisOf(of).jobs("t.finish")[0]!;
const whyOf = (of: string) => unpromised(resultOf(of))?.reasons;

describe("no date can be promised", () => {
  test("of a coat in a shop that is too cold for it to dry", () => {
    expect(whyOf(COLD)).toEqual(["too cold for `satin` to dry"]);
    expect(resultOf(COLD).voided!.by).toMatchObject([
      { rule: "air-outside-limits", reason: "too cold for `satin` to dry", brief: "too cold to dry" },
    ]);
  });

  test("of old paint that nobody has tested for lead", () => {
    expect(whyOf(LEAD)).toContain("test for lead first");
  });

  test("of both, and that of safety is told first", () => {
    const both = LEAD.replace("20 C, 50 %", "9 C, 50 %");
    expect(whyOf(both)).toEqual(["test for lead first", "too cold for `satin` to dry"]);
    const waxed = both.replace("existing alkyd paint", "existing alkyd paint, paste wax");
    expect(whyOf(waxed)![0]).toBe("test for lead first");
  });

  test("of a coat on wax", () => {
    expect(whyOf(WAX)).toEqual(["nothing holds on wax"]);
  });

  test("of a job that comes after one of those", () => {
    const more = `piece rail {
  surface face {
    shape area 1 m2
    wood  beech
  }
}
job next {
  piece rail
  in    porch
  start 2027-03-08
  after shelves
  apply clear to face
}
`;
    const [, next] = analysisOf(text({ surface: "wood beech\n    existing paste wax", more })).jobs(
      "t.finish",
    );
    expect(unpromised(next!)?.reasons).toEqual(["job `shelves` before it has no date"]);
  });
});

describe("a date is promised", () => {
  test("in warm air, on bare wood", () => {
    // From 08:00 10 min of dusting and 30 of coating.
    expect(resultOf(text({})).totals.last_work).toBe("2027-03-08T08:40:00");
  });

  test("where the night alone is too cold", () => {
    expect(whyOf(text({ air: "20 C, 50 %\n  night_air 8 C, 50 % RH" }))).toBeUndefined();
  });

  test("where a comment answers for the finding, and is gone with the comment", () => {
    const allowed = WAX.replace(
      "  layer  satin",
      "  # allow coat-over-wax: tried on a board\n  layer  satin",
    );
    expect(whyOf(allowed)).toBeUndefined();
    expect(resultOf(allowed).totals.last_work).not.toBeNull();
    expect(whyOf(allowed.replace(": tried on a board", ""))).toEqual(["nothing holds on wax"]);
  });

  test("once the coat is on, by the record", () => {
    const recorded = COLD.replace(
      "to top\n}",
      "to top\n  done 2027-03-08 08:10 dust\n  done 2027-03-08 08:40 coat of satin\n}",
    );
    expect(
      analysisOf(recorded)
        .findings("t.finish")
        .filter(({ severity }) => severity === "error"),
    ).toEqual([]);
    expect(whyOf(recorded)).toBeUndefined();
  });
});

describe.each([
  ["cold", COLD, "too cold for `satin` to dry", "too cold to dry"],
  ["lead", LEAD, "test for lead first", "test for lead first"],
])("%s: instead of the date the reason stands", (_, of, reason, brief) => {
  const analysis = analysisOf(of);
  const result = analysis.jobs("t.finish")[0]!;
  const plain = reason.replaceAll("`", "");

  test("above the job", () => {
    const [lens] = analysis.jobLenses("t.finish", SEVERITIES);
    expect(lens!.parts[0]!.text).toBe(`no date: ${plain}`);
    // What it costs depends on no date.
    expect(lens!.parts[1]!.text).toMatch(/EUR$/u);
  });

  test("in the tree", () => {
    const [job] = analysis.workshop(["t.finish"], SEVERITIES);
    expect(job!.detail).toMatch(new RegExp(`^no date: ${plain} · `, "u"));
    expect(job!.brief).toMatch(new RegExp(`^no date: ${brief} · .* EUR$`, "u"));
  });

  test("in the hover, once", () => {
    const card = analysis.hover("t.finish", of.indexOf("job shelves") + 5)!.markdown;
    expect(card).toContain(`- no date: ${reason}`);
    expect(card).not.toMatch(/2027/u);
  });

  test("behind the lines", () => {
    const hints = analysis.inlayHints("t.finish", { start: 0, end: of.length }, ["elapsed"]);
    expect(hints.map(({ parts }) => parts[0]!.text)).toEqual([`no date: ${brief}`]);
  });

  test("in the bench view", () => {
    const bench = analysis.bench("t.finish", "shelves")!;
    expect(bench.dates.map(({ text: told, reason: why }) => `${told}: ${why}`)).toEqual(
      bench.dates.map(() => expect.stringContaining(`no date: ${reason.replaceAll("`", "")}`)),
    );
    expect(bench.startAt).toBeUndefined();
    expect(bench.isSound).toBe(false);
  });

  test("in the plan, which has hours and no days", () => {
    const told = scheduleText([result], PLAIN, { shops: plannedShops(analysis, [result]) });
    expect(told).toContain(`No date: ${reason}`);
    expect(told).not.toMatch(/2027|Mar/u);
    const [job] = JSON.parse(scheduleJson([result])).jobs;
    expect(job).toMatchObject({ start: null, finish: null, last_work: null, full_use: null });
    expect(job.reasons.full_use).toContain(reason);
    expect(job.items.every(({ start }: { start: unknown }) => start === null)).toBe(true);
    expect(keptPlanOf([result], String)).toEqual({ jobs: [] });
  });

  test("in the totals, on the sheet and on the card", () => {
    const [job] = JSON.parse(totalsJson([result])).jobs;
    expect(job).toMatchObject({ last_work: null, full_use: null, elapsed_h: null });
    expect(job.reasons.last_work).toContain(reason);
    const [sheet] = analysis.sheets("t.finish");
    expect(sheet!.gaps).toContainEqual({ figure: "Dates", missing: expect.arrayContaining([reason]) });
    expect(sheet!.service!.date).toBeUndefined();
    expect(JSON.stringify(careCards(result, []))).not.toMatch(/\b2027\b/u);
  });

  test("in a calendar, which has nothing of it", () => {
    expect(calendarReport([result], "2027-01-01T00:00:00")).not.toContain("BEGIN:VEVENT");
  });
});

test("the wall plan of a shop leaves the job out and keeps its hours", () => {
  const more = `piece rail {
  surface face {
    shape area 1 m2
    wood  beech
  }
}
recipe plain {
  step dust, takes 2 h
}
job rails {
  piece rail
  in    porch
  start 2027-03-08
  apply plain to face
}
`;
  const analysis = analysisOf(text({ surface: "wood beech\n    existing paste wax", more }));
  const results = analysis.jobs("t.finish");
  const told = scheduleText(results, PLAIN, { shops: plannedShops(analysis, results) });
  expect(told).toContain("No date: nothing holds on wax.");
  const weeks = told.split("\n").filter((line) => line.startsWith("    "));
  expect(weeks.join("\n")).toContain("rails: face");
  expect(weeks.join("\n")).not.toContain("shelves");
  expect(told).toMatch(/Last work of|Last work/u);
});

test("the bench view knows the films that never cure: the one in the cold, and the oil under water", () => {
  const neverOf = (of: string) =>
    analysisOf(of)
      .bench("t.finish", "shelves")!
      .surfaces.flatMap(({ coats }) => coats.map(({ never }) => never));
  expect(neverOf(COLD)).toEqual(["too cold to dry"]);
  expect(neverOf(text({}))).toEqual([undefined]);
  const oiled = text({ recipe: "  layer  drying_oil, wiped off\n  wait   12 h\n" });
  expect(neverOf(oiled)).toEqual(["the oil below has not cured", "the oil below has not cured"]);
  expect(analysisOf(text({})).bench("t.finish", "shelves")!.isSound).toBe(true);
});

test("of many reasons the first three are told, and how many there are besides", () => {
  const names = ["a", "b", "c", "d", "e"];
  const materials = names.map(
    (name) => `material ${name} {\n  family waterborne polyurethane\n  limits 10 C to 30 C\n}\n`,
  );
  const layers = names.map((name) => `  layer  ${name}\n  wait   overnight\n`).join("");
  expect(whyOf(`${materials.join("")}${text({ air: "9 C, 50 %", recipe: layers })}`)).toEqual([
    "too cold for `a` to dry",
    "too cold for `b` to dry",
    "too cold for `c` to dry",
    "3 more",
  ]);
});

describe("a rule that the project has switched off", () => {
  const analysisOff = (of: string, ...rules: readonly string[]) => {
    const config = { rules: Object.fromEntries(rules.map((rule) => [rule, "off" as const])) };
    const analyst = createAnalyst({ plan, resolve: (specifier) => specifier, config: () => config });
    analyst.setFile("t.finish", of);
    return analyst.analysis();
  };
  const OFF = "a rule that is off says: test for lead first";

  test("is answered for: the job has its dates", () => {
    const result = analysisOff(LEAD, "lead-not-tested").jobs("t.finish")[0]!;
    expect(unpromised(result)).toBeUndefined();
    expect(result.unchecked).toMatchObject([{ rule: "lead-not-tested" }]);
    // Dusted, scuffed and cleaned on Monday, which dries overnight; on Tuesday from 08:00 30 min of coating.
    expect(result.totals.last_work).toBe("2027-03-09T08:30:00");
  });

  test("is named wherever a date stands", () => {
    const analysis = analysisOff(LEAD, "lead-not-tested");
    const [result] = analysis.jobs("t.finish");
    expect(jobDates(result!).map(({ reason }) => reason.startsWith(`${OFF}; `))).toEqual([true, true, true]);
    expect(analysis.jobLenses("t.finish", SEVERITIES)[0]!.parts[0]!.text).toContain(`; ${OFF}`);
    expect(analysis.workshop(["t.finish"], SEVERITIES)[0]!.brief).toContain(OFF);
    expect(analysis.hover("t.finish", LEAD.indexOf("job shelves") + 5)!.markdown).toContain(OFF);
    for (const { reason } of analysis.bench("t.finish", "shelves")!.dates) expect(reason).toContain(OFF);
    expect(analysis.sheets("t.finish")[0]!.facts.filter(({ text: told }) => told.includes(OFF))).toHaveLength(
      3,
    );
    expect(scheduleText([result!], PLAIN, { shops: plannedShops(analysis, [result!]) })).toContain(OFF);
    expect(JSON.parse(totalsJson([result!])).jobs[0].reasons.last_work).toContain(OFF);
    expect(calendarReport([result!], "2027-01-01T00:00:00").replaceAll(/\r\n /gu, "")).toContain(
      "a rule that is off says",
    );
  });

  test("may be switched off and on again while the text is open", () => {
    let level: "off" | "error" = "error";
    const analyst = createAnalyst({
      plan,
      resolve: (specifier) => specifier,
      config: () => ({ rules: { "lead-not-tested": level } }),
    });
    analyst.setFile("t.finish", LEAD);
    const toldOf = () => {
      const analysis = analyst.analysis();
      for (const _ of analysis.steps("t.finish"));
      return analysis.jobLenses("t.finish", SEVERITIES)[0]!.parts[0]!.text;
    };
    const open = toldOf();
    expect(open).toBe("no date: test for lead first");
    level = "off";
    analyst.settingsChanged();
    expect(toldOf()).toContain(`last work 9 Mar, `);
    level = "error";
    analyst.settingsChanged();
    expect(toldOf()).toBe(open);
  });

  test("answers for no other rule", () => {
    const cold = LEAD.replace("20 C, 50 %", "9 C, 50 %");
    const result = analysisOff(cold, "lead-not-tested").jobs("t.finish")[0]!;
    expect(unpromised(result)?.reasons).toEqual(["too cold for `satin` to dry"]);
    const both = analysisOff(cold, "lead-not-tested", "air-outside-limits").jobs("t.finish")[0]!;
    expect(unpromised(both)).toBeUndefined();
    expect(jobDates(both)[0]!.reason).toMatch(
      /^rules that are off say: test for lead first, too cold to dry; /u,
    );
  });

  test("says nothing where it would find nothing", () => {
    expect(analysisOff(text({}), "lead-not-tested").jobs("t.finish")[0]!.unchecked).toBeUndefined();
  });
});
