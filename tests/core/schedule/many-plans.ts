/**
 * Thousands of random shops planned and held to every rule: `npm run plans -- --count 2000 --seed 1`.
 *
 * Prints how many were planned, in how many the room's air held sessions up, how many plans were proven best and how far
 * the others may be from it; the exit status is 1 if a plan breaks a rule, and then its input is printed.
 */
import process from "node:process";
import { parseArgs } from "node:util";
import fc from "fast-check";
import { planSessions } from "../../../server/src/core/schedule/sessions/plan-sessions.ts";
import { manyJobs, randomShop, randomShopOfJobs, withVapour } from "./random-shops.ts";
import { sessionWrongsOf } from "./session-verifier.ts";

const { values } = parseArgs({
  options: { count: { type: "string", default: "2000" }, seed: { type: "string", default: "1" } },
});
const count = Number(values.count);
const seed = Number(values.seed);

const share = fc.double({ min: 0.02, max: 0.4, noNaN: true });
const anyShop = fc.oneof(
  randomShop(16),
  randomShopOfJobs(12),
  // More than are searched together, one shop in twenty, as each costs as much as twenty others.
  fc
    .tuple(randomShopOfJobs(6), fc.integer({ min: 0, max: 4 }))
    .map(([shop, of]) => (of === 0 ? manyJobs(shop) : shop)),
  fc.tuple(randomShop(8), share, share).map(([shop, shift, short]) => withVapour(shop, shift, short)),
  fc.tuple(randomShopOfJobs(5), share, share).map(([shop, shift, short]) => withVapour(shop, shift, short)),
);

let [planned, held, exact, wrong] = [0, 0, 0, 0];
const gaps: number[] = [];
const began = process.cpuUsage();
for (const input of fc.sample(anyShop, { numRuns: count, seed })) {
  const result = planSessions(input);
  if (result === undefined) continue;
  planned++;
  if (result.heldByAir !== undefined) held++;
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
  `${count} shops (seed ${seed}): ${planned} planned in sessions, ${count - planned} left to the planner of single tasks, ` +
    `${held} held up by the room's air, ${exact} proven best, of the others half within ${(middle * 100).toFixed(1)} %; ` +
    `${wrong} with a rule broken; ${((user + system) / 1e6 / count).toFixed(2)} s of processor time each\n`,
);
process.exitCode = wrong > 0 ? 1 : 0;
