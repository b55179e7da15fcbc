/** Areas, litres, containers and fumes of a job, each worked by hand. */
import { describe, expect, test } from "vitest";
import { board, clear, job, litresOf, onlyJob, recipe, TABLES, totalsOf } from "./job-text.ts";

describe("litres of a layer", () => {
  const tables = (layer: string, materials = clear(), ...lines: readonly string[]) =>
    onlyJob(materials + TABLES + recipe(layer) + job("table x 2", "top", ...lines));

  test("two table tops, three coats, a tenth spare", () => {
    const totals = tables("layer clear x 3");
    // 1.782 m2 each, 3.564 m2 both.
    expect(totals.area_m2).toBe(3.564);
    expect(totals.surfaces).toMatchObject([{ name: "top", area_m2: 3.564 }]);
    // 1.782 · 2 · 3 / 10 = 1.0692; · 1.1 = 1.17612
    expect(litresOf(totals)).toEqual({ clear: 1.17612 });
  });

  test("a stated spare, and none", () => {
    // 1.0692 · 1.25 = 1.3365
    expect(litresOf(tables("layer clear x 3", clear(), "spare 25 %"))).toEqual({ clear: 1.3365 });
    expect(litresOf(tables("layer clear x 3", clear(), "spare 0 %"))).toEqual({ clear: 1.0692 });
  });

  test("sprayed, the rest is lost in the air", () => {
    // 1.17612 / 0.65 = 1.809415…; 1.17612 / 0.5 = 2.35224
    expect(litresOf(tables("layer clear x 3, by hvlp"))).toEqual({ clear: 1.809415 });
    expect(litresOf(tables("layer clear x 3, by airless"))).toEqual({ clear: 2.35224 });
  });

  test("thinned: a / (a + b) of the litres, and the rest of the thinner", () => {
    const spirits = "material spirits {\nfamily mineral spirits\n}\n";
    const varnish = "material varnish {\nfamily oil varnish\ncovers 10 m2/L\n}\n";
    // Of 1.17612: 4/5 = 0.940896, 1/5 = 0.235224.
    expect(litresOf(tables("layer varnish x 3, thinned 4:1 with spirits", varnish + spirits))).toEqual({
      varnish: 0.940896,
      spirits: 0.235224,
    });
  });

  test("tinted: P % of the litres first, what is left is divided", () => {
    const others = "material tint {\nfamily dye stain\n}\nmaterial tap {\nfamily water\n}\n";
    // Of 1.17612: 5 % = 0.058806; left 1.117314, of it 9/10 = 1.0055826 and 1/10 = 0.1117314.
    expect(
      litresOf(tables("layer clear x 3, tinted 5 % with tint, thinned 9:1 with tap", clear() + others)),
    ).toEqual({ clear: 1.005583, tap: 0.111731, tint: 0.058806 });
  });

  test("the two parts of a mixed material", () => {
    const two = `material two_part {
  family conversion varnish
  covers 10 m2/L
  mix    10:1 with hardener
}
material hardener {
  family acetone
}
`;
    // Of 1.17612: 10/11 = 1.0692, 1/11 = 0.10692.
    expect(litresOf(tables("layer two_part x 3", two))).toEqual({ two_part: 1.0692, hardener: 0.10692 });
  });

  describe("two parts by weight", () => {
    const two = (density: string, ofHardener: string): string => `material two_part {
  family conversion varnish
  covers 10 m2/L
  ${density}
  mix    4:1 by weight with hardener
}
material hardener {
  family acetone
  ${ofHardener}
}
`;

    test("are divided by their densities", () => {
      // 4 kg / 1.2 kg/L = 3.3333 L, 1 kg / 1.0 kg/L = 1 L; of 1.17612: 3.3333/4.3333 = 0.904708, 1/4.3333 = 0.271412.
      expect(litresOf(tables("layer two_part x 3", two("density 1.2 kg/L", "density 1.0 kg/L")))).toEqual({
        two_part: 0.904708,
        hardener: 0.271412,
      });
    });

    test.each([
      ["density 1.2 kg/L", ""],
      ["", "density 1.0 kg/L"],
      ["", ""],
    ])("are not known without both densities: %j, %j", (density, ofHardener) => {
      expect(litresOf(tables("layer two_part x 3", two(density, ofHardener)))).toEqual({
        two_part: null,
        hardener: null,
      });
    });
  });

  test("by wet film in place of the label's rate", () => {
    // 1.782 · 2 · 0.12 L/m2 · 1.1 = 0.470448
    expect(litresOf(tables("layer clear, wet 120 um"))).toEqual({ clear: 0.470448 });
  });

  test("a family's rate serves where the label has none", () => {
    // Waterborne polyurethane: 10 m2/L. 3.564 / 10 · 1.1 = 0.39204
    expect(litresOf(tables("layer waterborne_polyurethane", ""))).toEqual({
      waterborne_polyurethane: 0.39204,
    });
  });

  test("a rate by weight, with the density", () => {
    const heavy = "material heavy {\nfamily acrylic paint\ndensity 1.25 kg/L\ncovers 125 g/m2\n}\n";
    // 1250 g/L / 125 g/m2 = 10 m2/L
    expect(litresOf(tables("layer heavy x 3", heavy))).toEqual({ heavy: 1.17612 });
  });
});

