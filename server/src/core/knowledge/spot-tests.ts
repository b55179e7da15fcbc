/**
 * Spot tests of an old clear finish: a drop of a solvent, a drop of water or a hot needle on a hidden spot, and which
 * families the result speaks against. No test shows lead: for that see `lead.ts`.
 */
import { worstFamilies } from "./existing.ts";
import type { FamilyName } from "./family-names.ts";
import type { Family } from "./family-schema.ts";
import { PRACTICE } from "./sources.ts";

interface SpotTest {
  readonly word: string;
  readonly doc: string;
  /** Families that never behave so: stated as `existing`, they and the test contradict each other. */
  readonly against: readonly FamilyName[];
  /** Families that seldom do: an unknown clear counts as none of them, and stated they are left alone. */
  readonly seldom: readonly FamilyName[];
  /** Something must be on the wood for this to show. */
  readonly showsFinish?: true;
  readonly source: string;
}

const SHELLACS = ["shellac", "waxed shellac", "dewaxed shellac"] as const;
const OILS_AND_VARNISHES = [
  "drying oil",
  "oil varnish",
  "spar varnish",
  "oil polyurethane",
  "wiping varnish",
] as const;
const HARD_CURED = [
  "conversion varnish",
  "epoxy coating",
  "two part polyurethane",
  "waterborne two part polyurethane",
] as const;
const LACQUERS = ["nitrocellulose lacquer", "precatalyzed lacquer"] as const;
const WATERBORNE = ["waterborne polyurethane", "waterborne acrylic", "waterborne lacquer"] as const;

export const SPOT_TESTS = [
  {
    word: "alcohol softens",
    doc: "A drop of alcohol makes it sticky within minutes: shellac.",
    against: [...OILS_AND_VARNISHES, ...HARD_CURED],
    seldom: [...LACQUERS, ...WATERBORNE],
    showsFinish: true,
    source: PRACTICE,
  },
  {
    word: "alcohol nothing",
    doc: "Alcohol leaves it as it is: no shellac.",
    against: SHELLACS,
    seldom: [],
    source: PRACTICE,
  },
  {
    word: "lacquer thinner softens",
    doc: "A drop of lacquer thinner makes it sticky: lacquer, or shellac where alcohol does so too.",
    against: HARD_CURED,
    seldom: [...OILS_AND_VARNISHES, ...WATERBORNE],
    showsFinish: true,
    source: PRACTICE,
  },
  {
    word: "lacquer thinner nothing",
    doc: "Lacquer thinner leaves it as it is: no shellac and no lacquer, but oil, varnish or a catalysed finish.",
    against: [...SHELLACS, "nitrocellulose lacquer"],
    seldom: ["precatalyzed lacquer", ...WATERBORNE],
    source: PRACTICE,
  },
  {
    word: "xylene softens",
    doc: "A drop of xylene makes it sticky: a waterborne clear.",
    against: [...SHELLACS, ...HARD_CURED],
    seldom: [...OILS_AND_VARNISHES, ...LACQUERS],
    showsFinish: true,
    source: PRACTICE,
  },
  {
    word: "xylene nothing",
    doc: "Xylene leaves it as it is: hardly a waterborne clear.",
    against: [],
    seldom: WATERBORNE,
    source: PRACTICE,
  },
  {
    word: "water beads",
    doc: "Water stands on it in drops: a film or wax, hardly oil alone.",
    against: [],
    seldom: ["drying oil"],
    showsFinish: true,
    source: PRACTICE,
  },
  {
    word: "heat softens",
    doc: "A hot needle sinks in: shellac, lacquer or a waterborne clear. Keep it away from the solvents of the other tests.",
    against: HARD_CURED,
    seldom: OILS_AND_VARNISHES,
    showsFinish: true,
    source: PRACTICE,
  },
] as const satisfies readonly SpotTest[];

export type SpotTestWord = (typeof SPOT_TESTS)[number]["word"];

const BY_WORD: ReadonlyMap<string, SpotTest> = new Map(SPOT_TESTS.map((test) => [test.word, test]));

/** Whether a test speaks against what is said to be on top: a family, or `undefined` for bare wood. */
export function contradicts(word: SpotTestWord, existing: FamilyName | undefined): boolean {
  const test = BY_WORD.get(word);
  if (!test) return false;
  return existing === undefined ? test.showsFinish === true : test.against.includes(existing);
}

/**
 * What an unknown clear may be by its tests, wax aside: at least one family. Undefined without tests, and where they
 * leave no family: then it counts as the worst that it may be, as if nobody had tested it.
 */
export function narrowedClear(words: readonly SpotTestWord[]): readonly Family[] | undefined {
  if (words.length === 0) return undefined;
  const out = new Set<FamilyName>(
    words.flatMap((word) => {
      const test = BY_WORD.get(word);
      return test ? [...test.against, ...test.seldom] : [];
    }),
  );
  const left = worstFamilies("unknown clear").filter(({ name, role }) => role !== "wax" && !out.has(name));
  return left.length === 0 ? undefined : left;
}
