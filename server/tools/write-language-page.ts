/**
 * Writes `server/docs/language.md`, the language reference: tables made from the words of the notation, the units and
 * the knowledge tables, between the hand-written parts of `language-text.ts`.
 *
 * Run by `npm run generate`; a test fails when the page is stale.
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import {
  METHOD_SPELLINGS,
  STAGE_SPELLINGS,
  VERB_SPELLINGS,
  VERB_SPELLINGS_WITH,
} from "../../grammar/src/spellings.ts";
import { hasSign, UNIT_ALIASES, UNIT_GROUPS, UNIT_SPELLINGS } from "../../grammar/src/units.ts";
import {
  DECLARATION_WORDS,
  DONE_FACTS,
  FIELDS,
  METHODS,
  PARAMETER_TYPES,
  SHAPES,
  STATEMENTS,
  TAILS,
  TROUBLES,
  VERBS,
  WAIT_STAGES,
} from "../../grammar/src/vocabulary.ts";
import { DUTY_SPELLINGS, WORD_SPELLINGS } from "../../grammar/src/word-spellings.ts";
import { DUTIES } from "../src/core/knowledge/duties.ts";
import { FAMILIES } from "../src/core/knowledge/families.ts";
import type { Family } from "../src/core/knowledge/family-schema.ts";
import { troubleOf } from "../src/core/knowledge/troubles.ts";
import {
  familyGroups,
  type VocabularyName,
  vocabulary,
  woodDoc,
} from "../src/core/knowledge/vocabularies.ts";
import { SUBSTRATES, WOODS } from "../src/core/knowledge/woods.ts";
import { formatDuration } from "../src/core/measure/format-amount.ts";
import { TRANSFER_EFFICIENCY } from "../src/core/quantities/litres.ts";
import {
  DECISIONS,
  INTRODUCTION,
  LAYOUT,
  ONE_PAGE,
  READING,
  RECIPES,
  RECORD,
  SPOKEN,
  WORKED_OUT,
} from "./language-text.ts";
import { DOCS_FOLDER, markdownTable } from "./write-computations.ts";

/** The page that teaches the language, as a step of the walkthrough shows it. */
export const WALKTHROUGH_PAGE = new URL("../../client/walkthrough/language.md", import.meta.url);

const code = (text: string): string => `\`${text}\``;

export function languagePage(): string {
  const parts = [
    "<!-- Written by server/tools/write-language-page.ts; do not edit. -->",
    "",
    "# The language",
    "",
    INTRODUCTION,
    ONE_PAGE,
    READING,
    LAYOUT,
    SPOKEN,
    ...units(),
    ...declarations(),
    ...shapes(),
    ...recipeWords(),
    RECIPES,
    RECORD,
    ...families(),
    ...woods(),
    ...otherWords(),
    WORKED_OUT,
    "## Where the notation leaves room",
    "",
    "Decided as a finisher would expect it, and said here so that nobody has to guess:",
    "",
    ...DECISIONS.map((decision) => `- ${decision}`),
    "",
  ];
  return parts.join("\n");
}

function units(): readonly string[] {
  const all = Object.entries(UNIT_ALIASES);
  const aliases = (isSign: boolean): string =>
    all
      .filter(([other]) => hasSign(other) === isSign)
      .map(([other, plain]) => `${code(other)} (${code(plain)})`)
      .join(", ");
  return [
    "## Units",
    "",
    "Units are checked: `covers 3 h` is an error at the `3 h`, with what was expected. Volumes are US customary ones.",
    "",
    ...markdownTable(
      ["what", "units"],
      Object.entries(UNIT_GROUPS).map(([what, words]) => [what, words.map(code).join(" ")]),
    ),
    "",
    `Also read, and formatted to the plain form in brackets: ${aliases(true)}.`,
    `Also read, as the unit in brackets: ${aliases(false)}.`,
    `As labels write them, in any case, with points or without: ${spellings()}. Rates are read from these as well: \`sq. ft. per quart\` (\`ft2/qt\`), \`m2 per liter\` (\`m2/L\`).`,
    'Marks of inches and feet stand directly behind their number (`48"`), titles behind a blank.',
    "",
  ];
}

function spellings(): string {
  return Object.entries(UNIT_SPELLINGS)
    .filter(([, words]) => words.length > 0)
    .map(([plain, words]) => `${words.map(code).join(" ")} (${code(plain)})`)
    .join(", ");
}

type Block = keyof typeof FIELDS;

