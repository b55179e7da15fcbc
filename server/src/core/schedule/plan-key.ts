/** The input of a planner as a text, equal for equal inputs. */
import { onceFor } from "../once.ts";
import type { Chain, ScheduleInput } from "./types.ts";

/**
 * The text of a chain is kept for as long as the chain is: a shop has many, and an edit leaves all but a few of them alone.
 * No text of JSON has a line end in it.
 */
export const planKey = ({ chains, ...rest }: ScheduleInput): string =>
  [JSON.stringify(rest), ...chains.map(chainText)].join("\n");

const chainText = onceFor((chain: Chain) => JSON.stringify(chain));
