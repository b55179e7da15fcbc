/**
 * One hostile text through everything: read without a loss, laid out without one, and asked about in every way; then from
 * disk through commands of the command line in all their forms.
 */

import fc from "fast-check";
import { applyChanges, formatFile } from "../../grammar/src/format.ts";
import { isComment, lex } from "../../grammar/src/lexer.ts";
import { parseFile } from "../../grammar/src/parse.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { resolveUse } from "../../server/src/lsp/uri.ts";
import { runCli } from "../cli/run-cli.ts";
import { textOfTokens } from "../grammar/show.ts";
import { analyse } from "../harness/check-text.ts";
import { meaningOf } from "../notation/said.ts";
import { askEverything } from "./ask-everything.ts";
import { type Attack, crash, type Flaw, faultKeeper } from "./flaws.ts";
import { hostileText } from "./hostile-texts.ts";

export interface HostileText {
  /** The one that it is about. */
  readonly text: string;
  /** Another file, which the first may use. */
  readonly other: string;
  readonly offsets: readonly number[];
  /** Which commands of the command line. */
  readonly commands: readonly number[];
}

const COMMANDS: readonly (readonly string[])[] = [
  ...["text", "lines", "json", "sarif"].map((form) => ["check", "--format", form, "a.finish"]),
  ["check", "."],
  ...["text", "json"].map((form) => ["totals", "--format", form, "a.finish"]),
  ...["text", "json", "ics"].map((form) => ["schedule", "--format", form, "a.finish"]),
  ...["text", "json", "csv", "markdown"].map((form) => ["shopping", "--format", form, "a.finish"]),
  ...["text", "markdown", "html"].map((form) => ["sheet", "--format", form, "a.finish"]),
  ...["text", "json"].map((form) => ["compare", "--format", form, "a.finish", "b.finish"]),
  ...["text", "json", "markdown"].map((form) => ["diff", "--format", form, "a.finish", "b.finish"]),
  ...["text", "json"].map((form) => ["find", "--text", "a", "--format", form, "a.finish"]),
  ["care", "a.finish"],
  ["repair", "a.finish"],
  ["recipe", "a.finish"],
  ["format", "--check", "a.finish"],
];

const input: fc.Arbitrary<HostileText> = fc.record({
  text: hostileText,
  other: fc.oneof({ arbitrary: fc.constant(""), weight: 4 }, { arbitrary: hostileText, weight: 1 }),
  offsets: fc.array(fc.nat(1_000_000), { minLength: 1, maxLength: 4 }),
  commands: fc.uniqueArray(fc.nat(COMMANDS.length - 1), { minLength: 2, maxLength: 3 }),
});

export const texts: Attack<HostileText> = {
  name: "texts",
  input,
  runs: 100,
  cpuSeconds: 12,
  async check(hostile) {
    return [...readingFlaws(hostile.text), ...askingFlaws(hostile), ...(await commandFlaws(hostile))];
  },
};

function readingFlaws(text: string): readonly Flaw[] {
  try {
    const tree = parseFile(text);
    if (textOfTokens(tree) !== text) return [{ kind: "lost", detail: "the tokens are not the text" }];
    const once = applyChanges(text, formatFile(tree).changes);
    const again = formatFile(parseFile(once)).changes;
    return [
      ...(again.length > 0
        ? [{ kind: "lost", detail: "a text that was laid out is laid out again" } as const]
        : []),
      ...(said(once) === said(text) || meaningOf(once) === meaningOf(text)
        ? []
        : [{ kind: "lost", detail: "formatting changed what is said" } as const]),
      ...(keepsRemarks(text, once)
        ? []
        : [{ kind: "lost", detail: "formatting changed a comment or a title" } as const]),
    ];
  } catch (error) {
    return [crash("reading", error)];
  }
}

/** All but blanks, with units as they are written plainly. */
const said = (text: string): string =>
  text
    .replace(/[µμ]m/gu, "um")
    .replaceAll("²", "2")
    .replaceAll("³", "3")
    .replaceAll("°", "")
    .replace(/[\s\ufeff]+/gu, "");

/**
 * Whether comments and titles are all there as they were. The words of a step of one's own may have come to stand in
 * quotes (`step veneer`), with those that stood in quotes beside them (`inspect use "filler haze"`): a string may be new or
 * longer where its words were in the text before.
 */
export function keepsRemarks(text: string, once: string): boolean {
  const [before, after] = [remarks(text), remarks(once)];
  const letters = lettersOf(text);
  let next = 0;
  for (const remark of after) {
    if (remark === before[next]) next += 1;
    else if (!remark.startsWith('"') || !letters.includes(lettersOf(remark))) return false;
    else if (before[next]?.startsWith('"') && lettersOf(remark).includes(lettersOf(before[next]!))) next += 1;
  }
  return next === before.length;
}

/** All but quotes and what marks them in a string, commas, blanks, and the signs that words of names have for blanks. */
const lettersOf = (text: string): string => text.replace(/[\s"_\\,]+/gu, "");

const remarks = (text: string): readonly string[] =>
  lex(text)
    .filter((token) => isComment(token) || token.kind === "string")
    .map((token) => token.text.trimEnd());

function askingFlaws({ text, other, offsets }: HostileText): readonly Flaw[] {
  try {
    const keeper = faultKeeper();
    const analysis = analyse({ "a.finish": text, "b.finish": other }, keeper.onFault);
    const places = offsets.map((offset) => offset % (text.length + 2));
    // As the server does it, with addresses for names.
    const served = createAnalyst({ resolve: resolveUse, onFault: keeper.onFault });
    for (const [uri, each] of [
      ["file:///shop/a.finish", text],
      ["untitled:Untitled-1", text],
    ] as const) {
      served.setFile(uri, each);
    }
    const asked = [
      askEverything(analysis, "a.finish", places),
      askEverything(analysis, "b.finish", [0]),
      askEverything(served.analysis(), "file:///shop/a.finish", places.slice(0, 1)),
    ].flatMap(({ flaws }) => flaws);
    return [...asked, ...keeper.flaws()];
  } catch (error) {
    return [crash("the analysis", error)];
  }
}

async function commandFlaws({ text, other, commands }: HostileText): Promise<readonly Flaw[]> {
  const flaws: Flaw[] = [];
  for (const command of commands.map((idx) => COMMANDS[idx]!)) {
    try {
      const { stdout, stderr } = await runCli(command, { files: { "a.finish": text, "b.finish": other } });
      const fault = /A fault in the program itself[^\n]*/.exec(stderr)?.[0];
      if (fault) flaws.push({ kind: "crash", detail: `${command.join(" ")}: ${fault}` });
      if (command.includes("json") || command.includes("sarif")) {
        if (stdout !== "") JSON.parse(stdout);
      }
    } catch (error) {
      flaws.push(crash(command.join(" "), error));
    }
  }
  return flaws;
}
