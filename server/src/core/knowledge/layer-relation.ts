/**
 * What may go over what: a verdict for every pair of families, from their properties and a short list of exceptions.
 *
 * The questions are asked in a fixed order: exceptions first, then wax, soaking in, dissolving, wax-bearing layers,
 * oil that must dry through, brittle over flexible, and at last the hold of a film on a film. Published lists differ
 * on some pairs; the comment at an exception says what was decided. A verdict is the average behaviour of two
 * families, not of two products: a test patch and the labels decide.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { sentence } from "../sentence.ts";
import { FAMILIES, family, leavesLayer } from "./families.ts";
import type { FamilyName } from "./family-names.ts";
import type { Family } from "./family-schema.ts";
import {
  BY_DEFINITION,
  COMPATIBILITY_LIST,
  HANDBOOK_16,
  MEMORY_MEDIUM,
  PRACTICE,
  STAIN_72_H,
  TEXTBOOK,
  UFC_PAINTING,
} from "./sources.ts";

export type RelationVerdict = "fine" | "fine if abraded" | "fine after cure" | "needs a barrier" | "no";

export interface Relation {
  readonly verdict: RelationVerdict;
  /** Why, in one sentence without its full stop. */
  readonly reason: string;
  /** What to do about it, as the rest of that sentence; none where the verdict says it all. */
  readonly advice?: string;
  readonly source: string;
}

export interface RelationRow {
  readonly over: FamilyName;
  readonly below: FamilyName;
  readonly relation: Relation;
}

/** A film this many steps of `hardness` above the film below it is brittle over soft. */
export const HARD_OVER_SOFT_STEPS = 2;

/** Stiff over flexible, though the order of hardness has them close: films that are made to move, and what does not. */
const STIFF_OVER_FLEXIBLE = [
  ...pairs(["oil polyurethane", "waterborne two part polyurethane"], ["spar varnish"], {
    verdict: "no",
    get reason() {
      return t`Spar varnish is made to give with the wood; the stiffer polyurethane over it checks and lets go`;
    },
    advice: "strip it, or stay with spar varnish",
    source: `rigid over flexible, ${UFC_PAINTING}; finishers agree, common practice`,
  }),
  ...pairs(["alkyd paint"], ["acrylic paint"], {
    verdict: "no",
    get reason() {
      return t`Alkyd paint goes on hardening with the years, acrylic stays flexible under it, and the alkyd cracks`;
    },
    advice: "put a primer between them",
    source: `rigid over flexible, ${UFC_PAINTING}; ${TEXTBOOK}: oil on latex is rarely best`,
  }),
] as const;

const STAINS = [
  "waterborne stain",
  "oil stain",
  "gel stain",
  "dye stain",
  "water stain",
  "water dye",
  "alcohol dye",
  "oil dye",
] as const satisfies readonly FamilyName[];

