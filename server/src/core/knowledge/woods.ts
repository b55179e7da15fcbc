/**
 * The woods, by the usual English trade names, and the other substrates of a surface.
 *
 * Which woods are tannin-rich, blotch or bleed is knowledge of the trade. Pores and filler
 * need follow the Wood Handbook where it lists the species. Densities are air-dry, kg/m3, and only rough.
 */
import { HANDBOOK_TABLE_16_1, MEMORY_HIGH, MEMORY_MEDIUM } from "./sources.ts";
import type { Wood } from "./wood-schema.ts";

export interface SheetSubstrate {
  readonly name: string;
  readonly kind: "plywood" | "MDF" | "particleboard" | "laminate" | "metal";
  /** Slick: a coat holds only after it is scuffed. */
  readonly needsScuff: boolean;
  /** Takes a penetrating stain. */
  readonly canBeStained: boolean;
  readonly note: string;
  readonly source: string;
}

/** Until about this year veneer was laid with hide glue, which water softens; history of cabinet making, from memory. */
export const HIDE_GLUE_UNTIL = 1950;

/** For the woods marked `bleeds`; the handbook speaks of redwood and the cedars, the trade of the others. */
export const EXTRACTIVES_SOURCE =
  "Wood Handbook FPL-GTR-190 chapter 16: water-soluble extractives discolour light paint; that teak, iroko, sapele, cypress, rosewood and cocobolo bleed, from memory, confidence medium";

type Flag = "rich" | "blotch" | "oily" | "knotty" | "filler" | "bleeds";

const HANDBOOK = `pores by ${HANDBOOK_TABLE_16_1}; the rest ${MEMORY_HIGH}`;

