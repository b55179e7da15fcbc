/** A trouble that a record names leads to a recipe that puts it right, and that has no mistakes of its own. */
import { expect, test } from "vitest";
import { TROUBLES } from "../../grammar/src/vocabulary.ts";
import { analyse } from "../harness/check-text.ts";

const TEXT = (trouble: string): string => `material hall_clear {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h
}

piece table {
  surface top {
    shape area 1 m2
    wood  beech
  }
}

shop room {
  air   21 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}

recipe coated {
  for    wood
  safety dust_mask
  step   sand 120
  step   dust
  layer  hall_clear x 2, by pad
  wait   until cured
}

job tables {
  piece table
  in    room
  start 2027-03-08 09:00
  apply coated to top
  done  2027-03-08 10:00 coat 1 of hall_clear, trouble ${trouble}
}
`;

function repaired(trouble: string): string {
  const text = TEXT(trouble);
  const at = text.indexOf(trouble);
  const fix = analyse({ "a.finish": text }).repairToWrite("a.finish", { start: at, end: at });
  expect(fix?.title).toBe(`Write a recipe that repairs the ${trouble}`);
  const [edit] = fix!.edits;
  return text.slice(0, edit!.span.start) + edit!.text + text.slice(edit!.span.end);
}

test("of a blush it dries in warm air, is scuffed and coated again, with its source", () => {
  expect(repaired("blush").slice(TEXT("blush").length - 1)).toBe(`

recipe repair_blush_top {
  # blush: ISO 4618 (blushing), from memory, confidence high; common practice, no source. Labels and data sheets come first.
  safety dust_mask
  note   "Let it stand in warm, dry air for a night; where it stays white, scuff it and put a thin coat on at less than 60 % RH. Try it on a hidden spot first."
  wait   overnight
  step   scuff 320
  step   dust
  layer  hall_clear, by pad
}
`);
});

test.each(TROUBLES)("of %s it can be read and applied, and adds no error", (trouble) => {
  const text = repaired(trouble);
  const name = /recipe (repair_\w+)/u.exec(text)![1]!;
  const applied = text.replace("  done ", `  apply ${name} to top\n  done `);
  const errors = analyse({ "a.finish": applied })
    .findings("a.finish")
    .filter(({ severity }) => severity === "error");
  expect(errors.map(({ rule, headline }) => `${rule}: ${headline}`)).toEqual([]);
});

test("stands on no other line, and is none where nothing went wrong", () => {
  const text = TEXT("blush");
  const analysis = analyse({ "a.finish": text });
  const at = text.indexOf("apply");
  expect(analysis.repairToWrite("a.finish", { start: at, end: at })).toBeUndefined();
  const sound = text.replace(", trouble blush", "");
  const done = sound.indexOf("done");
  expect(
    analyse({ "a.finish": sound }).repairToWrite("a.finish", { start: done, end: done }),
  ).toBeUndefined();
});