/** Pairs that the properties do not tell, or tell wrongly. */
const EXCEPTIONS: ReadonlyMap<string, Relation> = new Map([
  ...STIFF_OVER_FLEXIBLE,
  ...pairs(
    ["two part polyurethane", "two part primer"],
    ["nitrocellulose lacquer", "precatalyzed lacquer", "sanding sealer"],
    {
      verdict: "no",
      get reason() {
        return t`Two-part polyurethane wrinkles lacquer and cracks over it`;
      },
      advice: "use its own sealer, or strip",
      source: `rigid over flexible, ${UFC_PAINTING}; ${MEMORY_MEDIUM}`,
    },
  ),
  ...pairs(["two part primer"], ["two part polyurethane"], {
    verdict: "fine",
    reason: "It is of the same kind and goes on within the recoat window; after it, abrade first",
    source: PRACTICE,
  }),
  ...pairs(["conversion varnish"], ["nitrocellulose lacquer", "precatalyzed lacquer", "sanding sealer"], {
    verdict: "no",
    get reason() {
      return t`Conversion varnish wrinkles and cracks over lacquer and lacquer sealer`;
    },
    advice: "use its own sealer, or strip",
    source: `${TEXTBOOK}; rigid over flexible, ${UFC_PAINTING}`,
  }),
  ...pairs(["nitrocellulose lacquer", "precatalyzed lacquer", "sanding sealer"], ["conversion varnish"], {
    verdict: "no",
    get reason() {
      return t`Lacquer does not hold on a cured conversion varnish`;
    },
    source: TEXTBOOK,
  }),
  ...pairs(["two part polyurethane", "two part primer"], ["drying oil", "hardwax oil", "exterior oil"], {
    verdict: "no",
    get reason() {
      return t`Oil in the wood comes up under two-part polyurethane`;
    },
    source: MEMORY_MEDIUM,
  }),
  ...pairs(["conversion varnish"], ["drying oil", "hardwax oil", "exterior oil"], {
    verdict: "no",
    get reason() {
      return t`Oil in the wood comes up under conversion varnish, and it cracks over a shellac barrier`;
    },
    source: TEXTBOOK,
  }),
  ...pairs(
    ["nitrocellulose lacquer", "precatalyzed lacquer", "sanding sealer"],
    ["drying oil", "hardwax oil", "exterior oil"],
    {
      verdict: "needs a barrier",
      get reason() {
        return t`Oil in the wood comes up under lacquer`;
      },
      advice: "let it cure and seal it with dewaxed shellac first",
      // The list takes no cellulose lacquer over oil at all; textbooks allow it over a shellac barrier.
      source: `${COMPATIBILITY_LIST}; ${TEXTBOOK}`,
    },
  ),
  ...pairs(["soap finish"], ["drying oil", "hardwax oil", "exterior oil"], {
    verdict: "fine after cure",
    reason: "Soap cares for oiled wood once the oil has dried through",
    source: MEMORY_MEDIUM,
  }),
  ...pairs(["drying oil", "hardwax oil", "exterior oil"], STAINS, {
    verdict: "fine",
    reason: "Oil goes over a dry stain, which stays open enough to take it",
    source: TEXTBOOK,
  }),
  ...pairs(["glaze"], STAINS, {
    verdict: "needs a barrier",
    get reason() {
      return t`A glaze over an unsealed stain sinks in unevenly`;
    },
    advice: "seal the stain with a thin coat first",
    source: TEXTBOOK,
  }),
]);

/**
 * May a layer of `over` go on a layer of `below`? The layer below is taken as dry enough to recoat, and clean.
 * "fine if abraded" is about a film that has cured or is slick: within a recoat window films take each other as they
 * are. "fine after cure" counts the `cure` of the layer below.
 */
export function relation(over: Family, below: Family): Relation {
  if (over.readings || below.readings) return mildestRelation(over, below);
  if (!leavesLayer(below)) return fine(`${sentence(below.name)} leaves no layer`, BY_DEFINITION);
  if (!leavesLayer(over)) return auxiliaryOver(over, below);
  return (
    waxBelow(over, below) ??
    soapBelow(over, below) ??
    mineralOilBelow(over, below) ??
    fillsDents(over, below) ??
    EXCEPTIONS.get(pairKey(over.name, below.name)) ??
    sameFamily(over, below) ??
    milkPaintOnFilm(over, below) ??
    soaksIn(over, below) ??
    onFiller(over, below) ??
    fillsPores(over, below) ??
    dissolves(over, below) ??
    waxBearing(over, below) ??
    oilMustDry(over, below) ??
    hardOverSoft(over, below) ??
    filmOnFilm(over, below)
  );
}

/** Of a word that may be several families only what holds of all of them is said. */
function mildestRelation(over: Family, below: Family): Relation {
  const rowsOf = ({ name, readings = [name] }: Family): readonly Family[] => readings.map(family);
  return rowsOf(over)
    .flatMap((above) => rowsOf(below).map((under) => relation(above, under)))
    .toSorted((a, b) => VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict))[0]!;
}

const VERDICTS: readonly RelationVerdict[] = [
  "fine",
  "fine if abraded",
  "fine after cure",
  "needs a barrier",
  "no",
];

/** The relation of every pair of families that leave a layer. */
export function relationMatrix(): readonly RelationRow[] {
  const layers = [...FAMILIES.values()].filter(leavesLayer);
  return layers.flatMap((below) =>
    layers.map((over) => ({ over: over.name, below: below.name, relation: relation(over, below) })),
  );
}

const SYMBOLS: Readonly<Record<RelationVerdict, string>> = {
  fine: "✓",
  "fine if abraded": "a",
  "fine after cure": "c",
  "needs a barrier": "b",
  no: "–",
};

/** The matrix as a Markdown table: a row for what lies below, a column for what goes over it. */
export function renderRelationMatrix(): string {
  const names = [...FAMILIES.values()].filter(leavesLayer).map((row) => row.name);
  const symbols = new Map(
    relationMatrix().map((row) => [pairKey(row.over, row.below), SYMBOLS[row.relation.verdict]]),
  );
  const numbers = names.map((_, index) => String(index + 1));
  return [
    "✓ fine · a fine if abraded · c fine after cure · b needs a barrier · – no",
    "",
    `| below ↓ over → | ${numbers.join(" | ")} |`,
    `| --- | ${numbers.map(() => "---").join(" | ")} |`,
    ...names.map(
      (below, index) =>
        `| ${index + 1} ${below} | ${names.map((over) => symbols.get(pairKey(over, below))).join(" | ")} |`,
    ),
    "",
  ].join("\n");
}

