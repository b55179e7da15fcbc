/** Whether a job is worth it: what its pieces cost and bring when they are kept, redone, replaced, or redone and sold. */
import { cents } from "../measure/figures.ts";
import type { JobResult } from "./job-totals.ts";
import { sumOrNull } from "./sums.ts";
import { suppliesOf } from "./supplies.ts";

export type WayName = "keep" | "redo" | "buy_new" | "sell";

/** One way with all pieces of a job, in the shop's money and in hours; `null` is what the text does not state enough for. */
export interface Way {
  readonly way: WayName;
  /** For the pieces as bought, materials and supplies, or new pieces. */
  readonly moneyOut: number | null;
  readonly hours: number | null;
  /** The hours at what an hour of one person costs. */
  readonly hoursWorth: number | null;
  /** What the pieces sell for; 0 where they are kept. */
  readonly moneyIn: number | null;
  /** `moneyIn` less `moneyOut` and `hoursWorth`. */
  readonly left: number | null;
}

/**
 * The four ways with the pieces of a job: as they are, redone by the job, new ones in their place, and redone and sold. What
 * was paid for the pieces counts wherever they are had, as it does in the cost of the job, so redoing leaves more than buying
 * new by the job's saving. Without a price of an hour it is not known what the hours are worth.
 */
export function waysOf({ job, shop, runs, totals, prices }: JobResult): readonly Way[] {
  const hours = totals.hands_on_h;
  const isFree = hours === 0 || shop?.labourPerH === 0;
  const work = {
    moneyOut: sumOrNull([totals.material_cost, suppliesOf(job, runs), prices.bought]),
    hours,
    hoursWorth: isFree && hours !== null ? 0 : totals.labour_cost,
  };
  const none = { hours: 0, hoursWorth: 0, moneyIn: 0 };
  return [
    wayOf("keep", { ...none, moneyOut: prices.bought }),
    wayOf("redo", { ...work, moneyIn: 0 }),
    wayOf("buy_new", { ...none, moneyOut: prices.forNew }),
    wayOf("sell", { ...work, moneyIn: prices.forSale }),
  ];
}

function wayOf(way: WayName, { moneyOut, hours, hoursWorth, moneyIn }: Omit<Way, "way" | "left">): Way {
  const out = sumOrNull([moneyOut, hoursWorth]);
  return {
    way,
    moneyOut: inCents(moneyOut),
    hours,
    hoursWorth: inCents(hoursWorth),
    moneyIn: inCents(moneyIn),
    left: out === null || moneyIn === null ? null : cents(moneyIn - out),
  };
}

const inCents = (amount: number | null): number | null => (amount === null ? null : cents(amount));

/**
 * What an hour of one's own work brings where the pieces are sold, in the shop's money: what comes in less the money that
 * goes out, by the hours. `null` where one of them is not known, and where nothing is done by hand.
 */
export function soldPerHour({ moneyIn, moneyOut, hours }: Way): number | null {
  if (moneyIn === null || moneyOut === null || hours === null || hours <= 0) return null;
  return (moneyIn - moneyOut) / hours;
}
