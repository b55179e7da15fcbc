/**
 * One cause, one finding: what is found is told together where it belongs together.
 *
 * Findings of one group on one recipe become one (`finding-groups.ts`), and what only follows from another finding
 * is told in a line of that one (`secondaryTo` of a rule), and what to do about one matter is told whole once. This comes last, when comments and settings have taken
 * out what they allow, so that each part is allowed, set and explained by its own rule. Nothing is lost: the finding that
 * is left has all of them as its `parts` and the gravest of their levels.
 */

import { firstIndex } from "../../../../grammar/src/binary-search.ts";
import { lowerFirst, t } from "../../../../grammar/src/translate.ts";
import type { Span } from "../../../../grammar/src/tree.ts";
import {
  byGravity,
  type Finding,
  type FindingPart,
  type GroupPart,
  gravest,
  type RelatedPlace,
} from "../findings.ts";
import { onceFor, onceForList, onFirstUse } from "../once.ts";
import { type Place, placeKey, placesOverlap } from "../place.ts";
import { sentence, withoutFullStop } from "../sentence.ts";
import { FINDING_GROUPS } from "./finding-groups.ts";
import { withSuppliedAir } from "./isocyanate-mask.ts";
import { withLeadMasks } from "./lead-mask.ts";
import { cautionedOnce } from "./lead-told-once.ts";
import { whereText } from "./texts.ts";
import { toldWholeOnce } from "./told-whole-once.ts";

/** `secondaryTo` says which rules the findings of a rule are secondary to. */
export const groupFindings = (
  findings: readonly Finding[],
  secondaryTo: (rule: string) => readonly string[],
): readonly Finding[] =>
  besideReplaced(
    toldWholeOnce(
      underPrimaries(toldTogether(cautionedOnce(withLeadMasks(withSuppliedAir(findings)))), secondaryTo),
    ),
  );

// ---------------------------------------------------------------------------------------------------------------
// Groups

/** Each group stands where its first part stood in the list. */
function toldTogether(findings: readonly Finding[]): readonly Finding[] {
  const everyJobs = namesOfEveryJob(findings);
  const groups = new Map<unknown, Finding[]>();
  for (const finding of findings) {
    const key = groupKey(finding, everyJobs) ?? finding;
    const group = groups.get(key);
    if (group) group.push(finding);
    else groups.set(key, [finding]);
  }
  return [...groups.values()].map((group) => (group.length === 1 ? group[0]! : toldAsOneAgain(group)));
}

/** What is the matter in every job, by the group that it is told in. */
function namesOfEveryJob(findings: readonly Finding[]): ReadonlyMap<string, ReadonlySet<string>> {
  const names = new Map<string, Set<string>>();
  for (const { part, place, job } of findings) {
    const key = part && job === undefined ? keyOf(part, place, "") : undefined;
    if (key === undefined) continue;
    const known = names.get(key) ?? new Set();
    for (const name of part!.names) known.add(name);
    names.set(key, known);
  }
  return names;
}

function groupKey(
  { part, place, job = "" }: Finding,
  everyJobs: ReadonlyMap<string, ReadonlySet<string>>,
): string | undefined {
  if (!part) return undefined;
  const joined = part.joinsEveryJob ? keyOf(part, place, "") : undefined;
  const isJoined = joined !== undefined && part.names.some((name) => everyJobs.get(joined)?.has(name));
  return isJoined ? joined : keyOf(part, place, job);
}

/** One recipe is one group; on a line that leads to a recipe of another file, that line. Or a whole job is one. */
function keyOf({ group }: GroupPart, place: Place, job: string): string | undefined {
  const row = FINDING_GROUPS[group];
  if (row === undefined) return undefined;
  if (row.across === "job") return [group, place.file, job].join("\u0000");
  const line = place.declaration.startsWith("recipe ") ? "" : `${place.span.start}`;
  return [group, place.file, place.declaration, line, job].join("\u0000");
}

/** The same again for the same findings, so that what is made of it may be kept as well. */
const toldAsOneAgain = onceForList((group: readonly Finding[]) => toldAsOne(group));

/** At the place of the gravest, of those the first; its related places are those of all parts. */
function toldAsOne(group: readonly Finding[]): Finding {
  const sorted = inOrder(group);
  const first = sorted[0]!;
  const { text, fixes, elsewhere } = FINDING_GROUPS[first.part!.group]!;
  const places = byLine(sorted.filter(({ place }) => !placesOverlap(place, first.place))).map(
    (parts): RelatedPlace => ({ place: parts[0]!.place, message: elsewhere(parts) }),
  );
  const { part: _, brief: __, again: ___, job, where, surfaces, ...rest } = first;
  return {
    ...rest,
    ...(sorted.every((each) => each.job === job) ? whose(job, sorted) : {}),
    ...text(sorted),
    related: distinct([...places, ...sorted.flatMap(({ related }) => related)]),
    fixes: fixes(sorted),
    parts: sorted.map(partOf),
  };
}

