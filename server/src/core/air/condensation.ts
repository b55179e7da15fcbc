/**
 * Whether water will condense on a surface that is about to be coated.
 *
 * The surface must be at least 3 C (5 F) above the dew point: the rule of ISO 8502-4, as UFC 3-190-06 paragraph 9.6.6
 * states it for field painting. Without a measured surface temperature a piece is taken to be as warm as the room.
 */
import { dewPointC } from "./psychrometrics.ts";

/** Least distance of a surface from the dew point, C. */
export const DEW_POINT_MARGIN_C = 3;

export interface Condensation {
  readonly dewPointC: number;
  /** Surface less dew point, C; negative once water stands on it. */
  readonly marginC: number;
  /** The margin is less than 3 C. */
  readonly isNear: boolean;
}

/** Air in C and percent; `surfaceC` where it was measured. */
export function condensation(
  air: { readonly temperature: number; readonly humidity: number },
  surfaceC: number = air.temperature,
): Condensation {
  const dewPoint = dewPointC(air.temperature, air.humidity);
  const marginC = surfaceC - dewPoint;
  return { dewPointC: dewPoint, marginC, isNear: marginC < DEW_POINT_MARGIN_C - 1e-9 };
}