describe("litres of a step", () => {
  const boards = (step: string, materials: string) =>
    onlyJob(materials + board() + recipe(step) + job("board x 3", "face"));

  test("where the material states how far it goes", () => {
    const spirits = "material spirits {\nfamily mineral spirits\ncovers 12 m2/L\n}\n";
    // 2 · 3 / 12 · 1.1 = 0.55
    expect(litresOf(boards("step dewax with spirits", spirits))).toEqual({ spirits: 0.55 });
  });

  test("nothing where it does not, though the family has a rate", () => {
    expect(litresOf(boards("step dewax with mineral_spirits", ""))).toEqual({});
    expect(litresOf(boards("step buff with paste_wax", ""))).toEqual({});
  });

  test("a filling takes what the line says, for each piece and without spare", () => {
    const putty = "material putty {\nfamily wood filler\ncovers 5 m2/L\n}\n";
    // 50 mL · 3
    expect(litresOf(boards("step fill with putty, uses 50 mL", putty))).toEqual({ putty: 0.15 });
    expect(litresOf(boards("step fill with putty", putty))).toEqual({});
  });

  test("a filling by weight", () => {
    const putty = "material putty {\nfamily wood filler\ndensity 1.5 kg/L\n}\n";
    // 75 g / 1500 g/L = 0.05 L · 3
    expect(litresOf(boards("step fill with putty, uses 75 g", putty))).toEqual({ putty: 0.15 });
  });

  test("soap and water are not listed, a material of one's own is", () => {
    expect(litresOf(boards("step clean with soap", ""))).toEqual({});
    expect(litresOf(boards("step clean with water", ""))).toEqual({});
    const own = "material wash {\nfamily cleaner\ncovers 20 m2/L\n}\n";
    // 6 / 20 · 1.1 = 0.33
    expect(litresOf(boards("step clean with wash", own))).toEqual({ wash: 0.33 });
  });
});

