/** Bench sheets as data: a text in, and what stands on its sheets. Sums are worked by hand beside what is expected. */
import { describe, expect, test } from "vitest";
import { sheetDocument } from "../../server/src/reports/sheet-document.ts";
import { sheetsHtml } from "../../server/src/reports/sheet-html.ts";
import { sheetsMarkdown } from "../../server/src/reports/sheet-markdown.ts";
import { sheetsText } from "../../server/src/reports/sheet-text.ts";
import type { Sheet } from "../../server/src/views/sheet/model.ts";
import { job, only, outline, PLACES, STOCK, sheets, step, titles } from "../harness/bench-sheets.ts";

describe("a coat", () => {
  const text = `${STOCK}${PLACES}recipe work {
  safety dust_mask, gloves, ventilate, no_ignition, eye_protection
  layer  bench_clear x 2, by pad, thinned 4:1 with water, tinted 10 % with umber {
    wait until recoat
  }
}
${job("")}`;

  test("has its number, its way on, and the parts to mix, water included", () => {
    const sheet = only(text);
    expect(titles(sheet)).toEqual([
      "1 Coat 1 of 2: Bench clear, by pad",
      "Wait until the next coat can go on",
      "2 Coat 2 of 2: Bench clear, by pad",
    ]);
    // 2 m2 × 2 pieces / 10 m2/L × 1.1 = 0.44 L; tint 10 % = 44 mL; the rest 0.396 L in 4:1 = 0.3168 + 0.0792 L.
    expect(step(sheet, 1).details[0]).toBe(
      "Mix 0.44 L for both pieces: 0.32 L Bench clear, 79 mL water and 44 mL Umber dye (thinned 4:1 with water, tinted 10 % with Umber dye).",
    );
  });

  test("has the film wet and dry, and what a gauge shows over the coats below", () => {
    const sheet = only(text);
    // Wet 1000/10 = 100 um. Solids 40 % × 4/5 = 32 %, untinted 90 % of it = 28.8 %: dry 28.8 um, twice 57.6 um.
    expect(step(sheet, 1).details[1]).toBe("Film: wet 100 um, dry 29 um.");
    expect(step(sheet, 3).details[1]).toBe("Film: wet 100 um, dry 29 um, 58 um with the coats below.");
    expect(sheet.surfaces[0]!.film).toBe("58 um");
  });

  test("takes what the materials table has, with tins by their labels", () => {
    const row = (title: string) => only(text).materials.find((material) => material.title === title)!;
    // 2 coats × 0.3168 L = 0.6336 L; less 0.1 L on hand 0.5336 L: 3 × 250 mL for 24.00 is dearer than 1 L for 20.00.
    expect(row("Bench clear")).toMatchObject({
      name: "bench_clear",
      sort: "waterborne polyurethane, clear",
      takes: "0.63 L",
      onHand: "0.1 L",
      open: "1 × 1 L",
      docs: { text: "Level it with long strokes.", file: "test.finish" },
    });
    // 2 × 44 mL
    expect(row("Umber dye")).toMatchObject({ takes: "88 mL", open: "not known" });
    expect(row("Water")).toMatchObject({ takes: "as needed", open: "" });
    expect(row("Bench clear").notes[0]).toBe(
      "Label (times at 21 C and 50 % RH): covers 10 m2/L; touch-dry after 1 h; next coat after 2 h, without sanding until 1 day; cured after 10 days; put on at 10 C to 30 C, at most 80 % RH.",
    );
  });

  test("of two parts has both, and how long the mix can be used", () => {
    const sheet = only(`material part_a "Part A" {
  family   conversion varnish
  covers   10 m2/L
  mix      10:1 with part_b
  pot_life 4 h
}
material part_b "Part B" {
  family conversion varnish
}
${PLACES}recipe work {
  layer part_a, by hvlp
}
${job("spare 0 %")}`);
    expect(titles(sheet)).toEqual(["1 One coat: Part A, by HVLP spray"]);
    // 2 × 2 m2 / 10 / 0.65 = 0.61538 L: 10/11 and 1/11 of it.
    expect(step(sheet, 1).details.slice(0, 2)).toEqual([
      "Mix 0.62 L for both pieces: 0.56 L Part A and 56 mL Part B (mixed 10:1 with Part B).",
      "Use the mix within 4 h (pot life).",
    ]);
  });
});

