/** A shopping list as a table, as JSON, as CSV for spreadsheets (RFC 4180), and as a Markdown checklist. */
import { formatNumber } from "../core/measure/format-amount.ts";
import type { PaperUse } from "../core/totals/paper.ts";
import type { ShoppingItem } from "../features/shopping-list.ts";
import { containersText, litresText, moneyText } from "../features/spoken.ts";
import { displayWidth, padEnd, padStart, shownText } from "./display-text.ts";

export interface ShoppingReport {
  readonly items: readonly ShoppingItem[];
  /** Where all shops have the same. */
  readonly currency?: string;
  /** An estimate, for people: in the text and the checklist only. */
  readonly paper?: readonly PaperUse[];
}

/** The sum, or null when one of its parts is not known. */
const total = (items: readonly ShoppingItem[]): number | null =>
  items.every(({ cost }) => cost !== null) ? items.reduce((sum, { cost }) => sum + cost!, 0) : null;

export function shoppingText({ items, currency, paper = [] }: ShoppingReport): string {
  const rows = items.map((item) => [
    item.material.name,
    item.litres === null ? "not known" : litresText(item.litres),
    item.onHand > 0 ? `${litresText(item.onHand)} on hand` : "",
    buyText(item),
    item.cost === null || item.containers.length === 0 ? "" : moneyText(item.cost, currency),
  ]);
  const sum = total(items);
  const known = items.reduce((all, { cost }) => all + (cost ?? 0), 0);
  const last = [
    "together",
    "",
    "",
    sum === null ? "without what is not known" : "",
    moneyText(sum ?? known, currency),
  ];
  const all = [...rows, last];
  const widths = [0, 1, 2, 3, 4].map((i) => Math.max(...all.map((row) => displayWidth(shownText(row[i]!)))));
  const line = (row: readonly string[]): string =>
    row
      .map((cell, i) => (i === 1 || i === 4 ? padStart : padEnd)(shownText(cell), widths[i]!))
      .join("  ")
      .trimEnd();
  const sheets = paper.length > 0 ? `\n${PAPER_TITLE}: ${paper.map(paperText).join(", ")}\n` : "";
  return `${all.map(line).join("\n")}\n${sheets}`;
}

const PAPER_TITLE = "Abrasives, an estimate by common practice and not in the sum";

const paperText = ({ grit, sheets }: PaperUse): string =>
  `${sheets} sheet${sheets === 1 ? "" : "s"} of grit ${grit}`;

function buyText({ containers, cost, gaps }: ShoppingItem): string {
  if (containers.length > 0) return containersText(containers);
  return cost === null ? gaps.join(", ") : "nothing to buy";
}

export function shoppingJson({ items, currency }: ShoppingReport): string {
  const materials = items.map(({ material, litres, onHand, containers, cost, jobs }) => ({
    name: material.name,
    title: material.title ?? null,
    litres: litres === null ? null : six(litres),
    on_hand: six(onHand),
    containers: containers.map((each) => ({
      litres: six(each.litres),
      count: each.count,
      price: each.price,
    })),
    cost: cost === null ? null : cents(cost),
    jobs,
  }));
  const sum = total(items);
  return `${JSON.stringify({ materials, currency: currency ?? null, total_cost: sum === null ? null : cents(sum) }, null, 2)}\n`;
}

/** A row for every size of can; a material of which nothing is bought has one without. */
export function shoppingCsv({ items, currency }: ShoppingReport): string {
  const head = ["material", "title", "litres", "on_hand", "can_litres", "count", "price", "currency", "jobs"];
  const rows = items.flatMap(({ material, litres, onHand, containers, cost, jobs }) => {
    const start = [
      material.name,
      material.title ?? "",
      litres === null ? "" : String(six(litres)),
      String(six(onHand)),
    ];
    const end = [currency ?? "", jobs.join(" ")];
    if (containers.length === 0) return [[...start, "", cost === null ? "" : "0", "", ...end]];
    return containers.map((each) => [
      ...start,
      String(six(each.litres)),
      String(each.count),
      each.price.toFixed(2),
      ...end,
    ]);
  });
  return [head, ...rows].map((row) => `${row.map(csvCell).join(",")}\r\n`).join("");
}

const csvCell = (text: string): string => (/[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

export function shoppingMarkdown({ items, currency, paper = [] }: ShoppingReport): string {
  const lines = items
    .filter(({ cost }) => cost !== 0)
    .map((item) => {
      const { material, containers, cost, jobs } = item;
      const price = cost === null ? "" : `, ${moneyText(cost, currency)}`;
      const what = containers.length > 0 ? containersText(containers) : needText(item);
      const name = material.title ? `${material.title} (\`${material.name}\`)` : `\`${material.name}\``;
      return `- [ ] ${what} ${name}${price}, for ${jobs.join(", ")}`;
    });
  const sum = total(items);
  const end = sum === null ? "" : `\nTogether ${moneyText(sum, currency)}.\n`;
  const sheets =
    paper.length > 0
      ? `\n${PAPER_TITLE}:\n\n${paper.map((use) => `- [ ] ${paperText(use)}\n`).join("")}`
      : "";
  return `# Shopping list\n\n${lines.length > 0 ? `${lines.join("\n")}\n` : "Nothing to buy.\n"}${lines.length > 0 ? end : ""}${sheets}`;
}

const needText = ({ litres, onHand }: ShoppingItem): string =>
  litres === null ? "some" : `${formatNumber(Math.max(0, litres - onHand), 2)} L of`;

const six = (value: number): number => Math.round(value * 1e6) / 1e6;
const cents = (value: number): number => Math.round(value * 100) / 100;
