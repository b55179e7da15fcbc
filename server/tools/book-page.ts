/**
 * A page of the book in its parts: what is only read, the files that it writes, and the commands that it runs.
 *
 * In a page a line such as `` `table.finish`: `` before a fenced block says that the block is that file, whole. With `In`
 * before it, the declarations of the block take the place of those of the same name in the file, and new ones come last.
 * With `is now` behind it, the block is made anew from the file as it lies there then.
 * A block of `sh` has a command on each line; the block right behind it is what they print, and is made anew every time.
 */

interface Fenced {
  readonly language: string;
  readonly lines: readonly string[];
  /** The line behind the fence. */
  readonly end: number;
}

export type BookPart =
  | { readonly kind: "read"; readonly lines: readonly string[] }
  | {
      readonly kind: "file";
      readonly lines: readonly string[];
      readonly language: string;
      /** Undefined for a text that stands by itself. */
      readonly name: string | undefined;
      /** Whether the block is the whole file. */
      readonly isWhole: boolean;
      readonly text: string;
    }
  | {
      readonly kind: "shown";
      readonly language: string;
      /** The file that is shown. */
      readonly name: string;
    }
  | { readonly kind: "commands"; readonly lines: readonly string[]; readonly commands: readonly string[] };

const FENCE = /^(`{3,})([a-z]*)$/u;
const NAMED = /^(In )?`([^`]+)`( is now)?:$/u;

function fencedAt(lines: readonly string[], at: number): Fenced | undefined {
  const [, fence, language = ""] = FENCE.exec(lines[at] ?? "") ?? [];
  if (fence === undefined) return undefined;
  const close = lines.indexOf(fence, at + 1);
  return close < 0 ? undefined : { language, lines: lines.slice(at + 1, close), end: close + 1 };
}

/** The parts of a page in order; what its commands printed when it was last made is left out. */
export function bookParts(page: string): readonly BookPart[] {
  const lines = page.split("\n");
  const parts: BookPart[] = [];
  let read: string[] = [];
  const add = (part: BookPart): void => {
    if (read.length > 0) parts.push({ kind: "read", lines: read });
    read = [];
    parts.push(part);
  };
  for (let at = 0; at < lines.length; ) {
    const fenced = fencedAt(lines, at);
    if (!fenced) {
      read.push(lines[at]!);
      at += 1;
      continue;
    }
    const own = lines.slice(at, fenced.end);
    at = fenced.end;
    if (fenced.language === "sh") {
      add({ kind: "commands", lines: own, commands: fenced.lines });
      at = outputEnd(lines, at) ?? at;
      continue;
    }
    const [, within, name, now] = (read.at(-1) === "" ? NAMED.exec(read.at(-2) ?? "") : null) ?? [];
    if (name === undefined && fenced.language !== "finish") {
      read.push(...own);
      continue;
    }
    if (name !== undefined && now !== undefined) {
      add({ kind: "shown", language: fenced.language, name });
      continue;
    }
    const text = `${fenced.lines.join("\n")}\n`;
    const isWhole = within === undefined;
    add({ kind: "file", lines: own, language: fenced.language, name, isWhole, text });
  }
  if (read.length > 0) parts.push({ kind: "read", lines: read });
  return parts;
}

/** The line behind what commands printed, where that stands right behind them. */
function outputEnd(lines: readonly string[], at: number): number | undefined {
  if (lines[at] !== "") return undefined;
  const fenced = fencedAt(lines, at + 1);
  return fenced && fenced.language !== "sh" && fenced.language !== "finish" ? fenced.end : undefined;
}

/** The lines of a block with what its commands print: nothing where they print nothing. */
export function withOutput(lines: readonly string[], output: string): readonly string[] {
  if (output === "") return lines;
  const longest = Math.max(0, ...[...output.matchAll(/^`+/gmu)].map(([ticks]) => ticks.length));
  const fence = "`".repeat(Math.max(3, longest + 1));
  return [...lines, "", `${fence}text`, ...output.replace(/\n$/u, "").split("\n"), fence];
}

const DECLARATION = /^(?:use|(?:material|piece|shop|recipe|job) \p{L}[\p{L}\d_]*)/u;

interface Declared {
  /** `job hall_tables`; `use` lines count as one. */
  readonly key: string;
  readonly lines: readonly string[];
}

/** A formatted text in its declarations, each with the comments right above it. */
function declarationsIn(text: string): readonly Declared[] {
  const found: Declared[] = [];
  let lines: string[] = [];
  let key: string | undefined;
  const close = (): void => {
    if (lines.length > 0) found.push({ key: key ?? "", lines });
    lines = [];
    key = undefined;
  };
  for (const line of text.trimEnd().split("\n")) {
    if (line === "" && key === undefined) {
      close();
      continue;
    }
    lines.push(line);
    key ??= DECLARATION.exec(line)?.[0];
    if (line === "}" || (key === "use" && line.startsWith("use"))) close();
  }
  close();
  return found;
}

/** A text in which the declarations of another take the place of those of their name; new ones come last. */
export function withDeclarations(text: string, others: string): string {
  const own = declarationsIn(text);
  const given = declarationsIn(others);
  const named = new Map(given.map((each) => [each.key, each]));
  const kept = own.map((each) => (each.key === "use" ? each : (named.get(each.key) ?? each)));
  const isNew = ({ key, lines }: Declared): boolean =>
    key === "use"
      ? !own.some((each) => each.lines.join() === lines.join())
      : !own.some((each) => each.key === key);
  const fresh = given.filter(isNew);
  const ofUse = (isUse: boolean) => (each: Declared) => (each.key === "use") === isUse;
  const uses = [...kept.filter(ofUse(true)), ...fresh.filter(ofUse(true))];
  const rest = [...kept.filter(ofUse(false)), ...fresh.filter(ofUse(false))];
  const head = uses.map(({ lines }) => lines.join("\n")).join("\n");
  return `${[...(head === "" ? [] : [head]), ...rest.map(({ lines }) => lines.join("\n"))].join("\n\n")}\n`;
}
