/**
 * What goes over what, against published lists. Where sources differ the decision is named in the test, so that no
 * disagreement hides behind a table of our own making.
 */
import { describe, expect, test } from "vitest";
import { FAMILIES, family, leavesLayer } from "../../../server/src/core/knowledge/families.ts";
import type { FamilyName } from "../../../server/src/core/knowledge/family-names.ts";
import {
  type RelationVerdict,
  relation,
  relationMatrix,
  renderRelationMatrix,
} from "../../../server/src/core/knowledge/layer-relation.ts";

const verdict = (over: FamilyName, below: FamilyName): RelationVerdict =>
  relation(family(over), family(below)).verdict;

const WORKS: readonly RelationVerdict[] = ["fine", "fine if abraded", "fine after cure"];

describe("compatibility list of a furniture-making reference text", () => {
  // "X accepts …": the pairs that the list takes, over first.
  const accepted: readonly [FamilyName, FamilyName][] = [
    ["dewaxed shellac", "drying oil"],
    ["oil polyurethane", "drying oil"],
    ["paste wax", "drying oil"],
    ["nitrocellulose lacquer", "dewaxed shellac"],
    ["oil polyurethane", "dewaxed shellac"],
    ["paste wax", "dewaxed shellac"],
    ["oil polyurethane", "nitrocellulose lacquer"],
    ["paste wax", "nitrocellulose lacquer"],
    ["paste wax", "oil polyurethane"],
  ];
  test.each(accepted)("%s over %s works", (over, below) => {
    expect(WORKS).toContain(verdict(over, below));
  });

  // The list refuses these, and so does the table; a shellac barrier is the way out where there is one.
  const refused: readonly [FamilyName, FamilyName][] = [
    ["nitrocellulose lacquer", "drying oil"],
    ["nitrocellulose lacquer", "oil polyurethane"],
    ["drying oil", "nitrocellulose lacquer"],
  ];
  test.each(refused)("%s over %s does not", (over, below) => {
    expect(["needs a barrier", "no"]).toContain(verdict(over, below));
  });

  test("wax takes none but wax", () => {
    for (const row of [...FAMILIES.values()].filter(leavesLayer)) {
      expect(verdict(row.name, "paste wax"), row.name).toBe(row.name === "paste wax" ? "fine" : "no");
    }
  });

  test("decided otherwise: shellac over a cured, scuffed polyurethane or lacquer (textbooks take it)", () => {
    expect(verdict("dewaxed shellac", "oil polyurethane")).toBe("fine if abraded");
    expect(verdict("dewaxed shellac", "nitrocellulose lacquer")).toBe("fine if abraded");
  });

  test("decided otherwise: oil over a film of polyurethane, which it cannot soak through", () => {
    expect(verdict("drying oil", "oil polyurethane")).toBe("no");
  });
});

describe("UFC 3-190-06 section 2.4", () => {
  test("the same generic type goes over itself", () => {
    for (const row of [...FAMILIES.values()].filter(leavesLayer)) {
      expect(verdict(row.name, row.name), row.name).toBe("fine");
    }
  });
  test("latex over cured alkyd enamel: sanded first, and never before it has dried through", () => {
    const answer = relation(family("acrylic paint"), family("alkyd paint"));
    expect(answer.verdict).toBe("fine after cure");
    expect(answer.reason).toMatch(/scuff/u);
  });
  test("strong solvent over a solvent-sensitive coating lifts it", () => {
    for (const below of ["alkyd paint", "acrylic paint", "oil varnish", "waterborne polyurethane"] as const) {
      expect(WORKS, below).not.toContain(verdict("nitrocellulose lacquer", below));
    }
  });
  test("rigid over flexible cracks", () => {
    expect(WORKS).not.toContain(verdict("conversion varnish", "spar varnish"));
    expect(WORKS).not.toContain(verdict("nitrocellulose lacquer", "spar varnish"));
    expect(verdict("conversion varnish", "nitrocellulose lacquer")).toBe("no");
    expect(verdict("oil polyurethane", "spar varnish")).toBe("no");
    expect(verdict("alkyd paint", "acrylic paint")).toBe("no");
  });
  test("flexible over rigid does not, nor what is as flexible, nor over a primer", () => {
    expect(WORKS).toContain(verdict("spar varnish", "oil polyurethane"));
    expect(WORKS).toContain(verdict("acrylic paint", "alkyd paint"));
    expect(WORKS).toContain(verdict("waterborne polyurethane", "acrylic paint"));
    expect(WORKS).toContain(verdict("alkyd paint", "acrylic primer"));
    expect(WORKS).toContain(verdict("alkyd paint", "bonding primer"));
  });
});

