/** Which coats a day puts on which surfaces, in a line: those of one material on one surface together, then equal surfaces. */
import { t } from "../../../grammar/src/translate.ts";
import { andList } from "../core/model/suggest.ts";
import type { BenchRow } from "../views/sheet/model.ts";

/** `Grip primer (B); Slate trim paint, coats 1 and 2 of 2 (B, C)`. Without letters, see `surface-letters.ts`, the coats alone. */
export function coatsOfDay(rows: readonly BenchRow[], letters: ReadonlyMap<string, string>): string {
  const perSurface = new Map<string, { readonly on: string; readonly first: BenchRow; numbers: number[] }>();
  for (const row of rows) {
    const { coat, coats } = row;
    if (coat === undefined || coats === undefined) continue;
    for (const { surface } of row.steps) {
      const key = [coats.material, coats.count, coats.each, surface].join("\n");
      const before = perSurface.get(key) ?? { on: letters.get(surface) ?? "", first: row, numbers: [] };
      perSurface.set(key, { ...before, numbers: [...new Set([...before.numbers, coat])] });
    }
  }
  const surfaces = new Map<string, string[]>();
  for (const { on, first, numbers } of perSurface.values()) {
    const text = coatsText(first, numbers);
    surfaces.set(text, [...(surfaces.get(text) ?? []), ...(on === "" ? [] : [on])]);
  }
  return [...surfaces]
    .map(([text, on]) => (on.length === 0 ? text : `${text} (${on.join(", ")})`))
    .join("; ");
}

function coatsText({ coats }: BenchRow, numbers: readonly number[]): string {
  const { material = "", count = 1, each = "coat" } = coats ?? {};
  if (count === 1) return material;
  const which = andList(numbers.map(String));
  if (each === "session")
    return numbers.length > 1
      ? t`${material}, sessions ${which} of ${count}`
      : t`${material}, session ${which} of ${count}`;
  return numbers.length > 1
    ? t`${material}, coats ${which} of ${count}`
    : t`${material}, coat ${which} of ${count}`;
}
