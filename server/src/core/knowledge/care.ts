/**
 * How a finished surface is cleaned and repaired, by the family that is on top. For whoever uses the piece, not for the
 * bench: nothing here needs a workshop, and whatever the label or data sheet of the product says comes first.
 */
import type { FamilyName } from "./family-names.ts";
import { PRACTICE, TEXTBOOK } from "./sources.ts";

export interface Care {
  /** As a person at home would call it: `a film of varnish`. */
  readonly name: string;
  readonly families: readonly FamilyName[];
  readonly clean: string;
  readonly avoid: string;
  readonly repair: string;
  readonly source: string;
}

/** What dusting, damp wiping and solvents do to finishes in general. */
const HANDLING =
  "Smithsonian Institution, Furniture Care and Handling (booklet, undated): dust with a soft lint-free cloth, wipe damp with care, try a cleaner on a hidden spot first";

const DUST = "Dust with a soft, dry cloth.";
const WIPE = `${DUST} Wipe marks off with a cloth wrung out in water with a little mild soap, then with clean water, and dry at once.`;
/** Said in every repair that sands or dulls; the mask is that of the duty `dust_mask` (`duties.ts`). */
const DUST_MASK = "put on a dust mask (N95 or better)";
const AS_A_FILM = `wash it, let it dry, ${DUST_MASK}, dull the whole face with grit 320, take the dust off with a damp cloth, and put on a thin coat of the same product. Coat a face up to its edges: a patch shows`;

