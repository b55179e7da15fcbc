/**
 * Holds the texts and hands out analyses of them.
 *
 * An analysis is an immutable snapshot: it answers for the texts as they were when it was taken. Parsing and reading
 * are kept by declaration from one snapshot to the next, so that an edit costs what its own declaration costs; what
 * depends on several declarations is computed on demand.
 */
import { type ChangedPart, parseFile } from "../../../grammar/src/parse.ts";
import { t } from "../../../grammar/src/translate.ts";
import type { FileTree } from "../../../grammar/src/tree.ts";
import { type Checker, type CheckerParts, createChecker, createCheckMemory } from "../core/check.ts";
import { type Fault, type FaultListener, fileStart } from "../core/internal-error.ts";
import type { UnitSystem } from "../core/measure/shown-figures.ts";
import { type Program, type ProgramFile, programFile, reachableFiles } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import { groupFindings } from "../core/rules/grouping.ts";
import { byDanger, secondaryTo } from "../core/rules/registry.ts";
import { cachingPlanner, type Planner } from "../core/schedule/plan-cache.ts";
import { printedTotals } from "../core/totals/print.ts";
import { unitsFor } from "../core/units-told.ts";
import { isTooLarge, tooLarge, tooManySigns } from "../reading/reasons.ts";
import { benchOf } from "../views/bench/bench.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import { safeEdits } from "../views/places/safe-edits.ts";
import { fileFinding, spanOfPlace } from "../views/places/to-absolute.ts";
import { sheetsOf } from "../views/sheet/sheet.ts";
import { completionsAt } from "./completion/completion.ts";
import { applySettings, DEFAULT_CONFIG, isOff, type ProjectConfig } from "./config.ts";
import { formattingOf } from "./formatting.ts";
import { guarded } from "./guarded.ts";
import { hoverAt } from "./hover/hover.ts";
import { inlayHintsOf } from "./inlay-hints/inlay-hints.ts";
import { jobLensesOf } from "./job-lenses.ts";
import { jobToWrite } from "./job-to-write.ts";
import { KnownFiles } from "./known-files.ts";
import { LoneFiles } from "./lone-files.ts";
import type { Resolve } from "./moved-files.ts";
import { createNames } from "./names/names.ts";
import { createNavigation } from "./navigation.ts";
import { nextToRecord } from "./record-next.ts";
import { repairToWrite } from "./repair-to-write.ts";
import { symbolsOf } from "./symbols.ts";
import { createTextViews } from "./text-views.ts";
import type { Analysis, Analyst } from "./types.ts";
import { workshopOf } from "./workshop.ts";

/** Enough for the jobs of a large folder. */
const REMEMBERED_PLANS = 200;

export interface AnalystOptions {
  /** Which file a `use` path means, seen from the file that says it. */
  readonly resolve: Resolve;
  /** What the project of a file says about the rules; asked whenever findings are. Not given: the rules' own levels. */
  readonly config?: (file: FileId) => ProjectConfig;
  /** What a person asks for figures to be told in, before the project and the text are asked; asked each time. */
  readonly units?: () => UnitSystem | undefined;
  /** Makes the plans of jobs, perhaps later; then `plansChanged` is to be called. Not given: at once. */
  readonly plan?: Planner;
  /** Other parts than the usual. */
  readonly parts?: Partial<Omit<CheckerParts, "onFault">>;
  /** Told of every fault in this program, with what failed where. Findings name it as well, as far as it touches them. */
  readonly onFault?: FaultListener;
}

export function createAnalyst(options: AnalystOptions): Analyst {
  const known = new KnownFiles();
  let lone = new LoneFiles(known);
  let snapshot: Analysis | undefined;
  const onFault = options.onFault ?? (() => {});
  const config = options.config ?? (() => DEFAULT_CONFIG);
  let parts: Partial<CheckerParts> = {
    plan: options.plan ?? cachingPlanner(REMEMBERED_PLANS),
    memory: createCheckMemory(),
    units: (file) => options.units?.() ?? config(file).units,
    isOff: (file, rule) => isOff(config(file), rule),
    ...options.parts,
    onFault,
  };
  return {
    setFile: (file, text, changed) => {
      const before = known.get(file);
      const refusal = isTooLarge(text) ? tooLarge("recipe") : tooManySigns(text);
      if (refusal !== undefined) {
        known.set(file, readFile(file, "", options.resolve, before), t`it ${refusal}`);
      } else {
        if (before?.tree.text === text && !known.isAbsent(file)) return;
        known.set(file, readFile(file, text, options.resolve, before, changed));
      }
      snapshot = undefined;
    },
    removeFile: (file) => {
      known.remove(file);
      lone.forget(file);
      snapshot = undefined;
    },
    missingFiles: () => known.missing,
    isUsed: (file) => known.isUsed(file),
    setAbsent: (file, reason) => {
      known.remove(file, reason);
      lone.forget(file);
      snapshot = undefined;
    },
    plansChanged: () => {
      snapshot = undefined;
    },
    settingsChanged: () => {
      snapshot = undefined;
    },
    setToday: (today) => {
      const { today: _, ...rest } = parts;
      // What is remembered was worked out for the day before.
      parts = { ...rest, memory: createCheckMemory(), ...(today === undefined ? {} : { today }) };
      lone = new LoneFiles(known);
      snapshot = undefined;
    },
    analysis: () => {
      const { program } = known;
      snapshot ??= guarded(
        createAnalysis(program, parts, { resolve: options.resolve, config, lone }),
        program,
        onFault,
      );
      return snapshot;
    },
  };
}

