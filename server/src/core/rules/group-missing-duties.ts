/**
 * Safety duties that one recipe does not state, told together; and with a missing `no_ignition` the shop's own flame or
 * heater, which can light the vapour: that is one fire, not two.
 */

import { lookUp } from "../../../../grammar/src/look-up.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Finding } from "../findings.ts";
import { type DutyWord, dutyByWord } from "../knowledge/duties.ts";
import { andList } from "../model/suggest.ts";
import type { FindingGroup } from "./finding-group.ts";
import { fitting, notStated, undertakeDuties } from "./texts.ts";

export const MISSING_DUTIES = "missing-duties";

const isDanger = ({ part }: Finding): boolean => part!.joinsEveryJob === true;

const dutiesOf = (parts: readonly Finding[]): readonly DutyWord[] => [
  ...new Set(parts.filter((each) => !isDanger(each)).flatMap(({ part }) => part!.names as DutyWord[])),
];

export const missingDutiesGroup: FindingGroup = {
  across: "recipe",
  text: (parts) => {
    const duties = dutiesOf(parts);
    const dangers = parts.filter(isDanger);
    const danger = dangers[0];
    const acts = dutyRemedy(duties, danger ? "danger" : undefined);
    return {
      headline: danger ? headlineWithDanger(danger, duties) : missingHeadline(duties),
      why: [...new Set([...dangers.map(dangerReason), ...dutyReasons(parts)])].join("\n"),
      remedy: [...(danger ? [danger.remedy] : []), ...acts].join(" "),
      ...(danger?.tellsRoom === undefined ? {} : { tellsRoom: danger.tellsRoom }),
      ...(danger?.again
        ? {
            again: {
              ...danger.again,
              remedy: [danger.again.remedy, ...dutyRemedy(duties, "again")].join(" "),
              why: [danger.again.why ?? danger.why, ...dutyReasons(parts)].join("\n"),
            },
          }
        : {}),
    };
  },
  elsewhere: (parts) => {
    const duties = dutiesOf(parts).map((duty) => `\`${duty}\``);
    if (duties.length === 0) return parts[0]!.headline;
    return duties.length === 1
      ? t`${andList(duties)} is not stated here`
      : t`${andList(duties)} are not stated here`;
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
      ? [undertakeDuties(first, dutiesOf(parts))]
      : parts.flatMap(({ fixes }) => fixes);
  },
};

/**
 * What to do for each duty, in its own words: rags first, which burn when nobody is there. What keeps fire away is said by
 * the danger itself where there is one; told again, only the rags are.
 */
function dutyRemedy(duties: readonly DutyWord[], beside?: "danger" | "again"): readonly string[] {
  if (duties.length === 0) return [];
  const ordered = [...duties].sort((a, b) => Number(b === "wet_rags") - Number(a === "wet_rags"));
  const acts = ordered.filter((duty) =>
    beside === "again" ? duty === "wet_rags" : !(beside && duty === "no_ignition"),
  );
  const both =
    beside === "danger" && duties.includes("no_ignition")
      ? t` (\`ignition none\` is what the room is, \`no_ignition\` that you bring no flame, spark or cigarette)`
      : "";
  const codes = beside ? "" : t`; labels, safety data sheets and local codes come first`;
  return [
    ...(beside === "again"
      ? acts.map(() => t`Lay its oily rags in water as well.`)
      : acts.map((duty) => translated(dutyByWord(duty)!.doc))),
    `${statedWhere(`safety ${duties.join(", ")}`, beside)}${both}${codes}.`,
  ];
}

function statedWhere(line: string, beside?: "danger" | "again"): string {
  if (beside === "again")
    return t`See to the rest as there, and state at the top of the recipe that then has this line: \`${line}\``;
  return beside
    ? t`Then state so at the top of the recipe that then has this line: \`${line}\``
    : t`Then state so at the top of the recipe: \`${line}\``;
}

/** What is missing, for a headline with room for a word each. */
const LACKS: Readonly<Partial<Record<DutyWord, () => string>>> = {
  gloves: () => t`no gloves`,
  ventilate: () => t`no fresh air`,
  dust_mask: () => t`no dust mask`,
  eye_protection: () => t`no goggles`,
};

/** The editor's list shows no more than this: rags, which burn when nobody is there, are never left out of it. */
function headlineWithDanger({ headline, part }: Finding, duties: readonly DutyWord[]): string {
  if (duties.length === 0) return headline;
  const count = duties.filter((duty) => duty !== "wet_rags" && duty !== "no_ignition").length;
  const others = duties.flatMap((duty) => lookUp(LACKS, duty)?.() ?? []);
  if (duties.includes("wet_rags"))
    return fitting(
      [
        ...(others.length === count ? [`; ${others.join(", ")}`] : []),
        count === 1 ? t`; ${count} more duty` : t`; ${count} more duties`,
      ].flatMap((more) =>
        [t`; oily rags can catch fire`, t`; rags can catch fire`, t`; rags can burn`].flatMap((rags) =>
          [headline, part!.briefly ?? headline].map((each) => `${each}${rags}${count === 0 ? "" : more}`),
        ),
      ),
    );
  return fitting([
    ...(duties.length === 1
      ? [
          t`${headline}; \`${duties[0]!}\` is not stated`,
          t`${headline}; 1 safety duty is not stated`,
          t`${headline}; 1 duty is not stated`,
        ]
      : [
          t`${headline}; ${duties.length} safety duties are not stated`,
          t`${headline}; ${duties.length} duties are not stated`,
        ]),
    headline,
  ]);
}

/** Rags first, which burn when nobody is there; else all of them where they fit on the line, else the gravest. */
const missingHeadline = (duties: readonly DutyWord[]): string =>
  fitting([
    ...(duties.length === 1 ? [notStated(duties[0]!)] : []),
    ...(duties.includes("wet_rags")
      ? [moreDuties(translated(dutyByWord("wet_rags")!.danger), duties.length - 1)]
      : []),
    t`${duties.length} safety duties are not stated: ${duties.map((duty) => `\`${duty}\``).join(", ")}`,
    t`\`${duties[0]!}\` and ${duties.length - 1} more safety duties are not stated`,
  ]);

const moreDuties = (danger: string, count: number): string =>
  count === 1 ? t`${danger}; 1 more duty is not stated` : t`${danger}; ${count} more duties are not stated`;

/** A flame or heater is told with its job, since another job's shop may have none. */
const dangerReason = ({ part, job }: Finding): string =>
  `${part!.reason}${job === undefined ? "" : t` (job \`${job}\`)`}.`;

/**
 * "`gel_stain` leaves rags that can catch fire and harms the skin.": one sentence for each material or work. Where a danger
 * is told, it has said that the vapour can be lit.
 */
function dutyReasons(parts: readonly Finding[]): readonly string[] {
  const hasDanger = parts.some(isDanger);
  const byWho = new Map<string, Set<string>>();
  for (const { part } of parts.filter((each) => !isDanger(each))) {
    const { who = "", reason, names } = part!;
    if (hasDanger && names.includes("no_ignition")) continue;
    byWho.set(who, (byWho.get(who) ?? new Set<string>()).add(reason));
  }
  return [...byWho].map(([who, reasons]) => `${who} ${andList([...reasons])}.`);
}
