/**
 * Lines that people wrote before they had read anything: what each is read as, in the plain form that the formatter gives
 * it, or what is asked and the right line that the message writes out.
 */
import { describe, expect, it, test } from "vitest";
import { BLOCKS, findingsIn, languageFindings } from "./blocks.ts";
import { afterFix, formatted, meaningOf, plainLines, textOfFinding } from "./said.ts";

/** Block, as written, plain form. */
type Row = readonly [block: string, written: string, plain: string];

const COATS: readonly Row[] = [
  ["recipe", "layer m1 x 2 coats", "layer m1 x 2"],
  ["recipe", "layer m1 x 1 coat", "layer m1 x 1"],
  ["recipe", "layer m1 2 coats", "layer m1 x 2"],
  ["recipe", "layer m1, 2 coats, by pad", "layer m1 x 2, by pad"],
  ["recipe", "layer m1, by pad, x 2 coats", "layer m1 x 2, by pad"],
  ["recipe", "layer m1 x 2-3 coats", "layer m1 x 2 to 3"],
  ["recipe", "layer m1 x 2 or 3", "layer m1 x 2 to 3"],
  ["recipe", "layer m1, 2 to 3 coats", "layer m1 x 2 to 3"],
  ["recipe", "layer 1 x m1", "layer m1 x 1"],
  ["recipe", "layer 2 x m1, by pad", "layer m1 x 2, by pad"],
  ["recipe", "layer 2 coats of m1", "layer m1 x 2"],
  ["recipe", "1 x m1", "layer m1 x 1"],
  ["recipe", "2 x m1, by pad", "layer m1 x 2, by pad"],
  ["recipe", "2 coats m1", "layer m1 x 2"],
  ["recipe", "mist coat m1", "layer m1, mist"],
  ["recipe", "layer m1 x 6-8 sessions", "layer m1 x 6 to 8 sessions"],
  ["recipe", "layer m1 x 2 sessions, by rubber", "layer m1 x 2 sessions, by rubber"],
  ["recipe", "layer m1, 6-8 sessions", "layer m1 x 6 to 8 sessions"],
  ["recipe", "layer 6 to 8 sessions of m1", "layer m1 x 6 to 8 sessions"],
];

const UNITS: readonly Row[] = [
  ["recipe", "wait 72 hr", "wait 72 h"],
  ["recipe", "wait 72hrs", "wait 72 h"],
  ["material", "sold 2.5 l for 28.00", "sold 2.5 L for 28.00"],
  ["material", "sold 750 ml for 28.00", "sold 750 mL for 28.00"],
  ["material", "sold 1 gallon for 45.00", "sold 1 gal for 45.00"],
  ["material", "sold 8 fl. oz for 9.00", "sold 8 floz for 9.00"],
  ["material", "covers 10 m2/l", "covers 10 m2/L"],
  ["material", "covers 100 ml/m2", "covers 100 mL/m2"],
  ["material", "covers 10 sqm/L", "covers 10 m2/L"],
  ["material", "covers 10 m2 per liter", "covers 10 m2/L"],
  ["material", "covers 100 sq ft/qt", "covers 100 ft2/qt"],
  ["material", "covers 400 Sq. Ft. per Gallon", "covers 400 ft2/gal"],
  ["surface", "shape area 12 sq ft", "shape area 12 ft2"],
  ["surface", 'shape panel 48" x 24"', "shape panel 48 in x 24 in"],
  ["surface", `shape panel 5' 6" x 2' 3/4"`, "shape panel 5 ft 6 in x 2 ft 3/4 in"],
  ["surface", "shape panel 12 x 18 inches", "shape panel 12 in x 18 in"],
  ["surface", "shape panel 600 x 720 x 18 mm", "shape panel 600 mm x 720 mm x 18 mm"],
  ["surface", "shape panel 600x720x18mm", "shape panel 600 mm x 720 mm x 18 mm"],
  ["surface", "shape panel 600 × 720 mm", "shape panel 600 mm x 720 mm"],
];

