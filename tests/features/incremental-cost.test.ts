/**
 * An edit costs what the edited declaration feeds, and nothing else: counted in runs judged, jobs judged and plans made,
 * by parts that count.
 */
import { expect, test } from "vitest";
import { TRADE_RULES } from "../../server/src/core/rules/registry.ts";
import type { TradeRule } from "../../server/src/core/rules/rule.ts";
import { planWork } from "../../server/src/core/schedule/plan.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";

const UNITS = 12;

/** Recipes of even numbers use `clear`, the others a built-in material. */
const unit = (index: number): string => `recipe way_${index} {
  for wood
  layer ${index % 2 === 0 ? "clear" : "oil_varnish"} x 2
  wait until cured
}

piece table_${index} {
  surface top {
    shape area 2 m2
    wood  beech
  }
}

job job_${index} {
  piece table_${index}
  in    mill
  start ${2027 + Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, "0")}-08
  apply way_${index} to top
}
`;

const textOf = (units: number): string => `shop mill {
  air   20 C, 50 % RH
  room  90 m3, 2 air changes/h
  hours Mon to Fri 09:00 to 17:00
}

material clear {
  family oil varnish
  covers 12 m2/L
  voc    400 g/L
}

${Array.from({ length: units }, (_, index) => unit(index)).join("\n")}`;

const TEXT = textOf(UNITS);

/** What is done anew for the findings of the file after an edit, the plan being made without a memory of its own. */
function costOf(
  edit: (text: string) => string,
): Readonly<Record<"recipes" | "surfaces" | "jobs" | "plans", number>> {
  const count = { recipes: 0, surfaces: 0, jobs: 0, plans: 0 };
  const counting: TradeRule = {
    ...TRADE_RULES[0]!,
    looksAt: undefined,
    id: "counts",
    checks: {
      onRun: ({ run }) => {
        count[run.kind === "job" ? "surfaces" : "recipes"] += 1;
      },
      onJob: () => {
        count.jobs += 1;
      },
    },
  };
  const analyst = createAnalyst({
    resolve: (_, path) => path,
    parts: {
      rules: [counting],
      plan: (input) => {
        count.plans += 1;
        return planWork(input);
      },
    },
  });
  analyst.setFile("a.finish", TEXT);
  analyst.analysis().findings("a.finish");
  expect(count).toEqual({ recipes: UNITS, surfaces: UNITS, jobs: UNITS, plans: UNITS });
  Object.assign(count, { recipes: 0, surfaces: 0, jobs: 0, plans: 0 });
  const text = edit(TEXT);
  expect(text).not.toBe(TEXT);
  analyst.setFile("a.finish", text);
  analyst.analysis().findings("a.finish");
  return count;
}

const NOTHING = { recipes: 0, surfaces: 0, jobs: 0, plans: 0 };
const one = (before: string, now: string) => (text: string) => text.replace(before, now);
const inside = (head: string, before: string, now: string) => (text: string) => {
  const at = text.indexOf(head);
  return text.slice(0, at) + text.slice(at).replace(before, now);
};

test("an edit in a recipe costs the recipe and its job", () => {
  const edit = inside("recipe way_5 ", "x 2", "x 3");
  expect(costOf(edit)).toEqual({ recipes: 1, surfaces: 1, jobs: 1, plans: 1 });
});

test("an edit in a piece costs its job", () => {
  const edit = inside("piece table_5 ", "2 m2", "3 m2");
  expect(costOf(edit)).toEqual({ recipes: 0, surfaces: 1, jobs: 1, plans: 1 });
});

test("a new date costs its job", () => {
  const edit = one("start 2027-06-08", "start 2027-06-09");
  expect(costOf(edit)).toEqual({ recipes: 0, surfaces: 1, jobs: 1, plans: 1 });
});

test("an edit in a material costs what uses it: half of the recipes and jobs", () => {
  const half = UNITS / 2;
  const edit = one("covers 12 m2/L", "covers 11 m2/L");
  expect(costOf(edit)).toEqual({ recipes: half, surfaces: half, jobs: half, plans: half });
});

test("an edit in the shop costs all jobs and no recipe, and plans only where its hours change", () => {
  const all = { recipes: 0, surfaces: UNITS, jobs: UNITS };
  // At 19 C as at 20 C the waits are those of the labels.
  expect(costOf(one("20 C", "19 C"))).toEqual({ ...all, plans: 0 });
  expect(costOf(one("09:00 to 17:00", "09:00 to 16:00"))).toEqual({ ...all, plans: UNITS });
});

test("a declaration that nothing names costs nothing else", () => {
  expect(costOf((text) => `recipe unused {\n  step dust\n}\n\n${text}`)).toEqual({ ...NOTHING, recipes: 1 });
  expect(costOf((text) => `# words\n\n${text}`)).toEqual(NOTHING);
});

test("a name that comes to mean something else costs what names it", () => {
  const half = UNITS / 2;
  const edit = (text: string) => `material oil_varnish {\n  family alkyd varnish\n}\n\n${text}`;
  expect(costOf(edit)).toEqual({ recipes: half, surfaces: half, jobs: half, plans: half });
});

test("a job whose fumes meet those of another costs the air of both", () => {
  // Both in the same days, the one with twice the varnish.
  const meeting = (text: string) => text.replace("start 2027-06-08", "start 2027-05-08");
  // One plan of the job alone, and one of both in their shop.
  expect(costOf(meeting)).toEqual({ recipes: 0, surfaces: 1, jobs: 2, plans: 2 });
});

/**
 * Steps in which the findings are worked out after an edit, in a file of so many recipes, pieces and jobs. Their shop has no
 * room whose air is looked into again for all of them.
 */
function stepsAfter(units: number, edit: (text: string) => string): number {
  const analyst = createAnalyst({ resolve: (_, path) => path });
  const stepsOf = (text: string): number => {
    analyst.setFile("a.finish", text);
    return [...analyst.analysis().steps("a.finish")].length;
  };
  const text = textOf(units).replace(/^ {2}room.*\n/mu, "");
  expect(stepsOf(text)).toBeGreaterThan(units * 10);
  return stepsOf(edit(text));
}

test("an edit takes as many steps in a file of three times as many recipes and jobs", () => {
  const edits = [
    inside("recipe way_5 ", "x 2", "x 3"),
    inside("piece table_5 ", "2 m2", "3 m2"),
    one("start 2027-06-08", "start 2027-06-09"),
    (text: string) =>
      text.replace("layer clear x 2", "layer clear x 3 # allow oil-rags: cloths hang outside"),
  ];
  for (const edit of edits) expect(stepsAfter(3 * UNITS, edit)).toBe(stepsAfter(UNITS, edit));
});
