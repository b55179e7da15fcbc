/**
 * Runs the rules of the trade over the runs of one file and decides where each finding stands.
 *
 * A finding on an assumed surface holds whatever the job, and is shown once on the recipe's line. What only a job
 * brings stands on the recipe's line when recipe and job share a file, else on the job's line that leads there, and
 * names the job and its surfaces. A recipe that no job applies is judged on the surfaces it must be meant for, as if a job
 * did. Where a job makes graver what holds whatever the job, or says more of its piece, the job's finding stands in its
 * place. One finding a rule, line and job; nothing twice. A rule that throws costs its own findings alone, and is named
 * on the recipe or job that it was looking at.
 */

import { t } from "../../../../grammar/src/translate.ts";
import { byGravity, type Finding, type RelatedPlace, type Severity } from "../findings.ts";
import { attempt, type Fault } from "../internal-error.ts";
import type { UnitSystem } from "../measure/shown-figures.ts";
import { onceFor, onceForList } from "../once.ts";
import { type FileId, type Place, placeKey, samePlace } from "../place.ts";
import type { Action, LayerAction, StepAction, WaitAction } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { cautious } from "./lead-caution.ts";
import type { JobContext, MomentContext, Report, RunContext, TradeRule } from "./rule.ts";
import { rulesLookingAt } from "./run-traits.ts";
import { whereText, whereWithoutJob } from "./texts.ts";

export interface JobFacts extends Omit<JobContext, "report" | "reportAt" | "units"> {}

export interface EngineInput {
  /** Of the runs of the file's recipes by themselves. */
  readonly assumed: readonly Judgement[];
  /** Of the runs of those of them that no job applies, on the surfaces that they must be meant for. */
  readonly paired: readonly Judgement[];
  /** Of the jobs with their runs. */
  readonly jobs: readonly Judgement[];
  /** Of the assumed runs of recipes in other files that the jobs lead to: they are not repeated for the jobs. */
  readonly elsewhere: readonly Judgement[];
  /** Declarations of the recipes by themselves that jobs apply, and only in shops in the open air. */
  readonly outdoors: ReadonlySet<string>;
}

export interface Draft {
  readonly rule: TradeRule;
  readonly report: Report;
  /** The statement or field that suffers. */
  readonly cause: Place;
  /** Where the finding stands. */
  readonly place: Place;
  readonly surface?: string;
  readonly job?: string;
  /** The piece of a recipe that no job applies. */
  readonly piece?: string;
  /** The rule and its cause: what a job has, and what holds whatever the job, have the same. */
  readonly key: string;
  /** The rule, line and job: drafts with the same become one finding. */
  readonly line: string;
}

/** What the rules came to: drafts of findings, and the rules that threw. */
export interface Judgement {
  readonly drafts: readonly Draft[];
  readonly faults: readonly Fault[];
}

export interface RuleFindings {
  readonly findings: readonly Finding[];
  /** The rules that threw, where they did. */
  readonly faults: readonly Fault[];
}

export function runRules(input: EngineInput): RuleFindings {
  const elsewhere = gravestByCause(together(input.elsewhere).drafts);
  const assumed = together(input.assumed);
  const always = assumed.drafts.filter(
    (draft) =>
      (draft.cause.file === draft.place.file || !elsewhere.has(draft.key)) &&
      !(draft.rule.underRoofs && input.outdoors.has(draft.place.declaration)),
  );
  const alwaysByCause = gravestByCause(always);
  const ofJobs = together([...input.paired, ...input.jobs]);
  const faults = [...assumed.faults, ...ofJobs.faults];
  const outdone = new Set<string>();
  const jobDrafts = ofJobs.drafts.flatMap((draft): readonly Draft[] => {
    const key = draft.key;
    const said = alwaysByCause.get(key);
    // Without a shop a piece has no air that could make a time longer.
    if (said && draft.job && draft.report.wait && said.report.wait) return [toldWith(said, draft)];
    if (said && outdoes(draft, said)) outdone.add(key);
    const saidAlready = said ?? elsewhere.get(key);
    return saidAlready && !outdoes(draft, saidAlready) ? [] : [draft];
  });
  const findings = merge([...always.filter((draft) => !outdone.has(draft.key)), ...jobDrafts]);
  return { findings, faults };
}

