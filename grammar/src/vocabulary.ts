/**
 * The words of the notation, one table: which field belongs to which block, what its value looks like, and one
 * sentence for each.  The lexer, the parser, completion, hover, the TextMate grammar and the language reference are
 * all made from this table and from the unit table (`units.ts`), so that they cannot disagree.
 * Meaning (families, woods, defaults) is not here: it belongs to the analysis core.
 */
import type { FieldValue } from "./tree.ts";

export type FieldForm = Exclude<FieldValue["form"], "unknown">;
export type BlockKind = "file" | "material" | "piece" | "surface" | "shop" | "recipe" | "layer" | "job";

export interface FieldWord {
  readonly form: FieldForm;
  /** An example of the whole line, used in messages: "expected …, such as `covers 10 m2/L`". */
  readonly example: string;
  readonly doc: string;
  readonly required?: true;
  readonly repeatable?: true;
}

/** The notation that is read here. It grows: whatever an older one had is still read. */
export const NOTATION_VERSION = "0.2";

/** Words that start a declaration. */
export const DECLARATION_WORDS: Readonly<Record<string, { readonly example: string; readonly doc: string }>> =
  {
    use: {
      example: 'use "stock/clears.finish"',
      doc: "Imports another file's declarations; `pkg:NAME/FILE.finish` is a recipe of an installed package. `use notation 0.2` on the first line says in which notation a file is written.",
    },
    material: { example: 'material hall_clear "Waterborne satin clear" {', doc: "What is in the can." },
    piece: {
      example: 'piece reading_table "Reading table" {',
      doc: "A piece of furniture and its surfaces.",
    },
    shop: { example: 'shop mill_room "Old mill" {', doc: "Where and when the work is done." },
    recipe: { example: "recipe hard_clear(clear: material) {", doc: "How a finish is done, step by step." },
    job: {
      example: 'job hall_tables "Reading tables" {',
      doc: "A recipe on these surfaces, in this shop, from then on.",
    },
  };

/** Fields with a value of their own form, by block. */
export const FIELDS: Readonly<
  Record<Exclude<BlockKind, "file" | "layer">, Readonly<Record<string, FieldWord>>>
