/// <reference lib="dom" />
/** Pages of the extension in a browser by themselves, in the colours of the editor's themes. */
import type { Browser, BrowserContext, Page } from "playwright-core";
import { THEMES, type ThemeName } from "./themes.ts";

export interface Look {
  readonly theme: ThemeName;
  readonly width?: number;
  readonly height?: number;
  /** Colours of the system take the place of the theme's. */
  readonly forced?: boolean;
  /** Runs before the page's own, whatever its policy. */
  readonly script?: string;
}

export const LOOKS: Readonly<Record<string, Look>> = {
  dark: { theme: "dark" },
  light: { theme: "light" },
  "high-contrast": { theme: "highContrast" },
  "high-contrast-light": { theme: "highContrastLight" },
  "forced-dark": { theme: "dark", forced: true },
  "forced-light": { theme: "light", forced: true },
};

export const contextOf = async (browser: Browser, look: Look): Promise<BrowserContext> => {
  const context = await browser.newContext({
    viewport: { width: look.width ?? 900, height: look.height ?? 900 },
    deviceScaleFactor: 1,
    locale: "en-GB",
    colorScheme: THEMES[look.theme].kind.includes("light") ? "light" : "dark",
    forcedColors: look.forced ? "active" : "none",
    reducedMotion: "reduce",
  });
  if (look.script !== undefined) await context.addInitScript({ content: look.script });
  return context;
};

/** Gives a page that is open what an editor gives it: its variables, and classes of its body by the kind of theme. */
export const colour = (page: Page, theme: ThemeName): Promise<void> =>
  page.evaluate(
    ({ classes, values }) => {
      for (const [name, value] of Object.entries<string>(values))
        document.documentElement.style.setProperty(name, value);
      document.body.className = classes;
      document.body.style.backgroundColor = "var(--vscode-editor-background)";
    },
    { classes: THEMES[theme].kind, values: THEMES[theme].colours },
  );
