/** The costs in the bench view: a person can add up the rows that are shown. */
import { parseFragment } from "parse5";
import { describe, expect, test } from "vitest";
import { shoppingHtml } from "../../client/src/bench/drawing.ts";
import type { Bench } from "../../server/src/views/bench/model.ts";
import { analyse } from "../harness/check-text.ts";
import { look } from "../harness/drawn-bench.ts";
import { sampleAnalyst, sampleNames, sampleText } from "../harness/samples.ts";

/** The cells of the rows of a class, as they are read on the page. */
function rowsOf(html: string, kind: string): readonly (readonly string[])[] {
  const rows = [...html.matchAll(new RegExp(`<tr class="${kind}">(.*?)</tr>`, "gu"))];
  return rows.map(([, row]) =>
    [...row!.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gu)].map(([, cell]) => {
      const [node] = parseFragment(cell!).childNodes;
      return node !== undefined && "value" in node ? node.value : "";
    }),
  );
}

/** Of `266.67`, in cents. */
const centsOf = (said: string): number => {
  expect(said).toMatch(/^\d+\.\d\d$/u);
  return Number(said.replace(".", ""));
};

const shown = (bench: Bench<unknown>, kind: string) => rowsOf(shoppingHtml(bench, look(0)), kind);

describe("what a job costs", () => {
  const analysis = sampleAnalyst().analysis();
  const jobs = sampleNames.flatMap((file) =>
    analysis.jobs(file).map(({ job }) => [job.name, analysis.bench(file, job.name)!] as const),
  );

  test.each(jobs)("%s: the parts that are shown come to the total that is shown", (_name, bench) => {
    const parts = shown(bench, "part");
    const [total] = shown(bench, "total");
    expect(parts.length).toBeGreaterThan(1);
    if (total![1] === "not known") {
      expect(parts.some(([, said]) => said === "not known")).toBe(true);
      return;
    }
    const counted = parts.filter(([, said]) => said !== "not counted");
    expect(counted.reduce((sum, [, said]) => sum + centsOf(said!), 0)).toBe(centsOf(total![1]!));
    const bought = bench.materials.reduce((sum, { price }) => sum + (price === "" ? 0 : centsOf(price)), 0);
    expect(parts.find(([name]) => name === "Materials")![1]).toBe((bought / 100).toFixed(2));
    for (const [, said, sum] of shown(bench, "beside")) {
      if (said === "not known") continue;
      const [from, less] = sum!.split(" − ").map(centsOf);
      expect(from! - less!).toBe(centsOf(said!));
    }
  });

  test("each is named, with the hours and the price of one behind the labour", () => {
    const [, bench] = jobs.find(([name]) => name === "hall_tables")!;
    const [pieces, materials, supplies, labour] = shown(bench, "part");
    // Two tables at 60.00; 6.50 + 19.00 + 19.60 + 56.00 + 14.00 + 21.00; `supplies 18.50`.
    expect(pieces).toEqual(["Pieces, as bought", "120.00", ""]);
    expect(materials).toEqual(["Materials", "136.10", ""]);
    expect(supplies).toEqual(["Supplies", "18.50", ""]);
    const [, hours, minutes, rate] = /^(\d+) h (\d+) min × (\d+\.\d\d)$/u.exec(labour![2]!)!;
    const worth = (Number(hours) + Number(minutes) / 60) * Number(rate);
    expect(labour!.slice(0, 2)).toEqual(["Labour", worth.toFixed(2)]);
    // Two new ones at 1150.00.
    expect(shown(bench, "beside")[0]![2]).toMatch(/^2300\.00 − /u);
  });

  test("a job above its budget and dearer than new says so, and one without a rate counts no labour", () => {
    const changed = (change: (text: string) => string): Bench<unknown> =>
      analyse({
        "reading-tables.finish": change(sampleText("reading-tables.finish")),
        "recipes.finish": sampleText("recipes.finish"),
        "stock.finish": sampleText("stock.finish"),
        "shop.finish": sampleText("shop.finish"),
      }).bench("reading-tables.finish", "hall_tables")!;
    const dear = changed((text) => text.replace("1150.00", "100.00").replace("800.00", "300.00"));
    expect(shown(dear, "beside").map(([name]) => name)).toEqual(["More than new", "Over the budget"]);
    const unpaid = analyse({
      "reading-tables.finish": sampleText("reading-tables.finish"),
      "recipes.finish": sampleText("recipes.finish"),
      "stock.finish": sampleText("stock.finish"),
      "shop.finish": sampleText("shop.finish").replace(/^ {2}labour.*\n/mu, ""),
    }).bench("reading-tables.finish", "hall_tables")!;
    expect(shown(unpaid, "part").at(-1)!.slice(0, 2)).toEqual(["Labour", "not counted"]);
    // 120.00 + 136.10 + 18.50
    expect(shown(unpaid, "total")[0]![1]).toBe("274.60");
  });
});