describe("containers", () => {
  const tables = (...lines: readonly string[]) =>
    onlyJob(clear(...lines) + TABLES + recipe("layer clear x 3") + job("table x 2", "top"));

  test("the cheapest set that covers the need", () => {
    // 1.17612 L: two quarts hold 1.892 L for 56.00; a gallon costs 84.00.
    expect(tables("packs 946 mL for 28.00, 3785 mL for 84.00").materials).toEqual([
      {
        name: "clear",
        litres: 1.17612,
        containers: [{ litres: 0.946, count: 2, price: 28 }],
        cost: 56,
      },
    ]);
  });

  test("less what is on hand", () => {
    // 1.17612 − 0.25 = 0.92612: one quart.
    expect(tables("packs 946 mL for 28.00", "on_hand 0.25 L").materials[0]).toMatchObject({
      litres: 1.17612,
      containers: [{ litres: 0.946, count: 1 }],
      cost: 28,
    });
    expect(tables("packs 946 mL for 28.00", "on_hand 1.2 L").materials[0]).toMatchObject({
      containers: [],
      cost: 0,
    });
  });

  test("sizes and cupboard by weight", () => {
    // 1 kg at 1.25 kg/L is 0.8 L; 0.5 kg on hand is 0.4 L. 1.17612 − 0.4 = 0.77612: one can.
    expect(tables("density 1.25 kg/L", "packs 1 kg for 20.00", "on_hand 0.5 kg").materials[0]).toMatchObject({
      containers: [{ litres: 0.8, count: 1, price: 20 }],
      cost: 20,
    });
  });

  test("no sizes: enough on hand costs nothing, too little is not known", () => {
    expect(tables("on_hand 1.2 L").materials[0]).toMatchObject({ containers: [], cost: 0 });
    expect(tables("on_hand 1 L").materials[0]).toMatchObject({ containers: [], cost: null });
    expect(tables().materials[0]).toMatchObject({ containers: [], cost: null });
  });

  test("litres add up over the job before cans are chosen", () => {
    const two = `${clear("packs 1 L for 10.00")}piece cabinet {
  surface sides {
    shape area 4 m2
    wood  beech
  }
  surface doors {
    shape area 3 m2
    wood  beech
  }
}
${recipe("layer clear")}job it {
  piece cabinet
  apply work to sides
  apply work to doors
}
`;
    // 4 / 10 · 1.1 = 0.44 and 3 / 10 · 1.1 = 0.33: 0.77 L, one can and not two.
    expect(onlyJob(two).materials[0]).toMatchObject({ litres: 0.77, containers: [{ count: 1 }], cost: 10 });
  });
});

describe("fumes", () => {
  test("grams of all the litres, spare and thinner included", () => {
    const materials = `material varnish {
  family oil varnish
  covers 10 m2/L
  voc    400 g/L
}
material spirits {
  family mineral spirits
  voc    780 g/L
}
`;
    const totals = onlyJob(
      materials + TABLES + recipe("layer varnish x 3, thinned 4:1 with spirits") + job("table x 2", "top"),
    );
    // 0.940896 · 400 + 0.235224 · 780 = 376.3584 + 183.47472
    expect(totals.voc_g).toBe(559.83312);
  });

  test("water gives off nothing", () => {
    const totals = onlyJob(
      clear("voc 100 g/L") +
        TABLES +
        recipe("layer clear x 3, thinned 9:1 with water") +
        job("table x 2", "top"),
    );
    // 9/10 of 1.17612 = 1.058508 L
    expect(totals.voc_g).toBe(105.8508);
  });
});

test("only surfaces that are applied to are listed, by piece where there are several", () => {
  const text = `${clear()}piece table {
  surface top {
    shape area 2 m2
    wood  beech
  }
  surface base {
    shape area 1 m2
    wood  beech
  }
}
piece stool {
  surface seat {
    shape area 0.5 m2
    wood  beech
  }
}
${recipe("layer clear")}job one {
  piece table
  apply work to top
}
job both {
  piece table
  piece stool x 4
  apply work to table.top, stool.seat
}
`;
  const [one, both] = totalsOf(text);
  expect(one?.surfaces.map(({ name }) => name)).toEqual(["top"]);
  expect(both?.surfaces).toMatchObject([
    { name: "table.top", area_m2: 2 },
    { name: "stool.seat", area_m2: 2 },
  ]);
  expect(both?.area_m2).toBe(4);
});
