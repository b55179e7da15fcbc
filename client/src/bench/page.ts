/** The page of the bench view: its frame and its looks. Nothing is loaded but the script with the nonce. */

export const benchPage = (nonce: string, script: string, source: string): string => `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}' ${source}">
<title>Bench view</title>
<style nonce="${nonce}">${STYLE}</style>
</head>
<body>
<div id="notes" role="status"></div>
<main id="page" hidden>
<nav aria-label="Take along">
<span id="jobs"></span>
<button type="button" class="primary" data-action="html">Save sheet to print</button>
<button type="button" data-action="csv">Shopping list as CSV</button>
<button type="button" data-action="care">Save care card</button>
<button type="button" data-action="recipe">Save short recipe</button>
<button type="button" data-action="markdown">Copy as Markdown</button>
</nav>
<header id="head"></header>
<div class="slider"><label for="moment">Moment</label><input id="moment" type="range" min="0" max="0" step="1"><output id="said" for="moment"></output></div>
<section id="sections" aria-label="Cut through each surface"></section>
<section aria-label="Timeline"><h2>When</h2><div id="timeline"></div></section>
<section id="air" aria-label="Air of the room"></section>
<section aria-label="Shopping and cost"><h2>Shopping and cost</h2><div id="shopping"></div></section>
<section id="findings" aria-label="Findings"></section>
<p class="second">An estimate for planning. Labels, safety data sheets, local rules and people who know the trade come first.</p>
</main>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;

const STYLE = `
:root { --rule: var(--vscode-contrastBorder, var(--vscode-panel-border, #8884)); }
body { font: var(--vscode-font-size, 13px)/1.4 var(--vscode-font-family); color: var(--vscode-foreground); padding: 12px 8px; margin: 0; }
h1 { font-size: 16px; font-weight: 600; margin: 8px 0 2px; }
h2 { font-size: 12px; font-weight: 600; margin: 14px 0 4px; }
p { margin: 2px 0; }
.second, .state { color: var(--vscode-descriptionForeground); font-size: 12px; }
nav { display: flex; flex-wrap: wrap; gap: 6px; align-items: center; }
button, select { font: inherit; min-height: 24px; border: 1px solid var(--vscode-button-border, transparent); border-radius: 2px; }
nav button { padding: 3px 10px; color: var(--vscode-button-secondaryForeground); background: var(--vscode-button-secondaryBackground); cursor: pointer; }
nav button.primary { color: var(--vscode-button-foreground); background: var(--vscode-button-background); }
select { color: var(--vscode-dropdown-foreground); background: var(--vscode-dropdown-background); border-color: var(--vscode-dropdown-border, transparent); }
button.link { color: inherit; background: none; border: 0; padding: 0 2px; min-height: 24px; text-align: left; cursor: pointer; font-weight: inherit; }
button.link:hover { text-decoration: underline; color: var(--vscode-textLink-foreground); }
:focus-visible { outline: 2px solid var(--vscode-focusBorder); outline-offset: 2px; }
.at { outline: 1px solid var(--vscode-focusBorder); outline-offset: 1px; }
.cards { display: flex; flex-wrap: wrap; border-top: 1px solid var(--rule); border-bottom: 1px solid var(--rule); margin: 8px 0; }
.card { flex: 1 1 170px; padding: 6px 12px 8px; }
.card + .card { border-left: 1px solid var(--rule); }
.card h2 { margin: 0; font-weight: 400; color: var(--vscode-descriptionForeground); }
.card h2::first-letter { text-transform: uppercase; }
.card .value { font-size: 15px; font-weight: 600; }
.card.stop { border-left: 3px solid var(--vscode-editorError-foreground); }
.slider { display: flex; gap: 10px; align-items: center; margin: 10px 0; }
.slider input { flex: 1; min-width: 80px; accent-color: var(--vscode-button-background); min-height: 24px; }
.slider output { min-width: 11em; font-variant-numeric: tabular-nums; font-weight: 600; }
#sections { display: flex; flex-wrap: wrap; gap: 8px 28px; align-items: flex-end; }
figure { margin: 0; max-width: 100%; }
svg { max-width: 100%; forced-color-adjust: none; }
ol, ul { list-style: none; padding: 0; margin: 4px 0; }
li { padding: 1px 0; border-top: 1px solid var(--rule); }
li .state { float: right; }
li.later { color: var(--vscode-descriptionForeground); }
.ladder .full { fill: var(--vscode-foreground); }
.ladder .empty { fill: none; stroke: var(--vscode-descriptionForeground); }
.mark.error { color: var(--vscode-editorError-foreground); }
.mark.warning { color: var(--vscode-editorWarning-foreground); }
.timeline text { fill: var(--vscode-descriptionForeground); font-size: 10.5px; }
.timeline text.lane { fill: var(--vscode-foreground); font-size: 12px; }
.rule { stroke: var(--rule); fill: none; }
.shut { fill: var(--vscode-foreground); fill-opacity: 0.09; }
.vscode-high-contrast .shut { fill-opacity: 0.18; }
.hatch { stroke: var(--vscode-foreground); stroke-opacity: 0.6; }
.bar { cursor: pointer; outline: none; }
.bar.step rect { fill: var(--vscode-foreground); }
.bar.layer rect { stroke: var(--vscode-descriptionForeground); }
.bar:focus-visible rect, .bar.at rect { stroke: var(--vscode-focusBorder); stroke-width: 2; }
.window { stroke: var(--vscode-foreground); fill: none; }
circle.error { fill: var(--vscode-editorError-foreground); }
circle.warning { fill: var(--vscode-editorWarning-foreground); }
.now { stroke: var(--vscode-focusBorder); stroke-width: 2; }
.grams { fill: var(--vscode-descriptionForeground); }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th, td { text-align: left; font-weight: 400; padding: 2px 8px 2px 0; border-top: 1px solid var(--rule); vertical-align: top; }
.figure { text-align: right; }
dl { display: grid; grid-template-columns: max-content 1fr; gap: 2px 12px; margin: 8px 0; }
dd { margin: 0; font-variant-numeric: tabular-nums; }
.empty { color: var(--vscode-descriptionForeground); }
.hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; display: block; }
`;
