/** A page of ours as HTML that loads and runs nothing: its frame, its looks and its blocks. */
import { type L10n, l10nOf } from "../bench/l10n.ts";
import { type Part, partsOf } from "./examples.ts";
import { anchorOf, inline, text } from "./inline.ts";
import { blocksOf } from "./markdown.ts";
import { type Coloured, recipeHtml } from "./recipe-html.ts";
import { THEME_COLOURS } from "./theme-colours.ts";

/** The recipes of a page, each as one text, in order. */
export const recipesOf = (markdown: string): readonly string[] => recipesIn(partsOf(blocksOf(markdown)));

const recipesIn = (parts: readonly Part[]): readonly string[] =>
  parts.flatMap((part) => {
    if (part.kind === "example") return [part.lines.join("\n")];
    return part.kind === "details" ? recipesIn(part.blocks) : [];
  });

/** The language of a page, and what else is said on it in that language, by the English texts. */
export interface PageLanguage {
  readonly tag: string;
  readonly bundle: Readonly<Record<string, string>>;
}

/** `coloured`: of each recipe, in the order of `recipesOf`. */
export function pageHtml(
  markdown: string,
  coloured: readonly (readonly Coloured[])[],
  nonce: string,
  { tag, bundle }: PageLanguage = { tag: "en", bundle: {} },
): string {
  const l10n = l10nOf(bundle);
  const parts = partsOf(blocksOf(markdown));
  const title = parts.find((part) => part.kind === "heading")?.text ?? "";
  const left = [...coloured];
  const body = parts.map((part) => partHtml(part, { title, l10n, left })).join("\n");
  return `<!DOCTYPE html>
<html lang="${text(tag)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'nonce-${nonce}'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${text(title)}</title>
<style nonce="${nonce}">${STYLE}</style>
</head>
<body>
<main>
${body}
</main>
</body>
</html>`;
}

interface OfPage {
  readonly title: string;
  readonly l10n: L10n;
  /** Colours of the recipes that are still to come. */
  readonly left: (readonly Coloured[])[];
}

/** Takes the colours of its recipes from the front of those that are left. */
function partHtml(part: Part, page: OfPage): string {
  switch (part.kind) {
    case "heading":
      return `<h${part.level} id="${text(anchorOf(part.text))}">${inline(part.text)}</h${part.level}>`;
    case "paragraph":
      return `<p>${inline(part.text)}</p>`;
    case "list": {
      const tag = part.isOrdered ? "ol" : "ul";
      return `<${tag}>${part.items.map((item) => `<li>${inline(item)}</li>`).join("")}</${tag}>`;
    }
    case "table":
      return tableHtml(part);
    case "quote":
      return `<blockquote>${part.paragraphs.map((each) => `<p>${inline(each)}</p>`).join("")}</blockquote>`;
    case "code":
      return `<pre><code>${part.lines.map(text).join("\n")}</code></pre>`;
    case "details": {
      const inside = part.blocks.map((each) => partHtml(each, page)).join("\n");
      return `<details><summary>${inline(part.summary)}</summary>${inside}</details>`;
    }
    case "example":
      return recipeHtml(part, page.left.shift() ?? [], page.title, page.l10n);
  }
}

/** The first cell of a row says what the row is about. */
function tableHtml({ head, rows }: Extract<Part, { readonly kind: "table" }>): string {
  const heads = head.map((cell) => (cell === "" ? "<td></td>" : `<th scope="col">${inline(cell)}</th>`));
  const body = rows.map(
    ([first = "", ...cells]) =>
      `<tr><th scope="row">${inline(first)}</th>${cells.map((cell) => `<td>${inline(cell)}</td>`).join("")}</tr>`,
  );
  return `<table><thead><tr>${heads.join("")}</tr></thead><tbody>${body.join("")}</tbody></table>`;
}

/**
 * Colours are those of the editor's theme, by what they are for. Those of words in a recipe no theme hands to a page, so they
 * are those that the editor's own themes give to the same words, by the kind of theme.
 */
