/**
 * Words and places that many rules share: names of coats for messages, related places, and the usual fixes.
 */

import { LONGEST_GIST } from "../../../../grammar/src/gist.ts";
import { lowerFirst, t, translated } from "../../../../grammar/src/translate.ts";
import type { Fix, FixKind, RelatedPlace, TextEdit } from "../findings.ts";
import { type DutyWord, dutyByWord } from "../knowledge/duties.ts";
import { formatDuration } from "../measure/format-amount.ts";
import type { Material } from "../model/model.ts";
import { andList } from "../model/suggest.ts";
import type { Place } from "../place.ts";
import { sentence, withoutFullStop } from "../sentence.ts";
import type { Action, MaterialUse } from "../surface/actions.ts";
import type { Coat } from "../surface/state.ts";

/** `` `walnut` (gel stain) ``, `the old oil varnish`, or what an earlier job put on. */
export function coatName(coat: Coat): string {
  if (coat.unknown) return coat.unknown === "paint" ? t`the unknown paint` : t`the unknown clear`;
  if (coat.origin === "existing") return t`the old ${translated(coat.what)}`;
  const name = useName({ name: coat.what, material: coat.material });
  return coat.origin === "earlier job" ? t`the earlier job's ${name}` : name;
}

/** Of a line of several coats: the end of a remedy. A sheet finds by it which of them is meant. */
export const beforeCoat = (coat: number): string => t`before coat ${coat}.`;

/**
 * `` `walnut` (gel stain) ``, or where a parameter brought it in `` `stain` (`walnut`, gel stain) ``: the name that
 * stands on the line comes first, and what is plain from a name is not said again.
 */
export function useName({ name, material }: Named): string {
  const own = material && material.name !== name ? [`\`${material.name}\``] : [];
  const family = material?.familyName ?? material?.family?.name;
  const known = [name, material?.name].includes(family?.replaceAll(" ", "_"));
  const more = [...own, ...(family && !known ? [translated(family)] : [])];
  return more.length > 0 ? `\`${name}\` (${more.join(", ")})` : `\`${name}\``;
}

/** A material as a line, a coat or a filling names it. */
interface Named {
  readonly name: MaterialUse["name"];
  readonly material?: Material | undefined;
}

/** "The layer underneath" and its line. */
export const layerBelow = (coat: Coat): RelatedPlace => ({
  place: coat.place,
  message:
    coat.origin === "existing"
      ? t`${sentence(coatName(coat))} is stated here`
      : t`${sentence(coatName(coat))} goes on here`,
});

export const related = (place: Place, message: string): RelatedPlace => ({ place, message });

/** `1 day of the 3 days`, or `none of the 3 days`. */
export const shareText = (had: number, needed: number): string =>
  had > 0
    ? t`${formatDuration(had)} of the ${formatDuration(needed)}`
    : t`none of the ${formatDuration(needed)}`;

/** The headline of what is coated while it is soft; `after` is the time it had, empty where it had none. */
export const coatedTooSoon = (name: string, after: string, need: string): string =>
  after
    ? t`${name} is coated after ${after}: needs ${need}`
    : t`${name} is coated without a wait: needs ${need}`;

/** The first headline that fits on one line; the last where none does. */
export const fitting = (headlines: readonly string[]): string =>
  headlines.find(({ length }) => length <= LONGEST_GIST) ?? headlines.at(-1) ?? "";

/**
 * A fix of a kind (see `FixKind`). What states a duty, a wait, a test or a fact of a label is an undertaking, and its title
 * says so: "State that you wait until the oil has cured" of "Wait until the oil has cured".
 */
export const fixOf = (kind: FixKind, title: string, edits: readonly TextEdit[]): Fix => ({
  kind,
  title: kind === "undertaking" ? t`State that you ${lowerFirst(title)}` : title,
  edits,
});

/** A fix that puts whole lines above the action's own line, indented like it. */
export const insertAbove = (kind: FixKind, action: Action, title: string, lines: readonly string[]): Fix =>
  fixOf(kind, title, [linesAbove(action.place, lines)]);

/** A fix that replaces a word or quantity. */
export const replaceAt = (kind: FixKind, place: Place, title: string, text: string): Fix =>
  fixOf(kind, title, [{ place, text }]);

/** Whole lines above the line of a place. */
export const linesAbove = (place: Place, lines: readonly string[]): TextEdit => ({
  place,
  text: lines.join("\n"),
  linesAbove: true,
});

/** States safety duties above the line of a place: whoever takes this fix undertakes to keep to them. */
export function undertakeDuties(place: Place, duties: readonly DutyWord[]): Fix {
  const edits = [linesAbove(place, [`safety ${duties.join(", ")}`])];
  const [only] = duties;
  const title =
    duties.length === 1 && only !== undefined
      ? `${withoutFullStop(translated(dutyByWord(only)!.doc))} (\`safety ${only}\`)`
      : t`Keep to ${duties.length} safety duties: ${andList(duties.map((duty) => `\`${duty}\``))}`;
  return fixOf("undertaking", title, edits);
}

/** The headline of one missing duty: its danger first. */
export const notStated = (duty: DutyWord): string =>
  t`${translated(dutyByWord(duty)!.danger)}: \`${duty}\` is not stated`;

/** "Job `tables`, surfaces `top` and `apron`." */
export const whereText = (job: string, surfaces: readonly string[]): string =>
  t`Job \`${job}\`${surfacesText(surfaces)}.`;

/** "Piece `table`, surface `top`: no job applies this recipe yet, and this is what it seems to be for." */
export const whereWithoutJob = (piece: string, surfaces: readonly string[]): string =>
  t`Piece \`${piece}\`${surfacesText(surfaces)}: no job applies this recipe yet, and this is what it seems to be for.`;

function surfacesText(surfaces: readonly string[]): string {
  const named = surfaces.map((surface) => `\`${surface}\``);
  if (named.length === 0) return "";
  return named.length > 1 ? t`, surfaces ${andList(named)}` : t`, surface ${named[0]!}`;
}
