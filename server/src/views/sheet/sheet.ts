/**
 * Bench sheets of a file: one for every job, and one for every recipe that no job of the file goes through.
 *
 * A sheet is put together from what the analysis knows already: runs, draws, plan, gaps and findings. Nothing is
 * calculated here. What is not known is named with what is missing for it, and what is found stands on the sheet.
 */

import { t, translated } from "../../../../grammar/src/translate.ts";
import type { Checker } from "../../core/check.ts";
import { groupedBy } from "../../core/grouped.ts";
import { attempt, type Fault, type FaultListener } from "../../core/internal-error.ts";
import { type LeadFacts, leadNote, leadStatus } from "../../core/knowledge/lead.ts";
import { docOf } from "../../core/knowledge/vocabularies.ts";
import { factorText, filmText, momentText, percentText, thicknessText } from "../../core/measure/figures.ts";
import {
  exactDuration,
  formatDuration,
  formatWork,
  roundedUpHours,
} from "../../core/measure/format-amount.ts";
import { figuresIn, type ShownFigures } from "../../core/measure/shown-figures.ts";
import type { Named, Piece, Recipe, Shop } from "../../core/model/model.ts";
import { modelsOf, type ProgramFile, reachableFiles } from "../../core/model/program.ts";
import type { FileId, Place } from "../../core/place.ts";
import type { Schedule } from "../../core/schedule/types.ts";
import { leadFactsOf, oldCoating } from "../../core/surface/lead.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { Coat } from "../../core/surface/state.ts";
import { isTakenAsBare } from "../../core/surface/taken-as-bare.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import type { Draw } from "../../core/totals/needs.ts";
import { jobPaper } from "../../core/totals/paper.ts";
import { unitsFor } from "../../core/units-told.ts";
import {
  awaitsRoomAir,
  beingPlannedText,
  type GapField,
  gapsOf,
  materialGaps,
  uncheckedText,
} from "../missing-inputs.ts";
import { outdoorsText } from "../outdoors-text.ts";
import { choiceText } from "../parameter-text.ts";
import type { FileFinding } from "../places/file-finding.ts";
import { briefReason, jobDates } from "../schedule/job-dates.ts";
import { sectionOf } from "../section/section.ts";
import { benchList } from "./bench-list.ts";
import { sheetDays } from "./days.ts";
import { sheetDuties, solventRags, stripperVapour } from "./duties.ts";
import {
  type ConcernedFindings,
  type ConcernedFindingsOf,
  concernedFindings,
  concerning,
  type DeclarationId,
  findingsAtLines,
  numbered,
} from "./findings.ts";
import { sheetFumes } from "./fumes-line.ts";
import { sheetMaterials, usedMaterials } from "./materials.ts";
import type {
  Sheet,
  SheetFact,
  SheetGap,
  SheetPiece,
  SheetProcedure,
  SheetService,
  SheetSurface,
} from "./model.ts";
import { datedPlan, type Procedure, procedureOf } from "./procedure.ts";
import { withSharedWear } from "./shared-wear.ts";
import { thinVeneer } from "./thin-veneer.ts";
import { capital, docsOf, takenAsBareText, titleOf, words } from "./words.ts";

/**
 * Jobs in their order in the file, then the recipes that stand by themselves; or `only` the job of this name, as others cost
 * as much. A sheet that fails for a fault in this program is told and left out.
 */
export function sheetsOf(
  checker: Checker,
  file: FileId,
  findings: (file: FileId) => readonly FileFinding[],
  onFault: FaultListener = () => {},
  only?: string,
): readonly Sheet[] {
  const found = checker.program.files.get(file);
  if (!found) return [];
  const findingsOf = concernedOnce(checker, findings);
  const results = checker.jobs(file);
  const wanted = only === undefined ? results : results.filter(({ job }) => job.name === only);
  const recipes = only === undefined ? recipesApart(found, results) : [];
  const faults: Fault[] = [];
  const sheetOf = ({ name, namePlace: place }: Named, make: () => Sheet): readonly Sheet[] =>
    attempt(faults, { part: t`The bench sheet of \`${name}\``, place }, () => [make()], []);
  const sheets = [
    ...wanted.flatMap((result) => sheetOf(result.job, () => jobSheet(checker, result, findingsOf))),
    ...recipes.flatMap((recipe) => sheetOf(recipe, () => recipeSheet(checker, recipe, findingsOf))),
  ];
  faults.forEach(onFault);
  return sheets;
}

