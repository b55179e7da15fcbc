/**
 * A card for whoever takes a piece home: from when it may be used, how to look after it, and what it was finished with.
 *
 * It is handed to others, so it speaks in titles and says nothing that was written for the workshop: no notes and no doc
 * comments, no prices, no names of people and files. `handed-on.ts` has what stands on it only when asked for.
 */
import { t, translated } from "../../../grammar/src/translate.ts";
import { type Care, careOf, GENTLEST } from "../core/knowledge/care.ts";
import { countsAsLead, leadNote, leadStatus } from "../core/knowledge/lead.ts";
import { docOf } from "../core/knowledge/vocabularies.ts";
import { thicknessText } from "../core/measure/figures.ts";
import type { Piece } from "../core/model/model.ts";
import { leadFactsOf, oldCoating } from "../core/surface/lead.ts";
import type { SurfaceRun } from "../core/surface/run.ts";
import { type Coat, topCoat } from "../core/surface/state.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import type { HandedOn } from "./handed-on.ts";
import { handedOnFacts } from "./handed-on-facts.ts";
import { jobDates } from "./schedule/job-dates.ts";
import { capital, sortText, titleOf, useTitle, words } from "./sheet/words.ts";

export interface CareCard {
  readonly title: string;
  /** Pieces of this kind in the job: each gets a card. */
  readonly count: number;
  /** What was asked for by name. */
  readonly handedOn: readonly CareFact[];
  /** In the order in which they come. */
  readonly dates: readonly CareFact[];
  /** All dates are known. */
  readonly dated: boolean;
  /** Surfaces that are looked after alike stand together. */
  readonly care: readonly SurfaceCare[];
  readonly surfaces: readonly CareFact[];
  readonly cautions: readonly string[];
}

export interface CareFact {
  readonly name: string;
  readonly text: string;
}

export interface SurfaceCare extends Pick<Care, "clean" | "avoid" | "repair"> {
  /** `Top`, `Base` */
  readonly surfaces: readonly string[];
  /** `a waterborne clear film` */
  readonly top: string;
}

/** One for every piece of a job on which something is done, in the order of the job. */
export function careCards(result: JobResult, handedOn: readonly HandedOn[] = []): readonly CareCard[] {
  const pieces = new Set(result.runs.flatMap(({ piece }) => (piece ? [piece] : [])));
  return [...pieces].map((piece) => careCard(result, piece, handedOn));
}

function careCard(result: JobResult, piece: Piece, handedOn: readonly HandedOn[]): CareCard {
  const { runs } = result;
  const own = runs.filter((run) => run.piece === piece);
  const { facts, dated } = datesOf(result);
  return {
    title: capital(titleOf(piece)),
    count: Math.max(...own.map(({ pieces }) => pieces)),
    handedOn: handedOnFacts(result, handedOn),
    dates: facts,
    dated,
    care: alike(own),
    surfaces: [
      ...own.map((run) => ({ name: surfaceTitle(run), text: finishText(run) })),
      ...untouched(piece, own),
    ],
    cautions: cautionsOf(piece, own),
  };
}

const surfaceTitle = ({ surface, label }: SurfaceRun): string =>
  capital(surface ? titleOf(surface) : words(label));

// ---------------------------------------------------------------------------------------------------------------
// When

export const LIGHT = "set things down with care; nothing hot, wet or heavy, and nothing left standing on it";
export const FULL = "use it as it is meant to be used";
export const WET = "wipe it as told below; until then dust it with a dry cloth";

/** Without the reasons, which name steps and materials of the recipe. */
function datesOf(result: JobResult): { readonly facts: readonly CareFact[]; readonly dated: boolean } {
  const [work, light, full] = jobDates(result);
  const when = (at: string | undefined, text: string, allowed: string): string =>
    at === undefined ? t`not known; ask whoever finished it (${allowed})` : `${text}: ${allowed}`;
  return {
    facts: [
      { name: t`Last work`, text: work?.at === undefined ? t`not known` : work.text },
      { name: t`Light use from`, text: when(light?.at, light?.text ?? "", translated(LIGHT)) },
      { name: t`Full use from`, text: when(full?.at, full?.text ?? "", translated(FULL)) },
      { name: t`Wet cleaning from`, text: when(full?.at, full?.text ?? "", translated(WET)) },
    ],
    dated: [work, light, full].every((date) => date?.at !== undefined),
  };
}

// ---------------------------------------------------------------------------------------------------------------
// How

const careTold = ({ clean, avoid, repair, source }: Omit<Care, "families" | "name">) => ({
  clean: translated(clean),
  avoid: translated(avoid),
  repair: translated(repair),
  source: translated(source),
});

/** What is on top of a surface, and how to look after that. */
function topOf({ final }: SurfaceRun): Omit<SurfaceCare, "surfaces"> {
  const coat = topCoat(final);
  const family = final.wax ? "paste wax" : coat?.family?.name;
  const care = final.certain && family !== undefined ? careOf(family) : undefined;
  if (care) return { ...careTold(care), top: translated(care.name) };
  const unknown = !final.certain || final.openBelow || coat !== undefined;
  const top = family
    ? t`${translated(family)}, which needs a coat over it`
    : unknown
      ? t`not known`
      : t`bare`;
  return { ...careTold(GENTLEST), top };
}

