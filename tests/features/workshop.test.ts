/** The list of a workshop: jobs with what they come to, pieces, recipes with their jobs, and what is in stock. */
import { expect, test } from "vitest";
import { SEVERITIES, type Severity } from "../../server/src/core/findings.ts";
import { analyse } from "../harness/check-text.ts";

const STOCK = `material hall_clear "Satin clear" {
  family  waterborne polyurethane
  covers  10 m2/L
  packs   946 mL for 28.00
  on_hand 0.25 L
}

material stain {
  family  oil stain
  on_hand 0 L
}

material never_counted {
  family oil varnish
}
`;

const BENCH = `use "stock.finish"

shop mill {
  air   21 C, 50 % RH
  hours Mon to Fri 8:00 to 16:00
  rate  0.00 per h
}

piece bench "Reading bench" {
  surface seat {
    shape area 1 m2
    wood  oak
  }
  surface legs {
    shape area 0.5 m2
    wood  oak
  }
}

recipe clear {
  safety ventilate, gloves, dust_mask
  layer  hall_clear
  wait   until cured
}

recipe spare {
  follow clear
}

recipe idle {
  safety ventilate, gloves
  layer  stain
  wait   until cured
}

job benches "Benches of the reading room" {
  piece bench
  in    mill
  start 2027-03-08
  apply clear to seat
  apply spare to legs
}
`;

const analysis = analyse({ "stock.finish": STOCK, "bench.finish": BENCH });
const all = analysis.workshop(["bench.finish", "stock.finish"], SEVERITIES);
const titles = (kind: string) => all.filter((entry) => entry.kind === kind).map(({ title }) => title);
const entry = (name: string) => all.find((each) => each.name === name);

test("jobs, pieces, recipes and stock, by their titles; a material that nobody has counted is none of the stock", () => {
  expect(titles("job")).toEqual(["Benches of the reading room"]);
  expect(titles("piece")).toEqual(["Reading bench"]);
  expect(titles("recipe")).toEqual(["clear", "spare", "idle"]);
  expect(titles("stock")).toEqual(["Satin clear", "stain"]);
});

test("each entry leads to its name", () => {
  for (const { file, span, name } of all) expect(analysis.text(file)!.slice(span.start, span.end)).toBe(name);
  expect(entry("hall_clear")).toMatchObject({ file: "stock.finish" });
});

test("what tells one from the next: surfaces, jobs, and what is left", () => {
  expect(entry("bench")?.detail).toBe("2 surfaces");
  // `spare` follows it.
  expect(entry("clear")?.detail).toBe("in 1 job");
  expect(entry("idle")?.detail).toBe("in no job");
  expect(entry("hall_clear")?.detail).toBe("0.25 L on hand");
  expect(entry("stain")?.detail).toBe("used up");
});

/** 1 m2 + 0.5 m2 at 10 m2/L are 0.15 L, within the 0.25 L on hand: nothing is bought, and hours cost nothing. */
test("a job says its dates and its cost", () => {
  expect(entry("benches")?.detail).toMatch(/^last work 8 Mar, .*2027 · 0\.00$/u);
  expect(entry("benches")?.findings).toBeUndefined();
});

const hasty = analyse({
  "stock.finish": STOCK.replace("packs", "recoat  4 h\n  packs"),
  "bench.finish": BENCH.replace("layer  hall_clear\n", "layer  hall_clear x 2 {\n    wait 1 h\n  }\n"),
});
const jobWith = (levels: readonly Severity[]) =>
  hasty.workshop(["bench.finish"], levels).find(({ kind }) => kind === "job");

test("a job says how many findings it has, and leads to the gravest", () => {
  const tooEarly = hasty.findings("bench.finish").find(({ rule }) => rule === "recoat-too-early");
  expect(tooEarly).toBeDefined();
  const { findings } = jobWith(SEVERITIES)!;
  expect(findings).toMatchObject({ severity: tooEarly!.severity, first: tooEarly!.span });
  expect(findings?.text).toMatch(/^\d findings?$/u);
});

test("findings of levels that are not shown count nowhere", () => {
  expect(jobWith([])?.findings).toBeUndefined();
});

test("a file that is not known has nothing", () => {
  expect(analysis.workshop(["nowhere.finish"], SEVERITIES)).toEqual([]);
});

const jobs = (...fields: readonly (readonly [name: string, start: string, shop?: string])[]): string =>
  fields
    .map(
      ([name, start, shop = "mill"]) =>
        `job ${name} {\n  piece bench\n  in    ${shop}\n  start ${start}\n  apply clear to seat\n}\n`,
    )
    .join("");
const WITHOUT_JOB = BENCH.slice(0, BENCH.indexOf("job benches"));
const COLD = "shop shed {\n  air   4 C, 50 % RH\n  hours Mon to Fri 8:00 to 16:00\n}\n";

test("jobs stand in the order of their last work, and behind them those that have no date, with the reason", () => {
  const listed = analyse({
    "stock.finish": STOCK,
    "bench.finish": `${WITHOUT_JOB}${COLD}${jobs(["never", "2027-01-04", "shed"], ["late", "2027-05-03"], ["soon", "2027-03-08"])}`,
  }).workshop(["bench.finish"], SEVERITIES);
  const told = listed.flatMap(({ kind, name, brief }) => (kind === "job" ? [`${name}: ${brief}`] : []));
  expect(told).toEqual([
    expect.stringMatching(/^soon: ends 8 Mar · 0 · use \d+ (?:Mar|Apr)$/u),
    expect.stringMatching(/^late: ends 3 May · 0 · use \d+ (?:May|Jun)$/u),
    expect.stringMatching(/^never: no date: too cold to dry · 0$/u),
  ]);
});
