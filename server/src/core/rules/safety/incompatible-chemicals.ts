/**
 * Chemicals that must not meet: in one vessel, or one after the other on the same wood.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { Mention } from "../../knowledge/chemical-words.ts";
import { chemical } from "../../knowledge/chemicals.ts";
import { type Incompatible, incompatible } from "../../knowledge/incompatible.ts";
import { holdsHazard } from "../../knowledge/named-chemicals.ts";
import type { Material } from "../../model/model.ts";
import { onceFor } from "../../once.ts";
import type { Action, MaterialUse, StepAction } from "../../surface/actions.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { Residue } from "../chemical-residues.ts";
import { reactiveIn, residuesBefore } from "../chemical-residues.ts";
import { mentionsOfLine } from "../chemical-uses.ts";
import { tellsToDo } from "../duty-check.ts";
import { usesOf } from "../material-uses.ts";
import { addedTo, DROWNED_FLAKES, drownedIn, type Mixture, mixedIn } from "../mixed-words.ts";
import type { MomentContext, Report, RunContext, TradeRule } from "../rule.ts";
import { saidOnLine, textOf } from "../spoken-words.ts";
import { related } from "../texts.ts";
import { toldLines } from "../told-lines.ts";

export const incompatibleChemicals: TradeRule = {
  id: "incompatible-chemicals",
  group: "safety",
  severity: "error",
  docs: {
    summary:
      "Chlorine bleach meets ammonia or acid, peroxide meets acid, or lye meets strong acid: in one vessel, or one after the other on the same surface. So does water that is poured onto lye or strong acid.",
    why: "Chlorine bleach gives off chloramine gas with ammonia and chlorine gas with acid, vinegar included; both burn the lungs and can kill in a closed room. Peroxide and acid, and lye and strong acid, heat up and splash.",
    remedy:
      "Never put the two into one vessel. On wood, rinse the first off with plain water and let the wood dry before the second goes on: a `clean with water` step and a `wait`. Rinsed but not dried is a warning.",
    sources: [
      "Washington State Department of Health, Bleach Mixing Dangers, from memory",
      "NIOSH Pocket Guide to Chemical Hazards (from memory, confidence high)",
    ],
  },
  failing: [
    {
      title: "Ammonia on wet chlorine bleach",
      text: `## Laundry bleach: sodium hypochlorite.
material chlorine "Chlorine bleach" {
  family wood bleach
}

material ammonia_wash "Household ammonia in water" {
  family cleaner
}

recipe ink_spots {
  for    wood
  safety gloves, eye_protection, ventilate
  step   bleach with chlorine
  step   clean with ammonia_wash #! incompatible-chemicals
  step   clean with water
  wait   72 h
}
`,
    },
    {
      title: "Vinegar after a rinse that never dried",
      text: `material chlorine "Household bleach" {
  family wood bleach
}

material sour "Vinegar rinse" {
  family cleaner
}

recipe ink_spots {
  for    wood
  safety gloves, eye_protection, ventilate
  step   bleach with chlorine
  step   clean with water
  step   clean with sour #! incompatible-chemicals
  step   clean with water
  wait   72 h
}
`,
    },
    {
      title: "Water onto lye",
      text: `recipe brightened {
  for    wood
  safety gloves, eye_protection, ventilate
  note   "Pour boiling water over the caustic soda and stir." #! incompatible-chemicals
  step   clean with soap
}
`,
    },
    {
      title: "Into the wash of the line above",
      text: `material ammonia_wash "Household ammonia in water" {
  family cleaner
}

recipe mould {
  for    wood
  safety gloves, eye_protection, ventilate
  step   clean with ammonia_wash
  note   "Stubborn spots: stir a cup of household bleach into the same bucket." #! incompatible-chemicals
  step   clean with water
  wait   72 h
}
`,
    },
    {
      title: "One bucket",
      text: `recipe brightened {
  for    wood
  safety gloves, eye_protection, ventilate
  note   "For a stronger wash, pour household bleach and ammonia together into one bucket." #! incompatible-chemicals
  step   clean with soap
}
`,
    },
  ],
  passing: [
    {
      title: "A bleach that is an acid, and whose label warns of chlorine",
      text: `## For iron and ink. Never mix it with chlorine bleach.
material oxalic "Oxalic acid bleach" {
  family wood bleach
}

recipe ink_out {
  for    wood
  safety gloves, eye_protection, ventilate
  step   bleach with oxalic
  wait   overnight
  step   clean with water
  step   clean with water
  wait   72 h
}
`,
    },
    {
      title: "A fresh bucket, once the first was rinsed off",
      text: `material ammonia_wash "Household ammonia in water" {
  family cleaner
}

recipe mould {
  for    wood
  safety gloves, eye_protection, ventilate
  step   clean with ammonia_wash
  step   clean with water
  wait   72 h
  note   "Never stir household bleach into the ammonia wash."
  note   "Stir a spoon of soap into the bucket."
}
`,
    },
    {
      title: "Rinsed and dried between the two",
      text: `material chlorine "Household bleach" {
  family wood bleach
}

material sour "Vinegar rinse" {
  family cleaner
}

recipe ink_spots {
  for    wood
  safety gloves, eye_protection, ventilate
  step   bleach with chlorine
  step   clean with water
  wait   48 h
  step   clean with sour
  step   clean with water
  wait   72 h
}
`,
    },
    {
      title: "Vinegar once a two-part bleach has dried, and a warning in words",
      text: `## Part A is caustic soda, part B hydrogen peroxide.
material two_part "Two-part wood bleach" {
  family wood bleach
}

material sour "Vinegar rinse" {
  family cleaner
}

recipe pale {
  for    wood
  safety gloves, eye_protection, ventilate
  note   "Never put household bleach or ammonia into the rinsing water."
  note   "Add the caustic soda to cold water, little by little."
  step   bleach with two_part
  wait   overnight
  step   clean with sour
  step   clean with water
  wait   72 h
}
`,
    },
  ],
  checks: { onStep: onStep, onLayer: oneVessel, onRun: inWords },
};

function onStep(ctx: MomentContext<StepAction>): void {
  const { action, run, index, report } = ctx;
  const { use } = action;
  if (!use?.material) return;
  for (const put of reactiveIn(use.material))
    for (const residue of residuesBefore(run)[index]!) {
      const pair = incompatible(residue.hazards, chemical(put.chemical).hazards);
      if (!pair || !stillMeets(pair, residue)) continue;
      report({
        severity: residue.rinsed ? "warning" : "error",
        headline: t`\`${use.name}\` goes on \`${residue.use.name}\`: dangerous together`,
        why: translated(pair.result),
        remedy: residue.rinsed
          ? t`Let the wood dry after the rinse: put a \`wait\` of a day above this line.`
          : t`Rinse \`${residue.use.name}\` off first with \`step clean with water\`, then \`wait\` until the wood is dry.`,
        at: use.place,
        related: [related(residue.step.place, t`\`${residue.use.name}\` goes on here`)],
      });
      return;
    }
}

const stillMeets = (pair: Incompatible, { rinsed, dried, waited }: Residue): boolean =>
  pair.onlyWhileWet ? !rinsed && !waited : !(rinsed && dried);

/** What is mixed, thinned or tinted is in one vessel. */
function oneVessel({ action, report }: MomentContext<Action>): void {
  const uses = usesOf(action);
  for (const [at, one] of uses.entries())
    for (const other of uses.slice(at + 1)) {
      const pair = pairOf(one, other);
      if (!pair) continue;
      report({
        ...inOneVessel(t`\`${one.name}\` and \`${other.name}\``, pair),
        at: other.place,
      });
      return;
    }
}

