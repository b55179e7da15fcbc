/** `together` and `apart`: what the notation says of pieces that are done in one go, down to the plan. */
import { describe, expect, test } from "vitest";
import { createAnalyst } from "../../../server/src/features/analyst.ts";

const text = (line: string, opens = "09:00 to 17:00"): string => `piece chair {
  surface frame {
    shape area 1 m2
    wood  beech
  }
}

shop mill {
  air   21 C, 50 % RH
  hours Mon to Fri ${opens}
}

recipe cleaned {
  for  wood
  step dust, takes 20 min${line}
}

job chairs {
  piece chair x 6
  in    mill
  start 2027-03-08
  apply cleaned to frame
}
`;

function resultOf(source: string) {
  const analyst = createAnalyst({ resolve: (_, path) => path });
  analyst.setFile("a.finish", source);
  const analysis = analyst.analysis();
  return { schedule: analysis.jobs("a.finish")[0]!.schedule, findings: analysis.findings("a.finish") };
}

const sessionsOf = (source: string) =>
  resultOf(source).schedule.sessions!.map(({ start, end, items }) => [start, end, items.length]);

describe("a line for six chairs, 20 min each", () => {
  test("may be done in one go, and is", () => {
    expect(sessionsOf(text(""))).toEqual([[0, 2, 6]]);
  });

  test("in openings of an hour takes two of them, three chairs each", () => {
    expect(sessionsOf(text("", "09:00 to 10:00")).map(([, , count]) => count)).toEqual([3, 3]);
  });

  test("`together` takes the six in one go", () => {
    expect(sessionsOf(text(", together"))).toEqual([[0, 2, 6]]);
  });

  test("`together` in openings of an hour is impossible, and it is said why", () => {
    const { schedule, findings } = resultOf(text(", together", "09:00 to 10:00"));
    expect(schedule.status).toBe("impossible");
    expect(
      findings.map(({ rule, message }) => [rule, message.includes("6 pieces together take 2 h")]),
    ).toEqual([["no-schedule", true]]);
  });

  test("`apart` is six sessions of one chair each", () => {
    const sessions = sessionsOf(text(", apart"));
    expect(sessions.map(([, , count]) => count)).toEqual([1, 1, 1, 1, 1, 1]);
  });
});
