/**
 * Builds the statements of a block from its logical lines.
 *
 * The first word of a line says which entry rule reads it.  A word that the block does not have makes a field of the form
 * `unknown`, which is no syntax error: the analysis core names the words that would fit.  A line that starts with no word
 * is broken, and costs nothing but itself.
 */
import { gist } from "./gist.ts";
import type { LayoutNode } from "./layout.ts";
import { endOf, isUnclosed, isWord, type LexToken } from "./lexer.ts";
import { isSign, signAfterKeyword, unclosedString } from "./line-problems.ts";
import type { LineRule } from "./line-reader.ts";
import { docsAbove, type SourceLine } from "./lines.ts";
import { makeName, makeTitle, tokenSpan } from "./literals.ts";
import { lookUp } from "./look-up.ts";
import { isValueInWords, type Kept, keptAs } from "./own-words.ts";
import { LineParser } from "./parser.ts";
import { plainField, VERB_SPELLINGS, VERB_SPELLINGS_WITH } from "./spellings.ts";
import * as Token from "./tokens.ts";
import { t } from "./translate.ts";
import type {
  ApplyStatement,
  BrokenStatement,
  DoneStatement,
  FieldStatement,
  FieldValue,
  KeptLine,
  LineBreak,
  Name,
  RecipeStatement,
  Respelling,
  Span,
  Statement,
  SurfaceStatement,
  SyntaxProblem,
  Title,
} from "./tree.ts";
import {
  type BlockKind,
  FIELDS,
  type FieldWord,
  STATEMENTS,
  type StatementWord,
  VERBS,
} from "./vocabulary.ts";

/** What all lines of a declaration share while they are read. */
export interface ReadingContext {
  readonly lines: readonly SourceLine[];
  readonly problems: SyntaxProblem[];
  readonly respellings: Respelling[];
  readonly breaks: LineBreak[];
}

type FieldOrBroken = FieldStatement | BrokenStatement;

let parser: LineParser | undefined;

/** The one parser of the process, made when it is first needed. */
export function lineParser(): LineParser {
  parser ??= new LineParser();
  return parser;
}

/** The fields of a block that has nothing else. */
export function readFields(
  ctx: ReadingContext,
  nodes: readonly LayoutNode[],
  kind: "material" | "shop" | "surface",
): FieldOrBroken[] {
  const hasShape = nodes.some(({ tokens }) => tokens[0]!.text === "shape");
  return nodes
    .flatMap((node): readonly LineOfWork[] =>
      kind === "shop"
        ? withNight(ctx, node)
        : [{ node: kind === "surface" ? withShape(ctx, node, hasShape) : node }],
    )
    .map((line) => readStatement(ctx, line.node, kind, line))
    .filter(isFieldOrBroken);
}

/** `wear outdoors`: weather is no wear, and has a line of its own; all of it, the worse for the work. */
function outdoorsOfWear(ctx: ReadingContext, node: LayoutNode): LayoutNode {
  const [wear, where] = node.tokens;
  ctx.respellings.push({ span: tokenSpan(wear!), text: "outdoors" });
  return { ...node, tokens: [{ ...wear!, text: "outdoors" }, where!] };
}

/** `air 60 F, overnight 48 F`: the air of the night has a line of its own. */
function withNight(ctx: ReadingContext, node: LayoutNode): readonly LineOfWork[] {
  const { tokens } = node;
  const at = tokens[0]!.text === "air" ? tokens.findIndex(({ type }) => type === Token.Comma) : -1;
  const words =
    at < 0
      ? undefined
      : NIGHT_WORDS.find((each) => each.every((word, idx) => tokens[at + 1 + idx]?.text === word));
  const from = at + 1 + (words?.length ?? 0);
  const first = tokens[from];
  if (words === undefined || first?.type !== Token.NumberToken) {
    return [{ node }];
  }
  ctx.breaks.push({ start: endOf(tokens[at - 1]!), end: first.start, text: "\n  night_air " });
  return [
    { node: { ...node, tokens: tokens.slice(0, at) } },
    lineOfWork(node, tokens.slice(from), "night_air", { start: first.start, end: first.start }),
  ];
}