/** See `EngineInput`: of the runs of recipes by themselves, and of jobs. */
export function outdoorsOnly(
  assumed: readonly SurfaceRun[],
  runs: readonly SurfaceRun[],
): ReadonlySet<string> {
  if (!runs.some(({ shop }) => shop?.outdoors)) return new Set();
  const done = (isOutdoors: boolean) =>
    new Set(
      runs
        .filter(({ shop }) => (shop?.outdoors !== undefined) === isOutdoors)
        .flatMap(({ applied }) => applied.map(({ recipe }) => recipe)),
    );
  const [out, inside] = [done(true), done(false)];
  return new Set(
    assumed.flatMap(({ recipe, owner }) =>
      recipe && out.has(recipe) && !inside.has(recipe) ? [owner.declaration] : [],
    ),
  );
}

/** What a job's air makes of a time that is too short whatever the job: told in the finding on the recipe. */
function toldWith(said: Draft, draft: Draft): Draft {
  const before = TOLD_WITH.get(draft);
  if (before?.said === said) return before.told;
  const told = draftOf({ ...said, report: draft.report });
  TOLD_WITH.set(draft, { said, told });
  return told;
}

const TOLD_WITH = new WeakMap<Draft, { readonly said: Draft; readonly told: Draft }>();

/** A hint whatever the job, and a warning on what this job's surface is made of or in this job's air. */
const isGraver = (draft: Draft, said: Draft): boolean => draftsByGravity(draft, said) < 0;

/** Or as grave, with what the lead or the dirt of this job's piece asks for beside. */
const outdoes = (draft: Draft, said: Draft): boolean =>
  isGraver(draft, said) || (draft.report.ofPiece === true && !isGraver(said, draft));

function gravestByCause(drafts: readonly Draft[]): ReadonlyMap<string, Draft> {
  const gravest = new Map<string, Draft>();
  for (const draft of drafts) {
    const key = draft.key;
    const before = gravest.get(key);
    if (!before || isGraver(draft, before)) gravest.set(key, draft);
  }
  return gravest;
}

/** Most of a file has nothing to be said of. */
function together(judgements: readonly Judgement[]): Judgement {
  const telling = judgements.filter(({ drafts, faults }) => drafts.length + faults.length > 0);
  return judgementOf(
    telling.flatMap(({ drafts }) => drafts),
    telling.flatMap(({ faults }) => faults),
  );
}

/** The same object where nothing is said, so that what is made of it stands while more things come to it. */
const judgementOf = (drafts: readonly Draft[], faults: readonly Fault[]): Judgement =>
  drafts.length + faults.length > 0 ? { drafts, faults } : NOTHING_SAID;

const NOTHING_SAID: Judgement = { drafts: [], faults: [] };

/** Keys are made once, since every keystroke compares the drafts of the whole file. */
const draftOf = (draft: Omit<Draft, "key" | "line">): Draft => ({
  ...draft,
  key: `${draft.rule.id}\u0000${placeKey(draft.cause)}`,
  line: `${draft.rule.id}\u0000${draft.place.file}\u0000${draft.place.declaration}\u0000${lineKey(draft)}\u0000${draft.job ?? ""}`,
});

const inEachUnits = <T>(make: (units: UnitSystem) => T): Readonly<Record<UnitSystem, T>> => ({
  metric: make("metric"),
  us: make("us"),
});

/** What rules say of a run depends on the run and its figures' units alone, so it is said once for as long as the run is kept. */
const runOutcomes = onceFor((rules: readonly TradeRule[]) => {
  const lookingAt = rulesLookingAt(rules);
  return inEachUnits((units) => onceFor((run: SurfaceRun) => judgeRun(lookingAt(run), run, units)));
});

