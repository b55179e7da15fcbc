/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/**
 * The script of the page beside a job's text. It draws what the extension sends, tells it what was clicked, and changes a
 * block only where it has become another, so that nothing flickers; focus and scrolling stay where they are.
 */
import type { BenchAnswer, BenchPlace } from "../../../server/src/lsp/custom-requests.ts";
import type { Bench } from "../../../server/src/views/bench/model.ts";
import { airHtml } from "./air.ts";
import { cardsHtml, headHtml, shoppingHtml } from "./drawing.ts";
import { findingsHtml } from "./findings.ts";
import { heldOver, othersHeld } from "./held-over.ts";
import { data, text } from "./html.ts";
import { l10nOf } from "./l10n.ts";
import { levelRows } from "./level.ts";
import { type Look, momentsOf, momentText, openingHour, wallClock } from "./moments.ts";
import { patch } from "./patch.ts";
import { sectionsHtml } from "./sections.ts";
import { shopChoiceHtml, timelineHtml } from "./timeline.ts";

interface Host {
  postMessage(message: unknown): void;
  getState(): unknown;
  setState(state: unknown): void;
}
declare const acquireVsCodeApi: () => Host;

type Told =
  | { readonly type: "bench"; readonly answer: BenchAnswer }
  | { readonly type: "caret"; readonly uri: string; readonly line: number };

const host = acquireVsCodeApi();
const l10n = l10nOf(
  JSON.parse(document.getElementById("words")?.textContent || "{}"),
  document.documentElement.lang,
);
const saved = host.getState() as
  | { readonly ticked?: readonly string[]; readonly isWholeShop?: boolean }
  | undefined;
const ticked = new Set(saved?.ticked ?? []);
let isWholeShop = saved?.isWholeShop ?? true;
let answer: BenchAnswer | undefined;
let hour: number | undefined;
let caret: { readonly uri: string; readonly line: number } | undefined;

const byId = (id: string): HTMLElement => document.getElementById(id)!;
const slider = byId("moment") as HTMLInputElement;
const drawn = new Map<string, string>();

function put(id: string, html: string): void {
  if (drawn.get(id) === html) return;
  drawn.set(id, html);
  patch(byId(id), html);
}

/** What is as it was is left alone, also by who reads the screen. */
const set = (element: Element, name: string, value: string): void => {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
};

const say = (id: string, said: string): void => {
  if (byId(id).textContent !== said) byId(id).textContent = said;
};

/** As it is drawn: while its plan is made anew, with the one before. */
let shown: Bench<BenchPlace> | undefined;
/** The last one with a plan of its own. */
let planned: Bench<BenchPlace> | undefined;
let slow: ReturnType<typeof setTimeout> | undefined;

const fileOf = ({ at, places }: Bench<BenchPlace>): string | undefined => places[at ?? -1]?.uri;

/** Plans that are soon there are not spoken of, ms. */
const SOON = 700;

function take({ bench }: BenchAnswer): void {
  clearTimeout(slow);
  const isAnew =
    bench?.plan === "being planned" && bench.name === planned?.name && fileOf(bench) === fileOf(planned);
  if (bench?.plan === "planned") {
    const isSame = planned !== undefined && bench.name === planned.name && bench.startAt === planned.startAt;
    planned = isSame ? { ...bench, others: othersHeld(bench.others, planned!.others) } : bench;
  }
  // Where the text cannot be read just now, the drawing stays, and says so.
  if (bench !== undefined) {
    shown = isAnew ? heldOver(bench, planned!) : bench.plan === "planned" ? planned : bench;
  }
  const tell = (said: string): void => {
    document.body.classList.toggle("stale", said !== "");
    say("anew", said);
  };
  if (bench === undefined && shown !== undefined)
    tell(l10n.t("of the text before, as it cannot be drawn just now"));
  else if (isAnew)
    slow = setTimeout(() => tell(l10n.t("is being planned anew; this is the plan before")), SOON);
  else tell("");
}

const choiceOf = (jobs: BenchAnswer["jobs"], chosen: string): string =>
  jobs.length < 2
    ? ""
    : `<label>${text(l10n.t("Job"))} <select id="job" data-key="job">${jobs.map(({ name, title }) => `<option value="${data(name)}"${name === chosen ? " selected" : ""}>${text(title)}</option>`).join("")}</select></label>`;

