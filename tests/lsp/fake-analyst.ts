/**
 * An analyst for tests of the adapter alone: a few words with plain meanings, and one that fails on purpose.
 *
 * - `use "path"` uses a file, `name X` declares a name, `want X` needs it here or in a used file (unknown-name);
 * - `name X` and `want X` are one thing in all files, that calls what its file wants, and can be renamed to small letters;
 * - `bad` is a warning with a safe fix, `dull` a hint, `idle` an unused name; `rough` is spoken of with names in backticks;
 * - formatting makes one blank of several, within the spans alone;
 * - colours: `bad` an event, `name` a built-in declaration, numbers; `{…}` folds, twice; `x(` asks what `x` takes;
 * - a file with the word `crash` makes every method throw, which the real one never does.
 */

import type { FileId } from "../../server/src/core/place.ts";
import type { AnalystOptions } from "../../server/src/features/analyst.ts";
import { applySettings } from "../../server/src/features/config.ts";
import type {
  Analysis,
  Analyst,
  CompletionEntry,
  DocumentSymbolInfo,
  FoldingInfo,
  Navigation,
  SignatureInfo,
  TargetInfo,
  TextViews,
} from "../../server/src/features/types.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";

export const fakeAnalyst = ({ resolve, config }: AnalystOptions): Analyst => {
  const texts = new Map<FileId, string>();
  const absent = new Map<FileId, string>();
  return {
    setFile(file, text) {
      texts.set(file, text);
      absent.delete(file);
    },
    removeFile(file) {
      texts.delete(file);
      absent.delete(file);
    },
    missingFiles() {
      const used = [...texts].flatMap(([file, text]) => uses(text).map(({ path }) => resolve(file, path)));
      return [...new Set(used)].filter((file) => !texts.has(file) && !absent.has(file));
    },
    isUsed: (file) =>
      [...texts].some(([by, text]) => uses(text).some(({ path }) => resolve(by, path) === file)),
    setAbsent(file, reason) {
      absent.set(file, reason);
    },
    settingsChanged() {},
    plansChanged() {},
    setToday() {},
    analysis: () => analysis(new Map(texts), new Map(absent), resolve, config),
  };
};

