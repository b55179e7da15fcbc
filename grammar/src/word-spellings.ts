/**
 * What labels and people call the words that stand as values: kinds of material, old finishes, sheens, woods, days.
 *
 * Only what can mean one thing is here, or of what can mean several the one that the rules take for the worst, where the
 * notation has a word for not knowing (`unknown clear`). The rest is asked about by the core, which knows the choices.
 */
import { DUTIES, WEEKDAYS } from "./vocabulary.ts";

/** Plain words by what is written, in small letters and with blanks for hyphens. */
export type Spellings = ReadonlyMap<string, string>;

/** A spelling without what does not matter: `Two-Pack`, `2 component` and `2K` are one, so are `water-based` and `waterborne`. */
export const keyOf = (written: string): string =>
  written
    .toLowerCase()
    .replace(/[-_ ]+/gu, " ")
    .trim()
    .replace(/\b(?:(?:two|2) (?:part|pack|component)|2 k)\b/u, "2k")
    .replace(/\bwater ?(?:based|borne)\b/u, "waterborne")
    .replace("catalys", "catalyz");

type Table = Readonly<Record<string, readonly string[]>>;

const spellings = (table: Table): Spellings =>
  new Map(
    Object.entries(table).flatMap(([plain, words]) => words.map((word) => [keyOf(word), plain] as const)),
  );

