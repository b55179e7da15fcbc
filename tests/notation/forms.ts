/**
 * Every form that the grammar reads, as lines by the block that they stand in: the examples of its words, what people write
 * for them in every table of spellings, and the lines that people wrote before they had read anything.
 */
import {
  FORMER_FIELDS,
  HOW_PHRASES,
  IF_NEEDED,
  METHOD_SPELLINGS,
  OWN_WORK,
  STAGE_SPELLINGS,
  TOOLS,
  VERB_SPELLINGS,
  VERB_SPELLINGS_WITH,
} from "../../grammar/src/spellings.ts";
import { UNIT_ALIASES, UNIT_GROUPS, UNIT_SPELLINGS } from "../../grammar/src/units.ts";
import {
  DUTIES,
  FIELDS,
  METHODS,
  SHAPES,
  STATEMENTS,
  TAILS,
  VERBS,
  WAIT_STAGES,
} from "../../grammar/src/vocabulary.ts";
import {
  DAY_SPELLINGS,
  DUTY_SPELLINGS,
  SHEENS_SAID,
  WORD_SPELLINGS,
} from "../../grammar/src/word-spellings.ts";
import { READ } from "./unprompted-lines.ts";

export type FormBlock = "material" | "piece" | "surface" | "shop" | "recipe" | "job";
type FieldWords = Readonly<Record<string, { readonly example: string }>>;

const BLOCK_NAMES: readonly FormBlock[] = ["material", "piece", "surface", "shop", "recipe", "job"];

/** The block of each word that values are spelt for. */
const blockOf = (word: string): FormBlock | undefined =>
  BLOCK_NAMES.find((block) => Object.hasOwn(FIELDS[block], word));

const keysOf = (table: Readonly<Record<string, unknown>>): readonly string[] => Object.keys(table);

/** Tails as they stand in the notation, and as they are said. */
export const LAYER_TAILS: readonly string[] = [
  ...Object.values(TAILS).flatMap(({ on, example }) => (on === "step" ? [] : [example])),
  ...[...METHODS, ...keysOf(METHOD_SPELLINGS)].flatMap((method) => [`by ${method}`, `by a ${method}`]),
  ...keysOf(IF_NEEDED),
  ...keysOf(SHEENS_SAID).flatMap((sheen) => [sheen, `sheen ${sheen}`]),
  "2 passes",
  "in 3 passes",
  "flash-off 10 min between passes",
  "30 g/m2",
  "100-120 g/m2",
  "5 % mineral_spirits",
  "thinned 10 % with mineral_spirits",
  "wiped",
  "wiped after 15 min",
  "mist coat",
  "full coat",
  "edges only",
  "on the edges only",
  "only 20 % of the seat",
  "only where rough",
  "sand 400 between coats",
  "4 hours between coats",
  "between coats sand 320 and wait 3 h",
];

export const STEP_TAILS: readonly string[] = [
  ...Object.values(TAILS).flatMap(({ on, example }) => (on === "layer" ? [] : [example])),
  "edges only",
  "only where rough",
  "costs $6.00",
  "takes 20 mins",
];

/** The material of a layer with its coats. */
export const LAYER_HEADS: readonly string[] = [
  "layer m1",
  "layer m1 x 3",
  "layer m1 x 2-3 coats",
  "layer m1 x 2 or 3",
  "layer m1 2 coats",
  "layer m1, 2 coats",
  "layer 2 x m1",
  "layer 2 coats of m1",
  "layer m1 x 6-8 sessions",
  "layer thin coat of m1 x 2",
  "2 x m1",
  "2 coats m1",
  "mist coat m1",
];

export const STEP_HEADS: readonly string[] = [
  ...Object.values(VERBS).map(({ example }) => example),
  ...keysOf(VERB_SPELLINGS).map((verb) => `step ${verb}${argumentOf(VERB_SPELLINGS[verb]!.verb)}`),
  ...keysOf(VERB_SPELLINGS_WITH).map((verb) => `step ${verb} with soap`),
  ...keysOf(OWN_WORK).flatMap((work) => [`step ${work}`, `step ${work} loose veneer with m1`]),
  ...TOOLS.map((tool) => `step clean the legs with soap and ${tool}`),
  ...HOW_PHRASES.flatMap((how) => [`step sand 320 ${how}`, `step sand ${how} 320`]),
  "step sand P80, P120",
  "step sand 120/150/180 grit",
  "step sand 180-220",
  "step sand 120 then 180",
  "step sand with 320",
];

