/**
 * Follows the remedies of findings one after another, as somebody would who does what he is told, and says where that
 * ends.
 */
import { FAMILIES, leavesLayer } from "../../server/src/core/knowledge/families.ts";
import type { FamilyName } from "../../server/src/core/knowledge/family-names.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { plan } from "./planner.ts";
import { applied } from "./show-findings.ts";

const FILE = "test.finish";

/** More remedies than these are no way out. */
export const MOST_REMEDIES = 12;

/** What is taken of several: the first finding that has a fix and its first fix, or the last of both. */
export const ORDERS = ["first", "last"] as const;
export type Order = (typeof ORDERS)[number];

export interface Walk {
  /** `unfit` is one finding alone, `not-for-this-use`. */
  readonly end: "clean" | "unfit" | "no fix" | "in a circle" | "too long";
  /** `rule: title of the fix`, in order. */
  readonly steps: readonly string[];
  /** Errors and warnings at the end. */
  readonly left: readonly FileFinding[];
  readonly text: string;
}

/** Walks from a text until nothing above a hint is left, or it goes no further. */
export function walkRemedies(start: string, order: Order): Walk {
  const seen = new Set<string>();
  const steps: string[] = [];
  for (let text = start; ; ) {
    const left = gravely(text);
    const walk = { steps, left, text };
    if (left.length === 0) return { end: "clean", ...walk };
    if (left.length === 1 && left[0]!.rule === "not-for-this-use") return { end: "unfit", ...walk };
    if (seen.has(text)) return { end: "in a circle", ...walk };
    if (steps.length === MOST_REMEDIES) return { end: "too long", ...walk };
    seen.add(text);
    const at = order === "first" ? 0 : -1;
    const finding = left.filter(({ fixes }) => fixes.length > 0).at(at);
    const fix = finding?.fixes.at(at);
    if (!finding || !fix) return { end: "no fix", ...walk };
    steps.push(`${finding.rule}: ${fix.title}`);
    text = applied(text, FILE, fix);
  }
}

const known = new Map<string, readonly FileFinding[]>();

/** Errors and warnings; many walks go over the same texts. */
function gravely(text: string): readonly FileFinding[] {
  const before = known.get(text);
  if (before) return before;
  const analyst = createAnalyst({ resolve: (_, path) => path, plan });
  analyst.setFile(FILE, text);
  const findings = analyst
    .analysis()
    .findings(FILE)
    .filter(({ severity }) => severity === "error" || severity === "warning");
  known.set(text, findings);
  return findings;
}

// ---------------------------------------------------------------------------------------------------------------
// Where the walks begin

export const WEARS = ["light", "normal", "hard"] as const;

/** A surface of each kind: open-pored and blotchy wood, boards, a thin face, slick stuff, and old finishes. */
export const SURFACES = {
  oak: ["wood oak"],
  pine: ["wood pine"],
  veneer: ["wood walnut, veneer 0.6 mm"],
  plywood: ["wood plywood"],
  MDF: ["wood MDF"],
  metal: ["wood metal"],
  laminate: ["wood laminate"],
  "old varnish": ["wood oak", "existing oil varnish"],
  // What may hold lead is a matter for a laboratory first, and no fix writes its result.
  "old paint": ["wood pine", "existing alkyd paint", "lead none_found by laboratory 2026-11-03"],
  "old wax": ["wood oak", "existing paste wax"],
} as const satisfies Record<string, readonly string[]>;

/** Recipes as people begin them: one line, or coats with something or nothing between them. */
export const STARTS = {
  "one line": (layer: string) => [`layer ${layer}`, "wait until cured"],
  "sanded, two lines": (layer: string) => [
    "step sand 120, 180",
    "step dust",
    `layer ${layer}`,
    "wait until recoat",
    `layer ${layer}`,
    "wait until cured",
  ],
  "three coats": (layer: string) => [`layer ${layer} x 3 {`, "  wait until recoat", "}", "wait until cured"],
  "sanded between, no last wait": (layer: string) => [
    `layer ${layer} x 2 {`,
    "  wait until recoat",
    "  step sand 320",
    "}",
  ],
} as const satisfies Record<string, (layer: string) => readonly string[]>;

export interface Case {
  readonly family: FamilyName;
  readonly surface: keyof typeof SURFACES;
  readonly wear: (typeof WEARS)[number];
  readonly start: keyof typeof STARTS;
}

/** Every family that leaves a layer, on every surface, for every wear. */
export const casesFrom = (start: Case["start"]): readonly Case[] =>
  [...FAMILIES.values()]
    .filter(leavesLayer)
    .flatMap(({ name }) =>
      (Object.keys(SURFACES) as Case["surface"][]).flatMap((surface) =>
        WEARS.map((wear) => ({ family: name, surface, wear, start })),
      ),
    );

export const nameOf = ({ family, surface, wear, start }: Case): string =>
  `${family} on ${surface}, wear ${wear}, ${start}`;

/** A piece, a recipe that is nothing but its finish, and the job. No shop, no money, no dates. */
export const textOf = ({ family, surface, wear, start }: Case): string => `piece shelf {
  built 2015
  surface top {
    shape panel 800 mm x 300 mm
    ${[...SURFACES[surface], `wear ${wear}`].join("\n    ")}
  }
}
recipe finish {
  ${STARTS[start](family.replaceAll(" ", "_")).join("\n  ")}
}
job shelves {
  piece shelf
  apply finish to top
}
`;
