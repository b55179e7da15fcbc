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
/** Of a server that has just been started, bytes. */
const HEAP_AT_START = 32 * 1024 * 1024;

export interface IdleMemory {
  /** There is work. */
  touch(): void;
}

export interface IdleMemoryParts {
  /** Collects, and makes the heap small. */
  readonly collect: () => void;
  /** Bytes that the heap holds from the machine. */
  readonly heapBytes: () => number;
}

export function createIdleMemory({ collect, heapBytes }: IdleMemoryParts = ofThisProcess()): IdleMemory {
  let before = HEAP_AT_START;
  let timer: NodeJS.Timeout | undefined;
  const giveBack = (): void => {
    if (heapBytes() - before < LEAST_GROWN) return;
    collect();
    before = heapBytes();
  };
  return {
    touch() {
      if (timer === undefined) timer = setTimeout(giveBack, QUIET_MS).unref();
      else timer.refresh();
    },
  };
}

function ofThisProcess(): IdleMemoryParts {
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
