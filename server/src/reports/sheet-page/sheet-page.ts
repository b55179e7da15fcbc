/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/**
 * What runs in an HTML sheet: ticks and notes stay on the device, and the sheet says what time it is by the device, what is
 * now, what is next and when a wait ends, counted from the tick of what was put on (`bench-now.ts`). `npm run generate`
 * bundles it into the sheet.
 *
 * It writes texts as texts, loads nothing and sends nothing. A sheet without it is the same sheet on paper.
 */
import {
  benchNow,
  doneAt,
  dueAt,
  type Hazards,
  hazardsAt,
  isRags,
  isSoon,
  LAID,
  orderOf,
  type PageStep,
  type Start,
  startOf,
  type Ticked,
  waitsRunning,
} from "./bench-now.ts";
import { later, localTime } from "./local-times.ts";

interface Kept {
  /** By step and piece, the local time of the tick; piece 0 is the one box of a step. */
  ticks: Record<string, Record<string, string>>;
  /** By step, when it was laid on that is to be taken off. */
  laid: Record<string, string>;
  notes: Record<string, string>;
  got: Record<string, string>;
  went: string;
}

interface Row {
  readonly element: HTMLElement;
  readonly is: PageStep;
  /** Its fingerprint. */
  readonly step: string;
  readonly name: string;
  readonly boxes: readonly HTMLInputElement[];
  readonly note: HTMLInputElement;
  /** When it was done, to be put right by hand. */
  readonly at: HTMLInputElement;
}

const MINUTE = 60_000;

/** What the cautions of the sheet ask for, in a few words; they and the labels say the rest. */
const ACTS: Readonly<Record<string, string>> = {
  fumes: "keep the air moving",
  fire: "no flame or spark in the room",
};

/** All rags in one act; of them those with drying oil would still heat up in a dry can. */
function ragsText(dangers: readonly string[]): readonly string[] {
  const [oily, solvent] = [dangers.includes("oily rags"), dangers.includes("solvent rags")];
  if (!oily) return solvent ? ["rags in the closed metal can"] : [];
  return [
    solvent
      ? "rags in the closed metal can, the oily ones in water"
      : "oily rags in water in the closed metal can",
  ];
}

function rowOf(element: HTMLElement): Row {
  const { dataset } = element;
  const hours = (text: string | undefined): number | undefined =>
    text === undefined ? undefined : Number(text);
  const parts = (text: string | undefined, between: string): string[] =>
    (text ?? "").split(between).filter((part) => part !== "");
  const boxes = [...element.querySelectorAll<HTMLInputElement>("input[data-piece]")];
  return {
    element,
    step: dataset.step ?? "",
    name: dataset.name ?? "",
    boxes,
    note: element.querySelector<HTMLInputElement>("input[data-note]")!,
    at: element.querySelector<HTMLInputElement>("input[data-at]")!,
    is: {
      title: dataset.title ?? "",
      where: dataset.where ?? "",
      surfaces: (dataset.surfaces ?? "").split("\n"),
      pieces: boxes.map((box) => box.dataset.piece!),
      isCoat: element.classList.contains("layer"),
      dangers: parts(dataset.dangers, ", "),
      start: dataset.start?.slice(0, 16),
      end: dataset.end?.slice(0, 16),
      waitH: hours(dataset.wait),
      until: dataset.until?.slice(0, 16),
      leastH: hours(dataset.least),
      isCured: dataset.cured !== undefined,
      isUnknown: dataset.unknown !== undefined,
      isLeftOn: dataset.leave !== undefined,
      leaveH: hours(dataset.leave || undefined),
      latestH: hours(dataset.latest),
      lightH: hours(dataset.light),
      fullH: hours(dataset.full),
    },
  };
}

