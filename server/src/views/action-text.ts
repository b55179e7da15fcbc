/** One task or wait of a plan in a few words, as a finisher would write it on a board. */

import { lookUp } from "../../../grammar/src/look-up.ts";
import { t } from "../../../grammar/src/translate.ts";
import { VERBS } from "../../../grammar/src/vocabulary.ts";
import { areaText } from "../core/measure/figures.ts";
import { formatDuration, formatNumber } from "../core/measure/format-amount.ts";
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
      return action.missing === undefined ? t`and so on` : `follow ${action.missing}`;
  }
}

/** `coat 2 of 3`, of an oil that is put on and wiped off `session 2 of 3`. */
export const countText = (session: unknown, coat: number, coats: number): string =>
  session ? t`session ${coat} of ${coats}` : t`coat ${coat} of ${coats}`;

/** `only edges`, `only 20 %: where it is worn` */
export function partText({ where, share, areaM2 }: NonNullable<Action["part"]>): string {
  const much =
    areaM2 !== undefined
      ? areaText(areaM2)
      : share !== undefined
        ? `${formatNumber(share * 100, 1)} %`
        : undefined;
  return `only ${[much, where].filter((said) => said !== undefined).join(": ")}`;
}

function stepText({ part, ...step }: StepAction): string {
  return part ? `${workText(step)}, ${partText(part)}` : workText(step);
}

function workText({ verb, wet, grits, use, what }: Omit<StepAction, "part">): string {
  return [
    verb === OTHER_WORK ? "" : verb,
    wet ? "wet" : "",
    grits.join(", "),
    ...(verb === OTHER_WORK || lookUp(VERBS, verb)?.form === "what-with"
      ? [what ?? "", withUse(use)]
      : [withUse(use), what ?? ""]),
  ]
    .filter((part) => part !== "")
    .join(" ");
}

const withUse = (use: StepAction["use"]): string => (use ? `with ${use.material?.name ?? use.name}` : "");

function layerText({ use, coat, coats, session, part, ifNeeded, wiped, method }: LayerAction): string {
  return [
    use.material?.name ?? use.name,
    ...(coats > 1 ? [countText(session, coat, coats)] : []),
    ...(part ? [partText(part)] : ifNeeded ? ["if needed"] : []),
    ...(method === "brush" ? [] : [`by ${method}`]),
    ...(wiped ? ["wiped off"] : []),
  ].join(", ");
}

function waitText({ until, overnight, hours, syntax }: WaitAction): string {
  if (until) return `wait until ${until}`;
  if (overnight) return "wait overnight";
  const what = syntax.what ? ` ${syntax.what.value}` : "";
  return hours === undefined ? "wait" : `${t`wait ${formatDuration(hours)}`}${what}`;
}
