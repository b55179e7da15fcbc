/** The air of a job on its sheet begins with whether it can be relied on. */
import { expect, test } from "vitest";
import { sheetDocument } from "../../server/src/reports/sheet-document.ts";
import { sheetsHtml } from "../../server/src/reports/sheet-html.ts";
import { sheetsText } from "../../server/src/reports/sheet-text.ts";
import { only } from "../harness/bench-sheets.ts";
import { sampleAnalyst } from "../harness/samples.ts";

/** 1 m2 of lacquer in a room of 60 m3, with so many air changes by itself. */
const lacquered = (changes: string, safety = "vapour_respirator, gloves, ventilate, no_ignition"): string =>
  `material clear "Clear lacquer" {
  family nitrocellulose lacquer
  covers 8 m2/L
  voc    600 g/L
  recoat 2 h
}
piece box {
  surface lid {
    shape area 4 m2
    wood  beech
  }
}
shop loft {
  air   20 C, 50 % RH
  room  60 m3${changes}
  hours Mon to Fri 09:00 to 17:00
}
recipe work {
  safety ${safety}
  layer clear x 2, by brush
}
job it {
  piece box
  in    loft
  start 2027-03-08 09:00
  apply work to lid
}
`;

test("a job without a room has no line on its air", () => {
  expect(only(lacquered("").replace(/ {2}room.*\n/u, "")).fumes).toBeUndefined();
});

test("where the sum leaves a material out, its air is not to be relied on, whatever the figures say", () => {
  const [sheet] = sampleAnalyst().analysis().sheets("reading-tables.finish");
  const { gist, text } = sheet!.fumes!;
  expect(text).toContain("enough for what is counted, and not known for all");
  expect(gist).toBe("Do not rely on the air of this room: not all of the vapour is counted.");
});

test.each([
  // Lacquer in a room with a hundred air changes, with one that nobody measured, and with next to none.
  [
    ", 100 air changes/h",
    /^Keep the air moving until it is dry: by this estimate it is enough, and no more/u,
  ],
  [", 0.1 air changes/h", /^The air of this room is too little: /u],
])("a room with %s says so in its first line", (changes, line) => {
  expect(only(lacquered(changes)).fumes!.gist).toMatch(line);
});

test("the line stands before the figures in every form", () => {
  const sheet = only(lacquered(", 0.1 air changes/h"));
  const document = sheetDocument(sheet, "test.finish", () => "");
  const { gist } = sheet.fumes!;
  expect(sheetsHtml([document])).toContain(`<strong>Fumes: ${gist}</strong> `);
  expect(sheetsText([document]).replaceAll(/\s+/gu, " ")).toContain(
    `Fumes: ${gist} ${sheet.fumes!.text.slice(0, 20)}`,
  );
});
