/**
 * What a person does in the workbench, by keys and mouse: calls a command by its title, goes to a line, waits until nothing
 * moves. Nothing here waits for a fixed time.
 */
import type { FrameLocator, Locator, Page } from "playwright-core";

/** A busy machine takes its time to start an editor, ms. */
export const PATIENCE = 180_000;

const palette = (page: Page): Locator => page.locator(".quick-input-widget input[type=text]").first();

export const rowsOf = (page: Page): Locator => page.locator(".quick-input-list .monaco-list-row");

/**
 * Opens the palette with a text in it, and answers with the row that is meant. The key is heard only once the workbench has
 * read its keys, and what else the workbench opens while it starts closes the palette again.
 */
const askPalette = async (page: Page, text: string, row: string): Promise<Locator> => {
  const input = palette(page);
  const meant = rowsOf(page).filter({ hasText: row }).first();
  const soon = (what: Promise<unknown>): Promise<boolean> =>
    what.then(
      () => true,
      () => false,
    );
  for (;;) {
    while (!(await input.isVisible())) {
      await page.keyboard.press("F1");
      await soon(input.waitFor({ state: "visible", timeout: SOON }));
    }
    const isFilled = await soon(input.fill(text, { timeout: SOON }));
    if (isFilled && (await soon(meant.waitFor({ state: "visible", timeout: 4 * SOON })))) return meant;
    await page.keyboard.press("Escape");
  }
};

/** Then it is tried once more, ms. */
const SOON = 5_000;

/** A command by its title as the palette shows it, with its category: `Finishwright: New Recipe`. */
export const runCommand = async (page: Page, title: string): Promise<void> => {
  const row = await askPalette(page, `>${title}`, title);
  await row.click();
  // Where the list was, the mouse would rest on something that tells of itself.
  await page.mouse.move(0, 0);
};

/** `file:line:column`, from 1; the file is one of the folder. */
export const goTo = async (page: Page, place: string): Promise<void> => {
  const [file = "", line = "1"] = place.split(":");
  await askPalette(page, place, file);
  await page.keyboard.press("Enter");
  await page.getByText(`Ln ${line}, Col`).first().waitFor({ state: "visible" });
};

/** The recipe is read, and what is known of it is shown. */
export const recipeShown = (page: Page): Promise<void> =>
  page
    .locator(".codelens-decoration, .squiggly-error, .squiggly-warning")
    .first()
    .waitFor({ state: "visible" });

/** A page in a page in a page. */
export const webview = (page: Page, index = 0): FrameLocator =>
  page.locator("iframe.webview.ready").nth(index).contentFrame().frameLocator("iframe#active-frame");

/** The bench view beside the text, with a plan in it. */
export const showBenchView = async (page: Page): Promise<FrameLocator> => {
  // The palette has a command of the extension only where a recipe is known for one.
  await page.locator(".codelens-decoration").first().waitFor({ state: "visible" });
  await runCommand(page, "Finishwright: Show Bench View");
  const view = webview(page);
  await view.locator("g.bar").first().waitFor({ state: "visible" });
  return view;
};

const MOST_LOOKS = 300;

/** The line above the job and the bench view take their dates from one plan, but not at the same moment. */
export async function sameDates(page: Page, view: FrameLocator): Promise<void> {
  for (let look = 0; look < MOST_LOOKS; look += 1) {
    const lens = (await page.locator(".codelens-decoration").allTextContents()).join(" ");
    const day = /last work (\d+ \w+)/u.exec(lens.replaceAll("\u00a0", " "))?.[1];
    const drawn = (await view.locator(".card .value").allTextContents()).join(" ");
    if (day !== undefined && drawn.replaceAll("\u00a0", " ").includes(` ${day} `)) return;
    await page.waitForTimeout(100);
  }
  throw new Error("The line above the job and the bench view tell different days.");
}

/** What the workbench puts in its corners by and by. */
const LATE_PARTS = [".monaco-breadcrumbs .outline-element", "[id='status.forwardedPorts']"];

export const stillness = async (page: Page, isEditor = true): Promise<void> => {
  for (const part of isEditor ? LATE_PARTS : [])
    await page.locator(part).first().waitFor({ state: "visible" });
  // Said as text, since it runs in the page, whose types are not those of this project.
  await page.waitForFunction("document.getAnimations().every(({ playState }) => playState !== 'running')");
};

/** Frees the text of hovers, suggestions and notices. */
export const clear = async (page: Page): Promise<void> => {
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
};
