/**
 * Isocyanate sprayed: what it does to the lungs it does for good, and a cartridge gives no warning when it is spent.
 */
import { namesChemical } from "../../knowledge/named-chemicals.ts";
import type { TradeRule } from "../rule.ts";
import { related, undertakeDuties, useName } from "../texts.ts";

export const isocyanateHardener: TradeRule = {
  id: "isocyanate-hardener",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A material that names isocyanate, in itself or in its hardener, is sprayed without `supplied_air`.",
    why: "Isocyanate mist makes asthma that does not go away, and it cannot be smelt in time to change a cartridge.",
    remedy:
      "State `safety supplied_air`, or put it on by brush or roller. The safety data sheet decides; spraying it is work for trained people with proper equipment.",
    sources: [
      "29 CFR 1910.134; supplied air as the conservative rule for isocyanate spray, from memory, confidence high",
    ],
  },
  failing: [
    {
      title: "A cartridge respirator for a two-part clear",
      text: `material hardener "Polyisocyanate hardener" {
  family waterborne polyurethane
}

material two_part {
  family   waterborne polyurethane
  mix      10:1 with hardener
  pot_life 4 h
}

recipe sprayed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  layer  two_part, by hvlp #! isocyanate-hardener
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Supplied air",
      text: `material hardener "Polyisocyanate hardener" {
  family waterborne polyurethane
}

material two_part {
  family   waterborne polyurethane
  mix      10:1 with hardener
  pot_life 4 h
}

recipe sprayed {
  for    wood
  safety supplied_air, gloves, eye_protection, ventilate
  layer  two_part, by hvlp
  wait   until cured
}
`,
    },
    {
      title: "By brush, and a hardener without isocyanate",
      text: `material hardener "Polyisocyanate hardener" {
  family waterborne polyurethane
}

material other_hardener "Isocyanate-free hardener" {
  family waterborne polyurethane
}

material two_part {
  family   waterborne polyurethane
  mix      10:1 with hardener
  pot_life 4 h
}

material other_two_part {
  family   waterborne polyurethane
  mix      10:1 with other_hardener
  pot_life 4 h
}

recipe brushed {
  for   wood
  layer two_part, by brush
  wait  until cured
}

recipe sprayed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  layer  other_two_part, by hvlp
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, report }) => {
      const sprayed = action.method === "hvlp" || action.method === "airless";
      if (!sprayed || action.duties.has("supplied_air")) return;
      const named = [action.use.material, action.hardener?.use.material].find(
        (material) => material && namesChemical(material, "isocyanate"),
      );
      if (!named) return;
      report({
        headline: `${useName(action.use)} is sprayed with isocyanate in it, and nothing above this line says \`supplied_air\``,
        why: "Its mist makes asthma that does not go away, and it cannot be smelt in time to change a cartridge.",
        remedy:
          "State `safety supplied_air` above this line, or put it on by brush or roller; the safety data sheet decides.",
        related: [related(named.namePlace, "The material that says so")],
        fixes: [undertakeDuties(action.place, ["supplied_air"])],
      });
    },
  },
};
