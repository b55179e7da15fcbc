/**
 * After any edits an analysis says what one from scratch says: whatever is kept from one text to the next is kept only
 * as long as it holds. Two files that use each other's names; every edit changes, takes out or puts back a declaration.
 */

import fc from "fast-check";
import { expect, test } from "vitest";
import type { ChangedPart } from "../../grammar/src/parse.ts";
import { TRADE_RULES } from "../../server/src/core/rules/registry.ts";
import { PlanQueue } from "../../server/src/core/schedule/plan-queue.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { type Analysis, type Analyst, INLAY_HINT_KINDS } from "../../server/src/features/types.ts";
import { plan } from "../harness/planner.ts";
import { expectAmong, expectSame } from "../harness/same.ts";

/** By file, declarations in order, each with the texts that it may have; the empty text leaves it out. */
const FILES: Readonly<Record<string, readonly (readonly string[])[]>> = {
  "stock.finish": [
    [
      "material hard {\n  family waterborne polyurethane\n  covers 10 m2/L\n  recoat 2 h to 24 h\n}",
      "material hard {\n  family oil varnish\n  covers 12 m2/L\n  voc 400 g/L\n  recoat 24 h\n  rags self-heating\n}",
      "material hard {\n  family conversion varnish\n  mix 10:1 with hardener\n}",
      "",
    ],
    [
      "material hardener {\n  family conversion varnish\n  voc 500 g/L\n}",
      "material hardener {\n  family acetone\n}",
      "",
    ],
    [
      "recipe coats(clear: material = hard) {\n  layer clear x 3 {\n    wait until recoat\n    step sand 220\n    step dust\n  }\n}",
      "recipe coats(clear: material = hard) {\n  layer clear x 2\n  wait until cured\n}",
      "recipe coats(clear: material) {\n  safety dust_mask\n  layer clear\n}",
      "recipe coats(clear: material = hard) {\n  follow whole\n}",
      "",
    ],
    [
      "recipe prepare {\n  step sand 80, 120\n  step dust\n}",
      "recipe prepare {\n  step clean with soap\n}",
      "",
    ],
  ],
  "job.finish": [
    ['use "stock.finish"', ""],
    [
      "material oil_stain {\n  family oil stain\n  recoat 3 days\n}",
      "material walnut {\n  family gel stain\n}",
      "",
    ],
    [
      "recipe whole {\n  for wood\n  safety dust_mask, ventilate\n  follow prepare\n  layer oil_stain, wiped off\n  wait 24 h\n  follow coats\n  wait until cured\n}",
      "recipe whole {\n  follow coats(clear: hard)\n}",
      "recipe whole {\n  follow prepare\n  layer hard\n  wait overnight\n  layer hard\n}",
      "",
    ],
    // What others do before, around and after these decides what is said of them.
    [
      'recipe bare {\n  for wood\n  step mask "glass"\n  step sand 120, 180\n  step dust\n  layer acrylic_paint x 2\n}',
    ],
    [
      "recipe last {\n  for wood\n  step sand 400\n  step dust\n  layer dye_stain\n  layer waterborne_polyurethane\n}",
    ],
    ["recipe around {\n  safety dust_mask\n  follow bare\n}", "recipe around {\n  follow last\n}", ""],
    [
      "job third {\n  piece table\n  apply last to top\n  apply bare to top\n  apply last to top\n}",
      "job third {\n  piece table\n  apply bare to top\n  apply last to top\n}",
      "job third {\n  piece table\n  apply last to top\n  apply bare to top\n}",
      "job third {\n  piece table\n  apply bare to top\n}",
      "",
    ],
    ["recipe other(way: recipe = prepare) {\n  follow way\n  layer dewaxed_shellac\n}", ""],
    ["piece table {\n  surface top {\n    shape area 2 m2\n    wood pine\n    wear hard\n  }\n}", ""],
    [
      "shop room {\n  air 15 C, 70 % RH\n  room 40 m3, 1 air changes/h\n  hours Mon to Fri 09:00 to 17:00\n}",
      "shop room {\n  air 21 C, 50 % RH\n}",
      "",
    ],
    [
      "job first {\n  piece table\n  in room\n  start 2027-03-08\n  apply whole to top\n}",
      "job first {\n  piece table x 3\n  start 2027-03-08\n  apply prepare to top\n  apply coats to top\n}",
      "",
    ],
    [
      "job second {\n  piece table\n  in room\n  after first\n  start 2027-03-20\n  apply other(way: coats) to top\n}",
      "job second {\n  piece table\n  apply other to top\n}",
      "job second {\n  piece table\n  in room\n  start 2027-03-07\n  ready 2027-03-09\n  apply coats to top\n}",
      "",
    ],
  ],
};

