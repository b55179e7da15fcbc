/** The classic ways, each with its five answers: a text to change, for those who would rather not be asked. */
import type { Answers, Choice } from "./answers.ts";

export interface Template extends Choice {
  readonly answers: Omit<Answers, "size" | "units">;
}

const template = (word: string, label: string, detail: string, answers: Template["answers"]): Template => ({
  word,
  label,
  detail,
  answers,
});

export const TEMPLATES: readonly Template[] = [
  template("hard-table", "Table under a hard clear", "oak, sanded, three coats of waterborne polyurethane", {
    piece: "table",
    wood: "oak",
    now: "bare",
    look: "clear",
    place: "workshop",
  }),
  template("oiled-desk", "Oiled desk", "beech, two thin coats of hardwax oil", {
    piece: "table",
    wood: "beech",
    now: "bare",
    look: "oiled",
    place: "room",
  }),
  template("stained-bookcase", "Stained bookcase", "pine, conditioned, stained, under a clear", {
    piece: "bookcase",
    wood: "pine",
    now: "bare",
    look: "stained",
    place: "workshop",
  }),
  template("painted-chair", "Painted chair", "the old paint stays, tested for lead and scuffed wet", {
    piece: "chair",
    wood: "beech",
    now: "paint",
    look: "painted",
    place: "room",
  }),
  template("shellac-box", "Box in shellac", "mahogany, three thin coats", {
    piece: "chest",
    wood: "mahogany",
    now: "bare",
    look: "shellac",
    place: "workshop",
  }),
  template("tired-chairs", "Tired chair", "a sound varnish, cleaned, scuffed and coated again", {
    piece: "chair",
    wood: "beech",
    now: "varnish",
    look: "kept",
    place: "room",
  }),
  template("found-cabinet", "Cabinet from the attic", "nobody knows what is on it: the tests come first", {
    piece: "cabinet",
    wood: "unknown",
    now: "unknown",
    look: "clear",
    place: "workshop",
  }),
  template("garden-bench", "Garden bench", "teak, oiled, in rain and sun", {
    piece: "bench",
    wood: "teak",
    now: "bare",
    look: "outdoors",
    place: "garage",
  }),
];