/** Only what this page wrote is taken; everything else is left out. */
function read(key: string): Kept {
  const kept: Kept = { ticks: {}, laid: {}, notes: {}, got: {}, went: "" };
  try {
    const found: unknown = JSON.parse(localStorage.getItem(key) ?? "{}");
    const part = (of: unknown, name: string): [string, unknown][] => {
      const value = typeof of === "object" && of !== null ? (of as Record<string, unknown>)[name] : undefined;
      return typeof value === "object" && value !== null ? Object.entries(value) : [];
    };
    const texts = (entries: [string, unknown][]): Record<string, string> =>
      Object.fromEntries(entries.filter((entry): entry is [string, string] => typeof entry[1] === "string"));
    kept.ticks = Object.fromEntries(
      part(found, "ticks").map(([step]) => [
        step,
        texts(part(Object.fromEntries(part(found, "ticks")), step)),
      ]),
    );
    kept.laid = texts(part(found, "laid"));
    kept.notes = texts(part(found, "notes"));
    kept.got = texts(part(found, "got"));
    const { went } = found as { went?: unknown };
    if (typeof went === "string") kept.went = went;
  } catch {
    // Nothing is kept here, or nothing that can be read.
  }
  return kept;
}

function begin(article: HTMLElement): void {
  const job = article.dataset.job ?? "";
  const key = `finishwright-sheet:${job}`;
  const kept = read(key);
  const find = <E extends HTMLElement>(selector: string): E => article.querySelector<E>(selector)!;
  const live = find(".live");
  const output = find("output");
  const save = (): void => {
    try {
      localStorage.setItem(key, JSON.stringify(kept));
    } catch {
      output.textContent = "This browser keeps nothing for this page: ticks are lost when it is closed.";
    }
  };
  const rows = [...article.querySelectorAll<HTMLElement>("li.row")].map(rowOf);
  const rowsByStep = new Map<PageStep, Row>(rows.map((row) => [row.is, row]));

  // -------------------------------------------------------------------------------------------------------------
  // What is kept

  /** What the record of the job has was done before this sheet was made. */
  const tickOf = (step: string, { dataset }: HTMLInputElement): string | undefined =>
    (dataset.done ?? kept.ticks[step]?.[dataset.piece!])?.slice(0, 16);
  const show = (): void => {
    for (const { step, boxes, note, at } of rows) {
      const times = boxes.flatMap((box) => tickOf(step, box) ?? []);
      for (const box of boxes) box.checked = tickOf(step, box) !== undefined;
      note.value = kept.notes[step] ?? "";
      at.value = times.toSorted().at(-1)?.slice(0, 16) ?? "";
      // What the record has is put right there.
      at.disabled = times.length === 0 || boxes.every(({ dataset }) => dataset.done !== undefined);
    }
    for (const box of article.querySelectorAll<HTMLInputElement>("input[data-got]"))
      box.checked = kept.got[box.dataset.got!] !== undefined;
    find<HTMLTextAreaElement>("[data-note-all]").value = kept.went;
  };
  article.addEventListener("input", ({ target }) => {
    if (!(target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement)) return;
    const step = target.closest<HTMLElement>("li.row")?.dataset.step ?? "";
    const now = localTime(new Date());
    if (target.dataset.noteAll !== undefined) kept.went = target.value;
    else if (target.dataset.note !== undefined) kept.notes[step] = target.value;
    else if (target.dataset.at !== undefined) {
      if (target.value === "") return;
      const ticks = Object.keys(kept.ticks[step] ?? {});
      kept.ticks[step] = Object.fromEntries(ticks.map((piece) => [piece, target.value.slice(0, 16)]));
    } else if (target instanceof HTMLInputElement && target.dataset.got !== undefined) {
      if (target.checked) kept.got[target.dataset.got] = now;
      else delete kept.got[target.dataset.got];
    } else if (target instanceof HTMLInputElement && target.dataset.piece !== undefined) {
      const ticks = { ...kept.ticks[step] };
      if (target.checked) ticks[target.dataset.piece] = now;
      else delete ticks[target.dataset.piece];
      kept.ticks[step] = ticks;
    } else return;
    save();
    if (target.dataset.at !== undefined || target.dataset.piece !== undefined) show();
    update();
  });

  // -------------------------------------------------------------------------------------------------------------
  // Now and next

  const order = orderOf(rows.map(({ is }) => is));
  const ticked: Ticked = (step, piece) => {
    const row = rowsByStep.get(step)!;
    if (piece === LAID) return kept.laid[row.step];
    return tickOf(row.step, row.boxes.find(({ dataset }) => dataset.piece === piece)!);
  };
  /** Why a step is before its time or its turn at a moment; empty where it is not. */
  const earlyText = (start: Start, at: string): string => {
    const { dry, planned, why, last, laid } = start;
    if (laid !== undefined) return dry > at ? `leave it on until ${clock(dry)}` : "";
    if (why === "step") {
      const then = planned > at ? `planned for ${clock(planned)}, ` : "";
      return `${then}after “${last?.title ?? ""}”`;
    }
    if (dry > at) return `dry enough from ${clock(dry)}`;
    return why === "wait" || isSoon(planned, at) ? "" : `planned for ${clock(planned)}`;
  };
  // What is to be known before the work is met open until something is ticked, and again on paper.
  const fold = find<HTMLDetailsElement>("[data-before]");
  const hasTicks = (): boolean =>
    rows.some(({ is }) => is.pieces.some((piece) => ticked(is, piece) !== undefined));
  fold.open = !hasTicks();
  let wasOpen = fold.open;
  window.addEventListener("beforeprint", () => {
    wasOpen = fold.open;
    fold.open = true;
  });
  window.addEventListener("afterprint", () => {
    fold.open = wasOpen;
  });

  const lasting = (minutes: number): string => {
    if (minutes < 60) return `${minutes} min`;
    const hours = Math.floor(minutes / 60);
    if (hours < 48) return `${hours} h ${minutes % 60 === 0 ? "" : `${minutes % 60} min`}`.trim();
    return `${Math.round(hours / 24)} days`;
  };
  const leftUntil = (time: string): string => {
    const minutes = Math.round((new Date(time).getTime() - Date.now()) / MINUTE);
    return minutes < 1 ? "less than a minute left" : `${lasting(minutes)} left`;
  };
  const DAY = new Intl.DateTimeFormat("en-GB", { weekday: "short", day: "numeric", month: "short" });
  const clock = (time: string): string => {
    const isToday = time.slice(0, 10) === localTime(new Date()).slice(0, 10);
    return isToday ? time.slice(11) : `${DAY.format(new Date(time)).replace(",", "")} ${time.slice(11)}`;
  };

  const line = (parent: HTMLElement, name: string, tag = "p"): HTMLElement =>
    parent.appendChild(Object.assign(document.createElement(tag), { className: name }));
  const box = (name: string): HTMLElement =>
    Object.assign(document.createElement("div"), { className: name });
  // The gist stays in sight while the list goes by; what is to be minded stands once below what is now.
  const gistBox = box("gist");
  live.before(gistBox);
  const mindBox = box("minded");
  live.after(mindBox);
  const lines = <N extends string>(parent: HTMLElement, ...names: N[]): Record<N, HTMLElement> =>
    Object.fromEntries(names.map((name) => [name, line(parent, name)])) as Record<N, HTMLElement>;
  const { clock: clockLine, label, what: gist } = lines(gistBox, "clock", "label", "what");
  gist.setAttribute("role", "status");
  const { left, meanwhile, head, title, where, wear, danger, check, when } = lines(
    live,
    "left",
    "meanwhile",
    "head",
    "title",
    "where",
    "wear",
    "danger",
    "check",
    "when",
  );
  const { also, takes, careful, after } = lines(mindBox, "also", "takes", "careful", "after");
  const titled = (name: string, text: string, tag: string): { head: HTMLElement; body: HTMLElement } => {
    const titleLine = line(mindBox, `${name}-head`, "h2");
    titleLine.textContent = text;
    return { head: titleLine, body: line(mindBox, name, tag) };
  };
  const waits = titled("waits", "Don’t touch yet", "ul");
  const next = titled("next", "Next", "p");
  const button = (text: string): HTMLButtonElement => {
    const made = line(live, "go", "button") as HTMLButtonElement;
    made.type = "button";
    made.textContent = text;
    return made;
  };
  const [tick, go, undo] = [button("Done"), button("Show this step"), button("Undo")];
  let current: Row | undefined;
  let undone: (() => void) | undefined;
  const changed = (): void => {
    save();
    show();
    update();
  };
  tick.addEventListener("click", () => {
    if (current === undefined) return;
    const { step, is, boxes } = current;
    const before = kept.ticks[step] ?? {};
    const laid = kept.laid[step];
    const now = localTime(new Date());
    // The steps come up when the first of them is done; what is ticked in their list leaves it where it is.
    if (!hasTicks()) fold.open = false;
    undone = () => {
      kept.ticks[step] = before;
      if (laid === undefined) delete kept.laid[step];
    };
    if (is.isLeftOn && laid === undefined) kept.laid[step] = now;
    else {
      const open = boxes.filter((box) => tickOf(step, box) === undefined);
      kept.ticks[step] = {
        ...before,
        ...Object.fromEntries(open.map(({ dataset }) => [dataset.piece!, now])),
      };
    }
    changed();
  });
  undo.addEventListener("click", () => {
    undone?.();
    undone = undefined;
    changed();
  });
  go.addEventListener("click", () => {
    current?.element.scrollIntoView({ block: "center" });
    current?.boxes.find((box) => !box.checked)?.focus({ preventScroll: true });
  });
  const say = (element: HTMLElement, text: string): void => {
    if (element.textContent !== text) element.textContent = text;
    element.hidden = text === "";
  };
  const join = (parts: readonly string[], between: string): string =>
    parts.filter((part) => part !== "").join(between);

  /** The waits that are running, one a line for each place: until when, and by when the next coat goes on without sanding. */
  const waitLines = (now: string): (readonly [string, string])[] =>
    waitsRunning(order, ticked, now).map(({ step: { latestH, lightH, fullH }, on, done, free }) => {
      const more = [
        latestH === undefined ? "" : `Next coat by ${clock(later(done, latestH))}, or sand first.`,
        lightH === undefined ? "" : `Light use from ${clock(later(done, lightH))}.`,
        fullH === undefined ? "" : `Full use from ${clock(later(done, fullH))}.`,
      ];
      return free === ""
        ? [`${on}: as long as its label says, laid on at ${clock(done)}`, ""]
        : [`${on}: until ${clock(free)}, ${leftUntil(free)}`, join(more, " ")];
    });
  const listWaits = (list: readonly (readonly [string, string])[]): void => {
    const text = list.flat().join("\n");
    waits.head.hidden = list.length === 0;
    waits.body.hidden = list.length === 0;
    if (waits.body.dataset.text === text) return;
    waits.body.dataset.text = text;
    waits.body.replaceChildren(
      ...list.map(([first, more]) => {
        const item = document.createElement("li");
        item.append(first);
        if (more !== "") item.append(Object.assign(document.createElement("small"), { textContent: more }));
        return item;
      }),
    );
  };

  /** What earlier steps have left behind, but for what the line of the step itself warns of. */
  const hazardText = ({ dangers, soft }: Hazards, own: readonly string[]): string =>
    join(
      [
        dangers.filter((danger) => !own.includes(danger)).join(", "),
        soft.length === 0 ? "" : `dry but still soft: ${soft.join("; ")}`,
      ],
      "; ",
    );

  /** What to do about that where nobody stays; what has no act of its own is named. */
  const beforeLeaving = ({ dangers, soft }: Hazards): string => {
    const others = dangers.filter((danger) => !isRags(danger));
    const acts = [...others.map((danger) => ACTS[danger] ?? `mind ${danger}`), ...ragsText(dangers)];
    return join(
      [
        acts.length === 0 ? "" : `Before you leave: ${acts.join("; ")}.`,
        soft.length === 0 ? "" : `Dry but still soft: ${soft.join("; ")}.`,
      ],
      " ",
    );
  };

  /** When it is dry, or why nobody knows, and when the plan has it; not what is said of it anyhow. */
  const whenText = ({ step, dry, planned, why, laid }: Start, now: string, said: string): string => {
    if (laid !== undefined) {
      const end = step.leaveH === undefined ? ". How long: read its label" : "";
      return `on since ${clock(laid)}${end}`;
    }
    if (why === "label") return "when what is below is dry: its label says how long";
    const dryText =
      dry === "" || dry === said ? "" : `dry enough ${dry > now ? "from" : "since"} ${clock(dry)}`;
    // Nobody keeps a plan to the minute, and two times for one step are one too many.
    const isTold = planned === "" || planned <= said || isSoon(planned, now) || isSoon(planned, said || now);
    return join([dryText, isTold ? "" : `planned for ${clock(planned)}`], ", ");
  };

  /** When the wait that it begins would end. */
  const afterIfDone = ({ step: { waitH, isLeftOn, leaveH }, laid }: Start, now: string): string => {
    const isToLay = isLeftOn && laid === undefined;
    if (isToLay && leaveH === undefined) return "Then don’t touch it, for as long as its label says.";
    const hours = isToLay ? leaveH : waitH;
    if (hours === undefined) return "";
    const until = clock(later(now, hours));
    return `Then don’t touch it for ${lasting(Math.ceil(hours * 60))}: until ${until} if it is ${isToLay ? "laid on" : "done"} now.`;
  };

  /** What of a step is in hand, where it has parts. */
  const partText = ({ step: { isLeftOn, leaveH }, laid }: Start): string => {
    if (!isLeftOn) return "";
    if (laid === undefined) return "lay it on";
    return leaveH === undefined ? "leave it on, then take it off" : "take it off";
  };

  /** On every line whether it may begin, and of what was ticked whether that was before its time. */
  const showMay = (now: string): void => {
    for (const { element, boxes, is } of rows) {
      const may = element.querySelector<HTMLElement>(".may");
      if (may === null) continue;
      const done = doneAt(is, ticked);
      const isRecorded = boxes.every(({ dataset }) => dataset.done !== undefined);
      const early = isRecorded ? "" : earlyText(startOf(order, is, ticked), done ?? now);
      const isAhead = done !== undefined && early !== "";
      element.classList.toggle("ahead", isAhead);
      element.classList.toggle("done", done !== undefined);
      element.classList.toggle("early", done === undefined && early !== "");
      const text = early === "" ? "" : `${isAhead ? "Done too early" : "Not yet"}: ${early}.`;
      if (may.textContent !== text) may.textContent = text;
    }
  };

  const LABELS = {
    now: "Now",
    wait: "Now: wait",
    later: "Now: nothing to do yet",
    done: "All steps are ticked",
  } as const;

  function update(): void {
    const now = localTime(new Date());
    say(clockLine, `${DAY.format(new Date(now)).replace(",", "")} ${now.slice(11)}`);
    const { is, current: start, next: then } = benchNow(order, ticked, now);
    current = start && rowsByStep.get(start.step);
    for (const { element } of rows) element.removeAttribute("aria-current");
    current?.element.setAttribute("aria-current", "step");
    live.dataset.is = is;
    const isEarly = is === "wait" || is === "later";
    go.hidden = start === undefined;
    undo.hidden = undone === undefined;
    tick.hidden = start === undefined;
    const part = start === undefined ? "" : partText(start);
    tick.textContent =
      part === "" ? (isEarly ? "Done already" : "Done") : start?.laid === undefined ? "Laid on" : "Taken off";
    tick.classList.toggle("early", isEarly);
    const due = start === undefined ? "" : dueAt(order, start);
    say(label, is === "now" && part !== "" ? `Now: ${part}` : LABELS[is]);
    const until = start?.laid === undefined ? "Nobody need be here until" : "Leave it on until";
    // Of what is to be taken off when its label says so, the wait is what is done now.
    const isActing = start?.laid !== undefined && start.step.leaveH === undefined;
    const toDo = isActing ? "Stay here: take it off when its label time is up" : (start?.step.title ?? "");
    say(gist, isEarly ? `${until} ${clock(due)}` : toDo);
    say(left, isEarly ? leftUntil(due) : "");
    say(head, isEarly ? join([`Next: ${clock(due)}`, part], ", ") : "");
    say(title, isEarly || isActing ? (start?.step.title ?? "") : "");
    say(where, start?.step.where ?? "");
    const texts = (selector: string): string[] =>
      [...(current?.element.querySelectorAll(selector) ?? [])].map(({ textContent }) => textContent ?? "");
    say(wear, join(texts(".what .wear"), " "));
    say(danger, join(texts(".what .danger"), " "));
    const toCheck = current?.element.dataset.check;
    say(check, toCheck === undefined ? "" : `Check first: ${toCheck}.`);
    const found = hazardsAt(order, ticked, now);
    const hazards = hazardText(found, isEarly ? [] : (start?.step.dangers ?? []));
    const isAlone = isEarly && start?.laid === undefined;
    say(
      meanwhile,
      isEarly && hazards !== "" ? (isAlone ? beforeLeaving(found) : `Mind meanwhile: ${hazards}.`) : "",
    );
    say(also, !isEarly && hazards !== "" ? `Mind as well: ${hazards}.` : "");
    say(when, start === undefined ? "" : whenText(start, now, isEarly ? due : ""));
    say(takes, join([...texts(".takes").map((litres) => `Use ${litres}`), ...texts(".by")], ", "));
    say(careful, join([...texts(".what small:not(.part, .see)"), ...texts(".caution")], " "));
    say(after, start === undefined || isEarly ? "" : afterIfDone(start, now));
    listWaits(waitLines(now));
    next.head.hidden = then === undefined;
    next.head.textContent = isEarly ? "After that" : "Next";
    const off = then?.isLaid ? ", take it off" : "";
    const from = then === undefined || then.from <= now ? off : `${off}, from ${clock(then.from)}`;
    say(next.body, then === undefined ? "" : `${rowsByStep.get(then.step)!.name}${from}`);
    showMay(now);
  }

  // -------------------------------------------------------------------------------------------------------------
  // What is done, as text

  const oneLine = (text: string): string => text.replace(/[\s|]+/gu, " ").trim();
  const asText = (): string =>
    [
      `finishwright-ticks 2 ${job}`,
      ...rows.flatMap((row) => {
        const ticks = Object.entries(kept.ticks[row.step] ?? {});
        const note = oneLine(kept.notes[row.step] ?? "");
        if (ticks.length === 0 && note === "") return [];
        const last =
          ticks
            .map(([, time]) => time)
            .toSorted()
            .at(-1) ?? "-";
        const pieces = ticks.map(([piece]) => piece).join(",") || "-";
        return [
          [
            `${row.element.dataset.keys} ${last} ${pieces}`,
            oneLine(row.name),
            ...(note === "" ? [] : [note]),
          ].join(" | "),
        ];
      }),
      ...(kept.went === "" ? [] : [`- | ${oneLine(kept.went)}`]),
      "",
    ].join("\n");
  find("[data-copy]").addEventListener("click", async () => {
    const area = find<HTMLTextAreaElement>("[data-copied]");
    area.value = asText();
    area.hidden = false;
    try {
      await navigator.clipboard.writeText(area.value);
      output.textContent = "Copied. Here it is as well:";
    } catch {
      area.select();
      output.textContent = "Copy this text:";
    }
  });
  find("[data-print]").addEventListener("click", () => window.print());
  find("[data-forget]").addEventListener("click", () => {
    if (!window.confirm("Clear all ticks and notes of this sheet on this device?")) return;
    Object.assign(kept, { ticks: {}, laid: {}, notes: {}, got: {}, went: "" });
    save();
    show();
    update();
  });

  show();
  update();
  live.hidden = rows.length === 0;
  gistBox.hidden = rows.length === 0;
  find(".tools").hidden = false;
  setInterval(update, MINUTE / 2);
  // A telephone that slept shows the time that it is now.
  document.addEventListener("visibilitychange", update);
}

for (const article of document.querySelectorAll<HTMLElement>("article[data-job]")) begin(article);
