/**
 * Old coatings rubbed or dissolved before anyone knows whether they hold lead.
 */

import { lookUp } from "../../../../../grammar/src/look-up.ts";
import { t } from "../../../../../grammar/src/translate.ts";
import { LEAD_TEST_SOURCE, leadNote } from "../../knowledge/lead.ts";
import { dayText } from "../../measure/figures.ts";
import { placeKey } from "../../place.ts";
import { sentence } from "../../sentence.ts";
import type { StepAction } from "../../surface/actions.ts";
import { leadFactsOf } from "../../surface/lead.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { Coat } from "../../surface/state.ts";
import { burnsDry } from "../coat-queries.ts";
import {
  isOldClear,
  type LeadMatter,
  leadReached,
  notedAs,
  promisesTest,
  waitsForLaboratory,
} from "../lead-caution.ts";
import { bestWay } from "../lead-work.ts";
import type { Report, RunContext, TradeRule } from "../rule.ts";
import { coatName, fitting, related } from "../texts.ts";
import { saysWet } from "../work-words.ts";

const VERBS: Readonly<Record<string, () => string>> = {
  sand: () => t`Sanding`,
  scuff: () => t`Scuffing`,
  scrape: () => t`Scraping`,
  strip: () => t`Stripping`,
  distress: () => t`Distressing`,
};

export const leadNotTested: TradeRule = {
  id: "lead-not-tested",
  group: "safety",
  severity: "error",
  voids: "test for lead first",
  speaksOfLead: true,
  docs: {
    summary:
      "An old coating that may hold lead is sanded, scuffed, scraped, stripped or distressed, and nobody tests it first.",
    why: "Paint of that time often holds lead, and some clears were dried with it. The dust and the sludge poison those who work there and the children who come after, wet as well as dry.",
    remedy:
      "Have a laboratory test a sample of every layer, and state `safety lead_test` above the first line that touches it. Once the report is there, state its result and its date at the surface (`lead none_found by laboratory YYYY-MM-DD`). A swab that finds nothing proves nothing. Where none is found, wear a dust mask all the same, and work nitrocellulose lacquer wet, as its dry dust burns. Where lead is found, ask the local authority first who may do the work and where the waste goes; best leave a sound finish unbroken; else work wet by hand, behind a P100 respirator (a dust mask is not enough; where you strip, in fresh air, with every flame off and with cartridges for the vapour too) and plastic sheeting, with others kept out, children and pregnant women above all. For paint whose age is late but whose country is not stated, and for an old clear that comes off wet or by a stripper, this is information only.",
    sources: [
      LEAD_TEST_SOURCE,
      "24 CFR 35.110 and 15 USC 2681(9): varnish, shellac and other coatings count as paint (from memory)",
    ],
  },
  failing: [
    {
      title: "Scuffing the paint of a table from 1936",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   clean with soap
  step   scuff 180 #! lead-not-tested
  step   dust #! lead-unsafe-method
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
    {
      title: "A swab that finds none proves nothing",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   clean with soap
  step   scuff 180 #! lead-not-tested
  step   dust #! lead-unsafe-method
}

piece table {
  built 1936
  surface legs {
    shape    4 of post 50 mm x 700 mm
    wood     beech
    existing alkyd paint, 2 coats
    lead     none_found by swab 2026-11-03
  }
}

job legs {
  piece table
  apply prepare to legs
}
`,
    },
    {
      title: "An old clear sanded off dry",
      text: `recipe take_off {
  for    wood
  safety dust_mask
  step   clean with soap
  step   sand 80, 120, 180 #! lead-not-tested
  step   dust #! lead-unsafe-method
}

piece table {
  built 1952
  surface top {
    shape    panel 600 mm x 400 mm
    wood     beech
    existing nitrocellulose lacquer
  }
}

job tables {
  piece table
  apply take_off to top
}
`,
    },
    {
      title: "Built in 1985, and no country says whether that is late enough",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   clean with soap
  step   scuff 180 #! lead-not-tested
  step   dust
}

piece table {
  built 1985
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
      title: "Old varnish scuffed three weeks before the laboratory's result",
      text: `recipe dulled {
  for    wood
  safety dust_mask
  step   clean with soap
  wait   overnight
  step   scuff 220 #! lead-not-tested
  step   dust
}

piece chair {
  built 1950
  surface frame {
    shape    4 of post 38 mm x 430 mm
    wood     beech
    existing oil varnish
    lead     none_found by laboratory 2027-06-01
  }
}

shop barn {
  country US
  air     21 C, 50 % RH
  hours   Mon to Fri 08:00 to 16:00
}

job chairs {
  piece chair
  in    barn
  start 2027-05-10
  apply dulled to frame
}
`,
    },
  ],
  passing: [
    {
      title: "A laboratory found none",
      text: `recipe prepare {
  for    wood
  safety dust_mask
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
    lead     none_found by laboratory 2026-11-03
  }
}

job legs {
  piece table
  apply prepare to legs
}
`,
    },
    {
      title: "A test by a laboratory is stated, and the old paint is kept wet",
      text: `recipe prepare {
  for    wood
  safety lead_test, lead_safe
  step   clean with soap
  step   scuff wet 180
  step   clean with water
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
  looksAt: ({ kind, isCoated }) => kind !== "assumed" && isCoated,
  checks: { onRun: check },
};

function check({ run, report }: RunContext): void {
  if (run.kind === "assumed") return;
  const said = new Set<string>();
  for (const moment of run.moments) {
    const { action } = moment;
    if (action.op !== "step" || lookUp(VERBS, action.verb) === undefined || !moment.before.certain) continue;
    const matter = leadReached(run, action, moment.before);
    if (!matter) continue;
    const apply = run.job && action.frames[0] ? placeKey(action.frames[0]) : "";
    if (said.has(apply) || promisesTest(run, action) || waitsForLaboratory(run)) continue;
    const level = levelOf(run, matter, action);
    if (!matter.coat || !level) continue;
    said.add(apply);
    report(action, reportOf(run, action, matter, level));
  }
}

/** A laboratory's all-clear that is stated and of a later day than the first of the work. */
function isResultToCome(run: SurfaceRun): boolean {
  const { result, begins } = leadFactsOf(run);
  return result?.method === "laboratory" && begins !== undefined && (result.date ?? "") > begins;
}

/** Found lead needs no test. */
function levelOf(
  run: SurfaceRun,
  matter: LeadMatter,
  step: StepAction,
): "error" | "warning" | "information" | undefined {
  const { status, kind } = matter;
  if (status === "found") return undefined;
  if (kind === "paint") return status === "presumed" ? "error" : "information";
  if (!isOldClear(run, matter, step)) return isResultToCome(run) ? "warning" : undefined;
  return step.verb === "strip" || step.wet || saysWet(step.what ?? "") ? "information" : "error";
}

function reportOf(
  run: SurfaceRun,
  action: StepAction,
  matter: LeadMatter,
  severity: "error" | "warning" | "information",
): Report {
  const facts = leadFactsOf(run);
  const { coat, kind } = matter;
  const name = sentence(coatName(coat!).replace(/`/gu, ""));
  if (isResultToCome(run))
    return {
      headline: fitting([
        t`${name} is worked on before its lead test is back`,
        t`This work starts before the laboratory's result for lead`,
      ]),
      why: t`The result is of ${dayText(facts.result!.date!)}, the work begins on ${dayText(facts.begins!)}. ${VERBS[action.verb]!()} sets lead free; it poisons those who breathe or swallow it, children above all.`,
      remedy: t`Start once the result is there. Until then the old coat counts as one that holds lead.`,
      severity,
      related: [related(coat!.place, t`The old coating`)],
    };
  const noted = notedAs(matter);
  const leaveAlone = `${t`Leave it alone until a laboratory has tested every layer: not tested counts as lead. Until its report is there, state \`safety lead_test\` at the top of the recipe (a test is to come) and do no work on it. Then write the result at the surface, such as \`lead none_found by laboratory YYYY-MM-DD\`.`}${facts.country === undefined && severity === "information" ? t` Or state the shop's \`country\`, whose law may settle it.` : ""}`;
  const againAlone = t`leave it alone until a laboratory has tested it, with \`safety lead_test\` in this recipe too, and write the result at this surface.`;
  return {
    headline: fitting(
      // In a lacquer less than in what lies under it.
      (noted === "lacquer"
        ? [t`The old finish of \`${run.label}\``, t`The old finish`]
        : [name, kind === "paint" ? t`The old paint` : t`The old clear`]
      ).map((what) => t`${what} may hold lead and is not tested`),
    ),
    why: t`${leadNote(facts, noted, true)} ${VERBS[action.verb]!()} sets it free; it poisons those who breathe or swallow it, children above all.`,
    atFirst: leaveAlone,
    remedy: [
      leaveAlone,
      ifNoneFound(action, coat!),
      t`Where lead is found: ask the local authority first who may do this work and where the waste goes. ${bestWay(action, kind)}. Else it is wet work by hand, ${behind(action)} and plastic sheeting, with others kept out, children and pregnant women above all. Write \`lead found by laboratory YYYY-MM-DD\`, state \`safety lead_safe\`, and the check says what each line needs.`,
    ].join("\n"),
    ...(run.job
      ? {
          again: {
            key: `lead of job ${run.job.name}`,
            of: noted === "lacquer" ? t`the old finish of \`${run.label}\`` : coatName(coat!),
            atFirst: againAlone,
            remedy: [
              againAlone,
              ifNoneFoundEither(action, coat!),
              t`Where lead is found on either, treat the whole piece as lead. ${bestWay(action, kind)}. Else it is wet work by hand, as told there.`,
            ].join("\n"),
          },
        }
      : {}),
    severity,
    related: [related(coat!.place, t`The old coating`)],
  };
}

