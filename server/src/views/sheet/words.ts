/**
 * Steps, coats and materials in the words of a sheet: by their titles, in whole phrases, as one would read them out at
 * the bench. `action-text.ts` has the short forms for plans.
 */

import { lookUp } from "../../../../grammar/src/look-up.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
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
import { countText, partText } from "../action-text.ts";
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
  material ? titleOf(material) : t`${words(name)} (to be chosen)`;

/** The head of a step: `Sand with grit 120, then 150`, `Strip with Slow gel stripper`. */
export function stepTitle(step: StepAction): string {
  return step.part ? `${workTitle(step)}, ${partText(step.part)}` : workTitle(step);
}

function workTitle(step: StepAction): string {
  const { verb, what, use } = step;
  const tool = use ? t` with ${useTitle(use)}` : "";
  switch (verb) {
    case "sand":
      return `${step.wet ? t`Sand wet` : t`Sand`}${gritsText(step)}`;
    case "scuff":
      return `${step.wet ? t`Scuff wet` : t`Scuff`}${gritsText(step)}`;
    case "dust":
      return `${t`Take the dust off`}${what === undefined ? "" : `: ${what}`}`;
    case OTHER_WORK:
      return capital(what ?? "");
    case "dewax":
      return t`Take the wax off${tool}`;
    case "strip":
      return t`Strip the old finish${tool}`;
    case "scrape":
      return t`Scrape the old finish off`;
    case "dampen":
      return t`Dampen to raise the grain`;
    case "unmask":
      return t`Take the masking off`;
    case "distress":
      return t`Distress the edges`;
    default:
      return `${translated(capital(verb))}${what === undefined ? "" : `: ${what}`}${tool}`;
  }
}

function gritsText({ grits, gritsKnown }: StepAction): string {
  if (grits.length === 0) return gritsKnown ? "" : t` (grit to be chosen)`;
  const open = gritsKnown ? "" : t` (and one to be chosen)`;
  return t` with grit ${grits.join(t`, then `)}${open}`;
}

/** The head of a coat: `Coat 2 of 3: Waterborne satin clear, by pad`. */
export function layerTitle(layer: LayerAction): string {
  const { coat, coats, session } = layer;
  const one = session ? t`One session` : t`One coat`;
  const how = methodOf(layer);
  const { before, after } = manner(layer);
  return [
    `${coats > 1 ? capital(countText(session, coat, coats)) : one}: ${useTitle(layer.use)}`,
    ...before,
    ...(how === undefined ? [] : [translated(`by ${how}`)]),
    ...after,
  ].join(", ");
}

/** The same for a line of a list, which has its own place for the method: `Waterborne satin clear, coat 2 of 3`. */
export function layerShort(layer: LayerAction): string {
  const { coat, coats, session, use } = layer;
  const { before, after } = manner(layer);
  const count = coats > 1 ? [countText(session, coat, coats)] : [];
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
      ...(part
        ? [partText(part)]
        : ifNeeded
          ? [when ? t`if it is needed: ${when}` : t`if it is needed`]
          : []),
      ...(passes ? [t`in ${passes.count} passes`] : []),
      ...(toner ? [t`laid thin as a toner`] : []),
      ...(laid ? [translated(LAID[laid])] : []),
      ...(sheen === undefined ? [] : [translated(sheen)]),
    ],
    after: wiped
      ? [wipedAfterHours === undefined ? t`wiped off` : t`wiped off after ${formatDuration(wipedAfterHours)}`]
      : [],
  };
}

export const LAID = {
  thin: "laid thin",
  mist: "as a mist",
  full: "full and wet",
  flooded: "flooded",
} as const;

const METHODS: Readonly<Record<string, string>> = {
  hvlp: "HVLP spray",
  airless: "airless spray",
  rubber: "a rubber",
};

/** Of a surface whose piece does not say what is on it. */
export const takenAsBareText = (): string => t`taken as bare: nothing is stated`;

/** `waterborne polyurethane, satin, clear` */
export function sortText({ familyName, sheen, colour, builtIn, name }: Material): string {
  if (builtIn) return familyName === words(name) ? t`any of its kind` : translated(familyName ?? "");
  return [familyName ?? "family not stated", sheen?.value, colour?.value]
    .flatMap((part) => (part === undefined ? [] : [translated(part)]))
    .join(", ");
}
