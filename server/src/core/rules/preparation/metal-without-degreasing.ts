/**
 * Bare metal of a used piece, scuffed and coated but never washed. `coat-on-unclean-surface` knows of the grease on an
 * old finish; bare metal has none by the notation, and mill oil or fingers have left it some.
 *
 * Any cleaning counts. Paint straight on metal is `slick-surface-without-primer`'s.
 */

import { t, translated } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import type { Action } from "../../surface/actions.ts";
import { firstIndexOf } from "../../surface/run-index.ts";
import type { TradeRule } from "../rule.ts";
import { insertAbove, related, useName } from "../texts.ts";

const FILE = (built: string, steps: string) => `piece stool {
  ${built}
  surface legs {
    shape 4 of round 25 mm x 600 mm
    wood  metal
  }
}
recipe painted {
  for    metal
  safety dust_mask
${steps}  layer  bonding_primer
  wait   until recoat
  layer  acrylic_paint
  wait   until cured
}
job stools {
  piece stool
  apply painted to legs
}
`;

const BRIGHT = (steps: string, layer: string) => `piece plate {
  built 1930
  surface face {
    shape    panel 200 mm x 80 mm
    wood     brass
    existing bare
  }
}
recipe lacquered {
  for    metal
  safety ventilate, no_ignition, gloves, eye_protection, vapour_respirator
${steps}  layer  ${layer}
  wait   until cured
}
job plates {
  piece plate
  apply lacquered to face
}
`;

const SCUFF = "  step   scuff 220\n  step   dust\n";

const isWashing = (done: Action): boolean =>
  done.op === "step" && ["clean", "dewax", "strip"].includes(done.verb);

export const metalWithoutDegreasing: TradeRule = {
  id: "metal-without-degreasing",
  group: "preparation",
  severity: "hint",
  docs: {
    summary: "Bare metal of a used piece is coated and was never cleaned.",
    why: "Oil from the mill and from hands lies on bare metal, and sanding only spreads it: the primer crawls and later peels in flakes.",
    remedy: "Wash metal with a degreaser or a solvent before it is scuffed.",
    sources: ["UFC 3-190-06 section 2.4: clean, dull and sound", PRACTICE],
  },
  failing: [
    {
      title: "Scuffed and primed",
      text: FILE("built 1985", SCUFF).replace(
        "bonding_primer\n",
        "bonding_primer #! metal-without-degreasing\n",
      ),
    },
    {
      title: "Lacquer over the fingerprints on old brass",
      text: BRIGHT("", "nitrocellulose_lacquer, by hvlp #! metal-without-degreasing"),
    },
  ],
  passing: [
    {
      title: "Bright brass, wiped clean before the lacquer",
      text: BRIGHT("  step   clean with acetone\n", "nitrocellulose_lacquer, by hvlp"),
    },
    { title: "Washed first", text: FILE("built 1985", `  step   clean with degreaser\n${SCUFF}`) },
    { title: "A new piece may come clean from the maker", text: FILE("new_price 60.00", SCUFF) },
  ],
  looksAt: ({ kind }) => kind !== "assumed",
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const over = action.use.material?.family;
      if (run.surface?.substrate.kind !== "metal" || run.piece?.built === undefined) return;
      if (!over?.buildsFilm || over.role === "paint" || run.job?.after || run.surface.asLeftBy) return;
      if (run.initial.layers.length > 0 || before.layers.length > 0) return;
      // Under paint an unscuffed metal is another rule's matter; under a clear it stays bright, and still oily.
      if (over.role !== "clear" && before.abrasions.length === 0) return;
      if (before.dust || before.grease || before.residue) return;
      if (firstIndexOf(run, isWashing) < index) return;
      const { place, name } = run.surface.substrate;
      const metalName = translated(name.toLowerCase());
      report({
        headline: t`${useName(action.use)} goes on bare ${metalName} that was never cleaned`,
        why: t`Metal that has been in use is oily, sanding only spreads the oil, and the coat crawls or peels.`,
        remedy: t`Wash it with a degreaser or a solvent first, before any scuffing.`,
        related: place ? [related(place, t`The surface is ${metalName}`)] : [],
        fixes: [insertAbove("change", action, t`Degrease it first`, ["step  clean with degreaser"])],
      });
    },
  },
};