const NIGHT_WORDS: readonly (readonly string[])[] = [
  ["overnight"],
  ["at", "night"],
  ["nights"],
  ["night"],
  ["by", "night"],
];

/** `area 9 m2` is the shape where no other is stated; beside one it says what was measured, and would count twice. */
function withShape(ctx: ReadingContext, node: LayoutNode, hasShape: boolean): LayoutNode {
  const [first, ...rest] = node.tokens;
  if (first!.text === "wear" && rest.length === 1 && /^(?:outdoors|outside|weather)$/iu.test(rest[0]!.text)) {
    return outdoorsOfWear(ctx, node);
  }
  if (hasShape || first!.text !== "area" || rest.length === 0) {
    return node;
  }
  ctx.respellings.push({ span: tokenSpan(first!), text: "shape" });
  return { ...node, tokens: [{ ...first!, text: "shape" }, ...rest] };
}

/** The fields and surfaces of a piece. */
export function readPiece(
  ctx: ReadingContext,
  nodes: readonly LayoutNode[],
): (FieldOrBroken | SurfaceStatement)[] {
  return nodes
    .map((node) => readStatement(ctx, node, "piece"))
    .filter((statement) => isFieldOrBroken(statement) || statement.kind === "surface");
}

/** The fields, the applications and the record of a job. */
export function readJob(
  ctx: ReadingContext,
  nodes: readonly LayoutNode[],
): (FieldOrBroken | ApplyStatement | DoneStatement)[] {
  return nodes
    .flatMap((node) => ofEach(ctx, node).map((line) => readStatement(ctx, line.node, "job", line)))
    .filter(
      (statement) => isFieldOrBroken(statement) || statement.kind === "apply" || statement.kind === "done",
    );
}

/** `piece table, stool x 2`, `apply stained, waxed to top`: a line for each, which the plain form writes out. */
function ofEach(ctx: ReadingContext, node: LayoutNode): readonly LineOfWork[] {
  const { tokens } = node;
  const word = tokens[0]!.text;
  const isApply = word === "apply";
  const commas = isApply || word === "piece" ? commasBefore(tokens, isApply ? Token.To : Token.End) : [];
  if (commas.length === 0) {
    return [{ node }];
  }
  const to = isApply ? tokens.findIndex(({ type }) => type === Token.To) : tokens.length;
  const behind = tokens.slice(to);
  const text = behind.length > 0 ? ` ${textOf(behind)}` : "";
  const starts = [1, ...commas.map((at) => at + 1)];
  return starts.map((from, idx) => {
    const end = commas[idx] ?? to;
    const own = [...tokens.slice(from, end), ...behind];
    if (idx === 0) {
      return { node: { ...node, tokens: [tokens[0]!, ...own] } };
    }
    const { start } = tokens[from]!;
    ctx.breaks.push({ start: endOf(tokens[from - 2]!), end: start, text: `${text}\n  ${word} ` });
    return lineOfWork(node, own, word, { start, end: start });
  });
}

/** The commas of a list of names, and `and` before its last, up to a word of this type. Others stand in parentheses. */
function commasBefore(tokens: readonly LexToken[], end: Token.TokenType): readonly number[] {
  const commas: number[] = [];
  let depth = 0;
  for (const [idx, { type }] of tokens.entries()) {
    if (depth === 0 && type === end) return isListed(tokens, commas) ? commas : [];
    depth += type === Token.LeftParen ? 1 : type === Token.RightParen ? -1 : 0;
    if (depth === 0 && idx > 1 && (type === Token.Comma || type === Token.And)) commas.push(idx);
  }
  return end === Token.End && depth === 0 && isListed(tokens, commas) ? commas : [];
}

/** Whether a name stands behind each comma. */
const isListed = (tokens: readonly LexToken[], commas: readonly number[]): boolean =>
  commas.every((at) => tokens[at + 1]?.type === Token.Word && tokens[at - 1]!.type !== Token.Comma);

