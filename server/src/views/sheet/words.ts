/**
 * Steps, coats and materials in the words of a sheet: by their titles, in whole phrases, as one would read them out at
 * the bench. `action-text.ts` has the short forms for plans.
 */
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { formatDuration } from "../../core/measure/format-amount.ts";
import type { Material } from "../../core/model/model.ts";
import type { FileId } from "../../core/place.ts";
import { sentence as capital } from "../../core/sentence.ts";
import {
  type LayerAction,
  type MaterialUse,
  OTHER_WORK,
  type StepAction,
} from "../../core/surface/actions.ts";
import { partText } from "../action-text.ts";
import type { Docs } from "./model.ts";

/** `reading_table` as words. */
export const words = (name: string): string => name.replaceAll("_", " ");

export { capital };

export const titleOf = ({ title, name }: { readonly title?: string; readonly name: string }): string =>
  title?.trim() ? title.trim() : words(name);

/** What is written above a declaration. */
export const docsOf = ({ docs, file }: { readonly docs: string; readonly file: FileId }): Docs => ({
  text: docs,
  file,
});

/** A material as a line means it; a parameter that nothing was given for is still to be chosen. */
export const useTitle = ({ name, material }: MaterialUse): string =>
  material ? titleOf(material) : `${words(name)} (to be chosen)`;

/** The head of a step: `Sand with grit 120, then 150`, `Strip with Slow gel stripper`. */
export function stepTitle(step: StepAction): string {
  return step.part ? `${workTitle(step)}, ${partText(step.part)}` : workTitle(step);
}

function workTitle(step: StepAction): string {
  const { verb, what, use } = step;
  const tool = use ? ` with ${useTitle(use)}` : "";
  switch (verb) {
    case "sand":
      return `${step.wet ? "Sand wet" : "Sand"}${gritsText(step)}`;
    case "scuff":
      return `Scuff${step.wet ? " wet" : ""}${gritsText(step)}`;
    case "dust":
      return `Take the dust off${what === undefined ? "" : `: ${what}`}`;
    case OTHER_WORK:
      return capital(what ?? "");
    case "dewax":
      return `Take the wax off${tool}`;
    case "strip":
      return `Strip the old finish${tool}`;
    case "scrape":
      return "Scrape the old finish off";
    case "dampen":
      return "Dampen to raise the grain";
    case "unmask":
      return "Take the masking off";
    case "distress":
      return "Distress the edges";
    default:
      return `${capital(verb)}${what === undefined ? "" : `: ${what}`}${tool}`;
  }
}

function gritsText({ grits, gritsKnown }: StepAction): string {
  if (grits.length === 0) return gritsKnown ? "" : " (grit to be chosen)";
  const open = gritsKnown ? "" : " (and one to be chosen)";
  return ` with grit ${grits.join(", then ")}${open}`;
}

/** The head of a coat: `Coat 2 of 3: Waterborne satin clear, by pad`. */
export function layerTitle(layer: LayerAction): string {
  const { coat, coats, session } = layer;
  const [one, each] = session ? ["One session", "Session"] : ["One coat", "Coat"];
  const how = methodOf(layer);
  const { before, after } = manner(layer);
  return [
    `${coats > 1 ? `${each} ${coat} of ${coats}` : one}: ${useTitle(layer.use)}`,
    ...before,
    ...(how === undefined ? [] : [`by ${how}`]),
    ...after,
  ].join(", ");
}

/** The same for a line of a list, which has its own place for the method: `Waterborne satin clear, coat 2 of 3`. */
export function layerShort(layer: LayerAction): string {
  const { coat, coats, session, use } = layer;
  const { before, after } = manner(layer);
  const count = coats > 1 ? [`${session ? "session" : "coat"} ${coat} of ${coats}`] : [];
  return [useTitle(use), ...count, ...before, ...after].join(", ");
}

/** A wiped coat goes on as it comes, unless the line says how. */
export function methodOf({ syntax, method, wiped }: LayerAction): string | undefined {
  const isStated = syntax.tails.some(({ kind }) => kind === "by");
  return isStated || !wiped ? (lookUp(METHODS, method) ?? method) : undefined;
}

function manner({ part, ifNeeded, when, passes, toner, laid, sheen, wiped, wipedAfterHours }: LayerAction): {
  readonly before: readonly string[];
  readonly after: readonly string[];
} {
  return {
    before: [
      ...(part ? [partText(part)] : ifNeeded ? [when ? `if it is needed: ${when}` : "if it is needed"] : []),
      ...(passes ? [`in ${passes.count} passes`] : []),
      ...(toner ? ["laid thin as a toner"] : []),
      ...(laid ? [LAID[laid]] : []),
      ...(sheen === undefined ? [] : [sheen]),
    ],
    after: wiped
      ? [wipedAfterHours === undefined ? "wiped off" : `wiped off after ${formatDuration(wipedAfterHours)}`]
      : [],
  };
}

const LAID = { thin: "laid thin", mist: "as a mist", full: "full and wet", flooded: "flooded" } as const;

const METHODS: Readonly<Record<string, string>> = {
  hvlp: "HVLP spray",
  airless: "airless spray",
  rubber: "a rubber",
};

/** `waterborne polyurethane, satin, clear` */
export function sortText({ familyName, sheen, colour, builtIn, name }: Material): string {
  if (builtIn) return familyName === words(name) ? "any of its kind" : (familyName ?? "");
  return [familyName ?? "family not stated", sheen?.value, colour?.value]
    .filter((part) => part !== undefined)
    .join(", ");
}
