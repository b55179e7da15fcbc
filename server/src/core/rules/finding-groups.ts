/**
 * Findings that are told together: what one finding for several of them says, and its fix.
 *
 * A rule names its group in the `part` of its reports. A new group is a row here: its parts come sorted, the gravest first.
 */
import type { FindingGroup } from "./finding-group.ts";
import { BAD_AIR, badAirGroup } from "./group-bad-air.ts";
import { MISSING_DUTIES, missingDutiesGroup } from "./group-missing-duties.ts";

export const FINDING_GROUPS: Readonly<Record<string, FindingGroup>> = {
  [MISSING_DUTIES]: missingDutiesGroup,
  [BAD_AIR]: badAirGroup,
};