/** The statements of a recipe, or of the block of a layer. */
export function readRecipe(
  ctx: ReadingContext,
  nodes: readonly LayoutNode[],
  kind: "recipe" | "layer",
): RecipeStatement[] {
  const statements: RecipeStatement[] = [];
  for (const node of nodes) {
    const cased = inCase(ctx, node, kind);
    for (const statement of cased ?? [readStatement(ctx, node, kind)]) {
      if (isOfRecipe(statement)) {
        statements.push(statement);
      }
    }
  }
  return statements;
}

const isOfRecipe = (statement: Statement): statement is RecipeStatement =>
  statement.kind !== "surface" && statement.kind !== "apply" && statement.kind !== "done";

/** `if runs show {`: what is done in a case, each line with the case in words. */
function inCase(
  ctx: ReadingContext,
  node: LayoutNode,
  kind: "recipe" | "layer",
): readonly Statement[] | undefined {
  if (node.tokens[0]!.text !== "if" || node.block === undefined || node.tokens.length < 2) {
    return undefined;
  }
  const rest = node.tokens.slice(1);
  reportUnclosed(ctx, node.tokens);
  const value = `if ${rest.map((token) => (token.type === Token.StringToken ? makeTitle(token).value : token.text)).join(" ")}`;
  return readRecipe(ctx, node.block.nodes, kind).map((statement) => inCaseOf(statement, value));
}

function inCaseOf(statement: RecipeStatement, value: string): RecipeStatement {
  const { end } = statement.span;
  const span = { start: end, end };
  const what: Title = { kind: "title", value, span };
  const keyword: Name = { kind: "name", text: "if", span };
  switch (statement.kind) {
    case "layer":
      return { ...statement, tails: [...statement.tails, { kind: "if", keyword, what, span }] };
    case "step":
      return { ...statement, tails: [...statement.tails, { kind: "said", keyword, what, span }] };
    case "wait":
      return { ...statement, what: statement.what ?? what };
    default:
      return statement;
  }
}

/** Reads a line by a rule, once its strings and the sign after its keyword have been looked at. */
export function readLine<T>(
  ctx: ReadingContext,
  node: LayoutNode,
  rule: LineRule<T>,
  example: string | undefined,
  keyword?: string,
): T {
  const tokens = withoutSign(ctx, node.tokens);
  const { line, problems, respellings } = lineParser().read(rule, { tokens, example, keyword });
  reportUnclosed(ctx, node.tokens);
  if (problems.length > 0) {
    ctx.problems.push(...problems);
  }
  if (respellings.length > 0) {
    ctx.respellings.push(...respellings);
  }
  return line;
}

/** The tokens of a line without a sign after its keyword, which is reported. */
function withoutSign(ctx: ReadingContext, tokens: readonly LexToken[]): readonly LexToken[] {
  const [keyword, sign] = tokens;
  if (!isSign(sign)) {
    return tokens;
  }
  ctx.problems.push(signAfterKeyword(keyword!, sign!));
  return tokens.toSpliced(1, 1);
}

function reportUnclosed(ctx: ReadingContext, tokens: readonly LexToken[]): void {
  for (const token of tokens) {
    if (isUnclosed(token)) {
      ctx.problems.push(unclosedString(token));
    }
  }
}

/** From the first to the last token of a line, without its brace. */
export function nodeSpan(node: LayoutNode): Span {
  return { start: node.tokens[0]!.start, end: endOf(node.tokens.at(-1)!) };
}

