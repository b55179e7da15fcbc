/**
 * Every regular expression of the product: literals and `new RegExp` in the sources, and the patterns in what the editor
 * is given as JSON.
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { globSync } from "tinyglobby";
import ts from "typescript";

export interface Expression {
  readonly source: string;
  readonly flags: string;
  /** `grammar/src/tokens.ts:44`, the first place of several. */
  readonly where: string;
}

/** Something that makes an expression in a way that cannot be read here, and so cannot be checked. */
export interface Unreadable {
  readonly where: string;
  readonly text: string;
}

export interface Expressions {
  readonly found: readonly Expression[];
  readonly unreadable: readonly Unreadable[];
}

const ROOT = fileURLToPath(new URL("../..", import.meta.url));
/** Tests run on texts of their own; everything that comes from outside runs through these. */
const SOURCES = ["{grammar,server,client}/**/*.{ts,mts,cts,js,mjs,cjs}", "!**/{dist,node_modules}/**"];
const JSON_FILES = ["package.json", "client/language-configuration.json", "client/syntaxes/*.json"];
/** Fields of those files that hold a pattern. */
const PATTERN_FIELDS = new Set(["match", "begin", "end", "while", "regexp", "pattern", "wordPattern"]);
/** Names of files with stars in them. */
const GLOB_FIELDS = new Set(["filenamePattern"]);
/** Patterns inside a field of another shape: `indentationRules.increaseIndentPattern`. */
const isPatternField = (name: string): boolean =>
  PATTERN_FIELDS.has(name) || (name.endsWith("Pattern") && !GLOB_FIELDS.has(name));

/** All expressions of the product, each once. */
export function productExpressions(): Expressions {
  const files = (patterns: readonly string[]) => globSync([...patterns], { cwd: ROOT }).sort();
  const all = [
    ...files(SOURCES).map((file) => expressionsOfSource(file, readFileSync(`${ROOT}/${file}`, "utf8"))),
    ...files(JSON_FILES).map((file) => expressionsOfJson(file, readFileSync(`${ROOT}/${file}`, "utf8"))),
  ];
  const once = new Map(
    all
      .flatMap(({ found }) => found)
      .reverse()
      .map((it) => [`/${it.source}/${it.flags}`, it] as const),
  );
  return { found: [...once.values()].reverse(), unreadable: all.flatMap(({ unreadable }) => unreadable) };
}

