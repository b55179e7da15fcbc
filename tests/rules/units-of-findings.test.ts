/** Findings tell their figures in the units of their text, or in those that somebody asks for. */
import { describe, expect, test } from "vitest";
import type { UnitSystem } from "../../server/src/core/measure/shown-figures.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";

const job = (air: string): string => `material hall_clear {
  family  waterborne polyurethane
  covers  125 ft2/qt
  thin    water, up to 10 %
  limits  50 F to 86 F, 85 % RH
  on_hand 2 floz
}

material spirit_coat {
  family shellac
  flash  55 F
}

piece shelf {
  surface top {
    shape area 13 ft2
    wood  beech
  }
}

shop mill {
  air      ${air}
  ignition heater
}

recipe coated {
  layer spirit_coat
  wait  until recoat
  layer hall_clear, thinned 10:3
  wait  until cured
}

job shelves {
  piece shelf
  in    mill
  apply coated to top
}
`;

const saidOf = (findings: readonly FileFinding[]): string =>
  findings.map(({ headline, why, remedy }) => [headline, why, remedy].join("\n")).join("\n\n");

function saidIn(text: string): string {
  const analyst = createAnalyst({ resolve: (_, path) => path });
  analyst.setFile("shelf.finish", text);
  return saidOf(analyst.analysis().findings("shelf.finish"));
}

describe("a text in the units of the United States", () => {
  const cold = saidIn(job("46 F, 60 % RH"));
  const damp = saidIn(job("50 F, 90 % RH"));

  test("the air of the shop and of the label are told as they are written", () => {
    expect(cold).toContain("need 50 F or more; `mill` has 46 F and 60 % RH");
  });

  /**
   * Magnus form of Alduchov and Eskridge (1996) at 10 C and 90 %: ln 0.9 = −0.10536, 17.625 · 10 / 253.04 = 0.69653, sum
   * 0.59117; dew point 243.04 · 0.59117 / (17.625 − 0.59117) = 8.43 C = 47.2 F, which is 1.57 C = 2.8 F below.
   */
  test("a dew point is a temperature, and the distance from it a difference", () => {
    expect(damp).toContain("is 47 F: a piece only 2.8 F cooler than its air gets wet");
  });

  test("a flash point", () => {
    expect(cold).toContain("can be lit from 55 F on (its flash point)");
  });

  /** 10 % of a quart of 32 fluid ounces are 3.2. */
  test("what goes into a quart", () => {
    expect(cold).toContain("Use at most 3.2 floz of thinner to a quart.");
  });

  test("what is on hand", () => {
    expect(cold).toContain("needed, 2 floz on hand");
  });
});

test("the same text where somebody asks for metric figures, and back again", () => {
  const text = job("46 F, 60 % RH");
  let units: UnitSystem | undefined = "metric";
  const analyst = createAnalyst({ resolve: (_, path) => path, units: () => units });
  analyst.setFile("shelf.finish", text);
  const now = (): string => saidOf(analyst.analysis().findings("shelf.finish"));
  // 46 F are 7.8 C, 50 F are 10 C.
  expect(now()).toContain("10 C or more; `mill` has 7.8 C and 60 % RH");
  units = "us";
  analyst.setFile("shelf.finish", `${text}\n`);
  expect(now()).toContain("50 F or more");
});

test("an edit that turns the units of the text turns those of its findings", () => {
  const analyst = createAnalyst({ resolve: (_, path) => path });
  const text = job("46 F, 60 % RH");
  const metric = text
    .replace("46 F", "7.8 C")
    .replace("50 F to 86 F", "10 C to 30 C")
    .replace("13 ft2", "1.2 m2");
  const now = (): string => saidOf(analyst.analysis().findings("shelf.finish"));
  analyst.setFile(
    "shelf.finish",
    metric.replace("125 ft2/qt", "12 m2/L").replace("2 floz", "90 mL").replace("55 F", "13 C"),
  );
  expect(now()).toContain("10 C or more");
  analyst.setFile("shelf.finish", text);
  expect(now()).toContain("50 F or more");
});
