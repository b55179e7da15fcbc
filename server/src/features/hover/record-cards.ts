/** The words of a record, and what a line of it counts for. */
import { t, translated } from "../../../../grammar/src/translate.ts";
import type { DoneStatement } from "../../../../grammar/src/tree.ts";
import { DONE_FACTS, STATEMENTS, TROUBLES, VERBS } from "../../../../grammar/src/vocabulary.ts";
import { troubleOf } from "../../core/knowledge/troubles.ts";
import { momentText } from "../../core/measure/figures.ts";
import { andList } from "../../core/model/suggest.ts";
import { actionText } from "../../views/action-text.ts";
import { paragraphs } from "../markdown.ts";
import type { HoverContext } from "./context.ts";

const exampleCard = (word: string, doc: string, example: string): string =>
  paragraphs(`**${word}**: ${doc}`, `\`\`\`finish\n${example}\n\`\`\``);

/** A word of what is known of work that was done; `coat` is one as well. */
export function factCard(word: string): string | undefined {
  const { doc, example } = DONE_FACTS[word === "pieces" ? "piece" : word] ?? STATEMENTS.job.done!;
  return exampleCard(word, doc, example);
}

export const verbCard = (word: string): string | undefined =>
  Object.hasOwn(VERBS, word) ? exampleCard(word, VERBS[word]!.doc, VERBS[word]!.example) : undefined;

/** What went wrong: how it looks, what it comes of, and what to do. */
export function troubleCard(word: string): string | undefined {
  if (!(TROUBLES as readonly string[]).includes(word)) return undefined;
  const known = troubleOf(word as (typeof TROUBLES)[number]);
  if (!known) return undefined;
  const { looks, causes, remedy, source } = known;
  return paragraphs(
    `**${word}**: ${translated(looks)}`,
    t`It comes of ${causes.map(translated).join(", ")}.`,
    `${translated(remedy)}.`,
    t`Source: ${translated(source)}.`,
  );
}

/** What the line counts for, and from when the plan goes on. */
export function doneResult(ctx: HoverContext, statement: DoneStatement): string | undefined {
  const { model } = ctx.declaration.lowered;
  if (model?.kind !== "job") return undefined;
  const { runs, record } = ctx.checker.job(model);
  if (!runs.some((run) => run.record)) return undefined;
  const counted = runs.flatMap((run) =>
    [...new Map(run.record?.done.flatMap((done) => [...done]) ?? [])].flatMap(([index, done]) =>
      done.record.syntax === statement && !done.leftOut && run.moments[index]!.action.op !== "note"
        ? [t`${actionText(run.moments[index]!.action)} on \`${run.label}\``]
        : [],
    ),
  );
  if (counted.length === 0) return t`It counts for nothing: the recipe has no such step left.`;
  const from = record ? t` The plan goes on from ${momentText(record.from)}.` : "";
  return t`It counts for ${andList(counted)}.${from}`;
}
