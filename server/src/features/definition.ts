/**
 * Go to definition: from a name to the place where what it means is declared, and from the path of a `use` line to the
 * file. Built-in materials are declared nowhere; hover tells about them.
 */

import type { Span, Statement } from "../../../grammar/src/tree.ts";
import { absoluteSpan, allNodes } from "../../../grammar/src/walk.ts";
import type { Program, ProgramDeclaration } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { Referent } from "../core/resolution/reference.ts";
import { extentOf } from "../views/places/statement-extent.ts";
import { type Names, usePathAt } from "./names/names.ts";
import type { DefinitionInfo, TargetInfo } from "./types.ts";

export function definitionAt(names: Names, file: FileId, offset: number): DefinitionInfo | undefined {
  const { program } = names;
  const occurrence = names.at(file, offset);
  if (occurrence) {
    const targets = occurrence.referents.flatMap((referent) => targetOf(program, referent) ?? []);
    return targets.length > 0 ? { origin: occurrence.span, targets } : undefined;
  }
  const link = usePathAt(program, file, offset);
  if (!link || !program.files.has(link.target)) return undefined;
  const top = { start: 0, end: 0 };
  return { origin: link.at, targets: [{ file: link.target, span: top, nameSpan: top }] };
}

/** Where a thing is declared; undefined for what is built in. */
export function targetOf(program: Program, { kind, place }: Referent): TargetInfo | undefined {
  const declaration = place && program.files.get(place.file)?.byKey.get(place.declaration);
  if (!declaration) return undefined;
  const span =
    kind === "surface" || kind === "parameter"
      ? spanOfPart(declaration, place.span)
      : declaration.tree.body.syntax.span;
  return targetAt(place.file, declaration, span, place.span);
}

/** From spans in a declaration to those in its file, with the name inside the whole. */
export function targetAt(file: FileId, { tree }: ProgramDeclaration, whole: Span, name: Span): TargetInfo {
  const both = { start: Math.min(whole.start, name.start), end: Math.max(whole.end, name.end) };
  return { file, span: absoluteSpan(tree, both), nameSpan: absoluteSpan(tree, name) };
}

/** The surface or parameter that has this name. */
function spanOfPart({ tree: { body } }: ProgramDeclaration, name: Span): Span {
  for (const node of allNodes(body.syntax)) {
    const isIt =
      "name" in node && (node.name as { readonly span: Span } | undefined)?.span.start === name.start;
    if (!isIt) continue;
    if (node.kind === "surface") return extentOf(body, node as Statement);
    if (node.kind === "parameter") return node.span;
  }
  return name;
}
