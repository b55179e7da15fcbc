/** Findings as orders at the bench. */
import { expect, test } from "vitest";
import type { Material } from "../../server/src/core/model/model.ts";
import { sheetDocument } from "../../server/src/reports/sheet-document.ts";
import { sheetsHtml } from "../../server/src/reports/sheet-html.ts";
import { sheetsText } from "../../server/src/reports/sheet-text.ts";
import { benchOrder } from "../../server/src/views/sheet/bench-order.ts";
import { sheets } from "../harness/bench-sheets.ts";

const materials = new Map<string, Material>([
  [
    "hall_clear",
    { name: "hall_clear", title: "Hall clear", familyName: "waterborne polyurethane" } as Material,
  ],
]);

test("what is to be done stands there, with titles, and nothing of how it is written", () => {
  expect(
    benchOrder(
      {
        headline: "The grain that `hall_clear` raised is not sanded down",
        why: "Raised fibres harden under the film. They stay.",
        remedy:
          "Sand lightly with 220 once `hall_clear` (waterborne polyurethane) is dry, and dust, before coat 2.",
      },
      materials,
    ),
  ).toEqual({
    gist: "The grain that Hall clear raised is not sanded down",
    order: "Sand lightly with 220 once Hall clear is dry, and dust, before coat 2.",
    why: "Raised fibres harden under the film.",
  });
  expect(
    benchOrder(
      {
        headline: "The rags of `hall_clear` can catch fire",
        why: "",
        remedy:
          "Lay oily rags in water in a closed metal can, and state `safety wet_rags` above this line; the label and local codes say how to get rid of them.",
      },
      materials,
    ),
  ).toEqual({
    gist: "The rags of Hall clear can catch fire",
    order:
      "Lay oily rags in water in a closed metal can. The label and local codes say how to get rid of them.",
    why: "The rags of Hall clear can catch fire.",
  });
});

test("where the remedy is only a matter of the text, whoever wrote it is to be asked", () => {
  expect(
    benchOrder(
      {
        headline: "`hall_clear` goes over `oil_stain` too soon",
        why: "It stays soft.",
        remedy: "Write `wait until cured` in place of `wait 20 min`.",
      },
      materials,
    ).order,
  ).toBe("Ask before you go on: Hall clear goes over oil stain too soon.");
});

test("on a sheet no order has names of the text in it", () => {
  const [sheet] = sheets(`material clear "Clear" {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h to 24 h
}
piece shelf "Shelf" {
  surface top {
    shape panel 1000 mm x 300 mm
    wood  beech
  }
}
recipe coated "Coated" {
  for    wood
  step   sand 120, 180
  step   dust
  layer  clear x 2, by brush
  wait   until cured
}
job shelves "Shelves" {
  piece shelf
  apply coated to top
}
`);
  expect(sheet!.findings.map(({ rule }) => rule)).toContain("grain-not-knocked-down");
  for (const { order, why } of sheet!.findings) expect(`${order} ${why}`).not.toMatch(/[`_]/u);
  // What is handed on has neither rules nor lines; whoever writes the recipe has both.
  const document = sheetDocument(sheet!, "test.finish", () => "test.finish:9");
  const html = sheetsHtml([document]);
  expect(html).toContain("<strong>Warning: The grain that Clear raised is not sanded down.</strong>");
  expect(html).not.toMatch(/grain-not-knocked-down|test\.finish:9/u);
  expect(sheetsText([document])).toContain("grain-not-knocked-down");
});
