/** What is said of how good a plan is, and of the room's air. */
import { describe, expect, test } from "vitest";
import type { Schedule } from "../../server/src/core/schedule/types.ts";
import { overAirText, proofText } from "../../server/src/reports/proof-text.ts";

describe("a plan that gives off more than the room's air carries away", () => {
  const OVER = "  At times this gives off more vapour than the room's air carries away";

  test("says by how much later one would be that does not", () => {
    expect(overAirText({ laterHours: 26 })).toBe(
      `${OVER}: keeping to it would put off the last work by 1 day 2 h.`,
    );
  });

  test("says that jobs would be late where the last work would come no later", () => {
    expect(overAirText({ laterHours: 0 })).toBe(`${OVER}: keeping to it would make jobs late.`);
  });

  test("says that no other was found", () => {
    expect(overAirText({})).toBe(`${OVER}: no plan that keeps to it was found.`);
  });
});

describe("how good a plan is", () => {
  // No plan ends within 10 h, this one after 12: a better one is at most 2 h better.
  const plan = (more: Partial<Schedule>): Schedule => ({
    status: "planned",
    items: [],
    elapsedHours: 12,
    lowerBound: 10,
    exact: false,
    gap: 0.2,
    conflicts: [],
    ...more,
  });
  const shop = { hours: [{ weekday: 1, opens: 540, closes: 1020 }] };

  test("is told by its last work in sessions, else by its length, and under which hours", () => {
    const inSessions = { lastWorkAt: "2027-03-08T17:00:00" };
    expect(proofText(plan(inSessions), shop)).toBe(
      "another plan in the shop's hours could end it at most 2 h earlier",
    );
    expect(proofText(plan({ ...inSessions, exact: true }), {})).toBe(
      "no plan, working at any hour, ends it earlier",
    );
    expect(proofText(plan({}), undefined)).toBe("another plan could be at most 2 h shorter");
    expect(proofText(plan({ exact: true }), undefined)).toBe("no plan is shorter");
  });
});
