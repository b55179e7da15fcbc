/**
 * A surface that children chew or food lies on, left before the last coat has cured or with a material that is not
 * meant for it. Nothing here says that a finish is safe: the label, its maker and local rules do.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { negates } from "../../knowledge/denials.ts";
import { labelAllows, labelSays } from "../../knowledge/label-words.ts";
import type { Material } from "../../model/model.ts";
import { type Coat, isFilm } from "../../surface/state.ts";
import { actionOf } from "../coat-queries.ts";
import type { RunContext, TradeRule } from "../rule.ts";
import { missingTo, neededIn, shortWait, timePlaces, uncured } from "../short-wait.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine } from "../spoken-words.ts";
import { coatName, related } from "../texts.ts";
import { toldLines } from "../told-lines.ts";

export const childOrFoodSurface: TradeRule = {
  id: "child-or-food-surface",
  group: "wear",
  severity: "warning",
  docs: {
    summary:
      "A children's or food surface is left before its last coat has its full cure, or has a material on it that is not meant for it: by its label's words, or a stain, dye or filler that no film keeps from food.",
    why: "Until it is cured a coat gives off solvent and uncured resin, and pigments, dyes and fillers are not made to meet food.",
    remedy:
      "End the recipe with `wait until cured`, and use a last coat whose label says that it is meant for children's furniture or for contact with food; the label, the safety data sheet and local rules decide.",
    sources: [
      "21 CFR 175.300 for coatings that meet food, which names no cure time and approves no product",
      "16 CFR 1303 for paint on children's furniture",
      "waiting for the full cure: common practice, no source",
    ],
  },
  failing: [
    {
      title: "A toy box handed over after a day",
      text: `piece toy_box "Toy box" {
  meant_for children
  surface lid {
    shape panel 600 mm x 400 mm
    wood  beech
  }
}
recipe sealed {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac #! child-or-food-surface
  wait   24 h
}
job toys {
  piece toy_box
  apply sealed to lid
}
`,
    },
    {
      title: "Paint where food lies",
      text: `piece board "Bread board" {
  meant_for food
  surface face {
    shape panel 400 mm x 250 mm
    wood  MDF
  }
}
recipe painted {
  safety ventilate, no_ignition
  layer  shellac_primer
  wait   until recoat
  layer  acrylic_paint #! child-or-food-surface
  wait   until cured
}
job boards {
  piece board
  apply painted to face
}
`,
    },
    {
      title: "A stain below oil on a cutting board, and a varnish whose label rules toys out",
      text: `## Fit for food when cured.
material board_oil {
  family drying oil
  cure   30 days
}

## Not suitable for toys.
material hard_varnish {
  family oil varnish
}

piece board {
  meant_for food
  surface   face {
    shape panel 380 mm x 240 mm
    wood  beech
  }
}

piece blocks {
  meant_for children
  surface   sides {
    shape area 1 m2
    wood  beech
  }
}

recipe stained {
  for    wood
  safety gloves, wet_rags, ventilate, no_ignition
  layer  oil_stain, wiped off after 10 min #! child-or-food-surface
  wait   until cured
  layer  board_oil, by cloth, wiped off after 20 min
  wait   until cured
}

recipe varnished {
  for    wood
  safety gloves, wet_rags, ventilate, no_ignition
  layer  hard_varnish #! child-or-food-surface
  wait   until cured
}

job boards {
  piece board
  apply stained to face
}

job toys {
  piece blocks
  apply varnished to sides
}
`,
    },
    {
      title: "An outdoor oil with a poison against mould, on a toy",
      text: `material terrace_oil "Outdoor oil with film preservative" {
  family exterior oil
}

piece rocking_horse {
  meant_for children
  surface   body {
    shape panel 700 mm x 300 mm
    wood  beech
  }
}

recipe oiled {
  for    wood
  safety gloves, wet_rags, ventilate, no_ignition
  layer  terrace_oil x 2, wiped off after 15 min #! child-or-food-surface
  wait   until cured
}

job horse {
  piece rocking_horse
  apply oiled to body
}
`,
    },
  ],
  passing: [
    {
      title: "A stain whose label allows it, and another under a film that is fit for food",
      text: `## Food-safe when dry.
material board_stain {
  family waterborne stain
}

piece board {
  meant_for food
  surface   face {
    shape panel 380 mm x 240 mm
    wood  maple
  }
}

recipe stained {
  for    wood
  safety dust_mask
  step   sand 150
  step   dust
  step   dampen
  wait   overnight
  step   sand 220
  step   dust
  layer  waterborne_conditioner, wiped off after 5 min
  wait   30 min
  layer  board_stain, wiped off after 5 min
  wait   until cured
  layer  waterborne_polyurethane x 2 {
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}

job boards {
  piece board
  apply stained to face
}
`,
    },
    {
      title: "The full cure; and adults' furniture is not asked",
      text: `piece toy_box "Toy box" {
  meant_for children
  surface lid {
    shape panel 600 mm x 400 mm
    wood  beech
  }
}
piece box "Box" {
  surface lid {
    shape panel 600 mm x 400 mm
    wood  beech
  }
}
recipe sealed {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   7 days
}
recipe quick {
  for    wood
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   24 h
}
job toys {
  piece toy_box
  apply sealed to lid
}
job boxes {
  piece box
  apply quick to lid
}
`,
    },
  ],
  checks: { onRun: check },
};

const SOON =
  "tomorrow|next_day|next_morning|same_day|same_evening|same_night|tonight|this_evening|at_once|straight_away|right_away|immediately|day_after|touch_dry|feels_dry|wet|tacky|fresh_coat|overnight|few_hours|hours|an_hour";
const NOT_YET = "!cure !cured !nobody !table_in !carved !month !months !weeks !drawer !offcuts";

/** Food laid on it or children given it, a day or less after the coat. */
const TOO_SOON = phrases(
  `salad_bowl|bowl|cutting_board|chopping_board|bread_board|breadboard|butcher_block|spoon|board|platter|tray|worktop ... used|use|washed|in_use|serve|served|kitchen|eat ... ${SOON} ${NOT_YET}`,
  `CHILD .. can|may|get|has|have|chew|play|use|suck|mouth|sleep ... ${SOON} ${NOT_YET}`,
  `give|hand|goes|go|back|return|bring ... CHILD ... ${SOON} ${NOT_YET}`,
  `rattle|toy|blocks|high_chair|highchair|cot|crib|teether|cradle ... back|used|use|baby|play|chew ... ${SOON} ${NOT_YET}`,
  `serve|eat|put|lay|slice|cut|roll|knead .. bread|fruit|food|cheese|dough|meat|salad|vegetables ... ${SOON} ${NOT_YET}`,
  `bread|fruit|food|cheese|dough|meat|salad ... straight|directly .. on .. wet|fresh|tacky|coat ${NOT_YET}`,
);

