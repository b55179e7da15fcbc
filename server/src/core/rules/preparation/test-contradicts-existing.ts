/**
 * Spot tests that speak against the old finish which is stated, or against each other.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import { FAMILY_NAMES, type FamilyName } from "../../knowledge/family-names.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { contradicts, narrowedClear } from "../../knowledge/spot-tests.ts";
import { finishOnTop } from "../../surface/initial-state.ts";
import type { TradeRule } from "../rule.ts";
import { related } from "../texts.ts";

const isFamily = (what: string): what is FamilyName => (FAMILY_NAMES as readonly string[]).includes(what);

/** A job on one surface, with the lines that say what is on it. */
const chest = (lines: readonly string[]): string => `recipe polish {
  for    wood
  safety dust_mask, gloves, ventilate, no_ignition
  step   clean with soap
  step   scuff 320
  step   dust
  layer  dewaxed_shellac
  wait   until cured
}
piece chest {
  built 1995
  surface lid {
    shape    area 1 m2
    wood     oak
${lines.map((line) => `    ${line}\n`).join("")}  }
}
job chests {
  piece chest
  apply polish to lid
}
`;

export const testContradictsExisting: TradeRule = {
  id: "test-contradicts-existing",
  group: "preparation",
  severity: "warning",
  docs: {
    summary:
      "A spot test of a surface speaks against its `existing` finish, or the tests against each other.",
    why: "What holds on an old finish, and what dissolves it, depends on what it is. A wrong name leads to a coat that peels or wrinkles.",
    remedy:
      "Test again on a hidden spot, through any wax, and correct the line that is wrong; `existing unknown clear` says that nobody knows.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "Alcohol softens what is said to be varnish",
      text: chest(["existing oil varnish", "tested   alcohol softens #! test-contradicts-existing"]),
    },
    {
      title: "Water stands in drops on wood that is said to be bare",
      text: chest(["existing bare", "tested   water beads #! test-contradicts-existing"]),
    },
    {
      title: "Tests that leave no finish",
      text: chest([
        "existing unknown clear",
        "tested   alcohol softens",
        "tested   lacquer thinner nothing #! test-contradicts-existing",
      ]),
    },
  ],
  passing: [
    {
      title: "Alcohol softens shellac",
      text: chest(["existing dewaxed shellac", "tested   alcohol softens, lacquer thinner softens"]),
    },
    {
      title: "Tests that name an unknown clear",
      text: chest([
        "existing unknown clear",
        "tested   alcohol nothing, lacquer thinner nothing, xylene nothing",
      ]),
    },
  ],
  looksAt: ({ kind }) => kind !== "assumed",
  checks: {
    onRun: ({ run, reportAt }) => {
      const { surface } = run;
      const tested = surface?.tested ?? [];
      const last = tested.at(-1);
      if (!surface?.existingPlace || surface.asLeftBy || !last?.place) return;
      const stated = [related(surface.existingPlace, t`What is said to be on it`)];
      const what = finishOnTop(surface.existing)?.what;
      if (what === "unknown clear") {
        if (narrowedClear(tested.map(({ value }) => value))) return;
        reportAt(last.place, {
          headline: t`The tests of \`${surface.name}\` contradict each other`,
          why: t`No clear finish shows all of them, so the rules take the worst that it may be.`,
          remedy: t`Test again on a hidden spot, through any wax, and correct the line that is wrong.`,
          related: stated,
        });
        return;
      }
      const family = what !== undefined && isFamily(what) ? what : undefined;
      // Of an unknown paint no test here says what it is; and water beads on wax over bare wood as well.
      if (what !== undefined ? family === undefined : surface.existing.length > 0) return;
      for (const { value, place } of tested) {
        if (!place || !contradicts(value, family)) continue;
        reportAt(place, {
          headline: t`\`${value}\` speaks against ${family ? `\`${family}\`` : t`bare wood`} on \`${surface.name}\``,
          why: family
            ? t`Cured ${translated(family)} does not behave so, and what holds on it depends on what it is.`
            : t`Something is on it, and what holds on it depends on what it is.`,
          remedy: t`Test again on a hidden spot, and correct \`existing\`; write \`existing unknown clear\` where nobody knows.`,
          related: stated,
        });
      }
    },
  },
};