/** Families, by what stands on labels. */
export const FAMILY_SPELLINGS: Table = {
  "waterborne polyurethane": [
    "water based polyurethane",
    "water-based poly",
    "waterborne poly",
    "water poly",
    "acrylic polyurethane",
  ],
  "waterborne acrylic": ["acrylic varnish", "acrylic clear"],
  "oil polyurethane": [
    "urethane alkyd",
    "urethane varnish",
    "alkyd urethane",
    "oil based polyurethane",
    "oil-based poly",
    "oil poly",
    "oil modified polyurethane",
  ],
  "oil varnish": ["oil based varnish", "alkyd varnish", "oil size", "gold size", "oil gold size"],
  "spar varnish": ["yacht varnish", "marine varnish", "boat varnish", "exterior varnish"],
  "nitrocellulose lacquer": ["nitro lacquer", "nitro", "cellulose lacquer", "nitrocellulose"],
  "waterborne lacquer": [
    "water based lacquer",
    "water lacquer",
    "acrylic lacquer",
    "waterborne clear lacquer",
  ],
  "precatalyzed lacquer": [
    "precatalysed lacquer",
    "pre catalyzed lacquer",
    "pre catalysed lacquer",
    "pre-cat lacquer",
    "precat lacquer",
    "precat",
    "pre-cat",
  ],
  "two part polyurethane": [
    "2 pack PU",
    "2K PU",
    "2K polyurethane",
    "2 pack polyurethane",
    "two pack polyurethane",
    "two pack PU",
    "2 part polyurethane",
    "2 component polyurethane",
    "two component polyurethane",
    "PU lacquer",
    "2K PU sealer",
    "2K polyurethane sealer",
    "two part polyurethane sealer",
    "2K PU top coat",
    "2K polyurethane clear",
  ],
  "waterborne two part polyurethane": [
    "2K water lacquer",
    "2K waterborne lacquer",
    "2K water based lacquer",
    "2K waterborne polyurethane",
    "2K water based polyurethane",
    "2 pack water lacquer",
    "2 pack waterborne polyurethane",
    "waterborne 2K polyurethane",
    "waterborne 2K lacquer",
  ],
  "exterior oil": ["outdoor oil", "decking oil", "garden furniture oil", "outdoor furniture oil"],
  "mineral oil": [
    "paraffin oil",
    "cutting board oil",
    "chopping board oil",
    "white oil",
    "butcher block oil",
  ],
  "isocyanate hardener": [
    "polyisocyanate hardener",
    "isocyanate",
    "polyisocyanate",
    "PU hardener",
    "polyurethane hardener",
  ],
  hardener: ["catalyst", "crosslinker", "cross linker", "part B", "component B", "curing agent", "activator"],
  "wood glue": [
    "PVA",
    "PVA glue",
    "white glue",
    "yellow glue",
    "carpenters glue",
    "joiners glue",
    "aliphatic glue",
    "D2 glue",
    "D3 glue",
    "D4 glue",
    "waterproof wood glue",
  ],
  "hide glue": [
    "animal glue",
    "bone glue",
    "hot glue size",
    "liquid hide glue",
    "hot hide glue",
    "fish glue",
  ],
  "epoxy glue": ["epoxy adhesive", "epoxy resin glue", "two part epoxy glue"],
  "polyurethane glue": ["PU glue", "foaming glue"],
  "contact adhesive": ["contact glue", "contact cement", "impact adhesive"],
  "conversion varnish": [
    "acid catalyzed lacquer",
    "acid catalysed lacquer",
    "acid cured lacquer",
    "acid cure lacquer",
    "acid curing lacquer",
    "acid hardening lacquer",
    "AC lacquer",
    "post catalyzed lacquer",
    "post catalysed lacquer",
  ],
  "waxed shellac": [
    "french polish",
    "button polish",
    "waxed shellac flakes",
    "button lac",
    "button lac flakes",
    "button flakes",
    "seedlac",
  ],
  shellac: [
    "knotting",
    "shellac knotting",
    "knotting varnish",
    "shellac flakes",
    "shellac polish",
    "orange shellac",
    "clear shellac",
    "blonde shellac",
  ],
  "dewaxed shellac": ["dewaxed shellac flakes", "dewaxed shellac sealer"],
  "drying oil": [
    "linseed oil",
    "boiled linseed oil",
    "raw linseed oil",
    "tung oil",
    "pure tung oil",
    "walnut oil",
  ],
  "wiping varnish": [
    "wipe-on poly",
    "wiping poly",
    "wipe-on polyurethane",
    "wipe-on varnish",
    "wiped varnish",
  ],
  "hardwax oil": ["hard wax oil", "hardwax", "oil wax"],
  "paste wax": [
    "wax",
    "furniture wax",
    "beeswax",
    "bees wax",
    "carnauba wax",
    "wax polish",
    "hard wax",
    "soft wax",
    "liming wax",
  ],
  "oil stain": ["oil based stain"],
  "water dye": [
    "van dyke",
    "van dyke brown",
    "nut stain",
    "water based dye",
    "walnut crystals",
    "walnut crystal stain",
    "van dyke crystals",
  ],
  "alcohol dye": ["spirit stain", "spirit dye", "alcohol stain"],
  "acrylic paint": [
    "acryl paint",
    "acrylic lacquer paint",
    "latex paint",
    "latex",
    "emulsion paint",
    "emulsion",
    "water based paint",
    "waterborne paint",
    "acrylic enamel",
    "waterborne enamel",
    "acrylic trim paint",
  ],
  "alkyd paint": ["oil paint", "oil based paint", "alkyd enamel", "oil based enamel", "alkyd lacquer"],
  "chalky paint": ["chalk style paint", "chalk paint"],
  "milk paint": ["casein paint"],
  "acrylic primer": [
    "acryl primer",
    "water based primer",
    "waterborne primer",
    "latex primer",
    "acrylic undercoat",
  ],
  "alkyd primer": ["oil primer", "oil based primer", "alkyd undercoat", "oil undercoat"],
  "stain blocking primer": [
    "stain blocker",
    "stain-blocking primer",
    "stain-block primer",
    "anti-tannin primer",
    "stain block primer",
    "stain blocking undercoat",
  ],
  "shellac primer": ["shellac based primer", "pigmented shellac"],
  "bonding primer": ["adhesion primer", "grip primer", "multi surface primer", "high adhesion primer"],
  "two part primer": [
    "2K PU primer",
    "2K polyurethane primer",
    "2 pack PU primer",
    "PU primer",
    "2K primer surfacer",
  ],
  "sanding sealer": ["sander sealer"],
  "grain filler": ["pore filler", "paste filler"],
  // In the trade the two-part filler for wood is of polyester; one of epoxy is called so.
  "polyester filler": [
    "2K filler",
    "2K wood filler",
    "polyester wood filler",
    "polyester putty",
    "body filler",
    "car body filler",
  ],
  "wood filler": [
    "acrylic caulk",
    "acrylic sealant",
    "decorators caulk",
    "acrylic filler",
    "wood putty",
    "stopping",
    "stopper",
    "caulk",
    "painters caulk",
  ],
  cleaner: [
    "linseed soap",
    "black soap",
    "curd soap",
    "olive soap",
    "soap",
    "soapy water",
    "mild soap",
    "neutral soap",
    "neutral cleaner",
    "ph neutral cleaner",
    "detergent",
    "dish soap",
    "washing up liquid",
  ],
  degreaser: ["sugar soap", "degreasing cleaner", "washing soda", "soda crystals"],
  "wood bleach": [
    "oxalic acid solution",
    "oxalic acid",
    "oxalic",
    "peroxide bleach",
    "hydrogen peroxide",
    "2K bleach",
    "2K wood bleach",
  ],
  alcohol: [
    "rubbing alcohol",
    "bioethanol",
    "burning alcohol",
    "surgical spirit",
    "methylated spirits",
    "methylated spirit",
    "meths",
    "denatured alcohol",
    "ethanol",
    "industrial alcohol",
  ],
  "lacquer thinner": [
    "lacquer thinners",
    "cellulose thinner",
    "cellulose thinners",
    "nitro thinner",
    "nitro thinners",
    "PU thinner",
    "spray thinner",
    "gun wash",
    "gun cleaner",
  ],
  "mineral spirits": [
    "turpentine substitute",
    "mineral turpentine",
    "white turps",
    "white spirit",
    "white spirits",
    "mineral spirit",
    "turps substitute",
  ],
  turpentine: [
    "turps",
    "gum turpentine",
    "balsam turpentine",
    "genuine turpentine",
    "wood turpentine",
    "spirits of turpentine",
    "oil of turpentine",
    "turpentine oil",
  ],
  "water stain": ["water stain powder", "powder stain"],
  "paint stripper": [
    "caustic free stripper",
    "varnish stripper",
    "stripper",
    "gel stripper",
    "paint remover",
    "varnish remover",
  ],
};

