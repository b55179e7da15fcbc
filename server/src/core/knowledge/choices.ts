/**
 * Words that could mean several things with different consequences. They are asked about, never guessed: each with the
 * words of the notation that it may be, the common ones first.
 */
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { keyOf } from "../../../../grammar/src/word-spellings.ts";
import type { FamilyName } from "./family-names.ts";

/** What a label's word for a kind of material may be. */
export const FAMILY_CHOICES: Readonly<Record<string, readonly FamilyName[]>> = {
  primer: ["acrylic primer", "alkyd primer", "stain blocking primer", "shellac primer", "bonding primer"],
  undercoat: ["acrylic primer", "alkyd primer", "stain blocking primer"],
  glue: ["wood glue", "hide glue", "epoxy glue", "polyurethane glue", "contact adhesive"],
  adhesive: ["wood glue", "epoxy glue", "polyurethane glue", "contact adhesive"],
  "isolating primer": ["stain blocking primer", "shellac primer"],
  "rust primer": ["alkyd primer", "acrylic primer"],
  "anti rust primer": ["alkyd primer", "acrylic primer"],
  "metal primer": ["alkyd primer", "acrylic primer"],
  "red oxide primer": ["alkyd primer", "acrylic primer"],
  "exterior enamel": ["alkyd paint", "acrylic paint"],
  "2k lacquer": ["two part polyurethane", "waterborne two part polyurethane", "conversion varnish"],
  "2k": ["two part polyurethane", "waterborne two part polyurethane", "conversion varnish"],
  "2k clear": ["two part polyurethane", "waterborne two part polyurethane", "conversion varnish"],
  "thick layer glaze": ["spar varnish", "alkyd paint"],
  "exterior glaze": ["spar varnish", "exterior oil", "alkyd paint"],
  "waterborne varnish": ["waterborne polyurethane", "waterborne acrylic"],
  paint: ["acrylic paint", "alkyd paint", "chalky paint", "milk paint"],
  enamel: ["acrylic paint", "alkyd paint"],
  varnish: ["oil varnish", "waterborne polyurethane", "spar varnish", "wiping varnish"],
  polyurethane: ["waterborne polyurethane", "oil polyurethane", "wiping varnish"],
  poly: ["waterborne polyurethane", "oil polyurethane", "wiping varnish"],
  lacquer: ["nitrocellulose lacquer", "waterborne lacquer", "precatalyzed lacquer", "conversion varnish"],
  "shellac sealer": ["dewaxed shellac", "shellac"],
  oil: ["drying oil", "hardwax oil", "wiping varnish", "exterior oil", "mineral oil"],
  "danish oil": ["drying oil", "wiping varnish"],
  "teak oil": ["drying oil", "wiping varnish", "exterior oil"],
  stain: ["waterborne stain", "oil stain", "gel stain", "water dye", "alcohol dye"],
  dye: ["water dye", "alcohol dye", "oil dye", "dye stain"],
  filler: ["wood filler", "grain filler", "polyester filler", "epoxy filler"],
  "wax filler": ["paste wax", "wood filler"],
  "wax stick": ["paste wax", "wood filler"],
  "wax sticks": ["paste wax", "wood filler"],
  epoxy: ["epoxy coating", "epoxy filler", "epoxy glue"],
  "2k epoxy": ["epoxy coating", "epoxy filler", "epoxy glue"],
  "epoxy resin": ["epoxy coating", "epoxy filler", "epoxy glue"],
  "catalyzed lacquer": ["precatalyzed lacquer", "conversion varnish"],
  "pre catalyzed sanding sealer": ["sanding sealer", "precatalyzed lacquer"],
  "precatalyzed sanding sealer": ["sanding sealer", "precatalyzed lacquer"],
  "pre cat sanding sealer": ["sanding sealer", "precatalyzed lacquer"],
  "pre cat sealer": ["sanding sealer", "precatalyzed lacquer"],
  sealer: ["sanding sealer", "dewaxed shellac", "acrylic primer"],
  conditioner: ["waterborne conditioner", "oil conditioner"],
  "wood conditioner": ["waterborne conditioner", "oil conditioner"],
  "wood cleaner": ["cleaner", "degreaser", "wood bleach"],
  thinner: ["lacquer thinner", "mineral spirits", "alcohol", "acetone", "water"],
  thinners: ["lacquer thinner", "mineral spirits", "alcohol", "acetone", "water"],
  "2k primer": ["two part primer", "epoxy coating"],
  "epoxy primer": ["epoxy coating", "two part polyurethane"],
  solvent: ["mineral spirits", "alcohol", "acetone"],
  spirits: ["mineral spirits", "alcohol"],
  spirit: ["mineral spirits", "alcohol"],
  topcoat: ["waterborne polyurethane", "oil polyurethane", "oil varnish", "waterborne lacquer"],
  clear: ["waterborne polyurethane", "oil polyurethane", "oil varnish", "waterborne lacquer"],
  "deck cleaner": ["cleaner", "degreaser", "wood bleach"],
  "decking cleaner": ["cleaner", "degreaser", "wood bleach"],
  "soap flakes": ["cleaner", "soap finish"],
  soda: ["cleaner", "degreaser", "wood bleach", "paint stripper"],
  ammonia: ["cleaner", "degreaser"],
  vinegar: ["cleaner", "wood bleach"],
  lye: ["wood bleach", "paint stripper"],
  caustic: ["wood bleach", "paint stripper"],
  "caustic soda": ["wood bleach", "paint stripper"],
  insecticide: ["mineral spirits", "water"],
  "woodworm fluid": ["mineral spirits", "water"],
  "woodworm killer": ["mineral spirits", "water"],
  "woodworm treatment": ["mineral spirits", "water"],
  "wood preservative": ["mineral spirits", "water"],
};

