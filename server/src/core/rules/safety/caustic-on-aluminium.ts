/**
 * Lye on aluminium: it boils, gives off hydrogen and eats the metal.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { chemical, isA } from "../../knowledge/chemicals.ts";
import { isForbidden } from "../../knowledge/denials.ts";
import { holdsHazard } from "../../knowledge/named-chemicals.ts";
import { clausesOf, startsWithAny, type Word } from "../../knowledge/text-words.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { mentionsOfLine } from "../chemical-uses.ts";
import { usesOf } from "../material-uses.ts";
import type { Report, TradeRule } from "../rule.ts";
import { spokenLines, textOf } from "../spoken-words.ts";
import { related } from "../texts.ts";

export const causticOnAluminium: TradeRule = {
  id: "caustic-on-aluminium",
  group: "safety",
  severity: "error",
  docs: {
    summary:
      "Lye (caustic soda, sodium or potassium hydroxide) goes on a surface whose words name aluminium, or a note puts the two together.",
    why: "Lye dissolves aluminium at once: it boils, throws caustic drops and gives off hydrogen, which burns and explodes.",
    remedy: "Use a solvent stripper or a mild cleaner on aluminium, and keep lye in plastic vessels.",
    sources: ["NIOSH Pocket Guide to Chemical Hazards, sodium hydroxide (from memory, confidence high)"],
  },
  failing: [
    {
      title: "Chair feet in caustic soda",
      text: `material dip "Caustic soda dip" {
  family paint stripper
}

piece chair {
  built 2015
  surface aluminium_foot {
    shape    panel 300 mm x 200 mm
    wood     metal
    existing alkyd paint
    lead     none_found by laboratory 2026-11-03
  }
}

recipe take_off {
  for    metal
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with dip #! caustic-on-aluminium
  step   clean with water
}

job feet {
  piece chair
  apply take_off to aluminium_foot
}
`,
    },
    {
      title: "A surface whose substrate says it",
      text: `material dip "Caustic soda dip" {
  family paint stripper
}

piece chair {
  built 2015
  surface foot {
    shape    panel 300 mm x 200 mm
    wood     aluminium
    existing alkyd paint
    lead     none_found by laboratory 2026-11-03
  }
}

recipe take_off {
  for    metal
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with dip #! caustic-on-aluminium
  step   clean with water
}

job feet {
  piece chair
  apply take_off to foot
}
`,
    },
    {
      title: "An aluminium pan",
      text: `recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  note   "Dissolve the caustic soda in an aluminium pan." #! caustic-on-aluminium
  step   strip with paint_stripper
  step   clean with water
}
`,
    },
  ],
  passing: [
    {
      title: "Words that warn of it",
      text: `recipe legs {
  for    metal
  safety gloves, eye_protection
  step   clean with degreaser "a mild one; caustics eat aluminium"
  step   clean with water
}
`,
    },
    {
      title: "A solvent stripper on aluminium, lye in plastic",
      text: `piece chair {
  built 2015
  surface aluminium_foot {
    shape    panel 300 mm x 200 mm
    wood     metal
    existing alkyd paint
    lead     none_found by laboratory 2026-11-03
  }
}

recipe take_off {
  for    metal
  safety vapour_respirator, gloves, eye_protection, ventilate
  note   "Never put caustic soda on aluminium."
  step   strip with paint_stripper
  step   clean with water
}

job feet {
  piece chair
  apply take_off to aluminium_foot
}
`,
    },
  ],
  checks: {
    onRun: ({ run, report }) => {
      const onAluminium = isAluminium(run);
      for (const action of onAluminium ? run.moments.map((it) => it.action) : spokenLines(run)) {
        const use = onAluminium
          ? usesOf(action).find(({ material }) => material && holdsHazard(material, "strong base"))
          : undefined;
        if (use?.material) {
          report(action, {
            ...text(t`\`${use.name}\` is caustic and goes on aluminium`),
            ...(action.place.declaration === use.place.declaration ? { at: use.place } : {}),
            related: [
              ...(run.surface ? [related(run.surface.namePlace, t`The surface of aluminium`)] : []),
              related(use.material.namePlace, t`The material that says so`),
            ],
          });
        } else if (bringsTogether(textOf(action) ?? "") && mentionsOfLine(action).some(isCaustic))
          report(action, text(t`Lye and aluminium are brought together here`));
      }
    },
  },
};

const text = (headline: string): Report => ({
  headline,
  why: t`It boils at once, throws caustic drops and gives off hydrogen, which burns.`,
  remedy: t`Use a solvent stripper or a mild cleaner here, and keep lye in plastic vessels.`,
});

const isCaustic = ({ chemical: name }: { chemical: Parameters<typeof chemical>[0] }): boolean =>
  isA(chemical(name), "strong base");

const ALUMINIUM = new Set(["aluminium", "aluminum"]);

/** "Caustics eat aluminium" tells what happens, and nobody to do it. */
const HARMS = ["eat", "attack", "corrod", "pit", "etch", "dissolv", "destroy", "blacken", "ruin", "spoil"];

const isHarmed = (clause: readonly Word[], at: number): boolean =>
  clause.slice(Math.max(0, at - 2), at).some(({ key }) => startsWithAny(key, HARMS));

const bringsTogether = (words: string): boolean =>
  clausesOf(words).some((clause) =>
    clause.some(
      ({ key }, at) =>
        ALUMINIUM.has(key) &&
        !isHarmed(clause, at) &&
        !isForbidden(clause, { from: at, to: at, taken: [at] }),
    ),
  );

/** Whether the surface, or for a recipe by itself its own words, name aluminium. */
function isAluminium({ kind, recipe, surface, piece }: SurfaceRun): boolean {
  const texts =
    kind === "assumed"
      ? [recipe?.title, recipe?.name]
      : [surface?.substrate.name, surface?.name, surface?.docs, piece?.title, piece?.name];
  return texts.some((it) => it !== undefined && bringsTogether(it.replaceAll("_", " ")));
}
