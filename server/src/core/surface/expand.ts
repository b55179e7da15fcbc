/**
 * Unrolls a recipe for given arguments: parameters replaced, `follow` done in place, coat blocks repeated between
 * coats, safety duties tracked. Never throws; what cannot be read is left out here and reported by the name checks.
 */
import type {
  Argument,
  Call,
  LayerStatement,
  Name,
  RecipeStatement,
  StepStatement,
  Tail,
  WaitStatement,
} from "../../../../grammar/src/tree.ts";
import { parameterNamed } from "../model/check-context.ts";
import { COATS, GRIT, within } from "../model/lowering.ts";
import type { Material, Recipe } from "../model/model.ts";
import {
  type Bindings,
  type Bound,
  readCount,
  readDuration,
  readMeasure,
  silent,
} from "../model/read-value.ts";
import type { Place } from "../place.ts";
import type {
  Action,
  Cycle,
  Duties,
  DutyInForce,
  Expansion,
  LayerAction,
  MaterialUse,
  Takes,
} from "./actions.ts";

/** More than this many actions is no recipe for one surface; the rest is cut off, and open. */
const MOST_ACTIONS = 5000;
/** Lines gone through, whether anything is done on them or not: recipes that follow each other twice double each time. */
const MOST_LINES = 20_000;
/**
 * One and the same line done: no recipe for one surface says a thing so often, but recipes that follow each other twice
 * do, and then each of them is as long as may be. Two layers of the most coats stay below.
 */
const MOST_TIMES = 500;
/** Recipes done inside one another. */
const MOST_DEEP = 100;
const ANY = { words: "anything" } as const;

/** What a name means where a recipe stands. */
export interface Names {
  readonly materials: Pick<ReadonlyMap<string, Material>, "get">;
  readonly recipes: Pick<ReadonlyMap<string, Recipe>, "get">;
}

/** The names that a file can use. */
export type NamesOf = (file: string) => Names;

interface Expander {
  readonly namesOf: NamesOf;
  readonly actions: Action[];
  readonly cycles: Cycle[];
  readonly timesDone: Map<RecipeStatement, number>;
  linesLeft: number;
  isCut: boolean;
}

interface Frame {
  readonly recipe: Recipe;
  readonly bindings: Bindings;
  readonly frames: readonly Place[];
  readonly stack: readonly Recipe[];
  /** From each recipe of the stack to the next. */
  readonly way: Cycle;
  readonly between?: Action["between"];
}

/**
 * Unrolls `recipe`.
 * `frames` are the places that lead to it (the `apply` line, or none for a recipe run by itself).
 * `namesOf` gives the scope of a file: a recipe's names mean what they mean in the recipe's own file.
 */
export function expand(
  recipe: Recipe,
  bindings: Bindings,
  frames: readonly Place[],
  namesOf: NamesOf,
): Expansion {
  const expander: Expander = {
    namesOf,
    actions: [],
    cycles: [],
    timesDone: new Map(),
    linesLeft: MOST_LINES,
    isCut: false,
  };
  walk(expander, { recipe, bindings, frames, stack: [recipe], way: [] }, recipe.statements, new Map());
  return { actions: expander.actions, cycles: expander.cycles };
}

/** The bindings of a call: given arguments, then defaults, then nothing known. */
export function bindArguments(
  recipe: Recipe,
  defaults: ReadonlyMap<string, Bound>,
  given: ReadonlyMap<string, Bound>,
): Bindings {
  return new Map(
    recipe.parameters.map((parameter): [string, Bound] => {
      const argument = given.get(parameter.name);
      if (argument && argument.type === parameter.type) return [parameter.name, argument];
      return [parameter.name, defaults.get(parameter.name) ?? { type: parameter.type }];
    }),
  );
}

/** Default values of a recipe's parameters, read in the scope of the recipe's own file. */
export function defaultsOf(
  recipe: Recipe,
  syntax: readonly { readonly name: Name; readonly default?: Argument["value"] }[],
  scope: Names,
): ReadonlyMap<string, Bound> {
  const defaults = new Map<string, Bound>();
  const values = new Map(syntax.toReversed().map((it) => [it.name.text, it.default]));
  for (const parameter of recipe.parameters) {
    const value = values.get(parameter.name);
    const bound = value && readArgument(parameter.type, value, new Map(), scope);
    if (bound) defaults.set(parameter.name, bound);
  }
  return defaults;
}

