/**
 * Words that people write for the words of the notation. They are read as these and formatted into them, so none adds a
 * meaning; a word that could mean two things with different consequences is not here, but asked about.
 */
import { lookUp } from "./look-up.ts";
import { type BlockKind, FIELDS } from "./vocabulary.ts";

/** A verb for another word, and how it is done where that word says so: `vacuum` is `dust "vacuum"`. */
export interface VerbSpelling {
  readonly verb: string;
  readonly how?: string;
  /** With the paper kept wet: `wet sand` is `sand wet`. */
  readonly isWet?: true;
}

/** Verbs of a step, by what is written; of two words the second is a particle, as in `rub down`. */
export const VERB_SPELLINGS: Readonly<Record<string, VerbSpelling>> = {
  vacuum: { verb: "dust", how: "vacuum" },
  hoover: { verb: "dust", how: "vacuum" },
  wipe: { verb: "dust", how: "wipe" },
  "wipe down": { verb: "dust", how: "wipe" },
  "wipe off": { verb: "dust", how: "wipe" },
  tack: { verb: "dust", how: "tack cloth" },
  "tack off": { verb: "dust", how: "tack cloth" },
  blow: { verb: "dust", how: "blow off" },
  "blow off": { verb: "dust", how: "blow off" },
  "blow down": { verb: "dust", how: "blow off" },
  "dust off": { verb: "dust" },
  wet: { verb: "dampen" },
  water: { verb: "dampen" },
  damp: { verb: "dampen" },
  polish: { verb: "buff" },
  denib: { verb: "scuff" },
  rub: { verb: "scuff" },
  "rub down": { verb: "scuff" },
  "sand down": { verb: "sand" },
  "scrape off": { verb: "scrape" },
  "wet sand": { verb: "sand", isWet: true },
  "sand off": { verb: "sand" },
  "mask off": { verb: "mask" },
  "take off": { verb: "remove" },
  "put back": { verb: "refit" },
  "turn over": { verb: "turn" },
  flip: { verb: "turn" },
  "flip over": { verb: "turn" },
  level: { verb: "scuff", how: "level" },
  flatten: { verb: "scuff", how: "level" },
  check: { verb: "inspect" },
  stick: { verb: "glue" },
  reglue: { verb: "glue" },
};

/** Verbs where a material follows `with`: wiping or washing with one is cleaning. */
export const VERB_SPELLINGS_WITH: Readonly<Record<string, VerbSpelling>> = {
  wipe: { verb: "clean" },
  "wipe down": { verb: "clean" },
  "wipe off": { verb: "clean" },
  wash: { verb: "clean" },
  "wash down": { verb: "clean" },
};

/**
 * Work that is no verb of its own and says nothing of the surface: read with all words behind it, which the plain form
 * puts in quotes. An unknown verb is not read so, since it may be a slip of the pen that hides a danger.
 */
export const OWN_WORK: Readonly<Record<string, true>> = Object.fromEntries(
  [
    "clamp",
    "unclamp",
    "lift",
    "touch in",
    "touch up",
    "spot prime",
    "spirit off",
    "caulk",
    "rack",
    "stack",
    "pack",
    "unpack",
    "hang",
    "stand",
    "label",
    "photograph",
    "mark",
    "iron",
    "steam",
    "drill",
    "plug",
    "pad in",
    "fume",
    "lay the leaf",
    "veneer",
    "number",
    "brush",
    "brush out",
    "take apart",
    "knock apart",
    "knock out",
    "cut out",
    "let in",
    "dissolve",
    "assemble",
  ].map((words) => [words, true]),
);

/** What a step is done with beside its material; a second material would need a line of its own. */
export const TOOLS: readonly string[] = [
  "wire wool",
  "steel wool",
  "wool",
  "a brush",
  "brush",
  "a cloth",
  "cloth",
  "rags",
  "a rag",
  "a pad",
  "pad",
  "a scraper",
  "scraper",
  "a sponge",
  "sponge",
  "water",
  "a toothbrush",
];

/** What is said of how hard or where a step is done, which the plain form puts in quotes. */
export const HOW_PHRASES: readonly string[] = [
  "lightly",
  "gently",
  "by hand",
  "if needed",
  "if necessary",
  "only if needed",
  "where needed",
  "only where needed",
  "where rough",
  "only where rough",
  "edges",
  "the edges",
  "edges only",
  "only the edges",
  "with the grain",
  "across the grain",
  "by machine",
  "orbital sander",
  "with orbital sander",
  "with an orbital sander",
  "belt sander",
  "with belt sander",
  "with a belt sander",
  "drum sander",
  "with drum sander",
  "with a drum sander",
  "sanding block",
  "with sanding block",
  "with a sanding block",
  "with a block",
  "mesh",
  "with mesh",
];

