/**
 * The schema of `finishwright.config.json`, from which the JSON schema for editors is made. The program itself reads the
 * file entry by entry (`features/config.ts`), to name each wrong one in its own words.
 */
import * as z from "zod";
import { UNIT_SYSTEMS } from "../src/core/measure/shown-figures.ts";
import { RULES } from "../src/core/rules/registry.generated.ts";
import { WAIT_MARGIN_H, WAIT_MARGIN_PERCENT } from "../src/core/surface/wait-margin.ts";
import { isAdjustable, RULE_LEVELS } from "../src/features/config.ts";

/** The file as its schema has it. */
export const configSchema = z
  .strictObject({
    $schema: z.string().optional(),
    rules: z
      .strictObject(
        Object.fromEntries(
          RULES.filter(isAdjustable).map((rule) => [
            rule.id,
            z.enum(RULE_LEVELS).optional().describe(`${rule.docs.summary} (${rule.severity})`),
          ]),
        ),
      )
      .optional()
      .describe("The level of each rule; `off` takes its findings out. Rules not named keep their own."),
    units: z
      .enum(UNIT_SYSTEMS)
      .optional()
      .describe(
        "Tell figures in these units: `metric`, or `us` for quarts, square feet and Fahrenheit. Not set: those that each recipe is written in. Cans are told as they are sold.",
      ),
    waitMarginPercent: z
      .number()
      .min(0)
      .max(WAIT_MARGIN_PERCENT)
      .optional()
      .describe(
        `How much of a needed drying time may be missing before it is more than a hint: percent of the label's time in the shop's air, 0 to ${WAIT_MARGIN_PERCENT} (${WAIT_MARGIN_PERCENT} if not set), and never more than ${WAIT_MARGIN_H} h. Cure before use and the latest end of a window have no margin.`,
      ),
  })
  .describe("What this project makes of the rules of Finishwright");

/** The JSON schema of the file. */
export function configJsonSchema(): unknown {
  return z.toJSONSchema(configSchema);
}