/** Reads the arguments of a call in the caller's scope. Arguments of another type than their parameter are left out. */
export function readArguments(
  recipe: Recipe,
  call: Call,
  bindings: Bindings,
  scope: Names,
): ReadonlyMap<string, Bound> {
  const given = new Map<string, Bound>();
  for (const argument of call.arguments) {
    const parameter = argument.name && parameterNamed(recipe.parameters, argument.name.text);
    const bound =
      parameter && argument.value && readArgument(parameter.type, argument.value, bindings, scope);
    if (bound && !given.has(parameter.name)) given.set(parameter.name, bound);
  }
  return given;
}

function readArgument(
  type: Bound["type"],
  value: NonNullable<Argument["value"]>,
  bindings: Bindings,
  scope: Names,
): Bound | undefined {
  if (value.kind === "title") return undefined;
  if (value.kind === "name" && bindings.has(value.text)) return bindings.get(value.text);
  switch (type) {
    case "material":
      return value.kind === "name" ? { type, material: scope.materials.get(value.text) } : undefined;
    case "recipe":
      return value.kind === "name" ? { type, recipe: scope.recipes.get(value.text) } : undefined;
    case "number":
      return { type, value: readCount(value, bindings, ANY, "a number", silent) };
    case "duration":
      return { type, hours: readDuration(value, bindings, silent) };
  }
}

/** Walks the statements of one block; duties stated in it end with it. */
function walk(expander: Expander, frame: Frame, statements: readonly RecipeStatement[], outer: Duties): void {
  let duties = outer;
  for (const statement of statements) {
    const place: Place = {
      file: frame.recipe.file,
      declaration: frame.recipe.declaration,
      span: statement.span,
    };
    expander.linesLeft -= 1;
    const times = (expander.timesDone.get(statement) ?? 0) + 1;
    expander.timesDone.set(statement, times);
    if (
      expander.actions.length >= MOST_ACTIONS ||
      expander.linesLeft < 0 ||
      (times > MOST_TIMES && doesSomething(statement))
    )
      cutOff(expander, frame, statement, place, duties);
    if (expander.isCut) return;
    switch (statement.kind) {
      case "safety":
        duties = withDuties(duties, statement, frame);
        break;
      case "step":
        pushStep(expander, frame, statement, place, duties);
        break;
      case "layer":
        walkLayer(expander, frame, statement, place, duties);
        break;
      case "wait":
        pushWait(expander, frame, statement, place, duties);
        break;
      case "note":
        if (statement.text)
          expander.actions.push({
            ...base(expander, frame, place, duties),
            op: "note",
            syntax: statement,
            text: statement.text.value,
          });
        break;
      case "follow":
        walkFollow(expander, frame, statement, place, duties);
        break;
      default:
        break;
    }
  }
}

const doesSomething = ({ kind }: RecipeStatement): boolean =>
  kind === "step" || kind === "layer" || kind === "wait" || kind === "note";

/** Leaves out everything from this line on. */
function cutOff(
  expander: Expander,
  frame: Frame,
  syntax: RecipeStatement,
  place: Place,
  duties: Duties,
): void {
  if (expander.isCut) return;
  expander.isCut = true;
  expander.actions.push({ ...base(expander, frame, place, duties), op: "open", syntax });
}

function base(expander: Expander, frame: Frame, place: Place, duties: Duties) {
  return {
    index: expander.actions.length,
    frames: [...frame.frames, place],
    place,
    duties,
    ...(frame.between ? { between: frame.between } : {}),
  };
}

function withDuties(
  duties: Duties,
  statement: Extract<RecipeStatement, { kind: "safety" }>,
  frame: Frame,
): Duties {
  const next = new Map(duties);
  for (const duty of statement.duties) {
    const place: Place = { file: frame.recipe.file, declaration: frame.recipe.declaration, span: duty.span };
    const changes = readMeasure(duty.airChanges, ["air change"], ANY, frame.bindings, silent)?.value;
    const inForce: DutyInForce = changes === undefined ? { place } : { place, airChanges: changes };
    next.set(duty.name.text, inForce);
  }
  return next;
}

