/**
 * Every word of a declaration that is a node of its tree, with the part that it plays.
 *
 * Renaming, references, semantic colouring and completion all start from this one walk.  It says what a place is for, not
 * what a name means: whether `clear` in `layer clear` is a parameter or a material is decided where scopes are known.
 */

import type {
  Argument,
  Call,
  Declaration,
  DeclarationBody,
  DoneStatement,
  FieldStatement,
  FieldValue,
  Grits,
  LayerStatement,
  Name,
  Parameter,
  Quantity,
  Range,
  Ratio,
  Statement,
  StepStatement,
  Tail,
  Title,
  Value,
  Words,
} from "./tree.ts";
import { METHODS } from "./vocabulary.ts";
import { SHEENS_SAID } from "./word-spellings.ts";

export type NameRole =
  | "declaration-name"
  | "surface-name"
  | "parameter"
  /** Where a quantity stands: only a parameter can be meant. */
  | "parameter-ref"
  | "material-ref"
  | "recipe-ref"
  | "piece-ref"
  | "shop-ref"
  | "job-ref"
  | "surface-ref"
  | "argument-name"
  /** A name given to a parameter; what it may be depends on the parameter's type. */
  | "argument-value"
  | "keyword"
  /** A word of a closed vocabulary: family, verb, duty, method, shape, type, stage. */
  | "vocabulary"
  | "unit";

export interface NameUse {
  readonly name: Name;
  readonly role: NameRole;
  /** The statement in which it stands; absent in the head of the declaration. */
  readonly statement?: Statement;
}

const CACHE = new WeakMap<DeclarationBody, readonly NameUse[]>();

/** All names of a declaration in the order of the text. */
export function namesOf(body: DeclarationBody): readonly NameUse[] {
  const known = CACHE.get(body);
  if (known !== undefined) {
    return known;
  }
  const uses: NameUse[] = [];
  visitDeclaration(body.syntax, uses);
  const names = uses.toSorted((a, b) => a.name.span.start - b.name.span.start);
  CACHE.set(body, names);
  return names;
}

type Add = (name: Name | undefined, role: NameRole) => void;

function visitDeclaration(declaration: Declaration, uses: NameUse[]): void {
  const add = adder(uses);
  add(declaration.keyword, "keyword");
  add(declaration.name, "declaration-name");
  if (declaration.kind === "recipe") {
    for (const parameter of declaration.parameters) {
      visitParameter(parameter, add);
    }
  }
  for (const statement of statementsOf(declaration)) {
    visitStatement(statement, uses);
  }
}

/** The statements directly in a declaration. */
export function statementsOf(declaration: Declaration): readonly Statement[] {
  switch (declaration.kind) {
    case "use":
      return [];
    case "recipe":
      return declaration.statements;
    default:
      return declaration.fields;
  }
}

/** The statements in the block of a statement. */
export function innerStatements(statement: Statement): readonly Statement[] {
  switch (statement.kind) {
    case "surface":
      return statement.fields;
    case "layer":
      return statement.block ?? [];
    default:
      return [];
  }
}

function adder(uses: NameUse[], statement?: Statement): Add {
  return (name, role) => {
    // The unit of the 2 in `2-3 h` stands behind the 3.
    if (name !== undefined && name.span.end > name.span.start) {
      uses.push(statement === undefined ? { name, role } : { name, role, statement });
    }
  };
}

function visitParameter(parameter: Parameter, add: Add): void {
  add(parameter.name, "parameter");
  add(parameter.type, "vocabulary");
  const type = parameter.type?.text;
  if (type === "method" || type === "sheen") {
    const { default: word } = parameter;
    add(word?.kind === "name" ? word : undefined, "vocabulary");
    return;
  }
  const role = type === "material" ? "material-ref" : type === "recipe" ? "recipe-ref" : "parameter-ref";
  addValue(parameter.default, add, role);
}

function visitStatement(statement: Statement, uses: NameUse[]): void {
  const add = adder(uses, statement);
  add(statement.keyword, "keyword");
  switch (statement.kind) {
    case "field":
      visitField(statement, add);
      break;
    case "surface":
      add(statement.name, "surface-name");
      break;
    case "step":
      visitStep(statement, add);
      break;
    case "layer":
      visitLayer(statement, add);
      break;
    case "wait":
      add(statement.until, "vocabulary");
      add(statement.overnight, "vocabulary");
      addValue(statement.time, add);
      addValue(statement.timeTo, add);
      break;
    case "safety":
      for (const duty of statement.duties) {
        add(duty.name, "vocabulary");
        addValue(duty.airChanges, add);
      }
      break;
    case "follow":
      addCall(statement.call, add);
      break;
    case "apply":
      addCall(statement.call, add);
      for (const target of statement.targets) {
        const isAll = target.piece === undefined && target.surface?.text === "all";
        add(target.piece, "piece-ref");
        add(target.surface, isAll ? "vocabulary" : "surface-ref");
      }
      break;
    case "done":
      visitDone(statement, add);
      break;
    case "note":
    case "broken":
      break;
  }
  const between = statement.kind === "layer" ? (statement.between?.statements ?? []) : [];
  for (const inner of [...between, ...innerStatements(statement)]) {
    visitStatement(inner, uses);
  }
}

function visitDone(done: DoneStatement, add: Add): void {
  add(done.coat?.keyword, "keyword");
  add(done.verb, "vocabulary");
  add(done.material, "material-ref");
  for (const target of done.targets) {
    const isAll = target.piece === undefined && target.surface?.text === "all";
    add(target.piece, "piece-ref");
    add(target.surface, isAll ? "vocabulary" : "surface-ref");
  }
  for (const fact of done.facts) {
    add(fact.keyword, "keyword");
    if (fact.kind === "took") {
      addValue(fact.time, add);
    } else if (fact.kind === "used") {
      addValue(fact.amount, add);
    } else if (fact.kind === "trouble") {
      add(fact.trouble, "vocabulary");
    } else if (fact.kind === "air") {
      addRange(fact.temperature, add);
      addValue(fact.humidity?.value, add);
      addValue(fact.humidity?.to, add);
    }
  }
}