describe("soap, dyes by their carrier, epoxy and primers that block (common practice, no source)", () => {
  const cells: readonly [FamilyName, FamilyName, RelationVerdict][] = [
    ["waterborne polyurethane", "soap finish", "no"],
    ["drying oil", "soap finish", "no"],
    ["soap finish", "soap finish", "fine"],
    ["soap finish", "oil varnish", "no"],
    ["soap finish", "drying oil", "fine after cure"],
    ["dewaxed shellac", "water dye", "fine"],
    ["oil varnish", "alcohol dye", "fine"],
    ["waterborne polyurethane", "oil dye", "fine"],
    ["glaze", "water dye", "needs a barrier"],
    ["water dye", "dewaxed shellac", "fine if abraded"],
    ["oil dye", "oil varnish", "no"],
    ["alcohol dye", "epoxy filler", "no"],
    ["alcohol dye", "polyester filler", "no"],
    ["alkyd paint", "polyester filler", "fine if abraded"],
    ["glaze", "water stain", "needs a barrier"],
    ["two part primer", "drying oil", "no"],
    ["two part polyurethane", "two part primer", "fine"],
    ["acrylic paint", "two part primer", "fine"],
    ["oil varnish", "epoxy coating", "fine if abraded"],
    ["epoxy coating", "dewaxed shellac", "fine"],
    ["epoxy coating", "spar varnish", "no"],
    ["acrylic paint", "stain blocking primer", "fine"],
    ["alkyd paint", "stain blocking primer", "fine"],
    ["stain blocking primer", "alkyd paint", "fine after cure"],
  ];
  test.each(cells)("%s over %s: %s", (over, below, expected) => {
    expect(verdict(over, below)).toBe(expected);
  });
});

describe("finishing textbooks", () => {
  const cases: readonly [FamilyName, FamilyName, RelationVerdict][] = [
    ["waterborne polyurethane", "gel stain", "fine after cure"],
    ["waterborne polyurethane", "oil stain", "fine after cure"],
    ["oil polyurethane", "gel stain", "fine"],
    ["nitrocellulose lacquer", "oil stain", "fine after cure"],
    ["waterborne polyurethane", "dewaxed shellac", "fine"],
    ["waterborne polyurethane", "waxed shellac", "needs a barrier"],
    ["waterborne polyurethane", "shellac", "needs a barrier"],
    ["shellac", "waxed shellac", "fine"],
    ["oil polyurethane", "waxed shellac", "needs a barrier"],
    ["dewaxed shellac", "waxed shellac", "fine"],
    ["nitrocellulose lacquer", "waxed shellac", "fine"],
    ["oil polyurethane", "sanding sealer", "needs a barrier"],
    ["nitrocellulose lacquer", "sanding sealer", "fine"],
    ["nitrocellulose lacquer", "alkyd paint", "needs a barrier"],
    ["dewaxed shellac", "alkyd paint", "fine if abraded"],
    ["waterborne polyurethane", "waterborne stain", "fine"],
    ["dewaxed shellac", "dye stain", "fine"],
    ["waterborne polyurethane", "oil polyurethane", "fine after cure"],
    ["waterborne polyurethane", "nitrocellulose lacquer", "fine if abraded"],
    ["nitrocellulose lacquer", "conversion varnish", "no"],
    ["oil varnish", "milk paint", "fine"],
    ["drying oil", "milk paint", "fine"],
    ["paste wax", "chalky paint", "fine"],
    ["nitrocellulose lacquer", "chalky paint", "fine"],
    ["acrylic paint", "shellac primer", "fine"],
    ["alkyd paint", "alkyd primer", "fine"],
    ["acrylic paint", "alkyd primer", "fine after cure"],
    ["oil varnish", "oil stain", "fine"],
    ["dewaxed shellac", "oil stain", "fine"],
    ["dewaxed shellac", "oil polyurethane", "fine if abraded"],
    ["oil polyurethane", "alkyd paint", "fine if abraded"],
    ["oil varnish", "nitrocellulose lacquer", "fine if abraded"],
    ["paste wax", "conversion varnish", "fine"],
    ["nitrocellulose lacquer", "milk paint", "fine"],
    ["waterborne polyurethane", "chalky paint", "fine"],
  ];
  test.each(cases)("%s over %s: %s", (over, below, expected) => {
    expect(verdict(over, below)).toBe(expected);
  });
});