function argumentOf(verb: string): string {
  const form = VERBS[verb]!.form;
  if (form === "grits") return " 320";
  if (form === "material") return " with soap";
  return form === "what" || form === "what-with" ? ' "this"' : "";
}

const UNITS: readonly (readonly [FormBlock, string])[] = Object.entries({
  ...UNIT_SPELLINGS,
  ...Object.fromEntries(Object.entries(UNIT_ALIASES).map(([alias, plain]) => [`${plain} ${alias}`, [alias]])),
}).flatMap(([key, said]) => said.flatMap((unit) => lineOfUnit(key.split(" ")[0]!, unit)));

/** A line in which a unit may stand. */
function lineOfUnit(plain: string, unit: string): readonly (readonly [FormBlock, string])[] {
  const group = keysOf(UNIT_GROUPS).find((each) => UNIT_GROUPS[each]!.includes(plain));
  const lines: Readonly<Record<string, readonly (readonly [FormBlock, string])[]>> = {
    length: [["surface", `shape panel 30${/^["'″”′’]/u.test(unit) ? "" : " "}${unit} x 20 in`]],
    area: [["surface", `shape area 3 ${unit}`]],
    volume: [["material", `packs 3 ${unit} for 9.00`]],
    time: [["recipe", `wait 3-4 ${unit}`]],
    temperature: [["shop", `air 18-20 ${unit}, 50 % RH`]],
    mass: [["material", `packs 3 ${unit} for 9.00`]],
    share: [["material", `solids 33 ${unit}`]],
    "air change": [["shop", `room 45 m3, 2 ${unit}${/\/|^ACH/u.test(unit) ? "" : "/h"}`]],
  };
  if (/^air change/u.test(unit)) return [["shop", `room 45 m3, 2 ${unit.replace("/h", "")}/h`]];
  return lines[group ?? ""] ?? [["material", `covers 10 ${unit}`]];
}

/** Blocks of the table of what was read that are others of the notation. */
const READ_BLOCKS: Readonly<Record<string, FormBlock>> = {
  family: "material",
  mix: "material",
  cleaner: "material",
  "job without apply": "job",
};

const READ_LINES: readonly (readonly [FormBlock, string])[] = Object.values(READ)
  .flat()
  .flatMap(([block, written]) => {
    const own = READ_BLOCKS[block] ?? block;
    return BLOCK_NAMES.includes(own as FormBlock) ? [[own as FormBlock, written] as const] : [];
  });

/** Every form, alone on its line. */
export const FORMS: readonly (readonly [FormBlock, string])[] = [
  ...BLOCK_NAMES.flatMap((block) =>
    [...Object.values(FIELDS[block] as FieldWords), ...Object.values(STATEMENTS[block] as FieldWords)]
      .filter(({ example }) => !example.endsWith("{"))
      .map(({ example }) => [block, example] as const),
  ),
  ...Object.entries(FORMER_FIELDS).flatMap(([block, fields]) =>
    Object.entries(fields).map(
      ([former, plain]) =>
        [
          block as FormBlock,
          (FIELDS[block as FormBlock] as FieldWords)[plain]!.example.replace(plain, former),
        ] as const,
    ),
  ),
  ...[...WORD_SPELLINGS].flatMap(([field, table]) => {
    const block = blockOf(field);
    return block === undefined
      ? []
      : [...table.keys()].flatMap((said) => [
          [block, `${field} ${said}`] as const,
          [block, `${field} ${said.toUpperCase()}`] as const,
          [block, `${field} ${said.replaceAll(" ", "-")}`] as const,
        ]);
  }),
  ...Object.values(SHAPES).map(({ example }) => ["surface", example] as const),
  ...[...DAY_SPELLINGS.keys()].map((days) => ["shop", `hours ${days} 9-17`] as const),
  ...[...DUTIES, ...DUTY_SPELLINGS.keys()].map((duty) => ["recipe", `safety gloves and ${duty}`] as const),
  ...[...WAIT_STAGES, ...keysOf(STAGE_SPELLINGS)].map((stage) => ["recipe", `wait until ${stage}`] as const),
  ...LAYER_HEADS.map((head) => ["recipe", head] as const),
  ...LAYER_TAILS.map((tail) => ["recipe", `layer m1, ${tail}`] as const),
  ...STEP_HEADS.map((head) => ["recipe", head] as const),
  ...STEP_TAILS.map((tail) => ["recipe", `step fill with m1, ${tail}`] as const),
  ...UNITS,
  ...READ_LINES,
];
