/**
 * Long work in small parts, so that what a person asks for meanwhile is answered at once.
 *
 * All of it takes turns: one part at a time is done when no message waits, that for the file which a person looks at before
 * any other, what else has waited longest before what came later, and what is for no file at all last.
 */
import type { FileId } from "../core/place.ts";
import { yieldToMessages } from "./guard.ts";

/** A part takes about so long; a step that has begun is finished. */
export const SLICE_MS = 3;

/** So many messages in a row come before a part; it is done even if they never end. */
const MOST_MESSAGES = 5000;

export interface SlicedWork {
  /** Work that is for no file is done when none for any waits. */
  readonly file?: FileId;
  /** Called when its turn has come, so that nothing which changes before makes it stale. */
  begin(): Iterable<void>;
  /** Whether something has changed since it began. */
  isStale(): boolean;
}

export interface Turns {
  /** A message came in; others may wait behind it. */
  messageCame(): void;
  /** Takes all steps and answers true, or false where the work was given up because it is stale. */
  take(work: SlicedWork): Promise<boolean>;
}

interface Waiting {
  readonly work: SlicedWork;
  steps?: Iterator<void>;
  readonly resolve: (isDone: boolean) => void;
  readonly reject: (error: unknown) => void;
}

/** `first` says whose work comes before that of others. */
export function createTurns(
  first: () => FileId | undefined,
  now: () => number = () => performance.now(),
): Turns {
  /** By file, in the order in which they came. */
  const waiting = new Map<FileId | undefined, Waiting[]>();
  let isRunning = false;
  let messages = 0;

  /** Lets all messages in that wait; they come one by one. */
  const letIn = async (): Promise<void> => {
    const before = messages;
    let seen: number;
    do {
      seen = messages;
      await yieldToMessages();
    } while (messages !== seen && messages - before < MOST_MESSAGES);
  };

  const next = (): Waiting | undefined => {
    const preferred = first();
    const ofPreferred = preferred === undefined ? undefined : waiting.get(preferred);
    if (ofPreferred) return ofPreferred[0];
    for (const [file, works] of waiting) if (file !== undefined) return works[0];
    return waiting.get(undefined)?.[0];
  };

  const leave = ({ work: { file } }: Waiting): void => {
    const rest = waiting.get(file)?.slice(1) ?? [];
    waiting.delete(file);
    if (rest.length > 0) waiting.set(file, rest);
  };

  /** Whether it is done or given up; undefined where there is more to do. */
  const slice = (waiting: Waiting): boolean | undefined => {
    const { work, steps } = waiting;
    if (steps !== undefined && work.isStale()) return false;
    const began = now();
    waiting.steps ??= work.begin()[Symbol.iterator]();
    do if (waiting.steps.next().done) return true;
    while (now() - began < SLICE_MS);
    return undefined;
  };

  const run = async (): Promise<void> => {
    isRunning = true;
    for (let one = next(); one; one = next()) {
      try {
        const isDone = slice(one);
        if (isDone !== undefined) {
          leave(one);
          one.resolve(isDone);
        }
      } catch (error) {
        leave(one);
        one.reject(error);
      }
      await letIn();
    }
    isRunning = false;
  };

  return {
    messageCame() {
      messages += 1;
    },
    take: (work) =>
      new Promise((resolve, reject) => {
        const one: Waiting = { work, resolve, reject };
        const before = waiting.get(work.file);
        if (before) before.push(one);
        else waiting.set(work.file, [one]);
        if (!isRunning) void run();
      }),
  };
}
