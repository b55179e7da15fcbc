/** What is done, in the words of a sheet and in one line: `Sand with grit 120, then 150`, `Satin clear, coat 2 of 3`. */
import type { Action } from "../../core/surface/actions.ts";
import { waitTitle } from "./waits.ts";
import { layerShort, stepTitle } from "./words.ts";

export function actionTitle(action: Action): string {
  switch (action.op) {
    case "step":
      return stepTitle(action);
    case "layer":
      return layerShort(action);
    case "wait":
      return waitTitle(action);
    case "note":
    case "open":
      return "";
  }
}
