/**
 * Words that could mean several things with different consequences. They are asked about, never guessed: each with the
 * words of the notation that it may be, the common ones first.
 */
import { lookUp } from "../../../../grammar/src/look-up.ts";
import type { FamilyName } from "./family-names.ts";

/** What a label's word for a kind of material may be. */
export const FAMILY_CHOICES: Readonly<Record<string, readonly FamilyName[]>> = {
  primer: ["acrylic primer", "alkyd primer", "stain blocking primer", "shellac primer", "bonding primer"],
  undercoat: ["acrylic primer", "alkyd primer", "stain blocking primer"],
  paint: ["acrylic paint", "alkyd paint", "chalky paint", "milk paint"],
  enamel: ["acrylic paint", "alkyd paint"],
  varnish: ["oil varnish", "waterborne polyurethane", "spar varnish", "wiping varnish"],
  polyurethane: ["waterborne polyurethane", "oil polyurethane", "wiping varnish"],
  poly: ["waterborne polyurethane", "oil polyurethane", "wiping varnish"],
  lacquer: ["nitrocellulose lacquer", "waterborne lacquer", "precatalyzed lacquer", "conversion varnish"],
  shellac: ["dewaxed shellac", "waxed shellac"],
  "shellac flakes": ["dewaxed shellac", "waxed shellac"],
  "shellac sealer": ["dewaxed shellac", "waxed shellac"],
  oil: ["drying oil", "hardwax oil", "wiping varnish"],
  "danish oil": ["drying oil", "wiping varnish"],
  "teak oil": ["drying oil", "wiping varnish"],
  stain: ["waterborne stain", "oil stain", "gel stain", "water dye", "alcohol dye"],
  "water stain": ["waterborne stain", "water dye"],
  dye: ["water dye", "alcohol dye", "oil dye", "dye stain"],
  filler: ["wood filler", "grain filler", "epoxy filler"],
  epoxy: ["epoxy coating", "epoxy filler"],
  sealer: ["sanding sealer", "dewaxed shellac", "acrylic primer"],
  conditioner: ["waterborne conditioner", "oil conditioner"],
  thinner: ["mineral spirits", "alcohol", "acetone", "water"],
  solvent: ["mineral spirits", "alcohol", "acetone"],
  spirits: ["mineral spirits", "alcohol"],
  spirit: ["mineral spirits", "alcohol"],
  topcoat: ["waterborne polyurethane", "oil polyurethane", "oil varnish", "waterborne lacquer"],
  clear: ["waterborne polyurethane", "oil polyurethane", "oil varnish", "waterborne lacquer"],
  soap: ["cleaner", "soap finish"],
};

/** The same of other closed lists, by what messages call the list. */
export const WORD_CHOICES: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  "safety duty": {
    mask: ["dust_mask", "vapour_respirator"],
    face_mask: ["dust_mask", "vapour_respirator"],
    breathing_protection: ["dust_mask", "vapour_respirator", "supplied_air"],
  },
  "stage of a wait": { dry: ["touch", "recoat"], set: ["touch", "recoat"], stackable: ["recoat", "cured"] },
  "application method": { gun: ["hvlp", "airless", "spray"], sprayer: ["hvlp", "airless", "spray"] },
};

/** The choices for what was written, however it is spelt. */
export function choicesFor<W extends string>(
  table: Readonly<Record<string, readonly W[]>>,
  written: string,
): readonly W[] | undefined {
  const key = written.toLowerCase().replace(/[- ]+/gu, " ").trim();
  return lookUp(table, key);
}
