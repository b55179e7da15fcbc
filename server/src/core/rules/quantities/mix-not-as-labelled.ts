/**
 * Two parts that are mixed in another ratio than the words of their label say.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import type { Material } from "../../model/model.ts";
import type { LayerAction } from "../../surface/actions.ts";
import type { MomentContext, TradeRule } from "../rule.ts";
import { fitting, related } from "../texts.ts";
import { sameRatio, toldRatios } from "../told-ratios.ts";

export const mixNotAsLabelled: TradeRule = {
  id: "mix-not-as-labelled",
  group: "quantities",
  severity: "warning",
  docs: {
    summary:
      "The `mix` of a material has another ratio than its title or its words, such as “ten parts to one part of hardener”.",
    why: "Two parts react in one ratio. Too little hardener stays soft for good; too much turns brittle, bubbles or heats up in the pot, and what has not reacted harms the skin.",
    remedy:
      "Write the ratio of the label, and whether it is by volume or by weight. Words that name both ratios are understood: it is enough that one of them is that of `mix`.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "Ten to one on the label",
      text: `## The label: ten parts A to one part B by volume, no other ratio.
material part_a "Two-part clear, part A" {
  family waterborne two part polyurethane
  mix    2:1 with part_b
}
material part_b "Part B" {
  family hardener
}
recipe stools {
  for    wood
  safety gloves, eye_protection, ventilate
  layer  part_a, by roller #! mix-not-as-labelled
  wait   until cured
}
`,
    },
    {
      title: "In the title",
      text: `material filled "Two-part lacquer, mix 4:1 with its hardener" {
  family two part polyurethane
  mix    10:1 with part_b
}
material part_b "Part B" {
  family hardener
}
recipe stools {
  for    wood
  safety gloves, eye_protection, ventilate, no_ignition, supplied_air
  layer  filled, by roller #! mix-not-as-labelled
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "The label's own; by volume and by weight; and ratios of other things",
      text: `## Mix 2 to 1 by volume, or 100:45 by weight. Thin 1:10 with water for spraying; recoat after 4 to 6 hours.
material part_a "Two-part clear, 2:1" {
  family waterborne two part polyurethane
  mix    2:1 with part_b
}
## One part of this to two parts of the clear.
material part_b "Part B" {
  family hardener
}
recipe stools {
  for    wood
  safety gloves, eye_protection, ventilate
  layer  part_a, by roller
  wait   until cured
}
`,
    },
  ],
  checks: { onLayer: check },
};

function check({ action, report }: MomentContext<LayerAction>): void {
  const { material } = action.use;
  const mix = material?.mix;
  if (!material || !mix || action.coat !== 1) return;
  const { a, b, by } = mix.value;
  const told = toldRatios(wordsOf(material)).filter((each) => each.by === undefined || each.by === by);
  const [first] = told;
  if (!first || told.some((each) => sameRatio(each, { a, b }))) return;
  report({
    headline: fitting([
      t`\`${material.name}\` is mixed ${a}:${b}, and its words say ${first.a}:${first.b}`,
      t`Mixed ${a}:${b}, and the words of the material say ${first.a}:${first.b}`,
    ]),
    why: t`Two parts react in one ratio: too little hardener stays soft for good, too much turns brittle or heats up in the pot.`,
    remedy: t`Read the label, and write its ratio on the \`mix\` line, or correct the words.`,
    related: mix.place ? [related(mix.place, t`The ratio that is mixed`)] : [],
  });
}

const wordsOf = ({ title = "", docs }: Material): string => `${title}. ${docs}`;
