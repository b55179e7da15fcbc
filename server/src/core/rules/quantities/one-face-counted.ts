/**
 * A board that is finished on both faces by all that is said of it, one of many doors or what is turned over, and whose
 * line leaves open whether both are meant: one is counted, and half of the area, the cans and the hours would be missing.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { TradeRule } from "../rule.ts";
import { fixOf } from "../texts.ts";

const FILE = (
  piece: string,
  faces: string,
  step: string,
  mark: string,
  count = 8,
): string => `piece ${piece} {
  built 2015
  surface leaf {
    shape panel 600 mm x 720 mm x 18 mm${faces}${mark}
    wood  MDF
  }
}

recipe painted {
  safety dust_mask
  step   sand 180
  step   dust
  layer  acrylic_primer
  wait   until recoat
  step   scuff 320
  step   dust${step}
  layer  acrylic_paint x 2, between sand 320
  wait   until cured
}

job hall {
  piece ${piece} x ${count}
  apply painted
}
`;

export const oneFaceCounted: TradeRule = {
  id: "one-face-counted",
  group: "quantities",
  severity: "hint",
  docs: {
    summary:
      "A door, or what a recipe turns over, is a `panel` whose line does not say how many faces are meant.",
    why: "One face is counted. Where the other is finished as well, half of the area is missing, and with it half of the cans, the hours and the money.",
    remedy: "Write `both faces` behind its sizes, or `one face` where it is one.",
    sources: ["common practice, no source"],
  },
  failing: [
    { title: "Eight doors", text: FILE("door", "", "", " #! one-face-counted") },
    { title: "It is turned over", text: FILE("plate", "", "\n  step   turn", " #! one-face-counted") },
  ],
  passing: [
    { title: "Both faces", text: FILE("door", ", both faces", "", "") },
    { title: "One face", text: FILE("door", ", one face", "", "") },
    { title: "A single door, of which the other face costs little", text: FILE("door", "", "", "", 1) },
    { title: "Nothing says that the other face is finished", text: FILE("plate", "", "", "") },
  ],
  looksAt: ({ kind }) => kind === "job",
  checks: {
    onRun: ({ run, reportAt }) => {
      if (run.kind !== "job" || !run.surface || !hasTwoFaces(run)) return;
      for (const shape of run.surface.shapes) {
        if (shape.openFaces === undefined || shape.place.file !== run.job?.file) continue;
        const { end } = shape.place.span;
        const behind = { ...shape.place, span: { start: end, end } };
        reportAt(shape.place, {
          headline: t`One face of this ${translated(shape.openFaces)} is counted`,
          why: t`Its line does not say whether the other is finished as well; half of the area would be missing.`,
          remedy: t`Write \`both faces\` behind its sizes, or \`one face\` where it is one.`,
          fixes: ["both faces", "one face"].map((faces) =>
            fixOf("change", t`Say \`${faces}\``, [{ place: behind, text: `, ${faces}` }]),
          ),
        });
      }
    },
  },
};

/** What is mostly finished from both sides, by the names of the surface and its piece. */
const DOORS = /(?<!\p{L})(?:doors?|fronts?|shutters?)(?!\p{L})/iu;
/** Of fewer the other faces change little of what is bought. */
const MANY = 4;

function hasTwoFaces({ surface, piece, pieces, moments }: SurfaceRun): boolean {
  const named = [surface?.name, surface?.title, piece?.name, piece?.title].join(" ").replaceAll("_", " ");
  const isTurned = moments.some(({ action }) => action.op === "step" && action.verb === "turn");
  return isTurned || (pieces >= MANY && DOORS.test(named));
}
