/**
 * All of a declaration by which recipes and jobs are arranged around each other: which recipes are done inside others,
 * which jobs go on with what others left, and on which surfaces. While no outline of a scope changes, these answers stay
 * the same, whatever else is edited.
 */
import type { Argument, Call, RecipeStatement } from "../../../../grammar/src/tree.ts";
import type { ModelDeclaration } from "../model/model.ts";

/** Equal texts: nothing that `followed.ts`, `job-graph.ts` or `job-history.ts` say by names differs. */
export const outlineOf = (model: ModelDeclaration): string =>
  JSON.stringify([model.kind, model.name, partsOf(model)]);

function partsOf(model: ModelDeclaration): readonly unknown[] {
  switch (model.kind) {
    case "recipe":
      return [
        model.parameters.map(({ name }) => name),
        model.parameterSyntax.map(({ default: value }) => nameOf(value)),
        callsOf(model.statements).map(outlineOfCall),
      ];
    case "job":
      return [
        model.pieces.map(({ piece }) => piece),
        model.after?.job,
        model.applies.map(({ syntax }) => [
          syntax.call && outlineOfCall(syntax.call),
          syntax.targets.map(({ piece, surface }) => [piece?.text, surface?.text]),
        ]),
      ];
    case "piece":
      return model.surfaces.map(({ name, asLeftBy }) => [name, asLeftBy?.job]);
    default:
      return [];
  }
}

const outlineOfCall = (call: Call): readonly unknown[] => [
  call.name.text,
  call.arguments.map(({ value }) => nameOf(value)),
];

const nameOf = (value: Argument["value"]): string | undefined =>
  value?.kind === "name" ? value.text : undefined;

function callsOf(statements: readonly RecipeStatement[]): readonly Call[] {
  return statements.flatMap((statement) => {
    if (statement.kind === "layer") return callsOf(statement.block ?? []);
    return statement.kind === "follow" && statement.call ? [statement.call] : [];
  });
}
