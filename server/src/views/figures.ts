/**
 * Figures as the reports and the hovers say them: money with its currency, dates with their weekday, hours, films.
 */
import { formatDuration, formatNumber } from "../core/measure/format-amount.ts";
import type { JobResult } from "../core/totals/job-totals.ts";
import type { ContainerCount } from "../core/totals/types.ts";

const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;

/** `112.00 EUR`; without a currency the bare number. */
export const moneyText = (amount: number, currency: string | undefined): string =>
  `${(Math.round(amount * 100) / 100 + 0).toFixed(2)}${currency ? ` ${currencyText(currency)}` : ""}`;

/** A currency may be written in quotes, with anything in it; only what can be part of one is shown behind a figure. */
const currencyText = (currency: string): string => currency.replace(/[^\p{L}\p{N}\p{Sc} .]/gu, "\ufffd");

/** `Mon 2027-03-29 14:20` of a local ISO date-time. */
export function momentText(iso: string): string {
  const [date = "", time = ""] = iso.split("T");
  const day = new Date(`${date}T12:00:00Z`).getUTCDay();
  const weekday = Number.isNaN(day) ? "" : `${WEEKDAYS[(day + 6) % 7]} `;
  return `${weekday}${date}${time ? ` ${time.slice(0, 5)}` : ""}`;
}

/** `Mon 08 Mar 14:20` of a local ISO date-time, where room is short and the year goes without saying. */
export function shortMomentText(iso: string): string {
  const [, weekday = "", , month = "", day = "", time = ""] =
    /^(\w+) (\d+)-(\d+)-(\d+) (.*)$/u.exec(momentText(iso)) ?? [];
  return `${weekday} ${day} ${MONTHS[Number(month) - 1] ?? ""} ${time}`;
}

/** `Mon 8 Mar 09:20`, where every character counts. */
export const briefMomentText = (iso: string): string => shortMomentText(iso).replace(/^(\w+) 0/u, "$1 ");

/** `8 Mar` */
export const briefDayText = (iso: string): string => briefMomentText(iso).split(" ").slice(1, 3).join(" ");

/** `Mon 12 Apr 2027` of a local ISO date-time. */
export const monthDayText = (iso: string): string =>
  `${shortMomentText(iso).split(" ").slice(0, 3).join(" ")} ${iso.slice(0, 4)}`;

export const areaText = (m2: number): string => `${formatNumber(m2, 2)} m2`;
export const litresText = (litres: number): string => `${formatNumber(litres, 2)} L`;
export const filmText = (um: number): string => `${formatNumber(um, 0)} um`;
export const hoursText = (hours: number): string => formatDuration(hours);

/**
 * `8.80 EUR worth is used`, of materials bought in whole cans. Where some of it was there already, that may be more than
 * what is bought, so it is said.
 */
export function usedText(used: number, { needs, shop }: JobResult): string {
  const stock = needs.some(({ onHand }) => onHand > 0) ? ", stock included" : "";
  return `${moneyText(used, shop?.currency)} worth is used${stock}`;
}

/** `2 × 0.946 L`, the larger first as they come. */
export const containersText = (containers: readonly ContainerCount[]): string =>
  containers.map(({ count, litres }) => `${count} × ${formatNumber(litres, 3)} L`).join(" + ");
