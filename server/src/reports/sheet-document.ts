/**
 * A sheet laid out: which parts it has, in which order and in which words, before it becomes HTML, Markdown or text.
 * The three renderers only draw what stands here, so that they never say different things.
 */

import { t, translated } from "../../../grammar/src/translate.ts";
import { SEVERITIES } from "../core/findings.ts";
import { percentText, shortMomentText, timeText } from "../core/measure/figures.ts";
import { andList } from "../core/model/suggest.ts";
import {
  bareText,
  code,
  type DocBlock,
  docBlocks,
  type Inline,
  plain,
  prose,
  strong,
} from "../escape/prose.ts";
import type { FileSpan } from "../views/places/file-finding.ts";
import type { Section } from "../views/section/model.ts";
import { inOneGo } from "../views/sheet/goes.ts";
import {
  type Docs,
  MOST_PIECES,
  type PlannedTime,
  type Sheet,
  type SheetDuty,
  type SheetEntry,
  type SheetFinding,
  type SheetMaterial,
  type SheetProcedure,
  type SheetStep,
} from "../views/sheet/model.ts";
import { stripParts } from "../views/sheet/strip-parts.ts";
import { capital } from "../views/sheet/words.ts";
import { NOT_SAFE } from "./findings-text.ts";
import { sectionInWords } from "./section-svg.ts";

/** What the text and the Markdown are drawn from: a sheet, or a card. */
export interface LaidOut {
  /** `Job sheet`, `Recipe sheet`, `Care card` */
  readonly sort: string;
  readonly title: string;
  /** Behind the sort: of a sheet name and file. */
  readonly origin: Inline;
  /** Above all sections. */
  readonly head: readonly Block[];
  readonly sections: readonly SheetSection[];
  /** The last line. */
  readonly foot: string;
}

export interface SheetDocument extends LaidOut {
  /** The file alone. */
  readonly file: string;
  /** What it is laid out from. */
  readonly sheet: Sheet;
}

export interface SheetSection {
  readonly title: string;
  readonly blocks: readonly Block[];
}

export type Block =
  | DocBlock
  | { readonly kind: "bullets"; readonly items: readonly Inline[]; readonly isSmall?: true }
  | { readonly kind: "facts"; readonly rows: readonly { readonly name: string; readonly text: Inline }[] }
  | Table
  | Box
  /** Drawings, with a sentence each for where nothing can be drawn. */
  | { readonly kind: "sections"; readonly sections: readonly Section[]; readonly items: readonly Inline[] }
  | { readonly kind: "part"; readonly title: string }
  | Steps;

export interface Table {
  readonly kind: "table";
  readonly caption: string;
  /** The first names the row. */
  readonly columns: readonly {
    readonly title: string;
    /** Figures stand to the right; short cells are not broken where there is a choice. */
    readonly form?: "figure" | "short";
  }[];
  /** Rows of one group share the first cell. */
  readonly groups: readonly {
    readonly head: Inline;
    readonly rows: readonly (readonly Inline[])[];
  }[];
}

/** Something set apart: findings, notes. */
export interface Box {
  readonly kind: "box";
  readonly tone: "error" | "warning" | "note";
  readonly title: string;
  /** The box with the findings, to which steps refer. */
  readonly isFindings?: true;
  readonly blocks: readonly (
    | { readonly kind: "paragraph"; readonly text: Inline }
    | { readonly kind: "bullets"; readonly items: readonly Inline[] }
    | { readonly kind: "numbers"; readonly items: readonly Inline[] }
  )[];
}

/** Steps and waits that follow each other with nothing between. */
export interface Steps {
  readonly kind: "steps";
  readonly steps: readonly DrawnStep[];
}

export interface DrawnStep {
  readonly op: SheetStep["op"];
  /** A wait has none. */
  readonly number?: number;
  readonly title: string;
  readonly details: readonly string[];
  /** Numbers of the findings at the head that stand on this line. */
  readonly findings: readonly number[];
  readonly cautions: readonly string[];
  /** `Wear: gloves, dust mask. Caution: fumes.`; empty where the step brings nothing. */
  readonly wear: string;
  /** What a box is of, before its number: `Reading table`, `Piece`. */
  readonly piece: string;
  /** Boxes to tick, with the time behind them. A single piece has one without a label. */
  readonly ticks: readonly Tick[];
}

