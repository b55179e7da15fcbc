/**
 * Tape on a coat that is not dry enough for another one. Where the next coat comes too early as well,
 * `recoat-too-early` says it there, and this rule stays silent.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { PRACTICE } from "../../knowledge/sources.ts";
import { isFilm, topCoat } from "../../surface/state.ts";
import { isCoatedTooEarly } from "../queries.ts";
import type { TradeRule } from "../rule.ts";
import {
  briefCoatName,
  missingTo,
  namedByParameter,
  neededIn,
  shortWait,
  timePlaces,
} from "../short-wait.ts";
import { isOtherPart } from "../spoken-words.ts";
import { insertAbove, layerBelow } from "../texts.ts";

export const maskedBeforeDry: TradeRule = {
  id: "masked-before-dry",
  group: "preparation",
  severity: "warning",
  docs: {
    summary: "Tape goes on a new coat before its recoat time.",
    why: "The tape sinks into a film that is still soft, leaves its print and pulls the film off with it.",
    remedy: "Mask once the coat can take another one: `wait until recoat`.",
    sources: [PRACTICE],
  },
  failing: [
    {
      title: "The first colour is masked at once",
      text: `recipe two_colours {
  for   any
  layer acrylic_paint
  wait  1 h
  step  mask "the white field" #! masked-before-dry
  wait  until recoat
  layer acrylic_paint
  wait  until touch
  step  unmask
  wait  until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Masked after its recoat time",
      text: `recipe two_colours {
  for   any
  layer acrylic_paint
  wait  until recoat
  step  mask "the white field"
  layer acrylic_paint
  wait  until touch
  step  unmask
  wait  until cured
}
`,
    },
    {
      title: "The tape lies on the hinges",
      text: `recipe painted {
  for   any
  layer acrylic_paint
  wait  1 h
  step  mask "hinges"
  wait  until recoat
  layer acrylic_paint
  wait  until touch
  step  unmask
  wait  until cured
}
`,
    },
  ],
  looksAt: ({ verbs }) => verbs.has("mask"),
  checks: {
    onStep: ({ action, before, run, index, units, report }) => {
      const below = topCoat(before);
      if (action.verb !== "mask" || below?.origin !== "new" || !isFilm(below)) return;
      const missing = missingTo(before, below, "recoat");
      if (!missing || isOtherPart(action.what ?? "") || isCoatedTooEarly(run, index, below)) return;
      const { needed, had } = missing;
      const name = briefCoatName(below);
      report(
        shortWait(
          neededIn({ run, units }, needed, had),
          {
            headlines: (after, need) =>
              [name, t`the coat`].map((coat) =>
                after
                  ? t`Taped ${after} after ${coat}: needs ${need}`
                  : t`Taped straight after ${coat}: needs ${need}`,
              ),
            why: t`The tape sinks into a film that is still soft and pulls it off when it goes.`,
            instead: "wait until recoat",
            ...namedByParameter(below),
            level: "warning",
          },
          {
            related: [layerBelow(below), ...timePlaces(run, needed, below.material)],
            fixes: [
              insertAbove("undertaking", action, t`Wait until the coat can be taped`, ["wait  until recoat"]),
            ],
          },
        ),
      );
    },
  },
};
