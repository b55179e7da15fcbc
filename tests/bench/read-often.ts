/** Reads a text of so many lines from nothing, again and again, for `npm run profile`. */
import process from "node:process";
import { parseFile } from "../../grammar/src/parse.ts";
import { recipeText } from "./servers.ts";

const text = recipeText(Number(process.argv[2] ?? 10_000));
for (let time = 0; time < 40; time += 1) parseFile(text);
