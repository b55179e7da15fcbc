/**
 * Where a recipe tells to use steel wool. The notation has no word for it, so the free text is read, part by part of a
 * sentence: what forbids it or keeps it for later says nothing.
 */
import { negates } from "../knowledge/denials.ts";
import type { Action } from "../surface/actions.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { textOf } from "./spoken-words.ts";

const STEEL_WOOL =
  /(?<!\b(?:synthetic|nylon|plastic|stainless|bronze)[\s-])\b(?:(?:steel|wire|iron)[\s-]?wool|(?:grade\s+)?0{1,4}\s+wool|wool\s+(?:grade\s+)?0{2,4})\b(?!\s*(?:substitute|replacement))/iu;

/** Beside plain denials: what is avoided, or put off. */
const PUT_OFF = /\b(?:instead|rather|avoid|except|unless|keep|save|later|last coat|at the end)\b/iu;

const saysSteelWool = (text: string): boolean =>
  text
    .split(/[.;:,!?]\s|\bbut\b/iu)
    .some((part) => STEEL_WOOL.test(part) && !negates(part) && !PUT_OFF.test(part));

/**
 * The first line since the coat below that tells to use steel wool. Wool that rubs off a softened finish does not count
 * where the wood is sanded afterwards, which takes its slivers out.
 */
export function steelWoolBelow(run: SurfaceRun, index: number): Action | undefined {
  let first: Action | undefined;
  let isSanded = false;
  for (let at = index - 1; at >= 0; at -= 1) {
    const { action } = run.moments[at]!;
    if (action.op === "layer") break;
    const verb = action.op === "step" ? action.verb : undefined;
    if (verb === "sand") isSanded = true;
    if (verb === "strip" && isSanded) continue;
    const text = textOf(action);
    if (text && saysSteelWool(text)) first = action;
  }
  return first;
}
