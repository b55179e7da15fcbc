/**
 * An old piece, or one that is stripped, of which nothing says what is on it: taken as bare wood, it would be worked on
 * without a word about lead.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { isBeforeEveryBan, LEAD_TEST_SOURCE, leadStatus } from "../../knowledge/lead.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import type { Action, StepAction } from "../../surface/actions.ts";
import { leadFactsOf } from "../../surface/lead.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isTakenAsBare } from "../../surface/taken-as-bare.ts";
import type { Report, TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

/** A job on one surface: its lines, and the steps of its recipe. */
const stool = (piece: readonly string[], steps: readonly string[]): string => `piece stool {
${piece.map((line) => `  ${line}\n`).join("")}}

recipe oiled {
  for    wood
  safety dust_mask, gloves, eye_protection, ventilate, wet_rags, no_ignition, vapour_respirator
${steps.map((line) => `  ${line}\n`).join("")}  wait   until cured
}

job stools {
  piece stool
  apply oiled to seat
}
`;

const seat = (...more: readonly string[]): readonly string[] => [
  "surface seat {",
  "  shape disc 350 mm x 30 mm",
  "  wood  beech",
  ...more.map((line) => `  ${line}`),
  "}",
];

const OILED = ["step   dust", "layer  hardwax_oil x 2, by cloth, wiped off"];

export const oldFinishNotStated: TradeRule = {
  id: "old-finish-not-stated",
  group: "safety",
  severity: "warning",
  speaksOfLead: true,
  docs: {
    summary:
      "A piece of a time when paint held lead is worked on, or a surface is stripped, and no `existing` says what is on it.",
    why: "Without the line the surface is taken as bare wood. Then nothing warns of lead in its old paint, nor of new coats that peel off an old finish.",
    remedy:
      "Say what is on it with `existing`: `existing unknown paint` or `existing unknown clear` where nobody knows, `existing bare` where you have seen that it is bare. A piece of new wood needs no such line.",
    sources: [LEAD_TEST_SOURCE, PRACTICE],
  },
  failing: [
    {
      title: "A stool of 1936, sanded as if it were bare",
      text: stool(["built 1936", ...seat()], ["step   sand 120, 180 #! old-finish-not-stated", ...OILED]),
    },
    {
      title: "Stripped, and nothing says of what",
      text: stool(seat(), [
        "step   strip with paint_stripper #! old-finish-not-stated",
        "step   clean with water",
        "wait   overnight",
        "step   sand 120, 180",
        ...OILED,
      ]),
    },
  ],
  passing: [
    {
      title: "Old, and seen to be bare",
      text: stool(["built   1936", ...seat("existing bare")], ["step   sand 120, 180", ...OILED]),
    },
    {
      title: "New wood",
      text: stool(["built 2026", ...seat()], ["step   sand 120, 180", ...OILED]),
    },
  ],
  looksAt: ({ kind }) => kind !== "assumed",
  checks: {
    onRun: ({ run, report }) => {
      if (!isTakenAsBare(run)) return;
      const stripping = run.moments.find(
        ({ action, before }) => action.op === "step" && action.verb === "strip" && before.layers.length === 0,
      )?.action;
      if (stripping) report(stripping, onStripping(run));
      else if (isOfLeadTimes(run)) {
        const first = run.moments.find(({ action }) => touchesSurface(action))?.action;
        if (first) report(first, onOldPiece(run, run.piece!.built!.value));
      }
    },
  },
};

const isOfLeadTimes = (run: SurfaceRun): boolean => {
  const facts = leadFactsOf(run);
  return facts.built !== undefined && isBeforeEveryBan(facts.built) && leadStatus(facts) !== "none_found";
};

const RUBBING: ReadonlySet<StepAction["verb"]> = new Set(["sand", "scuff", "scrape", "distress"]);

const touchesSurface = (action: Action): boolean =>
  action.op === "layer" || (action.op === "step" && RUBBING.has(action.verb));

const onStripping = (run: SurfaceRun): Report => ({
  headline: t`Nothing says what is stripped off \`${run.surface!.name}\``,
  why: t`The surface is taken as bare, so nothing here warns of lead in its old paint.`,
  remedy: remedy(),
  related: surfaceOf(run),
});

const onOldPiece = (run: SurfaceRun, built: number): Report => ({
  headline: t`Nothing says what is on \`${run.surface!.name}\`, built ${built}`,
  why: t`It is taken as bare, so nothing here warns of lead in old paint, or of new coats that peel off an old finish.`,
  remedy: remedy(),
  related: surfaceOf(run),
});

const remedy = (): string =>
  t`Say it with \`existing\` at the surface: \`existing unknown paint\` where nobody knows, \`existing bare\` where you have seen that it is bare.`;

const surfaceOf = ({ surface }: SurfaceRun): Report["related"] => [
  related(surface!.headPlace, t`No \`existing\` here`),
];