/**
 * The gravest first, then a danger that is there before duties that are only missing, then as they are found:
 * declarations in the order in which the work comes to them.
 */
function inOrder(group: readonly Finding[]): readonly Finding[] {
  const declarations = [...new Set(group.map(({ place }) => place.declaration))];
  const order = ({ place }: Finding): number => declarations.indexOf(place.declaration);
  return [...group].sort(
    (a, b) =>
      byGravity(a, b) ||
      Number(b.part!.joinsEveryJob ?? false) - Number(a.part!.joinsEveryJob ?? false) ||
      order(a) - order(b) ||
      a.place.span.start - b.place.span.start ||
      (a.rule < b.rule ? -1 : 1),
  );
}

function byLine(parts: readonly Finding[]): readonly (readonly Finding[])[] {
  const lines: Finding[][] = [];
  for (const part of parts) {
    const line = lines.find(([known]) => placesOverlap(known!.place, part.place));
    if (line) line.push(part);
    else lines.push([part]);
  }
  return lines;
}

/** The job that all parts are of, with all its surfaces that they name; nothing where they hold in every job. */
function whose(
  job: string | undefined,
  parts: readonly Finding[],
): Pick<Finding, "job" | "where" | "surfaces"> {
  if (job === undefined) return {};
  const surfaces = [...new Set(parts.flatMap((part) => part.surfaces ?? []))];
  return { job, where: whereText(job, surfaces), ...(surfaces.length > 0 ? { surfaces } : {}) };
}

const partOf = ({ rule, severity, place, headline }: Finding): FindingPart => ({
  rule,
  severity,
  place,
  headline,
});

const distinct = (places: readonly RelatedPlace[]): readonly RelatedPlace[] => [
  ...new Map(places.map((each) => [`${placeKey(each.place)}\u0000${each.message}`, each])).values(),
];

// ---------------------------------------------------------------------------------------------------------------
// Consequences

function underPrimaries(
  findings: readonly Finding[],
  secondaryTo: (rule: string) => readonly string[],
): readonly Finding[] {
  const search = searchIn(findings);
  const primaryOf = new Map<Finding, Finding>();
  for (const finding of findings) {
    const primaries = secondaryTo(finding.rule);
    const primary =
      primaries.length === 0
        ? undefined
        : search(finding, (each) => each !== finding && isOf(each, primaries) && isOneMatter(each, finding));
    if (primary) primaryOf.set(finding, primary);
  }
  if (primaryOf.size === 0) return findings;
  const consequences = new Map<Finding, Finding[]>();
  for (const finding of primaryOf.keys()) {
    const root = rootOf(finding, primaryOf);
    if (root !== finding) consequences.set(root, [...(consequences.get(root) ?? []), finding]);
  }
  const told = new Set([...consequences.values()].flat());
  return findings
    .filter((finding) => !told.has(finding))
    .map((finding) => withConsequencesAgain([finding, ...(consequences.get(finding) ?? [])]));
}

/** The first of the findings that overlap one in its declaration, or are of its cause, of which something holds. */
function searchIn(
  findings: readonly Finding[],
): (near: Finding, isMeant: (finding: Finding) => boolean) => Finding | undefined {
  const isAt = (index: number, isMeant: (finding: Finding) => boolean): boolean => isMeant(findings[index]!);
  const known = onFirstUse(() => ({ ofCause: byCause(findings), inDeclaration: byDeclaration(findings) }));
  return (near, isMeant) => {
    const { ofCause, inDeclaration } = known();
    let first = findings.length;
    for (const cause of near.causes ?? []) {
      const index = ofCause.get(cause)?.find((each) => isAt(each, isMeant));
      if (index !== undefined) first = Math.min(first, index);
    }
    for (const index of overlapping(inDeclaration.get(declarationKey(near.place)) ?? [], near.place.span))
      if (index < first && isAt(index, isMeant)) first = index;
    return findings[first];
  };
}

const declarationKey = ({ file, declaration }: Place): string => `${file}\u0000${declaration}`;

function byCause(findings: readonly Finding[]): ReadonlyMap<string, readonly number[]> {
  const indices = new Map<string, number[]>();
  for (const [index, { causes = [] }] of findings.entries()) {
    for (const cause of causes) {
      const ofCause = indices.get(cause);
      if (ofCause) ofCause.push(index);
      else indices.set(cause, [index]);
    }
  }
  return indices;
}

/** A finding of a declaration; `furthest` is where the last of those that begin no later than it ends. */
interface Spanned {
  readonly index: number;
  readonly start: number;
  readonly end: number;
  readonly furthest: number;
}