> = {
  material: {
    family: {
      form: "words",
      example: "family waterborne polyurethane",
      doc: "What kind of material it is; supplies every figure not stated here.",
      required: true,
    },
    covers: {
      form: "quantity",
      example: "covers 10 m2/L",
      doc: "Spreading rate of one coat, as the label states it.",
    },
    solids: { form: "quantity", example: "solids 33 %", doc: "Solids by volume." },
    touch: { form: "quantity", example: "touch 30 min", doc: "Time until dry to the touch." },
    recoat: {
      form: "range",
      example: "recoat 2 h to 24 h",
      doc: "Earliest time for the next coat, and the latest without sanding.",
    },
    stackable: {
      form: "quantity",
      example: "stackable 16 h",
      doc: "Time until coated pieces can be stacked, racked or packed, as the label states it; `wait until stackable` waits for it.",
    },
    sandable: {
      form: "quantity",
      example: "sandable 4 h",
      doc: "Time until it can be sanded, as the label states it; a filler's filling waits for it.",
    },
    cure: { form: "quantity", example: "cure 21 days", doc: "Time until the film has its full hardness." },
    rated: { form: "air", example: "rated 21 C, 50 % RH", doc: "The air in which the stated times hold." },
    limits: { form: "air", example: "limits 10 C to 32 C, 85 % RH", doc: "Do not apply outside this air." },
    voc: {
      form: "quantity",
      example: "voc 180 g/L",
      doc: "Volatile organic compounds in a litre of the material.",
    },
    sheen: {
      form: "words",
      example: "sheen satin",
      doc: "dead flat, matte, eggshell, satin, semi-gloss or gloss.",
    },
    colour: {
      form: "words",
      example: "colour clear",
      doc: 'clear, amber, white, or a title such as "#2b3a42".',
    },
    thin: { form: "thin", example: "thin water, up to 10 %", doc: "What thins it, and how far." },
    packs: {
      form: "packs",
      example: "packs 946 mL for 28.00, 3785 mL for 84.00",
      doc: "The packs it comes in, and what each costs.",
    },
    on_hand: { form: "quantity", example: "on_hand 0.25 L", doc: "How much is in stock." },
    flash: { form: "quantity", example: "flash 38 C", doc: "Flash point of a flammable liquid." },
    pot_life: {
      form: "quantity",
      example: "pot_life 4 h",
      doc: "How long a mixed two-part material can be used.",
    },
    rags: {
      form: "words",
      example: "rags self-heating",
      doc: "`self-heating` where rags may catch fire by themselves (drying oils).",
    },
    mix: {
      form: "mix",
      example: "mix 10:1 with hardener",
      doc: 'A two-part material: parts of this to parts of the other, by volume unless `by weight` stands behind the parts; by weight, litres need the `density` of both. Without `with` both parts come in one pack. Words in quotes say how it is made up: `mix "250 g flakes to 1 L alcohol"`.',
    },
    density: { form: "quantity", example: "density 1.03 kg/L", doc: "Lets amounts be given by weight." },
    cut: {
      form: "quantity",
      example: "cut 2 lb/gal",
      doc: "Of shellac: flakes to a gallon or litre of alcohol; `cut 2 lb` is a two-pound cut.",
    },
    batch: { form: "words", example: 'batch "B-2291"', doc: "The batch on the can." },
    note: {
      form: "text",
      example: 'note "Made for toys by EN 71-3."',
      doc: "What else the label says; read as a `##` line is.",
      repeatable: true,
    },
  },
  piece: {
    built: { form: "number", example: "built 1936", doc: "The year it was made." },
    bought: { form: "money", example: "bought 60.00", doc: "What one piece cost." },
    new_price: { form: "money", example: "new_price 1150.00", doc: "What a new one would cost." },
    sell_price: {
      form: "money",
      example: "sell_price 420.00",
      doc: "What one sells for when it is done; `totals` weighs that against keeping it, redoing it and buying new.",
    },
    meant_for: {
      form: "words",
      example: "meant_for adults",
      doc: "Whom or what it is for: adults, children or food.",
    },
    outdoors: {
      form: "words",
      example: "outdoors rain, sun",
      doc: "That it stands outdoors, for all surfaces that say nothing else themselves.",
    },
    note: {
      form: "text",
      example: 'note "One drawer is missing."',
      doc: "A note printed on the sheet.",
      repeatable: true,
    },
  },
  surface: {
    shape: {
      form: "shape",
      example: "shape panel 1800 mm x 900 mm x 30 mm",
      doc: "The form that gives the area; several lines add up.",
      required: true,
      repeatable: true,
    },
    wood: {
      form: "wood",
      example: "wood red oak, veneer 0.6 mm",
      doc: 'What it is made of; `unknown` where nobody knows. A veneer without a thickness counts as 0.5 mm. Words in quotes say more: `wood oak "end grain"`.',
      required: true,
    },
    existing: {
      form: "existing",
      example: "existing alkyd paint, 2 coats",
      doc: 'What is on it, from the wood up. Words in quotes behind a layer say what state it is in: `oil varnish "cracked"`. Without the line the surface is taken as bare.',
    },
    tested: {
      form: "words",
      example: "tested alcohol nothing, lacquer thinner softens",
      doc: "What spot tests showed of the finish on top. Test for lead before all, then on a hidden spot, gloved, in fresh air and away from flames.",
      repeatable: true,
    },
    lead: {
      form: "lead",
      example: "lead none_found by laboratory 2026-11-03",
      doc: "What a lead test of everything on it came to: none_found or found, the method and the date of the result. `lead not_tested` says that there is none.",
    },
    wear: { form: "words", example: "wear hard", doc: "hard, normal or light." },
    outdoors: {
      form: "words",
      example: "outdoors rain, sun",
      doc: "That it stands outdoors, and what reaches it there: rain, sun, or sheltered.",
    },
    moisture: {
      form: "quantity",
      example: "moisture 9 %",
      doc: "What the wood holds by a meter, of its dry weight.",
    },
    note: {
      form: "text",
      example: 'note "Ink stains at the left."',
      doc: "A note printed on the sheet.",
      repeatable: true,
    },
  },
  shop: {
    country: {
      form: "words",
      example: "country US",
      doc: "Whose law applies, as an ISO 3166-1 code or an English name; without it old paint counts as lead paint, whatever its age.",
    },
    air: { form: "air", example: "air 18 C, 60 % RH", doc: "The air in which the work dries." },
    outdoors: {
      form: "words",
      example: "outdoors sheltered",
      doc: "That the work is done outdoors, and what reaches it there: rain, sun, or sheltered.",
    },
    night_air: {
      form: "air",
      example: "night_air 10 C, 75 % RH",
      doc: "The air while the shop is closed, where it differs from that by day. What dries overnight dries in it.",
    },
    room: {
      form: "room",
      example: "room 45 m3, 2 air changes/h",
      doc: "The room and its natural air change.",
    },
    hours: {
      form: "hours",
      example: "hours Mon to Fri 09:00 to 17:00, Sat 09:00 to 13:00",
      doc: "When hands can work: as many openings as there are, on one line with commas, also several of one day.",
    },
    closed: { form: "dates", example: "closed 2027-03-26", doc: "Days without work.", repeatable: true },
    crew: { form: "number", example: "crew 1", doc: "How many people work." },
    labour: { form: "money", example: "labour 18.00 per h", doc: "What an hour of one person costs." },
    currency: { form: "words", example: "currency EUR", doc: "The currency of all prices." },
    ignition: { form: "words", example: "ignition none", doc: "none, pilot light, heater or welding." },
    note: {
      form: "text",
      example: 'note "The windows stand half open."',
      doc: "A note printed on the sheet.",
      repeatable: true,
    },
  },
  recipe: {
    for: { form: "words", example: "for wood", doc: "wood, veneer, laminate, metal or any." },
  },
  job: {
    piece: {
      form: "pieces",
      example: "piece reading_table x 2",
      doc: "The pieces, and how many.",
      required: true,
      repeatable: true,
    },
    in: { form: "name", example: "in mill_room", doc: "The shop." },
    start: { form: "moment", example: "start 2027-03-08 09:00", doc: "When work begins." },
    ready: {
      form: "moment",
      example: "ready 2027-04-16",
      doc: 'When it is wanted; words in quotes say what for: `ready 2027-04-16 "for light use"`.',
    },
    budget: { form: "money", example: "budget 260.00", doc: "What it may cost in all." },
    spare: {
      form: "quantity",
      example: "spare 10 %",
      doc: "Allowance for what stays in pot and brush; 10 % if not said.",
    },
    supplies: { form: "money", example: "supplies 18.50", doc: "Abrasives, brushes, tape." },
    after: {
      form: "name",
      example: "after hall_tables_2019",
      doc: "The job that this one follows on the same pieces.",
    },
    owner: {
      form: "text",
      example: 'owner "Town library, reading room"',
      doc: "Whose the pieces are; printed on the sheet.",
    },
    delivery: {
      form: "text",
      example: 'delivery "by the side door, two to carry"',
      doc: "How and where they are handed over; printed on the sheet.",
    },
    note: {
      form: "text",
      example: 'note "Number the drawers."',
      doc: "A note printed on the sheet.",
      repeatable: true,
    },
  },
};

