/** The page beside a job's text: what it shows at a moment, and that nothing a person wrote becomes markup. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { airHtml } from "../../client/src/bench/air.ts";
import { cardsHtml, headHtml, shoppingHtml } from "../../client/src/bench/drawing.ts";
import { findingsHtml } from "../../client/src/bench/findings.ts";
import { heldOver, othersHeld } from "../../client/src/bench/held-over.ts";
import { levelled } from "../../client/src/bench/levelled.ts";
import { durationText, momentsOf, momentText, openingHour } from "../../client/src/bench/moments.ts";
import { benchPage } from "../../client/src/bench/page.ts";
import { drynessOf, sectionsHtml } from "../../client/src/bench/sections.ts";
import { shopChoiceHtml, timelineHtml } from "../../client/src/bench/timeline.ts";
import type { Bench } from "../../server/src/views/bench/model.ts";
import { bench, look } from "../harness/drawn-bench.ts";
import { l10n } from "../harness/l10n.ts";

const BAD = `"><img src=x onerror=alert(1)><script>'`;

test("hostile names are text in every block, at every moment, with and without a plan", () => {
  const plans = ["planned", "being planned", "none"] as const;
  for (const plan of plans) {
    const hostile = { ...bench(BAD), plan };
    const all = [0, 3].flatMap((moment) => [
      headHtml(hostile),
      cardsHtml(hostile, l10n),
      sectionsHtml(hostile, look(moment)),
      timelineHtml(hostile, look(moment)),
      shopChoiceHtml(hostile, look(moment)),
      airHtml(hostile, look(moment)),
      airHtml({ ...hostile, air: { ...hostile.air, state: "no room" } }, look(moment)),
      shoppingHtml(hostile, look(moment)),
      findingsHtml(hostile, l10n),
    ]);
    for (const html of all) {
      expect(html).not.toMatch(/<img|<script|"\s*onerror|style=/i);
    }
    // The same blocks have the same tags, whatever the names are.
    const tags = (html: string): readonly string[] => [...html.matchAll(/<\/?[a-z]+/gi)].map(([tag]) => tag);
    expect(tags(headHtml(hostile))).toEqual(tags(headHtml({ ...bench("plain"), plan })));
    expect(tags(cardsHtml(hostile, l10n))).toEqual(tags(cardsHtml({ ...bench("plain"), plan }, l10n)));
    expect(tags(shoppingHtml(hostile, look(0)))).toEqual(tags(shoppingHtml(bench("plain"), look(0))));
  }
});

test("weighs each way with the pieces where a price is stated, and nothing where none is", () => {
  const job = bench("varnish");
  expect(shoppingHtml(job, look(0))).toContain("Is it worth it?");
  const { worth: _, ...unpriced } = job;
  expect(shoppingHtml(unpriced, look(0))).not.toContain("worth");
});

test("the slider stops where something begins or ends, and coats are there from the end of their work", () => {
  const job = bench("varnish");
  expect(momentsOf(job)).toEqual([0, 0.5, 0.75, 2.75, 3]);
  // 09:00 and 2 h 45 min; 8 March 2027 is a Monday.
  expect(momentText(job, 2.75, l10n)).toBe("Mon 8 Mar 11:45");
  const coats = (moment: number): number =>
    [...sectionsHtml(job, look(moment)).matchAll(/<g data-step/g)].length;
  expect([0, 1, 2, 3, 4].map(coats)).toEqual([0, 0, 1, 1, 2]);
});

test("a coat is wet, touch-dry, takes a coat and is cured by the hours since it is on", () => {
  const coat = { onAt: 1, touchH: 1, recoatH: 2, curedH: 10 };
  const at = [1, 2, 3, 11].map((moment) => drynessOf(coat, moment, true, true));
  expect(at).toEqual(["wet", "touch-dry", "takes a coat", "cured"]);
  expect(drynessOf(coat, 0, false, true)).toBe("to come");
  expect(drynessOf({ onAt: 1 }, 5, true, true)).toBe("on");
});

test("says that a plan is being made, or what is missing for one", () => {
  expect(timelineHtml({ ...bench("a"), plan: "being planned" }, look(0))).toContain("is being made");
  const none = { ...bench("a"), plan: "none" as const, gaps: [{ figure: "Dates", missing: ["no `start`"] }] };
  expect(timelineHtml(none, look(0))).toContain("There is no plan: no start.");
});

test("the page lets in nothing but its own script and looks", () => {
  const page = benchPage("abc", "https://file/bench.js", "https://file");
  expect(page).toContain("default-src 'none'; style-src 'nonce-abc'; script-src 'nonce-abc' https://file");
  expect([...page.matchAll(/https?:/g)]).toHaveLength(2);
  expect(page).not.toMatch(/ style=| on[a-z]+=/);
});

test("the air of the room marks the hours that ask for more than there is, in more than colour", () => {
  const job = bench("varnish");
  const html = airHtml(job, look(0));
  const bars = html.match(
    /<g role="button"[\s\S]*?<\/title>[\s\S]*?(?=<g role="button"|<path class="limit")/gu,
  )!;
  expect(bars).toHaveLength(2);
  expect(bars[0]).toMatch(/data-at="0"[\s\S]*aria-label="Mon 8 Mar 09:00: varnish"[\s\S]*class="beyond"/);
  expect(bars[1]).not.toMatch(/beyond|class="(?:mark|tick)/);
  // The line of what there is stands at half the height of a bar that asks for twice as much: 22 + 56 / 2.
  expect(html).toMatch(/<path class="limit" d="M108 50H\d/);
  expect(html).toMatch(
    /<tr><th scope="row">Mon 8 Mar 09:00<\/th><td>4<\/td><td>2<\/td><td>40<\/td><td>varnish<\/td>/,
  );
  expect(html).toContain("Not counted: varnish.");
});

test("without a room the grams are drawn, no limit, and what to write; nothing where nothing leaves", () => {
  const job = bench("varnish");
  const hours = [{ hour: 0, grams: 40, text: "40 g leave" }];
  const air = { ...job.air, room: "", said: [], missing: [], hours };
  const html = airHtml({ ...job, air: { ...air, state: "no room" } }, look(0));
  expect(html).toContain("state the room in the shop");
  expect(html).not.toMatch(/limit"|beyond/);
  expect(airHtml({ ...job, air: { ...air, state: "none", hours: [] } }, look(0))).toBe("");
  expect(airHtml({ ...job, air: { ...air, state: "being planned", hours: [] } }, look(0))).toContain(
    "planned",
  );
});

test("while it is planned anew, the plan of the text before is drawn with the lines of the text now", () => {
  const last = bench("varnish");
  const { startAt: _, ...rest } = last;
  const now: Bench<null> = {
    ...rest,
    title: "now",
    plan: "being planned",
    endHours: 0,
    dates: [{ name: "full use", text: "being planned", reason: "" }],
    air: { ...last.air, state: "being planned", hours: [], worst: "", at: 3 },
    surfaces: last.surfaces.map((surface) => ({
      ...surface,
      bars: [],
      coats: surface.coats.map(({ onAt: __, ...coat }) => ({ ...coat, at: 2 })),
      steps: surface.steps.map((step) => ({ ...step, at: 1 })),
    })),
  };
  const held = heldOver(now, last);
  expect(held).toMatchObject({ title: "now", plan: "planned", startAt: last.startAt, dates: last.dates });
  expect(momentsOf(held)).toEqual(momentsOf(last));
  expect(held.surfaces[0]!.coats.map(({ at, onAt }) => [at, onAt])).toEqual([
    [2, 0.75],
    [2, 3],
  ]);
  expect(timelineHtml(held, look(0))).toContain('data-at="1"');
  expect(timelineHtml(held, look(0, false))).not.toContain('data-at="0"');
  expect(held.air).toMatchObject({ state: "known", worst: "varnish", at: 3 });
  expect(held.air.hours.map(({ at }) => at)).toEqual([undefined, undefined]);
});

test("a mark sits where a finding is: on its coat once that is on, and on the surface for all else", () => {
  const job = bench("varnish");
  const marks = (moment: number) =>
    [
      ...sectionsHtml(job, look(moment)).matchAll(
        /<g role="button" tabindex="0" class="([^"]+)" data-at="(\d)" data-key="([^"]+)"/g,
      ),
    ].map(([, ...found]) => found);
  const onSurface = ["mark other spot", "0", "mark 0 surface"];
  expect(marks(0)).toEqual([onSurface]);
  // The gravest of the two on the coat gives the shape.
  expect(marks(2)).toEqual([onSurface, ["mark error spot", "0", "mark 0 coat 0"]]);
  expect(sectionsHtml(job, look(2))).toContain('aria-label="2 findings. error: varnish; hint: varnish"');
  const bare = { ...job, surfaces: job.surfaces.map((each) => ({ ...each, findings: [] })) };
  expect(sectionsHtml(bare, look(0))).not.toContain("marks");
});

test("marks on thin films do not hide each other", () => {
  const job = bench("varnish");
  const [surface] = job.surfaces;
  const thin = surface!.section.coats.map((coat) => ({ ...coat, dryUm: 3 }));
  const found = surface!.coats.map((coat) => ({ ...coat, findings: [0] }));
  const section = { ...surface!.section, coats: thin };
  const html = sectionsHtml({ ...job, surfaces: [{ ...surface!, section, coats: found }] }, look(4));
  const heights = [...html.matchAll(/transform="translate\(\d+ ([\d.]+)\)" aria-label/g)].map(([, y]) =>
    Number(y),
  );
  expect(heights).toHaveLength(3);
  for (const [i, y] of heights.slice(1).entries()) expect(heights[i]! - y).toBeGreaterThanOrEqual(18);
});

test("findings are counted by gravity, and many are behind a line that says how many more", () => {
  const job = bench("varnish");
  expect(findingsHtml(job, l10n)).toContain("1 error, 1 hint");
  expect(findingsHtml(job, l10n)).not.toContain(" more</summary>");
  const many = { ...job, findings: Array.from({ length: 15 }, () => job.findings[1]!) };
  expect(findingsHtml(many, l10n)).toContain("<summary>7 more</summary>");
  expect(findingsHtml({ ...job, findings: [] }, l10n)).toBe("");
});

test("other jobs of the shop stand under the own one, dimmed, and lead to their lines; or not, as is chosen", () => {
  const job = bench("varnish");
  const html = timelineHtml(job, look(0));
  expect(html.indexOf("bar job mine")).toBeLessThan(html.indexOf("bar job other"));
  expect([...html.matchAll(/class="bar job other" data-at="(\d*)"/g)].map(([, at]) => at)).toEqual(["0", ""]);
  // 20 h before Monday 09:00.
  expect(html).toContain('aria-label="varnish: varnish; Sun 7 Mar 13:00 to 15:00"');
  expect(html).toContain("<caption>Other jobs of the shop</caption>");
  const alone = timelineHtml(job, look(0, false));
  expect(alone).not.toMatch(/bar job|class="others"|Other jobs/);
  expect(shopChoiceHtml(job, look(0))).toContain(
    "checked> with the other jobs of the shop (2, the nearest 2 of 4)",
  );
  expect(shopChoiceHtml({ ...job, others: [] }, look(0))).toBe("");
  // With the others the axis begins with the first of them, so the own work is not at its beginning.
  const firstBar = (said: string): number =>
    Number(/class="bar step[^"]*"[\s\S]*?<rect x="([\d.]+)"/.exec(said)![1]);
  expect(firstBar(alone)).toBe(108);
  expect(firstBar(html)).toBeGreaterThan(150);
});

test("while other jobs are planned anew, they are drawn as they were", () => {
  const { others } = bench("varnish");
  const anew = others.map((other) => ({
    ...other,
    plan: "being planned" as const,
    note: "being planned",
    rows: [],
  }));
  const held = othersHeld(anew, others);
  expect(held[0]!.rows[0]!.bars.map(({ start, at }) => [start, at])).toEqual([
    [-20, undefined],
    [-18, undefined],
  ]);
  expect(held[0]!.note).toBe("varnish");
  expect(othersHeld(anew, [])).toEqual(anew);
});

test("says what is to be done next and when, what after it, and what was done last", () => {
  const { findings, ...rest } = bench("varnish");
  const job = { ...rest, findings: [] };
  expect(cardsHtml({ ...job, findings }, l10n)).toContain("<h2>When that is put right, Mon 8 Mar 11:45</h2>");
  expect(cardsHtml(job, l10n)).toMatch(
    /<h2>Next, Mon 8 Mar 11:45<\/h2><p class="value">varnish<\/p><p>varnish\. Wear: varnish<\/p><p class="second">Then: varnish \(varnish and varnish\)<\/p><p class="danger">Dangers of this job: varnish<\/p><p class="second">Done last: Mon 8 Mar 09:30, varnish \(varnish\)/u,
  );
  const { lastDone: _, ...fresh } = job;
  const atOnce = [job.next[0]!, { ...job.next[1]!, start: job.next[0]!.start! }];
  const begun = cardsHtml({ ...fresh, next: atOnce }, l10n);
  expect(begun).toContain("<h2>To begin with, Mon 8 Mar 11:45</h2>");
  expect(begun).toContain("At the same time: varnish (varnish and varnish)");
  expect(cardsHtml({ ...job, next: [] }, l10n)).toContain("All steps are done");
});

test("durations are told in the units that people use for them", () => {
  const said = [0.25, 1, 2.5, 36, 50, 72, 76.2].map((hours) => durationText(hours, l10n));
  expect(said).toEqual(["15 min", "1 h", "2 h 30 min", "36 h", "2 days 2 h", "3 days", "3 days 4 h"]);
});

test("a stretch of time that is drawn much shorter than the work has a mark, and the mark is explained", () => {
  const job = bench("varnish");
  // From 3 h, the end of the work, to 30 h, the end of the plan: 27 h.
  const alone = timelineHtml(job, look(0, false));
  expect([...alone.matchAll(/<path class="break"/gu)]).toHaveLength(2);
  expect(alone).toContain("nights and long drying are drawn short here");
  const brief = timelineHtml({ ...job, endHours: 3 }, look(0, false));
  expect(brief).not.toMatch(/class="break"|drawn short/u);
});

test("the work of all jobs of the shop stands beside its hours, and a clash of them is said", () => {
  const job = bench("varnish");
  const html = timelineHtml(job, look(0));
  expect(html).toContain("<title>Sun 7 Mar: 2 h of 8 h</title>");
  expect(html).toContain("Mon 8 Mar 09:00 to 09:30: 2 people are needed at once, the shop has 1");
  expect(timelineHtml(job, look(0, false))).not.toContain("All work");
  const [calm, full] = job.days;
  const { clash: _, ...over } = full!;
  expect(timelineHtml({ ...job, days: [calm!, over] }, look(0))).toContain(
    "Mon 8 Mar: more work than the shop has hours, 12 h of 8 h.",
  );
  expect(timelineHtml({ ...job, days: [calm!] }, look(0))).toContain(
    "the fullest day is Sun 7 Mar, 2 h of 8 h.",
  );
});

test("coats that are to come are outlined where they will be, and every row names its place in the drawing", () => {
  const job = bench("varnish");
  const html = sectionsHtml(job, look(2));
  expect([...html.matchAll(/<rect [^>]*stroke-dasharray="4 3"\/>/gu)]).toHaveLength(2);
  const heights = [...html.matchAll(/<li class="[^"]*"[^>]* data-y="([\d.]+)"/gu)].map(([, y]) => Number(y));
  // Two coats, the old one and the wood, from the top down.
  expect(heights).toHaveLength(4);
  expect(heights).toEqual(heights.toSorted((a, b) => a - b));
});

describe("rows beside a drawing", () => {
  const row = (y: number, height: number, weight = 1) => ({ y, height, weight });

  test("stand level with what they name where they have room", () => {
    expect(levelled([row(20, 20), row(60, 30)], 100)).toEqual({ tops: [10, 45], shift: 0, height: 100 });
  });

  test("share what is wanting where they have not, and those that weigh more move less", () => {
    // Both want to be at 50: each moves by half of its height.
    expect(levelled([row(50, 20), row(50, 20)], 100).tops).toEqual([30, 50]);
    const [first, second] = levelled([row(50, 20, 9), row(50, 20)], 100).tops;
    // 20 px are wanting; a tenth of them is borne by the one that weighs nine times as much.
    expect([first, second]).toEqual([38, 58]);
  });

  test("the drawing goes down where the first would stand above it", () => {
    expect(levelled([row(5, 30), row(60, 30)], 80)).toEqual({ tops: [0, 55], shift: 10, height: 90 });
  });

  test("never lie over each other, and keep their order", () => {
    const rows = fc.array(
      fc.record({
        y: fc.integer({ min: 0, max: 400 }),
        height: fc.integer({ min: 10, max: 60 }),
        weight: fc.constantFrom(1, 50),
      }),
    );
    fc.assert(
      fc.property(rows, (wanted) => {
        const { tops, height } = levelled(wanted, 300);
        for (const [i, top] of tops.entries()) {
          expect(top).toBeGreaterThanOrEqual(0);
          if (i > 0) expect(top).toBeGreaterThanOrEqual(tops[i - 1]! + wanted[i - 1]!.height - 0.5);
          expect(top + wanted[i]!.height).toBeLessThanOrEqual(height + 0.5);
        }
      }),
    );
  });
});

test("dates that are the same for the same reason are said once", () => {
  const job = bench("varnish");
  const date = (name: string, reason: string) => ({ name, text: "no date", reason });
  const html = (dates: Bench<null>["dates"]): string => cardsHtml({ ...job, dates }, l10n);
  const same = html([date("last work", "wax"), date("light use", "wax"), date("full use", "wax")]);
  expect(same).toContain("<h2>last work, light use and full use</h2>");
  expect([...same.matchAll(/no date/gu)]).toHaveLength(1);
  const apart = html([date("last work", "wax"), date("light use", "oil")]);
  expect([...apart.matchAll(/no date/gu)]).toHaveLength(2);
});

describe("a job that is not to be worked by yet", () => {
  const sound = bench("varnish");
  const doubtful = { ...sound, isSound: false };

  test("has its dates greyed, and says until when they do not hold", () => {
    expect(cardsHtml(sound, l10n)).not.toContain("doubt");
    const cards = cardsHtml(doubtful, l10n);
    expect(cards).toContain('<div class="card doubt">');
    expect(cards).toContain("does not hold until the errors are put right");
    // Where there is no date the reason stands there already.
    const { startAt: _, ...undated } = doubtful;
    expect(cardsHtml(undated, l10n)).not.toContain("does not hold");
  });

  test("has the bars of lines with errors in the colour of one", () => {
    const bars = [...timelineHtml(sound, look(0)).matchAll(/class="(bar (?:step|layer)[^"]*)"/gu)].map(
      ([, name]) => name,
    );
    expect(bars).toEqual(["bar step wrong", "bar layer wrong", "bar layer wrong"]);
    const [surface] = sound.surfaces;
    const steps = surface!.steps.map(({ gravest: _, ...step }) => step);
    expect(timelineHtml({ ...sound, surfaces: [{ ...surface!, steps }] }, look(0))).not.toContain("wrong");
  });

  test("shows no film as cured that never cures, and says why", () => {
    const coat = { onAt: 1, touchH: 1, recoatH: 2, curedH: 100, never: "too cold to dry" };
    const at = (moment: number) => drynessOf(coat, moment, true, true);
    expect([1.5, 2, 3, 101].map(at)).toEqual(["wet", "touch-dry", "not cured", "not cured"]);
    expect(drynessOf({ ...coat, never: undefined as never }, 101, true, true)).toBe("cured");
    const [surface] = sound.surfaces;
    const coats = surface!.coats.map((each) => ({ ...each, curedH: 1, never: "too cold to dry" }));
    const html = sectionsHtml({ ...sound, surfaces: [{ ...surface!, coats }] }, look(4));
    expect(html).toContain("not cured: too cold to dry");
    expect(html).not.toContain(">cured<");
  });
});

describe("the hour at which it opens", () => {
  const at = (clock: string): Date => new Date(`${clock}Z`);
  const begun = bench("varnish");
  const { lastDone: _, ...fresh } = begun;

  test("is that of what is next by the record, whatever the clock says", () => {
    expect(openingHour(begun, at("2027-03-08T20:00"))).toBe(2.75);
    expect(openingHour({ ...begun, next: [] }, at("2027-03-08T10:00"))).toBeUndefined();
  });

  test("is the present without a record, from the start to the end of the plan, and else the end", () => {
    // It starts on 8 March 2027 at 09:00 and takes 30 h.
    const hours = ["2027-03-08T08:59", "2027-03-08T09:00", "2027-03-08T11:30", "2027-03-09T15:00"].map(
      (clock) => openingHour(fresh, at(clock)),
    );
    expect(hours).toEqual([undefined, 0, 2.5, undefined]);
    const { startAt: _start, ...undated } = fresh;
    expect(openingHour(undated, at("2027-03-08T11:30"))).toBeUndefined();
    expect(openingHour({ ...fresh, plan: "none" }, at("2027-03-08T11:30"))).toBeUndefined();
  });
});
