/**
 * The recipe of a new recipe: what the old finish asks for, then the classic way to the look that is wanted.
 *
 * Where the age of an old coating is not known it counts as lead paint, so it is tested for lead before all else, and
 * worked on wet. Whatever it is, the steps are those that a finisher expects (common practice, no source); the tests run
 * every text through the rules.
 */
import type { Answers, CoatingWord, LookWord, WoodWord } from "./answers.ts";
import { block, type Line } from "./block-text.ts";

export interface StarterRecipe {
  readonly name: string;
  readonly docs: string;
  readonly grounds: string;
  readonly duties: readonly string[];
  readonly lines: readonly Line[];
}

interface Part {
  readonly duties: readonly string[];
  readonly lines: readonly Line[];
}

const step = (text: string): Line => ["step", text];
const layer = (text: string): Line => ["layer", text];
const wait = (text: string): Line => ["wait", text];
const remark = (text: string): Line => ["#", text];

const part = (duties: readonly string[], ...lines: readonly Line[]): Part => ({ duties, lines });

/** Sound ones stay where paint goes over them, and come off where wood is to be seen. */
const FILMS: ReadonlySet<CoatingWord> = new Set(["varnish", "lacquer", "shellac", "paint", "unknown"]);
const BLOTCHY: ReadonlySet<WoodWord> = new Set(["birch", "maple", "cherry", "pine"]);
const THIN: ReadonlySet<WoodWord> = new Set(["veneer", "plywood"]);

export function starterRecipe(answers: Answers): StarterRecipe {
  const { wood, now, look } = answers;
  const parts = [...tests(now), ...preparation(answers), ...finish(answers)];
  const all = new Set(parts.flatMap(({ duties }) => duties));
  const air = AIRS.find((each) => all.has(each));
  const duties = [...all].filter((duty) => !AIRS.includes(duty) || duty === air);
  return {
    name: NAMES[look],
    docs: DOCS[look],
    grounds: groundsOf(wood),
    duties,
    lines: parts.flatMap(({ lines }) => lines),
  };
}

const groundsOf = (wood: WoodWord): string =>
  wood === "laminate" ? "any" : THIN.has(wood) ? "wood, veneer" : "wood";

const NAMES: Readonly<Record<LookWord, string>> = {
  clear: "clear_finish",
  warm: "warm_finish",
  oiled: "oil_finish",
  stained: "stained_finish",
  painted: "painted_finish",
  shellac: "shellac_finish",
  waxed: "wax_finish",
  outdoors: "outdoor_oil",
  kept: "freshened_up",
};

const DOCS: Readonly<Record<LookWord, string>> = {
  clear: "Three coats of a waterborne clear, sanded between.",
  warm: "Three coats of an oil polyurethane, sanded between.",
  oiled: "Two thin coats of hardwax oil.",
  stained: "A gel stain that cures before the clear goes on.",
  painted: "A primer that holds, and two coats of paint.",
  shellac: "Three thin coats of shellac, rubbed down between.",
  waxed: "Wax alone, twice, and buffed. It wants more every year.",
  outdoors: "Two coats of an oil for outdoors. It wants a coat every year.",
  kept: "The old finish stays: cleaned, scuffed, and one coat more.",
};

// ---------------------------------------------------------------------------------------------------------------
// What is on it

/** Lead before all; then what tells one clear finish from another. */
function tests(now: CoatingWord): readonly Part[] {
  if (now === "bare" || now === "wax") return [];
  const lead = part(
    ["lead_test", "lead_safe"],
    remark(
      "Lead first: a laboratory tests a sample of every layer. Until its result is there, it counts as lead.",
    ),
    step('test "lead, by a laboratory"'),
  );
  if (now !== "unknown") return [lead];
  return [
    lead,
    part(
      ["gloves", "eye_protection", "ventilate", "no_ignition"],
      remark("Then what it is, a drop each on a hidden spot. Write the results at the surface:"),
      remark("`tested alcohol softens` is shellac, `tested lacquer thinner softens` lacquer,"),
      remark("`tested alcohol nothing, lacquer thinner nothing` varnish or oil."),
      step('test "a drop of alcohol on a hidden spot"'),
      step('test "a drop of lacquer thinner on a hidden spot"'),
    ),
  ];
}

function preparation({ wood, now, look }: Answers): readonly Part[] {
  const isFilm = FILMS.has(now);
  if (look === "kept" || wood === "laminate" || (look === "painted" && isFilm)) return [cleaned(now)];
  if (now === "bare") return [sanded(wood, look, false)];
  // A sanding that is fit for a thin face leaves some of an oil, which no stain goes through.
  if (isFilm || (now === "oil" && look === "stained" && THIN.has(wood))) {
    return [stripped, sanded(wood, look, true)];
  }
  return [dewaxed, sanded(wood, look, true)];
}

const dewaxed = part(["gloves", "ventilate", "no_ignition"], step("dewax with mineral_spirits"));

const stripped = part(
  ["gloves", "eye_protection", "ventilate", "vapour_respirator", "no_ignition"],
  step("strip with paint_stripper"),
  step("clean with mineral_spirits"),
  wait("overnight"),
);

