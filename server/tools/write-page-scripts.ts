/**
 * Bundles what runs in an HTML sheet, and on the first page of a site, into a constant each, with the hash by which the
 * page's policy allows it and nothing else (Content Security Policy Level 3, section 2.3.1: `'sha256-'` and the base64 of the SHA-256 of the element's text).
 */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { build } from "esbuild";
import { textKey } from "../../grammar/src/translate.ts";
import { lineTexts } from "./table-texts/reports.ts";
import { textsIn } from "./texts.ts";

interface PageScript {
  readonly file: URL;
  /** Below the reports. */
  readonly entry: string;
  readonly constant: string;
  /** What it says, where a page in another language carries that. */
  readonly texts?: () => readonly string[];
}

const reports = (path: string): URL => new URL(`../src/reports/${path}`, import.meta.url);

export const PAGE_SCRIPTS: readonly PageScript[] = [
  {
    file: reports("sheet-script.generated.ts"),
    entry: "sheet-page/sheet-page.ts",
    constant: "SHEET_SCRIPT",
    texts: () => [...textsOfPage(), ...lineTexts()],
  },
  {
    file: reports("site/site-script.generated.ts"),
    entry: "site-page/site-page.ts",
    constant: "SITE_SCRIPT",
  },
];

function textsOfPage(): readonly string[] {
  const folder = reports("sheet-page/");
  return readdirSync(folder)
    .toSorted()
    .flatMap((file) => textsIn(file, readFileSync(new URL(file, folder), "utf8")));
}

export async function pageScriptText({ entry, constant, texts }: PageScript): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [reports(entry).pathname],
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
    `// Written by \`npm run generate\` from ${entry}.`,
    `export const ${constant} =`,
    ...(script.includes("${")
      ? ["  // biome-ignore lint/suspicious/noTemplateCurlyInString: templates of the script itself"]
      : []),
    `  '${quoted}';`,
    `export const ${constant}_HASH = ${JSON.stringify(`sha256-${hash}`)};`,
    ...(texts === undefined
      ? []
      : [
          "/** The short names of all that it says, see `textKey`. */",
          `export const ${constant}_TEXTS =`,
          `  ${JSON.stringify([...new Set(texts().map(textKey))].join(" "))};`,
        ]),
    "",
  ].join("\n");
}

if (import.meta.main)
  for (const script of PAGE_SCRIPTS) writeFileSync(script.file, await pageScriptText(script));
