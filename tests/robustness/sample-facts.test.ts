/**
 * What people rely on in the samples: their names, areas, litres, cans, prices and promises, worked out here by hand, so
 * that a sample may be written anew and loses no fact.
 */
import { describe, expect, test } from "vitest";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { sampleAnalyst, sampleNames, sampleText } from "../harness/samples.ts";

const analysis = sampleAnalyst().analysis();
const jobs = new Map(
  sampleNames.flatMap((name) => analysis.jobs(name)).map((result) => [result.job.name, result]),
);
const jobOf = (name: string) => jobs.get(name) ?? expect.fail(`there is no job ${name}`);

const panel = (l: number, w: number, t: number): number => l * w + 2 * (l + w) * t;
const bothFaces = (l: number, w: number, t: number): number => panel(l, w, t) + l * w;
/** The side of a frustum of a cone, and of a square one: by its middle, along its slant. */
const round = (from: number, to: number, h: number): number =>
  Math.PI * ((from + to) / 2) * Math.hypot(h, (from - to) / 2);
const post = (from: number, to: number, h: number): number =>
  4 * ((from + to) / 2) * Math.hypot(h, (from - to) / 2);

/** Square metres of one piece. */
const TOP = panel(1.8, 0.9, 0.03);
const BASE = 2 * (1.6 + 0.7) * 0.09 + 4 * post(0.075, 0.05, 0.7) * 1.1;
const CHAIR =
  4 * round(0.036, 0.028, 0.44) +
  2 * round(0.028, 0.028, 0.4) * 1.15 +
  bothFaces(0.42, 0.4, 0.02) +
  bothFaces(0.4, 0.18, 0.014);
const DISC = Math.PI * 0.45 ** 2 + Math.PI * 0.9 * 0.025;
const LEGS = 4 * round(0.06, 0.04, 0.48);
/** Without a bottom: the top and four sides. */
const CASE = 0.9 * 0.45 + 2 * (0.9 + 0.45) * 1.2;

/** Area, coats and m2/L of the label, with the usual 10 % spare. */
const litres = (area: number, coats: number, covers: number): number => (area * coats * 1.1) / covers;

const CLEAR = "2 × 0.946 L for 56.00";

/** Surfaces; materials with litres and the cheapest cans beyond what stands in the cupboard. */
const JOBS: Readonly<
  Record<
    string,
    {
      readonly areas: readonly number[];
      readonly materials: Readonly<Record<string, readonly [need: number, cans: string]>>;
    }
  >
> = {
  hall_tables: {
    areas: [2 * TOP, 2 * BASE],
    materials: {
      walnut_gel: [litres(2 * TOP, 1, 14), "2 × 0.25 L for 19.60"],
      hall_clear: [litres(2 * TOP, 3, 10) + litres(2 * BASE, 2, 10), CLEAR],
      grip_primer: [litres(2 * BASE, 1, 9), "1 × 0.5 L for 14.00"],
      slate: [litres(2 * BASE, 2, 11), "1 × 0.75 L for 21.00"],
      slow_stripper: [litres(2 * TOP, 1, 3), "1 × 1 L for 19.00"],
      // Wax off, and after the stripper.
      white_spirit: [litres(2 * TOP, 2, 12), "1 × 1 L for 6.50"],
    },
  },
  six_chairs: {
    areas: [6 * CHAIR],
    materials: {
      hall_clear: [litres(6 * CHAIR, 2, 10), "1 × 0.946 L for 28.00"],
      // 0.43 L, and half a litre is there.
      white_spirit: [litres(6 * CHAIR, 1, 12), ""],
    },
  },
  childrens_corner: {
    areas: [DISC, LEGS],
    materials: {
      grip_primer: [litres(DISC + LEGS, 1, 9), "1 × 0.5 L for 14.00"],
      poppy: [litres(DISC + LEGS, 2, 10), "1 × 0.375 L for 12.50"],
      hall_clear: [litres(DISC + LEGS, 3, 10), "1 × 0.946 L for 28.00"],
    },
  },
  catalogue_2019: {
    areas: [CASE],
    materials: {
      walnut_gel: [litres(CASE, 1, 14), "2 × 0.25 L for 19.60"],
      hall_clear: [litres(CASE, 3, 10), CLEAR],
      slow_stripper: [litres(CASE, 1, 3), "1 × 1 L for 19.00"],
      white_spirit: [litres(CASE, 2, 12), "1 × 1 L for 6.50"],
    },
  },
  catalogue_now: {
    areas: [CASE],
    materials: {
      hall_clear: [litres(CASE, 1, 10), "1 × 0.946 L for 28.00"],
      white_spirit: [litres(CASE, 1, 12), ""],
    },
  },
};

