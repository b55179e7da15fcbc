/** The cards of words of the notation: fields, verbs, tails, shapes, and the closed vocabularies of values. */
import { t, translated } from "../../../../grammar/src/translate.ts";
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
    entry.required ? t`required` : "",
    entry.repeatable && block !== "recipe" && block !== "layer" ? t`may be repeated` : "",
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
    options.length > 0
      ? t`Sizes: ${sizes.map(sizeText).join(", ")}. It may say ${options.map(code).reduce((said, option) => t`${said} or ${option}`)}.`
      : t`Sizes: ${sizes.map(sizeText).join(", ")}.`,
  );
}

const sizeText = (size: string): string =>
  size.endsWith("?")
    ? t`${translated(size.slice(0, -1))} (may be left out)`
    : size.endsWith("~")
      ? t`${translated(size.slice(0, -1))} (may taper: \`75 mm to 50 mm\`)`
      : translated(size);

const exampleCard = (word: string, doc: string, example: string): string =>
  paragraphs(`**${word}**: ${translated(doc)}`, `\`\`\`finish\n${example}\n\`\`\``);

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
      return doc && `**${word}**: ${translated(doc)}`;
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
      ? t`Lead in paint: ${translated(ban.limit)}. Old coatings of ${ban.year} and before count as lead paint until a laboratory says otherwise.`
      : t`No year is known here from which its paint holds no lead, so every old coating counts as lead paint until a laboratory says otherwise.`,
    ban ? t`Source: ${translated(ban.source)}.` : "",
  );
}

function dutyCard(word: string): string | undefined {
  const duty = dutyByWord(word);
  return (
    duty &&
    paragraphs(
      `**${word}**: ${translated(duty.doc)}`,
      translated(duty.defer ?? ""),
      t`Source: ${translated(duty.source)}.`,
    )
  );
}

function leadMethodCard(word: string): string | undefined {
  const method = LEAD_METHODS.find((each) => each.word === word);
  return (
    method && paragraphs(`**${word}**: ${translated(method.doc)}`, t`Source: ${translated(method.source)}.`)
  );
}

function sheenCard(word: string): string | undefined {
  const sheen = SHEENS.find((each) => each.word === word);
  if (!sheen) return undefined;
  const [low, high] = sheen.gloss60;
  return paragraphs(
    `**${word}**: ${translated(sheen.doc)}`,
    t`${low} to ${high} gloss units at 60° (${translated(sheen.source)}).`,
  );
}

function woodCard(word: string): string | undefined {
  const doc = docOf("wood", word);
  const wood = woodByName(word);
  return (
    doc && paragraphs(`**${word}**: ${translated(doc)}`, wood ? t`Source: ${translated(wood.source)}.` : "")
  );
}

function existingCard(word: string): string | undefined {
  const doc = docOf("existing", word);
  if (word !== "unknown clear" && word !== "unknown paint") return doc && `**${word}**: ${translated(doc)}`;
  return paragraphs(
    `**${word}**: ${translated(doc ?? "")}`,
    bullets(
      possibleFinishes(word).map(({ family, reason }) => `${translated(family)}: ${translated(reason)}`),
    ),
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
      : t`${formatNumber(efficiency * 100, 0)} % of what is sprayed lands on the piece; litres are divided by ${efficiency}.`;
  return paragraphs(
    `**by ${word}**: ${lands}`,
    t`A coat takes ${fixedMin} min + ${minPerM2} min/m2 where nothing is said (${translated(source)}).`,
  );
}

/** What a hand method lays of a label's coat: its share where it lays less than a brush. */
function handText(word: string): string {
  const { padded, wipedOn } = LAYDOWNS;
  const shellac = t`Shellac from a polisher's pad counts as ${padded.share} of a brushed coat (${translated(padded.source)})`;
  if (word === "pad") return t`Label rates are for it. ${shellac}.`;
  if (word === "cloth" || word === "rubber")
    return t`Label rates are for it. ${shellac}, varnish wiped on as ${wipedOn.share}.`;
  return t`Label rates are for it, so its efficiency counts as 1.`;
}

export const OTHER_WORDS: Readonly<Record<string, string>> = {
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
  Object.hasOwn(OTHER_WORDS, word) ? `**${word}**: ${translated(OTHER_WORDS[word]!)}.` : undefined;
