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
  glue: ["wood glue", "hide glue", "epoxy glue", "polyurethane glue", "contact adhesive"],
  adhesive: ["wood glue", "epoxy glue", "polyurethane glue", "contact adhesive"],
  "2k lacquer": ["two part polyurethane", "waterborne two part polyurethane", "conversion varnish"],
  "2k": ["two part polyurethane", "waterborne two part polyurethane", "conversion varnish"],
  "2k clear": ["two part polyurethane", "waterborne two part polyurethane", "conversion varnish"],
  "2 pack lacquer": ["two part polyurethane", "waterborne two part polyurethane", "conversion varnish"],
  "thick layer glaze": ["spar varnish", "alkyd paint"],
  "exterior glaze": ["spar varnish", "exterior oil", "alkyd paint"],
  "water based varnish": ["waterborne polyurethane", "waterborne acrylic"],
  "waterborne varnish": ["waterborne polyurethane", "waterborne acrylic"],
  paint: ["acrylic paint", "alkyd paint", "chalky paint", "milk paint"],
  enamel: ["acrylic paint", "alkyd paint"],
  varnish: ["oil varnish", "waterborne polyurethane", "spar varnish", "wiping varnish"],
  polyurethane: ["waterborne polyurethane", "oil polyurethane", "wiping varnish"],
  poly: ["waterborne polyurethane", "oil polyurethane", "wiping varnish"],
  lacquer: ["nitrocellulose lacquer", "waterborne lacquer", "precatalyzed lacquer", "conversion varnish"],
  shellac: ["dewaxed shellac", "waxed shellac"],
  "shellac flakes": ["dewaxed shellac", "waxed shellac"],
  "shellac sealer": ["dewaxed shellac", "waxed shellac"],
  oil: ["drying oil", "hardwax oil", "wiping varnish", "exterior oil", "mineral oil"],
  "danish oil": ["drying oil", "wiping varnish"],
  "teak oil": ["drying oil", "wiping varnish", "exterior oil"],
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

/** What to write in place of a word that belongs elsewhere, by what messages call the list. */
export const ELSEWHERE: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "safety duty": {
    food_safe: "Who uses a piece is said in it, such as `use_by food`.",
    apron: "Put it in a `note`: no rule asks for it.",
    overalls: "Put it in a `note`: no rule asks for it.",
  },
  "degree of wear": {
    weather: "No finish here is judged for weather: write `wear hard`, and the air of the days in the shop.",
    outdoors: "No finish here is judged for weather: write `wear hard`, and the air of the days in the shop.",
  },
  thinner: { thinner: "Write the one on the label, such as `thin mineral spirits, up to 10 %`." },
};

/** The choices for what was written, however it is spelt. */
export function choicesFor<W extends string>(
  table: Readonly<Record<string, readonly W[]>>,
  written: string,
): readonly W[] | undefined {
  const key = written.toLowerCase().replace(/[- ]+/gu, " ").trim();
  return lookUp(table, key);
}
