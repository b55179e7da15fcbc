/**
 * The user's settings, section `finishwright`.
 *
 * A wrong value must never stop the findings: it is named once in the output, and the default stands in for it, value
 * by value. The settings and their defaults are declared for VS Code in package.json; a test compares the two.
 */
import * as z from "zod";
import type { Severity } from "../core/findings.ts";

export interface Settings {
  /** The lowest level of finding that is shown. */
  readonly lowest: Severity;
}

export const DEFAULT_SETTINGS: Settings = { lowest: "hint" };

/** From the gravest. */
export const SEVERITIES = ["error", "warning", "information", "hint"] as const satisfies readonly Severity[];

/** Every setting by its full name, with the values that it takes. */
export const SETTING_SCHEMAS = {
  "finishwright.findings.lowest": z.enum(SEVERITIES),
  "finishwright.trace.server": z.enum(["off", "messages", "compact", "verbose"]),
} as const;

export interface ReadSettings {
  readonly settings: Settings;
  /** One sentence for every value that was not understood. */
  readonly complaints: readonly string[];
}

/** Reads what the client sent for the section; whatever is missing or wrong is the default. */
export const readSettings = (section: unknown): ReadSettings => {
  const complaints: string[] = [];
  const read = <T extends string>(
    name: keyof typeof SETTING_SCHEMAS,
    schema: z.ZodType<T>,
  ): T | undefined => {
    const value = lookUp(section, name.split(".").slice(1));
    if (value === undefined || value === null) return undefined;
    const result = schema.safeParse(value);
    if (result.success) return result.data;
    const wanted = SETTING_SCHEMAS[name].options.join(", ");
    complaints.push(`The setting ${name} is ${JSON.stringify(value)}, but takes one of: ${wanted}.`);
    return undefined;
  };
  read("finishwright.trace.server", SETTING_SCHEMAS["finishwright.trace.server"]);
  const lowest = read("finishwright.findings.lowest", SETTING_SCHEMAS["finishwright.findings.lowest"]);
  return { settings: { lowest: lowest ?? DEFAULT_SETTINGS.lowest }, complaints };
};

/** Whether findings of this level are shown. */
export const isShown = (severity: Severity, settings: Settings): boolean =>
  SEVERITIES.indexOf(severity) <= SEVERITIES.indexOf(settings.lowest);

const lookUp = (value: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>(
    (inner, key) => (typeof inner === "object" && inner !== null ? Reflect.get(inner, key) : undefined),
    value,
  );
