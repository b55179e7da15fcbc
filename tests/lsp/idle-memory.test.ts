/** Memory is given back once in a pause, and only if there is some to give. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { createIdleMemory, createTidying } from "../../server/src/entry/idle-memory.ts";

const MB = 1024 * 1024;

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function heapOf(start: number) {
  const heap = { bytes: start * MB, collections: 0 };
  const memory = createIdleMemory({
    collect: () => {
      heap.collections += 1;
      heap.bytes = 40 * MB;
    },
    heapBytes: () => heap.bytes,
  });
  return { heap, memory };
}

test("a heap that has grown is collected once when nothing was asked for a while", () => {
  const { heap, memory } = heapOf(200);
  for (let message = 0; message < 10; message += 1) {
    memory.touch();
    vi.advanceTimersByTime(2000);
  }
  expect(heap.collections).toBe(0); // there was always work
  vi.advanceTimersByTime(60_000);
  expect(heap.collections).toBe(1);
  expect(vi.getTimerCount()).toBe(0);
});

test("a heap that has not grown since is left alone", () => {
  const { heap, memory } = heapOf(200);
  const pause = (megabytes: number): void => {
    heap.bytes = megabytes * MB;
    memory.touch();
    vi.advanceTimersByTime(5000);
  };
  pause(200);
  pause(60);
  pause(80);
  expect(heap.collections).toBe(1);
  pause(90);
  expect(heap.collections).toBe(2);
});

test("a program that goes on working collects when its heap has grown by an eighth of a gigabyte", () => {
  let [megabytes, collections] = [100, 0];
  const tidy = createTidying({
    collect: () => {
      collections += 1;
      megabytes = 60;
    },
    heapBytes: () => megabytes * MB,
  });
  const collectedAt: number[] = [];
  for (let part = 0; part < 20; part += 1) {
    megabytes += 50;
    const before = megabytes;
    tidy();
    if (megabytes < before) collectedAt.push(before);
  }
  // A server or program that has just begun holds about 32 MB; after a collection it is what is left.
  // So at 32 + 168 first, then at 60 + 150, three parts on, six times in the eighteen parts that are left.
  expect(collectedAt).toEqual([200, 210, 210, 210, 210, 210, 210]);
  expect(collections).toBe(7);
});
