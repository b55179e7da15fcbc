/**
 * After any edits an analysis says what one from scratch says, where declarations are arranged around each other over
 * several files: names that shadow others, files that use each other, rooms that jobs share, jobs after jobs and on what
 * others left, comments that allow findings, and settings that change. Files come, go and change the order of what they
 * declare.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { DEFAULT_CONFIG, type ProjectConfig } from "../../server/src/features/config.ts";
import type { Analysis } from "../../server/src/features/types.ts";
import { plan } from "../harness/planner.ts";
import { expectSame } from "../harness/same.ts";

type Files = Readonly<Record<string, readonly (readonly string[])[]>>;

const table = (name: string, existing: string): string =>
  `piece ${name} {\n  built 1950\n  surface top {\n    shape area 4 m2\n    wood oak\n    wear hard\n${existing}  }\n  surface legs {\n    shape area 1 m2\n    wood beech\n  }\n}`;

const job = (name: string, lines: readonly string[]): string =>
  `job ${name} {\n${lines.map((line) => `  ${line}\n`).join("")}}`;

/** By file, declarations in order, each with the texts that it may have; the empty text leaves it out. */
const FILES: Files = {
  "shop.finish": [
    [
      "shop mill {\n  air 20 C, 50 % RH\n  room 60 m3, 1 air changes/h\n  hours Mon to Fri 09:00 to 17:00\n}",
      "shop mill {\n  air 12 C, 80 % RH\n  room 40 m3\n}",
      "shop mill {\n  air 20 C, 50 % RH\n}",
      "",
    ],
    // Shadows a built-in material, and is shadowed by the others.
    [
      "material oil_varnish {\n  family oil varnish\n  covers 12 m2/L\n  recoat 24 h\n  voc 450 g/L\n  packs 1 L for 30\n  on_hand 2 L\n}",
      "material oil_varnish {\n  family nitrocellulose lacquer\n  covers 8 m2/L\n  voc 700 g/L\n}",
      "",
    ],
  ],
  "west.finish": [
    ['use "shop.finish"', ""],
    ['use "east.finish"', ""],
    ["material oil_varnish {\n  family dewaxed shellac\n}", "", ""],
    [
      "recipe coats(clear: material = oil_varnish) {\n  for wood\n  layer clear x 2 {\n    wait until recoat\n    step sand 220\n    step dust\n  }\n  wait until cured\n}",
      "recipe coats(clear: material = oil_varnish) {\n  safety ventilate, gloves\n  # allow no-ventilation: the doors are open\n  layer clear, sprayed\n}",
      "recipe coats {\n  follow both\n}",
      "",
    ],
    [
      "recipe under {\n  step sand 80, 220\n  step dust\n}",
      "recipe under {\n  follow sanded\n  layer dye_stain\n}",
      "",
    ],
    [
      job("first", ["piece desk", "in mill", "start 2027-03-08", "apply coats to all"]),
      job("first", ["piece desk", "piece bench", "in mill", "start 2027-03-08", "apply coats to bench.top"]),
      job("first", ["piece desk x 4", "after third", "in mill", "start 2027-03-09", "apply under to top"]),
      "",
    ],
    [
      job("second", ["piece desk", "in mill", "after first", "start 2027-03-20", "apply both to top"]),
      job("second", ["piece desk", "in mill", "start 2027-03-08", "apply both to top", "apply coats to top"]),
      "",
    ],
    [
      table("desk", ""),
      table("desk", "    existing as left by third\n"),
      table("desk", "    existing oil varnish, 2 coats\n"),
      "",
    ],
  ],
  "east.finish": [
    ['use "west.finish"', 'use "shop.finish"', ""],
    [
      "recipe sanded {\n  step sand 120\n}",
      "recipe sanded {\n  # allow no-dust-mask: outdoors\n  step sand 120, 150\n}",
      "",
    ],
    [
      "recipe both {\n  follow under\n  follow coats\n}",
      "recipe both(way: recipe = under) {\n  follow way\n  layer oil_varnish, brushed\n}",
      "recipe both {\n  follow coats(clear: oil_varnih)\n}",
      "",
    ],
    ["recipe coats {\n  layer hardwax_oil\n}", "", ""],
    [table("bench", ""), table("bench", "    existing as left by first\n"), ""],
    [
      job("third", ["piece bench", "in mill", "start 2027-03-08", "apply both to top"]),
      job("third", ["piece bench", "in mill", "after second", "start 2027-04-08", "apply sanded to legs"]),
      job("third", ["piece bench", "after third", "apply coats(clear: oil_varnish) to all"]),
      "",
    ],
    [job("fourth", ["piece bench", "in mill", "start 2027-03-08", "apply coats to legs"]), ""],
  ],
  // Recipes that no job applies are judged with the pieces that they must be meant for.
  "lone.finish": [
    ['use "shop.finish"', ""],
    [table("stool", ""), table("stool", "    existing unknown paint\n"), ""],
    [table("crate", ""), "", ""],
    [
      "recipe stain {\n  for wood\n  layer oil_stain\n  layer oil_varnish\n}",
      "recipe stain_legs {\n  layer oil_stain\n}",
    ],
    [
      "recipe stool_top {\n  step sand 120, 150\n  layer hardwax_oil\n}",
      "recipe plated {\n  for metal\n  layer hardwax_oil\n}",
      "",
      "",
    ],
    [job("fifth", ["piece stool", "apply stain to top"]), job("fifth", ["piece crate"]), "", ""],
  ],
};