function waxBelow(over: Family, below: Family): Relation | undefined {
  if (below.role !== "wax") return undefined;
  if (over.role === "wax") return fine("Wax goes over wax", TEXTBOOK);
  return {
    verdict: "no",
    reason: t`Nothing but wax holds on wax`,
    advice: "take all of it off first",
    source: `${COMPATIBILITY_LIST}: wax takes none`,
  };
}

function fillsDents(over: Family, below: Family): Relation | undefined {
  if (over.name !== "wood filler") return undefined;
  return (
    oilMustDry(over, below) ??
    fine(
      "A waterborne filler is put into a dent and levelled; it needs no hold on the film around it",
      MEMORY_MEDIUM,
    )
  );
}

/** Casein paint holds by soaking in; primers are made to be painted over, and shellac is one of them. */
function milkPaintOnFilm(over: Family, below: Family): Relation | undefined {
  if (!flakesOn(over, below)) return undefined;
  return {
    verdict: "needs a barrier",
    reason: t`Milk paint soaks in to hold and flakes off a film`,
    advice: "put a bonding or shellac primer between them",
    source: PRACTICE,
  };
}

/** Whether `over` is a milk paint and `below` a film that it flakes off. */
export function flakesOn(over: Family, below: Family): boolean {
  return (
    over.binder === "casein" &&
    below.buildsFilm &&
    below.role !== "primer" &&
    below.binder !== "shellac" &&
    !isPorousPaint(below)
  );
}

function soapBelow(over: Family, below: Family): Relation | undefined {
  if (below.binder !== "soap") return undefined;
  if (over.binder === "soap") return fine("Soap is renewed over soap", MEMORY_MEDIUM);
  return {
    verdict: "no",
    reason: t`Nothing but soap holds on soap`,
    advice: "take all of it out with water, let the wood dry and sand it",
    source: MEMORY_MEDIUM,
  };
}

/** It never dries, so a coat floats on it; wax is rubbed into it, as board makers do. */
function mineralOilBelow(over: Family, below: Family): Relation | undefined {
  if (below.binder !== "mineral oil") return undefined;
  if (over.binder === "mineral oil") return fine("Mineral oil is renewed over mineral oil", PRACTICE);
  if (over.role === "wax") return fine("Wax is rubbed in over mineral oil", PRACTICE);
  return {
    verdict: "no",
    reason: t`Mineral oil never dries, and nothing holds on it`,
    advice: "draw it out with mineral spirits and sand to clean wood first",
    source: PRACTICE,
  };
}

function auxiliaryOver(over: Family, below: Family): Relation {
  if (over.role !== "stripper" && below.dissolvedBy.includes(over.carrier)) {
    return {
      verdict: "no",
      reason: t`${sentence(translated(over.name))} dissolves ${translated(below.name)}`,
      source: below.sources.dissolvedBy ?? TEXTBOOK,
    };
  }
  return fine(`${sentence(over.name)} leaves no layer`, BY_DEFINITION);
}

function sameFamily(over: Family, below: Family): Relation | undefined {
  if (over.name !== below.name) return undefined;
  if (below.recoat?.[1] != null) {
    return fine("A further coat goes on within the recoat window; after it, abrade first", TEXTBOOK);
  }
  return fine("A further coat of the same material", UFC_PAINTING);
}

