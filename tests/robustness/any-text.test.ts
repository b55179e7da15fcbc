/**
 * No method of an analysis fails for any text, any offset and any stretch, however odd: not even behind the guard that
 * would hide it, which tells every fault.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { askEverything } from "../attack/ask-everything.ts";
import { anyText, edited } from "../grammar/any-text.ts";

/** What texts rarely hold: halves of surrogate pairs, NUL, line ends of all kinds, a byte order mark, huge numbers. */
const odd = fc.constantFrom(
  "\ud800",
  "\udc00",
  "\0",
  "\r",
  "\r\n",
  "\n\r",
  "\u2028",
  "\ufeff",
  "9".repeat(400),
  "1e999",
  "0.0000000000000000001",
  "-1",
  "24:00",
  "9999-99-99",
  'use "\ud800.finish"\n',
  "\u202e",
);

/** A text with odd things put in at places of its own. */
const oddText = fc
  .tuple(fc.oneof(anyText, edited), fc.array(fc.tuple(fc.nat(), odd), { maxLength: 4 }))
  .map(([text, parts]) =>
    parts.reduce((whole, [at, part]) => {
      const offset = at % (whole.length + 1);
      return whole.slice(0, offset) + part + whole.slice(offset);
    }, text),
  );

const offset = fc.oneof(
  fc.nat(3000),
  fc.constantFrom(-1, 0, 0.5, 1e9, Number.MAX_SAFE_INTEGER, Number.POSITIVE_INFINITY, Number.NaN),
);

test("nothing fails, and no text before shows through", () => {
  fc.assert(
    fc.property(
      oddText,
      oddText,
      fc.array(offset, { minLength: 1, maxLength: 2 }),
      (first, text, offsets) => {
        const faults: string[] = [];
        const analyst = createAnalyst({
          resolve: (_, path) => path,
          onFault: ({ part, error }) =>
            faults.push(`${part}: ${error instanceof Error ? error.stack : error}`),
        });
        analyst.setFile("a", first);
        analyst.analysis().findings("a");
        analyst.setFile("a", text);
        const { flaws } = askEverything(analyst.analysis(), "a", offsets);
        for (const each of offsets) {
          analyst
            .analysis()
            .inlayHints("a", { start: each, end: offsets[0]! }, ["litres", "waits", "elapsed"]);
          analyst.analysis().formatting("a", [{ start: each, end: offsets[0]! }]);
          analyst.analysis().semanticTokens("a", "words", { start: each, end: offsets[0]! });
        }
        expect([...faults, ...flaws]).toEqual([]);
        expect(analyst.analysis().text("a")).toBe(text);
      },
    ),
    { numRuns: 13 },
  );
});
