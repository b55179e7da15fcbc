/**
 * The safety duties of the notation, what each means, and which ones a material, a step or a method brings.
 *
 * Duties are kept to what has a reason with a source, so that sound recipes stay quiet. None of them, stated or not,
 * makes a job safe: the product's label and safety data sheet and local codes come first, and every text says so.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { SPRAY_METHODS } from "../../../../grammar/src/vocabulary.ts";
import { onceFor } from "../once.ts";
import type { Family } from "./family-schema.ts";
import { OSHA_FLAMMABLE, OSHA_RAGS, VENTILATION_SOURCE } from "./sources.ts";

export type DutyWord =
  | "dust_mask"
  | "vapour_respirator"
  | "supplied_air"
  | "gloves"
  | "eye_protection"
  | "hearing"
  | "ventilate"
  | "no_ignition"
  | "wet_rags"
  | "lead_test"
  | "lead_safe"
  | "keep_out";

export interface Duty {
  readonly word: DutyWord;
  /** The danger where it is missing, as the beginning of a headline. */
  readonly danger: string;
  /** What to do, in one sentence. */
  readonly doc: string;
  /** What the table cannot know, and who can. */
  readonly defer: string;
  readonly source: string;
}

export const DUTIES: readonly Duty[] = [
  {
    word: "dust_mask",
    danger: "Fine dust to breathe",
    doc: "Wear a fitted particle filter (N95 or better) while dust flies.",
    defer: "Ask the safety data sheet whether a particle filter is enough; it stops no vapour.",
    source:
      "29 CFR 1910.134 and 42 CFR 84; wood dust, NIOSH recommended limit 1 mg/m3, OSHA Chemical Sampling Information",
  },
  {
    word: "vapour_respirator",
    danger: "Strong vapour to breathe",
    doc: "Wear a respirator with vapour cartridges that are right for this product and a particle filter.",
    defer: "The label and the safety data sheet name the cartridge and when to change it.",
    source: "29 CFR 1910.134",
  },
  {
    word: "supplied_air",
    danger: "Isocyanate to breathe",
    doc: "Breathe air that is brought in from outside, as for spraying isocyanates.",
    defer: "Follow the safety data sheet; this is work for trained people with proper equipment.",
    source:
      "29 CFR 1910.134; NIOSH Publication 96-111 (1996); for every spraying of isocyanate as the cautious rule, from memory, confidence high",
  },
  {
    word: "gloves",
    danger: "Harm to the skin",
    doc: "Wear gloves of the kind that its safety data sheet names.",
    defer: "Where the sheet names none, ask the maker.",
    source: "29 CFR 1910.138",
  },
  {
    word: "eye_protection",
    danger: "Harm to the eyes",
    doc: "Wear goggles against splashes.",
    defer: "The label and the safety data sheet say whether a face shield is needed too.",
    source: "29 CFR 1910.133",
  },
  {
    word: "hearing",
    danger: "Noise that deafens",
    doc: "Wear ear protection beside loud machines.",
    defer: "Measure, or follow the machine's own sheet.",
    source: "29 CFR 1910.95; NIOSH 98-126",
  },
  {
    word: "ventilate",
    danger: "Vapour that builds up",
    doc: "Move fresh air through the room until it is dry.",
    defer: "The label and the safety data sheet say how much air; local codes may ask for more.",
    source: VENTILATION_SOURCE,
  },
  {
    word: "no_ignition",
    danger: "Vapour that a flame can light",
    doc: "Keep flames, pilot lights, heaters and sparks away while the vapour is in the room.",
    defer: "The safety data sheet and local fire codes decide on distances and quantities.",
    source: OSHA_FLAMMABLE,
  },
  {
    word: "wet_rags",
    danger: "Oily rags can catch fire by themselves",
    doc: "Lay oily rags in water in a closed metal can, or spread them flat outdoors, at once and never in a heap.",
    defer: "The label and local codes say how to get rid of them.",
    source: OSHA_RAGS,
  },
  {
    word: "lead_test",
    danger: "Old paint may hold lead",
    doc: "Test the old paint for lead before anything rubs or dissolves it, and keep children out until it is known.",
    defer: "A laboratory decides; where lead is found, local codes say who may do the work and how.",
    source: "16 CFR 1303; 40 CFR 745 subpart E",
  },
  {
    word: "lead_safe",
    danger: "Lead dust and fume",
    doc: "Work by lead-safe practices: keep the paint wet, wear a P100 respirator, lay plastic sheeting, clean up wet and with a HEPA vacuum, and wash before you eat.",
    defer: "Local codes say who may do this work and where the waste goes.",
    source: "40 CFR 745.85; 29 CFR 1926.62; for housing and building work, by analogy",
  },
  {
    word: "keep_out",
    danger: "Danger to others in the room",
    doc: "Keep others, children and animals out until the air is clear and the dust is gone.",
    defer: "The label and the safety data sheet say for how long.",
    source: "40 CFR 745.85; 29 CFR 1910.1200",
  },
];

