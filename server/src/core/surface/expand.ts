/**
 * Unrolls a recipe for given arguments: parameters replaced, `follow` done in place, coat blocks repeated between
 * coats, safety duties tracked. Never throws; what cannot be read was left out when its lines were resolved.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { RecipeStatement } from "../../../../grammar/src/tree.ts";
import { COATS, within } from "../model/lowering.ts";
import type { Material, Recipe, RecipeParameter } from "../model/model.ts";
import { parameterNamed } from "../model/parameters.ts";
import { closest } from "../model/suggest.ts";
import type { FileId, Place } from "../place.ts";
import { volumesOfWeights } from "../quantities/litres.ts";
import {
  type Bindings,
  type Bound,
  boundOf,
  type Figure,
  type FollowLine,
  figureIn,
  gritsIn,
  type LayerLine,
  type MaterialName,
  materialIn,
  methodIn,
  partsIn,
  type RecipeLine,
  type ResolvedCall,
  recipeIn,
  type SafetyLine,
  type StepLine,
  sheenIn,
  type TakesTail,
  type UsesTail,
  type WaitLine,
} from "../resolution/lines.ts";
import type { ResolvedLines } from "../resolution/resolve-recipe.ts";
import {
  type Action,
  type Cycle,
  type Duties,
  type DutyInForce,
  type Expansion,
  type LayerAction,
  type MaterialUse,
  OTHER_WORK,
  type Takes,
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

/** What expanding asks of a program. */
export interface Expanding {
  /** A recipe with its lines resolved in the scope of its own file. */
  readonly resolved: (recipe: Recipe) => ResolvedLines;
  /** The materials that can be named in a file. */
  readonly materialsOf: (file: FileId) => Pick<ReadonlyMap<string, Material>, "get">;
}

interface Expander {
  readonly asked: Expanding;
  readonly actions: Action[];
  readonly cycles: Cycle[];
  readonly timesDone: Map<RecipeLine, number>;
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
 */
export function expand(
  recipe: Recipe,
  bindings: Bindings,
  frames: readonly Place[],
  asked: Expanding,
): Expansion {
  const expander: Expander = {
    asked,
    actions: [],
    cycles: [],
    timesDone: new Map(),
    linesLeft: MOST_LINES,
    isCut: false,
  };
  const { lines } = asked.resolved(recipe);
  walk(expander, { recipe, bindings, frames, stack: [recipe], way: [] }, lines, new Map());
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

/**
 * What a call gives to a recipe. Arguments of another type than their parameter are left out. A name that is misspelt is
 * reported, and its value goes to the parameter that was probably meant: coats of an unknown material would hide dangers.
 */
export function givenTo(recipe: Recipe, call: ResolvedCall, bindings: Bindings): ReadonlyMap<string, Bound> {
  const given = new Map<string, Bound>();
  const named = new Set(call.arguments.map(({ name }) => name));
  for (const { name, value } of call.arguments) {
    const parameter = parameterNamed(recipe.parameters, name) ?? meantParameter(recipe, name, named, given);
    const bound = parameter && boundOf(parameter.type, value, bindings);
    if (parameter && bound && !given.has(parameter.name)) given.set(parameter.name, bound);
  }
  return given;
}

const MOST_COMPARED = 100;

/** Of the first parameters, those that the call does not name. */
function meantParameter(
  { parameters }: Recipe,
  name: string,
  named: ReadonlySet<string>,
  given: ReadonlyMap<string, Bound>,
): RecipeParameter | undefined {
  // A recipe of hundreds of parameters and mistakes must not take the product of both.
  const first = parameters.slice(0, MOST_COMPARED).map((each) => each.name);
  const left = first.filter((each) => !named.has(each) && !given.has(each));
  const near = closest(name, left);
  return near === undefined ? undefined : parameterNamed(parameters, near);
}

/** Walks the lines of one block; duties stated in it end with it. */
function walk(expander: Expander, frame: Frame, lines: readonly RecipeLine[], outer: Duties): void {
  let duties = outer;
  for (const line of lines) {
    const { syntax } = line;
    const place = placeIn(frame, syntax.span);
    expander.linesLeft -= 1;
    const times = (expander.timesDone.get(line) ?? 0) + 1;
    expander.timesDone.set(line, times);
    if (
      expander.actions.length >= MOST_ACTIONS ||
      expander.linesLeft < 0 ||
      (times > MOST_TIMES && doesSomething(line))
    )
      cutOff(expander, frame, syntax, place, duties);
    if (expander.isCut) return;
    switch (line.kind) {
      case "safety":
        duties = withDuties(duties, line, frame);
        for (const words of line.said) pushNote(expander, frame, syntax.span, words, { place, duties });
        break;
      case "step":
        pushStep(expander, frame, line, place, duties);
        break;
      case "layer":
        walkLayer(expander, frame, line, place, duties);
        break;
      case "wait":
        pushWait(expander, frame, line, place, duties);
        break;
      case "note":
        if (line.syntax.text)
          expander.actions.push({
            ...base(expander, frame, place, duties),
            op: "note",
            syntax: line.syntax,
            text: line.syntax.text.value,
          });
        break;
      case "follow":
        walkFollow(expander, frame, line, place, duties);
        break;
      case "other":
        break;
    }
  }
}

const placeIn = ({ recipe: { file, declaration } }: Frame, span: Place["span"]): Place => ({
  file,
  declaration,
  span,
});

const doesSomething = ({ kind }: RecipeLine): boolean =>
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
    between: frame.between,
  };
}

