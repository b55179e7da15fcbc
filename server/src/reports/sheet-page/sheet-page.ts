/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/**
 * What runs in an HTML sheet: ticks and notes stay on the device, and the sheet says what time it is by the device, what is
 * now, what is next and when a wait ends, counted from the tick of what was put on. `npm run generate` bundles it into the sheet.
 *
 * It writes texts as texts, loads nothing and sends nothing. A sheet without it is the same sheet on paper.
 */

interface Kept {
  /** By step and piece, the local time of the tick; piece 0 is the one box of a step. */
  ticks: Record<string, Record<string, string>>;
  notes: Record<string, string>;
  got: Record<string, string>;
  went: string;
}

interface Row {
  readonly element: HTMLElement;
  readonly step: string;
  readonly name: string;
  readonly title: string;
  readonly where: string;
  readonly surfaces: readonly string[];
  readonly boxes: readonly HTMLInputElement[];
  readonly note: HTMLInputElement;
  /** When it was done, to be put right by hand. */
  readonly at: HTMLInputElement;
}

const MINUTE = 60_000;
/** Nobody keeps a plan to the minute: where nothing has to dry, a step may be begun so much before its time. */
const EARLY_MINUTES = 60;
const pad = (value: number): string => String(value).padStart(2, "0");

/** As the plan has it, without a zone: `2027-03-08T09:05`. */
const localTime = (at: Date): string =>
  `${at.getFullYear()}-${pad(at.getMonth() + 1)}-${pad(at.getDate())}T${pad(at.getHours())}:${pad(at.getMinutes())}`;

const later = (time: string, hours: number): string =>
  localTime(new Date(Math.ceil((new Date(time).getTime() + hours * 60 * MINUTE) / MINUTE) * MINUTE));

