/** Hover of a layer, a job and a shop says what is given off and when, and the air that it asks for, where the room is known. */
import { expect, test } from "vitest";
import { analyse } from "../harness/check-text.ts";

/** The air that is stated is too little for a single board, so that no plan spreads them for its sake. */
const TEXT = `material varnish {
  family oil varnish
  covers 10 m2/L
  voc    400 g/L
  touch  8 h
}
piece board {
  surface face {
    shape area 2 m2
    wood  beech
  }
}
shop room {
  air  21 C, 50 % RH
  room 50 m3, 2 air changes/h
}
recipe work {
  safety ventilate 2.5 air changes/h
  layer  varnish x 2, takes 30 min {
    wait 1 min
  }
}
job it {
  piece board x 3
  in    room
  start 2027-03-08 09:00
  spare 0 %
  apply work to face
}
`;

const hover = (text: string, at: string): string =>
  analyse({ "test.finish": text }).hover("test.finish", text.indexOf(at))?.markdown ?? "";

test("a layer", () => {
  // 2 m2 · 3 / 10 · 400 g/L = 240 g; 240 000 mg / 8 h / 350 mg/m3 · 5 / 50 m3 = 8.6
  const card = hover(TEXT, "layer  varnish");
  expect(card).toContain(
    "fumes in `it`: 240 g a coat, × 2 = 480 g; needs 8.6 air changes/h by itself, 2.5 stated",
  );
  expect(card).toContain(
    "(240 g / 0.35 g/m3 (mineral spirits) / 8 h × 5 = 429 m3/h, / 50 m3 = 8.6 air changes/h)",
  );
  // 80 g leave from a board's first stroke to half of 8 h after its last: 80 / 4.5. The six coats are put on one after
  // the other from 09:00 to 12:00, and the first is off at 13:30, so from 12:00 to 13:00 all six are at it.
  expect(card).toContain(
    "of each piece 80 g in 30 min + 4 h = 17.8 g/h; most 107 g in the hour from Mon 8 Mar 2027 12:00",
  );
  const noRoom = TEXT.replace(/ {2}room 50.*\n/, "");
  expect(hover(noRoom, "layer  varnish")).toContain("240 g a coat, × 2 = 480 g; of each piece");
});

test("a job", () => {
  const card = hover(TEXT, "it {");
  // 480 000 mg / 8 h / 350 mg/m3 · 5 / 50 m3 = 17.1
  expect(card).toMatch(
    /worst 8 h 480 g, .* 17\.1 air changes\/h in 50 m3; 2.5 stated: too little: 480 g \/ 0\.35 g\/m3 .* \(.*no calculation can show that a room is safe\)/,
  );
  expect(card).toContain("most fumes in an hour 107 g, from Mon 8 Mar 2027 12:00");
  expect(hover(TEXT.replace(/ {2}room 50.*\n/, ""), "it {")).not.toContain("worst");
});

test("a shop", () => {
  const card = hover(TEXT, "room {");
  // 50 m3 · 2 = 100 m3/h · 0.35 g/m3 / 5 = 7 g/h
  expect(card).toContain(
    "its air keeps mineral spirits under 350 mg/m3 up to 100 m3/h × 0.35 g/m3 / 5 = 7 g/h, × 8 h = 56 g in a shift",
  );
  expect(card).toContain(
    "- fumes of `it`\n  - 480 g in all, most 107 g in the hour from Mon 8 Mar 2027 12:00\n",
  );
  expect(card).toMatch(/worst 8 h 480 g, .*needs 17\.1 air changes\/h in 50 m3; 2.5 stated: too little/u);
  const noRoom = hover(TEXT.replace(/ {2}room 50.*\n/, ""), "room {");
  expect(noRoom).toContain("480 g in all, most 107 g");
  expect(noRoom).not.toContain("its air keeps");
});

test("a step with a solvent whose litres are known", () => {
  const text = `material spirits {\n  family mineral spirits\n  covers 10 m2/L\n}\n${TEXT.replace("  layer  varnish", "  step   dewax with spirits, takes 30 min\n  layer  varnish")}`;
  // 2 m2 · 3 / 10 · 780 g/L = 468 g; 468 000 / 8 / 350 · 5 / 50 = 16.7; a board's 156 g in half an hour and another, and
  // of two boards at a time 78 g in 15 min: 78 000 / 1800 / 0.25 · 5 / 50 = 17.3.
  expect(hover(text, "step   dewax")).toContain(
    "fumes in `it`: 468 g; needs 17.3 air changes/h by itself, 2.5 stated (78 g / 1.8 g/m3 (mineral spirits) / 0.25 h × 5 = 867 m3/h, / 50 m3 = 17.3 air changes/h); of each piece 156 g in 30 min + 30 min = 156 g/h",
  );
});
