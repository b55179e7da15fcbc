/**
 * A real VS Code workbench on this machine: the server that carries it, and a browser that shows it.
 *
 * `setup.sh` has put both in place. Everything that a run leaves behind (settings, installed extensions, sockets, the
 * browser's profile, a copy of the folder that is opened) lies in one temporary folder, so that runs cannot see each
 * other and nothing stays. Nothing here waits for a fixed time.
 */
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import { createInterface } from "node:readline";
import { type Browser, chromium, type Page } from "playwright-core";

export const ROOT = path.resolve(import.meta.dirname, "../..");
export const CACHE = path.join(ROOT, ".cache", "editor");

const NODE = path.join(CACHE, "node");
const SERVER = path.join(CACHE, "node_modules/code-server/lib/vscode/out/server-main.js");
const CHROMIUM = process.env.CHROMIUM ?? "/usr/bin/chromium";

const BROWSER_ARGUMENTS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** A quiet workbench that looks the same every time. */
const SETTINGS = {
  "workbench.colorTheme": "Default Dark Modern",
  "workbench.iconTheme": "vs-seti",
  "window.autoDetectColorScheme": false,
  "workbench.startupEditor": "none",
  "workbench.tips.enabled": false,
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.reduceMotion": "on",
  "workbench.layoutControl.enabled": false,
  "window.commandCenter": false,
  "chat.disableAIFeatures": true,
  "chat.commandCenter.enabled": false,
  "security.workspace.trust.enabled": false,
  "telemetry.telemetryLevel": "off",
  "update.mode": "none",
  "extensions.autoCheckUpdates": false,
  "extensions.ignoreRecommendations": true,
  "git.enabled": false,
  "editor.fontFamily": "DejaVu Sans Mono",
  "editor.fontSize": 14,
  "editor.lineHeight": 20,
  "editor.cursorBlinking": "solid",
  "editor.minimap.enabled": false,
  "editor.stickyScroll.enabled": false,
  "editor.hover.delay": 100,
  "editor.hover.above": false,
};

export interface EditorOptions {
  /** The folder to open; a copy of it is opened, so that a test may write. */
  readonly folder: string;
  /** The packaged extension to install. Without it the unpacked one of this project is loaded. */
  readonly vsix?: string;
  readonly settings?: Readonly<Record<string, unknown>>;
}

export interface PageOptions {
  /** Another folder than the editor's own, which is opened as it lies there. */
  readonly opened?: string;
  /** A file of the folder to show, with `:line:column` after it if that place is to be seen. */
  readonly openFile?: string;
  /** A bundle that exports `run()`; the page ends with it. */
  readonly tests?: string;
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: "dark" | "light";
  /** The display language that extensions are told, as `de`; the workbench's own texts stay English, as no language pack is here. */
  readonly language?: string;
  readonly onLog?: (type: string, args: readonly unknown[]) => void;
  readonly onExit?: (code: number) => void;
}

export interface Editor {
  /** The copy of the folder. */
  readonly folder: string;
  show(options: PageOptions): Promise<Page>;
  stop(): Promise<void>;
}

export const launchBrowser = (): Promise<Browser> =>
  chromium.launch({ executablePath: CHROMIUM, args: BROWSER_ARGUMENTS });

export const startEditor = async (options: EditorOptions): Promise<Editor> => {
  if (!existsSync(SERVER)) throw new Error("There is no editor here yet: run `bash tests/editor/setup.sh`.");
  const scratch = mkdtempSync(path.join(tmpdir(), "finishwright-editor-"));
  const folder = path.join(scratch, path.basename(options.folder));
  cpSync(options.folder, folder, { recursive: true });
  const data = path.join(scratch, "data");
  mkdirSync(path.join(data, "data", "User"), { recursive: true });
  writeFileSync(
    path.join(data, "data", "User", "settings.json"),
    JSON.stringify({ ...SETTINGS, ...options.settings }, undefined, 2),
  );
  const developed = path.join(scratch, "extension");
  if (options.vsix === undefined) linkProject(developed);
  else {
    installExtension(options.vsix, data);
    writeEmptyExtension(developed);
  }

  const server = startServer(data, scratch);
  const browsers: Browser[] = [];
  const stop = async (): Promise<void> => {
    for (const browser of browsers) await browser.close();
    await stopServer(server);
    rmSync(scratch, { recursive: true, force: true });
  };
  try {
    const port = await portOf(server);
    const show = async (page: PageOptions): Promise<Page> => {
      const browser = await launchBrowser();
      browsers.push(browser);
      return openPage(browser, port, page.opened ?? folder, developed, page);
    };
    return { folder, show, stop };
  } catch (error) {
    await stop();
    throw error;
  }
};

