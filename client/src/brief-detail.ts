/** What a narrow tree has room for behind the name of a job; the rest is told by its tooltip. */

/** `15 Mar · 525.27 EUR` of `last work 15 Mar, light use 16 Mar, full use 12 Apr 2027 · 525.27 EUR`. */
export const briefDetail = (detail: string): string => {
  const [dates = "", ...rest] = detail.split(" · ");
  const [last = ""] = dates.split(", ");
  return dates.startsWith(LAST_WORK) ? [last.slice(LAST_WORK.length), ...rest].join(" · ") : detail;
};

const LAST_WORK = "last work ";
