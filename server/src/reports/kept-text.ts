/** What has changed since a plan was kept, as text and as JSON. */
import { momentText } from "../core/measure/figures.ts";
import { shownText } from "../escape/shown-text.ts";
import type { Changed, Moved, SinceKept } from "../views/schedule/kept-plan.ts";
import type { Colours } from "./colours.ts";

export function keptText({ isLetGo, moved, added, gone }: SinceKept, colours: Colours): string {
  const lines = [
    ...(isLetGo ? ["Near the kept plan a job would be late, so that this one was made anew."] : []),
    ...moved.map(
      (each) =>
        `${momentText(each.at)}, not ${momentText(each.from)}: ${workText(each)}, because ${each.why}`,
    ),
    ...added.map((each) => `${momentText(each.at)}, new: ${workText(each)}`),
    ...gone.map((each) => `not done any more: ${workText(each)}, was ${momentText(each.at)}`),
  ];
  if (lines.length === 0) lines.push("Nothing has moved.");
  return `${[colours.bold("Since the kept plan"), ...lines.map((line) => `  ${shownText(line)}`)].join("\n")}\n`;
}

const workText = ({ job, what, where }: Changed): string => `${what} on ${where} of ${job}`;

const workJson = ({ job, what, where, at }: Changed) => ({ job, what, where, start: at });

export const keptJson = ({ isLetGo, moved, added, gone }: SinceKept) => ({
  let_go: isLetGo,
  moved: moved.map((each: Moved) => ({ ...workJson(each), from: each.from, why: each.why })),
  new: added.map(workJson),
  gone: gone.map(workJson),
});
