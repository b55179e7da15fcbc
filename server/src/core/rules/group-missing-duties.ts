/**
 * Safety duties that one recipe does not state, told together; and with a missing `no_ignition` the shop's own flame or
 * heater, which can light the vapour: that is one fire, not two.
 */
import { lookUp } from "../../../../grammar/src/look-up.ts";
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
    return `${andList(duties)} ${duties.length === 1 ? "is" : "are"} not stated here`;
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
      ? " (`ignition none` is what the room is, `no_ignition` that you bring no flame, spark or cigarette)"
      : "";
  const codes = beside ? "" : "; labels, safety data sheets and local codes come first";
  return [
    ...(beside === "again"
      ? acts.map(() => "Lay its oily rags in water as well.")
      : acts.map((duty) => dutyByWord(duty)!.doc)),
    `${beside === "again" ? "See to the rest as there, and state" : "Then state so"} at the top of the recipe${beside ? " that then has this line" : ""}: \`safety ${duties.join(", ")}\`${both}${codes}.`,
  ];
}

/** What is missing, for a headline with room for a word each. */
const LACKS: Readonly<Partial<Record<DutyWord, string>>> = {
  gloves: "no gloves",
  ventilate: "no fresh air",
  dust_mask: "no dust mask",
  eye_protection: "no goggles",
};

/** The editor's list shows no more than this: rags, which burn when nobody is there, are never left out of it. */
function headlineWithDanger({ headline, part }: Finding, duties: readonly DutyWord[]): string {
  if (duties.length === 0) return headline;
  const count = duties.filter((duty) => duty !== "wet_rags" && duty !== "no_ignition").length;
  const others = duties.flatMap((duty) => lookUp(LACKS, duty) ?? []);
  if (duties.includes("wet_rags"))
    return fitting(
      [
        ...(others.length === count ? [`; ${others.join(", ")}`] : []),
        `; ${count} more ${count === 1 ? "duty" : "duties"}`,
      ].flatMap((more) =>
        ["; oily rags can catch fire", "; rags can catch fire", "; rags can burn"].flatMap((rags) =>
          [headline, part!.briefly ?? headline].map((each) => `${each}${rags}${count === 0 ? "" : more}`),
        ),
      ),
    );
  const [noun, verb] = duties.length === 1 ? ["duty", "is"] : ["duties", "are"];
  return fitting([
    ...(duties.length === 1 ? [`${headline}; \`${duties[0]}\` is not stated`] : []),
    `${headline}; ${duties.length} safety ${noun} ${verb} not stated`,
    `${headline}; ${duties.length} ${noun} ${verb} not stated`,
    headline,
  ]);
}

/** Rags first, which burn when nobody is there; else all of them where they fit on the line, else the gravest. */
const missingHeadline = (duties: readonly DutyWord[]): string =>
  fitting([
    ...(duties.length === 1 ? [notStated(duties[0]!)] : []),
    ...(duties.includes("wet_rags")
      ? [`${dutyByWord("wet_rags")!.danger}; ${moreDuties(duties.length - 1)} not stated`]
      : []),
    `${duties.length} safety duties are not stated: ${duties.map((duty) => `\`${duty}\``).join(", ")}`,
    `\`${duties[0]}\` and ${duties.length - 1} more safety duties are not stated`,
  ]);

const moreDuties = (count: number): string => (count === 1 ? "1 more duty is" : `${count} more duties are`);

/** A flame or heater is told with its job, since another job's shop may have none. */
const dangerReason = ({ part, job }: Finding): string =>
  `${part!.reason}${job === undefined ? "" : ` (job \`${job}\`)`}.`;

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
