/**
 * Lines that people wrote before they had read anything: what each is read as, in the plain form that the formatter gives
 * it, or what is asked and the right line that the message writes out.
 */
import { describe, expect, it, test } from "vitest";
import { BLOCKS, findingsIn, languageFindings } from "./blocks.ts";
import { afterFix, formatted, meaningOf, plainLines, textOfFinding } from "./said.ts";
import { READ } from "./unprompted-lines.ts";

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
    "family catalysed lacquer",
    /may be several/u,
    ["family precatalyzed lacquer", "family conversion varnish"],
  ],
  ["family", "family lye", /may be several/u, ["family wood bleach", "family paint stripper"]],
  [
    "family",
    "family two-component epoxy",
    /may be several/u,
    ["family epoxy coating", "family epoxy filler", "family epoxy glue"],
  ],
  ["job", "loss 60 %", /`spare 10 %`.*`by spray, transfer 40 %`/u, []],
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
  ["family", "family soap flakes", /may be several/u, ["family cleaner", "family soap finish"]],
  ["recipe", "wait until dry", /may mean several/u, ["wait until touch", "wait until recoat"]],
  ["recipe", "safety mask", /may mean several/u, ["safety dust_mask", "safety vapour_respirator"]],
  ["recipe", "step sand only where rough", /step sand 320 "only where rough"/u, []],
  ["recipe", "step sand 180 then scuff 400", /two steps.*step scuff/u, ["step sand 180\nstep scuff 400"]],
  ["recipe", "layer m1, mineral_spirits 10-20 %", /thinned 5:1 with mineral_spirits/u, []],
  ["recipe", "layer m1, flash 10 min", /between the passes.*passes 2/u, ["layer m1, passes 2, flash 10 min"]],
  ["recipe", "safety food_safe", /`meant_for food`/u, []],
  ["surface", "sides both", /both faces/u, []],
  ["shop", "location outside", /air 18 C/u, []],
  ["shop", "hours Sat and Sun", /hours Sat to Sun 09:00 to 17:00/u, []],
  ["material", "price 28.00", /packs 1 L for 28.00/u, []],
  ["material", "thin thinner, 10-20 %", /thin mineral spirits/u, []],
  ["piece", "price 60", /bought 60.00.*new_price 1150.00/u, []],
  [
    "recipe",
    "layer m1, thinned 50 % with mineral_spirits",
    /share of the mix/u,
    ["layer m1, thinned 2:1 with mineral_spirits", "layer m1, thinned 1:1 with mineral_spirits"],
  ],
  ["material", "sold 16 oz for 18.00", /fluid/u, ["sold 16 floz for 18.00"]],
  ["piece", "bought 1.480 EUR", /thousands/u, ["bought 1480", "bought 1.48"]],
  ["job", "start 3/4/2027", /two days/u, ["start 2027-04-03", "start 2027-03-04"]],
  ["job", "start 11/27", /write the whole date/u, []],
];

/** Slips of the pen, and what means nothing. */
const MISTAKEN: readonly Refusal[] = [
  ["recipe", "step sand softly 320", /not a grit/u, ['step sand 320 "softly"']],
  ["recipe", "wait 30 m", /Minutes are `min`/u, []],
  ["recipe", "wait gently", /Expected a time.*found `gently`/su, []],
  ["recipe", "step sand gently", /step sand 320 "gently"/u, []],
  ["recipe", "step washout", /clean, dewax, dust, strip, dampen or another of the \d+/u, []],
  ["recipe", "safety breathing_gear", /vapour_respirator, supplied_air, ventilate/u, []],
  ["recipe", "step soap", /layer soap_finish/u, []],
  ["recipe", "step lime", /layer liming_wax, wiped/u, []],
  ["recipe", "step ebonise", /family waterborne stain/u, []],
  ["recipe", "step gild", /layer gold_size/u, []],
  ["recipe", "step stencil", /only "through the stencil"/u, []],
  ["recipe", "step crackle", /layer crackle_medium/u, []],
  [
    "shop",
    "hours Mon 9:00 to 17:00\n hours Sat 9:00 to 13:00",
    /`hours Mon 9:00 to 17:00, Sat 9:00 to 13:00`/u,
    [],
  ],
  ["surface", "existing shellac by alcohol_test", /`tested alcohol softens`/u, []],
  ["surface", "lead no_paint", /Leave the line out/u, []],
  ["material", "limits 8 C, no rain", /`## no rain`/u, []],
  ["material", "tack 12 h", /recoat 12 h/u, []],
  ["shop", "air outdoors", /outdoors rain, sun.*air 12 C/u, []],
  ["job", "invoice 2027-04-30", /note "invoice/u, []],
  ["recipe", "safety no_dry_sanding", /`lead_safe`/u, []],
  ["recipe", "wait until tack", /`wait until recoat`/u, []],
  ["recipe", "step sand 220, 4 of 12 pieces", /a piece of their own/u, []],
  ["recipe", "wait until packable", /stackable.*wait 24 h "until packable"/u, []],
  ["recipe", "layer m1, sheen shiny", /Unknown sheen/u, []],
  ["recipe", 'step repair "leg", costs 6.005', /two decimals/u, []],
  ["recipe", "layer m1, only 120 %", /at most 100 %/u, []],
  ["recipe", "layer m1, only", /only "edges"/u, []],
  ["shop", "hours Mon to Fri from 16:00", /`hours Mon to Fri 16:00 to 20:00`/u, []],
  ["job", "after j racked", /`after j`/u, []],
  ["recipe", "step fettle", /any other work in quotes/u, []],
  ["recipe", "step clean with st and m1", /`step clean with m1` on a line of its own/u, []],
  ["recipe", "layer m1, 10 min wet", /`"10 min wet"`/u, ['layer m1, "10 min wet"']],
  ["recipe", "step spot sand 320", /only "spots"/u, []],
  ["recipe", "step wax", /`layer wax, only "runners"`/u, []],
  ["material", "thin mineral spirits, 1:10", /less thinner.*up to 10 %/u, ["thin mineral spirits, 10:1"]],
  ["surface", "lead not_tested by swab 2026-11-03", /the end of the line/u, []],
  ["material", "sheen gloss 10", /not gloss/u, ["sheen 10", "sheen gloss"]],
  ["recipe", "step strip by contractor, costs 11.00", /`step "strip at the contractor's", costs 11.00`/u, []],
  ["material", "covers 10 ft2/can", /`covers 10 ft2\/qt`/u, []],
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