function readStatement(
  ctx: ReadingContext,
  written: LayoutNode,
  kind: Exclude<BlockKind, "file">,
  given?: LineOfWork,
): Statement {
  const isWork = kind === "recipe" || kind === "layer";
  const { node, said } = isWork ? asLineOfWork(ctx, written) : (given ?? { node: written, said: undefined });
  const first = node.tokens[0]!;
  const keyword = said ?? makeName(first);
  const span = nodeSpan(node);
  const base = { keyword, span, docs: "" };
  const isBare = said === undefined && isWork;
  const bare = isBare ? withoutKeyword(node) : undefined;
  if (bare !== undefined) {
    const at = { start: first.start, end: first.start };
    ctx.respellings.push({ span: at, text: "layer" });
    return readOwnStatement(
      ctx,
      bare,
      { ...base, keyword: { kind: "name", text: "layer", span: at } },
      "layer",
      STATEMENTS[kind as "recipe"].layer!.example,
    );
  }
  if (said === undefined && !isWord(first)) {
    const example = Object.values<FieldWord | StatementWord>(
      kind === "layer" ? STATEMENTS.layer : FIELDS[kind],
    )[0];
    ctx.problems.push({
      message: gist(
        (suchAs) =>
          t`expected a word at the start of the line${example === undefined ? "" : suchAs(example.example)}`,
      ),
      span: tokenSpan(first),
    });
    return { kind: "broken", ...base };
  }
  const word = said?.text ?? first.text;
  const statement = lookUp(STATEMENTS[kind], word);
  if (statement !== undefined) {
    return readOwnStatement(ctx, node, base, word, statement.example);
  }
  // What has braces is no line in words: between quotes nothing would be left to open them.
  const isLine = node.block === undefined && !node.hasBraces;
  const kept = isLine && given?.said === undefined ? keptAs(kind, node.tokens) : undefined;
  if (kept !== undefined) {
    return notedLine(ctx, node, { keyword, span }, kind, kept);
  }
  const plain = plainField(kind, word);
  const field = kind === "layer" ? undefined : lookUp(FIELDS[kind], plain);
  if (field === undefined) {
    reportUnclosed(ctx, node.tokens);
    return { kind: "field", ...base, value: { form: "unknown" } };
  }
  if (plain !== word) {
    ctx.respellings.push({ span: keyword.span, text: plain });
  }
  const [problems, respellings] = [ctx.problems.length, ctx.respellings.length];
  const line = readLine(ctx, node, lineParser().fieldRule(field.form), field.example, plain);
  const isInHalf =
    plain === "recoat" && /^(?:up|within|max|maximum|under|below|before)$/u.test(node.tokens[1]?.text ?? "");
  if (isLine && isInHalf && line.value.form === "range" && line.value.range?.from.kind === "name") {
    ctx.problems.length = problems;
    ctx.respellings.length = respellings;
    return notedLine(ctx, node, { keyword, span }, kind, "fact");
  }
  if (isLine && plain === "hours" && ctx.problems.length > problems && isDaysAlone(node.tokens)) {
    ctx.problems.length = problems;
    ctx.respellings.length = respellings;
    const example = hoursOfDays(line.value);
    const noted = notedLine(ctx, node, { keyword, span }, kind, "fact");
    return noted.kind === "field" ? { ...noted, kept: { ...noted.kept!, example } } : noted;
  }
  if (
    isLine &&
    isValueInWords(field.form, node.tokens) &&
    (ctx.problems.length > problems || hasNoFigure(line.value))
  ) {
    ctx.problems.length = problems;
    ctx.respellings.length = respellings;
    return notedLine(ctx, node, { keyword, span }, kind, plain === "hours" ? "fact" : "said");
  }
  if (isLine && ctx.problems.length > problems && isWithoutFigure(plain, node.tokens)) {
    ctx.problems.length = problems;
    ctx.respellings.length = respellings;
    return notedLine(ctx, node, { keyword: { ...keyword, text: plain }, span }, kind, "fact");
  }
  const named = plain === word ? keyword : { ...keyword, text: plain };
  return statementOf("field", { keyword: named, span, docs: "" }, line);
}

/** The line for these days, from nine to five. */
function hoursOfDays(value: FieldValue): string {
  const spans = value.form === "hours" ? value.spans : [];
  const days = spans.flatMap(({ from, to }) => (from ? [`${from.text}${to ? ` to ${to.text}` : ""}`] : []));
  return `hours ${days.map((each) => `${each} 09:00 to 17:00`).join(", ")}`;
}

/** `hours Thu to Sat`: days without a time. */
const isDaysAlone = (tokens: readonly LexToken[]): boolean =>
  tokens.every(({ kind, type }) => kind === "word" || type === Token.Comma);

