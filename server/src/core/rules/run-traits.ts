/**
 * What a run is made of, by which a rule says of which runs it has something to say (`TradeRule.looksAt`): there are many
 * more rules than things in a recipe, and an edit asks all of them.
 */
import type { Role } from "../knowledge/family-schema.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { namedChemicals } from "./chemical-uses.ts";
import type { RunTraits, TradeRule } from "./rule.ts";
import { toldLines } from "./told-lines.ts";

/** The rules of a list that look at such a run, found once for all runs that are made of the same. */
export function rulesLookingAt(rules: readonly TradeRule[]): (run: SurfaceRun) => readonly TradeRule[] {
  const known = new Map<string, readonly TradeRule[]>();
  return (run) => {
    const traits = traitsOf(run);
    const key = keyOf(traits);
    const before = known.get(key);
    if (before) return before;
    const found = rules.filter(({ looksAt }) => looksAt?.(traits) !== false);
    if (known.size >= MOST_KEPT) known.clear();
    known.set(key, found);
    return found;
  };
}

/** Kinds of runs that are kept; a file has a few dozen. */
const MOST_KEPT = 1000;

function traitsOf(run: SurfaceRun): RunTraits {
  const verbs = new Set<string>();
  const roles = new Set<Role>();
  for (const { action } of run.moments) {
    if (action.op === "step") verbs.add(action.verb);
    else if (action.op === "layer" && action.use.material?.family) roles.add(action.use.material.family.role);
  }
  return {
    kind: run.kind,
    verbs,
    roles,
    isSpoken: toldLines(run).length > 0,
    namesChemicals: namedChemicals(run).length > 0,
    isCoated: run.initial.layers.length > 0,
    isFilled: run.initial.fillings.length > 0 || verbs.has("fill") || verbs.has("glue"),
  };
}

const keyOf = ({ kind, verbs, roles, ...is }: RunTraits): string =>
  [kind, ...verbs, "", ...roles, "", is.isSpoken, is.namesChemicals, is.isCoated, is.isFilled].join("\u0000");
