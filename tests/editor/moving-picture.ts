/**
 * A mistake is typed, the finding appears, its quick fix is applied, and the bench view follows: pictures of the editor one
 * after the other, put together by `apngasm` (a Debian package, which `setup-picture.sh` installs) without loss.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Page } from "playwright-core";
import { clear, recipeShown, runCommand, sameDates, showBenchView, stillness } from "./workbench.ts";

/** How long each picture stands, ms. */
const BEAT = 3400;
const KEY = 220;

/** What is seen, under the window: a person who reads along knows what to look at. */
const CAPTIONS = {
  begin: "A recipe for a table top, and beside it what to do first, the days and the coats",
  typed: "The wait for the oil stain is typed over: 2 hours",
  found: "The next line is marked at once: over oil that is still soft the clear would peel",
  mended: "The quick fix puts the wait back",
  end: "Days, cans and cost follow; save the sheet, print it, and go to the bench",
} as const;

const CAPTION_HEIGHT = 48;

/** Lays the caption over the foot of the page, which has room for it. */
const caption = (page: Page, text: string): Promise<void> =>
  page.evaluate(
    `(() => {
      const id = "finishwright-caption";
      const bar = document.getElementById(id) ?? document.body.appendChild(Object.assign(document.createElement("div"), { id }));
      bar.style.cssText = "position:fixed;inset:auto 0 0 0;height:${CAPTION_HEIGHT}px;z-index:99999;background:#1f2937;color:#fff;" +
        "font:500 20px/${CAPTION_HEIGHT}px 'DejaVu Sans',sans-serif;text-align:center";
      bar.textContent = ${JSON.stringify(text)};
    })()`,
  );

/** The last line of the text that is seen is not under the caption. */
export const WITH_CAPTION = CAPTION_HEIGHT;

/** The caret stands in the line with the wait that is mistyped. */
export const takeMovingPicture = async (page: Page, file: string): Promise<void> => {
  const folder = mkdtempSync(path.join(tmpdir(), "finishwright-moving-"));
  const frames: string[] = [];
  const frame = async (ms: number): Promise<void> => {
    await stillness(page, false);
    const name = path.join(folder, `frame${String(frames.length).padStart(3, "0")}`);
    await page.screenshot({ path: `${name}.png`, animations: "disabled" });
    writeFileSync(`${name}.txt`, `delay=${ms}/1000`);
    frames.push(`${name}.png`);
  };
  try {
    await recipeShown(page);
    await runCommand(page, "View: Close Primary Side Bar");
    const view = await showBenchView(page);
    await clear(page);
    await view.locator("#findings").waitFor({ state: "attached" });
    await caption(page, CAPTIONS.begin);
    await frame(BEAT);

    // `until cured` becomes `2 h`.
    await page.locator(".view-line", { hasText: "walnut_gel" }).first().click();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("End");
    await page.keyboard.press("Control+Shift+ArrowLeft");
    await page.keyboard.press("Control+Shift+ArrowLeft");
    await caption(page, CAPTIONS.typed);
    await frame(KEY * 4);
    for (const key of ["2", " ", "h"]) {
      await page.keyboard.type(key);
      await frame(KEY);
    }
    await frame(BEAT / 2);
    await page.keyboard.press("Escape");
    await page.locator(".squiggly-error, .squiggly-warning").first().waitFor({ state: "visible" });
    await view.locator(".finding").first().waitFor({ state: "visible" });
    await caption(page, CAPTIONS.found);
    // The next line is what is wrong now.
    await page.keyboard.press("ArrowDown");
    await runCommand(page, "Show or Focus Hover");
    await page.locator(".monaco-hover:not(.hidden) .hover-contents").first().waitFor({ state: "visible" });
    await frame(BEAT * 1.5);
    await clear(page);

    await page.keyboard.press("Control+.");
    await page.locator(".action-widget").first().waitFor({ state: "visible" });
    await caption(page, CAPTIONS.mended);
    await frame(BEAT);
    await page.keyboard.press("Enter");
    await page.locator(".squiggly-error, .squiggly-warning").first().waitFor({ state: "detached" });
    await view.locator(".finding").first().waitFor({ state: "detached" });
    await view.locator("g.bar").first().waitFor({ state: "visible" });
    await sameDates(page, view);
    await view.locator(".costs").first().scrollIntoViewIfNeeded();
    await caption(page, CAPTIONS.end);
    await frame(BEAT);
    // It finds the others by their numbers, and their times beside them.
    execFileSync("apngasm", [file, frames[0]!, "-l0"], { stdio: ["ignore", "ignore", "inherit"] });
  } finally {
    rmSync(folder, { recursive: true });
  }
};
