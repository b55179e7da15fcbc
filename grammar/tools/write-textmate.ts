/**
 * Writes the TextMate grammar of the editor extension: `node grammar/tools/write-textmate.ts`.
 * The file is committed; a test fails when it is stale.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { textMateGrammar } from "../src/textmate.ts";

const file = new URL("../../client/syntaxes/finish.tmLanguage.json", import.meta.url);
mkdirSync(new URL(".", file), { recursive: true });
// A list of one plain word stands on one line, as the repository's formatter has it.
const json = JSON.stringify(textMateGrammar(), null, 2).replace(/\[\s+("[^"]*")\s+\]/gu, "[$1]");
writeFileSync(file, `${json}\n`);
