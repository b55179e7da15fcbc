/**
 * The shape of one row of the table of chemicals that can hurt whoever finishes furniture, by the words people write.
 *
 * The table recognises; it holds no limit and certifies nothing. A product's label and safety data sheet come first.
 */
import * as z from "zod";

/** What a chemical can do in the company of others, or does by itself. */
export const hazardSchema = z.enum([
  /** Strips and cleaners that may not be used at all. */
  "banned solvent",
  "poisonous solvent",
  "motor fuel",
  "isocyanate",
  "strong base",
  "strong acid",
  "weak acid",
  "ammonia",
  "chlorine bleach",
  /** The bare word, which says nothing of the kind. */
  "bleach of any kind",
  "peroxide",
  "organic peroxide",
  "neutralises acid",
  "formaldehyde",
  "lead",
  "poisonous ingredient",
  "asbestos",
  "skin poison",
]);
export type Hazard = z.infer<typeof hazardSchema>;

export const chemicalSchema = z.strictObject({
  /** The name that findings use. */
  name: z.string().min(2),
  /** Words, abbreviations and formulas as people write them; case, hyphens and a plural s make no difference. */
  words: z.array(z.string().min(2)).min(1),
  /** CAS registry numbers, with their check digit. */
  cas: z.array(z.string().regex(/^\d{2,7}-\d{2}-\d$/u)),
  hazards: z.array(hazardSchema).min(1),
  /** What it does to people, as one sentence. */
  harm: z.string().min(10),
  /** What to take or do instead, as one imperative sentence without its full stop. */
  instead: z.string().min(10).optional(),
  /** Words that follow its name where a machine or an instrument is meant. */
  notBefore: z.array(z.string()).optional(),
  /** A word or two that come before its name where somebody or something else of that name is meant. */
  notAfter: z.array(z.string()).optional(),
  sources: z.array(z.string().min(3)).min(1),
});

export type Chemical = z.infer<typeof chemicalSchema>;
