/// <reference lib="dom" />
/**
 * The page of the bench view in a browser by itself, as the editor shows it: its own frame with its policy, the script of
 * the bundle, and the colours of one of the editor's themes. What it tells the extension is kept; what is wrong with it
 * (what its policy forbids, its own mistakes, whatever it loads) are its complaints.
 */
import type { Browser, BrowserContext, Page } from "playwright-core";
import { benchPage } from "../../client/src/bench/page.ts";
import type { Analysis } from "../../server/src/features/types.ts";
import type { BenchAnswer } from "../../server/src/lsp/custom-requests.ts";
import { made } from "../harness/bundles.ts";
import { colour, contextOf, type Look } from "./themed.ts";

const ADDRESS = "http://bench.test/";

export interface ShownBench {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly complaints: readonly string[];
  /** What the page told, in order. */
  told(): Promise<readonly Readonly<Record<string, unknown>>[]>;
  show(answer: BenchAnswer): Promise<void>;
}

export async function showBench(browser: Browser, look: Look): Promise<ShownBench> {
  const context = await contextOf(browser, look);
  const page = await context.newPage();
  const complaints: string[] = [];
  const script = (await made("client/dist/bench.js")).outputFiles[0]!.text;
  page.on("pageerror", ({ message }) => complaints.push(message));
  page.on("console", (message) => complaints.push(message.text()));
  await context.route("**/*", (route) => {
    const url = route.request().url();
    if (url === ADDRESS) {
      return route.fulfill({
        contentType: "text/html",
        body: benchPage("0123456789abcdef", `${ADDRESS}bench.js`, ADDRESS),
      });
    }
    if (url === `${ADDRESS}bench.js`) return route.fulfill({ contentType: "text/javascript", body: script });
    // A browser asks for it by itself.
    if (url !== `${ADDRESS}favicon.ico`) complaints.push(`asks for ${url}`);
    return route.abort();
  });
  await page.addInitScript(() => {
    const told: unknown[] = [];
    let state: unknown;
    Object.assign(globalThis, {
      told,
      acquireVsCodeApi: () => ({
        postMessage: (message: unknown) => told.push(message),
        getState: () => state,
        setState: (now: unknown) => {
          state = now;
        },
      }),
    });
  });
  await page.goto(ADDRESS);
  await colour(page, look.theme);
  return {
    page,
    context,
    complaints,
    told: () => page.evaluate("told"),
    show: async (answer) => {
      await page.evaluate((data) => window.dispatchEvent(new MessageEvent("message", { data })), {
        type: "bench",
        answer,
      });
    },
  };
}

/** What the server would answer for a job of an analysis; `file:///` stands before the names of files. */
export function answerOf(analysis: Analysis, file: string, job: string): BenchAnswer {
  const bench = analysis.bench(file, job);
  if (bench === undefined) throw new Error(`${file} has no job ${job}.`);
  const lineAt = (name: string, offset: number): number =>
    analysis.text(name)!.slice(0, offset).split("\n").length - 1;
  return {
    jobs: analysis.jobs(file).map(({ job: { name, title } }) => ({ name, title: title ?? name })),
    notes: [],
    bench: {
      ...bench,
      places: bench.places.map(({ file: of, span }) => ({
        uri: `file:///${of}`,
        line: lineAt(of, span.start),
        character: 0,
        endLine: lineAt(of, span.end),
      })),
    },
  };
}
