/** The units that a text is written in: what its figures are told in, as long as nobody asks for others. */
import { lex } from "../../../grammar/src/lexer.ts";
import type { DeclarationBody } from "../../../grammar/src/tree.ts";
import { UNIT_ALIASES } from "../../../grammar/src/units.ts";
import type { Checker } from "./checker.ts";
import type { UnitSystem } from "./measure/shown-figures.ts";
import { type Program, type ProgramFile, reachableFiles } from "./model/program.ts";
import { memo, onceFor } from "./once.ts";
import type { FileId } from "./place.ts";

const US = new Set([
  "in",
  "in2",
  "ft",
  "ft2",
  "ft3",
  "yd",
  "floz",
  "pt",
  "qt",
  "gal",
  "oz",
  "lb",
  "F",
  "mil",
]);
const METRIC = new Set(["mm", "cm", "m", "mm2", "cm2", "m2", "m3", "mL", "L", "um", "g", "kg", "C"]);

/** What the figures of a file are told in: what somebody asks for, or else the units of the text. */
export const unitsFor = ({ program, units }: Pick<Checker, "program" | "units">, file: FileId): UnitSystem =>
  units?.(file) ?? habitOf(program, file);

/** Of a file and all that it uses; metric where it is as much the one as the other. Asked for every job, and answered once. */
export const habitOf = (program: Program, file: FileId): UnitSystem => habitsIn(program)(file);

const habitsIn = onceFor((program: Program) =>
  memo((file: FileId): UnitSystem => habitBy(balanceIn, program, file)),
);

/** `balanceOfFile` is what its declarations come to by `balanceOf`. */
export function habitBy(
  balanceOfFile: (file: ProgramFile) => number,
  program: Program,
  file: FileId,
): UnitSystem {
  const files = reachableFiles(program, file).flatMap((each) => program.files.get(each) ?? []);
  return files.reduce((sum, each) => sum + balanceOfFile(each), 0) > 0 ? "us" : "metric";
}

const balanceIn = onceFor(({ declarations }: ProgramFile): number =>
  declarations.reduce((sum, { tree }) => sum + balanceOf(tree.body), 0),
);

/** Of several files those that all of them are told in, and metric where they differ. */
export const unitsForAll = (unitsOf: (file: FileId) => UnitSystem, files: readonly FileId[]): UnitSystem =>
  files.length > 0 && files.every((file) => unitsOf(file) === "us") ? "us" : "metric";

/** How many more of its figures have units of the United States than metric ones. Cans are what shops sell. */
export const balanceOf = onceFor(({ text: said }: DeclarationBody): number => {
  let balance = 0;
  let isCans = false;
  let isFirst = true;
  for (const { kind, text } of lex(said)) {
    if (kind === "newline") isFirst = true;
    else if (kind !== "space") {
      if (isFirst) isCans = text === "packs" || text === "sold";
      isFirst = false;
    }
    if (kind !== "unit" || isCans) continue;
    const unit = UNIT_ALIASES[text] ?? text;
    balance += US.has(unit) ? 1 : METRIC.has(unit) ? -1 : 0;
  }
  return balance;
});
