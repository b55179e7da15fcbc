/**
 * Thousands of random shops planned and held to every rule: `npm run plans -- --count 2000 --seed 1`; of the small ones
 * among them, `--small 300`, it is tried whether any plan at all ends its work earlier.
 *
 * Prints how many were planned, in how many the room's air held sessions up, how many plans were proven best and how far
 * the others may be from it; the exit status is 1 if a plan breaks a rule, and then its input is printed.
 */
import process from "node:process";
import { parseArgs } from "node:util";
import fc from "fast-check";
import { planSessions } from "../../../server/src/core/schedule/sessions/plan-sessions.ts";
import { minuteOf } from "./open-hours.ts";
import {
  manyJobs,
  randomShop,
  randomShopOfJobs,
  tinyShop,
  withBatches,
  withDust,
  withVapour,
} from "./random-shops.ts";
import { canWorkEndBy } from "./session-brute-force.ts";
import { sessionWrongsOf } from "./session-verifier.ts";

const { values } = parseArgs({
  options: {
    count: { type: "string", default: "2000" },
    seed: { type: "string", default: "1" },
    small: { type: "string", default: "300" },
  },
});
const count = Number(values.count);
const seed = Number(values.seed);

const share = fc.double({ min: 0.02, max: 0.4, noNaN: true });
const nth = fc.integer({ min: 1, max: 3 });
const batches = fc.array(fc.constantFrom("together" as const, "apart" as const), {
  minLength: 1,
  maxLength: 3,
});
const wet = fc.constantFrom(0.5, 1, 3, 8);
const anyShop = fc.oneof(
  randomShop(16),
  randomShopOfJobs(12),
  // More than are searched together, one shop in twenty, as each costs as much as twenty others.
  fc
    .tuple(randomShopOfJobs(6), fc.integer({ min: 0, max: 4 }))
    .map(([shop, of]) => (of === 0 ? manyJobs(shop) : shop)),
  fc.tuple(randomShop(12), nth, batches).map(([shop, every, of]) => withBatches(shop, every, of)),
  fc.tuple(randomShopOfJobs(12), nth, batches).map(([shop, every, of]) => withBatches(shop, every, of)),
  fc.tuple(randomShop(12), wet).map(([shop, hours]) => withDust(shop, hours)),
  fc.tuple(randomShopOfJobs(12), wet).map(([shop, hours]) => withDust(shop, hours)),
  fc
    .tuple(randomShopOfJobs(8), nth, batches, share, wet)
    .map(([shop, every, of, shift, hours]) =>
      withVapour(withBatches(withDust(shop, hours), every, of), shift, shift),
    ),
  fc.tuple(randomShop(8), share, share).map(([shop, shift, short]) => withVapour(shop, shift, short)),
  fc.tuple(randomShopOfJobs(5), share, share).map(([shop, shift, short]) => withVapour(shop, shift, short)),
);

let [planned, held, exact, wrong, batched, impossible, apart, dusted] = [0, 0, 0, 0, 0, 0, 0, 0];
const gaps: number[] = [];
const began = process.cpuUsage();
for (const input of fc.sample(anyShop, { numRuns: count, seed })) {
  const result = planSessions(input);
  if (result === undefined) continue;
  if (result.status !== "planned") {
    impossible++;
    continue;
  }
  planned++;
  if (
    input.chains.some(({ items }) =>
      items.some((item) => "session" in item && item.session?.batch !== undefined),
    )
  )
    batched++;
  if (result.heldByAir !== undefined) held++;
  if (result.dust?.meetings.length === 0) apart++;
  else if (result.dust !== undefined) dusted++;
  if (result.exact) exact++;
  else gaps.push(result.gap);
  const wrongs = sessionWrongsOf(input, result);
  if (wrongs.length === 0) continue;
  wrong++;
  process.stdout.write(`${JSON.stringify(input)}\n${wrongs.slice(0, 5).join("\n")}\n`);
}
const { user, system } = process.cpuUsage(began);
const middle = gaps.sort((a, b) => a - b)[gaps.length >> 1] ?? 0;
process.stdout.write(
  `${count} shops (seed ${seed}): ${planned} planned in sessions, ${batched} of them with work together or apart, ${impossible} in which ` +
    `what is to be done together cannot be, ${count - planned - impossible} left to the planner of single tasks, ${held} held up by the room's air, ${apart} later so that no dust falls on wet coats and ${dusted} in which it does, ${exact} proven best, of the others half within ${(middle * 100).toFixed(1)} %; ` +
    `${wrong} with a rule broken; ${((user + system) / 1e6 / count).toFixed(2)} s of processor time each\n`,
);

let [small, bettered, refuted] = [0, 0, 0];
for (const input of fc.sample(tinyShop, { numRuns: Number(values.small), seed })) {
  const result = planSessions(input);
  const isPlanned = result?.status === "planned";
  const last = isPlanned ? minuteOf(result.lastWorkAt!) : minuteOf(input.start!) + 14 * 1440;
  small++;
  if (!canWorkEndBy(input, isPlanned ? Math.ceil(last / 30 - 1) * 30 : last)) continue;
  bettered++;
  if (!isPlanned || result.exact) refuted++;
  process.stdout.write(`Bettered: ${JSON.stringify(input)}\n`);
}
process.stdout.write(
  `${small} small shops beside every plan there is: ${bettered} have an earlier one, ${refuted} although proven or said to have none\n`,
);
process.exitCode = wrong + refuted > 0 ? 1 : 0;
