/**
 * The wall around an analysis: no method of it throws, for any text and any offset.
 *
 * A method that fails for a fault in this program answers as if there were nothing to say, and the fault is told. What is
 * found is no answer of that kind: findings that are missing look like a sound recipe, so they come with an
 * `internal-error`.
 */

import { fileProblems } from "../../../grammar/src/parse.ts";
import { t } from "../../../grammar/src/translate.ts";
import { TooLarge } from "../core/budget.ts";
import { textOf } from "../core/findings.ts";
import { type FaultListener, faultMessage, fileStart, INTERNAL_ERROR } from "../core/internal-error.ts";
import type { Program } from "../core/model/program.ts";
import type { FileId } from "../core/place.ts";
import type { FileFinding } from "../views/places/file-finding.ts";
import type { Analysis } from "./types.ts";

/** `analysis`, with every method guarded; where one fails, `onFault` is told. */
export function guarded(analysis: Analysis, program: Program, onFault: FaultListener): Analysis {
  const guard =
    <A extends readonly unknown[], R>(
      part: string,
      method: (...given: A) => R,
      fallback: (error: unknown, ...given: A) => R,
    ) =>
    (...given: A): R => {
      try {
        return method(...given);
      } catch (error) {
        if (!(error instanceof TooLarge))
          onFault({ part, place: fileStart(typeof given[0] === "string" ? given[0] : ""), error });
        return fallback(error, ...given);
      }
    };
  const nothing = (): undefined => undefined;
  const none = (): readonly never[] => [];
  const refusal = (): { readonly refusal: string } => ({
    refusal: t`This failed for a bug in Finishwright, and nothing was changed.`,
  });
  return {
    get files() {
      return analysis.files;
    },
    text: analysis.text,
    // What fails on the way fails again in `findings`, and is named there.
    *steps(file) {
      try {
        yield* analysis.steps(file);
      } catch {}
    },
    awaitsPlans: guard("Working out the jobs", analysis.awaitsPlans, () => false),
    findings: guard("The check of this file", analysis.findings, (error, file) =>
      withoutAnalysis(program, file, error),
    ),
    hover: guard("Hovering", analysis.hover, nothing),
    symbols: guard("The outline", analysis.symbols, none),
    completions: guard("Completion", analysis.completions, none),
    inlayHints: guard("Inlay hints", analysis.inlayHints, none),
    jobLenses: guard("Lenses", analysis.jobLenses, none),
    fixAll: guard("Fixing all", analysis.fixAll, none),
    workshop: guard("The list of the workshop", analysis.workshop, none),
    jobToWrite: guard("Writing a job", analysis.jobToWrite, nothing),
    repairToWrite: guard("Writing a repair", analysis.repairToWrite, nothing),
    nextToRecord: guard("Recording", analysis.nextToRecord, none),
    formatting: guard("Formatting", analysis.formatting, none),
    totals: guard("Totals", analysis.totals, none),
    jobs: guard("Working out the jobs", analysis.jobs, none),
    alone: guard("Working out a job alone", analysis.alone, (_, result) => result),
    program: analysis.program,
    units: guard("The choice of units", analysis.units, () => "metric"),
    shopPlans: guard("Working out the plans of shops", analysis.shopPlans, () => NO_PLANS),
    sheets: guard("Bench sheets", analysis.sheets, none),
    bench: guard("The drawing of a job", analysis.bench, nothing),
    usedBy: guard("The list of used files", analysis.usedBy, (_, file) => [file]),
    definition: guard("Going to a definition", analysis.definition, nothing),
    references: guard("Finding references", analysis.references, none),
    highlights: guard("Highlighting", analysis.highlights, none),
    renameTarget: guard("Renaming", analysis.renameTarget, refusal),
    rename: guard("Renaming", analysis.rename, refusal),
    workspaceSymbols: guard("The search for symbols", analysis.workspaceSymbols, none),
    useLinks: guard("Links of `use` lines", analysis.useLinks, none),
    editsForMoves: guard("Following moved files", analysis.editsForMoves, none),
    callItems: guard("The call hierarchy", analysis.callItems, none),
    incomingCalls: guard("The call hierarchy", analysis.incomingCalls, none),
    outgoingCalls: guard("The call hierarchy", analysis.outgoingCalls, none),
    semanticTokens: guard("Colouring", analysis.semanticTokens, none),
    tokenPieces: guard("Colouring", analysis.tokenPieces, none),
    textColours: guard("Colours", analysis.textColours, none),
    foldings: guard("Folding", analysis.foldings, none),
    selections: guard("Selecting", analysis.selections, none),
    signatures: guard("Signature help", analysis.signatures, none),
  };
}

const NO_PLANS = { plans: [], singles: [], leftOut: [], pending: new Set<never>() };

/** What can be said of a text that could not be checked: where it is not in the notation, and that it was not checked. */
function withoutAnalysis(program: Program, file: FileId, error: unknown): readonly FileFinding[] {
  const tree = program.files.get(file)?.tree;
  if (tree === undefined) return [];
  const finding = (rule: string, span: FileFinding["span"], message: string): FileFinding => ({
    rule,
    severity: "error",
    file,
    span,
    ...textOf(message),
    message,
    related: [],
    fixes: [],
  });
  return [
    finding(INTERNAL_ERROR, { start: 0, end: 0 }, faultMessage([t`The check of this file`], error)),
    ...fileProblems(tree).map(({ span, message }) => finding("syntax", span, message)),
  ];
}
