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

const RESPIRATOR = "vapour_respirator, gloves, ventilate, no_ignition";
const BARE = "gloves, ventilate, no_ignition";

test.each([
  // Lacquer in a room with a hundred air changes, behind a respirator with eighteen, and with next to none.
  [
    "more air than the vapour takes",
    lacquered(", 100 air changes/h", RESPIRATOR),
    "Keep the air moving until it is dry: by this estimate it is enough, and no more than that.",
  ],
  [
    "too little air, and a respirator that stands for the rest",
    lacquered(", 18 air changes/h", RESPIRATOR),
    "The air of this room is too little: do not breathe it without the respirator.",
  ],
  [
    "too little air",
    lacquered(", 18 air changes/h", BARE),
    "The air of this room is too little: bring in more, or do less in a day.",
  ],
  // A twentieth of that in a room whose air nobody has measured.
  [
    "air that nobody has measured",
    lacquered("", BARE).replace("4 m2", "0.2 m2"),
    "Do not rely on the air of this room: it is not known to be enough.",
  ],
  // The solvents of a waterborne clear go by many names, of which the strongest takes far more air than the usual one.
  [
    "air that is enough for some solvents of the kind",
    lacquered(", 32 air changes/h", BARE).replace("nitrocellulose lacquer", "waterborne polyurethane"),
    "Do not rely on the air of this room: it is enough only if the solvent is a mild one.",
  ],
])("a room with %s says so in its first line", (_, text, line) => {
  expect(only(text).fumes!.gist).toBe(line);
});

test("the line stands before the figures in every form", () => {
  const sheet = only(lacquered(", 0.1 air changes/h"));
  const document = sheetDocument(sheet, "test.finish", () => "");
  const { gist } = sheet.fumes!;
  expect(sheetsHtml([document])).toContain(`<strong>${gist}</strong> `);
  expect(sheetsText([document]).replaceAll(/\s+/gu, " ")).toContain(
    `${gist} ${sheet.fumes!.text.slice(0, 20)}`,
  );
});
