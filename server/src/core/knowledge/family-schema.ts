/**
 * The shape of one row of the family table. The program has only its types: the rows came with it and cannot change, so
 * the tests check them by zod once, and no start does it again.
 *
 * Units: m2/L, hours, degrees C, g/L, micrometres, percent as a number from 0 to 100.
 */
import * as z from "zod";
import { FAMILY_NAMES } from "./family-names.ts";

/** How a figure is known: a published source, common practice of the trade, or from memory with a confidence. */
export const sourceSchema = z.string().min(3);

export const roleSchema = z.enum([
  "clear",
  "oil",
  "wax",
  "stain",
  "glaze",
  "paint",
  "primer",
  "conditioner",
  "sealer",
  "filler",
  "cleaner",
  "solvent",
  "stripper",
  "bleach",
  "hardener",
  "glue",
]);
export type Role = z.infer<typeof roleSchema>;

/** What leaves the wet film, or carries the solids. */
export const carrierSchema = z.enum([
  "water",
  "mineral spirits",
  "alcohol",
  "lacquer thinner",
  "acetone",
  "none",
]);
export type Carrier = z.infer<typeof carrierSchema>;

export const binderSchema = z.enum([
  "polyurethane dispersion",
  "acrylic",
  "oil-modified urethane",
  "alkyd",
  "oil varnish",
  "nitrocellulose",
  "amino-alkyd",
  "shellac",
  "drying oil",
  "oil and wax",
  "wax",
  "soap",
  "casein",
  "epoxy",
  "polyester",
  "two part urethane",
  "mineral oil",
  "mineral",
  "dye",
  "none",
]);

export type Binder = z.infer<typeof binderSchema>;

/** How it dries: decides how the air of the shop lengthens its times. */
export const dryingSchema = z.enum(["waterborne", "oxidising", "reacting", "solvent release", "none"]);
export type Drying = z.infer<typeof dryingSchema>;

export const familySchema = z.strictObject({
  name: z.enum(FAMILY_NAMES),
  group: z.enum(["clear", "colour", "paint", "preparatory", "auxiliary"]),
  role: roleSchema,
  carrier: carrierSchema,
  binder: binderSchema,
  drying: dryingSchema,
  /** Builds a film that counts (stains, conditioners, oils, waxes and auxiliaries build none). */
  buildsFilm: z.boolean(),
  /** Must soak into bare wood to work (stains, conditioners, oils). */
  penetrating: z.boolean(),
  ambering: z.boolean(),
  /** 0 soft or flexible (wax, oil) … 5 hard and brittle; for a brittle film over a softer one. */
  hardness: z.number().int().min(0).max(5),
  /** Dry film, micrometres: the thinnest sound single coat, and the thickest sound stack of this family's coats. */
  filmRangeUm: z.tuple([z.number(), z.number()]).optional(),
  covers: z.number().positive().optional(),
  solids: z.number().min(0).max(100),
  touch: z.number().min(0).optional(),
  recoat: z.tuple([z.number().min(0), z.number().positive().nullable()]).optional(),
  cure: z.number().min(0).optional(),
  rated: z.strictObject({ temperature: z.number(), humidity: z.number() }),
  limits: z.strictObject({ low: z.number(), high: z.number(), humidity: z.number() }).optional(),
  voc: z.number().min(0),
  flash: z.number().optional(),
  /** Boiling point (initial), for the flammable-liquid category. */
  boils: z.number().optional(),
  sheens: z.array(z.string()),
  /** What thins it: `water`, `mineral spirits`, `alcohol`, `lacquer thinner`, `acetone`; empty: do not thin. */
  thinners: z.array(z.string()),
  thinUpTo: z.number().min(0).max(100).optional(),
  /** Solvents (carriers of a wet coat above) that dissolve, wrinkle or lift the dry film, cured or not. */
  dissolvedBy: z.array(carrierSchema),
  /** Solvents that lift it only before its full cure. */
  dissolvedUncuredBy: z.array(carrierSchema),
  ragsSelfHeat: z.boolean(),
  twoPart: z.boolean(),
  /** Duties that using it brings, words of the notation's safety list. */
  duties: z.array(z.string()),
  needsClear: z.boolean(),
  /** One sentence for hover and completion. */
  doc: z.string().optional(),
  /** Holds wax or stearate, to which polyurethane and waterborne clears do not hold. */
  waxBearing: z.boolean().optional(),
  /** Keeps tannin, knots and dye below it from bleeding into a waterborne coat. */
  blocksTannin: z.boolean().optional(),
  /** Laid thin under a stain it evens the colour of blotch-prone wood, and the stain still takes. */
  evensStain: z.boolean().optional(),
  /** Fillers: whether the dry filler takes a stain as wood does. */
  takesStain: z.boolean().optional(),
  /** Hours after mixing that a two-part material can be used. */
  potLife: z.number().positive().optional(),
  /** Uses for which it is not meant as the last layer, whatever its cure. */
  unfitFor: z.array(z.enum(["children", "food"])).optional(),
  /** Of a word that may be several families: all of them. What differs is the graver one's where it is a danger. */
  readings: z.array(z.enum(FAMILY_NAMES)).readonly().optional(),
  sources: z.record(z.string(), sourceSchema),
});

export type Family = z.infer<typeof familySchema>;