describe("steps", () => {
  test("stand in their order and in whole phrases, notes and heads of recipes between them", () => {
    const sheet = only(`${STOCK}${PLACES}## Not on a damp day.
recipe prepare "Making ready" {
  step sand 80, 120, 150
  step dust
}
recipe work {
  safety dust_mask, gloves, ventilate, no_ignition
  note   "Mind the brass."
  step   test "stripper in a corner"
  step   clean with soap
  step   fill with wood_filler, uses 50 mL
  wait   overnight
  follow prepare
  step   mask "brass plate"
  layer  umber, wiped off after 15 min, by cloth
  step   unmask
  step   sand wet 400
}
${job("")}`);
    expect(titles(sheet)).toEqual([
      "1 Test: stripper in a corner",
      "2 Clean with soap",
      "3 Fill with wood filler",
      "Wait overnight",
      "4 Sand with grit 80, then 120, then 150",
      "5 Take the dust off",
      "6 Mask: brass plate",
      "7 One coat: Umber dye, by cloth, wiped off after 15 min",
      "8 Take the masking off",
      "9 Sand wet with grit 400",
    ]);
    expect(outline(sheet.procedures[0]!)).toEqual([
      "# Work",
      "(Mind the brass.)",
      "1",
      "2",
      "3",
      "wait",
      "# Making ready: Not on a damp day.",
      "4",
      "5",
      "6",
      "7",
      "8",
      "9",
    ]);
    // `fill` takes what it says, for each of two pieces, without spare.
    expect(step(sheet, 3).details[0]).toBe("0.1 L for both pieces.");
  });

  test("of several applied recipes are numbered through", () => {
    const sheet = only(`${STOCK}${PLACES}recipe first {
  step dust
}
recipe second {
  step dust
  step buff
}
job boards {
  piece board
  apply first to face
  apply second to face
}
`);
    expect(outline(sheet.procedures[0]!)).toEqual(["# First", "1", "# Second", "2", "3"]);
  });
});

describe("waits", () => {
  const text = `${STOCK}${PLACES}recipe work {
  safety wet_rags, ventilate, no_ignition, gloves
  layer  oil x 2, wiped off {
    wait until recoat
  }
  wait   24 h
  wait   until cured
}
`;

  test("are as long as this shop's air makes them, with the reason once", () => {
    const sheet = only(`${text}${job("in mill")}`);
    // Oil hardens half as fast for every 10 C less: 11 C instead of 21 C is × 2.
    expect(step(sheet, 2).details).toEqual([
      "Slow oil: 12 h by its label; in this shop's air × 2 = 1 day.",
      "It hardens by reaction, twice as slowly for every 10 C less: 11 C in the shop, 21 C on the label.",
    ]);
    expect(step(sheet, 4).title).toBe("Wait 1 day");
    expect(step(sheet, 4).details).toEqual([
      "Slow oil is ready for a coat after 12 h × 2 = 1 day, cured after 5 days × 2 = 10 days in this shop's air.",
    ]);
    expect(step(sheet, 5).details).toEqual([
      "Slow oil: 5 days by its label; in this shop's air × 2 = 10 days.",
    ]);
  });

  test("without a shop are the label's, and the sheet says so", () => {
    const sheet = only(`${text}${job("")}`);
    expect(step(sheet, 2).details).toEqual(["Slow oil: 12 h by its label."]);
    expect(sheet.gaps).toContainEqual({
      figure: "Waits in this shop's air (the labels' times stand)",
      missing: ["no `in` (the shop)"],
    });
  });

  test("name the latest moment for a coat that goes on without sanding, and only then", () => {
    const recipe = (between: string): string => `${STOCK}${PLACES}recipe work {
  safety dust_mask
  layer  bench_clear x 2 {
    wait until recoat${between}
  }
}
${job("")}`;
    const window = "The next coat goes on within 1 day of this one; after that, sand first.";
    expect(step(only(recipe("")), 2).details).toContain(window);
    expect(step(only(recipe("\n    step sand 220\n    step dust")), 2).details).not.toContain(window);
  });
});

