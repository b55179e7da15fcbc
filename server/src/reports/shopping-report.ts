/**
 * A shopping list as a table, as JSON (its shape is told in server/docs/json.md), as CSV for spreadsheets (RFC 4180), and
 * as a Markdown checklist. Money of two currencies is never added up.
 */

import { t } from "../../../grammar/src/translate.ts";
import { cansText, cents, moneyText, printed } from "../core/measure/figures.ts";
import { figuresIn, type ShownFigures, type UnitSystem } from "../core/measure/shown-figures.ts";
import type { PaperUse } from "../core/totals/paper.ts";
import { csvRow } from "../escape/csv.ts";
import { jsonText } from "../escape/json.ts";
import { markdownText } from "../escape/markdown.ts";
import { shownText } from "../escape/shown-text.ts";
import type { AlsoNeeded } from "../views/also-needed.ts";
import type { ShoppingBasket, ShoppingItem } from "../views/shopping-list.ts";
import { displayWidth, padEnd, padStart, wrap } from "./display-text.ts";

export interface ShoppingReport {
  /** Never empty; one for every currency. */
  readonly baskets: readonly ShoppingBasket[];
  /** An estimate, for people: in the text and the checklist only. */
  readonly paper?: readonly PaperUse[];
  /** What is needed beside cans and paper, for people: in the text and the checklist only. */
  readonly also?: readonly AlsoNeeded[];
  /** How a file is called: for people, where two materials of one name are to be bought. */
  readonly label?: (file: string) => string;
  /** What amounts are told in, in the text and the checklist; metric where nothing is said. */
  readonly units?: UnitSystem;
}

/** Where all is bought in one currency, and all of it is known. */
const singleTotal = (baskets: readonly ShoppingBasket[]): number | null =>
  baskets.length === 1 ? baskets[0]!.cost : null;

// ---------------------------------------------------------------------------------------------------------------
// Text

export function shoppingText({
  baskets,
  paper = [],
  also = [],
  label,
  units = "metric",
}: ShoppingReport): string {
  const say = figuresIn(units);
  const origin = originOf(baskets, label);
  const tables = baskets.map((basket) => [
    ...basket.items.map((item) => itemRow(item, basket, origin, say)),
    sumRow(basket),
  ]);
  const all = tables.flat();
  const widths = [0, 1, 2, 3, 4].map((i) => Math.max(...all.map((row) => displayWidth(shownText(row[i]!)))));
  const line = (row: readonly string[]): string =>
    row
      .map((cell, i) => (i === 1 || i === 4 ? padStart : padEnd)(shownText(cell), widths[i]!))
      .join("  ")
      .trimEnd();
  const sheets = paper.length > 0 ? `\n${paperTitle()}: ${paper.map(paperText).join(", ")}\n` : "";
  return `${tables.map((rows) => `${rows.map(line).join("\n")}\n`).join("\n")}${sheets}${alsoText(also)}`;
}

const alsoTitle = (): string => t`Also needed, by the lines of the recipes`;

/** A terminal has 80 columns. */
const alsoLines = ({ name, items }: AlsoNeeded): string =>
  wrap(`${name}: ${items.join(", ")}`, 76)
    .map((line, i) => `${i === 0 ? "  " : "    "}${line}\n`)
    .join("");

const alsoText = (also: readonly AlsoNeeded[]): string =>
  also.length === 0 ? "" : `\n${alsoTitle()}:\n${also.map(alsoLines).join("")}`;

/** The file of a material as ` (stock.finish)`, where another file has one of the same name; else nothing. */
type Origin = (material: ShoppingItem["material"]) => string;

function originOf(baskets: readonly ShoppingBasket[], label: ShoppingReport["label"]): Origin {
  const files = new Map<string, Set<string>>();
  for (const { material } of baskets.flatMap(({ items }) => items)) {
    files.set(material.name, (files.get(material.name) ?? new Set()).add(material.file));
  }
  return ({ name, file, builtIn }) => {
    if (!label || (files.get(name)?.size ?? 0) < 2) return "";
    return builtIn ? t` (built in)` : ` (${label(file)})`;
  };
}

const itemRow = (
  item: ShoppingItem,
  { currency }: ShoppingBasket,
  origin: Origin,
  say: ShownFigures,
): readonly string[] => [
  item.material.name + origin(item.material),
  item.litres === null ? t`not known` : say.litres(item.litres),
  item.onHand > 0 ? t`${say.litres(item.onHand)} on hand` : "",
  buyText(item),
  item.cost === null || item.containers.length === 0 ? "" : moneyText(item.cost, currency),
];

const sumRow = ({ currency, cost, knownCost }: ShoppingBasket): readonly string[] => [
  t`together`,
  "",
  "",
  cost === null ? withoutUnknown() : "",
  moneyText(knownCost, currency),
];

const withoutUnknown = (): string => t`excluding items without a price`;
const paperTitle = (): string => t`Abrasives, an estimate by common practice, not included in the total`;

