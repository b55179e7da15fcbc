/**
 * Makes the pictures of the README and the extension's icon, from a real editor.
 *
 *     npm run picture
 *
 * opens the sample with mistakes, rests the mouse on a finding, and keeps what is to be seen as
 * `client/media/editor.png`. Everything that moves is waited for, so the same project makes the same picture. With
 * `--to FOLDER` the pictures go there instead, in a dark and a light theme, for looking at. With `--view` as well it opens
 * the bench view beside the job at `--at`, and takes it in four themes.
 */
import { mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { parseArgs } from "node:util";
import type { Page } from "playwright-core";
import { drawSvg } from "./draw-svg.ts";
import { ROOT, startEditor } from "./editor.ts";

const SAMPLES = path.join(ROOT, "samples");
const MEDIA = path.join(ROOT, "client", "media");

const { values } = parseArgs({
  options: {
    to: { type: "string" },
    file: { type: "string", default: "mistakes.finish" },
    folder: { type: "string", default: SAMPLES },
    /** The mouse rests on the finding in the first line with this text. */
    at: { type: "string", default: "layer waterborne_polyurethane" },
    view: { type: "boolean", default: false },
  },
});

/** A busy machine takes its time to start an editor, ms. */
const PATIENCE = 180_000;

interface Look {
  readonly theme: string;
  readonly colorScheme: "dark" | "light";
}

const DARK: Look = { theme: "Default Dark Modern", colorScheme: "dark" };
const LIGHT: Look = { theme: "Default Light Modern", colorScheme: "light" };

const LOOKS: Readonly<Record<string, Look>> = {
  dark: DARK,
  light: LIGHT,
  "high-contrast": { theme: "Default High Contrast", colorScheme: "dark" },
  "high-contrast-light": { theme: "Default High Contrast Light", colorScheme: "light" },
};

/**
 * Opens the bench view by the command palette, as a person does, and waits until its job is planned and drawn. The view is
 * a page in a page in a page.
 */
const showBenchView = async (page: Page): Promise<void> => {
  // The palette has a command of the extension only where a recipe is known for one.
  await page.locator(".codelens-decoration").first().waitFor({ state: "visible" });
  const palette = page.locator(".quick-input-widget input[type=text]");
  // The key is heard only once the workbench has read its keys.
  while (!(await palette.isVisible())) {
    await page.keyboard.press("F1");
    await palette.waitFor({ state: "visible", timeout: 5_000 }).catch(() => undefined);
  }
  await palette.fill(">Finishwright: Show Bench View");
  await page.locator(".quick-input-list .monaco-list-row", { hasText: "Show Bench View" }).first().click();
  const view = page.frameLocator("iframe.webview.ready").frameLocator("iframe#active-frame");
  await view.locator("g.bar").first().waitFor({ state: "visible" });
  await stillness(page);
};

/**
 * Shows the hover of a finding: the squiggle first, then the mouse on it, then its text, then stillness.
 * The mouse is moved by hand, since a squiggle lies below the text and takes no mouse itself.
 */
const hoverFinding = async (page: Page, line: number): Promise<void> => {
  await page.locator(".squiggly-error, .squiggly-warning").first().waitFor({ state: "visible" });
  const row = page.locator(".view-overlays > div").filter({ has: page.locator(".current-line") });
  await page.getByText(`Ln ${line}, Col`).waitFor({ state: "visible" });
  const squiggle = row.locator(".squiggly-error, .squiggly-warning").first();
  const box = await squiggle.boundingBox();
  if (box === null) throw new Error(`There is no finding in line ${line}.`);
  await page.mouse.move(box.x + Math.min(box.width / 2, 40), box.y + box.height / 2);
  await page.locator(".monaco-hover:not(.hidden) .hover-contents").first().waitFor({ state: "visible" });
  await stillness(page);
};

/** The line, from 1, of the file that is shown. */
const lineOf = (text: string): number => {
  const lines = readFileSync(path.join(values.folder, values.file), "utf8").split("\n");
  const index = lines.findIndex((line) => line.includes(text));
  if (index < 0) throw new Error(`${values.file} has no line with ${text}.`);
  return index + 1;
};

/** What the workbench puts in its corners by and by. */
const LATE_PARTS = [".monaco-breadcrumbs .outline-element", "[id='status.forwardedPorts']"];

const stillness = async (page: Page): Promise<void> => {
  for (const part of LATE_PARTS) await page.locator(part).first().waitFor({ state: "visible" });
  // Said as text, since it runs in the page, whose types are not those of this project.
  await page.waitForFunction("document.getAnimations().every(({ playState }) => playState !== 'running')");
};

const takePicture = async (
  file: string,
  look: Look,
  size: { readonly width?: number; readonly height?: number } = {},
): Promise<void> => {
  const editor = await startEditor({
    folder: values.folder,
    settings: { "workbench.colorTheme": look.theme },
  });
  try {
    const line = lineOf(values.at);
    const { colorScheme } = look;
    const page = await editor.show({ openFile: `${values.file}:${line}:1`, colorScheme, ...size });
    page.setDefaultTimeout(PATIENCE);
    if (values.view) await showBenchView(page);
    else await hoverFinding(page, line);
    await page.screenshot({ path: file, animations: "disabled", caret: "hide" });
    console.log(path.relative(process.cwd(), file));
  } finally {
    await editor.stop();
  }
};

if (values.to === undefined) {
  await takePicture(path.join(MEDIA, "editor.png"), DARK);
  await drawSvg(readFileSync(path.join(MEDIA, "icon.svg"), "utf8"), 256, path.join(MEDIA, "icon.png"));
} else if (values.view) {
  mkdirSync(values.to, { recursive: true });
  for (const [name, look] of Object.entries(LOOKS)) {
    const file = path.join(values.to, `bench-view-${name}.png`);
    await takePicture(file, look, { width: 1600, height: 1400 });
  }
} else {
  mkdirSync(values.to, { recursive: true });
  await takePicture(path.join(values.to, "editor-dark.png"), DARK);
  await takePicture(path.join(values.to, "editor-light.png"), LIGHT);
}
