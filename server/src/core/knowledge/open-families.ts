/**
 * Words of labels that may be several families, as one row that a job can be worked out with until its label decides.
 *
 * Where the families differ in a danger the row has the graver of them: all their duties, rags that heat up by themselves,
 * the lowest flash point, the most solvent, the longest cure. Everything else is that of the common one, and rules on how
 * layers go together are silent where it lies open (`layer-relation.ts`, `engine.ts`).
 */
import { isColourName, keyOf, WORD_SPELLINGS } from "../../../../grammar/src/word-spellings.ts";
import { familiesMeant } from "./choices.ts";
import { family, familyByName } from "./families.ts";
import type { FamilyName } from "./family-names.ts";
import type { Carrier, Family } from "./family-schema.ts";

/** A text longer than any name of a family is not compared. */
const LONGEST = 60;

/** The family that words name once what says nothing of it is left out: `pure linseed oil`, `matt water-based polyurethane`. */
export function familySaid(text: string): Family | undefined {
  const bare = withoutQualifiers(text);
  return plainFamily(text) ?? (bare === undefined ? undefined : plainFamily(bare));
}

/** What the words may be, the common one first; undefined where they tell no kind. */
export function familiesOpen(text: string): readonly FamilyName[] | undefined {
  if (text.length > LONGEST) return undefined;
  const bare = withoutQualifiers(text);
  return familiesMeant(text) ?? (bare === undefined ? undefined : familiesMeant(bare));
}

const plainFamily = (text: string): Family | undefined =>
  familyByName(text) ?? familyByName(WORD_SPELLINGS.get("family")!.get(keyOf(text)) ?? "");

/** What it looks like, how good it is and where it is meant to go: none of it says what it is made of. */
const QUALIFIER =
  /^(?:clear|colou?rless|transparent|satin|silk|semi|high|gloss|glossy|matte?|mat|eggshell|flat|white|thin|thick|pure|raw|natural|real|fine|good|old|fresh|new|ready|mixed|interior|indoor|furniture|floor|parquet|worktop|fast|quick|drying|odou?rless|cold|pressed|distilled|tap|lukewarm|refined|warm|hot|own|home|made|standard|normal|ordinary|plain|simple|professional|1k)$/u;

function withoutQualifiers(text: string): string | undefined {
  const words = text.toLowerCase().split(/[\s_-]+/u);
  const from = words.findIndex((word) => !QUALIFIER.test(word) && !isColourName(word));
  return from > 0 && text.length <= LONGEST ? words.slice(from).join(" ") : undefined;
}

/** The row of a word that may be any of these families. */
export function openFamily(readings: readonly FamilyName[]): Family {
  const rows = readings.map(family);
  const [common] = rows;
  const carrier = CARRIERS.find((each) => rows.some((row) => row.carrier === each)) ?? "none";
  return {
    ...common!,
    ...lowest(rows, "flash"),
    ...lowest(rows, "boils"),
    ...longestCure(rows),
    carrier,
    voc: Math.max(...rows.map(({ voc }) => voc)),
    ragsSelfHeat: rows.some(({ ragsSelfHeat }) => ragsSelfHeat),
    twoPart: rows.every(({ twoPart }) => twoPart),
    duties: [...new Set(rows.flatMap(({ duties }) => duties))],
    unfitFor: [...new Set(rows.flatMap(({ unfitFor = [] }) => unfitFor))],
    readings,
  };
}

/** What catches fire most easily first. */
const CARRIERS: readonly Carrier[] = ["acetone", "lacquer thinner", "alcohol", "mineral spirits", "water"];

function lowest(rows: readonly Family[], figure: "flash" | "boils"): Partial<Family> {
  const known = rows.flatMap((row) => row[figure] ?? []);
  return known.length === 0 ? {} : { [figure]: Math.min(...known) };
}

function longestCure(rows: readonly Family[]): Partial<Family> {
  const known = rows.flatMap(({ cure }) => cure ?? []);
  return known.length === 0 ? {} : { cure: Math.max(...known) };
}