/** Makes sheets of recipes by themselves, whether or not jobs go through them; each file's findings are looked at once. */
export function recipeSheets(
  checker: Checker,
  findings: (file: FileId) => readonly FileFinding[],
): (recipe: Recipe) => Sheet {
  const findingsOf = concernedOnce(checker, findings);
  return (recipe) => recipeSheet(checker, recipe, findingsOf);
}

function concernedOnce(
  checker: Checker,
  findings: (file: FileId) => readonly FileFinding[],
): ConcernedFindingsOf {
  const known = new Map<FileId, ConcernedFindings>();
  return (file) => {
    const concerned = known.get(file) ?? concernedFindings(checker, file, findings(file));
    known.set(file, concerned);
    return concerned;
  };
}

/** Recipes of the file that none of these jobs goes through. */
function recipesApart(file: ProgramFile, results: readonly JobResult[]): readonly Recipe[] {
  const through = new Set(
    results.flatMap(({ runs }) =>
      runs.flatMap((run) => [
        ...run.applied.map(({ recipe }) => recipe.declaration),
        ...framesOf(run).flatMap((place) => (place.file === file.id ? [place.declaration] : [])),
      ]),
    ),
  );
  return modelsOf(file).filter(
    (model): model is Recipe => model.kind === "recipe" && !through.has(model.declaration),
  );
}

/** The lines on the way to its actions, each once: actions deep in recipes have most of their way in common. */
function framesOf({ moments }: SurfaceRun): readonly Place[] {
  const frames = new Set<Place>();
  for (const { action } of moments) for (const place of action.frames) frames.add(place);
  return [...frames];
}

// ---------------------------------------------------------------------------------------------------------------
// Jobs

function jobSheet(checker: Checker, result: JobResult, findingsOf: ConcernedFindingsOf): Sheet {
  const { job, runs, shop } = result;
  const units = unitsFor(checker, job.file);
  const say = figuresIn(units);
  const scope = checker.scope(job.file);
  const pieces = job.pieces.flatMap(({ piece, count }) => {
    const found = scope.pieces.get(piece);
    return found ? [{ piece: found, count }] : [];
  });
  const declarations = [
    job,
    ...pieces.map(({ piece }) => piece),
    ...(shop ? [shop] : []),
    ...drawnOnBy(runs),
  ];
  const concern = { file: job.file, job: job.name, declarations };
  const found = concerning(reachableFiles(checker.program, job.file), findingsOf, concern);
  const title = surfaceTitles(runs);
  const plan = datedPlan(result);
  const named = pieceNames(runs);
  const runsOf = groupedBy(runs, ({ piece }) => piece);
  const drawsOf = groupedBy(result.draws, ({ run }) => run);
  const made = runs.map((run) =>
    procedureFor(checker, run, found, { title: title(run), ...named(run) }, say, {
      result,
      plan,
      draws: drawsOf.get(run) ?? [],
    }),
  );
  const procedures = withSharedWear(made.map(({ sheet }) => sheet));
  const fumes = sheetFumes(result);
  return {
    kind: "job",
    units,
    name: job.name,
    file: job.file,
    title: capital(titleOf(job)),
    docs: docsOf(job),
    findings: numbered(found, usedMaterials(runs)),
    facts: [...jobFacts(result, say), ...noteFacts(result, title)],
    gaps: jobGaps(result),
    choices: [],
    duties: [
      ...sheetDuties(made.map(({ spans }, i) => ({ procedure: procedures[i]!, spans }))),
      ...solventRags(runs.flatMap(({ moments }) => moments.map(({ action }) => action))),
      ...stripperVapour(procedures),
      ...thinVeneer(runs),
    ],
    ...(fumes ? { fumes } : {}),
    shopDocs: shop ? docsOf(shop) : { text: "", file: job.file },
    pieces: pieces.map(({ piece, count }) => sheetPiece(piece, count, runsOf.get(piece) ?? [])),
    surfaces: runs.map((run, i) =>
      sheetSurface(run, title(run), result.totals.surfaces[i]!.dry_film_um, say),
    ),
    materials: sheetMaterials(runs, result, say),
    sparePercent: job.spare.value,
    paper: jobPaper(runs).map(({ grit, sheets, discs }) => ({
      name: t`grit ${grit}`,
      text: paperText(sheets, discs),
    })),
    days: sheetDays(runs, plan, title),
    procedures,
    bench: benchList(job, procedures),
    service: jobService(result, pieces, title),
    ...openingOf(shop),
    ...(shop?.air ? { keptAt: say.degrees(shop.air.value.temperature) } : {}),
  };
}

