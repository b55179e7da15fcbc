/** What the page of a sheet says is now, next and to be minded. Times are worked by hand; 2027-03-08 is a Monday. */
import { describe, expect, test } from "vitest";
import {
  benchNow,
  dueAt,
  freeAt,
  hazardsAt,
  orderOf,
  type PageStep,
  startOf,
  type Ticked,
  waitsRunning,
} from "../../server/src/reports/sheet-page/bench-now.ts";

const MON = "2027-03-08T";
const TUE = "2027-03-09T";

const step = (title: string, of: Partial<PageStep>): PageStep => ({
  title,
  where: of.surfaces?.[0] ?? "Top",
  surfaces: ["Top"],
  pieces: ["1", "2"],
  isCoat: false,
  isCured: false,
  isUnknown: false,
  isLeftOn: false,
  use: "",
  wear: [],
  dangers: [],
  checks: [],
  ...of,
});

/** By title, and by title and piece where pieces differ: `sand`, `sand 1`. */
const ticks =
  (times: Readonly<Record<string, string>>): Ticked =>
  ({ title }, piece) =>
    times[`${title} ${piece}`] ?? times[title];

const nowOf = (steps: readonly PageStep[], times: Readonly<Record<string, string>>, now: string) => {
  const order = orderOf(steps);
  const { is, current, next } = benchNow(order, ticks(times), now);
  return {
    is,
    ...(current ? { current: current.step.title, due: dueAt(order, current) } : {}),
    ...(next ? { next: `${next.step.title} ${next.from}${next.isLaid ? " off" : ""}` } : {}),
  };
};

/** Two surfaces, one pair of hands: the top goes on before the base begins. */
const TOP_AND_BASE = [
  step("test", { start: `${MON}09:00`, end: `${MON}09:10` }),
  step("dewax", { start: `${MON}09:10`, end: `${MON}09:20` }),
  step("clean", { surfaces: ["Base"], start: `${MON}09:20`, end: `${MON}09:45` }),
  step("strip", { start: `${MON}09:45`, end: `${MON}12:05` }),
];

describe("next", () => {
  test("is what comes next in time, also where it follows the step in hand", () => {
    expect(nowOf(TOP_AND_BASE, {}, `${MON}09:00`)).toMatchObject({
      is: "now",
      current: "test",
      next: `dewax ${MON}09:10`,
    });
    expect(nowOf(TOP_AND_BASE, { test: `${MON}09:08` }, `${MON}09:08`)).toMatchObject({
      current: "dewax",
      next: `clean ${MON}09:20`,
    });
  });

  test("is on another surface while the step in hand begins a wait, and behind it where nothing else is left", () => {
    const coats = [
      step("coat 1", { isCoat: true, waitH: 2, start: `${MON}09:00`, end: `${MON}09:30` }),
      step("wash", { surfaces: ["Base"], start: `${MON}10:00`, end: `${MON}10:10` }),
      step("coat 2", { isCoat: true, start: `${MON}11:40` }),
    ];
    expect(nowOf(coats, {}, `${MON}09:00`).next).toBe(`wash ${MON}10:00`);
    // Done at 09:30, dry at 11:30; the plan has the second coat at 11:40.
    expect(nowOf(coats, { wash: `${MON}08:50` }, `${MON}09:00`).next).toBe(`coat 2 ${MON}11:40`);
    // An hour late: done at 10:40, dry at 12:40.
    expect(nowOf(coats, { wash: `${MON}08:50` }, `${MON}10:10`).next).toBe(`coat 2 ${MON}12:40`);
  });

  test("keeps to the order of every piece", () => {
    const apart = [
      step("sand", { pieces: ["1"] }),
      step("sand", { pieces: ["2"] }),
      step("coat", { isCoat: true }),
    ];
    // The second piece alone is sanded: the coat of both waits for the first.
    expect(nowOf(apart, { "sand 2": `${MON}09:00` }, `${MON}09:10`)).toMatchObject({
      current: "sand",
      next: "coat ",
    });
    const order = orderOf(apart);
    expect(startOf(order, apart[2]!, ticks({ "sand 2": `${MON}09:00` }))).toMatchObject({
      why: "step",
      last: apart[0],
    });
    expect(order.before.get(apart[2]!)).toEqual([apart[0], apart[1]]);
  });

  test("is nothing when the last step is in hand, and what is ticked before its turn opens nothing", () => {
    expect(
      nowOf(TOP_AND_BASE, { test: `${MON}09:00`, dewax: `${MON}09:10`, clean: `${MON}09:40` }, `${MON}09:45`),
    ).toEqual({ is: "now", current: "strip", due: `${MON}09:10` });
    expect(nowOf(TOP_AND_BASE, { dewax: `${MON}09:00` }, `${MON}09:00`)).toMatchObject({ current: "test" });
    const all = Object.fromEntries(TOP_AND_BASE.map(({ title }) => [title, `${MON}09:00`]));
    expect(nowOf(TOP_AND_BASE, all, `${MON}13:00`)).toEqual({ is: "done" });
  });
});

