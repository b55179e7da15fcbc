/**
 * Findings that are told together: what one finding for several of them says, and its fix.
 *
 * A rule names its group in the `part` of its reports. A new group is a row here: its parts come sorted, the gravest first.
 */
import type { Finding, FindingText, Fix } from "../findings.ts";
import type { DutyWord } from "../knowledge/duties.ts";
import { LONGEST_HEADLINE, undertakeDuties } from "./texts.ts";

export interface FindingGroup {
  /** What is said instead of all parts; where they stand is added. */
  readonly text: (parts: readonly Finding[]) => Omit<FindingText, "where">;
  /** What removes all parts at once. */
  readonly fixes: (parts: readonly Finding[]) => readonly Fix[];
}

/** Safety duties that one recipe does not state. */
export const MISSING_DUTIES = "missing-duties";

const namesOf = (parts: readonly Finding[]): readonly DutyWord[] => [
  ...new Set(parts.map(({ part }) => part!.name as DutyWord)),
];

export const FINDING_GROUPS: Readonly<Record<string, FindingGroup>> = {
  [MISSING_DUTIES]: {
    text: (parts) => {
      const names = namesOf(parts);
      const short = `${names.length} safety duties are missing`;
      const long = `${short}: ${names.map((name) => `\`${name}\``).join(", ")}`;
      return {
        headline: long.length <= LONGEST_HEADLINE ? long : short,
        why: parts.map(({ part }) => `\`${part!.name}\`: ${part!.reason}.`).join("\n"),
        remedy: `See to each of them and state \`safety ${names.join(", ")}\` above the first line that needs one; labels, safety data sheets and local codes decide what each has to be.`,
      };
    },
    fixes: (parts) => {
      const places = parts.flatMap(({ fixes }) =>
        fixes.flatMap(({ edits }) => edits.map(({ place }) => place)),
      );
      const [first] = places.toSorted((a, b) => a.span.start - b.span.start);
      const isOneBlock = places.every(
        ({ file, declaration }) => file === first?.file && declaration === first.declaration,
      );
      // Where the lines belong to several declarations no one line reaches all of them.
      return first && isOneBlock
        ? [undertakeDuties(first, namesOf(parts))]
        : parts.flatMap(({ fixes }) => fixes);
    },
  },
};
