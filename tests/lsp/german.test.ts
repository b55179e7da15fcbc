/**
 * What an editor shows in the language of its user: nothing of it is left in English, and what goes into a recipe is the same
 * whatever the language.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import type {
  CodeAction,
  CodeLens,
  CompletionItem,
  CompletionList,
  Diagnostic,
  DocumentSymbol,
  FullDocumentDiagnosticReport,
  Hover,
  InlayHint,
} from "vscode-languageserver/node";
import { speak } from "../../grammar/src/translate.ts";
import {
  DECLARATION_WORDS,
  DONE_FACTS,
  FIELDS,
  PARAMETER_TYPES,
  SHAPES,
  STATEMENTS,
  TAILS,
  VERBS,
} from "../../grammar/src/vocabulary.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { packed, packedTexts, toldTexts } from "../../server/tools/texts.ts";
import { plan } from "../harness/planner.ts";
import { type Client, startClient } from "./harness.ts";

/** Words of the notation that stand in a text as they are, and units. */
const NOTATION: ReadonlySet<string> = new Set([
  ...Object.keys(VERBS),
  ...PARAMETER_TYPES,
  ...["min", "mil", "gal", "EUR", "packs", "plus", "veneer"],
]);

/** Every word of five samples is asked about, some of it twice. */
const LONG = 120_000;

const SAMPLES = path.join(import.meta.dirname, "../../samples");
const sample = (name: string): string => readFileSync(path.join(SAMPLES, name), "utf8");
const uriOf = (name: string): string => `file:///samples/${name}`;

const SHOWN = ["mistakes.finish", "reading-tables.finish", "stock.finish", "shop.finish", "recipes.finish"];

type Tables = Readonly<Record<string, () => unknown>>;

/** All that is shown of a sample, in the order in which it is asked for. */
interface Shown {
  readonly diagnostics: readonly Diagnostic[];
  readonly hovers: readonly string[];
  readonly lenses: readonly CodeLens[];
  readonly hints: readonly InlayHint[];
  readonly actions: readonly CodeAction[];
  readonly symbols: readonly DocumentSymbol[];
  readonly completions: readonly CompletionItem[];
}

async function start(locale: string | undefined, tables: Tables): Promise<Client> {
  return startClient({
    ...(locale === undefined ? {} : { locale }),
    host: {
      createAnalyst: (options) => createAnalyst({ ...options, plan, parts: { today: "2027-03-01" } }),
      texts: (tag) => tables[tag]?.(),
    },
    disk: new Map(SHOWN.map((name) => [uriOf(name), sample(name)])),
    initializationOptions: { commands: ["finishwright.explainRule"] },
  });
}