/** Woods by name, general names first within a genus. */
export const WOODS: readonly Wood[] = [
  wood("oak", "hardwood", "ring", "coarse", 710, ["pale brown"], ["rich", "filler"], HANDBOOK),
  wood("red oak", "hardwood", "ring", "coarse", 700, ["pinkish brown"], ["rich", "filler"], HANDBOOK),
  wood("white oak", "hardwood", "ring", "coarse", 760, ["pale brown"], ["rich", "filler"], HANDBOOK),
  wood("European oak", "hardwood", "ring", "coarse", 710, ["pale brown"], ["rich", "filler"], MEMORY_HIGH),
  wood("ash", "hardwood", "ring", "coarse", 670, ["pale cream", "pale brown"], ["filler"], HANDBOOK),
  wood("chestnut", "hardwood", "ring", "coarse", 480, ["pale brown"], ["rich", "filler"], HANDBOOK),
  wood("elm", "hardwood", "ring", "coarse", 560, ["light brown"], ["filler"], HANDBOOK),
  wood("hickory", "hardwood", "ring", "coarse", 810, ["cream", "reddish brown"], ["filler"], HANDBOOK),
  wood("pecan", "hardwood", "ring", "coarse", 740, ["cream", "reddish brown"], ["filler"], MEMORY_MEDIUM),
  wood("butternut", "hardwood", "semi-ring", "coarse", 430, ["light brown"], ["filler"], HANDBOOK),
  wood("walnut", "hardwood", "semi-ring", "coarse", 620, ["dark brown"], ["rich", "filler"], HANDBOOK),
  wood("black walnut", "hardwood", "semi-ring", "coarse", 620, ["dark brown"], ["rich", "filler"], HANDBOOK),
  wood(
    "European walnut",
    "hardwood",
    "semi-ring",
    "coarse",
    640,
    ["greyish brown"],
    ["rich", "filler"],
    MEMORY_MEDIUM,
  ),
  wood("cherry", "hardwood", "diffuse", "fine", 560, ["reddish brown"], ["rich", "blotch"], HANDBOOK),
  wood("black cherry", "hardwood", "diffuse", "fine", 560, ["reddish brown"], ["rich", "blotch"], HANDBOOK),
  wood("maple", "hardwood", "diffuse", "fine", 680, ["cream"], ["blotch"], HANDBOOK),
  wood("hard maple", "hardwood", "diffuse", "fine", 705, ["cream"], ["blotch"], HANDBOOK),
  wood("soft maple", "hardwood", "diffuse", "fine", 600, ["cream", "pale brown"], ["blotch"], MEMORY_MEDIUM),
  wood("beech", "hardwood", "diffuse", "fine", 720, ["pale pinkish brown"], [], HANDBOOK),
  wood("birch", "hardwood", "diffuse", "fine", 670, ["cream", "pale brown"], ["blotch"], HANDBOOK),
  wood("yellow birch", "hardwood", "diffuse", "fine", 690, ["cream", "pale brown"], ["blotch"], HANDBOOK),
  wood("alder", "hardwood", "diffuse", "fine", 450, ["pale reddish brown"], ["blotch"], HANDBOOK),
  wood("red alder", "hardwood", "diffuse", "fine", 450, ["pale reddish brown"], ["blotch"], HANDBOOK),
  wood("aspen", "hardwood", "diffuse", "fine", 420, ["white"], ["blotch"], HANDBOOK),
  wood("poplar", "hardwood", "diffuse", "fine", 460, ["cream", "green"], ["blotch"], HANDBOOK),
  wood("yellow poplar", "hardwood", "diffuse", "fine", 460, ["cream", "green"], ["blotch"], HANDBOOK),
  wood("basswood", "hardwood", "diffuse", "fine", 410, ["cream"], [], HANDBOOK),
  wood("linden", "hardwood", "diffuse", "fine", 530, ["cream"], [], MEMORY_MEDIUM),
  wood("sycamore", "hardwood", "diffuse", "fine", 550, ["pale reddish brown"], [], HANDBOOK),
  wood("sweetgum", "hardwood", "diffuse", "fine", 580, ["reddish brown"], [], HANDBOOK),
  wood(
    "mahogany",
    "hardwood",
    "diffuse",
    "medium",
    590,
    ["reddish brown"],
    ["rich", "filler"],
    MEMORY_MEDIUM,
  ),
  wood(
    "African mahogany",
    "hardwood",
    "diffuse",
    "medium",
    540,
    ["reddish brown"],
    ["rich", "filler"],
    MEMORY_MEDIUM,
  ),
  wood(
    "sapele",
    "hardwood",
    "diffuse",
    "medium",
    640,
    ["reddish brown"],
    ["filler", "bleeds"],
    MEMORY_MEDIUM,
  ),
  wood("meranti", "hardwood", "diffuse", "coarse", 600, ["reddish brown"], ["filler"], MEMORY_MEDIUM),
  wood(
    "teak",
    "hardwood",
    "ring",
    "coarse",
    660,
    ["golden brown"],
    ["oily", "filler", "bleeds"],
    MEMORY_MEDIUM,
  ),
  wood(
    "rosewood",
    "hardwood",
    "diffuse",
    "medium",
    850,
    ["dark reddish brown"],
    ["oily", "filler", "bleeds"],
    MEMORY_MEDIUM,
  ),
  wood("wenge", "hardwood", "diffuse", "coarse", 870, ["very dark brown"], ["filler"], MEMORY_MEDIUM),
  wood(
    "iroko",
    "hardwood",
    "diffuse",
    "coarse",
    660,
    ["golden brown"],
    ["oily", "filler", "bleeds"],
    MEMORY_MEDIUM,
  ),
  wood(
    "cocobolo",
    "hardwood",
    "diffuse",
    "medium",
    1100,
    ["orange", "dark brown"],
    ["oily", "bleeds"],
    MEMORY_MEDIUM,
  ),
  wood("ebony", "hardwood", "diffuse", "fine", 1050, ["black"], ["oily"], MEMORY_MEDIUM),
  wood("olive", "hardwood", "diffuse", "fine", 920, ["yellowish brown"], ["oily"], MEMORY_MEDIUM),
  wood("acacia", "hardwood", "diffuse", "medium", 700, ["golden brown", "dark brown"], [], MEMORY_MEDIUM),
  wood("rubberwood", "hardwood", "diffuse", "medium", 620, ["cream"], [], MEMORY_MEDIUM),
  wood("pear", "hardwood", "diffuse", "fine", 700, ["pinkish brown"], [], MEMORY_MEDIUM),
  wood("apple", "hardwood", "diffuse", "fine", 750, ["reddish brown"], [], MEMORY_MEDIUM),
  wood("plane", "hardwood", "diffuse", "fine", 620, ["pale reddish brown"], [], MEMORY_MEDIUM),
  wood("hornbeam", "hardwood", "diffuse", "fine", 740, ["greyish white"], [], MEMORY_MEDIUM),
  wood("willow", "hardwood", "diffuse", "fine", 430, ["pale brown"], [], MEMORY_MEDIUM),
  wood("cottonwood", "hardwood", "diffuse", "fine", 430, ["white"], [], MEMORY_MEDIUM),
  wood("paulownia", "hardwood", "ring", "coarse", 290, ["pale brown"], [], MEMORY_MEDIUM),
  wood("pine", "softwood", "none", "medium", 510, ["pale yellow"], ["blotch", "knotty"], MEMORY_MEDIUM),
  wood("white pine", "softwood", "none", "fine", 390, ["pale yellow"], ["blotch", "knotty"], MEMORY_MEDIUM),
  wood("yellow pine", "softwood", "none", "medium", 570, ["yellow"], ["blotch", "knotty"], HANDBOOK),
  wood(
    "Scots pine",
    "softwood",
    "none",
    "medium",
    520,
    ["pale reddish yellow"],
    ["blotch", "knotty"],
    MEMORY_MEDIUM,
  ),
  wood("fir", "softwood", "none", "medium", 440, ["pale yellow"], ["blotch", "knotty"], MEMORY_MEDIUM),
  wood("Douglas fir", "softwood", "none", "medium", 540, ["reddish yellow"], ["blotch"], HANDBOOK),
  wood("spruce", "softwood", "none", "fine", 430, ["white"], ["blotch", "knotty"], MEMORY_MEDIUM),
  wood("hemlock", "softwood", "none", "medium", 470, ["pale brown"], [], MEMORY_MEDIUM),
  wood("larch", "softwood", "none", "medium", 590, ["reddish brown"], ["knotty"], MEMORY_MEDIUM),
  wood("cedar", "softwood", "none", "medium", 370, ["reddish brown"], ["rich", "knotty"], HANDBOOK),
  wood(
    "western red cedar",
    "softwood",
    "none",
    "medium",
    360,
    ["reddish brown"],
    ["rich", "knotty"],
    HANDBOOK,
  ),
  wood("eastern red cedar", "softwood", "none", "fine", 530, ["red"], ["rich", "knotty"], MEMORY_MEDIUM),
  wood("redwood", "softwood", "none", "medium", 450, ["reddish brown"], ["rich"], HANDBOOK),
  wood("cypress", "softwood", "none", "medium", 510, ["yellowish brown"], ["bleeds"], MEMORY_MEDIUM),
  wood("yew", "softwood", "none", "fine", 670, ["orange brown"], [], MEMORY_MEDIUM),
  wood("bamboo", "grass", "none", "fine", 700, ["pale yellow"], [], MEMORY_MEDIUM),
];

