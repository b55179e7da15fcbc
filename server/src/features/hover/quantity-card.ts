/** A quantity in metric units, and the size of each of its units with the source. */
import { translated } from "../../../../grammar/src/translate.ts";
import type { Quantity } from "../../../../grammar/src/tree.ts";
import { formatAmount } from "../../core/measure/format-amount.ts";
import { DIMENSIONS, quantityText, readQuantity } from "../../core/measure/read-quantity.ts";
import { findUnit, toCanonical, type UnitDefinition } from "../../core/measure/units.ts";
import { paragraphs } from "../markdown.ts";

export function quantityCard(quantity: Quantity): string | undefined {
  const units = quantity.parts.flatMap((part) => (part.unit && findUnit(part.unit.text)) ?? []);
  const [first] = units;
  if (!first) return undefined;
  const text = quantityText(quantity);
  const read = readQuantity(quantity, [first.dimension]);
  if (!read.ok) return undefined;
  const metric = formatAmount(read.amount, "full");
  const what = translated(DIMENSIONS[first.dimension].noun);
  return paragraphs(
    metric === text ? `**${text}**, ${what}` : `**${text}** = ${metric}, ${what}`,
    [...new Set(units)]
      .map(sizeText)
      .filter((size) => size !== "")
      .join("\n\n"),
  );
}

/** `1 qt = 0.946353 L (source)`; nothing for units that everybody knows by heart. */
function sizeText(unit: UnitDefinition): string {
  if (unit.text === "F") return `C = (F − 32) × 5 / 9 (${translated(unit.source)}).`;
  const size = formatAmount({ dimension: unit.dimension, value: toCanonical(1, unit) }, "full");
  return size === `1 ${unit.text}` ? "" : `1 ${unit.text} = ${size} (${translated(unit.source)}).`;
}
