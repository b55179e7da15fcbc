/**
 * V8 told to optimise later, for a program that does many things a few thousand times each and then ends, in every thread anew.
 *
 * Of the processor time of a check of ten thousand files a fifth was V8's dearest compiler, which begins at 3000 calls of a
 * function; most of what it made was not used for as long as it took to make. What its quicker compiler makes does for that. What
 * is called as often as the search for plans calls its functions still gets the dearest.
 */
import process from "node:process";
import v8 from "node:v8";

/** The versions of V8 that are known to have the flag; others would say on the screen that they do not know it. */
const KNOWN_TO = /^13\./u;

export function optimiseLater(): void {
  if (KNOWN_TO.test(process.versions.v8)) v8.setFlagsFromString("--invocation-count-for-turbofan=30000");
}