/** The rules at work: what they say of a run, and of a job and its runs, once for as long as they are kept. */
export interface Judge {
  run(run: SurfaceRun): Judgement;
  job(facts: JobFacts): Judgement;
}

/** `unitsOf` says what the figures of a file are told in. */
export function judgeBy(rules: readonly TradeRule[], unitsOf: (file: FileId) => UnitSystem): Judge {
  const [ofRun, ofJob] = [runOutcomes(rules), jobOutcomes(rules)];
  const run = (each: SurfaceRun): Judgement => ofRun[unitsOf(each.owner.file)](each);
  return {
    run,
    job: (facts) => together([...facts.runs.map(run), ofJob[unitsOf(facts.job.file)](facts)]),
  };
}

const partOf = (rule: TradeRule): string => t`The rule \`${rule.id}\``;

/**
 * Every rule looks at every moment, so what they are shown is made once for all of them: `judge` is the rule that is
 * looking, by which its reports are known.
 */
function judgeRun(rules: readonly TradeRule[], run: SurfaceRun, units: UnitSystem): Judgement {
  const drafts: Draft[] = [];
  const faults: Fault[] = [];
  const place = run.job ? run.job.namePlace : run.recipe!.namePlace;
  let judge: TradeRule | undefined;
  const reportOn = (action: Action, report: Report): void => {
    if (!isOpenTo(judge!, run, action)) drafts.push(actionDraft(judge!, run, action, report));
  };
  const { all, steps, layers, waits } = contextsOf(run, units, reportOn);
  const whole: RunContext = {
    run,
    units,
    report: reportOn,
    reportAt: (at, report) => drafts.push(placeDraft(judge!, at, report, whereOf(run))),
  };
  // Not by `attempt`, since this is asked a thousand times for a run, and next to never is there a fault to be named.
  const look = <C>(check: (context: C) => void, contexts: readonly C[]): void => {
    for (let at = 0; at < contexts.length; at += 1)
      try {
        for (; at < contexts.length; at += 1) check(contexts[at]!);
      } catch (error) {
        faults.push({ part: partOf(judge!), place, error });
      }
  };
  for (const rule of rules) {
    judge = rule;
    const { onStep, onLayer, onWait, onRun } = rule.checks;
    // Of one rule the reports come in the order of the lines.
    if ((onStep && onLayer) || (onWait && (onStep || onLayer)))
      look((moment) => {
        if (moment.op === "step") onStep?.(moment.context);
        else if (moment.op === "layer") onLayer?.(moment.context);
        else onWait?.(moment.context);
      }, all);
    else if (onStep) look(onStep, steps);
    else if (onLayer) look(onLayer, layers);
    else if (onWait) look(onWait, waits);
    if (onRun) look(onRun, [whole]);
  }
  return judgementOf(drafts, faults);
}

/** A moment as rules are shown it. */
type Shown =
  | { readonly op: "step"; readonly context: MomentContext<StepAction> }
  | { readonly op: "layer"; readonly context: MomentContext<LayerAction> }
  | { readonly op: "wait"; readonly context: MomentContext<WaitAction> };

interface ShownMoments {
  readonly all: readonly Shown[];
  readonly steps: readonly MomentContext<StepAction>[];
  readonly layers: readonly MomentContext<LayerAction>[];
  readonly waits: readonly MomentContext<WaitAction>[];
}

