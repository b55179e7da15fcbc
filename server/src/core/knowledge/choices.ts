/**
 * Words that could mean several things with different consequences. They are asked about, never guessed: each with the
 * words of the notation that it may be, the common ones first.
 */
import { lookUp } from "../../../../grammar/src/look-up.ts";
import { keyOf } from "../../../../grammar/src/word-spellings.ts";
import type { FamilyName } from "./family-names.ts";

/** Words of labels with `|` between them, and the families that each may be, the common one first. */
type Choice = readonly [words: string, families: readonly FamilyName[]];

const TWO_PART_CLEARS = [
  "two part polyurethane",
  "waterborne two part polyurethane",
  "conversion varnish",
] as const;
const CLEARS = ["waterborne polyurethane", "oil polyurethane", "oil varnish", "waterborne lacquer"] as const;
const EPOXIES = ["epoxy coating", "epoxy filler", "epoxy glue"] as const;
const CLEANERS = ["cleaner", "degreaser", "wood bleach"] as const;
const CAUSTICS = ["wood bleach", "paint stripper"] as const;
const THINNERS = ["lacquer thinner", "mineral spirits", "alcohol", "acetone", "water"] as const;
const PRESERVATIVES = ["mineral spirits", "water"] as const;
const IMPREGNATIONS = ["exterior oil", "mineral spirits", "water"] as const;
const METAL_PRIMERS = ["alkyd primer", "acrylic primer"] as const;

