/**
 * One attack in a process of its own, so that what does not come back can be stopped, and what runs out of memory takes
 * nobody with it. `run` sends one input and waits for what was found, under a watch on the processor's seconds.
 */
import { type ChildProcess, fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { Flaw } from "./flaws.ts";
import { cpuSecondsOf, firstMessage, watch } from "./processes.ts";

const MAIN = fileURLToPath(new URL("worker-main.ts", import.meta.url));
const MEGABYTES = 2048;

export class Worker {
  readonly #name: string;
  readonly #cpuSeconds: number;
  #child: ChildProcess | undefined;
  /** What the last input took of the processor. */
  lastSeconds = 0;

  constructor(name: string, cpuSeconds: number) {
    this.#name = name;
    this.#cpuSeconds = cpuSeconds;
  }

  async run(input: unknown): Promise<readonly Flaw[]> {
    const child = await this.#started();
    let answer: readonly Flaw[] | undefined;
    const settled = new Promise<void>((resolve) => {
      child.once("message", (flaws) => {
        answer = flaws as readonly Flaw[];
        resolve();
      });
      child.once("exit", () => resolve());
    });
    const before = cpuSecondsOf(child.pid!) ?? 0;
    child.send({ input });
    const verdict = await watch(
      { pid: child.pid!, cpuSeconds: this.#cpuSeconds, asleepSeconds: 60 },
      settled,
    );
    child.removeAllListeners();
    this.lastSeconds = (cpuSecondsOf(child.pid!) ?? before) - before;
    if (answer) return answer;
    this.stop();
    if (verdict === "ended") {
      const end = child.signalCode ?? `status ${child.exitCode}`;
      return [{ kind: "crash", detail: `the process ended by itself: ${end}` }];
    }
    const how = verdict === "asleep" ? "no answer" : `more than ${this.#cpuSeconds} s of the processor`;
    return [{ kind: "hang", detail: how }];
  }

  stop(): void {
    this.#child?.kill("SIGKILL");
    this.#child = undefined;
  }

  async #started(): Promise<ChildProcess> {
    if (this.#child) return this.#child;
    const child = fork(MAIN, [this.#name], {
      // Texts may have halves of letters in them, which only this form keeps.
      serialization: "advanced",
      execArgv: [`--max-old-space-size=${MEGABYTES}`],
      stdio: ["ignore", "ignore", "ignore", "ipc"],
    });
    this.#child = child;
    await firstMessage(child);
    return child;
  }
}
