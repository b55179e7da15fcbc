/**
 * Resolves one recipe: its lines with their quantities and names, the defaults of its parameters, and what is wrong in
 * it whatever its arguments: words, names, units, numbers and calls.
 */

import { gist } from "../../../../grammar/src/gist.ts";
import { t } from "../../../../grammar/src/translate.ts";
import type {
  LayerStatement,
  Name,
  NumberLiteral,
  RecipeStatement,
  SafetyStatement,
  Span,
  StepStatement,
  Tail,
  WaitStatement,
} from "../../../../grammar/src/tree.ts";
import {
  DUTIES,
  METHODS,
  SPRAY_METHODS,
  TAILS,
  VERBS,
  WAIT_STAGES,
} from "../../../../grammar/src/vocabulary.ts";
import { readQuantity } from "../measure/read-quantity.ts";
import { COATS, DURATION, GRIT, type Limits, POSITIVE, SHARE_ABOVE_ZERO } from "../model/lowering.ts";
import type { Recipe, RecipeParameter } from "../model/model.ts";
import { parameterNamed } from "../model/parameters.ts";
import { COATS_WANTED, countOf, durationOf, GRIT_WANTED, measureOf, NUMBER_WANTED } from "./figures.ts";
import {
  type ArgumentValue,
  type Bound,
  boundOf,
  type Figure,
  type LayerLine,
  type MaterialName,
  type PartTail,
  type RecipeLine,
  type SafetyLine,
  type StepLine,
  type TakesTail,
  type UsesTail,
  type WaitLine,
} from "./lines.ts";
import { materialOf, recipeOf } from "./reference.ts";
import {
  checkHandedOn,
  figureValue,
  numberLimits,
  ownValue,
  resolveCall,
  sheenWord,
} from "./resolve-call.ts";
import { checkWord, materialNamed, modelNamed, type Resolving, report } from "./resolving.ts";

export interface ResolvedLines {
  readonly lines: readonly RecipeLine[];
  /** What parameters stand for where nothing is given for them. */
  readonly defaults: ReadonlyMap<string, Bound>;
}

/** `head` is for the defaults, which know no parameters. */
export function resolveLines(ctx: Resolving, head: Resolving, recipe: Recipe): ResolvedLines {
  const defaults = resolveDefaults(head, recipe);
  return { defaults, lines: resolveStatements(ctx, recipe.statements) };
}

const NOTHING_BOUND: ReadonlyMap<string, Bound> = new Map();

function resolveDefaults(ctx: Resolving, recipe: Recipe): ReadonlyMap<string, Bound> {
  const defaults = new Map<string, Bound>();
  for (const { name, default: value } of recipe.parameterSyntax) {
    const parameter = parameterNamed(recipe.parameters, name.text);
    if (parameter?.place.span.start !== name.span.start || !value) continue;
    const bound = boundOf(
      parameter.type,
      resolveDefault(ctx, recipe, parameter.name, parameter.type, value),
      NOTHING_BOUND,
    );
    if (bound) defaults.set(parameter.name, bound);
  }
  return defaults;
}

function resolveDefault(
  ctx: Resolving,
  recipe: Recipe,
  name: string,
  type: Bound["type"],
  value: NonNullable<Recipe["parameterSyntax"][number]["default"]>,
): ArgumentValue {
  if (type === "method" || type === "ratio" || type === "grits" || type === "sheen")
    return ownValue(ctx, name, type, value);
  if (value.kind === "ratio" || value.kind === "grits") {
    report(ctx, "wrong-argument", value.span, t`\`${name}\` is a ${type}.`);
    return { kind: "text" };
  }
  if (type === "number" || type === "duration") {
    if (type === "number") countOf(ctx, value, numberLimits(recipe, name), NUMBER_WANTED);
    else durationOf(ctx, value);
    return value.kind === "name" ? { kind: "name", text: value.text } : figureValue(value);
  }
  if (value.kind !== "name") {
    report(ctx, "wrong-argument", value.span, t`\`${name}\` is a ${type}; its default is the name of one.`);
    return { kind: "text" };
  }
  const meant = modelNamed(ctx, type, value);
  const material = materialOf(meant);
  const handedOn = recipeOf(meant);
  if (handedOn) checkHandedOn(ctx, value, handedOn, recipe, name);
  return {
    kind: "name",
    text: value.text,
    ...(material ? { material } : {}),
    ...(handedOn ? { recipe: handedOn } : {}),
  };
}

