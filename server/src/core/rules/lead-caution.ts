/**
 * Lead in what a step reaches: how sure it is, and what a remedy must say first that tells anyone to sand, scuff or strip.
 *
 * A remedy that says "scuff it" of a coat that may hold lead would send somebody into the dust, so the engine passes every
 * report through `cautious`, which says so first and takes the fix away. A report says as data that its remedy `abrades`.
 */

import { t } from "../../../../grammar/src/translate.ts";
import type { Caution } from "../findings.ts";
import { negates } from "../knowledge/denials.ts";
import { countsAsLead, type LeadStatus, leadStatus, type NotedCoating } from "../knowledge/lead.ts";
import { onceFor } from "../once.ts";
import { samePlace } from "../place.ts";
import type { Action, StepAction } from "../surface/actions.ts";
import { leadFactsOf, type OldCoating, oldCoating } from "../surface/lead.ts";
import type { SurfaceRun } from "../surface/run.ts";
import type { Coat, Moment, SurfaceState } from "../surface/state.ts";
import { burnsDry } from "./coat-queries.ts";
import type { Report } from "./rule.ts";
import { spokenLines, textOf } from "./spoken-words.ts";
import { coatName } from "./texts.ts";

export interface LeadMatter {
  readonly status: Extract<LeadStatus, "found" | "presumed" | "possible">;
  readonly kind: OldCoating;
  /** Absent in a recipe run by itself, whose words alone tell of lead. */
  readonly coat?: Coat;
}

/** The gravest case among coats: lead that was found, or is presumed, or cannot be ruled out. */
export function leadIn(run: SurfaceRun, coats: readonly Coat[]): LeadMatter | undefined {
  // Of most surfaces nothing old is known, and then nobody need ask how it stands.
  const coat = coats.findLast((each) => oldCoating(each) === "paint") ?? coats.findLast(oldCoating);
  const status = coat && statusOf(run);
  if (!status || !countsAsLead(status)) return undefined;
  return { status: status as LeadMatter["status"], kind: oldCoating(coat)!, coat };
}

/** What is to be said of lead in it. */
export const notedAs = ({ kind, coat }: LeadMatter): NotedCoating =>
  kind === "clear" && coat?.family?.drying === "solvent release" ? "lacquer" : kind;

/**
 * The same for what a step finds: the coats that it reaches, or in a recipe run by itself whatever is there, where the
 * recipe says that lead was found in it.
 */
export function leadReached(run: SurfaceRun, step: StepAction, before: SurfaceState): LeadMatter | undefined {
  const matter = leadIn(run, coatsReached(step, before));
  if (matter || run.kind !== "assumed") return matter;
  const mayBeOld = before.openBelow && before.layers.length === 0;
  return mayBeOld && saysLeadWasFound(run) ? { status: "found", kind: "paint" } : undefined;
}

/** Whether work of a run sands, scrapes or strips what may hold lead, so that it must not go where people live. */
export const freesLead = onceFor((run: SurfaceRun): boolean =>
  run.moments.some(({ action, before }) => {
    if (action.op !== "step" || !FREEING.has(action.verb)) return false;
    const matter = leadReached(run, action, before);
    return matter !== undefined && !(matter.kind === "clear" && matter.status === "possible");
  }),
);

const FREEING: ReadonlySet<string> = new Set(["sand", "scuff", "scrape", "strip", "distress"]);

/** The status by what is stated; words that tell of a positive test count as well, but for a laboratory's later word. */
export const statusOf = onceFor((run: SurfaceRun): LeadStatus => {
  const stated = leadStatus(leadFactsOf(run));
  return stated !== "none_found" && saysLeadWasFound(run) ? "found" : stated;
});

/** What takes everything touches everything; finer work reaches old layers only while no new one covers them. */
export function coatsReached(step: StepAction, before: SurfaceState): readonly Coat[] {
  return takesOff(step) || before.layers.at(-1)?.origin === "existing" ? before.layers : [];
}

/** Whether it goes through all coats, at least in places. */
export const takesOff = (step: StepAction): boolean =>
  step.verb === "strip" ||
  step.verb === "scrape" ||
  step.verb === "distress" ||
  (step.verb === "sand" && step.grits.some((grit) => grit <= 100));

// ---------------------------------------------------------------------------------------------------------------
// Words of a test

const LEAD = /\blead\b(?!\s*(?:time|er|s\s+to)|\s+to)|\bleaded\b/iu;
const POSITIVE =
  /\bpositive(?:ly)?\b|\b(?:found|present|confirmed|detected)\b|\b(?:holds?|contains?|has)\s+lead\b|\bturn(?:ed|s)\s+(?:red|pink)\b/iu;