function openingOf(shop: Shop | undefined): Pick<Sheet, "opening"> {
  if (shop?.hours === undefined) return {};
  const spans = shop.hours.map(({ weekday, opens, closes }) => ({
    weekday,
    opens: minutesText(opens),
    closes: minutesText(closes),
  }));
  return { opening: { spans, closed: shop.closed } };
}

function paperText(sheets: number, discs: number): string {
  const each = sheets === 1 ? t`${sheets} sheet` : t`${sheets} sheets`;
  return discs === 1 ? t`${each}, or ${discs} disc` : t`${each}, or ${discs} discs`;
}

/** Minutes after midnight: `09:00` */
const minutesText = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;

/** `Top`; in a job of several pieces `Reading table: top`. */
function surfaceTitles(runs: readonly SurfaceRun[]): (run: SurfaceRun) => string {
  const several = new Set(runs.map(({ piece }) => piece)).size > 1;
  return ({ piece, surface, label }) => {
    const name = surface?.title ?? words(surface?.name ?? label);
    return capital(several && piece ? `${titleOf(piece)}: ${name}` : name);
  };
}

type ProcedureName = Pick<SheetProcedure, "title" | "piece" | "surface">;

/**
 * What lines name pieces and surfaces by: the title up to a comma, where that is no other piece's as well. A single piece
 * needs no name.
 */
function pieceNames(
  runs: readonly SurfaceRun[],
): (run: SurfaceRun) => Pick<SheetProcedure, "piece" | "surface"> {
  const pieces = [...new Set(runs.flatMap(({ piece }) => piece ?? []))];
  const short = (piece: Piece): string => titleOf(piece).split(",")[0]!.trim();
  const sharing = groupedBy(pieces, short);
  const isOnly = pieces.length === 1 && runs.every((run) => run.pieces === 1);
  return ({ piece, surface, label }) => {
    const name = { surface: surface?.title ?? words(surface?.name ?? label) };
    if (!piece || isOnly) return name;
    const isShared = sharing.get(short(piece))!.length > 1;
    return { ...name, piece: capital(isShared ? titleOf(piece) : short(piece)) };
  };
}

function procedureFor(
  checker: Checker,
  run: SurfaceRun,
  found: readonly FileFinding[],
  named: ProcedureName,
  say: ShownFigures,
  job?: {
    readonly result: JobResult;
    readonly plan: Schedule | undefined;
    /** Those of the run. */
    readonly draws: readonly Draw[];
  },
): Procedure {
  const draws = groupedBy(job?.draws ?? [], ({ action }) => action);
  return procedureOf({
    run,
    drawsAt: (action) => draws.get(action) ?? [],
    ...named,
    say,
    findingsAt: findingsAtLines(checker, found, run),
    recipeAt: ({ file, declaration }) => {
      const model = checker.program.files.get(file)?.byKey.get(declaration)?.lowered.model;
      return model?.kind === "recipe" ? model : undefined;
    },
    ...(job ? { result: job.result } : {}),
    ...(job?.plan ? { plan: job.plan } : {}),
  });
}