function byDeclaration(findings: readonly Finding[]): ReadonlyMap<string, readonly Spanned[]> {
  const indices = new Map<string, number[]>();
  for (const [index, { place }] of findings.entries()) {
    const key = declarationKey(place);
    const inIt = indices.get(key);
    if (inIt) inIt.push(index);
    else indices.set(key, [index]);
  }
  return new Map(
    [...indices].map(([key, inIt]) => {
      let furthest = -1;
      const spans = inIt
        .map((index) => ({ index, ...findings[index]!.place.span }))
        .sort((a, b) => a.start - b.start)
        .map(({ index, start, end }): Spanned => {
          furthest = Math.max(furthest, end);
          return { index, start, end, furthest };
        });
      return [key, spans];
    }),
  );
}

/** The indices of those that overlap or touch a span, looked for backwards from the last that begins before its end. */
function* overlapping(sorted: readonly Spanned[], { start, end }: Span): Iterable<number> {
  const after = firstIndex(sorted, (each) => each.start > end);
  for (let at = after - 1; at >= 0 && sorted[at]!.furthest >= start; at -= 1)
    if (sorted[at]!.end >= start) yield sorted[at]!.index;
}

const rulesOf = ({ rule, parts }: Finding): readonly string[] => parts?.map((part) => part.rule) ?? [rule];

const isOf = (finding: Finding, rules: readonly string[]): boolean =>
  rulesOf(finding).some((rule) => rules.includes(rule));

/** Of one cause where both name theirs, else on one line. */
const isOneMatter = (a: Finding, b: Finding): boolean =>
  a.causes !== undefined && b.causes !== undefined
    ? a.causes.some((cause) => b.causes!.includes(cause)) && a.place.file === b.place.file
    : placesOverlap(a.place, b.place);

/** The end of the way from secondary to primary; where rules go round, the finding itself. */
function rootOf(finding: Finding, primaryOf: ReadonlyMap<Finding, Finding>): Finding {
  const seen = new Set<Finding>([finding]);
  let root = finding;
  for (let next = primaryOf.get(root); next !== undefined; next = primaryOf.get(root)) {
    if (seen.has(next)) return finding;
    seen.add(next);
    root = next;
  }
  return root;
}

/**
 * The same findings, of which those that would keep a material say only what holds for another, where another finding on the
 * line has it replaced. What is dangerous with the material is told whole, after that advice.
 */
function besideReplaced(findings: readonly Finding[]): readonly Finding[] {
  const replacing = findings.filter(({ replaces }) => replaces);
  if (replacing.length === 0) return findings;
  return findings.map((finding) => {
    const change =
      finding.ifReplaced === undefined
        ? rulesOf(finding).includes("ignition-near-flammable") && ifKept
        : forAnother;
    return change && replacing.some((each) => each !== finding && placesOverlap(each.place, finding.place))
      ? change(finding)
      : finding;
  });
}

const ifKept = onceFor(
  (finding: Finding): Finding => ({
    ...finding,
    remedy: t`Best use another material here, as another finding on this line says. If you keep it: ${lowerFirst(finding.remedy)}`,
  }),
);

const forAnother = onceFor(
  (finding: Finding): Finding => ({ ...finding, remedy: `${sentence(finding.ifReplaced!)}.`, fixes: [] }),
);

const withConsequencesAgain = onceForList(([finding, ...consequences]: readonly Finding[]) =>
  withConsequences(finding!, consequences),
);

/** What follows is told in one line, with what to do about it. */
function consequenceText(
  { headline, remedy, brief, caution, ifReplaced }: Finding,
  primary: Finding,
): string {
  // How to keep a material is not said beside the advice to take another.
  if (primary.replaces && ifReplaced !== undefined) return ifReplaced;
  // A caution that a remedy begins with is never left out.
  const text = caution ? remedy : (brief ?? remedy);
  const steps = text.match(/`(?:step|safety) [^`]*`/gu) ?? [];
  // What the finding above has in its own order is not said again in another.
  const isSaid = steps.length > 0 && steps.every((step) => primary.remedy.includes(step));
  if (isSaid) return t`${headline}: the steps above do it`;
  return text === "" ? headline : `${headline}. ${withoutFullStop(text)}`;
}

/** "Also: `gel_stain` may come out blotchy on bare pine. Try the colour on an offcut." */
const alsoLines = (finding: Finding, consequences: readonly Finding[]): readonly string[] => [
  ...new Set(
    consequences
      .filter(({ brief }) => brief !== "")
      .map((each) => t`Also: ${consequenceText(each, finding)}.`),
  ),
];

function withConsequences(finding: Finding, consequences: readonly Finding[]): Finding {
  if (consequences.length === 0) return finding;
  const also = alsoLines(finding, consequences);
  const elsewhere = consequences.filter(({ place }) => !placesOverlap(place, finding.place));
  return {
    ...finding,
    ...(also.length > 0 ? { also } : {}),
    severity: gravest([finding.severity, ...consequences.map(({ severity }) => severity)]),
    related: [
      ...finding.related,
      ...elsewhere.map(({ place, headline }): RelatedPlace => ({ place, message: headline })),
    ],
    parts: [
      ...(finding.parts ?? [partOf(finding)]),
      ...consequences.flatMap((each) => each.parts ?? [partOf(each)]),
    ],
  };
}
