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
    }),
  );

  // -------------------------------------------------------------------------------------------------------------
  // What is kept

  /** What the record of the job has was done before this sheet was made. */
  const tickOf = (step: string, { dataset }: HTMLInputElement): string | undefined =>
    dataset.done ?? kept.ticks[step]?.[dataset.piece!];
  const show = (): void => {
    for (const { step, boxes, note } of rows) {
      for (const box of boxes) box.checked = tickOf(step, box) !== undefined;
      note.value = kept.notes[step] ?? "";
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
    else if (target instanceof HTMLInputElement && target.dataset.got !== undefined) {
      if (target.checked) kept.got[target.dataset.got] = now;
      else delete kept.got[target.dataset.got];
    } else if (target instanceof HTMLInputElement && target.dataset.piece !== undefined) {
      const ticks = { ...kept.ticks[step] };
      if (target.checked) ticks[target.dataset.piece] = now;
      else delete ticks[target.dataset.piece];
      kept.ticks[step] = ticks;
    } else return;
    save();
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
  const readyAt = (row: Row, index: number): string => {
    const before = rows.slice(0, index).findLast((other) => share(other, row));
    const free = before && freeAt(before);
    if (before && doneAt(before) !== undefined && free !== undefined) return free;
    return row.element.dataset.start?.slice(0, 16) ?? "";
  };
  const inTime = (time: string): string => {
    const minutes = Math.round((new Date(time).getTime() - Date.now()) / MINUTE);
    if (minutes < 1) return "";
    if (minutes < 60) return `in ${minutes} min`;
    const hours = Math.floor(minutes / 60);
    if (hours < 48) return `in ${hours} h ${minutes % 60 === 0 ? "" : `${minutes % 60} min`}`.trim();
    return `in ${Math.round(hours / 24)} days`;
  };
  const DAY = new Intl.DateTimeFormat("en-GB", { weekday: "short", day: "numeric", month: "short" });
  const clock = (time: string): string => {
    const isToday = time.slice(0, 10) === localTime(new Date()).slice(0, 10);
    return isToday ? time.slice(11) : `${DAY.format(new Date(time))} ${time.slice(11)}`;
  };

  const line = (name: string, tag = "p"): HTMLElement =>
    live.appendChild(Object.assign(document.createElement(tag), { className: name }));
  const [label, when, what, mind, waits, next] = ["label", "when", "now", "mind", "waits", "next"].map(
    (name) => line(name),
  ) as [HTMLElement, HTMLElement, HTMLElement, HTMLElement, HTMLElement, HTMLElement];
  what.setAttribute("role", "status");
  const go = line("go", "button") as HTMLButtonElement;
  go.type = "button";
  go.textContent = "Show this step";
  let current: Row | undefined;
  go.addEventListener("click", () => {
    current?.element.scrollIntoView({ block: "center" });
    current?.boxes.find((box) => !box.checked)?.focus({ preventScroll: true });
  });
  const say = (element: HTMLElement, text: string): void => {
    if (element.textContent !== text) element.textContent = text;
    element.hidden = text === "";
  };

  function update(): void {
    const now = localTime(new Date());
    const open = rows.flatMap((row, index) => {
      if (doneAt(row) !== undefined) return [];
      const blocked = rows.slice(0, index).some((other) => doneAt(other) === undefined && share(other, row));
      return blocked ? [] : [{ row, ready: readyAt(row, index) }];
    });
    open.sort((a, b) => (a.ready < b.ready ? -1 : a.ready > b.ready ? 1 : 0));
    const [first, second] = open;
    for (const { element } of rows) element.removeAttribute("aria-current");
    first?.row.element.setAttribute("aria-current", "step");
    current = first?.row;
    go.hidden = first === undefined;
    const running = rows.flatMap((row) => {
      const free = doneAt(row) === undefined ? undefined : freeAt(row);
      return free !== undefined && free > now
        ? [`${row.surfaces.join(", ") || "It"}: leave alone until ${clock(free)} (${inTime(free)}).`]
        : [];
    });
    const isWaiting = first !== undefined && first.ready > now;
    say(label, first === undefined ? "All steps are ticked" : isWaiting ? "Next" : "Now");
    say(
      when,
      first === undefined
        ? ""
        : isWaiting
          ? `${clock(first.ready)}, ${inTime(first.ready)}`
          : first.ready === ""
            ? ""
            : `since ${clock(first.ready)}`,
    );
    say(what, first?.row.name ?? "");
    const text = (selector: string): string => first?.row.element.querySelector(selector)?.textContent ?? "";
    say(mind, [text(".takes"), text(".wear")].filter((part) => part !== "").join(" · "));
    say(waits, running.join(" "));
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
