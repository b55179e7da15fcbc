/**
 * Findings: what the checker has to say about a text, as plain data in offsets relative to declarations.
 */
import type { UnitSystem } from "./measure/shown-figures.ts";
import type { Place } from "./place.ts";
import { withoutFullStop } from "./sentence.ts";

export type Severity = "error" | "warning" | "information" | "hint";

/** The gravest first. */
export const SEVERITIES = ["error", "warning", "information", "hint"] as const satisfies readonly Severity[];

interface Graded {
  readonly severity: Severity;
}

/** The order of what is graver; 0 where both are as grave. */
export const byGravity = (a: Graded, b: Graded): number =>
  SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity);

/** Whether something of this severity is as grave as a level, or graver. */
export const isAtLeast = (severity: Severity, level: Severity): boolean =>
  SEVERITIES.indexOf(severity) <= SEVERITIES.indexOf(level);

export const gravest = (severities: readonly Severity[]): Severity =>
  SEVERITIES.find((severity) => severities.includes(severity)) ?? "hint";

/**
 * What a finding says. The parts stand on lines of their own, wherever a finding is shown whole; where there is room for
 * one line, it is the headline.
 */
export interface FindingText {
  /** The gist, in at most 70 characters and without a full stop. */
  readonly headline: string;
  /** Why it matters at the bench; several lines where the finding is a list. Empty where the headline says it all. */
  readonly why: string;
  /** What to do, as an imperative. */
  readonly remedy: string;
  /**
   * The remedy in one short sentence, for where the finding is told in one line below another; absent where it is one, and
   * empty where the other says all of it.
   */
  readonly brief?: string;
  /**
   * What of the remedy is to be done first, where the rest waits for it: where a message has little room the rest is left to
   * the page of the rule.
   */
  readonly atFirst?: string;
  /**
   * What is left to do where another finding has the material replaced by another, as a clause; absent where the remedy holds
   * for any material.
   */
  readonly ifReplaced?: string;
  /** What follows from it, a short line each with what to do about that: an editor's hover shows the message alone. */
  readonly also?: readonly string[];
  /** What to do where another finding of the same matter has told it all: one cause, told whole once. */
  readonly again?: Again;
  /** The shop in whose place its remedy says what other room the work needs. */
  readonly tellsRoom?: string;
  /** What to do where a finding of the same shop has said what other room: that is told whole once. */
  readonly inThatRoom?: { readonly shop: string; readonly remedy: string };
  /** The job and the surfaces that it is about, where it does not hold whatever the job. */
  readonly where?: string;
}

export interface Again {
  /** The matter: the lead of one job, the flame of one shop. */
  readonly key: string;
  /** What it is told of, for the others to lead there: "`gel_stain`". */
  readonly of: string;
  readonly remedy: string;
  readonly atFirst?: string;
  /** Why, where the first finding has told most of it; else the reason stays as it is. */
  readonly why?: string;
}

/** All of it: headline, why, remedy, what follows, and where, a line each. */
export const messageOf = ({ headline, why, remedy, also = [], where = "" }: FindingText): string =>
  [headline, why, remedy, ...also, where].filter((line) => line !== "").join("\n");

/** The text in a message whose lines are `headline`, `headline\nremedy`, or `headline\nwhy\nremedy`. */
export function textOf(message: string): FindingText {
  const [headline = "", ...rest] = message.split("\n");
  return {
    headline: withoutFullStop(headline),
    why: rest.slice(0, -1).join("\n"),
    remedy: rest.at(-1) ?? "",
  };
}

/** Two findings of one rule on one place or line as one text: the second is told under the headline of the first. */
export function joinedText(first: FindingText, second: FindingText): FindingText {
  if (messageOf(first).includes(messageOf(second))) return first;
  const why = [first.why, second.headline, second.why].filter((line) => line !== "");
  const remedies = [first.remedy, second.remedy].filter((line) => line !== "");
  const { atFirst: _, ...told } = first;
  return { ...told, why: why.join("\n"), remedy: [...new Set(remedies)].join(" ") };
}

/** So many are compared with all before them; of more only those that say quite the same are left out. */
const COMPARED = 50;

/** The same for any number of findings, at least one, in time that grows with their number alone. */
export function joinedTexts(texts: readonly FindingText[]): FindingText {
  const first = texts.slice(0, COMPARED).reduce(joinedText);
  const others = new Map(texts.slice(COMPARED).map((text) => [messageOf(text), text]));
  if (others.size === 0) return first;
  const why = [...others.values()].flatMap((text) => [text.headline, text.why]);
  const remedies = new Set([...others.values()].map(({ remedy }) => remedy));
  const lines = [first.why, ...why].filter((line) => line !== "");
  const added = [...remedies].filter((remedy) => remedy !== "" && !first.remedy.includes(remedy));
  const { atFirst: _, ...told } = first;
  return {
    ...told,
    why: lines.join("\n"),
    remedy: [first.remedy, ...added].filter((remedy) => remedy !== "").join(" "),
  };
}

