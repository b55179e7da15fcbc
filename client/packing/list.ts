/**
 * What goes into the extension's package and into the npm tarball: this list and nothing else. `files` of package.json is
 * its part for npm (tests/client/packing.test.ts holds them together); the extension is packed from a folder that is laid
 * out by it.
 */
import { globSync } from "node:fs";
import path from "node:path";
import { ROOT } from "../bundles.ts";

export type Target = "vsix" | "npm";

interface Entry {
  /** Files below the project's folder. */
  readonly pattern: string;
  readonly targets: readonly Target[];
}

const both = (pattern: string): Entry => ({ pattern, targets: ["vsix", "npm"] });
const vsix = (pattern: string): Entry => ({ pattern, targets: ["vsix"] });
const npm = (pattern: string): Entry => ({ pattern, targets: ["npm"] });

export const NOTICES = "THIRD-PARTY-NOTICES.txt";

/** All pages of the rules. In a zip each file is packed by itself, so that 160 files of the same words take far more. */
export const RULE_PAGES = "client/dist/rule-pages.json";

const ENTRIES: readonly Entry[] = [
  both("package.json"),
  both("README.md"),
  both("CHANGELOG.md"),
  both("LICENSE"),
  both(NOTICES),
  // What the page on the language leads to; the others are of the command line and of programs.
  vsix("server/docs/language.md"),
  vsix("server/docs/computations.md"),
  vsix("server/docs/hands-on-times.md"),
  vsix("server/docs/packages.md"),
  vsix("server/docs/ticks.md"),
  npm("server/docs/*.md"),
  npm("server/docs/rules/*.md"),
  npm("server/docs/book/*.md"),
  both("server/dist/texts.de.json"),
  npm("server/dist/finishwright.cjs"),
  npm("server/dist/command-line.cjs"),
  npm("server/dist/library.cjs"),
  npm("server/library.d.cts"),
  both("samples/*.finish"),
  vsix("package.nls.json"),
  vsix("package.nls.de.json"),
  vsix("client/l10n/bundle.l10n.de.json"),
  vsix("client/dist/extension.cjs"),
  vsix("client/dist/extension-web.cjs"),
  vsix("client/dist/bench.js"),
  vsix(RULE_PAGES),
  vsix("client/language-configuration.json"),
  vsix("client/snippets/finish.code-snippets"),
  vsix("client/syntaxes/finish.tmLanguage.json"),
  vsix("client/syntaxes/finish.markdown.tmLanguage.json"),
  vsix("client/schemas/finishwright.config.schema.json"),
  vsix("client/media/icon.png"),
  vsix("client/media/finish-light.svg"),
  vsix("client/media/workshop.svg"),
  vsix("client/media/finish-dark.svg"),
  vsix("client/walkthrough/*.svg"),
  vsix("client/walkthrough/language.md"),
  vsix("server/dist/server.cjs"),
  vsix("server/dist/language-server.cjs"),
  vsix("server/dist/answers.cjs"),
  vsix("server/dist/job-reports.cjs"),
  vsix("server/dist/planning.cjs"),
  vsix("server/dist/record.cjs"),
  vsix("server/dist/worker.js"),
];

/** What npm packs without being told, so that it need not stand in `files`. */
const PACKED_BY_NPM_ITSELF: ReadonlySet<string> = new Set(["package.json", "README.md", "LICENSE"]);

/** `files` of package.json. */
export const npmFiles = (): readonly string[] =>
  ENTRIES.filter(({ pattern, targets }) => targets.includes("npm") && !PACKED_BY_NPM_ITSELF.has(pattern)).map(
    ({ pattern }) => pattern,
  );

/** All files for a target, with `/`, in order. Fails where an entry of the list finds none: something was not built. */
export function packedFiles(target: Target, root = ROOT): readonly string[] {
  return ENTRIES.filter(({ targets }) => targets.includes(target))
    .flatMap(({ pattern }) => {
      const found = globSync(pattern, { cwd: root }).map((name) => name.split(path.sep).join("/"));
      if (found.length === 0) throw new Error(`There is no ${pattern} to pack. Run \`npm run build\` first.`);
      return found;
    })
    .toSorted();
}
