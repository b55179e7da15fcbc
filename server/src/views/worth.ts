/** Whether a job is worth it, as rows for people: each way with its figures, and what is missing for one that is not known. */
import { t, translated } from "../../../grammar/src/translate.ts";
import { moneyText } from "../core/measure/figures.ts";
import { formatWork } from "../core/measure/format-amount.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import { soldPerHour, type Way, type WayName, waysOf } from "../core/totals/worth.ts";
import { awaitsPlan, beingPlannedText, gapsOf, newGaps, saleGaps } from "./missing-inputs.ts";

export const WAY_NAMES: Readonly<Record<WayName, string>> = {
  keep: "keep as it is",
  redo: "redo",
  buy_new: "buy new",
  sell: "redo and sell",
};

/** The columns behind the name of a way. */
export const WORTH_COLUMNS = ["you pay", "hours", "hours in money", "you get", "left over"] as const;

export interface WorthRow {
  readonly way: WayName;
  readonly name: string;
  /** In the order of the columns; money without its currency. */
  readonly figures: readonly string[];
}

export interface WorthTable {
  /** `an hour of work at 16.00 EUR`, or that no price of an hour is given. */
  readonly basis: string;
  readonly rows: readonly WorthRow[];
  /** What the figures come to and what is missing for them, in sentences. */
  readonly notes: readonly string[];
}

/** Undefined where no piece of the job states what a new one costs or what it sells for: there is nothing to weigh. */
export function worthTable(result: JobResult): WorthTable | undefined {
  const { job, shop, prices } = result;
  const kinds = new Set(job.pieces.map(({ piece }) => piece)).size;
  if (prices.withoutNew.length >= kinds && prices.withoutSale.length >= kinds) return undefined;
  const ways = waysOf(result);
  const rate = shop?.labourPerH;
  const hour =
    rate === undefined
      ? t`what an hour of work costs is not given`
      : t`an hour of work at ${moneyText(rate, shop?.currency)}`;
  return {
    basis: rate === undefined && shop?.currency ? t`in ${shop.currency}; ${hour}` : hour,
    rows: ways.map((way) => ({
      way: way.way,
      name: translated(WAY_NAMES[way.way]),
      figures: figuresOf(way, result),
    })),
    notes: [...verdicts(ways, result), ...missingNotes(ways, result)],
  };
}

function figuresOf(
  { moneyOut, hours, hoursWorth, moneyIn, left }: Way,
  result: JobResult,
): readonly string[] {
  const money = (amount: number | null): string => (amount === null ? unknown : zeroOr(amount, moneyText));
  const unknown = awaitsPlan(result, "labour_cost") ? beingPlannedText() : t`not known`;
  return [
    money(moneyOut),
    hours === null ? unknown : zeroOr(hours, formatWork),
    money(hoursWorth),
    money(moneyIn),
    left === null ? unknown : moneyText(left),
  ];
}

const zeroOr = (value: number, say: (value: number) => string): string =>
  value === 0 ? t`none` : say(value);

/** What redoing comes to beside new pieces, and an hour where they are sold. */
function verdicts(ways: readonly Way[], { totals, shop, prices }: JobResult): readonly string[] {
  const money = (amount: number): string => moneyText(amount, shop?.currency);
  const { labour_cost, saving } = totals;
  const sold = soldPerHour(ways.find(({ way }) => way === "sell")!);
  return [
    prices.bought > 0
      ? t`Left over is what you get less what you pay and the hours in money. What you pay has the ${money(prices.bought)} for the pieces in it.`
      : t`Left over is what you get less what you pay and the hours in money.`,
    ...(saving === null || labour_cost === null
      ? []
      : [
          saving < 0
            ? t`Redoing costs ${money(Math.abs(saving))} more than buying new.`
            : t`Redoing costs ${money(Math.abs(saving))} less than buying new.`,
        ]),
    ...(sold === null ? [] : [t`Redone and sold, an hour of work brings ${money(sold)}.`]),
  ];
}

function missingNotes(ways: readonly Way[], result: JobResult): readonly string[] {
  return ways.flatMap((way) => {
    const missing = wayGaps(way, result);
    // What redoing lacks is said once.
    const own = way.way === "sell" ? saleGaps(result) : missing;
    return way.left === null && own.length > 0
      ? [t`Not known for \`${translated(WAY_NAMES[way.way])}\`: ${own.join(", ")}.`]
      : [];
  });
}

/** The lines of the text that are missing for the figures of a way. */
export function wayGaps({ way, left }: Way, result: JobResult): readonly string[] {
  if (left !== null) return [];
  const work = (["material_cost", "hands_on_h", "labour_cost"] as const).flatMap((field) =>
    gapsOf(result, field),
  );
  const gaps: Readonly<Record<WayName, readonly string[]>> = {
    keep: [],
    redo: work,
    buy_new: newGaps(result),
    sell: [...work, ...saleGaps(result)],
  };
  return [...new Set(gaps[way])];
}