/** What the words of a recipe tell to do, told only where the material is none that hardens in a day. */
function reportSpoken({ run, report }: RunContext): void {
  const last = run.final.layers.findLast((coat) => coat.origin === "new");
  if (!last) return;
  for (const action of toldLines(run))
    if (saidOnLine(action, TOO_SOON) !== undefined)
      report(action, {
        headline: t`Food or children meet this finish before its cure`,
        why: t`Until its cure ${coatName(last)} still gives off solvent and uncured resin, which food takes up and children swallow.`,
        remedy: t`Write \`wait until cured\` and keep food and children off until then; the label decides whether it is meant for them at all.`,
      });
}

function check(ctx: RunContext): void {
  reportSpoken(ctx);
  const { run, units, report } = ctx;
  const use = run.piece?.useBy;
  if (!use || use.value === "adults" || run.continued || !run.final.certain) return;
  const user = use.value;
  const own = run.final.layers.filter((coat) => coat.origin === "new");
  const last = own.at(-1);
  const who = use.place ? [related(use.place, t`Who uses the piece`)] : [];
  const unfit = own.findLast((coat) => isUnfit(coat, user, own));
  const unfitAction = unfit && actionOf(run, unfit);
  if (unfit && unfitAction) {
    const clause = unfit.material && labelSays(unfit.material, LABEL[user].unfit);
    const poison = unfit.material && biocideIn(unfit.material);
    report(unfitAction, {
      headline: SURFACES[user].unfit(`\`${unfit.what}\``),
      why: clause
        ? t`Its label's words are "${clause.trim()}".`
        : poison !== undefined
          ? t`Its words name a ${poison}.`
          : t`Its pigments, dyes or fillers are not made to meet food, and nothing here keeps them from it.`,
      remedy: SURFACES[user].remedy(),
      replaces: true,
      related: [
        ...(clause && unfit.material
          ? [related(unfit.material.namePlace, t`The material whose label says so`)]
          : []),
        ...who,
      ],
    });
    return;
  }
  const action = last && actionOf(run, last);
  const missing = last?.family && missingTo(run.final, last, "cured");
  if (!missing || !action) return;
  const { needed, had } = missing;
  report(
    action,
    shortWait(
      neededIn({ run, units }, needed, had),
      {
        headlines: () => [SURFACES[user].uncured()],
        why: t`Until its cure ${coatName(last)} still gives off solvent and uncured resin.`,
        instead: "wait until cured",
        also: t`the label and the safety data sheet decide whether it is meant for this use at all`,
        level: "warning",
        hasMargin: false,
      },
      { related: [...who, ...timePlaces(run, needed, last.material)], causes: [uncured(last)] },
    ),
  );
}

