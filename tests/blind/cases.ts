/**
 * The recipes that were written blind: by people who had read handbooks and the notation, and neither rules nor code.
 *
 * A file without marks is sound: an error or a warning in it is a false alarm. A mark `#! category: words` says where
 * a reader should be warned, and of what kind of thing.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, posix } from "node:path";
import { fileURLToPath } from "node:url";
import { onFirstUse } from "../../server/src/core/once.ts";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { analyse, lineOf } from "../harness/check-text.ts";

export interface BlindMark {
  readonly line: number;
  readonly category: string;
  readonly words: string;
}

export interface BlindFinding {
  readonly line: number;
  readonly rule: string;
  readonly severity: string;
  readonly message: string;
}

export interface BlindCase {
  /** The file below the folder that was asked for. */
  readonly name: string;
  readonly marks: readonly BlindMark[];
  /** Errors and warnings, one for each rule that has a part in one; hints and information do not count, for or against. */
  readonly found: readonly BlindFinding[];
}

export const BLIND_FOLDER = fileURLToPath(new URL("recipes", import.meta.url));

/** Marks of one text, with lines from 1. */
export function blindMarks(text: string): readonly BlindMark[] {
  return text.split("\n").flatMap((line, index) => {
    const at = line.indexOf("#!");
    if (at < 0) return [];
    return line
      .slice(at + 2)
      .split("#!")
      .map((part) => {
        const colon = part.indexOf(":");
        const category = (colon < 0 ? part : part.slice(0, colon)).trim();
        return { line: index + 1, category, words: colon < 0 ? "" : part.slice(colon + 1).trim() };
      });
  });
}

/** All recipes of a folder, each on its own, in the order of their names. */
export function readBlind(folder: string = BLIND_FOLDER): readonly BlindCase[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((path) => path.replaceAll("\\", "/"))
    .filter((path) => path.endsWith(".finish"))
    .sort()
    .map((name) => blindCase(folder, name));
}

function blindCase(folder: string, name: string): BlindCase {
  const files = withUsed(folder, name);
  const text = files[name]!;
  // Who looks at the marks alone needs no look at the recipe.
  const found = onFirstUse(() =>
    analyse(files)
      .findings(name)
      .flatMap((finding) => partsOf(finding).map((part) => ({ ...part, message: finding.message })))
      .filter(({ severity }) => severity === "error" || severity === "warning")
      .map(({ rule, severity, message, span }) => ({
        line: lineOf(text, span.start),
        rule,
        severity,
        message,
      })),
  );
  return {
    name,
    marks: blindMarks(text),
    get found() {
      return found();
    },
  };
}

/** A recipe and the files of its folder that it uses. */
function withUsed(folder: string, name: string): Readonly<Record<string, string>> {
  const files: Record<string, string> = {};
  const read = (file: string): void => {
    const path = join(folder, file);
    if (file in files || !existsSync(path)) return;
    const text = readFileSync(path, "utf8");
    files[file] = text;
    for (const [, used] of text.matchAll(/^\s*use\s+"([^"/\\]+\.finish)"/gmu))
      read(posix.join(posix.dirname(file), used!));
  };
  read(name);
  return files;
}
