/** By what a library is looked through: wood, finish, look, wear, hours and, where prices are handed on, cost. */
import { moneyText } from "../../core/measure/figures.ts";
import { formatWork } from "../../core/measure/format-amount.ts";
import { capital } from "../../views/sheet/words.ts";
import type { JobFigures, Library, LibraryEntry, Traits } from "../../views/site/model.ts";
import type { IndexGroup, IndexRow, SiteIndex } from "./site-model.ts";

/** Only those under which something stands. */
export function siteIndexes({ recipes, pieces, jobs }: Library): readonly SiteIndex[] {
  const all: readonly LibraryEntry[] = [...recipes, ...pieces, ...jobs];
  const byWord = (
    path: string,
    title: string,
    wordsOf: (traits: Traits) => readonly string[],
  ): SiteIndex => ({
    path,
    title,
    groups: wordGroups(all, wordsOf),
  });
  const indexes = [
    byWord("by-wood.html", "By wood", ({ woods }) => woods),
    byWord("by-finish.html", "By finish", ({ finishes }) => finishes),
    byWord("by-look.html", "By look", ({ looks }) => looks),
    byWord("by-wear.html", "By wear", ({ wears }) => wears.map((wear) => `${wear} wear`)),
    byWord("by-user.html", "By user", ({ users }) => users.map((user) => `for ${user}`)),
    { path: "by-hours.html", title: "By hours", groups: hourGroups(jobs) },
    { path: "by-cost.html", title: "By cost", groups: costGroups(jobs) },
  ];
  return indexes.filter(({ groups }) => groups.length > 0);
}

function wordGroups(
  entries: readonly LibraryEntry[],
  wordsOf: (traits: Traits) => readonly string[],
): readonly IndexGroup[] {
  const groups = new Map<string, IndexRow[]>();
  for (const entry of entries)
    for (const word of wordsOf(entry.traits)) {
      const rows = groups.get(word);
      const row = { entry, more: entry.kind };
      if (rows) rows.push(row);
      else groups.set(word, [row]);
    }
  return [...groups]
    .map(([word, rows]) => ({ title: capital(word), rows }))
    .toSorted((a, b) => a.title.localeCompare(b.title, "en"));
}

/** Hands-on hours up to which a job belongs to a group. */
const HOURS = [2, 5, 10, 20, 40] as const;

function hourGroups(jobs: readonly LibraryEntry[]): readonly IndexGroup[] {
  const known = jobs.flatMap((entry) => {
    const hours = figuresOf(entry).hours;
    return hours === undefined ? [] : [{ hours, row: { entry, more: `${formatWork(hours)} hands-on` } }];
  });
  const sorted = known.toSorted((a, b) => a.hours - b.hours);
  return [...HOURS, Number.POSITIVE_INFINITY]
    .map((most, place) => {
      const least = HOURS[place - 1] ?? 0;
      return {
        title: most === Number.POSITIVE_INFINITY ? `More than ${least} hours` : `Up to ${most} hours`,
        rows: sorted.filter(({ hours }) => hours > least && hours <= most).map(({ row }) => row),
      };
    })
    .filter(({ rows }) => rows.length > 0);
}

/** The cheapest first, each currency by itself. */
function costGroups(jobs: readonly LibraryEntry[]): readonly IndexGroup[] {
  const groups = new Map<string, { readonly amount: number; readonly row: IndexRow }[]>();
  for (const entry of jobs) {
    const { cost } = figuresOf(entry);
    if (cost === undefined) continue;
    const known = { amount: cost.amount, row: { entry, more: moneyText(cost.amount, cost.currency) } };
    groups.set(cost.currency, [...(groups.get(cost.currency) ?? []), known]);
  }
  return [...groups].map(([title, rows]) => ({
    title,
    rows: rows.toSorted((a, b) => a.amount - b.amount).map(({ row }) => row),
  }));
}

const figuresOf = ({ traits }: LibraryEntry): JobFigures => traits.figures[0] ?? {};
