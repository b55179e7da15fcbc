/**
 * The area that a line is done on: all of the surface, or the part that `only` names.
 *
 * Arithmetic: a stated share or area counts as it stands. Of `only "edges"` and `only "faces"` it follows from the shapes,
 * where each of them says how thick it is; where nothing tells how much is meant, the whole is counted.
 */
import type { Surface } from "../model/model.ts";
import type { PartTail } from "../resolution/lines.ts";

/** Square metres of one piece; 0 where there is no surface. */
export function workedAreaM2(
  surface: Pick<Surface, "areaM2" | "shapes"> | undefined,
  part: PartTail | undefined,
): number {
  const whole = surface?.areaM2 ?? 0;
  if (!surface || !part) return whole;
  if (part.areaM2 !== undefined) return part.areaM2;
  if (part.share !== undefined) return whole * part.share;
  return namedAreaM2(surface, part.where ?? "") ?? whole;
}

function namedAreaM2(
  { areaM2, shapes }: Pick<Surface, "areaM2" | "shapes">,
  where: string,
): number | undefined {
  const named = NAMED.exec(where.trim())?.[1]?.toLowerCase();
  if (named === undefined) return undefined;
  // A leg has no edges, but of a panel without a thickness nobody knows them.
  if (!shapes.some(({ edges }) => edges) || shapes.some(({ edgesM2 }) => edgesM2 === undefined))
    return undefined;
  const edges = shapes.reduce((sum, shape) => sum + (shape.edgesM2 ?? 0), 0);
  return named.startsWith("edge") ? edges : areaM2 - edges;
}

const NAMED = /^(?:all )?(?:the )?(edges?|faces?)$/iu;