/** The moments that rules look at. After an unknown part of the recipe nothing is certain enough to be reported. */
function contextsOf(run: SurfaceRun, units: UnitSystem, reportOn: RunContext["report"]): ShownMoments {
  const all: Shown[] = [];
  const steps: MomentContext<StepAction>[] = [];
  const layers: MomentContext<LayerAction>[] = [];
  const waits: MomentContext<WaitAction>[] = [];
  for (const [index, { action, before, after, dries }] of run.moments.entries()) {
    if (!before.certain) continue;
    const report = (each: Report): void => reportOn(action, each);
    if (action.op === "step") {
      const context = { action, before, after, run, units, index, report };
      steps.push(context);
      all.push({ op: "step", context });
    } else if (action.op === "layer") {
      const context = { action, before, after, run, units, index, report };
      layers.push(context);
      all.push({ op: "layer", context });
    } else if (action.op === "wait") {
      const context = { action, before, after, ...(dries ? { dries } : {}), run, units, index, report };
      waits.push(context);
      all.push({ op: "wait", context });
    }
  }
  return { all, steps, layers, waits };
}

/** Of a job as of a run: what is said of it depends on these facts alone, and is said once while they are kept. */
const jobOutcomes = onceFor((rules: readonly TradeRule[]) =>
  inEachUnits((units) => onceFor((facts: JobFacts) => judgeJob(rules, facts, units))),
);

function judgeJob(rules: readonly TradeRule[], facts: JobFacts, units: UnitSystem): Judgement {
  const drafts: Draft[] = [];
  const faults: Fault[] = [];
  for (const rule of rules) {
    const { onJob } = rule.checks;
    if (!onJob) continue;
    const check = (): void =>
      onJob({
        ...facts,
        units,
        report: (run, action, report) => {
          if (!isOpenTo(rule, run, action)) drafts.push(actionDraft(rule, run, action, report));
        },
        reportAt: (place, report) => drafts.push(placeDraft(rule, place, report, { job: facts.job.name })),
      });
    attempt(faults, { part: partOf(rule), place: facts.job.namePlace }, check, undefined);
  }
  return judgementOf(drafts, faults);
}

/** Groups of rules that go by what a material is, but for those of them that are about people. */
const BY_KIND: ReadonlySet<string> = new Set([
  "layers",
  "film",
  "colour",
  "preparation",
  "waits",
  "wear",
  "hygiene",
]);
const ABOUT_PEOPLE: ReadonlySet<string> = new Set(["child-or-food-surface", "in-service-before-cure"]);

/** Whether a rule would go by the kind of a material that may be several: what is put on, or what lies uppermost. */
const isOpenTo = ({ group, id }: TradeRule, run: SurfaceRun, action: Action): boolean =>
  BY_KIND.has(group) && !ABOUT_PEOPLE.has(id) && openActions(run).has(action);

const openActions = onceFor(
  ({ moments }: SurfaceRun): ReadonlySet<Action> =>
    new Set(
      moments
        .filter(({ action, before }) =>
          [
            action.op === "step" || action.op === "layer" ? action.use?.material : undefined,
            before.layers.at(-1)?.material,
          ].some((material) => material?.family?.readings !== undefined),
        )
        .map(({ action }) => action),
    ),
);

/**
 * The action's own line where it stands in the owner's file. Else, for a job, its `apply` line, and for a recipe the
 * last of its file's lines on the way there.
 */
function lineOf(run: SurfaceRun, action: Action): Place {
  const own = action.frames.filter((frame) => frame.file === run.owner.file);
  const onTheWay = run.job && action.place.file !== run.owner.file ? own[0] : own[own.length - 1];
  return onTheWay ?? action.place;
}

type Where = Pick<Draft, "job" | "piece" | "surface">;

/** What a run is of, beside its recipe; nothing for a recipe by itself. */
const whereOf = ({ job, piece, label }: SurfaceRun): Where => ({
  ...(job ? { job: job.name } : piece ? { piece: piece.name } : {}),
  ...(label === "" ? {} : { surface: label }),
});

const placeDraft = (rule: TradeRule, place: Place, report: Report, where: Where): Draft =>
  draftOf({ rule, report, cause: place, place: report.at ?? place, ...where });