export interface Tick {
  /** Numbers of the pieces; one empty label for a single box. */
  readonly labels: readonly string[];
  /** `Mon 8 Mar 09:00 to 09:25`; empty without dates. */
  readonly time: string;
  /** Those of the labels whose box is ticked. */
  readonly done: readonly string[];
}

/** Says where a finding stands: `tables.finish:12`. */
type Locate = (at: FileSpan) => string;

export function sheetDocument(sheet: Sheet, file: string, locate: Locate): SheetDocument {
  return {
    sort: sheet.kind === "job" ? t`Job sheet` : t`Recipe sheet`,
    title: sheet.title,
    file,
    sheet,
    origin: [...code(sheet.name), ...plain(t` in ${file}`)],
    head: [...docs(sheet.docs), ...findings(sheet.findings, locate), ...facts(sheet.facts), ...gaps(sheet)],
    sections: [
      { title: t`Choose before starting`, blocks: facts(sheet.choices) },
      { title: t`Safety`, blocks: safety(sheet) },
      { title: t`Pieces and surfaces`, blocks: pieces(sheet) },
      { title: t`Shop`, blocks: docs(sheet.shopDocs) },
      { title: t`Materials`, blocks: materials(sheet) },
      { title: t`Day by day`, blocks: days(sheet) },
      ...sheet.procedures.map(procedure),
      { title: serviceTitle(), blocks: service(sheet) },
    ].filter(({ blocks }) => blocks.length > 0),
    foot: foot(),
  };
}

export const serviceTitle = (): string => t`When it may be used`;

const foot = (): string =>
  t`This sheet was calculated from the text of a recipe. It advises; it never certifies anything as safe: labels, safety data sheets, local codes and licensed practice come first.`;

const usual = (): string =>
  t`These are the usual cautions, no more. Keeping to them does not make the work safe, and nothing here certifies that it is: read the label and the safety data sheet of every product first, and follow local codes and licensed practice where they ask for more.`;

const paragraph = (text: Inline): { readonly kind: "paragraph"; readonly text: Inline } => ({
  kind: "paragraph",
  text,
});
const docs = ({ text }: Docs): readonly Block[] => docBlocks(text);

const facts = (rows: Sheet["facts"]): readonly Block[] =>
  rows.length === 0
    ? []
    : [{ kind: "facts", rows: rows.map(({ name, text }) => ({ name, text: plain(text) })) }];

// ---------------------------------------------------------------------------------------------------------------
// The head

/** A sheet lists so many findings, the gravest; nobody reads more at the bench, and every sheet of a file may have them. */
const MOST_LISTED = 20;

/** Said where a sheet is read from its top; a page of paper has the room for what is found alone. */
const nothingFound = (): string =>
  t`Nothing was found among what is checked: coats that do not hold, waits, amounts, dates, old paint, cautions that are not stated.`;

const notListed = (count: number): string =>
  count === 1
    ? t`${count} more finding is not listed here. \`finishwright check\` lists them all.`
    : t`${count} more findings are not listed here. \`finishwright check\` lists them all.`;

function findings(found: readonly SheetFinding[], locate: Locate): readonly Block[] {
  if (found.length === 0) return [paragraph(plain(`${nothingFound()} ${translated(NOT_SAFE)}`))];
  return [
    findingsBox(found, ({ severity, rule, message, at }) => [
      ...strong(`${translated(severity)} ${rule}`),
      ...plain(` (${locate(at)}): `),
      ...prose(message),
    ]),
  ];
}

/** Of what is handed on: without rules and lines, which are for whoever writes the recipe. */
export const handedOnFindings = (found: readonly SheetFinding[]): Box =>
  findingsBox(found, ({ severity, gist, rest }) => [
    ...strong(`${capital(translated(severity))}: ${gist}.`),
    ...prose(rest === "" ? "" : `\n${rest}`),
  ]);

const COUNTED: Readonly<Record<SheetFinding["severity"], (count: number) => string>> = {
  error: (count) => (count === 1 ? t`${count} error` : t`${count} errors`),
  warning: (count) => (count === 1 ? t`${count} warning` : t`${count} warnings`),
  information: (count) => t`${count} information`,
  hint: (count) => (count === 1 ? t`${count} hint` : t`${count} hints`),
};

