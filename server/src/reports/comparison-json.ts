/**
 * Jobs side by side for other programs; the shape is told in server/docs/json.md. Lengths, litres, hours and grams
 * have six decimals at most, money two; what is not known is null.
 */
import { cents, printed } from "../core/measure/figures.ts";
import { jsonText } from "../escape/json.ts";
import {
  COMPARED,
  type ComparedFigure,
  type Comparison,
  type ComparisonDifference,
  type ComparisonSide,
  isComparedDate,
} from "../views/job-comparison.ts";

/** Two jobs as `a`, `b` and `difference`, more of them as lists. `label` names a file as the user would. */
export function comparisonJson({ sides, differences }: Comparison, label: (file: string) => string): string {
  const told = sides.map((side) => sideJson(side, label));
  const more = differences.map(differenceJson);
  return jsonText(
    told.length === 2 ? { a: told[0], b: told[1], difference: more[0] } : { jobs: told, differences: more },
  );
}

const differenceJson = (difference: ComparisonDifference): Readonly<Record<string, unknown>> => ({
  ...inOrder((figure) => {
    const value = round(figure, difference.figures[figure]);
    return isComparedDate(figure) ? [`${figure}_h`, value] : [figure, value];
  }),
  materials: difference.materials.map(({ name, litres }) => ({ name, litres: round("litres", litres) })),
  findings: difference.levels,
});

function sideJson(side: ComparisonSide, label: (file: string) => string): Readonly<Record<string, unknown>> {
  return {
    file: label(side.file),
    job: side.job,
    title: side.title ?? null,
    ...inOrder((figure) => [
      figure,
      isComparedDate(figure) ? side.dates[figure] : round(figure, side.numbers[figure]),
    ]),
    currency: side.currency ?? null,
    materials: side.materials.map(({ name, litres, cost }) => ({
      name,
      litres: round("litres", litres),
      cost: round("cost", cost),
    })),
    findings: side.levels,
    rules: side.rules,
  };
}

/** The fields of the figures as the text has them, one after the other. */
const inOrder = (
  field: (figure: ComparedFigure) => readonly [name: string, value: number | string | null],
): Readonly<Record<string, number | string | null>> => Object.fromEntries(COMPARED.map(field));

const MONEY = /cost$|^saving$/u;

function round(name: string, value: number | null): number | null {
  return value === null ? null : MONEY.test(name) ? cents(value) : printed(value);
}
