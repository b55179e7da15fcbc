/**
 * Ways of working on old coatings that throw lead about: too much heat, machines without a HEPA filter, blasting, dry
 * sanding and scraping, and volatile strippers without air. Flames are `open-flame`'s.
 */
import { lookUp } from "../../../../../grammar/src/statements.ts";
import type { Severity } from "../../findings.ts";
import { LEAD_METHODS_SOURCE, leadNote } from "../../knowledge/lead.ts";
import { degreesText } from "../../measure/figures.ts";
import { sentence } from "../../sentence.ts";
import type { Action, NoteAction, StepAction } from "../../surface/actions.ts";
import { leadFactsOf } from "../../surface/lead.ts";
import type { SurfaceRun } from "../../surface/run.ts";
import type { Moment } from "../../surface/state.ts";
import { type LeadMatter, leadIn, leadReached, takesOff, waitsForLaboratory } from "../lead-caution.ts";
import type { Report, RunContext, TradeRule } from "../rule.ts";
import { textOf } from "../spoken-words.ts";
import { related } from "../texts.ts";
import {
  BLASTING,
  clauseNaming,
  HEAT_GUN,
  hottestC,
  SANDING_MACHINE,
  saysHepa,
  saysWet,
} from "../work-words.ts";

const VERBS: ReadonlySet<string> = new Set(["sand", "scuff", "scrape", "strip", "distress"]);

/** 1100 F, the limit of 24 CFR 35.140(c): (1100 − 32) × 5/9. */
const HOTTEST_C = ((1100 - 32) * 5) / 9;

const OLD_TABLE = `
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
`;

const FOUND_TABLE = OLD_TABLE.replace(
  "    existing alkyd paint, 2 coats\n",
  "    existing alkyd paint, 2 coats\n    lead     found by swab 2026-11-03\n",
);

export const leadUnsafeMethod: TradeRule = {
  id: "lead-unsafe-method",
  group: "safety",
  severity: "error",
  speaksOfLead: true,
  docs: {
    summary:
      "A coating that holds lead, or may hold it, is worked on by a heat gun above 1100 F (593 C) or of unstated heat, by a machine or by blasting without a HEPA filter, by dry sanding or scraping, or with a volatile stripper without stated ventilation.",
    why: "Heat turns lead into fume, dry work and machines into dust. Neither can be seen, and both stay in the room.",
    remedy:
      'Work wet (`sand wet 180`, `scrape "misted with water"`), by a machine whose words name a HEPA filter, by a heat gun whose words name its temperature, or with a stripper and `ventilate`; and state `safety lead_safe`. Or have a laboratory test every layer, and state its result at the surface. Better still, leave sound old paint where it is.',
    sources: [LEAD_METHODS_SOURCE, "29 CFR 1926.62 on lead in construction"],
  },
  failing: [
    {
      title: "To be tested, but sanded dry",
      text: `recipe prepare {
  for    wood
  safety lead_test, dust_mask
  step   clean with soap
  step   sand 120 #! lead-unsafe-method
  step   dust
}
${OLD_TABLE}`,
    },
    {
      title: "A heat gun of unstated heat on paint in which a swab found lead",
      text: `recipe prepare {
  for    wood
  safety lead_safe
  step   scrape "heat gun" #! lead-unsafe-method
  step   clean with water
}
${FOUND_TABLE}`,
    },
    {
      title: "Too hot",
      text: `recipe prepare {
  for    wood
  safety lead_safe
  step   scrape "heat gun at 600 C" #! lead-unsafe-method
  step   clean with water
}
${FOUND_TABLE}`,
    },
    {
      title: "An orbital sander without a HEPA filter; the recipe's own words say that lead was found",
      text: `recipe prepare {
  for    wood
  safety dust_mask, hearing, lead_safe
  step   test "swab of the old paint: positive for lead"
  step   sand 80, 120 "orbital sander with a dust bag" #! lead-unsafe-method
  step   dust
}
`,
    },
    {
      title: "A stripper, and no fresh air is stated",
      text: `recipe prepare {
  for    wood
  safety lead_test, lead_safe, gloves, eye_protection, vapour_respirator
  step   strip with paint_stripper #! lead-unsafe-method, no-ventilation
  step   clean with water
}
${FOUND_TABLE}`,
    },
    {
      title: "Sandblasted",
      text: `recipe prepare {
  for    wood
  safety lead_test, hearing
  note   "The joiner has the legs sandblasted." #! lead-unsafe-method
  step   clean with water
}
${OLD_TABLE}`,
    },
  ],
  passing: [
    {
      title: "A heat gun below 593 C, and then wet work",
      text: `recipe prepare {
  for    wood
  safety lead_safe
  step   scrape "heat gun at 350 C"
  step   clean with water
}
${FOUND_TABLE}`,
    },
    {
      title: "A sander with a HEPA vacuum",
      text: `recipe prepare {
  for    wood
  safety lead_test, lead_safe, hearing
  step   clean with soap
  step   sand 80, 120 "orbital sander, shrouded, on a HEPA vacuum"
  step   dust
}
${OLD_TABLE}`,
    },
    {
      title: "No lead found by a laboratory: sanded dry, with the mask on",
      text: `recipe prepare {
  for    wood
  safety dust_mask
  step   clean with soap
  step   sand 120
  step   dust
}
${OLD_TABLE.replace(
  "    existing alkyd paint, 2 coats\n",
  "    existing alkyd paint, 2 coats\n    lead     none_found by laboratory 2026-11-03\n",
)}`,
    },
  ],
  checks: { onRun: check },
};

