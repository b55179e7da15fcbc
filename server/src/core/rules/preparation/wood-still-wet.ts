/**
 * A coat that cannot stand water on bare wood that was dampened, washed, rinsed or sanded wet and has had no time to dry.
 *
 * What is carried by water bears damp wood: a stain, a wash or a thinned coat is laid on it on purpose, and a full
 * waterborne coat only dries slower. A dry sanding shows that the wood had dried.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { leavesLayer } from "../../knowledge/families.ts";
import type { Family } from "../../knowledge/family-schema.ts";
import { HANDBOOK_16, PRACTICE } from "../../knowledge/sources.ts";
import { exactDuration } from "../../measure/format-amount.ts";
import { hasWaited, sureHours, waitedOf } from "../../surface/state.ts";
import { isWooden } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import { fitting, insertAbove, related } from "../texts.ts";

/** The least that wood takes to dry from a damp cloth or a rinse, hours: common practice, no source. */
const DRIES_H = 2;

export const woodStillWet: TradeRule = {
  id: "wood-still-wet",
  group: "preparation",
  severity: "warning",
  docs: {
    summary: `A coat without water goes on bare wood less than ${DRIES_H} h after it was dampened, washed, rinsed or sanded wet.`,
    why: "Oil, varnish, lacquer, shellac and epoxy do not mix with the water in the wood: the film turns cloudy, blisters or lets go, and the wood dries under it and moves.",
    remedy: `Let the wood dry before the coat: ${DRIES_H} h at least after a damp cloth, a night after a rinse or a wet sanding.`,
    sources: [`${HANDBOOK_16}: paint and varnish go on dry wood`, `how long it takes to dry: ${PRACTICE}`],
  },
  failing: [
    {
      title: "Sanded wet to the wood, and oiled twenty minutes later",
      text: `piece box {
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}
recipe oiled {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand wet 120, 180
  step   dust
  wait   20 min
  layer  drying_oil, wiped off #! wood-still-wet
  wait   until cured
}
job boxes {
  piece box
  apply oiled to lid
}
`,
    },
    {
      title: "Varnish straight on dampened wood",
      text: `recipe varnished {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 180
  step   dust
  step   dampen
  layer  oil_varnish #! wood-still-wet
  wait   until cured
}
`,
    },
    {
      title: "Stripped, rinsed with water and oiled within the hour",
      text: `piece box {
  built 2005
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
  }
}
recipe renewed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition, wet_rags
  step   strip with paint_stripper
  step   clean with water
  wait   1 h
  layer  drying_oil, wiped off #! wood-still-wet
  wait   until cured
}
job boxes {
  piece box
  apply renewed to lid
}
`,
    },
    {
      title: "Shellac on wood that was just washed with soap",
      text: `piece box {
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}
recipe polished {
  for    wood
  safety dust_mask, ventilate, no_ignition
  step   sand 120, 180
  step   clean with soap
  layer  dewaxed_shellac #! wood-still-wet
  wait   until cured
}
job boxes {
  piece box
  apply polished to lid
}
`,
    },
  ],
  passing: [
    {
      title: "Sanded wet and left overnight; sanded wet with oil; and a film sanded wet between coats",
      text: `piece box {
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
  surface tray {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}
recipe oiled {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120
  step   sand wet 180
  step   clean with water
  wait   overnight
  layer  drying_oil, wiped off
  wait   until cured
}
recipe oiled_in {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 180
  step   dust
  step   sand wet 240 "with mineral spirits"
  step   dust
  layer  oil_varnish
  wait   until recoat
  step   sand wet 320
  step   clean with water
  layer  oil_varnish
  wait   until cured
}
job boxes {
  piece box
  apply oiled to lid
  apply oiled_in to tray
}
`,
    },
    {
      title: "Dried overnight; dampened, dried and sanded",
      text: `recipe varnished {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 180
  step   dust
  step   dampen
  wait   overnight
  step   sand 220
  step   dust
  layer  oil_varnish
  wait   until cured
}
recipe oiled {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 180
  step   clean with water
  wait   overnight
  layer  drying_oil, wiped off
  wait   until cured
}
`,
    },
    {
      title: "Water stain and a thinned wash go on dampened wood",
      text: `recipe stained {
  for    wood
  safety dust_mask
  step   sand 120, 180
  step   dust
  step   dampen
  layer  water_dye, wiped off
  wait   until recoat
  step   sand 320
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
recipe washed {
  for    wood
  safety dust_mask
  step   sand 120, 150
  step   dust
  step   dampen
  layer  acrylic_paint, thinned 1:1 with water, wiped off
  wait   until recoat
  step   sand 320
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
`,
    },
    {
      title: "An old film that was washed and wiped dry",
      text: `piece box {
  built 2005
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing oil varnish
  }
}
recipe renewed {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   scuff 220
  step   dust
  step   clean with soap
  layer  oil_varnish
  wait   until cured
}
job boxes {
  piece box
  apply renewed to lid
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, before, run, report }) => {
      const over = action.use.material?.family;
      const { wet } = before;
      if (!wet?.inWood || !over || !shunsWater(over) || !before.certain) return;
      if (isWooden(run) === "no" || before.layers.length > 0) return;
      const waited = waitedOf(before, wet);
      if (hasWaited(waited, DRIES_H) !== "no") return;
      const name = `\`${action.use.name}\``;
      report({
        headline: fitting(
          waited.hours > 0
            ? [
                t`${name} goes on wood that was wetted ${exactDuration(sureHours(waited))} ago`,
                t`${name} goes on wet wood`,
              ]
            : [t`${name} goes on wood that is still wet`, t`This coat goes on wet wood`],
        ),
        why: t`It does not mix with the water in the wood: the film turns cloudy, blisters or lets go.`,
        remedy: t`Let the wood dry first: ${DRIES_H} h at least after a damp cloth, a night after a rinse or a wet sanding.`,
        related: [related(wet.place, t`Water gets on the wood here`)],
        fixes:
          action.coat === 1
            ? [insertAbove("undertaking", action, t`Let the wood dry overnight first`, ["wait  overnight"])]
            : [],
      });
    },
  },
};

/** What holds no water and does not bear any; an alcohol dye mixes with it. */
const shunsWater = (over: Family): boolean =>
  leavesLayer(over) && over.carrier !== "water" && !(over.role === "stain" && over.carrier === "alcohol");