describe("safety", () => {
  test("work on a veneer that no coat covers is named on its line and once at the head, with the thinnest", () => {
    const text = `${STOCK}${PLACES.replace(/wood +[^\n]*/u, "wood  oak, veneer 0.6 mm")}recipe work {
  step   sand 150
  layer  bench_clear x 2, between sand 220
}
${job("")}`;
    const sheet = only(text);
    const lines = sheet.bench.groups.flatMap(({ rows }) =>
      rows.map(({ title, dangers }) => [title, dangers]),
    );
    expect(lines.filter(([, dangers]) => dangers!.includes("thin veneer"))).toEqual([
      ["Sand with grit 150", ["thin veneer"]],
    ]);
    expect(sheet.duties.filter(({ word }) => word === undefined).map(({ label }) => label)).toEqual([
      "Thin veneer, 0.6 mm",
    ]);
  });

  test("duties stand once at the head, with the surfaces on whose work they hold, and never with ranges of steps", () => {
    const text = `${STOCK}${PLACES.replace(
      "shop mill",
      "piece tray {\n  surface base {\n    shape area 1 m2\n    wood  beech\n  }\n}\nshop mill",
    )}recipe work {
  step   dust
  safety dust_mask
  step   sand 150
  step   dust
  layer  bench_clear x 2 {
    safety ventilate 6 air changes/h
    wait until recoat
    step sand 220
  }
  step   buff
}
recipe dusted {
  step dust
}
${job("").replace("  apply", "  piece tray\n  apply dusted to base\n  apply")}`;
    const sheet = only(text);
    expect(sheet.duties.map(({ label, surfaces }) => [label, ...surfaces])).toEqual([
      ["Dust mask", "Loft board: face"],
      ["Fumes, 6 air changes/h", "Loft board: face"],
    ]);
    expect(sheet.duties.every(({ doc, defer }) => doc !== "" && defer !== "")).toBe(true);
    const made = [sheetDocument(sheet, "test.finish", () => "")];
    const forms = [sheetsText(made), sheetsMarkdown(made), sheetsHtml(made)].map((form) =>
      form.replaceAll(/<\/?strong>|\*\*/gu, "").replaceAll(/\s+/gu, " "),
    );
    for (const [i, form] of forms.entries()) {
      expect(form).toContain("Each line of work has words of these");
      // The lines of an HTML sheet say of each surface what it brings.
      const where = i < 2 ? " (Loft board: face)" : "";
      expect(form).toContain(
        `Dust mask${where}: Wear a fitted particle filter (N95 or better) while dust flies.`,
      );
      expect(form).not.toMatch(/(?:for|,) steps? \d+ to \d+(?: \(|\)|:)|from here to the end/u);
    }
    // No range of steps stands in the text at all but in the days, of which this job has none.
    expect(forms[0]).not.toMatch(/steps \d+ to \d+/u);
  });

  test("what a step brings and the recipe does not state is on the sheet as well", () => {
    const sheet = only(`${STOCK}${PLACES}recipe work {
  step  sand 150
  step  dust
  layer oil, wiped off
}
${job("")}`);
    const missing = sheet.duties.map(({ label, stated }) => [label, stated]);
    expect(missing).toContainEqual(["Dust mask", false]);
    expect(missing).toContainEqual(["Oily rags catch fire", false]);
    expect(step(sheet, 3).cautions).toEqual([
      "Lay oily rags in water in a closed metal can, or spread them flat outdoors, at once and never in a heap.",
    ]);
    expect(sheet.duties.filter(({ stated }) => stated)).toEqual([]);
  });

  test("a line has what its step brings, what is in force for work of its kind, and all of it where that is not known", () => {
    const sheet = only(`${STOCK}${PLACES}recipe work {
  safety gloves, eye_protection, dust_mask, ventilate, no_ignition, wet_rags, keep_out
  step   test "stripper in a corner"
  step   clean with soap
  step   sand 150
  layer  oil, wiped off
}
${job("")}`);
    const lines = [1, 2, 3, 4].map((number) => {
      const { wear, dangers } = step(sheet, number);
      return [wear, dangers];
    });
    expect(lines).toEqual([
      [
        ["dust mask", "gloves", "goggles"],
        ["fumes", "fire", "oily rags", "others in the room"],
      ],
      [["gloves", "goggles"], []],
      [["dust mask"], []],
      [
        ["gloves", "goggles"],
        ["fumes", "fire", "oily rags"],
      ],
    ]);
  });

  test("a stripper has three parts with their times, by its line or by its label", () => {
    const strip = (more: string, fields = "", next = "clean with water"): Sheet =>
      only(`${STOCK}${PLACES}recipe work {
  safety gloves, eye_protection, ventilate, vapour_respirator, dust_mask
  step   strip with paint_stripper, takes 1 h${more}
  step   ${next}, takes 10 min
}
${job(fields).replace("board x 2", "board")}`);
    const lines = (sheet: Sheet): readonly string[] | undefined =>
      sheet.bench.groups[0]!.rows[0]!.strip?.lines;
    expect(lines(strip(""))).toEqual([
      "Lay it on.",
      "Don’t touch it until __:__, as long as its label says.",
      "Take it off.",
    ]);
    expect(lines(strip(", leave 20 min"))).toEqual([
      "Lay it on.",
      "Don’t touch it for 20 min.",
      "Take it off.",
    ]);
    const planned = strip(", leave 20 min", "in mill\n  start 2027-03-08 09:00");
    // 2 m2 take 5 + 2 × 10 = 25 min to brush and 10 + 2 × 40 = 90 min to strip: 25/90 of the hour are 16.7 min, so 20 min.
    // Then 20 min of rest, and the other 40 min of hands.
    expect(lines(planned)).toEqual([
      "Lay it on: 09:00 to 09:20.",
      "Don’t touch it until 09:40 (20 min).",
      "Take it off: 09:40 to 10:20.",
    ]);
    const [row, next] = planned.bench.groups[0]!.rows;
    expect([row!.startAt, row!.endAt, next!.startAt]).toEqual(
      ["09:00", "10:20", "10:20"].map((time) => `2027-03-08T${time}:00`),
    );
    expect(row!.then).toBeUndefined();
    // The time for which it is left on is no step of its own, on any form.
    expect(titles(planned).map((title) => title.replace(/^\d+ /u, ""))).toEqual([
      "Strip the old finish with paint stripper",
      "Clean with water",
    ]);
    const text = sheetsText([sheetDocument(planned, "test.finish", () => "")]);
    expect(text).toMatch(
      /Lay it on: 09:00 to 09:20\.\n\s+Don’t touch it until 09:40 \(20 min\)\.\n\s+Take it off: 09:40/u,
    );
    expect(text).toContain("Mon 8 Mar 09:00 to 10:20");
    // Where it is scraped off, that is the next step, and the wait before it stays one.
    const scraped = strip(", leave 20 min", "in mill\n  start 2027-03-08 09:00", "scrape");
    expect(lines(scraped)).toEqual([
      "Lay it on.",
      "Don’t touch it for 20 min.",
      "The next step takes it off.",
    ]);
    expect(scraped.bench.groups[0]!.rows[0]!.then).toMatchObject({ at: "2027-03-08T10:20:00" });
  });

  test("old paint is named unless the law of the country spoke before it, and so is a laboratory's result", () => {
    const painted = (built: number, lead = "", shop = ""): Sheet =>
      only(`piece chest {
  built ${built}
  surface front {
    shape    area 1 m2
    wood     pine
    existing alkyd paint
${lead}  }
}
shop loft {
${shop}}
recipe work {
  safety lead_test, dust_mask
  step   scuff 180
  step   dust
}
job it {
  piece chest
  in    loft
  apply work to front
}
`);
    const cautionsOf = (...of: Parameters<typeof painted>): readonly string[] =>
      painted(...of).pieces[0]!.cautions;
    expect(cautionsOf(1936)[0]).toMatch(/^Built 1936, .* may hold lead/u);
    expect(cautionsOf(1990)[0]).toMatch(/no `country`.* may hold lead/u);
    expect(cautionsOf(1990, "", "  country US\n")).toEqual([]);
    // Nobody is told to test what a laboratory has tested.
    const tested = painted(1936, "    lead none_found by laboratory 2026-11-03\n");
    expect(painted(1936).duties.map(({ label }) => label)).toContain("Lead in old paint");
    expect(step(painted(1936), 1).dangers).toEqual(["lead in old paint"]);
    expect(tested.duties.map(({ label }) => label)).toEqual(["Dust mask"]);
    expect(step(tested, 1).dangers).toEqual([]);
    expect(cautionsOf(1936, "    lead none_found by laboratory 2026-11-03\n")).toEqual([
      "A laboratory found no lead on Tue 3 Nov 2026; the dust and the chips must still not be breathed in or eaten.",
    ]);
  });
});

