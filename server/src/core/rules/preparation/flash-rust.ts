/**
 * Water on bare steel or iron: a waterborne coat without a rust-inhibiting primer below it, or a washing that nobody wipes
 * dry and that no sanding follows. What it is of its surface tells: `steel`, `iron`, or `metal` on a piece whose words say so.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { negates } from "../../knowledge/denials.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import type { Material } from "../../model/model.ts";
import type { LayerAction, StepAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import { isBare } from "../../surface/state.ts";
import { scuffLines } from "../coat-queries.ts";
import { ABRADING_VERBS, rustingMetal } from "../queries.ts";
import { putOnInstead } from "../remedy-fixes.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { textOf } from "../spoken-words.ts";
import { fitting, insertAbove, related, useName } from "../texts.ts";

const FILE = (metal: string, lines: string) => `piece rack {
  surface frame {
    shape 4 of round 25 mm x 600 mm
    wood  ${metal}
  }
}
recipe painted {
  for    metal
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
${lines}  wait   until recoat
  step   scuff 320
  step   dust
  layer  alkyd_paint
  wait   until cured
}
job racks {
  piece rack
  apply painted to frame
}
`;

const SCUFFED = "  step   clean with mineral_spirits\n  step   scuff 180\n  step   dust\n";

export const flashRust: TradeRule = {
  id: "flash-rust",
  group: "preparation",
  severity: "warning",
  docs: {
    summary:
      "Bare steel or iron gets a waterborne coat without a rust-inhibiting primer, or is washed or sanded wet and not wiped dry at once.",
    why: "Bare iron begins to rust within minutes under water. The bloom stains the coat from below, and a coat over it peels.",
    remedy:
      "Prime bare steel with an alkyd primer, or with one whose label says that it keeps rust away. After water, wipe the metal dry and warm it at once, and say so on the line, or scuff the bloom off right before the coat.",
    sources: [
      "NACE No. 5/SSPC-SP 12 (2002): rust that forms within minutes on wetted bare steel is called flash rust (from memory, confidence high)",
      `that waterborne coats bring it about: ${PRACTICE}`,
    ],
  },
  failing: [
    {
      title: "A waterborne primer on bare steel",
      text: FILE("steel", `${SCUFFED}  layer  acrylic_primer #! flash-rust\n`),
    },
    {
      title: "Washed with water and left to dry by itself",
      text: FILE(
        "iron",
        `${SCUFFED}  step   clean with water\n  wait   2 h\n  layer  alkyd_primer #! flash-rust\n`,
      ),
    },
  ],
  passing: [
    {
      title: "An alkyd primer on dry steel, and a waterborne one made for it",
      text: `${FILE("steel", `${SCUFFED}  layer  alkyd_primer\n`)}
## Keeps rust away on steel and iron.
material red_oxide "Metal primer in water" {
  family acrylic primer
}
recipe in_water {
  for    metal
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
${SCUFFED}  layer  red_oxide
  wait   until recoat
  layer  acrylic_paint
  wait   until cured
}
job more_racks {
  piece rack
  apply in_water to frame
}
`,
    },
    {
      title: "Wiped dry at once, or scuffed after the washing; stainless steel does not rust",
      text: `${FILE(
        "iron",
        `${SCUFFED}  step   clean with water\n  step   dust "wiped dry at once, warmed with hot air"\n  wait   2 h\n  layer  alkyd_primer\n`,
      )}
recipe scuffed_after {
  for    metal
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   clean with degreaser
  step   clean with water
  wait   2 h
${SCUFFED}  layer  alkyd_primer
  wait   until cured
}
piece tray {
  surface face {
    shape panel 400 mm x 300 mm
    wood  stainless steel
  }
}
recipe on_stainless {
  for    metal
  safety dust_mask, gloves, ventilate, no_ignition
${SCUFFED}  layer  bonding_primer
  wait   until recoat
  layer  acrylic_paint
  wait   until cured
}
job more_racks {
  piece rack
  piece tray
  apply scuffed_after to rack.frame
  apply on_stainless to tray.face
}
`,
    },
  ],
  looksAt: ({ kind }) => kind !== "assumed",
  checks: {
    onLayer: (ctx) => {
      const { before, run, report } = ctx;
      const metal = rustingMetal(run);
      if (!metal || !before.certain || !isBare(before)) return;
      const { family } = ctx.action.use.material ?? {};
      // Paint straight on metal is `slick-surface-without-primer`'s.
      if (family?.role === "paint") return;
      const finding = isWaterWithoutCare(ctx.action) ? underWater(ctx, metal) : afterWater(ctx, metal);
      if (finding) report(finding);
    },
  },
};

// ---------------------------------------------------------------------------------------------------------------
// Water in the coat

const isWaterWithoutCare = ({ use: { material } }: LayerAction): boolean =>
  material?.family?.carrier === "water" && !isMadeForMetal(material);

/** Clauses of the label that name metal or rust and do not warn of it. */
const isMadeForMetal = ({ title = "", docs, name }: Material): boolean =>
  `${title}. ${name.replaceAll("_", " ")}. ${docs}`
    .split(/[.;!?\n]/u)
    .some(
      (clause) => METAL.test(clause) && !FORBIDS.test(clause) && (INHIBITS.test(clause) || !negates(clause)),
    );
