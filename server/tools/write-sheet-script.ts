/**
 * Bundles what runs in an HTML sheet into a constant, with the hash by which the sheet's policy allows it and nothing
 * else (Content Security Policy Level 3, section 2.3.1: `'sha256-'` and the base64 of the SHA-256 of the element's text).
 */
import { createHash } from "node:crypto";
import { writeFileSync } from "node:fs";
import { build } from "esbuild";

export const SHEET_SCRIPT_FILE = new URL("../src/reports/sheet-script.generated.ts", import.meta.url);

export async function sheetScriptText(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [new URL("../src/reports/sheet-page/sheet-page.ts", import.meta.url).pathname],
    bundle: true,
    write: false,
    minify: true,
    format: "iife",
    platform: "browser",
    target: "es2023",
    charset: "ascii",
    legalComments: "none",
  });
  const script = outputFiles[0]!.text.trim();
  // It stands inside an element, which ends at its end tag.
  if (/<\/script|<!--/iu.test(script)) throw new Error("The script would end its own element.");
  const hash = createHash("sha256").update(script).digest("base64");
  const quoted = JSON.stringify(script).slice(1, -1).replaceAll('\\"', '"').replaceAll("'", "\\'");
  return [
    "// Written by `npm run generate` from sheet-page/sheet-page.ts.",
    "export const SHEET_SCRIPT =",
    "  // biome-ignore lint/suspicious/noTemplateCurlyInString: templates of the script itself",
    `  '${quoted}';`,
    `export const SHEET_SCRIPT_HASH = ${JSON.stringify(`sha256-${hash}`)};`,
    "",
  ].join("\n");
}

if (import.meta.main) writeFileSync(SHEET_SCRIPT_FILE, await sheetScriptText());