const resolveStatements = (ctx: Resolving, statements: readonly RecipeStatement[]): readonly RecipeLine[] =>
  statements.map((statement) => resolveStatement(ctx, statement));

function resolveStatement(ctx: Resolving, syntax: RecipeStatement): RecipeLine {
  switch (syntax.kind) {
    case "step":
      return resolveStep(ctx, syntax);
    case "layer":
      return resolveLayer(ctx, syntax);
    case "wait":
      return resolveWait(ctx, syntax);
    case "safety":
      return resolveSafety(ctx, syntax);
    case "follow":
      return { kind: "follow", syntax, ...(syntax.call ? { call: resolveCall(ctx, syntax.call) } : {}) };
    case "note":
      return { kind: "note", syntax };
    default:
      return { kind: "other", syntax };
  }
}

const ownWords = (): string => t`, or any other work in quotes, such as \`step "lift the loose veneer"\``;

function resolveStep(ctx: Resolving, syntax: StepStatement): StepLine {
  // A slip of the pen must hide no danger: `scuf` over old paint is judged as `scuff`.
  const verb = syntax.verb && checkWord(ctx, syntax.verb, Object.keys(VERBS), "verb", t`This step`, ownWords);
  const use = materialNamed(ctx, syntax.material);
  const grits = syntax.grits.map((grit) => countOf(ctx, grit, GRIT, GRIT_WANTED));
  const { takes, uses, batch, part, costs, leave, said } = resolveTails(ctx, syntax, use);
  const times = countOf(ctx, syntax.times, COATS, { words: "how often it is done" });
  return {
    kind: "step",
    syntax,
    ...(verb === undefined ? {} : { verb }),
    ...(use ? { use } : {}),
    grits,
    ...(takes ? { takes } : {}),
    ...(uses ? { uses } : {}),
    ...(batch ? { batch } : {}),
    ...(part ? { part } : {}),
    ...(costs === undefined ? {} : { costs }),
    ...(times ? { times } : {}),
    ...(leave ? { leave } : {}),
    ...(said === undefined ? {} : { said }),
  };
}

function resolveLayer(ctx: Resolving, syntax: LayerStatement): LayerLine {
  const use = materialNamed(ctx, syntax.material);
  const coats = countOf(ctx, syntax.coats, COATS, COATS_WANTED);
  const coatsTo = countOf(ctx, syntax.coatsTo, COATS, COATS_WANTED);
  const { uses: _, costs: __, leave: ___, ...tails } = resolveTails(ctx, syntax, use);
  checkPasses(ctx, syntax, tails);
  return {
    kind: "layer",
    syntax,
    ...(use ? { use } : {}),
    ...(coats ? { coats } : {}),
    ...(coatsTo ? { coatsTo } : {}),
    ...(syntax.coatsMore ? { coatsMore: syntax.coatsMore.value } : {}),
    ...(syntax.sessions ? { sessions: true as const } : {}),
    method: "brush",
    toner: false,
    ...tails,
    ...blockOf(ctx, syntax),
  };
}

/** A flash-off is between the passes of one coat; between coats it would be a wait. */
function checkPasses(ctx: Resolving, { tails: written }: LayerStatement, { passes, flash }: Tails): void {
  const tail = written.find(({ kind }) => kind === "flash");
  if (!tail || !flash || passes) return;
  const at = { start: tail.span.start, end: tail.span.start };
  ctx.problems.push({
    rule: "missing-field",
    span: tail.span,
    message: t`\`flash\` is the time between the passes of one coat\nSay how many there are, such as \`passes 2, flash 10 min\`; between coats write \`between wait 10 min\`.`,
    fix: { title: t`Add \`passes 2\``, span: at, text: "passes 2, " },
  });
}

