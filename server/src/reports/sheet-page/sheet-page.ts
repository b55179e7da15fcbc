/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/**
 * What runs in an HTML sheet: ticks and notes stay on the device, and the sheet says what time it is by the device, what to
 * do now, when a wait ends, counted from the tick of what was put on, and what may go wrong (`live-texts.ts`).
 * `npm run generate` bundles it into the sheet.
 *
 * It writes texts as texts, loads nothing and sends nothing. A sheet without it is the same sheet on paper.
 */
import { t } from "../../../../grammar/src/translate.ts";
import {
  doneAt,
  dueAt,
  isSoon,
  type Order,
  orderOf,
  type PageStep,
  type Start,
  startOf,
  type Ticked,
} from "./bench-now.ts";
import { copiedText } from "./copied-text.ts";
import { nothingKept, readKept, writeKept } from "./kept.ts";
import { showKept, takeInput, tickedIn, tickRow } from "./kept-rows.ts";
import { liveTexts } from "./live-texts.ts";
import { type LiveView, liveView } from "./live-view.ts";
import { localTime } from "./local-times.ts";
import { speakAsThePage } from "./page-language.ts";
import { labelled, openingOf, type Row, rowsIn } from "./page-rows.ts";
import { clockText, momentText } from "./time-texts.ts";

const HALF_A_MINUTE_MS = 30_000;

const now = (): string => localTime(new Date());

/** The rows with what was read on their labels, and the order in which they follow each other. */
interface Bench {
  readonly rows: readonly Row[];
  readonly order: Order;
  readonly rowOf: ReadonlyMap<PageStep, Row>;
}

function begin(article: HTMLElement): void {
  const job = article.dataset.job ?? "";
  const key = `finishwright-sheet:${job}`;
  const kept = readKept(key);
  const find = <E extends HTMLElement>(selector: string): E => article.querySelector<E>(selector)!;
  const output = find("output");
  const read = rowsIn(article);
  const opening = openingOf(article);
  const benchNow = (): Bench => {
    const rows = read.map((row) => labelled(row, kept.labels[row.step]));
    const order = orderOf(
      rows.map(({ is }) => is),
      opening,
    );
    return { rows, order, rowOf: new Map(rows.map((row) => [row.is, row])) };
  };
  let bench = benchNow();
  let current: Row | undefined;
  let asked: Row | undefined;
  let undone: (() => void) | undefined;

  // -------------------------------------------------------------------------------------------------------------
  // What is kept

  const ticked = tickedIn(kept, (step) => bench.rowOf.get(step)!);
  const hasTicks = (): boolean =>
    bench.rows.some(({ is }) => is.pieces.some((piece) => ticked(is, piece) !== undefined));
  const save = (): void => {
    if (!writeKept(key, kept))
      output.textContent = t`This browser keeps nothing for this page: ticks are lost when it is closed.`;
  };
  const show = (): void => showKept(article, bench.rows, kept);
  const changed = (): void => {
    save();
    show();
    update();
  };
  article.addEventListener("input", ({ target }) => {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement)) return;
    if (!takeInput(kept, target, now())) return;
    save();
    if (target.dataset.at !== undefined || target.dataset.piece !== undefined) show();
    update();
  });

  // -------------------------------------------------------------------------------------------------------------
  // Now and next

  // What is to be known before the work is met open until something is ticked, and again on paper.
  const fold = find<HTMLDetailsElement>("[data-before]");
  fold.open = !hasTicks();
  openOnPaper(fold);

  const view: LiveView = liveView(find(".live"), {
    tick: () => {
      if (current === undefined) return;
      // The steps come up when the first of them is done; what is ticked in their list leaves it where it is.
      if (!hasTicks()) fold.open = false;
      undone = tickRow(kept, current, now());
      changed();
    },
    go: () => {
      current?.element.scrollIntoView({ block: "center" });
      current?.boxes.find((box) => !box.checked)?.focus({ preventScroll: true });
    },
    undo: () => {
      undone?.();
      undone = undefined;
      changed();
    },
    label: (hours) => {
      if (asked === undefined) return;
      if (hours === undefined) delete kept.labels[asked.step];
      else kept.labels[asked.step] = String(hours);
      bench = benchNow();
      changed();
    },
  });

  function update(): void {
    const time = now();
    const { order, rows, rowOf } = bench;
    const texts = liveTexts(order, ticked, time);
    current = texts.step && rowOf.get(texts.step);
    asked = texts.asks && rowOf.get(texts.asks);
    for (const { element } of rows) element.removeAttribute("aria-current");
    current?.element.setAttribute("aria-current", "step");
    view.show(texts, {
      clock: momentText(time),
      careful: texts.isEarly ? "" : (current?.careful ?? ""),
      canUndo: undone !== undefined,
    });
    for (const row of rows) showMay(row, bench.order, ticked, time);
  }

  // -------------------------------------------------------------------------------------------------------------
  // What is done, as text

  find("[data-copy]").addEventListener("click", () =>
    copyOut(copiedText(job, bench.rows, kept), find("[data-copied]"), output),
  );
  find("[data-print]").addEventListener("click", () => window.print());
  find("[data-forget]").addEventListener("click", () => {
    if (!window.confirm(t`Clear all ticks and notes of this sheet on this device?`)) return;
    Object.assign(kept, nothingKept());
    bench = benchNow();
    changed();
  });

  show();
  update();
  if (read.length === 0) view.hide();
  else find(".live").hidden = false;
  find(".tools").hidden = false;
  setInterval(update, HALF_A_MINUTE_MS);
  // A telephone that slept shows the time that it is now.
  document.addEventListener("visibilitychange", update);
}

