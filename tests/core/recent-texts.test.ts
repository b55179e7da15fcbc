/** What was worked out for a text holds for the next of the same words, and takes no more room than a bounded number. */
import { expect, test } from "vitest";
import { forRecentTexts } from "../../server/src/core/once.ts";

/** Length of a text, and how often it was worked out. */
function counting() {
  const asked: string[] = [];
  const lengthOf = forRecentTexts((text) => {
    asked.push(text);
    return text.length;
  });
  return { asked, lengthOf };
}

test("a text that comes again is not read again", () => {
  const { asked, lengthOf } = counting();
  expect(["wax on", "", "wax on", ""].map(lengthOf)).toEqual([6, 0, 6, 0]);
  expect(asked).toEqual(["wax on", ""]);
});

test("an answer may be that there is none", () => {
  let looks = 0;
  const nothing = forRecentTexts(() => {
    looks += 1;
    return undefined;
  });
  expect([nothing("a"), nothing("a")]).toEqual([undefined, undefined]);
  expect(looks).toBe(1);
});

test("a text of unusual length is not kept", () => {
  const { asked, lengthOf } = counting();
  const long = "a".repeat(501);
  expect([lengthOf(long), lengthOf(long)]).toEqual([501, 501]);
  expect(asked).toHaveLength(2);
});

test("of thousands of texts the last thousand at most are kept", () => {
  const { asked, lengthOf } = counting();
  for (let index = 0; index < 3000; index += 1) lengthOf(`text ${index}`);
  lengthOf("text 2999");
  expect(asked).toHaveLength(3000);
  lengthOf("text 0");
  expect(asked).toHaveLength(3001);
});
