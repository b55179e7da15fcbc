/**
 * A surface of hard wear with too few coats on it. What bears no hard wear in any number of coats is the business of
 * `not-for-this-use`.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { Fix } from "../../findings.ts";
import type { Action } from "../../surface/actions.ts";
import type { Coat } from "../../surface/state.ts";
import { actionOf } from "../coat-queries.ts";
import { moreCoats } from "../remedy-fixes.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, fitting, related } from "../texts.ts";
import { wearingCoats, worthOfCoat } from "../wear-queries.ts";

export const tooWeakForWear: TradeRule = {
  id: "too-weak-for-wear",
  group: "wear",
  severity: "warning",
  secondaryTo: ["unprotected-layer", "not-for-this-use", "film-too-thin"],
  docs: {
    summary: "A surface of hard wear gets too few coats.",
    why: "Under cups, elbows and wet cloths a thin film wears through in months.",
    remedy:
      "Put three coats of a clear or an enamel on what wears hard, or two of hardwax oil or of a two-part clear. Two wiped coats count as one brushed coat, one coat of primer counts under paint, and sound old coats count as well.",
    sources: [
      "Wood Handbook, FPL-GTR-190 (2010), table 16-3: two and three coats keep out far more moisture than one",
      "the numbers of coats: common practice, no source",
    ],
  },
  failing: [
    {
      title: "Two coats on a table top",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
}
recipe varnished {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  layer  oil_varnish x 2 { #! too-weak-for-wear
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}
job tables {
  piece table
  apply varnished to top
}
`,
    },
    {
      title: "Two to three coats, of which the third is left open",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
}
recipe varnished {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  layer  oil_varnish x 2 to 3, between sand 320 #! too-weak-for-wear
  wait   until cured
}
job tables {
  piece table
  apply varnished to top
}
`,
    },
    {
      title: "A washcoat under the stain does not take the wear",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
}
recipe stained {
  for    wood
  safety ventilate, no_ignition, wet_rags, gloves, dust_mask
  layer  dewaxed_shellac, thinned 1:1 with alcohol
  wait   until recoat
  step   sand 220
  step   dust
  layer  gel_stain, wiped off
  wait   72 h
  layer  oil_varnish x 2 { #! too-weak-for-wear
    wait until recoat
  }
  wait   until cured
}
job tables {
  piece table
  apply stained to top
}
`,
    },
    {
      title: "Two coats of enamel without a primer or a clear",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
}
recipe enamelled {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  alkyd_paint x 2 { #! too-weak-for-wear
    wait until recoat
  }
  wait   until cured
}
job tables {
  piece table
  apply enamelled to top
}
`,
    },
    {
      title: "Four wiped coats count as two",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
}
recipe wiped_on {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  wiping_varnish x 4, wiped off { #! too-weak-for-wear
    wait until recoat
  }
  wait   until cured
}
job tables {
  piece table
  apply wiped_on to top
}
`,
    },
  ],
  passing: [
    {
      title: "Two coats of a waterborne two-part clear",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
}
recipe crosslinked {
  for    wood
  safety ventilate, gloves, eye_protection, dust_mask
  layer  waterborne_two_part_polyurethane x 2, by roller {
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}
job tables {
  piece table
  apply crosslinked to top
}
`,
    },
    {
      title: "A seal coat below a toner counts",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
}
recipe toned {
  for    wood
  safety ventilate, no_ignition, wet_rags, gloves
  layer  oil_varnish
  wait   until recoat
  layer  oil_stain, as toner
  wait   until recoat
  layer  oil_varnish x 2 {
    wait until recoat
  }
  wait   until cured
}
job tables {
  piece table
  apply toned to top
}
`,
    },
    {
      title: "Three coats; two where wear is normal; one over two old ones; wax over an old film",
      text: `piece table "Table" {
  built 1995
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
  surface base {
    shape panel 1200 mm x 700 mm
    wood  beech
  }
  surface leaf {
    shape    panel 1200 mm x 400 mm
    wood     beech
    existing oil varnish, 2 coats
    wear     hard
  }
  surface shelf {
    shape    panel 1200 mm x 400 mm
    wood     beech
    existing oil varnish
    wear     hard
  }
}
recipe varnished(coats: number = 3) {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  layer  oil_varnish x coats {
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}
recipe renew {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags, dust_mask
  step   clean with soap
  step   scuff 320
  step   dust
  follow varnished(coats: 1)
}
recipe waxed {
  for    wood
  safety no_ignition
  step   clean with soap
  layer  paste_wax
  wait   until cured
}
job tables {
  piece table
  apply varnished(coats: 3) to top
  apply varnished(coats: 2) to base
  apply renew to leaf
  apply waxed to shelf
}
`,
    },
    {
      title: "Enamel over its primer, two coats of hardwax oil, and six wiped coats of varnish",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
  surface bench {
    shape panel 1200 mm x 300 mm
    wood  beech
    wear  hard
  }
  surface shelf {
    shape panel 1200 mm x 300 mm
    wood  beech
    wear  hard
  }
}
recipe enamelled {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  alkyd_primer
  wait   24 h
  layer  alkyd_paint x 2 {
    wait until recoat
  }
  wait   until cured
}
recipe oiled {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  hardwax_oil x 2, wiped off {
    wait until recoat
  }
  wait   until cured
}
recipe wiped_on {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  wiping_varnish x 6, wiped off {
    wait until recoat
  }
  wait   until cured
}
job tables {
  piece table
  apply enamelled to top
  apply oiled to bench
  apply wiped_on to shelf
}
`,
    },
  ],
  looksAt: ({ kind }) => kind !== "assumed",
  checks: {
    onRun: ({ run, report }) => {
      const wear = run.surface?.wear;
      const wearing = wear?.value === "hard" ? wearingCoats(run) : undefined;
      if (!wear || !wearing || wearing.worth === 0 || wearing.worth > 1 - 1e-6) return;
      const { last, worth } = wearing;
      const action = actionOf(run, last);
      if (!action) return;
      const missing = Math.ceil((1 - worth) / worthOfCoat(last) - 1e-6);
      report(action, {
        headline: fitting(
          [`\`${run.label}\``, t`The surface`].map((what) => headlineOf(what, action, last, missing)),
        ),
        why: t`So thin a finish wears through where hands, cups and wet cloths go.`,
        remedy:
          countText(action, last, missing) ??
          (missing === 1
            ? t`Add ${missing} more coat of ${coatName(last)}.`
            : t`Add ${missing} more coats of ${coatName(last)}.`),
        ifReplaced: t`whatever goes on here, hard wear asks for three coats of a clear or an enamel, or two of hardwax oil or of a two-part clear`,
        related: wear.place ? [related(wear.place, t`The wear of the surface`)] : [],
        fixes: moreOf(action, last, missing),
      });
    },
  },
};

/** How many coats it needs and has, or where other lines bear the wear as well, how many more. */
function headlineOf(what: string, action: Action, last: Coat, missing: number): string {
  if (action.op === "layer" && last.action === action && action.coats !== 1)
    return t`${what} gets hard use: needs ${action.coat + missing} coats, has ${action.coat}`;
  return missing === 1
    ? t`${what} gets hard use and needs ${missing} more coat`
    : t`${what} gets hard use and needs ${missing} more coats`;
}

/** "Write `x 3`.", where the line says how many coats there are. */
function countText(action: Action, last: Coat, missing: number): string | undefined {
  const isOwnLine = action.op === "layer" && last.action === action;
  if (!isOwnLine || !action.syntax.coats || action.syntax.coats.kind === "name") return undefined;
  return t`Write \`x ${action.coat + missing}\`.`;
}

/** More coats of the layer that bears the wear, where it is a line of its own. */
function moreOf(action: Action, last: Coat, missing: number): readonly Fix[] {
  if (action.op !== "layer" || last.action !== action) return [];
  // The last sure coat of its line: of `x 2 to 3` the second.
  const fix = moreCoats(action, action.coat + missing);
  return fix ? [fix] : [];
}
