/**
 * Uses HTML sheets in a real browser as people do: at the bench on a telephone of 390 px, by touch, and on paper.
 *
 *     npm run test:sheet
 *
 * Ends with `N passed, N failed`, and with 1 if anything failed. With `--to FOLDER` the pictures of the telephone and the
 * printed pages (PDF) are left there, for looking at. Chromium is taken from where `editor.ts` looks for it.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import process from "node:process";
import { pathToFileURL } from "node:url";
import { parseArgs } from "node:util";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { runCli } from "../cli/run-cli.ts";
import { ok, same, strictEqual } from "./assert.ts";
import { AXE, violations } from "./axe.ts";
import { launchBrowser, ROOT } from "./editor.ts";
import { runTests, type Test } from "./report.ts";

const { values } = parseArgs({ options: { to: { type: "string" } } });

const SAMPLES = path.join(ROOT, "samples");
const sample = (name: string): string => readFileSync(path.join(SAMPLES, name), "utf8");
const READING_ROOM = Object.fromEntries(
  ["reading-tables.finish", "recipes.finish", "shop.finish", "stock.finish"].map((name) => [
    name,
    sample(name),
  ]),
);

/** A table and six chairs, stripped and varnished, in one job. */
const DINING = {
  "dining.finish": `material clear_varnish "Clear varnish" {
  family oil polyurethane
  covers 10 m2/L
  recoat 6 h to 24 h
  packs  1 L for 30.00
}

piece table "Dining table" {
  surface top {
    shape panel 1800 mm x 900 mm
    wood  oak
    wear  hard
  }
  surface frame {
    shape panel 2400 mm x 300 mm
    wood  oak
  }
}

piece chair "Chair" {
  surface seat {
    shape panel 450 mm x 420 mm
    wood  oak
  }
  surface back {
    shape panel 1200 mm x 300 mm
    wood  oak
  }
}

shop mill "Old mill" {
  air   20 C, 50 % RH
  crew  1
  hours Mon to Fri 09:00 to 17:00
}

recipe varnished "Varnished" {
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 180
  step   dust
  layer  clear_varnish x 3, by brush, between sand 320
  wait   until cured
}

job dining "Table and six chairs" {
  piece table
  piece chair x 6
  in    mill
  start 2027-03-08
  apply varnished to table.top, table.frame, chair.seat, chair.back
}
`,
};

/** Two shelves, one surface: short enough to be followed by hand. 2027-03-08 is a Monday. */
const SHELVES = {
  "shelves.finish": `material clear "Clear" {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h to 24 h
  packs  1 L for 20.00
}

piece shelf "Shelf" {
  surface top {
    shape panel 1000 mm x 300 mm
    wood  beech
  }
}

shop room "Room" {
  air   21 C, 50 % RH
  hours Mon to Fri 08:00 to 18:00
}

recipe coated "Coated" {
  for    wood
  safety dust_mask
  step   sand 120, takes 20 min
  step   dust, takes 10 min
  layer  clear x 2, by brush, takes 20 min
  wait   until cured
}

job shelves "Shelves" {
  piece shelf x 2
  in    room
  start 2027-03-08 09:00
  apply coated to top
}
`,
};

async function pageOf(
  folder: string,
  files: Readonly<Record<string, string>>,
  name: string,
): Promise<string> {
  const { stdout, stderr } = await runCli(["sheet", name, "--format", "html"], { files });
  strictEqual(stderr, "");
  const file = path.join(folder, name.replace(".finish", ".html"));
  writeFileSync(file, stdout);
  return file;
}

/** What is wrong with a page shows here: scripts that its policy forbids, mistakes in its own, and whatever it loads. */
interface Seen {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly complaints: string[];
}

