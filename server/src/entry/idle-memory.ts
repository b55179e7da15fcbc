/**
 * Gives memory back when nobody has asked for anything for a while.
 *
 * V8 lets the heap grow while there is work, which keeps that quick, and has no occasion to make it smaller once there is
 * none: a server that has checked ten thousand lines keeps four times what it needs for as long as the editor is open.
 * So the heap is collected and made small once after a pause, if it has grown; then nothing runs until the next message.
 */
import v8 from "node:v8";
import vm from "node:vm";

const QUIET_MS = 3000;
/** Less than this is not worth a collection, bytes. */
const LEAST_GROWN = 48 * 1024 * 1024;
/** So much of what has been let go of may be kept while there is work, bytes. */
const MOST_GROWN = 128 * 1024 * 1024;
/** Of a server that has just been started, bytes. */
const HEAP_AT_START = 32 * 1024 * 1024;

export interface IdleMemory {
  /** There is work. */
  touch(): void;
}

export interface MemoryParts {
  /** Collects, and makes the heap small. */
  readonly collect: () => void;
  /** Bytes that the heap holds from the machine. */
  readonly heapBytes: () => number;
}

export function createIdleMemory(parts: MemoryParts = ofThisProcess()): IdleMemory {
  const giveBack = givingBack(LEAST_GROWN, parts);
  let timer: NodeJS.Timeout | undefined;
  return {
    touch() {
      if (timer === undefined) timer = setTimeout(giveBack, QUIET_MS).unref();
      else timer.refresh();
    },
  };
}

/**
 * For a program that lets go of much as it goes: to be called every now and then. V8 would let the heap of one that has just
 * begun grow to several hundred megabytes before it collects what has been let go of.
 */
export const createTidying = (parts: MemoryParts = ofThisProcess()): (() => void) =>
  givingBack(MOST_GROWN, parts);

/** Collects if the heap has grown by so many bytes since the last time. */
function givingBack(leastGrown: number, { collect, heapBytes }: MemoryParts): () => void {
  let before = HEAP_AT_START;
  return () => {
    if (heapBytes() - before < leastGrown) return;
    collect();
    before = heapBytes();
  };
}

function ofThisProcess(): MemoryParts {
  let collect: ((options: object) => void) | undefined;
  return {
    collect() {
      if (!collect) {
        v8.setFlagsFromString("--expose-gc");
        collect = vm.runInNewContext("gc") as (options: object) => void;
      }
      collect({ type: "major", execution: "sync", flavor: "last-resort" });
    },
    heapBytes: () => process.memoryUsage().heapTotal,
  };
}
