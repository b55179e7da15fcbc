/**
 * Call hierarchy: which recipes and jobs do a recipe's steps, and whose steps a recipe or job does, by `follow` and
 * `apply`. A parameter that is followed stands for every recipe that is handed on to it.
 */
import { t, translated } from "../../../grammar/src/translate.ts";
import type { Span } from "../../../grammar/src/tree.ts";
import { locate, touches } from "../../../grammar/src/walk.ts";
import type { Recipe } from "../core/model/model.ts";
import type { ProgramDeclaration } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import { placeKey } from "../core/place.ts";
import { targetAt } from "./definition.ts";
import type { Names, Occurrence } from "./names/names.ts";
import type { CallInfo, CallItem } from "./types.ts";

export function callItemsAt(names: Names, file: FileId, offset: number): readonly CallItem[] {
  const occurrence = names.at(file, offset);
  if (!occurrence) return ownItem(names, file, offset);
  const recipes = names.called(occurrence)?.flatMap((recipe) => recipeItem(names, recipe));
  return (
    recipes ??
    occurrence.referents.flatMap(({ place }) => {
      const declaration = place && names.program.files.get(place.file)?.byKey.get(place.declaration);
      const item = declaration && itemOf(place.file, declaration);
      // A parameter or surface stands in a declaration without being it.
      return item && isNameOf(declaration, place.span) ? [item] : [];
    })
  );
}

export function incomingCalls(names: Names, file: FileId, offset: number): readonly CallInfo[] {
  const keys = new Set(callItemsAt(names, file, offset).map(itemKey));
  const calls = [...names.program.files.keys()].flatMap((each) =>
    callsIn(names, names.inFile(each)).filter(({ recipe }) =>
      recipeItem(names, recipe).some((item) => keys.has(itemKey(item))),
    ),
  );
  return gathered(calls, ({ at }) => {
    const item = itemOf(at.file, at.declaration);
    return item ? [item] : [];
  });
}

export function outgoingCalls(names: Names, file: FileId, offset: number): readonly CallInfo[] {
  const [item] = callItemsAt(names, file, offset);
  if (!item) return [];
  const inside = names
    .inFile(item.file)
    .filter(({ span }) => item.span.start <= span.start && span.end <= item.span.end);
  return gathered(callsIn(names, inside), ({ recipe }) => recipeItem(names, recipe));
}

/** From the word `recipe` or `job` in front of a declaration, which may still lack its name. */
function ownItem({ program }: Names, file: FileId, offset: number): readonly CallItem[] {
  const found = program.files.get(file);
  const location = found && locate(found.tree, offset);
  const declaration = location?.declaration && found?.byKey.get(location.declaration.key);
  if (!declaration || !touches(declaration.tree.body.syntax.keyword.span, location.offset)) return [];
  const item = itemOf(file, declaration);
  return item ? [item] : [];
}

interface CallOf {
  readonly at: Occurrence;
  readonly recipe: Recipe;
}

function callsIn(names: Names, occurrences: readonly Occurrence[]): readonly CallOf[] {
  return occurrences.flatMap((at) => (names.called(at) ?? []).map((recipe) => ({ at, recipe })));
}

/** One entry for each other end, with all its calls. */
function gathered(
  calls: readonly CallOf[],
  otherEnd: (call: CallOf) => readonly CallItem[],
): readonly CallInfo[] {
  const found = new Map<string, { readonly item: CallItem; readonly spans: Span[] }>();
  for (const call of calls) {
    for (const item of otherEnd(call)) {
      const entry = found.get(itemKey(item)) ?? { item, spans: [] };
      if (!entry.spans.includes(call.at.span)) entry.spans.push(call.at.span);
      found.set(itemKey(item), entry);
    }
  }
  return [...found.values()];
}

const itemKey = ({ file, nameSpan }: CallItem): string => placeKey({ file, declaration: "", span: nameSpan });

function recipeItem({ program }: Names, { file, declaration }: Recipe): readonly CallItem[] {
  const found = program.files.get(file)?.byKey.get(declaration);
  const item = found && itemOf(file, found);
  return item ? [item] : [];
}

/** A recipe or job. One without a name has calls as well, and shows its first word. */
function itemOf(file: FileId, declaration: ProgramDeclaration): CallItem | undefined {
  const { syntax } = declaration.tree.body;
  const { kind, keyword, name, title, span } = syntax;
  if (kind !== "recipe" && kind !== "job") return undefined;
  return {
    kind,
    name: name?.text ?? t`(${translated(kind)} without a name)`,
    title: title?.value ?? "",
    ...targetAt(file, declaration, span, (name ?? keyword).span),
  };
}

function isNameOf({ tree }: ProgramDeclaration, span: Span): boolean {
  return tree.body.syntax.name?.span.start === span.start;
}