const RANGES: readonly Row[] = [
  ["material", "touch 2-3 hours", "touch 2 hours to 3 hours"],
  ["material", "touch 60-90 min", "touch 60 min to 90 min"],
  ["material", "touch 1 to 2 h", "touch 1 h to 2 h"],
  ["material", "cure 7 to 10 days", "cure 7 days to 10 days"],
  ["material", "cure 7–10 days", "cure 7 days to 10 days"],
  ["material", "covers 350-400 sq ft/gal", "covers 350 ft2/gal to 400 ft2/gal"],
  ["material", "thin water, 5-10 %", "thin water, 5 % to 10 %"],
  ["material", "thin 5 % water", "thin water, up to 5 %"],
  ["material", "recoat 2-24 h", "recoat 2 h to 24 h"],
  ["shop", "air 18-20 C, 50-65 % RH", "air 18 C to 20 C, 50 % to 65 % RH"],
  ["shop", "air 65 to 70 °F", "air 65 F to 70 F"],
  ["recipe", "wait 2-3 h", "wait 2 h to 3 h"],
];

const LIMITS: readonly Row[] = [
  ["material", "limits min 15 C", "limits 15 C"],
  ["material", "limits at least 8 C", "limits 8 C"],
  ["material", "limits 50 F and up", "limits 50 F"],
  ["material", "limits 15 C min, 85 % RH", "limits 15 C, 85 % RH"],
  ["material", "recoat 1 h min", "recoat 1 h"],
  ["material", "recoat min. 1 hr", "recoat 1 h"],
  ["recipe", "wait min 3 h", "wait 3 h"],
  ["recipe", "wait 1 hr min", "wait 1 h"],
];

const STEPS: readonly Row[] = [
  ["recipe", "step vacuum", 'step dust "vacuum"'],
  ["recipe", 'step vacuum "HEPA", takes 5 min', 'step dust "vacuum, HEPA", takes 5 min'],
  ["recipe", "step wipe", 'step dust "wipe"'],
  ["recipe", "step tack", 'step dust "tack cloth"'],
  ["recipe", "step blow off", 'step dust "blow off"'],
  ["recipe", "step wet", "step dampen"],
  ["recipe", "step water", "step dampen"],
  ["recipe", "step polish", "step buff"],
  ["recipe", "step denib 320", "step scuff 320"],
  ["recipe", "step rub down 320", "step scuff 320"],
  ["recipe", "step wash with soap", "step clean with soap"],
  ["recipe", "step wipe with mineral_spirits", "step clean with mineral_spirits"],
  ["recipe", "step turn", "step turn"],
  ["recipe", "step turn over", "step turn"],
  ["recipe", "step flip", "step turn"],
  ["recipe", "step clamp", 'step "clamp"'],
  ["recipe", "step lift", 'step "lift"'],
  ["recipe", "step lift loose veneer", 'step "lift loose veneer"'],
  ["recipe", "step touch in with st, uses 5 mL", 'step "touch in" with st, uses 5 mL'],
  ["recipe", "step spot prime with m1", 'step "spot prime" with m1'],
  ["recipe", "step spirit off with alcohol", 'step "spirit off" with alcohol'],
  ["recipe", 'step caulk "gaps", takes 5 min', 'step "caulk gaps", takes 5 min'],
  ["recipe", "step rack", 'step "rack"'],
  ["recipe", "step glue loose joint with m1, uses 5 mL", 'step glue "loose joint" with m1, uses 5 mL'],
  ["recipe", 'step glue "loose joint"', 'step glue "loose joint"'],
  ["recipe", "step mask glass", 'step mask "glass"'],
  ["recipe", "step remove the handles", 'step remove "the handles"'],
  ["recipe", 'step repair "loose joint" with m1, uses 5 mL', 'step repair "loose joint" with m1, uses 5 mL'],
  ["recipe", "step fill grain with m1, uses 5 mL", 'step fill with m1 "grain", uses 5 mL'],
  ["recipe", "step clean with soap and wire wool", 'step clean with soap "with wire wool"'],
  ["recipe", "step clean the legs with soap and a brush", 'step clean with soap "the legs, with a brush"'],
  ["recipe", 'step "lift the loose veneer", takes 20 min', 'step "lift the loose veneer", takes 20 min'],
  ["recipe", "step sand P80, P120", "step sand 80, 120"],
  ["recipe", "step sand P100", "step sand 100"],
  ["recipe", "step sand P280-P320", "step sand 280, 320"],
  ["recipe", "step sand 180-220", "step sand 180, 220"],
  ["recipe", "step sand 120/150/180", "step sand 120, 150, 180"],
  ["recipe", "step sand 80/120/150/180 grit", "step sand 80, 120, 150, 180"],
  ["recipe", "step sand 120 then 180", "step sand 120, 180"],
  ["recipe", "step sand with 320", "step sand 320"],
  ["recipe", "step sand lightly 320", 'step sand 320 "lightly"'],
  ["recipe", "step sand 320 if needed", 'step sand 320 "if needed"'],
  ["recipe", "step sand 320 only where rough", 'step sand 320 "only where rough"'],
  ["recipe", "step sand 320 edges", 'step sand 320 "edges"'],
];