const installExtension = (vsix: string, data: string): void => {
  const { status, stdout, stderr } = spawnSync(
    NODE,
    [
      SERVER,
      "--server-data-dir",
      data,
      "--accept-server-license-terms",
      "--install-extension",
      vsix,
      "--force",
    ],
    { encoding: "utf8" },
  );
  if (status !== 0) throw new Error(`The package could not be installed.\n${stdout}${stderr}`);
};

/**
 * The unpacked extension goes by another name, since the workbench itself lies inside this project's folder, and takes
 * for the extension's own every theme that lies inside the extension's folder.
 */
const linkProject = (folder: string): void => symlinkSync(ROOT, folder);

/** Tests run only beside an extension in development, so beside the installed package there is one that does nothing. */
const writeEmptyExtension = (folder: string): void => {
  mkdirSync(folder);
  const manifest = { name: "empty", publisher: "tests", version: "0.0.0", engines: { vscode: "*" } };
  writeFileSync(path.join(folder, "package.json"), JSON.stringify(manifest));
};

/** In a process group of its own, since it starts others that must end with it. */
const startServer = (data: string, scratch: string): ChildProcess =>
  spawn(
    NODE,
    [
      SERVER,
      ...["--host", "127.0.0.1", "--port", "0", "--without-connection-token"],
      ...["--accept-server-license-terms", "--telemetry-level", "off", "--disable-workspace-trust"],
      // Without this the page's wish for a development extension and for tests is passed over in silence.
      "--enable-smoke-test-driver",
      ...["--server-data-dir", data],
    ],
    {
      detached: true,
      stdio: ["ignore", "pipe", "pipe"],
      env: { ...process.env, XDG_RUNTIME_DIR: scratch },
    },
  );

const portOf = (server: ChildProcess): Promise<number> =>
  new Promise((resolve, reject) => {
    const said: string[] = [];
    const listen = (line: string): void => {
      said.push(line);
      const port = /listening on (\d+)/.exec(line)?.[1];
      if (port !== undefined) resolve(Number(port));
    };
    for (const stream of [server.stdout, server.stderr]) {
      if (stream !== null) createInterface({ input: stream }).on("line", listen);
    }
    server.once("exit", (code) => {
      reject(new Error(`The editor ended with ${code} before it listened.\n${said.join("\n")}`));
    });
  });

const stopServer = async (server: ChildProcess): Promise<void> => {
  if (server.pid === undefined || server.exitCode !== null) return;
  const ended = new Promise((resolve) => server.once("exit", resolve));
  process.kill(-server.pid, "SIGKILL");
  await ended;
};

/** An empty page that hears what a test host in it says. */
export const newPage = async (browser: Browser, options: PageOptions): Promise<Page> => {
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1280, height: options.height ?? 800 },
    deviceScaleFactor: 1,
    locale: "en-US",
    colorScheme: options.colorScheme ?? "dark",
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  // Said by the script of a language pack where there is one, and by an empty script without.
  if (options.language !== undefined) {
    const { language } = options;
    await page.addInitScript(`Object.defineProperty(globalThis, "_VSCODE_NLS_LANGUAGE", {
      get: () => ${JSON.stringify(language)}, set() {}, configurable: true });`);
  }
  await page.exposeFunction("codeAutomationLog", (type: string, args: readonly unknown[]) =>
    options.onLog?.(type, args),
  );
  await page.exposeFunction("codeAutomationExit", (code: number) => options.onExit?.(code));
  return page;
};

/** A page that has not begun by then will not. */
const MOST_LOADING_MS = 600_000;

const openPage = async (
  browser: Browser,
  port: number,
  folder: string,
  developed: string,
  options: PageOptions,
): Promise<Page> => {
  const page = await newPage(browser, options);
  const remote = (file: string): string => `vscode-remote://127.0.0.1:${port}${file}`;
  const payload: readonly (readonly [string, string])[] = [
    ["skipWelcome", "true"],
    ["skipReleaseNotes", "true"],
    ["gotoLineMode", "true"],
    ["extensionDevelopmentPath", remote(developed)],
    ...pair("extensionTestsPath", options.tests && remote(options.tests)),
    ...pair("openFile", options.openFile && remote(path.join(folder, options.openFile))),
  ];
  const address = new URL(`http://127.0.0.1:${port}/`);
  address.searchParams.set("folder", folder);
  address.searchParams.set("payload", JSON.stringify(payload));
  // What it does from here on is waited for by who asked for it; a busy machine takes its time to begin.
  await page.goto(address.href, { waitUntil: "commit", timeout: MOST_LOADING_MS });
  return page;
};

const pair = (name: string, value: string | undefined): readonly (readonly [string, string])[] =>
  value === undefined ? [] : [[name, value]];
