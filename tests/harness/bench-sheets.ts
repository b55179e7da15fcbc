/** Bench sheets as data, and a small shop to write recipes for. */
import type { Sheet, SheetEntry, SheetProcedure, SheetStep } from "../../server/src/views/sheet/model.ts";
import { analyse } from "./check-text.ts";

export const sheets = (text: string, others: Readonly<Record<string, string>> = {}): readonly Sheet[] =>
  analyse({ ...others, "test.finish": text }).sheets("test.finish");

export const only = (text: string, others: Readonly<Record<string, string>> = {}): Sheet => {
  const all = sheets(text, others);
  if (all.length !== 1)
    throw new Error(`expected one sheet, found ${all.map(({ name }) => name).join(", ")}`);
  return all[0]!;
};

export const stepsOf = ({ entries }: SheetProcedure): readonly SheetStep[] =>
  entries.filter((entry): entry is SheetStep => entry.kind === "step");

export const titles = (sheet: Sheet): readonly string[] =>
  sheet.procedures.flatMap((procedure) =>
    stepsOf(procedure).map(({ number, title }) => (number === undefined ? title : `${number} ${title}`)),
  );

/** The step, coat or wait that stands at this place, from 1; waits are counted here. */
export const step = (sheet: Sheet, place: number, surface = 0): SheetStep =>
  stepsOf(sheet.procedures[surface]!)[place - 1]!;

/** Entries as words: `# part`, `(note)`, `wait`, step numbers. */
export const outline = ({ entries }: SheetProcedure): readonly string[] =>
  entries.map((entry: SheetEntry) => {
    if (entry.kind === "part") return `# ${entry.title}${entry.docs.text ? `: ${entry.docs.text}` : ""}`;
    if (entry.kind === "note") return `(${entry.text})`;
    return entry.kind === "open" ? `? ${entry.text}` : String(entry.number ?? "wait");
  });

export const STOCK = `## Level it with long strokes.
material bench_clear "Bench clear" {
  family  waterborne polyurethane
  covers  10 m2/L
  solids  40 %
  touch   1 h
  recoat  2 h to 24 h
  cure    10 days
  rated   21 C, 50 % RH
  limits  10 C to 30 C, 80 % RH
  packs   250 mL for 8.00, 1 L for 20.00
  on_hand 0.1 L
}
material umber "Umber dye" {
  family dye stain
  solids 0 %
}
material oil "Slow oil" {
  family drying oil
  covers 20 m2/L
  recoat 12 h
  cure   5 days
  rated  21 C, 50 % RH
}
`;
export const PLACES = `## From the mill's loft.
piece board "Loft board" {
  built     1990
  meant_for children
  ## Only the side that shows.
  surface   face {
    shape area 2 m2
    wood  beech
    wear  light
  }
}
## The stove is out for good.
shop mill "The mill" {
  air   11 C, 50 % RH
  hours Mon to Fri 09:00 to 17:00
}
`;
export const job = (fields: string, recipe = "work"): string => `## For the reading room.
job boards "Two boards" {
  piece board x 2
  ${fields}
  apply ${recipe} to face
}
`;