export function dutyByWord(word: string): Duty | undefined {
  return DUTIES.find((duty) => duty.word === word);
}

export interface BroughtDuty {
  readonly duty: DutyWord;
  /**
   * Why, as the end of a sentence that begins with the thing that brings it: "throws dust". The rows are made once, and this
   * is put into words when somebody reads it.
   */
  readonly reason: string;
  readonly source: string;
}

/** Why a material of this family brings a duty, as the end of a sentence: "gives off the vapour of …". */
export const materialDuties = onceFor((family: Family): readonly BroughtDuty[] => {
  const source = family.sources.duties ?? "the safety data sheet decides";
  return family.duties.map((each) => {
    const duty = each as DutyWord;
    return {
      duty,
      get reason() {
        return materialReason(family, duty);
      },
      source,
    };
  });
});

/** Duties that a step brings by itself, whatever its material. Wet sanding throws no dust. */
export function stepDuties(verb: string, wet = false): readonly BroughtDuty[] {
  return DRY_ABRASION.has(verb) && !wet ? SANDING_DUST : NONE;
}

/** Duties that a method of application brings by itself. */
export function methodDuties(method: string): readonly BroughtDuty[] {
  return SPRAY_METHODS.has(method) ? SPRAY_DUTIES : NONE;
}

/** Duties that every coating of two parts brings, whatever the tool: it is measured, poured and stirred by hand. */
export const TWO_PART_DUTIES: readonly BroughtDuty[] = [
  {
    duty: "gloves",
    get reason() {
      return t`is mixed from two parts, which can make the skin allergic for good before they are hard`;
    },
    source: "29 CFR 1910.138; NIOSH Publication 96-111 (1996) on contact of the skin with hardeners",
  },
  {
    duty: "eye_protection",
    get reason() {
      return t`is mixed from two parts, and the hardener splashes when it is poured and stirred`;
    },
    source: "29 CFR 1910.133",
  },
];

/** Stated duties that do the work of this one as well: a respirator of the table has its particle filter. */
export const alternatives = (duty: DutyWord): readonly DutyWord[] => ALTERNATIVES[duty] ?? NONE;

const ALTERNATIVES: { readonly [word in DutyWord]?: readonly DutyWord[] } = {
  dust_mask: ["vapour_respirator", "supplied_air", "lead_safe"],
  vapour_respirator: ["supplied_air"],
};

const NONE: readonly never[] = [];

const DRY_ABRASION: ReadonlySet<string> = new Set(["sand", "scuff", "distress"]);

const SANDING_DUST: readonly BroughtDuty[] = [
  {
    duty: "dust_mask",
    get reason() {
      return t`throws fine dust`;
    },
    source:
      "NIOSH recommended limit for wood dust 1 mg/m3; 29 CFR 1910.1000 table Z-1 for dust not otherwise regulated",
  },
];

const SPRAY_DUTIES: readonly BroughtDuty[] = [
  {
    duty: "vapour_respirator",
    get reason() {
      return t`fills the air with fine droplets`;
    },
    source: "29 CFR 1910.94(c) and 1910.134",
  },
  {
    duty: "eye_protection",
    get reason() {
      return t`fills the air with fine droplets`;
    },
    source: "29 CFR 1910.133",
  },
  {
    duty: "ventilate",
    get reason() {
      return t`fills the air with fine droplets`;
    },
    source: "29 CFR 1910.94(c)",
  },
];

function materialReason(family: Family, duty: DutyWord): string {
  switch (duty) {
    case "wet_rags":
      return t`leaves rags that can heat up and catch fire by themselves`;
    case "no_ignition":
      return t`gives off a vapour that a flame or spark can light`;
    case "ventilate":
      if (family.role === "stripper") return t`gives off strong solvent vapour`;
      return family.role === "solvent" || family.carrier === "none"
        ? t`gives off its vapour`
        : t`gives off the vapour of its ${translated(family.carrier === "lacquer thinner" ? "thinner" : family.carrier)}`;
    case "vapour_respirator":
      return givesOffFormaldehyde(family)
        ? t`gives off solvent vapour and formaldehyde, so the cartridge must be approved for both`
        : t`gives off strong solvent vapour`;
    case "gloves":
      return t`harms or dries the skin`;
    case "eye_protection":
      return t`harms the eyes when it splashes`;
    default:
      return t`asks for it on its safety data sheet`;
  }
}

/** Amino resins give it off while they cure; 29 CFR 1910.1048 has cartridges of its own for it. */
const givesOffFormaldehyde = ({ name }: Family): boolean =>
  name === "conversion varnish" || name === "precatalyzed lacquer";