/** What is on a surface already, in the words of its owner. */
const EXISTING_SPELLINGS: Table = {
  bare: ["bare wood", "raw", "raw wood", "unfinished", "nothing", "none", "untreated"],
  "unknown clear": [
    "unknown varnish",
    "unknown lacquer",
    "unknown clear finish",
    "varnish",
    "clear varnish",
    "old varnish",
    "lacquer",
    "old lacquer",
    "clear coat",
    "clear lacquer",
    "old clear lacquer",
    "clear finish",
    "old clear coat",
    "old glaze",
    "polyurethane",
    "poly",
    "catalyzed lacquer",
    "2K lacquer",
    "spray lacquer",
    "factory finish",
    "factory lacquer",
  ],
  "unknown paint": ["paint", "old paint", "painted", "enamel", "gloss paint", "old gloss paint"],
  shellac: ["old shellac", "polish"],
  "waxed shellac": ["old french polish"],
  "drying oil": ["oil", "old oil", "oiled", "danish oil", "teak oil"],
  "paste wax": ["old wax", "waxed"],
  "soap finish": ["soap", "soaped", "soap flakes", "white soap"],
};

const SHEEN_SPELLINGS: Table = {
  "dead flat": ["flat", "dead matt", "ultra matt", "ultra matte"],
  matte: ["matt", "mat"],
  eggshell: ["egg shell", "silk matt", "silk matte"],
  satin: [
    "silky",
    "satin matt",
    "satin matte",
    "silk",
    "silk gloss",
    "satin sheen",
    "satin gloss",
    "semi matt",
    "semi matte",
    "half matt",
    "half matte",
  ],
  "semi-gloss": ["semigloss", "semi gloss", "half gloss"],
  gloss: ["high gloss", "full gloss"],
};

