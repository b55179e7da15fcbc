/**
 * What may light a vapour in the shop: the words of a shop's `ignition` line.
 *
 * A source of ignition matters for a liquid of category 1 to 3 of 29 CFR 1910.106(a)(19), whose vapour can be lit at
 * the air of a shop. The distance that is enough is for the safety data sheet and local codes to say, not for a table.
 */
import { flammableCategory } from "./flammable.ts";
import { BY_DEFINITION, OSHA_FLAMMABLE } from "./sources.ts";

export type IgnitionWord = "none" | "pilot light" | "heater" | "welding";

export interface IgnitionSource {
  readonly word: IgnitionWord;
  readonly doc: string;
  /** How it is put out, as an imperative; empty where nothing is there to put out. */
  readonly putOut: string;
  /** Whether it can light a vapour at all. */
  readonly lights: boolean;
  readonly source: string;
}

const SPRAY_FLAMES =
  "29 CFR 1910.107(c)(2) on open flames and sparks near spraying, from memory, confidence medium";

export const IGNITION_SOURCES: readonly IgnitionSource[] = [
  {
    word: "none",
    doc: "No flame, spark or glowing element in the room or where its air goes.",
    putOut: "",
    lights: false,
    source: BY_DEFINITION,
  },
  {
    word: "pilot light",
    doc: "A standing flame, as of a boiler or a water heater; vapour creeps along the floor to it.",
    putOut: "Shut the gas off at its valve, let the appliance cool and air the room",
    lights: true,
    source: SPRAY_FLAMES,
  },
  {
    word: "heater",
    doc: "A stove or an electric heater with a glowing element.",
    putOut: "Switch the heater off and let it cool",
    lights: true,
    source: SPRAY_FLAMES,
  },
  {
    word: "welding",
    doc: "Welding, grinding or cutting that throws sparks.",
    putOut: "Stop all welding and grinding",
    lights: true,
    source: "29 CFR 1910.252(a) on hot work, from memory, confidence medium",
  },
];

export const IGNITION_RULE_SOURCE = `${OSHA_FLAMMABLE}: flammable liquids of category 1 to 3`;

export function ignitionSource(word: string): IgnitionSource | undefined {
  return IGNITION_SOURCES.find((source) => source.word === word);
}

/** Whether this source can light the vapour of a liquid with this flash point and boiling point, °C. */
export function canLight(word: string, flashC: number | undefined, boilsC?: number): boolean {
  const category = flammableCategory(flashC, boilsC);
  return (ignitionSource(word)?.lights ?? false) && category !== undefined && category <= 3;
}
