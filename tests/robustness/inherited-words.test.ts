/**
 * Words that every object inherits (`constructor`, `toString`, `__proto__`) are words like any other: in the place of
 * any word of a text they are unknown, and no table answers for them.
 */
import { describe, expect, it } from "vitest";
import { parseFile } from "../../grammar/src/parse.ts";
import { tokensOfBody } from "../../grammar/src/tokens-of.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { askEverything } from "../attack/ask-everything.ts";
import { plan } from "../harness/planner.ts";
import { IS_LONG_RUN, shareOf } from "../harness/share.ts";

/** The others of `Object.prototype` are methods, as `constructor` is. */
const INHERITED = ["constructor", "__proto__"];

const TEXT = `material m "Clear" {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h to 24 h
  thin water, up to 10 %
  mix 10:1 with h
  sheen satin
  packs 1 L for 20
}
material h "Hardener" {
  family solvent
}
piece table {
  built 1930
  wear hard
  surface top {
    shape panel 1 m x 1 m
    wood oak
    existing waxed shellac, paste wax
    lead none_found by laboratory 2026-11-03
  }
}
shop mill {
  air 20 C, 50 %
  hours Mon to Fri 09:00 to 17:00
  ignition pilot_light
  country US
}
recipe inner(grit: number = 220) {
  step sand 120, grit
}
recipe r(clear: material = m) {
  for wood
  safety gloves, ventilate 6 air changes/h
  step mask "glass"
  step clean with mineral_spirits
  step sand 120 "orbital sander"
  wait overnight
  step fill grain
  layer clear x 2, by brush, thinned 10:1 with water, wiped off after 10 min {
    wait until recoat
    follow inner(grit: 320)
    step scuff 320
  }
  wait until cured
  note "Words."
}
job j {
  piece table
  shop mill
  start 2027-03-01
  ready 2027-06-01
  apply r(clear: m) to top
}
`;

/** Every distinct place of a word, as the texts with another word there. */
function* replaced(text: string, word: string): Iterable<{ readonly text: string; readonly at: number }> {
  for (const piece of parseFile(text).pieces) {
    if (piece.kind !== "declaration") continue;
    for (const token of tokensOfBody(piece.body)) {
      if (token.kind !== "word") continue;
      const start = piece.offset + token.start;
      yield { text: text.slice(0, start) + word + text.slice(start + token.text.length), at: start };
    }
  }
}

function flawsOf(text: string, offsets: readonly number[]): readonly string[] {
  const analyst = createAnalyst({ resolve: (_, path) => path, plan });
  analyst.setFile("a.finish", text);
  const { answers, flaws } = askEverything(analyst.analysis(), "a.finish", offsets);
  const said = JSON.stringify(answers);
  return [
    ...flaws.map(({ detail }) => detail),
    ...(said.includes("[native code]") || said.includes("[object Object]")
      ? ["an inherited value is shown"]
      : []),
  ];
}

describe("words that every object inherits", () => {
  it.each(INHERITED)("%s is taken for an unknown word wherever it stands", (word) => {
    // One of the two at every place; both in the long run.
    const places = [...replaced(TEXT, word)].slice(IS_LONG_RUN ? 0 : INHERITED.indexOf(word));
    const flaws = shareOf(places, INHERITED.length).flatMap(({ text, at }) =>
      flawsOf(text, [at + 1]).map((flaw) => `${text.slice(at - 10, at + 20)}: ${flaw}`),
    );
    expect(flaws).toEqual([]);
  });
});
