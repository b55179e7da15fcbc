/**
 * Text in, surface states out: how the tests of this folder look at the simulation.
 */
import { parseFile } from "../../../grammar/src/parse.ts";
import { type Checker, createChecker } from "../../../server/src/core/check.ts";
import { programFile } from "../../../server/src/core/model/program.ts";
import type { SurfaceRun } from "../../../server/src/core/surface/run.ts";
import type { SurfaceState } from "../../../server/src/core/surface/state.ts";

const FILE = "test.finish";

function checkerOf(text: string): Checker {
  const file = programFile(FILE, parseFile(text), (_, path) => path);
  return createChecker({ files: new Map([[FILE, file]]), absent: new Map() });
}

/** The runs of the recipes of a text by themselves, in their order. */
export function assumedRunsOf(text: string): readonly SurfaceRun[] {
  const checker = checkerOf(text);
  return [...checker.scope(FILE).recipes.values()].map((recipe) => checker.assumed(recipe));
}

/** The surfaces that each recipe without a job must be meant for, by their labels; undefined where none is looked for. */
export function meantIn(text: string): Readonly<Record<string, readonly string[] | undefined>> {
  const checker = checkerOf(text);
  const recipes = [...checker.scope(FILE).recipes.values()];
  return Object.fromEntries(
    recipes.map((recipe) => [recipe.name, checker.meantFor(recipe)?.map(({ label }) => label)]),
  );
}

/** The runs of the jobs of a text, by `job` and surface: `second face`. */
export function runsOf(text: string): ReadonlyMap<string, SurfaceRun> {
  const checker = checkerOf(text);
  const runs = [...checker.scope(FILE).jobs.values()].flatMap((job) => checker.job(job).runs);
  return new Map(runs.map((run) => [`${run.job!.name} ${run.label}`, run]));
}

interface Work {
  readonly wood?: string;
  readonly existing?: string;
  readonly materials?: string;
}

/** How a surface is left by these lines. */
export function leftAfter(
  lines: readonly string[],
  { wood = "beech", existing, materials = "" }: Work = {},
): SurfaceState {
  const text = `${materials}
piece board {
  built 1995
  surface face {
    shape area 1 m2
    wood ${wood}
    existing ${existing ?? "bare"}
  }
}
recipe work {
${lines.join("\n")}
}
job work_on_it {
  piece board
  apply work to face
}
`;
  return runsOf(text).get("work_on_it face")!.final;
}

/** What a surface carries, from the wood up, by family. */
export const stackOf = (state: SurfaceState): readonly (string | undefined)[] =>
  state.layers.map((coat) => coat.family?.name);
