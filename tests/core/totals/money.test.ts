/** What a job costs, and what it saves. */
import { describe, expect, test } from "vitest";
import { board, clear, job, onlyJob, recipe, totalsOf } from "./job-text.ts";

const SHOP = "shop room {\nlabour 18.00 per h\n}\n";
const WORK = recipe("step sand 120, takes 1 h", "step dust, takes 15 min", "layer clear x 2, takes 30 min");

describe("cost", () => {
  test("materials, labour, supplies and the pieces as bought", () => {
    const totals = onlyJob(
      clear("packs 946 mL for 28.00") +
        board("bought 60.00", "new_price 400.00") +
        SHOP +
        WORK +
        job("board x 2", "face", "in room", "supplies 18.50"),
    );
    // 2 m2 · 2 pieces · 2 coats / 10 · 1.1 = 0.88 L: one can.
    expect(totals.material_cost).toBe(28);
    // (1 h + 15 min + 2 · 30 min) · 2 pieces = 4.5 h, at 18.00.
    expect(totals.hands_on_h).toBe(4.5);
    expect(totals.labour_cost).toBe(81);
    // 28 + 81 + 18.50 + 2 · 60
    expect(totals.total_cost).toBe(247.5);
    // 2 · 400 − 247.50
    expect(totals.saving).toBe(552.5);
  });

  test("what a repair takes: its glue, its new wood, its hours, and the time in the clamps", () => {
    const totals = onlyJob(
      "material white_glue {\nfamily wood glue\npacks 250 mL for 6.00\nrecoat 1 h\n}\n" +
        board() +
        SHOP +
        recipe(
          'step glue "loose joint" with white_glue, uses 30 mL, takes 30 min',
          "wait until recoat",
          'step repair "new stretcher", takes 45 min, costs 6.00',
        ) +
        job("board x 4", "face", "in room", "supplies 2.00"),
    );
    // 30 mL · 4 pieces, as stated, without spare: one bottle.
    expect(totals.materials).toMatchObject([{ name: "white_glue", litres: 0.12 }]);
    expect(totals.material_cost).toBe(6);
    // (30 min + 45 min) · 4 pieces = 5 h, at 18.00.
    expect(totals.labour_cost).toBe(90);
    // 6 + 90 + 2 + 6.00 · 4
    expect(totals.total_cost).toBe(122);
    // Without a start the chairs wait for nobody: 30 min, 1 h in the clamps, 45 min.
    expect(totals.elapsed_h).toBe(2.25);
  });

  test("no labour or no shop: nothing is added, and its cost is not known", () => {
    const without = (shop: string, ...lines: readonly string[]) =>
      onlyJob(clear("packs 946 mL for 28.00") + board() + shop + WORK + job("board", "face", ...lines));
    for (const totals of [without(""), without("shop room {\ncrew 1\n}\n", "in room")]) {
      expect(totals).toMatchObject({ labour_cost: null, total_cost: 28, saving: null });
    }
    const free = without("shop room {\nlabour 0.00 per h\n}\n", "in room");
    expect(free).toMatchObject({ labour_cost: 0, total_cost: 28 });
  });

  test("what is not known spreads to every sum that needs it, and no further", () => {
    const totals = onlyJob(
      clear() + board("bought 60.00", "new_price 400.00") + SHOP + WORK + job("board", "face", "in room"),
    );
    // 2.25 h · 18.00
    expect(totals).toMatchObject({ material_cost: null, labour_cost: 40.5, total_cost: null, saving: null });
    expect(totals.materials[0]).toMatchObject({ litres: 0.44, containers: [], cost: null });
  });

  test("no price of a new one: no saving; it may be a loss", () => {
    const text = (...lines: readonly string[]) =>
      onlyJob(clear("packs 946 mL for 28.00") + board(...lines) + WORK + job("board", "face"));
    expect(text().saving).toBeNull();
    expect(text("new_price 20.00").saving).toBe(-8);
  });
});

describe("after another job", () => {
  const text = `${clear("packs 1 L for 10.00", "on_hand 0.1 L")}${board("bought 60.00", "new_price 400.00")}${recipe(
    "layer clear x 2",
  )}job first {
  piece board
  apply work to face
}
job second {
  piece board
  after first
  apply work to face
}
job third {
  piece board
  after second
  apply work to face
}
job fourth {
  piece board
  after third
  apply work to face
}
`;
  const [first, second, third, fourth] = totalsOf(text);

  test("its cans go on, and the piece is not bought twice", () => {
    // Each job needs 2 · 2 / 10 · 1.1 = 0.44 L. First: 0.1 on hand, one can bought, 0.66 L left.
    expect(first?.materials[0]).toMatchObject({ litres: 0.44, containers: [{ count: 1 }], cost: 10 });
    expect(first?.total_cost).toBe(70);
    // Second: 0.66 − 0.44 = 0.22 left. Third: one can bought.
    expect(second?.materials[0]).toMatchObject({ litres: 0.44, containers: [], cost: 0 });
    expect(second?.total_cost).toBe(0);
    expect(second?.saving).toBe(400);
    expect(third?.materials[0]).toMatchObject({ containers: [{ count: 1 }], cost: 10 });
    // 0.22 + 1 − 0.44 = 0.78 left: enough.
    expect(fourth?.materials[0]).toMatchObject({ containers: [], cost: 0 });
  });

  test("what the job between does not use is still there", () => {
    const gap = `${clear("packs 1 L for 10.00")}${board()}${recipe("layer clear x 2")}recipe dusting {
  step dust
}
job first {
  piece board
  apply work to face
}
job second {
  piece board
  after first
  apply dusting to face
}
job third {
  piece board
  after second
  apply work to face
}
`;
    // First buys 1 L and uses 0.44; the 0.56 are there for the third.
    expect(totalsOf(gap)[2]?.materials[0]).toMatchObject({ litres: 0.44, containers: [], cost: 0 });
  });

  test("film counts the new layers only", () => {
    expect(second?.surfaces[0]?.dry_film_um).toBe(66);
  });
});

test("budget and money come to the cent", () => {
  // 0.1 + 0.2 is 0.3, not 0.30000000000000004.
  const text = `${clear("packs 1 L for 0.10")}${board("bought 0.20")}${recipe("layer clear")}${job("board", "face")}`;
  expect(onlyJob(text).total_cost).toBe(0.3);
});
