/**
 * A dust mask where old coatings may hold lead: what asks for the mask says that it is not enough, beside the finding on lead
 * that asks for a P100 respirator. It is said of findings, because a recipe by itself does not know what it is done to.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Finding } from "../findings.ts";
import { dutyByWord } from "../knowledge/duties.ts";
import { onceFor } from "../once.ts";
import { placeKey } from "../place.ts";
import { withoutFullStop } from "../sentence.ts";
import { notStated, undertakeDuties } from "./texts.ts";

/** The rules whose findings say how to work where an old coating may hold lead. */
export const LEAD_RULES: ReadonlySet<string> = new Set([
  "lead-not-tested",
  "lead-unsafe-method",
  "no-lead-safe-work",
]);

/** The same findings, of which those on a dust mask on a line with a finding on lead name the respirator. */
export function withLeadMasks(findings: readonly Finding[]): readonly Finding[] {
  if (!findings.some(({ rule }) => rule === "no-dust-mask")) return findings;
  const lines = new Set(
    findings.filter(({ rule }) => LEAD_RULES.has(rule)).map(({ place }) => placeKey(place)),
  );
  if (lines.size === 0) return findings;
  return findings.map((finding) =>
    finding.rule === "no-dust-mask" && lines.has(placeKey(finding.place)) ? ofLead(finding) : finding,
  );
}

/**
 * 29 CFR 1926.62 and 40 CFR 745.85 on lead: a P100 (HEPA) filter, and containment beside it. So the duty to state is that of
 * lead, which does what a mask does as well; a fix or a list that writes `dust_mask` would say that a mask is enough.
 */
const ofLead = onceFor((finding: Finding): Finding => {
  const { doc, defer } = dutyByWord("lead_safe")!;
  // Lead is a matter of its own, told at the line that makes the dust: nobody may overlook it in a list.
  const { part: _, ...rest } = finding;
  return {
    ...rest,
    headline: notStated("lead_safe"),
    why: t`This dust may hold lead, so a plain dust mask is not enough: wear a P100 respirator.`,
    remedy: t`${withoutFullStop(translated(doc))}, and state \`safety lead_safe\` above this line. ${translated(defer)}`,
    // What lead asks for is all said by the finding on lead.
    brief: "",
    fixes: finding.fixes.flatMap(({ edits }) =>
      edits.slice(0, 1).map(({ place }) => undertakeDuties(place, ["lead_safe"])),
    ),
  };
});
