/**
 * Reads the site of the samples in a real browser, from the disk: every page light and dark, wide and at 390 px.
 *
 *     npm run test:site
 *
 * No page complains, loads anything or is wider than the screen; axe-core finds nothing against WCAG 2.2 AA or its own best
 * practice; every link leads to a page; the search finds. Ends with `N passed, N failed`, and with 1 if anything failed.
 * With `--to FOLDER` pictures of some pages are left there.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import type { Browser, Page } from "playwright-core";
import { runCli } from "../cli/run-cli.ts";
import { ok, strictEqual } from "./assert.ts";
import { AXE, violations } from "./axe.ts";
import { launchBrowser, ROOT } from "./editor.ts";
import { runTests, type Test } from "./report.ts";

const { values } = parseArgs({ options: { to: { type: "string" } } });

interface Look {
  readonly colorScheme: "light" | "dark";
  readonly viewport: { readonly width: number; readonly height: number };
}

const LOOKS: Readonly<Record<string, Look>> = {
  light: { colorScheme: "light", viewport: { width: 1100, height: 800 } },
  dark: { colorScheme: "dark", viewport: { width: 1100, height: 800 } },
  telephone: { colorScheme: "light", viewport: { width: 390, height: 844 } },
};

interface Reader {
  readonly page: Page;
  /** Opens a page, and what it complains of or asks for comes back when `look` has ended. */
  read(file: string, look: () => Promise<void>): Promise<readonly string[]>;
}

/** One tab for all pages, as opening tabs takes longest. */
async function reading(browser: Browser, look: Look, use: (reader: Reader) => Promise<void>): Promise<void> {
  const context = await browser.newContext({ ...look, bypassCSP: true, reducedMotion: "reduce" });
  try {
    const page = await context.newPage();
    let complaints: string[] = [];
    let address = "";
    page.on("pageerror", ({ message }) => complaints.push(message));
    page.on("console", (message) => complaints.push(message.text()));
    page.on("request", (request) => {
      if (request.url() !== address) complaints.push(`asks for ${request.url()}`);
    });
    await use({
      page,
      read: async (file, lookAt) => {
        address = pathToFileURL(file).href;
        complaints = [];
        await page.goto(address);
        await lookAt();
        return complaints;
      },
    });
  } finally {
    await context.close();
  }
}

/** All pages that can be reached from the first by links; sheets lead nowhere. */
function pagesFrom(first: string): readonly string[] {
  const known = new Set([first]);
  for (const file of known)
    for (const [, to] of readFileSync(file, "utf8").matchAll(/<a [^>]*?href="([^"#]+)"/gu))
      known.add(path.join(path.dirname(file), to!));
  return [...known];
}

const folder = mkdtempSync(path.join(tmpdir(), "finishwright-site-"));
const browser = await launchBrowser();
const home = path.join(folder, "index.html");

const tests: readonly Test[] = [
  {
    name: "the site of the samples is made, and all its pages can be reached",
    run: async () => {
      const { status, stderr } = await runCli(["site", path.join(ROOT, "samples"), "-o", folder]);
      strictEqual(stderr, "");
      strictEqual(status, 0);
      const reached = pagesFrom(home);
      for (const file of reached) ok(readFileSync(file, "utf8").includes("</html>"), file);
      ok(reached.length > 25, `${reached.length} pages`);
    },
  },
  ...Object.entries(LOOKS).map(
    ([name, look]): Test => ({
      name: `${name}: nothing against the guidelines, nothing loaded, nothing wider than the screen`,
      run: () =>
        reading(browser, look, async ({ page, read }) => {
          for (const file of pagesFrom(home)) {
            const at = path.relative(folder, file);
            // They have a test of their own.
            if (at.startsWith("sheets")) continue;
            const complaints = await read(file, async () => {
              const width = await page.evaluate(() => document.documentElement.scrollWidth);
              ok(width <= look.viewport.width, `${at} is ${width} px wide`);
              await page.evaluate(AXE);
              strictEqual((await violations(page)).join("\n"), "", at);
            });
            strictEqual(complaints.join("\n"), "", at);
          }
        }),
    }),
  ),
  {
    name: "the search finds while one types, and says when nothing does",
    run: () =>
      reading(browser, LOOKS.light!, async ({ page, read }) => {
        const complaints = await read(home, async () => {
          await page.getByLabel("Search all texts").fill("stain pad");
          strictEqual(await page.locator("#results a").first().textContent(), "Stained top");
          await page.getByLabel("Search all texts").fill("zebra");
          strictEqual(
            await page.locator("#found").textContent(),
            "Nothing has all of these words. Try fewer, or the beginning of one.",
          );
        });
        strictEqual(complaints.join("\n"), "");
      }),
  },
  {
    name: "on paper a recipe has neither links to other lists nor a search",
    run: () =>
      reading(browser, LOOKS.light!, async ({ page, read }) => {
        await read(path.join(folder, "recipes/stained-top.html"), async () => {
          await page.emulateMedia({ media: "print" });
          strictEqual(await page.locator(".top").isVisible(), false);
          strictEqual(await page.locator("h1").isVisible(), true);
        });
      }),
  },
];

/** What somebody looks at. */
const PICTURES = ["index.html", "recipes/stained-top.html", "jobs/hall-tables.html", "by-finish.html"];

try {
  await runTests(tests, console.log);
  const { to } = values;
  if (to !== undefined) {
    mkdirSync(to, { recursive: true });
    for (const [name, look] of Object.entries(LOOKS))
      await reading(browser, look, async ({ page, read }) => {
        for (const file of PICTURES) {
          const picture = path.join(to, `site-${path.basename(file, ".html")}-${name}.png`);
          await read(path.join(folder, file), async () => {
            await page.screenshot({ path: picture, fullPage: true });
          });
        }
      });
  }
} catch {
  process.exitCode = 1;
} finally {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