/** What is done between coats: the block, what `between` says, or the wait that nobody needs to write. */
function blockOf(ctx: Resolving, syntax: LayerStatement): Pick<LayerLine, "block"> {
  const { between, block, coats, span, tails } = syntax;
  const wet = tails.find((tail) => tail.kind === "wet_on_wet");
  if (wet && !block && !between) return { block: wetBetween(ctx, wet) };
  if (between && block)
    report(
      ctx,
      "repeated-field",
      between.span,
      t`\`between\` and the block say the same\nKeep one of the two.`,
    );
  if (block) return { block: resolveStatements(ctx, block) };
  if (!between && !coats) return {};
  const said = dryBeforeSanding(resolveStatements(ctx, between?.statements ?? []));
  const at = between?.span.start ?? span.end;
  const isWaited = said.some((line) => line.kind === "wait");
  const last = said.at(-1);
  const isDusty = last?.kind === "step" && (last.verb === "sand" || last.verb === "scuff");
  return {
    block: [
      ...(isWaited ? [] : [untilRecoat({ start: at, end: at })]),
      ...said,
      ...(isDusty ? [doneByItself("dust", { start: between!.span.end, end: between!.span.end })] : []),
    ],
  };
}

/** The time between two coats that lie wet on wet, which may be none. */
function wetBetween(ctx: Resolving, { time, span }: TailOf<"wet_on_wet">): readonly RecipeLine[] {
  const read = durationOf(ctx, time);
  if (!time || !read) return [];
  const at = { start: span.end, end: span.end };
  const syntax: WaitStatement = { kind: "wait", keyword: word("wait", at), span: at, docs: "", time };
  return [{ kind: "wait", syntax, overnight: false, time: read }];
}

/** "Between scuff 320 and wait 24 h" is said of a coat that dries before it is scuffed. */
function dryBeforeSanding(said: readonly RecipeLine[]): readonly RecipeLine[] {
  const isAbrading = (line: RecipeLine): boolean =>
    line.kind === "step" && ["sand", "scuff", "dust"].includes(line.verb ?? "");
  if (!said.every((line) => line.kind === "wait" || isAbrading(line))) return said;
  return [...said.filter(({ kind }) => kind === "wait"), ...said.filter(({ kind }) => kind !== "wait")];
}

const word = (text: string, span: Span): Name => ({ kind: "name", text, span });

function untilRecoat(span: Span): WaitLine {
  const keyword = word("wait", span);
  const syntax: WaitStatement = { kind: "wait", keyword, span, docs: "", until: word("recoat", span) };
  return { kind: "wait", syntax, until: "recoat", overnight: false };
}

/** A step of a verb alone, which another line brings with it. */
function doneByItself(done: "dust" | "buff", span: Span): StepLine {
  const keyword = word("step", span);
  const verb = word(done, span);
  const syntax: StepStatement = { kind: "step", keyword, span, docs: "", verb, grits: [], tails: [] };
  return { kind: "step", syntax, verb: done, grits: [] };
}

type Tails = Partial<
  Pick<
    LayerLine,
    | "optional"
    | "when"
    | "part"
    | "passes"
    | "flash"
    | "method"
    | "wiped"
    | "thinned"
    | "tinted"
    | "toner"
    | "wet"
    | "wetGrams"
    | "laid"
    | "sheen"
    | "transfer"
    | "wetOnWet"
    | "buffed"
    | "said"
    | "takes"
    | "batch"
  > & {
    readonly uses: UsesTail;
    readonly costs: number;
    readonly leave: Figure;
  }
>;