function declarations(): readonly string[] {
  const blocks: readonly Block[] = ["material", "piece", "surface", "shop", "recipe", "job"];
  return [
    "## Declarations",
    "",
    ...markdownTable(
      ["word", "for example", "what it is"],
      Object.entries(DECLARATION_WORDS).map(([word, { example, doc }]) => [code(word), code(example), doc]),
    ),
    "",
    ...blocks.flatMap((block) => [
      `### Lines of a ${block}`,
      "",
      ...markdownTable(["line", "for example", "what it says", ""], blockRows(block)),
      "",
    ]),
    `Parameters of a recipe are of the types ${PARAMETER_TYPES.map(code).join(", ")}, with an optional default: \`coats: number = 3\`. A \`method\` stands behind \`by\`, \`grits\` behind \`sand\` and \`scuff\`, a \`ratio\` behind \`thinned\`, so that brush and spray are one recipe: \`clear_top(how: method = pad, paper: grits = 120/150/180, thinning: ratio = 4:1)\` has \`layer clear, by how, thinned thinning with water\` and \`step sand paper\`.`,
    "",
  ];
}

function blockRows(block: Block): readonly (readonly string[])[] {
  const lines = { ...FIELDS[block], ...STATEMENTS[block] };
  return Object.entries(lines).map(([word, line]) => [
    code(word),
    code(line.example),
    line.doc,
    [line.required ? "required" : "", line.repeatable ? "may repeat" : ""].filter((mark) => mark).join(", "),
  ]);
}

function shapes(): readonly string[] {
  return [
    "## Shapes",
    "",
    "Each is an area; several lines of a surface add up, `4 of` multiplies, `, plus 10 %` allows for mouldings.",
    "A size that may be left out has a question mark; one with `~` may taper, as in `75 mm to 50 mm`.",
    "",
    ...markdownTable(
      ["shape", "sizes", "options", "for example", "what it is"],
      Object.entries(SHAPES).map(([word, shape]) => [
        code(word),
        shape.sizes.join(" x "),
        shape.options.map(code).join(", "),
        code(shape.example),
        shape.doc,
      ]),
    ),
    "",
    "The formulas stand in [computations](computations.md#areas).",
    "",
  ];
}

function recipeWords(): readonly string[] {
  const examples = (words: Readonly<Record<string, { readonly example: string; readonly doc: string }>>) =>
    Object.entries(words).map(([word, { example, doc }]) => [code(word), code(example), doc]);
  return [
    "## Verbs of a step",
    "",
    ...markdownTable(["verb", "for example", "what it does"], examples(VERBS)),
    "",
    `Also read as verbs: ${verbSpellings()}. Any other work is said in quotes: \`step "lift the loose veneer"\`.`,
    "",
    "## Tails",
    "",
    "After a comma, in any order; `x N` follows the material's name without one.",
    "",
    ...markdownTable(
      ["tail", "after", "for example", "what it says"],
      Object.entries(TAILS).map(([word, { on, example, doc }]) => [
        code(word),
        on === "both" ? "`step` and `layer`" : code(on),
        code(example),
        doc,
      ]),
    ),
    "",
    `Methods after \`by\`, with what they bring onto the piece: ${METHODS.map((method) => `${code(method)} ${TRANSFER_EFFICIENCY[method]}`).join(", ")}; \`brush\` if not said. Also read: ${spelt(METHOD_SPELLINGS)}.`,
    `After \`wait until\`: ${WAIT_STAGES.map(code).join(", ")}. Also read: ${spelt(STAGE_SPELLINGS)}.`,
    "",
    "## What a `done` line says",
    "",
    ...markdownTable(["behind a comma", "for example", "what it says"], examples(DONE_FACTS)),
    "",
    ...markdownTable(
      ["trouble", "what it looks like", "what it comes of", "what to do", "source"],
      TROUBLES.flatMap((word) => troubleOf(word) ?? []).map(({ word, looks, causes, remedy, source }) => [
        code(word),
        looks,
        causes.join(", "),
        remedy,
        source,
      ]),
    ),
    "",
    "## Safety duties",
    "",
    ...markdownTable(
      ["duty", "what to do", "who decides", "source"],
      DUTIES.map(({ word, doc, defer, source }) => [code(word), doc, defer, source]),
    ),
    "",
    `\`ventilate 10 air changes/h\` says how much. Also read: ${speltMap(DUTY_SPELLINGS)}.`,
    "",
  ];
}

const speltMap = (words: ReadonlyMap<string, string>): string => spelt(Object.fromEntries(words));

const spelt = (words: Readonly<Record<string, string>>): string =>
  Object.entries(words)
    .map(([written, plain]) => `${code(written)} (${code(plain)})`)
    .join(", ");