const METHODS: readonly Row[] = [
  ["recipe", "layer m1, by spray", "layer m1, by spray"],
  ["recipe", "layer m1, by rubber", "layer m1, by rubber"],
  ["recipe", "layer m1, by a brush", "layer m1, by brush"],
  ["recipe", "layer m1, by roller and brush", "layer m1, by roller and brush"],
  ["recipe", "layer m1, by a rag and spraying", "layer m1, by cloth and spray"],
];

const WAITS: readonly Row[] = [
  ["recipe", "wait over night", "wait overnight"],
  ["recipe", "wait until touch dry", "wait until touch"],
  ["recipe", "wait until hardened", "wait until cured"],
  ["recipe", "wait 16 h until stackable", 'wait 16 h "until stackable"'],
  ["recipe", "wait 4 h or overnight", 'wait 4 h "or overnight"'],
  ["recipe", 'wait 15 min "until it stops soaking in"', 'wait 15 min "until it stops soaking in"'],
];

const KINDS: readonly Row[] = [
  ["family", "family wipe-on poly", "family wiping varnish"],
  ["family", "family wax", "family paste wax"],
  ["family", "family white spirit", "family mineral spirits"],
  ["family", "family linseed oil", "family drying oil"],
  ["family", "family acid catalysed lacquer", "family conversion varnish"],
  ["family", "family 2 pack PU", "family two part polyurethane"],
  ["family", "family 2K water lacquer", "family waterborne two part polyurethane"],
  ["family", "family hardener", "family hardener"],
  ["family", "family catalyst", "family hardener"],
  ["family", "family crosslinker", "family hardener"],
  ["family", "family mineral oil", "family mineral oil"],
  ["family", "family chopping board oil", "family mineral oil"],
  ["family", "family PVA glue", "family wood glue"],
  ["family", "family decking oil", "family exterior oil"],
  ["family", "family caulk", "family wood filler"],
  ["surface", "existing french polish", "existing waxed shellac"],
  ["surface", "existing old glaze", "existing unknown clear"],
  ["surface", "existing water based paint, 2 coats", "existing acrylic paint, 2 coats"],
  ["surface of its own", "shape area 1 m2\n wood mdf", "shape area 1 m2\nwood MDF"],
  ["material", "sheen 10", "sheen 10"],
  ["material", "sheen 25 %", "sheen 25"],
  ["material", "sheen 20 GU", "sheen 20"],
  ["material", "sheen matt", "sheen matte"],
  ["material", "sheen semi gloss", "sheen semi-gloss"],
  ["surface of its own", "shape area 1 m2\n wood birch plywood", "shape area 1 m2\nwood birch plywood"],
  ["surface of its own", "shape area 1 m2\n wood birch ply", "shape area 1 m2\nwood birch plywood"],
  ["surface of its own", "shape area 1 m2\n wood solid oak", "shape area 1 m2\nwood oak"],
  ["surface of its own", "shape area 1 m2\n wood oak veneer", "shape area 1 m2\nwood oak, veneer"],
  [
    "surface of its own",
    "shape area 1 m2\n wood oak veneer 0.6 mm",
    "shape area 1 m2\nwood oak, veneer 0.6 mm",
  ],
  ["surface of its own", "shape area 1 m2\n wood unknown", "shape area 1 m2\nwood unknown"],
  ["recipe", "for plywood", "for plywood"],
  ["recipe", "for mdf", "for MDF"],
  ["recipe", "for beech", "for beech"],
  ["recipe", "safety vapour_mask, gloves and goggles", "safety vapour_respirator, gloves, eye_protection"],
  ["recipe", "safety extraction, air_fed_mask", "safety ventilate, supplied_air"],
  ["recipe", "safety mask A2-P2", "safety vapour_respirator"],
  ["piece", "use_by everybody", "use_by children"],
  ["material", "potlife 4 h", "pot_life 4 h"],
  ["material", "cut 2 lb", "cut 2 lb/gal"],
  ["material", "batch 12345", 'batch "12345"'],
  ["material", "batch B-22 / 4", 'batch "B-22 / 4"'],
  ["material", "colour dark brown", 'colour "dark brown"'],
  ["material", "colour RAL 9016", 'colour "RAL 9016"'],
  ["material", "recoat 4 h or after 24 h sand", "recoat 4 h to 24 h"],
  ["material", "recoat 4 h or sand after 24 h", "recoat 4 h to 24 h"],
  ["job without apply", "apply q(c: oil_varnish)", "apply q(c: oil_varnish)"],
  ["job without apply", "apply q(c: oil_varnish) to everything", "apply q(c: oil_varnish) to all"],
];