export interface RelatedPlace {
  readonly place: Place;
  readonly message: string;
  /** Where the finding stands on a line that leads to the recipe, the line of the recipe that it is about. */
  readonly isCause?: true;
}

export interface TextEdit {
  readonly place: Place;
  readonly text: string;
  /** `text` is one or more whole lines, to be put above the line of `place` and indented like it. */
  readonly linesAbove?: true;
  /** The same below the statement that ends where `place` does, and below its block; at most one of the two. */
  readonly linesBelow?: true;
}

/**
 * What a fix does to the recipe:
 *
 * - `safe`: neither what is done nor what is promised changes, so it may be applied without a look.
 * - `change`: something else is done or meant: another grit, material, step or word. To be looked at.
 * - `undertaking`: the text then states a duty, a test, a wait or a fact of a label, which is true only if somebody sees to
 *   it. The title says what that person undertakes.
 *
 * Only safe ones are ever preferred by an editor or applied along with others.
 */
export type FixKind = "safe" | "change" | "undertaking";

/** A change that removes the finding. */
export interface Fix {
  readonly title: string;
  readonly kind: FixKind;
  readonly edits: readonly TextEdit[];
}

export interface Finding extends FindingText {
  readonly rule: string;
  readonly severity: Severity;
  readonly place: Place;
  readonly related: readonly RelatedPlace[];
  readonly fixes: readonly Fix[];
  /** The job whose piece, shop or arguments bring the finding; absent where it holds whatever the job. */
  readonly job?: string;
  /** The surfaces of that job that it concerns, by their labels; absent where it concerns the job as a whole. */
  readonly surfaces?: readonly string[];
  /** It is told together with its like, see `rules/grouping.ts`. */
  readonly part?: GroupPart;
  /** Two findings with a cause in common are one matter, see `secondaryTo` of a rule. */
  readonly causes?: readonly string[];
  /** Its remedy puts another material in the place of the one on this line. */
  readonly replaces?: true;
  /** What its remedy says of lead before all else. */
  readonly caution?: Caution;
  /** A time falls short by so little that the finding is only a hint; a project can narrow the margin. */
  readonly eased?: Eased;
  /** All findings that this one stands for, itself among them; absent where it stands for itself alone. */
  readonly parts?: readonly FindingPart[];
}

/** What a remedy that goes at an old coating begins with, where the coating may hold lead. */
export interface Caution {
  /** The coating and whose it is: said whole once. */
  readonly matter: string;
  /** As the remedy has it. */
  readonly whole: string;
  /** The same where a finding on that lead, or another remedy, has said it whole. */
  readonly short: string;
}

/** What a finding within the margin for waits would be without it. */
export interface Eased {
  /** Percent of the needed time that is missing. */
  readonly percent: number;
  readonly severity: Severity;
}

/** The air of a shop, in C and percent, and what a layer asks of it. */
export interface AirNeed {
  /** What its figures are told in. */
  readonly units: UnitSystem;
  readonly air: { readonly temperature: number; readonly humidity?: number };
  readonly limits?: { readonly low?: number; readonly high?: number; readonly humidity?: number };
  /** The shop has a flame, a heater or sparks in it. */
  readonly ignition: boolean;
  /** The same work sands or strips what may hold lead. */
  readonly lead?: boolean;
  /** Whose air it is. */
  readonly shop?: string;
}

/** A finding as one of several that are told together. */
export interface GroupPart {
  /** The name of the group, see `rules/finding-groups.ts`. */
  readonly group: string;
  /** What is the matter here, in the words of the group: the missing duty `gloves`, the air that is `too cold`. */
  readonly names: readonly string[];
  /** Why, as one clause that begins a sentence; or that ends one of which `who` is the subject: "dries the skin". */
  readonly reason: string;
  /** Who asks for it, where several with one reason, or several reasons of one, are told in one sentence. */
  readonly who?: string;
  /** The headline without a name, to leave room for what is told with it. */
  readonly briefly?: string;
  /** Of the air of a shop: what is asked of it. */
  readonly air?: AirNeed;
  /** The part that holds in one job alone is told with those that hold in every job, if there are any. */
  readonly joinsEveryJob?: true;
}

/** What is left of a finding that is told within another: `# allow`, settings and pages go by its rule. */
export interface FindingPart {
  readonly rule: string;
  readonly severity: Severity;
  readonly place: Place;
  readonly headline: string;
}
