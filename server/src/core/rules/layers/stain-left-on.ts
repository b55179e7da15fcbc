/**
 * An oil or gel stain whose excess nobody wipes off before the next coat. What is laid thin on purpose, sprayed, grained or
 * sanded back afterwards stays out; on a film it is `stain-on-sealed-surface`'s.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import type { Material } from "../../model/model.ts";
import { onceFor } from "../../once.ts";
import type { Action, LayerAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isFilm } from "../../surface/state.ts";
import { isWooden } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { phrases } from "../spoken-classes.ts";
import { saidOnLine } from "../spoken-words.ts";
import { fitting, fixOf, related, useName } from "../texts.ts";
import { toldLines } from "../told-lines.ts";
import { isSprayed } from "../two-part.ts";

export const stainLeftOn: TradeRule = {
  id: "stain-left-on",
  group: "layers",
  secondaryTo: ["stain-on-sealed-surface"],
  severity: "warning",
  docs: {
    summary: "An oil or gel stain gets another coat over it, and nobody wipes off what does not soak in.",
    why: "What stays on the wood dries to a soft, weak film of pigment. It stays tacky for long, hides the grain, and the coats above come off with it.",
    remedy:
      "Wipe off all that has not soaked in after 5 to 15 min, or as the label says: `layer gel_stain, wiped off after 10 min`. For a stain laid thin on purpose, write `thin` or `as toner`.",
    sources: [
      "Wood Handbook, FPL-GTR-190 (2010), chapter 16: the excess of a penetrating stain is wiped off, as it otherwise forms a shiny surface film (from memory, confidence high)",
      PRACTICE,
    ],
  },
  failing: [
    {
      title: "Gel stain brushed on and left",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  gel_stain, by brush #! stain-left-on
  wait   72 h
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "Two coats, and a note that tells to leave it",
      text: `recipe coloured {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  note   "Don't wipe it off: it is darker that way."
  layer  oil_stain x 2, flooded { #! stain-left-on
    wait until recoat
  }
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Wiped off; by a note; by the last of two coats; with spirits",
      text: `recipe wiped {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  gel_stain, by brush, wiped off after 10 min
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
recipe as_a_note {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_stain, by brush
  note   "After ten minutes wipe off what is left, along the grain."
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
recipe twice {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_stain, by brush
  wait   40 min
  layer  oil_stain, by brush, wiped off after 60 min
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
recipe with_spirits {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_stain, by brush
  step   clean with mineral_spirits
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
`,
    },
    {
      title: "Thin on purpose, and a label that says to leave it",
      text: `material easy "No-wipe stain" {
  family oil stain
}

recipe thinly {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  gel_stain, by brush, thin
  wait   72 h
  layer  oil_varnish
  wait   until cured
}

recipe by_label {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  easy, by brush
  wait   72 h
  layer  oil_varnish
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ roles }) => roles.has("stain"),
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const { material } = action.use;
      if (!material || !WIPING_STAINS.has(material.family?.name ?? "") || isMeantToStay(action)) return;
      if (
        isWooden(run) !== "yes" ||
        !before.certain ||
        before.layers.some((coat) => !coat.family || isFilm(coat))
      )
        return;
      const next = coatAbove(run, index, action);
      if (!next || needsNoWiping(material) || isSaidToBeWiped(run)) return;
      report({
        headline: fitting([
          t`${useName(action.use)} is not wiped off, and the next coat peels`,
          t`The stain is not wiped off, and the next coat peels`,
        ]),
        why: t`What does not soak in dries to a weak film of pigment, and the coats above come off with it.`,
        remedy: t`Wipe off what has not soaked in after 5 to 15 min, \`wiped off after 10 min\`, or lay it \`thin\` on purpose.`,
        related: [related(next.place, t`The coat above it`)],
        fixes: [
          fixOf("change", t`Wipe it off after 10 min`, [
            { place: { ...action.place, span: endOf(action) }, text: ", wiped off after 10 min" },
          ]),
        ],
      });
    },
  },
};

const WIPING_STAINS: ReadonlySet<string> = new Set(["oil stain", "gel stain"]);

const isMeantToStay = (layer: LayerAction): boolean =>
  layer.wiped || layer.toner || layer.laid === "thin" || layer.laid === "mist" || isSprayed(layer);

const endOf = ({ place: { span } }: Action) => ({ start: span.end, end: span.end });

/**
 * The next coat of something else, where nothing that takes the excess away comes between; of several coats of the stain
 * the last one counts, which softens those below.
 */
function coatAbove({ moments }: SurfaceRun, index: number, stain: LayerAction): LayerAction | undefined {
  for (const { action } of moments.slice(index + 1)) {
    if (action.op === "open" || (action.op === "step" && TAKES_OFF.has(action.verb))) return undefined;
    if (action.op === "step" && WIPES.test(action.what ?? "")) return undefined;
    if (action.op === "layer") return action.use.material === stain.use.material ? undefined : action;
  }
  return undefined;
}

const TAKES_OFF: ReadonlySet<string> = new Set(["clean", "dewax", "strip", "scrape", "sand", "buff", "rub"]);
const WIPES = /\b(?:wip|rag|cloth)/iu;
const needsNoWiping = ({ title = "", docs }: Material): boolean => NO_WIPING.test(`${title}. ${docs}`);
const NO_WIPING = /\bno[\s-]+wip|\b(?:needs?|without|requires?)\s+(?:no\s+)?wiping|\bnot\s+(?:be\s+)?wiped/iu;

const STAIN = "stain|colour|color|gel|glaze|it|excess|surplus|rest|what|whatever|surface|remainder";
const WIPED = phrases(
  `wipe|wiping|wiped|rub|rag|ragged|mop|take|remove .. ${STAIN} ... off|away|back|down|out|up|excess|surplus !dust`,
  `wipe|wiped|wiping|rub off|back|away|down ... ${STAIN}|grain|cloth|rag|min|minute !dust`,
  "wipe|wiping|wiped|remove|rub .. excess|surplus",
  "excess|surplus .. wiped|off|removed|away",
);

const isSaidToBeWiped = onceFor((run: SurfaceRun): boolean =>
  toldLines(run).some((action) => saidOnLine(action, WIPED) !== undefined),
);