/** The recipes that the runs go through and the materials that they use. */
const drawnOnBy = (runs: readonly SurfaceRun[]): readonly DeclarationId[] => [
  ...runs.flatMap((run) => [...run.applied.map(({ recipe }) => recipe), ...framesOf(run)]),
  ...usedMaterials(runs),
];

export const DATES = {
  "last work": "Last work",
  "light use": "Light use from",
  "full use": "Full use from",
} as const;

function jobFacts(result: JobResult, say: ShownFigures): readonly SheetFact[] {
  const { job, shop, totals } = result;
  const day = (at: { readonly date: string; readonly time?: string }): string =>
    momentText(at.time === undefined ? at.date : `${at.date}T${at.time}`);
  const fact = (name: string, text: string | undefined): readonly SheetFact[] =>
    text ? [{ name, text }] : [];
  return [
    ...fact(t`Owner`, job.owner),
    ...fact(t`Delivery`, job.delivery),
    ...fact(t`Shop`, shop && capital(titleOf(shop))),
    ...fact(t`Place`, shop?.outdoors && capital(outdoorsText(shop.outdoors.value))),
    ...fact(t`Air`, shop?.air && say.air(shop.air.value)),
    ...fact(t`Air by night`, shop?.nightAir && say.air(shop.nightAir.value)),
    ...fact(t`After the job`, job.after && words(job.after.job)),
    ...fact(t`Start`, job.start && day(job.start)),
    ...jobDates(result).flatMap(({ name, at, text, reason }) => {
      const brief = name === "last work" ? uncheckedText(result) : briefReason(reason);
      return at === undefined ? [] : fact(translated(DATES[name]), brief === "" ? text : `${text}, ${brief}`);
    }),
    ...fact(t`Wanted by`, job.ready && day(job.ready)),
    ...fact(t`Hands-on`, totals.hands_on_h === null ? undefined : formatWork(totals.hands_on_h)),
    ...fact(
      t`From start to finish`,
      totals.elapsed_h === null ? undefined : formatDuration(totals.elapsed_h),
    ),
  ];
}

/** What is noted of the job, its pieces and their surfaces. */
function noteFacts({ job, runs, shop }: JobResult, title: (run: SurfaceRun) => string): readonly SheetFact[] {
  const noted = (of: string, notes: readonly string[]): readonly SheetFact[] =>
    notes.map((text) => ({ name: of === "" ? t`Note` : t`Note, ${of}`, text }));
  const pieces = new Set(runs.flatMap(({ piece }) => (piece ? [piece] : [])));
  return [
    ...noted("", job.notes),
    ...noted(shop ? titleOf(shop) : "", shop?.notes ?? []),
    ...[...pieces].flatMap((piece) => noted(titleOf(piece), piece.notes)),
    ...runs.flatMap((run) => noted(title(run), run.surface?.notes ?? [])),
  ];
}

export const GAP_FIGURES: readonly { readonly field: GapField; readonly figure: string }[] = [
  { field: "elapsed_h", figure: "The length of the job" },
  { field: "finish", figure: "Dates" },
  { field: "in_service", figure: "When it may go into service" },
];

