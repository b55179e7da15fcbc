/**
 * What must have one name with something else, because a line finds both by it.
 *
 * A call of a `recipe` parameter names the parameters of every recipe that is handed on to it. A surface with `existing
 * as left by JOB` is the surface of the same name that the job, or one that it goes on from, worked on.
 */
import type { Job } from "../../core/model/model.ts";
import { modelsOf, type Scope } from "../../core/model/program.ts";
import { type Referent, surfaceReferent } from "../../core/resolution/reference.ts";
import { type JobSurface, jobSurfaces } from "../../core/surface/job-surfaces.ts";
import type { Names } from "../names/names.ts";

/** These, and all that must be renamed along with them. */
export function linkedWith(names: Names, referents: readonly Referent[]): readonly Referent[] {
  const kinds = new Set(referents.map(({ kind }) => kind));
  const groups = [
    ...(kinds.has("parameter") ? parameterGroups(names) : []),
    ...(kinds.has("surface") ? surfaceGroups(names) : []),
  ];
  const found = new Map(referents.map((referent) => [referent.key, referent]));
  let size = 0;
  while (size < found.size) {
    size = found.size;
    for (const group of groups) {
      if (group.some(({ key }) => found.has(key))) for (const each of group) found.set(each.key, each);
    }
  }
  return [...found.values()];
}

type Group = readonly Referent[];

function parameterGroups(names: Names): readonly Group[] {
  return [...names.program.files.keys()].flatMap((file) =>
    names
      .inFile(file)
      .filter(({ use, referents }) => use.role === "argument-name" && referents.length > 1)
      .map(({ referents }) => referents),
  );
}

function surfaceGroups({ program, checker }: Names): readonly Group[] {
  return [...program.files.values()].flatMap((file) =>
    modelsOf(file).flatMap((model) => {
      if (model.kind !== "piece") return [];
      return model.surfaces.flatMap((surface): readonly Group[] => {
        const scope = checker.scope(file.id);
        const job = surface.asLeftBy && scope.jobs.get(surface.asLeftBy.job);
        if (!job) return [];
        const left = surfacesLeftBy(job, scope).filter((each) => each.surface.name === surface.name);
        return [
          [{ surface, piece: model }, ...left].map((each) => surfaceReferent(each.surface, each.piece)),
        ];
      });
    }),
  );
}

/** The surfaces of a job and of all jobs before it, over `after`. */
function surfacesLeftBy(job: Job, scope: Scope): readonly JobSurface[] {
  const jobs = new Set([job]);
  for (const { after } of jobs) {
    const earlier = after && scope.jobs.get(after.job);
    if (earlier) jobs.add(earlier);
  }
  return [...jobs].flatMap((each) => jobSurfaces(each, scope));
}
