/**
 * Lead in old coatings: what a stated test result is worth, and when lead is to be presumed.
 *
 * The practices are those published for housing (40 CFR 745, 24 CFR 35, the HUD guidelines); none of them was written
 * for furniture, for which they are taken by analogy. Only a laboratory that has looked at a sample of every layer can
 * lift the presumption, and even then sanding dust stays dust.
 */
import { t } from "../../../../grammar/src/translate.ts";
import { dayText } from "../measure/figures.ts";
import { countryName } from "./countries.ts";

export type LeadFinding = "none_found" | "found";
export type LeadMethod = "laboratory" | "xrf" | "swab";

/** Says that there is no result. */
export const NOT_TESTED = "not_tested";

export const LEAD_FINDINGS = [
  {
    word: "none_found",
    doc: "The test found no lead above its limit. Only `by laboratory` ends the presumption, and none of it makes dust harmless.",
  },
  { word: "found", doc: "The test found lead. Any method counts, a swab too." },
  { word: NOT_TESTED, doc: "Nobody has tested it yet, which counts as if the line were not there." },
] as const satisfies readonly { readonly word: LeadFinding | typeof NOT_TESTED; readonly doc: string }[];

export const LEAD_METHODS = [
  {
    word: "laboratory",
    doc: "A sample of every layer down to the wood, analysed by a laboratory.",
    liftsPresumption: true,
    source:
      "40 CFR 745.227 and HUD Guidelines (2012), chapter 7: paint-chip samples of all layers (from memory)",
  },
  {
    word: "xrf",
    doc: "An X-ray reading through the layers. It can find lead; on furniture it does not show that there is none.",
    liftsPresumption: false,
    source: "HUD Guidelines (2012), chapter 7; made for flat parts of buildings (from memory)",
  },
  {
    word: "swab",
    doc: "A colour test kit. It can find lead in the layer that it touches; it does not show that there is none.",
    liftsPresumption: false,
    source:
      "US CPSC staff study of lead test kits, 2007: 56 of 104 results were false negatives, and no kit found lead under a lead-free coat",
  },
] as const satisfies readonly {
  readonly word: LeadMethod;
  readonly doc: string;
  readonly liftsPresumption: boolean;
  readonly source: string;
}[];

/** A stated result; `date` is ISO, and always there where no lead was found. */
export interface LeadResult {
  readonly finding: LeadFinding;
  readonly method: LeadMethod;
  readonly date?: string;
}

/** From the year after this, paint of that country is no longer presumed to hold lead. */
export interface LeadBan {
  readonly country: string;
  readonly year: number;
  readonly limit: string;
  readonly source: string;
}

/**
 * Countries whose limit of 0.1 % or less for all consumer paint is known here. Older and higher limits (such as those
 * for white lead alone) let other lead pigments and driers pass, so they do not count.
 */
export const LEAD_BANS: readonly LeadBan[] = [
  {
    country: "US",
    year: 1978,
    limit: "0.06 %, for paint made after 27 February 1978; 90 ppm since 14 August 2009",
    source: "16 CFR 1303",
  },
  {
    country: "CA",
    year: 2005,
    limit: "600 mg/kg since 19 April 2005; 90 mg/kg since 2010",
    source: "Surface Coating Materials Regulations, SOR/2005-109 (Health Canada)",
  },
  {
    country: "AU",
    year: 1997,
    limit: "0.1 % since December 1997",
    source: "Standard for the Uniform Scheduling of Drugs and Poisons (from memory, confidence medium)",
  },
];

export const LEAD_BAN_SOURCE = "16 CFR 1303";
export const LEAD_TEST_SOURCE = `${LEAD_BAN_SOURCE}; 40 CFR 745 subpart E; the practices are those for housing, taken by analogy for furniture`;
export const LEAD_METHODS_SOURCE =
  "24 CFR 35.140 and 40 CFR 745.227(e)(6) on ways of taking paint off that are prohibited in housing, by analogy";

/** What is known of the piece and the place. */
export interface LeadFacts {
  /** The year in which the piece was built. */
  readonly built?: number | undefined;
  /** ISO 3166-1 alpha-2 */
  readonly country?: string | undefined;
  readonly result?: LeadResult | undefined;
  /** The day on which work begins, ISO; a result of a later day says nothing yet. */
  readonly begins?: string | undefined;
}

/**
 * How an old coating stands: lead `found` by a test; `presumed` by its age, or since the age is unknown; `possible`,
 * where only the country is missing that would tell whether its year is late enough; `unlikely` after a ban; and
 * `none_found` by a laboratory.
 */
