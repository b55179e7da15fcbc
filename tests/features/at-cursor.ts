/**
 * A text with the cursor in it, `$0`: what the editor features say there. Other files may be given by name; the text
 * itself is `test.finish`.
 */
import {
  type Analysis,
  type CompletionEntry,
  type DocumentSymbolInfo,
  INLAY_HINT_KINDS,
  type InlayHintKind,
} from "../../server/src/features/types.ts";
import { analyse } from "../harness/check-text.ts";

type Files = Readonly<Record<string, string>>;

interface AtCursor {
  readonly analysis: Analysis;
  readonly text: string;
  readonly offset: number;
}

function atCursor(marked: string, others: Files): AtCursor {
  const offset = marked.indexOf("$0");
  if (offset < 0) throw new Error("the text has no `$0`");
  const text = marked.slice(0, offset) + marked.slice(offset + 2);
  return { analysis: analyse({ ...others, "test.finish": text }), text, offset };
}

/** The hover at the cursor with the text that it is for: `[hall_clear] …`. */
export function hover(marked: string, others: Files = {}): string {
  const { analysis, text, offset } = atCursor(marked, others);
  const info = analysis.hover("test.finish", offset);
  return info ? `[${text.slice(info.span.start, info.span.end)}] ${info.markdown}` : "nothing";
}

export function completionEntries(marked: string, others: Files = {}): readonly CompletionEntry[] {
  const { analysis, offset } = atCursor(marked, others);
  return [...analysis.completions("test.finish", offset)].sort((a, b) => (a.sort < b.sort ? -1 : 1));
}

/** The labels offered at the cursor, in their order. */
export const labels = (marked: string, others: Files = {}): readonly string[] =>
  completionEntries(marked, others).map(({ label }) => label);

/** The line of the cursor after the entry of this label has been taken, snippet marks and all. */
export function accepted(marked: string, label: string, others: Files = {}): string {
  const { text, offset } = atCursor(marked, others);
  const entry = completionEntries(marked, others).find((each) => each.label === label);
  if (!entry) return `no \`${label}\` here`;
  const after = text.slice(0, entry.replace.start) + entry.insert + text.slice(entry.replace.end);
  const start = text.lastIndexOf("\n", offset - 1) + 1;
  return after.slice(start).split("\n")[0]!.trimStart();
}

/** The outline, a line a symbol: `kind name | detail | text of the name span`. */
export function outline(text: string): string {
  const draw = (symbols: readonly DocumentSymbolInfo[], indent: string): readonly string[] =>
    symbols.flatMap(({ kind, name, detail, nameSpan, children }) => [
      `${indent}${kind} ${name} | ${detail} | ${text.slice(nameSpan.start, nameSpan.end)}`,
      ...draw(children, `${indent}  `),
    ]);
  return draw(analyse({ "test.finish": text }).symbols("test.finish"), "").join("\n");
}

/** The lines that have inlay hints, with these behind them: `wait 72 h  | waits: cured after 3 days`. */
export function hintedLines(
  text: string,
  { kinds = INLAY_HINT_KINDS, others = {} }: { kinds?: readonly InlayHintKind[]; others?: Files } = {},
): string {
  const hints = analyse({ ...others, "test.finish": text }).inlayHints(
    "test.finish",
    { start: 0, end: text.length },
    kinds,
  );
  return hints
    .map(({ offset, parts }) => {
      const line = text.slice(text.lastIndexOf("\n", offset - 1) + 1, offset).trim();
      return `${line} | ${parts.map((part) => part.text).join(" · ")}`;
    })
    .join("\n");
}
