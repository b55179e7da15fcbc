/**
 * Lines as people say them, made of random figures in every spelling: each is read without a finding, takes the plain form
 * that is put together here from the same figures, stays as it is when formatted again, and means the same before and after.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { findingsOf } from "../harness/check-text.ts";
import { BLOCKS, findingsIn } from "./blocks.ts";
import { formatted, meaningOf, plainLines } from "./said.ts";

interface Form {
  readonly block: string;
  readonly written: string;
  readonly plain: string;
}

const form = (block: string, written: string, plain: string): Form => ({ block, written, plain });

const RUNS = 25;

const dash = fc.constantFrom("-", " - ", "–", " to ");
const ascending = fc
  .tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }))
  .map(([low, more]) => [low, low + more] as const);

const times = fc.constantFrom(
  ["h", "h"],
  ["hr", "h"],
  ["hrs", "h"],
  ["min", "min"],
  ["mins", "min"],
  ["days", "days"],
  ["minutes", "minutes"],
);

const ranges = fc
  .tuple(fc.constantFrom("touch", "cure", "pot_life"), ascending, dash, times)
  .map(([word, [low, high], joint, [unit, plain]]) =>
    form("material", `${word} ${low}${joint}${high} ${unit}`, `${word} ${low} ${plain} to ${high} ${plain}`),
  );

const coats = fc
  .tuple(
    fc.integer({ min: 1, max: 12 }),
    fc.integer({ min: 0, max: 3 }),
    dash,
    fc.integer({ min: 0, max: 5 }),
  )
  .map(([low, more, joint, way]) => {
    const said = more === 0 ? `${low}` : `${low}${joint}${low + more}`;
    const plain = `layer m1 x ${more === 0 ? low : `${low} to ${low + more}`}`;
    const ways = [
      `layer m1 x ${said}`,
      `layer m1 x ${said} coats`,
      `layer m1, ${said} coats`,
      `layer ${said} coats of m1`,
      `layer m1 ${said} coats`,
      `layer ${said} x m1`,
    ];
    return form("recipe", ways[way]!, plain);
  });

const sessions = fc
  .tuple(ascending, dash)
  .map(([[low, high], joint]) =>
    form(
      "recipe",
      `layer m1 x ${low}${joint}${high} sessions, by rubber`,
      `layer m1 x ${low} to ${high} sessions, by rubber`,
    ),
  );

const grits = fc
  .tuple(
    fc.uniqueArray(fc.constantFrom(80, 100, 120, 150, 180, 220, 240, 320, 400), {
      minLength: 1,
      maxLength: 5,
    }),
    fc.constantFrom(", ", "/", " then ", ", then "),
    fc.constantFrom("", "P"),
    fc.constantFrom("", "lightly", "if needed", "only where rough"),
  )
  .map(([list, joint, mark, how]) => {
    const written = list.map((grit) => `${mark === "P" && joint !== "/" ? "P" : ""}${grit}`).join(joint);
    const plain = `step sand ${list.join(", ")}${how === "" ? "" : ` "${how}"`}`;
    return form("recipe", `step sand ${written}${how === "" ? "" : ` ${how}`}`, plain);
  });

const MONTHS = [
  "January",
  "Feb",
  "Mar",
  "April",
  "May",
  "June",
  "July",
  "Aug",
  "Sept",
  "Oct",
  "Nov",
  "December",
];
const WEEKDAYS = ["Sunday", "Mon", "Tue", "Wednesday", "Thu", "Fri", "Saturday"];

const dates = fc
  .tuple(
    fc.integer({ min: 2026, max: 2090 }),
    fc.integer({ min: 1, max: 12 }),
    fc.integer({ min: 1, max: 28 }),
    fc.integer({ min: 0, max: 4 }),
    fc.boolean(),
  )
  .map(([year, month, day, way, hasWeekday]) => {
    const two = (figure: number): string => String(figure).padStart(2, "0");
    const iso = `${year}-${two(month)}-${two(day)}`;
    const weekday = WEEKDAYS[new Date(Date.UTC(year, month - 1, day)).getUTCDay()]!;
    const name = MONTHS[month - 1]!;
    const ways = [
      `${day}.${month}.${year}`,
      `${two(day)}.${two(month)}.${year}`,
      `${day} ${name} ${year}`,
      `${name} ${day}, ${year}`,
      iso,
    ];
    return form("job", `start ${hasWeekday ? `${weekday} ` : ""}${ways[way]!}`, `start ${iso}`);
  });

const money = fc
  .tuple(fc.integer({ min: 1, max: 99_999 }), fc.integer({ min: 0, max: 4 }))
  .map(([cents, way]) => {
    const [whole, part] = [Math.floor(cents / 100), String(cents % 100).padStart(2, "0")];
    const ways = [
      `$${whole}.${part}`,
      `${whole},${part}`,
      `${whole}.${part} EUR`,
      `£${whole}.${part}`,
      `${whole},${part} €`,
    ];
    return form("piece", `bought ${ways[way]!}`, `bought ${whole}.${part}`);
  });

const sizes = fc
  .tuple(
    fc.integer({ min: 10, max: 2000 }),
    fc.integer({ min: 10, max: 2000 }),
    fc.constantFrom(["mm", "mm"], ["cm", "cm"], ["inches", "in"], ["millimetres", "mm"]),
    fc.constantFrom(" x ", "x", " × "),
  )
  .map(([a, b, [unit, plain], joint]) =>
    form("surface", `shape panel ${a}${joint}${b} ${unit}`, `shape panel ${a} ${plain} x ${b} ${plain}`),
  );

const marks = fc
  .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 11 }), fc.integer({ min: 1, max: 48 }))
  .map(([feet, inches, width]) =>
    form(
      "surface",
      `shape panel ${feet}' ${inches}" x ${width}"`,
      `shape panel ${feet} ft ${inches} in x ${width} in`,
    ),
  );

const mixes = fc
  .tuple(
    fc.integer({ min: 1, max: 20 }),
    fc.integer({ min: 1, max: 5 }),
    fc.constantFrom("", " by weight", " by volume"),
    fc.integer({ min: 0, max: 3 }),
  )
  .map(([a, b, basis, way]) => {
    const ways = [
      `mix ${a}:${b}${basis} with hardener`,
      `mix ${a}:${b} with hardener${basis}`,
      `mix hardener ${a}:${b}${basis}`,
      `mix ${a} parts to ${b} parts${basis} hardener`,
    ];
    return form("mix", ways[way]!, `mix ${a}:${b}${basis} with hardener`);
  });

const tails = fc
  .tuple(
    fc.constantFrom(
      ["if needed", "if needed"],
      ["only if necessary", "if needed"],
      ["mist coat", "mist"],
      ["thin", "thin"],
      ["only where worn", 'only "where worn"'],
      ["2 passes", "passes 2"],
    ),
    fc.constantFrom(
      ["by a brush", "by brush"],
      ["by roller and brush", "by roller and brush"],
      ["by spray", "by spray"],
    ),
    fc.boolean(),
  )
  .map(([[tail, plainTail], [by, plainBy], isFirst]) =>
    isFirst
      ? form("recipe", `layer m1, ${tail}, ${by}`, `layer m1, ${plainTail}, ${plainBy}`)
      : form("recipe", `layer m1, ${by}, ${tail}`, `layer m1, ${plainBy}, ${plainTail}`),
  );

const FORMS = { ranges, coats, sessions, grits, dates, money, sizes, marks, mixes, tails };

/** What the program says of a text, wherever it stands in it. */
const said = (text: string): readonly string[] =>
  findingsOf(text).map(({ rule, severity, message }) => `${severity} ${rule} ${message}`);

describe("random figures in every spelling", () => {
  test.each(Object.entries(FORMS))("%s", (_, forms: fc.Arbitrary<Form>) => {
    fc.assert(
      fc.property(forms, ({ block, written, plain }) => {
        expect(findingsIn(block, written)).toBe("");
        expect(plainLines(block, written)).toBe(plain);
        const text = BLOCKS[block]!(written);
        const once = formatted(text);
        expect(formatted(once)).toBe(once);
        expect(meaningOf(once)).toBe(meaningOf(text));
        expect(said(once)).toEqual(said(text));
      }),
      { numRuns: RUNS },
    );
  });
});
