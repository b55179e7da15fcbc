/**
 * Buffing a coat, or fitting a part to it, before it is even dry to the touch. Sanding has a rule of its own. Where the
 * next coat comes too early as well, `recoat-too-early` says it there, and this rule stays silent.
 */
import { t } from "../../../../../grammar/src/translate.ts";
import { topCoat } from "../../surface/state.ts";
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
import { insertAbove, layerBelow } from "../texts.ts";

/** What is done too early, so long after a coat that takes a time to be dry to the touch. */
type Early = (after: string, coat: string, need: string) => string;

const HANDLING: Readonly<Record<string, Early>> = {
  buff: (after, coat, need) =>
    after
      ? t`Buffed ${after} after ${coat}: touch-dry takes ${need}`
      : t`Buffed straight after ${coat}: touch-dry takes ${need}`,
  distress: (after, coat, need) =>
    after
      ? t`Distressed ${after} after ${coat}: touch-dry takes ${need}`
      : t`Distressed straight after ${coat}: touch-dry takes ${need}`,
  refit: (after, coat, need) =>
    after
      ? t`Refitted ${after} after ${coat}: touch-dry takes ${need}`
      : t`Refitted straight after ${coat}: touch-dry takes ${need}`,
};

export const handledBeforeDry: TradeRule = {
  id: "handled-before-dry",
  group: "waits",
  severity: "warning",
  docs: {
    summary: "A new coat is buffed, distressed or fitted with its parts before it is dry to the touch.",
    why: "A wet film smears under the cloth and keeps every fingerprint, scratch and print of a fitting.",
    remedy: "Wait until it is dry to the touch at least: `wait until touch`.",
    sources: ["ASTM D1640: set-to-touch and dry-to-touch", "common practice, no source"],
  },
  failing: [
    {
      title: "Fitted while it is wet",
      text: `recipe drawer_front {
  safety dust_mask
  step   remove "the pull"
  layer  waterborne_polyurethane x 2 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   30 min
  step   refit "the pull" #! handled-before-dry
  wait   until cured
}
`,
    },
  ],
  passing: [
    {
      title: "Dry to the touch, then fitted",
      text: `recipe drawer_front {
  safety dust_mask
  step   remove "the pull"
  layer  waterborne_polyurethane x 2 {
    wait until recoat
    step sand 220
    step dust
  }
  wait   1 h
  step   refit "the pull"
  wait   until cured
}
`,
    },
  ],
  looksAt: ({ verbs }) => Object.keys(HANDLING).some((verb) => verbs.has(verb)),
  checks: {
    onStep: ({ action, before, run, index, units, report }) => {
      const doing = HANDLING[action.verb];
      const below = topCoat(before);
      if (!doing || below?.origin !== "new" || below.wiped) return;
      const missing = missingTo(before, below, "touch");
      if (!missing || isCoatedTooEarly(run, index, below)) return;
      const { needed, had } = missing;
      const name = briefCoatName(below);
      report(
        shortWait(
          neededIn({ run, units }, needed, had),
          {
            headlines: (after, need) => [name, t`the coat`].map((coat) => doing(after, coat, need)),
            why: t`A film that is still wet smears and keeps every mark.`,
            instead: "wait until touch",
            ...(action.op === "step" && action.verb === "buff"
              ? {}
              : { also: t`longer for what is screwed on tight` }),
            ...namedByParameter(below),
            level: "warning",
          },
          {
            related: [layerBelow(below), ...timePlaces(run, needed, below.material)],
            fixes: [
              insertAbove("undertaking", action, t`Wait until it is dry to the touch`, ["wait  until touch"]),
            ],
          },
        ),
      );
    },
  },
};
