/**
 * Writes the JSON schema of `finishwright.config.json`, which gives editors completion and hover in that file.
 *
 * Run by `npm run generate`; a test fails when it is stale.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { configJsonSchema } from "./config-schema.ts";

export const CONFIG_SCHEMA_FILE = new URL(
  "../../client/schemas/finishwright.config.schema.json",
  import.meta.url,
);

/** Short lists of words stand on one line, as the formatter of this repository wants them. */
export const configSchemaText = (): string =>
  `${JSON.stringify(configJsonSchema(), null, 2).replace(
    /\[\n *("[^\][]*")\n *\]/gu,
    (_, items: string) => `[${items.replace(/,\n\s*/gu, ", ")}]`,
  )}\n`;

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  mkdirSync(new URL(".", CONFIG_SCHEMA_FILE), { recursive: true });
  writeFileSync(CONFIG_SCHEMA_FILE, configSchemaText());
}
