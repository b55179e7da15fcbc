/** Titles of surfaces, and what is noted of a job, its pieces and their surfaces: on the sheet, and heard by the rules. */
import { describe, expect, test } from "vitest";
import { only } from "../harness/bench-sheets.ts";
import { findingsOf } from "../harness/check-text.ts";

const WORK = (pieceNote: string) => `piece bench "Oak bench" {
  ${pieceNote}
  surface top "Seat and arms" {
    shape area 1 m2
    wood  oak
    note  "Ink stains at the left."
  }
}
recipe oiled {
  layer waterborne_acrylic
  wait  until cured
}
job benches "Two benches" {
  piece    bench
  owner    "Town library"
  delivery "by the side door"
  note     "Number the screws."
  apply    oiled
}
`;

describe("notes and titles", () => {
  test("stand on the sheet in the words of their lines", () => {
    const sheet = only(WORK('note "One arm is loose."'));
    expect(sheet.surfaces[0]!.title).toBe("Seat and arms");
    expect(sheet.facts).toEqual(
      expect.arrayContaining([
        { name: "Owner", text: "Town library" },
        { name: "Delivery", text: "by the side door" },
        { name: "Note", text: "Number the screws." },
        { name: "Note, Oak bench", text: "One arm is loose." },
        { name: "Note, Seat and arms", text: "Ink stains at the left." },
      ]),
    );
  });

  test("are heard like the descriptions of their declarations", () => {
    const rulesWith = (note: string) => findingsOf(WORK(note)).map(({ rule }) => rule);
    expect(rulesWith('note "Painted with arsenic green in 1890."')).toContain("poisonous-ingredient");
    expect(rulesWith('note "One arm is loose."')).not.toContain("poisonous-ingredient");
  });
});