/** What the tails of a line say; of two of a kind the first counts. */
function resolveTails(
  ctx: Resolving,
  line: StepStatement | LayerStatement,
  use: MaterialName | undefined,
): Tails {
  const seen = new Map<string, Tail>();
  let tails: Tails = {};
  for (const tail of line.tails) {
    const on = TAILS[tail.kind]?.on ?? "both";
    // A tail of the other kind of line is the parser's to report.
    if (on !== "both" && on !== line.kind) continue;
    const said = resolveTail(ctx, tail, use);
    if (tail.kind === "said") {
      tails = {
        ...tails,
        said: [tails.said, tail.what.value].filter((text) => text !== undefined).join(", "),
      };
      continue;
    }
    // These two say the opposite of each other.
    const kind = tail.kind === "apart" ? "together" : tail.kind;
    const first = seen.get(kind);
    if (!first) {
      seen.set(kind, tail);
      tails = { ...tails, ...said };
      continue;
    }
    ctx.problems.push({
      rule: "repeated-field",
      span: tail.span,
      message:
        first.kind === tail.kind
          ? t`\`${tail.keyword.text}\` stands twice on this line\nKeep one of the two.`
          : t`\`${tail.kind}\` says the opposite of \`${first.kind}\`\nKeep one of the two.`,
      related: [{ span: first.span, message: t`See here` }],
    });
  }
  return tails;
}

function resolveTail(ctx: Resolving, tail: Tail, use: MaterialName | undefined): Tails {
  switch (tail.kind) {
    case "by":
      if (!tail.method) return {};
      return { method: methodOf(ctx, tail) };
    case "wiped": {
      const after = durationOf(ctx, tail.after);
      return { wiped: after ? { after } : {} };
    }
    case "thinned":
      return resolveThinned(ctx, tail);
    case "tinted": {
      const percent = measureOf(ctx, tail.share, ["share"], SHARE_ABOVE_ZERO)?.figure;
      const tint = materialNamed(ctx, tail.tint);
      return percent && tint ? { tinted: { percent, tint } } : {};
    }
    case "as":
      if (!tail.role) return {};
      checkWord(ctx, tail.role, ["toner"], "layer role");
      return { toner: tail.role.text === "toner" };
    case "wet": {
      return wetOf(ctx, tail);
    }
    case "thin":
    case "mist":
    case "full":
    case "flooded":
      return { laid: tail.kind };
    case "together":
    case "apart":
      return { batch: tail.kind };
    case "if":
      return { optional: true, ...(tail.what ? { when: tail.what.value } : {}) };
    case "only":
      return { optional: true, part: partOf(ctx, tail) };
    case "passes": {
      const passes = countOf(ctx, tail.count, COATS, { words: "a number of passes" });
      return passes ? { passes } : {};
    }
    case "flash": {
      const flash = durationOf(ctx, tail.time);
      return flash ? { flash } : {};
    }
    case "sheen": {
      const sheen = sheenOf(ctx, tail.sheen);
      return sheen === undefined ? {} : { sheen };
    }
    case "costs": {
      const costs = moneyOf(ctx, tail.amount);
      return costs === undefined ? {} : { costs };
    }
    case "leave": {
      const leave = durationOf(ctx, tail.time);
      return leave ? { leave } : {};
    }
    case "transfer": {
      const transfer = transferOf(ctx, tail);
      return transfer ? { transfer } : {};
    }
    case "buffed": {
      const after = durationOf(ctx, tail.after);
      return { buffed: { ...(after ? { after } : {}), step: doneByItself("buff", tail.span) } };
    }
    case "wet_on_wet":
      return { wetOnWet: true };
    case "said":
      return { said: tail.what.value };
    case "takes": {
      const takes = takesTail(ctx, tail);
      return takes ? { takes } : {};
    }
    case "uses": {
      const uses = usesTail(ctx, tail, use);
      return uses ? { uses } : {};
    }
  }
}

/** Of two the one that makes a mist, which is worse for the lungs and loses more. */
function methodOf(ctx: Resolving, { method, and }: TailOf<"by">): LayerLine["method"] {
  if (method && !and && parameterType(ctx, method) === "method") return { parameter: method.text };
  const [first, second] = [method, and].map(
    (name) => name && checkWord(ctx, name, METHODS, "application method", t`The method`),
  );
  return second !== undefined && SPRAY_METHODS.has(second) ? second : first!;
}