export interface StatementWord {
  readonly example: string;
  readonly doc: string;
  readonly repeatable?: true;
  readonly required?: true;
}

/** Lines with a grammar of their own, by block. */
export const STATEMENTS: Readonly<
  Record<Exclude<BlockKind, "file">, Readonly<Record<string, StatementWord>>>
> = {
  material: {},
  piece: {
    surface: {
      example: 'surface top "Table top" {',
      doc: "A surface that is finished in one way.",
      repeatable: true,
    },
  },
  surface: {},
  shop: {},
  recipe: {
    safety: {
      example: "safety dust_mask, eye_protection",
      doc: "Duties from here to the end of the block.",
      repeatable: true,
    },
    step: { example: "step sand 80, 120, 150", doc: "Something that is done by hand.", repeatable: true },
    layer: {
      example: "layer clear x 3, by brush",
      doc: "A material that stays on the surface.",
      repeatable: true,
    },
    wait: { example: "wait 72 h", doc: "Time that passes.", repeatable: true },
    follow: {
      example: "follow prepare(clear: hall_clear)",
      doc: "Does another recipe's steps here.",
      repeatable: true,
    },
    note: { example: 'note "Work with the grain."', doc: "A note printed on the sheet.", repeatable: true },
  },
  layer: {
    safety: { example: "safety dust_mask", doc: "Duties to the end of this block.", repeatable: true },
    step: { example: "step sand 220", doc: "Done between coats.", repeatable: true },
    layer: { example: "layer glaze, wiped off", doc: "Another layer between coats.", repeatable: true },
    wait: { example: "wait until recoat", doc: "Time between coats.", repeatable: true },
    follow: { example: "follow rub_down()", doc: "Another recipe's steps between coats.", repeatable: true },
    note: { example: 'note "Thin coats."', doc: "A note printed on the sheet.", repeatable: true },
  },
  job: {
    apply: {
      example: "apply hard_clear(clear: hall_clear) to top",
      doc: "The recipe and its surfaces.",
      repeatable: true,
      required: true,
    },
    done: {
      example: "done 2027-03-10 14:00 coat 1 of hall_clear on top, took 25 min",
      doc: "What was really done, and when it ended; all before it counts as done, too.",
      repeatable: true,
    },
  },
};