/** Sheens as they are said, each by the plain word. */
export const SHEENS_SAID: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(SHEEN_SPELLINGS).flatMap(([plain, said]) => [plain, ...said].map((word) => [word, plain])),
);

/** Gloss units that makers sell a sheen as, wider than any one scale of levels has them: figures beyond them contradict the word. */
const UNITS_OF_SHEEN: Readonly<Record<string, readonly [low: number, high: number]>> = {
  "dead flat": [0, 10],
  matte: [0, 25],
  eggshell: [5, 30],
  satin: [15, 60],
  "semi-gloss": [30, 75],
  gloss: [60, 100],
};

/** Whether so many gloss units can be sold as this plain sheen. */
export function isSoldAs(sheen: string, units: number): boolean {
  const [low, high] = UNITS_OF_SHEEN[sheen] ?? [0, 100];
  return low <= units && units <= high;
}

const WOOD_SPELLINGS: Table = {
  cherry: ["american cherry"],
  iron: ["cast iron", "wrought iron"],
  linden: ["lime", "limewood", "lime wood"],
  MDF: ["mdf", "hdf", "medium density fibreboard", "medium density fiberboard"],
  particleboard: ["chipboard", "particle board", "osb"],
  plywood: ["blockboard", "ply", "multiplex"],
  unknown: [
    "unknown wood",
    "not known",
    "some wood",
    "some hardwood",
    "some softwood",
    "softwood",
    "hardwood",
    "tropical wood",
    "tropical hardwood",
  ],
  laminate: ["hpl"],
  melamine: ["melamine board", "melamine faced chipboard", "mfc"],
};

const FOR_SPELLINGS: Table = { any: ["anything", "everything", "all"], wood: ["timber", "solid wood"] };

const MEANT_FOR_SPELLINGS: Table = {
  food: ["food contact", "kitchen", "food and drink", "eating"],
  adults: ["grown ups", "adult", "hands"],
  // Whoever lets everybody use it lets children use it.
  children: [
    "everybody",
    "everyone",
    "anybody",
    "anyone",
    "all",
    "family",
    "kids",
    "child",
    "public",
    "babies",
    "toddlers",
    "readers",
    "visitors",
    "library visitors",
    "children and adults",
    "adults and children",
  ],
};

const WEAR_SPELLINGS: Table = {
  hard: ["very hard", "very heavy", "daily", "every day", "heavy", "high", "a lot"],
  normal: ["medium", "average", "moderate"],
  light: ["decorative", "none", "hardly any", "low", "little"],
};

const COLOUR_SPELLINGS: Table = { clear: ["transparent", "colourless", "colorless"] };

const IGNITION_SPELLINGS: Table = {
  none: ["no"],
  heater: ["stove", "electric heater"],
  "pilot light": ["boiler"],
};

const TESTED_SPELLINGS: Table = {
  "alcohol softens": [
    "alcohol soft and sticky",
    "alcohol softened",
    "alcohol dissolved",
    "alcohol dissolves",
    "alcohol makes it sticky",
    "meths softens",
    "meths dissolves",
  ],
  "alcohol nothing": ["alcohol no effect", "alcohol does nothing", "meths nothing"],
  "lacquer thinner softens": [
    "lacquer_thinner softens",
    "lacquer_thinner dissolves",
    "lacquer thinner softened",
    "lacquer thinner dissolves",
    "thinner softens",
  ],
  "lacquer thinner nothing": [
    "lacquer_thinner nothing",
    "lacquer thinner no effect",
    "lacquer thinner does nothing",
  ],
  "xylene softens": ["xylol softens"],
  "xylene nothing": ["xylol nothing", "xylene no effect", "xylene does nothing"],
  "water beads": ["water beads up"],
  "heat softens": ["hot needle softens", "heat melts"],
};

