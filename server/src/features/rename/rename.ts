/**
 * Rename: gives a thing another name everywhere at once, in all files, and changes nothing else that is meant.
 *
 * What must keep one name goes along: the parameters that one call names in several recipes, and surfaces that a job
 * finds by their name where an earlier job left them. After the plain reasons against a name (`rename/new-name.ts`), the
 * renamed texts are read again and every name in them must mean what it meant before (`rename/same-meaning.ts`).
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { FileId } from "../../core/place.ts";
import type { Referent } from "../../core/resolution/reference.ts";
import type { FileEdit } from "../../views/places/file-finding.ts";
import type { Names, Occurrence } from "../names/names.ts";
import { usePathAt } from "../names/names.ts";
import type { Refusal, RenameTarget, Renaming } from "../types.ts";
import { linkedWith } from "./linked.ts";
import { reasonAgainst } from "./new-name.ts";
import { changeOfMeaning } from "./same-meaning.ts";
import type { Reader } from "./words.ts";

/** The name at an offset, if it can be renamed. */
export function renameTargetAt(names: Names, file: FileId, offset: number): RenameTarget | Refusal {
  const found = renameable(names, file, offset);
  if ("refusal" in found) return found;
  const { span, use } = found.occurrence;
  return { span, name: use.name.text };
}

export function renameAt(names: Names, file: FileId, offset: number, to: string): Renaming | Refusal {
  const found = renameable(names, file, offset);
  if ("refusal" in found) return found;
  // Letters with marks have two spellings in Unicode; the notation knows the one that is a single letter.
  const newName = to.trim().normalize("NFC");
  if (newName === found.occurrence.use.name.text) return { edits: [] };
  const reader: Reader = { file, text: (each) => names.program.files.get(each)?.tree.text };
  const members = linkedWith(names, found.referents);
  const against = reasonAgainst(names, members, newName, reader);
  if (against) return { refusal: against };
  const edits = editsOf(names, members, newName);
  const change = changeOfMeaning(names, edits, reader);
  return change ? { refusal: `${change} ${t`Choose another name.`}` } : { edits };
}

interface Renameable {
  readonly occurrence: Occurrence;
  readonly referents: readonly Referent[];
}

function renameable(names: Names, file: FileId, offset: number): Renameable | Refusal {
  const occurrence = names.at(file, offset);
  if (!occurrence) {
    return usePathAt(names.program, file, offset)
      ? { refusal: t`This is the path of a file. Rename the file itself, and the \`use\` lines follow.` }
      : { refusal: translated(NO_NAME) };
  }
  const { referents, use } = occurrence;
  const { text } = use.name;
  if (use.role === "vocabulary" && referents.some(({ name }) => name !== text))
    return { refusal: translated(NO_NAME) };
  if (referents.length === 0) {
    return { refusal: t`Nothing is known here by the name \`${text}\`, so it cannot be renamed.` };
  }
  if (referents.some(({ place }) => place === undefined)) {
    return {
      refusal: t`\`${text}\` is built in and keeps its name. Declare a material of the same family to give it a name of your own.`,
    };
  }
  if (referents.length > 1 && use.role !== "argument-name") {
    return {
      refusal: t`\`${text}\` may mean several things here. Rename the one you mean where it is declared.`,
    };
  }
  if (!names.isComplete) return { refusal: translated(TOO_MANY) };
  return { occurrence, referents };
}

export const TOO_MANY =
  "The recipes here are passed to each other in so many ways that not everything a name may mean is known, so nothing can be renamed.";

export const NO_NAME =
  "There is no name here. Names of materials, pieces, surfaces, shops, recipes, jobs and parameters can be changed; words of the notation cannot.";

function editsOf(names: Names, members: readonly Referent[], text: string): readonly FileEdit[] {
  const keys = new Set(members.map(({ key }) => key));
  return names
    .meaning(members)
    .filter(
      ({ use, referents }) =>
        // `all` means surfaces without being their name; a name that may also mean something else stays.
        referents[0]!.name === use.name.text && referents.every(({ key }) => keys.has(key)),
    )
    .map(({ file, span }) => ({ file, span, text }));
}