const STYLE = `${THEME_COLOURS}
:root {
  --keyword: #c586c0; --field: #569cd6; --verb: #dcdcaa; --number: #b5cea8; --string: #ce9178; --comment: #6a9955;
  --material: #4fc1ff; --thing: #4ec9b0; --parameter: #9cdcfe;
}
.vscode-light {
  --keyword: #af00db; --field: #800000; --verb: #795e26; --number: #098658; --string: #a31515; --comment: #008000;
  --material: #0070c1; --thing: #267f99; --parameter: #001080;
}
.vscode-high-contrast { --comment: #7ca668; }
.vscode-high-contrast-light {
  --keyword: #b5200d; --field: #0f4a85; --verb: #5e2cbc; --number: #096d48; --string: #0f4a85; --comment: #515151;
  --material: #02715d; --thing: #185e73; --parameter: #001080;
}
body { font: var(--vscode-font-size, 13px)/1.5 var(--vscode-font-family); color: var(--ink); background: var(--ground); margin: 0; padding: 8px 20px 32px; }
main { max-width: 62em; }
h1 { font-size: 20px; font-weight: 600; margin: 12px 0 4px; }
h2 { font-size: 15px; font-weight: 600; margin: 24px 0 6px; }
h3 { font-size: 13px; font-weight: 600; margin: 16px 0 4px; }
p, ul, ol { margin: 6px 0; max-width: 52em; }
ul, ol { padding-left: 20px; }
li { margin: 2px 0; }
a { color: var(--link); }
code, pre { font-family: var(--vscode-editor-font-family, monospace); }
code { font-size: 0.95em; color: inherit; background: none; padding: 0; }
pre { white-space: pre-wrap; overflow-wrap: anywhere; }
pre, .recipe { margin: 8px 0 14px; padding: 6px 0 6px 12px; border-left: 3px solid var(--rule); line-height: 1.55; }
.second { color: var(--second); }
blockquote { margin: 6px 0; padding-left: 12px; border-left: 3px solid var(--rule); }
table { border-collapse: collapse; margin: 8px 0; overflow-wrap: break-word; }
th, td { text-align: left; font-weight: 400; padding: 2px 12px 2px 0; border-top: 1px solid var(--rule); vertical-align: baseline; }
thead th { font-weight: 600; border-top: 0; }
tbody th { min-width: 8em; }
summary { cursor: pointer; min-height: 24px; }
.line { display: flex; flex-wrap: wrap; column-gap: 2.5ch; margin-left: -15px; padding-left: 12px; border-left: 3px solid transparent; min-height: 1.55em; }
.line > code { white-space: pre-wrap; overflow-wrap: anywhere; min-width: 0; }
.count { display: none; }
.numbered .count { display: block; width: 2.5ch; margin-right: -1ch; flex: none; text-align: right; color: var(--second); user-select: none; font: 0.95em var(--vscode-editor-font-family, monospace); line-height: inherit; }
.line.at.error { border-color: var(--error); }
.line.at.warning { border-color: var(--warning); }
.line.at.information, .line.at.hint { border-color: var(--other); }
.at .count { color: var(--ink); font-weight: 600; }
.said { flex: 1 1 24em; min-width: 0; padding-left: 1ch; }
.headline { display: flex; gap: 6px; align-items: baseline; }
.headline .mark { flex: none; align-self: flex-start; margin-top: 4px; }
mark { color: inherit; background: none; text-decoration: underline wavy 1.2px; text-underline-offset: 4px; text-decoration-skip-ink: none; }
mark.error { text-decoration-color: var(--error); }
mark.warning { text-decoration-color: var(--warning); }
mark.information, mark.hint { text-decoration-color: var(--other); }
.more { display: grid; grid-template-columns: max-content minmax(0, 1fr); gap: 4px 12px; margin: -6px 0 18px; padding-left: 12px; max-width: 52em; }
.more dt { color: var(--second); }
.more dd { margin: 0; }
.more p { margin: 0 0 2px; }
.mark .face { fill: none; stroke: var(--ink); stroke-width: 1.4; stroke-linejoin: round; }
.mark .sign { fill: none; stroke: var(--ink); stroke-width: 1.5; stroke-linecap: round; }
.mark.error .face { fill: var(--error); stroke: var(--error); }
.mark.error .sign { stroke: var(--ground); }
.mark.warning .face, .mark.warning .sign { stroke: var(--warning); }
.keyword { color: var(--keyword); }
.property { color: var(--field); }
.method, .function { color: var(--verb); }
.number { color: var(--number); }
.string { color: var(--string); }
.comment { color: var(--comment); }
.variable { color: var(--material); }
.type, .class, .struct, .namespace, .event { color: var(--thing); }
.parameter { color: var(--parameter); }
@media (forced-colors: active) {
  .line.at { border-left-width: 6px; padding-left: 9px; }
}
`;
