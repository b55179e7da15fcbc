/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/** The part of an HTML sheet that says what is now: its elements, and how they show what `live-texts.ts` says. */
import { t } from "../../../../grammar/src/translate.ts";
import type { LiveTexts, NextTexts, TwoLines } from "./live-texts.ts";

/** What somebody may press or write in it. */
export interface LiveActions {
  readonly tick: () => void;
  readonly go: () => void;
  readonly undo: () => void;
  /** Read on the label of the step that is asked for, in hours; undefined where nothing that counts was written. */
  readonly label: (hours: number | undefined) => void;
}

export interface LiveView {
  readonly show: (texts: LiveTexts, around: Around) => void;
  readonly hide: () => void;
}

/** What does not come from the order of steps alone. */
export interface Around {
  /** `Mon 8 Mar 09:05` */
  readonly clock: string;
  readonly careful: string;
  readonly canUndo: boolean;
}

/** `live` is the empty element of the sheet. The gist stands before it and stays in sight while the list goes by. */
export function liveView(live: HTMLElement, actions: LiveActions): LiveView {
  const gist = child(live, "gist", "div");
  live.before(gist);
  const clock = child(gist, "clock");
  child(gist, "label").textContent = t`Do now`;
  const what = child(gist, "what");
  what.setAttribute("role", "status");
  const more = child(live, "more-now", "div");
  const first = child(live, "first", "div");
  const buttons = child(live, "buttons", "div");
  const [tick, go, undo] = [
    button(buttons, t`Done`, actions.tick),
    button(buttons, t`Show step`, actions.go),
    button(buttons, t`Undo`, actions.undo),
  ];
  child(live, "label").textContent = t`When the wait ends`;
  // Where a wait is asked for, its field is the answer that is wanted.
  const asks = labelField(live, actions.label);
  const waits = child(live, "waits", "ul");
  const risksTitle = child(live, "label risky");
  // What the recipe itself warns of is about this very step: before what all such steps bring.
  const careful = child(live, "careful");
  const risks = child(live, "risks", "ul");
  const [next, lastOfNext] = nextView(live);
  return {
    show: (texts, around) => {
      live.dataset.is = texts.is;
      say(clock, around.clock);
      say(what, texts.what);
      paragraphs(more, texts.more);
      paragraphs(first, texts.first);
      tick.hidden = texts.button === undefined;
      go.hidden = texts.step === undefined;
      undo.hidden = !around.canUndo;
      tick.textContent = texts.button ?? "";
      tick.classList.toggle("early", texts.isEarly);
      list(waits, texts.waits, "li");
      asks(texts.asks?.isLeftOn ?? false, texts.asks?.labelH, texts.asks !== undefined);
      say(risksTitle, texts.risksTitle);
      list(risks, texts.risks, "li");
      for (const [i, item] of [...risks.children].entries())
        item.classList.toggle("standing", i >= texts.newRisks);
      // Where nothing is to be done yet, what may be ticked is the step that comes next.
      (texts.isEarly ? lastOfNext : first).after(buttons);
      say(careful, around.careful);
      next(texts.next);
    },
    hide: () => {
      live.hidden = true;
      gist.hidden = true;
    },
  };
}

const child = (parent: HTMLElement, name: string, tag = "p"): HTMLElement =>
  parent.appendChild(Object.assign(document.createElement(tag), { className: name }));

function button(parent: HTMLElement, text: string, press: () => void): HTMLButtonElement {
  const made = child(parent, "go", "button") as HTMLButtonElement;
  made.type = "button";
  made.textContent = text;
  made.addEventListener("click", press);
  return made;
}

/** An element without text is not there. What has not changed is not written again, so that nobody hears it twice. */
function say(element: HTMLElement, text: string): void {
  if (element.textContent !== text) element.textContent = text;
  element.hidden = text === "";
}

function list(parent: HTMLElement, lines: readonly TwoLines[], tag: string): void {
  const text = lines.flat().join("\n");
  parent.hidden = lines.length === 0;
  if (parent.dataset.text === text) return;
  parent.dataset.text = text;
  parent.replaceChildren(
    ...lines.map(([first, second]) => {
      const item = document.createElement(tag);
      item.append(first);
      if (second !== "") item.append(Object.assign(document.createElement("small"), { textContent: second }));
      return item;
    }),
  );
}

const paragraphs = (parent: HTMLElement, texts: readonly string[]): void =>
  list(
    parent,
    texts.map((text): TwoLines => [text, ""]),
    "p",
  );

/** Minutes for what is left on and taken off, hours for what dries. */
function labelField(
  live: HTMLElement,
  tell: LiveActions["label"],
): (isMinutes: boolean, hours: number | undefined, isAsked: boolean) => void {
  const field = child(live, "asked", "label");
  const words = field.appendChild(document.createElement("span"));
  const input = field.appendChild(document.createElement("input"));
  Object.assign(input, { type: "number", inputMode: "decimal", min: "0", step: "any" });
  input.dataset.labelTime = "";
  const unitWord = field.appendChild(document.createElement("span"));
  let unit = 60;
  input.addEventListener("input", () => {
    const value = Number(input.value);
    tell(input.value !== "" && value > 0 && Number.isFinite(value) ? value / unit : undefined);
  });
  return (isMinutes, hours, isAsked) => {
    field.hidden = !isAsked;
    unit = isMinutes ? 60 : 1;
    words.textContent = t`Its label says`;
    unitWord.textContent = isMinutes ? t`minutes` : t`hours`;
    // What somebody is writing is left alone.
    if (document.activeElement !== input)
      input.value = hours === undefined ? "" : String(+(hours * unit).toFixed(2));
  };
}

function nextView(live: HTMLElement): [show: (texts: NextTexts | undefined) => void, last: HTMLElement] {
  const title = child(live, "label next-title");
  const what = child(live, "next");
  const more = child(live, "next-more", "div");
  const first = child(live, "first next-first", "div");
  const show = (texts: NextTexts | undefined): void => {
    say(title, texts?.title ?? "");
    say(what, texts?.what ?? "");
    paragraphs(more, texts?.more ?? []);
    paragraphs(first, texts?.first ?? []);
  };
  return [show, first];
}
