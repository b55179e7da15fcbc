/**
 * The packages that are bundled, by esbuild's own account, and under which terms they may be handed on.
 *
 * Every one must have a licence that is known here and its text; what is missing ends the build.
 */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import type { Metafile } from "esbuild";
import { ROOT } from "../bundles.ts";

export interface BundledPackage {
  readonly name: string;
  readonly version: string;
  /** As SPDX has it. */
  readonly licence: string;
  readonly home: string | undefined;
  /** Licence and notices, each with the name of its file. */
  readonly texts: readonly { readonly file: string; readonly text: string }[];
}

/** Licences that allow handing on in a bundle under ours, if their text goes along. */
const KNOWN: ReadonlySet<string> = new Set([
  "0BSD",
  "Apache-2.0",
  "BlueOak-1.0.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "ISC",
  "MIT",
]);

const TERMS = /^(?:licen[cs]e|copying|notice|third-?party-?notices?)(?:[.-].*)?$/i;

/** Packages of which at least a part is in one of the bundles, by name. */
export function bundledPackages(metafiles: readonly Metafile[], root = ROOT): readonly BundledPackage[] {
  const folders = new Set(
    metafiles
      .flatMap(({ outputs }) => Object.values(outputs))
      .flatMap(({ inputs }) => Object.entries(inputs))
      .flatMap(([name, { bytesInOutput }]) => (bytesInOutput > 0 ? (folderOf(name) ?? []) : [])),
  );
  return [...folders].map((folder) => readPackage(path.resolve(root, folder))).toSorted(byName);
}

/** `node_modules/@scope/name` of a file in it, however deep that lies; undefined for our own. */
const folderOf = (file: string): string | undefined =>
  /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0];

const byName = (a: BundledPackage, b: BundledPackage): number =>
  a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1;

function readPackage(folder: string): BundledPackage {
  const manifest: unknown = JSON.parse(readFileSync(path.join(folder, "package.json"), "utf8"));
  const field = (name: string): string => {
    const value: unknown = Reflect.get(Object(manifest), name);
    return typeof value === "string" ? value : "";
  };
  const name = field("name") || path.basename(folder);
  const licence = field("license");
  if (!KNOWN.has(licence)) {
    throw new Error(
      `${name} is bundled under the licence “${licence || "none"}”, which is not among ${[...KNOWN].join(", ")}. Look whether it may be handed on, then add it to client/packing/bundled.ts or do without the package.`,
    );
  }
  const texts = readdirSync(folder)
    .filter((file) => TERMS.test(file))
    .toSorted()
    .map((file) => ({ file, text: readFileSync(path.join(folder, file), "utf8").trim() }));
  if (!texts.some(({ file, text }) => /^(?:licen[cs]e|copying)/i.test(file) && text !== "")) {
    throw new Error(`${name} is bundled and has no file with its licence, whose text must go along.`);
  }
  return { name, version: field("version"), licence, home: field("homepage") || undefined, texts };
}

const RULE = "=".repeat(80);

/** The file that goes along with the bundles. */
export function noticesText(packages: readonly BundledPackage[]): string {
  const parts = packages.map(({ name, version, licence, home, texts }) =>
    [
      RULE,
      `${name} ${version} (${licence})`,
      ...(home === undefined ? [] : [home]),
      ...texts.flatMap(({ file, text }) => ["", `--- ${file}`, "", text.replaceAll("\r\n", "\n")]),
      "",
    ].join("\n"),
  );
  return `Finishwright holds the software of others, listed here with the terms under which it is handed on.\n\n${parts.join("\n")}`;
}
