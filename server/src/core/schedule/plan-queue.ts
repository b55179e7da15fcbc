/**
 * A planner that answers later: it notes what is asked, hands it out one after the other to whoever makes the plans, and
 * says `BEING_PLANNED` until a plan is there.
 *
 * Each owner wants one plan at a time, the one that it asked for last; what it asked for before an edit is given up. A plan
 * is kept for as long as its input is, and the last `most` of them also for equal inputs, as undoing an edit brings them.
 */
import type { Owner } from "../memory/memory.ts";
import { BEING_PLANNED } from "./being-planned.ts";
import type { Planner, PlanOwner } from "./plan-cache.ts";
import { planKey } from "./plan-key.ts";
import type { Schedule, ScheduleInput } from "./types.ts";

export interface PlanRequest {
  readonly owner: PlanOwner;
  readonly input: ScheduleInput;
  /** Equal for equal inputs. */
  readonly key: string;
}

/** A plan, or what its making threw, which is thrown to whoever asks for it. */
export type PlanOutcome = { readonly plan: Schedule } | { readonly error: unknown };

/** What an input came to, or its key as long as that is not known. */
type Asked = PlanOutcome | { readonly key: string };

export class PlanQueue {
  readonly #most: number;
  readonly #onAsked: (request: PlanRequest) => void;
  readonly #asked = new WeakMap<ScheduleInput, Asked>();
  readonly #known = new Map<string, PlanOutcome>();
  /** By owner, in the order in which they were first asked for. */
  readonly #wanted = new Map<string, PlanRequest>();

  /** `onAsked` is told of every plan that is wanted from then on. */
  constructor(most: number, onAsked: (request: PlanRequest) => void) {
    this.#most = most;
    this.#onAsked = onAsked;
  }

  readonly plan: Planner = (input, owner) => {
    const outcome = this.#find(input);
    if (outcome) {
      if (this.#wanted.size > 0) this.#wanted.delete(nameOf(owner));
      return planIn(outcome);
    }
    const key = this.#keyOf(input);
    const name = nameOf(owner);
    if (this.#wanted.get(name)?.key !== key) {
      const request = { owner, input, key };
      this.#wanted.set(name, request);
      this.#onAsked(request);
    }
    return BEING_PLANNED;
  };

  /** What is to be made next: of a preferred file before others. It stays wanted until it is done. */
  next(preferred?: string): PlanRequest | undefined {
    let first: PlanRequest | undefined;
    for (const [name, request] of this.#wanted) {
      if (this.#known.has(request.key)) this.#wanted.delete(name);
      else if (preferred !== undefined && isFor(request, preferred)) return request;
      else first ??= request;
    }
    return first;
  }

  /** Whether its owner still asks for this. */
  isWanted({ owner, key }: PlanRequest): boolean {
    return this.#wanted.get(nameOf(owner))?.key === key;
  }

  done(request: PlanRequest, outcome: PlanOutcome): void {
    this.#remember(request.key, outcome);
    this.#asked.set(request.input, outcome);
    if (this.isWanted(request)) this.#wanted.delete(nameOf(request.owner));
  }

  /** Nobody asks for the plans of a file any more; should somebody again, they are wanted again. */
  forget(file: string): void {
    for (const [name, { owner }] of this.#wanted) if (owner.file === file) this.#wanted.delete(name);
  }

  /** Whether plans are wanted, of one file or of any. */
  isWaiting(file?: string): boolean {
    if (file === undefined) return this.next() !== undefined;
    const request = this.next(file);
    return request !== undefined && isFor(request, file);
  }

  #find(input: ScheduleInput): PlanOutcome | undefined {
    const asked = this.#asked.get(input);
    if (asked && !("key" in asked)) return asked;
    const key = this.#keyOf(input);
    const known = this.#known.get(key);
    if (!known) return undefined;
    this.#remember(key, known);
    this.#asked.set(input, known);
    return known;
  }

  #keyOf(input: ScheduleInput): string {
    const asked = this.#asked.get(input);
    if (asked && "key" in asked) return asked.key;
    const key = planKey(input);
    this.#asked.set(input, { key });
    return key;
  }

  /** Puts last what was asked last, so that the oldest is the first to go. */
  #remember(key: string, outcome: PlanOutcome): void {
    this.#known.delete(key);
    this.#known.set(key, outcome);
    const oldest = this.#known.keys().next();
    if (this.#known.size > this.#most && !oldest.done) this.#known.delete(oldest.value);
  }
}

/** Whether somebody in the file has asked for it. */
export const isFor = ({ owner }: PlanRequest, file: string): boolean =>
  owner.file === file || owner.alsoFor?.includes(file) === true;

const nameOf = ({ file, declaration }: Owner): string => `${file}\u0000${declaration}`;

function planIn(outcome: PlanOutcome): Schedule {
  if ("error" in outcome) throw outcome.error;
  return outcome.plan;
}
