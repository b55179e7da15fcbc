/**
 * `npm run texts`: what is told and has no translation, by the part of the program, and what is translated and told no more.
 * With a part (`-- rules`), its missing texts as JSON, to be translated.
 */
import { LANGUAGES, toldTexts, translations } from "./texts.ts";

const wanted = process.argv.slice(2);
const told = toldTexts();
/** `server/src/core/rules/layers/x.ts` is of `core/rules/layers`, a table of its own name. */
const partOf = (file: string): string => file.replace(/^server\/src\//u, "").replace(/\/[^/]*$/u, "");
for (const tag of LANGUAGES) {
  const known = new Map(Object.values(translations(tag)).flatMap((texts) => Object.entries(texts)));
  const missing = [...told].filter(([text]) => !known.has(text));
  if (wanted.length > 0) {
    const asked = missing.filter(([, files]) =>
      files.some((file) => wanted.some((part) => partOf(file).startsWith(part))),
    );
    console.log(JSON.stringify(Object.fromEntries(asked.map(([text]) => [text, ""])), null, 2));
    continue;
  }
  const counts = new Map<string, number>();
  for (const [, files] of missing) counts.set(partOf(files[0]!), (counts.get(partOf(files[0]!)) ?? 0) + 1);
  console.log(`${tag}: ${told.size} texts, ${missing.length} of them not translated`);
  for (const [part, count] of counts) console.log(`  ${part}: ${count}`);
  for (const text of known.keys()) if (!told.has(text)) console.log(`  told no more: ${text}`);
}