const MONEY_AND_DATES: readonly Row[] = [
  ["piece", "bought $11.50", "bought 11.50"],
  ["piece", "bought £8.50", "bought 8.50"],
  ["piece", "new £150", "new 150"],
  ["material", "sold 946 mL for 89,90, 3785 mL for 58,00", "sold 946 mL for 89.90, 3785 mL for 58.00"],
  ["material", "sold 1 L for 45,-", "sold 1 L for 45"],
  ["material", "sold 5 kg for 32 EUR/kg", "sold 5 kg for 160"],
  ["material", "sold 500 g for 9 €", "sold 500 g for 9"],
  ["material", "sold 1 lb for 12", "sold 1 lb for 12"],
  ["material", "covers 100 g/m2", "covers 100 g/m2"],
  ["material", "sold 28,50 mL for 3", "sold 28.50 mL for 3"],
  ["shop", "labour $18/hr", "labour 18 per h"],
  ["job", "start 14.11.2026", "start 2026-11-14"],
  ["job", "start 03.11.2026 8am", "start 2026-11-03 08:00"],
  ["job", "ready Thursday 2026-12-10", "ready 2026-12-10"],
  ["job", "start 27 Nov 2026 at 7.30", "start 2026-11-27 07:30"],
  ["job", "start Nov 27th, 2026", "start 2026-11-27"],
  ["job", "start 11/27/2026", "start 2026-11-27"],
  ["shop", "hours Mon-Fri 8-17", "hours Mon to Fri 08:00 to 17:00"],
  [
    "shop",
    "hours weekdays 7.30-12:00, 13:00-16:30",
    "hours Mon to Fri 07:30 to 12:00, Mon to Fri 13:00 to 16:30",
  ],
  ["shop", "hours Sat and Sun 9am to 1pm", "hours Sat to Sun 09:00 to 13:00"],
  ["shop", "closed 24.12.2026 - 1.1.2027", "closed 2026-12-24 to 2027-01-01"],
];

const LAYERS: readonly Row[] = [
  ["recipe", "layer m1 x 3, by pad, between sand 220", "layer m1 x 3, by pad, between sand 220"],
  ["recipe", "layer m1 x 3, sand 400 between coats", "layer m1 x 3, between sand 400"],
  ["recipe", "layer m1 x 2, 4 hours between coats", "layer m1 x 2, between wait 4 hours"],
  ["recipe", "layer m1 x 2, 60-90 min between", "layer m1 x 2, between wait 60 min to 90 min"],
  ["recipe", "layer m1 x 2, overnight between coats", "layer m1 x 2, between wait overnight"],
  ["recipe", "layer m1, thin", "layer m1, thin"],
  ["recipe", "layer m1, mist coat, by spray", "layer m1, mist, by spray"],
  ["recipe", "layer m1, full coat", "layer m1, full"],
  ["recipe", "layer m1 mist coat, by spray", "layer m1, mist, by spray"],
  ["recipe", "layer thin coat of m1 x 2, by pad", "layer m1 x 2, thin, by pad"],
  ["recipe", "layer m1, if needed", "layer m1, if needed"],
  ["recipe", "layer m1 x 2, only if necessary, by pad", "layer m1 x 2, if needed, by pad"],
  ["recipe", "layer m1, only where rough", 'layer m1, only "where rough"'],
  ["recipe", "layer m1, 2 passes, flash 10 min", "layer m1, passes 2, flash 10 min"],
  ["recipe", "layer m1, in 3 passes, flash-off 10 min between passes", "layer m1, passes 3, flash 10 min"],
  ["recipe", "layer m1, passes 2, 5 min between passes", "layer m1, passes 2, flash 5 min"],
  ["recipe", "layer m1 30 g/m2", "layer m1, wet 30 g/m2"],
  ["recipe", "layer m1, 5 % mineral_spirits", "layer m1, thinned 20:1 with mineral_spirits"],
  ["recipe", "layer m1, flooded", "layer m1, flooded"],
  ["recipe", "layer m1, 30 g/m2", "layer m1, wet 30 g/m2"],
  ["recipe", "layer m1, 100-120 g/m2", "layer m1, wet 100 g/m2 to 120 g/m2"],
  ["recipe", "layer m1, thinned 10 % with mineral_spirits", "layer m1, thinned 10:1 with mineral_spirits"],
  ["recipe", "layer m1, thinned 50/50 with mineral_spirits", "layer m1, thinned 50:50 with mineral_spirits"],
  ["mix", "mix hardener 10:1", "mix 10:1 with hardener"],
  ["mix", "mix 10:1 hardener", "mix 10:1 with hardener"],
  ["mix", "mix 4 parts to 1 part hardener", "mix 4:1 with hardener"],
  ["mix", "mix 1 % hardener", "mix 100:1 with hardener"],
  ["mix", "mix 10:1 by weight with hardener", "mix 10:1 by weight with hardener"],
  ["mix", "mix 10:1 with hardener by weight", "mix 10:1 by weight with hardener"],
  ["mix", "mix hardener 10:1 by weight", "mix 10:1 by weight with hardener"],
  ["mix", "mix 10:1 by volume hardener", "mix 10:1 by volume with hardener"],
];

