/**
 * Masking that is never taken off, or only when the film over its edge has cured and tears.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { samePlace } from "../../place.ts";
import type { StepAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import {
  type Coat,
  hasReached,
  isFilm,
  type Masking,
  type SurfaceState,
  sureHours,
  waitedOf,
} from "../../surface/state.ts";
import type { MomentContext, RunContext, TradeRule } from "../rule.ts";
import { coatName, fitting, related } from "../texts.ts";

export const maskLeftOn: TradeRule = {
  id: "mask-left-on",
  group: "preparation",
  severity: "warning",
  docs: {
    summary:
      "A part is masked and never unmasked, or unmasked after the coats over the edge have fully cured; where that takes no more than two weeks, as long as good tape may stay on, or where all that is over the edge was wiped on thin, it is a hint.",
    why: "A cured film bridges the edge of the tape: it tears off in flakes with the tape, and the adhesive stays behind.",
    remedy: "Unmask when the last coat is dry to the touch, before it has cured.",
    sources: [PRACTICE, "Two weeks: the longest that common masking tapes state (from memory)"],
  },
  failing: [
    {
      title: "Never unmasked",
      text: `recipe clear_coats {
  for   any
  step  mask "brass plates" #! mask-left-on
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
    {
      title: "Unmasked after the cure",
      text: `recipe clear_coats {
  for   any
  step  mask "brass plates"
  layer waterborne_polyurethane
  wait  until cured
  step  unmask #! mask-left-on
}
`,
    },
    {
      title: "A month under varnish, in which the glue sets",
      text: `material slow_varnish "Oil varnish" {
  family oil varnish
  cure   30 days
}
recipe bookcase {
  for    any
  safety gloves, ventilate, no_ignition, wet_rags
  step   mask "the glass"
  layer  slow_varnish
  wait   until cured
  step   unmask #! mask-left-on
}
`,
    },
    {
      title: "A hint: a month under coats that a cloth wiped on",
      text: `material wipe_on "Wiping varnish" {
  family wiping varnish
  cure   30 days
}
recipe chest {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  step   mask "the cedar lining"
  layer  wipe_on x 4, by cloth, between wait until recoat
  wait   until cured
  step   unmask #! mask-left-on
}
`,
    },
    {
      title: "Shellac is thin, and cured it tears with the tape all the same",
      text: `recipe polished {
  for    wood
  safety ventilate, no_ignition
  step   mask "the plaster beside it"
  layer  dewaxed_shellac x 3 {
    wait until recoat
  }
  wait   until cured
  step   unmask #! mask-left-on
}
`,
    },
  ],
  passing: [
    {
      title: "A polisher's rubber leaves no film across the tape",
      text: `recipe polished {
  for    wood
  safety ventilate, no_ignition, gloves
  step   mask "the leather"
  layer  dewaxed_shellac x 3 sessions, by rubber
  wait   until cured
  step   unmask
}
`,
    },
    {
      title: "Unmasked when the coat is dry to the touch",
      text: `recipe clear_coats {
  for   any
  step  mask "brass plates"
  layer waterborne_polyurethane
  wait  until touch
  step  unmask
  wait  until cured
}
`,
    },
    {
      title: "Under shellac, once its last coat is dry",
      text: `recipe polished {
  for    wood
  safety ventilate, no_ignition
  step   mask "the plaster beside it"
  layer  dewaxed_shellac x 3 {
    wait until recoat
  }
  wait   until touch
  step   unmask
  wait   until cured
}
`,
    },
    {
      title: "A sheet on the floor, at whose edge no coat ends",
      text: `recipe legs {
  for   wood
  step  mask "the floor, sheet and tape"
  layer waterborne_polyurethane
  wait  until cured
  step  unmask
}
`,
    },
    {
      title: "Sheeting on the floor and the table stays until all is done",
      text: `recipe legs {
  for   wood
  step  mask "floor and table under plastic sheeting"
  layer waterborne_polyurethane
  wait  until cured
}
`,
    },
    {
      title: "Masked in one recipe and unmasked in another that follows it",
      text: `recipe masked_coats {
  for   any
  step  mask "brass plates"
  layer waterborne_polyurethane
  wait  until recoat
}
recipe whole {
  for    any
  follow masked_coats
  step   unmask
  wait   until cured
}
`,
    },
  ],
  checks: {
    onStep: (ctx) => {
      if (ctx.action.verb === "unmask") checkUnmasking(ctx);
    },
    onRun: (ctx) => checkEnd(ctx),
  },
};

/** The recipe that follows this one may take the masking off. */
function checkEnd({ run, report }: RunContext): void {
  if (!run.final.certain || run.followed || run.continued) return;
  for (const mask of run.final.masks) {
    if (run.kind === "assumed" && !isCoated(run.final, mask)) continue;
    // No coat ends at the edge of a sheet on the floor.
    if (isUnderfoot(mask.what)) continue;
    const action = maskingStep(run, mask);
    if (!action) continue;
    report(action, {
      headline: fitting([
        t`"${mask.what}" is masked here and never unmasked`,
        t`Masked here and never unmasked`,
      ]),
      why: t`The longer tape stays on, the harder its glue sets, and a cured film tears off with it.`,
      remedy: t`Add \`step unmask\` once the last coat is dry to the touch.`,
      related: lastCoatPlace(run),
    });
  }
}

