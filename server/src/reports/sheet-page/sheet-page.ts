/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
/**
 * What runs in an HTML sheet: ticks and notes stay on the device, and the sheet says what is now, what is next and when
 * a wait ends, counted from the tick of what was put on. `npm run generate` bundles it into the sheet.
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
  readonly surfaces: readonly string[];
  readonly boxes: readonly HTMLInputElement[];
  readonly note: HTMLInputElement;
  /** When it was done, to be put right by hand. */
  readonly at: HTMLInputElement;
}

const MINUTE = 60_000;
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
  const share = (a: Row, b: Row): boolean => {
    const pieces = (row: Row): string[] => row.boxes.map((box) => box.dataset.piece!);
    return (
      a.surfaces.some((surface) => b.surfaces.includes(surface)) &&
      (pieces(a).some((piece) => pieces(b).includes(piece)) || pieces(a)[0] === "0" || pieces(b)[0] === "0")
    );
  };
  /** The end of the wait behind a step: from its tick on, and else as planned. */
  const freeAt = (row: Row): string | undefined => {
    const { wait, until } = row.element.dataset;
    const done = doneAt(row);
    if (done !== undefined && wait !== undefined) return later(done, Number(wait));
    return done === undefined ? until?.slice(0, 16) : until === undefined ? undefined : until.slice(0, 16);
  };
  /** When a step may be done: by the wait that goes before it, and by the plan where none does, which may be overtaken. */
  const readyAt = (row: Row, index: number): { readonly ready: string; readonly byWait: boolean } => {
    const before = rows.slice(0, index).findLast((other) => share(other, row));
    const free = before && freeAt(before);
    if (before && doneAt(before) !== undefined && free !== undefined) return { ready: free, byWait: true };
    return { ready: row.element.dataset.start?.slice(0, 16) ?? "", byWait: false };
  };
  const lasting = (minutes: number): string => {
    if (minutes < 60) return `${minutes} min`;
    const hours = Math.floor(minutes / 60);
    if (hours < 48) return `${hours} h ${minutes % 60 === 0 ? "" : `${minutes % 60} min`}`.trim();
    return `${Math.round(hours / 24)} days`;
  };
  const inTime = (time: string): string => {
    const minutes = Math.round((new Date(time).getTime() - Date.now()) / MINUTE);
    return minutes < 1 ? "" : `in ${lasting(minutes)}`;
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
  const label = line(live, "label");
  const what = line(live, "now");
  const when = line(live, "when");
  what.setAttribute("role", "status");
  const [takes, careful, after, waits, next] = ["takes", "careful", "after", "waits", "next"].map((name) =>
    line(mindBox, name),
  ) as [HTMLElement, HTMLElement, HTMLElement, HTMLElement, HTMLElement];
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

  /** The waits that are running: until when, and by when the next coat goes on without sanding. */
  const waitsRunning = (now: string): string[] =>
    rows.flatMap((row) => {
      const done = doneAt(row);
      const free = done === undefined ? undefined : freeAt(row);
      if (done === undefined || free === undefined || free <= now) return [];
      const { latest } = row.element.dataset;
      const window =
        latest === undefined ? "" : ` The next coat by ${clock(later(done, Number(latest)))}, or sand first.`;
      const where = row.surfaces.join(", ") || "It";
      return [`${where}: leave alone until ${clock(free)} (${inTime(free)}).${window}`];
    });

  /** When the wait that it begins would end. */
  const afterIfDone = ({ element: { dataset } }: Row, now: string): string => {
    if (dataset.wait === undefined) return "";
    const hours = Number(dataset.wait);
    const until = clock(later(now, hours));
    return `Then leave alone for ${lasting(Math.ceil(hours * 60))}: until ${until} if it is done now.`;
  };

  function update(): void {
    const now = localTime(new Date());
    const open = rows.flatMap((row, index) => {
      if (doneAt(row) !== undefined) return [];
      const blocked = rows.slice(0, index).some((other) => doneAt(other) === undefined && share(other, row));
      return blocked ? [] : [{ row, ...readyAt(row, index) }];
    });
    open.sort((a, b) => (a.ready < b.ready ? -1 : a.ready > b.ready ? 1 : 0));
    const [first, second] = open;
    for (const { element } of rows) element.removeAttribute("aria-current");
    first?.row.element.setAttribute("aria-current", "step");
    current = first?.row;
    go.hidden = first === undefined;
    undo.hidden = ticked === undefined;
    const isWaiting = first !== undefined && first.ready > now;
    tick.hidden = first === undefined || (isWaiting && first.byWait);
    live.dataset.is = isWaiting ? "next" : "now";
    say(label, first === undefined ? "All steps are ticked" : isWaiting ? "Next" : "Now");
    say(what, first?.row.name ?? "");
    const planned =
      first === undefined || first.ready === "" || first.ready > now
        ? ""
        : `planned for ${clock(first.ready)}`;
    say(when, isWaiting ? `from ${clock(first.ready)}, ${inTime(first.ready)}` : planned);
    const texts = (selector: string): string[] =>
      [...(first?.row.element.querySelectorAll(selector) ?? [])].map(({ textContent }) => textContent ?? "");
    say(takes, join([...texts(".takes"), ...texts(".wear")], " · "));
    say(careful, join([...texts(".what small"), ...texts(".caution")], " "));
    say(after, first === undefined || isWaiting ? "" : afterIfDone(first.row, now));
    say(waits, waitsRunning(now).join(" "));
    const then = second?.row ?? rows[rows.indexOf(first?.row ?? rows[0]!) + 1];
    say(
      next,
      first === undefined || then === undefined || doneAt(then) !== undefined
        ? ""
        : `Then ${then.name}${second && second.ready > now ? `, ${clock(second.ready)}` : ""}`,
    );
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
}

for (const article of document.querySelectorAll<HTMLElement>("article[data-job]")) begin(article);
