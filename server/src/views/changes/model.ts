/** What changed in meaning, as plain data, and what it is worked out from. */
import type { Program } from "../../core/model/program.ts";
import type { FileId } from "../../core/place.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import type { ContainerCount } from "../../core/totals/types.ts";
import type { AnalysedFiles, ComparedFigure } from "../job-comparison.ts";
import type { FindingChange } from "./finding-changes.ts";
import type { LineChange } from "./line-changes.ts";
import type { DryingWait } from "./work.ts";
import type { DeclaredKind } from "./written.ts";

/** What is asked of either state. */
export interface StateAnalysis extends AnalysedFiles {
  readonly program: Program;
  jobs(file: FileId): readonly JobResult[];
}

/** One state of the files. */
export interface FilesState {
  readonly analysis: StateAnalysis;
  /** The files whose changes are asked for. */
  readonly asked: readonly FileId[];
  /** What a file of this state shares with the file of the other state that it is compared with. */
  readonly keyOf: (file: FileId) => string;
}

export interface Changes {
  /** Files in which something changed in meaning. */
  readonly files: readonly FileChange[];
  /** Files with another text and no other meaning. */
  readonly layoutOnly: readonly FilePair[];
  /** Files with another name and no other meaning. */
  readonly nameOnly: readonly FilePair[];
  /** How many files were looked at. */
  readonly looked: number;
}

/** One file in both states; absent where that state has none. */
export interface FilePair {
  readonly before?: FileId;
  readonly after?: FileId;
  /** Whether it has another name than before. */
  readonly isRenamed: boolean;
}

export interface FileChange extends FilePair {
  readonly status: ChangeStatus;
  readonly declarations: readonly DeclarationChange[];
  /** The files that it uses, as they are written. */
  readonly uses: readonly LineChange[];
  /** On lines of no declaration. */
  readonly findings: readonly FindingChange[];
}

export type ChangeStatus = "added" | "removed" | "changed";

export interface DeclarationChange {
  readonly kind: Exclude<DeclaredKind, "use">;
  readonly name: string;
  readonly title: string;
  readonly status: ChangeStatus;
  /** Of jobs in every figure that has another value now, of recipes in coats. */
  readonly figures: readonly FigureChange[];
  readonly materials: readonly MaterialChange[];
  readonly waits: readonly WaitChange[];
  /** Of surfaces whose work changed; of a recipe there is one list, without a place. */
  readonly work: readonly { readonly place: string; readonly lines: readonly LineChange[] }[];
  /** What is written, apart from work that `work` tells. */
  readonly written: readonly LineChange[];
  readonly findings: readonly FindingChange[];
  /** The currency of either state. */
  readonly currency: { readonly before?: string; readonly after?: string };
}

/** A number, an ISO date-time, or null where it is not known; undefined where there is no such job. */
export interface FigureChange {
  readonly figure: ComparedFigure;
  readonly before: number | string | null | undefined;
  readonly after: number | string | null | undefined;
}

export interface MaterialAmount {
  readonly litres: number | null;
  readonly cans: readonly ContainerCount[];
  readonly cost: number | null;
}

/** Undefined where it is not used. */
export interface MaterialChange {
  readonly name: string;
  readonly title: string;
  readonly before: MaterialAmount | undefined;
  readonly after: MaterialAmount | undefined;
}

export interface WaitChange {
  readonly material: string;
  readonly stage: DryingWait["stage"];
  /** Hours; undefined where there is no such wait. */
  readonly before: number | undefined;
  readonly after: number | undefined;
}
