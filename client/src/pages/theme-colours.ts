/** Colours of the editor's theme by what they are for, as the styles of all our pages begin. */
export const THEME_COLOURS = `
:root {
  --ink: var(--vscode-foreground);
  --second: var(--vscode-descriptionForeground, var(--vscode-foreground));
  --ground: var(--vscode-editor-background);
  --rule: var(--vscode-contrastBorder, var(--vscode-panel-border, #8884));
  --accent: var(--vscode-focusBorder);
  --link: var(--vscode-textLink-foreground);
  --error: var(--vscode-editorError-foreground);
  --warning: var(--vscode-editorWarning-foreground);
  --other: var(--vscode-editorInfo-foreground);
}
.vscode-high-contrast { --second: var(--vscode-foreground); }
@media (forced-colors: active) {
  :root {
    --ink: CanvasText; --second: CanvasText; --ground: Canvas; --rule: CanvasText; --accent: Highlight; --link: LinkText;
    --error: CanvasText; --warning: CanvasText; --other: CanvasText;
  }
  svg { forced-color-adjust: none; }
}
:focus-visible { outline: 2px solid var(--accent); outline-offset: 2px; }`;
