/**
 * The first hour of somebody who has never seen the language: from an empty folder to a printed sheet, by the mouse and what
 * is offered, without a word of the notation from memory. Says how many steps it took; `run.ts` walks it after the suite.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { match, ok, same, strictEqual } from "./assert.ts";
import { type Editor, launchBrowser, ROOT } from "./editor.ts";
import { runTests } from "./report.ts";
import { PATIENCE, rowsOf, webview } from "./workbench.ts";

/** What a person does, one click, choice or key each. */
type Step = (what: string, work: () => Promise<unknown>) => Promise<void>;

/** The words of the recipe in the order of its lines, without the figures. */
const textOf = async (page: Page): Promise<string> =>
  (await page.locator(".editor-instance .view-line").allTextContents()).join("\n").replaceAll("\u00a0", " ");

const choose = (page: Page, label: string) => rowsOf(page).filter({ hasText: label }).first().click();

const toSheet = async (page: Page, folder: string, step: Step): Promise<void> => {
  await step("click on Finishwright in the bar at the side", () =>
    page.locator(".activitybar a[aria-label^='Finishwright']").first().click(),
  );
  await step("click on New Recipe", () => page.getByRole("button", { name: "New Recipe" }).first().click());
  await step("what piece: a table", () => choose(page, "Table"));
  await step("how large: as it is proposed", async () => {
    await page.locator(".quick-input-title", { hasText: "How large" }).waitFor({ state: "visible" });
    await page.keyboard.press("Enter");
  });
  await step("what wood: oak", () => choose(page, "Oak"));
  await step("what is on it: nothing", () => choose(page, "Bare"));
  await step("how it should look: clear and hard", () => rowsOf(page).first().click());
  await step("where: in a workshop", () => choose(page, "workshop"));
  // The line above the job, at the end of the text, is there once the recipe is read.
  await page.locator(".codelens-decoration").first().waitFor({ state: "attached" });
  strictEqual(await page.locator(".squiggly-error, .squiggly-warning").count(), 0);

  await step("click behind a line of the recipe", () =>
    page
      .locator(".view-line", { hasText: /^\s*step\s+dust/u })
      .first()
      .click({ position: { x: 300, y: 8 } }),
  );
  await step("Enter, for a line of one's own", () => page.keyboard.press("Enter"));
  await step("Ctrl+Space, for what may stand there", () => page.keyboard.press("Control+Space"));
  const offered = page.locator(".suggest-widget .monaco-list-row");
  await offered.first().waitFor({ state: "visible" });
  await step("choose `step`", () => offered.filter({ hasText: /^step/u }).first().click());
  await offered.first().waitFor({ state: "visible" });
  await step("choose what is done", () => offered.filter({ hasText: "dust" }).first().click());
  match(await textOf(page), /step dust/u);

  await step("click on the bench view over the text", () =>
    page.locator(".editor-actions a[aria-label^='Show Bench View']").first().click(),
  );
  const view = webview(page);
  await view.locator("g.bar").first().waitFor({ state: "visible" });
  for (const film of await view.locator(".coat .figure").allTextContents()) match(film, /^\d+ µm$/u);
  await step("click on Save sheet to print", () => view.locator("[data-action=html]").click());
  await step("Enter, for the place that is proposed", async () => {
    await page.locator(".quick-input-widget .quick-input-title").first().waitFor({ state: "visible" });
    await page.keyboard.press("Enter");
  });
  for (let turn = 0; sheetIn(folder) === undefined; turn += 1) {
    ok(turn < MOST_TURNS, `No sheet was saved: ${(await noticesOf(page)).join("; ")}`);
    await page.waitForTimeout(TURN_MS);
  }
};

/** The file is waited for by turns of the page, each as long as a busy machine makes it. */
const TURN_MS = 250;
const MOST_TURNS = 480;

const sheetIn = (folder: string): string | undefined =>
  readdirSync(folder).find((name) => name.endsWith("-sheet.html"));

/** What the workbench has said, for when it went wrong. */
const noticesOf = async (page: Page): Promise<readonly string[]> => {
  await page.locator("[id='status.notifications']").click();
  return page.locator(".notification-list-item-message").allTextContents();
};

/** As a person prints it from the browser. */
const print = async (folder: string, to: string): Promise<void> => {
  const sheet = sheetIn(folder);
  ok(sheet);
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(path.join(folder, sheet)).href);
    await page.pdf({ path: to, preferCSSPageSize: true });
    ok((await page.locator("h1").first().textContent())?.trim());
  } finally {
    await browser.close();
  }
  ok(existsSync(to));
  match(readFileSync(to).subarray(0, 5).toString(), /^%PDF-/u);
};

export const walkFirstHour = async (editor: Editor): Promise<void> => {
  const folder = path.join(path.dirname(editor.folder), "empty");
  mkdirSync(folder);
  same(readdirSync(folder), []);
  const steps: string[] = [];
  let began = 0;
  let minutes = 0;
  const step: Step = async (what, work) => {
    steps.push(what);
    await work();
  };
  await runTests(
    [
      {
        name: "first hour: from an empty folder to a printed sheet, without a word from memory",
        async run() {
          const page = await editor.show({ opened: folder, width: 1500, height: 900 });
          page.setDefaultTimeout(PATIENCE);
          began = performance.now();
          try {
            await toSheet(page, folder, step);
          } catch (error) {
            const picture = path.join(ROOT, ".cache", "walk.png");
            await page.screenshot({ path: picture });
            const at = `After: ${steps.join("; ")}. See ${picture}.`;
            throw new Error(`${error instanceof Error ? error.message : String(error)}\n${at}`);
          }
          await print(folder, path.join(path.dirname(folder), "sheet.pdf"));
          minutes = (performance.now() - began) / 60_000;
        },
      },
    ],
    console.log,
  );
  // What the editor and the printing take of them; a person reads as well.
  console.log(`     ${steps.length} steps, ${minutes.toFixed(1)} minutes without time to read`);
};
