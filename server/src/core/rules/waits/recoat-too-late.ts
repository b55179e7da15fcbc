/**
 * The next layer after the recoat window has closed and without sanding: it lies on the film below instead of
 * growing together with it. The air of the shop never lengthens the window. Wax needs no window: it holds on any film.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { exactDuration, formatDuration } from "../../measure/format-amount.ts";
import { sentence } from "../../sentence.ts";
import { isAbradedSince, topCoat, waitedOf } from "../../surface/state.ts";
import type { TradeRule } from "../rule.ts";
import { briefCoatName, isAuxiliaryOrWax } from "../short-wait.ts";
import { fitting, insertAbove, layerBelow, related } from "../texts.ts";

export const recoatTooLate: TradeRule = {
  id: "recoat-too-late",
  group: "waits",
  severity: "warning",
  secondaryTo: ["stain-on-sealed-surface"],
  docs: {
    summary: "A layer goes on after the recoat window of the layer below, and nothing was sanded since.",
    why: "Once the window is over the film below has closed: the next coat only lies on it, and it chips or peels off in sheets.",
    remedy:
      "Sand or scuff the film and dust it before the next coat, or put the coat on before the window ends.",
    sources: [
      "common practice, no source: the label's recoat window",
      "UFC 3-190-06 section 4.2.4: a cured film is abraded before it is coated",
    ],
  },
  failing: [
    {
      title: "Two days where the window is one",
      text: `material hall_clear {
  family waterborne polyurethane
  recoat 2 h to 24 h
}

recipe two_coats {
  layer hall_clear
  wait  2 days
  layer hall_clear #! recoat-too-late
  wait  until cured
}
`,
    },
    {
      title: "Cured, and coated again without sanding",
      text: `recipe two_coats {
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_polyurethane
  wait   until cured
  layer  oil_polyurethane #! recoat-too-late
  wait   until cured
}
`,
    },
    {
      title: "Epoxy is poured on while the coat below is tacky, or sanded",
      text: `recipe poured {
  for    wood
  safety gloves, eye_protection, ventilate
  layer  epoxy_coating
  wait   3 days
  layer  epoxy_coating #! recoat-too-late
  wait   until cured
}
`,
    },
    {
      title: "Between the coats of one line",
      text: `recipe three_coats {
  layer waterborne_polyurethane x 3 { #! recoat-too-late
    wait 36 h
  }
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "The last hour of the window",
      text: `material hall_clear {
  family waterborne polyurethane
  recoat 2 h to 24 h
}

recipe two_coats {
  layer hall_clear
  wait  24 h
  layer hall_clear
  wait  until cured
}
`,
    },
    {
      title: "After the window, but scuffed",
      text: `recipe two_coats {
  safety dust_mask
  layer  waterborne_polyurethane
  wait   3 days
  step   scuff 320
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "Shellac melts into shellac whenever it is put on",
      text: `recipe sealed {
  safety ventilate, no_ignition
  layer  dewaxed_shellac
  wait   7 days
  layer  dewaxed_shellac
  wait   until cured
}
`,
    },
    {
      title: "Epoxy on epoxy that is still tacky",
      text: `recipe poured {
  for    wood
  safety gloves, eye_protection, ventilate
  layer  epoxy_coating
  wait   8 h
  layer  epoxy_coating
  wait   until cured
}
`,
    },
    {
      title: "A recoat time without a latest end has no window",
      text: `material hall_clear {
  family waterborne polyurethane
  recoat 2 h
}

recipe two_coats {
  layer hall_clear
  wait  3 days
  layer hall_clear
  wait  until cured
}
`,
    },
    {
      title: "Wax holds on a cured clear",
      text: `recipe waxed {
  safety no_ignition
  layer  waterborne_polyurethane
  wait   until cured
  layer  paste_wax
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, report }) => {
      const below = topCoat(before);
      const window = below?.material?.recoat;
      const latest = window?.value.latest;
      if (below?.origin !== "new" || latest === undefined || isAbradedSince(below)) return;
      // A conditioner is no film: what comes of its window is `conditioner-dried-out`'s to say.
      if (below.family?.role === "conditioner") return;
      const waited = waitedOf(before, below).hours;
      if (isAuxiliaryOrWax(action) || waited <= latest + 1e-6) return;
      const over = `\`${action.use.name}\``;
      const isItself = below.what === action.use.name && below.material === action.use.material;
      const between = below.action?.syntax === action.syntax && action.coat > 1;
      const [wait, ends] = [sentence(exactDuration(waited)), formatDuration(latest)];
      const masked = action.duties.has("dust_mask") || action.duties.has("vapour_respirator");
      report({
        headline: fitting([
          between || isItself
            ? t`${wait} between coats of ${over}: the window ends at ${ends}`
            : t`${wait} between ${briefCoatName(below)} and ${over}: the window ends at ${ends}`,
          t`${wait} before this coat: the window ends at ${ends}`,
        ]),
        why: t`Nothing was sanded since. After its window a film has closed, and the next coat only lies on it and may peel.`,
        remedy: t`Scuff and dust the film first, or put the coat on within ${formatDuration(latest)}.`,
        // Once the film is off, or the stain on it another, its window counts no more.
        brief: "",
        abrades: "surface",
        related: [
          ...(between ? [] : [layerBelow(below)]),
          ...(window?.place ? [related(window.place, t`The label's recoat window`)] : []),
        ],
        fixes: between
          ? []
          : [
              insertAbove("undertaking", action, t`Scuff and dust the film first`, [
                ...(masked ? [] : ["safety dust_mask"]),
                "step  scuff 320",
                "step  dust",
              ]),
            ],
      });
    },
  },
};