/** What a `done` line can say behind a comma. */
export const DONE_FACTS: Readonly<Record<string, { readonly example: string; readonly doc: string }>> = {
  took: { example: "took 25 min", doc: "Hands-on time." },
  used: { example: "used 210 mL", doc: "How much of the material it took." },
  paid: { example: "paid 28.00", doc: "What its material cost." },
  air: { example: "air 17 C, 60 % RH", doc: "The air it dried in." },
  piece: { example: "piece 1 and 2", doc: "Which of several pieces." },
  trouble: {
    example: "trouble blush",
    doc: "What went wrong, in a word.",
  },
  by: { example: 'by "M."', doc: "Who did it." },
  photo: { example: 'photo "top-1.jpg"', doc: "The name of a photo's file." },
  note: { example: 'note "a little thin at the edge"', doc: "A note." },
};

/** What can go wrong with a finish, as a record names it. */
export const TROUBLES = [
  "blush",
  "peeling",
  "fish-eyes",
  "runs",
  "clouds",
  "wrinkles",
  "bubbles",
  "nibs",
  "tacky",
] as const;

/** How a verb's line goes on. */
export type VerbForm = "none" | "material" | "optional-material" | "grits" | "what" | "what-with";

export const VERBS: Readonly<
  Record<string, { readonly form: VerbForm; readonly example: string; readonly doc: string }>
> = {
  clean: {
    form: "optional-material",
    example: "step clean with soap",
    doc: "Takes grease, dust and loose dirt, not wax. Without a material it may be done with water.",
  },
  dewax: { form: "material", example: "step dewax with mineral_spirits", doc: "Takes wax." },
  strip: {
    form: "material",
    example: "step strip with stripper",
    doc: "Takes every film and wax; the surface must be cleaned after it.",
  },
  scrape: {
    form: "none",
    example: "step scrape",
    doc: 'Takes every film and wax by hand. Words behind it, as behind any verb, say how: `scrape "heat gun at 300 C"`.',
  },
  sand: {
    form: "grits",
    example: "step sand 80, 120, 150",
    doc: 'Through the grits; a first grit of 100 or coarser takes old films. Words behind them name the sander and the paper: `sand 80, 120 "orbital sander, mesh"`.',
  },
  scuff: {
    form: "grits",
    example: "step scuff 220",
    doc: 'Dulls a film so that the next one holds; without a grit words in quotes say with what: `scuff "grey pad"`.',
  },
  dust: { form: "none", example: "step dust", doc: "Takes sanding dust." },
  dampen: { form: "none", example: "step dampen", doc: "Raises the grain on purpose." },
  bleach: { form: "material", example: "step bleach with bleach", doc: "Lightens bare wood." },
  fill: {
    form: "material",
    example: "step fill with filler, uses 50 mL",
    doc: "Fills dents, holes or pores.",
  },
  mask: { form: "what", example: 'step mask "brass plates"', doc: "Covers a part that stays as it is." },
  unmask: { form: "none", example: "step unmask", doc: "Takes the masking off." },
  remove: { form: "what", example: 'step remove "handles"', doc: "Takes a part off." },
  refit: { form: "what", example: 'step refit "handles"', doc: "Puts a part back." },
  repair: {
    form: "what-with",
    example: 'step repair "loose joint"',
    doc: "Repairs the piece; `with` names what it takes.",
  },
  glue: {
    form: "what-with",
    example: 'step glue "loose joint" with hide_glue',
    doc: "Glues parts together; `wait until recoat` behind it is the time in the clamps.",
  },
  distress: {
    form: "none",
    example: 'step distress "edges, lightly"',
    doc: "Rubs edges through on purpose; words in quotes say where and how hard.",
  },
  buff: { form: "optional-material", example: "step buff", doc: "Polishes a wax, oil or film." },
  test: {
    form: "what-with",
    example: 'step test "old paint"',
    doc: "Tries something out first; `with` names what with.",
  },
  turn: { form: "none", example: "step turn", doc: "Turns the piece over." },
  inspect: { form: "what", example: 'step inspect "runs and sags"', doc: "A look before going on." },
};

