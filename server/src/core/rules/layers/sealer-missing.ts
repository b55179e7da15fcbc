/**
 * Teak, rosewood and other woods hold an oil of their own that keeps varnish from drying and waterborne coats from
 * holding. Oil and wax go on such wood as it is, and lacquer and shellac seal it themselves.
 */
import { t, translated } from "../../../../../grammar/src/translate.ts";
import type { Action } from "../../surface/actions.ts";
import { firstIndexOf } from "../../surface/run-index.ts";
import { isBare } from "../../surface/state.ts";
import { barrierLines } from "../coat-queries.ts";
import { woodOf } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { insertAbove, related, useName } from "../texts.ts";

const SOLVENT_STEPS = ["clean", "dewax"];
const isWipedOff = (done: Action): boolean =>
  done.op === "step" &&
  SOLVENT_STEPS.includes(done.verb) &&
  done.use?.material?.family?.role === "solvent" &&
  done.use.material.family.carrier !== "water";

export const sealerMissing: TradeRule = {
  id: "sealer-missing",
  group: "layers",
  severity: "warning",
  secondaryTo: ["tannin-bleed"],
  docs: {
    summary:
      "A varnish, an oil paint or a waterborne film goes straight on bare wood that holds oil of its own.",
    why: "The oil and the extractives of teak, iroko, rosewood and the like keep a varnish from drying and a waterborne film from holding.",
    remedy:
      "Seal such wood with dewaxed shellac, or wipe it with acetone or alcohol just before the first coat.",
    sources: ["finishing textbooks, from memory, confidence medium"],
  },
  failing: [
    {
      title: "Varnish straight on rosewood",
      text: `piece box "Box" {
  surface lid {
    shape panel 300 mm x 200 mm
    wood  rosewood
  }
}
recipe varnished {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  oil_varnish #! sealer-missing
  wait   until cured
}
job boxes {
  piece box
  apply varnished to lid
}
`,
    },
    {
      title: "A waterborne clear on teak that was rinsed with water alone",
      text: `piece tray "Tray" {
  surface face {
    shape panel 400 mm x 300 mm
    wood  teak
  }
}
recipe cleared {
  for    wood
  safety dust_mask, gloves
  step   sand 120, 180
  step   clean with water
  wait   overnight
  step   sand 220
  step   dust
  layer  waterborne_polyurethane #! sealer-missing
  wait   until cured
}
job trays {
  piece tray
  apply cleared to face
}
`,
    },
  ],
  passing: [
    {
      title: "Oil on iroko",
      text: `piece bench "Bench" {
  surface seat {
    shape panel 1200 mm x 400 mm
    wood  iroko
  }
}
recipe oiled {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  drying_oil, wiped off
  wait   until cured
}
job benches {
  piece bench
  apply oiled to seat
}
`,
    },
    {
      title: "Sealed with shellac, or wiped with a solvent first",
      text: `piece box "Box" {
  surface lid {
    shape panel 300 mm x 200 mm
    wood  rosewood
  }
  surface inside {
    shape panel 300 mm x 200 mm
    wood  rosewood
  }
}
recipe sealed {
  for    wood
  safety ventilate, no_ignition, gloves, wet_rags
  layer  dewaxed_shellac
  wait   until recoat
  layer  oil_varnish
  wait   until cured
}
recipe wiped {
  for    wood
  safety ventilate, no_ignition, wet_rags, gloves
  step   clean with alcohol
  layer  oil_varnish
  wait   until cured
}
job boxes {
  piece box
  apply sealed to lid
  apply wiped to inside
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, run, index, report }) => {
      const over = action.use.material?.family;
      const wood = woodOf(run);
      if ((over?.role !== "clear" && over?.role !== "paint") || !wood?.oily || !isBare(before)) return;
      if (over.drying !== "oxidising" && over.drying !== "waterborne") return;
      if (firstIndexOf(run, isWipedOff) < index) return;
      const place = run.surface?.substrate.place;
      report({
        headline: t`${useName(action.use)} goes straight on oily ${translated(wood.name)}`,
        why:
          over.drying === "waterborne"
            ? t`The wood holds oil of its own, and a waterborne film does not hold on it.`
            : t`The wood holds oil of its own, which keeps a varnish or an oil paint from drying.`,
        remedy: t`Seal it with dewaxed shellac first, or wipe it with acetone or alcohol just before the coat.`,
        related: place ? [related(place, t`What the surface is made of`)] : [],
        fixes: [
          insertAbove(
            "undertaking",
            action,
            t`Seal the wood with dewaxed shellac first`,
            barrierLines(action),
          ),
        ],
      });
    },
  },
};
