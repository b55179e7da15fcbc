/**
 * Runs an attack round by round until its time is over. A round is one seed and a number of inputs, so that the seed
 * alone brings a failure back; what fails is made as small as can be, and written down once for every kind of failure.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { type Attack, FLAW_KINDS, type Flaw, type FlawKind, signatureOf } from "./flaws.ts";
import { Worker } from "./worker.ts";

export const CACHE = fileURLToPath(new URL("../../.cache/attack/", import.meta.url));

export interface Failure {
  readonly part: string;
  readonly seed: number;
  readonly flaw: Flaw;
  /** Where the smallest input stands. */
  readonly file: string;
}

export interface PartOutcome {
  readonly part: string;
  readonly inputs: number;
  readonly counts: Readonly<Record<FlawKind, number>>;
  /** One for every kind of failure. */
  readonly failures: readonly Failure[];
  /** The input that took most of the processor, where that is known. */
  readonly costliest?: { readonly seconds: number; readonly file: string };
}

/** Attempts to make a failing input smaller; those that hang cost their whole limit each time. */
const ATTEMPTS = 200;
const ATTEMPTS_WITH_HANGS = 6;

/** `isOver` says when to end; at least one round is begun. */
export async function attackInRounds<Input>(
  attack: Attack<Input>,
  firstSeed: number,
  isOver: () => boolean,
): Promise<PartOutcome> {
  let seed = firstSeed;
  const worker = attack.cpuSeconds === undefined ? undefined : new Worker(attack.name, attack.cpuSeconds);
  let costliest: { readonly seconds: number; readonly input: Input; readonly seed: number } | undefined;
  const check = async (input: Input): Promise<readonly Flaw[]> => {
    if (!worker) return attack.check(input);
    const flaws = await worker.run(input);
    const seconds = worker.lastSeconds;
    if (flaws.length === 0 && seconds > (costliest?.seconds ?? 0)) costliest = { seconds, input, seed };
    return flaws;
  };
  const counts = Object.fromEntries(FLAW_KINDS.map((kind) => [kind, 0])) as Record<FlawKind, number>;
  const known = new Set<string>();
  const failures: Failure[] = [];
  let inputs = 0;
  try {
    do {
      const round = await runRound(attack, check, seed, known, isOver);
      inputs += round.inputs;
      for (const flaw of round.flaws) counts[flaw.kind] += 1;
      if (round.failure) {
        const file = writeInput(attack.name, seed, round.failure.flaw, round.failure.input);
        failures.push({ part: attack.name, seed, flaw: round.failure.flaw, file });
        console.log(
          `  ${attack.name}: ${round.failure.flaw.kind}, seed ${seed}: ${round.failure.flaw.detail}\n    ${file}`,
        );
      }
      seed += 1;
    } while (!isOver());
  } finally {
    worker?.stop();
  }
  const file = costliest && writeFile(`${attack.name}-costliest`, costliest);
  return {
    part: attack.name,
    inputs,
    counts,
    failures,
    ...(costliest && file ? { costliest: { seconds: costliest.seconds, file } } : {}),
  };
}

interface Round<Input> {
  readonly inputs: number;
  /** The first of every input that failed, known failures included. */
  readonly flaws: readonly Flaw[];
  /** The first that was not known, made small. */
  readonly failure?: { readonly flaw: Flaw; readonly input: Input };
}

async function runRound<Input>(
  attack: Attack<Input>,
  check: (input: Input) => Promise<readonly Flaw[]>,
  seed: number,
  known: Set<string>,
  isOver: () => boolean,
): Promise<Round<Input>> {
  const flaws: Flaw[] = [];
  let inputs = 0;
  let attempts = 0;
  let found: { flaw: Flaw; input: Input } | undefined;
  const property = fc.asyncProperty(attack.input, async (input) => {
    if (found ? attempts >= mostAttempts(found.flaw) : inputs > 0 && isOver()) return;
    if (found) attempts += 1;
    else inputs += 1;
    const here = await check(input);
    if (found) {
      const again = here.find((flaw) => signatureOf(flaw) === signatureOf(found!.flaw));
      if (!again) return;
      found = { flaw: again, input };
      throw new Error(again.detail);
    }
    flaws.push(...here.slice(0, 1));
    const fresh = here.find((flaw) => !known.has(signatureOf(flaw)));
    if (!fresh) return;
    known.add(signatureOf(fresh));
    found = { flaw: fresh, input };
    throw new Error(fresh.detail);
  });
  await fc.check(property, { seed, numRuns: attack.runs });
  return { inputs, flaws, ...(found ? { failure: found } : {}) };
}

const mostAttempts = ({ kind }: Flaw): number => (kind === "hang" ? ATTEMPTS_WITH_HANGS : ATTEMPTS);

function writeInput(part: string, seed: number, flaw: Flaw, input: unknown): string {
  const what = signatureOf(flaw)
    .replace(/[^a-z0-9]+/giu, "-")
    .slice(0, 60);
  return writeFile(`${part}-${seed}-${what}`, { part, seed, flaw, input });
}

function writeFile(name: string, content: object): string {
  mkdirSync(CACHE, { recursive: true });
  const file = path.join(CACHE, `${name}.json`);
  writeFileSync(file, `${JSON.stringify(content, null, 2)}\n`);
  return file;
}