function pairOf(one: MaterialUse, other: MaterialUse): Incompatible | undefined {
  for (const some of one.material ? reactiveIn(one.material) : [])
    for (const others of other.material ? reactiveIn(other.material) : []) {
      const pair = incompatible(chemical(some.chemical).hazards, chemical(others.chemical).hazards);
      if (pair) return pair;
    }
  return undefined;
}

function inWords({ run, report, reportAt }: RunContext): void {
  if (run.kind === "assumed" && run.recipe) {
    const { title = "", docs, headPlace } = run.recipe;
    const found = mixedIn(title, "recipe") ?? mixedIn(docs, "recipe");
    if (found) reportAt(headPlace, inOneVessel(t`${found.one.words} and ${found.other.words}`, found.pair));
  }
  for (const action of toldLines(run)) {
    const drowned = drownedOn(run, action);
    if (drowned)
      report(action, {
        headline: t`Never pour water onto ${drowned}`,
        why: t`It boils at once and throws drops that burn skin and eyes.`,
        remedy: t`Put cold water into the vessel first, then add the ${drowned} to it, little by little.`,
      });
  }
  for (const { action } of run.moments) {
    const text = textOf(action);
    const found = text ? mixedIn(text, "recipe") : undefined;
    if (found) report(action, inOneVessel(t`${found.one.words} and ${found.other.words}`, found.pair));
    const added = found ? undefined : (addedToLast(run, action) ?? onWordsBefore(run, action));
    if (added) report(action, added);
    for (const { material, name, place } of usesOf(action)) {
      const held = material && heldTogether(material);
      if (held) report(action, { ...inOneVessel(t`what \`${name}\` holds`, held.pair), at: place });
    }
  }
}

