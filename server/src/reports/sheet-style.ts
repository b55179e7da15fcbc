/**
 * The style of sheets. On paper black on white, with boxes by thick rules and not by colour, because printers leave
 * backgrounds out, and close enough that a job of two surfaces takes two pages. On a screen large, with boxes that a
 * finger in a glove hits (44 px), because benches are dim.
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

export const variables = (colours: SheetColours): string =>
  Object.entries(colours)
    .map(([name, value]) => `--${name}: ${value};`)
    .join(" ");

/** So many columns of boxes as the list has pieces. */
const BOX_WIDTHS = Array.from(
  { length: 12 },
  (_, i) => `.boxes-${i + 1} { --boxes: ${Math.min(6, i + 1)}; }`,
).join("\n");

export const SHEET_STYLE = `:root { color-scheme: light dark; ${variables(SHEET_COLOURS.light)} }
@media screen and (prefers-color-scheme: dark) { :root { ${variables(SHEET_COLOURS.dark)} } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 0 1rem 3rem; max-width: 60rem; background: var(--paper); color: var(--ink);
  font: 1.0625rem/1.4 system-ui, "Segoe UI", "Helvetica Neue", "DejaVu Sans", Arial, sans-serif; overflow-wrap: break-word; }
p, ul, ol, dl { margin: 0.35em 0; }
ul, ol { padding-left: 1.3em; }
li { margin: 0.2em 0; }
a { color: var(--link); }
code { font-family: ui-monospace, "DejaVu Sans Mono", Menlo, Consolas, monospace; font-size: 0.9em; overflow-wrap: anywhere; }
h1 { margin: 0.6em 0 0; font-size: 1.9rem; line-height: 1.15; }
h2 { margin: 1.3em 0 0.4em; padding-bottom: 0.1em; border-bottom: 2px solid var(--ink); font-size: 1.25rem; line-height: 1.2; }
h3 { margin: 1em 0 0.2em; font-size: 1.1rem; }
h3 span { font-weight: 400; color: var(--soft); }
article + article { margin-top: 4rem; padding-top: 2rem; border-top: 6px double var(--ink); }
.sort, .defer { color: var(--soft); }
.sort { margin: 0.1em 0 0.6em; }
dl { display: grid; grid-template-columns: repeat(auto-fill, minmax(11rem, 1fr)); gap: 0.3rem 1.2rem; }
dl div { padding: 0.1em 0; border-bottom: 1px solid var(--rule); }
dt { font-size: 0.85em; color: var(--soft); }
dd { margin: 0; font-weight: 600; }
.table { overflow-x: auto; }
table { width: 100%; margin: 0.3em 0; border-collapse: collapse; }
caption { padding: 0.1em 0; text-align: left; color: var(--soft); }
th, td { padding: 0.25em 0.6em 0.25em 0; border-bottom: 1px solid var(--rule); text-align: left; vertical-align: top; }
thead th { color: var(--soft); font-weight: 400; }
.figure + td:not(.figure), .figure + th:not(.figure) { padding-left: 0.8em; }
.figure { text-align: right; white-space: nowrap; }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.sections { display: flex; flex-wrap: wrap; gap: 1rem 2rem; }
figure { display: flex; flex-direction: column; justify-content: space-between; margin: 0; max-width: 100%; break-inside: avoid; }
svg { display: block; max-width: 100%; height: auto; }
img { display: inline-block; width: auto; height: auto; max-width: 100%; max-height: 9cm; vertical-align: top; break-inside: avoid; }
pre { margin: 0.4em 0; padding: 0.4em 0.6em; border-left: 3px solid var(--rule); white-space: pre-wrap; }
.box { margin: 0.6em 0; padding: 0.4em 0.8em; border: 2px solid var(--ink); }
.box .title { margin-top: 0; font-weight: 700; }
.box.error { border: 5px solid var(--error); }
.box.error > .title { color: var(--error); font-size: 1.15em; }
.box.warning { border: 3px solid var(--warning); }
.box.warning > .title { color: var(--warning); }
.box.note { border: 1px solid var(--rule); border-left: 6px solid var(--rule); }
.safety summary { display: flex; gap: 0.4em; align-items: center; padding: 0; }
.safety summary::before { content: "▸"; }
.safety [open] > summary::before { content: "▾"; }
.safety summary h2 { flex: 1; margin: 0.5em 0 0.3em; color: var(--ink); }
.safety ul { border: 2px solid var(--ink); padding: 0.5em 0.8em 0.5em 1.8em; }
${BOX_WIDTHS}
.steps { list-style: none; padding: 0; margin: 0; }
.row { display: grid; grid-template-columns: 3.6rem minmax(0, 1fr) auto; gap: 0 0.6rem; align-items: start; margin: 0; padding: 0.45rem 0;
  border-bottom: 1px solid var(--rule); min-height: 3.5rem; scroll-margin: 8rem; }
.row.heads, .row.off { display: none; }
.row > * { grid-column: 2; min-width: 0; }
.row > .time { grid-column: 1; grid-row: 1; font-weight: 700; font-variant-numeric: tabular-nums; }
.row > .no { grid-column: 1; grid-row: 2; color: var(--soft); font-size: 0.88em; }
.row > .no::before { content: "step "; }
.row > .ticks { grid-column: 3; grid-row: 1 / span 3; display: flex; flex-wrap: wrap; gap: 4px; max-width: calc(48px * min(3, var(--boxes))); justify-content: end; }
.row > .where { grid-row: 1; font-size: 0.92em; font-weight: 600; }
.row .what b { font-weight: 500; }
.row.layer .what b { font-weight: 700; }
.row small { display: block; color: var(--soft); font-size: 0.88em; }
.row .wear, .row .danger { display: block; font-size: 0.92em; }
.row .danger strong { font-weight: 700; color: var(--warning); }
.row .where:empty, .row .then:empty, .row .may:empty { display: none; }
.row .may { font-size: 0.88em; color: var(--soft); }
.row.ahead .may { font-weight: 700; color: var(--warning); }
.row.early .ticks input:not(:checked) { border-style: dashed; }
.row .on { display: none; }
.row .then { font-weight: 700; }
.row .then small { display: inline; font-weight: 400; color: inherit; }
.row .then span { white-space: nowrap; }
.row .then::before { content: "Don’t touch until "; font-weight: 400; color: var(--soft); }
.row .more { grid-column: 2 / -1; }
summary { min-height: 44px; padding: 11px 0; color: var(--link); cursor: pointer; }
.row[aria-current] { margin: 0 -0.6rem; padding-inline: 0.6rem; outline: 3px solid var(--link); outline-offset: -3px; }
.caution { font-weight: 700; }
input[type="checkbox"] { appearance: none; display: block; width: 44px; height: 44px; margin: 0; border: 2px solid var(--ink); border-radius: 6px;
  background: var(--paper); font-size: inherit; }
input[type="checkbox"]:checked { background: var(--ink); box-shadow: inset 0 0 0 4px var(--paper); }
.ticks label, .got label { position: relative; display: block; width: 44px; height: 44px; }
.ticks label span { position: absolute; inset: 0; display: grid; place-items: center; pointer-events: none; color: var(--soft); }
.ticks input:checked + span { color: var(--paper); font-weight: 700; }
.got { width: 44px; }
.noted { display: flex; gap: 0.6em; align-items: center; }
input[type="text"], input[type="number"], input[type="datetime-local"], textarea { width: 100%; min-height: 44px; padding: 0.4em 0.6em; border: 1px solid var(--rule); border-radius: 6px; background: var(--paper);
  color: inherit; font: inherit; }
button { min-height: 44px; margin: 0 0.3em 0.5em 0; padding: 0.4em 1em; border: 2px solid var(--ink); border-radius: 6px; background: var(--paper); color: inherit;
  font: inherit; cursor: pointer; }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
output { display: block; min-height: 1.4em; }
article > .gist { position: sticky; top: 0; z-index: 1; margin: 0 -1rem; padding: 0.3rem 1rem 0.4rem; background: var(--paper); border-bottom: 4px solid var(--link); }
.gist p, .live p { margin: 0.1em 0; }
.gist .clock { float: right; margin: 0; font-weight: 700; font-variant-numeric: tabular-nums; }
/* Three questions, three headings, in every state; each answer is larger than what surrounds it. */
.gist .label, .live .label { font-weight: 700; color: var(--link); }
.live .label { margin: 0.5em 0 0; padding-top: 0.25em; border-top: 1px solid var(--rule); }
.gist .what { clear: right; font-size: 1.5rem; font-weight: 700; line-height: 1.15; }
.live { padding: 0.3rem 0 0; }
.live .more-now, .live .waits, .live .risks, .live .next { font-weight: 600; font-variant-numeric: tabular-nums; }
.live ul { margin: 0; padding: 0; list-style: none; }
.live .waits li, .live .risks li, .live .next { margin: 0.1em 0 0.25em; font-size: 1.15rem; line-height: 1.25; }
.live .first { font-size: 1.15rem; font-weight: 700; line-height: 1.25; }
.live .risky, .live .risks, .live .first { color: var(--warning); }
.live .risks .standing { color: var(--ink); font-size: 1rem; font-weight: 400; }
.live small { display: block; color: var(--ink); font-size: 0.9375rem; font-weight: 400; }
.live .asked { display: flex; gap: 0.6em; align-items: center; font-weight: 600; }
.live .asked[hidden] { display: none; }
.live .asked input { flex: 0 0 6rem; font-size: 1.25rem; border: 2px solid var(--ink); }
.live .buttons { margin-top: 0.4em; }
.live .go { padding-inline: 0.75em; }
.live .go:first-child { min-width: 7rem; font-weight: 700; }
.live .go.early { min-width: 0; border-style: dashed; border-color: var(--warning); color: var(--warning); font-weight: 400; }
.live .careful { margin-top: 0.4em; padding-left: 0.6em; border-left: 4px solid var(--warning); }
.rest th, .rest td { font-weight: 400; font-style: italic; color: var(--soft); }
footer { margin-top: 1em; color: var(--soft); font-size: 0.9em; }
/* What is done is short, so that what is to come is near. */
@media screen { .row.done .wear, .row.done .danger, .row.done .what small, .row.done .then { display: none; } }
@media screen and (min-width: 60rem) { nav ol { columns: 2; } }
/* On a telephone the work follows what is to be minded; what is looked up stands behind it. */
@media screen and (max-width: 40rem) {
  article { display: flex; flex-direction: column; }
  h1 { margin-top: 0.2em; font-size: 1.25rem; }
  .sort { display: none; }
  .work { order: 1; } .went { order: 2; } .ready { order: 3; } .facts, .days { order: 4; } .cuts, .about, .service { order: 5; } footer { order: 6; }
  .facts dl { display: block; }
  .facts dl div { display: flex; gap: 1rem; justify-content: space-between; }
  .facts dd { text-align: right; }
  .safety ul { font-size: 0.94em; }
  .days thead { display: none; }
  .days tr { display: block; padding: 0.3em 0; border-bottom: 1px solid var(--rule); }
  .days th, .days td { display: inline; border: 0; }
  .days td:nth-child(n + 3):not(:empty) { display: block; }
}
@media (prefers-reduced-motion: no-preference) { .row[aria-current] { transition: outline-color 120ms; } }
@page { margin: 7mm 8mm 9mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8pt sans-serif; } }
@media print {
  body { max-width: none; padding: 0; orphans: 3; widows: 3; font: 8.5pt/1.25 "Helvetica Neue", Arial, "Liberation Sans", Roboto, "Segoe UI", "DejaVu Sans Condensed", sans-serif; }
  nav, .gist, .live, .tools, .more, .labels, .about.unprinted, .row .unprinted { display: none; }
  /* What is folded away on the screen is on paper. */
  .safety details::details-content { content-visibility: visible; block-size: auto; }
  .safety summary { min-height: 0; color: inherit; }
  .safety summary::before, .safety [open] > summary::before { content: none; }
  .safety summary h2 { margin: 0.4em 0 0.15em; }
  article + article { margin: 0; padding: 0; border: 0; break-before: page; }
  h1 { margin: 0; font-size: 17pt; line-height: 1; }
  h2 { margin: 0.3em 0 0.15em; font-size: 10.5pt; border-width: 1.5px; }
  h3 { margin: 0.25em 0 0; font-size: 9pt; border-bottom: 1.5px solid var(--ink); }
  h1, h2, h3, h2 + p, caption, thead, .heads { break-after: avoid; }
  p, ul, ol, dl { margin: 0.2em 0; }
  li { margin: 0.1em 0; }
  dl { display: flex; flex-wrap: wrap; gap: 0.5mm 4mm; }
  dl div { flex: 1 1 auto; }
  .safety ul, .about ul { columns: 2; column-gap: 5mm; font-size: 7.6pt; }
  .safety ul { padding: 1.5mm 2mm 1.5mm 5mm; }
  .about ul { padding-left: 0; }
  .about li { margin-left: 4mm; }
  .safety li, .about li, tr, dl div, .box li, .row, footer { break-inside: avoid; }
  .defer, footer { font-size: 7.5pt; }
  .sections { gap: 2mm 6mm; }
  figure { flex: 1 1 88mm; max-width: 93mm; }
  svg { width: 76mm; }
  th, td { padding: 0.35mm 2mm 0.35mm 0; }
  .days th:first-child, .days td:nth-child(2) { white-space: nowrap; }
  .days td:nth-child(3) { width: 32%; }
  .days .rest th, .days .rest td { padding-block: 0; font-size: 7.2pt; line-height: 1.15; }
  .table { overflow: visible; }
  .work { break-before: page; }
  .where-short { --where: 14mm; }
  .where-middle { --where: 23mm; }
  .where-long { --where: 31mm; }
  .row, .row.heads, .row.off { display: grid; grid-template-columns: 9.5mm 8mm var(--where) max(8mm, calc(5.7mm * var(--boxes))) minmax(0, 1fr) 8mm 34mm; gap: 0 1mm; align-items: center; min-height: 4.8mm; padding: 0; }
  .row > .time { white-space: nowrap; }
  .row.heads { min-height: 0; color: var(--soft); border: 0; white-space: nowrap; }
  .row > *, .row > .time, .row > .no, .row > .where, .row > .ticks { grid-column: auto; grid-row: 1; }
  .row .where:empty, .row .then:empty, .row .on { display: block; }
  .row > .may, .row > .no::before { display: none; content: none; }
  .row > .ticks { display: flex; gap: 1mm; max-width: none; justify-content: start; }
  .row > .no, .row > .on { color: inherit; font-size: 8.5pt; }
  .row > .where { font-size: 7.6pt; font-weight: 400; line-height: 1.15; }
  .row .what { line-height: 1.08; }
  .row .wear, .row .danger, .row small, .row .danger strong { display: inline; font-size: 7pt; color: var(--ink); }
  .row > .then { font-size: 8pt; line-height: 1.1; text-align: right; }
  .heads > :last-child { text-align: right; }
  .row .then:empty::after { content: "–"; color: var(--soft); }
  .row .then span { display: block; }
  .row .then::before { content: none; }
  .row[aria-current] { margin: 0; padding: 0.35mm 0; outline: 0; }
  .ticks label, .ticks input[type="checkbox"] { width: 4.2mm; height: 4.2mm; border-width: 1px; border-radius: 1mm; }
  .row.early .ticks input:not(:checked) { border-style: solid; }
  .ticks label span, .ticks .blank { font-size: 6.5pt; }
  .ticks .blank { display: grid; place-items: center; width: 4.2mm; height: 4.2mm; border: 1px solid var(--ink); border-radius: 1mm; color: var(--soft); }
  .got, .got label, .got input[type="checkbox"] { width: 3.6mm; height: 3.6mm; border-width: 1px; border-radius: 0.7mm; }
  .about ul { font-size: 7pt; line-height: 1.15; }
  .service { float: left; width: 56%; }
  .went { margin-left: 60%; }
  footer { clear: both; margin-top: 0.3em; }
  .service { font-size: 7.6pt; }
  .service ul { display: none; }
  .service, .went { position: relative; break-inside: avoid; padding-top: 0.4em; }
  .went::after { content: ""; position: absolute; inset: auto 0 6.1mm; border-bottom: 1px solid var(--rule); }
  .service h2, .went h2 { margin-top: 0; }
  textarea { display: block; min-height: 0; height: 12.2mm; padding: 0; border: 0; border-radius: 0; border-bottom: 1px solid var(--rule); resize: none; }
  .box { margin: 1mm 0; padding: 1mm 2mm; }
  a { color: inherit; text-decoration: none; }
}
`;
