/**
 * What is looked at in the editor, one after the other in one window: where a person meets a finding, a job and a surface.
 * Each leaves the window as it found it.
 */
import type { Page } from "playwright-core";
import { clear, goTo, recipeShown, runCommand, stillness, webview } from "./workbench.ts";

export interface Scene {
  readonly name: string;
  show(page: Page): Promise<void>;
  leave(page: Page): Promise<void>;
}

const MISTAKES = "mistakes.finish";
const TABLES = "reading-tables.finish";

const hoverAt = async (page: Page, place: string): Promise<void> => {
  await goTo(page, place);
  await recipeShown(page);
  await runCommand(page, "Show or Focus Hover");
  await page.locator(".monaco-hover:not(.hidden) .hover-contents").first().waitFor({ state: "visible" });
  await stillness(page);
};

/** `lineOf`: the place of a text in a file of the folder, as `goTo` takes it. */
export const scenes = (placeOf: (file: string, text: string) => string): readonly Scene[] => [
  {
    name: "hover-findings",
    show: (page) => hoverAt(page, placeOf(MISTAKES, "waterborne_polyurethane x 2")),
    leave: clear,
  },
  {
    name: "marker-view",
    async show(page) {
      await goTo(page, placeOf(MISTAKES, "layer gel_stain, wiped off"));
      await page.locator(".squiggly-error, .squiggly-warning").first().waitFor({ state: "visible" });
      await runCommand(page, "Go to Next Problem (Error, Warning, Info)");
      await page.locator(".marker-widget").first().waitFor({ state: "visible" });
      await stillness(page);
    },
    leave: clear,
  },
  {
    name: "problems",
    async show(page) {
      await goTo(page, `${MISTAKES}:1:1`);
      await runCommand(page, "Problems: Focus on Problems View");
      await page.locator(".markers-panel .monaco-list-row").nth(1).waitFor({ state: "visible" });
      await stillness(page, false);
    },
    async leave(page) {
      await runCommand(page, "View: Hide Panel");
    },
  },
  {
    name: "hover-job",
    show: (page) => hoverAt(page, placeOf(TABLES, "hall_tables")),
    leave: clear,
  },
  {
    name: "hover-surface",
    show: (page) => hoverAt(page, placeOf(TABLES, "top {")),
    leave: clear,
  },
  {
    name: "workshop",
    async show(page) {
      await goTo(page, placeOf(TABLES, "hall_tables"));
      await runCommand(page, "Finishwright: Focus on Workshop View");
      const rows = page.locator(".pane-body .monaco-list-row");
      await rows.filter({ hasText: "Reading tables" }).first().waitFor({ state: "visible" });
      await rows.filter({ hasText: "being planned" }).first().waitFor({ state: "detached" });
      const lens = page.locator(".codelens-decoration");
      await lens.filter({ hasText: "last work" }).first().waitFor({ state: "visible" });
      await stillness(page);
    },
    async leave(page) {
      await runCommand(page, "View: Show Explorer");
    },
  },
  {
    name: "explained",
    async show(page) {
      await goTo(page, placeOf(MISTAKES, "waterborne_polyurethane x 2"));
      await page.locator(".squiggly-error, .squiggly-warning").first().waitFor({ state: "visible" });
      await runCommand(page, "Finishwright: Explain Finding");
      const rows = page.locator(".quick-input-list .monaco-list-row");
      await rows.first().waitFor({ state: "visible" });
      await page.keyboard.press("Enter");
      await webview(page).locator(".line.at").first().waitFor({ state: "visible" });
      await stillness(page, false);
    },
    async leave(page) {
      await runCommand(page, "View: Close All Editors");
    },
  },
];
