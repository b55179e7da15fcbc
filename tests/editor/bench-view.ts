/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/**
 * Uses the page of the bench view in a real browser: in four themes and where the system forces its colours, by keyboard,
 * while the text is typed, and with names that would be markup.
 *
 *     npm run test:bench-view
 *
 * Ends with `N passed, N failed`, and with 1 if anything failed. With `--to FOLDER` pictures of every look are left there.
 */
import { mkdirSync } from "node:fs";
import path from "node:path";
import process from "node:process";
import { parseArgs } from "node:util";
import type { Browser, Page } from "playwright-core";
import type { BenchAnswer } from "../../server/src/lsp/custom-requests.ts";
import { FILES } from "../cli/bench.ts";
import { analyse } from "../harness/check-text.ts";
import { sampleAnalyst, sampleText } from "../harness/samples.ts";
import { ok, same, strictEqual } from "./assert.ts";
import { AXE, violations } from "./axe.ts";
import { answerOf, type ShownBench, showBench } from "./bench-page.ts";
import { launchBrowser } from "./editor.ts";
import { runTests, type Test } from "./report.ts";
import { LOOKS, type Look } from "./themed.ts";

const { values } = parseArgs({ options: { to: { type: "string" } } });

/** The samples in a room that is too little for them, so that every kind of mark is drawn. */
function samples(): Readonly<Record<string, BenchAnswer>> {
  const analyst = sampleAnalyst();
  analyst.setFile("shop.finish", sampleText("shop.finish").replace("16 air changes/h", "2 air changes/h"));
  const analysis = analyst.analysis();
  return {
    tables: answerOf(analysis, "reading-tables.finish", "hall_tables"),
    mistakes: answerOf(analysis, "mistakes.finish", "attic_table"),
  };
}

/** What WCAG 2.2 asks of text (1.4.3) and of what a drawing means (1.4.11). */
const TEXT_CONTRAST = 4.5;
const SHAPE_CONTRAST = 3;

/** What means something in the drawings, and by which property it is seen. */
const SHAPES: readonly (readonly [selector: string, property: "fill" | "stroke"])[] = [
  [".mark .face", "stroke"],
  [".bar.step > rect:not(.hit)", "fill"],
  [".bar.layer > rect:not(.hit)", "stroke"],
  [".others .bar.work rect", "fill"],
  [".hatch", "stroke"],
  [".asked", "fill"],
  [".beyond", "stroke"],
  [".over", "stroke"],
  [".tick", "stroke"],
  [".limit", "stroke"],
  [".now", "stroke"],
  [".window", "stroke"],
  [".ladder .full", "fill"],
  [".ladder .empty", "stroke"],
  [".break", "stroke"],
  [".leaders path", "stroke"],
  [".room", "stroke"],
  [".halo", "stroke"],
];

interface TooFaint {
  readonly what: string;
  readonly contrast: number;
}

