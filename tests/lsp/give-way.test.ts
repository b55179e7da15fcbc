/** The thread that plans comes after the one that answers, where threads have priorities. */
import { once } from "node:events";
import { readdirSync } from "node:fs";
import os from "node:os";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { expect, test } from "vitest";
import { planInThread } from "../../server/src/entry/plan-thread.ts";

const path = (relative: string): string => fileURLToPath(new URL(relative, import.meta.url));

/** What a thread tells that runs this code; it has ended then. */
async function toldBy(code: string): Promise<unknown> {
  const worker = new Worker(code, { eval: true });
  const [told] = await once(worker, "message");
  await worker.terminate();
  return told;
}

const NICE = `
  const { readlinkSync } = require("node:fs");
  const { getPriority } = require("node:os");
  const { parentPort } = require("node:worker_threads");
  const nice = () => getPriority(Number(readlinkSync("/proc/thread-self").split("/").at(-1)));
  const before = nice();
  import(FILE).then((module) => {
    module.giveWay?.();
    parentPort.postMessage(nice() - before);
  });
`;

test.runIf(process.platform === "linux")("a thread that gives way comes after the others", async () => {
  const before = os.getPriority();
  expect(await toldBy(NICE.replace("FILE", JSON.stringify(path("../../server/src/entry/give-way.ts"))))).toBe(
    10,
  );
  expect(os.getPriority()).toBe(before);
});

test.runIf(process.platform === "linux")("the thread that plans gives way", async () => {
  const before = lowered();
  const maker = planInThread(path("../../server/dist/planning.cjs"));
  await maker.make({ chains: [] });
  expect(lowered()).toBe(before + 1);
  maker.abandon?.();
});

/** How many threads of this process come after others. */
const lowered = (): number =>
  readdirSync("/proc/self/task").filter((thread) => os.getPriority(Number(thread)) > os.getPriority()).length;
