/** The air of a job's room by the hour as the bench view has it: figures, words, and the lines that they lead to. */
import { expect, test } from "vitest";
import { analyse } from "../harness/check-text.ts";

const FILE = "test.finish";

/** Three boards of 2 m2 under a varnish of 10 m2/L and 400 g/L: 240 g that leave from 0 to 5 h. */
const textOf = (shop: string, varnish = "  voc    400 g/L\n"): string => `material varnish {
  family oil varnish
  covers 10 m2/L
${varnish}  touch  8 h
  recoat 48 h
  rated  21 C, 50 % RH
}
piece board {
  surface face {
    shape area 2 m2
    wood  beech
  }
}
shop mill {
  air  21 C, 50 % RH
  crew 3
${shop}}
recipe work {
  layer varnish, takes 1 h
}
job boards {
  piece board x 3
  in    mill
  start 2027-03-08 09:00
  apply work to face
  spare 0 %
}
`;

const benchOf = (text: string) => {
  const bench = analyse({ [FILE]: text }).bench(FILE, "boards")!;
  const lineOf = (at: number | undefined): string | undefined => {
    const place = at === undefined ? undefined : bench.places[at];
    return place && text.slice(place.span.start).split("\n")[0]!.trim();
  };
  return { ...bench, lineOf };
};

test("an hour says what it asks for, what there is, and what gives off most, and leads to that line", () => {
  const { air, lineOf } = benchOf(textOf("  room 50 m3, 2 air changes/h\n"));
  expect(air).toMatchObject({ state: "known", room: "2 air changes/h in 50 m3", missing: [] });
  expect(lineOf(air.at)).toMatch(/^room 50 m3|^50 m3/);
  // 240 000 mg / 350 mg/m3 / 8 h · 5 / 50 m3 = 8.57 after five hours, in each of which 48 g leave.
  expect(air.worst).toBe(
    "Worst hour: Mon 8 Mar 2027 13:00, by the mean of the 8 h up to its end: 8.6 air changes/h in 50 m3. The room has 2. That is too little.",
  );
  const last = air.hours.at(-1)!;
  expect(air.hours.map(({ hour }) => hour)).toEqual([0, 1, 2, 3, 4]);
  expect(last).toMatchObject({ hour: 4, has: 2, verdict: "short" });
  expect(last.grams).toBeCloseTo(48, 6);
  expect(last.text).toBe(
    "needs 8.6 air changes/h, the room has 2: too little. 48 g leave, most by “varnish”",
  );
  expect(lineOf(last.at)).toBe("layer varnish, takes 1 h");
  expect(air.said[0]).toContain("too little");
});

test("without a room there are grams, and the shop is where to state it", () => {
  const { air, lineOf } = benchOf(textOf(""));
  expect(air).toMatchObject({ state: "no room", room: "", said: [] });
  expect(air.worst).toMatch(/^Most leaves in the hour from the start: 48 g\.$/);
  expect(air.hours.map(({ needs, has }) => [needs, has])).toEqual(
    [1, 2, 3, 4, 5].map(() => [undefined, undefined]),
  );
  expect(lineOf(air.at)).toMatch(/^mill/);
});

test("what is not known is named, and never counted as nothing", () => {
  const text = textOf("  room 50 m3, 2 air changes/h\n", "").replace("family oil varnish", "colour white");
  const { air } = benchOf(text);
  expect(air).toMatchObject({ state: "none", hours: [], missing: ["no `voc` for `varnish`"] });
});

test("the air by night is said to be taken as that of the day, where the shop is shut and does not say", () => {
  const night = (shop: string): string | undefined => benchOf(textOf(shop)).air.night;
  const room = "  room 50 m3, 2 air changes/h\n";
  const hours = "  hours Mon to Fri 09:00 to 17:00\n";
  expect(night(`${room}${hours}`)).toMatch(/^Warmth and damp of the room are taken to be the same by night/);
  expect(night(`${room}${hours}  night_air 15 C, 70 % RH\n`)).toBeUndefined();
  // Without hours nobody knows when it is shut.
  expect(night(room)).toBeUndefined();
});