/** Stains, conditioners and oils need an open surface. */
function soaksIn(over: Family, below: Family): Relation | undefined {
  if (!over.penetrating) return undefined;
  if (below.role === "filler") return undefined;
  if (below.evensStain && over.role === "stain") {
    if (below.buildsFilm && below.dissolvedBy.includes(over.carrier)) {
      return {
        verdict: "no",
        reason: t`The ${translated(over.carrier)} of ${translated(over.name)} dissolves a washcoat of ${translated(below.name)}`,
        advice: "use a conditioner under it",
        source: below.sources.dissolvedBy ?? TEXTBOOK,
      };
    }
    if (below.buildsFilm) {
      return {
        verdict: "fine if abraded",
        reason: "Only over a thin washcoat, sanded back so that the stain can still reach the wood",
        source: `${HANDBOOK_16}: thinned shellac or lacquer limits absorption`,
      };
    }
    if (below.drying === "oxidising" && over.carrier === "water") return afterCure(over, below);
    return fine("A conditioner evens the colour of the stain", TEXTBOOK);
  }
  if ((over.role === "oil" || over.role === "stain") && isPorousPaint(below)) {
    return fine("The paint is porous and takes oil and stain, which darken it", TEXTBOOK);
  }
  if (over.role === "oil" && below.role === "clear" && below.binder === "shellac") {
    return fine(
      "Oil is rubbed thinly over shellac, as polishers do",
      `${COMPATIBILITY_LIST}: shellac takes oil`,
    );
  }
  if (below.buildsFilm || below.role === "glaze") {
    return {
      verdict: "no",
      reason: t`${sentence(translated(over.name))} cannot soak through a film`,
      source: TEXTBOOK,
    };
  }
  if (below.role === "oil") {
    return over.role === "oil"
      ? fine("Oil goes over oil once the first coat has dried", TEXTBOOK)
      : { verdict: "no", reason: t`Oil has closed the wood; no stain soaks in`, source: TEXTBOOK };
  }
  if (over.role === "conditioner" && below.role === "stain") {
    return { verdict: "no", reason: t`A conditioner goes under the stain, not over it`, source: TEXTBOOK };
  }
  if (below.drying === "oxidising" && over.carrier === "water") return afterCure(over, below);
  return fine("Both soak in; the second goes on once the first is dry", MEMORY_MEDIUM);
}

function onFiller(over: Family, below: Family): Relation | undefined {
  if (below.role !== "filler" || over.role !== "stain") return undefined;
  if (below.takesStain !== true) {
    return {
      verdict: "no",
      reason: t`${sentence(translated(below.name))} does not take a stain as the wood does; it shows as a patch`,
      source: below.sources.takesStain ?? TEXTBOOK,
    };
  }
  if (below.drying === "oxidising" && over.carrier === "water") return afterCure(over, below);
  return fine("Stain takes on the filler once it is dry", `${HANDBOOK_16}: stain, fill and seal`);
}

function fillsPores(over: Family, below: Family): Relation | undefined {
  if (over.name !== "grain filler" || !below.buildsFilm || below.evensStain) return undefined;
  return {
    verdict: "no",
    reason: t`Grain filler goes on bare or thinly sealed wood; a film has closed the pores already`,
    source: `${HANDBOOK_16}: stain, fill and seal`,
  };
}

function dissolves(over: Family, below: Family): Relation | undefined {
  if (below.dissolvedBy.includes(over.carrier) && !isQuickOver(over, below)) {
    if (below.binder === over.binder) {
      return fine("It melts into the layer below and becomes one film with it", TEXTBOOK);
    }
    if (!takesShellac(below)) {
      return {
        verdict: "no",
        reason: t`The ${translated(over.carrier)} of ${translated(over.name)} softens ${translated(below.name)}, as shellac between them would`,
        advice: "choose a waterborne coat",
        source: below.sources.dissolvedBy ?? TEXTBOOK,
      };
    }
    if (cracksOverShellac(over)) {
      return {
        verdict: "no",
        reason: t`The ${translated(over.carrier)} of ${translated(over.name)} wrinkles or dissolves ${translated(below.name)}`,
        advice: "strip it, or choose another clear",
        source: below.sources.dissolvedBy ?? TEXTBOOK,
      };
    }
    return {
      verdict: "needs a barrier",
      reason: t`The ${translated(over.carrier)} of ${translated(over.name)} wrinkles or dissolves ${translated(below.name)}`,
      advice: "put dewaxed shellac between them",
      source: `${below.sources.dissolvedBy ?? TEXTBOOK}; solvent-sensitive coatings, ${UFC_PAINTING}`,
    };
  }
  if (below.dissolvedUncuredBy.includes(over.carrier)) {
    return {
      verdict: "fine after cure",
      reason: `The ${over.carrier} of ${over.name} wrinkles ${below.name} that has not dried through`,
      source: below.sources.dissolvedUncuredBy ?? TEXTBOOK,
    };
  }
  return undefined;
}

/** Whether a barrier of shellac can go on it: not where alcohol softens it, unless it is shellac itself. */
export const takesShellac = (below: Family): boolean =>
  below.binder === "shellac" || !below.dissolvedBy.includes("alcohol");

/** Shellac primer goes on acrylic paint in one quick coat, dry before its alcohol has softened the paint: common practice, no source. */
export const isQuickOver = (over: Family, below: Family): boolean =>
  over.name === "shellac primer" && below.name === "acrylic paint";