/** Surfaces that are looked after in the same words stand together. */
function alike(runs: readonly SurfaceRun[]): readonly SurfaceCare[] {
  const groups = new Map<string, SurfaceCare>();
  for (const run of runs) {
    const care = { ...topOf(run), ...(mayHoldLead(run) ? { repair: translated(LEAD_REPAIR) } : {}) };
    const key = `${care.top}\n${care.repair}`;
    const before = groups.get(key)?.surfaces ?? [];
    groups.set(key, { ...care, surfaces: [...before, surfaceTitle(run)] });
  }
  return [...groups.values()];
}

// ---------------------------------------------------------------------------------------------------------------
// With what

/** `red oak, veneer 0.6 mm; from the bottom up: Walnut gel stain (gel stain, 1 coat), …` */
function finishText({ surface, final }: SurfaceRun): string {
  const veneer = surface?.substrate.veneerMm;
  const wood = [
    translated(surface?.substrate.name || "wood not stated"),
    ...(veneer === undefined ? [] : [t`veneer ${thicknessText(veneer)}`]),
  ].join(", ");
  const coats = coatTexts(final.layers);
  return `${wood}; ${coats.length > 0 ? t`from the bottom up: ${coats.join("; ")}` : t`bare`}`;
}

/** From the wood up; equal neighbours are one, with their number. */
function coatTexts(layers: readonly Coat[]): readonly string[] {
  const rows: { readonly text: string; fewest: number; most: number }[] = [];
  for (const coat of layers) {
    const text = coatText(coat);
    const last = rows.at(-1);
    const row = last?.text === text ? last : { text, fewest: 0, most: 0 };
    if (row !== last) rows.push(row);
    row.most += 1;
    if (!coat.action?.ifNeeded) row.fewest += 1;
  }
  return rows.map(({ text, fewest, most }) => {
    const count = fewest === most ? `${most}` : t`${fewest} to ${most}`;
    return most === 1 ? t`${text}, ${count} coat` : t`${text}, ${count} coats`;
  });
}

function coatText({ origin, material, action, what }: Coat): string {
  const title = material ? titleOf(material) : action ? useTitle(action.use) : translated(what);
  const more = material && !material.builtIn ? [sortText(material)] : [];
  const batch = material?.batch ? [t`batch ${material.batch.value}`] : [];
  const details = [...more, ...batch].join(", ");
  const named = `${title}${details === "" ? "" : ` (${details})`}`;
  return origin === "existing" ? t`old ${named}` : named;
}

const untouched = ({ surfaces }: Piece, own: readonly SurfaceRun[]): readonly CareFact[] =>
  surfaces
    .filter((surface) => !own.some((run) => run.surface?.name === surface.name))
    .map((surface) => ({ name: capital(titleOf(surface)), text: t`nothing was done to it` }));

// ---------------------------------------------------------------------------------------------------------------
// What may hurt

export const RAGS =
  "Cloths with oil or oil varnish on them can catch fire by themselves. Spread them flat outdoors to dry, or keep them under water in a closed metal can.";
export const REPAIRS =
  "Before you put anything on it, read the label and the safety data sheet of the product: they say which gloves and how much air it needs. Open the windows and keep flames away. Sanding throws fine dust: wear a fitted dust mask, keep children out, and wipe the dust up damp. These are the usual cautions, no more; local codes come before them.";
export const LEAD = "Do not sand, scrape or heat it. Have that done by somebody who is licensed for lead.";

function cautionsOf(piece: Piece, runs: readonly SurfaceRun[]): readonly string[] {
  const use = piece.useBy.value;
  const meant = use === "adults" ? undefined : docOf("meant_for", use);
  const tops = runs.flatMap(({ final }) => topCoat(final) ?? []);
  const heats = tops.some(({ family, material }) => material?.selfHeatingRags.value ?? family?.ragsSelfHeat);
  return [
    ...(meant
      ? [
          use === "food"
            ? t`It is used with food. ${translated(meant)}`
            : t`It is for children. ${translated(meant)}`,
        ]
      : []),
    ...new Set(runs.flatMap(leadCaution)),
    translated(REPAIRS),
    ...(heats ? [translated(RAGS)] : []),
    ...(runs.some(({ continued }) => continued)
      ? [t`More work on it is planned. The card of that work takes the place of this one.`]
      : []),
  ];
}

/** Repairs begin with sanding, which is not for where old lead paint may lie beneath. */
export const LEAD_REPAIR =
  "Not by yourself: old coatings below may hold lead. Have it done by somebody who is licensed for lead.";

const keepsOldCoating = ({ final }: SurfaceRun): boolean => final.openBelow || final.layers.some(oldCoating);

const mayHoldLead = (run: SurfaceRun): boolean =>
  keepsOldCoating(run) && countsAsLead(leadStatus(leadFactsOf(run)));

/** Where an old coating is left below the new one. */
function leadCaution(run: SurfaceRun): readonly string[] {
  if (!keepsOldCoating(run)) return [];
  const facts = leadFactsOf(run);
  switch (leadStatus(facts)) {
    case "unlikely":
      return [];
    case "found":
      return [t`${surfaceTitle(run)}: old coatings are left on it. ${leadNote(facts)} ${translated(LEAD)}`];
    case "none_found":
      return [t`${surfaceTitle(run)}: old coatings are left on it. ${leadNote(facts)}`];
    default:
      return [t`${surfaceTitle(run)}: old coatings are left on it and may hold lead. ${translated(LEAD)}`];
  }
}
