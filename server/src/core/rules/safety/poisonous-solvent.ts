/**
 * Solvents of old shop books that poison whoever breathes or touches them.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { isA } from "../../knowledge/chemicals.ts";
import type { Material } from "../../model/model.ts";
import { type NamedChemical, reportChemicals } from "../chemical-uses.ts";
import type { TradeRule } from "../rule.ts";

export const poisonousSolvent: TradeRule = {
  id: "poisonous-solvent",
  group: "safety",
  severity: "error",
  secondaryTo: ["banned-stripper"],
  docs: {
    summary:
      "A recipe uses, or says to use, carbon tetrachloride, trichloroethylene, perchloroethylene, benzene (benzol), chloroform, carbon disulphide, 1-bromopropane or methanol (wood alcohol), by any of their names.",
    why: "Some of these are banned for consumers, and all of them poison or cause cancer in amounts that a wipe with a rag gives off. Methanol is a warning, and none where the label names ethanol beside it, as that of denatured alcohol does; the others are errors.",
    remedy:
      "Use mineral spirits for wax and grease and denatured alcohol that is mostly ethanol for shellac, and a stripper without them. Your local waste service says where to take an old bottle.",
    sources: [
      "16 CFR 1500.17(a)(2): carbon tetrachloride is banned",
      "89 FR 102568 (17 December 2024), trichloroethylene; 89 FR 103560 (18 December 2024), perchloroethylene",
      "29 CFR 1910.1028, benzene",
      "16 CFR 1500.14(b), benzene and methanol, from memory",
    ],
  },
  failing: [
    {
      title: "An old wax wash, and a note of grandfather's",
      text: `material tetra "Carbon tet wax wash" {
  family mineral spirits
}

recipe old_way {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  step   dewax with tetra #! poisonous-solvent
  step   clean with soap
  wait   4 h
  note   "A dash of benzol lets the first coat run into the grain." #! poisonous-solvent
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "Wood alcohol for shellac",
      text: `material spirit "Wood alcohol" {
  family alcohol
}

recipe padded {
  for    wood
  safety gloves, ventilate, no_ignition
  layer  dewaxed_shellac, by pad, thinned 1:1 with spirit #! poisonous-solvent
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Denatured alcohol, and a note that forbids",
      text: `material spirit "Denatured alcohol (ethanol 90 %, methanol 5 %)" {
  family alcohol
}

recipe padded {
  for    wood
  safety gloves, ventilate, no_ignition
  note   "Use mineral spirits instead of carbon tetrachloride, whatever the old book says."
  layer  dewaxed_shellac, by pad, thinned 1:1 with spirit
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ namesChemicals }) => namesChemicals,
  checks: {
    onRun: (ctx) =>
      reportChemicals(
        ctx,
        (row, { use }) => {
          if (row.name === "methanol") return !use || !saysEthanol(use.material);
          return row.name !== "methylene chloride" && isA(row, "banned solvent", "poisonous solvent");
        },
        (named) => ({
          severity: named.row.name === "methanol" ? "warning" : "error",
          why: translated(named.row.harm),
          ...(isInStripper(named)
            ? anotherStripper()
            : { remedy: t`${translated(named.row.instead!)}; ${oldBottle()}` }),
        }),
      ),
  },
};

/** Denatured alcohol holds a few per cent of methanol, and its label says what it mostly is. */
const saysEthanol = ({ title = "", docs }: Material): boolean =>
  /\b(?:ethanol|ethyl alcohol)\b/iu.test(`${title} ${docs}`);

const oldBottle = (): string => t`ask your local waste service where to take an old bottle.`;

/** What thins in its place takes no finish off. */
const anotherStripper = () => ({
  remedy: t`Use a stripper without it, such as one with benzyl alcohol, or scrape; ${oldBottle()}`,
  brief: t`The stripper in its place should hold neither.`,
  abrades: "to the wood" as const,
});

const isInStripper = ({ use, action }: NamedChemical): boolean =>
  use !== undefined &&
  (use.material.family?.name === "paint stripper" || (action?.op === "step" && action.verb === "strip"));