function withDuties(duties: Duties, line: SafetyLine, frame: Frame): Duties {
  const next = new Map(duties);
  for (const { name, span, airChanges } of line.duties) {
    const place = placeIn(frame, span);
    const inForce: DutyInForce = airChanges === undefined ? { place } : { place, airChanges };
    next.set(name, inForce);
  }
  return next;
}

function materialUse({ bindings }: Frame, named: MaterialName): MaterialUse {
  const { name, place } = named;
  const material = materialIn(named, bindings);
  return { name, place, material };
}

function takesOf(tail: TakesTail | undefined, bindings: Bindings): Takes | undefined {
  const time = tail && figureIn(tail.time, bindings);
  if (time === undefined) return undefined;
  return tail?.per === "m2" ? { hoursPerM2: time } : { hours: time };
}

function pushStep(expander: Expander, frame: Frame, step: StepLine, place: Place, duties: Duties): void {
  const { syntax, verb } = step;
  if (verb === undefined && syntax.what === undefined) return;
  const grits = step.grits.map((grit) => gritsIn(grit, frame.bindings));
  const takes = takesOf(step.takes, frame.bindings);
  const use = step.use && materialUse(frame, step.use);
  const usesLitres = litresOf(step.uses, use?.material?.density?.value);
  const what = [syntax.what?.value, step.said].filter((text) => text !== undefined).join(", ");
  const leave = figureIn(step.leave, frame.bindings);
  for (let time = coatsIn(step.times, frame.bindings); time > 0 && !expander.isCut; time -= 1) {
    if (expander.actions.length >= MOST_ACTIONS) {
      cutOff(expander, frame, syntax, place, duties);
      return;
    }
    expander.actions.push({
      ...base(expander, frame, place, duties),
      op: "step",
      syntax,
      verb: verb ?? OTHER_WORK,
      use,
      grits: grits.flatMap((g) => g ?? []),
      gritsKnown: grits.every((g) => g !== undefined),
      wet: syntax.wet !== undefined,
      what: what === "" ? undefined : what,
      takes,
      usesLitres,
      batch: step.batch,
      part: step.part,
      costs: step.costs,
    });
    if (leave !== undefined) pushPause(expander, frame, syntax.span, t`it acts`, leave, { place, duties });
  }
}

/** Hours that pass on a line of their own. */
function pushPause(
  expander: Expander,
  frame: Frame,
  span: Place["span"],
  value: string,
  hours: number,
  { place, duties }: { readonly place: Place; readonly duties: Duties },
): void {
  const at = { start: span.end, end: span.end };
  const what = { kind: "title", value, span: at } as const;
  expander.actions.push({
    ...base(expander, frame, place, duties),
    op: "wait",
    syntax: { kind: "wait", keyword: { kind: "name", text: "wait", span: at }, span: at, docs: "", what },
    until: undefined,
    overnight: false,
    hours,
  });
}

function litresOf(uses: UsesTail | undefined, gramsPerLitre: number | undefined): number | undefined {
  if (!uses || uses.unit === "L") return uses?.amount;
  return gramsPerLitre === undefined ? undefined : uses.amount / gramsPerLitre;
}