type User = "children" | "food";

interface Surfaces {
  readonly unfit: (material: string) => string;
  readonly remedy: () => string;
  readonly uncured: () => string;
}

const SURFACES: Readonly<Record<User, Surfaces>> = {
  children: {
    unfit: (material) => t`Not meant for children's furniture: ${material}`,
    remedy: () =>
      t`Use a material whose label says that it is meant for children's furniture, and wait for its full cure; the label, the safety data sheet and local rules decide.`,
    uncured: () => t`Not cured before children use it`,
  },
  food: {
    unfit: (material) => t`Not meant for contact with food: ${material}`,
    remedy: () =>
      t`Use a material whose label says that it is meant for contact with food, and wait for its full cure; the label, the safety data sheet and local rules decide.`,
    uncured: () => t`Not cured before food lies on it`,
  },
};

const LABEL = {
  children: { unfit: "not for children", fit: "fit for children" },
  food: { unfit: "not for food", fit: "fit for food" },
} as const;

const BIOCIDE =
  /\b(?:fungicid(?:e|al)|biocid(?:e|al)|insecticid(?:e|al)|algaecid(?:e|al)|(?:wood|film)\s+preservative|mildewcide|woodworm\s+(?:killer|treatment)|anti[\s-]?(?:mould|mold|fungal))\b/iu;

/** A poison against mould or insects that the words of a material name and do not deny. */
function biocideIn({ title = "", docs, name }: Material): string | undefined {
  return [title, docs, name.replaceAll("_", " ")]
    .flatMap((text) => text.split(/[.;]\s/u))
    .filter((sentence) => !negates(sentence))
    .map((sentence) => BIOCIDE.exec(sentence)?.[0].toLowerCase())
    .find((word) => word !== undefined);
}

/**
 * What the label rules out; and for food a stain, dye or filler as the last layer, or under oil and wax alone: only a film
 * keeps it from the food (21 CFR 175.300(a), a functional barrier). A label that allows it stands above the family.
 */
function isUnfit(coat: Coat, user: User, own: readonly Coat[]): boolean {
  const { material, family } = coat;
  if (material && labelSays(material, LABEL[user].unfit) !== undefined) return true;
  if (material && biocideIn(material) !== undefined && !labelAllows(material, LABEL[user].fit)) return true;
  if (!family?.unfitFor?.includes(user) || (material && labelAllows(material, LABEL[user].fit))) return false;
  return !own.slice(own.indexOf(coat) + 1).some(isFilm);
}