/** Of at least one finding. */
function findingsBox(found: readonly SheetFinding[], itemOf: (finding: SheetFinding) => Inline): Box {
  const errors = found.some(({ severity }) => severity === "error");
  const counts = SEVERITIES.flatMap((severity) => {
    const count = found.filter((finding) => finding.severity === severity).length;
    if (count === 0) return [];
    return [COUNTED[severity](count)];
  });
  return {
    kind: "box",
    tone: errors ? "error" : "warning",
    isFindings: true,
    title: `${errors ? t`Resolve before starting` : t`Check before starting`}: ${counts.join(", ")}`,
    blocks: [
      // The gravest come first.
      { kind: "numbers", items: found.slice(0, MOST_LISTED).map(itemOf) },
      ...(found.length > MOST_LISTED ? [paragraph(plain(notListed(found.length - MOST_LISTED)))] : []),
      paragraph(plain(translated(NOT_SAFE))),
    ],
  };
}

function gaps({ gaps: list }: Sheet): readonly Block[] {
  if (list.length === 0) return [];
  const items = list.map(({ figure, missing }) => [...plain(`${figure}: `), ...prose(missing.join(", "))]);
  return [
    { kind: "box", tone: "note", title: t`Could not be calculated`, blocks: [{ kind: "bullets", items }] },
  ];
}

/** Ranges of steps would only seem to contradict the lines of the steps, so the cautions point to those. */
const wearByLine = (): string => t`Each line of work has words of these; this is what they ask for.`;