function draw(): void {
  const bench = shown;
  put("notes", (answer?.notes ?? []).map((note) => `<p>${text(note)}</p>`).join(""));
  byId("page").hidden = bench === undefined;
  if (bench === undefined || answer === undefined) return;
  if (answer.bench !== undefined) put("jobs", choiceOf(answer.jobs, bench.name));
  const moments = momentsOf(bench);
  const last = moments.length - 1;
  const shownHour = hour ?? openingHour(bench, wallClock(new Date()));
  const found = shownHour === undefined ? last : moments.findLastIndex((each) => each <= shownHour + 1e-9);
  const moment = Math.max(0, found);
  set(slider, "max", String(last));
  if (slider.value !== String(moment)) slider.value = String(moment);
  const said = momentText(bench, moments[moment] ?? 0, l10n);
  set(slider, "aria-valuetext", said);
  say("said", said);
  const look: Look = { moment, width: document.documentElement.clientWidth - 16, isWholeShop, ticked, l10n };
  // What is not to be worked by yet can be saved, and does not call for it.
  document.querySelector('[data-action="html"]')?.classList.toggle("primary", bench.isSound);
  put("head", headHtml(bench));
  put("cards", cardsHtml(bench, l10n));
  put("sections", sectionsHtml(bench, look));
  put("shop", shopChoiceHtml(bench, look));
  put("timeline", timelineHtml(bench, look));
  put("air", airHtml(bench, look));
  put("shopping", shoppingHtml(bench, look));
  put("findings", findingsHtml(bench, l10n));
  levelRows(byId("sections"));
  outline();
}

/** Outlines what the line of the caret is about. */
function outline(): void {
  const places: readonly BenchPlace[] = shown?.places ?? [];
  for (const element of document.querySelectorAll("[data-at]")) {
    const place = places[Number(element.getAttribute("data-at") || -1)];
    const isAt =
      place !== undefined &&
      caret !== undefined &&
      place.uri === caret.uri &&
      place.line <= caret.line &&
      caret.line <= place.endLine;
    element.classList.toggle("at", isAt);
  }
}

window.addEventListener("message", ({ data }: MessageEvent<Told>) => {
  if (data.type === "caret") {
    caret = data;
    outline();
    return;
  }
  const { bench } = data.answer;
  if (bench !== undefined && bench.name !== shown?.name) hour = undefined;
  answer = data.answer;
  take(answer);
  draw();
});

slider.addEventListener("input", () => {
  if (shown === undefined) return;
  hour = momentsOf(shown)[Number(slider.value)];
  draw();
});

document.addEventListener("click", ({ target, ctrlKey, metaKey }) => {
  if (target instanceof Element) follow(target, ctrlKey || metaKey);
});

/** Where each key of a row of bars leads from the bar that has the focus. */
const ALONG: Readonly<Record<string, (at: number, last: number) => number>> = {
  ArrowRight: (at, last) => Math.min(at + 1, last),
  ArrowLeft: (at) => Math.max(at - 1, 0),
  Home: () => 0,
  End: (_, last) => last,
};

document.addEventListener("keydown", (event) => {
  const { target, key } = event;
  if (!(target instanceof Element)) return;
  // Whatever is drawn is no button of the browser's.
  const drawn = target.closest<SVGGElement>("g[role=button]");
  if (drawn !== null && (key === "Enter" || key === " ")) {
    event.preventDefault();
    follow(drawn, event.ctrlKey || event.metaKey);
  }
  const bar = target.closest<SVGGElement>("g.bar");
  if (bar === null) return;
  const along = ALONG[key];
  if (along === undefined) return;
  const bars = [...(bar.closest("svg")?.querySelectorAll<SVGGElement>("g.bar") ?? [])];
  const next = bars[along(bars.indexOf(bar), bars.length - 1)];
  event.preventDefault();
  if (next === undefined || next === bar) return;
  bar.setAttribute("tabindex", "-1");
  next.setAttribute("tabindex", "0");
  next.focus();
});

document.addEventListener("change", ({ target }) => {
  if (target instanceof HTMLSelectElement) host.postMessage({ type: "job", name: target.value });
  if (!(target instanceof HTMLInputElement)) return;
  if (target.id === "whole-shop") {
    isWholeShop = target.checked;
    draw();
  }
  if (target.dataset.can !== undefined) tick(target.dataset.can, target.checked);
  host.setState({ ticked: [...ticked], isWholeShop });
});

function tick(can: string, isBought: boolean): void {
  if (isBought) ticked.add(can);
  else ticked.delete(can);
}

function follow(target: Element, moves: boolean): void {
  const action = target.closest("[data-action]")?.getAttribute("data-action");
  if (action) host.postMessage({ type: "action", action });
  const at = target.closest("[data-at]")?.getAttribute("data-at");
  if (at) host.postMessage({ type: "reveal", at: Number(at), moves });
}

window.addEventListener("resize", draw);
host.postMessage({ type: "ready" });
