/**
 * Fill colours for drawings, `#rrggbb`. A colour number of the text is taken as it is; a word becomes a colour that
 * shows what is meant and no more. Every fill is drawn with an outline, so nothing hangs on telling two of them apart.
 */
import type { Family } from "../../core/knowledge/family-schema.ts";
import { woodByName } from "../../core/knowledge/woods.ts";
import type { Material, Substrate } from "../../core/model/model.ts";

/** The first word of the table that a name holds decides, so what is narrower stands above. */
type Fills = readonly (readonly [word: string, fill: string])[];

const WOOD_FILLS: Fills = [
  ["dark reddish", "#7a4630"],
  ["pale reddish", "#d7ab80"],
  ["pinkish", "#cfa27c"],
  ["dark brown", "#6b4a33"],
  ["greyish", "#8a705a"],
  ["golden", "#b98a4e"],
  ["reddish", "#a9683f"],
  ["orange", "#b4632f"],
  ["pale brown", "#c9a473"],
  ["light brown", "#b98f60"],
  ["pale cream", "#ead9b4"],
  ["cream", "#e6d2a6"],
  ["white", "#efe6d2"],
  ["brown", "#a07a50"],
];

const PAINT_FILLS: Fills = [
  ["white", "#f1f0ea"],
  ["ivory", "#efe8d0"],
  ["cream", "#eee3c2"],
  ["black", "#26262a"],
  ["ebony", "#2b2623"],
  ["charcoal", "#3c4043"],
  ["anthracite", "#3a3f44"],
  ["navy", "#22304f"],
  ["red", "#a8382c"],
  ["orange", "#c9702e"],
  ["yellow", "#d9b545"],
  ["green", "#5d7d59"],
  ["blue", "#4a6a8c"],
  ["grey", "#8b8f92"],
  ["gray", "#8b8f92"],
  ["walnut", "#5b3a24"],
  ["mahogany", "#6d3325"],
  ["oak", "#a87b48"],
  ["brown", "#6f4a2d"],
  ["amber", "#d9b26a"],
];

const CLEAR = "#e6e1d3";
const AMBER_CLEAR = "#e0c58f";
const STAIN = "#8a5a34";
const PAINT = "#b9b7ae";
const PRIMER = "#d8d6cc";
const UNKNOWN_WOOD = "#cdb591";
const BOARD = "#c2a57c";
const SLICK = "#d9d9d4";
const METAL = "#aeb3b7";

export function woodFill(substrate: Substrate | undefined): string {
  switch (substrate?.kind) {
    case "plywood":
    case "MDF":
    case "particleboard":
      return BOARD;
    case "laminate":
      return SLICK;
    case "metal":
      return METAL;
    case "species":
      return fillOf(WOOD_FILLS, woodByName(substrate.name)?.colours[0] ?? "") ?? UNKNOWN_WOOD;
    default:
      return UNKNOWN_WOOD;
  }
}

/** `unknown` is what an old coat of no known family is. */
export function coatFill(
  material: Material | undefined,
  family: Family | undefined,
  unknown?: "clear" | "paint",
): string {
  const colour = material?.colour?.value.trim().toLowerCase() ?? "";
  const digits = /^#([0-9a-f]{3}|[0-9a-f]{6})$/u.exec(colour)?.[1];
  if (digits) return `#${digits.length === 3 ? digits.replace(/./gu, "$&$&") : digits}`;
  const isSeen = family === undefined ? unknown === "paint" : COLOURED.has(family.role);
  if (!isSeen) return colour === "amber" || family?.ambering ? AMBER_CLEAR : CLEAR;
  const named = fillOf(PAINT_FILLS, `${colour} ${(material?.title ?? "").toLowerCase()}`);
  return named ?? (family?.role === "primer" ? PRIMER : family && family.role !== "paint" ? STAIN : PAINT);
}

const COLOURED: ReadonlySet<Family["role"]> = new Set(["paint", "primer", "stain", "glaze"]);

/** Whole words alone, so that `coloured` is not red. */
const fillOf = (fills: Fills, text: string): string | undefined =>
  fills.find(([word]) => ` ${text.replace(/[^\p{L}]+/gu, " ")} `.includes(` ${word} `))?.[1];
