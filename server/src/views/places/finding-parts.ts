/**
 * What goes by single rules where findings are told together: pages, comments that allow, counts by rule, marks in tests.
 */
import type { FileFinding, FileFindingPart } from "./file-finding.ts";

/** All findings that one stands for, itself among them. */
export const partsOf = (finding: FileFinding): readonly FileFindingPart[] => finding.parts ?? [finding];