/** Into the clipboard where the browser lets it be, and into an area to be copied by hand. */
async function copyOut(text: string, area: HTMLTextAreaElement, output: HTMLElement): Promise<void> {
  area.value = text;
  area.hidden = false;
  try {
    await navigator.clipboard.writeText(text);
    output.textContent = t`Copied. Here it is as well:`;
  } catch {
    area.select();
    output.textContent = t`Copy this text:`;
  }
}

/** A printed page has all of it, and the screen has it afterwards as it was. */
function openOnPaper(fold: HTMLDetailsElement): void {
  let wasOpen = fold.open;
  window.addEventListener("beforeprint", () => {
    wasOpen = fold.open;
    fold.open = true;
  });
  window.addEventListener("afterprint", () => {
    fold.open = wasOpen;
  });
}

/** On a line whether it may begin, and of what was ticked whether that was before its time. */
function showMay({ element, boxes, is }: Row, order: Order, ticked: Ticked, time: string): void {
  const may = element.querySelector<HTMLElement>(".may");
  if (may === null) return;
  const done = doneAt(is, ticked);
  const isRecorded = boxes.every(({ dataset }) => dataset.done !== undefined);
  const early = isRecorded ? "" : earlyText(order, startOf(order, is, ticked), done ?? time, time);
  const isAhead = done !== undefined && early !== "";
  element.classList.toggle("ahead", isAhead);
  element.classList.toggle("done", done !== undefined);
  element.classList.toggle("early", done === undefined && early !== "");
  const text = early === "" ? "" : isAhead ? t`Done too early: ${early}.` : t`Not yet: ${early}.`;
  if (may.textContent !== text) may.textContent = text;
}

/** Why a step is before its time or its turn at a moment, told `now`; empty where it is not. */
function earlyText(order: Order, start: Start, at: string, now: string): string {
  const { dry, planned, why, last, laid } = start;
  if (laid !== undefined) return dry > at ? t`leave it on until ${clockText(dry, now)}` : "";
  if (why === "step") {
    const after = t`after “${last?.title ?? ""}”`;
    return planned > at ? `${t`planned for ${clockText(planned, now)}`}, ${after}` : after;
  }
  if (dry > at) return t`dry enough from ${clockText(dry, now)}`;
  return why === "wait" || isSoon(dueAt(order, start), at) ? "" : t`planned for ${clockText(planned, now)}`;
}

speakAsThePage();
for (const article of document.querySelectorAll<HTMLElement>("article[data-job]")) begin(article);
