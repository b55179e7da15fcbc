/** Lines of labels, old finishes, rooms and jobs as people dictate them, each with the plain form that the formatter gives it. */
import type { Row } from "./unprompted-lines.ts";

const LABELS: readonly Row[] = [
  ["family", "family two-component waterborne polyurethane", "family waterborne two part polyurethane"],
  ["family", "family Two-Pack polyurethane", "family two part polyurethane"],
  ["family", "family 2 component PU", "family two part polyurethane"],
  ["family", "family water-based enamel", "family acrylic paint"],
  ["family", "family pre-catalysed lacquer", "family precatalyzed lacquer"],
  ["family", "family soap", "family cleaner"],
  ["family", "family D3 glue", "family wood glue"],
  ["family", "family oxalic acid", "family wood bleach"],
  ["material", "sandable 30 min", "sandable 30 min"],
  ["material", "press 60 min", "recoat 60 min"],
  ["material", "clamping 2 h", "recoat 2 h"],
  ["material", "loadable 24 h", "cure 24 h"],
  ["material", 'note "Keep off the rain 24 hours."', 'note "Keep off the rain 24 hours."'],
  ["material", 'norm "EN 71-3"', 'note "norm EN 71-3"'],
  ["material", "shelf_life 6 months", 'note "shelf life 6 months"'],
  ["material", "dust_dry 20 min", 'note "dust dry 20 min"'],
  ["material", "handle 24 h", 'note "handle 24 h"'],
  ["material", "dwell 30 min", 'note "dwell 30 min"'],
  ["material", "light_use 24 h", 'note "light use 24 h"'],
  ["mix", "hardener 2:1 by weight", "mix 2:1 by weight"],
  ["mix", "hardener 2 % by weight", "mix 50:1 by weight"],
  ["mix", "hardener hardener 2:1 by volume", "mix 2:1 by volume with hardener"],
  ["mix", "mix 1:1 by volume", "mix 1:1 by volume"],
  ["mix", "mix 50 g to 0.5 L water", 'mix "50 g to 0.5 L water"'],
  ["mix", "mix 1 qt to 1 gal water", 'mix "1 qt to 1 gal water"'],
  ["mix", "mix 250 g flakes to 1 L meths", 'mix "250 g flakes to 1 L meths"'],
  ["mix", "mix a with 5 % dye", 'mix "a with 5 % dye"'],
  ["material", "packs 12 fl oz can for 8.00", "packs 12 floz for 8.00"],
  ["material", "sheen silk gloss", "sheen satin"],
  ["material", "colour dark", 'colour "dark"'],
  ["material", "colour walnut shade", 'colour "walnut shade"'],
  ["material", "colour as the library's table", 'colour "as the library\'s table"'],
];

const ON_IT: readonly Row[] = [
  ["surface", "existing waterborne lacquer, worn", 'existing waterborne lacquer "worn"'],
  ["surface", "existing oil varnish, yellowed and cracked", 'existing oil varnish "yellowed and cracked"'],
  ["surface", "existing oil varnish, yellowed, chipping", 'existing oil varnish "yellowed, chipping"'],
  ["surface", "existing black paint, chipping", 'existing unknown paint "black, chipping"'],
  ["surface", "existing old dark varnish", 'existing unknown clear "old dark"'],
  ["surface", "existing shellac, oil varnish over it", "existing shellac, oil varnish"],
  ["surface", "existing catalysed lacquer, cracked", 'existing unknown clear "cracked"'],
  ["surface", "existing shellac, waxed", "existing shellac, paste wax"],
  ["surface of its own", "shape area 1 m2\n wood oak, end grain", 'shape area 1 m2\nwood oak "end grain"'],
  ["surface of its own", "shape area 1 m2\n wood walnut, faded", 'shape area 1 m2\nwood walnut "faded"'],
  [
    "surface of its own",
    "shape area 1 m2\n wood mahogany, Cuban veneer",
    'shape area 1 m2\nwood mahogany "Cuban", veneer',
  ],
  ["surface", "outdoors yes", "outdoors rain, sun"],
  ["surface", "outdoors under a roof", "outdoors sheltered"],
  ["surface", "condition sound but for one corner", 'note "condition sound but for one corner"'],
];

const ROOMS_AND_JOBS: readonly Row[] = [
  ["shop", "air above 18 C, under 60 % RH", "air 18 C, 60 % RH"],
  [
    "shop",
    "hours Mon to Fri 07:30 to 12:00 and 13:00 to 16:30",
    "hours Mon to Fri 07:30 to 12:00, Mon to Fri 13:00 to 16:30",
  ],
  ["shop", "extraction explosion-proof", 'note "extraction explosion-proof"'],
  ["shop", "markup 15 %", 'note "markup 15 %"'],
  ["shop", "rack 12", 'note "rack 12"'],
  ["shop", "outdoors yes", "outdoors rain, sun"],
  ["job", "loss 10 %", "spare 10 %"],
  ["job", "ready 2026-10-24 for light use", 'ready 2026-10-24 "for light use"'],
  ["job", "ready 2026-10-24 noon", "ready 2026-10-24 12:00"],
  ["recipe", "safety half_mask_A2, gloves", "safety vapour_respirator, gloves"],
  ["recipe", "safety nitrile gloves, window open", 'safety gloves "nitrile", ventilate'],
];

export const LABELS_AND_ROOMS: Readonly<Record<string, readonly Row[]>> = {
  labels: LABELS,
  "what is on it": ON_IT,
  "rooms and jobs": ROOMS_AND_JOBS,
};