/** Texts and shapes that stand out too little from what is behind them. */
const tooFaint = (page: Page): Promise<readonly TooFaint[]> =>
  page.evaluate(
    ({ shapes, leastText, leastShape }) => {
      type Colour = readonly [red: number, green: number, blue: number, opacity: number];
      const colourOf = (said: string): Colour => {
        const figures = said.match(/[\d.]+/gu)?.map(Number) ?? [];
        const [red = 0, green = 0, blue = 0, opacity = 1] = figures;
        return said === "transparent" || said === "none" ? [0, 0, 0, 0] : [red, green, blue, opacity];
      };
      const over = (above: Colour, below: Colour): Colour => {
        const mixed = [0, 1, 2].map((i) => above[i]! * above[3] + below[i]! * (1 - above[3]));
        return [mixed[0]!, mixed[1]!, mixed[2]!, 1];
      };
      const groundOf = (element: Element): Colour => {
        const layers: Colour[] = [];
        for (let at: Element | null = element; at !== null; at = at.parentElement)
          layers.push(colourOf(getComputedStyle(at).backgroundColor));
        return layers.reduceRight(over2, [255, 255, 255, 1] as Colour);
      };
      function over2(below: Colour, above: Colour): Colour {
        return over(above, below);
      }
      const light = ([red, green, blue]: Colour): number => {
        const linear = [red, green, blue].map((part) =>
          part / 255 <= 0.04045 ? part / 255 / 12.92 : ((part / 255 + 0.055) / 1.055) ** 2.4,
        );
        return 0.2126 * linear[0]! + 0.7152 * linear[1]! + 0.0722 * linear[2]!;
      };
      const contrast = (colour: Colour, ground: Colour): number => {
        const [a, b] = [light(over(colour, ground)), light(ground)];
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
      };
      const found: { what: string; contrast: number }[] = [];
      const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      for (let node = texts.nextNode(); node !== null; node = texts.nextNode()) {
        const element = node.parentElement;
        if (
          element === null ||
          node.nodeValue?.trim() === "" ||
          element.closest("script, style, title, .hidden")
        )
          continue;
        if (element.getClientRects().length === 0 || element.hasAttribute("fill")) continue;
        const style = getComputedStyle(element);
        const colour = colourOf(element.closest("svg") ? style.fill : style.color);
        const got = contrast(colour, groundOf(element));
        if (got < leastText) found.push({ what: `text ${node.nodeValue?.trim()}`, contrast: got });
      }
      for (const [selector, property] of shapes) {
        for (const element of document.querySelectorAll(selector)) {
          const style = getComputedStyle(element);
          const [red, green, blue, own] = colourOf(style[property]);
          const opacity = Number(property === "fill" ? style.fillOpacity : style.strokeOpacity);
          const got = contrast([red, green, blue, own * opacity], groundOf(element));
          if (got < leastShape) found.push({ what: selector, contrast: got });
        }
      }
      return found;
    },
    { shapes: SHAPES, leastText: TEXT_CONTRAST, leastShape: SHAPE_CONTRAST },
  );

/** What can be reached by key or means something, and has no name to be heard; and names that are used twice. */
const unnamed = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const isNamed = (element: Element): boolean =>
      (element.getAttribute("aria-label") ?? "") !== "" ||
      (element.textContent ?? "").trim() !== "" ||
      (element instanceof HTMLInputElement && (element.labels?.length ?? 0) > 0);
    const wanted =
      "button, input, select, summary, [tabindex], [role=button], [role=img], svg[role=group], section";
    for (const element of document.querySelectorAll(wanted)) {
      if (!isNamed(element)) found.push(element.outerHTML.slice(0, 120));
    }
    // What is one picture to a reader of the screen has nothing in it to be reached.
    for (const element of document.querySelectorAll("[role=img] [tabindex], [role=img] button"))
      found.push(`inside a picture: ${element.outerHTML.slice(0, 120)}`);
    const ids = [...document.querySelectorAll("[id]")].map(({ id }) => id);
    found.push(...ids.filter((id, i) => ids.indexOf(id) !== i));
    for (const header of document.querySelectorAll("table th:not([scope])")) found.push(header.outerHTML);
    return found;
  });

const isTooWide = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);

const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement;
    return at === null || at === document.body
      ? ""
      : (at.getAttribute("data-key") ?? at.getAttribute("data-action") ?? (at.id || at.nodeName));
  });

/** Walks through the page by Tab, from its beginning, and says what was reached, in order. */
async function tabWalk(page: Page): Promise<readonly string[]> {
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  const reached: string[] = [];
  for (let i = 0; i < 200; i += 1) {
    await page.keyboard.press("Tab");
    const name = await focused(page);
    if (name === "") break;
    reached.push(name);
  }
  return reached;
}

const leave = async (page: Page, name: string): Promise<void> => {
  if (values.to === undefined) return;
  mkdirSync(values.to, { recursive: true });
  await page.screenshot({
    path: path.join(values.to, `${name}.png`),
    fullPage: true,
    animations: "disabled",
  });
};

