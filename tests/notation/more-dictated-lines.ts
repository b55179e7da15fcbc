/** Lines of two later rounds of dictated jobs, each with the plain form that the formatter gives it. */
import type { Row } from "./unprompted-lines.ts";

const STEPS: readonly Row[] = [
  ["recipe", 'step spot "two knots" with m1', 'step "spot two knots" with m1'],
  ["recipe", "step dab knots with m1", 'step "dab knots" with m1'],
  ["recipe", 'step spot test "old paint"', 'step test "old paint"'],
  ["recipe", "step sand 120, 150, 40 min each", "step sand 120, 150, takes 40 min"],
  ["recipe", "step sand 120, 1.5 h", "step sand 120, takes 1.5 h"],
  ["recipe", "step scrape, 20 min", "step scrape, takes 20 min"],
  [
    "recipe",
    "step strip with m1 x 2, 45 min under film",
    'step strip with m1 x 2, leave 45 min, "under film"',
  ],
  ["recipe", "step clean with m1, 45 min", "step clean with m1, leave 45 min"],
  ["recipe", "step rub with bronze_wool", 'step scuff "bronze wool"'],
  ["recipe", "step cut back with 0000 steel wool", 'step scuff "0000 steel wool, cut back"'],
  ["recipe", "step scuff with a grey pad", 'step scuff "grey pad"'],
];

const LAYERS: readonly Row[] = [
  ["recipe", "layer m1, buffed after 20 min", "layer m1, buffed after 20 min"],
  ["recipe", "layer m1, thin, buff off after 20 mins", "layer m1, thin, buffed after 20 min"],
  ["recipe", "layer m1 x 2, buffed out in 1 h", "layer m1 x 2, buffed after 1 h"],
  ["recipe", "layer m1, buffed", "layer m1, buffed"],
  [
    "recipe",
    "layer m1, by brush, buffed after 30 min with a horsehair brush",
    'layer m1, by brush, buffed after 30 min, "with a horsehair brush"',
  ],
  ["recipe", "layer m1, by mop", 'layer m1, by brush, "mop"'],
  ["recipe", "layer m1, matt 10", "layer m1, sheen 10"],
  ["recipe", "layer m1, sheen 10 matt", "layer m1, sheen 10"],
];

const LABELS: readonly Row[] = [
  ["material", "sheen matt 10", "sheen 10"],
  ["material", "sheen silk matt 25 %", "sheen 25"],
  ["material", "sheen 80 gloss", "sheen 80"],
  ["family", "family two-part polyurethane sealer", "family two part polyurethane"],
  ["family", "family 2K polyurethane primer", "family two part primer"],
  ["family", "family polyester filler", "family polyester filler"],
  ["family", "family two-pack filler", "family polyester filler"],
  ["family", "family two-part wood filler", "family polyester filler"],
  ["family", "family isocyanate hardener", "family isocyanate hardener"],
  ["family", "family PU hardener", "family isocyanate hardener"],
  ["family", "family washing soda", "family degreaser"],
  ["family", "family water stain", "family water stain"],
  ["family", "family shellac", "family shellac"],
  ["family", "family shellac flakes", "family shellac"],
  ["surface", "existing acid-cure lacquer", "existing conversion varnish"],
  ["surface", "existing soaped", "existing soap finish"],
  ["surface", "existing soap", "existing soap finish"],
  ["surface of its own", "shape 0.9 m2\n wood beech", "shape area 0.9 m2\nwood beech"],
  ["surface of its own", "shape 6 sq ft\n wood beech", "shape area 6 ft2\nwood beech"],
  ["job", "work 5 h", 'note "work 5 h"'],
  ["recipe", "safety mask P2 and A, gloves", "safety vapour_respirator, gloves"],
  ["recipe", "safety gloves butyl, ventilate", 'safety gloves "butyl", ventilate'],
  ["recipe", "safety long_butyl_gloves and goggles", 'safety gloves "long butyl", eye_protection'],
  ["recipe", 'safety gloves "to the elbow"', 'safety gloves "to the elbow"'],
  ["recipe", "safety air_fed_mask, suit, gloves", 'safety supplied_air, "suit", gloves'],
  ["recipe", "safety dust_extraction, ventilate", 'safety "dust extraction", ventilate'],
  ["recipe", "safety gloves and leather apron", 'safety gloves, "leather apron"'],
  ["surface", "lead not tested", "lead not_tested"],
  ["surface", "lead untested", "lead not_tested"],
  ["surface", "lead not_tested", "lead not_tested"],
  [
    "surface of its own",
    "shape box 95 x 48 x 82 cm, no bottom, no back\n wood beech",
    "shape box 95 cm x 48 cm x 82 cm, no bottom, no back\nwood beech",
  ],
  ["material", "recoat overnight", 'recoat 12 h "overnight"'],
  ["material", "touch over night", "touch 12 h"],
  ["material", "covers 30 m2/kg", "covers 30 m2/kg"],
  ["material", "covers 150 sq ft per pound", "covers 150 ft2/lb"],
  ["material", "packs 1 qt for 14.00\n covers 10 ft2/can", "packs 1 qt for 14.00\ncovers 10 ft2/can"],
  ["shop", "limits 16 C to 22 C", 'note "limits 16 C to 22 C"'],
];

const CLEANERS: readonly Row[] = [
  ["cleaner", "thin water, 1:20", "thin water, 1:20"],
  ["cleaner", "thin 1:20 with water", "thin water, 1:20"],
  ["cleaner", "thin 1 part to 20 parts of water", "thin water, 1:20"],
  ["material", "thin mineral spirits, 10:1", "thin mineral spirits, 10:1"],
];

export const MORE_DICTATED: Readonly<Record<string, readonly Row[]>> = {
  "dictated steps": STEPS,
  "dictated layers": LAYERS,
  "dictated labels and rooms": LABELS,
  "dictated cleaners": CLEANERS,
};
