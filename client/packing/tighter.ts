/**
 * What esbuild has made short, shorter: another minifier looks through a whole bundle for what can be written with less, such as
 * a name that is used once. Of the extension it takes a thirtieth off, packed. What programs import has its names told by
 * esbuild in a way that this would take away, so that npm's bundles are left as they are.
 */
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { Plugin } from "esbuild";
import { minifySync } from "oxc-minify";

export const tighter = (target: string): Plugin => ({
  name: "tighter",
  setup({ initialOptions: { absWorkingDir = "", outfile = "" }, onEnd }) {
    onEnd(({ errors, outputFiles }) => {
      if (errors.length > 0) return;
      const file = path.resolve(absWorkingDir, outfile);
      if (outputFiles === undefined)
        return writeFileSync(file, tightened(readFileSync(file, "utf8"), target));
      for (const output of outputFiles)
        output.contents = new TextEncoder().encode(tightened(output.text, target));
    });
  },
});

/** A script by its ending, as what is loaded there is: CommonJS, or all within one function. */
function tightened(code: string, target: string): string {
  const { code: short, errors } = minifySync("bundle.cjs", code, {
    compress: { target },
    mangle: { toplevel: true },
  });
  if (errors.length > 0) throw new Error(errors.map(({ message }) => message).join("\n"));
  return short;
}