const NAMES = Object.keys(FILES);

const resolve = (from: string, path: string): string => new URL(path, `file:///${from}`).pathname.slice(1);

function textsOf(chosen: ReadonlyMap<string, number>): Readonly<Record<string, string>> {
  return Object.fromEntries(
    NAMES.map((name) => [
      name,
      FILES[name]!.map((texts, place) => texts[chosen.get(`${name} ${place}`) ?? 0]!).join("\n\n"),
    ]),
  );
}

const said = (analysis: Analysis) =>
  NAMES.map((name) => ({
    findings: analysis.findings(name),
    totals: analysis.totals(name),
    hints: analysis.inlayHints(name, { start: 0, end: Number.MAX_SAFE_INTEGER }, INLAY_HINT_KINDS),
  }));

/** What an editor would say of the change from one text to the next: all that lies between their common ends. */
function changeBetween(before: string | undefined, now: string): ChangedPart | undefined {
  if (before === undefined) return undefined;
  let start = 0;
  while (start < Math.min(before.length, now.length) && before[start] === now[start]) start += 1;
  let end = 0;
  const most = Math.min(before.length, now.length) - start;
  while (end < most && before.at(-1 - end) === now.at(-1 - end)) end += 1;
  return { start, oldEnd: before.length - end, newEnd: now.length - end };
}

const edit = fc.record({
  file: fc.nat(NAMES.length - 1),
  place: fc.nat(20),
  text: fc.nat(5),
  isAsked: fc.boolean(),
});

/** Rules that look at plans: what they say may come late, but never of a plan that does not hold any more. */
const OF_PLANS = new Set(
  TRADE_RULES.flatMap((rule) => (rule.readsPlan && rule.id !== "recoat-too-early" ? [rule.id] : [])),
);

/** Makes all plans that are wanted, which may bring up others. */
function planAll(analyst: Analyst, queue: PlanQueue): void {
  for (let request = queue.next(); request; request = queue.next()) {
    while (request) {
      queue.done(request, { plan: plan(request.input) });
      request = queue.next();
    }
    analyst.plansChanged();
    said(analyst.analysis());
  }
}

test("says after any edits what it says from scratch, at once or when the plans are there", () => {
  let findings = 0;
  let hints = 0;
  let late = 0;
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 12 }), (edits) => {
      const analyst = createAnalyst({ resolve, plan });
      const queue = new PlanQueue(200, () => {});
      const later = createAnalyst({ resolve, plan: queue.plan });
      const chosen = new Map<string, number>();
      const texts = new Map<string, string>();
      const write = (): void => {
        for (const [name, text] of Object.entries(textsOf(chosen))) {
          analyst.setFile(name, text, changeBetween(texts.get(name), text));
          later.setFile(name, text);
          texts.set(name, text);
        }
      };
      write();
      said(analyst.analysis());
      planAll(later, queue);
      for (const { file, place, text, isAsked } of edits) {
        const name = NAMES[file]!;
        const slot = place % FILES[name]!.length;
        chosen.set(`${name} ${slot}`, text % FILES[name]![slot]!.length);
        write();
        if (!isAsked) continue; // several edits before anyone looks
        const fresh = createAnalyst({ resolve, plan });
        for (const [other, whole] of Object.entries(textsOf(chosen))) fresh.setFile(other, whole);
        const expected = said(fresh.analysis());
        findings += expected.reduce((sum, one) => sum + one.findings.length, 0);
        hints += expected.reduce((sum, one) => sum + one.hints.length, 0);
        expectSame(said(analyst.analysis()), expected);
        const first = said(later.analysis());
        const ofPlans = first.flatMap((one) => one.findings.filter(({ rule }) => OF_PLANS.has(rule)));
        const all = expected.flatMap((one) => one.findings);
        for (const finding of ofPlans) expectAmong(all, finding);
        late += all.filter(({ rule }) => OF_PLANS.has(rule)).length - ofPlans.length;
        planAll(later, queue);
        expectSame(said(later.analysis()), expected);
      }
    }),
    { numRuns: 14, seed: 51 },
  );
  expect(findings).toBeGreaterThan(500); // there was something to say
  expect(hints).toBeGreaterThan(100);
  expect(late).toBeGreaterThan(20); // and some of it had to wait for plans
});