export const TAILS: Readonly<
  Record<string, { readonly on: "step" | "layer" | "both"; readonly example: string; readonly doc: string }>
> = {
  by: {
    on: "layer",
    example: "by pad",
    doc: "How it is put on: brush, roller, pad, foam, cloth, rubber, spray, hvlp, airless.",
  },
  wiped: {
    on: "layer",
    example: "wiped off",
    doc: "What has not soaked in is wiped off again; builds no film. `wiped off after 15 min` says when.",
  },
  buffed: {
    on: "layer",
    example: "buffed after 20 min",
    doc: "Every coat is buffed, so long after it was put on: a wait and `step buff` behind each.",
  },
  thinned: {
    on: "layer",
    example: "thinned 4:1 with water",
    doc: "Parts of this material to parts of thinner.",
  },
  tinted: { on: "layer", example: "tinted 5 % with walnut_dye", doc: "Share of a tint." },
  as: { on: "layer", example: "as toner", doc: "A stain laid thin on a scuffed film; needs a clear above." },
  wet: {
    on: "layer",
    example: "wet 100 um",
    doc: "Wet film as measured, or what goes on by weight or volume, `wet 30 g/m2`, in place of the label's spreading rate.",
  },
  between: {
    on: "layer",
    example: "between sand 220",
    doc: "What is done between coats, after `wait until recoat` unless it says how long; several with `and`. Sanding is dusted off.",
  },
  thin: { on: "layer", example: "thin", doc: "Laid thinner than the label says." },
  mist: {
    on: "layer",
    example: "mist",
    doc: "Sprayed as a mist, which counts for no coat where wear is hard.",
  },
  full: { on: "layer", example: "full", doc: "A full, wet coat." },
  flooded: {
    on: "layer",
    example: "flooded",
    doc: "As much as the surface takes, which counts as twice a coat.",
  },
  if: {
    on: "layer",
    example: "if needed",
    doc: "Whether it goes on is decided at the bench, by words in quotes behind it where there are some: it is planned and bought for, and no wear rests on it.",
  },
  only: {
    on: "both",
    example: 'only 20 % "where it is worn"',
    doc: 'A part of the surface, as a share or an area: litres, paper and time are counted for that part, and no wear rests on it. Of `only "edges"` and `only "faces"` the part follows from the shapes; where nothing tells it, the whole is counted.',
  },
  passes: {
    on: "layer",
    example: "passes 2",
    doc: "One coat laid in so many passes, wet on wet: its amount and its film stay those of one coat.",
  },
  flash: { on: "layer", example: "flash 10 min", doc: "Time between the passes of one coat." },
  together: {
    on: "both",
    example: "together",
    doc: "All pieces of a surface in one go: with one setting up, by one person, without a break.",
  },
  apart: { on: "both", example: "apart", doc: "Each piece by itself, never in one go with others." },
  takes: {
    on: "both",
    example: "takes 40 min",
    doc: "Hands-on time for one piece's surface and one coat, or by area.",
  },
  sheen: {
    on: "layer",
    example: "sheen satin",
    doc: "The sheen that the coat is to have, in a word or in gloss units; what the material states must agree.",
  },
  costs: {
    on: "step",
    example: "costs 6.00",
    doc: "What else the step takes on each piece, in money, such as new wood for a repair.",
  },
  uses: { on: "step", example: "uses 50 mL", doc: "How much of the material the step takes." },
  leave: {
    on: "step",
    example: "leave 30 min",
    doc: "How long it is left to act, to soak or in the clamps before what comes next; nobody works at it.",
  },
  transfer: {
    on: "layer",
    example: "transfer 65 %",
    doc: "How much of what leaves the gun lands on the piece, in place of the method's own figure.",
  },
  wet_on_wet: {
    on: "layer",
    example: "wet_on_wet 20 min",
    doc: "Coats of `x 2` or more that are laid on one another while they are wet, after so long: each a coat of its own, and none has to wait for its recoat time.",
  },
};

