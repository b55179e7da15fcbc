/** The work on all surfaces in the order of time. */
import { expect, test } from "vitest";
import { sheetDocument } from "../../server/src/reports/sheet-document.ts";
import { sheetsHtml } from "../../server/src/reports/sheet-html.ts";
import { fingerprintOf } from "../../server/src/views/sheet/fingerprint.ts";
import { job, only, PLACES, STOCK } from "../harness/bench-sheets.ts";

const text = (fields: string): string => `${STOCK}${PLACES}recipe work {
  safety dust_mask, gloves
  step   sand 150, takes 10 min
  layer  bench_clear x 2, by pad, takes 10 min
}
${job(fields)}`;

test("a fingerprint is the 32-bit FNV-1a hash", () => {
  // Fowler, Noll and Vo: offset basis 0x811c9dc5 for nothing.
  expect(fingerprintOf([])).toBe("811c9dc5");
  // "a" is e40c292c by their test suite (from memory); its closing zero multiplies it once more by 16777619.
  const after = (0xe40c292cn * 16777619n) & 0xffffffffn;
  expect(fingerprintOf(["a"])).toBe(after.toString(16).padStart(8, "0"));
});

test("pieces that follow each other are one line, and the wait is that of the last of them", () => {
  const { groups } = only(text("in mill\n  start 2027-03-08 09:00")).bench;
  expect(groups[0]!.title).toBe("Mon 8 Mar 2027");
  const [sand, first] = groups[0]!.rows;
  expect(sand).toMatchObject({ title: "Sand with grit 150", pieces: [1, 2], wear: ["dust mask"] });
  // Gloves are asked for by the recipe though no step brings them: they concern what is wet.
  expect(first!.wear).toEqual(["gloves"]);
  expect(sand!.places).toEqual([{ piece: "Loft board", pieces: [1, 2], surface: "face" }]);
  // 2 m2 × 2 pieces / 10 m2/L × 1.1 = 0.44 L.
  expect(first).toMatchObject({ title: "Bench clear, coat 1 of 2", by: "pad", pieces: [1, 2], op: "layer" });
  expect(first!.litres).toBeCloseTo(0.44, 9);
  expect(first!.then?.until).toBe("recoat");
  // The wait begins with the end of the line and lasts as long as it takes in this air.
  const wait = (Date.parse(`${first!.then!.at}Z`) - Date.parse(`${first!.endAt}Z`)) / 3_600_000;
  expect(wait).toBeGreaterThanOrEqual(first!.then!.hours! - 1e-9);
  expect(wait).toBeLessThan(first!.then!.hours! + 0.5);
});

test("of two pieces that dry one after the other the line says which is free when, and of more the first and the last", () => {
  const timed = (count: number): string => {
    const sheet = only(
      text("in mill\n  start 2027-03-08 09:00")
        .replace("11 C", "21 C")
        .replace("board x 2", `board x ${count}`),
    );
    const html = sheetsHtml([sheetDocument(sheet, "test.finish", () => "")]);
    return thenIn(html);
  };
  // Both are sanded from 09:00 to 09:20 and coated from 09:20 and 09:30 for 10 min each; dry 2 h later. Before the next coat
  // nothing is sanded, so it has to be on within the label's 24 h, counted from 09:20.
  expect(timed(2)).toBe("piece 1 11:30, 2 11:40 2 h after it is on next coat by Tue 9 Mar 09:20, or sand");
  expect(timed(3)).toMatch(/^first \d\d:\d\d, last \d\d:\d\d 2 h after it is on next coat by /u);
});

/** The first wait of a sheet as it is read on paper. */
const thenIn = (html: string): string =>
  /<span class="then">(<span>.*?)<\/span><span class="may">/u
    .exec(html)![1]!
    .replaceAll(/<[^>]*>/gu, "")
    .replaceAll("\u00a0", " ");

test("without dates the line says how long a coat is left alone, and within which time the next goes on", () => {
  const html = sheetsHtml([
    sheetDocument(only(text("in mill").replace("11 C", "21 C")), "test.finish", () => ""),
  ]);
  expect(thenIn(html)).toBe("2 h after it is on next coat within 1 day, or sand");
});