describe("findings", () => {
  const recipes = `recipe strip_it {
  for    wood
  safety gloves, eye_protection, ventilate, vapour_respirator
  step   strip with paint_stripper
  step   clean with water
}
`;
  const chest = (apply: string): string => `piece chest {
  built 1936
  surface front {
    shape    area 1 m2
    wood     pine
    existing alkyd paint
  }
  surface lid {
    shape    area 1 m2
    wood     pine
    existing bare
  }
}
job it {
  piece chest
  ${apply}
}
`;

  test("that stand open are on the sheet and at their step, and only on the surface that they concern", () => {
    const sheet = only(`${recipes}${chest("apply strip_it to all")}`);
    const [lead] = sheet.findings;
    expect(lead).toMatchObject({ number: 1, rule: "lead-not-tested", severity: "error" });
    expect(sheet.procedures.map((_, i) => step(sheet, 1, i).findings)).toEqual([[1], []]);
  });

  test("on the line that leads to a recipe of another file are at the recipe's step", () => {
    const sheet = only(`use "recipes.finish"\n${chest("apply strip_it to front")}`, {
      "recipes.finish": recipes,
    });
    expect(sheet.findings.map(({ rule }) => rule)).toEqual(["lead-not-tested"]);
    expect(step(sheet, 1).findings).toEqual([1]);
  });

  test("of another job, of what is not used, and about unused names are left to others", () => {
    const two = `${recipes}${chest("apply strip_it to front")}recipe spare {
  step sand 40, 220
}
job other {
  piece chest
  apply strip_it to lid
}
`;
    const [it, other, spare] = sheets(two);
    expect(it!.findings.map(({ rule }) => rule)).toEqual(["lead-not-tested"]);
    expect(other!.findings).toEqual([]);
    expect(spare!.findings.map(({ rule }) => rule).toSorted()).toEqual(["grit-jump", "no-dust-mask"]);
  });

  test("of used files and of lines outside all declarations are not lost", () => {
    const text = `use "gone.finish"\nuse "stock.finish"\nnonsense here\n${PLACES}recipe work {\n  layer thick\n}\n${job("")}`;
    const stock = "material thick {\n  family waterborne polyurethane\n  covers 3 h\n}\n";
    const rules = only(text, { "stock.finish": stock }).findings.map(({ rule, at }) => `${at.file} ${rule}`);
    expect(rules).toContain("test.finish use-not-found");
    expect(rules).toContain("test.finish syntax");
    expect(rules).toContain("stock.finish wrong-unit");
  });
});

