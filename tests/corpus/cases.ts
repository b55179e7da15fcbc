/**
 * The corpus as data: every case with its files, the findings that its marks ask for, and those that the program gives.
 */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import type { Severity } from "../../server/src/core/findings.ts";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { analyse, lineOf } from "../harness/check-text.ts";

/** One finding of one file: what is compared. */
export interface Mark {
  readonly file: string;
  readonly line: number;
  readonly rule: string;
}

export interface Case {
  readonly name: string;
  readonly expected: readonly Mark[];
  readonly found: readonly (Mark & { readonly message: string; readonly severity: Severity })[];
}

const root = fileURLToPath(new URL(".", import.meta.url));

export const keyOf = (mark: Mark): string => `${mark.file}:${mark.line} ${mark.rule}`;

/** `#! a, b` marks its own line, `#!v a, b` the line below it. */
export function marksOf(file: string, text: string): readonly Mark[] {
  return text.split("\n").flatMap((line, index) => {
    const mark = /#!(v?)\s+(.+)$/.exec(line);
    if (!mark?.[2]) return [];
    const at = index + (mark[1] === "v" ? 2 : 1);
    return mark[2].split(",").map((rule) => ({ file, line: at, rule: rule.trim() }));
  });
}

const recipeFiles = (): readonly string[] =>
  readdirSync(root, { recursive: true, encoding: "utf8" })
    .map((path) => relative(root, join(root, path)).replaceAll("\\", "/"))
    .filter((path) => path.endsWith(".finish"))
    .sort();

/** Files directly in a topic are a case each; those of a folder below a topic are one case together. */
function grouped(files: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, string[]>();
  for (const file of files) {
    const folder = dirname(file);
    const name = folder.includes("/") ? folder : file.replace(/\.finish$/, "");
    groups.set(name, [...(groups.get(name) ?? []), file]);
  }
  return groups;
}

function readCase(name: string, files: readonly string[]): Case {
  const texts = Object.fromEntries(files.map((file) => [file, readFileSync(join(root, file), "utf8")]));
  const analysis = analyse(texts);
  return {
    name,
    expected: files.flatMap((file) => marksOf(file, texts[file] ?? "")),
    found: files.flatMap((file) =>
      analysis.findings(file).flatMap((finding) =>
        partsOf(finding).map(({ rule, span }) => ({
          file,
          line: lineOf(texts[file] ?? "", span.start),
          rule,
          message: finding.message,
          severity: finding.severity,
        })),
      ),
    ),
  };
}

/** All cases, in the order of their names. */
export const readCorpus = (): readonly Case[] =>
  [...grouped(recipeFiles())].map(([name, files]) => readCase(name, files));

/** What was expected and not found, and what was found and not expected; a finding given twice counts twice. */
export function disagreements(one: Case): {
  readonly misses: readonly Mark[];
  readonly alarms: Case["found"];
} {
  const open = one.expected.map(keyOf);
  const alarms = one.found.filter((mark) => {
    const at = open.indexOf(keyOf(mark));
    if (at >= 0) open.splice(at, 1);
    return at < 0;
  });
  return { misses: one.expected.filter((mark) => open.includes(keyOf(mark))), alarms };
}

/** Whether a finisher is warned of nothing in it: no mark at all, or only such as the program gives as a hint or information. */
export function isSound({ expected, found }: Case): boolean {
  const mild = new Set(
    found.filter(({ severity }) => severity === "hint" || severity === "information").map(keyOf),
  );
  return expected.every((mark) => mild.has(keyOf(mark)));
}