function visitStep(step: StepStatement, add: Add): void {
  add(step.verb, "vocabulary");
  add(step.material, "material-ref");
  add(step.wet, "vocabulary");
  for (const grit of step.grits) {
    addValue(grit, add);
  }
  addValue(step.times, add);
  for (const tail of step.tails) {
    visitTail(tail, add);
  }
}

function visitLayer(layer: LayerStatement, add: Add): void {
  add(layer.material, "material-ref");
  addValue(layer.coats, add);
  addValue(layer.coatsTo, add);
  for (const tail of layer.tails) {
    visitTail(tail, add);
  }
  add(layer.between?.keyword, "keyword");
}

function visitTail(tail: Tail, add: Add): void {
  add(tail.keyword, "keyword");
  switch (tail.kind) {
    case "by":
      for (const method of [tail.method, tail.and]) {
        add(method, isMethod(method?.text) ? "vocabulary" : "parameter-ref");
      }
      break;
    case "wiped":
      addValue(tail.after, add);
      break;
    case "thinned":
      if (tail.ratio?.kind === "name") {
        add(tail.ratio, "parameter-ref");
      }
      add(tail.thinner, "material-ref");
      break;
    case "tinted":
      addValue(tail.share, add);
      add(tail.tint, "material-ref");
      break;
    case "as":
      add(tail.role, "vocabulary");
      break;
    case "wet":
      addValue(tail.thickness, add);
      addValue(tail.to, add);
      break;
    case "sheen":
      add(tail.sheen, isSheen(tail.sheen?.text) ? "vocabulary" : "parameter-ref");
      break;
    case "takes":
    case "leave":
    case "wet_on_wet":
      addValue(tail.time, add);
      break;
    case "transfer":
      addValue(tail.share, add);
      break;
    case "uses":
      addValue(tail.amount, add);
      break;
  }
}

/** A word of the vocabulary, or gloss units. */
const isSheen = (text: string | undefined): boolean =>
  text !== undefined && (Object.hasOwn(SHEENS_SAID, text) || /^\d/u.test(text));

function visitField(field: FieldStatement, add: Add): void {
  const { value } = field;
  switch (value.form) {
    case "words":
      value.items.forEach((item) => {
        addWords(item, add);
      });
      break;
    case "quantity":
      addValue(value.quantity, add);
      addValue(value.to, add);
      break;
    case "range":
      addRange(value.range, add);
      break;
    case "air":
      addRange(value.temperature, add);
      addValue(value.humidity?.value, add);
      addValue(value.humidity?.to, add);
      break;
    case "thin":
      addWords(value.thinner, add);
      addValue(value.from, add);
      addValue(value.upTo, add);
      break;
    case "packs":
      value.sizes.forEach((size) => {
        addValue(size.amount, add);
      });
      break;
    case "mix":
      add(value.hardener, "material-ref");
      add(value.by, "vocabulary");
      break;
    case "money":
      add(value.per, "unit");
      break;
    case "room":
      addValue(value.volume, add);
      addValue(value.airChanges, add);
      break;
    case "hours":
      value.spans.forEach((span) => {
        add(span.from, "vocabulary");
        add(span.to, "vocabulary");
      });
      break;
    case "name":
      add(value.name, field.keyword.text === "in" ? "shop-ref" : "job-ref");
      break;
    case "pieces":
      add(value.name, "piece-ref");
      addValue(value.count, add);
      break;
    default:
      visitSurfaceField(value, add);
  }
}

function visitSurfaceField(value: FieldValue, add: Add): void {
  switch (value.form) {
    case "shape":
      add(value.shape?.name, "vocabulary");
      value.shape?.sizes.forEach((size) => {
        addRange(size, add);
      });
      value.shape?.options.forEach((option) => {
        addWords(option, add);
      });
      addValue(value.shape?.plus, add);
      break;
    case "wood":
      addWords(value.wood, add);
      addValue(value.veneer?.thickness, add);
      break;
    case "existing":
      value.layers.forEach((layer) => {
        addWords(layer.material, add);
      });
      add(value.asLeftBy?.job, "job-ref");
      break;
    case "lead":
      add(value.result, "vocabulary");
      add(value.method, "vocabulary");
      break;
    default:
      break;
  }
}

function addCall(call: Call | undefined, add: Add): void {
  add(call?.name, "recipe-ref");
  for (const argument of call?.arguments ?? []) {
    addArgument(argument, add);
  }
}

function addArgument(argument: Argument, add: Add): void {
  add(argument.name, "argument-name");
  if (argument.value !== undefined && argument.value.kind !== "title") {
    addValue(argument.value, add, "argument-value");
  }
}

function addRange(range: Range | undefined, add: Add): void {
  addValue(range?.from, add);
  addValue(range?.to, add);
}

const isMethod = (word: string | undefined): boolean =>
  (METHODS as readonly (string | undefined)[]).includes(word);

function addValue(
  value: Value | Quantity | Ratio | Grits | undefined,
  add: Add,
  role: NameRole = "parameter-ref",
): void {
  if (value?.kind === "name") {
    add(value, role);
  }
  for (const part of value?.kind === "quantity" ? value.parts : []) {
    add(part.unit, "unit");
  }
}

function addWords(words: Words | Title | undefined, add: Add): void {
  for (const word of words?.kind === "words" ? words.words : []) {
    add(word, "vocabulary");
  }
}