type Method = "heat" | "too hot" | "blast" | "machine" | "stripper" | "dry";

function check({ run, report }: RunContext): void {
  let lastNote: Method | undefined;
  for (const [index, moment] of run.moments.entries()) {
    const { action, before } = moment;
    if (!before.certain) continue;
    if (action.op === "note") {
      const matter = leadIn(run, before.layers);
      const method = matter && methodOfText(action.text, action.text);
      if (method && method !== "machine") {
        lastNote = method;
        report(action, reportOf(run, action, matter, method, "error"));
      }
      continue;
    }
    if (action.op !== "step" || !VERBS.has(action.verb)) continue;
    // The note above has said it.
    const isSaid = lastNote !== undefined;
    lastNote = undefined;
    if (isSaid) continue;
    const matter = leadReached(run, action, before);
    const method = matter && methodOf(run, moment as Moment<StepAction>, index);
    const severity = matter && method && severityOf(run, matter, method, action);
    if (severity) report(action, reportOf(run, action, matter, method, severity));
  }
}

/** What a step does, by its words and the notes beside it, and by its verb. */
function methodOf(run: SurfaceRun, { action }: Moment<StepAction>, index: number): Method | undefined {
  const own = action.what ?? "";
  const text = [own, ...notesBeside(run, index)].join(". ");
  const named = methodOfText(text, text);
  if (named) return named;
  if (action.verb === "strip")
    return isVolatile(action) && !action.duties.has("ventilate") ? "stripper" : undefined;
  const isDusty = !action.wet && !saysWet(text) && !saysHepa(text);
  // Paint that was softened by heat comes off in strips: 24 CFR 35.140(e) lets it be scraped dry.
  return isDusty && clauseNaming(text, HEAT_GUN) === undefined ? "dry" : undefined;
}

function methodOfText(text: string, near: string): Method | undefined {
  const gun = clauseNaming(text, HEAT_GUN);
  if (gun !== undefined) {
    const heat = hottestC(gun) ?? hottestC(near);
    if (heat === undefined) return "heat";
    if (heat > HOTTEST_C) return "too hot";
  }
  if (clauseNaming(text, BLASTING) && !saysHepa(near)) return "blast";
  return clauseNaming(text, SANDING_MACHINE) && !saysHepa(near) ? "machine" : undefined;
}

/** The notes directly above and below a line. */
function notesBeside({ moments }: SurfaceRun, index: number): readonly string[] {
  const texts: string[] = [];
  for (let at = index - 1; at >= 0 && isNote(moments[at]!.action); at -= 1)
    texts.push(textOf(moments[at]!.action)!);
  for (let at = index + 1; at < moments.length && isNote(moments[at]!.action); at += 1)
    texts.push(textOf(moments[at]!.action)!);
  return texts;
}

const isNote = (action: Action): action is NoteAction => action.op === "note";

