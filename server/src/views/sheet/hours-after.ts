/** Local ISO date-times so many hours after another; undefined after the year 9999, behind which dates have more digits. */

const HOUR_MS = 3_600_000;
const STEP_MS = HOUR_MS / 12;
const LAST_MS = Date.UTC(9999, 11, 31);

export const hoursAfter = (at: string, hours: number): string | undefined =>
  isoOf(Date.parse(`${at}Z`) + hours * HOUR_MS);

/** On a step of five minutes, rounded up, as all dates of use are. */
export const hoursAfterOnStep = (at: string, hours: number): string | undefined =>
  isoOf(Math.ceil((Date.parse(`${at}Z`) + hours * HOUR_MS) / STEP_MS - 1e-6) * STEP_MS);

const isoOf = (ms: number): string | undefined =>
  ms < LAST_MS ? new Date(ms).toISOString().slice(0, 19) : undefined;
