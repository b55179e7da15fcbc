/** How a cost grows with a size, as an exponent. */

export interface Point {
  readonly size: number;
  readonly seconds: number;
}

/** Below this the clock of the processor says little. */
const LEAST_SECONDS = 0.03;

/**
 * The exponent e of the law `seconds = c · (n · log2 n)^e` that fits best, by least squares over the logarithms; 1 is
 * n log n. Only sizes that cost enough to be measured count, and of those the upper half in logarithms, where the law of
 * large sizes shows and what every size costs alike does not. Undefined where fewer than two such sizes are left.
 */
export function exponentOf(points: readonly Point[]): number | undefined {
  const measured = points.filter(({ seconds }) => seconds >= LEAST_SECONDS).slice(-4);
  if (measured.length < 2) return undefined;
  const logs = measured.map(({ size, seconds }) => ({
    x: Math.log(size * Math.log2(size)),
    y: Math.log(seconds),
  }));
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  const [meanX, meanY] = [mean(logs.map(({ x }) => x)), mean(logs.map(({ y }) => y))];
  const above = logs.reduce((sum, { x, y }) => sum + (x - meanX) * (y - meanY), 0);
  const below = logs.reduce((sum, { x }) => sum + (x - meanX) ** 2, 0);
  return above / below;
}