const METAL = /\b(?:metals?|steel|iron|ferrous|rust\w*|corrosion|anti-?corrosi\w*|DTM)\b/iu;
/** "No rust" promises what "not for metal" denies. */
const INHIBITS =
  /\b(?:no|without|stops?|prevents?|inhibit\w*|against)\s+(?:flash[\s-]+)?(?:rust\w*|corrosion)\b/iu;
const FORBIDS = /\bnot\s+(?:\w+\s+){0,3}?(?:for|on|suit\w*)\b/iu;

function underWater({ action, run }: MomentContext<LayerAction>, metal: string) {
  const { family } = action.use.material!;
  return {
    headline: fitting([
      t`Bare ${translated(metal)} rusts under ${useName(action.use)}, which is in water`,
      t`Bare ${translated(metal)} rusts under a coat in water`,
    ]),
    why: t`Bare iron begins to rust within minutes under water, and the bloom stains the coat and lets it peel.`,
    remedy: t`Prime it first with an alkyd primer, or with one whose label says that it keeps rust away on metal.`,
    related: substrateOf(run, metal),
    fixes:
      family?.role === "primer" && action.coats === 1
        ? [putOnInstead(action, t`Prime it with an alkyd primer instead`, "alkyd primer")]
        : [],
  };
}

const substrateOf = ({ surface }: SurfaceRun, metal: string) =>
  surface?.substrate.place ? [related(surface.substrate.place, t`The surface is ${translated(metal)}`)] : [];

// ---------------------------------------------------------------------------------------------------------------
// Water before the coat

function afterWater({ action, run, index }: MomentContext<LayerAction>, metal: string) {
  const wetting = leftWet(run, index);
  if (!wetting) return undefined;
  const isPainted = ["primer", "paint"].includes(action.use.material?.family?.role ?? "");
  return {
    headline: t`Bare ${translated(metal)} is left wet, and rusts before the coat goes on`,
    why: t`Bare iron begins to rust within minutes under water, and a coat over the bloom peels.`,
    remedy: isPainted
      ? t`Wipe it dry and warm it at once, and say so (\`dust "wiped dry at once"\`), or scuff the bloom off right before the coat.`
      : t`Wipe it dry and warm it at once, and say so (\`dust "wiped dry at once"\`).`,
    ...(isPainted ? { abrades: "surface" as const } : {}),
    related: [related(wetting.place, t`The water`), ...substrateOf(run, metal)],
    fixes: isPainted
      ? [insertAbove("undertaking", action, t`Scuff the bloom off first`, scuffLines(action))]
      : [],
  };
}

/** The step that left bare metal wet, unless it was dried or abraded since. */
function leftWet({ moments }: SurfaceRun, index: number): StepAction | undefined {
  let isDriedBySolvent = false;
  for (let at = index - 1; at >= 0; at -= 1) {
    const { action, after } = moments[at]!;
    if (action.op === "layer" || action.op === "open" || DRIED.test(textOf(action) ?? "")) return undefined;
    if (action.op === "wait") isDriedBySolvent = false;
    if (action.op !== "step") continue;
    if (isWetting(action)) return isBare(after) && !isDriedBySolvent ? action : undefined;
    if (ABRADES.has(action.verb)) return undefined;
    const carrier = action.use?.material?.family?.carrier;
    if (carrier === "alcohol" || carrier === "acetone") isDriedBySolvent = true;
  }
  return undefined;
}

const isWetting = ({ verb, wet, use }: StepAction): boolean =>
  verb === "dampen" || wet || use?.material?.family?.carrier === "water";

const ABRADES: ReadonlySet<string> = new Set([...ABRADING_VERBS, "buff"]);

const DRIED =
  /\b(?:wip\w*|rub\w*|blow\w*)\b.{0,60}?\bdry\b|\bdr(?:y|ied|ying)\b.{0,60}?\b(?:at\s+once|immediately|straight|right\s+away|quickly|promptly|fast|with|by|in\s+the\s+(?:oven|sun))\b|\b(?:at\s+once|immediately|straight\s+away)\b.{0,60}?\bdr(?:y|ied)\b|\btowel\w*|\bhair[\s-]?dr[iy]er|\bhot[\s-]?air\b|\bheat[\s-]gun|\bwarm\w*|\brust/iu;
