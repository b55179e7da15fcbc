/**
 * Makes the pictures of the README and the extension's icon, from a real editor.
 *
 *     npm run picture
 *
 * keeps in `client/media` what the README shows: a moving picture of a mistake that is typed and mended, the bench view beside its
 * text, a finding with the page that explains it, and the workshop. Everything that moves is waited for, so the same project makes
 * the same pictures; with `--only moving` one of them (moving, bench-view, explained, workshop, icon).
 *
 *     npm run picture -- --scenes --to FOLDER
 *
 * leaves in a folder what a person meets of a finding, a job and a surface, in four themes, for looking at; with
 * `--only NAME` one of them, with `--theme light` in one of the themes, and with `--language de` as an editor in German has it. `--view` with `--file` and `--at` takes the bench view beside that line, in four themes.
 */
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { parseArgs } from "node:util";
import type { Page } from "playwright-core";
import { drawSvg } from "./draw-svg.ts";
import { type EditorOptions, type PageOptions, ROOT, startEditor } from "./editor.ts";
import { takeMovingPicture, WITH_CAPTION } from "./moving-picture.ts";
import { scenes } from "./scenes.ts";
import { clear, PATIENCE, runCommand, sameDates, showBenchView, stillness } from "./workbench.ts";

const SAMPLES = path.join(ROOT, "samples");
const MEDIA = path.join(ROOT, "client", "media");
const DEMO = path.join(import.meta.dirname, "demo");
/** Of all pictures of the README, so that they stand under each other; in points. */
const WIDTH = 1280;

const { values } = parseArgs({
  options: {
    to: { type: "string" },
    file: { type: "string", default: "reading-tables.finish" },
    folder: { type: "string", default: SAMPLES },
    /** The first line with this text. */
    at: { type: "string", default: "job hall_tables" },
    view: { type: "boolean", default: false },
    scenes: { type: "boolean", default: false },
    only: { type: "string" },
    /** Of `LOOKS`; without it all four. */
    theme: { type: "string" },
    /** The display language, as `de`. */
    language: { type: "string" },
  },
});

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

/** `file:line:column`, from 1, of the first place with this text. */
const placeOf = (file: string, text: string): string => {
  const lines = readFileSync(path.join(values.folder, file), "utf8").split("\n");
  const index = lines.findIndex((line) => line.includes(text));
  if (index < 0) throw new Error(`${file} has no line with ${text}.`);
  return `${file}:${index + 1}:${lines[index]!.indexOf(text) + 1}`;
};

/** Opens a window in this look, does the work in it, and closes everything. */
const inWindow = async (
  { theme, colorScheme }: Look,
  options: Partial<EditorOptions> & PageOptions,
  work: (page: Page) => Promise<void>,
): Promise<void> => {
  const { folder = values.folder, settings, ...shown } = options;
  const editor = await startEditor({ folder, settings: { "workbench.colorTheme": theme, ...settings } });
  try {
    const { language } = values;
    const page = await editor.show({ colorScheme, ...(language !== undefined && { language }), ...shown });
    page.setDefaultTimeout(PATIENCE);
    await work(page);
  } finally {
    await editor.stop();
  }
};

const take = async (page: Page, file: string): Promise<void> => {
  await page.screenshot({ path: file, animations: "disabled", caret: "hide" });
  console.log(path.relative(process.cwd(), file));
};

/** Scenes follow each other in one window. */
const takeScenes = (
  look: Look,
  name: (scene: string) => string | undefined,
  size?: PageOptions,
): Promise<void> =>
  inWindow(look, { openFile: "mistakes.finish:1:1", ...size }, async (page) => {
    for (const scene of scenes(placeOf)) {
      const file = name(scene.name);
      if (file === undefined) continue;
      await scene.show(page);
      await take(page, file);
      await scene.leave(page);
    }
  });

const takeView = (look: Look, file: string, options: Partial<EditorOptions> & PageOptions): Promise<void> =>
  inWindow(look, { openFile: placeOf(values.file, values.at), ...options }, async (page) => {
    if (values.to === undefined) await runCommand(page, "View: Close Primary Side Bar");
    const view = await showBenchView(page);
    await clear(page);
    // A job that is asked for by name may have no dates.
    if (values.to === undefined) await sameDates(page, view);
    await stillness(page);
    await take(page, file);
  });

/** The moving picture is taken in a window with little but the text and the bench view. */
const takeMoving = (file: string): Promise<void> =>
  inWindow(
    LIGHT,
    {
      folder: DEMO,
      openFile: "map-table.finish:8:1",
      width: WIDTH,
      height: 720 + WITH_CAPTION,
      settings: {
        "workbench.activityBar.location": "hidden",
        "workbench.statusBar.visible": false,
        "breadcrumbs.enabled": false,
        "editor.inlayHints.enabled": "off",
      },
    },
    async (page) => {
      await takeMovingPicture(page, file);
      console.log(path.relative(process.cwd(), file));
    },
  );

const FROM_SCENES: Readonly<Record<string, string>> = { explained: "explained", workshop: "workshop" };

const takeForReadme = async (): Promise<void> => {
  const file = (name: string): string => path.join(MEDIA, `${name}.png`);
  const isWanted = (name: string): boolean => values.only === undefined || values.only === name;
  if (Object.values(FROM_SCENES).some(isWanted)) {
    await takeScenes(LIGHT, (scene) => {
      const name = FROM_SCENES[scene];
      return name !== undefined && isWanted(name) ? file(name) : undefined;
    });
  }
  if (isWanted("bench-view")) {
    await takeView(LIGHT, file("bench-view"), {
      folder: DEMO,
      openFile: "map-table.finish:26:1",
      width: WIDTH,
      height: 1690,
    });
  }
  if (isWanted("moving")) await takeMoving(file("moving"));
  if (isWanted("icon")) {
    await drawSvg(readFileSync(path.join(MEDIA, "icon.svg"), "utf8"), 256, file("icon"));
    // It is packed, and as many colours as it needs take half of the bytes.
    execFileSync("pngquant", [
      "--quality",
      "85-100",
      "--speed",
      "1",
      "--strip",
      "--force",
      "--output",
      file("icon"),
      file("icon"),
    ]);
  }
};

if (values.to === undefined) await takeForReadme();
else {
  const { to, only } = values;
  mkdirSync(to, { recursive: true });
  for (const [name, look] of Object.entries(LOOKS)) {
    if (values.theme !== undefined && values.theme !== name) continue;
    if (values.view)
      await takeView(look, path.join(to, `bench-view-${name}.png`), { width: 1600, height: 1400 });
    if (values.scenes)
      await takeScenes(look, (scene) =>
        only === undefined || only === scene ? path.join(to, `${scene}-${name}.png`) : undefined,
      );
  }
}
