/**
 * What changed in meaning for other programs; the shape is told in server/docs/changes.md. Litres and hours have six
 * decimals at most, money two; what is not known is null, and so is a state that there is none of.
 */
import { cents, printed } from "../core/measure/figures.ts";
import { jsonText } from "../escape/json.ts";
import { isChange, type LineChange } from "../views/changes/line-changes.ts";
import type {
  Changes,
  DeclarationChange,
  FigureChange,
  FileChange,
  FilePair,
  MaterialAmount,
} from "../views/changes/model.ts";
import type { StateLabels } from "./changes-rows.ts";

export function changesJson(changes: Changes, labels: StateLabels): string {
  return jsonText({
    files: changes.files.map((file) => fileJson(file, labels)),
    layout_only: changes.layoutOnly.map((pair) => pairJson(pair, labels)),
    renamed_only: changes.nameOnly.map((pair) => pairJson(pair, labels)),
    looked: changes.looked,
  });
}

const pairJson = ({ before, after }: FilePair, labels: StateLabels) => ({
  before: before === undefined ? null : labels.before(before),
  after: after === undefined ? null : labels.after(after),
});

const fileJson = (file: FileChange, labels: StateLabels) => ({
  ...pairJson(file, labels),
  status: file.status,
  renamed: file.isRenamed,
  uses: linesJson(file.uses),
  findings: file.findings,
  changes: file.declarations.map(declarationJson),
});

const declarationJson = (change: DeclarationChange) => ({
  kind: change.kind,
  name: change.name,
  title: change.title,
  status: change.status,
  currency: { before: change.currency.before ?? null, after: change.currency.after ?? null },
  figures: Object.fromEntries(
    change.figures.map(({ figure, before, after }) => [
      figure,
      { before: rounded(figure, before), after: rounded(figure, after) },
    ]),
  ),
  materials: change.materials.map(({ name, title, before, after }) => ({
    name,
    title,
    before: amountJson(before),
    after: amountJson(after),
  })),
  waits: change.waits.map(({ material, stage, before, after }) => ({
    material,
    stage,
    before_h: rounded("hours", before),
    after_h: rounded("hours", after),
  })),
  work: change.work.map(({ place, lines }) => ({ place, lines: linesJson(lines) })),
  written: linesJson(change.written.filter(isChange)),
  findings: change.findings,
});

const linesJson = (lines: readonly LineChange[]) => lines.map(({ kind, text }) => ({ kind, text }));

const amountJson = (amount: MaterialAmount | undefined) =>
  amount === undefined
    ? null
    : {
        litres: rounded("litres", amount.litres),
        containers: amount.cans.map(({ litres, count, price }) => ({ litres, count, price })),
        cost: rounded("cost", amount.cost),
      };

const MONEY = /cost$|^saving$/u;

function rounded(name: string, value: FigureChange["before"]): number | string | null {
  if (typeof value !== "number") return value ?? null;
  return MONEY.test(name) ? cents(value) : printed(value);
}
