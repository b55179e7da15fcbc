/**
 * Lines of a run as people's words are read in them: first what `##` says of its recipes and materials, as notes, then the
 * lines that say something in words.
 */

import type { Phrases } from "../knowledge/phrases.ts";
import type { Material, Named } from "../model/model.ts";
import { onceFor } from "../once.ts";
import type { Place } from "../place.ts";
import type { Action, NoteAction } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { usesOf } from "./material-uses.ts";
import type { Report, RunContext } from "./rule.ts";
import { saidOnLine, spokenLines } from "./spoken-words.ts";

export const toldLines = onceFor((run: SurfaceRun): readonly Action[] => [
  ...descriptions(run),
  ...spokenLines(run),
]);

/** Reports each line of a run, and each description that it is told by, that says what the patterns look for. */
export function reportOnLines({ run, report }: RunContext, said: Phrases, text: Report): void {
  for (const action of toldLines(run)) if (saidOnLine(action, said) !== undefined) report(action, text);
}

/** Whether a line is what `##` says of a declaration: no fix may put a line in its place. */
export const isDescription = (run: SurfaceRun, action: Action): boolean =>
  descriptions(run).includes(action as NoteAction);

const descriptions = onceFor((run: SurfaceRun): readonly NoteAction[] => {
  const [first] = run.moments;
  if (!first) return [];
  const ofRecipes = run.applied.map(({ recipe, apply }) =>
    noteOf(recipe, first.action, apply ? [apply] : []),
  );
  const used = new Map<Material, NoteAction>();
  for (const { action } of run.moments)
    for (const { material } of usesOf(action))
      if (material && !used.has(material)) used.set(material, noteOf(material, action, action.frames));
  return [...ofRecipes, ...used.values()].filter(({ text }) => text !== "");
});

/** It stands at the head of its declaration, or where that is used when the declaration is in another file. */
function noteOf({ docs, headPlace: place }: Named, at: Action, way: readonly Place[]): NoteAction {
  return {
    op: "note",
    index: at.index,
    duties: at.duties,
    place,
    frames: [...way, place],
    // A sentence goes on from one line of a description to the next.
    text: docs.replaceAll("\n", " ").trim(),
    syntax: {
      kind: "note",
      keyword: { kind: "name", text: "note", span: place.span },
      span: place.span,
      docs: "",
    },
  };
}
