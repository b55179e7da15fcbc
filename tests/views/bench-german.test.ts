/** What names the parts of a job is said in the language of the client; the page of the bench view shows it as it comes. */
import { afterEach, expect, test } from "vitest";
import { speak } from "../../grammar/src/translate.ts";
import { languageOf } from "../../server/src/lsp/language.ts";
import type { Bench } from "../../server/src/views/bench/model.ts";
import { shortRecipe } from "../../server/src/views/short-recipe.ts";
import { packedTexts } from "../../server/tools/texts.ts";
import { sampleAnalyst } from "../harness/samples.ts";

const FILES = ["reading-tables.finish", "mistakes.finish", "chairs.finish"];

/** The names in the order in which the page shows them. */
const namesOf = ({ facts, dates, costs, worth }: Bench<unknown>): readonly string[] => [
  ...[...facts, ...dates, ...costs].map(({ name }) => name),
  ...(worth?.columns ?? []),
  ...(worth?.rows ?? []).map(({ name }) => name),
];

function names(): readonly string[] {
  const analysis = sampleAnalyst().analysis();
  return FILES.flatMap((file) =>
    analysis.jobs(file).flatMap(({ job }) => namesOf(analysis.bench(file, job.name)!)),
  );
}

const speakGerman = (): void => speak(languageOf("de", JSON.parse(packedTexts("de"))));

afterEach(() => speak(undefined));

test("in German no part of a job is called as in English", () => {
  const english = names();
  speakGerman();
  const german = names();
  expect(new Set(english).size).toBeGreaterThan(12);
  expect(german).toHaveLength(english.length);
  for (const [i, name] of english.entries()) expect(german[i]).not.toBe(name);
  for (const name of ["Arbeit", "Summe", "Sie zahlen", "Sie bekommen"]) expect(german).toContain(name);
});

test("a short recipe tells the air that the job was worked out for in German, too", () => {
  const airs = (): readonly (string | undefined)[] => {
    const analysis = sampleAnalyst().analysis();
    return FILES.flatMap((file) =>
      analysis.sheets(file).map((sheet, i) => shortRecipe(analysis.jobs(file)[i]!, sheet).air),
    );
  };
  const english = airs();
  expect(english.some((air) => air !== undefined)).toBe(true);
  speakGerman();
  expect(airs().map((air) => air !== undefined)).toEqual(english.map((air) => air !== undefined));
});

test("what to wear and the dangers of the job beside what is next are German", () => {
  speakGerman();
  const analysis = sampleAnalyst().analysis();
  const [tables] = analysis.jobs("reading-tables.finish");
  const { next, dangers } = analysis.bench("reading-tables.finish", tables!.job.name)!;
  expect(next[0]!.wear).toEqual(["Atemschutz (Dämpfe und Staub)", "Handschuhe", "Schutzbrille"]);
  expect(dangers).toContain("ölige Lappen");
});
