/**
 * Teak, rosewood and other woods hold an oil of their own that keeps varnish from drying and waterborne clears from
 * holding. A hint, since old and well-seasoned wood may behave.
 */
import type { Action } from "../../surface/actions.ts";
import { firstIndexOf } from "../../surface/run-index.ts";
import { isBare } from "../../surface/state.ts";
import { barrierLines } from "../coat-queries.ts";
import { woodOf } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { insertAbove, related, useName } from "../texts.ts";

const SOLVENT_STEPS = ["clean", "dewax"];
const isWipedOff = (done: Action): boolean =>
  done.op === "step" && SOLVENT_STEPS.includes(done.verb) && done.use?.material?.family?.role === "solvent";

export const sealerMissing: TradeRule = {
  id: "sealer-missing",
  group: "layers",
  severity: "hint",
  docs: {
    summary: "A varnish or a waterborne clear goes straight on bare wood that holds oil of its own.",
    why: "The oil of teak, rosewood and the like keeps a varnish from drying and a waterborne clear from holding.",
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
  safety ventilate, no_ignition, wet_rags
  layer  oil_varnish #! sealer-missing
  wait   until cured
}
job boxes {
  piece box
  apply varnished to lid
}
`,
    },
  ],
  passing: [
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
  safety ventilate, no_ignition, wet_rags
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
      if (over?.role !== "clear" || !wood?.oily || !isBare(before)) return;
      if (over.drying !== "oxidising" && over.drying !== "waterborne") return;
      if (firstIndexOf(run, isWipedOff) < index) return;
      const place = run.surface?.substrate.place;
      report({
        headline: `${useName(action.use)} goes straight on oily ${wood.name}`,
        why:
          over.drying === "waterborne"
            ? "The wood holds oil of its own, and a waterborne clear does not hold on it."
            : "The wood holds oil of its own, which keeps a varnish from drying.",
        remedy:
          "Seal it with dewaxed shellac first, or wipe it with acetone or alcohol just before the coat.",
        related: place ? [related(place, "What the surface is made of")] : [],
        fixes: [
          insertAbove(
            "undertaking",
            action,
            "Seal the wood with dewaxed shellac first",
            barrierLines(action),
          ),
        ],
      });
    },
  },
};