function walkLayer(expander: Expander, frame: Frame, layer: LayerLine, place: Place, duties: Duties): void {
  if (!layer.use) return;
  const stated = Math.max(0, coatsIn(layer.coats, frame.bindings) + (layer.coatsMore ?? 0));
  pushSaid(expander, frame, layer, place, duties);
  const fewest = layer.optional ? 0 : stated;
  const coats = Math.max(stated, coatsIn(layer.coatsTo, frame.bindings));
  for (let coat = 1; coat <= coats && !expander.isCut; coat += 1) {
    if (expander.actions.length >= MOST_ACTIONS) {
      cutOff(expander, frame, layer.syntax, place, duties);
      return;
    }
    pushFlashOff(expander, frame, layer, place, duties);
    pushCoat(expander, frame, layer, layer.use, { place, duties, coat, coats, fewest });
    const behind = coat < coats ? { ...frame, between: { layer: place, afterCoat: coat, coats } } : frame;
    pushBuffing(expander, behind, layer, duties);
    if (coat < coats && layer.block) walk(expander, behind, layer.block, duties);
  }
}

/** The wait of a buffed coat, and the buffing. */
function pushBuffing(expander: Expander, frame: Frame, { buffed }: LayerLine, duties: Duties): void {
  if (!buffed || expander.isCut) return;
  const { span } = buffed.step.syntax;
  const place = placeIn(frame, span);
  const hours = figureIn(buffed.after, frame.bindings);
  if (hours !== undefined) pushPause(expander, frame, span, "until it is buffed", hours, { place, duties });
  pushStep(expander, frame, buffed.step, place, duties);
}

/** The time between the passes of a coat, all together: the coat is on when the last pass is. */
function pushFlashOff(
  expander: Expander,
  frame: Frame,
  layer: LayerLine,
  place: Place,
  duties: Duties,
): void {
  const flash = figureIn(layer.flash, frame.bindings);
  const passes = figureIn(layer.passes, frame.bindings) ?? 1;
  if (flash === undefined || passes < 2) return;
  const words = t`between the ${passes} passes of the coat`;
  pushPause(expander, frame, layer.syntax.span, words, flash * (passes - 1), { place, duties });
}

/** What else a layer says, as a note above its first coat. */
function pushSaid(expander: Expander, frame: Frame, layer: LayerLine, place: Place, duties: Duties): void {
  if (layer.said !== undefined) pushNote(expander, frame, layer.syntax.span, layer.said, { place, duties });
}

/** Words of a line, as a note of their own. */
function pushNote(
  expander: Expander,
  frame: Frame,
  span: Place["span"],
  said: string,
  { place, duties }: { readonly place: Place; readonly duties: Duties },
): void {
  const at = { start: span.end, end: span.end };
  const text = { kind: "title", value: said, span: at } as const;
  expander.actions.push({
    ...base(expander, frame, place, duties),
    op: "note",
    syntax: { kind: "note", keyword: { kind: "name", text: "note", span: at }, span: at, docs: "", text },
    text: said,
  });
}

/** A number of coats that is not known, or cannot be, counts as one: what would follow from more is not known either. */
function coatsIn(coats: Figure | undefined, bindings: Bindings): number {
  const stated = figureIn(coats, bindings);
  return stated !== undefined && within(stated, COATS) ? stated : 1;
}

interface CoatOf {
  readonly place: Place;
  readonly duties: Duties;
  readonly coat: number;
  readonly coats: number;
  /** Of `x 2 to 3` the 2. */
  readonly fewest: number;
}

