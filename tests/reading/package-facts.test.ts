/** What is read of a `package.json`; the forms are those of npm's own description of that file. */
import { expect, test } from "vitest";
import { packageFacts, packageText } from "../../server/src/reading/package-facts.ts";

test("author and licence, in either form", () => {
  const facts = packageFacts(
    '{ "version": "2.0.0", "author": { "name": "The mill", "email": "a@example.org" }, "license": "MIT", "private": true }',
  );
  expect(facts).toEqual({ version: "2.0.0", author: "The mill", licence: "MIT", isPrivate: true });
  expect(packageFacts('{ "author": "The mill <a@example.org> (https://example.org)" }')).toEqual({
    author: "The mill",
    isPrivate: false,
  });
  expect(packageFacts('{ "author": "<a@example.org>", "license": "  " }')).toEqual({ isPrivate: false });
});

test("nothing of what is no package's, and no more than a line", () => {
  for (const text of ["", "{", "7", "null", "[]"]) expect(packageFacts(text)).toBeUndefined();
  expect(packageFacts(JSON.stringify({ description: "x".repeat(1000) }))!.description).toHaveLength(201);
  expect(packageFacts('{ "__proto__": { "version": "1" } }')).toEqual({ isPrivate: false });
});

test("in words", () => {
  expect(packageText({ version: "1.0.0", author: "The mill", licence: "MIT" })).toBe(
    "version 1.0.0, by The mill, MIT",
  );
  expect(packageText({})).toBe("");
});
