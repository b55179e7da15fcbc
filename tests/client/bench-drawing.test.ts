/** The page beside a job's text: what it shows at a moment, and that nothing a person wrote becomes markup. */
import { expect, test } from "vitest";
import {
  airHtml,
  drynessOf,
  findingsHtml,
  headHtml,
  momentsOf,
  momentText,
  sectionsHtml,
  shoppingHtml,
  timelineHtml,
} from "../../client/src/bench/drawing.ts";
import { benchPage } from "../../client/src/bench/page.ts";
import type { Bench } from "../../server/src/views/bench/model.ts";

const BAD = `"><img src=x onerror=alert(1)><script>'`;

/** Two coats, at 0.5 h and 2.75 h; whatever is text is hostile. */
const bench = (text: string): Bench<null> => ({
  name: text,
  title: text,
  at: 0,
  facts: [{ name: "Shop", text }],
  dates: [{ name: "full use", text, reason: text }],
  plan: "planned",
  startAt: "2027-03-08T09:00",
  endHours: 30,
  surfaces: [
    {
      title: text,
      about: [text],
      section: {
        title: text,
        wood: { name: text, grain: "softwood", fill: "#d8b483" },
        old: [{ title: text, count: 1, isKept: false, removedBy: 1, isAbraded: false, fill: "#888888" }],
        coats: [1, 2].map((coat) => ({
          title: text,
          coat,
          coats: 2,
          step: coat + 1,
          index: coat,
          buildsFilm: true,
          dryUm: 33,
          fill: "#e6e1d3",
          isClear: true,
          sheen: text,
          gleam: 0.34,
          isOptional: false,
        })),
      },
      coats: [
        { at: 0, onAt: 0.75, touchH: 1, recoatH: 2, curedH: 100, gravest: "error" },
        { at: 0, onAt: 3, touchH: 1, recoatH: 2, curedH: 100 },
      ],
      bars: [
        { step: 1, kind: "step", start: 0, end: 0.5, pieces: [1], slack: 0 },
        { step: 2, kind: "layer", start: 0.5, end: 0.75, pieces: [1], slack: 0, closes: 20 },
        { step: 3, kind: "layer", start: 2.75, end: 3, pieces: [1], slack: 1 },
      ],
      steps: [1, 2, 3].map((number) => ({
        number,
        kind: number === 1 ? "step" : "layer",
        what: text,
        at: 0,
        gravest: "error",
      })),
    },
  ],
  shut: [{ from: 8, to: 24 }],
  air: [{ hour: 0, grams: 40 }],
  airVerdict: [text],
  materials: [
    { title: text, at: 0, takes: text, onHand: text, cans: [text], price: text, gaps: [] },
    { title: text, takes: text, onHand: "", cans: [], price: "", gaps: [text] },
  ],
  costs: [{ name: text, text }],
  worth: { basis: text, columns: [text], rows: [{ name: text, figures: [text] }], notes: [text] },
  gaps: [{ figure: text, missing: [text] }],
  findings: [{ severity: "error", headline: text, remedy: text, at: 0 }],
  places: [null],
});

const look = (moment: number) => ({ moment, width: 900, ticked: new Set<string>() });

test("hostile names are text in every block, at every moment, with and without a plan", () => {
  const plans = ["planned", "being planned", "none"] as const;
  for (const plan of plans) {
    const hostile = { ...bench(BAD), plan };
    const all = [0, 3].flatMap((moment) => [
      headHtml(hostile),
      sectionsHtml(hostile, look(moment)),
      timelineHtml(hostile, look(moment)),
      airHtml(hostile),
      shoppingHtml(hostile, look(moment)),
      findingsHtml(hostile),
    ]);
    for (const html of all) {
      expect(html).not.toMatch(/<img|<script|"\s*onerror|style=/i);
    }
    // The same blocks have the same tags, whatever the names are.
    const tags = (html: string): readonly string[] => [...html.matchAll(/<\/?[a-z]+/gi)].map(([tag]) => tag);
    expect(tags(headHtml(hostile))).toEqual(tags(headHtml({ ...bench("plain"), plan })));
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
  expect(momentText(job, 2.75)).toBe("Mon 8 Mar 11:45");
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