function verbSpellings(): string {
  const text = ({ verb, how }: { readonly verb: string; readonly how?: string }) =>
    how === undefined ? verb : `${verb} "${how}"`;
  const plain = Object.entries(VERB_SPELLINGS).map(([word, meant]) => `${code(word)} (${code(text(meant))})`);
  const withMaterial = Object.entries(VERB_SPELLINGS_WITH).map(
    ([word, meant]) => `${code(`${word} with …`)} (${code(`${meant.verb} with …`)})`,
  );
  return [...plain, ...withMaterial].join(", ");
}

function families(): readonly string[] {
  const rows = [...FAMILIES.values()];
  return [
    "## Families",
    "",
    "A material says its `family`, and the family supplies every figure that the label does not: typical ones, cautious, and always behind the label.",
    "",
    ...familyGroups().flatMap(({ title, words }) => {
      const group = words.map(({ word }) => rows.find(({ name }) => name === word)!);
      return [
        `### ${title.charAt(0).toUpperCase()}${title.slice(1)}`,
        "",
        ...markdownTable(
          [
            "family",
            "what it is",
            "carrier",
            "dries by",
            "covers",
            "solids",
            "touch",
            "recoat",
            "cure",
            "VOC",
          ],
          group.map(familyCells),
        ),
        "",
      ];
    }),
    "<details>",
    "<summary>Where the figures are from</summary>",
    "",
    ...rows.map(({ name, sources }) => `- ${code(name)}: ${sourceText(sources)}.`),
    "",
    "</details>",
    "",
  ];
}

function familyCells(row: Family): readonly string[] {
  const [earliest, latest] = row.recoat ?? [];
  const window =
    earliest === undefined
      ? ""
      : `${formatDuration(earliest)}${latest === null || latest === undefined ? "" : ` to ${formatDuration(latest)}`}`;
  const time = (hours: number | undefined): string => (hours === undefined ? "" : formatDuration(hours));
  return [
    code(row.name),
    row.doc ?? "",
    row.carrier,
    row.drying === "none" ? "" : row.drying,
    row.covers === undefined ? "" : `${row.covers} m2/L`,
    `${row.solids} %`,
    time(row.touch),
    window,
    time(row.cure),
    `${row.voc} g/L`,
  ];
}

/** `covers, touch: common practice, no source; …`, figures of one source together. */
function sourceText(sources: Readonly<Record<string, string>>): string {
  const bySource = new Map<string, string[]>();
  for (const [figure, source] of Object.entries(sources)) {
    bySource.set(source, [...(bySource.get(source) ?? []), figure]);
  }
  return [...bySource].map(([source, figures]) => `${figures.join(", ")}: ${source}`).join(" · ");
}

function woods(): readonly string[] {
  return [
    "## Woods and other grounds",
    "",
    "A species may be `, veneer 0.6 mm`.",
    "",
    ...markdownTable(
      ["wood", "what it asks of the finisher", "source"],
      WOODS.map((wood) => [code(wood.name), woodDoc(wood), wood.source]),
    ),
    "",
    ...markdownTable(
      ["ground", "what it asks of the finisher", "source"],
      [...SUBSTRATES.values()].map(({ name, note, source }) => [code(name), note, source]),
    ),
    "",
  ];
}

const OTHERS: readonly (readonly [VocabularyName, string])[] = [
  ["sheen", "Sheens"],
  ["colour", "Colours"],
  ["wear", "Wear of a surface"],
  ["tested", "What a spot test showed"],
  ["outdoors", "What reaches a surface outdoors"],
  ["meant_for", "Who uses a piece"],
  ["for", "What a recipe is for"],
  ["ignition", "Sources of ignition in a shop"],
  ["rags", "Rags"],
  ["lead", "Result of a lead test"],
  ["lead_method", "Method of a lead test, `by`"],
];

function otherWords(): readonly string[] {
  return [
    "## Other words",
    "",
    ...OTHERS.flatMap(([name, title]) => [
      title.includes("`") ? `${title}:` : `${title}, \`${name}\`:`,
      "",
      ...vocabulary(name).map(({ word, doc }) => `- ${code(word)}: ${doc}`),
      "",
    ]),
    "Also read, in any case and with hyphens or blanks:",
    "",
    ...[...WORD_SPELLINGS].map(([field, words]) => `- \`${field}\`: ${speltMap(words)}.`),
    "",
    'A colour may also be a title such as `"#2b3a42"`. `existing` takes families from the wood up, with `2 coats` behind one, `bare`, `unknown clear`, `unknown paint`, or `as left by JOB`.',
    "",
  ];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(new URL("language.md", DOCS_FOLDER), languagePage());
  writeFileSync(WALKTHROUGH_PAGE, ONE_PAGE);
}
