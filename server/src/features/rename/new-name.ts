/**
 * Whether a new name is one, and free: letters as the notation has them, and not taken wherever the old one can be seen.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { RESERVED } from "../../../../grammar/src/vocabulary.ts";
import { chemicalsNamed } from "../../core/knowledge/named-chemicals.ts";
import type { ModelDeclaration } from "../../core/model/model.ts";
import { modelsOf, type Program, reachableFiles } from "../../core/model/program.ts";
import { type FileId, type Place, placeKey } from "../../core/place.ts";
import type { Referent } from "../../core/resolution/reference.ts";
import { spanOfPlace } from "../../views/places/to-absolute.ts";
import type { Names } from "../names/names.ts";
import { fileWords, lineWords, type Reader } from "./words.ts";

const NAME = /^\p{L}[\p{L}\p{M}\p{N}_]*$/u;

/** One or two sentences, if anything speaks against it. */
export function reasonAgainst(
  { program }: Names,
  members: readonly Referent[],
  newName: string,
  reader: Reader,
): string | undefined {
  return (
    malformed(newName) ??
    first(members, (member) => reserved(member, newName)) ??
    first(members, (member) => taken(program, member, members, newName, reader)) ??
    first(members, (member) => tellsLess(program, member, newName))
  );
}

function malformed(name: string): string | undefined {
  if (NAME.test(name)) return undefined;
  const fixed = name.replace(/[\s-]+/gu, "_");
  const hint = fixed !== name && NAME.test(fixed) ? t` Write \`${fixed}\`.` : "";
  return name === ""
    ? t`Nothing is not a name: a name is a letter, followed by letters, digits and \`_\`.`
    : `${t`\`${name}\` is not a name: a name is a letter, followed by letters, digits and \`_\`.`}${hint}`;
}

function reserved({ kind }: Referent, name: string): string | undefined {
  const isWord = (RESERVED as readonly string[]).includes(name) || (kind === "surface" && name === "all");
  return isWord ? t`\`${name}\` is a word of the notation. Choose another name.` : undefined;
}

function taken(
  program: Program,
  member: Referent,
  members: readonly Referent[],
  newName: string,
  reader: Reader,
): string | undefined {
  const { kind, place } = member;
  const model = place && program.files.get(place.file)?.byKey.get(place.declaration)?.lowered.model;
  if (!model) return undefined;
  if (kind === "surface" || kind === "parameter") return takenInside(program, model, kind, newName, reader);
  const renamed = new Set(members.map(({ key }) => key));
  for (const seer of program.files.keys()) {
    const seen = reachableFiles(program, seer);
    if (!seen.includes(model.file)) continue;
    const other = seen
      .flatMap((file) => modelsIn(program, file))
      .find((each) => each.kind === kind && each.name === newName && !renamed.has(placeKey(each.namePlace)));
    if (!other) continue;
    const isSeenFromBoth =
      other.file !== model.file && !reachableFiles(program, model.file).includes(other.file);
    const both =
      isSeenFromBoth && seer !== other.file ? t`, and ${fileWords(reader, seer)} uses both files` : "";
    return t`There already is a ${translated(kind)} \`${newName}\`${where(program, other.namePlace, reader)}${both}. Choose another name.`;
  }
  return undefined;
}

function modelsIn(program: Program, file: FileId): readonly ModelDeclaration[] {
  const found = program.files.get(file);
  return found ? modelsOf(found) : [];
}

function takenInside(
  program: Program,
  model: ModelDeclaration,
  kind: "surface" | "parameter",
  newName: string,
  reader: Reader,
): string | undefined {
  const place =
    model.kind === "piece"
      ? model.surfaces.find(({ name }) => name === newName)?.namePlace
      : model.kind === "recipe"
        ? model.parameters.find(({ name }) => name === newName)?.place
        : undefined;
  return (
    place &&
    t`The ${translated(model.kind)} \`${model.name}\` already has a ${translated(kind)} \`${newName}\`${where(program, place, reader)}. Choose another name.`
  );
}

/** Warnings about lye and its like go by the words of a material; a new name may not take the only ones away. */
function tellsLess(program: Program, { kind, place }: Referent, newName: string): string | undefined {
  const model = place && program.files.get(place.file)?.byKey.get(place.declaration)?.lowered.model;
  if (kind !== "material" || model?.kind !== "material") return undefined;
  const after = chemicalsNamed({ ...model, name: newName });
  const lost = chemicalsNamed(model).find((chemical) => !after.includes(chemical));
  if (lost === undefined) return undefined;
  return lost === "lye"
    ? t`Only its name tells that \`${model.name}\` holds something caustic, and findings go by that. Say so in its title or in a \`##\` line first.`
    : t`Only its name tells that \`${model.name}\` holds something with ${translated(lost)}, and findings go by that. Say so in its title or in a \`##\` line first.`;
}

function where(program: Program, place: Place, reader: Reader): string {
  const at = spanOfPlace(program, place);
  return at ? t` in ${lineWords(reader, at.file, at.span.start)}` : "";
}

function first<T, R>(items: readonly T[], find: (item: T) => R | undefined): R | undefined {
  for (const item of items) {
    const found = find(item);
    if (found !== undefined) return found;
  }
  return undefined;
}
