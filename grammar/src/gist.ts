/**
 * How a message on the notation is told: the gist on its first line, what to do on its last, and why on those between. So
 * nobody who shows it has to look for sentences in it.
 */
import { t, translated } from "./translate.ts";

/** The most that a gist may have to stand on one line, characters. */
export const LONGEST_GIST = 70;

/** ", such as `example`", or without the comma; nothing where the example is told on a line of its own. */
export type SuchAs = (example: string, before?: "," | "") => string;

/** What is told, if it has an example within. */
export type Told = string | ((suchAs: SuchAs) => string);

export const toldBy = (told: Told, suchAs: SuchAs): string =>
  typeof told === "string" ? translated(told) : told(suchAs);

/** Within the gist, however long that gets: where what to do is told besides. */
export const inside: SuchAs = (example, before = ",") => t`${before} such as \`${example}\``;

/** One gist; its examples are told within it if that stands on one line, else they are what to do. */
export function gist(told: Told): string {
  const inOne = toldBy(told, inside);
  // The full stop at its end is not shown.
  if (inOne.length <= LONGEST_GIST + (inOne.endsWith(".") ? 1 : 0)) return inOne;
  const examples: string[] = [];
  const alone = toldBy(told, (example) => {
    examples.push(`\`${example}\``);
    return "";
  });
  return examples.length === 0 ? alone : t`${alone}\nWrite, for example, ${examples.join(t` or `)}.`;
}
