/**
 * What there is in some files, as a workshop has it: jobs with what they come to, pieces, recipes, and what is in stock. Each
 * declaration is one entry; its detail is what tells it from its neighbours.
 */
import { absoluteSpan } from "../../../grammar/src/walk.ts";
import type { Severity } from "../core/findings.ts";
import { figuresIn } from "../core/measure/shown-figures.ts";
import type { Material, Piece } from "../core/model/model.ts";
import { modelsOf, type ProgramFile } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import { titleOf } from "../views/sheet/words.ts";
import type { Analysis, JobLens, WorkshopEntry } from "./types.ts";

/** The part of an analysis that this looks at. */
type Seen = Pick<Analysis, "program" | "jobLenses" | "jobs" | "findings" | "units">;

/** In the order of the files and of their texts; findings of other levels than these are not counted. */
export function workshopOf(
  seen: Seen,
  files: readonly FileId[],
  levels: readonly Severity[],
): readonly WorkshopEntry[] {
  const jobsOfRecipe = countJobs(seen, files);
  return files.flatMap((id) => {
    const file = seen.program.files.get(id);
    if (!file) return [];
    const lenses = new Map(seen.jobLenses(id, levels).map((lens) => [lens.job, lens]));
    return modelsOf(file).flatMap((model): readonly WorkshopEntry[] => {
      const span = nameSpan(file, model);
      if (span === undefined || model.name === "") return [];
      const entry = { name: model.name, title: titleOf(model), file: id, span };
      if (model.kind === "job") {
        const lens = lenses.get(model.name);
        return [{ kind: "job", ...entry, ...(lens ? jobFacts(seen, id, lens) : { detail: "" }) }];
      }
      if (model.kind === "piece") return [{ kind: "piece", ...entry, detail: pieceText(model) }];
      if (model.kind === "recipe")
        return [{ kind: "recipe", ...entry, detail: useText(jobsOfRecipe.get(keyOf(model)) ?? 0) }];
      if (model.kind === "material" && model.onHandPlace)
        return [{ kind: "stock", ...entry, detail: stockText(seen, model) }];
      return [];
    });
  });
}

interface Declared {
  readonly file: FileId;
  readonly declaration: string;
}

const keyOf = ({ file, declaration }: Declared): string => `${file}\0${declaration}`;

/** How many jobs go through each recipe, those that others follow among them. */
function countJobs(seen: Seen, files: readonly FileId[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const file of files)
    for (const { runs } of seen.jobs(file)) {
      const lines = runs.flatMap(({ moments }) => moments.map(({ action }) => keyOf(action.place)));
      const applied = runs.flatMap((run) => run.applied.map(({ recipe }) => keyOf(recipe)));
      for (const key of new Set([...lines, ...applied])) counts.set(key, (counts.get(key) ?? 0) + 1);
    }
  return counts;
}

function nameSpan({ byKey }: ProgramFile, { declaration }: Declared): WorkshopEntry["span"] | undefined {
  const tree = byKey.get(declaration)?.tree;
  const name = tree?.body.syntax.name;
  return tree && name && absoluteSpan(tree, name.span);
}

/** `last work 8 Mar, full use 30 Mar 2027 · 84.00 EUR` */
function jobFacts(seen: Seen, file: FileId, { parts }: JobLens): Pick<WorkshopEntry, "detail" | "findings"> {
  const detail = parts
    .filter(({ kind }) => kind !== "findings")
    .map(({ text }) => text)
    .join(" · ");
  const findings = parts.find(({ kind }) => kind === "findings");
  const first = findings?.first;
  const gravest = first && seen.findings(file).find(({ span }) => span.start === first.start);
  return findings && gravest
    ? { detail, findings: { text: findings.text, severity: gravest.severity, first: gravest.span } }
    : { detail };
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

const pieceText = ({ surfaces }: Piece): string => counted(surfaces.length, "surface");
const useText = (jobs: number): string => (jobs === 0 ? "in no job" : `in ${counted(jobs, "job")}`);

function stockText(seen: Seen, { file, onHand, weighed }: Material): string {
  if (weighed.includes("counted")) return "by weight";
  return onHand === 0 ? "used up" : `${figuresIn(seen.units(file)).litres(onHand)} on hand`;
}