async function onTelephone(browser: Browser, file: string, at: string): Promise<Seen> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    deviceScaleFactor: 1,
    locale: "en-GB",
    timezoneId: "Europe/London",
    colorScheme: "light",
    reducedMotion: "reduce",
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  const address = pathToFileURL(file).href;
  page.on("pageerror", ({ message }) => complaints.push(message));
  page.on("console", (message) => complaints.push(message.text()));
  page.on("request", (request) => {
    if (request.url() !== address) complaints.push(`asks for ${request.url()}`);
  });
  await page.clock.install({ time: new Date(`${at}Z`) });
  await page.goto(address);
  return { page, context, complaints };
}

const setClock = (page: Page, at: string): Promise<void> => page.clock.setFixedTime(new Date(`${at}Z`));
/** Times are held together by spaces that do not break. */
const plainSpaces = (text: string | null): string => (text ?? "").replaceAll("\u00a0", " ");
const shown = async (page: Page, selector: string): Promise<string> =>
  (await page.locator(selector).first().isVisible())
    ? plainSpaces(await page.locator(selector).first().textContent())
    : "";
/** The lines of a list or of a block, each for itself. */
const lines = async (page: Page, selector: string): Promise<string[]> =>
  (await page.locator(`${selector} > *`).allTextContents()).map(plainSpaces);
const state = (page: Page): Promise<string | null> => page.locator(".live").getAttribute("data-is");
const row = (page: Page, name: string) => page.locator(`li.row[data-name=${JSON.stringify(name)}]`);
const box = (page: Page, name: string, piece: number) =>
  row(page, name).locator(`input[data-piece="${piece}"]`);

const leave = async (page: Page, name: string): Promise<void> => {
  if (values.to === undefined) return;
  mkdirSync(values.to, { recursive: true });
  await page.screenshot({ path: path.join(values.to, `${name}.png`) });
};

/**
 * What to do now, when the wait ends and what may go wrong: all three have an answer, in large letters, on the first 640 of
 * the 844 pixels that a telephone shows.
 */
async function answersOnFirstScreen(page: Page): Promise<void> {
  await page.evaluate("window.scrollTo(0, 0)");
  for (const answer of [".gist .what", ".live .waits > *", ".live .risks > *"]) {
    const first = page.locator(answer).first();
    const { y, height } = (await first.boundingBox())!;
    ok(y + height <= 640, `${answer} ends at ${y + height}`);
    const size = await first.evaluate((element) =>
      Number.parseFloat(
        (
          globalThis as unknown as { getComputedStyle: (of: unknown) => { fontSize: string } }
        ).getComputedStyle(element).fontSize,
      ),
    );
    ok(size >= 18, `${answer} is ${size} px`);
  }
}

/** How many pages a sheet takes on paper; every page of a PDF is an object of the type Page (ISO 32000-1, 7.7.3.3). */
async function printedPages(browser: Browser, file: string, format: "A4" | "Letter"): Promise<number> {
  const page = await browser.newPage();
  try {
    await page.goto(pathToFileURL(file).href);
    const pdf = await page.pdf({ format, preferCSSPageSize: false, printBackground: false });
    if (values.to !== undefined) {
      mkdirSync(values.to, { recursive: true });
      writeFileSync(path.join(values.to, `${path.basename(file, ".html")}-${format}.pdf`), pdf);
    }
    return pdf.toString("latin1").match(/\/Type\s*\/Page\b/gu)?.length ?? 0;
  } finally {
    await page.close();
  }
}

