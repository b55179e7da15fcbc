/** Slack is reckoned in proportion to the tasks, however many hands there are. Nothing is timed: looks are counted. */
import { expect, test } from "vitest";
import { timeAlone } from "../../../server/src/core/schedule/bounds/chain-bounds.ts";
import { floatOf } from "../../../server/src/core/schedule/float.ts";
import { makeProblem } from "../../../server/src/core/schedule/problem.ts";

/** As many chains of one task each, without a shop: all at once, the first 1 h long, the others 30 min. */
function looksFor(count: number): { readonly looks: number; readonly slackHours: readonly number[] } {
  const problem = makeProblem({
    chains: Array.from({ length: count }, (_, i) => ({
      key: `${i}`,
      items: [{ kind: "hands", id: `${i}`, hours: i === 0 ? 1 : 0.5, nonPreemptive: true }],
    })),
  })!;
  const settled = problem.chains.map((chain) => {
    const times = timeAlone(problem, chain);
    if (typeof times === "number") throw new Error("There is no shop that could be closed.");
    return times;
  });
  const finish = Math.max(...settled.map(({ ends }) => ends[0]!));
  let looks = 0;
  const times = new Proxy(settled, {
    get: (target, key, receiver): unknown => {
      looks += 1;
      return Reflect.get(target, key, receiver);
    },
  });
  const { slack } = floatOf(problem, { times, finish });
  return { looks, slackHours: slack.map(([ms]) => ms! / 3_600_000) };
}

test("ten times the pieces are ten times the work where everybody is at hand", () => {
  const few = looksFor(100);
  const many = looksFor(1000);
  expect(few.slackHours).toEqual([0, ...Array.from({ length: 99 }, () => 0.5)]);
  expect(many.slackHours).toHaveLength(1000);
  expect(many.looks).toBeLessThanOrEqual(10 * few.looks);
});
