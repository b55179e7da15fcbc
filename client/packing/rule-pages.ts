/** The pages of the rules in one file for the extension, which shows them from it (`client/src/rule-pages.ts`). */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { withoutFound } from "../../server/src/core/rules/found-here.ts";
import { ROOT } from "../bundles.ts";

const FOLDER = path.join(ROOT, "server/docs/rules");

/** JSON: the text of each page by the name of its file, without what the server tells of it. */
export const packedRulePages = (): string =>
  JSON.stringify(
    Object.fromEntries(
      readdirSync(FOLDER)
        .toSorted()
        .map((name) => [name, withoutFound(readFileSync(path.join(FOLDER, name), "utf8"))]),
    ),
  );