function tests(browser: Browser, folder: string): readonly Test[] {
  return [
    {
      name: "on paper, the two reading tables take two pages, and so do a table and six chairs",
      run: async () => {
        const tables = await pageOf(folder, READING_ROOM, "reading-tables.finish");
        const dining = await pageOf(folder, DINING, "dining.finish");
        for (const format of ["A4", "Letter"] as const) {
          strictEqual(await printedPages(browser, tables, format), 2);
          strictEqual(await printedPages(browser, dining, format), 2);
        }
      },
    },
    {
      name: "on paper, no time or date is broken and nothing of the telephone's is there",
      run: async () => {
        const file = await pageOf(folder, READING_ROOM, "reading-tables.finish");
        const page = await browser.newPage({ viewport: { width: 718, height: 1000 } });
        await page.emulateMedia({ media: "print" });
        await page.goto(pathToFileURL(file).href);
        // 190 mm between the margins of A4 are 718 px of CSS; a line of 8.5 pt at 1.25 is 14.2 px high.
        const heights = await page
          .locator(".row > .time")
          .evaluateAll((cells) => cells.map((cell) => cell.getBoundingClientRect().height));
        ok(heights.length > 20 && heights.every((height) => height < 20), `times of ${heights} px`);
        for (const hidden of [".gist", ".live", ".tools", ".more"])
          strictEqual(await page.locator(hidden).first().isVisible(), false);
        for (const there of [".safety .defer", ".days", ".ready", ".went", ".row.off"])
          strictEqual(await page.locator(there).first().isVisible(), true);
        const marker = await page.locator(".safety summary").evaluate(
          (summary) =>
            (
              globalThis as unknown as {
                getComputedStyle: (of: unknown, part: string) => { content: string };
              }
            ).getComputedStyle(summary, "::before").content,
        );
        strictEqual(marker, "none");
        await page.close();
      },
    },
    {
      name: "on a telephone, it is as wide as the screen, and all that is touched is large enough",
      run: async () => {
        const file = await pageOf(folder, READING_ROOM, "reading-tables.finish");
        const { page, context, complaints } = await onTelephone(browser, file, "2027-03-08T09:05:00");
        strictEqual(await page.evaluate("document.documentElement.scrollWidth"), 390);
        const small = await page
          .locator("button:visible, summary:visible, input:visible, textarea:visible")
          .evaluateAll((all) =>
            all.flatMap((element) => {
              const { width, height } = element.getBoundingClientRect();
              return width < 44 || height < 44
                ? [`${element.outerHTML.slice(0, 80)} ${width} x ${height}`]
                : [];
            }),
          );
        strictEqual(small.join("\n"), "");
        // The list of steps is met before what is only looked up.
        const top = async (selector: string): Promise<number> =>
          (await page.locator(selector).first().boundingBox())!.y;
        ok((await top(".safety")) < (await top(".work")), "cautions stand before the work");
        ok((await top(".work")) < (await top(".ready")), "the work stands before the shopping");
        strictEqual(await state(page), "now");
        strictEqual(await shown(page, ".gist .label"), "Do now");
        strictEqual(await shown(page, ".gist .clock"), "Mon 8 Mar 09:05");
        strictEqual(await shown(page, ".gist .what"), "Test: stripper on a hidden edge");
        // What the stripper test needs is not known to a sheet, so all that the recipe asks for stands with it.
        same(await lines(page, ".live .more-now"), [
          "Reading table 1 and 2, top",
          "Wear: respirator (vapour and dust), gloves, goggles.",
        ]);
        same(await lines(page, ".live .waits"), ["No wait after this step: go on as soon as it is done."]);
        same(await lines(page, ".live .risks"), [
          "Fumes: keep the air moving",
          "Fire: no flame or spark in the room",
          "Oily rags catch fire: in water in the closed metal can",
        ]);
        // The same surface comes next, before the other one.
        strictEqual(await shown(page, ".live .next-title"), "Next, right after this");
        strictEqual(await shown(page, ".live .next"), "Take the wax off with Mineral spirits");
        same(await lines(page, ".live .next-more"), ["Reading table 1 and 2, top"]);
        await answersOnFirstScreen(page);
        await leave(page, "telephone-now");
        strictEqual(complaints.join("\n"), "");
        await context.close();
      },
    },
    {
      name: "axe-core finds nothing against WCAG 2.2 AA or its own best practice, light and dark, narrow and wide",
      run: async () => {
        const file = await pageOf(folder, READING_ROOM, "reading-tables.finish");
        for (const colorScheme of ["light", "dark"] as const) {
          const context = await browser.newContext({ colorScheme, reducedMotion: "reduce" });
          await context.addInitScript({ content: AXE });
          const page = await context.newPage();
          for (const width of [390, 1100]) {
            await page.setViewportSize({ width, height: 844 });
            await page.goto(pathToFileURL(file).href);
            same(await violations(page), []);
          }
          await context.close();
        }
      },
    },
    {
      name: "ticks say what is next and when the wait ends, stay when the page is opened again, and can be taken back",
      run: async () => {
        const file = await pageOf(folder, SHELVES, "shelves.finish");
        const { page, context, complaints } = await onTelephone(browser, file, "2027-03-08T09:00:00");
        strictEqual(await shown(page, ".gist .what"), "Sand with grit 120");
        await box(page, "Shelf 1 and 2, top: Sand with grit 120", 1).tap();
        strictEqual(await shown(page, ".gist .what"), "Sand with grit 120");
        await box(page, "Shelf 1 and 2, top: Sand with grit 120", 2).tap();
        strictEqual(await shown(page, ".gist .what"), "Take the dust off");
        await setClock(page, "2027-03-08T09:40:00");
        await page.getByRole("button", { name: "Done", exact: true }).tap();
        strictEqual(await shown(page, ".gist .what"), "Clear, coat 1 of 2");
        // 2 h by the label, at the label's own 21 C and 50 % RH: on at 10:10, the next from 12:10, within 24 h.
        await setClock(page, "2027-03-08T10:10:00");
        await page.getByRole("button", { name: "Done", exact: true }).tap();
        strictEqual(await state(page), "wait");
        strictEqual(await shown(page, ".gist .what"), "Nothing to do until 12:10");
        same(await lines(page, ".live .more-now"), ["2 h left. You may go."]);
        // By the plan it is 12:20; two times for one step are one too many.
        strictEqual(await shown(page, ".live .next-title"), "Next, at 12:10");
        strictEqual(await shown(page, ".live .next"), "Clear, coat 2 of 2");
        strictEqual(await page.getByRole("button", { name: "Done", exact: true }).isVisible(), false);
        same(await lines(page, ".live .waits"), [
          "Until 12:10, 2 h leftShelf 1 and 2, top: it dries, don’t touch it. Next coat by Tue 9 Mar 10:10, or sand it dull first.",
        ]);
        strictEqual(
          await shown(page, 'li.row[data-name="Shelf 1 and 2, top: Clear, coat 2 of 2"] .may'),
          "Not yet: dry enough from 12:10.",
        );
        // What was found on the line of the coat is an order.
        same(await lines(page, ".live .next-first"), [
          "First: Sand lightly with 220 once Clear is dry, and dust, before coat 2.",
        ]);
        same(await lines(page, ".live .risks"), [
          "Touched too early, it keeps the mark",
          "Raised fibres harden under the film and leave it rough, however many coats follow.",
        ]);
        await answersOnFirstScreen(page);
        await leave(page, "telephone-next");
        // It was ticked late: it went on at 10:00.
        const coat = row(page, "Shelf 1 and 2, top: Clear, coat 1 of 2");
        await coat.locator("summary").tap();
        await coat.locator("input[data-at]").fill("2027-03-08T10:00");
        strictEqual(await shown(page, ".gist .what"), "Nothing to do until 12:00");
        same(await lines(page, ".live .more-now"), ["1 h 50 min left. You may go."]);
        await coat.locator("input[data-note]").fill("a run at the edge");
        await page.reload();
        strictEqual(await shown(page, ".gist .what"), "Nothing to do until 12:00");
        same(await lines(page, ".live .more-now"), ["1 h 50 min left. You may go."]);
        strictEqual(await coat.locator("input[data-note]").inputValue(), "a run at the edge");
        strictEqual(await box(page, "Shelf 1 and 2, top: Sand with grit 120", 2).isChecked(), true);
        // The wait is over: the same page says so by itself.
        await setClock(page, "2027-03-08T12:01:00");
        await page.reload();
        strictEqual(await state(page), "now");
        await page.getByRole("button", { name: "Done", exact: true }).tap();
        ok((await state(page)) !== "now", "all is done");
        await page.getByRole("button", { name: "Undo" }).tap();
        strictEqual(await shown(page, ".gist .what"), "Clear, coat 2 of 2");
        strictEqual(complaints.join("\n"), "");
        await context.close();
      },
    },
    {
      name: "in a night's wait it says until when nobody need be there, what is dry before, and what is still there",
      run: async () => {
        const file = await pageOf(folder, READING_ROOM, "reading-tables.finish");
        const { page, context, complaints } = await onTelephone(browser, file, "2027-03-08T08:55:00");
        const isOpen = () =>
          page.locator("[data-before]").evaluate((fold) => (fold as unknown as { open: boolean }).open);
        strictEqual(await isOpen(), true);
        const screens: string[] = [];
        // All of the first day, each step at its time.
        const steps = await page
          .locator("li.row[data-start^='2027-03-08']")
          .evaluateAll((rows) =>
            rows.map((row) => (row as unknown as { dataset: { end: string } }).dataset.end),
          );
        for (const end of steps.toSorted()) {
          await setClock(page, end);
          screens.push(await shown(page, ".gist .what"));
          const button = page.locator(".live .go").first();
          if ((await button.textContent()) === "Laid on") {
            // A stripper has three parts: laid on, left on as its label says, taken off.
            strictEqual(await shown(page, ".gist .what"), "Lay the stripper on");
            same(await lines(page, ".live .waits"), [
              "When its label time is upOnce it is laid on, don’t touch it as long as its label says, then take it off at once.",
            ]);
            await answersOnFirstScreen(page);
            await leave(page, "telephone-strip");
            await button.tap();
            strictEqual(await shown(page, ".gist .what"), "Stay here: the stripper acts, don’t touch it");
            ok(
              /^When its label time is up.*top: the stripper acts since \d\d:\d\d\. Don’t touch it before/u.test(
                await shown(page, ".live .waits"),
              ),
              "it waits",
            );
            strictEqual(await shown(page, ".live .next-title"), "Next, once it is off");
            await answersOnFirstScreen(page);
            await leave(page, "telephone-stripping");
            // Somebody reads the label: 30 min from 10:10 on, and the base can be scuffed meanwhile.
            await page.locator("[data-label-time]").fill("30");
            const [until] = await lines(page, ".live .waits");
            ok(until?.startsWith("Take the stripper off at 10:40, 30 min left") === true, until ?? "no wait");
            strictEqual(await shown(page, ".gist .what"), "Scuff with grit 220");
            await answersOnFirstScreen(page);
            await leave(page, "telephone-meanwhile");
            await setClock(page, "2027-03-08T10:40:00");
            await page.reload();
            strictEqual(await shown(page, ".gist .what"), "Take the stripper off");
            strictEqual(await page.locator("[data-label-time]").inputValue(), "30");
            await answersOnFirstScreen(page);
            await leave(page, "telephone-off");
            strictEqual(await button.textContent(), "Taken off");
          }
          await button.tap();
          // What was to be known before the work is folded away by the first tick, and is on paper all the same.
          strictEqual(await isOpen(), false);
        }
        strictEqual(screens[0], "Test: stripper on a hidden edge");
        await setClock(page, "2027-03-08T17:10:00");
        await page.reload();
        strictEqual(await isOpen(), false);
        await page.emulateMedia({ media: "print" });
        strictEqual(await page.locator(".safety .defer").isVisible(), true);
        await page.emulateMedia({ media: "screen" });
        strictEqual(await page.locator(".safety .defer").isVisible(), false);
        strictEqual(await state(page), "wait");
        strictEqual(await shown(page, ".gist .what"), "Nothing to do until Tue 9 Mar 09:00");
        same(await lines(page, ".live .more-now"), ["15 h 50 min left. You may go; leave the air moving."]);
        strictEqual(await shown(page, ".live .risky"), "What may go wrong meanwhile");
        same(await lines(page, ".live .risks"), [
          "Fumes: keep the air moving",
          "Fire: no flame or spark in the room",
          "Rags catch fire: into the closed metal can, the oily ones in water",
        ]);
        strictEqual(await shown(page, ".live .next-title"), "Next, at Tue 9 Mar 09:00");
        strictEqual(await shown(page, ".live .next"), "Sand with grit 120, then 150");
        // The base is dry in the evening, which is not when somebody has to be there.
        ok(
          (await lines(page, ".live .waits")).some((line) => /^Until 21:\d\d, .*base: it dries/u.test(line)),
          "the base dries until night",
        );
        await answersOnFirstScreen(page);
        await leave(page, "telephone-wait");
        strictEqual(complaints.join("\n"), "");
        await context.close();
      },
    },
    {
      name: "a step that may not begin yet says when it may, and can be ticked early, which shows",
      run: async () => {
        const file = await pageOf(folder, SHELVES, "shelves.finish");
        const { page, context, complaints } = await onTelephone(browser, file, "2027-03-08T06:00:00");
        // Three hours before the plan begins.
        strictEqual(await state(page), "later");
        strictEqual(await shown(page, ".gist .what"), "Nothing to do until 09:00");
        same(await lines(page, ".live .more-now"), ["3 h left. You may go."]);
        same(await lines(page, ".live .waits"), ["Nothing is drying."]);
        strictEqual(await page.getByRole("button", { name: "Done", exact: true }).isVisible(), false);
        const dust = row(page, "Shelf 1 and 2, top: Take the dust off");
        strictEqual(
          (await dust.locator(".may").textContent())?.replace(/ for \d\d:\d\d/u, ""),
          "Not yet: planned, after “Sand with grit 120”.",
        );
        await page.getByRole("button", { name: "Done already" }).tap();
        strictEqual(
          await row(page, "Shelf 1 and 2, top: Sand with grit 120").locator(".may").textContent(),
          "Done too early: planned for 09:00.",
        );
        // A coat that is still wet: ticking its next one is possible, and is never shown as done in time.
        await setClock(page, "2027-03-08T09:40:00");
        await page.locator(".live .go").first().tap();
        await setClock(page, "2027-03-08T10:10:00");
        await page.locator(".live .go").first().tap();
        await setClock(page, "2027-03-08T10:30:00");
        await page.getByRole("button", { name: "Done already" }).tap();
        const second = row(page, "Shelf 1 and 2, top: Clear, coat 2 of 2");
        strictEqual(
          plainSpaces(await second.locator(".may").textContent()),
          "Done too early: dry enough from 12:10.",
        );
        ok((await second.getAttribute("class"))?.includes("ahead") === true, "the line shows it");
        // The last coat: three times that are never taken for each other. 1 day, and 21 days by the family.
        const last = plainSpaces(await page.locator(".live .waits").textContent());
        ok(/Until 12:30, 2 h left/u.test(last) && /Light use from Tue 9 Mar 10:30\./u.test(last), last);
        strictEqual(complaints.join("\n"), "");
        await context.close();
      },
    },
    {
      name: "a wait of which no time is known is left to the label, and not passed over",
      run: async () => {
        // A recipe by itself, whose clear is still to be chosen.
        const recipe =
          "recipe coated(clear: material) {\n  for    wood\n  safety dust_mask\n  step   sand 180\n  step   dust\n  layer  clear x 2, by brush\n}\n";
        const file = await pageOf(folder, { "coated.finish": recipe }, "coated.finish");
        const { page, context, complaints } = await onTelephone(browser, file, "2027-03-08T09:00:00");
        for (const minute of ["10", "20", "30"]) {
          await setClock(page, `2027-03-08T09:${minute}:00`);
          await page.getByRole("button", { name: "Done", exact: true }).tap();
        }
        strictEqual(await shown(page, ".gist .what"), "Don’t touch it yet: read its label");
        strictEqual(
          (await lines(page, ".live .waits"))[0],
          "When its label time is upclear (to be chosen), coat 1 of 2: it dries since 09:30, don’t touch it.",
        );
        strictEqual((await lines(page, ".live .more-now"))[0], "clear (to be chosen), coat 2 of 2");
        // Read there: 2 hours from 09:30 on.
        await page.locator("[data-label-time]").fill("2");
        strictEqual(await shown(page, ".gist .what"), "Nothing to do until 11:30");
        strictEqual(complaints.join("\n"), "");
        await context.close();
      },
    },
    {
      name: "what is copied comes back as a record, which ticks the next sheet; what is stale stays out",
      run: async () => {
        const file = await pageOf(folder, SHELVES, "shelves.finish");
        const { page, context } = await onTelephone(browser, file, "2027-03-08T09:20:00");
        await page.getByRole("button", { name: "Done", exact: true }).tap();
        await setClock(page, "2027-03-08T09:30:00");
        await page.getByRole("button", { name: "Done", exact: true }).tap();
        await page.getByRole("button", { name: "Copy what is done" }).tap();
        const copied = await page.locator("[data-copied]").inputValue();
        ok(copied.startsWith("finishwright-ticks 2 "), copied);
        await context.close();

        let text = "";
        const { status } = await runCli(["record", "shelves.finish", "--ticks", "ticks.txt"], {
          files: { ...SHELVES, "ticks.txt": copied },
          look: (at) => {
            text = readFileSync(path.join(at, "shelves.finish"), "utf8");
          },
        });
        strictEqual(status, 0);
        // Only lines are added.
        const added = text
          .split("\n")
          .filter((line) => !SHELVES["shelves.finish"].split("\n").includes(line));
        ok(added.length >= 2 && added.some((line) => line.includes("2027-03-08")), text);
        const next = await pageOf(folder, { "next.finish": text }, "next.finish");
        const second = await onTelephone(browser, next, "2027-03-08T09:40:00");
        strictEqual(await shown(second.page, ".gist .what"), "Clear, coat 1 of 2");
        strictEqual(await box(second.page, "Shelf 1 and 2, top: Sand with grit 120", 1).isDisabled(), true);
        await second.context.close();

        // Another recipe by now: the tick of a step that is gone is shown and not applied.
        const changed = SHELVES["shelves.finish"].replace("step   sand 120,", "step   sand 150,");
        const stale = await runCli(["record", "shelves.finish", "--ticks", "ticks.txt"], {
          files: { "shelves.finish": changed, "ticks.txt": copied },
        });
        ok(/Sand with grit 120/u.test(stale.stdout + stale.stderr), stale.stdout + stale.stderr);
      },
    },
    {
      name: "Print asks the browser to print, and clearing asks first",
      run: async () => {
        const file = await pageOf(folder, SHELVES, "shelves.finish");
        const { page, context, complaints } = await onTelephone(browser, file, "2027-03-08T09:00:00");
        await page.evaluate("window.print = () => { document.title = 'printed'; }");
        await page.getByRole("button", { name: "Print" }).tap();
        strictEqual(await page.title(), "printed");
        await page.getByRole("button", { name: "Done", exact: true }).tap();
        const answers = [false, true];
        page.on("dialog", (dialog) => void (answers.shift() ? dialog.accept() : dialog.dismiss()));
        const first = box(page, "Shelf 1 and 2, top: Sand with grit 120", 1);
        await page.getByRole("button", { name: "Clear all ticks and notes" }).tap();
        strictEqual(await first.isChecked(), true);
        await page.getByRole("button", { name: "Clear all ticks and notes" }).tap();
        strictEqual(await first.isChecked(), false);
        strictEqual(complaints.join("\n"), "");
        await context.close();
      },
    },
  ];
}

const folder = mkdtempSync(path.join(tmpdir(), "finishwright-sheet-"));
const browser = await launchBrowser();
try {
  await runTests(tests(browser, folder), (line) => process.stdout.write(`${line}\n`));
} catch {
  process.exitCode = 1;
} finally {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