/**
 * Reads a text. Where that fails with what was read before, it is read from scratch; where that fails as well, the file
 * has its text and nothing else, so that nothing that was found in an older one stands beside it.
 */
function readFile(
  file: FileId,
  text: string,
  resolve: Resolve,
  before?: ProgramFile,
  changed?: ChangedPart,
): ProgramFile {
  const read = (previous?: ProgramFile): ProgramFile =>
    programFile(file, parseFile(text, previous?.tree, changed), resolve, previous);
  try {
    return read(before);
  } catch {
    try {
      return read();
    } catch (error) {
      return unreadFile(file, text, { part: t`The reading of this file`, place: fileStart(file), error });
    }
  }
}

function unreadFile(file: FileId, text: string, fault: Fault): ProgramFile {
  const tokens = text === "" ? [] : [{ kind: "unknown", text, start: 0 } as const];
  const tree: FileTree = { text, pieces: [{ kind: "trivia", offset: 0, length: text.length, tokens }] };
  return { id: file, tree, declarations: [], byKey: new Map(), uses: [], faults: [fault] };
}

function createAnalysis(
  program: Program,
  parts: Partial<CheckerParts>,
  {
    resolve,
    config,
    lone,
  }: Required<Pick<AnalystOptions, "resolve" | "config">> & { readonly lone: LoneFiles },
): Analysis {
  const checker: Checker = createChecker(program, parts);
  const names = createNames(checker);
  /** What was found, with the levels that it was given then. */
  const found = new Map<
    FileId,
    { readonly settings: ProjectConfig; readonly findings: readonly FileFinding[] }
  >();
  const analysis: Analysis = {
    get files() {
      return [...program.files.keys()];
    },
    text: (file) => program.files.get(file)?.tree.text,
    steps: (file) => (lone.find(program, file, config(file)) ? [] : checker.steps(file)),
    awaitsPlans: checker.awaitsPlans,
    findings: (file) => {
      const settings = config(file);
      const known = found.get(file);
      if (known?.settings === settings) return known.findings;
      const before = lone.find(program, file, settings);
      if (before) return before;
      const set = groupFindings(applySettings(checker.findings(file), settings), secondaryTo);
      const findings = inOrder(set.flatMap((finding) => fileFinding(program, finding) ?? []));
      found.set(file, { settings, findings });
      if (!checker.awaitsPlans(file)) lone.keep(program, file, settings, findings);
      return findings;
    },
    hover: (file, offset) =>
      hoverAt(checker, file, offset, (of) => found.get(of)?.findings ?? lone.find(program, of, config(of))),
    symbols: (file) => symbolsOf(program, file),
    completions: (file, offset) => completionsAt(checker, file, offset),
    inlayHints: (file, span, kinds) => inlayHintsOf(checker, file, span, kinds),
    jobLenses: (file, levels) => jobLensesOf(checker, file, analysis.findings(file), levels),
    fixAll: (file, levels) => {
      const findings = analysis.findings(file).filter(({ severity }) => levels.includes(severity));
      return safeEdits(findings, new Set([file])).get(file) ?? [];
    },
    workshop: (files, levels) => workshopOf(analysis, files, levels),
    nextToRecord: (file, span) => nextToRecord(checker, file, span) ?? [],
    jobToWrite: (file, span) => jobToWrite(checker, file, span),
    repairToWrite: (file, span) => repairToWrite(checker, file, span),
    formatting: (file, spans) => formattingOf(program, file, spans),
    totals: (file) => checker.jobs(file).map((result) => printedTotals(result.totals)),
    jobs: checker.jobs,
    alone: ({ job }) => checker.alone(job),
    program,
    units: (file) => unitsFor(checker, file),
    shopPlans: checker.shopPlans,
    sheets: (file) => sheetsOf(checker, file, analysis.findings, parts.onFault),
    bench: (file, job) => {
      const result = checker.jobs(file).find((each) => each.job.name === job);
      const [sheet] = sheetsOf(checker, file, analysis.findings, parts.onFault, job);
      return result && sheet && benchOf(result, sheet, (place) => spanOfPlace(program, place), analysis);
    },
    usedBy: (file) => reachableFiles(program, file),
    ...createNavigation(names, resolve),
    ...createTextViews(names),
  };
  return analysis;
}

/** By position, the gravest first at one, of those as grave what harms people, then by rule, so that the order never depends on the order of checks. */
function inOrder(findings: readonly FileFinding[]): readonly FileFinding[] {
  return [...findings].sort(
    (a, b) =>
      a.span.start - b.span.start ||
      byDanger(a, b) ||
      a.span.end - b.span.end ||
      (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0),
  );
}
