/**
 * Sanding that goes through a veneer, or into the printed face of a laminate. Neither can be mended.
 *
 * Wood taken is calculated by the notation's rule, 10 divided by the grit in millimetres a pass. A laminate may be scuffed, and
 * one pass of 180 or finer is a scuff by another name. Plywood says nothing about its face and stays silent.
 */

import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { Fix } from "../../findings.ts";
import { materialTakenMm, VENEER_SHARE } from "../../knowledge/abrasives.ts";
import { BY_DEFINITION, PRACTICE } from "../../knowledge/sources.ts";
import { thicknessText } from "../../measure/figures.ts";
import type { StepAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isBare } from "../../surface/state.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { related, replaceAt } from "../texts.ts";

/** From this grit on, sanding a laminate only dulls it. */
const DULLS_LAMINATE = 180;
const TOLERANCE_MM = 1e-9;

export const sandThrough: TradeRule = {
  id: "sand-through",
  group: "preparation",
  severity: "warning",
  docs: {
    summary: "The sanding takes more than 0.8 of a veneer's thickness, or goes into a laminate.",
    why: "Where the veneer is gone the glue line and the core show, and no stain or finish hides them; a laminate's print is thinner still.",
    remedy: "Start with a finer grit, leave passes out, or strip the old finish instead of sanding it off.",
    sources: [`${BY_DEFINITION}: a grit G takes 10/G mm`, PRACTICE],
  },
  failing: [
    {
      title: "Four grits on 0.6 mm",
      text: `piece cabinet {
  surface top {
    shape panel 800 mm x 400 mm
    wood  walnut, veneer 0.6 mm
  }
}
recipe bare_wood {
  for    wood
  safety dust_mask
  step   sand 40, 60, 80 #! sand-through
  step   dust
}
job cabinets {
  piece cabinet
  apply bare_wood to top
}
`,
    },
    {
      title: "The second line goes through",
      text: `piece cabinet {
  surface top {
    shape panel 800 mm x 400 mm
    wood  walnut, veneer 0.4 mm
  }
}
recipe bare_wood {
  for    veneer
  safety dust_mask
  step   sand 80, 120, 180
  step   dust
  step   sand 180, 240 #! sand-through
  step   dust
}
job cabinets {
  piece cabinet
  apply bare_wood to top
}
`,
    },
    {
      title: "A laminate is sanded",
      text: `piece desk {
  surface top {
    shape panel 800 mm x 400 mm
    wood  laminate
  }
}
recipe prepare {
  for    any
  safety dust_mask
  step   clean with soap
  step   sand 120, 180 #! sand-through
  step   dust
}
job desks {
  piece desk
  apply prepare to top
}
recipe prepare_laminate {
  for    laminate
  safety dust_mask
  step   clean with soap
  step   sand 80, 120 #! sand-through
  step   dust
}
`,
    },
  ],
  passing: [
    {
      title: "Three grits on 0.6 mm take 0.28 mm, and solid wood has plenty",
      text: `piece cabinet {
  surface top {
    shape panel 800 mm x 400 mm
    wood  walnut, veneer 0.6 mm
  }
  surface frame {
    shape panel 800 mm x 40 mm
    wood  walnut
  }
}
recipe bare_wood {
  for    wood
  safety dust_mask
  step   sand 80, 120, 150
  step   dust
}
job cabinets {
  piece cabinet
  apply bare_wood to top, frame
}
`,
    },
    {
      title: "A laminate is scuffed",
      text: `piece desk {
  surface top {
    shape panel 800 mm x 400 mm
    wood  laminate
  }
}
recipe prepare {
  for    laminate
  safety dust_mask
  step   clean with soap
  step   scuff 180
  step   dust
}
job desks {
  piece desk
  apply prepare to top
}
`,
    },
  ],
  looksAt: ({ verbs }) => verbs.has("sand") || verbs.has("scuff"),
  checks: {
    onStep: (ctx) => {
      if (ctx.action.verb !== "sand" && ctx.action.verb !== "scuff") return;
      const substrate = ctx.run.surface?.substrate;
      if (substrate?.veneerMm !== undefined) checkVeneer(ctx, substrate.name, substrate.veneerMm);
      else if (isLaminate(ctx.run)) checkLaminate(ctx);
    },
  },
};