/** A stripper by its family; one whose label says that it gives off next to nothing is not meant. */
function isVolatile({ use }: StepAction): boolean {
  const material = use?.material;
  if (!material?.family || material.family.carrier === "water") return false;
  return material.voc?.origin !== "stated" || material.voc.value > 50;
}

const GRAVE: ReadonlySet<Method> = new Set(["heat", "too hot", "blast", "machine"]);

/**
 * Heat, machines and blasting are errors whatever the doubt. Dry work by hand and strippers are errors on lead
 * that was found and on paint of which it is presumed; where the recipe makes it all depend on a laboratory, it lacks the
 * result alone. What is not tested at all `lead-not-tested` says.
 */
function severityOf(
  run: SurfaceRun,
  { status, kind }: LeadMatter,
  method: Method,
  step: StepAction,
): Severity | undefined {
  if (GRAVE.has(method)) return kind === "clear" && status === "possible" ? "warning" : "error";
  if (status === "found") return "error";
  if (kind === "clear") return undefined;
  if (waitsForLaboratory(run)) return "information";
  if (!step.duties.has("lead_test")) return undefined;
  if (status === "presumed") return "error";
  return takesOff(step) ? "warning" : undefined;
}

/** With what is worked on in between, at most 70 characters. */
const HEADLINES: Readonly<Record<Method, readonly [before: string, after: string]>> = {
  heat: ["A heat gun of unstated heat on ", ""],
  "too hot": ["A heat gun above 593 C on ", ""],
  blast: ["Blasting without a HEPA filter on ", ""],
  machine: ["A sander without a HEPA filter on ", ""],
  stripper: ["", " is stripped without air"],
  dry: ["", " is worked on dry"],
};

const DRY_VERBS: Readonly<Record<string, string>> = {
  sand: " is sanded dry",
  scuff: " is scuffed dry",
  scrape: " is scraped dry",
  distress: " is rubbed through dry",
};

function headline(what: string, method: Method, action: Action): string {
  const [before, after] = HEADLINES[method];
  const verb = action.op === "step" && method === "dry" ? lookUp(DRY_VERBS, action.verb) : undefined;
  return `${before}${before === "" ? sentence(what) : what}${verb ?? after}`;
}

const REMEDIES: Readonly<Record<Method, string>> = {
  heat: `State the heat, at most ${degreesText(Math.floor(HOTTEST_C))} (\`scrape "heat gun at 350 C"\`), or put the gun away and scrape wet; never wet work under an electric gun`,
  "too hot": `Keep the gun below ${degreesText(Math.floor(HOTTEST_C))} (1100 F), or put it away and scrape wet; never wet work under an electric gun`,
  blast: "Do not have it blasted without a HEPA filter and containment; take the paint off wet, or leave it",
  machine:
    'Name a HEPA shroud and vacuum on the line (`sand 80 "orbital sander, HEPA vacuum"`), or sand wet by hand',
  stripper: "State `ventilate` with the air that the stripper's label asks for",
  dry: 'Work wet (`sand wet 180`, `scuff wet 180`, `scrape "misted with water"`), or have a laboratory test every layer and state its result at the surface',
};

function reportOf(
  run: SurfaceRun,
  action: Action,
  { status, kind, coat }: LeadMatter,
  method: Method,
  severity: Severity,
): Report {
  const what = kind === "paint" ? "old paint" : "an old clear";
  const facts = leadFactsOf(run);
  const isFact = status === "found" && facts.result?.finding === "found";
  const note =
    isFact || status !== "found" ? leadNote(facts) : "The recipe's own words say that lead was found.";
  const waiting = severity === "information";
  return {
    headline: waiting
      ? "The laboratory's result is not stated at the surface"
      : headline(`${what} that ${status === "found" ? "holds" : "may hold"} lead`, method, action),
    why: `${note} Lead dust and lead fume poison whoever breathes or swallows them, children above all.`,
    remedy: waiting
      ? "Once the laboratory has found none, state it at the surface, such as `lead none_found by laboratory 2026-11-03`; until then, work wet and by `lead_safe`."
      : `${REMEDIES[method]}; state \`lead_safe\`, and ask your local codes who may do this work.`,
    severity,
    related: coat ? [related(coat.place, "The old coating")] : [],
  };
}