function materialUse(expander: Expander, frame: Frame, name: Name): MaterialUse {
  const place: Place = { file: frame.recipe.file, declaration: frame.recipe.declaration, span: name.span };
  const bound = frame.bindings.get(name.text);
  const material: Material | undefined = bound
    ? bound.type === "material"
      ? bound.material
      : undefined
    : expander.namesOf(frame.recipe.file).materials.get(name.text);
  return material ? { name: name.text, place, material } : { name: name.text, place };
}

function readTakes(tails: readonly Tail[], bindings: Bindings): Takes | undefined {
  const tail = tails.find((t) => t.kind === "takes");
  const amount = readMeasure(tail?.time, ["time", "time by area"] as const, ANY, bindings, silent);
  if (!amount) return undefined;
  return amount.dimension === "time" ? { hours: amount.value } : { hoursPerM2: amount.value };
}

function pushStep(expander: Expander, frame: Frame, step: StepStatement, place: Place, duties: Duties): void {
  if (!step.verb) return;
  const grits = step.grits.map((grit) => readCount(grit, frame.bindings, GRIT, "a grit", silent));
  const takes = readTakes(step.tails, frame.bindings);
  const use = step.material && materialUse(expander, frame, step.material);
  const usesLitres = readUses(step.tails, frame.bindings, use?.material?.density?.value);
  expander.actions.push({
    ...base(expander, frame, place, duties),
    op: "step",
    syntax: step,
    verb: step.verb.text,
    ...(use ? { use } : {}),
    grits: grits.filter((g) => g !== undefined),
    gritsKnown: grits.every((g) => g !== undefined),
    wet: step.wet !== undefined,
    ...(step.what ? { what: step.what.value } : {}),
    ...(takes ? { takes } : {}),
    ...(usesLitres !== undefined ? { usesLitres } : {}),
  });
}

function readUses(
  tails: readonly Tail[],
  bindings: Bindings,
  gramsPerLitre: number | undefined,
): number | undefined {
  const tail = tails.find((t) => t.kind === "uses");
  const amount = readMeasure(tail?.amount, ["volume", "mass"] as const, ANY, bindings, silent);
  if (!amount) return undefined;
  if (amount.dimension === "volume") return amount.value;
  return gramsPerLitre === undefined ? undefined : amount.value / gramsPerLitre;
}

function walkLayer(
  expander: Expander,
  frame: Frame,
  layer: LayerStatement,
  place: Place,
  duties: Duties,
): void {
  if (!layer.material) return;
  const stated = layer.coats ? readCount(layer.coats, frame.bindings, COATS, "a number of coats", silent) : 1;
  // A number of coats that is not known, or cannot be, counts as one: what would follow from more is not known either.
  const coats = stated !== undefined && within(stated, COATS) ? stated : 1;
  for (let coat = 1; coat <= coats && !expander.isCut; coat += 1) {
    if (expander.actions.length >= MOST_ACTIONS) {
      cutOff(expander, frame, layer, place, duties);
      return;
    }
    pushCoat(expander, frame, layer, place, duties, coat, coats);
    if (coat < coats && layer.block) {
      walk(expander, { ...frame, between: { layer: place, afterCoat: coat, coats } }, layer.block, duties);
    }
  }
}

