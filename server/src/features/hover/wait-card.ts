/** How long a `wait` line is in each job, beside what the label asks for in the shop's air, with the reason. */
import { t } from "../../../../grammar/src/translate.ts";
import type { WaitStatement } from "../../../../grammar/src/tree.ts";
import { waitRunText } from "../../views/sums/wait-run.ts";
import { bullets, firstFew, paragraphs } from "../markdown.ts";
import type { HoverContext } from "./context.ts";
import { runsOfLine } from "./runs-of-line.ts";

export function waitCard(ctx: HoverContext, wait: WaitStatement): string {
  const runs = runsOfLine(ctx, wait);
  const texts = [...new Set(firstFew(runs, waitRunText))];
  return paragraphs(waitTitle(wait), bullets(texts));
}

function waitTitle(wait: WaitStatement): string {
  if (wait.until) return `**wait until ${wait.until.text}**`;
  return wait.overnight
    ? t`**wait overnight**, to the next morning at which the shop is open, and 12 h at least`
    : "**wait**";
}
