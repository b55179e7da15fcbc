/**
 * Whether a log is SARIF 2.1.0 by the schema of that format (2.1.0-rtm.5, which comes with `@microsoft/jest-sarif`): the file
 * alone is used, and judged by ajv. Not even a property that the schema does not name may stand where it allows no other.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import Ajv from "ajv-draft-04";
import addFormats from "ajv-formats";

const require = createRequire(import.meta.url);
const SCHEMA = require.resolve("@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json");

let judge: ((log: unknown) => readonly string[]) | undefined;

/** What is wrong, each with where it is; empty for a log as it should be. */
export function sarifProblems(log: unknown): readonly string[] {
  judge ??= createJudge();
  return judge(log);
}

function createJudge(): (log: unknown) => readonly string[] {
  // One of its patterns is none with `u`.
  const ajv = new Ajv({ allErrors: true, strict: false, unicodeRegExp: false });
  addFormats(ajv);
  const validate = ajv.compile(JSON.parse(readFileSync(SCHEMA, "utf8")));
  return (log) =>
    validate(log)
      ? []
      : (validate.errors ?? []).map(
          ({ instancePath, message, params }) =>
            `${instancePath || "/"} ${message} ${JSON.stringify(params)}`,
        );
}
