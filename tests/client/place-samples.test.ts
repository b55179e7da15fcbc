/** The samples go into a folder of the person's, and leave alone what is there. */
import { expect, test } from "vitest";
import { placeSamples, SAMPLE_NAMES, type SampleFiles } from "../../client/src/place-samples.ts";
import { sampleNames } from "../harness/samples.ts";

const folder = (there: Readonly<Record<string, string>> = {}) => {
  const files = new Map(Object.entries(there));
  const at: SampleFiles = {
    read: async (name) => new TextEncoder().encode(`sample ${name}`),
    write: async (name, bytes) => void files.set(name, new TextDecoder().decode(bytes)),
    isThere: async (name) => files.has(name),
  };
  return { files, at };
};

test("all samples are named", () => {
  expect(SAMPLE_NAMES.toSorted()).toEqual(sampleNames.toSorted());
});

test("an empty folder gets all of them", async () => {
  const { files, at } = folder();
  expect(await placeSamples(at)).toEqual({ written: SAMPLE_NAMES.length });
  expect([...files]).toEqual(SAMPLE_NAMES.map((name) => [name, `sample ${name}`]));
});

test("what was changed there stays, and what is missing comes back", async () => {
  const { files, at } = folder({ "stock.finish": "mine", "other.finish": "mine too" });
  expect(await placeSamples(at)).toEqual({ written: SAMPLE_NAMES.length - 1 });
  expect(files.get("stock.finish")).toBe("mine");
  expect(files.get("other.finish")).toBe("mine too");
  expect(await placeSamples(at)).toEqual({ written: 0 });
});

test("a folder that cannot be written to is said with its reason", async () => {
  const { at } = folder();
  const write = (): Promise<never> => Promise.reject(new Error("no permission"));
  expect(await placeSamples({ ...at, write })).toEqual({ failed: "no permission" });
});
