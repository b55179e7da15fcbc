/** Hover of a layer and of a job says what is given off and the air that it asks for, where the room is known. */
import { expect, test } from "vitest";
import { analyse } from "../harness/check-text.ts";

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
  safety ventilate 10 air changes/h
  layer  varnish x 2, takes 30 min
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
  expect(hover(TEXT, "layer  varnish")).toContain("VOC 240 g a coat, needs 8.6 air changes/h, 10 stated");
  const noRoom = TEXT.replace(/ {2}room 50.*\n/, "");
  expect(hover(noRoom, "layer  varnish")).toMatch(/VOC 240 g a coat\./);
});

test("a job", () => {
  expect(hover(TEXT, "it {")).toMatch(
    /worst 8 h 480 g, .* air changes\/h in 50 m3; the room has 2 \(.*proves nothing safe\)/,
  );
  expect(hover(TEXT.replace(/ {2}room 50.*\n/, ""), "it {")).not.toContain("worst");
});