const NAMES = Object.keys(FILES);

const CONFIGS: readonly ProjectConfig[] = [
  DEFAULT_CONFIG,
  { rules: { "no-dust-mask": "off", "no-ventilation": "error" } },
  { rules: {}, waitMarginPercent: 0 },
];

const resolve = (from: string, path: string): string => new URL(path, `file:///${from}`).pathname.slice(1);

interface State {
  readonly chosen: ReadonlyMap<string, number>;
  /** Files whose declarations stand in the opposite order. */
  readonly turned: ReadonlySet<string>;
  readonly gone: ReadonlySet<string>;
  readonly config: ProjectConfig;
}

function textOf({ chosen, turned }: State, name: string): string {
  const texts = FILES[name]!.map((choices, place) => choices[chosen.get(`${name} ${place}`) ?? 0]!);
  return (turned.has(name) ? texts.toReversed() : texts).join("\n\n");
}

const said = (analysis: Analysis) =>
  NAMES.map((name) => ({
    findings: analysis.findings(name),
    totals: analysis.totals(name),
    air: analysis
      .jobs(name)
      .map(({ air }) => air && [air.roomM3, air.worst?.need, air.worst?.others.toSorted()]),
  }));

/** In the order in which the files came: jobs that share a room are told in it. */
function fromScratch(state: State, order: readonly string[]): ReturnType<typeof said> {
  const analyst = createAnalyst({ resolve, config: () => state.config, parts: { plan } });
  for (const name of order) analyst.setFile(name, textOf(state, name));
  return said(analyst.analysis());
}

const edit = fc.oneof(
  { weight: 8, arbitrary: fc.record({ file: fc.nat(NAMES.length - 1), place: fc.nat(20), text: fc.nat(5) }) },
  { weight: 1, arbitrary: fc.record({ turned: fc.nat(NAMES.length - 1) }) },
  { weight: 1, arbitrary: fc.record({ gone: fc.nat(NAMES.length - 1) }) },
  { weight: 1, arbitrary: fc.record({ config: fc.nat(CONFIGS.length - 1) }) },
);

const toggled = (names: ReadonlySet<string>, name: string): ReadonlySet<string> =>
  names.has(name) ? new Set([...names].filter((other) => other !== name)) : new Set([...names, name]);

function edited(state: State, change: typeof edit extends fc.Arbitrary<infer E> ? E : never): State {
  if ("turned" in change) return { ...state, turned: toggled(state.turned, NAMES[change.turned]!) };
  if ("gone" in change) return { ...state, gone: toggled(state.gone, NAMES[change.gone]!) };
  if ("config" in change) return { ...state, config: CONFIGS[change.config]! };
  const name = NAMES[change.file]!;
  const slot = change.place % FILES[name]!.length;
  const chosen = new Map(state.chosen);
  chosen.set(`${name} ${slot}`, change.text % FILES[name]![slot]!.length);
  return { ...state, chosen };
}

const START: State = { chosen: new Map(), turned: new Set(), gone: new Set(), config: DEFAULT_CONFIG };

test("arrangements over files are as from scratch after any edits", () => {
  let [findings, shared] = [0, 0];
  fc.assert(
    fc.property(
      fc.array(fc.tuple(edit, fc.boolean(), fc.boolean()), { minLength: 1, maxLength: 12 }),
      (edits) => {
        let state = START;
        const analyst = createAnalyst({ resolve, config: () => state.config, parts: { plan } });
        const write = (): void => {
          for (const name of NAMES) {
            if (state.gone.has(name)) analyst.removeFile(name);
            else analyst.setFile(name, textOf(state, name));
          }
        };
        write();
        let older: { readonly analysis: Analysis; readonly state: State } | undefined;
        for (const [change, isAsked, isKept] of edits) {
          state = edited(state, change);
          write();
          if (isKept) older = { analysis: analyst.analysis(), state };
          if (!isAsked) continue; // several edits before anyone looks
          const analysis = analyst.analysis();
          const expected = fromScratch(state, analysis.files);
          findings += expected.reduce((sum, one) => sum + one.findings.length, 0);
          shared += expected.flatMap(({ air }) => air).filter((each) => each?.[2] !== undefined).length;
          expectSame(said(analysis), expected);
          // One of an earlier text that nobody asked yet answers for that text, whatever was asked of later ones.
          if (older && older.state.config === state.config && older.analysis !== analysis)
            expectSame(said(older.analysis), fromScratch(older.state, older.analysis.files));
        }
      },
    ),
    { numRuns: 15, seed: 72 },
  );
  expect(findings).toBeGreaterThan(600);
  expect(shared).toBeGreaterThan(100); // rooms with vapours were compared
});
