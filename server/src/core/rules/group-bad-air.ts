/**
 * The air of a job's shop that is not fit for what is put on there: too cold, warm or damp by the labels, or near its dew
 * point. It is one room, so it is one finding, whatever the number of coats.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { condensation } from "../air/condensation.ts";
import type { AirNeed, Finding, FindingText } from "../findings.ts";
import { family } from "../knowledge/families.ts";
import type { FamilyName } from "../knowledge/family-names.ts";
import { humidityText } from "../measure/figures.ts";
import { figuresIn, type UnitSystem } from "../measure/shown-figures.ts";
import { andList } from "../model/suggest.ts";
import { placeKey } from "../place.ts";
import { sentence } from "../sentence.ts";
import type { FindingGroup } from "./finding-group.ts";
import { fitting } from "./texts.ts";

export const BAD_AIR = "bad-air";

/** What is the matter with the air, in the order in which it is told. */
export const KINDS = ["too cold", "too warm", "too damp", "near its dew point"] as const;
export type AirKind = (typeof KINDS)[number];

/** What findings on the air of a job have in common as their cause. */
export const airOf = (job: string | undefined): string => `air of job ${job ?? ""}`;

export const outsideLimits = (kinds: readonly string[]): string =>
  kinds.includes("too warm")
    ? t`Outside its limits a film clouds, stays soft or does not form; in the heat it dries before it has flowed.`
    : t`Outside its limits a film clouds, stays soft or does not form.`;

/**
 * Another room is another shop: new figures for the same room would make it neither warm nor safe. Work that frees lead must
 * not go along (40 CFR 745.85, by analogy: it is contained, and nobody lives there).
 */
export const asOtherShop = (freesLead: boolean): string =>
  freesLead
    ? t`. Never sand or strip there what may hold lead. Write that room as another \`shop\` with \`ignition none\`. Split the work: cleaning and sanding stay in this recipe and job; the coats get a recipe and a job of their own, \`in\` that shop and \`after\` this job`
    : t`. Write that room as another \`shop\` with \`ignition none\`, and name it in the job (\`in …\`)`;

/** Thermostats, switches and the motors of fans spark: 29 CFR 1910.106(e)(6)(i) (from memory, confidence high). */
export const safeRoom = (): string =>
  t`another room, aired by open windows, where nobody lives, sleeps or eats, and where nothing burns, glows or sparks (no electric heater or fan, and no switch used)`;

/**
 * A room to work in where the shop's own air and heater will not do; a finding on the heater may have said which, and with it
 * how to air it.
 */
function elsewhereWarm(figures: string, freesLead: boolean, isTold: boolean): string {
  const season = t`or coat in a warm, dry season with the heater gone`;
  return isTold
    ? t`Finish in a room without flame, glow or spark, as the finding on the heater says, at ${figures}, heated by hot-water radiators; ${season}`
    : t`Finish in ${safeRoom()}, at ${figures}, heated by hot-water radiators, and air it until nothing smells any more${asOtherShop(freesLead)}; ${season}`;
}

/**
 * "18 to 22 C", or what of it is within the limits: warmth to work in. A limit is where a film just forms, not what to aim
 * at; common practice, no source.
 */
export function workingWarmth(
  units: UnitSystem,
  low = Number.NEGATIVE_INFINITY,
  high = Number.POSITIVE_INFINITY,
): string {
  const from = Math.min(Math.max(18, low), high);
  const to = Math.min(Math.max(22, from + 2), high);
  return figuresIn(units).degreesBetween(from, to);
}

/** "40 to 60 % RH", or what of it is dry enough; common practice, no source. */
const workingHumidity = (most: number): string =>
  most <= 40 ? t`${humidityText(most)} or less` : t`40 to ${humidityText(Math.min(60, most))}`;

/**
 * What makes the air fit for the coats, as an imperative with figures that pass every test of the finding: the limits of all
 * that goes on, and the distance from the dew point.
 */
export function airRemedy(kinds: readonly string[], needs: readonly AirNeed[], isRoomTold = false): string {
  const isNearDew = kinds.includes("near its dew point");
  const isCold = kinds.includes("too cold");
  const fit = fitAir(kinds, needs);
  const isDampWood = needs.some(({ air }) => (air.humidity ?? 0) >= DAMP_WOOD_RH);
  const stand = isNearDew
    ? t` Bring the cleaned piece in before you coat it, until it is as warm as the room${isDampWood ? dryWood() : ""}.`
    : "";
  const cold = isCold ? t` In the cold no wait is long enough.` : "";
  const other = bearsThisAir(needs);
  const or = kinds.length === 1 && isNearDew ? "" : other;
  if (isCold && needs.some(({ ignition }) => ignition)) {
    const freesLead = needs.some(({ lead }) => lead);
    return `${elsewhereWarm(fit, freesLead, isRoomTold)}${or}.${stand}${cold}`;
  }
  const acts = [
    ...(isCold ? [t`warm the room`] : []),
    ...(kinds.includes("too warm") ? [t`cool the room`] : []),
    ...(kinds.includes("too damp") || isNearDew ? [t`dry its air`] : []),
  ];
  const flames = isCold
    ? t` Warm it before you open a can, and then let no flame or glowing heater run near the vapour.`
    : "";
  return t`${sentence(andList(acts))} to ${fit}, and keep it so until the film is dry${or}.${stand}${cold}${flames}`;
}

/**
 * Wood that stands in such air comes to 16 % moisture and more (Wood Handbook FPL-GTR-282, table 4-2; from memory, confidence high), in a heated room to 6
 * to 12 % (common practice, no source).
 */
