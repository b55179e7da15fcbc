/**
 * Reads the head of a `recipe` declaration. Its statements stay as parsed: what they mean depends on the arguments,
 * so `expand` reads them for every call; what is wrong in them whatever the arguments is found by `check-recipe`.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type {
  FieldStatement,
  FieldValue,
  RecipeDeclaration,
  RecipeStatement,
  Title,
  Words,
} from "../../../../grammar/src/tree.ts";
import { FIELDS, PARAMETER_TYPES } from "../../../../grammar/src/vocabulary.ts";
import { substrateByName, woodByName } from "../knowledge/woods.ts";
import { FOR_KINDS, wordList } from "../knowledge/words.ts";
import { type Lowering, placeOf, readWord, report, reportKept, reportUnknownField } from "./lowering.ts";
import type { ForKind, Named, ParameterType, Recipe, RecipeParameter } from "./model.ts";

export function lowerRecipe(ctx: Lowering, syntax: RecipeDeclaration, named: Named): Recipe {
  reportKept(
    ctx,
    "recipe",
    syntax.statements.filter((statement) => statement.kind === "note"),
  );
  const forField = readForField(ctx, syntax.statements);
  return {
    ...named,
    kind: "recipe",
    parameters: distinctParameters(ctx, syntax),
    parameterSyntax: syntax.parameters,
    forKinds: forField ? readForKinds(ctx, forField) : ["any"],
    forPlace: forField && placeOf(ctx, forField.span),
    statements: syntax.statements,
  };
}

/** Reports unknown and repeated fields among the statements, and gives the `for` field. */
function readForField(ctx: Lowering, statements: readonly RecipeStatement[]): FieldStatement | undefined {
  let first: FieldStatement | undefined;
  for (const statement of statements) {
    if (statement.kind === "layer") reportFieldsOfBlock(ctx, statement.block ?? []);
    if (statement.kind !== "field") continue;
    if (!Object.hasOwn(FIELDS.recipe, statement.keyword.text))
      reportUnknownField(ctx, "recipe", statement.keyword);
    else if (first) {
      ctx.findings.push({
        rule: "repeated-field",
        span: statement.keyword.span,
        message: t`\`for\` is stated twice in this recipe; only the first counts\nPut all kinds on one line, such as \`for wood, veneer\`.`,
        related: [{ span: first.span, message: t`\`for\` is first stated here` }],
      });
    } else first = statement;
  }
  return first;
}

/** A coat block has no fields; `for` belongs to the recipe. */
function reportFieldsOfBlock(ctx: Lowering, statements: readonly RecipeStatement[]): void {
  for (const statement of statements) {
    if (statement.kind === "layer") reportFieldsOfBlock(ctx, statement.block ?? []);
    if (statement.kind !== "field") continue;
    if (statement.keyword.text !== "for") reportUnknownField(ctx, "recipe", statement.keyword);
    else
      report(
        ctx,
        "unknown-field",
        statement.keyword.span,
        t`The lines between coats have no \`for\`\nPut it at the top of the recipe.`,
      );
  }
}

function readForKinds(ctx: Lowering, field: FieldStatement): readonly ForKind[] {
  const value = field.value as Extract<FieldValue, { form: "words" }>;
  const kinds = value.items.flatMap(
    (item) => kindOfGround(item) ?? readWord(ctx, item, wordList(FOR_KINDS), "kind of surface") ?? [],
  );
  return kinds.length > 0 ? kinds : ["any"];
}

/** `for larch`, `for plywood`: a species or a sheet is of one kind. */
function kindOfGround(item: Words | Title): ForKind | undefined {
  if (item.kind === "title" || wordList(FOR_KINDS).some((kind) => kind === item.text)) return undefined;
  const sheet = substrateByName(item.text)?.kind;
  if (sheet === "metal" || sheet === "laminate") return sheet;
  return sheet !== undefined || woodByName(item.text) ? "wood" : undefined;
}

function distinctParameters(ctx: Lowering, syntax: RecipeDeclaration): readonly RecipeParameter[] {
  const seen = new Map<string, RecipeParameter>();
  for (const parameter of syntax.parameters) {
    const type = readWord(ctx, parameter.type, PARAMETER_TYPES, "type of parameter") as
      | ParameterType
      | undefined;
    const first = seen.get(parameter.name.text);
    if (first) {
      ctx.findings.push({
        rule: "duplicate-name",
        span: parameter.name.span,
        message: t`This recipe already has a parameter \`${parameter.name.text}\`\nGive this one another name.`,
        related: [{ span: first.place.span, message: t`The first parameter of this name` }],
      });
      continue;
    }
    if (!type) continue;
    seen.set(parameter.name.text, {
      name: parameter.name.text,
      type,
      place: placeOf(ctx, parameter.name.span),
      hasDefault: parameter.default !== undefined,
    });
  }
  return [...seen.values()];
}
