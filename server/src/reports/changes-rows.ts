/** What changed in a declaration, in words that text and Markdown share: every figure before, after, and by how much. */
import { t, translated } from "../../../grammar/src/translate.ts";
import { cansText, litresText, momentText, moneyText } from "../core/measure/figures.ts";
import { formatDuration } from "../core/measure/format-amount.ts";
import { hoursBetween } from "../core/measure/iso-dates.ts";
import type { FindingChange } from "../views/changes/finding-changes.ts";
import type { LineChange } from "../views/changes/line-changes.ts";
import type {
  ChangeStatus,
  Changes,
  DeclarationChange,
  FigureChange,
  FilePair,
  MaterialAmount,
} from "../views/changes/model.ts";
import { FIGURES, NOT_KNOWN, signed } from "./comparison-text.ts";

/** How a report names the file of a state. */
export interface StateLabels {
  readonly before: (file: string) => string;
  readonly after: (file: string) => string;
}

export interface ChangeRow {
  readonly name: string;
  /** Empty where there is none. */
  readonly before: string;
  readonly after: string;
  /** With its sign; empty where that says nothing. */
  readonly difference: string;
}

/** The file as it is called now; one that is gone as it was called. */
export function fileLabel(labels: StateLabels, { before, after }: FilePair): string {
  return after === undefined ? labels.before(before ?? "") : labels.after(after);
}

/** `(new)`, `(removed)`, `(renamed from …)` behind the name of a file; empty for one that is only changed. */
export function fileStatus(
  labels: StateLabels,
  file: FilePair & { readonly status: ChangeStatus },
  say: (name: string) => string,
): string {
  if (file.isRenamed) return ` (${t`renamed from ${say(labels.before(file.before ?? ""))}`})`;
  return file.status === "changed" ? "" : ` (${translated(STATUS_WORDS[file.status]).toLowerCase()})`;
}

export const changeRows = (change: DeclarationChange): readonly ChangeRow[] => [
  ...change.figures.map((figure) => figureRow(change, figure)),
  ...change.materials.map(({ title, before, after }): ChangeRow => {
    const litres = [before ? before.litres : 0, after ? after.litres : 0] as const;
    return {
      name: title,
      before: amountText(before, change.currency.before),
      after: amountText(after, change.currency.after),
      difference: differenceText(litres[0], litres[1], litresText),
    };
  }),
  ...change.waits.map(
    ({ material, stage, before, after }): ChangeRow => ({
      name: `${material}, ${translated(STAGES[stage])}`,
      before: before === undefined ? "" : formatDuration(before),
      after: after === undefined ? "" : formatDuration(after),
      difference: before === undefined || after === undefined ? "" : signed(after - before, formatDuration),
    }),
  ),
];

export const STAGES = {
  touch: "dry to the touch",
  recoat: "wait for the next coat",
  stackable: "until it can be stacked",
  cured: "cure",
} as const;

function figureRow({ currency }: DeclarationChange, { figure, before, after }: FigureChange): ChangeRow {
  const { name, say } = FIGURES[figure];
  const text = (value: FigureChange["before"], money: string | undefined): string => {
    if (value === undefined) return "";
    if (value === null) return translated(NOT_KNOWN);
    return typeof value === "string" ? momentText(value) : say(value, money);
  };
  // Money of two currencies has no difference.
  const isMoney = say === moneyText;
  const isTwo = isMoney && currency.before !== currency.after;
  return {
    name: translated(name),
    before: text(before, currency.before),
    after: text(after, currency.after),
    difference: isTwo
      ? ""
      : typeof before === "string" && typeof after === "string"
        ? signed(hoursBetween(before, after), formatDuration)
        : differenceText(before, after, (value) => say(value, currency.after)),
  };
}

function differenceText(
  before: FigureChange["before"],
  after: FigureChange["after"],
  say: (value: number) => string,
): string {
  return typeof before === "number" && typeof after === "number" ? signed(after - before, say) : "";
}

function amountText(amount: MaterialAmount | undefined, currency: string | undefined): string {
  if (amount === undefined) return t`none`;
  const { litres, cans, cost } = amount;
  return [
    litres === null ? translated(NOT_KNOWN) : litresText(litres),
    ...(cans.length > 0 ? [cansText(cans)] : []),
    ...(cost === null ? [] : [moneyText(cost, currency)]),
  ].join(", ");
}

/** `2 h → 3 h (+1 h)` */
export function rowText({ before, after, difference }: ChangeRow): string {
  const more = difference === "" || difference === t`same` ? "" : ` (${difference})`;
  if (before === "") return after;
  if (after === "") return t`was ${before}`;
  return `${before} → ${after}${more}`;
}

/** Changed lines with one line around them; undefined stands for lines that are left out. */
export function withNeighbours(lines: readonly LineChange[]): readonly (LineChange | undefined)[] {
  const isNear = (at: number): boolean =>
    [at - 1, at, at + 1].some((near) => lines[near] !== undefined && lines[near].kind !== "same");
  return lines.flatMap((line, at): readonly (LineChange | undefined)[] => {
    if (isNear(at)) return [line];
    return at > 0 && isNear(at - 1) && lines.slice(at).some(({ kind }) => kind !== "same") ? [undefined] : [];
  });
}

export const MARKS = { same: " ", added: "+", removed: "-" } as const;

/** `warning: Recoat too early`, with what it was where it says something else now. */
export function findingText({ severity, headline, was }: FindingChange): string {
  const now = `${translated(severity)}: ${headline}`;
  if (was === undefined) return now;
  const before = was.severity === severity ? was.headline : `${translated(was.severity)}: ${was.headline}`;
  return t`${now} (was: ${before})`;
}

export const FINDING_MARKS = { new: "+", gone: "-", changed: "~" } as const;

export const STATUS_WORDS = { added: "New", removed: "Removed", changed: "Changed" } as const;

/** `2 files change in meaning, 1 in layout alone, 1 in name alone, of 12 files.` */
export function summaryText({ files, layoutOnly, nameOnly, looked }: Changes): string {
  const all = filesText(looked);
  const others = [
    { count: layoutOnly.length, apart: t`in layout alone`, alone: t`in another layout` },
    { count: nameOnly.length, apart: t`in name alone`, alone: t`under another name` },
  ].filter(({ count }) => count > 0);
  if (files.length === 0) {
    const rest = others.map(({ count, alone }) => ` ${filesText(count)} ${alone}.`);
    return `${looked === 1 ? t`No change of meaning in ${looked} file.` : t`No change of meaning in ${looked} files.`}${rest.join("")}`;
  }
  const rest = others.map(({ count, apart }) => `, ${count} ${apart}`).join("");
  return files.length === 1
    ? t`${files.length} file changes in meaning${rest}, of ${all}.`
    : t`${files.length} files change in meaning${rest}, of ${all}.`;
}

const filesText = (count: number): string => (count === 1 ? t`${count} file` : t`${count} files`);