/** Of all forms; `more`: what else is said of a duty. */
/** `where` has each name its surfaces, for lists whose lines do not name the dangers of every step. */
export function cautions(
  { duties, pieces: list, fumes, procedures }: Sheet,
  more: (duty: SheetDuty) => string,
  names: "where" | "nowhere" = "where",
): readonly Inline[] {
  const lead = list.flatMap(({ title, cautions: own }) =>
    own.map((caution): Inline => [...strong(title), ...plain(`: ${caution}`)]),
  );
  const items = duties.map((duty): Inline => {
    const { label, surfaces, stated, doc } = duty;
    const isSome = names === "where" && surfaces.length > 0 && surfaces.length < procedures.length;
    const on = isSome ? [surfaces.join(", ")] : [];
    const where = [...on, ...(stated ? [] : [t`not stated in the recipe`])].join(", ");
    return [...strong(label), ...plain(`${where === "" ? "" : ` (${where})`}: ${doc}${more(duty)}`)];
  });
  const air: Inline = fumes ? [...strong(fumes.gist), ...plain(` ${fumes.text.replaceAll("`", "")}`)] : [];
  return [
    ...(items.length > 0 ? [plain(wearByLine())] : []),
    ...lead,
    ...items,
    ...(air.length > 0 ? [air] : []),
  ];
}

function safety(sheet: Sheet): readonly Block[] {
  const items = cautions(sheet, ({ defer }) => ` ${defer}`);
  return [paragraph(plain(usual())), ...(items.length > 0 ? [{ kind: "bullets", items } as const] : [])];
}

// ---------------------------------------------------------------------------------------------------------------
// What is on the bench

function pieces({ pieces: list, surfaces }: Sheet): readonly Block[] {
  if (list.length === 0 && surfaces.length === 0) return [];
  const described = list.flatMap(({ title, count, facts: more, docs: text }): readonly Block[] => [
    paragraph([
      ...strong(count > 1 ? `${count} × ${title}` : title),
      ...plain(more.length > 0 ? `, ${more.join(", ")}` : ""),
    ]),
    ...docs(text),
  ]);
  const table: Table = {
    kind: "table",
    caption: t`Surfaces`,
    columns: [
      { title: t`Surface` },
      { title: t`Made of` },
      { title: t`On it now` },
      { title: t`Wear` },
      { title: t`Area` },
      { title: t`New film, dry` },
    ],
    groups: surfaces.map(({ title, substrate, existing, wear, area, film }) => ({
      head: plain(title),
      rows: [[substrate, existing, wear, area, film].map(plain)],
    })),
  };
  const notes = surfaces.flatMap(({ title, docs: text }) =>
    text.text.trim() ? [aboutItem(title, text, [])] : [],
  );
  return [
    ...described,
    ...(surfaces.length > 0 ? [table, sections(surfaces.map(({ section }) => section))] : []),
    ...(notes.length > 0 ? [{ kind: "bullets", items: notes } as const] : []),
  ];
}

const sections = (list: readonly Section[]): Block => ({
  kind: "sections",
  sections: list,
  items: list.map((section) => plain(sectionInWords(section))),
});

function materials({ kind, materials: list, paper, sparePercent }: Sheet): readonly Block[] {
  const inJob = kind === "job";
  const table: Table = {
    kind: "table",
    caption: inJob ? t`What to have ready. ${spareText(sparePercent)}` : t`What to have ready`,
    columns: [
      { title: t`Material` },
      { title: t`What it is` },
      ...(inJob
        ? amountTitles().map((title, i) => ({ title, form: i < 2 ? "figure" : "short" }) as const)
        : []),
    ],
    groups: list.map((material) => ({
      head: plain(material.title),
      rows: [
        [
          materialKind(material),
          ...(inJob ? [material.takes, material.onHand, material.open].map(plain) : []),
        ],
      ],
    })),
  };
  const notes = list.flatMap(({ title, docs: text, notes: more }) =>
    text.text.trim() || more.length > 0 ? [aboutItem(title, text, more)] : [],
  );
  const sheets = paper.map(({ name, text }) => `${name} ${text}`).join("; ");
  return [
    ...(list.length > 0 ? [table] : []),
    ...(notes.length > 0 ? [{ kind: "bullets", items: notes, isSmall: true } as const] : []),
    ...(sheets === ""
      ? []
      : [
          paragraph([
            ...strong(t`Abrasive paper`),
            ...plain(t`, an estimate by common practice: ${sheets}.`),
          ]),
        ]),
  ];
}

/** Litres of the job, litres that are there, and cans for the rest. */
export const amountTitles = (): readonly string[] => [t`You need`, t`You have`, t`New cans`];

export const spareText = (percent: number): string =>
  percent === 0
    ? t`Nothing is added to the amounts, so measure well.`
    : t`${percentText(percent)} more than the work takes is in the amounts, so that it does not run out.`;

const materialKind = ({ sort, name }: SheetMaterial): Inline => [
  ...plain(sort),
  ...(name === undefined ? [] : [...plain(sort === "" ? "" : " "), ...code(name)]),
];

const linesOf = (block: DocBlock): readonly Inline[] => {
  if (block.kind === "paragraph") return [block.text];
  return block.kind === "code" ? block.lines.map(code) : block.items;
};

/** `Walnut gel stain: what its doc comment says. Label: …` */
const aboutItem = (title: string, text: Docs, more: readonly string[]): Inline => [
  ...strong(title),
  ...plain(": "),
  ...docBlocks(text.text).flatMap((block): Inline => {
    const lines = linesOf(block);
    return lines.flatMap((line) => [...line, ...plain(/[.!?:]$/u.test(bareText(line)) ? " " : ". ")]);
  }),
  ...plain(more.join(" ")),
];

function days({ days: list }: Sheet): readonly Block[] {
  if (list.length === 0) return [];
  return [
    {
      kind: "table",
      caption: t`Planned schedule`,
      columns: [
        { title: t`Day` },
        { title: t`Time`, form: "short" },
        { title: t`Surface` },
        { title: t`Steps`, form: "short" },
      ],
      groups: list.map(({ day, tasks }) => ({
        head: plain(day),
        rows: tasks.map(({ time, where, steps }) => [time, where, steps].map(plain)),
      })),
    },
  ];
}

function service({ service: { light, date, cures, cautions } }: Sheet): readonly Block[] {
  return [
    ...(light === undefined
      ? []
      : [paragraph([...strong(t`Light use from ${light}`), ...plain(`, ${lightUse()}`)])]),
    ...(date === undefined
      ? []
      : [paragraph([...strong(t`Full use from ${date}`), ...plain(`, ${fullCure()}`)])]),
    ...(cures.length > 0
      ? [
          {
            kind: "bullets",
            items: cures.map(({ name, text }): Inline => [...strong(name), ...plain(`: ${text}`)]),
          } as const,
        ]
      : []),
    ...cautions.map((caution) => paragraph(plain(caution))),
  ];
}

const lightUse = (): string => t`setting things down with care, nothing hot, wet or heavy.`;
const fullCure = (): string =>
  t`when by the plan the last coat of every surface has had its full cure in this shop's air. The labels decide.`;

// ---------------------------------------------------------------------------------------------------------------
// Steps

function procedure({ title, pieces: count, piece = t`Piece`, entries }: SheetProcedure): SheetSection {
  const blocks: Block[] = [];
  for (const entry of entries) {
    if (entry.kind !== "step") {
      blocks.push(...entryBlocks(entry));
      continue;
    }
    const last = blocks.at(-1);
    const step = drawnStep(entry, count, piece);
    if (last?.kind === "steps") blocks[blocks.length - 1] = { ...last, steps: [...last.steps, step] };
    else blocks.push({ kind: "steps", steps: [step] });
  }
  const many = count > 1 ? t`, ${count} pieces` : "";
  return {
    title: `${title === "" ? t`Step by step` : t`${title}, step by step`}${many}`,
    blocks,
  };
}

function entryBlocks(entry: Exclude<SheetEntry, SheetStep>): readonly Block[] {
  switch (entry.kind) {
    case "part":
      return [{ kind: "part", title: entry.title }, ...docs(entry.docs)];
    case "note":
      return [{ kind: "box", tone: "note", title: t`Note`, blocks: [paragraph(plain(entry.text))] }];
    case "open":
      return [{ kind: "box", tone: "warning", title: t`Not known`, blocks: [paragraph(plain(entry.text))] }];
  }
}

function drawnStep(step: SheetStep, count: number, piece: string): DrawnStep {
  const { op, number, title, details, cautions, wear, dangers, findings: found } = step;
  return {
    op,
    ...(number === undefined ? {} : { number }),
    title,
    details: [...stripLines(step, count), ...details],
    findings: found,
    cautions,
    wear: [
      ...(wear.length > 0 ? [t`Wear: ${wear.map(translated).join(", ")}.`] : []),
      ...(dangers.length > 0 ? [t`Caution: ${dangers.map(translated).join(", ")}.`] : []),
    ].join(" "),
    piece,
    ticks: ticksOf(step, count),
  };
}

/** Of every go, with its pieces where there are several. */
function stripLines({ strip, planned }: SheetStep, count: number): readonly string[] {
  if (!strip) return [];
  const goes = count > MOST_PIECES ? [] : inOneGo(planned);
  if (goes.length < 2) return stripParts(strip, goes[0]).lines;
  return goes.flatMap((go) => {
    const [first = 0] = go.pieces;
    const head = go.pieces.length === 1 ? t`Piece ${first}` : t`Pieces ${andList(go.pieces.map(String))}`;
    return [`${head}: ${stripParts(strip, go).lines.join(" ")}`];
  });
}

function ticksOf({ op, planned, done = [] }: SheetStep, count: number): readonly Tick[] {
  const ticked = [...(done.length === count ? [""] : []), ...done.map(({ piece }) => String(piece))];
  const tick = (labels: readonly string[], time: string): Tick => ({
    labels,
    time,
    done: labels.filter((label) => ticked.includes(label)),
  });
  if (count > MOST_PIECES) return [tick([""], wholeTime(op, planned))];
  if (planned.length === 0)
    return [tick(count === 1 ? [""] : Array.from({ length: count }, (_, i) => String(i + 1)), "")];
  return planned.map((each, i) =>
    tick(count === 1 ? [""] : each.pieces.map(String), whenText(op, each, planned[i - 1])),
  );
}

/** `[x]` where it is done. */
export const boxOf = ({ done }: Tick, label: string): string => (done.includes(label) ? "[x]" : "[ ]");

/** `Mon 8 Mar 09:00 to 09:25`; the day only where it is another than said just before. */
function whenText(op: SheetStep["op"], time: PlannedTime, before?: PlannedTime): string {
  const { startAt, endAt } = time;
  if (op === "wait") return t`until ${momentAfter(before?.endAt, endAt)}`;
  return t`${momentAfter(before?.startAt, startAt)} to ${momentAfter(startAt, endAt)}`;
}

const momentAfter = (before: string | undefined, iso: string): string =>
  before?.slice(0, 10) === iso.slice(0, 10) ? timeText(iso) : shortMomentText(iso);

/** From the first piece to the last. */
function wholeTime(op: SheetStep["op"], planned: readonly PlannedTime[]): string {
  const [first] = planned;
  if (!first) return "";
  const endAt = planned
    .map((each) => each.endAt)
    .toSorted()
    .at(-1)!;
  return t`${whenText(op, { ...first, endAt })}, all pieces`;
}

/** `See findings 2, 5.` */
export const seeFindings = (numbers: readonly number[]): string =>
  numbers.length > 1 ? t`See findings ${numbers.join(", ")}.` : t`See finding ${numbers.join(", ")}.`;