export const METHODS = [
  "brush",
  "roller",
  "pad",
  "foam",
  "cloth",
  "rubber",
  "spray",
  "hvlp",
  "airless",
] as const;
/** Methods that make a mist; `spray` says that it is one of them, and not which. */
export const SPRAY_METHODS: ReadonlySet<string> = new Set(["spray", "hvlp", "airless"]);
export const DUTIES = [
  "dust_mask",
  "vapour_respirator",
  "supplied_air",
  "gloves",
  "eye_protection",
  "hearing",
  "ventilate",
  "no_ignition",
  "wet_rags",
  "lead_test",
  "lead_safe",
  "keep_out",
] as const;
export const WAIT_STAGES = ["touch", "recoat", "stackable", "cured"] as const;
export const PARAMETER_TYPES = [
  "material",
  "number",
  "duration",
  "recipe",
  "method",
  "grits",
  "ratio",
  "sheen",
] as const;
export const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;
/** The only words that are never names. */
export const RESERVED = ["x", "to", "with", "by", "of"] as const;

export interface ShapeWord {
  /** How many sizes, by name; a size that may be left out ends in `?`, one that may taper in `~`. */
  readonly sizes: readonly string[];
  readonly options: readonly string[];
  readonly example: string;
  readonly doc: string;
}

export const SHAPES: Readonly<Record<string, ShapeWord>> = {
  panel: {
    sizes: ["length", "width", "thickness?"],
    options: ["both faces", "one face", "no edges"],
    example: "shape panel 1800 mm x 900 mm x 30 mm",
    doc: "One face, and with a thickness the four edges, which `no edges` leaves out. `one face` says so for those who read it.",
  },
  disc: {
    sizes: ["diameter", "thickness?"],
    options: ["both faces", "one face", "no edges"],
    example: "shape disc 900 mm x 25 mm",
    doc: "A round top.",
  },
  oval: {
    sizes: ["length", "width", "thickness?"],
    options: ["both faces", "one face", "no edges"],
    example: "shape oval 1600 mm x 1000 mm x 25 mm",
    doc: "An elliptical top.",
  },
  band: {
    sizes: ["length", "width", "height"],
    options: ["inside too"],
    example: "shape band 1600 mm x 700 mm x 90 mm",
    doc: "The outside of a four-sided rail or apron.",
  },
  post: {
    sizes: ["side~", "height"],
    options: [],
    example: "shape 4 of post 75 mm to 50 mm x 700 mm",
    doc: "The four sides of a square leg.",
  },
  round: {
    sizes: ["diameter~", "height"],
    options: [],
    example: "shape 4 of round 60 mm to 40 mm x 700 mm",
    doc: "The side of a round leg or spindle.",
  },
  box: {
    sizes: ["length", "width", "height"],
    options: ["no bottom", "no top", "no back", "no front", "no ends", "open", "open front"],
    example: "shape box 900 mm x 450 mm x 1200 mm, no bottom",
    doc: "A case, or a slat. `no bottom` and `no top` leave out a face of length x width each, `no back` and `no front` one of length x height, `no ends` the two of width x height; `open` leaves out a face of length x width and counts the inside too, `open front` one of length x height.",
  },
  frame: {
    sizes: ["length", "width", "border", "thickness?"],
    options: ["both faces", "one face", "no edges"],
    example: "shape frame 1600 mm x 1100 mm x 60 mm",
    doc: "A picture frame, or that of a door, by its outer sizes and the width of its border: one face, and with a thickness the edges outside and inside.",
  },
  area: { sizes: ["area"], options: [], example: "shape area 1.2 m2", doc: "Measured." },
};
