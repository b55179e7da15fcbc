/**
 * Long work in small parts, so that what a person asks for meanwhile is answered at once.
 */
import { yieldToMessages } from "./guard.ts";

/** A part takes about so long; a step that has begun is finished. */
export const SLICE_MS = 8;

/** Takes all steps and answers true, or false where the work was given up because it `isStale`. */
export async function inSlices(
  steps: Iterable<void>,
  isStale: () => boolean,
  now: () => number = () => performance.now(),
): Promise<boolean> {
  let began = now();
  for (const _ of steps) {
    if (now() - began < SLICE_MS) continue;
    await yieldToMessages();
    if (isStale()) return false;
    began = now();
  }
  return true;
}