const THINNER_WORDS: ReadonlySet<string> = new Set([
  "mineral spirits",
  "turpentine",
  "alcohol",
  "acetone",
  "lacquer thinner",
]);

/** What thins, as it is called. */
const THINNERS_SAID: Spellings = new Map(
  [...spellings(FAMILY_SPELLINGS)].filter(([, plain]) => THINNER_WORDS.has(plain)),
);

/** By the word that the line starts with. */
export const WORD_SPELLINGS: ReadonlyMap<string, Spellings> = new Map([
  ["family", spellings(FAMILY_SPELLINGS)],
  ["existing", new Map([...spellings(FAMILY_SPELLINGS), ...spellings(EXISTING_SPELLINGS)])],
  ["thin", THINNERS_SAID],
  ["sheen", spellings(SHEEN_SPELLINGS)],
  ["wood", spellings(WOOD_SPELLINGS)],
  ["for", new Map([...spellings(WOOD_SPELLINGS), ...spellings(FOR_SPELLINGS)])],
  ["meant_for", spellings(MEANT_FOR_SPELLINGS)],
  ["tested", spellings(TESTED_SPELLINGS)],
  ["wear", spellings(WEAR_SPELLINGS)],
  ["rags", new Map([["self heating", "self-heating"]])],
  ["colour", spellings(COLOUR_SPELLINGS)],
  ["ignition", spellings(IGNITION_SPELLINGS)],
]);

const DUTY_TABLE: Table = {
  dust_mask: [
    "dustmask",
    "dust mask",
    "p2_mask",
    "p3_mask",
    "p2 mask",
    "p3 mask",
    "n95",
    "n95 mask",
    "ffp2",
    "ffp3",
    "ffp2 mask",
    "ffp3 mask",
    "particle mask",
  ],
  vapour_respirator: [
    "vapour_mask",
    "vapor_mask",
    "vapor_respirator",
    "respirator",
    "solvent_mask",
    "organic_vapour_mask",
    "mask A2-P2",
    "mask A2",
    "A2-P2",
    "A2P2 mask",
    "mask A2P2",
    "half mask",
    "half mask A2",
    "half mask A2P2",
    "half mask A2-P2",
    "A2 half mask",
    "A2 mask",
    "A2 filter",
    "A2P2",
    "A2P3",
    "A2-P3",
    "mask A2P3",
    "mask P2 and A",
    "mask A and P2",
    "P2 and A mask",
    "mask P3 and A",
    "mask A and P3",
    "mask AP2",
    "mask A P2",
    "mask A1P2",
    "A1P2",
  ],
  supplied_air: ["air_fed_mask", "airfed_mask", "air fed mask", "air fed hood", "supplied air", "air hood"],
  keep_out: [
    "no children",
    "keep children out",
    "keep children away",
    "keep pets away",
    "keep people away",
    "keep everybody out",
    "keep others out",
    "nobody else inside",
  ],
  wet_rags: ["flat rags", "rags flat", "rags in water", "rags flat outdoors"],
  eye_protection: ["goggles", "safety_glasses", "glasses", "safety glasses", "eye protection"],
  hearing: ["ear_protection", "ear_defenders", "ear protection", "hearing protection"],
  gloves: ["glove", "nitrile gloves", "butyl gloves", "rubber gloves", "chemical gloves"],
  ventilate: [
    "extraction",
    "ventilation",
    "open_window",
    "open windows",
    "window open",
    "windows open",
    "fresh_air",
    "fan",
  ],
  no_ignition: [
    "no_flames",
    "no_sparks",
    "no flames",
    "no naked flames",
    "no open flame",
    "no open flames",
    "no naked flame",
    "no smoking",
    "no fire",
  ],
};

/** Duties, by what people wear and do. A `mask` may be for dust or for vapour, and is asked about. */
export const DUTY_SPELLINGS: Spellings = new Map([
  ...spellings(DUTY_TABLE),
  ...DUTIES.map((word) => [keyOf(word), word] as const),
]);

