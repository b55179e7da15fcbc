/** What would let a job end earlier, worked by hand. Monday is 8 March 2027. */
import { expect, test } from "vitest";
import { createChecker } from "../../server/src/core/check.ts";
import { whatHelps } from "../../server/src/core/what-helps.ts";
import { helpText, isLate, mayBeHelped } from "../../server/src/views/schedule/helps.ts";
import { analyse } from "../harness/check-text.ts";
import { sampleNames, sampleText } from "../harness/samples.ts";

const textOf = (
  work: string,
  { air = "", count = 1, materials = "", ready = "" } = {},
): string => `${materials}
piece board {
  surface face {
    shape area 2 m2
    wood  beech
  }
}
shop mill {
${air}  hours Mon to Fri 09:00 to 17:00
}
recipe work {
${work}
}
job it {
  piece board x ${count}
  in    mill
  start 2027-03-08 09:00
${ready}  apply work to face
}
`;

const helpsOf = (...parts: Parameters<typeof textOf>) => {
  const analysis = analyse({ "test.finish": textOf(...parts) });
  const result = analysis.jobs("test.finish")[0]!;
  return whatHelps(analysis.program, analysis.alone(result)).map(({ result: _, ...help }) => help);
};

const material = (name: string, recoat: string): string => `material ${name} {
  family waterborne acrylic
  covers 10 m2/L
  recoat ${recoat}
  cure   7 days
  rated  21 C, 50 % RH
}
`;

test("an hour more on the one day on which it is missing", () => {
  // Eight hours fill Monday; the last one is done on Tuesday by 10:00, or with the hour on Monday by 18:00.
  expect(helpsOf("  step clean with soap, takes 8 h\n  step dust, takes 1 h")).toEqual([
    { change: { kind: "hour", weekday: 1 }, lastWorkH: 16, fullUseH: 16 },
  ]);
});

test("one more pair of hands where pieces wait for each other", () => {
  // Six hours for each of two: the second on Tuesday until 15:00, or with two people both on Monday until 15:00.
  expect(helpsOf("  step dust, takes 6 h", { count: 2 })).toEqual([
    { change: { kind: "hands", crew: 2 }, lastWorkH: 24, fullUseH: 24 },
  ]);
});

test("another material of the family and the stock that may be recoated sooner", () => {
  // 09:00 to 09:30, then after 6 h 15:30 to 16:00, or after 1 h 10:30 to 11:00.
  const materials = material("slow", "6 h") + material("quick", "1 h");
  const work = "  layer slow x 2, takes 30 min {\n    wait until recoat\n  }";
  const analysis = analyse({ "test.finish": textOf(work, { materials }) });
  const [first, ...others] = whatHelps(analysis.program, analysis.alone(analysis.jobs("test.finish")[0]!));
  expect(first).toMatchObject({ change: { kind: "material" }, lastWorkH: 5, fullUseH: 5 });
  expect(helpText(first!)).toBe("`quick` in place of `slow`: last work 5 h earlier, full use 5 h earlier");
  expect(others).toEqual([]);
});

test("air that is 3 C warmer: at 21 C, that of the label, the cure takes its seven days", () => {
  const analysis = analyse({
    "test.finish": textOf("  layer clear, takes 30 min", {
      air: "  air 18 C, 50 % RH\n",
      materials: material("clear", "2 h"),
    }),
  });
  const [help, ...others] = whatHelps(analysis.program, analysis.alone(analysis.jobs("test.finish")[0]!));
  expect(help?.change).toEqual({ kind: "warmer", temperature: 21 });
  expect(help?.result.totals.full_use).toBe("2027-03-15T09:30:00");
  expect(help?.lastWorkH).toBe(0);
  expect(others).toEqual([]);
});

test("a start on the next day, where a recoat window would have to span a weekend", () => {
  // From Friday the second coat would be due on Saturday, so both wait: Monday 09:00 and Tuesday 09:00 to 09:30 whichever
  // day the job begins.
  const text = textOf("  layer clear x 2, takes 30 min {\n    wait until recoat\n  }", {
    materials: material("clear", "20 h to 30 h"),
  }).replace("start 2027-03-08", "start 2027-03-12");
  const analysis = analyse({ "test.finish": text });
  const result = analysis.jobs("test.finish")[0]!;
  expect(result.totals.last_work).toBe("2027-03-16T09:30:00");
  const helps = whatHelps(analysis.program, analysis.alone(result)).map(({ result: _, ...help }) => help);
  expect(helps).toEqual([{ change: { kind: "later start", date: "2027-03-13" }, lastWorkH: 0, fullUseH: 0 }]);
});

test("nothing helps what is done by one person in one morning", () => {
  expect(helpsOf("  step dust, takes 1 h")).toEqual([]);
});

test("a job is late where its last wait ends after the day that it is wanted", () => {
  const late = (ready: string) =>
    isLate(analyse({ "test.finish": textOf("  step dust, takes 9 h", { ready }) }).jobs("test.finish")[0]!);
  expect(late("  ready 2027-03-08\n")).toBe(true);
  expect(late("  ready 2027-03-09\n")).toBe(false);
  expect(late("")).toBe(false);
});

test("what would help a late job costs no more than a few of its plans", () => {
  // Eight changes, each planned with an eighth of the search; whole plans would cost eight times as much as one.
  const chairs = sampleText("chairs.finish")
    .replace(/(?<=ready +)\S+/u, "2027-03-16")
    .replace(/^ +apply .*$/mu, (line) => `${line}\n${line}`);
  const samples = Object.fromEntries(sampleNames.map((name) => [name, sampleText(name)]));
  const { program, jobs } = analyse({ ...samples, "chairs.finish": chairs });
  const { job } = jobs("chairs.finish")[0]!;
  const plan = cpuOf(() => createChecker(program).alone(job));
  const helps = cpuOf(() => whatHelps(program, plan.value));
  expect(helps.value.map(({ change }) => change.kind)).toContain("warmer");
  expect(helps.seconds).toBeLessThan(4 * plan.seconds);
});

/** What a call gives, and the seconds of the processor that it takes. */
function cpuOf<T>(call: () => T): { readonly value: T; readonly seconds: number } {
  const start = process.cpuUsage();
  const value = call();
  const { user, system } = process.cpuUsage(start);
  return { value, seconds: (user + system) / 1e6 };
}

test("nothing helps what is over, and what has begun begins no later", () => {
  const recorded = (lines: string) => {
    const text = textOf("  step clean with soap, takes 8 h\n  step dust, takes 1 h").replace(
      "to face\n}",
      `to face\n${lines}}`,
    );
    const analysis = analyse({ "test.finish": text });
    const result = analysis.jobs("test.finish")[0]!;
    const kinds = whatHelps(analysis.program, analysis.alone(result)).map(({ change }) => change.kind);
    return { mayBe: mayBeHelped(result), kinds };
  };
  const cleaned = "  done 2027-03-08 17:00 clean\n";
  expect(recorded("")).toMatchObject({ mayBe: true });
  const begun = recorded(cleaned);
  expect(begun.mayBe).toBe(true);
  expect(begun.kinds).not.toContain("later start");
  expect(recorded(`${cleaned}  done 2027-03-09 10:00 dust\n`).mayBe).toBe(false);
});
