/** The cut through the surface that a hover is about, or through the first one that its layer goes on, as the layer leaves it. */
import { referentsOf } from "../../core/resolution/reference.ts";
import { referenceAt } from "../../core/resolution/resolve.ts";
import type { SurfaceRun } from "../../core/surface/run.ts";
import type { Section } from "../../views/section/model.ts";
import { sectionOf } from "../../views/section/section.ts";
import { titleOf } from "../../views/sheet/words.ts";
import { allJobs, type HoverContext } from "./context.ts";
import { runsOfLine } from "./runs-of-line.ts";

export function sectionHere(ctx: HoverContext): Section | undefined {
  const { use, location } = ctx;
  const { statement } = location;
  if (statement?.kind === "layer" && (use === undefined || use.role === "keyword")) {
    const [line] = runsOfLine(ctx, statement);
    const last = line?.times.at(-1);
    return line && last && sectionOf(untilMoment(line.run, last.index), titleIn(line.run));
  }
  const surface = surfaceHere(ctx);
  const run =
    surface &&
    allJobs(ctx.checker)
      .flatMap(({ runs }) => runs)
      .find((each) => each.surface === surface);
  return run && sectionOf(run, titleIn(run));
}

const titleIn = ({ surface, label }: SurfaceRun): string => (surface ? titleOf(surface) : label);

function surfaceHere({ use, location, declaration, checker, file }: HoverContext): SurfaceRun["surface"] {
  const { model } = declaration.lowered;
  const { statement } = location;
  if (
    statement?.kind === "surface" &&
    model?.kind === "piece" &&
    (use === undefined || use.statement === statement)
  )
    return model.surfaces.find(({ name }) => name === statement.name?.text);
  if (use === undefined) return undefined;
  const reference = referenceAt(checker.resolution(file, declaration), use.name.span.start);
  const [meant] = reference ? referentsOf(reference, () => []) : [];
  return meant?.kind === "surface" ? meant.surface : undefined;
}

/** The run as if its work ended there. */
function untilMoment(run: SurfaceRun, index: number): SurfaceRun {
  const moments = run.moments.slice(0, index + 1);
  return { ...run, moments, final: moments.at(-1)!.after };
}