/** `shape 4 of post`, `shape round x 45 cm`: a shape of which no size is told, or not the first. */
const isWithoutFigure = (word: string, tokens: readonly LexToken[]): boolean =>
  word === "shape" &&
  /^(?:\d+ (?:of )?)?\p{L}+(?:(?: \p{L}+)*| x \d[\d.]* \p{L}+)$/u.test(
    tokens
      .slice(1)
      .map(({ text }) => text)
      .join(" "),
  );

/** `voc low`: a word where a figure should stand. */
function hasNoFigure(value: FieldValue): boolean {
  switch (value.form) {
    case "quantity":
      return value.quantity?.kind === "name";
    case "range":
      return value.range?.from.kind === "name";
    case "air":
      return value.temperature?.from.kind === "name";
    default:
      return false;
  }
}

/** `extraction explosion-proof`: kept as a note in its own words, which the plain form quotes. */
function notedLine(
  ctx: ReadingContext,
  node: LayoutNode,
  { keyword, span }: { readonly keyword: Name; readonly span: Span },
  kind: BlockKind,
  as: Kept,
): Statement {
  reportUnclosed(ctx, node.tokens);
  // A blank of another script is a sign that cannot be read, which the layout sets apart; in words it is a blank.
  const said = node.tokens.filter(({ text }) => text.trim() !== "");
  const value = said.reduce((text, token, idx) => {
    const before = said[idx - 1];
    const isApart = before !== undefined && token.start > endOf(before);
    return `${text}${isApart ? " " : ""}${ownText(token, idx)}`;
  }, "");
  if (as === "said") {
    ctx.respellings.push({ span, text: `note ${quotedText(value)}` });
  }
  const text: Title = { kind: "title", value, span };
  const kept: KeptLine = { as, word: keyword.text };
  const base = { keyword: { ...keyword, text: "note" }, span, docs: "", kept };
  return kind === "recipe" || kind === "layer"
    ? { kind: "note", ...base, text }
    : { kind: "field", ...base, value: { form: "text", text } };
}

/** What a token says: a title without its quotes, the word of the line with blanks. */
function ownText(token: LexToken, idx: number): string {
  if (token.type === Token.StringToken) {
    return makeTitle(token).value;
  }
  return idx === 0 ? token.text.replaceAll("_", " ") : token.text;
}

const quotedText = (text: string): string => `"${text.replaceAll("\\", "\\\\").replaceAll('"', '\\"')}"`;

/** A line of work, and the word that it is told without, at its place. */
interface LineOfWork {
  readonly node: LayoutNode;
  readonly said?: Name;
}

/**
 * Work that is told without its word or by another: `sand 220`, `then dust`, `let dry 2 h`, `step dry overnight`,
 * `step stain with walnut`, `clear x 2`. The plain form has the word.
 */
function asLineOfWork(ctx: ReadingContext, node: LayoutNode): LineOfWork {
  const plain = withoutThen(ctx, node);
  const [first, second, third] = plain.tokens;
  const word = first!.text;
  const isStep = word === "step";
  const from = isStep ? 1 : 0;
  const said = isStep ? plain.tokens.slice(from) : plain.tokens;
  const waits = isWaitBegun(said[0]?.text ?? "")
    ? (isStep ? [...WAIT_WORDS, ["wait"]] : WAIT_WORDS).find((words) =>
        words.every((each, idx) => said[idx]?.text.toLowerCase() === each),
      )
    : undefined;
  const after = waits && said[waits.length];
  if (
    after !== undefined &&
    (after.type === Token.NumberToken || after.type === Token.Overnight || after.type === Token.Until)
  ) {
    return replaced(ctx, plain, from + waits!.length, "wait");
  }
  if (isStep && second !== undefined && PUTS_ON.has(second.text)) {
    const name = second.text === "apply" ? 2 : third?.type === Token.With ? 3 : undefined;
    const isNamed =
      name !== undefined &&
      plain.tokens[name]?.type === Token.Word &&
      plain.tokens[name + 1]?.type !== Token.Word;
    return isNamed ? replaced(ctx, plain, name, "layer") : { node: plain };
  }
  if (isStep || Object.hasOwn(STATEMENTS.recipe, word) || Object.hasOwn(FIELDS.recipe, word)) {
    return { node: plain };
  }
  const isVerb =
    Object.hasOwn(VERBS, word) ||
    Object.hasOwn(VERB_SPELLINGS, word) ||
    Object.hasOwn(VERB_SPELLINGS_WITH, word);
  if (isVerb && second?.type !== Token.X) {
    return prefixed(ctx, plain, "step");
  }
  return first!.type === Token.Word && second?.type === Token.X
    ? prefixed(ctx, plain, "layer")
    : { node: plain };
}

