/** What a search found, for a terminal: one match a line, where it stands first, or two where one is too narrow. */
import { t } from "../../../grammar/src/translate.ts";
import { dayText, moneyText } from "../core/measure/figures.ts";
import { formatDuration, formatWork } from "../core/measure/format-amount.ts";
import { shownText } from "../escape/shown-text.ts";
import type { Found, FoundFigures, Matched } from "../views/find/model.ts";
import { displayWidth } from "./display-text.ts";

const COLUMNS = 80;
const INDENT = "  ";

/** `place` is `file:line` of a match. */
export const foundText = (found: readonly Found[], place: (found: Found) => string): string =>
  found.map((each) => `${lineOf(each, shownText(place(each)))}\n`).join("");

/** What does not fit behind its place stands below it; there a name is cut short, and a place never, as one follows it. */
function lineOf(found: Found, place: string): string {
  const figures = found.figures ? `${INDENT}${figuresText(found.figures)}` : "";
  const matched = matchedText(found);
  const words = shownText(`${found.kind} ${found.title}${matched === "" ? "" : `: ${matched}`}`);
  const line = `${place}${INDENT}${words}${figures}`;
  if (displayWidth(line) <= COLUMNS) return line;
  return `${place}\n${INDENT}${shortened(words, COLUMNS - INDENT.length - displayWidth(figures))}${figures}`;
}

const matchedText = (found: Found): string =>
  [...found.matched.flatMap(wordsOf), ...inJobs(found)].join(", ");

/** All that is told of a match besides its name and its place. */
export const foundDetail = (found: Found): string =>
  shownText(
    [matchedText(found), found.figures ? figuresText(found.figures) : ""]
      .filter((text) => text !== "")
      .join(" · "),
  );

/** The figures of a job stand behind it, whether they were asked for or not. */
const IN_FIGURES: ReadonlySet<Matched["by"]> = new Set(["hours", "cost"]);

function wordsOf({ by, what }: Matched): readonly string[] {
  if (IN_FIGURES.has(by)) return [];
  if (by === "days" && typeof what === "number") return [formatDuration(what * 24)];
  return [
    by === "wear" ? t`wear ${what}` : by === "for" ? `for ${what}` : by === "text" ? `"${what}"` : `${what}`,
  ];
}

function inJobs({ kind, jobs }: Found): readonly string[] {
  if (kind === "job" || jobs.length === 0) return [];
  return [jobs.length === 1 ? t`in ${jobs[0]!}` : t`in ${jobs.length} jobs`];
}

/** `4 h 30 min, 120.00 EUR, Mon 8 Mar 2027` */
function figuresText({ hours, cost, currency, lastWork }: FoundFigures): string {
  return shownText(
    [
      hours === null ? t`hours not known` : formatWork(hours),
      cost === null ? t`cost not known` : moneyText(cost, currency ?? undefined),
      ...(lastWork === null ? [] : [dayText(lastWork)]),
    ].join(", "),
  );
}

function shortened(text: string, columns: number): string {
  if (displayWidth(text) <= columns) return text;
  const kept: string[] = [];
  let width = 1;
  for (const character of text) {
    width += displayWidth(character);
    if (width > columns) break;
    kept.push(character);
  }
  return `${kept.join("").trimEnd()}…`;
}
