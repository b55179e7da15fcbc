/**
 * Recall and false alarms over the blind recipes, counted per recipe: `npm run blind [-- FOLDER]`.
 *
 * A sound recipe with an error or a warning is a false alarm. A marked recipe counts as found when every mark is
 * answered by an error or a warning of a rule of its kind; where in the file it stands is printed beside it. Nothing
 * fails here: it prints, and people judge whether what was said is what the mark meant.
 */
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { type BlindCase, type BlindMark, readBlind } from "./cases.ts";
import type { Category } from "./categories.ts";

const PREPARED = ["preparation", "hygiene"];
const HURT = ["safety", "wear", "waits"];

/** Groups of rules that can answer a kind of mistake. */
const GROUPS: Readonly<Record<Category, readonly string[]>> = {
  adhesion: ["layers", "waits", ...PREPARED],
  wait: ["waits", "layers", ...PREPARED],
  order: ["layers", "wear", "colour", "waits", ...PREPARED],
  wax: ["layers", ...PREPARED],
  grit: ["preparation"],
  blotch: ["colour", "layers", "preparation"],
  bleed: ["colour", "layers"],
  yellowing: ["colour"],
  window: ["waits", "layers"],
  air: ["waits", "safety"],
  wear: ["wear", "film", "layers"],
  thinning: ["quantities", "film"],
  potlife: ["quantities", "waits"],
  stock: ["quantities"],
  date: ["schedule", "waits"],
  budget: ["quantities"],
  dust: ["safety", "preparation", "layers"],
  lead: ["safety"],
  "solvent-air": ["safety"],
  fire: ["safety"],
  rags: ["safety"],
  mask: ["safety"],
  gloves: ["safety"],
  eyes: ["safety"],
  chemical: ["safety", "preparation"],
  "mixing-chemicals": ["safety", "preparation"],
  "two-part": ["safety", "quantities", "film"],
  "child-food": HURT,
  caustic: ["safety", "preparation"],
  noise: ["safety"],
  other: [],
};

/** Single rules that answer a kind of mistake though the rest of their group does not. */
const RULES_OF: Readonly<Partial<Record<Category, readonly string[]>>> = {
  // It tells of the blotches that a dried-out conditioner no longer keeps away.
  blotch: ["conditioner-dried-out"],
  // It tells that a coat on all pieces together takes longer than the mix can be used.
  potlife: ["no-schedule"],
};

const groupOf = new Map<string, string>(RULES.map((rule) => [rule.id, rule.group]));

function answers(one: BlindCase, mark: BlindMark) {
  const groups = GROUPS[mark.category as Category] ?? [];
  const rules = RULES_OF[mark.category as Category] ?? [];
  const fitting = one.found.filter(
    ({ rule }) =>
      groups.length === 0 || groups.includes(groupOf.get(rule) ?? "language") || rules.includes(rule),
  );
  return fitting.find(({ line }) => line === mark.line) ?? fitting[0];
}

const cases = readBlind(process.argv[2]);
const sound = cases.filter(({ marks }) => marks.length === 0);
const marked = cases.filter(({ marks }) => marks.length > 0);
const alarmed = sound.filter(({ found }) => found.length > 0);
const missed = marked.filter((one) => one.marks.some((mark) => !answers(one, mark)));

for (const { name, found } of alarmed)
  for (const one of found)
    console.log(
      `false alarm  ${name}:${one.line}  ${one.rule}\n    ${one.message.replaceAll("\n", "\n    ")}`,
    );
for (const one of marked)
  for (const mark of one.marks) {
    const answer = answers(one, mark);
    const where = answer
      ? `${answer.line === mark.line ? "" : `line ${answer.line} `}${answer.rule}`
      : "NOTHING";
    console.log(
      `marked       ${one.name}:${mark.line}  ${mark.category}: ${mark.words}\n    found: ${where}`,
    );
  }

const percent = (part: number, whole: number): string =>
  whole === 0 ? "-" : `${((100 * part) / whole).toFixed(1)} %`;
console.log(`\n${cases.length} recipes, ${sound.length} of them sound`);
console.log(`false alarms ${alarmed.length} of ${sound.length} (${percent(alarmed.length, sound.length)})`);
console.log(
  `recall       ${marked.length - missed.length} of ${marked.length} (${percent(marked.length - missed.length, marked.length)})`,
);
