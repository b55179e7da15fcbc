/**
 * An editor whose display language is German: what a person meets of the extension and of the server is German, but for the
 * notation, and what the text itself says.
 *
 *     npm run test:german
 *
 * Ends with `N passed, N failed`, and with 1 if anything failed. With `--to FOLDER` pictures are left there. The workbench's own
 * texts stay English, as no language pack is here.
 */
import { mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { parseArgs } from "node:util";
import type { Page } from "playwright-core";
import { match, same } from "./assert.ts";
import { ROOT, startEditor } from "./editor.ts";
import { runTests, type Test } from "./report.ts";
import { clear, goTo, PATIENCE, recipeShown, runCommand, stillness, webview } from "./workbench.ts";

const { values } = parseArgs({ options: { to: { type: "string" } } });
const SAMPLES = path.join(ROOT, "samples");

/** Words that stand in nearly every English sentence of the extension, and in none of the notation or of German. */
const ENGLISH =
  /\b(?:the|which|needs|before|without|work|days?|coats?|cost|not|what|its|is|are|this|that|goes|may|label)\b/giu;

/** The English words in a text, beside those of the notation, which is in the other face or between quotes. */
const englishIn = (text: string): readonly string[] =>
  text.replaceAll(/“[^”]*”|„[^“]*“/gu, " ").match(ENGLISH) ?? [];

const textOf = async (page: Page, selector: string): Promise<string> =>
  (await page.locator(selector).allInnerTexts()).join("\n").replaceAll("\u00a0", " ");

const lineOf = (file: string, text: string): number =>
  readFileSync(path.join(SAMPLES, file), "utf8")
    .split("\n")
    .findIndex((line) => line.includes(text)) + 1;

const leave = async (page: Page, name: string): Promise<void> => {
  if (values.to === undefined) return;
  mkdirSync(values.to, { recursive: true });
  await stillness(page, false);
  await page.screenshot({ path: path.join(values.to, `${name}.png`), animations: "disabled" });
};

const tests = (page: Page): readonly Test[] => [
  {
    name: "findings and what is offered against them",
    async run() {
      await goTo(page, `mistakes.finish:${lineOf("mistakes.finish", "waterborne_polyurethane x 2")}:3`);
      await recipeShown(page);
      await runCommand(page, "Show or Focus Hover");
      await page
        .locator(".monaco-hover:not(.hidden) .marker-message, .monaco-hover:not(.hidden) .marker")
        .first()
        .waitFor({ state: "visible" });
      const hover = await textOf(page, ".monaco-hover:not(.hidden) .hover-contents");
      await leave(page, "hover");
      match(hover, /braucht|trocknet|Schicht/u);
      same(englishIn(hover), []);
      await clear(page);
      await page.keyboard.press("Control+.");
      await page.locator(".action-widget .monaco-list-row").first().waitFor({ state: "visible" });
      const fixes = await textOf(page, ".action-widget .monaco-list-row");
      await leave(page, "fixes");
      same(englishIn(fixes.replaceAll(/[a-z]+(?:-[a-z]+)+/gu, "")), []);
      await clear(page);
    },
  },
  {
    name: "the line above a job and its hover",
    async run() {
      await goTo(page, `reading-tables.finish:${lineOf("reading-tables.finish", "job hall_tables")}:5`);
      const lens = page.locator(".codelens-decoration", { hasText: "EUR" });
      await lens.first().waitFor({ state: "visible" });
      same(englishIn((await lens.allInnerTexts()).join("\n")), []);
      await runCommand(page, "Show or Focus Hover");
      await page.locator(".monaco-hover:not(.hidden) .hover-contents").first().waitFor({ state: "visible" });
      const hover = await textOf(page, ".monaco-hover:not(.hidden) .hover-contents");
      await leave(page, "hover-job");
      match(hover, /Auftrag/u);
      same(englishIn(hover.replaceAll("Reading tables", "")), []);
      await clear(page);
    },
  },
  {
    name: "the bench view",
    async run() {
      await runCommand(page, "Finishwright: Werkbankansicht zeigen");
      const view = webview(page);
      await view.locator("g.bar").first().waitFor({ state: "visible" });
      const told = ((await view.locator("main").textContent()) ?? "").replaceAll("\u00a0", " ");
      await leave(page, "bench-view");
      match(told, /Volle Nutzung/iu);
      match(told, /\b\d+\. März\b/u);
      same(englishIn(told), []);
    },
  },
];

const editor = await startEditor({
  folder: SAMPLES,
  settings: { "workbench.colorTheme": "Default Light Modern" },
});
try {
  const page = await editor.show({
    language: "de",
    colorScheme: "light",
    openFile: "mistakes.finish:1:1",
    height: 1000,
  });
  page.setDefaultTimeout(PATIENCE);
  await runTests(tests(page), (line) => console.log(line));
} catch {
  process.exitCode = 1;
} finally {
  await editor.stop();
}