/** `then sand 220`, `step then sand 220` */
function withoutThen(ctx: ReadingContext, node: LayoutNode): LayoutNode {
  const at = node.tokens[0]!.text === "step" ? 1 : 0;
  const then = node.tokens[at];
  if (
    then === undefined ||
    node.tokens.length < at + 2 ||
    !/^(?:then|next|afterwards|finally)$/iu.test(then.text)
  ) {
    return node;
  }
  ctx.respellings.push({ span: tokenSpan(then), text: "" });
  return { ...node, tokens: node.tokens.toSpliced(at, 1) };
}

/** The first tokens of a line by the word that they stand for. */
function replaced(ctx: ReadingContext, node: LayoutNode, count: number, word: string): LineOfWork {
  const [first] = node.tokens;
  const span = { start: first!.start, end: endOf(node.tokens[count - 1]!) };
  ctx.respellings.push({ span, text: word });
  return lineOfWork(node, node.tokens.slice(count), word, span);
}

function prefixed(ctx: ReadingContext, node: LayoutNode, word: string): LineOfWork {
  const { start } = node.tokens[0]!;
  const span = { start, end: start };
  ctx.respellings.push({ span, text: word });
  return lineOfWork(node, node.tokens, word, span);
}

/** The token of the word is as long as what stands at its place. */
function lineOfWork(node: LayoutNode, rest: readonly LexToken[], word: string, span: Span): LineOfWork {
  const text = word.padEnd(span.end - span.start).slice(0, span.end - span.start);
  const token: LexToken = { ...node.tokens[0]!, type: Token.Word, kind: "word", text };
  return { node: { ...node, tokens: [token, ...rest] }, said: { kind: "name", text: word, span } };
}

/** How a wait is told without its word; a time, a night or `until` follows. */
const WAIT_WORDS: readonly (readonly string[])[] = [
  "let it dry for",
  "let it dry",
  "let dry for",
  "let dry",
  "leave it for",
  "leave to dry",
  "leave for",
  "leave",
  "dry for",
  "dry",
].map((words) => words.split(" "));

/** Whether a word may begin words for a wait; nearly none does. */
const isWaitBegun = (word: string): boolean => /^(?:let|leave|dry|wait)$/iu.test(word);

/** Work that is a layer: with what it is done lies on the surface from then on. */
const PUTS_ON: ReadonlySet<string> = new Set(
  "paint,varnish,lacquer,stain,prime,coat,oil,wax,apply,glaze,seal".split(","),
);

/** `2 x clear`, `2 coats of clear`, `mist coat of clear`: a layer without the word, before which it is put. */
function withoutKeyword(node: LayoutNode): LayoutNode | undefined {
  const [first, second] = node.tokens;
  if (first === undefined || second === undefined) {
    return undefined;
  }
  const isCounted =
    first.type === Token.NumberToken &&
    (second.type === Token.X ||
      second.type === Token.Coats ||
      (second.type === Token.Unit && /^coats?$/u.test(second.text)));
  const isLaid = Token.BARE_TAILS.has(first.type) && second.type === Token.Coats;
  if (!isCounted && !isLaid) {
    return undefined;
  }
  const keyword: LexToken = { ...first, type: Token.Word, kind: "word", text: "" };
  return { ...node, tokens: [keyword, ...node.tokens] };
}

