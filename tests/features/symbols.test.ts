/** The outline, of whole and of half-typed text. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { DocumentSymbolInfo } from "../../server/src/features/types.ts";
import { analyse } from "../harness/check-text.ts";
import { outline } from "./at-cursor.ts";

const WHOLE = `use "stock.finish"

## On the shelf.
material hall_clear "Satin clear" {
  family waterborne polyurethane
}
material plain {
  family gel stain
}
piece table "Table" {
  surface top {
    shape panel 2 m x 1 m
    wood  red oak
  }
}
shop mill {
  air 18 C, 60 % RH
}
recipe clearing(clear: material, coats: number = 3) {
  safety dust_mask
  step  sand 120, # coarse enough
    150
  layer clear x coats, by pad {
    wait until recoat
    step dust
  }
  follow rest(time: 2 h)
}
job one "Job" {
  piece table
}
job two {
  piece table x 2
}
`;

describe("the outline", () => {
  test("has declarations, surfaces and the lines of recipes", () => {
    expect(outline(WHOLE)).toBe(
      [
        'use stock.finish |  | "stock.finish"',
        "material hall_clear | Satin clear | hall_clear",
        "material plain | gel stain | plain",
        "piece table | Table | table",
        "  surface top | 2 m2, red oak | top",
        "shop mill |  | mill",
        "recipe clearing | clear, coats | clearing",
        "  step sand 120, 150 | step | sand",
        "  layer clear x coats, by pad | layer | clear",
        "    wait until recoat | wait | wait until recoat",
        "    step dust | step | dust",
        "  step follow rest(time: 2 h) | follow | rest",
        "job one | Job | one",
        "job two | table x 2 | two",
      ].join("\n"),
    );
  });

  test("spans whole declarations and blocks, without documentation", () => {
    const symbols = analyse({ "test.finish": WHOLE }).symbols("test.finish");
    const textOf = ({ span }: DocumentSymbolInfo): string => WHOLE.slice(span.start, span.end);
    expect(textOf(symbols[1]!)).toBe(
      'material hall_clear "Satin clear" {\n  family waterborne polyurethane\n}',
    );
    expect(textOf(symbols[3]!.children[0]!)).toBe(
      "surface top {\n    shape panel 2 m x 1 m\n    wood  red oak\n  }",
    );
    expect(textOf(symbols[5]!.children[1]!)).toBe(
      "layer clear x coats, by pad {\n    wait until recoat\n    step dust\n  }",
    );
  });

  test("half-typed text has symbols, with words in the place of names", () => {
    expect(outline("material \n\nrecipe r {\n  step \n  layer clear {\n    wait\n\njob j {")).toBe(
      [
        "material (material without a name) |  | material",
        "recipe r |  | r",
        "  step (step) | step | step",
        "  layer clear | layer | clear",
        "    wait (wait) | wait | wait",
        "job j |  | j",
      ].join("\n"),
    );
  });

  test("of any part of a text every name stands inside its whole", () => {
    const holds = (symbols: readonly DocumentSymbolInfo[], length: number): boolean =>
      symbols.every(
        ({ name, span, nameSpan, children }) =>
          name !== "" &&
          0 <= span.start &&
          span.start <= nameSpan.start &&
          nameSpan.end <= span.end &&
          span.end <= length &&
          holds(children, length),
      );
    fc.assert(
      fc.property(fc.nat(WHOLE.length), fc.nat(WHOLE.length), (a, b) => {
        const text = WHOLE.slice(0, Math.min(a, b)) + WHOLE.slice(Math.max(a, b));
        return holds(analyse({ "test.finish": text }).symbols("test.finish"), text.length);
      }),
    );
  });
});