const DAMP_WOOD_RH = 80;
const dryWood = (): string =>
  t` and its wood has 6 to 12 % moisture by a meter, which after a damp room may take weeks`;

/** What to do, and what of it is left where a finding on the shop's heater has told what other room. */
export function airAdvice(
  kinds: readonly string[],
  needs: readonly AirNeed[],
): Pick<FindingText, "remedy" | "inThatRoom"> {
  const shop = needs.find(({ ignition }) => ignition)?.shop;
  const remedy = airRemedy(kinds, needs);
  return kinds.includes("too cold") && shop !== undefined
    ? { remedy, inThatRoom: { shop, remedy: airRemedy(kinds, needs, true) } }
    : { remedy };
}

/** What is usual and bears the air as it is: families to choose from, none that the shop's heater can light. */
function bearsThisAir(needs: readonly AirNeed[]): string {
  const { temperature, humidity } = needs[0]!.air;
  if (humidity !== undefined && condensation({ temperature, humidity }).isNear) return "";
  const hasFlame = needs.some(({ ignition }) => ignition);
  const fit = COMMON.map(family).filter(({ limits, flash }) => {
    const { low = temperature, high = temperature, humidity: most = 100 } = limits ?? {};
    const isWithin = temperature >= low && temperature <= high && (humidity ?? 0) <= most;
    return isWithin && !(hasFlame && flash !== undefined);
  });
  return fit.length === 0 ? "" : t`, or use what bears this air, such as ${translated(fit[0]!.name)}`;
}

const COMMON = [
  "waterborne polyurethane",
  "oil varnish",
  "alkyd paint",
] as const satisfies readonly FamilyName[];

/**
 * "18 to 22 C and 40 to 60 % RH". The limits of the labels are told as the reason, so they are not told again here: the dampest
 * air that is far enough from its dew point is another figure than the label's, and only said where no label's is.
 */
function fitAir(kinds: readonly string[], needs: readonly AirNeed[]): string {
  const { air, units } = needs[0]!;
  const low = Math.max(...needs.map(({ limits }) => limits?.low ?? Number.NEGATIVE_INFINITY));
  const high = Math.min(...needs.map(({ limits }) => limits?.high ?? Number.POSITIVE_INFINITY));
  const isCold = kinds.includes("too cold");
  const isWarm = kinds.includes("too warm");
  const isDamp = kinds.includes("too damp") || kinds.includes("near its dew point");
  // The distance from the dew point grows with warmth, so what passes at the coldest passes above it too.
  const coldest = isCold ? low : isWarm ? Math.max(low, COLDEST_ROOM_C) : air.temperature;
  const told = isDamp || ((isWarm || isCold) && air.humidity !== undefined);
  const most = dryEnough(coldest, needs);
  const goals = [
    ...(isCold ? [workingWarmth(units, low, high)] : []),
    ...(isWarm ? [workingWarmth(units, low, Math.min(high, WARMEST_ROOM_C))] : []),
    ...(told ? [workingHumidity(most)] : []),
  ];
  const isNearDewAlone = kinds.includes("near its dew point") && !kinds.includes("too damp");
  return `${goals.reduce((all, goal) => t`${all} and ${goal}`)}${isNearDewAlone && most > 60 ? t` (at most ${humidityText(most)})` : ""}`;
}

/** Warmer than this a film dries before it has flowed, whatever the label allows: common practice, no source. */
const WARMEST_ROOM_C = 25;

/** Where no label says how cold a room may be. */
const COLDEST_ROOM_C = 10;

/** The dampest air in steps of 5 % that is within every limit and far enough from its dew point at a temperature. */
export function dryEnough(temperature: number, needs: readonly AirNeed[]): number {
  const most = Math.min(...needs.map(({ limits }) => limits?.humidity ?? 100));
  const steps = Array.from({ length: 19 }, (_, index) => 95 - 5 * index);
  const humidities = [...steps, most].filter((humidity) => humidity <= most).toSorted((a, b) => b - a);
  return humidities.find((humidity) => !condensation({ temperature, humidity }).isNear) ?? most;
}

const kindsOf = (parts: readonly Finding[]): readonly AirKind[] =>
  KINDS.filter((kind) => parts.some(({ part }) => part!.names.includes(kind)));

/** "`gel_stain` and `paint` need 10 C or more; `porch` has 9 C." */
function reasonLines(parts: readonly Finding[]): readonly string[] {
  const byReason = new Map<string, string[]>();
  for (const { part } of parts) {
    const { reason, who } = part!;
    const known = byReason.get(reason) ?? [];
    byReason.set(reason, who === undefined || known.includes(who) ? known : [...known, who]);
  }
  return [...byReason].map(([reason, who]) =>
    who.length === 0
      ? `${reason}.`
      : who.length === 1
        ? t`${andList(who)} needs ${reason}.`
        : t`${andList(who)} need ${reason}.`,
  );
}

export const badAirGroup: FindingGroup = {
  across: "job",
  text: (parts) => {
    const kinds = kindsOf(parts);
    const what = t`The shop's air is ${andList(kinds.map(translated))}`;
    const layers = new Set(parts.map(({ place }) => placeKey(place))).size;
    return {
      headline: fitting([...(layers > 1 ? [t`${what} for ${layers} layers`] : []), what]),
      why: [
        ...reasonLines(parts),
        ...(kinds.includes("near its dew point") && !kinds.includes("too warm")
          ? []
          : [outsideLimits(kinds)]),
      ].join("\n"),
      ...airAdvice(
        kinds,
        parts.flatMap(({ part }) => part!.air ?? []),
      ),
    };
  },
  elsewhere: () => t`Here as well`,
  fixes: () => [],
};