function pushCoat(
  expander: Expander,
  frame: Frame,
  layer: LayerLine,
  named: MaterialName,
  { place, duties, coat, coats, fewest }: CoatOf,
): void {
  const { thinned, tinted, wiped } = layer;
  const { bindings } = frame;
  const parts = thinned && partsIn(thinned.ratio, bindings);
  const percent = tinted && figureIn(tinted.percent, bindings);
  const wipedAfterHours = figureIn(wiped?.after, bindings);
  const takes = takesOf(layer.takes, bindings);
  const use = materialUse(frame, named);
  const sheen = sheenIn(layer.sheen, bindings);
  const transfer = figureIn(layer.transfer, bindings);
  const wetMm = figureIn(layer.wet, bindings) ?? wetOfGrams(layer, use.material);
  expander.actions.push({
    ...base(expander, frame, place, duties),
    op: "layer",
    syntax: layer.syntax,
    use,
    coat,
    coats,
    ifNeeded: coat > fewest || undefined,
    when: layer.when || undefined,
    session: layer.sessions || undefined,
    method: methodIn(layer.method, bindings),
    wiped: wiped !== undefined,
    wipedAfterHours,
    thinned:
      thinned && parts
        ? {
            ...parts,
            thinner: thinned.thinner ? materialUse(frame, thinned.thinner) : ownThinner(expander, use),
          }
        : undefined,
    tinted:
      tinted && percent !== undefined && percent > 0 && percent <= 100
        ? { percent, tint: materialUse(frame, tinted.tint) }
        : undefined,
    hardener: hardenerPart(expander, use),
    toner: layer.toner,
    transfer: transfer === undefined ? undefined : transfer / 100,
    wetOnWet: (layer.wetOnWet && coat > 1) || undefined,
    part: layer.part,
    passes: passesOf(layer, bindings),
    laid: layer.laid,
    sheen,
    wetUm: wetMm !== undefined && wetMm > 0 ? wetMm * 1000 : undefined,
    takes,
    batch: layer.batch,
  });
}

/** What the material's own label thins it with; of a label that names none its carrier. */
function ownThinner({ asked }: Expander, { material, place }: MaterialUse): MaterialUse {
  const name = (material?.thin?.value.thinner ?? material?.family?.thinners[0] ?? "thinner").replaceAll(
    " ",
    "_",
  );
  const thinner = material && asked.materialsOf(material.file).get(name);
  return { name, place, material: thinner };
}

function passesOf({ passes, flash }: LayerLine, bindings: Bindings): LayerAction["passes"] {
  const count = figureIn(passes, bindings);
  return count === undefined ? undefined : { count, flashHours: figureIn(flash, bindings) };
}

/** The wet film of so many grams a square metre: a litre a square metre is a millimetre. Unknown without a density. */
function wetOfGrams({ wetGrams }: LayerLine, material: Material | undefined): number | undefined {
  const density = material?.density?.value;
  return wetGrams && "value" in wetGrams && density ? wetGrams.value / density : undefined;
}

/** The hardener that the material's own declaration names, found in the scope of that declaration's file. */
function hardenerPart({ asked }: Expander, use: MaterialUse): LayerAction["hardener"] {
  const mix = use.material?.mix?.value;
  // Of a pack that holds both parts the whole is what its label tells of.
  if (mix?.hardener === undefined || !use.material) return undefined;
  const { a, b, by, hardener } = mix;
  const material = asked.materialsOf(use.material.file).get(hardener);
  const volumes =
    by === "volume"
      ? { a, b }
      : volumesOfWeights({ a, b }, use.material.density?.value, material?.density?.value);
  return { a, b, by, volumes, use: { name: hardener, place: use.place, material } };
}

function pushWait(expander: Expander, frame: Frame, wait: WaitLine, place: Place, duties: Duties): void {
  const hours = figureIn(wait.time, frame.bindings);
  expander.actions.push({
    ...base(expander, frame, place, duties),
    op: "wait",
    syntax: wait.syntax,
    until: wait.until,
    overnight: wait.overnight,
    hours,
  });
}

function walkFollow(
  expander: Expander,
  frame: Frame,
  { syntax, call }: FollowLine,
  place: Place,
  duties: Duties,
): void {
  if (!call) return;
  const recipe = recipeIn(call, frame.bindings);
  if (!recipe) {
    expander.actions.push({
      ...base(expander, frame, place, duties),
      op: "open",
      syntax,
      missing: call.syntax.name.text,
    });
    return;
  }
  const way = [...frame.way, { place, isParameter: call.parameter !== undefined }];
  const first = frame.stack.indexOf(recipe);
  if (first >= 0) {
    expander.cycles.push(way.slice(first));
    return;
  }
  if (frame.stack.length >= MOST_DEEP) {
    cutOff(expander, frame, syntax, place, duties);
    return;
  }
  const { lines, defaults } = expander.asked.resolved(recipe);
  const inner: Frame = {
    recipe,
    bindings: bindArguments(recipe, defaults, givenTo(recipe, call, frame.bindings)),
    frames: [...frame.frames, place],
    way,
    stack: [...frame.stack, recipe],
    between: frame.between,
  };
  walk(expander, inner, lines, duties);
}