/** The expressions of one source text. */
export function expressionsOfSource(file: string, text: string): Expressions {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found: Expression[] = [];
  const unreadable: Unreadable[] = [];
  const where = (node: ts.Node) =>
    `${file}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1}`;
  const visit = (node: ts.Node): void => {
    if (ts.isRegularExpressionLiteral(node)) {
      const end = node.text.lastIndexOf("/");
      found.push({ source: node.text.slice(1, end), flags: node.text.slice(end + 1), where: where(node) });
    } else if ((ts.isNewExpression(node) || ts.isCallExpression(node)) && makesExpression(node)) {
      const made = constantsOf(source);
      const [first, second] = node.arguments ?? [];
      const pattern = first && (textOfConstant(first, made) ?? literalOf(first, made));
      const flags = second && textOfConstant(second, made);
      const isLiteral = node.arguments?.[0] && ts.isRegularExpressionLiteral(node.arguments[0]);
      if (pattern !== undefined && (node.arguments!.length < 2 || flags !== undefined))
        found.push({ source: pattern, flags: flags ?? "", where: where(node) });
      else if (!isLiteral) unreadable.push({ where: where(node), text: node.getText() });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { found, unreadable };
}

/** `new RegExp(…)`, `RegExp(…)`, and methods that make an expression of a text. */
function makesExpression(node: ts.NewExpression | ts.CallExpression): boolean {
  const { expression } = node;
  if (expression.getText() === "RegExp" || expression.getText() === "globalThis.RegExp") return true;
  if (!ts.isCallExpression(node) || !ts.isPropertyAccessExpression(expression)) return false;
  const isMaking = ["match", "matchAll", "search"].includes(expression.name.text);
  return isMaking && node.arguments[0] !== undefined && ts.isStringLiteralLike(node.arguments[0]);
}

/** What the constants of a file are made of, by name. */
function constantsOf(source: ts.SourceFile): ReadonlyMap<string, ts.Expression> {
  const constants = new Map<string, ts.Expression>();
  for (const statement of source.statements) {
    if (!ts.isVariableStatement(statement) || !(statement.declarationList.flags & ts.NodeFlags.Const))
      continue;
    for (const { name, initializer } of statement.declarationList.declarations) {
      if (ts.isIdentifier(name) && initializer) constants.set(name.text, initializer);
    }
  }
  return constants;
}

/** The text that an expression of constants comes to; undefined when it depends on anything else. */
function textOfConstant(
  node: ts.Expression,
  constants: ReadonlyMap<string, ts.Expression>,
): string | undefined {
  const join = (parts: readonly (string | undefined)[]) =>
    parts.includes(undefined) ? undefined : parts.join("");
  if (ts.isStringLiteralLike(node)) return node.text;
  if (ts.isParenthesizedExpression(node)) return textOfConstant(node.expression, constants);
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken)
    return join([textOfConstant(node.left, constants), textOfConstant(node.right, constants)]);
  if (ts.isIdentifier(node)) {
    const value = constants.get(node.text);
    return value && textOfConstant(value, constants);
  }
  if (ts.isPropertyAccessExpression(node) && node.name.text === "source")
    return literalOf(node.expression, constants);
  const isRaw = ts.isTaggedTemplateExpression(node) && node.tag.getText() === "String.raw";
  const template = isRaw ? node.template : node;
  const textOf = (part: ts.TemplateLiteralLikeNode) => (isRaw ? part.rawText : part.text) ?? "";
  if (ts.isNoSubstitutionTemplateLiteral(template)) return textOf(template);
  if (!ts.isTemplateExpression(template)) return undefined;
  return join([
    textOf(template.head),
    ...template.templateSpans.flatMap((span) => [
      textOfConstant(span.expression, constants),
      textOf(span.literal),
    ]),
  ]);
}

/** The expression that something holds: a literal, a constant of it, or the `pattern` of what a function makes of it. */
function literalOf(node: ts.Expression, constants: ReadonlyMap<string, ts.Expression>): string | undefined {
  if (ts.isRegularExpressionLiteral(node)) return node.text.slice(1, node.text.lastIndexOf("/"));
  if (ts.isPropertyAccessExpression(node) && node.name.text === "pattern")
    return literalOf(node.expression, constants);
  if (ts.isCallExpression(node) && node.arguments.length === 1)
    return literalOf(node.arguments[0]!, constants);
  const value = ts.isIdentifier(node) ? constants.get(node.text) : undefined;
  return value && literalOf(value, constants);
}

/**
 * An editor's pattern as an expression of this language, for one line without its end: `\\G` is a place to start at,
 * what was captured where a block began stands for itself, and a part that ignores case does so in all of it.
 */
function inEditor(pattern: string): Pick<Expression, "source" | "flags"> {
  const source = pattern
    .replaceAll("(?:^|\\G)", "^")
    .replaceAll("(^|\\G)", "^")
    .replaceAll("(?i:", "(?:")
    .replaceAll(".*$", ".*")
    .replaceAll("(\\2|", "(")
    .replaceAll("(\\3)", "(`{3,}|~{3,})");
  return { source, flags: "su" };
}

/** The patterns of a JSON file; an editor runs each on one line. */
export function expressionsOfJson(file: string, text: string): Expressions {
  const found: Expression[] = [];
  const visit = (value: unknown, field: string): void => {
    if (typeof value === "string" && isPatternField(field))
      found.push({ ...inEditor(value), where: `${file} ${field}` });
    else if (Array.isArray(value)) for (const item of value) visit(item, field === "brackets" ? "" : field);
    else if (value !== null && typeof value === "object")
      for (const [name, item] of Object.entries(value)) visit(item, name);
  };
  visit(JSON.parse(text), "");
  return { found, unreadable: [] };
}