describe("a wait", () => {
  const base = step("paint", {
    isCoat: true,
    surfaces: ["Base"],
    waitH: 5.5,
    start: `${MON}16:00`,
    end: `${MON}16:10`,
  });
  const sand = step("sand the base", { surfaces: ["Base"], start: `${TUE}09:50` });
  const wash = step("wash", {
    dangers: ["fumes", "fire", "solvent rags"],
    until: `${TUE}09:00`,
    leastH: 12,
    start: `${MON}12:05`,
    end: `${MON}12:25`,
  });
  const sandTop = step("sand the top", { start: `${TUE}09:00` });

  test("that ends in the night is over then, and nobody need be there before the plan goes on", () => {
    // On at 16:10, dry at 21:40.
    const alone = [base, sand];
    const done = { paint: `${MON}16:10` };
    expect(nowOf(alone, done, `${MON}17:10`)).toEqual({
      is: "wait",
      current: "sand the base",
      due: `${TUE}09:50`,
    });
    expect(startOf(orderOf(alone), sand, ticks(done)).dry).toBe(`${MON}21:40`);
    expect(nowOf(alone, done, `${MON}22:00`)).toMatchObject({ is: "later", due: `${TUE}09:50` });
    expect(nowOf(alone, done, `${TUE}09:00`).is).toBe("now");
  });

  test("is until the first work on any surface, not the first that is dry", () => {
    const all = [wash, base, sandTop, sand];
    expect(nowOf(all, { wash: `${MON}12:25`, paint: `${MON}16:10` }, `${MON}17:10`)).toEqual({
      is: "wait",
      current: "sand the top",
      due: `${TUE}09:00`,
      next: `sand the base ${TUE}09:50`,
    });
  });

  test("is over as soon as it is dry on the day on which the plan goes on", () => {
    const coats = [
      step("coat 1", { isCoat: true, waitH: 2, start: `${MON}10:00`, end: `${MON}10:20` }),
      step("coat 2", { isCoat: true, start: `${MON}12:20` }),
    ];
    const done = { "coat 1": `${MON}10:10` };
    expect(nowOf(coats, done, `${MON}12:09`)).toMatchObject({ is: "wait", due: `${MON}12:10` });
    expect(nowOf(coats, done, `${MON}12:10`)).toMatchObject({ is: "now" });
  });

  test("that ends in the night before the work of the day goes on with that work", () => {
    // Stained on Monday at 10:30, dry on Tuesday at 03:09; the plan has its next coat on Tuesday at 09:00.
    const stained = [
      step("stain", { isCoat: true, waitH: 16.65, start: `${MON}10:20`, end: `${MON}10:30` }),
      step("coat", { isCoat: true, start: `${TUE}09:00`, end: `${TUE}09:25` }),
    ];
    expect(nowOf(stained, { stain: `${MON}10:30` }, `${MON}18:00`)).toEqual({
      is: "wait",
      current: "coat",
      due: `${TUE}09:00`,
    });
    // A day late, dry on Wednesday at 03:09: nobody is sent there at night, though the plan's time is over.
    expect(nowOf(stained, { stain: `${TUE}10:30` }, `${TUE}18:00`)).toMatchObject({
      due: "2027-03-10T09:00",
    });
    // Dry at 20:39: the plan has nobody there after 10:30.
    expect(nowOf(stained, { stain: `${TUE}04:00` }, `${TUE}05:00`)).toMatchObject({
      due: "2027-03-10T09:00",
    });
  });

  test("to the next opening takes a night at least, however late it began", () => {
    expect(freeAt(wash, ticks({ wash: `${MON}12:25` }))).toBe(`${TUE}09:00`);
    expect(freeAt(wash, ticks({ wash: `${MON}23:00` }))).toBe(`${TUE}11:00`);
    expect(freeAt(wash, ticks({}))).toBe(`${TUE}09:00`);
    const { until: _, ...undated } = wash;
    expect(freeAt(undated, ticks({ wash: `${MON}12:00` }))).toBe(`${TUE}00:00`);
  });

  test("says what is still there: fumes while it dries, rags for a day, a coat that is dry and soft", () => {
    const all = orderOf([wash, base, sandTop, sand]);
    const done = ticks({ wash: `${MON}12:25`, paint: `${MON}16:10` });
    expect(hazardsAt(all, done, `${MON}17:10`)).toEqual({
      dangers: ["fumes", "fire", "solvent rags"],
      soft: [],
    });
    // The base is dry at 21:40.
    expect(hazardsAt(all, done, `${MON}22:00`).soft).toEqual(["Base"]);
    expect(hazardsAt(all, done, `${TUE}09:00`).dangers).toEqual(["solvent rags"]);
    expect(hazardsAt(all, done, `${TUE}12:24`).dangers).toEqual(["solvent rags"]);
    expect(hazardsAt(all, done, `${TUE}12:25`).dangers).toEqual([]);
    // The next step is on it.
    const sanded = ticks({ wash: `${MON}12:25`, paint: `${MON}16:10`, "sand the base": `${TUE}09:55` });
    expect(hazardsAt(all, sanded, `${TUE}10:00`).soft).toEqual([]);
    expect(waitsRunning(all, done, `${MON}17:10`).map(({ on, free }) => `${on} ${free}`)).toEqual([
      `Base ${MON}21:40`,
      `Top ${TUE}09:00`,
    ]);
  });

  test("of the last coat leaves it soft until full use, and one until it has cured leaves nothing soft", () => {
    const last = step("coat", { isCoat: true, waitH: 2, fullH: 240, dangers: ["fumes"] });
    const soft = (of: PageStep, now: string) =>
      hazardsAt(orderOf([of, step("more", {})]), ticks({ coat: `${MON}10:00` }), now).soft;
    const alone = (now: string) => hazardsAt(orderOf([last]), ticks({ coat: `${MON}10:00` }), now);
    expect(alone(`${MON}11:59`)).toEqual({ dangers: ["fumes"], soft: [] });
    expect(alone(`${MON}12:00`)).toEqual({ dangers: [], soft: ["Top"] });
    // 240 h after Monday 8 March 10:00 are Thursday 18 March 10:00.
    expect(alone("2027-03-18T09:59").soft).toEqual(["Top"]);
    expect(alone("2027-03-18T10:00").soft).toEqual([]);
    expect(soft({ ...last, isCured: true }, `${MON}12:00`)).toEqual([]);
  });

  test("of which nobody knows the end leaves its fumes until the next step there is done, for a day at most", () => {
    const steps = [step("dewax", { dangers: ["fumes"] }), step("strip", {})];
    const at = (now: string, times: Readonly<Record<string, string>>) =>
      hazardsAt(orderOf(steps), ticks(times), now).dangers;
    expect(at(`${MON}10:00`, { dewax: `${MON}09:00` })).toEqual(["fumes"]);
    expect(at(`${MON}10:00`, { dewax: `${MON}09:00`, strip: `${MON}09:30` })).toEqual([]);
    expect(at(`${TUE}09:00`, { dewax: `${MON}09:00` })).toEqual([]);
  });
});