/** The same of other closed lists, by what messages call the list. */
export const WORD_CHOICES: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  "safety duty": {
    mask: ["dust_mask", "vapour_respirator"],
    "face mask": ["dust_mask", "vapour_respirator"],
    "breathing protection": ["dust_mask", "vapour_respirator", "supplied_air"],
  },
  "stage of a wait": { dry: ["touch", "recoat"], set: ["touch", "recoat"] },
  "application method": { gun: ["hvlp", "airless", "spray"], sprayer: ["hvlp", "airless", "spray"] },
};

/** What people look for a family of and is no material of a can, with the right line. */
const NO_FAMILY: Readonly<Record<string, string>> = {
  pumice:
    'It is rubbed in by hand: leave it out here, and write `step "fill the grain with pumice"` with the polish.',
  rottenstone: 'It is rubbed in by hand: leave it out here, and write `step buff "with rottenstone"`.',
  "gold leaf":
    'Leaf is laid by hand on its size: leave it out here, and write `step "lay the leaf", costs 12.00`.',
  "silver leaf":
    'Leaf is laid by hand on its size: leave it out here, and write `step "lay the leaf", costs 12.00`.',
  "masking tape": "What is used up beside the finish is paid by a line of the job: write `supplies 18.50`.",
  sandpaper: "What is used up beside the finish is paid by a line of the job: write `supplies 18.50`.",
  "wire wool": 'Tools stand in the line of the work, such as `step scuff "0000 wool"`.',
  "steel wool": 'Tools stand in the line of the work, such as `step scuff "0000 wool"`.',
};

/** What to write in place of a family that is none. */
export const insteadOfFamily = (written: string): string | undefined => lookUp(NO_FAMILY, keyOf(written));

const LEAD_SAFE = "It is part of working lead-safe: write `lead_safe`, and `keep_out` to keep others away.";
const PACKING = 'Write `wait until stackable`, or the time, such as `wait 24 h "until packable"`.';

