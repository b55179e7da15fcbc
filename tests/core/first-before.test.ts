/** What is said first along a chain, against a walk along it for each link anew. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { firstBefore } from "../../server/src/core/once.ts";

interface Link {
  readonly index: number;
  readonly says: boolean;
  next?: Link;
}

/** Links, each of which leads to any other or to none, so that chains meet and come round. */
const links = fc
  .array(fc.record({ says: fc.boolean(), next: fc.option(fc.nat(11), { nil: undefined }) }), {
    maxLength: 12,
  })
  .map((all) => {
    const made: Link[] = all.map(({ says }, index) => ({ index, says }));
    for (const [index, { next }] of all.entries()) {
      const to = next === undefined ? undefined : made[next];
      if (to) made[index]!.next = to;
    }
    return made;
  });

function byWalking(link: Link): number | undefined {
  const seen = new Set([link]);
  for (let at = link.next; at; at = at.next) {
    if (at.says) return at.index;
    if (seen.has(at)) return undefined;
    seen.add(at);
  }
  return undefined;
}

test("says what a walk from each link says, in whatever order they are asked", () => {
  fc.assert(
    fc.property(links, fc.array(fc.nat(11)), (all, asked) => {
      const before = firstBefore(
        ({ next }: Link) => next,
        ({ says, index }) => (says ? index : undefined),
      );
      for (const index of [...asked, ...all.keys()]) {
        const link = all[index];
        if (link) expect(before(link)).toBe(byWalking(link));
      }
    }),
    { numRuns: 500 },
  );
});

test.each([
  ["in a row", (index: number) => index - 1, 99],
  ["that all lead to the same one", () => 0, 1],
])("looks at each link once, however many ask: links %s", (_, nextOf, times) => {
  const all: Link[] = Array.from({ length: 100 }, (__, index) => ({ index, says: false }));
  for (const [index, link] of all.entries()) if (index > 0) link.next = all[nextOf(index)]!;
  let looks = 0;
  const before = firstBefore(
    ({ next }: Link) => next,
    () => {
      looks += 1;
      return undefined;
    },
  );
  for (const link of all.toReversed()) before(link);
  expect(looks).toBe(times);
});