/** What the sheet leaves blank. Money is no matter of the bench, so what is missing for it is not named. */
function jobGaps(result: JobResult): readonly SheetGap[] {
  const figures = GAP_FIGURES.map(({ field, figure }) => ({
    figure: translated(figure),
    missing: gapsOf(result, field),
  }));
  const { shop, runs, needs } = result;
  const waits = runs.some(({ moments }) => moments.some(({ action }) => action.op === "wait"));
  const air = !waits || shop?.air ? [] : [shop ? t`no \`air\` in \`${shop.name}\`` : t`no \`in\` (the shop)`];
  const areas = runs.flatMap(({ surface }) =>
    surface?.areaGap === "unreadable shape"
      ? [t`a \`shape\` of \`${surface.name}\` that cannot be read`]
      : surface && surface.areaM2 <= 0
        ? [t`no \`shape\` for \`${surface.name}\``]
        : [],
  );
  return [
    ...figures,
    {
      figure: t`Fumes by the hour and the air of the room`,
      missing: awaitsRoomAir(result) ? [beingPlannedText()] : [],
    },
    { figure: t`Waits in this shop's air (the labels' times stand)`, missing: air },
    { figure: t`Areas`, missing: [...new Set(areas)] },
    {
      figure: t`Amounts`,
      missing: needs.flatMap((need) => (need.totals.litres === null ? materialGaps(need) : [])),
    },
    {
      figure: t`New cans`,
      missing: needs.flatMap((need) => (need.totals.litres === null ? [] : materialGaps(need))),
    },
  ].filter(({ missing }) => missing.length > 0);
}

// ---------------------------------------------------------------------------------------------------------------
// Pieces and surfaces

/** `runs`: those of the piece. */
function sheetPiece(piece: Piece, count: number, runs: readonly SurfaceRun[]): SheetPiece {
  const coated = runs.filter((run) => run.initial.layers.some(oldCoating));
  const built = piece.built?.value;
  const use = piece.useBy.value;
  return {
    title: capital(titleOf(piece)),
    count,
    docs: docsOf(piece),
    facts: [
      ...(built === undefined ? [] : [t`built ${built}`]),
      ...(piece.useBy.origin === "stated"
        ? [use === "food" ? t`used with food` : t`used by ${translated(use)}`]
        : []),
    ],
    cautions: [
      ...new Set(
        coated
          .map(leadFactsOf)
          .filter(isToBeSaid)
          .map((facts) => leadNote(facts)),
      ),
    ],
  };
}

const isToBeSaid = (facts: LeadFacts): boolean => leadStatus(facts) !== "unlikely";

function sheetSurface(
  run: SurfaceRun,
  title: string,
  filmUm: number | null,
  say: ShownFigures,
): SheetSurface {
  const { surface, pieces } = run;
  const areaM2 = surface?.areaM2 ?? 0;
  const veneer = surface?.substrate.veneerMm;
  const builds = run.moments.some(
    ({ action, after }) => action.op === "layer" && after.layers.at(-1)?.filmUm !== 0,
  );
  return {
    title,
    substrate: [
      translated(surface?.substrate.name || "not stated"),
      ...(veneer === undefined ? [] : [t`veneer ${thicknessText(veneer)}`]),
      ...(surface?.moisture ? [t`at ${percentText(surface.moisture.value)} moisture`] : []),
    ].join(", "),
    existing: isTakenAsBare(run) ? takenAsBareText() : existingText(run.initial.layers),
    wear: [
      ...(surface ? [translated(surface.wear.value)] : []),
      ...(surface?.outdoors ? [outdoorsText(surface.outdoors.value)] : []),
    ].join(", "),
    area: areaM2 <= 0 || surface?.areaGap ? t`not known` : say.areaOfMany(pieces, areaM2),
    film: !builds ? t`none` : filmUm === null ? t`not known` : filmText(filmUm),
    docs: { text: surface?.docs ?? "", file: run.piece?.file ?? "" },
    section: sectionOf(run, title, run.job),
  };
}

/** From the wood up, with equal neighbours counted: `alkyd paint (2 coats), paste wax`. */
function existingText(layers: readonly Coat[]): string {
  const rows: { readonly name: string; count: number }[] = [];
  for (const { what, material } of layers) {
    const name = material ? titleOf(material) : translated(what);
    const last = rows.at(-1);
    if (last?.name === name) last.count += 1;
    else rows.push({ name, count: 1 });
  }
  return (
    rows.map(({ name, count }) => (count === 1 ? name : t`${name} (${count} coats)`)).join(", ") || t`bare`
  );
}

