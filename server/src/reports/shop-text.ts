/** The plan of a shop as pages for the wall, one a week, and as JSON. */
import { t } from "../../../grammar/src/translate.ts";
import { dayText, momentText, shortDayText, timeText, weekdayText } from "../core/measure/figures.ts";
import { andList } from "../core/model/suggest.ts";
import { markdownCode as code } from "../escape/markdown.ts";
import { shownText } from "../escape/shown-text.ts";
import { keptApartNote } from "../views/schedule/dust-note.ts";
import { surfacesText } from "../views/schedule/job-plan.ts";
import type { PlannedShop, ShopSession, ShopWeek } from "../views/schedule/shop-weeks.ts";
import type { Colours } from "./colours.ts";
import { displayWidth, padEnd } from "./display-text.ts";
import { overAirText, proofText } from "./proof-text.ts";

/** The pages of a shop's weeks; what is said of each job stands below them. */
export function shopText(planned: PlannedShop, colours: Colours): string {
  const { shop, weeks, leftOut } = planned;
  const name = `${shop.name}${shop.title ? ` “${shownText(shop.title)}”` : ""}`;
  const jobs = planned.jobs.map(({ job }) => code(job.name));
  const lines = [
    colours.bold(
      weeks.length === 1
        ? t`${name}: the week of ${andList(jobs)}`
        : t`${name}: the weeks of ${andList(jobs)}`,
    ),
    ...(shop.crew > 1 ? [`  ${peopleText(shop.crew)}`] : []),
    ...planned.plans.flatMap(planText),
    ...leftOut.map(
      ({ name }) => `  ${t`Not in this plan: ${code(name)} is planned alone and may need the same people.`}`,
    ),
  ];
  return `${lines.join("\n")}\n\n${weeks.map((week) => `${weekText(week, shop.crew, colours)}\n`).join("\n")}`;
}

const peopleText = (crew: number): string =>
  crew === 2 ? t`A and B are the two people of the shop.` : t`A to ${letterOf(crew)} are its ${crew} people.`;

/** A to Z, then A2 and on. */
const letterOf = (person: number): string =>
  `${String.fromCharCode(65 + ((person - 1) % 26))}${person > 26 ? Math.ceil(person / 26) : ""}`;

function lastText(
  lastWorkAt: string,
  jobs: PlannedShop["plans"][number]["jobs"],
  schedule: PlannedShop["plans"][number]["schedule"],
  isOneOfSeveral: boolean,
): string {
  const last = momentText(lastWorkAt);
  const proof = proofText(schedule, jobs[0]?.shop);
  const which = andList(jobs.map(({ job }) => code(job.name)));
  return isOneOfSeveral ? t`Last work of ${which} ${last}; ${proof}.` : t`Last work ${last}; ${proof}.`;
}

function planText(
  { jobs, schedule, lastWorkAt }: PlannedShop["plans"][number],
  _: number,
  all: readonly unknown[],
) {
  return [
    ...(lastWorkAt === undefined ? [] : [`  ${lastText(lastWorkAt, jobs, schedule, all.length > 1)}`]),
    ...(schedule.inOrder
      ? [
          `  ${t`So many jobs are planned one after the other in the order of \`ready\`, each fixed before the next.`}`,
        ]
      : []),
    ...(schedule.overAir ? [overAirText(schedule.overAir)] : []),
    ...(schedule.dust ? keptApartNote(schedule.dust).map((note) => `  ${note}`) : []),
  ];
}

function weekText({ monday, sessions }: ShopWeek, crew: number, colours: Colours): string {
  const cells = sessions.map((session) => cellsOf(session, crew));
  const rows = cells.flat();
  const widths = [0, 1, 2].map((column) =>
    Math.max(0, ...rows.map((row) => displayWidth(row[column] ?? ""))),
  );
  const lines = sessions.flatMap((session, at) => {
    const day = session.startAt.slice(0, 10);
    const isNew = day !== sessions[at - 1]?.startAt.slice(0, 10);
    return [
      ...(isNew ? [`  ${colours.bold(shortDayText(session.startAt))}`] : []),
      ...cells[at]!.map(
        (row) =>
          `    ${row
            .map((cell, column) => padEnd(cell, widths[column] ?? 0))
            .join("  ")
            .trimEnd()}`,
      ),
    ];
  });
  return [colours.bold(t`Week of ${dayText(monday)}`), ...lines].join("\n");
}

/** One line for everything that is done in a session: its time, who does it, what, and on which pieces of which jobs. */
function cellsOf(session: ShopSession, crew: number): readonly (readonly string[])[] {
  const byWhat = new Map<string, string[]>();
  for (const { job, row, closesAt } of session.does) {
    const before = closesAt === undefined ? "" : t`, begin by ${nearText(closesAt, session.startAt)}`;
    const where = `${job}: ${surfacesText(row)}${before}`;
    const others = byWhat.get(row.what);
    if (others === undefined) byWhat.set(row.what, [where]);
    else others.push(where);
  }
  return [...byWhat].map(([what, where], at) => [
    at === 0 ? t`${timeText(session.startAt)} to ${nearText(session.endAt, session.startAt)}` : "",
    ...(crew > 1 ? [at === 0 ? letterOf(session.person) : ""] : []),
    shownText(what),
    shownText(where.join(" | ")),
  ]);
}

/** `10:15`, on another day with its weekday. */
const nearText = (iso: string, near: string): string =>
  iso.slice(0, 10) === near.slice(0, 10) ? timeText(iso) : `${weekdayText(iso)} ${timeText(iso)}`;

export const shopJson = ({ shop, jobs, plans, leftOut, weeks }: PlannedShop) => ({
  name: shop.name,
  jobs: jobs.map(({ job }) => job.name),
  left_out: leftOut.map(({ name }) => name),
  plans: plans.map((plan) => ({
    jobs: plan.jobs.map(({ job }) => job.name),
    last_work: plan.lastWorkAt ?? null,
    exact: plan.schedule.exact,
    gap: plan.schedule.gap,
    in_order: plan.schedule.inOrder === true,
  })),
  weeks: weeks.map(({ monday, sessions }) => ({
    monday,
    sessions: sessions.map(({ startAt, endAt, person, does }) => ({
      start: startAt,
      end: endAt,
      person,
      does: does.map(({ job, row, closesAt }) => ({
        job,
        what: row.what,
        surfaces: row.surfaces.map(({ surface, which }) => ({ surface, pieces: which })),
        begin_by: closesAt ?? null,
      })),
    })),
  })),
});
