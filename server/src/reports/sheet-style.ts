/**
 * The style of sheets: black on white, large enough to be read at arm's length from the wall, boxes by thick rules and
 * not by colour, because printers leave backgrounds out and benches are dim.
 *
 * The page has no size of its own, so that A4 and Letter both get their full width. Colours stand in `SHEET_COLOURS`,
 * where a test calculates their contrast (WCAG 2.2, 1.4.3: 4.5 to 1; 1.4.11: 3 to 1 for rules and boxes).
 */

export interface SheetColours {
  readonly paper: string;
  readonly ink: string;
  /** Second in rank: captions, times, origins. */
  readonly soft: string;
  /** Thin rules between rows. */
  readonly rule: string;
  readonly error: string;
  readonly warning: string;
  readonly link: string;
}

export const SHEET_COLOURS = {
  light: {
    paper: "#ffffff",
    ink: "#000000",
    soft: "#3d3d3d",
    rule: "#7a7a7a",
    error: "#a4001d",
    warning: "#7a4a00",
    link: "#0b4fa0",
  },
  dark: {
    paper: "#161616",
    ink: "#f2f2f2",
    soft: "#c4c4c4",
    rule: "#8a8a8a",
    error: "#ff8f8f",
    warning: "#ffc266",
    link: "#8fc1ff",
  },
} as const satisfies Readonly<Record<"light" | "dark", SheetColours>>;

const variables = (colours: SheetColours): string =>
  Object.entries(colours)
    .map(([name, value]) => `--${name}: ${value};`)
    .join(" ");

export const SHEET_STYLE = `:root { color-scheme: light dark; ${variables(SHEET_COLOURS.light)} }
@media screen and (prefers-color-scheme: dark) { :root { ${variables(SHEET_COLOURS.dark)} } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.5rem 1rem 4rem; max-width: 54rem; background: var(--paper); color: var(--ink);
  font: 1.125rem/1.45 system-ui, "Segoe UI", "Helvetica Neue", "DejaVu Sans", Arial, sans-serif; overflow-wrap: break-word; }
p, ul, ol, dl { margin: 0.4em 0; }
ul, ol { padding-left: 1.5em; }
li { margin: 0.25em 0; }
.small { font-size: 0.92em; }
a { color: var(--link); }
code { font-family: ui-monospace, "DejaVu Sans Mono", Menlo, Consolas, monospace; font-size: 0.9em; overflow-wrap: anywhere; }
h1 { margin: 0; font-size: 2.1rem; line-height: 1.15; }
h2 { margin: 1.6em 0 0.5em; padding-bottom: 0.15em; border-bottom: 3px solid var(--ink); font-size: 1.45rem; line-height: 1.2; }
h3 { margin: 1.2em 0 0.3em; font-size: 1.2rem; }
article + article { margin-top: 4rem; padding-top: 2rem; border-top: 6px double var(--ink); }
.sort { margin: 0; font-weight: 700; color: var(--soft); }
.origin { margin: 0.2em 0 0.8em; color: var(--soft); }
nav ol { columns: 2; }
dl { display: grid; grid-template-columns: repeat(auto-fill, minmax(13.5rem, 1fr)); gap: 0.4rem 1.5rem; }
dl div { padding: 0.15em 0; border-bottom: 1px solid var(--rule); }
dt { font-size: 0.85em; color: var(--soft); }
dd { margin: 0; font-weight: 600; }
.table { overflow-x: auto; }
table { width: 100%; margin: 0.6em 0; border-collapse: collapse; }
caption { padding: 0.2em 0; text-align: left; font-weight: 700; }
th, td { padding: 0.3em 0.6em 0.3em 0; border-bottom: 1px solid var(--rule); text-align: left; vertical-align: top; }
thead th { border-bottom: 2px solid var(--ink); color: var(--soft); font-weight: 600; }
tbody th { font-weight: 700; }
.short { white-space: nowrap; }
.figure { text-align: right; white-space: nowrap; padding-right: 1.2em; }
.sections { display: flex; flex-wrap: wrap; align-items: end; gap: 1rem 1.5rem; }
figure { margin: 0; max-width: 100%; break-inside: avoid; }
figcaption { font-weight: 700; }
svg { display: block; max-width: 100%; height: auto; }
.box { margin: 0.8em 0; padding: 0.5em 0.8em; border: 2px solid var(--ink); }
.box .title { margin-top: 0; font-weight: 700; }
.box.error { border: 6px solid var(--error); }
.box.error > .title { color: var(--error); font-size: 1.2em; }
.box.warning { border: 4px solid var(--warning); }
.box.warning > .title { color: var(--warning); }
.box.safety { border-width: 2px 2px 2px 10px; }
.box.note { border: 1px solid var(--rule); border-left: 6px solid var(--rule); }
.steps { padding-left: 2.6em; }
.steps > li { margin: 0; padding: 0.55em 0; border-bottom: 1px solid var(--rule); }
.steps > li::marker { font-size: 1.2em; font-weight: 700; }
.steps p { margin: 0.15em 0; }
.what { font-size: 1.2em; font-weight: 700; line-height: 1.25; }
.wait > .what { font-weight: 500; font-style: italic; }
.head { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0 1em; align-items: start; }
.dated .head { grid-template-columns: minmax(0, 1fr) 21em; }
.tick { display: block; }
.tick label { margin-right: 0.5em; font-weight: 700; white-space: nowrap; }
.time { color: var(--soft); font-size: 0.88em; font-variant-numeric: tabular-nums; }
@media (max-width: 46rem) { .head, .dated .head { grid-template-columns: minmax(0, 1fr); } }
input { appearance: none; width: 1.15em; height: 1.15em; margin: 0 0.35em 0 0; vertical-align: -0.22em; border: 2px solid var(--ink);
  background: var(--paper); font-size: inherit; }
input:checked { background: var(--ink); box-shadow: inset 0 0 0 3px var(--paper); }
input:focus-visible, a:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.caution { padding-left: 0.5em; border-left: 6px solid var(--ink); font-weight: 700; }
.wear { color: var(--soft); font-weight: 700; }
footer { margin-top: 2em; border-top: 1px solid var(--rule); color: var(--soft); }
@page { margin: 14mm 15mm 16mm; @bottom-right { content: counter(page) " / " counter(pages); font: 10pt sans-serif; } }
@media print {
  body { max-width: none; padding: 0; orphans: 3; widows: 3; font-size: 12pt; line-height: 1.35; }
  nav { display: none; }
  article + article { margin: 0; padding: 0; border: 0; break-before: page; }
  h1 { font-size: 26pt; }
  h2 { font-size: 17pt; }
  h1, h2, h3, h2 + p, h3 + p, caption, thead { break-after: avoid; }
  .steps > li, tr, tbody.whole, dl div, .box, .box li, footer { break-inside: avoid; }
  section:last-of-type > :last-child { break-after: avoid; }
  footer { break-before: avoid; font-size: 10pt; }
  .box { break-after: avoid; }
  .box.findings { break-inside: auto; break-after: auto; }
  .what { font-size: 13.5pt; }
  .dated .head { grid-template-columns: minmax(0, 1fr) 83mm; }
  .table { overflow: visible; }
  a { color: inherit; text-decoration: none; }
}
`;