test("a stripper whose label alone knows its time has room on paper for it", () => {
  const stripped = text("in mill").replace(
    "step   sand 150, takes 10 min",
    "step   strip with paint_stripper",
  );
  expect(thenIn(sheetsHtml([sheetDocument(only(stripped), "test.finish", () => "")]))).toBe(
    "__:__ by its label",
  );
});

test("on paper taking the stripper off is a line of its own, at its time or below where its label alone knows it", () => {
  const linesWith = (more: string): readonly string[] => {
    const stripped = text("in mill\n  start 2027-03-08 09:00").replace(
      "step   sand 150, takes 10 min",
      `step   strip with paint_stripper, takes 20 min\n${more}`,
    );
    const html = sheetsHtml([sheetDocument(only(stripped), "test.finish", () => "")]);
    return [...html.matchAll(/<li class="row[^"]*"[^>]*>(.*?)<\/li>/gu)]
      .map(([, line]) => line!.replace(/<details.*/u, ""))
      .map((line) => [...line.matchAll(/<span class="(?:time|no|what)">(.*?)<\/span>/gu)])
      .map((cells) => cells.map(([, cell]) => cell!.replace(/<span.*/u, "").replaceAll(/<[^>]*>/gu, "")))
      .map((cells) => cells.join(" ").replaceAll("\u00a0", " ").trim());
  };
  expect(linesWith("").slice(0, 2)).toEqual([
    expect.stringMatching(/^09:00 1 Strip the old finish with paint stripper/u),
    "__:__ 1 Take the stripper off, when its label time is up",
  ]);
});

test("a day says what it begins with and which coats go on", () => {
  const html = sheetsHtml([
    sheetDocument(only(text("in mill\n  start 2027-03-08 09:00")), "test.finish", () => ""),
  ]);
  const table = /<caption class="unseen">Days of work.*?<\/table>/su.exec(html)![0];
  const cells = [...table.matchAll(/<t[hd](?: [^>]*)?>(.*?)<\/t[hd]>/gu)].map(([, cell]) => cell);
  expect(cells.slice(0, 4)).toEqual(["Day", "Time", "Begins with", "Coats"]);
  expect(cells.slice(4, 8)).toEqual([
    "Mon 8 Mar",
    expect.stringMatching(/^09:00 to /u),
    "1 Sand with grit 150",
    "Bench clear, coats 1 and 2 of 2",
  ]);
});

test("steps of several surfaces have letters before their numbers, wherever they are named", () => {
  const two = text("in mill\n  start 2027-03-08 09:00")
    .replace(
      "  surface   face {",
      "  surface   back {\n    shape area 1 m2\n    wood  beech\n  }\n  surface   face {",
    )
    .replace("apply work to face", "apply work to face, back");
  const html = sheetsHtml([sheetDocument(only(two), "test.finish", () => "")]);
  const numbers = [...html.matchAll(/<span class="no">([^<]*)<\/span>/gu)].map(([, number]) => number!);
  expect(numbers.flatMap((number) => number.split(", ")).toSorted()).toEqual([
    "A1",
    "A2",
    "A3",
    "B1",
    "B2",
    "B3",
  ]);
  // In the order of the piece.
  expect(html).toContain("<b>A: Back</b>");
  expect(html).toMatch(/<td>Bench clear, coats? [^<]* of 2 \(A, B\)<\/td>/u);
  // One surface alone needs none.
  const alone = sheetsHtml([sheetDocument(only(text("in mill")), "test.finish", () => "")]);
  expect(alone).toContain('<span class="no">1</span>');
});

test("without dates the steps stand by surface, with all pieces on a line", () => {
  const { groups } = only(text("in mill")).bench;
  expect(groups.map(({ title }) => title)).toEqual(["Face"]);
  expect(groups[0]!.rows.map(({ title, pieces }) => [title, pieces])).toEqual([
    ["Sand with grit 150", [1, 2]],
    ["Bench clear, coat 1 of 2", [1, 2]],
    ["Bench clear, coat 2 of 2", [1, 2]],
  ]);
});

test("a step keeps its fingerprint when another is put before it, and no two have the same", () => {
  const prints = (more: string): readonly (readonly [string, string])[] =>
    only(text("in mill").replace("  step   sand", `${more}  step   sand`)).bench.groups.flatMap(({ rows }) =>
      rows.map(({ title, fingerprint }) => [title, fingerprint] as const),
    );
  const before = prints("");
  const after = new Map(prints("  step   dust\n"));
  expect(new Set(before.map(([, print]) => print)).size).toBe(before.length);
  for (const [title, print] of before) expect(after.get(title)).toBe(print);
});

test("the key of a step is made of its words and how often they came before, not of its number", () => {
  const rows = only(
    text("in mill").replace("x 2, by pad", "x 2, by pad, between sand 220"),
  ).bench.groups.flatMap((group) => group.rows);
  // So ticks stay good that were copied while waits had numbers, and steps behind a wait others than now.
  expect(rows.map(({ steps: [step] }) => [step!.number, step!.key])).toEqual(
    [
      ["Sand with grit 150", "1"],
      ["Coat 1 of 2: Bench clear, by pad", "1"],
      ["Sand with grit 220", "1"],
      ["Take the dust off", "1"],
      ["Coat 2 of 2: Bench clear, by pad", "1"],
    ].map((words, i) => [i + 1, fingerprintOf(["Face", ...words])]),
  );
});

test("after the last coat, not touching, light use and full use are three times", () => {
  const whole = text("in mill\n  start 2027-03-08 09:00").replace(
    "takes 10 min\n}",
    "takes 10 min\n  wait   until cured\n}",
  );
  // In the air of the label nothing takes longer: next coat after 2 h, light use a day later, cured after 10 days.
  const { groups } = only(whole.replace("11 C", "21 C")).bench;
  const coats = groups.flatMap(({ rows }) => rows.filter(({ op }) => op === "layer"));
  const [first, last] = [coats[0]!, coats.at(-1)!];
  expect(first.light).toBeUndefined();
  const after = (at: string | undefined): number =>
    (Date.parse(`${at}Z`) - Date.parse(`${last.endAt}Z`)) / 3_600_000;
  expect([last.then?.at, last.light?.at, last.full?.at].map(after)).toEqual([2, 24, 240]);
});

test("a stain that has to cure before the next coat is not touched until it has", () => {
  const stained = text("in mill\n  start 2027-03-08 09:00").replace(
    "  layer  bench_clear",
    "  layer  oil, takes 10 min\n  wait   until cured\n  layer  bench_clear",
  );
  const rows = only(stained).bench.groups.flatMap((group) => group.rows);
  const oil = rows.find(({ title }) => title === "Slow oil")!;
  expect(oil.then?.until).toBe("cured");
  expect(oil.light).toBeUndefined();
});

test("several pieces are named by their title up to a comma with their numbers, and one by its surface", () => {
  const named = (fields: string, title: string): readonly unknown[] =>
    only(
      text(fields)
        .replace('"Loft board"', `"${title}"`)
        .replace("board x 2", fields.includes("one") ? "board" : "board x 2"),
    ).bench.groups.flatMap(({ rows }) => rows.map(({ places }) => places))[0] as readonly unknown[];
  expect(named("in mill", "Loft board, the left one")).toEqual([
    { piece: "Loft board", pieces: [1, 2], surface: "face" },
  ]);
  expect(named("in mill # one", "Loft board")).toEqual([{ pieces: [], surface: "face" }]);
});

test("what is in force is worn wherever something wet or dusty is in hand, and else the label is asked", () => {
  const lines = (safety: string): readonly (readonly [string, string, string])[] =>
    only(`${STOCK}${PLACES}recipe work {
${safety}  step   dewax with mineral_spirits
  step   sand 150
  step   dust
  layer  bench_clear, by pad
}
${job("in mill")}`).bench.groups.flatMap(({ rows }) =>
      rows.map(({ title, wear, dangers }) => [title, wear.join(", "), dangers.join(", ")] as const),
    );
  expect(lines("  safety gloves, vapour_respirator, dust_mask, ventilate, no_ignition, wet_rags\n")).toEqual([
    // Rags with spirits burn as well, whether or not the recipe speaks of oily ones.
    ["Take the wax off with mineral spirits", "respirator, gloves", "fumes, fire, solvent rags"],
    ["Sand with grit 150", "dust mask", ""],
    ["Take the dust off", "dust mask", ""],
    ["Bench clear", "respirator, gloves", "fumes, fire"],
  ]);
  // A waterborne clear brings nothing by its family: that is no word for bare hands.
  expect(lines("").at(-1)?.[1]).toBe("what the can’s label says (gloves? goggles? mask?)");
});