/** In the order of the families. Every family is in one row, or in none where it is never a last coat by itself. */
export const CARES: readonly Care[] = [
  {
    name: "a waterborne clear film",
    families: ["waterborne polyurethane", "waterborne acrylic", "waterborne lacquer"],
    clean: WIPE,
    avoid:
      "Alcohol, ammonia, solvents, scouring powder, and polish with silicone: some soften the film, others keep a later coat from sticking.",
    repair: `Worn or scratched: ${AS_A_FILM}.`,
    source: `${HANDLING}; otherwise ${PRACTICE}`,
  },
  {
    name: "a varnish film",
    families: ["oil polyurethane", "oil varnish", "wiping varnish"],
    clean: WIPE,
    avoid:
      "Solvents, stripper, scouring powder, and polish with silicone, on which a later coat does not stick.",
    repair: `Worn or scratched: ${AS_A_FILM}.`,
    source: `${HANDLING}; otherwise ${PRACTICE}`,
  },
  {
    name: "an outdoor varnish film",
    families: ["spar varnish"],
    clean: WIPE,
    avoid: "Pressure washers, solvents and scouring powder. Let no water stand on it.",
    repair: `Look it over every spring. Before it cracks or goes dull: ${AS_A_FILM}. Where it has cracked or flaked, water is in the wood, and the place has to be stripped first.`,
    source: PRACTICE,
  },
  {
    name: "a hard two-part or catalysed film",
    families: [
      "precatalyzed lacquer",
      "conversion varnish",
      "epoxy coating",
      "two part polyurethane",
      "waterborne two part polyurethane",
    ],
    clean: WIPE,
    avoid: "Scouring powder and solvents. Epoxy softens under hot pans.",
    repair:
      "A dull place can be rubbed up with a fine abrasive paste. A deep scratch or a chip is work for a finisher: later coats stick badly, and the product may need supplied air.",
    source: PRACTICE,
  },
  {
    name: "lacquer",
    families: ["nitrocellulose lacquer"],
    clean: `${DUST} A barely damp cloth takes fingerprints off; dry at once.`,
    avoid:
      "Alcohol, perfume, nail varnish remover, hot cups, and feet of rubber or soft plastic: they soften the film or mark it.",
    repair:
      "Fine scratches: a thin coat of paste wax without silicone, buffed. Deeper ones are work for a finisher, who melts new lacquer into the old.",
    source: `${HANDLING}; what dissolves it: ${TEXTBOOK}`,
  },
  {
    name: "shellac",
    families: ["shellac", "waxed shellac", "dewaxed shellac"],
    clean: `${DUST} A barely damp cloth takes fingerprints off; dry at once.`,
    avoid:
      "Alcohol, which dissolves it: wipe up wine, spirits and perfume at once. Ammonia, hot cups and standing water leave marks.",
    repair:
      "A white ring often fades by itself in a few days. Worn places: a finisher pads new shellac on, which melts into the old, so nothing has to be stripped.",
    source: `${HANDLING}; what dissolves it: ${TEXTBOOK}`,
  },
  {
    name: "an oil finish",
    families: ["drying oil", "exterior oil"],
    clean: `${DUST} Wipe marks off with a damp cloth, and dry at once.`,
    avoid: "Strong soap, grease remover and standing water: they take the oil out.",
    repair: `When it looks dry, or once a year: rub in a little of the same oil, and wipe all that has not soaked in off after a quarter of an hour. Scratches: ${DUST_MASK} and sand lightly along the grain first.`,
    source: PRACTICE,
  },
  {
    name: "a hardwax oil",
    families: ["hardwax oil"],
    clean: WIPE,
    avoid: "Strong soap, grease remover, scouring powder and microfibre cloths, which wear it off.",
    repair: `Worn places: clean them, let them dry, ${DUST_MASK}, sand lightly along the grain, rub in a very thin coat of the same product, and wipe off what does not soak in.`,
    source: PRACTICE,
  },
  {
    name: "mineral oil",
    families: ["mineral oil"],
    clean: "Wash by hand with little water and mild soap, and stand it up to dry.",
    avoid: "The dishwasher, and soaking.",
    repair: "Never dries and washes out: oil it again whenever it looks pale.",
    source: PRACTICE,
  },
  {
    name: "wax",
    families: ["paste wax"],
    clean: `${DUST} Buff it now and then with a soft brush or cloth. Nothing wetter than a barely damp cloth.`,
    avoid: "Water that stands, hot cups, alcohol and solvents, and spray polish with silicone.",
    repair:
      "When it no longer buffs up: a thin coat of paste wax without silicone, buffed when it is dry. White marks: rub in a little wax with a soft pad.",
    source: `${HANDLING}; otherwise ${PRACTICE}`,
  },
  {
    name: "a soap finish",
    families: ["soap finish"],
    clean:
      "Wash with soap flakes in warm water along the grain, wipe off the lather and let it dry: washing renews it.",
    avoid: "Detergent, scouring powder with bleach, and colours such as red wine left standing.",
    repair: `Rough or marked: when it is dry, ${DUST_MASK}, sand lightly along the grain, and soap it again two or three times.`,
    source: PRACTICE,
  },
  {
    name: "paint",
    families: ["acrylic paint", "alkyd paint"],
    clean: WIPE,
    avoid: "Scouring powder, solvents, and polish with silicone, on which a later coat does not stick.",
    repair: `Chips: wash, let it dry, ${DUST_MASK}, dull the edge of the chip with grit 320, and touch in with the same paint and a small brush.`,
    source: `${HANDLING}; otherwise ${PRACTICE}`,
  },
  {
    name: "soft chalky paint without a coat over it",
    families: ["chalky paint", "milk paint"],
    clean: `${DUST} Water leaves marks.`,
    avoid: "Wiping wet, grease and greasy hands.",
    repair: "Touch in with the same paint. A wax or a clear over it makes it last.",
    source: PRACTICE,
  },
];

const BY_FAMILY: ReadonlyMap<FamilyName, Care> = new Map(
  CARES.flatMap((care) => care.families.map((family) => [family, care] as const)),
);

/** How to look after what has this family on top; undefined where the family is never a last coat by itself. */
export const careOf = (family: FamilyName): Care | undefined => BY_FAMILY.get(family);

/** Where what is on top is not known, or needs a coat over it: the gentlest there is. */
export const GENTLEST: Omit<Care, "families" | "name"> = {
  clean: `${DUST} Nothing wet.`,
  avoid: "Water, soap, alcohol, solvents and polish.",
  repair: "Ask whoever finished it.",
  source: PRACTICE,
};
