/** The style of sites: the colours of sheets, light and dark; a page of paper has neither links' lines nor navigation. */
import { SHEET_COLOURS, variables } from "../sheet-style.ts";

/** Of the text of a recipe, beside those of sheets; held to 4.5 to 1 (WCAG 2.2, 1.4.3) by a test. */
export const SOURCE_COLOURS = {
  light: { word: "#7a1f5c", figure: "#0a5c36", text: "#8a3b00", comment: "#4f5b52", name: "#0b4fa0" },
  dark: { word: "#f0a6d6", figure: "#8fd9ae", text: "#f2b382", comment: "#b3bdb5", name: "#8fc1ff" },
} as const;

const { light, dark } = SHEET_COLOURS;
const of = (colours: Readonly<Record<string, string>>): string =>
  Object.entries(colours)
    .map(([name, value]) => `--source-${name}: ${value};`)
    .join(" ");

export const SITE_STYLE = `:root { color-scheme: light dark; ${variables(light)} ${of(SOURCE_COLOURS.light)} }
@media screen and (prefers-color-scheme: dark) { :root { ${variables(dark)} ${of(SOURCE_COLOURS.dark)} } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 0 1rem 3rem; max-width: 60rem; background: var(--paper); color: var(--ink);
  font: 1.0625rem/1.5 system-ui, "Segoe UI", "Helvetica Neue", "DejaVu Sans", Arial, sans-serif; overflow-wrap: break-word; }
a { color: var(--link); }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.skip { position: absolute; left: -100rem; }
.skip:focus { position: static; }
.top { display: flex; flex-wrap: wrap; gap: 0.2rem 1.5rem; align-items: baseline; padding: 0.8rem 0; border-bottom: 1px solid var(--rule); }
.name { margin: 0; font-weight: 700; }
nav ul { display: flex; flex-wrap: wrap; gap: 0.1rem 1rem; margin: 0; padding: 0; list-style: none; }
nav a { display: inline-block; padding: 0.25rem 0; }
[aria-current] { color: var(--ink); font-weight: 700; text-decoration: none; }
h1 { margin: 0.9em 0 0; font-size: 2rem; line-height: 1.15; }
h2 { margin: 1.8em 0 0.5em; font-size: 1.3rem; line-height: 1.2; }
h3 { margin: 1.2em 0 0.2em; font-size: 1.1rem; }
p, ul, ol, dl { margin: 0.4em 0; }
li { margin: 0.25em 0; }
.sort, footer { color: var(--soft); }
h1 + .sort { margin-top: 0.1em; }
dl { display: grid; grid-template-columns: minmax(8rem, 13rem) 1fr; gap: 0; max-width: 46rem; }
dl div { display: contents; }
dt, dd { margin: 0; padding: 0.3em 1rem 0.3em 0; border-bottom: 1px solid var(--rule); }
dt { color: var(--soft); }
.sections { display: flex; flex-wrap: wrap; gap: 1rem 2rem; }
figure { margin: 0; max-width: 100%; break-inside: avoid; }
svg { display: block; max-width: 100%; height: auto; }
img { max-width: 100%; height: auto; }
.cards { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 24rem), 1fr)); gap: 0.8rem; padding: 0; list-style: none; }
.cards li { display: flex; gap: 1rem; justify-content: space-between; margin: 0; padding: 0.8rem 1rem; border: 1px solid var(--rule); border-radius: 4px; }
.cards a { font-weight: 700; }
.cards p { margin: 0.2em 0; }
.cards span { flex: none; align-self: end; }
.search label { display: block; margin-top: 1em; font-weight: 700; }
.search input { width: min(100%, 28rem); padding: 0.5rem 0.7rem; border: 2px solid var(--ink); border-radius: 4px; background: var(--paper); color: var(--ink); font: inherit; }
.error { color: var(--error); }
.warning { color: var(--warning); }
pre { margin: 0.4em 0; padding: 0.6em 0.8em; border-left: 3px solid var(--rule); overflow-x: auto; font-size: 0.9rem; line-height: 1.45; }
code { font-family: ui-monospace, "DejaVu Sans Mono", Menlo, Consolas, monospace; }
pre .word { color: var(--source-word); } pre .figure { color: var(--source-figure); } pre .text { color: var(--source-text); }
pre .comment { color: var(--source-comment); font-style: italic; } pre .name { color: var(--source-name); }
footer { margin-top: 3rem; padding-top: 0.6rem; border-top: 1px solid var(--rule); max-width: 46rem; font-size: 0.95rem; }
@media (max-width: 34rem) { dl { grid-template-columns: 1fr; } dt { border-bottom: none; padding-bottom: 0; } }
@media print { @page { margin: 15mm; } .top, .skip, .search { display: none; } body { padding: 0; max-width: none; font-size: 10.5pt; } a { color: inherit; text-decoration: none; } }
`;