/** Only what this page wrote is taken; everything else is left out. */
function read(key: string): Kept {
  const kept: Kept = { ticks: {}, notes: {}, got: {}, went: "" };
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
  const rows = [...article.querySelectorAll<HTMLElement>("li.row")].map(
    (element): Row => ({
      element,
      step: element.dataset.step ?? "",
      name: element.dataset.name ?? "",
      title: element.dataset.title ?? "",
      where: element.dataset.where ?? "",
      surfaces: (element.dataset.surfaces ?? "").split("\n"),
      boxes: [...element.querySelectorAll<HTMLInputElement>("input[data-piece]")],
      note: element.querySelector<HTMLInputElement>("input[data-note]")!,
      at: element.querySelector<HTMLInputElement>("input[data-at]")!,
    }),
  );

  // -------------------------------------------------------------------------------------------------------------
  // What is kept

  /** What the record of the job has was done before this sheet was made. */
  const tickOf = (step: string, { dataset }: HTMLInputElement): string | undefined =>
    dataset.done ?? kept.ticks[step]?.[dataset.piece!];
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

  const doneAt = ({ step, boxes }: Row): string | undefined => {
    const times = boxes.map((box) => tickOf(step, box));
    return times.every((time) => time !== undefined) ? times.toSorted().at(-1) : undefined;
  };
  /** What goes before each step: the last one before it on a surface of the same piece. Box 0 is that of all pieces. */
  const before = new Map<Row, Row>();
  const lastOn = new Map<string, Map<string, number>>();
  for (const [index, row] of rows.entries()) {
    const pieces = row.boxes.map(({ dataset }) => dataset.piece!);
    const found = row.surfaces.flatMap((surface) => {
      const last = lastOn.get(surface) ?? new Map<string, number>();
      lastOn.set(surface, last);
      const there = pieces.includes("0")
        ? [...last.values()]
        : [...pieces, "0"].flatMap((piece) => last.get(piece) ?? []);
      for (const piece of pieces) last.set(piece, index);
      return there;
    });
    if (found.length > 0) before.set(row, rows[found.reduce((a, b) => Math.max(a, b))]!);
  }
  /** The end of the wait behind a step: from its tick on, and else as planned. */
  const freeAt = (row: Row): string | undefined => {
    const { wait, until } = row.element.dataset;
    const done = doneAt(row);
    return done !== undefined && wait !== undefined ? later(done, Number(wait)) : until?.slice(0, 16);
  };
  /**
   * When a step may be done. `why`: a wait runs, how long one takes is known to the label alone, what goes before it is open,
   * or the plan alone has it later.
   */
  interface May {
    readonly from: string;
    readonly why: "wait" | "label" | "step" | "plan";
    readonly last?: Row;
  }
  const mayBegin = (row: Row): May => {
    const start = row.element.dataset.start?.slice(0, 16) ?? "";
    const last = before.get(row);
    if (last === undefined) return { from: start, why: "plan" };
    if (doneAt(last) === undefined) return { from: start, why: "step", last };
    if (last.element.dataset.unknown !== undefined) return { from: start, why: "label", last };
    const free = freeAt(last);
    return free === undefined ? { from: start, why: "plan" } : { from: free, why: "wait", last };
  };
  const isSoon = (from: string, at: string): boolean => later(at, EARLY_MINUTES / 60) >= from;
  /** Why a step is ahead of its time at a moment; empty where it is not. */
  const aheadOf = (row: Row, at: string): string => {
    const { from, why, last } = mayBegin(row);
    if (why === "step") {
      const planned = from > at ? `planned for ${clock(from)}, ` : "";
      return `${planned}after “${last?.title ?? ""}”`;
    }
    if (from <= at || (why === "plan" && isSoon(from, at))) return "";
    return why === "wait" ? `may begin from ${clock(from)}` : `planned for ${clock(from)}`;
  };
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

  // What is now stays in sight while the list goes by; what is to be minded stands once below it.
  const mindBox = document.createElement("div");
  mindBox.className = "minded";
  live.after(mindBox);
  const line = (parent: HTMLElement, name: string, tag = "p"): HTMLElement =>
    parent.appendChild(Object.assign(document.createElement(tag), { className: name }));
  const clockLine = line(live, "clock");
  const [label, where, what, wear, danger, when] = ["label", "where", "now", "wear", "danger", "when"].map(
    (name) => line(live, name),
  ) as [HTMLElement, HTMLElement, HTMLElement, HTMLElement, HTMLElement, HTMLElement];
  what.setAttribute("role", "status");
  const [takes, careful, after] = ["takes", "careful", "after"].map((name) => line(mindBox, name)) as [
    HTMLElement,
    HTMLElement,
    HTMLElement,
  ];
  const titled = (name: string, title: string, tag: string): { head: HTMLElement; body: HTMLElement } => {
    const head = line(mindBox, `${name}-head`, "h2");
    head.textContent = title;
    return { head, body: line(mindBox, name, tag) };
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
  let ticked: { readonly row: Row; readonly before: Record<string, string> } | undefined;
  const ticksBecome = (row: Row, ticks: Record<string, string>): void => {
    kept.ticks[row.step] = ticks;
    save();
    show();
    update();
  };
  tick.addEventListener("click", () => {
    if (current === undefined) return;
    const before = kept.ticks[current.step] ?? {};
    const now = localTime(new Date());
    const open = current.boxes.filter((box) => tickOf(current!.step, box) === undefined);
    ticked = { row: current, before };
    ticksBecome(current, {
      ...before,
      ...Object.fromEntries(open.map(({ dataset }) => [dataset.piece!, now])),
    });
  });
  undo.addEventListener("click", () => {
    if (ticked === undefined) return;
    const { row, before } = ticked;
    ticked = undefined;
    ticksBecome(row, before);
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
  const waitsRunning = (now: string): (readonly [string, string])[] => {
    const running = new Map<string, { free: string; more: string }>();
    for (const row of rows) {
      const done = doneAt(row);
      const free = done === undefined ? undefined : freeAt(row);
      const on = row.where === "" ? row.title : row.where;
      if (done === undefined || free === undefined || free <= now || free < (running.get(on)?.free ?? ""))
        continue;
      const { latest, light, full } = row.element.dataset;
      const more = [
        latest === undefined ? "" : `Next coat by ${clock(later(done, Number(latest)))}, or sand first.`,
        light === undefined ? "" : `Light use from ${clock(later(done, Number(light)))}.`,
        full === undefined ? "" : `Full use from ${clock(later(done, Number(full)))}.`,
      ];
      running.set(on, { free, more: join(more, " ") });
    }
    return [...running]
      .sort(([, a], [, b]) => (a.free < b.free ? -1 : a.free > b.free ? 1 : 0))
      .map(([on, { free, more }]) => [`${on}: until ${clock(free)}, ${leftUntil(free)}`, more]);
  };
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

  /** A wait often ends by night, and the work goes on in the morning. */
  const plannedLater = ({ row, from }: { readonly row: Row; readonly from: string }): string => {
    const start = row.element.dataset.start?.slice(0, 16) ?? "";
    return start > from ? `, planned for ${clock(start)}` : "";
  };

  /** When the wait that it begins would end. */
  const afterIfDone = ({ element: { dataset } }: Row, now: string): string => {
    if (dataset.wait === undefined) return "";
    const hours = Number(dataset.wait);
    const until = clock(later(now, hours));
    return `Then don’t touch it for ${lasting(Math.ceil(hours * 60))}: until ${until} if it is done now.`;
  };

  /** On every line whether it may begin, and of what was ticked whether that was ahead of its time. */
  const showMay = (now: string): void => {
    for (const row of rows) {
      const may = row.element.querySelector<HTMLElement>(".may");
      if (may === null) continue;
      const done = doneAt(row);
      const isRecorded = row.boxes.every(({ dataset }) => dataset.done !== undefined);
      const early = isRecorded ? "" : aheadOf(row, done ?? now);
      const isAhead = done !== undefined && early !== "";
      row.element.classList.toggle("ahead", isAhead);
      row.element.classList.toggle("early", done === undefined && early !== "");
      const text = early === "" ? "" : isAhead ? `Ticked ahead: ${early}.` : `Not yet: ${early}.`;
      if (may.textContent !== text) may.textContent = text;
    }
  };

  function update(): void {
    const now = localTime(new Date());
    say(clockLine, `${DAY.format(new Date(now)).replace(",", "")} ${now.slice(11)}`);
    // What was ticked ahead of another step opens nothing.
    const blocked = new Set<Row>();
    const open = rows.flatMap((row) => {
      const last = before.get(row);
      if (last !== undefined && (doneAt(last) === undefined || blocked.has(last))) blocked.add(row);
      return doneAt(row) !== undefined || blocked.has(row) ? [] : [{ row, ...mayBegin(row) }];
    });
    open.sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
    const [first, second] = open;
    for (const { element } of rows) element.removeAttribute("aria-current");
    first?.row.element.setAttribute("aria-current", "step");
    current = first?.row;
    go.hidden = first === undefined;
    undo.hidden = ticked === undefined;
    const isWait = first !== undefined && first.why === "wait" && first.from > now;
    const isEarly = isWait || (first !== undefined && first.from > now && !isSoon(first.from, now));
    tick.hidden = first === undefined;
    tick.textContent = isEarly ? "Tick ahead of time" : "Done";
    tick.classList.toggle("early", isEarly);
    live.dataset.is = isWait ? "wait" : isEarly ? "next" : "now";
    say(
      label,
      first === undefined
        ? "All steps are ticked"
        : isEarly
          ? `Now: ${isWait ? "wait" : "nothing planned"} until ${clock(first.from)}, ${leftUntil(first.from)}. Then`
          : "Now",
    );
    say(where, first?.row.where ?? "");
    say(what, first?.row.title ?? "");
    const texts = (selector: string): string[] =>
      [...(first?.row.element.querySelectorAll(selector) ?? [])].map(({ textContent }) => textContent ?? "");
    say(wear, join(texts(".what .wear"), " "));
    say(danger, join(texts(".what .danger"), " "));
    say(
      when,
      first === undefined || (first.from === "" && first.why !== "label")
        ? ""
        : isWait
          ? `may begin from ${clock(first.from)}${plannedLater(first)}`
          : isEarly
            ? `planned for ${clock(first.from)}`
            : first.why === "label"
              ? "when what is below is dry: its label says how long"
              : first.why === "plan"
                ? `planned for ${clock(first.from)}`
                : `may begin since ${clock(first.from)}`,
    );
    say(takes, join([...texts(".takes").map((litres) => `Takes ${litres}`), ...texts(".by")], ", "));
    say(careful, join([...texts(".what small"), ...texts(".caution")], " "));
    say(after, first === undefined || isEarly ? "" : afterIfDone(first.row, now));
    listWaits(waitsRunning(now));
    const then = second?.row ?? rows[rows.indexOf(first?.row ?? rows[0]!) + 1];
    const isNext = first !== undefined && then !== undefined && doneAt(then) === undefined;
    const from = second?.from ?? then?.element.dataset.start?.slice(0, 16) ?? "";
    say(next.body, isNext ? `${then.name}${from > now ? `, from ${clock(from)}` : ""}` : "");
    next.head.hidden = !isNext;
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
    Object.assign(kept, { ticks: {}, notes: {}, got: {}, went: "" });
    save();
    show();
    update();
  });

  show();
  update();
  live.hidden = rows.length === 0;
  find(".tools").hidden = false;
  setInterval(update, MINUTE / 2);
  // A telephone that slept shows the time that it is now.
  document.addEventListener("visibilitychange", update);
}

for (const article of document.querySelectorAll<HTMLElement>("article[data-job]")) begin(article);