/** Reports the line that goes beyond the limit, not those after it. */
function checkVeneer(ctx: MomentContext<StepAction>, wood: string, veneerMm: number): void {
  const { action, before, after, run, report } = ctx;
  const limit = VENEER_SHARE * veneerMm + TOLERANCE_MM;
  if (after.woodTakenMm <= limit || after.woodTakenMm <= before.woodTakenMm) return;
  const isFirst = before.woodTakenMm === run.initial.woodTakenMm;
  if (before.woodTakenMm > limit && !isFirst) return;
  const through = gritThatGoesThrough(action, before.woodTakenMm, limit);
  const earlier = run.moments.find((moment) => moment.after.woodTakenMm > 0)?.action;
  report({
    headline: t`Sanding takes ${thicknessText(after.woodTakenMm)} of a ${thicknessText(veneerMm)} ${translated(wood)} veneer`,
    why: t`Beyond ${thicknessText(VENEER_SHARE * veneerMm)} the glue and the core may show, and nothing brings the veneer back.`,
    remedy: t`Start with a finer grit or leave out a pass, and take off an old finish with a stripper.`,
    abrades: "to the wood",
    fixes: finerStart(action, before.woodTakenMm, limit),
    ...(through === undefined ? {} : { at: { ...action.place, span: action.syntax.grits[through]!.span } }),
    related: [
      ...(run.surface?.substrate.place
        ? [related(run.surface.substrate.place, t`The veneer is ${thicknessText(veneerMm)} thick`)]
        : []),
      ...(earlier && earlier !== action ? [related(earlier.place, t`Wood is taken from here on`)] : []),
    ],
  });
}

/** The line without its coarsest grits, as many as it takes; none where nothing would be left of it. */
function finerStart(action: StepAction, taken: number, limit: number): readonly Fix[] {
  const { grits } = action.syntax;
  const [first] = grits;
  if (!action.gritsKnown || !first || grits.length !== action.grits.length) return [];
  const from = action.grits.findIndex(
    (_, index) =>
      taken + action.grits.slice(index).reduce((sum, grit) => sum + materialTakenMm(grit), 0) <= limit,
  );
  if (from < 1) return [];
  const place = { ...action.place, span: { start: first.span.start, end: grits[from]!.span.start } };
  return [replaceAt("change", place, t`Start with ${action.grits[from]!}`, "")];
}

/** The verb and its grits become a scuffing. */
function onlyScuffed(action: StepAction): readonly Fix[] {
  const { verb, grits } = action.syntax;
  const last = grits.at(-1);
  if (!verb || !last) return [];
  const place = { ...action.place, span: { start: verb.span.start, end: last.span.end } };
  return [replaceAt("change", place, t`Only scuff it with 180`, "scuff 180")];
}

function gritThatGoesThrough(action: StepAction, taken: number, limit: number): number | undefined {
  if (!action.gritsKnown) return undefined;
  let sum = taken;
  const at = action.grits.findIndex((grit) => {
    sum += materialTakenMm(grit);
    return sum > limit;
  });
  return at < 0 ? undefined : at;
}

const isLaminate = (run: SurfaceRun): boolean =>
  run.surface
    ? run.surface.substrate.kind === "laminate"
    : run.recipe?.forKinds.length === 1 && run.recipe.forKinds[0] === "laminate";

function checkLaminate({ action, after, run, report }: MomentContext<StepAction>): void {
  if (action.verb !== "sand" || !isBare(after)) return;
  const coarsest = Math.min(...action.grits);
  if (action.grits.length === 0 || coarsest >= DULLS_LAMINATE) return;
  report({
    headline: t`Grit ${coarsest} sands into the laminate`,
    why: t`The printed sheet is a few tenths of a millimetre thick, and once its pattern is sanded away it cannot be brought back.`,
    remedy: t`Only dull it: \`step scuff 180\`, or a light pass with 220 by hand.`,
    abrades: "surface",
    fixes: onlyScuffed(action),
    ...(run.surface?.substrate.place
      ? { related: [related(run.surface.substrate.place, t`The surface is laminate`)] }
      : {}),
  });
}