/** What leaves it to the bench whether a layer goes on. */
export const IF_NEEDED: Readonly<Record<string, true>> = Object.fromEntries(
  [
    "if needed",
    "if necessary",
    "only if needed",
    "only if necessary",
    "if required",
    "as needed",
    "maybe",
    "optional",
  ].map((words) => [words, true]),
);

/** Ways of putting a layer on. */
export const METHOD_SPELLINGS: Readonly<Record<string, string>> = {
  brushing: "brush",
  paintbrush: "brush",
  rolling: "roller",
  rag: "cloth",
  HVLP: "hvlp",
  Airless: "airless",
  spraying: "spray",
  spraygun: "spray",
  "spray gun": "spray",
  sponge: "foam",
};

/** Stages of a wait. `dry` is not here: it may be dry to the touch or dry enough for the next coat. */
export const STAGE_SPELLINGS: Readonly<Record<string, string>> = {
  "touch dry": "touch",
  "dry to the touch": "touch",
  "dust dry": "touch",
  "recoat time": "recoat",
  recoatable: "recoat",
  "ready to recoat": "recoat",
  touchable: "touch",
  "stack dry": "stackable",
  "dry to stack": "stackable",
  "ready to stack": "stackable",
  "it can be stacked": "stackable",
  "they can be stacked": "stackable",
  hard: "cured",
  hardened: "cured",
  "fully cured": "cured",
  "fully hardened": "cured",
  "full cure": "cured",
};

/** Words that fields had before, by block: each is a word of its block as the plain one is. */
export const FORMER_FIELDS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  material: { sold: "packs" },
  piece: { new: "new_price", use_by: "meant_for" },
};

/** Fields, by block. */
const FIELD_SPELLINGS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  material: {
    ...FORMER_FIELDS.material,
    potlife: "pot_life",
    stack: "stackable",
    stacking: "stackable",
    coverage: "covers",
    color: "colour",
    kind: "family",
    type: "family",
    hardener: "mix",
    press: "recoat",
    press_time: "recoat",
    pressing: "recoat",
    clamp: "recoat",
    clamping: "recoat",
    clamp_time: "recoat",
    cramp: "recoat",
    loadable: "cure",
    full_load: "cure",
    full_cure: "cure",
    fully_cured: "cure",
    sand_after: "sandable",
    sanding: "sandable",
    notes: "note",
    remark: "note",
    remarks: "note",
    stock: "on_hand",
    in_stock: "on_hand",
  },
  piece: { ...FORMER_FIELDS.piece, used_by: "meant_for", notes: "note", remark: "note" },
  surface: { material: "wood", on_it: "existing", notes: "note", remark: "note" },
  shop: { climate: "air", notes: "note", remark: "note", vent: "note", windows: "note" },
  recipe: {},
  layer: {},
  job: {
    shop: "in",
    due: "ready",
    deadline: "ready",
    customer: "owner",
    client: "owner",
    deliver: "delivery",
    loss: "spare",
    waste: "spare",
    wastage: "spare",
    notes: "note",
    remark: "note",
  },
};

/**
 * What labels, rooms and furniture have lines for and nothing is worked out from, by block: kept as a note, in the words
 * of the line. A word is here only where no rule could miss it.
 */
const NOTED: Readonly<Record<string, ReadonlySet<string>>> = {
  material: new Set([
    "norm",
    "standard",
    "approval",
    "shelf_life",
    "keeps",
    "made",
    "opened",
    "expires",
    "use_before",
    "dust_dry",
    "light_use",
    "stands",
    "strain",
    "stir",
    "shake",
    "storage",
    "store",
    "supplier",
    "warning",
    "hazard",
    "contains",
    "wet_film",
    "nozzle",
    "tip",
    "pressure",
    "need",
    "needed",
  ]),
  piece: new Set(["age", "style", "height", "seat_height", "origin", "location", "condition", "weight"]),
  surface: new Set(["condition", "state", "grain", "location", "where"]),
  shop: new Set([
    "extraction",
    "rack",
    "racks",
    "filters",
    "weather",
    "heating",
    "heated",
    "light",
    "lighting",
    "floor",
    "power",
    "water",
    "drying",
    "access",
  ]),
  job: new Set(["transport", "packing", "contact", "phone", "collection", "pickup", "signed", "approval"]),
};

/** Whether a line of this word is kept as a note. */
export const isNoted = (block: string, word: string): boolean => NOTED[block]?.has(word) ?? false;

/** The field that a word stands for, which is itself but for a few. */
export const plainField = (block: string, word: string): string =>
  lookUp(FIELD_SPELLINGS[block] ?? {}, word) ?? word;

/** Whether a line that goes on from a comma would start a fact of the block with this word. */
export const isFieldWord = (block: Exclude<BlockKind, "file" | "layer">, word: string): boolean =>
  Object.hasOwn(FIELDS[block], word) || Object.hasOwn(FORMER_FIELDS[block] ?? {}, word);
