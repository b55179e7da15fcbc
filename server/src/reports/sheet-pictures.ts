/** Which pictures the texts of sheets name, for whoever can read them. */
import type { FileId } from "../core/place.ts";
import { picturesIn } from "../escape/prose.ts";
import type { Docs, Sheet } from "../views/sheet/model.ts";

/** A picture that a text names, and the file with the text. */
interface Named {
  readonly file: FileId;
  readonly target: string;
}

/** In the order in which they stand. */
export const picturesNamed = (sheets: readonly Sheet[]): readonly Named[] =>
  picturesNamedIn(sheets.flatMap(docsOfSheet));

export const picturesNamedIn = (docs: readonly Docs[]): readonly Named[] =>
  docs.flatMap(({ text, file }) => picturesIn(text).map((target) => ({ file, target })));

const docsOfSheet = ({ docs, pieces, surfaces, shopDocs, procedures, materials }: Sheet): readonly Docs[] => [
  docs,
  ...[...pieces, ...surfaces].map((each) => each.docs),
  shopDocs,
  ...procedures.flatMap(({ entries }) =>
    entries.flatMap((entry) => (entry.kind === "part" ? [entry.docs] : [])),
  ),
  ...materials.map((each) => each.docs),
];
