/**
 * The critical path method against nets with published answers. Known misprints are named beside the check.
 */
import { describe, expect, test } from "vitest";
import { type Activity, calculateNetwork } from "../../oracles/network.ts";

/** `C2(A)` is activity C of duration 2 after A. */
function net(text: string): readonly Activity[] {
  return text.split(" ").map((word) => {
    const [, id, duration, after] = /^([A-Z])(\d+)(?:\((.*)\))?$/.exec(word)!;
    return { id: id!, duration: Number(duration), after: after ? after.split(",") : [] };
  });
}

/** An arrow diagram, `1-2 7`: every arrow comes after those that end where it begins. */
function arrows(text: string): readonly Activity[] {
  const list = text.split(", ").map((word) => {
    const [id = "", duration] = word.split(" ");
    const [from, to] = id.split("-");
    return { id, duration: Number(duration), from, to };
  });
  return list.map(({ id, duration, from }) => ({
    id,
    duration,
    after: list.filter((other) => other.to === from).map((other) => other.id),
  }));
}

function rows(activities: readonly Activity[]): Record<string, string> {
  return Object.fromEntries(
    calculateNetwork(activities)!.activities.map((times) => [
      times.id,
      `${times.earlyStart}/${times.earlyFinish}/${times.lateStart}/${times.lateFinish}/${times.totalFloat}`,
    ]),
  );
}

function floats(activities: readonly Activity[]): Record<string, number> {
  return Object.fromEntries(
    calculateNetwork(activities)!.activities.map(({ id, totalFloat }) => [id, totalFloat]),
  );
}

describe("Heizer and Render, Operations Management, ch. 3: pollution control", () => {
  const activities = net("A2 B3 C2(A) D4(A,B) E4(C) F3(C) G5(D,E) H2(F,G)");
  const result = calculateNetwork(activities)!;

  test("early and late times and total floats", () => {
    expect(rows(activities)).toEqual({
      A: "0/2/0/2/0",
      B: "0/3/1/4/1",
      C: "2/4/2/4/0",
      D: "3/7/4/8/1",
      E: "4/8/4/8/0",
      F: "4/7/10/13/6",
      G: "8/13/8/13/0",
      H: "13/15/13/15/0",
    });
  });

  test("15 weeks along A-C-E-G-H; a copy in circulation prints a path A-C-E-H, which the net does not have", () => {
    expect(result.duration).toBe(15);
    expect(result.criticalPath).toEqual(["A", "C", "E", "G", "H"]);
  });

  test("free floats: B gives its float away to D", () => {
    const free = Object.fromEntries(result.activities.map(({ id, freeFloat }) => [id, freeFloat]));
    expect(free).toMatchObject({ A: 0, B: 0, D: 1, F: 6, H: 0 });
  });
});

describe("Taylor, Introduction to Management Science, ch. 8", () => {
  test("problem 1: 20 along 1-3-4-5-6", () => {
    const activities = arrows("1-2 7, 1-3 10, 2-4 6, 3-4 5, 3-5 4, 4-5 3, 5-6 2");
    expect(rows(activities)).toEqual({
      "1-2": "0/7/2/9/2",
      "1-3": "0/10/0/10/0",
      "2-4": "7/13/9/15/2",
      "3-4": "10/15/10/15/0",
      "3-5": "10/14/14/18/4",
      "4-5": "15/18/15/18/0",
      "5-6": "18/20/18/20/0",
    });
    expect(calculateNetwork(activities)!.criticalPath).toEqual(["1-3", "3-4", "4-5", "5-6"]);
  });

  test("problem 2, with a dummy 4-5: 38 along 1-3-5-7-8-9", () => {
    const activities = arrows(
      "1-2 8, 1-3 10, 1-4 9, 2-5 6, 2-6 4, 3-5 5, 4-5 0, 4-7 7, 5-7 12, 5-8 15, 6-9 18, 7-8 4, 8-9 7",
    );
    const result = calculateNetwork(activities)!;
    expect(result.duration).toBe(38);
    expect(result.criticalPath).toEqual(["1-3", "3-5", "5-7", "7-8", "8-9"]);
    expect(floats(activities)).toEqual({
      "1-2": 1,
      "1-3": 0,
      "1-4": 6,
      "2-5": 1,
      "2-6": 8,
      "3-5": 0,
      "4-5": 6,
      "4-7": 11,
      "5-7": 0,
      "5-8": 1,
      "6-9": 8,
      "7-8": 0,
      "8-9": 0,
    });
    expect(rows(activities)["4-7"]).toBe("9/16/20/27/11");
  });
});

test("a ten-activity exercise; its page prints wrong late dates for D, E and G, by hand they are 13, 9 and 1", () => {
  // D ends at 10, H starts at 23 at the latest: 13. E ends at 14, I starts at 23: 9. G ends at 20, H starts at 21: 1.
  const activities = net("A3 B4(A) C5(B) D3(B) E7(B) F9(C) G8(C) H2(F,G) I4(D,E,H) J7(I)");
  const result = calculateNetwork(activities)!;
  expect(result.duration).toBe(34);
  expect(result.criticalPath).toEqual(["A", "B", "C", "F", "H", "I", "J"]);
  expect(floats(activities)).toMatchObject({ D: 13, E: 9, G: 1 });
});

test("two critical chains side by side: every activity is critical", () => {
  const activities = net("A7 B5 C3(A) D5(B) E4(C) F4(C,D) G3(E,F) H1(G)");
  const result = calculateNetwork(activities)!;
  expect(result.duration).toBe(18); // 7+3+4+3+1 and 5+5+4+3+1
  expect(result.activities.every(({ critical }) => critical)).toBe(true);
});

test("circles and unknown activities are no network; nothing takes no time", () => {
  expect(calculateNetwork(net("A1(B) B1(A)"))).toBeUndefined();
  expect(calculateNetwork(net("A1(Z)"))).toBeUndefined();
  expect(calculateNetwork([])).toEqual({ duration: 0, activities: [], criticalPath: [] });
});