function actionDraft(rule: TradeRule, run: SurfaceRun, action: Action, plain: Report): Draft {
  const report = rule.speaksOfLead ? plain : cautious(run, action, plain);
  const line = lineOf(run, action);
  const place = samePlace(line, action.place) ? (report.at ?? line) : line;
  return draftOf({
    rule,
    report,
    cause: action.place,
    place,
    ...whereOf(run),
  });
}

/** One finding a rule, line and job, naming all its surfaces; the first report gives the words. */
function merge(drafts: readonly Draft[]): readonly Finding[] {
  const groups = new Map<string, Draft[]>();
  for (const draft of drafts) {
    const key = draft.line;
    const group = groups.get(key);
    if (group) group.push(draft);
    else groups.set(key, [draft]);
  }
  return [...groups.values()].map(findingAgain);
}

/** Reports of one statement are one line, whatever word of it they point at. */
const lineKey = (draft: Pick<Draft, "place" | "report" | "cause">): string =>
  samePlace(draft.place, draft.report.at ?? draft.cause)
    ? `${draft.cause.span.start}`
    : `${draft.place.span.start}`;

/** The same object for the same drafts, so that what is made of it may be kept as well. */
const findingAgain = onceForList((group: readonly Draft[]) => finding(group));

function finding(group: readonly Draft[]): Finding {
  const worst = [...group].sort(draftsByGravity)[0]!;
  const { job, piece } = worst;
  const report = toldTogether(group, worst.report);
  const { headline, why, remedy, brief, ifReplaced, again, part, causes, replaces, caution, eased } = report;
  const surfaces = [...new Set(group.flatMap(({ surface }) => surface ?? []))];
  return {
    rule: worst.rule.id,
    severity: report.severity ?? worst.rule.severity,
    place: worst.place,
    headline,
    why,
    remedy,
    ...(brief === undefined ? {} : { brief }),
    ...(report.atFirst === undefined ? {} : { atFirst: report.atFirst }),
    ...(ifReplaced === undefined ? {} : { ifReplaced }),
    ...(again ? { again } : {}),
    ...(report.tellsRoom === undefined ? {} : { tellsRoom: report.tellsRoom }),
    ...(report.inThatRoom === undefined ? {} : { inThatRoom: report.inThatRoom }),
    related: relatedOf({ ...worst, report }),
    fixes: report.fixes ?? [],
    ...(job ? { where: whereText(job, surfaces), job } : {}),
    ...(piece ? { where: whereWithoutJob(piece, surfaces) } : {}),
    ...(job && surfaces.length > 0 ? { surfaces } : {}),
    ...(part ? { part } : {}),
    ...(causes === undefined ? {} : { causes }),
    ...(replaces ? { replaces } : {}),
    ...(caution ? { caution } : {}),
    ...(eased === undefined ? {} : { eased }),
  };
}

/** Times that are too short are told together, with the places of all of them. */
function toldTogether(group: readonly Draft[], report: Report): Report {
  const waits = group.flatMap((draft) => draft.report.wait ?? []);
  if (!report.wait || waits.length < 2) return report;
  const places = group.flatMap((draft) => draft.report.related ?? []);
  const related = [...new Map(places.map((each) => [placeKey(each.place), each])).values()];
  return { ...report.wait.sayAll(waits), related };
}

const severityOf = (draft: Draft): Severity => draft.report.severity ?? draft.rule.severity;

const draftsByGravity = (a: Draft, b: Draft): number =>
  byGravity({ severity: severityOf(a) }, { severity: severityOf(b) });

/** The recipe's line is a related place where the finding stands on a line that leads to it. */
function relatedOf(draft: Draft): readonly RelatedPlace[] {
  const given = draft.report.related ?? [];
  const elsewhere =
    draft.place.file !== draft.cause.file || draft.place.declaration !== draft.cause.declaration;
  return elsewhere
    ? [{ place: draft.cause, message: t`The line of the recipe`, isCause: true }, ...given]
    : given;
}
