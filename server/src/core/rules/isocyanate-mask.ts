/**
 * A respirator with cartridges where isocyanate is sprayed: no cartridge is right for it, so what asks for one says that it
 * takes supplied air, as the finding on the isocyanate does. It is said of findings, because a recipe by itself does not know
 * what a parameter stands for.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Finding } from "../findings.ts";
import { dutyByWord } from "../knowledge/duties.ts";
import { onceFor } from "../once.ts";
import { placesOverlap } from "../place.ts";
import { withoutFullStop } from "../sentence.ts";
import { notStated, undertakeDuties } from "./texts.ts";

/** The same findings, of which those on cartridges on a line with sprayed isocyanate name supplied air. */
export function withSuppliedAir(findings: readonly Finding[]): readonly Finding[] {
  const sprayed = findings.filter(({ rule }) => rule === "isocyanate-hardener");
  if (sprayed.length === 0) return findings;
  return findings.map((finding) =>
    finding.rule === "no-respirator" && sprayed.some(({ place }) => placesOverlap(place, finding.place))
      ? ofIsocyanate(finding)
      : finding,
  );
}

/** NIOSH Publication 96-111 (1996): supplied air where isocyanates are sprayed. The finding on them says all of it. */
const ofIsocyanate = onceFor((finding: Finding): Finding => {
  const { doc, defer } = dutyByWord("supplied_air")!;
  const { part: _, ...rest } = finding;
  return {
    ...rest,
    headline: notStated("supplied_air"),
    why: t`Isocyanate is sprayed here, and no cartridge is right for it.`,
    remedy: t`${withoutFullStop(translated(doc))}, and state \`safety supplied_air\` above this line. ${translated(defer)}`,
    brief: "",
    fixes: finding.fixes.flatMap(({ edits }) =>
      edits.slice(0, 1).map(({ place }) => undertakeDuties(place, ["supplied_air"])),
    ),
  };
});
