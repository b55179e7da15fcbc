/** The ticks and notes of a sheet as text, to be pasted into the record of its job; `server/docs/ticks.md` describes it. */
import type { Kept } from "./kept.ts";
import type { Row } from "./page-rows.ts";

/** `job`: the fingerprint of the job. */
export const copiedText = (job: string, rows: readonly Row[], kept: Kept): string =>
  [
    `finishwright-ticks 2 ${job}`,
    ...rows.flatMap((row) => rowText(row, kept)),
    ...(kept.went === "" ? [] : [`- | ${oneLine(kept.went)}`]),
    "",
  ].join("\n");

function rowText({ step, name, element }: Row, kept: Kept): readonly string[] {
  const ticks = Object.entries(kept.ticks[step] ?? {});
  const note = oneLine(kept.notes[step] ?? "");
  if (ticks.length === 0 && note === "") return [];
  const times = ticks.map(([, time]) => time).toSorted();
  const pieces = ticks.map(([piece]) => piece).join(",") || "-";
  const what = `${element.dataset.keys} ${times.at(-1) ?? "-"} ${pieces}`;
  return [[what, oneLine(name), ...(note === "" ? [] : [note])].join(" | ")];
}

const oneLine = (text: string): string => text.replace(/[\s|]+/gu, " ").trim();
