/** What puts a trouble right, as a recipe to be read, changed and applied: the lines that the table of troubles has. */
import type { Trouble } from "../knowledge/troubles.ts";

export interface Repaired {
  readonly trouble: Trouble;
  /** The material that goes on again, by its name, and what with. */
  readonly material: string;
  readonly method: string;
  /** The surface, as a name may have it: `top`. */
  readonly surface: string;
  /** What to see to, without the mask for what is sanded. */
  readonly duties: readonly string[];
}

/** A declaration, line by line, in the one layout. */
export function repairRecipe({ trouble, material, method, surface, duties }: Repaired): readonly string[] {
  const { word, remedy, lines, source } = trouble;
  const isAbraded = lines.some((line) => /^step\s+(?:sand|scuff)\b/u.test(line));
  const safety = [...new Set([...(isAbraded ? ["dust_mask"] : []), ...duties])];
  const name = `repair_${word}_${surface}`.replaceAll(/[^\p{L}\p{Nd}_]/gu, "_");
  return [
    `recipe ${name} {`,
    `  # ${word}: ${source}. Labels and data sheets come first.`,
    ...(safety.length > 0 ? [`  safety ${safety.join(", ")}`] : []),
    `  note   "${remedy}. Try it on a hidden spot first."`,
    ...lines.map((line) => inColumn(line === "COAT" ? `layer ${material}, by ${method}` : line)),
    "}",
  ];
}

/** Behind `safety`, the longest first word of the block. */
function inColumn(line: string): string {
  const [first = "", ...rest] = line.split(" ").filter((word) => word !== "");
  return `  ${first.padEnd("safety".length)} ${rest.join(" ")}`;
}
