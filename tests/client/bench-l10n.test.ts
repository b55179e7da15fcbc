/**
 * The page of the bench view in another language: no text of it goes past `l10n.t`, and in German it is German. Texts of the
 * server stand in it as they come.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { type DefaultTreeAdapterTypes, parse, parseFragment } from "parse5";
import { describe, expect, test } from "vitest";
import { ROOT } from "../../client/bundles.ts";
import { airHtml } from "../../client/src/bench/air.ts";
import { cardsHtml, headHtml, shoppingHtml } from "../../client/src/bench/drawing.ts";
import { findingsHtml } from "../../client/src/bench/findings.ts";
import { type L10n, l10nOf } from "../../client/src/bench/l10n.ts";
import { benchPage, IN_ENGLISH } from "../../client/src/bench/page.ts";
import { sectionsHtml } from "../../client/src/bench/sections.ts";
import { shopChoiceHtml, timelineHtml } from "../../client/src/bench/timeline.ts";
import type { Bench } from "../../server/src/views/bench/model.ts";
import { bench, look } from "../harness/drawn-bench.ts";

const GERMAN: Readonly<Record<string, string>> = JSON.parse(
  readFileSync(path.join(ROOT, "client/l10n/bundle.l10n.de.json"), "utf8"),
);

/** All blocks of a job at its first and last moment. */
const blocksOf = (job: Bench<unknown>, l10n: L10n): readonly string[] =>
  [0, 4].flatMap((moment) => {
    const said = { ...look(moment), l10n };
    return [
      headHtml(job),
      cardsHtml(job, l10n),
      sectionsHtml(job, said),
      timelineHtml(job, said),
      shopChoiceHtml(job, said),
      airHtml(job, said),
      shoppingHtml(job, said),
      findingsHtml(job, l10n),
    ];
  });

const READ = new Set(["aria-label", "title", "alt", "placeholder"]);

/** What a person reads or hears of markup. */
function* saidIn(node: DefaultTreeAdapterTypes.ParentNode): Generator<string> {
  for (const child of node.childNodes) {
    if ("value" in child) yield child.value;
    if (!("tagName" in child) || child.tagName === "script" || child.tagName === "style") continue;
    for (const { name, value } of child.attrs) if (READ.has(name)) yield value;
    yield* saidIn(child);
  }
}

/** Units, and what the days of March 2027 and lists are in English, which are not asked for as texts. */
const NOT_TEXTS = /µm|\b(?:um|h|min|and)\b|\b\p{Lu}\p{Ll}{2} \d+ Mar\b/gu;

/** Every way in which a job can be, with no letter in what the server says of it. */
function jobs(): readonly Bench<unknown>[] {
  const job = {
    ...bench("§"),
    facts: [{ name: "§", text: "§" }],
    dates: [{ name: "§", text: "§", reason: "" }],
  };
  const [surface] = job.surfaces;
  const { section } = surface!;
  const [coat] = section.coats;
  const old = section.old[0]!;
  const { startAt: _, ...undated } = job;
  const { lastDone: _done, ...fresh } = job;
  const unfound = {
    findings: [],
    surfaces: [
      { ...surface!, findings: [], coats: surface!.coats.map((each) => ({ ...each, findings: [] })) },
    ],
  };
  const others = {
    ...job,
    othersLeft: 0,
    materials: [],
    findings: (["error", "warning", "information", "hint"] as const).flatMap((severity) =>
      Array.from({ length: 4 }, () => ({ severity, headline: "§", lines: [], where: [], at: 0 })),
    ),
    surfaces: [
      {
        ...surface!,
        section: {
          ...section,
          filmUm: 66,
          old: [
            { ...old, count: 2, isKept: true, isAbraded: true },
            { ...old, count: 2, isKept: true, isAbraded: false },
            { ...old, isKept: false, removedBy: undefined },
          ],
          coats: [
            { ...coat!, wetUm: 100, isOptional: true, dryUm: undefined },
            { ...coat!, coats: 1, isFilm: false, dryUm: undefined },
          ],
        },
      },
    ],
  } as unknown as Bench<unknown>;
  const hours = Array.from({ length: 30 }, (_each, hour) => ({ ...job.air.hours[0]!, hour }));
  return [
    job,
    others,
    { ...others, ...undated, facts: [], dates: [] } as Bench<unknown>,
    { ...job, plan: "being planned", air: { ...job.air, state: "being planned" } },
    { ...job, plan: "none", air: { ...job.air, state: "none", said: [] } },
    { ...fresh, ...unfound, days: [] },
    { ...job, ...unfound, next: [], days: job.days.map(({ clash: _clash, ...day }) => day) },
    {
      ...job,
      ...unfound,
      next: job.next.map((work) => ({ ...work, start: 1 })),
      days: job.days.slice(0, 1),
    },
    { ...job, plan: "none", gaps: [], air: { ...job.air, state: "no room", room: "" } },
    { ...job, air: { ...job.air, hours } },
  ] as readonly Bench<unknown>[];
}

describe("the page of the bench view", () => {
  test("asks for each of its texts: where none has a letter, nothing of it has one", () => {
    const asked = new Set<string>();
    const silent: L10n = {
      t(text, ...args) {
        asked.add(text);
        return `[${args.join(" ")}]`;
      },
    };
    for (const job of jobs()) {
      for (const html of blocksOf(job, silent)) {
        const said = [...saidIn(parseFragment(html))].filter((each) =>
          /\p{L}/u.test(each.replaceAll(NOT_TEXTS, "")),
        );
        expect(said).toEqual([]);
      }
    }
    expect(asked.size).toBeGreaterThan(90);
    for (const text of asked) expect(GERMAN, text).toHaveProperty([text]);
  });

  test("its frame is in the language of the editor, with the words for its script", () => {
    const page = benchPage("n", "s", "o", { language: "de", bundle: GERMAN });
    const document = parse(page);
    const english = new Set(
      [...saidIn(parse(benchPage("n", "s", "o", IN_ENGLISH)))].filter((each) => /\p{L}/u.test(each)),
    );
    expect(english.size).toBeGreaterThan(10);
    expect([...saidIn(document)].filter((each) => english.has(each))).toEqual([]);
    expect(page).toContain('<html lang="de">');
    expect(page).toContain(">Blatt zum Drucken speichern</button>");
    const [, words] = /<script type="application\/json" id="words">(.*)<\/script>/u.exec(page)!;
    expect(JSON.parse(words!)).toEqual(GERMAN);
    expect(words).not.toContain("<");
  });

  test("a text of another language cannot end the element that carries it", () => {
    const page = benchPage("n", "s", "o", { language: '"><b>', bundle: { Calendar: "</script><b>" } });
    expect(page).not.toMatch(/<b>|<\/script><b/u);
  });

  test("in German it says what a German-speaking finisher says", () => {
    const job = jobs()[0]!;
    const html = blocksOf(job, l10nOf(GERMAN, "de")).join("");
    for (const text of [
      "Mo., 8. März 09:00",
      "Wenn das behoben ist, Mo., 8. März 11:45",
      // The hour that asks for 1.5 air changes.
      "<td>1,5</td>",
      "Schicht 1 von 2",
      "überarbeitbar",
      "Luft des Raums",
      "wird in Schritt 1 abgenommen",
      "1 Fehler, 1 Tipp",
      "mit den anderen Aufträgen der Werkstatt (2, die nächsten 2 von 4)",
    ])
      expect(html).toContain(text);
  });
});