/** `wet 100 um`, `wet 30 g/m2`, `wet 100 mL/m2`; of a range the thicker end. */
function wetOf(ctx: Resolving, { thickness, to }: TailOf<"wet">): Tails {
  const [first, last] = [thickness, to].map((value) =>
    measureOf(ctx, value, ["length", "weight by area", "spreading rate"] as const, POSITIVE),
  );
  const ends = [first, last].flatMap((end) =>
    end && "value" in end.figure && end.dimension === (last ?? first)!.dimension ? [end.figure.value] : [],
  );
  const dimension = (last ?? first)?.dimension;
  if (ends.length === 0 || dimension === undefined) return first ? { wet: first.figure } : {};
  // A litre a square metre is a millimetre.
  if (dimension === "spreading rate") return { wet: { value: 1 / Math.min(...ends) } };
  const value = Math.max(...ends);
  return dimension === "length" ? { wet: { value } } : { wetGrams: { value } };
}

/** A sheen by its word or in gloss units, or a parameter that is one. */
function sheenOf(ctx: Resolving, name: Name | undefined): LayerLine["sheen"] {
  if (!name) return undefined;
  if (parameterType(ctx, name) === "sheen") return { parameter: name.text };
  return sheenWord(ctx, name);
}

function moneyOf(ctx: Resolving, amount: NumberLiteral | undefined): number | undefined {
  if (!amount) return undefined;
  if (amount.value >= 0 && !/\.\d{3,}/u.test(amount.text)) return amount.value;
  report(
    ctx,
    "bad-number",
    amount.span,
    gist((suchAs) => t`Expected money with at most two decimals${suchAs("costs 6.00")}.`),
  );
  return undefined;
}

/** In percent: a share, or a parameter that is a number. */
function transferOf(ctx: Resolving, { share }: TailOf<"transfer">): Figure | undefined {
  if (share?.kind === "name")
    return countOf(ctx, share, TRANSFER, { words: "how many percent land on the piece" });
  return measureOf(ctx, share, ["share"], TRANSFER)?.figure;
}

const TRANSFER: Limits = { above: 0, max: 100, words: "above 0 % and at most 100 %" };

/** How much of the surface is meant: a share of it, or an area of each piece. */
function partOf(ctx: Resolving, { share, of, where }: TailOf<"only">): PartTail {
  if (of) return someOf(ctx, of, where?.value);
  const read = measureOf(ctx, share, ["share", "area"] as const, POSITIVE);
  const said = where ? { where: where.value } : {};
  if (!read || !("value" in read.figure)) return said;
  const { value } = read.figure;
  if (read.dimension === "share" && value > 100)
    report(ctx, "bad-number", share!.span, t`A part is at most 100 % of the surface.`);
  return read.dimension === "area"
    ? { ...said, areaM2: value }
    : { ...said, share: Math.min(value, 100) / 100 };
}

/** `only 5 of 18`: of all pieces together such a share is worked on. */
function someOf(
  ctx: Resolving,
  { some, all }: NonNullable<TailOf<"only">["of"]>,
  where: string | undefined,
): PartTail {
  const words = t`${some.text} of ${all.text}${where === undefined ? "" : `, ${where}`}`;
  if (some.value > 0 && some.value <= all.value) return { where: words, share: some.value / all.value };
  const span = { start: some.span.start, end: all.span.end };
  report(ctx, "bad-number", span, t`Write some of all there are\nWrite, for example, \`only 5 of 18\`.`);
  return { where: words };
}

type TailOf<K extends Tail["kind"]> = Extract<Tail, { kind: K }>;

/** The type of the parameter that a word is the name of. */
const parameterType = (ctx: Resolving, { text }: Name): RecipeParameter["type"] | undefined =>
  ctx.parameters.get(text)?.type;