/** What a surface may be made of besides wood of a species. */
export const SUBSTRATES: ReadonlyMap<string, SheetSubstrate> = new Map(
  (
    [
      {
        name: "plywood",
        kind: "plywood",
        needsScuff: false,
        canBeStained: true,
        note: "A thin face veneer on crossed layers; it sands through sooner than it looks.",
        source: MEMORY_HIGH,
      },
      {
        name: "MDF",
        kind: "MDF",
        needsScuff: false,
        canBeStained: false,
        note: "Takes stain as a dull, even brown and drinks at its edges; it is made for paint.",
        source: MEMORY_MEDIUM,
      },
      {
        name: "particleboard",
        kind: "particleboard",
        needsScuff: false,
        canBeStained: false,
        note: "Chips that swell with water; prime it with something that is not waterborne, then paint.",
        source: MEMORY_MEDIUM,
      },
      {
        name: "laminate",
        kind: "laminate",
        needsScuff: true,
        canBeStained: false,
        note: "A printed plastic sheet: scuff it, never sand through it; nothing soaks in.",
        source: MEMORY_HIGH,
      },
      slickSheet("melamine", "Board faced with melamine resin: as laminate."),
      slickSheet("foil", "Board wrapped in printed foil: as laminate, and thinner still."),
      metal("metal", "Degrease it; under paint scuff it and prime it for metal. Nothing soaks in."),
      ...[
        metal("brass", "Bright it takes wax or a clear lacquer, clean and unscuffed."),
        metal("bronze", "It takes wax or a clear lacquer, clean and unscuffed."),
        metal("copper", "Bright it takes wax or a clear lacquer, clean and unscuffed."),
        metal("steel", "It rusts: oil, wax, a clear lacquer or a primer for metal keeps it."),
        metal("stainless steel", "It needs no finish; under paint scuff it and prime it for metal."),
        metal("iron", "It rusts: oil, wax or a primer for metal keeps it."),
        metal("aluminium", "Caustics eat it; under paint scuff it and prime it for metal."),
        metal("aluminum", "Caustics eat it; under paint scuff it and prime it for metal."),
        metal("zinc", "Caustics eat it; alkyd paint straight on it peels, so prime it for metal."),
        metal("pewter", "Soft and easily melted: wax alone."),
        metal("silver", "Bright it takes wax or a clear lacquer, clean and unscuffed."),
      ],
    ] satisfies readonly SheetSubstrate[]
  ).map((row) => [row.name, Object.freeze(row)]),
);