function tests(browser: Browser): readonly Test[] {
  const answers = samples();
  const shown = async (look: Look, work: (bench: ShownBench) => Promise<void>): Promise<void> => {
    const bench = await showBench(browser, look);
    try {
      await work(bench);
      same(bench.complaints, []);
    } finally {
      await bench.context.close();
    }
  };
  return [
    ...Object.entries(LOOKS).map(([name, look]) => ({
      name: `${name}: every text, mark, bar and hatch stands out, all has a name, and nothing is too wide`,
      run: async () => {
        for (const [job, answer] of Object.entries(answers)) {
          await shown(look, async ({ page, show }) => {
            await show(answer);
            for (const width of [900, 420, 320]) {
              await page.setViewportSize({ width, height: 900 });
              strictEqual(await isTooWide(page), false, `${job} at ${width} px is too wide`);
            }
            await page.setViewportSize({ width: 900, height: 900 });
            await page.evaluate(() => {
              for (const each of document.querySelectorAll("details")) each.open = true;
            });
            same(await tooFaint(page), []);
            same(await unnamed(page), []);
            await leave(page, `bench-${job}-${name}`);
          });
        }
      },
    })),
    ...Object.entries(LOOKS).flatMap(([name, look]) =>
      look.forced
        ? []
        : [
            {
              name: `${name}: axe-core finds nothing against WCAG 2.2 AA or its own best practice`,
              run: async () => {
                for (const answer of Object.values(answers)) {
                  await shown({ ...look, script: AXE }, async ({ page, show }) => {
                    await show(answer);
                    same(await violations(page), []);
                    await page.evaluate(() => {
                      for (const each of document.querySelectorAll("details")) each.open = true;
                    });
                    same(await violations(page), []);
                  });
                }
              },
            },
          ],
    ),
    {
      name: "by keyboard: title, buttons, findings, slider, coats, marks, one stop for each row of bars, cans",
      run: () =>
        shown({ theme: "dark" }, async ({ page, show, told }) => {
          await show(answers.mistakes!);
          const reached = await tabWalk(page);
          const order = [
            "title",
            "html",
            "first",
            "finding 0",
            "moment",
            "mark 0 surface",
            "coat 0 2",
            "bar",
            "room",
            "hour",
            "can",
          ];
          const places = order.map((name) => reached.findIndex((each) => each.startsWith(name)));
          ok(
            !places.includes(-1),
            `not reached: ${order.filter((_, i) => places[i] === -1).join()} of ${reached.join(", ")}`,
          );
          same(
            places,
            places.toSorted((a, b) => a - b),
          );
          strictEqual(reached.filter((each) => each.startsWith("bar ")).length, 1);
          strictEqual(reached.filter((each) => each.startsWith("hour ")).length, 1);

          await page.locator("g.bar").first().focus();
          const first = await focused(page);
          await page.keyboard.press("ArrowRight");
          const second = await focused(page);
          ok(second.startsWith("bar ") && second !== first);
          await page.keyboard.press("End");
          await page.keyboard.press("Home");
          strictEqual(await focused(page), first);
          const before = (await told()).length;
          await page.keyboard.press("Enter");
          await page.keyboard.press("Control+Enter");
          await page.locator("g.spot").first().focus();
          await page.keyboard.press("Space");
          const [enter, moving, mark] = (await told()).slice(before);
          ok(enter?.type === "reveal" && enter.moves === false && moving?.moves === true);
          const { places: lines, findings } = answers.mistakes!.bench!;
          ok(findings.some(({ at }) => at === mark?.at) && lines[Number(mark?.at)] !== undefined);

          await page.locator("#moment").focus();
          const said = await page.locator("#moment").getAttribute("aria-valuetext");
          await page.keyboard.press("ArrowLeft");
          ok((await page.locator("#moment").getAttribute("aria-valuetext")) !== said);
          await page.keyboard.press("Home");
          strictEqual(await page.locator("#moment").getAttribute("aria-valuetext"), "the start");
        }),
    },
    {
      name: "what is told is the buttons' names, and a click on a row leads to its line",
      run: () =>
        shown({ theme: "light" }, async ({ page, show, told }) => {
          await show(answers.tables!);
          for (const name of ["html", "ics", "csv", "markdown", "care", "recipe"])
            await page.locator(`[data-action=${name}]`).click();
          const actions = (await told()).filter(({ type }) => type === "action");
          same(
            actions.map(({ action }) => action),
            ["html", "ics", "csv", "markdown", "care", "recipe"],
          );
          await page.locator("[data-key='material 0']").click();
          const last = (await told()).at(-1);
          const { materials } = answers.tables!.bench!;
          same([last?.type, last?.at], ["reveal", materials[0]!.at]);
        }),
    },
    {
      name: "other jobs of the shop are in the same row of arrows, lead to their lines, and can be left out",
      run: () =>
        shown({ theme: "light" }, async ({ page, show, told }) => {
          await show(answers.tables!);
          const { others } = answers.tables!.bench!;
          ok(others.length > 1);
          strictEqual(await page.locator("g.job.other").count(), others.length);
          await page.locator("#timeline g.bar").first().focus();
          await page.keyboard.press("End");
          ok((await focused(page)).startsWith("other "), await focused(page));
          await page.locator("g.job.other").first().click();
          const last = (await told()).at(-1);
          same([last?.type, last?.at], ["reveal", others[0]!.at]);
          await page.locator("#whole-shop").uncheck();
          strictEqual(await page.locator("g.job").count(), 0);
          strictEqual(await focused(page), "whole shop");
        }),
    },
    {
      name: "rows beside a drawing are level with what they name, or a line leads to it, at every width",
      run: () =>
        shown({ theme: "light" }, async ({ page, show }) => {
          await show(answers.tables!);
          for (const width of [1280, 900, 420, 320]) {
            await page.setViewportSize({ width, height: 900 });
            await page.evaluate(
              () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
            );
            const found = await page.evaluate(() =>
              [...document.querySelectorAll<HTMLElement>(".cut")].map((cut) => {
                const rows = [...cut.querySelectorAll<HTMLElement>("li")];
                const boxes = rows.map((row) => row.getBoundingClientRect());
                const over = boxes.filter((box, i) => i > 0 && box.top < boxes[i - 1]!.bottom - 1).length;
                const path = cut.querySelector(".leaders path")!.getAttribute("d") ?? "";
                return {
                  over,
                  rows: rows.filter((row) => row.dataset.gone === undefined).length,
                  lines: path.split("M").length - 1,
                };
              }),
            );
            for (const { over, rows, lines } of found) same([over, lines], [0, rows]);
          }
        }),
    },
    {
      name: "while typing: the same answer changes nothing, focus and what is unfolded stay, the plan before is kept",
      run: () =>
        shown({ theme: "dark" }, async ({ page, show }) => {
          const answer = answers.tables!;
          const bench = answer.bench!;
          await show(answer);
          await page.evaluate(() => {
            const seen = { count: 0, bar: document.querySelector("g.bar") };
            new MutationObserver((changes) => {
              seen.count += changes.length;
            }).observe(document.body, {
              subtree: true,
              childList: true,
              attributes: true,
              characterData: true,
            });
            Object.assign(globalThis, { seen });
            for (const each of document.querySelectorAll("details")) each.open = true;
          });
          const counted = (): Promise<number> =>
            page.evaluate(async () => {
              await new Promise((resolve) => setTimeout(resolve, 0));
              const { seen } = globalThis as unknown as { seen: { count: number } };
              const { count } = seen;
              seen.count = 0;
              return count;
            });
          await counted();
          await show(structuredClone(answer));
          strictEqual(await counted(), 0, "the same answer changes the page");

          const title = page.locator("[data-key=title]");
          await title.focus();
          await show({ ...answer, bench: { ...bench, title: "Reading tables, again" } });
          strictEqual(await title.textContent(), "Reading tables, again");
          strictEqual(await focused(page), "title");
          ok((await counted()) < 6, "a title changes more than itself");
          strictEqual(await page.locator("details:not([open])").count(), 0);

          const { startAt: _, ...rest } = bench;
          const anew: BenchAnswer = {
            ...answer,
            bench: {
              ...rest,
              plan: "being planned",
              endHours: 0,
              dates: bench.dates.map((date) => ({ ...date, text: "being planned", reason: "" })),
              air: { ...bench.air, state: "being planned", hours: [], worst: "" },
              surfaces: bench.surfaces.map((surface) => ({ ...surface, bars: [] })),
            },
          };
          await show(anew);
          const isSame = (): Promise<boolean> =>
            page.evaluate(() => {
              const { seen } = globalThis as unknown as { seen: { bar: Element } };
              return seen.bar === document.querySelector("g.bar");
            });
          strictEqual(await isSame(), true, "the bars are others");
          ok(!(await page.locator("#head").textContent())?.includes("being planned"));
          // A plan that takes long is spoken of; the browser's own waiting looks for it.
          await page.locator("#anew", { hasText: "is being planned anew" }).waitFor();
          await show(answer);
          strictEqual(await page.locator("#anew").textContent(), "");
          strictEqual(await isSame(), true);

          await show({ jobs: [], notes: ["There is no job that can be drawn."] });
          strictEqual(await isSame(), true, "a text that cannot be read takes the drawing away");
          ok((await page.locator("#anew").textContent())?.includes("of the text before"));
          ok((await page.locator("#notes").textContent())?.includes("no job"));
          await show(answer);
          strictEqual(await page.locator("#anew").textContent(), "");
        }),
    },
    {
      name: "nothing moves, whatever the system says of motion",
      run: () =>
        shown({ theme: "dark" }, async ({ page, show }) => {
          await page.emulateMedia({ reducedMotion: "no-preference" });
          await show(answers.tables!);
          const moving = await page.evaluate(
            () =>
              [...document.querySelectorAll("*")].filter((element) => {
                const { transitionDuration, animationName } = getComputedStyle(element);
                return (
                  animationName !== "none" ||
                  transitionDuration.split(", ").some((each) => parseFloat(each) > 0)
                );
              }).length,
          );
          strictEqual(moving, 0);
        }),
    },
    {
      name: "names that would be markup are text, and load nothing",
      run: () =>
        shown({ theme: "dark" }, async ({ page, show }) => {
          const bad = "<img src=http://bad.test/a.png onerror=told.push(1)><script>told.push(2)</script>'`";
          const named = (text: string): string =>
            text
              .replace('job shelf_job "One shelf"', `job shelf_job "${bad}"`)
              .replace('piece shelf "Shelf"', `piece shelf "${bad}"`)
              .replace("surface   board", `surface   board "${bad}"`)
              .replace('material clear_coat "Clear"', `material clear_coat "${bad}"`)
              .replace("step   dust", `step   "${bad}"`);
          const other = `job later "${bad}" {
  piece    shelf x 2
  in       room
  start    2027-03-10 09:00
  apply    clearing(clear: clear_coat) to board
}
`;
          const room = "  room     20 m3, 0.1 air changes/h\n  labour";
          const analysis = analyse({
            "job.finish": named(FILES["job.finish"]).replace("  labour", room) + other,
            "stock.finish": named(FILES["stock.finish"]),
          });
          const answer = answerOf(analysis, "job.finish", "shelf_job");
          await show({ ...answer, jobs: [...answer.jobs, { name: bad, title: bad }], notes: [bad] });
          for (const part of ["h1", ".others .title", "#air", "#findings", "#shopping"])
            ok((await page.locator(part).first().textContent()) !== "", `${part} is empty`);
          ok((await page.locator("h1").textContent())?.includes("<img src="));
          ok((await page.locator(".others .title").textContent())?.includes("<img src="));
          ok((await page.locator("#air g.hour").count()) > 0);
          strictEqual(
            await page.locator("img, main script, iframe, object, embed, link, a, form").count(),
            0,
          );
          same(await page.evaluate(() => (globalThis as unknown as { told: unknown[] }).told.length), 1);
        }),
    },
    {
      name: "the policy lets in neither markup's own scripts, nor styles, nor anything of another place",
      run: async () => {
        const { page, context, complaints } = await showBench(browser, { theme: "dark" });
        try {
          await page.evaluate(() => {
            const there = document.createElement("div");
            there.innerHTML = `<img src="http://bad.test/a.png"><img src="data:image/png;base64,AA" onerror="told.push(1)"><p style="color: red">a</p>`;
            document.body.append(there);
            const script = document.createElement("script");
            script.textContent = "told.push(2)";
            document.body.append(script);
          });
          await page.waitForFunction(() => document.images.length === 2);
          await page.evaluate(() => fetch("http://bad.test/b").catch(() => undefined));
          same(await page.evaluate(() => (globalThis as unknown as { told: unknown[] }).told.length), 1);
          ok(
            complaints.every((each) => !each.startsWith("asks for")),
            complaints.join("\n"),
          );
          ok(
            complaints.filter((each) => /Content.Security.Policy/iu.test(each)).length >= 4,
            complaints.join("\n"),
          );
        } finally {
          await context.close();
        }
      },
    },
  ];
}

const browser = await launchBrowser();
try {
  await runTests(tests(browser), (line) => process.stdout.write(`${line}\n`));
} catch {
  process.exitCode = 1;
} finally {
  await browser.close();
}
