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
const BEGIN = 2000;
const KEY = 160;
const LOOK = 2600;
const END = 3200;

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
    await frame(BEGIN);

    // `until cured` becomes `2 h`.
    await page.locator(".view-line", { hasText: "gel_stain" }).first().click();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("End");
    await page.keyboard.press("Control+Shift+ArrowLeft");
    await page.keyboard.press("Control+Shift+ArrowLeft");
    await frame(KEY * 3);
    for (const key of ["2", " ", "h"]) {
      await page.keyboard.type(key);
      await frame(KEY);
    }
    await page.keyboard.press("Escape");
    await page.locator(".squiggly-error, .squiggly-warning").first().waitFor({ state: "visible" });
    await view.locator(".finding").first().waitFor({ state: "visible" });
    await sameDates(page, view);
    await frame(LOOK);

    // The next line is what is wrong now.
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Control+.");
    await page.locator(".action-widget").first().waitFor({ state: "visible" });
    await frame(LOOK);
    await page.keyboard.press("Enter");
    await page.locator(".squiggly-error, .squiggly-warning").first().waitFor({ state: "detached" });
    await view.locator(".finding").first().waitFor({ state: "detached" });
    await view.locator("g.bar").first().waitFor({ state: "visible" });
    await sameDates(page, view);
    await frame(END);
    // It finds the others by their numbers, and their times beside them.
    execFileSync("apngasm", [file, frames[0]!, "-l0"], { stdio: ["ignore", "ignore", "inherit"] });
  } finally {
    rmSync(folder, { recursive: true });
  }
};
