/**
 * The air of a job's shop that is not fit for what is put on there: too cold, warm or damp by the labels, or near its dew
 * point. It is one room, so it is one finding, whatever the number of coats.
 */
import { condensation } from "../air/condensation.ts";
import type { AirNeed, Finding } from "../findings.ts";
import { degreesText, humidityText } from "../measure/figures.ts";
import { andList } from "../model/suggest.ts";
import { placeKey } from "../place.ts";
import { sentence } from "../sentence.ts";
import type { FindingGroup } from "./finding-group.ts";
import { fitting } from "./texts.ts";

export const BAD_AIR = "bad-air";

/** What is the matter with the air, in the order in which it is told. */
const KINDS = ["too cold", "too warm", "too damp", "near its dew point"] as const;
export type AirKind = (typeof KINDS)[number];

/** What findings on the air of a job have in common as their cause. */
export const airOf = (job: string | undefined): string => `air of job ${job ?? ""}`;

export const outsideLimits = (kinds: readonly string[]): string =>
  `Outside its limits a film clouds, stays soft or does not form${kinds.includes("too warm") ? "; in the heat it dries before it has flowed" : ""}.`;

/** A room to work in where the shop's own air and heater will not do. */
export const elsewhereWarm = (figures?: string): string =>
  `Take the work to a warm, aired room${figures ? ` (${figures})` : ""} without flame, spark or glowing heater, until the film is dry and the vapour gone`;

/**
 * What makes the air fit for the coats, as an imperative with figures that pass every test of the finding: the limits of all
 * that goes on, and the distance from the dew point.
 */
export function airRemedy(kinds: readonly string[], needs: readonly AirNeed[]): string {
  const isNearDew = kinds.includes("near its dew point");
  const isCold = kinds.includes("too cold");
  const fit = fitAir(kinds, needs);
  const stand = isNearDew ? " Let the piece stand in it first until it is as warm as the room." : "";
  const cold = isCold ? " No wait makes up for the cold." : "";
  if (isCold && needs.some(({ ignition }) => ignition)) return `${elsewhereWarm(fit)}.${stand}${cold}`;
  const acts = [
    ...(isCold ? ["warm the room"] : []),
    ...(kinds.includes("too warm") ? ["cool the room"] : []),
    ...(kinds.includes("too damp") || isNearDew ? ["dry its air"] : []),
  ];
  const keep = " and keep it so until the film is dry";
  const or = kinds.length === 1 && isNearDew ? "" : ", or choose a material for this air";
  const flames = isCold
    ? " Warm it before you open a can, and then let no flame or glowing heater run near the vapour."
    : "";
  return `${sentence(andList(acts))} to ${fit},${keep}${or}.${stand}${cold}${flames}`;
}

/** "10 C or more and 80 % RH or less" */
function fitAir(kinds: readonly string[], needs: readonly AirNeed[]): string {
  const air = needs[0]!.air;
  const low = Math.max(...needs.map(({ limits }) => limits?.low ?? Number.NEGATIVE_INFINITY));
  const high = Math.min(...needs.map(({ limits }) => limits?.high ?? Number.POSITIVE_INFINITY));
  const isCold = kinds.includes("too cold");
  const isWarm = kinds.includes("too warm");
  const isDamp = kinds.includes("too damp") || kinds.includes("near its dew point");
  // The distance from the dew point grows with warmth, so what passes at the coldest passes above it too.
  const coldest = isCold ? low : isWarm ? Math.max(low, COLDEST_ROOM_C) : air.temperature;
  return [
    ...(isCold ? [`${degreesText(low)} or more`] : []),
    ...(isWarm ? [`${degreesText(high)} or less`] : []),
    ...(isDamp || (isWarm && air.humidity !== undefined)
      ? [`${humidityText(dryEnough(coldest, needs))} or less`]
      : []),
  ].join(" and ");
}

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

/** "9 C in `porch`, where 10 C or more are asked for by `gel_stain` and `paint`." */
function reasonLines(parts: readonly Finding[]): readonly string[] {
  const byReason = new Map<string, string[]>();
  for (const { part } of parts) {
    const { reason, who } = part!;
    const known = byReason.get(reason) ?? [];
    byReason.set(reason, who === undefined || known.includes(who) ? known : [...known, who]);
  }
  return [...byReason].map(([reason, who]) =>
    who.length > 0 ? `${reason} by ${andList(who)}.` : `${reason}.`,
  );
}

export const badAirGroup: FindingGroup = {
  across: "job",
  text: (parts) => {
    const kinds = kindsOf(parts);
    const what = `The shop's air is ${andList(kinds)}`;
    const layers = new Set(parts.map(({ place }) => placeKey(place))).size;
    return {
      headline: fitting([...(layers > 1 ? [`${what} for ${layers} layers`] : []), what]),
      why: [
        ...reasonLines(parts),
        ...(kinds.includes("near its dew point") && !kinds.includes("too warm")
          ? []
          : [outsideLimits(kinds)]),
      ].join("\n"),
      remedy: airRemedy(
        kinds,
        parts.flatMap(({ part }) => part!.air ?? []),
      ),
    };
  },
  elsewhere: (parts) => sentence(`${andList(kindsOf(parts))} here as well`),
  fixes: () => [],
};
