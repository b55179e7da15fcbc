/**
 * A surface of hard wear with too little over it: a table top needs three coats of a film-forming clear.
 */
import type { Fix } from "../../findings.ts";
import { sentence } from "../../sentence.ts";
import type { Action } from "../../surface/actions.ts";
import type { Coat } from "../../surface/state.ts";
import { isFilm } from "../../surface/state.ts";
import { actionOf, isClearFilm } from "../coat-queries.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, related, replaceAt } from "../texts.ts";

/** Film-forming clear coats on a surface of hard wear, as the language reference has it. */
const COATS_FOR_HARD_WEAR = 3;

export const tooWeakForWear: TradeRule = {
  id: "too-weak-for-wear",
  group: "wear",
  severity: "warning",
  docs: {
    summary:
      "A surface of hard wear gets wax or oil alone, or fewer than three coats of a film-forming clear.",
    why: "Under cups, elbows and wet cloths a thin film wears through in months, and wax and oil keep no water out for long.",
    remedy:
      "Put three coats of a film-forming clear on what wears hard. Old clear coats that stay on count; wiped coats build no film.",
    sources: [
      "Wood Handbook, FPL-GTR-190, table 16-3: two and three coats keep out far more moisture than one",
      "three coats: common practice, no source",
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
  safety ventilate, no_ignition, wet_rags, dust_mask
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
      title: "Oil alone; it stands on the last layer",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
}
recipe oiled {
  for    wood
  safety ventilate, no_ignition, wet_rags
  layer  drying_oil x 3, wiped {
    wait until recoat
  }
  wait   until cured
  layer  paste_wax #! too-weak-for-wear
  wait   until cured
}
job tables {
  piece table
  apply oiled to top
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
  layer  gel_stain, wiped
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
      title: "Paint without a clear",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
}
recipe enamelled {
  for    wood
  safety ventilate, no_ignition, wet_rags
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
      title: "Wiped coats build no film",
      text: `piece table "Table" {
  surface top {
    shape panel 1200 mm x 700 mm
    wood  beech
    wear  hard
  }
}
recipe wiped_on {
  for    wood
  safety ventilate, no_ignition, wet_rags
  layer  wiping_varnish x 4, wiped { #! too-weak-for-wear
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
  safety ventilate, no_ignition, wet_rags, dust_mask
  layer  oil_varnish x coats {
    wait until recoat
    step sand 320
    step dust
  }
  wait   until cured
}
recipe renew {
  for    wood
  safety ventilate, no_ignition, wet_rags, dust_mask
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
  ],
  checks: {
    onRun: ({ run, report }) => {
      const wear = run.surface?.wear;
      const { layers, certain } = run.final;
      if (wear?.value !== "hard" || run.continued || !certain) return;
      const last = layers.findLast((coat) => coat.origin === "new");
      const action = last && actionOf(run, last);
      if (!last || !action || layers.some((coat) => !coat.family && !coat.unknown)) return;
      const wearing = layers.slice(Math.max(0, layers.findLastIndex(hides)));
      const clears = wearing.filter(isClearFilm);
      if (clears.length >= COATS_FOR_HARD_WEAR) return;
      const films = clears.filter((coat) => coat.origin === "new");
      if (films.length === 0 && wearing.some(isLastingFilm)) return;
      report(action, {
        headline: `\`${run.label}\` is a surface of hard wear and ends with ${found(last, clears.length)} of the ${COATS_FOR_HARD_WEAR} coats of a film-forming clear it needs`,
        why:
          clears.length === 0
            ? "Without a clear film, heat, water and scratches get through in a short while where hands and cups go."
            : "So thin a film wears through where hands, cups and wet cloths go.",
        remedy:
          clears.length === 0
            ? `End with ${COATS_FOR_HARD_WEAR} coats of a film-forming clear.`
            : `Put ${COATS_FOR_HARD_WEAR - clears.length} more on.`,
        related: wear.place ? [related(wear.place, "The wear of the surface")] : [],
        fixes: moreCoats(action, last, clears.length),
      });
    },
  },
};

/** Clear coats below paint or under a stain that soaked in do not take the wear. */
const hides = (coat: Coat): boolean =>
  !coat.toner && ["stain", "paint", "primer"].includes(coat.family?.role ?? "");

/** What stood up to wear before the job: a film that was there already. */
const isLastingFilm = (coat: Coat): boolean =>
  isFilm(coat) &&
  coat.origin !== "new" &&
  (coat.unknown !== undefined || coat.family?.role === "clear" || coat.family?.role === "paint");

const found = (last: Coat, clears: number): string =>
  clears === 0 ? `${sentence(coatName(last)).replace(/^The/, "the")} and none` : `${clears}`;

/** More coats of the last layer, where it says in figures how many and what is done between them. */
function moreCoats(action: Action, last: Coat, clears: number): readonly Fix[] {
  if (action.op !== "layer" || !isClearFilm(last) || !action.syntax.block) return [];
  const { coats } = action.syntax;
  if (!coats || coats.kind === "name") return [];
  const needed = action.coats + COATS_FOR_HARD_WEAR - clears;
  return [replaceAt("change", { ...action.place, span: coats.span }, `Put ${needed} coats on`, `${needed}`)];
}
