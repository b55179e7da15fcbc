/** What the kinds of hints share: what a part says, and how much fits behind one line. */
import type { InlayHintPart } from "../types.ts";

/** What one part of a hint says. */
export type HintText = Pick<InlayHintPart, "text" | "markdown">;

/** What stands between the parts of a hint. */
export const HINT_SEPARATOR = " · ";

/** Editors cut off what is longer: VS Code at its `editor.inlayHints.maximumLength`, 43 characters on a line. */
export const MOST_CHARACTERS = 43;
