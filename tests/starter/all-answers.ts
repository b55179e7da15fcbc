/**
 * Writes the recipe of every combination of answers, some 38 000, and looks for errors, warnings and lines that are not
 * laid out. The exit status is 1 where there is one. Part of `npm run test:long`; it takes about six minutes.
 */
import { coatingsOn, looksOf, PIECES, PLACES, WOODS } from "../../server/src/starter/answers.ts";
import { starterText } from "../../server/src/starter/starter-text.ts";
import { wrongIn } from "./wrong-in.ts";

let count = 0;
for (const [index, { word: wood }] of WOODS.entries()) {
  console.log(`${index + 1} of ${WOODS.length} woods, ${count} recipes so far: ${wood} …`);
  for (const { word: now } of coatingsOn(wood))
    for (const { word: look } of looksOf(wood, now))
      for (const { word: piece } of PIECES)
        for (const { word: place } of PLACES)
          for (const units of ["metric", "inches"] as const) {
            const answers = { piece, wood, now, look, place, units };
            count += 1;
            // The editor writes the day of the start as well.
            const start = units === "metric" ? "2027-03-08" : undefined;
            for (const wrong of wrongIn(starterText(answers, start))) {
              process.exitCode = 1;
              console.log(`${JSON.stringify(answers)}: ${wrong}`);
            }
          }
}
console.log(
  `${count} new recipes, ${process.exitCode === 1 ? "not all of them sound" : "all of them sound"}`,
);
