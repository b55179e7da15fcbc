/**
 * Isocyanate sprayed: what it does to the lungs it does for good, and a cartridge gives no warning when it is spent.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import type { TradeRule } from "../rule.ts";
import { fitting, related, undertakeDuties } from "../texts.ts";
import { isocyanateIn, isSprayed } from "../two-part.ts";

export const isocyanateHardener: TradeRule = {
  id: "isocyanate-hardener",
  group: "safety",
  severity: "warning",
  docs: {
    summary:
      "A coating that names isocyanate, or a two-part coating that does not say it holds none, is sprayed without `supplied_air`.",
    why: "Isocyanate mist causes asthma that stays for life, and has killed. You cannot smell it in time to change a cartridge, so NIOSH asks for supplied air where it is sprayed. Hardeners of urethanes mostly hold it, whatever their title; conversion varnish is cured by acid and epoxy by amines, so these are left out unless their words name it.",
    remedy:
      "State `safety supplied_air`, or put it on by brush or roller. Where the safety data sheet names no isocyanate, write that into the hardener's title or `##` text: `free of isocyanate`. Spraying isocyanate is work for trained people with proper equipment.",
    sources: [
      "NIOSH Publication 96-111 (1996), Preventing Asthma and Death from Diisocyanate Exposure",
      "29 CFR 1910.134",
      "supplied air for every spraying of isocyanate as the cautious rule, from memory, confidence high",
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
    {
      title: "A hardener that says nothing",
      text: `material hardener "Hardener" {
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
    {
      title: "Two parts by the label's abbreviation, without a respirator: one finding",
      text: `## The hardener is an HDI trimer; free NCO below 0.5 %.
material two_part "Two-part clear" {
  family   waterborne polyurethane
  pot_life 3 h
}

recipe sprayed {
  for    wood
  safety gloves, eye_protection, ventilate
  layer  two_part, by hvlp #! isocyanate-hardener
  wait   until cured
}
`,
    },
    {
      title: "A two-part polyurethane, by its family alone",
      text: `recipe sprayed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  two_part_polyurethane, by hvlp #! isocyanate-hardener
  wait   until cured
}
`,
    },
    {
      title: "A hardener by its family, and a primer of two parts",
      text: `material primer_hardener "Hardener" {
  family isocyanate hardener
}

material shelf_primer {
  family two part primer
  mix    4:1 with primer_hardener
}

recipe sprayed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  shelf_primer, by hvlp #! isocyanate-hardener
  wait   until cured
}
`,
    },
    {
      title: "A hardener of its own that says nothing of what is in it",
      text: `material clear_hardener "Hardener" {
  family hardener
}

material hall_two_part {
  family waterborne two part polyurethane
  mix    10:1 with clear_hardener
}

recipe sprayed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  layer  hall_two_part, by hvlp #! isocyanate-hardener
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
  for    wood
  safety gloves, eye_protection
  layer  two_part, by brush
  wait   until cured
}

recipe sprayed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  layer  other_two_part, by hvlp
  wait   until cured
}
`,
    },
    {
      title: "Supplied air for a two-part polyurethane; and a hardener that says it holds none",
      text: `material other_hardener "Hardener, free of isocyanate" {
  family hardener
}

material hall_two_part {
  family waterborne two part polyurethane
  mix    10:1 with other_hardener
}

recipe sprayed {
  for    wood
  safety supplied_air, gloves, eye_protection, ventilate, no_ignition
  layer  two_part_polyurethane, by hvlp
  wait   until cured
}

recipe sprayed_in_water {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate
  layer  hall_two_part, by hvlp
  wait   until cured
}
`,
    },
    {
      title: "Conversion varnish, which acid cures",
      text: `material catalyst "Acid catalyst" {
  family conversion varnish
}

material two_part {
  family   conversion varnish
  mix      10:1 with catalyst
  pot_life 8 h
}

recipe sprayed {
  for    wood
  safety vapour_respirator, gloves, eye_protection, ventilate, no_ignition
  layer  two_part, by hvlp
  wait   until cured
}
`,
    },
  ],
  checks: {
    onLayer: ({ action, report }) => {
      if (!isSprayed(action) || action.duties.has("supplied_air")) return;
      const isocyanate = isocyanateIn(action);
      if (!isocyanate) return;
      const isNamed = isocyanate !== "not ruled out";
      report({
        headline: isNamed
          ? fitting([
              t`\`${action.use.name}\` is sprayed with isocyanate and without supplied air`,
              t`Isocyanate is sprayed without supplied air`,
            ])
          : fitting([
              t`The hardener of \`${action.use.name}\` may hold isocyanate, and it is sprayed`,
              t`Its hardener may hold isocyanate, and it is sprayed`,
            ]),
        ...(isNamed ? { severity: "error" as const } : {}),
        why: t`Isocyanate mist causes asthma that stays for life. A cartridge will not do here: no smell tells you that it is spent.`,
        remedy: isNamed
          ? t`State \`safety supplied_air\` above this line and follow the safety data sheet, or put it on by brush or roller with gloves, goggles and fresh air.`
          : t`State \`safety supplied_air\` above this line, or put it on by brush or roller with gloves, goggles and fresh air; if the safety data sheet names no isocyanate, write \`free of isocyanate\` into the hardener's title.`,
        ...(isNamed
          ? { related: [related(isocyanate.material.namePlace, t`The material that says so`)] }
          : action.hardener?.use.material
            ? { related: [related(action.hardener.use.material.namePlace, t`The hardener`)] }
            : {}),
        fixes: [undertakeDuties(action.place, ["supplied_air"])],
      });
    },
  },
};
