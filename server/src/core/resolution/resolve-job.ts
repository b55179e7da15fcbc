/** Resolves one job: its pieces, shop, earlier job, calls and surfaces. */
import { t } from "../../../../grammar/src/translate.ts";
import type { Call, JobDeclaration, Target } from "../../../../grammar/src/tree.ts";
import type { Job, Piece, Shop, Surface } from "../model/model.ts";
import { orList } from "../model/suggest.ts";
import { onceFor } from "../once.ts";
import type { ResolvedCall } from "./lines.ts";
import { resolveCall } from "./resolve-call.ts";
import { modelNamed, type Resolving, report, reportUnknown } from "./resolving.ts";

export interface ResolvedApplies {
  readonly shop?: Shop;
  /** What the `apply` lines call, by the calls. */
  readonly calls: ReadonlyMap<Call, ResolvedCall>;
}

export function resolveApplies(ctx: Resolving, job: Job, syntax: JobDeclaration): ResolvedApplies {
  const pieces = new Set<Piece>();
  for (const { value, keyword } of syntax.fields.filter((field) => field.kind === "field")) {
    if (value.form === "pieces" && value.name) {
      const piece = modelNamed(ctx, "piece", value.name);
      if (piece?.kind === "piece" && piece.model?.kind === "piece") pieces.add(piece.model);
    }
    if (value.form !== "name" || !value.name) continue;
    if (keyword.text === "in") modelNamed(ctx, "shop", value.name);
    if (keyword.text === "after") modelNamed(ctx, "job", value.name);
  }
  const known = knownSurfaces([...pieces]);
  const areAllKnown = job.pieces.length === pieces.size;
  const calls = new Map<Call, ResolvedCall>();
  for (const { syntax: apply } of job.applies) {
    if (apply.call) calls.set(apply.call, resolveCall(ctx, apply.call));
    for (const target of apply.targets) checkTarget(ctx, target, known, job, areAllKnown);
    if (apply.call && apply.targets.length === 0 && areAllKnown) checkOnly(ctx, apply.call, known, job);
  }
  for (const { syntax: done } of job.records) {
    if (done.material) modelNamed(ctx, "material", done.material);
    for (const target of done.targets) checkTarget(ctx, target, known, job, areAllKnown);
    if (done.targets.length === 0 && areAllKnown)
      checkOnly(
        ctx,
        { span: (done.material ?? done.verb ?? done.what ?? done.coat ?? done).span },
        known,
        job,
        "on",
      );
  }
  const shop = job.shop && ctx.scope.shops.get(job.shop.name);
  return { calls, ...(shop ? { shop } : {}) };
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

/** A line that names no surface, which is plain where there is only one. */
function checkOnly(
  ctx: Resolving,
  { span }: Pick<Call, "span">,
  known: KnownSurfaces,
  job: Job,
  word: "to" | "on" = "to",
): void {
  const labels = [...known.surfaces].flatMap(([name, all]) =>
    all.map(({ piece }) => (job.pieces.length > 1 ? `${piece.name}.${name}` : name)),
  );
  if (labels.length < 2) return;
  const at = { start: span.end, end: span.end };
  const [first, ...others] = ["all", ...labels.slice(0, 4)].map((label) => ({
    title: t`Add \`${word} ${label}\``,
    span: at,
    text: ` ${word} ${label}`,
  }));
  ctx.problems.push({
    rule: "syntax",
    span,
    message: t`This job has several surfaces\nSay which, such as \`${word} ${labels[0]!}\`, or \`${word} all\`.`,
    fix: first!,
    others,
  });
}

function checkTarget(
  ctx: Resolving,
  { piece, surface }: Target,
  known: KnownSurfaces,
  job: Job,
  areAllKnown: boolean,
): void {
  if (!surface || (!piece && surface.text === "all")) return;
  if (piece && !known.pieces.has(piece.text)) {
    if (areAllKnown)
      reportUnknown(ctx, "piece in this job", piece, { others: job.pieces.map((each) => each.piece) });
    return;
  }
  const matches = (known.surfaces.get(surface.text) ?? []).filter(
    (each) => !piece || each.piece.name === piece.text,
  );
  if (matches.length === 0) {
    const isPiece = !piece && known.pieces.has(surface.text);
    if (areAllKnown && !isPiece)
      reportUnknown(ctx, "surface", surface, { others: [...known.surfaces.keys()] });
  } else if (!piece && job.pieces.length > 1 && (matches.length > 1 || !areAllKnown)) {
    const names = matches.map((each) => `\`${each.piece.name}.${surface.text}\``);
    report(
      ctx,
      "unknown-name",
      surface.span,
      t`\`${surface.text}\` may be of more than one piece\nSay which, ${orList(names)}.`,
    );
  }
}

/** The job that a surface's `existing as left by` names. */
export function leftByOf(ctx: Resolving, { asLeftBy }: Surface): Job | undefined {
  if (!asLeftBy) return undefined;
  const meant = modelNamed(ctx, "job", { kind: "name", text: asLeftBy.job, span: asLeftBy.place.span });
  return meant?.kind === "job" && meant.model?.kind === "job" ? meant.model : undefined;
}
