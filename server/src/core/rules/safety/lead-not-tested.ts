/**
 * Old paint rubbed or dissolved before anyone knows whether it holds lead.
 */
import { LEAD_TEST_SOURCE, leadNote, leadStatus } from "../../knowledge/lead.ts";
import type { Action, StepAction } from "../../surface/actions.ts";
import { leadFactsOf } from "../../surface/lead.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { Coat, Moment, SurfaceState } from "../../surface/state.ts";
import { dutyChecks, type Need } from "../duty-check.ts";
import type { TradeRule } from "../rule.ts";
import { coatName, related } from "../texts.ts";

const VERBS: Readonly<Record<string, string>> = {
  sand: "sanding",
  scuff: "scuffing",
  scrape: "scraping",
  strip: "stripping",
  distress: "distressing",
};

export const leadNotTested: TradeRule = {
  id: "lead-not-tested",
  group: "safety",
  severity: "error",
  docs: {
    summary:
      "Old paint is sanded, scuffed, scraped, stripped or distressed on a piece built before 1978 or of unknown age, without `lead_test`.",
    why: "Paint of that time often holds lead. Its dust and its sludge poison those who work there and the children who come after, wet as well as dry.",
    remedy:
      "Test the paint first and state `safety lead_test` above the first line that touches it. A test says only what it tested: where lead is found, local codes say who may do the work and how.",
    sources: [LEAD_TEST_SOURCE, "24 CFR 35.140 on ways of taking paint off (from memory, confidence high)"],
  },
  failing: [
    {
      title: "Scuffing the paint of a table from 1936",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   clean with soap
  step   scuff 180 #! lead-not-tested
  step   dust
}

piece table {
  built 1936
  surface legs {
    shape    4 of post 50 mm x 700 mm
    wood     beech
    existing alkyd paint, 2 coats
  }
}

job legs {
  piece table
  apply prepare to legs
}
`,
    },
    {
      title: "Nobody knows how old it is, nor what the paint is; wax over it does not help",
      text: `recipe take_off {
  for    wood
  safety gloves, eye_protection, ventilate, vapour_respirator
  step   strip with paint_stripper #! lead-not-tested
  step   clean with water
}

piece stool {
  surface seat {
    shape    disc 350 mm x 30 mm
    wood     elm
    existing unknown paint, paste wax
  }
}

job seat {
  piece stool
  apply take_off to seat
}
`,
    },
  ],
  passing: [
    {
      title: "Tested first",
      text: `recipe prepare {
  for    wood
  safety lead_test, dust_mask
  step   clean with soap
  step   scuff 180
  step   dust
}

piece table {
  built 1936
  surface legs {
    shape    4 of post 50 mm x 700 mm
    wood     beech
    existing alkyd paint, 2 coats
  }
}

job legs {
  piece table
  apply prepare to legs
}
`,
    },
    {
      title:
        "Built in 1979, in a country that had limited lead in paint the year before; and an old table without paint",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   clean with soap
  step   scuff 180
  step   dust
}

piece shelf {
  built 1979
  surface sides {
    shape    panel 900 mm x 300 mm
    wood     beech
    existing alkyd paint
  }
}

piece table {
  built 1900
  surface legs {
    shape    4 of post 50 mm x 700 mm
    wood     beech
    existing oil varnish
  }
}

shop loft {
  country US
}

job both {
  piece shelf
  piece table
  in    loft
  apply prepare to shelf.sides, table.legs
}
`,
    },
  ],
  checks: dutyChecks("lead_test", (run) => leadNote(leadFactsOf(run)), leadNeed),
};

function leadNeed({ action, before }: Moment<Action>, run: SurfaceRun): Need | undefined {
  if (run.kind !== "job" || action.op !== "step" || !VERBS[action.verb]) return undefined;
  if (leadStatus(leadFactsOf(run)) !== "presumed") return undefined;
  const paint = touchedCoats(action, before).findLast(isOldPaint);
  return (
    paint && {
      who: VERBS[action.verb]!,
      reason: `goes into ${coatName(paint)}`,
      cause: related(paint.place, "The old paint"),
    }
  );
}

const isOldPaint = (coat: Coat): boolean =>
  coat.origin === "existing" &&
  (coat.unknown === "paint" || coat.family?.role === "paint" || coat.family?.role === "primer");

/** What takes everything touches everything; finer work reaches old layers only while no new one covers them. */
function touchedCoats(step: StepAction, before: SurfaceState): readonly Coat[] {
  const takesAll =
    step.verb === "strip" ||
    step.verb === "scrape" ||
    // It wears through everything in places.
    step.verb === "distress" ||
    (step.verb === "sand" && step.grits.some((grit) => grit <= 100));
  return takesAll || before.layers.at(-1)?.origin === "existing" ? before.layers : [];
}
