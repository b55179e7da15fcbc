/**
 * What to do about one matter, as the lead of a job or the flame of a shop, is told whole at its first finding. The others
 * name what is theirs and lead to the first.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { Finding } from "../findings.ts";
import { onceFor } from "../once.ts";
import { related } from "./texts.ts";

/** The same findings, of which those on a matter that another one has told whole are short. */
export const toldWholeOnce = (findings: readonly Finding[]): readonly Finding[] =>
  roomToldOnce(shortLater(findings));

/** What other room is needed in place of a shop, the finding on its heater says; the one on its air goes on from there. */
function roomToldOnce(findings: readonly Finding[]): readonly Finding[] {
  if (!findings.some(({ inThatRoom }) => inThatRoom)) return findings;
  return findings.map((finding) => {
    const { inThatRoom } = finding;
    const first =
      inThatRoom && findings.find((each) => each !== finding && each.tellsRoom === inThatRoom.shop);
    return first ? inRoomOf(first)(finding) : finding;
  });
}

const inRoomOf = onceFor((first: Finding) =>
  onceFor(
    (finding: Finding): Finding => ({
      ...finding,
      remedy: finding.inThatRoom!.remedy,
      related: [related(first.place, t`The other room is told here`), ...finding.related],
    }),
  ),
);

function shortLater(findings: readonly Finding[]): readonly Finding[] {
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
      why: finding.again!.why ?? finding.why,
      remedy: t`As told for ${first.again!.of}, ${finding.again!.remedy}`,
      ...(finding.again!.atFirst === undefined
        ? {}
        : { atFirst: t`As told for ${first.again!.of}, ${finding.again!.atFirst}` }),
      related: [related(first.place, t`What to do is told here`), ...finding.related],
    };
  }),
);
