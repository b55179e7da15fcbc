/** Reading quantities: what is accepted, what is refused, and in which words. */

import { describe, expect, test } from "vitest";
import { inside } from "../../../grammar/src/gist.ts";
import {
  DIMENSIONS,
  describeDimension,
  quantityText,
  readQuantity,
} from "../../../server/src/core/measure/read-quantity.ts";
import type { Dimension } from "../../../server/src/core/measure/units.ts";
import { quantityOf } from "./quantity-of.ts";

function accept(text: string, ...expected: readonly Dimension[]): number {
  const read = readQuantity(quantityOf(text), expected);
  if (!read.ok) throw new Error(read.message);
  return read.amount.value;
}

/** `rule: message`, and what the span covers. */
function refuse(text: string, ...expected: readonly Dimension[]): string {
  const read = readQuantity(quantityOf(text), expected);
  if (read.ok) throw new Error(`accepted as ${read.amount.value}`);
  return `${read.rule} at [${text.slice(read.span.start, read.span.end)}]: ${read.message.replaceAll("\n", " / ")}`;
}

describe("accepted", () => {
  test.each([
    ["72 h", "time", 72],
    ["30 min", "time", 0.5],
    ["1 day 4 h", "time", 28],
    ["1 h 30 min", "time", 1.5],
    // 5 · 304.8 mm + 6 · 25.4 mm = 1524 + 152.4 = 1676.4 mm.
    ["5 ft 6 in", "length", 1676.4],
    ["10 m2/L", "spreading rate", 10],
    ["100 mL/m2", "spreading rate", 10],
    ["-5 C", "temperature", -5],
    ["14 F", "temperature", -10],
    ["9 F", "temperature difference", 5],
    ["33 %", "share", 33],
    ["10 air changes/h", "air change", 10],
    ["0 L", "volume", 0],
    ["3", "number", 3],
  ] as const)("%s is %s", (text, dimension, expected) => {
    expect(accept(text, dimension)).toBeCloseTo(expected, 9);
  });

  test("the first expected dimension that the unit measures", () => {
    const read = readQuantity(quantityOf("120 g/m2"), ["spreading rate", "weight by area"]);
    expect(read).toEqual({ ok: true, amount: { dimension: "weight by area", value: 120 } });
  });
});

describe("refused", () => {
  test("another dimension", () => {
    expect(refuse("3 h", "spreading rate")).toBe(
      "wrong-unit at [3 h]: Expected coverage such as `10 m2/L`, found a time (`3 h`).",
    );
    expect(refuse("3 h", "volume", "mass")).toBe(
      "wrong-unit at [3 h]: Expected a volume or a weight, found a time (`3 h`). / Write, for example, `946 mL` or `2.5 kg`.",
    );
    expect(refuse("3 h", "number")).toBe(
      "wrong-unit at [3 h]: Expected a plain number such as `3`, found a time (`3 h`).",
    );
  });

  test("no unit", () => {
    expect(refuse("10", "spreading rate")).toBe(
      "wrong-unit at [10]: `10` has no unit; expected coverage such as `10 m2/L`.",
    );
    expect(refuse("5 ft 6", "length")).toBe(
      "wrong-unit at [6]: `6` has no unit; expected a length such as `30 mm`.",
    );
  });

  test.each([
    ["10 m2/l", "spreading rate", "`m2/l` is no unit; did you mean `m2/L`?"],
    ["3 hr", "time", "`hr` is no unit; did you mean `h`?"],
    ["3 horus", "time", "`horus` is no unit; did you mean `hours`?"],
    ["2 gallons", "volume", "`gallons` is no unit; did you mean `gal`?"],
    ["5 wombats", "time", "`wombats` is no unit; expected a time such as `2 h`."],
    ["2 litres", "time", "`litres` is no unit; expected a time such as `2 h`."],
  ] as const)("%s", (text, dimension, message) => {
    expect(refuse(text, dimension)).toBe(`wrong-unit at [${text.split(" ")[1]}]: ${message}`);
  });

  test("compounds that do not go down within one dimension", () => {
    expect(refuse("6 in 5 ft", "length")).toBe(
      "wrong-unit at [5 ft]: The parts of `6 in 5 ft` must go from the largest unit to the smallest. / Write, for example, `5 ft 6 in`.",
    );
    expect(refuse("5 ft 6 ft", "length")).toContain("wrong-unit at [6 ft]");
    expect(refuse("5 ft 6 min", "length")).toBe(
      "wrong-unit at [6 min]: All parts of `5 ft 6 min` must be of one kind; `6 min` is a time.",
    );
    expect(refuse("20 C 3 C", "temperature")).toBe(
      "wrong-unit at [20 C 3 C]: `20 C 3 C` is two quantities; a temperature is written in one unit.",
    );
    expect(refuse("5 ft -6 in", "length")).toContain("bad-number at [-6]");
  });

  test("numbers out of range", () => {
    expect(refuse("-2 h", "time")).toBe("bad-number at [-2 h]: `-2 h` must not be less than 0 h.");
    expect(refuse("0 mL/m2", "spreading rate")).toContain("bad-number at [0 mL/m2]: `0 mL/m2` is no amount");
    expect(refuse("-300 C", "temperature")).toBe(
      "bad-number at [-300 C]: `-300 C` is below the absolute zero.",
    );
  });

  test("bounds of the caller, in words of the notation", () => {
    const zero = readQuantity(quantityOf("0 mm"), ["length"], { above: 0 });
    expect(!zero.ok && zero.message).toBe("`0 mm` must be more than 0 mm.");
    const share = readQuantity(quantityOf("140 %"), ["share"], { atMost: 100 });
    expect(!share.ok && share.message).toBe("`140 %` must not be more than 100 %.");
  });
});

describe("words", () => {
  test.each(Object.entries(DIMENSIONS))("the example of %s has that dimension", (dimension, { example }) => {
    expect(readQuantity(quantityOf(example), [dimension as Dimension]).ok).toBe(true);
    expect(describeDimension(dimension as Dimension, inside)).toContain(`\`${example}\``);
  });

  test("a quantity as it is typed", () => {
    expect(quantityText(quantityOf("5 ft 6 in"))).toBe("5 ft 6 in");
  });
});
