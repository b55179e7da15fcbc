/**
 * Random whole programs: materials, a piece with surfaces, a shop, a recipe and a job, as data that can be changed in one
 * respect and written out again, in metric units or in US ones.
 *
 * What is drawn is small and sound in its units, not a sound recipe: totals and plans are reckoned whatever the rules
 * of the trade say. Sizes are whole sixteenths of an inch and times whole minutes, so that both spellings are exact and
 * the schedule's verifier can look at every minute.
 */
import fc from "fast-check";
import type { JobResult } from "../../../server/src/core/totals/job-totals.ts";
import { analyse, findingsOf } from "../../harness/check-text.ts";

export interface MaterialSpec {
  readonly family: string;
  readonly coversM2PerL: number;
  readonly vocGPerL: number;
  readonly solids: number;
  /** Whole minutes. */
  readonly touch: number;
  readonly recoat: number;
  /** Latest end of the window; undefined: none. */
  readonly latest: number | undefined;
  readonly cure: number;
  /** Container sizes in whole US fluid ounces, with prices. */
  readonly sold: readonly { readonly floz: number; readonly price: number }[];
  readonly onHandFloz: number;
}

export interface ShapeSpec {
  readonly count: number;
  readonly word: string;
  /** Sizes in sixteenths of an inch; two in a pair taper. */
  readonly sizes: readonly (number | readonly [number, number])[];
  readonly option: string;
}

export interface LineSpec {
  readonly kind: "layer" | "sand" | "scuff" | "dust" | "wait" | "until" | "overnight";
  readonly material: number;
  readonly coats: number;
  readonly method: string;
  /** Whole minutes: hands-on where stated (0: the tool's own table), or the wait. */
  readonly minutes: number;
  readonly stage: string;
  readonly between: boolean;
}

export interface ProgramSpec {
  readonly materials: readonly MaterialSpec[];
  readonly surfaces: readonly (readonly ShapeSpec[])[];
  readonly pieces: number;
  readonly lines: readonly LineSpec[];
  readonly crew: number;
  readonly open: boolean;
  readonly airC: number;
  readonly humidity: number;
  readonly spare: number;
}

const size = fc.integer({ min: 8, max: 1200 });
const thickness = fc.integer({ min: 4, max: 40 });
const shape = (
  word: string,
  sizes: readonly fc.Arbitrary<number | [number, number]>[],
  ...options: string[]
) =>
  fc.record({
    count: fc.integer({ min: 1, max: 4 }),
    word: fc.constant(word),
    sizes: fc.tuple(...sizes),
    option: fc.constantFrom("", ...options),
  });

/** Every shape of the notation that has lengths. */
export const anyShape: fc.Arbitrary<ShapeSpec> = fc.oneof(
  shape("panel", [size, size], "both faces"),
  shape("panel", [size, size, thickness], "both faces"),
  shape("disc", [size], "both faces"),
  shape("disc", [size, thickness]),
  shape("oval", [size, size]),
  shape("oval", [size, size, thickness], "both faces"),
  shape("band", [size, size, size], "inside too"),
  shape("post", [fc.tuple(size, size), size]),
  shape("post", [size, size]),
  shape("round", [fc.tuple(size, size), size]),
  shape("round", [size, size]),
  shape("box", [size, size, size], "no bottom", "open"),
);

const FAMILIES = [
  "waterborne polyurethane",
  "oil varnish",
  "nitrocellulose lacquer",
  "acrylic paint",
  "alkyd paint",
  "dewaxed shellac",
];

