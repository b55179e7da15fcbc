/** A job as the page of the bench view draws it, whose texts are all the same. */
import type { Look } from "../../client/src/bench/moments.ts";
import type { Bench } from "../../server/src/views/bench/model.ts";
import { l10n } from "./l10n.ts";

/** Two coats, at 0.5 h and 2.75 h; whatever is text is `text`. */
export const bench = (text: string): Bench<null> => ({
  name: text,
  title: text,
  at: 0,
  facts: [{ name: "Shop", text }],
  dates: [{ name: "full use", text, reason: text }],
  dangers: [text],
  next: [
    { what: text, where: [text], start: 2.75, end: 3, wear: [text] },
    { what: text, where: [text, text], wear: [] },
  ],
  lastDone: { what: text, where: [text], start: 0.5, wear: [] },
  days: [
    { from: -33, to: -9, hours: 2, has: 8, crew: 1 },
    {
      from: -9,
      to: 15,
      hours: 12,
      has: 8,
      crew: 1,
      clash: { from: 0, to: 0.5, needs: 2, jobs: [text, text] },
    },
  ],
  isSound: true,
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
          isFilm: true,
          dryUm: 33,
          fill: "#e6e1d3",
          isClear: true,
          sheen: text,
          gleam: 0.34,
          isOptional: false,
        })),
      },
      coats: [
        { at: 0, takes: text, onAt: 0.75, touchH: 1, recoatH: 2, curedH: 100, findings: [0, 1] },
        { at: 0, takes: text, onAt: 3, touchH: 1, recoatH: 2, curedH: 100, findings: [] },
      ],
      bars: [
        { index: 0, step: 1, kind: "step", start: 0, end: 0.5, pieces: [1], slack: 0 },
        { index: 1, step: 2, kind: "layer", start: 0.5, end: 0.75, pieces: [1], slack: 0, closes: 20 },
        { index: 2, step: 3, kind: "layer", start: 2.75, end: 3, pieces: [1], slack: 1 },
      ],
      steps: [1, 2, 3].map((number) => ({
        index: number - 1,
        number,
        kind: number === 1 ? "step" : "layer",
        what: text,
        at: 0,
        gravest: "error",
      })),
      findings: [1],
    },
  ],
  others: [
    {
      name: `other ${text}`,
      title: text,
      at: 0,
      plan: "planned",
      note: text,
      rows: [
        {
          title: text,
          bars: [
            { kind: "work", start: -20, end: -18, what: text, at: 0 },
            { kind: "wait", start: -18, end: 40, what: text },
          ],
        },
      ],
    },
    { name: text, title: text, plan: "none", note: text, rows: [] },
  ],
  othersLeft: 2,
  shut: [{ from: 8, to: 24 }],
  air: {
    state: "known",
    at: 0,
    room: text,
    hours: [
      { hour: 0, grams: 40, needs: 4, has: 2, verdict: "short", text, at: 0 },
      { hour: 1, grams: 40, needs: 1.5, has: 2, verdict: "enough", text },
    ],
    worst: text,
    missing: [text],
    night: text,
    said: [text],
  },
  alsoNeeded: [{ name: text, items: [text] }],
  materials: [
    { title: text, at: 0, takes: text, onHand: text, cans: [text], price: text, gaps: [] },
    { title: text, takes: text, onHand: "", cans: [], price: "", gaps: [text] },
  ],
  currency: text,
  costs: [
    { kind: "part", name: text, text, sum: text, missing: [] },
    { kind: "total", name: text, text, sum: "", missing: [text] },
  ],
  worth: { basis: text, columns: [text], rows: [{ name: text, figures: [text] }], notes: [text] },
  gaps: [{ figure: text, missing: [text] }],
  findings: [
    { severity: "error", headline: text, lines: [text], where: [text], at: 0 },
    { severity: "hint", headline: text, lines: [text], where: [text], at: 0 },
  ],
  places: [null],
});

export const look = (moment: number, isWholeShop = true): Look => ({
  moment,
  width: 900,
  isWholeShop,
  ticked: new Set<string>(),
  l10n,
});
