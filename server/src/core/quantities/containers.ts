/**
 * Which containers to buy: the cheapest set of sizes that holds at least what is needed.
 *
 * This is the covering form of the unbounded knapsack. It is solved exactly, in this order: least cost, then least left
 * over, then fewest containers; the answer does not depend on the order in which sizes are given.
 *
 * How. Let the *best* size be the one with the least price a litre. A purchase is some containers of the other sizes,
 * filled up with best ones. Two purchases of other sizes whose volumes differ by a whole number of best containers can
 * be compared once for all, so only one for each remainder modulo the best size is kept; and one whose cost can no
 * longer undercut the best purchase known is dropped. Other-size purchases are made in increasing order of volume, each
 * by adding one container to an earlier one. The number kept does not grow with the need, so thousands of containers
 * cost no more work than ten. All comparisons are between whole numbers.
 */

export interface SoldSize {
  readonly litres: number;
  readonly price: number;
}

export interface BoughtContainers {
  readonly litres: number;
  readonly count: number;
  readonly price: number;
}

/**
 * The cheapest containers for `needL` litres, largest size first; `price` is that of one container.
 * A need of zero or less needs none, and so does an empty list of sizes (the caller must tell the two apart). Sizes that
 * hold nothing or have a negative price are left out. A shortfall of a billionth part is rounding, not need.
 */
export function cheapestContainers(needL: number, sizes: readonly SoldSize[]): BoughtContainers[] {
  const offers = usableOffers(sizes);
  const smallest = offers.at(-1);
  if (smallest === undefined || !(needL > NOTHING_L) || !Number.isFinite(needL)) return [];
  const counts = search(toWholeNumbers(needL, offers));
  return offers
    .map((offer, index) => ({ litres: offer.litres, count: counts[index]!, price: offer.price }))
    .filter((bought) => bought.count > 0);
}

/** Less than this is what subtraction leaves behind, not a need. */
const NOTHING_L = 1e-9;
/** A guard against hostile lists of near-equal, incommensurable sizes; beyond it the best purchase found is given. */
const MOST_STATES = 400_000;
/** The same against long lists, since every step looks at every size: ten sizes still have 100 000 steps. */
const MOST_LOOKS = 1_000_000;

/** Volumes in whole units (of any size), prices in whole units (of any size). */
interface WholeProblem {
  readonly need: number;
  readonly volumes: readonly number[];
  readonly prices: readonly number[];
}

/** A purchase of sizes other than the best: the state before it plus one container. */
interface State {
  readonly volume: number;
  readonly cost: number;
  readonly count: number;
  readonly added: number;
  readonly before: State | undefined;
}

interface Purchase {
  readonly cost: number;
  readonly volume: number;
  readonly count: number;
  readonly others: State | undefined;
  readonly nBest: number;
}

/** Counts by size, in the order of the problem's sizes. */
function search(problem: WholeProblem): readonly number[] {
  const { need, volumes, prices } = problem;
  const best = bestValue(volumes, prices);
  const others = volumes.map((_, index) => index).filter((index) => index !== best);
  const kept: State[] = [{ volume: 0, cost: 0, count: 0, added: -1, before: undefined }];
  const keptByRemainder = new Map<number, State>([[0, kept[0]!]]);
  const next = others.map(() => 0); // For each other size the kept state that it is added to next.
  let cheapest = fillUp(kept[0]!, problem, best);

  for (let looks = 0; kept.length < MOST_STATES && looks < MOST_LOOKS; looks += others.length) {
    const state = nextState(kept, next, others, problem);
    if (state === undefined) break;
    if (state.volume >= need) {
      cheapest = better(cheapest, complete(state, 0));
      continue;
    }
    if (leastCost(state, problem, best) > cheapest.cost) continue;
    const remainder = state.volume % volumes[best]!;
    const rival = keptByRemainder.get(remainder);
    if (rival !== undefined && isNoBetter(state, rival, volumes[best]!, prices[best]!)) continue;
    keptByRemainder.set(remainder, state);
    kept.push(state);
    cheapest = better(cheapest, fillUp(state, problem, best));
  }
  return countSizes(cheapest, volumes.length, best);
}

/** The size with the least price by volume; of equals the largest. Sizes come largest first. */
function bestValue(volumes: readonly number[], prices: readonly number[]): number {
  let best = 0;
  for (let index = 1; index < volumes.length; index++) {
    if (prices[index]! * volumes[best]! < prices[best]! * volumes[index]!) best = index;
  }
  return best;
}

/**
 * The next purchase of other sizes in order of volume; of equal volumes the cheapest, then the one of fewest.
 * Each size walks through the kept states on its own, so the smallest of the walkers' sums is the next volume.
 */
