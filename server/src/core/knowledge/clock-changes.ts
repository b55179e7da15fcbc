/**
 * When the clocks go forward in spring, by country. A plan counts by the clock on the wall, and a wait through that night is
 * an hour shorter than it looks. Only countries whose rule is known here are told of it; within the United States and
 * Canada some places do not change their clocks.
 */

/** 02:00 of a Sunday of March. `week` 2 is the second, -1 the last. */
interface Rule {
  readonly week: 2 | -1;
  readonly source: string;
  readonly countries: ReadonlySet<string>;
}

export const CLOCK_RULES: readonly Rule[] = [
  {
    week: -1,
    source:
      "Directive 2000/84/EC, article 2: the last Sunday of March; the United Kingdom, Norway and Switzerland keep to the same day (from memory, confidence high)",
    countries: new Set(
      "AT BE BG HR CY CZ DK EE FI FR DE GR HU IE IT LV LT LU MT NL PL PT RO SK SI ES SE GB NO CH LI".split(
        " ",
      ),
    ),
  },
  {
    week: 2,
    source:
      "15 U.S.C. 260a: the second Sunday of March at 02:00; most of Canada keeps to the same day (from memory, confidence high)",
    countries: new Set(["US", "CA"]),
  },
];

/** The local date-time at which the clocks go forward in a year, `2027-03-28T02:00`; undefined where no rule is known. */
export function clocksForward(country: string, year: number): string | undefined {
  const rule = CLOCK_RULES.find(({ countries }) => countries.has(country));
  if (!rule) return undefined;
  const lastOfMarch = new Date(Date.UTC(year, 2, 31));
  const firstOfMarch = new Date(Date.UTC(year, 2, 1));
  const day = rule.week === 2 ? 8 + ((7 - firstOfMarch.getUTCDay()) % 7) : 31 - lastOfMarch.getUTCDay();
  return `${year}-03-${String(day).padStart(2, "0")}T02:00`;
}