function resolveThinned(ctx: Resolving, { ratio, thinner: name }: TailOf<"thinned">): Tails {
  const thinner = materialNamed(ctx, name);
  const isKnown = thinner !== undefined || name === undefined;
  const by = thinner ? { thinner } : {};
  if (!ratio) return {};
  if (ratio.kind === "name") {
    if (parameterType(ctx, ratio) === "ratio")
      return isKnown ? { thinned: { ratio: { parameter: ratio.text }, ...by } } : {};
    report(
      ctx,
      "wrong-argument",
      ratio.span,
      gist((suchAs) => t`Expected a ratio, or a parameter that is one${suchAs("thinned 4:1 with water")}.`),
    );
    return {};
  }
  for (const { value, span } of [ratio.a, ratio.b])
    if (value <= 0)
      report(
        ctx,
        "bad-number",
        span,
        gist((suchAs) => t`Parts of a mix must be greater than zero${suchAs("4:1")}.`),
      );
  const [a, b] = [ratio.a.value, ratio.b.value];
  return isKnown && a > 0 && b > 0 ? { thinned: { ratio: { a, b }, ...by } } : {};
}

function takesTail(ctx: Resolving, { time }: TailOf<"takes">): TakesTail | undefined {
  const read = measureOf(ctx, time, ["time", "time by area"] as const, DURATION);
  return read && { per: read.dimension === "time" ? "piece" : "m2", time: read.figure };
}

/** `uses 50 g` needs the material's density. Of a parameter nobody knows yet. */
function usesTail(
  ctx: Resolving,
  { amount }: TailOf<"uses">,
  use: MaterialName | undefined,
): UsesTail | undefined {
  const read = measureOf(ctx, amount, ["volume", "mass"] as const, POSITIVE);
  if (!read || !("value" in read.figure)) return undefined;
  const isWeight = read.dimension === "mass";
  const name = use?.material?.name ?? "";
  if (isWeight && use?.material && !use.material.density && read.figure.value > 0) {
    report(
      ctx,
      "wrong-unit",
      amount!.span,
      gist(
        (suchAs) =>
          t`An amount by weight needs the \`density\` of \`${name}\`${suchAs("density 1.03 kg/L")}.`,
      ),
    );
  }
  return { unit: isWeight ? "g" : "L", amount: read.figure.value };
}

function resolveWait(ctx: Resolving, syntax: Extract<RecipeStatement, { kind: "wait" }>): WaitLine {
  if (syntax.until) checkWord(ctx, syntax.until, WAIT_STAGES, "stage of a wait");
  const time = durationOf(ctx, syntax.time);
  durationOf(ctx, syntax.timeTo);
  const until = syntax.until?.text;
  return {
    kind: "wait",
    syntax,
    ...(isStage(until) ? { until } : {}),
    overnight: syntax.overnight !== undefined,
    ...(time ? { time } : {}),
  };
}

const isStage = (word: string | undefined): word is (typeof WAIT_STAGES)[number] =>
  (WAIT_STAGES as readonly (string | undefined)[]).includes(word);

function resolveSafety(ctx: Resolving, syntax: SafetyStatement): SafetyLine {
  const duties = syntax.duties.map(({ name, span, airChanges }): SafetyLine["duties"][number] => {
    checkWord(ctx, name, DUTIES, "safety duty");
    const stated = airChanges && airChangesOf(ctx, name.text, airChanges);
    return { name: name.text, span, ...(stated !== undefined ? { airChanges: stated } : {}) };
  });
  const kinds = syntax.duties.flatMap(({ name, what }) =>
    what ? [`${name.text.replaceAll("_", " ")}: ${what.value}`] : [],
  );
  return {
    kind: "safety",
    syntax,
    duties,
    said: [...kinds, ...(syntax.said ?? []).map(({ value }) => value)],
  };
}

function airChangesOf(
  ctx: Resolving,
  duty: string,
  stated: NonNullable<SafetyStatement["duties"][number]["airChanges"]>,
): number | undefined {
  if (duty === "ventilate" || !(DUTIES as readonly string[]).includes(duty)) {
    const figure = measureOf(ctx, stated, ["air change"], POSITIVE)?.figure;
    return figure && "value" in figure ? figure.value : undefined;
  }
  report(
    ctx,
    "syntax",
    stated.span,
    gist((suchAs) => t`Only \`ventilate\` says how much air${suchAs("ventilate 10 air changes/h")}.`),
  );
  const read = readQuantity(stated, ["air change"]);
  return read.ok ? read.amount.value : undefined;
}
