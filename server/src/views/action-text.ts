/** One task or wait of a plan in a few words, as a finisher would write it on a board. */
import { formatDuration } from "../core/measure/format-amount.ts";
import {
  type Action,
  type LayerAction,
  OTHER_WORK,
  type StepAction,
  type WaitAction,
} from "../core/surface/actions.ts";

/** `sand 120, 150`, `hall_clear, coat 2 of 3`, `wait until cured`; the material where a parameter stands for it. */
export function actionText(action: Action): string {
  switch (action.op) {
    case "step":
      return stepText(action);
    case "layer":
      return layerText(action);
    case "wait":
      return waitText(action);
    case "note":
      return action.text;
    case "open":
      return action.missing === undefined ? "and so on" : `follow ${action.missing}`;
  }
}

function stepText({ verb, wet, grits, use, what }: StepAction): string {
  return [
    verb === OTHER_WORK ? "" : verb,
    wet ? "wet" : "",
    grits.join(", "),
    use ? `with ${use.material?.name ?? use.name}` : "",
    what ?? "",
  ]
    .filter((part) => part !== "")
    .join(" ");
}

function layerText({ use, coat, coats, wiped, method }: LayerAction): string {
  return [
    use.material?.name ?? use.name,
    ...(coats > 1 ? [`coat ${coat} of ${coats}`] : []),
    ...(method === "brush" ? [] : [`by ${method}`]),
    ...(wiped ? ["wiped"] : []),
  ].join(", ");
}

function waitText({ until, overnight, hours }: WaitAction): string {
  if (until) return `wait until ${until}`;
  if (overnight) return "wait overnight";
  return hours === undefined ? "wait" : `wait ${formatDuration(hours)}`;
}
