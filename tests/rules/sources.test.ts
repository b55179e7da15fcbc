/**
 * Where what the program knows comes from: every rule and every row of knowledge names a publication with its number or
 * date, or says plainly that it is common practice, from memory, arithmetic or the notation's own definition. The
 * product's own reference is no source, and neither is a kind of text that nobody could look up.
 */
import { globSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { COMPUTATIONS } from "../../server/src/core/computations.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";

const ROOT = new URL("../../", import.meta.url);

/** Texts that cannot be looked up. */
const VAGUE =
  /the language reference|trade (?:column|press|journal|magazine)s?|(?:a|the) (?:furniture|reference|standard|finishing)[\w-]* (?:reference )?text\b|technical bulletin(?!s? \S*\d)|\bcharts? of (?:coating|paint)|\bmakers['’]? (?:charts|literature|sheets)|published (?:compatibility )?lists?\b|finishing textbooks(?!.*from memory)|\bvarious\b|\bthe internet\b/iu;

/** What a source says where no publication is named. */
const PLAIN =
  /common practice[,:]? no source|by definition, no outside source|from memory|\barithmetic\b|our own choice|checked against brute force/iu;

/** A title or an abbreviation, with a number or a date. */
const PUBLICATION = /[A-Z][\w-]*.*\d|\d.*[A-Z]|\b[a-z]+\.(?:us|org|gov|com)\b/u;

/** The number of a law, a standard or a series of public bodies, or a year; or that the publication shows none. */
const NUMBERED =
  /\b(?:CFR|FR|U\.?S\.?C|ASTM|ISO|EN|UFC|FPL|NFPA|NIOSH|OSHA|EPA|SCAQMD|ANSI|DIN|CPL|NAVEDTRA|CIE|IEC|FEPA|JIS|RAL)\b.*\d|\b(?:17|18|19|20)\d\d\b|\bundated\b|\beditions? not named\b/u;

interface Told {
  readonly where: string;
  readonly source: string;
}

/** Whatever stands in a field `source` or `sources`, however deep. */
function sourcesIn(where: string, value: unknown, seen: Set<unknown>): readonly Told[] {
  if (typeof value !== "object" || value === null || seen.has(value)) return [];
  seen.add(value);
  const inner = value instanceof Map ? [...value.entries()] : Object.entries(value);
  return inner.flatMap(([key, each]): readonly Told[] => {
    if (key === "source" && typeof each === "string") return [{ where, source: each }];
    if (key === "sources" && Array.isArray(each))
      return each.flatMap((source) => (typeof source === "string" ? [{ where, source }] : []));
    return sourcesIn(where, each, seen);
  });
}

const tables = await Promise.all(
  globSync("server/src/core/{knowledge,measure,air}/*.ts", { cwd: ROOT }).map(
    async (file) => [file, await import(new URL(file, ROOT).href)] as const,
  ),
);

const told: readonly Told[] = [
  ...RULES.flatMap(({ id, docs }) => docs.sources.map((source) => ({ where: `rule ${id}`, source }))),
  ...sourcesIn("computations", COMPUTATIONS, new Set()),
  ...tables.flatMap(([file, exported]) => sourcesIn(file, { ...exported }, new Set())),
];

describe("every source", () => {
  it("is a publication with its number or date, or says what it is instead", () => {
    expect(told.length).toBeGreaterThan(500);
    const bad = told.filter(({ source }) => !PLAIN.test(source) && !PUBLICATION.test(source));
    expect([...new Set(bad.map(({ where, source }) => `${where}: ${source}`))]).toEqual([]);
  });

  it("has its number, its year or its edition, or says that none is known", () => {
    const bad = told.filter(({ source }) => !PLAIN.test(source) && !NUMBERED.test(source));
    expect([...new Set(bad.map(({ where, source }) => `${where}: ${source}`))]).toEqual([]);
  });

  it("can be looked up", () => {
    const bad = told.filter(({ source }) => VAGUE.test(source));
    expect([...new Set(bad.map(({ where, source }) => `${where}: ${source}`))]).toEqual([]);
  });

  it("of the notation itself is the definition, and never the page that is written from it", () => {
    const rules = RULES.filter(({ group }) => group === "language" || group === "hygiene");
    for (const { id, docs } of rules) expect(docs.sources, id).not.toEqual([]);
  });
});

it("no page names a source that cannot be looked up", () => {
  const pages = globSync("server/docs/{*.md,rules/*.md}", { cwd: ROOT });
  expect(pages.length).toBeGreaterThan(100);
  expect(pages.filter((page) => VAGUE.test(readFileSync(new URL(page, ROOT), "utf8")))).toEqual([]);
});