const paperText = ({ grit, sheets }: PaperUse): string =>
  sheets === 1 ? t`${sheets} sheet of grit ${grit}` : t`${sheets} sheets of grit ${grit}`;

function buyText({ containers, cost, gaps }: ShoppingItem): string {
  if (containers.length > 0) return cansText(containers);
  return cost === null ? gaps.join(", ") : t`nothing to buy`;
}

// ---------------------------------------------------------------------------------------------------------------
// JSON

export function shoppingJson({ baskets }: ShoppingReport): string {
  const [first] = baskets;
  const materials = baskets.flatMap(({ items, currency }) =>
    items.map(({ material, litres, onHand, containers, cost, jobs }) => ({
      name: material.name,
      title: material.title ?? null,
      litres: litres === null ? null : printed(litres),
      on_hand: printed(onHand),
      containers: containers.map((each) => ({
        litres: printed(each.litres),
        count: each.count,
        price: each.price,
      })),
      cost: cost === null ? null : cents(cost),
      currency: currency ?? null,
      jobs,
    })),
  );
  const total = singleTotal(baskets);
  const report = {
    materials,
    currency: (baskets.length === 1 && first?.currency) || null,
    total_cost: total === null ? null : cents(total),
    totals: baskets.map(({ currency, cost }) => ({
      currency: currency ?? null,
      total_cost: cost === null ? null : cents(cost),
    })),
  };
  return jsonText(report);
}

// ---------------------------------------------------------------------------------------------------------------
// CSV

const COLUMNS = [
  "material",
  "title",
  "litres",
  "on_hand",
  "can_litres",
  "count",
  "price",
  "cost",
  "currency",
  "jobs",
] as const;

/**
 * A row for every size of can; a material of which nothing is bought, or of which it is not known, has one without. The
 * column `cost` may be added up; `litres` and `on_hand` are those of the material, on each of its rows.
 */
export function shoppingCsv({ baskets }: ShoppingReport): string {
  const rows = baskets.flatMap(({ items, currency }) => items.flatMap((item) => csvRows(item, currency)));
  return [COLUMNS, ...rows].map(csvRow).join("");
}

function csvRows(
  { material, litres, onHand, containers, cost, jobs }: ShoppingItem,
  currency: string | undefined,
): readonly (readonly string[])[] {
  const start = [
    material.name,
    material.title ?? "",
    litres === null ? "" : String(printed(litres)),
    String(printed(onHand)),
  ];
  const end = [currency ?? "", jobs.join(" ")];
  if (containers.length === 0) {
    return [[...start, "", cost === null ? "" : "0", "", cost === null ? "" : "0.00", ...end]];
  }
  return containers.map((each) => [
    ...start,
    String(printed(each.litres)),
    String(each.count),
    moneyText(each.price),
    moneyText(each.count * each.price),
    ...end,
  ]);
}

// ---------------------------------------------------------------------------------------------------------------
// Markdown

export function shoppingMarkdown({
  baskets,
  paper = [],
  also = [],
  label,
  units = "metric",
}: ShoppingReport): string {
  const say = figuresIn(units);
  const origin = originOf(baskets, label);
  const lists = baskets.flatMap((basket) => {
    const lines = basket.items.flatMap((item) =>
      item.cost === 0 ? [] : [itemLine(item, basket, origin, say)],
    );
    return lines.length > 0 ? [`${lines.join("\n")}\n\n${sumLine(basket)}\n`] : [];
  });
  const sheets =
    paper.length > 0
      ? `\n${paperTitle()}:\n\n${paper.map((use) => `- [ ] ${paperText(use)}\n`).join("")}`
      : "";
  const others =
    also.length > 0
      ? `\n${alsoTitle()}:\n\n${also.flatMap(({ items }) => items.map((item) => `- [ ] ${item}\n`)).join("")}`
      : "";
  return `# ${t`Shopping list`}\n\n${lists.length > 0 ? lists.join("\n") : `${t`Nothing to buy.`}\n`}${sheets}${others}`;
}

function itemLine(
  item: ShoppingItem,
  { currency }: ShoppingBasket,
  origin: Origin,
  say: ShownFigures,
): string {
  const { material, containers, cost, gaps, jobs } = item;
  const price = cost === null ? ` (${gaps.join(", ")})` : `, ${moneyText(cost, currency)}`;
  const what = containers.length > 0 ? cansText(containers) : needText(item, say);
  const name = material.title
    ? `${markdownText(material.title)} (\`${material.name}\`)`
    : `\`${material.name}\``;
  const wanted = `${what} ${name}${markdownText(origin(material))}${price}`;
  return `- [ ] ${t`${wanted}, for ${jobs.map((job) => `\`${job}\``).join(", ")}`}`;
}

const sumLine = ({ currency, cost, knownCost }: ShoppingBasket): string =>
  t`Together ${moneyText(knownCost, currency)}${cost === null ? `, ${withoutUnknown()}` : ""}.`;

const needText = ({ litres, onHand }: ShoppingItem, say: ShownFigures): string =>
  litres === null ? t`some` : t`${say.litres(Math.max(0, litres - onHand))} of`;