const TEXTS: readonly Row[] = [
  ["piece", 'note "One drawer is missing."', 'note "One drawer is missing."'],
  ["surface", "note ink stains at the left", 'note "ink stains at the left"'],
  ["job", "note number the drawers, top to bottom", 'note "number the drawers, top to bottom"'],
  ["recipe", "note don't rub the edges", 'note "don\'t rub the edges"'],
  ["job", "owner Town library", 'owner "Town library"'],
  ["job", "customer Town library", 'owner "Town library"'],
  ["job", "delivery by the side door, 2 to carry", 'delivery "by the side door, 2 to carry"'],
  [
    "piece",
    'surface side "Left side" {\n shape area 1 m2\n wood beech\n}',
    'surface side "Left side" {\nshape area 1 m2\nwood beech\n}',
  ],
];

const READ: Readonly<Record<string, readonly Row[]>> = {
  coats: COATS,
  units: UNITS,
  ranges: RANGES,
  "lower limits": LIMITS,
  "steps and grits": STEPS,
  methods: METHODS,
  waits: WAITS,
  "kinds and words": KINDS,
  "money and dates": MONEY_AND_DATES,
  layers: LAYERS,
  "notes and titles": TEXTS,
};

for (const [topic, rows] of Object.entries(READ)) {
  describe(topic, () => {
    it.each(rows)("%s: %s", (block, written, plain) => {
      const text = BLOCKS[block]!(written);
      expect(findingsIn(block, written)).toBe("");
      expect(plainLines(block, written)).toBe(plain);
      expect(meaningOf(formatted(text))).toBe(meaningOf(text));
      expect(formatted(formatted(text))).toBe(formatted(text));
    });
  });
}

/** Block, as written, what the message says, the lines that its fixes write. */
type Refusal = readonly [block: string, written: string, message: RegExp, fixes: readonly string[]];