describe("dates", () => {
  const text = `${STOCK}${PLACES.replace("11 C", "21 C")}recipe work {
  safety dust_mask
  step   dust, takes 30 min
  layer  bench_clear x 2, takes 30 min {
    wait until recoat
  }
}
`;
  const sheet = only(`${text}${job("in mill\n  start 2027-03-08 09:00\n  ready 2027-04-01")}`);

  test("of every step come from the plan, in whole sessions", () => {
    // One pair of hands: dust both from 09:00 to 10:00, coat piece 1 to 10:30 and piece 2 to 11:00. Piece 1 is dry 2 h
    // after 10:30, piece 2 at 13:00, when piece 1 has its second coat: from 12:30 to 13:30. Dusting and coating each
    // piece at a time ends no earlier: coats at 10:00 and 11:00, and piece 2 is dry at 13:00 as well.
    const both = (from: string, first: string, to: string): object[] => [
      {
        startAt: `2027-03-08T${from}:00`,
        endAt: `2027-03-08T${to}:00`,
        firstEndAt: `2027-03-08T${first}:00`,
        firstPiece: 1,
        pieces: [1, 2],
      },
    ];
    expect([1, 2, 4].map((number) => step(sheet, number).planned)).toEqual([
      both("09:00", "09:30", "10:00"),
      both("10:00", "10:30", "11:00"),
      both("12:30", "13:00", "13:30"),
    ]);
    // The list says when the first piece is free and when the last.
    const rows = sheet.bench.groups.flatMap((group) => group.rows);
    expect(rows.find(({ startAt }) => startAt === "2027-03-08T10:00:00")?.then).toMatchObject({
      firstAt: "2027-03-08T12:30:00",
      firstPiece: 1,
      at: "2027-03-08T13:00:00",
    });
    // Six times 30 min.
    expect(sheet.facts).toContainEqual({ name: "Hands-on", text: "3 h" });
  });

  test("of the days put what follows without a wait on one line", () => {
    expect(sheet.days.map(({ day }) => day)).toEqual(["Mon 8 Mar 2027"]);
    const numbers = sheet.days[0]!.tasks.filter(({ where }) => where === "Face, piece 1").map(
      ({ steps }) => steps,
    );
    expect(numbers.at(-1)).toBe("3");
    expect(numbers.join(" ")).toMatch(/^(1 to 2|1 2) 3$/u);
  });

  test("of more pieces than one follows singly are one line a day", () => {
    const many = only(
      `${text}${job("in mill\n  start 2027-03-08 09:00").replace("board x 2", "board x 20")}`,
    );
    // 20 × 3 × 30 min are 30 h in days of 8 h: four days, on the first of which the work begins with the opening.
    expect(many.days.map(({ tasks }) => tasks.length)).toEqual(many.days.map(() => 1));
    expect(many.days.length).toBeGreaterThanOrEqual(4);
    expect(many.days[0]!.tasks[0]).toMatchObject({ where: "Face, 20 pieces" });
    expect(many.days[0]!.tasks[0]!.time).toMatch(/^09:00 to /u);
  });

  test("into service count from the last coat, and say whom it is for", () => {
    // 10 days by the label, in the label's air.
    expect(sheet.service.cures).toEqual([
      { name: "Face", text: "10 days after the last coat of Bench clear (by its label)" },
    ]);
    expect(sheet.service.date).toMatch(/^Thu 18 Mar 2027 /u);
    expect(sheet.service.cautions[0]).toMatch(/^Loft board is for children\. /u);
  });

  test("that are not known are named with what is missing, and steps have their hours instead", () => {
    const undated = only(`${text}${job("")}`);
    expect(undated.days).toEqual([]);
    expect(step(undated, 1).planned).toEqual([]);
    expect(step(undated, 1).details).toEqual(["Takes 30 min for each piece."]);
    expect(undated.gaps).toContainEqual({ figure: "Dates", missing: ["no `in` (the shop)", "no `start`"] });
  });
});