const anyMaterial: fc.Arbitrary<MaterialSpec> = fc.record({
  family: fc.constantFrom(...FAMILIES),
  coversM2PerL: fc.integer({ min: 5, max: 20 }),
  vocGPerL: fc.integer({ min: 0, max: 700 }),
  solids: fc.integer({ min: 5, max: 60 }),
  touch: fc.integer({ min: 5, max: 120 }),
  recoat: fc.integer({ min: 120, max: 1500 }),
  latest: fc.option(fc.integer({ min: 1600, max: 6000 }), { nil: undefined }),
  cure: fc.integer({ min: 1500, max: 9000 }),
  sold: fc.array(
    fc.record({ floz: fc.integer({ min: 4, max: 128 }), price: fc.integer({ min: 3, max: 90 }) }),
    { minLength: 1, maxLength: 3 },
  ),
  onHandFloz: fc.integer({ min: 0, max: 40 }),
});

const anyLine: fc.Arbitrary<LineSpec> = fc.record({
  kind: fc.constantFrom("layer", "layer", "layer", "sand", "scuff", "dust", "wait", "until", "overnight"),
  material: fc.integer({ min: 0, max: 1 }),
  coats: fc.integer({ min: 1, max: 3 }),
  method: fc.constantFrom("brush", "roller", "pad", "foam", "cloth", "hvlp", "airless"),
  minutes: fc.oneof(fc.constant(0), fc.integer({ min: 5, max: 200 })),
  stage: fc.constantFrom("touch", "recoat"),
  between: fc.boolean(),
});

export const anyProgram: fc.Arbitrary<ProgramSpec> = fc.record({
  materials: fc.tuple(anyMaterial, anyMaterial),
  surfaces: fc.array(fc.array(anyShape, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 2 }),
  pieces: fc.integer({ min: 1, max: 3 }),
  lines: fc.array(anyLine, { minLength: 1, maxLength: 7 }),
  crew: fc.integer({ min: 1, max: 3 }),
  open: fc.boolean(),
  airC: fc.integer({ min: 5, max: 30 }),
  humidity: fc.integer({ min: 20, max: 90 }),
  spare: fc.integer({ min: 0, max: 30 }),
});

/** The rated air of every material; a shop with this air leaves all times as they are. */
export const RATED = { airC: 21, humidity: 50 } as const;

export type Spelling = "metric" | "US";

export function textOf(program: ProgramSpec, spelling: Spelling = "metric"): string {
  const say = SPELLINGS[spelling];
  const materials = program.materials.map((material, index) =>
    block(`material m${index}`, [
      `family  ${material.family}`,
      `covers  ${say.covers(material.coversM2PerL)}`,
      `voc     ${say.voc(material.vocGPerL)}`,
      `solids  ${material.solids} %`,
      `touch   ${material.touch} min`,
      `recoat  ${material.recoat} min${material.latest === undefined ? "" : ` to ${material.latest} min`}`,
      `cure    ${material.cure} min`,
      `rated   ${say.air(RATED.airC)}, ${RATED.humidity} % RH`,
      `packs   ${material.sold.map(({ floz, price }) => `${say.volume(floz)} for ${price}.00`).join(", ")}`,
      `on_hand ${say.volume(material.onHandFloz)}`,
    ]),
  );
  const surfaces = program.surfaces.map((shapes, index) =>
    block(`surface s${index}`, [...shapes.map((each) => shapeText(each, say)), "wood  beech"]),
  );
  const shop = [
    `air  ${say.air(program.airC)}, ${program.humidity} % RH`,
    `crew ${program.crew}`,
    ...(program.open ? [] : ["hours Mon to Fri 09:00 to 17:00, Sat 09:00 to 12:00", "closed 2027-03-11"]),
    "labour 10.00 per h",
  ];
  const names = program.surfaces.map((_, index) => `s${index}`).join(", ");
  return [
    ...materials,
    block("piece thing", surfaces),
    block("shop room", shop),
    block("recipe work", program.lines.flatMap(lineText)),
    block("job it", [
      `piece thing x ${program.pieces}`,
      "in    room",
      "start 2027-03-08",
      `spare ${program.spare} %`,
      `apply work to ${names}`,
    ]),
  ].join("\n");
}

