/** The three answers of the page of a sheet in every state. Times are worked by hand; 2027-03-08 is a Monday. */
import { describe, expect, test } from "vitest";
import {
  orderOf,
  type PageStep,
  type Ticked,
  withLabel,
} from "../../server/src/reports/sheet-page/bench-now.ts";
import { type LiveTexts, liveTexts } from "../../server/src/reports/sheet-page/live-texts.ts";
import type { Opening } from "../../server/src/reports/sheet-page/opening.ts";

const MON = "2027-03-08T";
const TUE = "2027-03-09T";

const step = (title: string, of: Partial<PageStep> = {}): PageStep => ({
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

/** By title, and by title and piece where pieces differ. */
const ticks =
  (times: Readonly<Record<string, string>>): Ticked =>
  ({ title }, piece) =>
    times[`${title} ${piece}`] ?? times[title];

/** Times are held together by spaces that do not break. */
const plain = <T>(value: T): T => JSON.parse(JSON.stringify(value).replaceAll("\u00a0", " ")) as T;

const saidOf = (
  steps: readonly PageStep[],
  times: Readonly<Record<string, string>>,
  now: string,
  opening?: Opening,
): LiveTexts => plain(liveTexts(orderOf(steps, opening), ticks(times), now));

const COATS = [
  step("sand", { wear: ["dust mask"], start: `${MON}09:00`, end: `${MON}09:20` }),
  step("coat 1", {
    isCoat: true,
    waitH: 2,
    latestH: 24,
    dangers: ["fumes", "oily rags"],
    wear: ["gloves"],
    use: "Use 66 mL, by brush.",
    start: `${MON}09:20`,
    end: `${MON}09:40`,
  }),
  step("coat 2", {
    isCoat: true,
    waitH: 2,
    checks: [{ order: "Sand lightly.", why: "Fibres harden." }],
    start: `${MON}11:40`,
    end: `${MON}12:00`,
  }),
];

describe("what to do now, when the wait ends and what may go wrong are answered", () => {
  test("in a step without a wait", () => {
    expect(saidOf(COATS, {}, `${MON}09:00`)).toMatchObject({
      is: "now",
      what: "sand",
      more: ["Top", "Wear: dust mask."],
      waits: [["No wait after this step: go on as soon as it is done.", ""]],
      risks: [["Dust: don’t breathe it, keep the mask on", ""]],
      next: { title: "Next, right after this", what: "coat 1", more: ["Top"] },
      button: "Done",
    });
  });

  test("in a coat that begins a wait", () => {
    expect(saidOf(COATS, { sand: `${MON}09:20` }, `${MON}09:40`)).toMatchObject({
      what: "coat 1",
      more: ["Top", "Wear: gloves.", "Use 66 mL, by brush."],
      waits: [["Until 11:40, if it is done now", "Once this is done, don’t touch it for 2 h."]],
      risks: [
        ["Fumes: keep the air moving", ""],
        ["Oily rags catch fire: in water in the closed metal can", ""],
      ],
    });
  });

  test("a danger that is new weighs more than those that stand since earlier, and all are named", () => {
    const steps = [
      step("dewax", { dangers: ["fumes", "solvent rags"], start: `${MON}09:00`, end: `${MON}09:20` }),
      step("stain", { dangers: ["fumes", "fire"], start: `${MON}09:20`, end: `${MON}09:40` }),
    ];
    const said = saidOf(steps, { dewax: `${MON}09:20` }, `${MON}09:25`);
    // The fire comes with the stain; fumes and rags are there since the dewaxing.
    expect(said.risks).toEqual([
      ["Fire: no flame or spark in the room", ""],
      ["Fumes: keep the air moving", ""],
      ["Solvent rags catch fire: into the closed metal can", ""],
    ]);
    expect(said.newRisks).toBe(1);
    // At the first step both are new.
    expect(saidOf(steps, {}, `${MON}09:00`).newRisks).toBe(2);
    // When nothing is new, the first of what stands is not made small.
    const all = { dewax: `${MON}09:20`, stain: `${MON}09:40` };
    expect(saidOf(steps, all, `${MON}10:00`).newRisks).toBe(1);
  });

  test("in a wait, with what is to be done before the next coat and how late it may be", () => {
    const said = saidOf(COATS, { sand: `${MON}09:20`, "coat 1": `${MON}09:40` }, `${MON}10:00`);
    expect(said).toMatchObject({
      is: "wait",
      what: "Nothing to do until 11:40",
      more: ["1 h 40 min left. You may go; leave the air moving."],
      first: [],
      waits: [
        [
          "Until 11:40, 1 h 40 min left",
          "Top: it dries, don’t touch it. Next coat by Tue 9 Mar 09:40, or sand it dull first.",
        ],
      ],
      risksTitle: "What may go wrong meanwhile",
      next: { title: "Next, at 11:40", what: "coat 2", first: ["First: Sand lightly."] },
      isEarly: true,
    });
    expect(said.risks.slice(-2)).toEqual([
      ["Oily rags catch fire: in water in the closed metal can", ""],
      ["Fibres harden.", ""],
    ]);
  });

  test("in a coat that comes too late", () => {
    const late = saidOf(COATS, { sand: `${MON}09:20`, "coat 1": `${MON}09:40` }, `${TUE}09:41`);
    expect(late.first).toEqual(["First: Sand lightly."]);
    expect(late.risks).toContainEqual(["Too late for the next coat since 09:40: sand it dull first", ""]);
  });

  test("when all is done, with the wait that is left", () => {
    const all = { sand: `${MON}09:20`, "coat 1": `${MON}09:40`, "coat 2": `${MON}11:40` };
    expect(saidOf(COATS, all, `${MON}12:00`)).toMatchObject({
      is: "done",
      what: "All steps are ticked",
      waits: [["Until 13:40, 1 h 40 min left", "Top: it dries, don’t touch it."]],
      risks: [["Oily rags catch fire: in water in the closed metal can", ""]],
    });
  });
});

describe("a stripper whose label alone knows its time", () => {
  const STRIP = step("strip", {
    isLeftOn: true,
    wear: ["respirator", "gloves"],
    dangers: ["fumes"],
    start: `${MON}09:45`,
    end: `${MON}10:45`,
  });
  const SCUFF = step("scuff", {
    surfaces: ["Base"],
    wear: ["dust mask"],
    start: `${MON}09:50`,
    end: `${MON}10:00`,
  });
  const WASH = step("wash", { start: `${MON}10:45` });
  const laid = { "strip laid": `${MON}10:10` };

  test("is laid on, and its label is asked for", () => {
    const said = saidOf([STRIP, SCUFF, WASH], {}, `${MON}09:45`);
    expect(said).toMatchObject({
      what: "Lay the stripper on",
      more: ["strip", "Top", "Wear: respirator, gloves."],
    });
    expect(said.waits[0]![0]).toBe("When its label time is up");
    expect(said.asks?.title).toBe("strip");
    expect(said.next).toMatchObject({
      title: "Next, when its label time is up",
      what: "Take the stripper off",
    });
  });

  test("keeps somebody there until it is read", () => {
    const said = saidOf([STRIP, SCUFF, WASH], laid, `${MON}10:10`);
    expect(said).toMatchObject({
      what: "Stay here: the stripper acts, don’t touch it",
      waits: [
        [
          "When its label time is up",
          "Top: the stripper acts since 10:10. Don’t touch it before, then take it off at once.",
        ],
      ],
      next: { title: "Next, once it is off", what: "scuff" },
      button: "Taken off",
    });
  });

  test("lets other work be done until it is over, behind a respirator, and then goes before all", () => {
    const read = [withLabel(STRIP, 0.5), SCUFF, WASH];
    const meanwhile = saidOf(read, laid, `${MON}10:10`);
    expect(meanwhile).toMatchObject({
      what: "scuff",
      more: ["Base", "Wear: respirator (vapour and dust)."],
      waits: [
        ["Take the stripper off at 10:40, 30 min left", "Top: the stripper acts. Don’t touch it before."],
      ],
      next: { title: "Next, from 10:40", what: "Take the stripper off" },
    });
    expect(meanwhile.risks).toContainEqual(["Stripper’s vapour in the room: keep the respirator on", ""]);
    expect(meanwhile.asks?.labelH).toBe(0.5);
    expect(saidOf(read, { ...laid, scuff: `${MON}10:20` }, `${MON}10:20`)).toMatchObject({
      is: "wait",
      what: "Leave the stripper on until 10:40",
      more: ["20 min left. Stay near."],
    });
    expect(saidOf(read, laid, `${MON}10:41`)).toMatchObject({
      what: "Take the stripper off",
      waits: [["Over since 10:40", "The stripper’s time is up: take it off at once."]],
    });
  });
});

test("what needs no drying goes on as soon as what goes before it is done, on the day on which it is planned", () => {
  const strip = step("strip", { isLeftOn: true, start: `${MON}09:45`, end: `${MON}12:05` });
  const wash = step("wash", { start: `${MON}12:05`, end: `${MON}12:25` });
  const off = { "strip laid": `${MON}10:10`, strip: `${MON}10:25` };
  const said = saidOf([strip, wash], off, `${MON}10:25`);
  expect(said).toMatchObject({ is: "now", what: "wash" });
  // Its label has been kept to.
  expect(said.asks).toBeUndefined();
  // The day before nobody is sent there.
  const tomorrow = { ...wash, start: `${TUE}09:00`, end: `${TUE}09:20` };
  expect(saidOf([strip, tomorrow], off, `${MON}10:25`).what).toBe("Nothing to do until Tue 9 Mar 09:00");
});

test("a coat whose label alone knows how long it dries waits until somebody has read it", () => {
  const steps = (hours?: number) => [
    withLabel(step("coat 1", { isCoat: true, isUnknown: true }), hours),
    step("coat 2"),
  ];
  const done = { "coat 1": `${MON}09:30` };
  const unread = saidOf(steps(), done, `${MON}10:00`);
  expect(unread.what).toBe("Don’t touch it yet: read its label");
  expect(unread.waits[0]![0]).toBe("When its label time is up");
  expect(unread.asks?.title).toBe("coat 1");
  expect(saidOf(steps(2), done, `${MON}10:00`).what).toBe("Nothing to do until 11:30");
});

test("of two pieces the one that is done has its wait, whether or not the other is", () => {
  const said = saidOf(COATS, { sand: `${MON}09:20`, "coat 1 1": `${MON}09:30` }, `${MON}09:40`);
  expect(said.what).toBe("coat 1");
  expect(said.waits.at(-1)).toEqual([
    "Until 11:30, 1 h 50 min left",
    "Top, only piece 1: it dries, don’t touch it. Next coat by Tue 9 Mar 09:30, or sand it dull first.",
  ]);
  // What follows for that piece alone goes on when it is dry, and does not wait for the other.
  const apart = [
    ...COATS.slice(0, 2),
    step("coat 2 of 1", { pieces: ["1"] }),
    step("coat 2 of 2", { pieces: ["2"] }),
  ];
  const one = { sand: `${MON}09:20`, "coat 1 1": `${MON}09:30` };
  expect(saidOf(apart, one, `${MON}11:30`).step?.title).toBe("coat 1");
  expect(saidOf(apart, { ...one, "coat 1 2": `${MON}10:30` }, `${MON}11:30`).step?.title).toBe("coat 2 of 1");
});

test("nobody is sent to a shop that is closed", () => {
  // Monday to Friday 09:00 to 17:00, closed on Tuesday 9 March.
  const opening: Opening = {
    spans: [1, 2, 3, 4, 5].map((weekday) => ({ weekday, opens: "09:00", closes: "17:00" })),
    closed: [{ from: "2027-03-09", to: "2027-03-09" }],
  };
  const undated = COATS.map(({ start: _, end: __, ...each }) => each);
  // On at 15:30, dry at 17:30: the shop is closed then, and the day after.
  const done = { sand: `${MON}15:00`, "coat 1": `${MON}15:30` };
  expect(saidOf(undated, done, `${MON}16:00`, opening).what).toBe("Nothing to do until Wed 10 Mar 09:00");
  // The wait itself ends when it ends.
  expect(saidOf(undated, done, `${MON}16:00`, opening).waits[0]![0]).toBe("Until 17:30, 1 h 30 min left");
  expect(saidOf(undated, { sand: `${MON}15:20` }, `${MON}15:30`, opening).next?.title).toBe(
    "Next, from Wed 10 Mar 09:00",
  );
  // Half an hour earlier it is dry while it is open.
  expect(saidOf(undated, { ...done, "coat 1": `${MON}14:45` }, `${MON}15:00`, opening).what).toBe(
    "Nothing to do until 16:45",
  );
});
