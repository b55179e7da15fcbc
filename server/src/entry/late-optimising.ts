/**
 * V8 told to optimise later, for a program that does many things a few thousand times each and then ends, in every thread anew.
 *
 * V8's dearest compiler begins at 3000 calls of a function, and in a check of thousands of files most of what it makes is not
 * used for as long as it took to make; what its quicker compiler makes does for that. The search for plans calls its functions
 * so often that they still get the dearest.
 */
import process from "node:process";
import v8 from "node:v8";

/** The versions of V8 that are known to have the flag; others would say on the screen that they do not know it. */
const KNOWN_TO = /^13\./u;

export function optimiseLater(): void {
  if (KNOWN_TO.test(process.versions.v8)) v8.setFlagsFromString("--invocation-count-for-turbofan=30000");
}