/** A filter against dust keeps no vapour back. */
const behind = ({ verb }: StepAction): string =>
  verb === "strip"
    ? t`in fresh air with every heater and flame off and cold, behind a P100 respirator with cartridges for the vapour (a dust mask is not enough)`
    : t`behind a P100 respirator (a dust mask is not enough)`;

/** The same where an earlier finding has told it. */
const ifNoneFoundEither = (step: StepAction, coat: Coat): string =>
  step.verb === "strip" || burnsDry(coat)
    ? ifNoneFound(step, coat)
    : t`Where none is found, wear a dust mask here too (\`safety dust_mask\`).`;

/** Dust stays dust. P2 of EN 149 is as fine as N95, P3 about as P100 (42 CFR 84): from memory, confidence high. */
function ifNoneFound({ verb, grits }: StepAction, coat: Coat): string {
  const mask = t`a dust mask (N95 or P2 at least, \`safety dust_mask\`)`;
  if (verb === "strip")
    return t`Where none is found: keep to the stripper's label, and sand after it with ${mask}.`;
  if (!burnsDry(coat)) return t`Where none is found: the dust still harms, so wear ${mask}.`;
  return verb === "sand"
    ? t`Where none is found: still work wet, with water and never with spirits, as dry dust of nitrocellulose burns. Once no lacquer is left and the wood is dry, smooth the raised grain by hand with ${grits.at(-1) ?? 180}, and wear ${mask}.`
    : t`Where none is found: still work wet, with water and never with spirits, as dry dust of nitrocellulose burns and wear ${mask}.`;
}
