/**
 * Text of SARIF messages. In them `{0}` is a placeholder and `[text](target)` a link (SARIF 2.1.0, sections 3.11.5 and
 * 3.11.6), so braces are doubled and brackets escaped: what a recipe says is shown and leads nowhere.
 */
import { shownText } from "./shown-text.ts";

export const sarifText = (text: string): string =>
  shownText(text).replace(/[{}]/gu, "$&$&").replace(/[[\]]/gu, "\\$&");