const CHOICES: readonly Choice[] = [
  ["primer", ["acrylic primer", "alkyd primer", "stain blocking primer", "shellac primer", "bonding primer"]],
  ["undercoat", ["acrylic primer", "alkyd primer", "stain blocking primer"]],
  ["glue", ["wood glue", "hide glue", "epoxy glue", "polyurethane glue", "contact adhesive"]],
  ["adhesive", ["wood glue", "epoxy glue", "polyurethane glue", "contact adhesive"]],
  ["super glue|superglue|ca glue|cyanoacrylate|instant glue", ["epoxy glue", "contact adhesive"]],
  ["isolating primer", ["stain blocking primer", "shellac primer"]],
  ["rust primer|anti rust primer|metal primer|red oxide primer", METAL_PRIMERS],
  ["impregnating primer", ["alkyd primer", "acrylic primer", "exterior oil"]],
  ["exterior enamel", ["alkyd paint", "acrylic paint"]],
  ["2k lacquer|2k|2k clear", TWO_PART_CLEARS],
  ["2k primer", ["two part primer", "epoxy coating"]],
  ["2k oil", ["hardwax oil", "two part polyurethane"]],
  ["2k glue", ["epoxy glue", "polyurethane glue"]],
  ["thick layer glaze", ["spar varnish", "alkyd paint"]],
  ["exterior glaze", ["spar varnish", "exterior oil", "alkyd paint"]],
  ["wood glaze|thin glaze", ["glaze", "spar varnish", "exterior oil", "alkyd paint"]],
  ["waterborne varnish", ["waterborne polyurethane", "waterborne acrylic"]],
  ["paint", ["acrylic paint", "alkyd paint", "chalky paint", "milk paint"]],
  ["linseed paint|linseed oil paint", ["alkyd paint", "drying oil"]],
  ["enamel", ["acrylic paint", "alkyd paint"]],
  ["varnish", ["oil varnish", "waterborne polyurethane", "spar varnish", "wiping varnish"]],
  ["polyurethane|poly", ["waterborne polyurethane", "oil polyurethane", "wiping varnish"]],
  ["lacquer", ["nitrocellulose lacquer", "waterborne lacquer", "precatalyzed lacquer", "conversion varnish"]],
  ["shellac sealer", ["dewaxed shellac", "shellac"]],
  ["oil", ["drying oil", "hardwax oil", "wiping varnish", "exterior oil", "mineral oil"]],
  ["danish oil", ["drying oil", "wiping varnish"]],
  ["teak oil", ["drying oil", "wiping varnish", "exterior oil"]],
  ["wax", ["paste wax", "hardwax oil"]],
  ["polish", ["paste wax", "waxed shellac", "drying oil", "mineral oil"]],
  ["stain", ["waterborne stain", "oil stain", "gel stain", "water dye", "alcohol dye"]],
  ["dye", ["water dye", "alcohol dye", "oil dye", "dye stain"]],
  ["filler", ["wood filler", "grain filler", "polyester filler", "epoxy filler"]],
  ["putty", ["wood filler", "polyester filler", "epoxy filler", "drying oil"]],
  ["2k putty", ["polyester filler", "epoxy filler"]],
  ["wax filler|wax stick|wax sticks|wax crayon|hard wax stick", ["paste wax", "wood filler"]],
  ["epoxy|2k epoxy|epoxy resin", EPOXIES],
  ["epoxy putty", ["epoxy filler", "epoxy glue"]],
  ["epoxy primer", ["epoxy coating", "two part polyurethane"]],
  ["catalyzed lacquer", ["precatalyzed lacquer", "conversion varnish"]],
  [
    "pre catalyzed sanding sealer|precatalyzed sanding sealer|pre cat sanding sealer|pre cat sealer",
    ["sanding sealer", "precatalyzed lacquer"],
  ],
  ["sealer", ["sanding sealer", "dewaxed shellac", "acrylic primer"]],
  ["conditioner", ["waterborne conditioner", "oil conditioner"]],
  ["cleaner|wood cleaner|deck cleaner|decking cleaner", CLEANERS],
  ["brush cleaner|parts cleaner", ["mineral spirits", "lacquer thinner", "degreaser"]],
  ["thinner|thinners|diluent|reducer|retarder|extender", THINNERS],
  [
    "additive|drier|siccative|matting agent|matting paste|flattening agent",
    ["mineral spirits", "lacquer thinner", "water"],
  ],
  ["solvent", ["mineral spirits", "alcohol", "acetone", "lacquer thinner"]],
  ["naphtha|benzine|white gas|petroleum ether", ["mineral spirits", "lacquer thinner"]],
  ["spirits|spirit", ["mineral spirits", "alcohol"]],
  ["topcoat|clear|clear coat|top coat|finish", CLEARS],
  ["soap flakes", ["cleaner", "soap finish"]],
  ["soda|baking soda", ["cleaner", "degreaser", "wood bleach", "paint stripper"]],
  ["ammonia|ammonia water", ["cleaner", "degreaser"]],
  ["vinegar", ["cleaner", "wood bleach"]],
  ["lye|wood lye|caustic|caustic soda|caustic paste", CAUSTICS],
  ["rust remover|stain remover|mould remover", ["wood bleach", "paint stripper"]],
  ["remover", ["paint stripper", "mineral spirits", "wood bleach"]],
  [
    "insecticide|woodworm fluid|woodworm killer|woodworm treatment|wood preservative|fungicide",
    PRESERVATIVES,
  ],
  ["preservative", PRESERVATIVES],
  ["borax|boron|fire retardant|anti fungal wash|fungicidal wash|mould wash", PRESERVATIVES],
  ["impregnation|protection", IMPREGNATIONS],
  // One family each, by a word that says more of it and so stays.
  ["stripper", ["paint stripper"]],
  ["bleach|chlorine bleach|household bleach", ["wood bleach"]],
  ["xylene|xylol|toluene|toluol|methyl ethyl ketone|mek", ["lacquer thinner"]],
  ["isopropyl alcohol|isopropanol", ["alcohol"]],
  ["shellac stick|burn in stick", ["shellac", "wood filler"]],
  ["silicone|sealant|mastic|caulk", ["wood filler", "contact adhesive"]],
  ["gesso|chalk ground", ["chalky paint", "acrylic primer", "hide glue"]],
  ["casein|distemper|tempera|egg tempera", ["milk paint", "chalky paint"]],
  ["paraffin", ["mineral spirits", "mineral oil", "paste wax"]],
  ["vaseline", ["mineral oil", "paste wax"]],
  ["toner", ["alcohol dye", "nitrocellulose lacquer"]],
  ["wood hardener", ["sanding sealer", "epoxy coating"]],
  ["potassium permanganate", ["water stain", "wood bleach"]],
  ["iron acetate|iron vinegar|iron black|tannin|tannic acid", ["waterborne stain", "wood bleach"]],
];

/** What a label's word for a kind of material may be. */
export const FAMILY_CHOICES: Readonly<Record<string, readonly FamilyName[]>> = Object.fromEntries(
  CHOICES.flatMap(([words, families]) => words.split("|").map((word) => [word, families] as const)),
);

/**
 * What a word of a label says of its kind by how it ends, whatever stands before it: `worktop oil` is an oil of some kind.
 * Each with its row above.
 */
