/**
 * What is wrong with the names and quantities of a declaration.
 *
 * Names that are not known are kept as such: which name was probably meant is looked for only when findings are made of
 * them, since that takes all the names of a scope, and a resolution should hold while others come and go.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Call, Name } from "../../../../grammar/src/tree.ts";
import { keyOf, WORD_SPELLINGS } from "../../../../grammar/src/word-spellings.ts";
import type { LocalFinding, RecipeParameter } from "../model/model.ts";
import type { Scope } from "../model/program.ts";
import { closestName, shortList } from "../model/suggest.ts";

/** A name that means nothing where it stands. */
export interface UnknownName {
  readonly unknown: "name";
  /** "material", "piece in this job". */
  readonly what: string;
  readonly name: Name;
  /** What else could stand there: these, and the names of this kind in the scope. */
  readonly others: readonly string[];
  readonly kind?: keyof Scope;
}

/** An argument whose name is no parameter of the recipe that is called. */
export interface UnknownArgument {
  readonly unknown: "argument";
  readonly call: Call;
  readonly name: Name;
  readonly parameters: readonly RecipeParameter[];
}

/** Arguments that a call lacks. */
export interface MissingArguments {
  readonly unknown: "missing";
  readonly call: Call;
  readonly missing: readonly RecipeParameter[];
}

export type Problem = LocalFinding | UnknownName | UnknownArgument | MissingArguments;

/** How many names of a file may still be compared with all the others for a suggestion; counts down. */
export interface Suggestions {
  left: number;
}

/** More misspelt names than anybody corrects one by one; with each of them all known names are compared. */
export const MOST_SUGGESTIONS = 100;

/** The findings that problems come to, in their order. */
export function findingsOf(
  problems: readonly Problem[],
  scope: Scope,
  suggestions: Suggestions,
): readonly LocalFinding[] {
  /** Parameters that misspelt arguments of a call probably mean: they are not missing as well. */
  const meant = new Map<Call, Set<string>>();
  const suggest: Suggest = (name, known) => {
    suggestions.left -= 1;
    return suggestions.left < 0 ? undefined : closestName(name, known);
  };
  return problems.flatMap((problem): readonly LocalFinding[] => {
    if (!("unknown" in problem)) return [problem];
    if (problem.unknown === "name") return [unknownName(problem, scope, suggest, suggestions)];
    const { call } = problem;
    if (problem.unknown === "missing") return missingArguments(problem, meant.get(call));
    const names = problem.parameters.map(({ name }) => name);
    const near = suggest(problem.name.text, names);
    if (near) meant.set(call, (meant.get(call) ?? new Set()).add(near));
    return [unknownArgument(problem, near)];
  });
}

type Suggest = (name: string, known: Iterable<string>) => string | undefined;

function unknownName(
  { what, name, others, kind }: UnknownName,
  scope: Scope,
  suggest: Suggest,
  suggestions: Suggestions,
): LocalFinding {
  const near =
    (kind === "materials" ? spelledOtherwise(name.text, others) : undefined) ??
    suggest(name.text, kind ? both(others, scope[kind].keys()) : others);
  const without =
    suggestions.left < 0
      ? t`\nFor the first ${MOST_SUGGESTIONS} unknown names of a file a similar name is looked for, for this one no longer.`
      : "";
  const hint = near
    ? `\n${t`Did you mean \`${near}\`?`}`
    : t`\nDeclare it, or name a file that does with \`use\`.${without}`;
  return {
    rule: "unknown-name",
    span: name.span,
    message: t`There is no ${translated(what)} \`${name.text}\` here${hint}`,
    ...changeTo(near, name),
  };
}

/** What labels call a material that is built in by another name: `denatured_alcohol` of `alcohol`. */
function spelledOtherwise(written: string, builtIn: readonly string[]): string | undefined {
  const name = MATERIAL_SPELLINGS?.get(keyOf(written))?.replaceAll(" ", "_");
  return name !== undefined && builtIn.includes(name) ? name : undefined;
}

const MATERIAL_SPELLINGS = WORD_SPELLINGS.get("family");

/** One after the other, without a list of all of them for every name that is looked up. */
function* both(first: Iterable<string>, second: Iterable<string>): Generator<string> {
  yield* first;
  yield* second;
}

function unknownArgument(
  { call, name, parameters }: UnknownArgument,
  near: string | undefined,
): LocalFinding {
  // What another argument gives already is not taken from this one, see `givenTo`.
  const isRead = near !== undefined && call.arguments.every((each) => each.name?.text !== near);
  const rest = near
    ? `${isRead ? t`It is checked as \`${near}\` until you correct it.\n` : ""}${t`Did you mean \`${near}\`?`}`
    : parameters.length > 0
      ? parametersText(parameters)
      : t`It has no parameters.`;
  return {
    rule: "wrong-argument",
    span: name.span,
    message: t`\`${call.name.text}\` has no parameter \`${name.text}\`\n${rest}`,
    ...changeTo(near, name),
  };
}

function parametersText(parameters: readonly RecipeParameter[]): string {
  const list = shortList(parameters, (p) => `\`${p.name}\``);
  return parameters.length === 1 ? t`Its only parameter is ${list}.` : t`Its parameters are ${list}.`;
}

function missingArguments(
  { call, missing }: MissingArguments,
  meant: ReadonlySet<string> | undefined,
): readonly LocalFinding[] {
  const needed = missing.filter(({ name }) => !meant?.has(name));
  if (needed.length === 0) return [];
  const list = shortList(needed, (p) => t`\`${p.name}: …\` (a ${p.type})`);
  return [
    {
      rule: "missing-argument",
      span: call.span,
      message: t`\`${call.name.text}\` also needs ${list}\nAdd it inside the parentheses.`,
    },
  ];
}

const changeTo = (near: string | undefined, { span }: Name): Pick<LocalFinding, "fix"> =>
  near === undefined ? {} : { fix: { title: t`Change to \`${near}\``, span, text: near } };