function nextState(
  kept: readonly State[],
  next: number[],
  others: readonly number[],
  { volumes, prices }: WholeProblem,
): State | undefined {
  let found: State | undefined;
  for (const [walker, size] of others.entries()) {
    const before = kept[next[walker]!];
    if (before === undefined) continue;
    const volume = before.volume + volumes[size]!;
    const cost = before.cost + prices[size]!;
    const count = before.count + 1;
    const isNext =
      found === undefined ||
      volume < found.volume ||
      (volume === found.volume && (cost < found.cost || (cost === found.cost && count < found.count)));
    if (isNext) found = { volume, cost, count, added: size, before };
  }
  if (found === undefined) return undefined;
  for (const [walker, size] of others.entries()) {
    const before = kept[next[walker]!];
    if (before !== undefined && before.volume + volumes[size]! === found.volume) next[walker]!++;
  }
  return found;
}

/** No purchase that goes on from this state costs less: the rest at the best price by volume. */
function leastCost(state: State, { need, volumes, prices }: WholeProblem, best: number): number {
  const rest = (prices[best]! * (need - state.volume)) / volumes[best]!;
  return state.cost + rest * (1 - 1e-12);
}

/** The rival, smaller by a whole number of best containers, filled up with those is as cheap and as few. */
function isNoBetter(state: State, rival: State, bestVolume: number, bestPrice: number): boolean {
  const nBest = Math.round((state.volume - rival.volume) / bestVolume);
  const cost = rival.cost + nBest * bestPrice;
  return cost < state.cost || (cost === state.cost && rival.count + nBest <= state.count);
}

function fillUp(state: State, { need, volumes, prices }: WholeProblem, best: number): Purchase {
  const nBest = Math.ceil((need - state.volume) / volumes[best]!);
  return {
    cost: state.cost + nBest * prices[best]!,
    volume: state.volume + nBest * volumes[best]!,
    count: state.count + nBest,
    others: state,
    nBest,
  };
}

const complete = (state: State, nBest: number): Purchase => ({
  cost: state.cost,
  volume: state.volume,
  count: state.count,
  others: state,
  nBest,
});

/** The cheaper; of equals the one with less left over; of equals the one of fewer containers; else the first. */
function better(first: Purchase, second: Purchase): Purchase {
  const difference = first.cost - second.cost || first.volume - second.volume || first.count - second.count;
  return difference <= 0 ? first : second;
}

function countSizes(purchase: Purchase, nSizes: number, best: number): readonly number[] {
  const counts = new Array<number>(nSizes).fill(0);
  counts[best] = purchase.nBest;
  for (let state = purchase.others; state !== undefined && state.added >= 0; state = state.before) {
    counts[state.added]!++;
  }
  return counts;
}

// ---------------------------------------------------------------------------------------------------------------
// Whole numbers

/** Largest first, one offer for each volume (the cheapest). */
function usableOffers(sizes: readonly SoldSize[]): readonly SoldSize[] {
  const usable = sizes.filter(
    ({ litres, price }) =>
      litres > NOTHING_L && Number.isFinite(litres) && price >= 0 && Number.isFinite(price),
  );
  const sorted = [...usable].sort((a, b) => b.litres - a.litres || a.price - b.price);
  return sorted.filter((offer, index) => index === 0 || offer.litres !== sorted[index - 1]!.litres);
}

function toWholeNumbers(needL: number, offers: readonly SoldSize[]): WholeProblem {
  const unitL = commonUnit(offers.map((offer) => offer.litres));
  const priceScale = commonPriceScale(offers.map((offer) => offer.price));
  const allowanceL = NOTHING_L + needL * 1e-9;
  return {
    need: Math.max(1, Math.ceil((needL - allowanceL) / unitL)),
    volumes: offers.map((offer) => Math.round(offer.litres / unitL)),
    prices: offers.map((offer) => Math.round(offer.price * priceScale)),
  };
}

/**
 * The largest unit, in litres, of which all volumes are whole multiples. Volumes are taken at 1e-13 L, where every US
 * measure is whole (a fluid ounce is 0.0295735295625 L). Sizes without a common unit of use are taken to the nanolitre.
 */
function commonUnit(litres: readonly number[]): number {
  const finest = 1e-13;
  const common = litres.map((size) => BigInt(Math.round(size / finest))).reduce(greatestCommonDivisor);
  const nanolitre = 1e-9;
  return Math.max(Number(common) * finest, nanolitre);
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [large, small] = [a, b];
  while (small !== 0n) [large, small] = [small, large % small];
  return large;
}

/** Money has two decimals; prices with more are taken to a millionth. */
function commonPriceScale(prices: readonly number[]): number {
  const isWhole = (value: number): boolean => Math.abs(value - Math.round(value)) < 1e-6;
  return prices.every((price) => isWhole(price * 100)) ? 100 : 1e6;
}
