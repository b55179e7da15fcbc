/**
 * The shape of one wood of the table. The program has only its type; the tests check the rows by zod.
 */
import * as z from "zod";

export const woodSchema = z.strictObject({
  name: z.string(),
  kind: z.enum(["hardwood", "softwood", "grass"]),
  tannin: z.enum(["rich", "low"]),
  /** Arrangement of the pores: ring, semi-ring, diffuse, or none (softwoods and bamboo). */
  pores: z.enum(["ring", "semi-ring", "diffuse", "none"]),
  texture: z.enum(["coarse", "medium", "fine"]),
  /** Pores large enough that a smooth gloss needs a grain filler. */
  needsFiller: z.boolean(),
  blotchProne: z.boolean(),
  /** Holds oil that slows oil finishes and waterborne clears alike. */
  oily: z.boolean(),
  /** Coloured extractives that are not tannin bleed into light waterborne paint. */
  bleeds: z.boolean(),
  /** Usually sold with knots that bleed through pale paint. */
  knotty: z.boolean(),
  /** Air-dry, about 12 % moisture, kg/m3. */
  density: z.number().positive(),
  /** Colour of the heartwood, in words. */
  colours: z.array(z.string()),
  source: z.string().min(3),
});
export type Wood = Readonly<z.infer<typeof woodSchema>>;
