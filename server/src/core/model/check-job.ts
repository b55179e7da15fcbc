/**
 * Checks the names in one job (pieces, shop, earlier job, recipes, arguments, surfaces), and those that pieces and
 * materials mention. Collects references on the way.
 */

import type { JobDeclaration, MaterialDeclaration, Target } from "../../../../grammar/src/tree.ts";
import { onceFor } from "../once.ts";
import {
  type CheckContext,
  type CheckResult,
  checkArguments,
  lookUp,
  reporter,
  reportUnknownName,
  type Suggestions,
} from "./check-context.ts";
import { jobGraph } from "./job-graph.ts";
import type { Job, Material, Piece, Surface } from "./model.ts";
import type { Scope } from "./program.ts";
import { orList } from "./suggest.ts";

const context = (
  of: { file: string; declaration: string },
  scope: Scope,
  suggestions: Suggestions,
): CheckContext => ({
  file: of.file,
  declaration: of.declaration,
  scope,
  findings: [],
  references: [],
  suggestions,
});

export function checkJob(
  job: Job,
  syntax: JobDeclaration,
  scope: Scope,
  suggestions: Suggestions,
): CheckResult {
  const ctx = context(job, scope, suggestions);
  const pieces = new Set<Piece>();
  for (const field of syntax.fields) {
    if (field.kind !== "field") continue;
    if (field.value.form === "pieces" && field.value.name) {
      const piece = lookUp(ctx, "piece", scope.pieces, field.value.name);
      if (piece) pieces.add(piece);
    }
    if (field.value.form === "name" && field.value.name && field.keyword.text === "in")
      lookUp(ctx, "shop", scope.shops, field.value.name);
    if (field.value.form === "name" && field.value.name && field.keyword.text === "after")
      lookUp(ctx, "job", scope.jobs, field.value.name);
  }
  checkJobsGoingRound(ctx, job);
  const known = knownSurfaces([...pieces]);
  const allPiecesKnown = job.pieces.length === pieces.size;
  for (const apply of job.applies) {
    const call = apply.syntax.call;
    if (call) checkArguments(ctx, call, lookUp(ctx, "recipe", scope.recipes, call.name), new Map(), []);
    for (const target of apply.syntax.targets) checkTarget(ctx, target, known, job, allPiecesKnown);
  }
  return { findings: ctx.findings, references: ctx.references };
}

/** A job may not follow itself, over `after` or `existing as left by`. */
function checkJobsGoingRound(ctx: CheckContext, job: Job): void {
  if (job.after && jobGraph(ctx.scope).comesAfterItself(job)) {
    reporter(ctx)(
      "follow-cycle",
      job.after.place.span,
      `\`${job.name}\` would come after itself. Name an earlier job.`,
    );
  }
}

interface KnownSurfaces {
  readonly pieces: ReadonlyMap<string, Piece>;
  /** By name, in the order of the pieces. */
  readonly surfaces: ReadonlyMap<string, readonly { readonly piece: Piece; readonly surface: Surface }[]>;
}

/** Many jobs may work on one large piece. */
const ofOnePiece = onceFor((piece: Piece): KnownSurfaces => surfacesByName([piece]));

function knownSurfaces(pieces: readonly Piece[]): KnownSurfaces {
  const [only, ...others] = pieces;
  return only && others.length === 0 ? ofOnePiece(only) : surfacesByName(pieces);
}

function surfacesByName(pieces: readonly Piece[]): KnownSurfaces {
  const surfaces = new Map<string, { readonly piece: Piece; readonly surface: Surface }[]>();
  for (const piece of pieces) {
    for (const surface of piece.surfaces) {
      const named = surfaces.get(surface.name);
      if (named) named.push({ piece, surface });
      else surfaces.set(surface.name, [{ piece, surface }]);
    }
  }
  return { pieces: new Map(pieces.toReversed().map((piece) => [piece.name, piece])), surfaces };
}

function checkTarget(
  ctx: CheckContext,
  target: Target,
  known: KnownSurfaces,
  job: Job,
  allKnown: boolean,
): void {
  const surface = target.surface;
  if (!surface) return;
  if (!target.piece && surface.text === "all") return;
  if (target.piece) {
    const piece = known.pieces.get(target.piece.text);
    ctx.references.push({
      kind: "piece",
      name: target.piece.text,
      span: target.piece.span,
      ...(piece ? { target: piece.namePlace } : {}),
    });
    if (!piece) {
      if (allKnown)
        reportUnknownName(
          ctx,
          "piece in this job",
          target.piece,
          job.pieces.map((p) => p.piece),
        );
      return;
    }
  }
  const matches = (known.surfaces.get(surface.text) ?? []).filter(
    (k) => !target.piece || k.piece.name === target.piece.text,
  );
  ctx.references.push({
    kind: "surface",
    name: surface.text,
    span: surface.span,
    ...(matches[0] ? { target: matches[0].surface.namePlace } : {}),
  });
  if (matches.length === 0) {
    if (allKnown) reportUnknownName(ctx, "surface", surface, known.surfaces.keys());
  } else if (!target.piece && job.pieces.length > 1) {
    const names = matches.map((m) => `\`${m.piece.name}.${surface.text}\``);
    reporter(ctx)(
      "unknown-name",
      surface.span,
      `\`${surface.text}\` may be of more than one piece. Say which, ${orList(names)}.`,
    );
  }
}

/** `existing as left by JOB` in a piece. */
export function checkPiece(piece: Piece, scope: Scope, suggestions: Suggestions): CheckResult {
  const ctx = context(piece, scope, suggestions);
  for (const surface of piece.surfaces) {
    if (!surface.asLeftBy) continue;
    const { job, place } = surface.asLeftBy;
    const found = lookUp(ctx, "job", scope.jobs, { kind: "name", text: job, span: place.span });
    // A job that works on this very piece starts from bare wood; later jobs start from what it leaves.
    if (found && jobGraph(scope).leadsBack(found, piece)) {
      reporter(ctx)(
        "follow-cycle",
        place.span,
        `\`${job}\` starts from what a job on this piece leaves, so each needs the other first. Describe the piece as it was before the first job.`,
      );
    } else if (found && !jobGraph(scope).hasSurface(found, surface.name)) {
      reporter(ctx)(
        "unknown-name",
        place.span,
        `\`${job}\` has no surface \`${surface.name}\` to leave layers on.`,
      );
    }
  }
  return { findings: ctx.findings, references: ctx.references };
}

/** The hardener of a two-part material. */
export function checkMaterialNames(
  material: Material,
  syntax: MaterialDeclaration,
  scope: Scope,
  suggestions: Suggestions,
): CheckResult {
  const ctx = context(material, scope, suggestions);
  for (const field of syntax.fields) {
    if (field.kind === "field" && field.value.form === "mix" && field.value.hardener) {
      lookUp(ctx, "material", scope.materials, field.value.hardener);
    }
  }
  return { findings: ctx.findings, references: ctx.references };
}
