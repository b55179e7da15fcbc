/**
 * Loads a bundle that lies beside this one, with what V8 compiled of it when it was last loaded.
 *
 * Node keeps that in the folder of temporary files, where it knows how to (from 22.8 on); without it a start only takes
 * longer. What is in one file is compiled as one, so the program proper is a file of its own, which comes after this.
 */
import * as module from "node:module";

export function loadBeside(bundle: string): void {
  module.enableCompileCache?.();
  module.createRequire(import.meta.url)(bundle);
}