describe("stains", () => {
  const stains = ["waterborne stain", "oil stain", "gel stain", "dye stain"] as const;
  test("soak through no film, filler of epoxy or putty, oil or wax", () => {
    for (const stain of stains) {
      for (const below of [
        "oil polyurethane",
        "nitrocellulose lacquer",
        "acrylic paint",
        "alkyd primer",
        "wood filler",
        "epoxy filler",
        "drying oil",
        "paste wax",
      ] as const) {
        expect(verdict(stain, below), `${stain} over ${below}`).toBe("no");
      }
    }
  });
  test("go over conditioner, and over a thin washcoat of shellac or sealer (Wood Handbook chapter 16)", () => {
    for (const stain of stains) {
      expect(verdict(stain, "waterborne conditioner"), stain).toBe("fine");
      // The alcohol of a dye dissolves shellac, however thin.
      const overShellac = stain === "dye stain" ? "no" : "fine if abraded";
      expect(verdict(stain, "dewaxed shellac"), stain).toBe(overShellac);
      expect(verdict(stain, "sanding sealer"), stain).toBe("fine if abraded");
    }
  });
  test("fill after stain, and stain on an oil grain filler (Wood Handbook chapter 16: stain, fill, seal)", () => {
    expect(verdict("grain filler", "oil stain")).toBe("fine");
    expect(verdict("oil stain", "grain filler")).toBe("fine");
    expect(verdict("grain filler", "oil varnish")).toBe("no");
  });
});

describe("two-part polyurethane and oils that are not drying oil", () => {
  test("nothing but mineral oil and wax goes on mineral oil, which never dries", () => {
    expect(verdict("mineral oil", "mineral oil")).toBe("fine");
    expect(verdict("paste wax", "mineral oil")).toBe("fine");
    for (const name of ["waterborne polyurethane", "drying oil", "alkyd paint", "oil stain"] as const)
      expect(verdict(name, "mineral oil"), name).toBe("no");
    expect(verdict("mineral oil", "oil varnish")).toBe("no");
  });
  test("two-part polyurethane over lacquer and oil", () => {
    expect(verdict("two part polyurethane", "nitrocellulose lacquer")).toBe("no");
    expect(verdict("two part polyurethane", "drying oil")).toBe("no");
    expect(verdict("two part polyurethane", "two part polyurethane")).toBe("fine");
  });
  test("exterior oil stays open to more of it, and must dry before water goes on", () => {
    expect(verdict("exterior oil", "exterior oil")).toBe("fine");
    expect(verdict("waterborne polyurethane", "exterior oil")).toBe("fine after cure");
    expect(verdict("nitrocellulose lacquer", "exterior oil")).toBe("needs a barrier");
  });
});

describe("the whole matrix", () => {
  const matrix = relationMatrix();
  test("answers every pair of the 48 families that leave a layer, with a sentence and a source", () => {
    expect(matrix.length).toBe(48 * 48);
    for (const { relation: answer, over, below } of matrix) {
      expect(answer.reason, `${over} over ${below}`).toMatch(/^[A-Z].*[^.]$/u);
      expect(answer.source.length).toBeGreaterThan(5);
    }
  });
  test("a shellac barrier that it asks for holds on both sides", () => {
    for (const row of matrix.filter((it) => it.relation.advice?.includes("put dewaxed shellac between"))) {
      expect(WORKS, `dewaxed shellac over ${row.below}`).toContain(verdict("dewaxed shellac", row.below));
      expect(WORKS, `${row.over} over dewaxed shellac`).toContain(verdict(row.over, "dewaxed shellac"));
    }
  });
  test("no waterborne layer goes over oil that has not dried through", () => {
    for (const row of matrix) {
      const below = family(row.below);
      if (family(row.over).carrier !== "water" || below.drying !== "oxidising") continue;
      // Milk paint flakes off a film even when that has cured.
      const orBarrier = row.over === "milk paint" ? ["needs a barrier"] : [];
      expect(["fine after cure", "no", ...orBarrier], `${row.over} over ${row.below}`).toContain(
        row.relation.verdict,
      );
    }
  });
  test("renders as one row for each family below", () => {
    const text = renderRelationMatrix();
    expect(text.split("\n").filter((line) => /^\| \d+ /u.test(line)).length).toBe(48);
    expect(text).not.toContain("undefined");
  });
});

describe("auxiliaries leave no layer", () => {
  test("a solvent over a film that it dissolves is told, a stripper is not", () => {
    expect(verdict("alcohol", "dewaxed shellac")).toBe("no");
    expect(verdict("mineral spirits", "oil varnish")).toBe("fine");
    expect(verdict("paint stripper", "oil varnish")).toBe("fine");
    expect(verdict("waterborne polyurethane", "water")).toBe("fine");
  });
});
