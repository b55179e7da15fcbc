/** The page of the bench view: its frame and its looks. Nothing is loaded but the script with the nonce. */
import { THEME_COLOURS } from "../pages/theme-colours.ts";
import { text } from "./html.ts";
import { l10nOf } from "./l10n.ts";

export interface PageTexts {
  /** Of the editor's language, as in `de` or `pt-br`. */
  readonly language: string;
  /** The person's texts by the English ones; empty where it is English. */
  readonly bundle: Readonly<Record<string, string>>;
}

export const IN_ENGLISH: PageTexts = { language: "en", bundle: {} };

export function benchPage(
  nonce: string,
  script: string,
  source: string,
  { language, bundle }: PageTexts = IN_ENGLISH,
): string {
  const l10n = l10nOf(bundle);
  // Inside an element for a script no end tag of one may stand.
  const words = JSON.stringify(bundle).replaceAll("<", "\\u003c");
  return `<!DOCTYPE html>
<html lang="${text(language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}' ${source}">
<title>${text(l10n.t("Bench view"))}</title>
<style nonce="${nonce}">${STYLE}</style>
</head>
<body>
<div id="notes" role="status"></div>
<main id="page" hidden>
<div class="top">
<header id="head"></header>
<nav aria-label="${text(l10n.t("Take along"))}">
<span id="jobs"></span>
<button type="button" class="primary" data-action="html">${text(l10n.t("Save sheet to print"))}</button>
<button type="button" data-action="ics">${text(l10n.t("Calendar"))}</button>
<button type="button" data-action="csv">${text(l10n.t("Shopping list as CSV"))}</button>
<button type="button" data-action="markdown">${text(l10n.t("Copy as Markdown"))}</button>
<button type="button" data-action="care">${text(l10n.t("Care card"))}</button>
<button type="button" data-action="recipe">${text(l10n.t("Short recipe"))}</button>
</nav>
</div>
<div id="cards" class="cards"></div>
<section id="findings" aria-label="${text(l10n.t("Findings"))}"></section>
<div class="slider"><label for="moment">${text(l10n.t("As it will be"))}</label><input id="moment" type="range" min="0" max="0" step="1"><output id="said" for="moment"></output></div>
<section id="sections" aria-label="${text(l10n.t("Cut through each surface"))}"></section>
<section aria-label="${text(l10n.t("Timeline"))}"><h2>${text(l10n.t("When"))} <span id="anew" class="second" role="status"></span> <span id="shop" class="second"></span></h2><div id="timeline"></div></section>
<section id="air" aria-label="${text(l10n.t("Air of the room"))}"></section>
<section aria-label="${text(l10n.t("Shopping and cost"))}"><h2>${text(l10n.t("Shopping and cost"))}</h2><div id="shopping"></div></section>
<p class="second">${text(l10n.t("An estimate for planning. Labels, safety data sheets, local rules and people who know the trade come first."))}</p>
</main>
<script type="application/json" id="words">${words}</script>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}

/**
 * Colours are those of the editor's theme, by what they are for. Where the system forces colours of its own, they are the
 * system's; drawings keep the colours of their materials there, which are data, each with an outline.
 */
const STYLE = `${THEME_COLOURS}
:root {
  --shut: 0.09;
  --hatch: 0.6;
}
.vscode-high-contrast { --shut: 0.2; --hatch: 1; }
body { font: var(--vscode-font-size, 13px)/1.4 var(--vscode-font-family); color: var(--ink); padding: 12px 8px; margin: 0; }
h1 { font-size: 16px; font-weight: 600; margin: 8px 0 2px; }
h2 { font-size: 12px; font-weight: 600; margin: 14px 0 4px; }
h2 .second { font-weight: 400; }
p { margin: 2px 0; }
code { font-family: var(--vscode-editor-font-family, monospace); font-size: 0.92em; color: inherit; background: none; padding: 0; }
.assumed { display: block; }
.second, .state { color: var(--second); font-size: 12px; }
nav { display: flex; flex-wrap: wrap; gap: 6px; align-items: center; }
#jobs:empty { display: none; }
.top { display: flex; flex-wrap: wrap; gap: 4px 24px; justify-content: space-between; align-items: flex-start; }
.top header { flex: 1 1 320px; }
button, select { font: inherit; min-height: 24px; border: 1px solid var(--vscode-button-border, transparent); border-radius: 2px; }
nav button { padding: 3px 10px; color: var(--vscode-button-secondaryForeground); background: var(--vscode-button-secondaryBackground); cursor: pointer; }
nav button.primary { color: var(--vscode-button-foreground); background: var(--vscode-button-background); }
.vscode-high-contrast nav button { border-color: var(--vscode-contrastBorder); }
select { color: var(--vscode-dropdown-foreground); background: var(--vscode-dropdown-background); border-color: var(--vscode-dropdown-border, transparent); }
button.link { color: inherit; background: none; border: 0; padding: 0 2px; margin: 0 -2px; min-height: 24px; line-height: inherit; text-align: left; cursor: pointer; font-weight: inherit; }
button.link:hover { text-decoration: underline; color: var(--link); }
.at { outline: 1px solid var(--accent); outline-offset: 1px; }
button.link.at { outline: none; background: color-mix(in srgb, var(--accent) 12%, transparent); box-shadow: -3px 0 0 var(--accent); }
.danger { font-weight: 600; }
#notes p { border-left: 3px solid var(--error); padding-left: 8px; font-weight: 600; }
.fact { display: inline-block; }
.cards { display: flex; flex-wrap: wrap; border-top: 1px solid var(--rule); border-bottom: 1px solid var(--rule); margin: 8px 0; }
.card { flex: 1 1 170px; padding: 6px 12px 8px; }
.card + .card { border-left: 1px solid var(--rule); }
.card h2 { margin: 0; font-weight: 400; color: var(--second); }
.card h2::first-letter { text-transform: uppercase; }
.card .value { font-size: 15px; font-weight: 600; }
.card.stop { border-left: 3px solid var(--error); }
.card.doubt .value { color: var(--second); font-weight: 400; }
.state.wrong .whole:first-of-type { color: var(--ink); font-weight: 600; }
.card.next { flex: 1.6 1 260px; border-left: 3px solid var(--accent); }
@media (max-width: 640px) { .card { flex-basis: 100%; } .card + .card { border-top: 1px solid var(--rule); } .card + .card:not(.next) { border-left: 0; } }
.slider { display: flex; gap: 10px; align-items: center; margin: 10px 0; }
.slider input { flex: 1; min-width: 80px; accent-color: var(--vscode-button-background); min-height: 24px; }
.vscode-high-contrast .slider input, .vscode-high-contrast input { accent-color: var(--accent); }
.slider output { min-width: 11em; font-variant-numeric: tabular-nums; font-weight: 600; }
#sections { display: flex; flex-wrap: wrap; gap: 12px 32px; }
figure { margin: 0; flex: 1 1 340px; min-width: 0; max-width: 560px; display: flex; flex-direction: column; justify-content: space-between; gap: 6px; }
.cut { display: flex; align-items: flex-start; }
.cut ol { flex: 1; min-width: 0; margin: 0; position: relative; }
.cut li { position: absolute; left: 0; right: 0; border: 0; }
.cut li, .cut .state { line-height: 1.25; }
.cut button.link { min-height: 18px; }
.leaders { flex: none; margin: 0 2px 0 -4px; }
.leaders path { stroke: var(--second); stroke-width: 0.8; fill: none; }
.key { display: flex; flex-wrap: wrap; gap: 2px 16px; flex-basis: 100%; }
.key > span { display: inline-flex; gap: 5px; align-items: center; }
.key svg { flex: none; }
.key .outline { fill: none; stroke: var(--second); }
.key text { fill: var(--ink); }
.gleam { fill: #ffffff; stroke: #000000; stroke-opacity: 0.45; stroke-width: 0.7; }
.zigzag { fill: none; stroke: var(--ink); }
.gap { fill: var(--ground); }
.break { fill: none; stroke: var(--ink); stroke-width: 1.1; }
.drawing { position: relative; flex: none; }
.drawing svg { display: block; }
.marks { position: absolute; inset: 0; pointer-events: none; }
.spot { cursor: pointer; pointer-events: auto; outline: none; }
.halo { fill: var(--ground); stroke: var(--ink); stroke-width: 0.8; }
.spot:focus-visible .halo, .spot.at .halo { stroke: var(--accent); stroke-width: 2.5; }
svg { max-width: 100%; }
ol, ul { list-style: none; padding: 0; margin: 4px 0; }
li { border-top: 1px solid var(--rule); }
li:first-child { border-top: 0; }
.coat, .below { display: grid; grid-template-columns: 1fr auto; column-gap: 8px; align-items: baseline; padding: 1px 0 2px; }
.coat .state { grid-column: 1 / -1; }
.whole { white-space: nowrap; }
.coat button.link { font-weight: 600; }
.below { font-size: 12px; padding: 2px 0; }
.below s { color: var(--second); }
li.later, li.later button.link { color: var(--second); font-weight: 400; }
.also { margin: 0; padding-left: 18px; }
h3 { font-size: 12px; font-weight: 600; margin: 12px 0 4px; }
.findings { columns: 2 340px; column-gap: 32px; }
.finding { display: flex; gap: 6px; align-items: baseline; padding: 2px 0; break-inside: avoid; }
.finding .mark { flex: none; align-self: flex-start; margin-top: 5px; }
.finding button.link { font-weight: 600; }
.ladder .full { fill: var(--ink); }
.ladder .empty { fill: none; stroke: var(--second); }
.mark { vertical-align: -2px; }
.mark .face { fill: none; stroke: var(--ink); stroke-width: 1.4; stroke-linejoin: round; }
.mark .sign { fill: none; stroke: var(--ink); stroke-width: 1.5; stroke-linecap: round; }
.mark.error .face { fill: var(--error); stroke: var(--error); }
.mark.error .sign { stroke: var(--ground); }
.mark.warning .face, .mark.warning .sign { stroke: var(--warning); }
.timeline { display: block; }
.timeline text { fill: var(--second); font-size: 10.5px; }
.timeline text.lane { fill: var(--ink); font-size: 12px; }
.job .title { font-weight: 600; }
.job text { font-size: 12px; }
.job.mine .title { fill: var(--ink); }
.job:focus-visible text, .job.at text { text-decoration: underline; }
.timeline .rule { stroke-opacity: 0.6; }
.mine { fill: var(--accent); }
.others .lane { fill: var(--second); }
.others .title { font-weight: 400; }
.others .bar.work rect { fill: var(--second); fill-opacity: 0.75; }
.vscode-high-contrast .others .bar.work rect { fill-opacity: 1; }
.others .bar.wait rect { opacity: 0.75; }
.rule { stroke: var(--rule); fill: none; }
.shut { fill: var(--ink); fill-opacity: var(--shut); }
.hatch { stroke: var(--ink); stroke-opacity: var(--hatch); }
.bar { cursor: pointer; outline: none; }
.bar .hit { fill: transparent; }
.bar.step rect { fill: var(--ink); }
.bar.layer rect { stroke: var(--second); }
.bar.step.wrong rect { fill: var(--error); }
.bar.layer.wrong rect { stroke: var(--error); stroke-width: 2.5; }
.bar:focus-visible rect, .bar.at rect { stroke: var(--accent); stroke-width: 2; }
.window { stroke: var(--ink); fill: none; }
.now { stroke: var(--accent); stroke-width: 2; pointer-events: none; }
.axis { stroke: var(--second); fill: none; }
.tall, .low { fill: var(--ink); }
.tall { fill: none; stroke: var(--ink); }
.room { fill: none; stroke: var(--second); stroke-dasharray: 2 2; }
.asked { fill: var(--second); fill-opacity: 0.7; }
.beyond { stroke: var(--warning); stroke-width: 1.4; }
.over { stroke: var(--warning); stroke-width: 2; }
.tick { stroke: var(--warning); stroke-width: 3; fill: none; }
.tick.information { stroke: var(--ink); stroke-width: 2; stroke-dasharray: 3 2; }
.limit { stroke: var(--ink); stroke-width: 1.4; stroke-dasharray: 5 3; fill: none; pointer-events: none; }
.worst { max-width: 72em; }
summary { cursor: pointer; color: var(--second); font-size: 12px; min-height: 24px; width: max-content; }
.stale #timeline, .stale #air { opacity: 0.6; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th, td { text-align: left; font-weight: 400; padding: 2px 8px 2px 0; border-top: 1px solid var(--rule); vertical-align: baseline; }
.figure { text-align: right; }
.beside-each-other { display: flex; flex-wrap: wrap; gap: 0 40px; }
.beside-each-other > div { flex: 1 1 320px; min-width: 0; }
.beside-each-other > div:first-child { flex: 2 1 460px; }
.beside-each-other h2:first-child { margin-top: 4px; }
table { max-width: 860px; }
table.costs { width: auto; }
.costs th, .costs .figure { white-space: nowrap; }
.costs td.second { padding-left: 8px; overflow-wrap: anywhere; }
.costs .total th, .costs .total td { border-top: 1px solid var(--ink); }
.costs .total th, .costs .total .figure { font-weight: 600; }
.costs .beside th, .costs .beside td, .costs .part th, .costs .part td { border-top: 0; }
@media (max-width: 420px) { th, td { padding-right: 4px; font-size: 12px; overflow-wrap: anywhere; } }
.empty { color: var(--second); }
.hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; display: block; }
@media (forced-colors: active) {
  :root { --shut: 0.2; --hatch: 1; }
  nav button { border-color: ButtonText; }
  button.link.at { outline: 1px solid Highlight; }
  .card.stop { border-left-width: 6px; }
}
`;
