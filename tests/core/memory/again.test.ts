/** Lists that are made again: which rows are worked out anew, and when the list is the same. */
import { expect, test } from "vitest";
import { again, drained, type Kept } from "../../../server/src/core/memory/again.ts";
import { valueIn } from "../../../server/src/core/outcome.ts";

const [A, B, C, D] = [{ is: "a" }, { is: "b" }, { is: "c" }, { is: "d" }];

/** The rows that are worked out, and what comes of all. */
function made(
  about: readonly object[],
  before?: Kept<object>,
  {
    beside = about.map(() => 0),
    mayKeep = (_: object): boolean => true,
    of = (it: object): object => ({ it }),
  } = {},
): { readonly kept: Kept<object>; readonly worked: readonly number[] } {
  const worked: number[] = [];
  const work = (row: number): object => {
    worked.push(row);
    return of(about[row]!);
  };
  return { kept: drained(again(before, [about, beside], work, mayKeep)), worked };
}

test("what is about the same is not worked out again, and the list is the same object", () => {
  const first = made([A, B, C]);
  expect(first.worked).toEqual([0, 1, 2]);
  const second = made([A, B, C], first.kept);
  expect(second.worked).toEqual([]);
  expect(second.kept.values).toBe(first.kept.values);
});

test("one row that differs in any column is worked out, and the others are as they were", () => {
  const first = made([A, B, C]);
  const { kept, worked } = made([A, B, C], first.kept, { beside: [0, 1, 0] });
  expect(worked).toEqual([1]);
  expect(kept.values.map((each, row) => each === first.kept.values[row])).toEqual([true, false, true]);
});

test("rows that moved are found, as one comes or goes before them", () => {
  const first = made([A, B, C]);
  const longer = made([A, D, B, C], first.kept);
  expect(longer.worked).toEqual([1]);
  expect(longer.kept.values.slice(2)).toEqual(first.kept.values.slice(1));
  expect(made([B, C], first.kept).worked).toEqual([]);
});

test("rows that changed places are worked out, each for what it is about", () => {
  const first = made([A, B, C]);
  const { kept } = made([C, B, A], first.kept);
  expect(kept.values.map(valueIn)).toEqual([{ it: C }, { it: B }, { it: A }]);
});

test("where the same comes of it, the list is the same although rows were worked out", () => {
  const same = { is: "same" };
  const first = made([A, B], undefined, { of: () => same });
  const second = made([A, C], first.kept, { of: () => same });
  expect(second.worked).toEqual([1]);
  expect(second.kept.values).toBe(first.kept.values);
});

test("what may not be kept, or threw, is worked out again", () => {
  const first = made([A, B, C], undefined, { mayKeep: (it: { readonly it?: object }) => it.it !== B });
  expect(made([A, B, C], first.kept).worked).toEqual([1]);
  expect(made([D, A, B, C], first.kept).worked).toEqual([0, 2]);
  const failing = made([A, B], undefined, {
    of: (it) => {
      if (it === A) throw new Error("a");
      return it;
    },
  });
  expect(() => valueIn(failing.kept.values[0]!)).toThrow("a");
  expect(made([A, B], failing.kept).worked).toEqual([0]);
});
