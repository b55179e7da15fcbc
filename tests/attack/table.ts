/** The table at the end of a run, and its closing line. */
import { FLAW_KINDS, type FlawKind } from "./flaws.ts";
import { type Growth, isTooFast, MOST_EXPONENT } from "./growth.ts";
import type { PartOutcome } from "./rounds.ts";

const NAMES: Readonly<Record<FlawKind, string>> = {
  crash: "crashes",
  hang: "hangs",
  stale: "stale",
  lost: "lost",
  leak: "leaks",
};

export function closingTable(
  outcomes: readonly PartOutcome[],
  growth: readonly Growth[],
): { readonly text: string; readonly isClean: boolean } {
  const failures = outcomes.flatMap((outcome) => outcome.failures);
  const count = (kind: FlawKind): number => outcomes.reduce((sum, { counts }) => sum + counts[kind], 0);
  const inputs = outcomes.reduce((sum, outcome) => sum + outcome.inputs, 0);
  const tooFast = growth.filter(isTooFast);
  const unfinished = growth.filter(({ ended }) => ended !== undefined);
  const unmeasured = growth.filter(({ isUnmeasured }) => isUnmeasured);
  const isClean = FLAW_KINDS.every((kind) => count(kind) === 0) && tooFast.length + unfinished.length === 0;
  const exponents = growth.flatMap(({ exponent, seconds }) =>
    exponent === undefined || seconds <= 0.2 ? [] : [exponent],
  );
  const worst = exponents.length > 0 ? Math.max(...exponents).toFixed(2) : "none";
  const passed = unmeasured.length > 0 ? "passed as far as there was time" : "passed";
  const closing = [
    `${inputs} inputs`,
    ...FLAW_KINDS.map((kind) => `${count(kind)} ${NAMES[kind]}`),
    ...(growth.length > 0
      ? [
          `${growth.length} shapes`,
          `largest exponent ${worst}`,
          `${tooFast.length} over ${MOST_EXPONENT}`,
          `${unfinished.length} not up to the limit`,
          ...(unmeasured.length > 0 ? [`${unmeasured.length} without time to measure them`] : []),
        ]
      : []),
  ].join(", ");
  return {
    isClean,
    text: [
      "",
      ...rows([
        ["part", "inputs", ...FLAW_KINDS.map((kind) => NAMES[kind]), "most s of the processor"],
        ...outcomes.map((outcome) => [
          outcome.part,
          String(outcome.inputs),
          ...FLAW_KINDS.map((kind) => String(outcome.counts[kind])),
          outcome.costliest?.seconds.toFixed(1) ?? "–",
        ]),
      ]),
      "",
      ...(growth.length > 0 ? [...growthRows(growth), ""] : []),
      ...failures.flatMap(({ part, seed, flaw, file }) => [
        `${part}, seed ${seed}: ${flaw.kind}: ${flaw.detail}`,
        `  ${file}`,
      ]),
      `attack: ${closing}: ${isClean ? passed : "FAILED"}`,
    ].join("\n"),
  };
}

const growthRows = (growth: readonly Growth[]): readonly string[] =>
  rows([
    ["shape", "limit", "reached", "costliest growth", "s there", "exponent", ""],
    ...growth.map((row) => [
      row.shape,
      String(row.limit),
      String(row.reached),
      row.part,
      row.seconds.toFixed(2),
      row.exponent?.toFixed(2) ?? "–",
      isTooFast(row) ? "TOO FAST" : row.ended ? row.ended.toUpperCase() : row.isUnmeasured ? "no time" : "",
    ]),
  ]);

function rows(table: readonly (readonly string[])[]): readonly string[] {
  const widths = table[0]!.map((_, column) => Math.max(...table.map((row) => row[column]!.length)));
  return table.map((row) =>
    row
      .map((cell, column) => (column === 0 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!)))
      .join("  ")
      .trimEnd(),
  );
}
