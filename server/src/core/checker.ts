/** What checks a program (`check.ts`), as its parts and those who ask it see it. */

import type { Finding } from "./findings.ts";
import type { FaultListener } from "./internal-error.ts";
import type { UnitSystem } from "./measure/shown-figures.ts";
import type { Memory } from "./memory/memory.ts";
import type { Job, Piece, Recipe, Shop } from "./model/model.ts";
import {
  modelsOf,
  type Program,
  type ProgramDeclaration,
  type ProgramFile,
  type Scope,
} from "./model/program.ts";
import { onceFor } from "./once.ts";
import type { FileId } from "./place.ts";
import type { Resolution } from "./resolution/resolve.ts";
import type { TradeRule } from "./rules/rule.ts";
import type { Planner } from "./schedule/plan-cache.ts";

import type { ShopPlans } from "./schedule/shop/plan-shop.ts";
import type { JobSurface } from "./surface/job-surfaces.ts";
import type { AssumedRunner, RunView, SurfaceRun } from "./surface/run.ts";

import type { JobResult, KeptNotes } from "./totals/job-totals.ts";
import type { JobInShop } from "./totals/shop-plans.ts";

export interface Checker {
  readonly program: Program;
  /** See `CheckerParts`. */
  readonly units?: UnitsOf;
  scope(file: FileId): Scope;
  /** What a declaration of a file means in its scope. */
  resolution(file: FileId, declaration: ProgramDeclaration): Resolution;
  /** Never throws. */
  findings(file: FileId): readonly Finding[];
  /**
   * The work for the findings of a file in small parts: between two of them others may be let in, and it may be given up.
   * After all of them `findings` only puts together what they came to. Never throws.
   */
  steps(file: FileId): Iterable<void>;
  /**
   * For answers that must not wait: the jobs of a file that are worked out already, and `most` others, those that are
   * `wanted` first; `left` counts the rest. Nothing else of the file is worked out for it.
   */
  jobsAtHand(file: FileId, most: number, wanted: (job: Job) => boolean): JobsAtHand;
  /** As `assumedIfSound`, without looking at the bounds of its file. */
  assumedAtHand(recipe: Recipe): SurfaceRun | undefined;
  /** Whether findings or figures of a file are missing because a job is still being planned. */
  awaitsPlans(file: FileId): boolean;
  /** Without those that could not be worked out for a fault in this program; `findings` names them. */
  jobs(file: FileId): readonly JobResult[];
  /** Throws where a fault in this program keeps the job from being worked out. */
  job(job: Job): JobResult;
  /** As if no other job were done in its shop, and without its air. Throws as `job`. */
  alone(job: Job): JobResult;
  /** The plans of the jobs that share a shop. */
  shopPlans(shop: Shop): ShopPlans<JobInShop>;
  /** Undefined where a fault in this program keeps the job from being worked out. */
  jobIfSound(job: Job): JobResult | undefined;
  /** Throws where a fault in this program keeps the recipe from being run. */
  assumed(recipe: Recipe): SurfaceRun;
  /** Undefined where a fault in this program keeps the recipe from being run. */
  assumedIfSound(recipe: Recipe): SurfaceRun | undefined;
  /** See `Runner`. */
  meantFor(recipe: Recipe): readonly JobSurface[] | undefined;
  /** See `Runner`. Throws where a fault in this program keeps the recipe from being run. */
  paired(recipe: Recipe): readonly SurfaceRun[];
  /** None where a fault in this program keeps the recipe from being run. */
  pairedIfSound(recipe: Recipe): readonly SurfaceRun[];
}

export interface JobsAtHand {
  readonly results: readonly JobResult[];
  readonly left: number;
}

/** What remembered work asks of a program. */
export interface CheckView extends RunView {
  /** See `JobGraph`. */
  readonly earlier: (file: FileId, job: Job) => readonly string[];
  readonly comesAfterItself: (file: FileId, job: Job) => boolean;
  readonly leadsBack: (file: FileId, job: Job, piece: Piece) => boolean;
  readonly hasSurface: (file: FileId, job: Job, surface: string) => boolean;
}

/** What somebody asks for the figures of a file to be told in; undefined: the units that the text is written in. */
export type UnitsOf = (file: FileId) => UnitSystem | undefined;

/** What a checker works with. Makers of plans and of runs may remember what they made for an earlier program. */
export interface CheckerParts {
  /** Keeps what was worked out for an earlier program. */
  readonly memory?: Memory<CheckView>;
  readonly plan: Planner;
  /** See `TotallerParts`. */
  readonly today?: string;
  /** See `UnitsOf`. */
  readonly units?: UnitsOf;
  /** Whether a project has switched a rule off in a file. */
  readonly isOff?: (file: FileId, rule: string) => boolean;
  /** See `TotallerParts`. */
  readonly kept?: KeptNotes;
  readonly assumed: AssumedRunner;
  readonly rules: readonly TradeRule[];
  /** Told of every fault in this program. */
  readonly onFault: FaultListener;
}

export function jobsOf(program: Program, file: FileId): readonly Job[] {
  const found = program.files.get(file);
  return found ? jobsIn(found) : [];
}

const jobsIn = onceFor((file: ProgramFile): readonly Job[] => {
  const jobs: Job[] = [];
  for (const model of modelsOf(file)) if (model.kind === "job") jobs.push(model);
  return jobs;
});

export function recipesOf(program: Program, file: FileId): readonly Recipe[] {
  const found = program.files.get(file);
  return found ? recipesIn(found) : [];
}

const recipesIn = onceFor((file: ProgramFile): readonly Recipe[] => {
  const recipes: Recipe[] = [];
  for (const model of modelsOf(file)) if (model.kind === "recipe") recipes.push(model);
  return recipes;
});