describe("a stripper", () => {
  const strip = (leaveH?: number): readonly PageStep[] => [
    step("strip", { isLeftOn: true, leaveH, dangers: ["fumes"], start: `${MON}09:45`, end: `${MON}10:45` }),
    step("scuff", { surfaces: ["Base"], start: `${MON}09:50`, end: `${MON}10:00` }),
    step("wash", { start: `${MON}10:45` }),
  ];

  test("that is laid on gives way to other work until it is to come off, which then goes before all", () => {
    // 20 min from 09:55 on are 10:15.
    const laid = { "strip laid": `${MON}09:55` };
    expect(nowOf(strip(1 / 3), {}, `${MON}09:45`)).toMatchObject({ current: "strip" });
    expect(nowOf(strip(1 / 3), laid, `${MON}09:55`)).toEqual({
      is: "now",
      current: "scuff",
      due: `${MON}09:50`,
      next: `strip ${MON}10:15 off`,
    });
    expect(nowOf(strip(1 / 3), { ...laid, scuff: `${MON}10:05` }, `${MON}10:05`)).toMatchObject({
      is: "wait",
      current: "strip",
      due: `${MON}10:15`,
    });
    expect(nowOf(strip(1 / 3), laid, `${MON}10:15`)).toMatchObject({ is: "now", current: "strip" });
    const [running] = waitsRunning(orderOf(strip(1 / 3)), ticks(laid), `${MON}10:00`);
    expect(running).toMatchObject({ on: "Top", free: `${MON}10:15` });
    expect(hazardsAt(orderOf(strip(1 / 3)), ticks(laid), `${MON}10:00`).dangers).toEqual(["fumes"]);
  });

  test("of which the label alone knows the time stays in hand until it is taken off", () => {
    const laid = { "strip laid": `${MON}09:55` };
    expect(nowOf(strip(), laid, `${MON}10:00`)).toMatchObject({ is: "now", current: "strip" });
    expect(startOf(orderOf(strip()), strip()[0]!, ticks(laid))).toMatchObject({ why: "label" });
    expect(waitsRunning(orderOf(strip()), ticks(laid), `${MON}10:00`)).toMatchObject([
      { on: "Top", free: "" },
    ]);
    // Taken off: what was laid on is over.
    const off = { ...laid, strip: `${MON}10:30`, scuff: `${MON}10:20` };
    expect(nowOf(strip(), off, `${MON}10:45`)).toMatchObject({ is: "now", current: "wash" });
    expect(waitsRunning(orderOf(strip()), ticks(off), `${MON}10:31`)).toEqual([]);
  });
});