/** Beside plain denials. */
const NEGATIVE =
  /\b(?:free|negative|absent|below\s+(?:\S+\s+){0,3}?(?:limits?|thresholds?|detection|\d\S*))\b/iu;
const saysNone = (text: string): boolean => negates(text) || NEGATIVE.test(text);
/** A declaration that calls the old paint by its lead says that it holds it: "lead-based paint on the legs", "red lead". */
const LEAD_PAINT =
  /\b(?:red|white)\s+lead\b(?!\s*(?:time|pencil))|\bleaded\s+(?:paint|primer|enamel|gloss|coats?|undercoat)\b|\blead[\s-]+(?:based\s+|bearing\s+)?(?:paint(?:s|ed|work)?|primer|enamel|undercoat|pigments?)\b/iu;
/** What is only feared, looked for or regulated is no fact. */
const NO_FACT =
  /\b(?:test\w*|ban(?:s|ned)?|laws?|rules?|risks?|suspect\w*|presum\w*|assum\w*|possib\w*|perhaps|before|after|unknown|question|doubt\w*|remov(?:e|ed|al)|stripped|no\s+longer)\b|\?/iu;
const IF = /\b(?:if|where|when|wherever|should|unless|in\s+case|may|might|could|until|till|whether)\b/iu;
const LABORATORY = /\blab(?:orator(?:y|ies))?(?:['’]s)?\b/iu;

/** Sentence by sentence: "The swab came out positive for lead." */
const sentences = (text: string): readonly string[] => text.split(/(?<![.;!?\n])[.;!?\n]+(?:\s|$)/u);

/** Whether a text says that a test found lead, as a fact and not as a case to think of. */
export const tellsOfLeadFound = (text: string): boolean =>
  sentences(text).some(
    (each) =>
      LEAD.test(each) &&
      POSITIVE.test(each) &&
      !negates(uptoResult(each)) &&
      !NEGATIVE.test(each) &&
      !IF.test(each),
  );

/** What comes after the result and a comma or "so" speaks of the work: "Lead was found, so never sand it dry." */
function uptoResult(sentence: string): string {
  const result = POSITIVE.exec(sentence);
  const end = result ? result.index + result[0].length : 0;
  const goesOn = sentence.slice(end).search(/,|\b(?:so|hence|therefore|and|but)\b/iu);
  return goesOn < 0 ? sentence : sentence.slice(0, end + goesOn);
}

/** What `##`, the notes and the titles of the declarations say of the piece and the work on it. */
const declaredTexts = (run: SurfaceRun): readonly string[] =>
  [run.piece, run.job, run.surface]
    .flatMap((named) => [...linesOf(named), ...(named?.notes ?? [])])
    .filter((text) => text !== "");

/** A sentence may go on from one line of a description to the next, or end with it. */
const linesOf = (named: { readonly title?: string; readonly docs: string } | undefined): readonly string[] =>
  named === undefined ? [] : [named.title ?? "", named.docs, named.docs.replaceAll("\n", " ")];

/** All that is written about the piece, the surface and the work. */
const textsOf = onceFor((run: SurfaceRun): readonly string[] => [
  ...declaredTexts(run),
  ...new Set([run.recipe, ...run.applied.map(({ recipe }) => recipe)].flatMap((recipe) => linesOf(recipe))),
  ...spokenLines(run).map((action) => textOf(action)!),
]);

/** Asked at every step and note, and answered once a run. */
const saysLeadWasFound = onceFor(
  (run: SurfaceRun): boolean =>
    textsOf(run).some(tellsOfLeadFound) || declaredTexts(run).some(tellsOfLeadPaint),
);

/** Whether a declaration calls what is on the piece lead paint, as a fact. */
const tellsOfLeadPaint = (text: string): boolean =>
  sentences(text).some(
    (each) =>
      LEAD_PAINT.test(each) &&
      !negates(each) &&
      !NEGATIVE.test(each) &&
      !IF.test(each) &&
      !NO_FACT.test(each),
  );

/**
 * Whether the recipe itself makes the work depend on a laboratory: it names one, and what its answer is, that work waits
 * for it, or what is done where it finds lead.
 */
export const waitsForLaboratory = onceFor((run: SurfaceRun): boolean => {
  const texts = textsOf(run);
  return texts.some((text) => LABORATORY.test(text)) && texts.some(tellsOfGate);
});

const tellsOfGate = (text: string): boolean =>
  sentences(text).some(
    (each) =>
      (LEAD.test(each) && (saysNone(each) || IF.test(each))) ||
      (LABORATORY.test(each) && /\b(?:before|first|until|only|wait)\b/iu.test(each)),
  );

/** A test is on its way: the duty is stated, or a step above an action tests for lead in so many words. */
export const promisesTest = (run: SurfaceRun, action: Action): boolean =>
  action.duties.has("lead_test") || testsInAStep(run, action);

export const testsInAStep = (run: SurfaceRun, action: Action): boolean =>
  spokenLines(run).some((above) => above.index < action.index && isLeadTest(above));

const isLeadTest = (action: Action): boolean =>
  action.op === "step" && action.verb === "test" && /\blead\b/iu.test(textOf(action) ?? "");

/**
 * An old clear is spoken of where its age is known to be old and it comes off: sanded or scraped dry it is as dusty as
 * paint, and the law counts it as paint (24 CFR 35.110).
 */
export const isOldClear = (run: SurfaceRun, { status, kind }: LeadMatter, step: StepAction): boolean =>
  kind === "clear" && status === "presumed" && run.piece?.built !== undefined && takesOff(step);

// ---------------------------------------------------------------------------------------------------------------
// Remedies

/**
 * A report as it may be said where lead is to be thought of: a remedy that `abrades` what may hold lead or takes up its dust
 * says so first and goes on wet, and no fix writes such a step. The engine passes every report of every rule through here.
 */
export function cautious(run: SurfaceRun, action: Action, report: Report): Report {
  if (run.kind === "assumed" || (report.abrades === undefined && report.dustFrom === undefined))
    return report;
  const matter = matterOf(run, action, report);
  // A late clear is not worth the words where only the country is missing.
  if (!matter?.coat || (matter.kind === "clear" && matter.status === "possible")) return report;
  const caution = cautionOf(run, matter.status, matter.coat);
  const remedy = report.damp ?? report.remedy;
  return {
    ...report,
    ofPiece: true,
    remedy: `${caution.whole} ${remedy}`,
    caution,
    fixes: (report.fixes ?? []).filter(({ edits }) => !edits.some(({ text }) => DUSTY_STEP.test(text))),
  };
}

function matterOf(run: SurfaceRun, action: Action, { abrades, dustFrom }: Report): LeadMatter | undefined {
  const before = abrades && momentOf(run, action)?.before;
  const reached = abrades && before ? leadIn(run, coatsMeant(abrades, before)) : undefined;
  if (reached) return reached;
  const left = run.moments.findLast(
    (moment) => dustFrom !== undefined && samePlace(moment.action.place, dustFrom),
  );
  return left?.action.op === "step" ? leadReached(run, left.action, left.before) : undefined;
}

/** What a remedy can mean: everything where it goes through to the wood, else what lies on top. */
const coatsMeant = (abrades: NonNullable<Report["abrades"]>, { layers }: SurfaceState): readonly Coat[] =>
  abrades === "to the wood" || layers.at(-1)?.origin === "existing" ? layers : [];

/** Such a line in the text of a fix. */
const DUSTY_STEP = /\bstep\s+(?:sand|scuff|scrape|strip|distress|dust)\b/u;

/** Said whole once for a coating of a job: see `lead-told-once.ts`. */
function cautionOf({ job, piece }: SurfaceRun, status: LeadMatter["status"], coat: Coat): Caution {
  const name = coatName(coat);
  const matter = `${job?.name ?? ""}\u0000${job ? "" : (piece?.name ?? "")}\u0000${name}`;
  if (status === "found")
    return {
      matter,
      whole: t`First: ${name} holds lead, so work wet by hand and by \`lead_safe\`, and wipe the dust up damp, never dry.`,
      short: t`Work wet by hand and by \`lead_safe\`, as told for its lead.`,
    };
  // A laboratory's all-clear lets other coatings be worked on dry.
  return burnsDry(coat)
    ? {
        matter,
        whole: t`First: ${name} may hold lead, so have a laboratory test it before you abrade or strip it. If you then abrade the old finish, do it wet by hand, even where no lead is found: dry dust of nitrocellulose burns.`,
        short: t`Wait for the lead test. If you then abrade the old finish, do it wet by hand, even where no lead is found.`,
      }
    : {
        matter,
        whole: t`First: ${name} may hold lead, so have a laboratory test it before you abrade or strip it; if it finds lead, work wet by hand, never dry.`,
        short: t`Wait for the lead test. If it finds lead, follow the finding on the lead instead.`,
      };
}

const momentOf = ({ moments }: SurfaceRun, action: Action): Moment<Action> | undefined =>
  moments[action.index]?.action === action
    ? moments[action.index]
    : moments.find((moment) => moment.action === action);