// ---------------------------------------------------------------------------------------------------------------
// Into service

function jobService(
  result: JobResult,
  pieces: readonly { readonly piece: Piece }[],
  title: (run: SurfaceRun) => string,
): SheetService {
  const at = result.totals.in_service;
  const light = jobDates(result).find(({ name }) => name === "light use");
  return {
    ...(light?.at === undefined ? {} : { light: light.text }),
    ...(at === null ? {} : { date: momentText(at) }),
    cures: result.runs.flatMap((run) => cureOf(run, title(run))),
    cautions: pieces.flatMap(({ piece }) => {
      const use = piece.useBy.value;
      const doc = use === "adults" ? undefined : docOf("meant_for", use);
      return doc
        ? [
            use === "food"
              ? t`${capital(titleOf(piece))} is used with food. ${translated(doc)}`
              : t`${capital(titleOf(piece))} is for children. ${translated(doc)}`,
          ]
        : [];
    }),
  };
}

/** The full cure of the last coat that a run puts on. */
function cureOf(run: SurfaceRun, title: string): readonly SheetFact[] {
  const last = run.moments.findLast(({ action }) => action.op === "layer")?.after.layers.at(-1);
  if (!last) return [];
  const name = capital(title || words(last.what));
  if (!last.material) return [{ name, text: t`that of the last coat, which is still to be chosen` }];
  const material = titleOf(last.material);
  const needed = last.drying.cured;
  if (!needed) return [{ name, text: t`that of ${material}, which its label states` }];
  const how =
    needed.factor > 1
      ? t`${formatDuration(needed.label)} × ${factorText(needed.factor)} in this shop's air`
      : needed.isTypical
        ? t`typical of its kind, the label decides`
        : t`by its label`;
  return [
    {
      name,
      text: t`${exactDuration(roundedUpHours(needed.hours))} after the last coat of ${material} (${how})`,
    },
  ];
}

// ---------------------------------------------------------------------------------------------------------------
// Recipes by themselves

function recipeSheet(checker: Checker, recipe: Recipe, findingsOf: ConcernedFindingsOf): Sheet {
  const run = checker.assumed(recipe);
  const concern = { file: recipe.file, declarations: [recipe, ...drawnOnBy([run])] };
  const found = concerning(reachableFiles(checker.program, recipe.file), findingsOf, concern);
  const units = unitsFor(checker, recipe.file);
  const say = figuresIn(units);
  const { sheet, spans } = procedureFor(checker, run, found, { title: "", surface: "" }, say);
  const procedures = withSharedWear([sheet]);
  return {
    kind: "recipe",
    units,
    name: recipe.name,
    file: recipe.file,
    title: capital(titleOf(recipe)),
    docs: docsOf(recipe),
    findings: numbered(found, usedMaterials([run])),
    facts: recipe.forKinds.length > 0 ? [{ name: t`For`, text: recipe.forKinds.join(", ") }] : [],
    gaps: [
      {
        figure: t`Areas, amounts, dates and waits in a shop's air`,
        missing: [t`no \`job\` here applies this recipe to a piece`],
      },
    ],
    choices: recipe.parameters.map((parameter) => ({
      name: words(parameter.name),
      text: choiceText(recipe, parameter, (value) => t`${value} on this sheet`),
    })),
    duties: [
      ...sheetDuties([{ procedure: sheet, spans }]),
      ...solventRags(run.moments.map(({ action }) => action)),
    ],
    shopDocs: { text: "", file: recipe.file },
    pieces: [],
    surfaces: [],
    materials: sheetMaterials([run], undefined, say),
    sparePercent: 0,
    paper: [],
    days: [],
    procedures,
    bench: benchList(recipe, procedures),
    service: { cures: cureOf(run, t`Full cure`), cautions: [] },
  };
}
