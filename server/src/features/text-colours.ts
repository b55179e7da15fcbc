/** The colours that a text gives as numbers, `"#5b3a24"`, and how one is written. */
import { tokensOfBody } from "../../../grammar/src/tokens-of.ts";
import type { DeclarationTree } from "../../../grammar/src/tree.ts";
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import { colourChannels } from "../core/colour.ts";
import type { Program } from "../core/model/program.ts";
import { onceFor } from "../core/once.ts";
import type { FileId } from "../core/place.ts";
import { tokenSpan } from "./file-tokens.ts";
import type { TextColour } from "./types.ts";

/** In the order of the text; the span has the quotes in it. */
export const textColoursOf = (program: Program, file: FileId): readonly TextColour[] =>
  (program.files.get(file)?.tree.pieces ?? []).flatMap((piece) =>
    piece.kind === "declaration"
      ? coloursIn(piece.body).map(({ span, ...channels }) => ({
          ...channels,
          span: absoluteSpan(piece, span),
        }))
      : [],
  );

/** In spans of the declaration, whose body is the same object while its text is. */
const coloursIn = onceFor((body: DeclarationTree["body"]): readonly TextColour[] =>
  tokensOfBody(body).flatMap((token): readonly TextColour[] => {
    if (token.kind !== "string") return [];
    const channels = colourChannels(token.text.replaceAll('"', ""));
    return channels ? [{ span: tokenSpan(token), ...channels }] : [];
  }),
);

/** `"#5b3a24"`; channels from 0 to 1. */
export const colourText = ({ red, green, blue }: Omit<TextColour, "span">): string =>
  `"#${[red, green, blue].map(hexOf).join("")}"`;

const hexOf = (channel: number): string =>
  Math.round(Math.min(Math.max(channel, 0), 1) * 255)
    .toString(16)
    .padStart(2, "0");
