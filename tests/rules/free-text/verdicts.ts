/** What the rules say of sentences: see `kinds.ts`. */
import { partsOf } from "../../../server/src/views/places/finding-parts.ts";
import { findingsOf } from "../../harness/check-text.ts";
import { CHEMICALS } from "./chemicals.ts";
import { FIFTH } from "./fifth.ts";
import { FIRE } from "./fire.ts";
import { FOURTH } from "./fourth.ts";
import { BASES, type BaseName, type Kind } from "./kinds.ts";
import { PEOPLE } from "./people.ts";
import { SECOND } from "./second.ts";
import { THIRD } from "./third.ts";
import { WORK } from "./work.ts";

export const KINDS: readonly Kind[] = [
  ...FIRE,
  ...PEOPLE,
  ...CHEMICALS,
  ...WORK,
  ...SECOND,
  ...THIRD,
  ...FOURTH,
  ...FIFTH,
];

/** The rules that have an error or a warning on a recipe with this note. */
export const gravely = (base: BaseName, sentence: string): readonly string[] =>
  findingsOf(BASES[base].replace("NOTE", `note "${sentence}"`))
    .filter(({ severity }) => severity === "error" || severity === "warning")
    .flatMap(partsOf)
    .map(({ rule }) => rule);

/** Dangerous sentences that none of their rules speaks of. */
export const missedIn = ({ base, dangerous }: Kind): readonly string[] =>
  Object.entries(dangerous).flatMap(([rules, sentences]) =>
    sentences.flatMap((sentence) => {
      const said = gravely(base, sentence);
      return rules.split(" ").some((rule) => said.includes(rule))
        ? []
        : [`${rules}: ${sentence}${said.length > 0 ? ` (says ${said.join(", ")})` : ""}`];
    }),
  );

/** Sound sentences that draw an error or a warning. */
export const criedWolf = ({ base, benign }: Kind): readonly string[] =>
  benign.flatMap((sentence) => {
    const said = gravely(base, sentence);
    return said.length > 0 ? [`${said.join(", ")}: ${sentence}`] : [];
  });