function waxBearing(over: Family, below: Family): Relation | undefined {
  if (below.waxBearing !== true || !shunsWax(over)) return undefined;
  return {
    verdict: "needs a barrier",
    reason: t`${sentence(translated(over.name))} does not hold on the wax or stearate of ${translated(below.name)}`,
    advice: "put dewaxed shellac between them",
    source: TEXTBOOK,
  };
}

/** Polyurethane of either kind, and waterborne clears: what does not hold on wax or stearate. */
export function shunsWax(over: Family): boolean {
  const isPolyurethane = over.binder === "oil-modified urethane" || over.binder === "polyurethane dispersion";
  return isPolyurethane || (over.role === "clear" && over.carrier === "water");
}

function oilMustDry(over: Family, below: Family): Relation | undefined {
  if (below.drying !== "oxidising") return undefined;
  if (over.carrier === "water") return afterCure(over, below);
  if (over.role === "wax" && below.buildsFilm) return afterCure(over, below);
  return undefined;
}

const STIFF_PAIRS: ReadonlySet<string> = new Set(STIFF_OVER_FLEXIBLE.map(([key]) => key));

/** Whether a film of `over` is so much harder or stiffer than one of `below` that it cracks where that one gives. */
export function cracksOver(over: Family, below: Family): boolean {
  if (!over.buildsFilm || !below.buildsFilm) return false;
  // It is sold as the clear over waterborne paint and primer, and is a dispersion that gives a little: common practice.
  if (over.name === "waterborne two part polyurethane" && below.drying === "waterborne") return false;
  return (
    over.hardness - below.hardness >= HARD_OVER_SOFT_STEPS || STIFF_PAIRS.has(pairKey(over.name, below.name))
  );
}

function hardOverSoft(over: Family, below: Family): Relation | undefined {
  if (!cracksOver(over, below)) return undefined;
  return {
    verdict: "no",
    reason: t`${sentence(translated(over.name))} is brittle and cracks over the softer ${translated(below.name)}`,
    source: `rigid over flexible, ${UFC_PAINTING}`,
  };
}

function cracksOverShellac(over: Family): boolean {
  return over.hardness - family("dewaxed shellac").hardness >= HARD_OVER_SOFT_STEPS;
}

function filmOnFilm(over: Family, below: Family): Relation {
  const holdsByItself =
    !below.buildsFilm ||
    below.role === "primer" ||
    below.role === "sealer" ||
    below.role === "glaze" ||
    below.binder === "shellac";
  if (over.role === "wax") return fine("Wax goes over any dry finish, as the last layer", COMPATIBILITY_LIST);
  if (below.binder === "epoxy") return abraded("Cured epoxy is slick; abrade it");
  if (below.binder === "polyester")
    return abraded("The skin of a polyester filler stays sticky and holds nothing; sand it off");
  if (holdsByItself || isPorousPaint(below)) {
    return fine(
      below.binder === "dye"
        ? "Put the first coat on in one light pass: a wet brush moves dye"
        : "It holds once the layer below is dry",
      TEXTBOOK,
    );
  }
  if (over.name === "shellac primer" || over.name === "bonding primer") {
    return abraded("It is made to hold on other films, once they are dull and clean");
  }
  // A list refuses shellac over polyurethane and lacquer; textbooks allow it over a scuffed, cured film, and so do we.
  return abraded("A film holds on a cured film once that is dull and clean");
}

function isPorousPaint(row: Family): boolean {
  return row.name === "chalky paint" || row.name === "milk paint";
}

function afterCure(over: Family, below: Family): Relation {
  const isStain = below.role === "stain";
  return {
    verdict: "fine after cure",
    reason: `${sentence(over.name)} peels from ${below.name} that has not dried through${
      below.role === "clear" || below.role === "paint" ? "; scuff it as well" : ""
    }`,
    source: isStain ? STAIN_72_H : `${TEXTBOOK}; latex over alkyd, ${UFC_PAINTING}`,
  };
}

function fine(reason: string, source: string): Relation {
  return { verdict: "fine", reason, source };
}

function abraded(reason: string): Relation {
  return { verdict: "fine if abraded", reason, source: UFC_PAINTING };
}

function pairKey(over: FamilyName, below: FamilyName): string {
  return `${over} over ${below}`;
}

function pairs(
  overs: readonly FamilyName[],
  belows: readonly FamilyName[],
  verdict: Relation,
): readonly (readonly [string, Relation])[] {
  return overs.flatMap((over) => belows.map((below) => [pairKey(over, below), verdict] as const));
}
