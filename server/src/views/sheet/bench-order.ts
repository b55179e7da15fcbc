/**
 * A finding as an order at the bench: what to do, in plain words. Remedies also say what is to be written in the recipe, which
 * nobody does there; where they say nothing else, whoever wrote the recipe is to be asked.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { FindingText } from "../../core/findings.ts";
import type { Material } from "../../core/model/model.ts";
import { withoutFullStop } from "../../core/sentence.ts";
import { capital, titleOf, words } from "./words.ts";

/** `materials`: those that a sheet calls by their titles, by their names. */
export function benchOrder(
  { headline, why, remedy }: Pick<FindingText, "headline" | "why" | "remedy">,
  materials: ReadonlyMap<string, Material>,
): BenchOrder {
  const acts = sentencesOf(inTitles(remedy, materials)).filter((sentence) => !sentence.includes("`"));
  const gist = withoutFullStop(inTitles(headline, materials));
  if (acts.length === 0)
    return { gist: plain(gist), order: t`Ask before you go on: ${plain(gist)}.`, why: "" };
  const [first = ""] = sentencesOf(inTitles(why, materials));
  return {
    gist: plain(gist),
    order: acts.slice(0, MOST).join(" "),
    why: plain(first === "" ? `${gist}.` : first),
  };
}

export interface BenchOrder {
  /** The headline, without its full stop. */
  readonly gist: string;
  readonly order: string;
  /** May be empty. */
  readonly why: string;
}

/** Nobody reads more before the work. */
const MOST = 2;

/** Names by their titles alone, `` `clear` (gel stain) `` as well; what is left in backticks is text of a recipe. */
export const inTitles = (text: string, materials: ReadonlyMap<string, Material>): string =>
  text.replaceAll(/`([^`]*)`(?: \(([^()`]*)\))?/gu, (whole, name: string, sort: string | undefined) => {
    const material = materials.get(name);
    if (!material) return whole;
    const isSort = sort === undefined || sort === material.familyName;
    return isSort ? titleOf(material) : `${titleOf(material)} (${sort})`;
  });

const plain = (text: string): string => words(text.replaceAll("`", ""));

/** Sentences, and what stands between semicolons or before what is to be written, each with a full stop. */
const sentencesOf = (text: string): readonly string[] =>
  text
    .replaceAll(/,? and (?:state|write) (?=`)/gu, "; state ")
    .split(/(?<=[.!?]) |; |\n/u)
    .map((part) => part.trim())
    .filter((part) => part !== "")
    .map((part) => capital(/[.!?]$/u.test(part) ? part : `${part}.`));
