/// <reference lib="dom" />
/**
 * Looks at the pages on rules and on the language in a real browser, as the extension shows them, in four themes and where
 * the system forces its colours.
 *
 *     npm run test:pages
 *
 * Ends with `N passed, N failed`, and with 1 if anything failed. With `--to FOLDER` pictures of every look are left there.
 */
import { mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { parseArgs } from "node:util";
import type { Browser, Page } from "playwright-core";
import { pageHtml, recipesOf } from "../../client/src/pages/page.ts";
import { coloured } from "../../server/src/lsp/requests/coloured.ts";
import { ok, same, strictEqual } from "./assert.ts";
import { AXE, violations } from "./axe.ts";
import { launchBrowser, ROOT } from "./editor.ts";
import { runTests, type Test } from "./report.ts";
import { colour, contextOf, LOOKS, type Look } from "./themed.ts";

const { values } = parseArgs({ options: { to: { type: "string" } } });

const ADDRESS = "http://page.test/";
/** Errors with reasons and without, warnings, and a page that is no rule's. The page that teaches is too long to be looked through each time. */
const PAGES = [
  "rules/bad-number.md",
  "rules/waterborne-over-uncured-oil.md",
  "rules/recoat-too-early.md",
  "packages.md",
];

const htmlOf = (name: string): string => {
  const markdown = readFileSync(path.join(ROOT, "server/docs", name), "utf8");
  const colours = recipesOf(markdown).map((text) => coloured({ text }));
  return pageHtml(markdown, colours, "0123456789abcdef");
};

/** Opens a page; whatever it asks for, and whatever its policy forbids, ends the test. */
const shown = async (
  browser: Browser,
  look: Look,
  name: string,
  work: (page: Page) => Promise<void>,
): Promise<void> => {
  const context = await contextOf(browser, look);
  try {
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on("pageerror", ({ message }) => complaints.push(message));
    page.on("console", (message) => complaints.push(message.text()));
    await context.route("**/*", (route) => {
      if (route.request().url() === ADDRESS)
        return route.fulfill({ contentType: "text/html", body: htmlOf(name) });
      // A browser asks for it by itself.
      if (!route.request().url().endsWith("/favicon.ico"))
        complaints.push(`asks for ${route.request().url()}`);
      return route.abort();
    });
    await page.goto(ADDRESS);
    await colour(page, look.theme);
    await work(page);
    same(complaints, []);
  } finally {
    await context.close();
  }
};

const leave = async (page: Page, name: string): Promise<void> => {
  if (values.to === undefined) return;
  mkdirSync(values.to, { recursive: true });
  await page.screenshot({ path: path.join(values.to, `${name}.png`), animations: "disabled" });
};

/** How a word of a recipe is drawn. */
const drawn = (page: Page, selector: string) =>
  page
    .locator(selector)
    .first()
    .evaluate((element) => {
      const { color, textDecorationLine, textDecorationStyle } = getComputedStyle(element);
      return { color, line: textDecorationLine, style: textDecorationStyle };
    });

function tests(browser: Browser): readonly Test[] {
  return Object.entries(LOOKS).flatMap(([name, look]) => [
    {
      name: `${name}: lines of findings are marked, and nothing is too wide`,
      run: async () => {
        for (const file of PAGES) {
          await shown(browser, look, file, async (page) => {
            if (file.startsWith("rules/")) {
              const first = page.locator(".line.at").first();
              ok((await first.locator(".headline").textContent())?.trim());
              const mark = await drawn(page, ".line.at mark");
              same([mark.line, mark.style], ["underline", "wavy"]);
              for (const width of [900, 420, 320]) {
                await page.setViewportSize({ width, height: 900 });
                const isTooWide = await page.evaluate(
                  () => document.documentElement.scrollWidth > document.documentElement.clientWidth,
                );
                strictEqual(isTooWide, false, `${file} at ${width} px is too wide`);
              }
              await page.setViewportSize({ width: 900, height: 900 });
            }
            const [keyword, plain] = [await drawn(page, "span.keyword"), await drawn(page, ".line > code")];
            strictEqual(
              keyword.color !== plain.color,
              !look.forced,
              `${keyword.color} beside ${plain.color}`,
            );
            await leave(page, `page-${path.basename(file, ".md")}-${name}`);
          });
        }
      },
    },
    ...(look.forced
      ? []
      : [
          {
            name: `${name}: axe-core finds nothing against WCAG 2.2 AA or its own best practice`,
            run: async () => {
              for (const file of PAGES)
                await shown(browser, { ...look, script: AXE }, file, async (page) =>
                  same(await violations(page), []),
                );
            },
          },
        ]),
  ]);
}

const browser = await launchBrowser();
try {
  await runTests(tests(browser), (line) => process.stdout.write(`${line}\n`));
} catch {
  process.exitCode = 1;
} finally {
  await browser.close();
}