const block = (head: string, lines: readonly string[]): string => `${head} {\n${lines.join("\n")}\n}`;

function lineText(line: LineSpec): readonly string[] {
  const takes = line.minutes > 0 ? `, takes ${line.minutes} min` : "";
  switch (line.kind) {
    case "layer": {
      const head = `layer m${line.material} x ${line.coats}, by ${line.method}${takes}`;
      if (!line.between) return [head];
      return [`${head} {`, "wait until recoat", `step scuff 220${takes}`, "}"];
    }
    case "sand":
      return [`step sand 120, 180${takes}`];
    case "scuff":
      return [`step scuff 220${takes}`];
    case "dust":
      return [`step dust${takes}`];
    case "wait":
      return [`wait ${Math.max(1, line.minutes)} min`];
    case "until":
      return [`wait until ${line.stage}`];
    case "overnight":
      return ["wait overnight"];
  }
}

interface Words {
  length(sixteenths: number): string;
  volume(floz: number): string;
  covers(m2PerL: number): string;
  voc(gPerL: number): string;
  air(celsius: number): string;
}

/** Plain decimals, never with an exponent. */
const decimal = (value: number): string => value.toFixed(12).replace(/\.?0+$/, "");

/** Exact factors: NIST Handbook 44 appendix C. An inch is 25.4 mm, a US gallon 3.785411784 L, a pound 453.59237 g. */
const SPELLINGS: Readonly<Record<Spelling, Words>> = {
  metric: {
    length: (sixteenths) => `${decimal((sixteenths * 25.4) / 16)} mm`,
    volume: (floz) => `${decimal(floz * 29.5735295625)} mL`,
    covers: (m2PerL) => `${m2PerL} m2/L`,
    voc: (gPerL) => `${gPerL} g/L`,
    air: (celsius) => `${celsius} C`,
  },
  US: {
    length: (sixteenths) => `${decimal(sixteenths / 16)} in`,
    volume: (floz) => `${floz} floz`,
    covers: (m2PerL) => `${decimal((m2PerL * 3.785411784) / 0.09290304)} ft2/gal`,
    voc: (gPerL) => `${decimal((gPerL * 3.785411784) / 453.59237)} lb/gal`,
    air: (celsius) => `${decimal(celsius * 1.8 + 32)} F`,
  },
};

function shapeText({ count, word, sizes, option }: ShapeSpec, say: Words): string {
  const each = sizes.map((one) =>
    typeof one === "number" ? say.length(one) : `${say.length(one[0])} to ${say.length(one[1])}`,
  );
  const many = count === 1 ? "" : `${count} of `;
  return `shape ${many}${word} ${each.join(" x ")}${option ? `, ${option}` : ""}`;
}

const LANGUAGE = ["syntax", "wrong-unit", "bad-number", "missing-field", "unknown-field", "unknown-word"];

/** Everything computed of the only job of a text; throws where the text is not in the notation. */
export function resultOf(text: string): JobResult {
  const wrong = findingsOf(text).filter(({ rule }) => LANGUAGE.includes(rule));
  if (wrong.length > 0) throw new Error(`${wrong.map(({ message }) => message).join("\n")}\n${text}`);
  return analyse({ "test.finish": text }).jobs("test.finish")[0]!;
}

/** The same without looking for slips, for tests that reckon much. */
export function reckon(program: ProgramSpec, spelling: Spelling = "metric"): JobResult {
  const result = analyse({ "test.finish": textOf(program, spelling) }).jobs("test.finish")[0]!;
  // Where no date can be promised, what was planned all the same.
  return result.voided?.planned ?? result;
}

/** Hours from start to the last work, in a plan without sessions to the finish; infinite where none keeps all windows. */
export const elapsedOf = ({ schedule }: Pick<JobResult, "schedule">): number =>
  schedule.status === "planned"
    ? (schedule.lastWorkHours ?? schedule.elapsedHours)
    : Number.POSITIVE_INFINITY;
