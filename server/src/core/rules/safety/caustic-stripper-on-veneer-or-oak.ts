/**
 * Lye on veneer or on wood full of tannin: the glue lets go, and the wood turns black.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { holdsHazard } from "../../knowledge/named-chemicals.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { woodByName } from "../../knowledge/woods.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

export const causticStripperOnVeneerOrOak: TradeRule = {
  id: "caustic-stripper-on-veneer-or-oak",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A stripper or cleaner whose words name lye (caustic soda, sodium or potassium hydroxide) goes on veneer or on wood rich in tannin.",
    why: "Lye softens the old glue under a veneer, and turns the tannin of oak, walnut, cherry or mahogany nearly black, deep into the wood.",
    remedy: "Use a solvent stripper or a scraper here.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "Sodium hydroxide on veneer",
      text: `## 15 % NaOH in water.
material dip "Stripping dip" {
  family paint stripper
}

recipe take_off {
  for    veneer
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with dip #! caustic-stripper-on-veneer-or-oak
  step   clean with water
}
`,
    },
    {
      title: "Caustic paste on oak",
      text: `material paste "Caustic paste" {
  family paint stripper
}

recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with paste #! caustic-stripper-on-veneer-or-oak
  step   clean with water
}

piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     white oak
    existing oil varnish
  }
}

job lid {
  piece box
  apply take_off to lid
}
`,
    },
  ],
  passing: [
    {
      title: "Solid beech takes it",
      text: `material paste "Caustic paste" {
  family paint stripper
}

recipe take_off {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  step   strip with paste
  step   clean with water
}

piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
  }
}

job lid {
  piece box
  apply take_off to lid
}
`,
    },
  ],
  looksAt: ({ verbs }) => verbs.has("strip") || verbs.has("clean") || verbs.has("dewax"),
  checks: {
    onStep: ({ action, run, report }) => {
      const material = action.use?.material;
      const wood = woodHarmed(run);
      if (!material || !action.use || !wood || !["strip", "clean", "dewax"].includes(action.verb)) return;
      if (!holdsHazard(material, "strong base")) return;
      const place = run.surface?.substrate.place;
      report({
        headline: t`\`${action.use.name}\` is caustic and goes on ${wood}`,
        why: t`Lye softens the glue under a veneer and turns wood with much tannin nearly black.`,
        remedy: t`Use a solvent stripper or a scraper here.`,
        abrades: "to the wood",
        at: action.use.place,
        related: [
          ...(place ? [related(place, t`The wood`)] : []),
          related(material.namePlace, t`The material that says so`),
        ],
      });
    },
  },
};

/** What it would harm, in words; undefined where it harms nothing or the wood is not known. */
function woodHarmed(run: SurfaceRun): string | undefined {
  if (run.kind === "assumed") {
    const kinds = run.recipe?.forKinds ?? [];
    return kinds.length > 0 && kinds.every((kind) => kind === "veneer") ? t`veneer` : undefined;
  }
  const substrate = run.surface?.substrate;
  if (!substrate) return undefined;
  if (substrate.veneerMm !== undefined) return t`${translated(substrate.name)} veneer`;
  return woodByName(substrate.name)?.tannin === "rich"
    ? t`${translated(substrate.name)}, rich in tannin`
    : undefined;
}