const DAY_NAMES: readonly (readonly string[])[] = [
  ["mon", "monday"],
  ["tue", "tues", "tuesday"],
  ["wed", "wednesday"],
  ["thu", "thur", "thurs", "thursday"],
  ["fri", "friday"],
  ["sat", "saturday"],
  ["sun", "sunday"],
];

function daySpellings(): Spellings {
  const days = DAY_NAMES.flatMap((names, idx) => names.map((name) => ({ name, idx })));
  const single = days.map(({ name, idx }) => [name, WEEKDAYS[idx]!] as const);
  const spans = days.flatMap((from) =>
    days.flatMap((to) => {
      const plain = `${WEEKDAYS[from.idx]} to ${WEEKDAYS[to.idx]}`;
      const isNext = to.idx === (from.idx + 1) % 7;
      const joints = ["", "to ", "– ", "through ", "until ", ...(isNext ? ["and ", "+ ", "& "] : [])];
      return joints.map((joint) => [`${from.name} ${joint}${to.name}`, plain] as const);
    }),
  );
  return new Map<string, string>([
    ...single,
    ...spans,
    ["weekdays", "Mon to Fri"],
    ["workdays", "Mon to Fri"],
    ["weekends", "Sat to Sun"],
    ["daily", "Mon to Sun"],
    ["every day", "Mon to Sun"],
  ]);
}

export const DAY_SPELLINGS: Spellings = daySpellings();

const HUES =
  "black|brown|red|green|blue|yellow|orange|grey|gray|pink|purple|violet|cream|beige|ivory|white|gold|silver|bronze|copper|umber|sienna|ochre|charcoal|slate|" +
  "crimson|scarlet|vermilion|maroon|claret|burgundy|wine|oxblood|ruby|brick|rust|terracotta|coral|salmon|apricot|peach|rose|magenta|mauve|lilac|lavender|plum|aubergine|" +
  "indigo|navy|cobalt|ultramarine|azure|sky|aqua|turquoise|teal|petrol|cyan|jade|emerald|mint|sage|moss|olive|lime|forest|bottle|khaki|fern|reed|" +
  "lemon|mustard|saffron|butter|straw|honey|caramel|toffee|tan|tobacco|coffee|mocha|chocolate|cocoa|cinnamon|nutmeg|ginger|sepia|fawn|buff|taupe|sand|stone|putty|clay|mud|earth|" +
  "linen|flax|oatmeal|bone|chalk|pearl|almond|vanilla|magnolia|ecru|champagne|parchment|milk|natural|pewter|graphite|anthracite|smoke|steel|lead|ink|soot|jet|pebble|dove|mouse|fog|mist|dust|blonde|blond|garnet";
const WOOD_TONES =
  "oak|walnut|mahogany|cherry|teak|rosewood|ebony|chestnut|maple|pine|cedar|larch|spruce|fir|birch|beech|ash|elm|alder|hickory|pecan|acacia|iroko|sapele|merbau|wenge|yew|poplar|plum|pear|apple|bog oak|driftwood";

const COLOUR_NAMES = new RegExp(
  `^(?:(?:RAL|NCS|BS) ?[A-Z]? ?\\d[\\w-]*|(?:(?:very )?(?:dark|light|pale|deep|mid|medium|off|warm|cool|bright|soft|dull|dusty|smoked|fumed|weathered|natural|old|antique|golden|silver|bluish|greenish|reddish|yellowish|greyish|brownish)[ -])*(?:${HUES}|${WOOD_TONES})(?:[ -](?:${HUES}|wood|tone))?)$`,
  "iu",
);

/** Whether a text names a colour that the notation has no word for: `dark brown`, `RAL 9016`. */
export const isColourName = (text: string): boolean =>
  COLOUR_NAMES.test(text) && text !== "white" && text.length < LONGEST_COLOUR;

const LONGEST_COLOUR = 40;
