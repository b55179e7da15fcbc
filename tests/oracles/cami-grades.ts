/**
 * US abrasive grades: ANSI B74.18 from memory; where tables of it differ, the middle value, confidence medium. They show
 * that the grades of the notation (P) may not be read as these.
 */
import type { Grade } from "../../server/src/core/knowledge/abrasives.ts";

/** From coarse to fine. */
export const CAMI_GRADES: readonly Grade[] = [
  { grit: 16, um: 1320 },
  { grit: 20, um: 905 },
  { grit: 24, um: 715 },
  { grit: 30, um: 638 },
  { grit: 36, um: 535 },
  { grit: 40, um: 428 },
  { grit: 50, um: 351 },
  { grit: 60, um: 268 },
  { grit: 80, um: 192 },
  { grit: 100, um: 141 },
  { grit: 120, um: 116 },
  { grit: 150, um: 93 },
  { grit: 180, um: 82 },
  { grit: 220, um: 68 },
  { grit: 240, um: 53 },
  { grit: 280, um: 43 },
  { grit: 320, um: 36 },
  { grit: 360, um: 28 },
  { grit: 400, um: 23 },
  { grit: 500, um: 19 },
  { grit: 600, um: 16 },
  { grit: 800, um: 12 },
  { grit: 1000, um: 10.3 },
];
