/** What the memory keeps of an earlier program: what still holds, and nothing else of it. */
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { expect, test } from "vitest";
import { parseFile } from "../../../grammar/src/parse.ts";
import { type Checker, createChecker, createCheckMemory } from "../../../server/src/core/check.ts";
import { type Program, type ProgramFile, programFile } from "../../../server/src/core/model/program.ts";

const FILE = "a.finish";

const textOf = (grit: number): string => `shop mill {
  air   20 C, 50 % RH
  room  90 m3, 2 air changes/h
  hours Mon to Fri 09:00 to 17:00
}

recipe other {
  step sand ${grit}
}

recipe varnished {
  layer oil_varnish
  wait until cured
}

piece table {
  surface top {
    shape area 2 m2
    wood  beech
  }
}

piece bench {
  surface top {
    shape area 2 m2
    wood  beech
    existing as left by second
  }
}

job first {
  piece table
  in    mill
  start 2027-03-08
  apply varnished to top
}

job second {
  piece table
  in    mill
  after first
  apply varnished to top
}

job third {
  piece bench
  in    mill
  apply varnished to top
}
`;

const read = (grit: number, previous?: ProgramFile): ProgramFile =>
  programFile(FILE, parseFile(textOf(grit), previous?.tree), (_, path) => path, previous);

const programOf = (file: ProgramFile): Program => ({ files: new Map([[FILE, file]]), absent: new Map() });

const resultsOf = (checker: Checker) => {
  checker.findings(FILE);
  return checker.jobs(FILE);
};

test("results of jobs that an edit leaves alone are the same objects", () => {
  const memory = createCheckMemory();
  const file = read(120);
  const before = resultsOf(createChecker(programOf(file), { memory }));
  const after = resultsOf(createChecker(programOf(read(150, file)), { memory }));
  expect(before.map(({ job }) => job.name)).toEqual(["first", "second", "third"]);
  expect(after.every((result, index) => result === before[index])).toBe(true);
});

test("a program that a newer one has followed is not held", async () => {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  const memory = createCheckMemory();
  let file = read(120);
  const older = (() => {
    const program = programOf(file);
    resultsOf(createChecker(program, { memory }));
    return new WeakRef(program);
  })();
  file = read(150, file);
  const newer = createChecker(programOf(file), { memory });
  const results = resultsOf(newer);
  await new Promise((resolve) => {
    setImmediate(resolve);
  });
  collect();
  expect(older.deref()).toBeUndefined();
  expect(results).toHaveLength(3);
});

/** How often each kind of work is recalled for the steps and the findings, of the text and then after an edit of `other`. */
function asked(): readonly ReadonlyMap<string, number>[] {
  const memory = createCheckMemory();
  let counts = new Map<string, number>();
  const counting: typeof memory = {
    open: (program, view) => {
      const remembered = memory.open(program, view);
      const recall: typeof remembered.recall = (query, owner, ...rest) => {
        counts.set(query, (counts.get(query) ?? 0) + 1);
        return remembered.recall(query, owner, ...rest);
      };
      return { ...remembered, recall };
    },
  };
  const file = read(120);
  return [file, read(150, file)].map((each) => {
    counts = new Map();
    const checker = createChecker(programOf(each), { memory: counting });
    for (const _ of checker.steps(FILE));
    checker.findings(FILE);
    return counts;
  });
}

const ofKinds = (counts: ReadonlyMap<string, number>): Readonly<Record<string, number | undefined>> =>
  Object.fromEntries(["names", "assumed run", "runs", "facts"].map((kind) => [kind, counts.get(kind)]));

test("every declaration is asked once for each kind of work, by the steps and the findings together", () => {
  // One shop, two recipes, two pieces and three jobs.
  expect(ofKinds(asked()[0]!)).toEqual({ names: 8, "assumed run": 2, runs: 3, facts: 3 });
});

test("after an edit nothing is asked of declarations that surely mean what they meant", () => {
  // The recipe that was edited; `second` comes after another job, and `third` starts from what that leaves.
  expect(ofKinds(asked()[1]!)).toEqual({ names: 1, "assumed run": 1, runs: 2, facts: 1 });
});