const BY_NAME: ReadonlyMap<string, Wood> = new Map(WOODS.map((row) => [nameKey(row.name), row]));
const SUBSTRATE_BY_KEY: ReadonlyMap<string, SheetSubstrate> = new Map(
  [...SUBSTRATES.values()].map((row) => [nameKey(row.name), row]),
);

/** The wood that these words name, however they are spaced or capitalised. */
export function woodByName(text: string): Wood | undefined {
  return BY_NAME.get(nameKey(text));
}

/** All names of woods, in alphabetical order. */
export function woodNames(): readonly string[] {
  return WOODS.map((row) => row.name).sort((a, b) => (nameKey(a) < nameKey(b) ? -1 : 1));
}

/** The substrate besides wood that these words name. */
export function substrateByName(text: string): SheetSubstrate | undefined {
  return SUBSTRATE_BY_KEY.get(nameKey(text)) ?? plywoodOf(nameKey(text));
}

/** `birch plywood`, `marine plywood`: whatever its faces are, it sands through and takes a finish as plywood does. */
function plywoodOf(key: string): SheetSubstrate | undefined {
  const end = " plywood";
  const faces = key.endsWith(end) ? key.slice(0, -end.length) : undefined;
  const isKnown = faces !== undefined && (woodByName(faces) !== undefined || PLYWOODS.has(faces));
  return isKnown ? SUBSTRATE_BY_KEY.get("plywood") : undefined;
}

const PLYWOODS: ReadonlySet<string> = new Set([
  "marine",
  "exterior",
  "interior",
  "hardwood",
  "softwood",
  "furniture",
  "okoume",
  "gaboon",
  "lauan",
]);

function slickSheet(name: string, note: string): SheetSubstrate {
  return { name, kind: "laminate", needsScuff: true, canBeStained: false, note, source: MEMORY_HIGH };
}

function metal(name: string, note: string): SheetSubstrate {
  return { name, kind: "metal", needsScuff: true, canBeStained: false, note, source: MEMORY_HIGH };
}

function nameKey(text: string): string {
  return text.trim().toLowerCase().replace(/\s+/gu, " ");
}

function wood(
  name: string,
  kind: Wood["kind"],
  pores: Wood["pores"],
  texture: Wood["texture"],
  density: number,
  colours: readonly string[],
  flags: readonly Flag[],
  source: string,
): Wood {
  return Object.freeze({
    name,
    kind,
    tannin: flags.includes("rich") ? "rich" : "low",
    pores,
    texture,
    needsFiller: flags.includes("filler"),
    blotchProne: flags.includes("blotch"),
    oily: flags.includes("oily"),
    bleeds: flags.includes("bleeds"),
    knotty: flags.includes("knotty"),
    density,
    colours: [...colours],
    source,
  });
}
