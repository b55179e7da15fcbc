/** What an editor draws over a text and offers within it, for one analysis. */
import { foldingsOf } from "./foldings.ts";
import type { Names } from "./names/names.ts";
import { selectionsAt } from "./selections.ts";
import { semanticTokensOf, tokenPiecesOf } from "./semantic-tokens.ts";
import { signaturesAt } from "./signatures.ts";
import { textColoursOf } from "./text-colours.ts";
import type { TextViews } from "./types.ts";

export function createTextViews(names: Names): TextViews {
  const { program } = names;
  return {
    tokenPieces: (file, which) => tokenPiecesOf(names, file, which),
    semanticTokens: (file, which, part) => semanticTokensOf(names, file, which, part),
    foldings: (file) => foldingsOf(program, file),
    textColours: (file) => textColoursOf(program, file),
    selections: (file, offset) => selectionsAt(program, file, offset),
    signatures: (file, offset) => signaturesAt(names, file, offset),
  };
}
