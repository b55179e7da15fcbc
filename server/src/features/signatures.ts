/**
 * Help with the arguments of `apply R(…)` and `follow R(…)`: what the recipe takes, and which of it is being given.
 *
 * The place is found by the tokens, because a call that is being typed is full of holes. Arguments have names, so the
 * name says which one is meant; before it is typed it is the first that is still missing.
 */
import { t, translated } from "../../../grammar/src/translate.ts";
import type { Token } from "../../../grammar/src/tree.ts";
import type { Recipe, RecipeParameter } from "../core/model/model.ts";
import type { FileId } from "../core/place.ts";
import { parameterText } from "../views/parameter-text.ts";
import { isComment, tokenSpan, tokensOfFile } from "./file-tokens.ts";
import { docText, paragraphs, plain } from "./markdown.ts";
import type { Names } from "./names/names.ts";
import type { SignatureInfo } from "./types.ts";

export function signaturesAt(names: Names, file: FileId, offset: number): readonly SignatureInfo[] {
  const tree = names.program.files.get(file)?.tree;
  const call = tree && callAround(tokensOfFile(tree), offset);
  if (!call) return [];
  const occurrence = names.at(file, call.name.start);
  const called = occurrence && names.called(occurrence);
  // A line that cannot be read as a call has no names in it.
  const known = names.checker.scope(file).recipes.get(call.name.text);
  return (called ?? (known ? [known] : [])).map((recipe) => signatureOf(recipe, call));
}

// ---------------------------------------------------------------------------------------------------------------
// The call, as it is typed

interface CallTokens {
  /** The recipe. */
  readonly name: Token;
  /** The names of the other arguments. */
  readonly given: readonly string[];
  /** What is typed of the argument's name; empty where nothing is. */
  readonly word: string;
  /** Whether the name stands there whole, with its colon. */
  readonly isNamed: boolean;
}

/** The call in whose parentheses an offset is. */
function callAround(tokens: readonly Token[], offset: number): CallTokens | undefined {
  const inside = tokens.find((token) => token.start < offset && offset <= tokenSpan(token).end);
  if (inside && isComment(inside)) return undefined;
  const content = tokens.filter((token) => token.kind !== "space" && !isComment(token));
  const paren = openParen(
    content,
    content.findLastIndex(({ start }) => start < offset),
  );
  const [head, name] = [content[paren - 2], content[paren - 1]];
  if (name?.kind !== "word" || (head?.text !== "apply" && head?.text !== "follow")) return undefined;
  const args = argumentsBehind(content, paren);
  const own = args.findLastIndex(({ start }) => start <= offset);
  const typed = args[own]?.tokens ?? [];
  return {
    name,
    given: args.flatMap(({ tokens: other }, idx) => (idx !== own && other[0] ? [other[0].text] : [])),
    word: typed[0]?.kind === "word" ? typed[0].text : "",
    isNamed: typed[1]?.text === ":",
  };
}

/** The `(` that is open behind a token, on its line and on those that commas carry over; -1 without one. */
function openParen(content: readonly Token[], from: number): number {
  let depth = 0;
  for (let idx = from; idx >= 0; idx -= 1) {
    const { kind, text } = content[idx]!;
    if (kind === "newline" && !goesOn(content, idx)) return -1;
    if (kind !== "punctuation") continue;
    if (text === "{" || text === "}") return -1;
    if (text === ")") depth += 1;
    else if (text === "(" && depth === 0) return idx;
    else if (text === "(") depth -= 1;
  }
  return -1;
}

/** Whether the line that ends here is carried over. */
function goesOn(content: readonly Token[], newline: number): boolean {
  let before = newline - 1;
  while (content[before]?.kind === "newline") before -= 1;
  return content[before]?.text === ",";
}

/** The parts between the commas, up to the `)` or the end of the line, each with where it begins. */
function argumentsBehind(
  content: readonly Token[],
  paren: number,
): readonly { readonly start: number; readonly tokens: readonly Token[] }[] {
  const args: { start: number; tokens: Token[] }[] = [{ start: content[paren]!.start + 1, tokens: [] }];
  for (let idx = paren + 1; idx < content.length; idx += 1) {
    const token = content[idx]!;
    if (token.kind === "newline") {
      if (!goesOn(content, idx)) break;
    } else if (/^[(){}]$/u.test(token.text)) break;
    else if (token.text === ",") args.push({ start: token.start + 1, tokens: [] });
    else args.at(-1)!.tokens.push(token);
  }
  return args;
}

// ---------------------------------------------------------------------------------------------------------------
// The recipe

function signatureOf(recipe: Recipe, call: CallTokens): SignatureInfo {
  let label = `${recipe.name}(`;
  const parameters = recipe.parameters.map((parameter, idx) => {
    label += idx === 0 ? "" : ", ";
    const start = label.length;
    label += parameterText(recipe, parameter);
    return { span: { start, end: label.length }, markdown: parameterDoc(parameter) };
  });
  const active = activeParameter(recipe.parameters, call);
  return {
    label: `${label})`,
    markdown: paragraphs(recipe.title && plain(recipe.title), docText(recipe.docs)),
    parameters,
    ...(active >= 0 && { active }),
  };
}

/** By its name; before that is there, the first missing one that begins like what is typed, or simply the first. */
function activeParameter(
  parameters: readonly RecipeParameter[],
  { given, word, isNamed }: CallTokens,
): number {
  if (isNamed) return parameters.findIndex(({ name }) => name === word);
  const isMissing = ({ name }: RecipeParameter): boolean => !given.includes(name);
  const typed = parameters.findIndex((each) => isMissing(each) && each.name.startsWith(word));
  return typed >= 0 ? typed : parameters.findIndex(isMissing);
}

export const KINDS: Readonly<Record<RecipeParameter["type"], string>> = {
  material: "The name of a material",
  number: "A number, such as `3`",
  duration: "A time, such as `72 h`",
  recipe: "The name of a recipe",
  method: "A way of putting it on, such as `spray`",
  grits: "Grits, such as `120/150/180`",
  ratio: "Parts to parts, such as `4:1`",
  sheen: "A sheen, such as `satin`",
};

const parameterDoc = ({ type, hasDefault }: RecipeParameter): string =>
  `${translated(KINDS[type])}. ${hasDefault ? t`It may be left out.` : t`It must be given.`}`;
