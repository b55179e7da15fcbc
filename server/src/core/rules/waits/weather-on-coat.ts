/**
 * A coat that is put on outdoors where rain or sun reaches it before it is dry. A recipe whose own words think of the
 * weather is silent.
 */

import { t } from "../../../../../grammar/src/translate.ts";
import { HANDBOOK_16 } from "../../knowledge/sources.ts";
import { formatDuration } from "../../measure/format-amount.ts";
import type { TradeRule } from "../rule.ts";
import { spokenLines, textOf } from "../spoken-words.ts";
import { coatName, related } from "../texts.ts";

const FILE = (outdoors: string, note: string, mark: string): string => `piece bench {
  built 2019
  surface seat {
    shape    area 2.4 m2
    wood     larch
    outdoors rain, sun
  }
}

shop yard {
  outdoors ${outdoors}
  air      15 C, 60 % RH
}

recipe oiled {
  for    wood
  safety dust_mask, gloves, wet_rags, no_ignition, ventilate${note}
  step   sand 80, 120
  step   dust
  layer  exterior_oil x 2, wiped off after 20 min${mark}
  wait   until cured
}

job benches {
  piece bench
  in    yard
  apply oiled
}
`;

export const weatherOnCoat: TradeRule = {
  id: "weather-on-coat",
  group: "waits",
  severity: "warning",
  docs: {
    summary: "A coat goes on in a shop outdoors, where rain or sun reaches it before it is dry.",
    why: "Rain spots and washes a fresh coat. Sun skins it over before the rest has dried, and it blisters or wrinkles.",
    remedy:
      "Work in the shade and under a roof (`outdoors sheltered`), or choose a dry day and say so in a `note`.",
    sources: [
      `${HANDBOOK_16}: paint in the shade, and not when rain or dew is near; from memory, confidence high`,
    ],
  },
  failing: [
    { title: "Rain reaches the yard", text: FILE("rain", "", " #! weather-on-coat") },
    { title: "So does the sun", text: FILE("sun", "", " #! weather-on-coat") },
  ],
  passing: [
    { title: "Under a roof", text: FILE("sheltered", "", "") },
    {
      title: "The recipe thinks of the weather",
      text: FILE("rain, sun", '\n  note   "Only on a dry day, in the shade of the wall."', ""),
    },
  ],
  looksAt: ({ kind }) => kind === "job",
  checks: {
    onRun: ({ run, report }) => {
      const outdoors = run.shop?.outdoors;
      const reaching = outdoors?.value.filter((word) => word !== "sheltered") ?? [];
      const first = run.moments.find(({ action }) => action.op === "layer");
      if (!outdoors || reaching.length === 0 || !first || first.action.op !== "layer") return;
      if (spokenLines(run).some((action) => OF_WEATHER.test(textOf(action) ?? ""))) return;
      const coat = first.after.layers.at(-1)!;
      const dry = coat.drying.touch ?? coat.drying.recoat;
      const time = dry && formatDuration(dry.hours);
      const isRain = reaching.includes("rain");
      report(first.action, {
        headline: isRain
          ? t`Rain can reach ${coatName(coat)} before it is dry`
          : t`Sun can reach ${coatName(coat)} before it is dry`,
        why: isRain
          ? time === undefined
            ? t`Rain spots and washes a fresh coat before it is dry.`
            : t`Rain spots and washes a fresh coat in the ${time} until it is dry.`
          : time === undefined
            ? t`Sun skins a coat over, and it blisters before it is dry.`
            : t`Sun skins a coat over, and it blisters in the ${time} until it is dry.`,
        remedy: t`Work under a roof and state \`outdoors sheltered\`, or say in a \`note\` what weather you wait for.`,
        related: outdoors.place ? [related(outdoors.place, t`What reaches the work`)] : [],
      });
    },
  },
};

const OF_WEATHER =
  /\b(?:rain|rains|raining|shower|showers|weather|forecast|dry (?:day|days|spell)|shade|shaded|sun|sunny|sunshine|tarpaulin|awning|roof)\b/iu;
