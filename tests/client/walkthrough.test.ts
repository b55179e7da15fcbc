/** The pictures of the walkthrough show what the program shows. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { benchPage } from "../../client/src/bench/page.ts";
import { FOLDER, pictures } from "../../client/walkthrough/draw.ts";

const drawn = pictures();

test.each(Object.entries(drawn))("%s is fresh", (name, picture) => {
  expect(readFileSync(new URL(name, FOLDER), "utf8")).toBe(picture);
});

const textOf = (picture: string): string => picture.replace(/<[^>]*>/gu, " ").replace(/\s+/gu, " ");

test("they show the forms of today, a finding, dates and steps", () => {
  expect(textOf(drawn["recipe.svg"]!)).toContain("layer gel_stain, wiped off");
  expect(textOf(drawn["finding.svg"]!)).toContain("waterborne-over-uncured-oil");
  expect(textOf(drawn["sheet.svg"]!)).toContain("Mon 8 Mar 09:00");
});

test.each([
  ["en", "package.nls.json", /“([^”]*)”/u],
  ["de", "package.nls.de.json", /„([^“]*)“/u],
])("the last step names the button that prints, in %s", (language, file, quoted) => {
  const read = (name: string): Readonly<Record<string, string>> =>
    JSON.parse(readFileSync(new URL(`../../client/${name}`, import.meta.url), "utf8"));
  const [, button] = quoted.exec(read(file)["walkthrough.sheet.description"]!) ?? [];
  const bundle = language === "en" ? {} : read("l10n/bundle.l10n.de.json");
  expect(benchPage("n", "s", "o", { language, bundle })).toContain(`>${button}</button>`);
});
