/**
 * The air of a job's shop that is not fit for what is put on there: too cold, warm or damp by the labels, or near its dew
 * point. It is one room, so it is one finding, whatever the number of coats.
 */
import type { Finding } from "../findings.ts";
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

/** What makes the air fit for the coats, as an imperative. */
export function airRemedy(kinds: readonly string[]): string {
  const isNearDew = kinds.includes("near its dew point");
  const isCold = kinds.includes("too cold");
  const acts = [
    ...(isCold || isNearDew ? ["warm the room"] : []),
    ...(kinds.includes("too warm") ? ["cool the room"] : []),
    ...(kinds.includes("too damp") || isNearDew ? ["dry its air"] : []),
  ];
  const isWithinLimits = kinds.length === 1 && isNearDew;
  const first = isWithinLimits ? acts.join(" or ") : `${andList(acts)} to within the limits`;
  const then = isNearDew
    ? "let the piece stand in it until it is as warm as the room"
    : "keep it so until the film is dry";
  const or = isWithinLimits ? "" : ", or choose a material for this air";
  const cold = isCold ? " No wait makes up for the cold." : "";
  const flames =
    isCold || isNearDew
      ? " Warm it before a can is opened, and then let no flame or glowing heater run near the vapour."
      : "";
  return `${first.charAt(0).toUpperCase()}${first.slice(1)}, and ${then}${or}.${cold}${flames}`;
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
        ...(kinds.some((kind) => kind !== "near its dew point") ? [outsideLimits(kinds)] : []),
      ].join("\n"),
      remedy: airRemedy(kinds),
    };
  },
  elsewhere: (parts) => sentence(`${andList(kindsOf(parts))} here as well`),
  fixes: () => [],
};
