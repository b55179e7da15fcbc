/**
 * What the tool calculates, part of `core/computations.ts`. Areas, amounts and films.
 */
import { BY_DEFINITION } from "../knowledge/sources.ts";
import type { Computation } from "./computation.ts";

const GEOMETRY = "arithmetic: plane geometry";
const TOTALS = "`totals`, hover of the job";

const SHAPE = {
  topic: "Areas",
  seen: "`totals`, hover of the surface with the sum filled in",
  source: GEOMETRY,
  file: "geometry/shape-area.ts",
  functions: ["shapeArea"],
  tests: ["core/geometry/shape-area.test.ts"],
} as const;

export const COMPUTATIONS_OF_COATS: readonly Computation[] = [
  {
    topic: "Areas",
    name: "Part of a surface",
    seen: "`totals`, hover of the line",
    formula:
      "area · share, or the area that `only` states; of `only edges` the edges of the shapes, of `only faces` the rest",
    source: GEOMETRY,
    file: "surface/part-of-surface.ts",
    functions: ["workedAreaM2"],
    tests: ["core/surface/part-of-surface.test.ts"],
  },
  { ...SHAPE, name: "Panel", formula: "L·W; with T also 2(L + W)·T; both faces: L·W twice" },
  { ...SHAPE, name: "Disc", formula: "πD²/4; with T also πD·T; both faces: πD²/4 twice" },
  {
    ...SHAPE,
    name: "Oval",
    formula:
      "πAB/4; with T also the perimeter · T, by Ramanujan's second formula π(a + b)(1 + 3h/(10 + √(4 − 3h))), a and b the half axes, h = ((a − b)/(a + b))²",
    source: "S. Ramanujan, Modular equations and approximations to pi, 1914",
    functions: ["shapeArea", "ellipsePerimeter"],
  },
  { ...SHAPE, name: "Band", formula: "2(L + W)·H; inside too: twice" },
  { ...SHAPE, name: "Post", formula: "4·(S + S2)/2·√(H² + ((S − S2)/2)²): four faces of a square frustum" },
  { ...SHAPE, name: "Round", formula: "π(D + D2)/2·√(H² + ((D − D2)/2)²): the side of a frustum of a cone" },
  {
    ...SHAPE,
    name: "Box",
    formula: "2(LW + LH + WH); no bottom: less LW; open: less LW, and the inside as well",
  },
  {
    ...SHAPE,
    name: "Several, and mouldings",
    formula:
      "N of: times N; plus P %: times 1 + P/100; the lines of a surface add up; times the pieces of the job",
    source: BY_DEFINITION,
    tests: ["core/geometry/shape-area.test.ts", "core/properties/quantities.test.ts"],
  },

  {
    topic: "Amounts and cans",
    name: "Litres of a layer",
    seen: "`totals`, `shopping`, hover of the layer with the sum filled in",
    formula:
      "area · pieces · coats · (1 / spreading rate · laydown, or the wet film in mm) / transfer efficiency · (1 + spare)",
    source: BY_DEFINITION,
    file: "quantities/litres.ts",
    functions: ["layerLitres"],
    tests: [
      "core/quantities/litres.test.ts",
      "core/totals/materials.test.ts",
      "core/properties/quantities.test.ts",
    ],
  },
  {
    topic: "Amounts and cans",
    name: "Thinning and tint",
    seen: TOTALS,
    formula:
      "tint: P % of the mix; thinned a:b: the rest · a/(a + b) of the material, · b/(a + b) of the thinner",
    source: BY_DEFINITION,
    file: "quantities/litres.ts",
    functions: ["layerLitres"],
    tests: ["core/quantities/litres.test.ts", "core/totals/materials.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Two-part mix",
    seen: TOTALS,
    formula:
      "mix a:b: · a/(a + b) of the material, · b/(a + b) of the hardener; by weight, each part / its density first, and not known without both densities",
    source: BY_DEFINITION,
    file: "quantities/litres.ts",
    functions: ["mixLitres", "volumesOfWeights"],
    tests: ["core/quantities/litres.test.ts", "core/totals/materials.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Transfer efficiency",
    seen: TOTALS,
    formula: "litres / efficiency: 1 by hand, 0.65 HVLP, 0.50 airless",
    source:
      "65 %: South Coast Air Quality Management District, rule 1136, definition of high-volume, low-pressure spray; 50 % for airless: common practice, no source",
    file: "quantities/litres.ts",
    functions: ["layerLitres"],
    tests: ["core/quantities/litres.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Laydown",
    seen: "`totals`, `shopping`, hover of the layer",
    formula:
      "share of a coat brushed at the label's rate: 1/4 shellac by pad, cloth or rubber; 1/2 varnish by cloth or rubber, except wiping varnish; 2 flooded; a stated wet film and a session of French polishing as they are",
    source: "common practice, no source",
    file: "quantities/laydown.ts",
    functions: ["laydownOf", "coatWetUm", "isPolished"],
    tests: ["core/quantities/laydown.test.ts", "core/totals/film.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Litres of a step",
    seen: TOTALS,
    formula:
      "area · pieces / spreading rate · (1 + spare) where the material itself states a rate; `uses`: that, times the pieces",
    source: BY_DEFINITION,
    file: "quantities/litres.ts",
    functions: ["stepLitres"],
    tests: ["core/quantities/litres.test.ts", "core/totals/materials.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Mix for a coat",
    seen: "`sheet`",
    formula:
      "the litres of one coat on all pieces, divided into the material, its hardener, the thinner (water included) and the tint",
    source: BY_DEFINITION,
    file: "totals/needs.ts",
    functions: ["coatMix"],
    tests: ["views/sheet.test.ts", "core/totals/materials.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Needs of a job",
    seen: "`totals`, `not-enough-on-hand`",
    formula: "litres of all lines of a material added up before cans are chosen; unknown if one of them is",
    source: BY_DEFINITION,
    file: "totals/needs.ts",
    functions: ["jobDraws", "jobNeeds"],
    tests: ["core/totals/materials.test.ts", "core/properties/quantities.test.ts"],
  },
  {
    topic: "Amounts and cans",
    name: "Containers",
    seen: "`totals`, `shopping`",
    formula:
      "the cheapest whole numbers of the sizes sold that hold the need less what is on hand; at equal cost least left over, then fewest (covering form of the unbounded knapsack, solved exactly)",
    source: `${BY_DEFINITION}; checked against an integer program`,
    file: "quantities/containers.ts",
    functions: ["cheapestContainers"],
    tests: ["core/quantities/containers.test.ts", "core/properties/quantities.test.ts"],
  },

  {
    topic: "Film",
    name: "Wet film",
    seen: "hover of the layer, `wet-film-too-thick`",
    formula: "µm = 1000 / spreading rate in m2/L · laydown, or the stated `wet`",
    source: "arithmetic: a litre on a square metre stands a millimetre high",
    file: "quantities/film.ts",
    functions: ["wetFilmUm"],
    tests: ["core/quantities/film.test.ts"],
  },
  {
    topic: "Film",
    name: "Dry film",
    seen: "`totals`, hover of the layer, `film-too-thick`, `film-too-thin`",
    formula: "wet · solids of the mix by volume; the new coats that build a film add up",
    source: "UFC 3-190-06, procedure 13",
    file: "quantities/film.ts",
    functions: ["dryFilmUm"],
    tests: ["core/quantities/film.test.ts", "core/totals/film.test.ts"],
  },
  {
    topic: "Film",
    name: "Solids of a mix",
    seen: "hover of the layer",
    formula:
      "each liquid's solids by its share of the volume; a part of paint with t of thinner: S / (1 + t)",
    source: "volumes taken to add up: common practice, no source",
    file: "quantities/film.ts",
    functions: ["mixSolids"],
    tests: ["core/quantities/film.test.ts", "core/totals/film.test.ts"],
  },
];
