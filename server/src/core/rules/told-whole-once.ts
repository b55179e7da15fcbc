/**
 * What to do about one matter, as the lead of a job or the flame of a shop, is told whole at its first finding. The others
 * name what is theirs and lead to the first.
 */
import type { Finding } from "../findings.ts";
import { onceFor } from "../once.ts";
import { related } from "./texts.ts";

/** The same findings, of which those on a matter that an earlier one has told whole are short. */
export function toldWholeOnce(findings: readonly Finding[]): readonly Finding[] {
  const firsts = new Map<string, Finding>();
  return findings.map((finding) => {
    const { again } = finding;
    if (!again) return finding;
    const key = `${finding.rule}\u0000${again.key}`;
    const first = firsts.get(key);
    if (!first) firsts.set(key, finding);
    return first ? shortAfter(first)(finding) : finding;
  });
}

const shortAfter = onceFor((first: Finding) =>
  onceFor((finding: Finding): Finding => {
    return {
      ...finding,
      remedy: `As told for ${first.again!.of}, ${finding.again!.remedy}`,
      related: [related(first.place, "What to do is told here"), ...finding.related],
    };
  }),
);