export type LeadStatus = "found" | "presumed" | "possible" | "unlikely" | "none_found";

export function leadStatus({ built, country, result, begins }: LeadFacts): LeadStatus {
  if (result?.finding === "found") return "found";
  if (result && liftsPresumption(result, begins)) return "none_found";
  if (built === undefined || isBeforeEveryBan(built)) return "presumed";
  const ban = banOf(country);
  if (ban) return built <= ban.year ? "presumed" : "unlikely";
  return country === undefined ? "possible" : "presumed";
}

/** Whether lead counts as there: everything but a ban passed or a laboratory's all-clear. */
export const countsAsLead = (status: LeadStatus): boolean => status !== "unlikely" && status !== "none_found";

const liftsPresumption = ({ finding, method, date }: LeadResult, begins: string | undefined): boolean =>
  finding === "none_found" &&
  method === "laboratory" &&
  date !== undefined &&
  (begins === undefined || date <= begins);

export const banOf = (country: string | undefined): LeadBan | undefined =>
  LEAD_BANS.find((ban) => ban.country === country);

/** The earliest ban of the table: before it no country of the table helps. */
const FIRST_BAN_YEAR = Math.min(...LEAD_BANS.map(({ year }) => year));

/** Whether paint of that year is presumed to hold lead in every country. */
export const isBeforeEveryBan = (built: number): boolean => built <= FIRST_BAN_YEAR;

/**
 * What is known about lead here, in one sentence; it never says that there is none. Of a clear it says what lead has to do
 * with it: driers in a varnish, and older coats under it or colour in a lacquer or shellac, which dry without driers.
 * `isSaid` where the text around it says that the coating may hold lead.
 */
export function leadNote(facts: LeadFacts, of: NotedCoating = "paint", isSaid = false): string {
  const { built, country, result } = facts;
  switch (leadStatus(facts)) {
    case "found":
      return result!.date === undefined
        ? t`A ${METHOD_NAMES[result!.method]()} found lead.`
        : t`A ${METHOD_NAMES[result!.method]()} found lead on ${dayText(result!.date)}.`;
    case "none_found":
      return t`A laboratory found no lead on ${dayText(result!.date!)}; the dust and the chips must still not be breathed in or eaten.`;
    case "unlikely":
      return t`Built ${built!}, after ${countryName(country!)} limited lead in paint (${banOf(country)!.year}): paint of an older tin may still hold lead.`;
    case "possible":
      return isSaid
        ? t`Built ${built!}, and the shop states no \`country\` whose law would tell.`
        : t`Built ${built!}, and the shop states no \`country\` whose law would tell: old coatings on it may hold lead.`;
    default:
      return presumedNote(facts, of, isSaid);
  }
}

/** A lacquer or shellac dries by its solvent alone. */
export type NotedCoating = "paint" | "clear" | "lacquer";

const PRESUMED: Readonly<Record<NotedCoating, () => string>> = {
  paint: () => t`old coatings on it may hold lead`,
  clear: () => t`clear finishes of that time were sometimes dried with lead, and older paint may lie beneath`,
  lacquer: () => t`an older varnish or paint under it may hold lead, and so may a coloured lacquer`,
};

function presumedNote({ built, country, result }: LeadFacts, of: NotedCoating, isSaid: boolean): string {
  const tested =
    result === undefined
      ? ""
      : result.method === "laboratory"
        ? t` The laboratory's result of ${dayText(result.date!)} is later than the first day of work.`
        : t` A ${METHOD_NAMES[result.method]()} that finds none does not show that there is none.`;
  if (built === undefined) return t`Its age is not stated, so old coatings on it may hold lead.${tested}`;
  const ban = banOf(country);
  const why = ban
    ? built === ban.year
      ? t`in the year in which ${countryName(ban.country)} limited lead in paint`
      : t`before ${countryName(ban.country)} limited lead in paint (${ban.year})`
    : country === undefined
      ? t`when lead was usual in paint`
      : t`and the year in which ${countryName(country)} limited lead in paint is not known here`;
  return isSaid && of === "paint"
    ? t`Built ${built}, ${why}.${tested}`
    : t`Built ${built}, ${why}: ${PRESUMED[of]()}.${tested}`;
}

const METHOD_NAMES: Readonly<Record<LeadMethod, () => string>> = {
  laboratory: () => t`laboratory`,
  xrf: () => t`reading by XRF`,
  swab: () => t`swab`,
};
