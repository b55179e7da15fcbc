/** What bench sheets tell along with the work, and the sheets of recipes that no job uses. */
import { describe, expect, test } from "vitest";
import { job, only, outline, PLACES, STOCK, sheets, step, stepsOf, titles } from "../harness/bench-sheets.ts";
import { analyse } from "../harness/check-text.ts";
import { sampleAnalyst, sampleNames, sampleText } from "../harness/samples.ts";
import { shareOf } from "../harness/share.ts";

describe("what is told along", () => {
  test("doc comments of job, piece, surface, material and shop", () => {
    const sheet = only(`${STOCK}${PLACES}recipe work {\n  layer bench_clear\n}\n${job("in mill")}`);
    expect(sheet.docs).toEqual({ text: "For the reading room.", file: sheet.file });
    expect(sheet.pieces[0]).toMatchObject({
      title: "Loft board",
      count: 2,
      docs: { text: "From the mill's loft.", file: sheet.file },
    });
    expect(sheet.surfaces[0]).toMatchObject({
      docs: { text: "Only the side that shows.", file: sheet.file },
      substrate: "beech",
      existing: "taken as bare: nothing is stated",
      area: "2 × 2 m2 = 4 m2",
    });
    expect(sheet.shopDocs).toEqual({ text: "The stove is out for good.", file: sheet.file });
  });

  test("surfaces of several pieces are named with their piece", () => {
    const sheet = only(`piece stool "Low stool" {
  surface seat {
    shape area 1 m2
    wood  ash
  }
}
piece desk {
  surface seat {
    shape area 1 m2
    wood  ash
  }
}
recipe work {
  step dust
}
job it {
  piece stool
  piece desk x 3
  apply work to all
}
`);
    expect(sheet.procedures.map(({ title, pieces }) => `${title} ${pieces}`)).toEqual([
      "Low stool: seat 1",
      "Desk: seat 3",
    ]);
  });

  test("what an earlier job left is what is on it now", () => {
    const [, later] = sheets(`${STOCK}${PLACES}recipe work {
  layer oil, wiped off
  layer bench_clear x 3
}
job first {
  piece board
  apply work to face
}
job second {
  piece board
  after first
  apply work to face
}
`);
    expect(later!.surfaces[0]!.existing).toBe("Slow oil, Bench clear (3 coats)");
    expect(later!.facts).toContainEqual({ name: "After the job", text: "first" });
  });
});

describe("a recipe", () => {
  const text = `${STOCK}## Any clear will do.
recipe clearing(clear: material, grit: number = 220) {
  for    wood, veneer
  safety dust_mask
  step   sand grit
  step   dust, takes 15 min/m2
  layer  clear, thinned 4:1 with water
  wait   until cured
}
`;

  test("that no job goes through has a sheet without amounts and dates, with what is to be chosen", () => {
    const sheet = only(text);
    expect(sheet).toMatchObject({
      kind: "recipe",
      title: "Clearing",
      docs: { text: "Any clear will do.", file: "test.finish" },
      facts: [{ name: "For", text: "wood, veneer" }],
      choices: [
        { name: "clear", text: "a material" },
        { name: "grit", text: "220 on this sheet" },
      ],
      pieces: [],
      surfaces: [],
      days: [],
      paper: [],
    });
    expect(titles(sheet)).toEqual([
      "1 Sand with grit 220",
      "2 Take the dust off",
      "3 One coat: clear (to be chosen), by brush",
      "Wait until it has cured",
    ]);
    expect(step(sheet, 2).details).toEqual(["Takes 15 min/m2."]);
    expect(step(sheet, 3).details).toEqual(["Thinned 4:1 with water."]);
    expect(step(sheet, 4).details).toEqual(["How long depends on the material that is chosen."]);
    expect(sheet.materials.map(({ title, takes }) => title + takes)).toEqual(["Water"]);
  });

  test("that a job goes through, by apply or follow, has none of its own", () => {
    const used = `${text}recipe around {
  follow clearing(clear: bench_clear)
}
recipe alone {
  step dust
}
${PLACES}${job("", "around")}`;
    expect(sheets(used).map(({ kind, name }) => `${kind} ${name}`)).toEqual(["job boards", "recipe alone"]);
  });

  test("that follows what is not known says where", () => {
    const sheet = only("recipe outer(prepare: recipe) {\n  follow prepare\n  step dust\n}\n");
    expect(outline(sheet.procedures[0]!)).toEqual([
      "? Here the steps of “prepare” are done, which is still to be chosen or written.",
      "1",
    ]);
  });
});

test("a file without jobs and recipes has no sheet", () => {
  expect(sheets(STOCK)).toEqual([]);
  expect(analyse({}).sheets("none.finish")).toEqual([]);
});

test("no half-typed sample keeps a sheet from being put together", () => {
  for (const name of sampleNames) {
    const lines = sampleText(name).split("\n");
    const analyst = sampleAnalyst();
    for (const gone of shareOf([...lines.keys()], 41)) {
      analyst.setFile(name, lines.filter((_, i) => i !== gone).join("\n"));
      // The work of every surface is numbered without gaps, and a wait is not.
      for (const procedure of analyst
        .analysis()
        .sheets(name)
        .flatMap(({ procedures }) => procedures)) {
        const work = stepsOf(procedure).filter(({ op }) => op !== "wait");
        expect(work.map(({ number }) => number)).toEqual(work.map((_, i) => i + 1));
        expect(stepsOf(procedure).filter(({ op, number }) => op === "wait" && number !== undefined)).toEqual(
          [],
        );
      }
    }
  }
});