function cleaned(now: CoatingWord): Part {
  const wax = now === "wax" || now === "shellac" || now === "unknown" || now === "oil";
  return part(
    [...(wax ? dewaxed.duties : []), "gloves", "dust_mask"],
    ...(wax ? dewaxed.lines : []),
    step("clean with soap"),
    ...(FILMS.has(now)
      ? [step("scuff wet 220"), step("clean with water")]
      : [step("scuff 220"), step("dust")]),
  );
}

function sanded(wood: WoodWord, look: LookWord, hadCoat: boolean): Part {
  const first = THIN.has(wood) ? [] : hadCoat ? ["100", "120"] : ["120"];
  const last = look === "stained" || look === "painted" ? ["150"] : ["150", "180"];
  return part(["dust_mask"], step(`sand ${[...first, ...last].join(", ")}`), step("dust"));
}

// ---------------------------------------------------------------------------------------------------------------
// The finish

const KNOCKED_DOWN: readonly Line[] = [
  remark("Water raises the grain now, so that the first coat does not."),
  step("dampen"),
  wait("2 h"),
  step("sand 220"),
  step("dust"),
];

/** An oily wood keeps varnish and clear from drying and holding. */
const SEALED: readonly Line[] = [
  remark("Shellac keeps the oil of the wood away from the coats above."),
  layer("dewaxed_shellac, by pad"),
  wait("until recoat"),
  step("scuff 320"),
  step("dust"),
];

const CONDITIONED: readonly Line[] = [
  remark("A conditioner keeps the stain from coming out blotchy."),
  layer("oil_conditioner, by cloth, wiped off"),
  wait("until recoat"),
];

/** Oil and stain, whose vapour asks for more air than an open window gives. */
const STRONG_AIR = "ventilate 16 air changes/h";
/** A conditioner and the stain on it come on one day. */
const STRONGEST_AIR = "ventilate 40 air changes/h";
const AIRS = [STRONGEST_AIR, STRONG_AIR, "ventilate"];

function finish({ wood, now, look }: Answers): readonly Part[] {
  const sealed =
    wood === "teak" ? [part(["ventilate", "no_ignition", "gloves", "dust_mask"], ...SEALED)] : [];
  const fire = ["no_ignition", "gloves"];
  const solvent = ["ventilate", ...fire];
  const oil = [STRONG_AIR, ...fire, "wet_rags"];
  switch (look) {
    case "clear":
      return [
        ...sealed,
        ...(wood === "teak" ? [] : [part(["dust_mask"], ...KNOCKED_DOWN)]),
        part(["ventilate", "gloves"], ...THREE_CLEAR_COATS),
      ];
    case "warm":
      return [
        ...sealed,
        part(
          [...oil, "dust_mask"],
          layer("oil_polyurethane x 3, by brush, between sand 220"),
          wait("until cured"),
        ),
      ];
    case "oiled":
      return [part(oil, layer("hardwax_oil x 2, by pad, wiped off"), wait("until cured"))];
    case "outdoors":
      return [part(oil, layer("exterior_oil x 2, by brush, wiped off"), wait("until cured"))];
    case "stained":
      return [
        ...(BLOTCHY.has(wood) ? [part([STRONGEST_AIR], ...CONDITIONED)] : []),
        part(
          [...oil, "dust_mask"],
          layer("gel_stain, by cloth, wiped off"),
          wait("until cured"),
          ...THREE_CLEAR_COATS,
        ),
      ];
    case "painted":
      return [
        part(
          [...solvent, "dust_mask"],
          layer("shellac_primer, by brush"),
          wait("until recoat"),
          layer("acrylic_paint x 2, by brush, between sand 220"),
          wait("until cured"),
        ),
      ];
    case "shellac":
      return [
        part(
          [...solvent, "dust_mask"],
          layer("dewaxed_shellac x 3, by pad, between sand 320"),
          wait("until cured"),
        ),
      ];
    case "waxed":
      return [
        part(
          [STRONG_AIR, ...fire],
          layer("paste_wax x 2, by cloth, between wait overnight"),
          wait("until recoat"),
          step("buff"),
        ),
      ];
    case "kept":
      return [
        part(
          [...(now === "varnish" || now === "oil" ? oil : [STRONG_AIR, ...fire]), "dust_mask"],
          ...MORE[now],
        ),
      ];
  }
}

const THREE_CLEAR_COATS: readonly Line[] = [
  layer("waterborne_polyurethane x 3, by pad, between sand 220"),
  wait("until cured"),
];

/** What freshens up an old finish of a kind. */
const MORE: Readonly<Record<CoatingWord, readonly Line[]>> = {
  bare: [],
  unknown: [],
  paint: [],
  varnish: [layer("oil_varnish, by brush"), wait("until cured")],
  lacquer: [layer("dewaxed_shellac, by pad"), wait("until cured")],
  shellac: [layer("dewaxed_shellac, by pad"), wait("until cured")],
  oil: [layer("drying_oil, by cloth, wiped off"), wait("until cured")],
  wax: [layer("paste_wax, by cloth"), wait("until recoat"), step("buff")],
};

export const recipeText = ({ name, docs, grounds, duties, lines }: StarterRecipe): string =>
  `## ${docs}\n${block(`recipe ${name}`, [["for", grounds], ["safety", duties.join(", ")], ...lines])}`;
