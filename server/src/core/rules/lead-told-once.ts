/**
 * What a remedy that goes at an old coating says of its lead is said whole once: by a finding on that lead where there is one,
 * else by the first such remedy. The others keep it short and lead there.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { Finding } from "../findings.ts";
import { onceFor } from "../once.ts";
import { samePlace } from "../place.ts";
import { LEAD_RULES } from "./lead-mask.ts";
import { related } from "./texts.ts";

/** The same findings, of which those whose caution has been said whole begin with the short one. */
export function cautionedOnce(findings: readonly Finding[]): readonly Finding[] {
  if (!findings.some(({ caution }) => caution)) return findings;
  const onLead = findings.filter(({ rule }) => LEAD_RULES.has(rule));
  const firsts = new Map<string, Finding>();
  return findings.map((finding) => {
    const { caution } = finding;
    if (!caution) return finding;
    const whole = onLead.find((each) => isOfOneSurface(each, finding)) ?? firsts.get(caution.matter);
    if (!whole) firsts.set(caution.matter, finding);
    return whole ? shortAfter(whole)(finding) : finding;
  });
}

const isOfOneSurface = (a: Finding, b: Finding): boolean =>
  a.job === b.job && (a.surfaces ?? []).some((surface) => b.surfaces?.includes(surface));

const shortAfter = onceFor((whole: Finding) =>
  onceFor((finding: Finding): Finding => {
    const { whole: said, short } = finding.caution!;
    const told = related(whole.place, t`What to do about lead is told here`);
    return {
      ...finding,
      remedy: `${short}${finding.remedy.slice(said.length)}`,
      related: samePlace(whole.place, finding.place) ? finding.related : [told, ...finding.related],
    };
  }),
);
