/**
 * Folders that somebody else made: pipes, devices, links in circles and out of the folder, files that are huge, binary or
 * empty, deep folders, hostile settings, and recipes that use them all.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { hostileText } from "./hostile-texts.ts";
import { SOUND_TEXTS } from "./sound-texts.ts";

export type Entry =
  | { readonly what: "recipe"; readonly name: string; readonly text: string }
  | { readonly what: "bytes"; readonly name: string; readonly base64: string }
  | { readonly what: "link"; readonly name: string; readonly to: string }
  | { readonly what: "pipe"; readonly name: string }
  | { readonly what: "folder"; readonly name: string }
  | { readonly what: "deep"; readonly name: string; readonly depth: number }
  /** A file with nothing in it but its size. */
  | { readonly what: "huge"; readonly name: string; readonly megabytes: number }
  | { readonly what: "settings"; readonly name: string; readonly text: string };

/** Outside of the folder, with a word that must never come out of it. */
export const SECRET = "Canary-of-the-cellar";
export const SECRET_TEXT = `material cellar_paint "${SECRET}" {\n  family acrylic paint\n  covers 10 m2/L\n}\n`;

const NAMES = ["a.finish", "b.finish", "sub/c.finish", "sub/deep/d.finish", "data.txt", "noend", "e.FINISH"];
const TARGETS = [
  ...NAMES,
  "../outside/secret.finish",
  "../outside/secret.txt",
  "/etc/passwd",
  "/dev/zero",
  "/dev/stdin",
  "/dev/tty",
  "/proc/self/environ",
  "/proc/kmsg",
  "/proc/self/fd/0",
  "/",
  ".",
  "..",
  "sub",
  "missing.finish",
  "link.finish",
  "pipe.finish",
  "\\\\server\\share\\a.finish",
  "//server/share/a.finish",
  "C:/a.finish",
  "file:///etc/passwd",
  "a.finish\u0000.txt",
  "%2e%2e/outside/secret.finish",
  `${"x".repeat(300)}.finish`,
  `${"x/".repeat(3000)}a.finish`,
];

const name = fc.constantFrom(...NAMES);
const uses = fc
  .uniqueArray(fc.constantFrom(...TARGETS), { maxLength: 5 })
  .map((targets) => targets.map((target) => `use "${target.replaceAll("\\", "\\\\")}"\n`).join(""));

/** Takes what is outside where it can be had, so that it shows in every report. */
const TAKES_SECRET =
  "recipe r {\n  layer cellar_paint\n}\npiece p {\n  surface s {\n    shape area 1 m2\n    wood pine\n  }\n}\njob j {\n  piece p\n  apply r to s\n}\n";

const recipe: fc.Arbitrary<Entry> = fc
  .tuple(name, uses, fc.oneof(fc.constant(TAKES_SECRET), fc.constantFrom(...SOUND_TEXTS), hostileText))
  .map(([own, head, text]) => ({ what: "recipe", name: own, text: head + text }));

const SETTINGS = [
  "",
  "null",
  "[]",
  "{",
  '{"rules":null}',
  '{"rules":{"late":"off","__proto__":"off","constructor":"error"}}',
  '{"rules":{"late":{"a":1}}}',
  `{"${"k".repeat(3_000_000)}":1}`,
  `{"rules":{${Array.from({ length: 30_000 }, (_, idx) => `"rule-${idx}":"off"`).join(",")}}}`,
  `${"[".repeat(50_000)}`,
  `${'{"a":'.repeat(20_000)}1${"}".repeat(20_000)}`,
  "\ufeff{}",
  "\u0000",
];

const entry: fc.Arbitrary<Entry> = fc.oneof(
  { arbitrary: recipe, weight: 8 },
  {
    arbitrary: fc.record({
      what: fc.constant("bytes" as const),
      name,
      base64: fc.uint8Array({ maxLength: 400 }).map((bytes) => Buffer.from(bytes).toString("base64")),
    }),
    weight: 2,
  },
  {
    arbitrary: fc.record({
      what: fc.constant("link" as const),
      name: fc.constantFrom(
        "link.finish",
        "a.finish",
        "sub/link.finish",
        "loop",
        "loop.finish",
        "finishwright.config.json",
      ),
      to: fc.constantFrom(...TARGETS.filter((target) => !target.includes("\u0000") && target.length < 200)),
    }),
    weight: 5,
  },
  {
    arbitrary: fc.record({
      what: fc.constant("pipe" as const),
      name: fc.constantFrom("pipe.finish", "b.finish", "finishwright.config.json"),
    }),
    weight: 2,
  },
  {
    arbitrary: fc.record({
      what: fc.constant("folder" as const),
      name: fc.constantFrom("folder.finish", "b.finish"),
    }),
    weight: 1,
  },
  {
    arbitrary: fc.record({
      what: fc.constant("deep" as const),
      name: fc.constant("deep"),
      depth: fc.integer({ min: 50, max: 900 }),
    }),
    weight: 1,
  },
  {
    arbitrary: fc.record({
      what: fc.constant("huge" as const),
      name,
      megabytes: fc.constantFrom(3, 100, 4096),
    }),
    weight: 1,
  },
  {
    arbitrary: fc.record({
      what: fc.constant("settings" as const),
      name: fc.constantFrom("finishwright.config.json", "sub/finishwright.config.json"),
      text: fc.constantFrom(...SETTINGS),
    }),
    weight: 2,
  },
);

/** Always with one recipe at least, which is the one that is asked about. */
export const oddFolder: fc.Arbitrary<readonly Entry[]> = fc
  .tuple(uses, fc.array(entry, { maxLength: 8 }))
  .map(([head, entries]) => [{ what: "recipe", name: "a.finish", text: head + TAKES_SECRET }, ...entries]);

/** Makes the folder; what is there already stays. */
export function makeFolder(folder: string, entries: readonly Entry[]): void {
  for (const each of entries) {
    const file = path.join(folder, each.name);
    try {
      mkdirSync(path.dirname(file), { recursive: true });
      makeEntry(file, each);
    } catch (error) {
      // Two entries may want one name, and a link may lead nowhere.
      const code = error instanceof Error ? Reflect.get(error, "code") : undefined;
      if (
        !["EEXIST", "EISDIR", "ENOENT", "ENOTDIR", "ELOOP", "ENAMETOOLONG", "EACCES"].includes(String(code))
      )
        throw error;
    }
  }
}

function makeEntry(file: string, entry: Entry): void {
  switch (entry.what) {
    case "recipe":
    case "settings":
      writeFileSync(file, entry.text, { flag: "wx" });
      break;
    case "bytes":
      writeFileSync(file, Buffer.from(entry.base64, "base64"), { flag: "wx" });
      break;
    case "link":
      symlinkSync(entry.to, file);
      break;
    case "pipe":
      spawnSync("mkfifo", [file]);
      break;
    case "folder":
      mkdirSync(file);
      break;
    case "deep":
      mkdirSync(path.join(file, "d/".repeat(entry.depth)), { recursive: true });
      writeFileSync(path.join(file, "d/".repeat(entry.depth), "z.finish"), "recipe deep {\n}\n");
      break;
    case "huge":
      writeFileSync(file, "", { flag: "wx" });
      truncateSync(file, entry.megabytes * 1024 * 1024);
      break;
  }
}