const ASKED: readonly Refusal[] = [
  ["material", "recoat 2-3 h", /earliest time.*window/u, ["recoat 3 h", "recoat 2 h to 3 h"]],
  [
    "family",
    "family shellac",
    /may be several families/u,
    ["family dewaxed shellac", "family waxed shellac"],
  ],
  [
    "family",
    "family paint",
    /may be several families/u,
    ["family acrylic paint", "family alkyd paint", "family chalky paint", "family milk paint"],
  ],
  [
    "family",
    "family primer",
    /may be several families/u,
    [
      "family acrylic primer",
      "family alkyd primer",
      "family stain blocking primer",
      "family shellac primer",
      "family bonding primer",
    ],
  ],
  ["family", "family shellac flakes", /may be several/u, ["family dewaxed shellac", "family waxed shellac"]],
  ["family", "family thick layer glaze", /may be several/u, ["family spar varnish", "family alkyd paint"]],
  [
    "family",
    "family glue",
    /may be several/u,
    [
      "family wood glue",
      "family hide glue",
      "family epoxy glue",
      "family polyurethane glue",
      "family contact adhesive",
    ],
  ],
  ["recipe", "wait until dry", /may mean several/u, ["wait until touch", "wait until recoat"]],
  ["recipe", "safety mask", /may mean several/u, ["safety dust_mask", "safety vapour_respirator"]],
  ["recipe", "step sand only where rough", /step sand 320 "only where rough"/u, []],
  ["recipe", "step sand 180 then scuff 400", /two steps.*step scuff/u, ["step sand 180\nstep scuff 400"]],
  ["recipe", "step sand 220 x 2", /Write the line again/u, []],
  ["recipe", "layer m1, mineral_spirits 10-20 %", /thinned 5:1 with mineral_spirits/u, []],
  ["recipe", "layer m1, flash 10 min", /between the passes.*passes 2/u, ["layer m1, passes 2, flash 10 min"]],
  ["recipe", "safety food_safe", /`use_by food`/u, []],
  ["surface", "sides both", /both faces/u, []],
  ["surface", "wear weather", /wear hard/u, []],
  ["shop", "location outside", /air 18 C/u, []],
  ["shop", "hours Sat and Sun", /hours Sat to Sun 09:00 to 17:00/u, []],
  ["material", "price 28.00", /sold 1 L for 28.00/u, []],
  ["material", "thin thinner, 10-20 %", /thin mineral spirits/u, []],
  ["piece", "price 60", /bought 60.00.*new 1150.00/u, []],
  [
    "recipe",
    "layer m1, thinned 50 % with mineral_spirits",
    /share of the mix/u,
    ["layer m1, thinned 2:1 with mineral_spirits", "layer m1, thinned 1:1 with mineral_spirits"],
  ],
  ["material", "sold 16 oz for 18.00", /fluid/u, ["sold 16 floz for 18.00"]],
  ["piece", "bought 1.480 EUR", /thousands/u, ["bought 1480", "bought 1.48"]],
  ["job", "start 3/4/2027", /two days/u, ["start 2027-04-03", "start 2027-03-04"]],
  ["job", "start Friday 12:00", /write the whole date/u, []],
  ["job", "ready next Wednesday", /write the whole date/u, []],
  ["job", "ready end of December", /write the whole date/u, []],
  ["job", "start KW 46 Friday", /write the whole date/u, []],
];

/** Slips of the pen, and what means nothing. */
const MISTAKEN: readonly Refusal[] = [
  ["recipe", "step sand softly 320", /not a grit/u, ['step sand 320 "softly"']],
  ["recipe", "wait 30 m", /Minutes are `min`/u, []],
  ["recipe", "wait gently", /Expected a time.*found `gently`/su, []],
  ["recipe", "step sand gently", /step sand 320 "gently"/u, []],
  ["recipe", "step rinse", /clean, dewax, dust, strip, dampen or another of the \d+/u, []],
  ["recipe", "safety breathing_gear", /vapour_respirator, supplied_air, ventilate/u, []],
  ["recipe", "step fettle", /any other work in quotes/u, []],
  ["recipe", "step clean with st and m1", /the end of the line or a comma/u, []],
  ["recipe", "wait 16 h until recoat", /`wait 16 h` or `wait until recoat`/u, []],
  ["surface", "existing unknown", /existing unknown clear/u, []],
  ["surface", "shape panel 5 ft 14 in x 2 ft", /a ft or more/u, []],
  ["recipe", "layer m1, tinted 100 % with st", /below 100 %/u, []],
];

describe("what could mean two things is asked about", () => {
  it.each([...ASKED, ...MISTAKEN])("%s: %s", (block, written, message, fixes) => {
    const text = BLOCKS[block]!(written);
    const [finding, ...more] = languageFindings(text);
    expect(more).toEqual([]);
    expect(textOfFinding(finding!)).toMatch(message);
    const around = new Set(
      BLOCKS[block]!("")
        .split("\n")
        .map((line) => line.trim()),
    );
    const written_ = finding!.fixes.map((fix) =>
      afterFix(text, fix)
        .split("\n")
        .map((line) => line.trim())
        .filter((line) => line !== "" && !around.has(line))
        .join("\n"),
    );
    if (fixes.length > 0) expect(written_).toEqual(fixes);
  });
});

test("most of what people write is read, the rest asked about", () => {
  const read = Object.values(READ).flat().length;
  expect(read / (read + ASKED.length)).toBeGreaterThanOrEqual(0.85);
});