/** A statement of what its line says, which is read for it alone: its parts are put to the others without a copy. */
function statementOf<K extends Statement["kind"], L extends object>(
  kind: K,
  { keyword, span, docs }: Pick<Statement, "keyword" | "span" | "docs">,
  line: L,
): L & Pick<Statement, "keyword" | "span" | "docs"> & { readonly kind: K } {
  return Object.assign(line, { kind, keyword, span, docs });
}

/** A line with a grammar of its own. */
function readOwnStatement(
  ctx: ReadingContext,
  node: LayoutNode,
  base: Pick<Statement, "keyword" | "span" | "docs">,
  word: string,
  example: string,
): Statement {
  const rules = lineParser();
  switch (word) {
    case "surface": {
      const { name, title } = readLine(ctx, node, rules.surfaceHead, example);
      const fields = readFields(ctx, node.block?.nodes ?? [], "surface");
      return {
        kind: "surface",
        ...base,
        docs: docsAbove(ctx.lines, node.line),
        ...(name && { name }),
        ...(title && { title }),
        fields,
      };
    }
    case "layer": {
      const line = readLine(ctx, node, rules.layer, example);
      const block = node.block && readRecipe(ctx, node.block.nodes, "layer");
      const layer = statementOf("layer", base, line);
      return block === undefined ? layer : { ...layer, block };
    }
    case "step":
      return statementOf("step", base, readLine(ctx, node, rules.step, example));
    case "wait":
      if (isSeenByEye(node.tokens)) {
        return lookedAt(ctx, node, base);
      }
      return statementOf("wait", base, readLine(ctx, node, rules.wait, example, word));
    case "safety":
      return statementOf("safety", base, readLine(ctx, node, rules.safety, example));
    case "follow":
      return statementOf("follow", base, readLine(ctx, node, rules.follow, example));
    case "note":
      return statementOf("note", base, readLine(ctx, node, rules.note, example));
    case "apply":
      return statementOf("apply", base, readLine(ctx, node, rules.apply, example));
    case "done":
      return statementOf("done", base, readLine(ctx, node, rules.done, example));
    default:
      return { kind: "broken", ...base };
  }
}

/** `wait until moisture below 12 %`: nobody knows how long, so it is a look before going on. */
function isSeenByEye(tokens: readonly LexToken[]): boolean {
  if (tokens[1]?.type !== Token.Until || tokens.length < 4) {
    return false;
  }
  const rest = tokens.slice(2);
  const text = rest.map((token) => token.text).join(" ");
  return (
    rest[0]!.kind === "word" &&
    !rest.some(({ type }) => type === Token.StringToken) &&
    !STAGE_OR_DAY.test(text)
  );
}

const STAGE_OR_DAY =
  /dry|dries|hard|\bset\b|cure|recoat|touch|stack|tack|next|tomorrow|morning|evening|\b(?:mon|tue|wed|thu|fri|sat|sun)|^(?:it can|they can|it is|they are|the coat)/iu;

function lookedAt(
  ctx: ReadingContext,
  node: LayoutNode,
  base: Pick<Statement, "keyword" | "span" | "docs">,
): Statement {
  const [wait, ...rest] = node.tokens;
  const value = textOf(rest);
  const span = { start: rest[0]!.start, end: endOf(rest.at(-1)!) };
  ctx.respellings.push({ span: tokenSpan(wait!), text: "step inspect" }, { span, text: quotedText(value) });
  const verb: Name = { kind: "name", text: "inspect", span: { start: span.start, end: span.start } };
  const what: Title = { kind: "title", value, span };
  const keyword = { ...base.keyword, text: "step" };
  return { kind: "step", ...base, keyword, verb, what, grits: [], tails: [] };
}

/** The text of some tokens, with one blank where there are any. */
const textOf = (tokens: readonly LexToken[]): string =>
  tokens.reduce((text, token, idx) => {
    const before = tokens[idx - 1];
    return `${text}${before !== undefined && token.start > endOf(before) ? " " : ""}${token.text}`;
  }, "");

function isFieldOrBroken(statement: Statement): statement is FieldOrBroken {
  return statement.kind === "field" || statement.kind === "broken";
}