describe.each(Object.entries(JOBS))("%s", (name, { areas, materials }) => {
  test("has the areas of its pieces", () => {
    expect(jobOf(name).totals.surfaces.map(({ area_m2: area }) => area)).toEqual(
      areas.map((area) => expect.closeTo(area, 5)),
    );
  });

  test("takes these litres, and these cans", () => {
    const found = jobOf(name).totals.materials.map(({ name: material, litres: need, containers }) => [
      material,
      need,
      containers
        .map(({ count, litres: each, price }) => `${count} × ${each} L for ${(count * price).toFixed(2)}`)
        .join(" + "),
    ]);
    const expected = Object.entries(materials).map(([material, [need, cans]]) => [
      material,
      expect.closeTo(need, 5),
      cans,
    ]);
    expect(found.toSorted(([a], [b]) => String(a).localeCompare(String(b)))).toEqual(
      expected.toSorted(([a], [b]) => String(a).localeCompare(String(b))),
    );
  });
});

test.each(["hall_tables", "six_chairs", "childrens_corner", "catalogue_now"])(
  "%s keeps its day and its budget",
  (name) => {
    const { job, totals } = jobOf(name);
    expect(totals.full_use! <= "2027-05-04").toBe(true);
    expect(totals.total_cost).toBeLessThanOrEqual(job.budget!.amount);
  },
);

/** What pages, pictures and tests quote. */
test("the declarations have their names and titles", () => {
  const declared = sampleNames
    .filter((name) => name !== "mistakes.finish")
    .flatMap((name) => [
      ...sampleText(name).matchAll(/^(material|piece|shop|recipe|job) (\w+)(?: "(.*)")?/gmu),
    ])
    .map(([, kind, name, title]) => [kind, name, ...(title ? [`“${title}”`] : [])].join(" "));
  expect(declared.toSorted()).toEqual([
    "job catalogue_2019 “Card catalogue, first time”",
    "job catalogue_now “Card catalogue, again”",
    "job childrens_corner “Children's corner”",
    "job hall_tables “Reading tables”",
    "job six_chairs “Six chairs”",
    "job troughs “Book troughs”",
    "material grip_primer “Grip primer”",
    "material hall_clear “Waterborne satin clear”",
    "material poppy “Poppy trim paint”",
    "material seal_coat “Dewaxed shellac sealer”",
    "material shelf_clear “Waterborne satin clear”",
    "material shelf_wax “Pale paste wax”",
    "material slate “Slate trim paint”",
    "material slow_stripper “Slow gel stripper”",
    "material walnut_gel “Walnut gel stain”",
    "material white_spirit “Mineral spirits”",
    "piece book_trough “Book trough from the gallery”",
    "piece catalogue “Card catalogue”",
    "piece catalogue_as_found “Card catalogue, as it came from the attic”",
    "piece low_table “Children's table”",
    "piece reading_chair “Reading-room chair”",
    "piece reading_table “Reading table, main hall”",
    "recipe clear_over_paint",
    "recipe painted_over",
    "recipe refreshed",
    "recipe repainted",
    "recipe stained_top",
    "shop gallery “Gallery of the old mill”",
    "shop mill_room “Old mill, ground floor”",
  ]);
});

test("what is old is tested for lead by a laboratory, before the first day of work", () => {
  const results = sampleNames.flatMap((name) => [
    ...sampleText(name).matchAll(/^ +lead +none_found by laboratory (\S+)$/gmu),
  ]);
  expect(results.map(([, date]) => date)).toEqual([
    "2018-11-06",
    "2026-11-03",
    "2026-11-03",
    "2026-11-03",
    "2026-11-03",
  ]);
});

/** The lessons of the file of mistakes; its first screen is what a newcomer sees. */
test("the file of mistakes keeps its lessons", () => {
  const rules = new Set(
    analysis
      .findings("mistakes.finish")
      .flatMap(partsOf)
      .map(({ rule }) => rule),
  );
  for (const lesson of [
    "wrong-unit",
    "unknown-word",
    "wrong-argument",
    "waterborne-over-uncured-oil",
    "coat-over-wax",
    "grit-jump",
    "lead-not-tested",
    "ignition-near-flammable",
    "rags-not-wetted",
    "too-weak-for-wear",
  ])
    expect(rules, lesson).toContain(lesson);
});

/** Words that had a better one put in their place, which the samples teach. */
test("the samples are written in the plain forms of today", () => {
  for (const name of sampleNames)
    expect(sampleText(name)).not.toMatch(/^ +(?:sold|use_by|new) |, wiped(?! off)/mu);
});