const KINDS_OF_FAMILY: readonly (readonly [RegExp, string])[] = [
  [/(?:primer|primer surfacer|ground coat)$/u, "primer"],
  [/undercoat$/u, "undercoat"],
  [/(?:glue|adhesive|cement)$/u, "glue"],
  [/(?:paint|emulsion)$/u, "paint"],
  [/enamel$/u, "enamel"],
  [/poly(?:urethane)?$/u, "poly"],
  [/oil (?:finish|blend|varnish blend)$|oil$/u, "oil"],
  [/(?:varnish|clear ?coat|top ?coat|finish)$/u, "varnish"],
  [/lacquer$/u, "lacquer"],
  [/glaze$/u, "wood glaze"],
  [/(?:wax|wax paste|wax cream|wax blend)$/u, "wax"],
  [/(?:polish|restorer|reviver)$/u, "polish"],
  [/stain$/u, "stain"],
  [/(?:dye|tint|tinting paste|pigment|marker|pen)$/u, "dye"],
  [/(?:filler|stopping|spackle)$/u, "filler"],
  [/putty$/u, "putty"],
  [/(?:sealer|seal)$/u, "sealer"],
  [/conditioner$/u, "conditioner"],
  [/(?:cleaner|detergent|shampoo)$/u, "cleaner"],
  [/stripper$/u, "stripper"],
  [/remover$/u, "remover"],
  [/(?:sealant|caulk|mastic)$/u, "sealant"],
  [/thinners?$/u, "thinner"],
  [/solvent$/u, "solvent"],
  [/(?:impregnation|impregnator|protection)$/u, "impregnation"],
  [/preservative$/u, "preservative"],
];

/** The families that a word of a label may be, by the whole of it or by its kind; of two parts where it says so. */
export function familiesMeant(written: string): readonly FamilyName[] | undefined {
  const key = keyOf(written);
  const whole = lookUp(FAMILY_CHOICES, key);
  if (whole !== undefined) return whole;
  const kind = KINDS_OF_FAMILY.find(([pattern]) => pattern.test(key))?.[1];
  if (kind === undefined) return undefined;
  const isTwoPart = /\b2k\b/u.test(key);
  return lookUp(FAMILY_CHOICES, isTwoPart ? (TWO_PART_OF[kind] ?? "2k") : kind);
}

const TWO_PART_OF: Readonly<Record<string, string>> = {
  primer: "2k primer",
  undercoat: "2k primer",
  glue: "2k glue",
  oil: "2k oil",
  filler: "2k putty",
  putty: "2k putty",
};

/** The same of other closed lists, by what messages call the list. */
export const WORD_CHOICES: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  "safety duty": {
    mask: ["dust_mask", "vapour_respirator"],
    "face mask": ["dust_mask", "vapour_respirator"],
    "breathing protection": ["dust_mask", "vapour_respirator", "supplied_air"],
  },
  "stage of a wait": { dry: ["touch", "recoat"], set: ["touch", "recoat"] },
  "application method": { gun: ["spray", "hvlp", "airless"], sprayer: ["spray", "hvlp", "airless"] },
};

const SUPPLY = "What is used up beside the finish is paid by a line of the job: write `supplies 18.50`.";
const LEAF =
  'Leaf is laid by hand on its size: leave it out here, and write `step "lay the leaf", costs 12.00`.';
const WOOL = 'Tools stand in the line of the work, such as `step scuff "0000 wool"`.';

/** What people look for a family of and is no material of a can, with the right line. */
const NO_FAMILY: readonly (readonly [RegExp, string])[] = [
  [
    /^pumice/u,
    'It is rubbed in by hand: leave it out here, and write `step "fill the grain with pumice"` with the polish.',
  ],
  [
    /^rotten ?stone/u,
    'It is rubbed in by hand: leave it out here, and write `step buff "with rottenstone"`.',
  ],
  [/^(?:gold|silver|metal) leaf$/u, LEAF],
  [/(?:wire|steel|bronze) wool$|(?:abrasive|grey|red) (?:pads?|fleece)$/u, WOOL],
  [
    /(?:tape|sandpaper|paper|felt|pads?|gliders?|hinges?|screws?|handles?|knobs?|locks?|castors?|nails?|banding|cloths?|rags?|brush(?:es)?|foil|glass|leather|fabric|veneers?|dowels?)$/u,
    SUPPLY,
  ],
];

/** What to write in place of a family that is none. */
export const insteadOfFamily = (written: string): string | undefined =>
  NO_FAMILY.find(([pattern]) => pattern.test(keyOf(written)))?.[1];

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