const analysis = (
  texts: ReadonlyMap<FileId, string>,
  absent: ReadonlyMap<FileId, string>,
  resolve: AnalystOptions["resolve"],
  config: AnalystOptions["config"],
): Analysis => {
  const usedBy = (file: FileId, seen = new Set<FileId>()): Set<FileId> => {
    if (seen.has(file)) return seen;
    seen.add(file);
    for (const { path } of uses(texts.get(file) ?? "")) usedBy(resolve(file, path), seen);
    return seen;
  };
  const textOf = (file: FileId): string => {
    const text = texts.get(file) ?? "";
    if (text.includes("crash")) throw new Error("on purpose");
    return text;
  };
  const namesOf = (file: FileId): readonly string[] =>
    [...usedBy(file)].flatMap((used) =>
      words(texts.get(used) ?? "", /\bname (\w+)/g).map(({ text }) => text),
    );
  return {
    files: [...texts.keys()],
    text: (file) => texts.get(file),
    steps: () => [],
    awaitsPlans: () => false,
    alone: (result) => result,
    program: { files: new Map(), absent: new Map() },
    workshop: () => [],
    fixAll: () => [],
    shopPlans: () => ({ plans: [], singles: [], leftOut: [], pending: new Set() }),
    findings(file) {
      const text = textOf(file);
      const finding = (
        rule: string,
        severity: FileFinding["severity"],
        span: { start: number; end: number },
        message: string,
      ): FileFinding => {
        const said = { headline: message, why: "", remedy: "", message };
        return { rule, severity, file, span, ...said, related: [], fixes: [] };
      };
      const findings = [
        ...words(text, /\b(bad)\b/g).map(({ span }) => ({
          ...finding("bad-word", "warning", span, "This is bad."),
          related: [{ file, span: { start: 0, end: 1 }, message: "The text begins here." }],
          fixes: [{ title: "Make it good", edits: [{ file, span, text: "good" }], kind: "safe" as const }],
        })),
        ...words(text, /\b(rough)\b/g).map(({ span }) => ({
          ...finding("rough-word", "warning", span, "Write `smooth`, or `even so`, not a lone ` here."),
          related: [{ file, span: { start: 0, end: 1 }, message: "`rough` begins here." }],
          fixes: [
            { title: "Write `smooth`", edits: [{ file, span, text: "smooth" }], kind: "safe" as const },
          ],
        })),
        ...words(text, /\b(dull)\b/g).map(({ span }) => finding("dull-word", "hint", span, "This is dull.")),
        ...words(text, /\b(idle)\b/g).map(({ span }) => finding("unused-name", "hint", span, "Unused.")),
        ...words(text, /\bwant (\w+)/g)
          .filter((name) => !namesOf(file).includes(name.text))
          .map((name) => finding("unknown-name", "error", name.span, `Nothing is called ${name.text}.`)),
        ...uses(text)
          .filter(({ path }) => absent.has(resolve(file, path)))
          .map(({ path, span }) =>
            finding(
              "use-not-found",
              "error",
              span,
              `"${path}" cannot be used: ${absent.get(resolve(file, path))}.`,
            ),
          ),
      ];
      return applySettings(findings, config?.(file) ?? { rules: {} });
    },
    hover(file, offset) {
      const word = words(textOf(file), /(\w+)/g).find(
        ({ span }) => span.start <= offset && offset <= span.end,
      );
      return word && { span: word.span, markdown: `**${word.text}** \`code\`` };
    },
    symbols: (file) =>
      words(textOf(file), /\bname (\w+)/g).map(
        ({ text, span }): DocumentSymbolInfo => ({
          name: text,
          detail: "",
          kind: "recipe",
          span: { start: span.start - 5, end: span.end },
          nameSpan: span,
          children: [
            { name: "", detail: "", kind: "layer", span, nameSpan: { start: 0, end: 9999 }, children: [] },
          ],
        }),
      ),
    completions(file, offset): readonly CompletionEntry[] {
      textOf(file);
      const entry = { kind: "keyword", replace: { start: offset, end: offset }, sort: "1" } as const;
      return [
        {
          ...entry,
          label: "name",
          // biome-ignore lint/suspicious/noTemplateCurlyInString: this is how a snippet is written
          insert: "name ${1:it} {\n  $0\n\\}",
          snippet: true,
          documentation: "**A** name.",
        },
        { ...entry, label: "bad", insert: "bad", snippet: false, detail: "a word" },
        { ...entry, kind: "material", label: "oil", insert: "oil", snippet: false, detail: "drying oil" },
      ];
    },
    inlayHints: (file, span, kinds) =>
      words(textOf(file), /\b(dull|bad)\b/g)
        .filter(({ span: word }) => span.start <= word.end && word.end <= span.end)
        .map(({ text, span: { end } }) => ({
          offset: end,
          parts: kinds.map((kind) => ({ kind, text: `${kind} ${text}`, markdown: "**Why**" })),
        })),
    jobToWrite: () => undefined,
    repairToWrite: () => undefined,
    nextToRecord: () => [],
    jobLenses: (file, levels) =>
      words(textOf(file), /\bname (\w+)/g).map(({ text, span }) => ({
        job: text,
        span,
        parts: [
          { kind: "schedule", text: "some day" },
          { kind: "totals", text: "some money" },
          { kind: "findings", text: levels.join(", "), first: { start: 0, end: 4 } },
        ],
      })),
    formatting: (file, spans) =>
      words(textOf(file), /( {2,})/g)
        .filter(({ span }) => spans?.some((part) => part.start <= span.start && span.end <= part.end) ?? true)
        .map(({ span }) => ({ span, text: " " })),
    totals: () => [],
    jobs: () => [],
    bench: () => undefined,
    sheets: () => [],
    units: () => "metric",
    usedBy: (file) => [...usedBy(file)],
    ...navigation(texts, textOf, resolve),
    ...textViews(textOf),
  };
};

const textViews = (textOf: (file: FileId) => string): TextViews => ({
  tokenPieces: (file, which) => [{ offset: 0, tokens: textViews(textOf).semanticTokens(file, which) }],
  semanticTokens: (file, which, part) =>
    words(textOf(file), which === "all" ? /\b(bad|name|\d+)\b/g : /\b(bad|name)\b/g)
      .filter(({ span }) => part === undefined || (part.start <= span.end && span.start <= part.end))
      .map(({ text, span }) => ({
        span,
        type: text === "bad" ? "event" : text === "name" ? "variable" : "number",
        modifiers: text === "name" ? ["declaration", "defaultLibrary"] : [],
      })),
  textColours: () => [],
  foldings: (file) =>
    words(textOf(file), /\{([^}]*)(?=\})/g).flatMap(({ span }): readonly FoldingInfo[] => [
      { kind: "block", span },
      { kind: "uses", span },
    ]),
  selections: (file, offset) => {
    const length = textOf(file).length;
    const around = words(textOf(file), /(\w+)/g).filter(
      ({ span }) => span.start <= offset && offset <= span.end,
    );
    return [...around.map(({ span }) => span), { start: 0, end: length }];
  },
  signatures: (file, offset) => {
    const called = words(textOf(file).slice(0, offset), /(\w+)\([^)]*$/g);
    return called.flatMap(({ text }): readonly SignatureInfo[] => [
      {
        label: `${text}(bad, dull)`,
        markdown: "**Two** of them.",
        parameters: [4, 9].map((at) => ({ span: { start: at, end: at + 3 }, markdown: "`it`" })),
        ...(textOf(file)[offset - 1] === "?" ? {} : { active: 1 }),
      },
      { label: `${text}()`, markdown: "", parameters: [] },
    ]);
  },
});

