/** Prints what is found in every blind recipe, for judging by hand: `node tests/blind/dump.ts [FOLDER]`. */
import { readBlind } from "./cases.ts";

for (const { name, marks, found } of readBlind(process.argv[2])) {
  console.log(`\n${name}  ${marks.length > 0 ? "BAD" : "SOUND"}`);
  for (const mark of marks) console.log(`   expected ${mark.line} ${mark.category}: ${mark.words}`);
  for (const one of found)
    console.log(`   ${one.severity} ${one.line} ${one.rule}: ${one.message.replaceAll("\n", " ")}`);
}
