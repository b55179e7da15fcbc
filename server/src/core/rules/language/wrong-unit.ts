/**
 * A quantity of another dimension, or without its unit.
 */
import { BY_DEFINITION } from "../../knowledge/sources.ts";
import type { LanguageRule } from "../rule.ts";

export const wrongUnit: LanguageRule = {
  id: "wrong-unit",
  group: "language",
  severity: "error",
  docs: {
    summary: "A quantity has a unit of another dimension than is needed there, or none.",
    why: "A spreading rate in hours or a wait in metres means nothing; a number without a unit can mean too much.",
    remedy: "Write the quantity with a unit of the dimension that the message names.",
    sources: [BY_DEFINITION],
  },
  failing: [
    {
      title: "Hours for a spreading rate, no unit for a time",
      text: `material hall_clear {
  family waterborne polyurethane
  covers 3 h #! wrong-unit
  cure   21 #! wrong-unit
}
`,
    },
    {
      title: "A wait in metres, coats in hours",
      text: `recipe clear_coat {
  for   wood
  layer waterborne_polyurethane x 3 h #! wrong-unit
  wait  3 m #! wrong-unit
}
`,
    },
    {
      title: "Ounces that may be fluid ones",
      text: `material hall_clear {
  family waterborne polyurethane
  packs  16 oz for 18.00 #! wrong-unit
}
`,
    },
  ],
  passing: [
    {
      title: "Any unit of the right dimension",
      text: `material hall_clear {
  family waterborne polyurethane
  covers 400 ft2/gal
  cure   3 weeks
}

material heavy_clear {
  family  waterborne polyurethane
  density 1.03 kg/L
  covers  120 g/m2
}
`,
    },
  ],
};
