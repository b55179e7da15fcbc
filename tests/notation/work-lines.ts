/** Lines of work as people dictate them, each with the plain form that the formatter gives it. */
import type { Row } from "./unprompted-lines.ts";

const STEPS: readonly Row[] = [
  ["recipe", 'step fill "deep dents" with m1', 'step fill with m1 "deep dents"'],
  [
    "recipe",
    'step bleach "black rings" with m1, leave 20 min',
    'step bleach with m1 "black rings", leave 20 min',
  ],
  ["recipe", 'step test "under the top" with m1', 'step test "under the top" with m1'],
  ["recipe", "step strip with m1, leave on for 30 min", "step strip with m1, leave 30 min"],
  ["recipe", "step strip with m1, scraped off after 30 min", "step strip with m1, leave 30 min"],
  ["recipe", "step strip with m1 x 2, by brush", 'step strip with m1 x 2, "by brush"'],
  ["recipe", "step sand 220 x 2", "step sand 220 x 2"],
  ["recipe", "step rinse x 2", 'step clean "rinse" x 2'],
  ["recipe", "step rinse twice", 'step clean "rinse" x 2'],
  ["recipe", 'step rinse "hose off"', 'step clean "rinse, hose off"'],
  ["recipe", "step scrub", 'step clean "scrub"'],
  ["recipe", "step neutralise with m1", 'step clean with m1 "neutralise"'],
  ["recipe", "step raise_grain with water", "step dampen"],
  ["recipe", 'step scuff "grey pad"', 'step scuff "grey pad"'],
  ["recipe", 'step cut_back "0000 wool"', 'step scuff "cut back, 0000 wool"'],
  ["recipe", "step wire_brush", 'step scuff "wire brush"'],
  ["recipe", "step fill_grain with m1", 'step fill with m1 "grain"'],
  ["recipe", "step clamp 60 min", 'step "clamp", leave 60 min'],
  ["recipe", 'step treat "two chairs" with m1', 'step "treat two chairs" with m1'],
  ["recipe", 'step patch "chip" with m1', 'step repair "chip" with m1'],
  ["recipe", 'step cover "polythene"', 'step "cover polythene"'],
  ["recipe", "step unmask within 30 min", 'step unmask, "within 30 min"'],
  ["recipe", "step glue with m1, by syringe", 'step glue with m1, "by syringe"'],
];

const LAYERS: readonly Row[] = [
  ["recipe", 'layer m1 "a test patch"', 'layer m1, "a test patch"'],
  ["recipe", 'layer m1, by pad, "thin at the edges"', 'layer m1, by pad, "thin at the edges"'],
  ["recipe", "layer m1, by foam roller and brush", 'layer m1, by roller and brush, "foam roller"'],
  ["recipe", "layer m1, by spray, turned after 45 min", 'layer m1, by spray, "turned after 45 min"'],
  ["recipe", "layer m1, by spray, wiped even", 'layer m1, by spray, "wiped even"'],
  ["recipe", "layer m1, by spray can", 'layer m1, by spray, "spray can"'],
  ["recipe", "layer m1, by hvlp 1.8 tip", 'layer m1, by hvlp, "1.8 tip"'],
  ["recipe", "layer m1, by white pad and machine", 'layer m1, by pad, "white, machine"'],
  ["recipe", "layer m1, by 0000 wool", 'layer m1, by pad, "0000 wool"'],
  ["recipe", "layer m1, by spray, loss 33 %", "layer m1, by spray, transfer 67 %"],
  ["recipe", "layer m1, by hvlp, transfer 65 %", "layer m1, by hvlp, transfer 65 %"],
  ["recipe", "layer m1 x 2, wet on wet 20 min", "layer m1 x 2, wet_on_wet 20 min"],
  ["recipe", "layer m1 x 2, wet on wet after 30 min", "layer m1 x 2, wet_on_wet 30 min"],
  ["recipe", "layer m1, wet film 100 microns", "layer m1, wet 100 um"],
  ["recipe", "layer m1, thinned 20 %", "layer m1, thinned 5:1"],
  ["recipe", "layer m1, thinned 4:1", "layer m1, thinned 4:1"],
  ["recipe", "layer m1, on 5 of 18", "layer m1, only 5 of 18"],
  ["recipe", 'layer m1, only 5 of 18 "pale ones"', 'layer m1, only 5 of 18 "pale ones"'],
  ["recipe", "layer m1 x 2, between sand 320 and 90 min", "layer m1 x 2, between sand 320 and wait 90 min"],
  ["recipe", "layer m1, no oil", 'layer m1, "no oil"'],
  ["recipe", "layer m1, with the grain", 'layer m1, "with the grain"'],
];

const MORE: readonly Row[] = [
  [
    "material",
    "recoat 4 h to 6 h, or after 24 h with sand 220",
    'recoat 4 h to 6 h "or after 24 h with sand 220"',
  ],
  ["material", "recoat up to 1 h, or after 48 h", 'recoat 48 h "or within 1 h"'],
  ["material", "packs 1 set for 14.00", "packs 1 set for 14.00"],
  ["material", "flash_off 20 min", 'note "flash off 20 min"'],
  ["piece", "outdoors yes", "outdoors rain, sun"],
  [
    "surface",
    "shape 7 of box 60 in x 2 1/2 in x 7/8 in, no ends",
    "shape 7 of box 60 in x 2 1/2 in x 7/8 in, no ends",
  ],
];

export const WORK: Readonly<Record<string, readonly Row[]>> = {
  "work by hand": STEPS,
  "coats and words": LAYERS,
  "times and packs": MORE,
};
