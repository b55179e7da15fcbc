/** The attacks that run input by input, by name. */
import { edits } from "./edits.ts";
import { files } from "./files.ts";
import type { Attack } from "./flaws.ts";
import { pictures } from "./pictures.ts";
import { protocol } from "./protocol.ts";
import { soak } from "./soak.ts";
import { texts } from "./texts.ts";

// biome-ignore lint/suspicious/noExplicitAny: every attack draws inputs of its own kind.
export const ATTACKS: Readonly<Record<string, Attack<any>>> = {
  texts,
  edits,
  protocol,
  files,
  pictures,
  soak,
};