function pushCoat(
  expander: Expander,
  frame: Frame,
  layer: LayerStatement,
  place: Place,
  duties: Duties,
  coat: number,
  coats: number,
): void {
  const tail = <K extends Tail["kind"]>(kind: K) =>
    layer.tails.find((t): t is Extract<Tail, { kind: K }> => t.kind === kind);
  const thinned = tail("thinned");
  const tinted = tail("tinted");
  const wiped = tail("wiped");
  const percent = readMeasure(tinted?.share, ["share"], ANY, frame.bindings, silent)?.value;
  const wetMm = readMeasure(tail("wet")?.thickness, ["length"], ANY, frame.bindings, silent)?.value;
  const wipedAfterHours = readDuration(wiped?.after, frame.bindings, silent);
  const takes = readTakes(layer.tails, frame.bindings);
  const use = materialUse(expander, frame, layer.material!);
  expander.actions.push({
    ...base(expander, frame, place, duties),
    op: "layer",
    syntax: layer,
    use,
    coat,
    coats,
    method: tail("by")?.method?.text ?? "brush",
    wiped: wiped !== undefined,
    ...(wipedAfterHours !== undefined ? { wipedAfterHours } : {}),
    ...(thinned?.ratio && thinned.thinner && thinned.ratio.a.value > 0 && thinned.ratio.b.value > 0
      ? {
          thinned: {
            a: thinned.ratio.a.value,
            b: thinned.ratio.b.value,
            thinner: materialUse(expander, frame, thinned.thinner),
          },
        }
      : {}),
    ...(tinted?.tint && percent !== undefined && percent > 0 && percent <= 100
      ? { tinted: { percent, tint: materialUse(expander, frame, tinted.tint) } }
      : {}),
    ...hardenerPart(expander, use),
    toner: tail("as")?.role?.text === "toner",
    ...(wetMm !== undefined && wetMm > 0 ? { wetUm: wetMm * 1000 } : {}),
    ...(takes ? { takes } : {}),
  });
}

/** The hardener that the material's own declaration names, found in the scope of that declaration's file. */
function hardenerPart(expander: Expander, use: MaterialUse): Pick<LayerAction, "hardener"> {
  const mix = use.material?.mix?.value;
  if (!mix || !use.material) return {};
  const material = expander.namesOf(use.material.file).materials.get(mix.hardener);
  return {
    hardener: {
      a: mix.a,
      b: mix.b,
      use: { name: mix.hardener, place: use.place, ...(material ? { material } : {}) },
    },
  };
}

function pushWait(expander: Expander, frame: Frame, wait: WaitStatement, place: Place, duties: Duties): void {
  const until = wait.until?.text;
  const hours = readDuration(wait.time, frame.bindings, silent);
  expander.actions.push({
    ...base(expander, frame, place, duties),
    op: "wait",
    syntax: wait,
    ...(until === "touch" || until === "recoat" || until === "cured" ? { until } : {}),
    overnight: wait.overnight !== undefined,
    ...(hours !== undefined ? { hours } : {}),
  });
}

function walkFollow(
  expander: Expander,
  frame: Frame,
  follow: Extract<RecipeStatement, { kind: "follow" }>,
  place: Place,
  duties: Duties,
): void {
  const call = follow.call;
  if (!call) return;
  const bound = frame.bindings.get(call.name.text);
  const scope = expander.namesOf(frame.recipe.file);
  const recipe = bound
    ? bound.type === "recipe"
      ? bound.recipe
      : undefined
    : scope.recipes.get(call.name.text);
  if (!recipe) {
    expander.actions.push({
      ...base(expander, frame, place, duties),
      op: "open",
      syntax: follow,
      missing: call.name.text,
    });
    return;
  }
  const first = frame.stack.indexOf(recipe);
  if (first >= 0) {
    const way = [...frame.way, { place, isParameter: bound !== undefined }];
    expander.cycles.push(way.slice(first));
    return;
  }
  if (frame.stack.length >= MOST_DEEP) {
    cutOff(expander, frame, follow, place, duties);
    return;
  }
  const given = readArguments(recipe, call, frame.bindings, scope);
  const inner: Frame = {
    recipe,
    bindings: bindArguments(recipe, recipeDefaults(expander, recipe), given),
    frames: [...frame.frames, place],
    way: [...frame.way, { place, isParameter: bound !== undefined }],
    stack: [...frame.stack, recipe],
    ...(frame.between ? { between: frame.between } : {}),
  };
  walk(expander, inner, recipe.statements, duties);
}

function recipeDefaults(expander: Expander, recipe: Recipe): ReadonlyMap<string, Bound> {
  return defaultsOf(recipe, recipe.parameterSyntax, expander.namesOf(recipe.file));
}
