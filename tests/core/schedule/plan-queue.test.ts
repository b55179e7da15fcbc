/** Plans that are made later: what is wanted, in which order, and what is given up. */
import { expect, test } from "vitest";
import { BEING_PLANNED } from "../../../server/src/core/schedule/being-planned.ts";
import { PlanQueue, type PlanRequest } from "../../../server/src/core/schedule/plan-queue.ts";
import { schedule } from "../../../server/src/core/schedule/schedule.ts";
import type { ScheduleInput } from "../../../server/src/core/schedule/types.ts";

/** One task of so many hours. */
const task = (hours: number): ScheduleInput => ({
  chains: [{ key: "top", items: [{ kind: "hands", id: "sand", hours, nonPreemptive: false }] }],
});
const job = (declaration: string, file = "a.finish") => ({ file, declaration });

function queueOf(most = 10) {
  const asked: PlanRequest[] = [];
  const queue = new PlanQueue(most, (request) => asked.push(request));
  const make = (request = queue.next()): number => {
    const plan = schedule(request!.input);
    queue.done(request!, { plan });
    return plan.elapsedHours;
  };
  return { queue, asked, make };
}

test("a plan is being made until it is there, and then is one and the same object", () => {
  const { queue, asked, make } = queueOf();
  const input = task(3);
  expect(queue.plan(input, job("first"))).toBe(BEING_PLANNED);
  expect(queue.plan(input, job("first"))).toBe(BEING_PLANNED);
  expect(asked).toHaveLength(1); // asked twice, wanted once
  make();
  expect(queue.plan(input, job("first")).elapsedHours).toBe(3);
  expect(queue.plan(task(3), job("second"))).toBe(queue.plan(input, job("first")));
  expect(queue.isWaiting()).toBe(false);
});

test("an edit gives up what its job asked before, and leaves the others alone", () => {
  const { queue, make } = queueOf();
  queue.plan(task(1), job("first"));
  queue.plan(task(2), job("second"));
  const stale = queue.next()!;
  queue.plan(task(5), job("first"));
  expect(queue.isWanted(stale)).toBe(false);
  expect([make(), make()]).toEqual([5, 2]);
  expect(queue.next()).toBeUndefined();
});

test("what was given up and is finished all the same is kept for when the edit is undone", () => {
  const { queue } = queueOf();
  queue.plan(task(1), job("first"));
  const stale = queue.next()!;
  queue.plan(task(5), job("first"));
  queue.done(stale, { plan: schedule(stale.input) });
  expect(queue.next()!.input).toEqual(task(5)); // still wanted
  expect(queue.plan(task(1), job("first")).elapsedHours).toBe(1);
  expect(queue.next()).toBeUndefined(); // the job is as it was, so that the other is not wanted any more
});

test("the jobs of the file that is looked at come first", () => {
  const { queue, make } = queueOf();
  queue.plan(task(1), job("first", "a.finish"));
  queue.plan(task(2), job("first", "b.finish"));
  queue.plan(task(3), job("second", "b.finish"));
  expect(queue.isWaiting("b.finish")).toBe(true);
  expect([make(queue.next("b.finish")), make(queue.next("b.finish")), make(queue.next("b.finish"))]).toEqual([
    2, 3, 1,
  ]);
  expect(queue.isWaiting("b.finish")).toBe(false);
});

test("nothing is made for a file that was closed", () => {
  const { queue } = queueOf();
  queue.plan(task(1), job("first"));
  queue.forget("a.finish");
  expect(queue.next()).toBeUndefined();
});

test("plans outlive the limit for as long as their inputs are there", () => {
  const { queue, asked, make } = queueOf(2);
  const inputs = [1, 2, 3, 4].map(task);
  inputs.forEach((input, index) => {
    queue.plan(input, job(`job_${index}`));
    make();
  });
  const plans = inputs.map((input, index) => queue.plan(input, job(`job_${index}`)).elapsedHours);
  expect(plans).toEqual([1, 2, 3, 4]);
  queue.plan(task(1), job("another")); // an equal input, but the oldest was forgotten
  expect(asked).toHaveLength(5);
});

test("what the planner throws is thrown to whoever asks, and not tried again", () => {
  const { queue } = queueOf();
  const input = task(1);
  queue.plan(input, job("first"));
  queue.done(queue.next()!, { error: new Error("on purpose") });
  expect(() => queue.plan(input, job("first"))).toThrow("on purpose");
  expect(queue.next()).toBeUndefined();
});