async function shownOf(client: Client, name: string, text = sample(name)): Promise<Shown> {
  const uri = uriOf(name);
  const textDocument = { uri };
  await client.open(uri, text);
  const lines = text.split("\n");
  const all = { start: { line: 0, character: 0 }, end: { line: lines.length, character: 0 } };
  const report = (await client.pull(uri)) as FullDocumentDiagnosticReport;
  const hovers: string[] = [];
  const completions: CompletionItem[] = [];
  const seen = new Set<string>();
  for (const [line, each] of lines.entries()) {
    if (/^\s*#/u.test(each)) continue;
    for (const { index } of each.matchAll(/[^\s,():]+/gu)) {
      const position = { line, character: index };
      const hover = await client.request<Hover | null>("textDocument/hover", { textDocument, position });
      if (hover !== null) hovers.push((hover.contents as { readonly value: string }).value);
      // What can stand there depends on the words before it.
      const before = `${each.slice(0, index).trim().split(/\s+/u).slice(-2).join(" ")}`;
      if (seen.has(before)) continue;
      seen.add(before);
      const list = await client.request<CompletionList>("textDocument/completion", {
        textDocument,
        position,
      });
      completions.push(...list.items);
    }
  }
  return {
    diagnostics: report.items,
    hovers,
    lenses: await client.request("textDocument/codeLens", { textDocument }),
    hints: await client.request("textDocument/inlayHint", { textDocument, range: all }),
    actions: await client.request("textDocument/codeAction", {
      textDocument,
      range: all,
      context: { diagnostics: report.items },
    }),
    symbols: await client.request("textDocument/documentSymbol", { textDocument }),
    completions,
  };
}

/** The texts of it that a person reads. */
const textsOf = (shown: Shown): readonly string[] => [
  ...shown.diagnostics.flatMap(({ message, relatedInformation }) => [
    markdownOf(message),
    ...(relatedInformation ?? []).map((each) => each.message),
  ]),
  ...shown.hovers,
  ...shown.lenses.map(({ command }) => command!.title),
  ...shown.hints.flatMap(({ label }) =>
    typeof label === "string" ? [label] : label.flatMap(({ value, tooltip }) => [value, markdownOf(tooltip)]),
  ),
  ...shown.actions.map(({ title }) => title),
  ...shown.symbols.map(({ detail }) => detail ?? ""),
  ...shown.completions.flatMap(({ detail, documentation }) => [detail ?? "", markdownOf(documentation)]),
];

const markdownOf = (text: string | { readonly value: string } | undefined): string =>
  typeof text === "object" ? text.value : (text ?? "");

afterEach(() => speak(undefined));

const GERMAN: Tables = { de: () => JSON.parse(packedTexts("de")) };

/** What is shown of all samples to a client of a language. */
async function samplesIn(locale: string | undefined, tables: Tables = GERMAN): Promise<readonly Shown[]> {
  const client = await start(locale, tables);
  const shown: Shown[] = [];
  for (const name of SHOWN) shown.push(await shownOf(client, name));
  await client.end();
  return shown;
}

/** What goes into a recipe, or finds a place in it. */
const writtenBy = ({ diagnostics, actions, completions, hints, symbols }: Shown) => ({
  ranges: diagnostics.map(({ range, code, severity }) => ({ range, code, severity })),
  edits: actions.map(({ edit, kind }) => ({ edit: edit?.documentChanges ?? edit?.changes, kind })),
  inserts: completions.map(({ label, insertText, textEdit, sortText }) => ({
    label,
    insertText,
    textEdit,
    sortText,
  })),
  hints: hints.map(({ position }) => position),
  names: symbols.map(({ name, range }) => ({ name, range })),
});

// ---------------------------------------------------------------------------------------------------------------
// A made-up language

/** A mark on every letter of a text, but for its places and what is typed. */
const marked = (text: string): string =>
  text.replaceAll(/`[^`]*`|\{\d+\}|[a-z]/giu, (part) => (part.length > 1 ? part : `${part}\u0301`));

/** `D MMM` says where the day and the month of a date stand. */
const MADE_UP = (): unknown => {
  const texts = [...toldTexts().keys()].filter((text) => text !== "D MMM");
  return JSON.parse(packed(texts.map((text) => [text, marked(text)])));
};

const SOURCE = marked("Source: ");
/** Titles and comments of the samples, as cards repeat them. */
const OWN = SHOWN.flatMap((name) => [
  ...[...sample(name).matchAll(/"([^"]+)"/gu)].map(([, title]) => title!),
  ...[...sample(name).matchAll(/^\s*##? (.+)$/gmu)].map(([, line]) => line!),
]).toSorted((a, b) => b.length - a.length);

/** Lines of the notation that are offered as examples. */
const EXAMPLES: ReadonlySet<string> = new Set(
  [
    ...[DECLARATION_WORDS, TAILS, VERBS, SHAPES, DONE_FACTS, ...Object.values(FIELDS)].flatMap((table) =>
      Object.values<{ readonly example: string }>(table),
    ),
    ...Object.values(STATEMENTS).flatMap((table) => Object.values<{ readonly example: string }>(table)),
  ].map(({ example }) => example.replace(/^shape /u, "")),
);

/** Names that the samples declare: a sum of hours and an outline have them as they are. */
const NAMES: ReadonlySet<string> = new Set(
  SHOWN.flatMap((name) =>
    [...sample(name).matchAll(/^\w+ (\w+)|(\w+):/gmu)].map(
      ([, declared, parameter]) => declared ?? parameter!,
    ),
  ),
);

/**
 * Words that are not told in the language, apart from names, words of the notation, units, and where a figure comes from: the
 * names of books and laws, and what is said of them in the words of their tables.
 */
function englishIn(text: string): readonly string[] {
  if (EXAMPLES.has(text)) return [];
  let rest = text
    .replaceAll(/^\| [a-z_]+ \| (.*) \| [^|]* \|$/gmu, "$1")
    .replaceAll(/```[^`]*```|`[^`]*`|“[^”]*”|\*\*[^*]*\*\*|\]\([^)]*\)/gu, " ")
    .replaceAll(new RegExp(`${SOURCE}[^\\n]*`, "gu"), " ")
    // The size of a unit, and of a degree of sheen.
    .replaceAll(/^= .*,|^1 .* = .*\)\.$|\(MPI .*\)\.$/gmu, " ");
  for (const own of OWN) rest = rest.replaceAll(own, " ");
  for (const { id } of RULES) rest = rest.replaceAll(id, " ");
  return [...rest.matchAll(/(?<![\p{L}\p{M}\p{N}_-])[A-Za-z]{3,}(?![\p{L}\p{M}\p{N}_])/gu)].flatMap(
    ([word]) => (NOTATION.has(word) || NAMES.has(word) ? [] : [word]),
  );
}

test(
  "nothing is left in English in a made-up language",
  async () => {
    const left = (await samplesIn("de", { de: MADE_UP })).flatMap((shown) =>
      textsOf(shown).flatMap((text) => englishIn(text).map((word) => `${word}: ${text}`)),
    );
    expect([...new Set(left)]).toEqual([]);
  },
  LONG,
);

describe("in German", () => {
  test(
    "the same goes into a recipe, and findings stand at the same places",
    async () => {
      const english = (await samplesIn(undefined)).map(writtenBy);
      expect((await samplesIn("de-AT")).map(writtenBy)).toEqual(english);
    },
    LONG,
  );

  test(
    "a finding, its fixes, cards, hints and lenses",
    async () => {
      const client = await start("de", GERMAN);
      const mistakes = await shownOf(client, "mistakes.finish");
      const tables = await shownOf(client, "reading-tables.finish");
      const workshop = await client.request("finishwright/workshop", {});
      await client.end();

      expect(mistakes.diagnostics.map(({ message }) => markdownOf(message).split("\n")[0])).toContain(
        "Von Körnung 60 auf 180 ist ein zu großer Sprung",
      );
      const titles = mistakes.actions.map(({ title }) => title);
      expect(titles).toContain("100 dazwischensetzen");
      expect(titles).toContain("grit-jump hier erlauben, mit Begründung");
      expect(tables.lenses.map(({ command }) => command!.title)).toEqual([
        "letzte Arbeit 15. März, leichte Nutzung 16. März, volle Nutzung 12. Apr. 2027",
        "525.27 EUR",
      ]);
      const hintsOf = ({ hints }: Shown) =>
        hints.map(({ label }) =>
          typeof label === "string" ? label : label.map(({ value }) => value).join(""),
        );
      expect(hintsOf(mistakes)).toContain("⚠ zu kalt hier, trocknet in keiner Wartezeit");
      expect(hintsOf(mistakes)).toContain("kein Datum: zuerst auf Blei prüfen");

      const card = (part: string): string => {
        const found = [...tables.hovers, ...mistakes.hovers].find((each) => each.includes(part))!;
        return found.slice(found.indexOf(part));
      };
      expect(card("**`hall_tables`**").split("\n").slice(0, 8)).toEqual([
        "**`hall_tables`** “Reading tables”, ein Auftrag",
        "",
        "- letzte Arbeit Mo 15. März 2027 09:55",
        "- volle Nutzung Mo 12. Apr. 2027 12:45",
        "- Kosten 525.27 EUR",
        "- nichts gefunden; Etiketten und Sicherheitsdatenblätter gehen vor",
        "",
        "**Alle Zahlen, mit Rechnung**",
      ]);
      expect(card("**layer**: `gel_stain`")).toContain(
        "- `attic_table`, `top`: 1 Schicht; `gel_stain` 0.28 m2 / 12 m2/L × 1.1 = 0.0257 L, VOC 0.0257 L × 507 g/L = 13 g; bildet keinen Film.",
      );
      expect(card("**`pantry_white`**")).toContain(
        "Eine Schicht: nasser Film 1000 / 10 m2/L = 100 um; trocken 100 um × 38 % = 38 um.",
      );
      expect(card("**`mill_room`**")).toContain(
        "- geöffnet Mo bis Fr 09:00 bis 17:00, Sa 09:00 bis 13:00, 5 × 8 h + 1 × 4 h = 44 h in der Woche",
      );
      expect(mistakes.completions).toContainEqual(
        expect.objectContaining({
          label: "hard",
          documentation: {
            kind: "markdown",
            value: "Tischplatten, Sitze, Böden: mindestens drei filmbildende Schichten.",
          },
        }),
      );
      expect(workshop).toContainEqual(
        expect.objectContaining({
          name: "hall_tables",
          detail:
            "letzte Arbeit 15. März, leichte Nutzung 16. März, volle Nutzung 12. Apr. 2027 · 525.27 EUR",
          brief: "Ende 15. März · 525 EUR · Nutzung 12. Apr.",
        }),
      );
    },
    LONG,
  );
});

test.each(["fr", "en-GB"])(
  "to a client that says %s all is English",
  async (locale) => {
    expect((await samplesIn(locale)).map(textsOf)).toEqual((await samplesIn(undefined)).map(textsOf));
  },
  LONG,
);