/** What to write in place of a word that belongs elsewhere, by what messages call the list. */
export const ELSEWHERE: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  verb: {
    soap: "Soap that stays on the wood is a layer: write `layer soap_finish`. To wash it, write `step clean with soap`.",
    spot: 'Work on spots alone says so behind it: write `step sand 320, only "spots"`.',
    wax: 'Wax stays on the wood, so it is a layer: write `layer wax, only "runners"`, and declare it with `family paste wax`.',
    lime: "Liming wax or paste stays in the pores, so it is a layer: write `layer liming_wax, wiped off`, and declare it with `family paste wax`.",
    ebonise:
      "What blackens the wood is a layer: write `layer iron_black`, and declare it with `family waterborne stain`.",
    ebonize:
      "What blackens the wood is a layer: write `layer iron_black`, and declare it with `family waterborne stain`.",
    gild: 'Size is a layer, and the leaf is laid by hand: write `layer gold_size`, `wait until touch` and `step "lay the leaf"`.',
    stencil: 'Paint through a stencil is a layer on a part: write `layer paint, only "through the stencil"`.',
    crackle:
      "The paint cracks over a layer of medium: write `layer crackle_medium`, a wait, and the layer of paint.",
  },
  "result of a lead test": {
    no_paint: "Leave the line out where nothing on it is paint: `lead` is what a test came to.",
  },
  "safety duty": {
    lead: "Old paint is tested or taken for lead paint: write `lead_test`, or `lead_safe` where lead is found.",
    lead_respirator: LEAD_SAFE,
    no_dry_sanding: LEAD_SAFE,
    no_heat_gun: LEAD_SAFE,
    floor_sheet: LEAD_SAFE,
    food_safe: "Who uses a piece is said in it, such as `meant_for food`.",
  },
  "degree of wear": {
    weather: "Weather is a line of its own: write `outdoors rain, sun`, and `wear hard` or `normal`.",
    outdoors: "Weather is a line of its own: write `outdoors rain, sun`, and `wear hard` or `normal`.",
  },
  "stage of a wait": {
    tack: "Size takes the leaf after its label's time: state that as `recoat 12 h` in the material, and write `wait until recoat`.",
    packable: PACKING,
    packed: PACKING,
    packing: PACKING,
  },
  thinner: { thinner: "Write the one on the label, such as `thin mineral spirits, up to 10 %`." },
};

/** Lists that are longer than this are told by five of them. */
const MOST_TOLD = 10;

/** What people write, and the words of long lists that do that kind of thing. Without a kind the common ones are told. */
const KINDS: Readonly<Record<string, readonly (readonly [RegExp, readonly string[]])[]>> = {
  verb: [
    [/wash|rins|soap|degreas|scrub|swab|wip/u, ["clean", "dewax", "dust", "strip", "dampen"]],
    [/strip|burn|peel|dissolv|remov/u, ["strip", "scrape", "sand", "dewax", "clean"]],
    [/smooth|rub|grit|abrad|cut|flat|nib|plane/u, ["sand", "scuff", "scrape", "buff", "dust"]],
    [/shin|gloss|burnish|wax/u, ["buff", "dewax", "scuff", "clean", "inspect"]],
    [/stick|join|fix|mend|nail|screw|clamp|patch|plug/u, ["glue", "repair", "fill", "remove", "refit"]],
    [/tape|cover|protect|mask/u, ["mask", "unmask", "remove", "refit", "test"]],
    [/check|look|measur|try|sample/u, ["test", "inspect", "mask", "dust", "turn"]],
  ],
  "safety duty": [
    [
      /mask|respir|breath|filter|lung/u,
      ["dust_mask", "vapour_respirator", "supplied_air", "ventilate", "keep_out"],
    ],
    [/fire|flame|spark|heat|smok|rag/u, ["no_ignition", "wet_rags", "ventilate", "keep_out", "gloves"]],
    [/lead|old_paint/u, ["lead_test", "lead_safe", "dust_mask", "keep_out", "gloves"]],
  ],
};
const COMMON: Readonly<Record<string, readonly string[]>> = {
  verb: ["clean", "sand", "dust", "fill", "repair"],
  "safety duty": ["dust_mask", "gloves", "eye_protection", "ventilate", "no_ignition"],
};

/** The words to tell of a closed list: all of a short one, of a long one five of the kind that was probably meant. */
export function toldOf(what: string, written: string, known: readonly string[]): readonly string[] {
  if (known.length <= MOST_TOLD) return known;
  const key = written.toLowerCase();
  const kind = KINDS[what]?.find(([pattern]) => pattern.test(key))?.[1] ?? COMMON[what];
  return kind ?? known;
}

/** The choices for what was written, however it is spelt. */
export function choicesFor<W extends string>(
  table: Readonly<Record<string, readonly W[]>>,
  written: string,
): readonly W[] | undefined {
  return lookUp(table, keyOf(written));
}