/** Every line that uses it asks. */
const heldTogether = onceFor(
  ({ title = "", docs }: Material): Mixture | undefined => mixedIn(title, "label") ?? mixedIn(docs, "label"),
);

/** Something stirred into what the last step, or the one right below, works with. */
function addedToLast({ moments }: SurfaceRun, action: Action): Report | undefined {
  const text = textOf(action);
  const added = text ? addedTo(text) : [];
  if (added.length === 0) return undefined;
  const last = moments.slice(0, action.index).findLast((it) => isBucket(it.action))?.action;
  const next = moments[action.index + 1]?.action;
  for (const other of [action, last, next])
    for (const { material, name } of other && isBucket(other) ? usesOf(other) : [])
      for (const put of material ? reactiveIn(material) : [])
        for (const { words, hazards } of added) {
          const pair = incompatible(hazards, chemical(put.chemical).hazards);
          if (pair) return inOneVessel(t`${words} and \`${name}\``, pair);
        }
  return undefined;
}

/**
 * A chemical that the words of a line put on, or its material, and another that the words of a line above put there and
 * nobody rinsed off since; or one that words put on what a material left.
 */
function onWordsBefore(run: SurfaceRun, action: Action): Report | undefined {
  const own = putOnBy(action);
  if (own.length === 0 || RINSED.test(textOf(action) ?? "")) return undefined;
  let waited = false;
  for (let at = action.index - 1; at >= 0; at -= 1) {
    const above = run.moments[at]!.action;
    if (above.op === "layer" || isRinsing(above)) return undefined;
    if (above.op === "wait") waited = true;
    const theirs = putOnBy(above);
    for (const one of own)
      for (const other of theirs) {
        if (!one.byWords && !other.byWords) continue;
        const pair = incompatible(chemical(one.chemical).hazards, chemical(other.chemical).hazards);
        if (pair && !(waited && pair.onlyWhileWet))
          return {
            headline: t`Never put ${one.words} on ${other.words}`,
            why: translated(pair.result),
            remedy: oneOfTheTwo(),
            related: [related(above.place, t`Here ${other.words} goes on`)],
          };
      }
  }
  return undefined;
}

interface PutOn {
  readonly words: string;
  readonly chemical: Mention["chemical"];
  readonly byWords: boolean;
}

/** What a line puts on the surface that may react: what its words tell to use, and what its material says that it holds. */
function putOnBy(action: Action): readonly PutOn[] {
  if (action.op !== "step" && action.op !== "note") return [];
  const told = action.op === "step" || tellsToDo(action.text) ? mentionsOfLine(action) : [];
  const held = action.op === "step" && action.use?.material ? reactiveIn(action.use.material) : [];
  return [
    ...told.map(({ words, chemical }) => ({ words, chemical, byWords: true })),
    ...held.map(({ chemical }) => ({
      words: `\`${(action as StepAction).use!.name}\``,
      chemical,
      byWords: false,
    })),
  ];
}

const RINSED =
  /\b(?:rins|neutrali|hosed?\s+(?:off|down)|(?:wash|wipe|sponge|flush)\w*\s+(?:\S+\s+){0,4}?water\b)/iu;
/** Water alone, as a step or in words. */
const isRinsing = (action: Action): boolean =>
  (action.op === "step" &&
    ["clean", "dampen"].includes(action.verb) &&
    (action.use?.material === undefined || reactiveIn(action.use.material).length === 0) &&
    mentionsOfLine(action).length === 0) ||
  RINSED.test(textOf(action) ?? "");

const isBucket = (action: Action): boolean => action.op === "step" && action.use !== undefined;

/** Lye that is named by the words themselves, or that a material of the recipe holds. */
function drownedOn(run: SurfaceRun, action: Action): string | undefined {
  const text = textOf(action) ?? "";
  const named = drownedIn(text);
  if (named || saidOnLine(action, DROWNED_FLAKES) === undefined) return named;
  if (/\b(?:lye|caustic)\b/iu.test(text)) return t`lye`;
  const isLye = run.moments.some((it) =>
    usesOf(it.action).some(({ material }) => material && holdsHazard(material, "strong base") !== undefined),
  );
  return isLye ? t`lye` : undefined;
}

const oneOfTheTwo = (): string =>
  t`Leave the mixture out: use one of the two alone, rinse it off with water, and let the wood dry before anything else goes on.`;

const inOneVessel = (names: string, pair: Incompatible): Report => ({
  headline: t`Never mix ${names}`,
  why: translated(pair.result),
  remedy: oneOfTheTwo(),
});