interface Known {
  readonly file: FileId;
  readonly name: string;
  readonly span: Word["span"];
  readonly isDeclaration: boolean;
}

const navigation = (
  texts: ReadonlyMap<FileId, string>,
  textOf: (file: FileId) => string,
  resolve: AnalystOptions["resolve"],
): Navigation => {
  const knownIn = (file: FileId): readonly Known[] =>
    words(textOf(file), /\b(?:name|want) (\w+)/g).map(({ text, span }) => {
      const isDeclaration = textOf(file).slice(0, span.start).endsWith("name ");
      return { file, name: text, span, isDeclaration };
    });
  const at = (file: FileId, offset: number): Known | undefined =>
    knownIn(file).find(({ span }) => span.start <= offset && offset <= span.end);
  const like = (one: Known | undefined): readonly Known[] =>
    [...texts.keys()].flatMap(knownIn).filter(({ name }) => name === one?.name);
  const declared = (one: Known | undefined): readonly Known[] =>
    like(one).filter(({ isDeclaration }) => isDeclaration);
  const target = ({ file, span }: Known): TargetInfo => ({
    file,
    span: { start: span.start - 5, end: span.end },
    nameSpan: span,
  });
  const item = (one: Known) => ({ kind: "recipe", name: one.name, title: "", ...target(one) }) as const;
  return {
    definition(file, offset) {
      const origin = at(file, offset);
      return origin && { origin: origin.span, targets: declared(origin).map(target) };
    },
    references: (file, offset, withDeclaration) =>
      like(at(file, offset)).filter(({ isDeclaration }) => withDeclaration || !isDeclaration),
    highlights: (file, offset) =>
      like(at(file, offset))
        .filter((one) => one.file === file)
        .map(({ span, isDeclaration }) => ({ span, kind: isDeclaration ? "write" : "read" })),
    renameTarget(file, offset) {
      const found = at(file, offset);
      return found ? { span: found.span, name: found.name } : { refusal: "Nothing has a name here." };
    },
    rename(file, offset, newName) {
      if (!/^[a-z]+$/.test(newName)) return { refusal: "Only small letters." };
      return { edits: like(at(file, offset)).map((one) => ({ ...one, text: newName })) };
    },
    workspaceSymbols: (query) =>
      [...texts.keys()]
        .flatMap(knownIn)
        .filter(({ name, isDeclaration }) => isDeclaration && name.includes(query))
        .map(({ file, name, span }) => ({ kind: "recipe", name, container: "it", file, nameSpan: span })),
    useLinks: (file) =>
      uses(textOf(file)).map(({ path, span }) => ({
        span,
        target: resolve(file, path),
        tooltip: `Open ${path}`,
      })),
    editsForMoves: (movedTo) =>
      [...texts.keys()].flatMap((file) =>
        uses(textOf(file)).flatMap(({ path, span }) => {
          const target = resolve(file, path);
          const to = movedTo(target);
          return to === target ? [] : [{ file, span, text: JSON.stringify(to) }];
        }),
      ),
    callItems: (file, offset) => declared(at(file, offset)).map(item),
    incomingCalls: (file, offset) =>
      like(at(file, offset))
        .filter(({ isDeclaration }) => !isDeclaration)
        .flatMap((call) =>
          knownIn(call.file)
            .filter(({ isDeclaration }) => isDeclaration)
            .map((caller) => ({ item: item(caller), spans: [call.span] })),
        ),
    outgoingCalls: (file) =>
      knownIn(file)
        .filter(({ isDeclaration }) => !isDeclaration)
        .flatMap((call) => declared(call).map((called) => ({ item: item(called), spans: [call.span] }))),
  };
};

interface Word {
  readonly text: string;
  readonly span: { readonly start: number; readonly end: number };
}

const words = (text: string, pattern: RegExp): readonly Word[] =>
  [...text.matchAll(pattern)].map((match) => {
    const word = match[1] ?? "";
    const start = match.index + match[0].length - word.length;
    return { text: word, span: { start, end: start + word.length } };
  });

const uses = (text: string): readonly { path: string; span: Word["span"] }[] =>
  [...text.matchAll(/^use "([^"]*)"/gm)].map((match) => ({
    path: match[1] ?? "",
    span: { start: match.index + 4, end: match.index + match[0].length },
  }));
