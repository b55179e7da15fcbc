/**
 * What the readers of one declaration share: its names with what they mean, and a list of what is wrong. A `Resolving`
 * lives while one declaration is resolved and is thrown away after it.
 */

import { lookUp } from "../../../../grammar/src/look-up.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Name, Span } from "../../../../grammar/src/tree.ts";
import { choicesFor, ELSEWHERE, toldOf, WORD_CHOICES } from "../knowledge/choices.ts";
import type { RecipeParameter } from "../model/model.ts";
import type { Scope } from "../model/program.ts";
import { closest, orList } from "../model/suggest.ts";
import type { FileId, Place } from "../place.ts";
import type { MaterialName } from "./lines.ts";
import type { Problem, UnknownName } from "./problems.ts";
import { materialOf, type Reference, type Referent } from "./reference.ts";

export interface Resolving {
  readonly file: FileId;
  readonly declaration: string;
  readonly scope: Scope;
  /** All names of the declaration, by where they begin. */
  readonly references: ReadonlyMap<number, Reference>;
  /** The parameters that can be named here; none in the head of a recipe, and in jobs. */
  readonly parameters: ReadonlyMap<string, RecipeParameter>;
  readonly problems: Problem[];
}

export const placeIn = ({ file, declaration }: Resolving, span: Span): Place => ({ file, declaration, span });

export function report(ctx: Resolving, rule: string, span: Span, message: string): void {
  ctx.problems.push({ rule, span, message });
}

/** What a name means where it stands; where it may mean several things, the first. */
export const meaningOf = (ctx: Resolving, name: Name): Referent | undefined =>
  ctx.references.get(name.span.start)?.referents[0];

export function reportUnknown(
  ctx: Resolving,
  what: string,
  name: Name,
  among: Partial<Pick<UnknownName, "others" | "kind">>,
): void {
  ctx.problems.push({ unknown: "name", what, name, others: [], ...among });
}

/**
 * Where only words of a closed list may stand: the word, or the one that was probably meant. What is `read` as that one is
 * said with the rest: "This line" is checked as `scuff`. `more` says what else may be written.
 */
export function checkWord(
  ctx: Resolving,
  word: Name,
  known: readonly string[],
  what: string,
  read?: string,
  more = (): string => "",
): string {
  if (known.includes(word.text)) return word.text;
  const unknown = t`Unknown ${translated(what)} \`${word.text}\``;
  const elsewhere = lookUp(ELSEWHERE[what] ?? {}, word.text);
  if (elsewhere !== undefined) {
    // A duty that is none is not in force, so that rules ask for what is.
    const rule = what === "safety duty" ? "may-be-several" : "unknown-word";
    report(ctx, rule, word.span, `${unknown}\n${translated(elsewhere)}`);
    return word.text;
  }
  const may = choicesFor(WORD_CHOICES[what] ?? {}, word.text);
  const isOpen =
    may !== undefined || (what === "application method" && closest(word.text, known) === undefined);
  const near = may ? undefined : closest(word.text, known);
  const until =
    read &&
    (near
      ? t`${read} is checked as \`${near}\` until you correct it.`
      : t`${read} is not checked until you correct it.`);
  const [fix, ...others] = (may ?? (near ? [near] : [])).map((text) => ({
    title: t`Change to \`${text}\``,
    span: word.span,
    text,
  }));
  const told = toldOf(what, word.text, known);
  const choice =
    told.length < known.length
      ? t`${told.join(", ")} or another of the ${known.length} that completion lists`
      : orList(told);
  const list = may ? t`Write ${orList(may.map((each) => `\`${each}\``))}.` : t`It may be ${choice}${more()}.`;
  ctx.problems.push({
    rule: isOpen ? "may-be-several" : "unknown-word",
    span: word.span,
    message: [
      may ? t`\`${word.text}\` may mean several things` : unknown,
      ...(until ? [until] : []),
      near ? t`Did you mean \`${near}\`?` : list,
    ].join("\n"),
    ...(fix ? { fix } : {}),
    ...(others.length > 0 ? { others } : {}),
  });
  // Of stages the earlier counts, so that a coat that goes on too early is found.
  return (
    near ?? (what === "stage of a wait" || what === "application method" ? may?.[0] : undefined) ?? word.text
  );
}

/** The declaration that a name means; reports one that is not known. */
export function modelNamed(
  ctx: Resolving,
  kind: "material" | "piece" | "shop" | "recipe" | "job",
  name: Name,
): Referent | undefined {
  const meant = meaningOf(ctx, name);
  if (!meant) reportUnknown(ctx, kind, name, { kind: `${kind}s`, others: [...ctx.parameters.keys()] });
  return meant;
}

/** A material, or a material parameter of the recipe at hand. */
export function materialNamed(ctx: Resolving, name: Name | undefined): MaterialName | undefined {
  if (!name) return undefined;
  const meant = modelNamed(ctx, "material", name);
  const base = { name: name.text, place: placeIn(ctx, name.span) };
  if (meant?.kind !== "parameter") {
    const material = meant && materialOf(meant);
    return { ...base, isParameter: false, ...(material ? { material } : {}) };
  }
  const { parameter } = meant;
  if (parameter && parameter.type !== "material") {
    report(
      ctx,
      "wrong-argument",
      name.span,
      t`\`${name.text}\` is a ${parameter.type}; a material is expected here.`,
    );
  }
  return { ...base, isParameter: true };
}
