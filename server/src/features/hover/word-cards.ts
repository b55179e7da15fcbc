/** The cards of words of the notation: fields, verbs, tails, shapes, and the closed vocabularies of values. */
import {
  DECLARATION_WORDS,
  FIELDS,
  type FieldWord,
  METHODS,
  SHAPES,
  STATEMENTS,
  type StatementWord,
  TAILS,
} from "../../../../grammar/src/vocabulary.ts";
import { countryCode, countryName } from "../../core/knowledge/countries.ts";
import { dutyByWord } from "../../core/knowledge/duties.ts";
import { possibleFinishes } from "../../core/knowledge/existing.ts";
import { familyByName } from "../../core/knowledge/families.ts";
import { banOf, LEAD_METHODS } from "../../core/knowledge/lead.ts";
import { docOf, type VocabularyName } from "../../core/knowledge/vocabularies.ts";
import { woodByName } from "../../core/knowledge/woods.ts";
import { SHEENS } from "../../core/knowledge/words.ts";
import { formatNumber } from "../../core/measure/format-amount.ts";
import { figuresIn, type ShownFigures } from "../../core/measure/shown-figures.ts";
import { LAYER_TIMES } from "../../core/quantities/abrasives.ts";
import { LAYDOWNS } from "../../core/quantities/laydown.ts";
import { TRANSFER_EFFICIENCY } from "../../core/quantities/litres.ts";
import { bullets, code, paragraphs } from "../markdown.ts";
import { familyCard } from "./material-card.ts";

export type WordBlock = keyof typeof FIELDS | "layer";

/** A word that starts a declaration. */
export const declarationWordCard = (word: string): string | undefined =>
  Object.hasOwn(DECLARATION_WORDS, word)
    ? exampleCard(word, DECLARATION_WORDS[word]!.doc, DECLARATION_WORDS[word]!.example)
    : undefined;

/** A word that starts a line of a block. */
export function lineWordCard(block: WordBlock, word: string): string | undefined {
  const fields: Readonly<Record<string, FieldWord>> = block === "layer" ? {} : FIELDS[block];
  const entry: FieldWord | StatementWord | undefined = Object.hasOwn(fields, word)
    ? fields[word]
    : Object.hasOwn(STATEMENTS[block], word)
      ? STATEMENTS[block][word]
      : undefined;
  if (!entry) return undefined;
  const rules = [
    entry.required ? "required" : "",
    entry.repeatable && block !== "recipe" && block !== "layer" ? "may be repeated" : "",
  ].filter((rule) => rule !== "");
  return paragraphs(exampleCard(word, entry.doc, entry.example), rules.join(", "));
}

export const tailCard = (word: string): string | undefined =>
  Object.hasOwn(TAILS, word) ? exampleCard(word, TAILS[word]!.doc, TAILS[word]!.example) : undefined;

export function shapeCard(word: string): string | undefined {
  if (!Object.hasOwn(SHAPES, word)) return undefined;
  const { doc, example, sizes, options } = SHAPES[word]!;
  return paragraphs(
    exampleCard(word, doc, example),
    `Sizes: ${sizes.map(sizeText).join(", ")}.${options.length > 0 ? ` It may say ${options.map(code).join(" or ")}.` : ""}`,
  );
}

const sizeText = (size: string): string =>
  size.endsWith("?")
    ? `${size.slice(0, -1)} (may be left out)`
    : size.endsWith("~")
      ? `${size.slice(0, -1)} (may taper: \`75 mm to 50 mm\`)`
      : size;

const exampleCard = (word: string, doc: string, example: string): string =>
  paragraphs(`**${word}**: ${doc}`, `\`\`\`finish\n${example}\n\`\`\``);

/** A word of a closed vocabulary of values. */
export function valueCard(
  name: VocabularyName,
  word: string,
  say: ShownFigures = figuresIn("metric"),
): string | undefined {
  switch (name) {
    case "family": {
      const family = familyByName(word);
      return family && familyCard(family, say);
    }
    case "existing": {
      const family = familyByName(word);
      return family ? familyCard(family, say) : existingCard(word);
    }
    case "duty":
      return dutyCard(word);
    case "sheen":
      return sheenCard(word);
    case "wood":
      return woodCard(word);
    case "lead_method":
      return leadMethodCard(word);
    default: {
      const doc = docOf(name, word);
      return doc && `**${word}**: ${doc}`;
    }
  }
}