const maskingStep = (run: SurfaceRun, mask: Masking): StepAction | undefined =>
  run.moments
    .map(({ action }) => action)
    .findLast(
      (action): action is StepAction =>
        action.op === "step" && action.verb === "mask" && samePlace(action.place, mask.place),
    );

function lastCoatPlace(run: SurfaceRun) {
  const coat = run.final.layers.findLast((layer) => layer.origin === "new");
  return coat ? [related(coat.place, t`The last coat goes on here`)] : [];
}

function checkUnmasking({ before, report }: MomentContext<StepAction>): void {
  for (const mask of before.masks) {
    if (isUnderfoot(mask.what)) continue;
    const films = filmsOver(before, mask);
    const [first] = films;
    const last = films.at(-1);
    if (!first || !last || !films.every((coat) => hasReached(before, coat, "cured") === "yes")) continue;
    report({
      ...(sureHours(waitedOf(before, first)) > MOST_TAPE_HOURS && !films.every(isWipedOn)
        ? {}
        : { severity: "hint" }),
      headline: fitting([
        t`"${mask.what}" is unmasked only after ${coatName(last)} has cured`,
        t`"${mask.what}" is unmasked only after the coat over it has cured`,
        t`The tape comes off only after the coat over it has cured`,
      ]),
      why: t`A cured film bridges the edge of the tape and tears off in flakes with it.`,
      remedy: t`Unmask when the last coat is dry to the touch; now, cut along the edge with a sharp knife first.`,
      related: [
        related(mask.place, t`Masked here`),
        related(last.place, t`The last coat over it goes on here`),
      ],
    });
  }
}

/** What good masking tape may stay on for and still come off clean. */
const MOST_TAPE_HOURS = 14 * 24;

const isUnderfoot = (what: string): boolean =>
  /\b(?:floor|floorboards|ground|carpet|bench|drop[\s-]cloths?|dust[\s-]sheets?)\b/iu.test(what);

/** Whether a layer went on while the tape was. */
const isCoated = (state: SurfaceState, mask: Masking): boolean =>
  state.layers.some((coat) => coat.serial >= mask.from && coat.action !== undefined);

const filmsOver = (state: SurfaceState, mask: Masking): readonly Coat[] =>
  state.layers.filter(
    (coat) => coat.serial >= mask.from && (isFilm(coat) || !coat.family) && !isPolished(coat),
  );

/** What a cloth leaves is so thin that it breaks at the tape: common practice, no source. */
const isWipedOn = ({ action }: Coat): boolean => action?.wiped === true || action?.method === "cloth";

/** The thin passes of a polisher's rubber stop at the tape and make no film across its edge: common practice, no source. */
const isPolished = ({ action }: Coat): boolean => action?.session === true || action?.method === "rubber";