/** A country, and what its law says about lead in paint. */
export function countryCard(words: string): string | undefined {
  const country = countryCode(words);
  if (!country) return undefined;
  const ban = banOf(country);
  return paragraphs(
    `**${country}**: ${countryName(country)}`,
    ban
      ? `Lead in paint: ${ban.limit}. Old coatings of ${ban.year} and before count as lead paint until a laboratory says otherwise.`
      : "No year is known here from which its paint holds no lead, so every old coating counts as lead paint until a laboratory says otherwise.",
    ban ? `Source: ${ban.source}.` : "",
  );
}

function dutyCard(word: string): string | undefined {
  const duty = dutyByWord(word);
  return duty && paragraphs(`**${word}**: ${duty.doc}`, duty.defer, `Source: ${duty.source}.`);
}

function leadMethodCard(word: string): string | undefined {
  const method = LEAD_METHODS.find((each) => each.word === word);
  return method && paragraphs(`**${word}**: ${method.doc}`, `Source: ${method.source}.`);
}

function sheenCard(word: string): string | undefined {
  const sheen = SHEENS.find((each) => each.word === word);
  if (!sheen) return undefined;
  const [low, high] = sheen.gloss60;
  return paragraphs(`**${word}**: ${sheen.doc}`, `${low} to ${high} gloss units at 60° (${sheen.source}).`);
}

function woodCard(word: string): string | undefined {
  const doc = docOf("wood", word);
  const wood = woodByName(word);
  return doc && paragraphs(`**${word}**: ${doc}`, wood ? `Source: ${wood.source}.` : "");
}

function existingCard(word: string): string | undefined {
  const doc = docOf("existing", word);
  if (word !== "unknown clear" && word !== "unknown paint") return doc && `**${word}**: ${doc}`;
  return paragraphs(
    `**${word}**: ${doc ?? ""}`,
    bullets(possibleFinishes(word).map(({ family, reason }) => `${family}: ${reason}`)),
  );
}

export function methodCard(word: string): string | undefined {
  const method = METHODS.find((each) => each === word);
  if (!method) return undefined;
  const efficiency = TRANSFER_EFFICIENCY[method];
  const { fixedMin, minPerM2, source } = LAYER_TIMES[method];
  const lands =
    efficiency === 1
      ? handText(word)
      : `${formatNumber(efficiency * 100, 0)} % of what is sprayed lands on the piece; litres are divided by ${efficiency}.`;
  return paragraphs(
    `**by ${word}**: ${lands}`,
    `A coat takes ${fixedMin} min + ${minPerM2} min/m2 where nothing is said (${source}).`,
  );
}

/** What a hand method lays of a label's coat: its share where it lays less than a brush. */
function handText(word: string): string {
  const { padded, wipedOn } = LAYDOWNS;
  const shellac = `Shellac from a polisher's pad counts as ${padded.share} of a brushed coat (${padded.source})`;
  if (word === "pad") return `Label rates are for it. ${shellac}.`;
  if (word === "cloth" || word === "rubber")
    return `Label rates are for it. ${shellac}, varnish wiped on as ${wipedOn.share}.`;
  return "Label rates are for it, so its efficiency counts as 1.";
}

const OTHER_WORDS: Readonly<Record<string, string>> = {
  material: "what is in a can: the argument is the name of a material",
  number: "a plain number, such as a count of coats",
  duration: "a time, such as `72 h`",
  recipe: "a recipe, done by `follow`",
  toner: "a stain laid thin on a scuffed film to shift its colour; it needs a clear above",
  overnight:
    "to the next morning at which the shop is open, and 12 h at least; in a shop open day and night 12 h, without a shop 16 h",
  touch: "dry to the touch, by the label's `touch` in the shop's air",
  recoat: "ready for the next coat, by the label's earliest `recoat` in the shop's air",
  cured: "fully hard, by the label's `cure` in the shop's air",
  wet: "with water, which takes the dust",
  all: "every surface of the job's pieces",
  "both faces": "the face is counted twice",
  "inside too": "the inside is counted as well, which doubles the area",
  "no bottom": "one length by width is left out",
  open: "one length by width is left out and the inside is added",
  Mon: "Monday",
  Tue: "Tuesday",
  Wed: "Wednesday",
  Thu: "Thursday",
  Fri: "Friday",
  Sat: "Saturday",
  Sun: "Sunday",
};

export const otherWordCard = (word: string): string | undefined =>
  Object.hasOwn(OTHER_WORDS, word) ? `**${word}**: ${OTHER_WORDS[word]}.` : undefined;
