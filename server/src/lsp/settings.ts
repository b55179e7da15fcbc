/**
 * The user's settings, section `finishwright`.
 *
 * A wrong value must never stop the findings: it is named once in the output, and the default stands in for it, value
 * by value. The settings and their defaults are declared for VS Code in package.json; a test compares the two.
 */
import * as z from "zod/mini";
import { isAtLeast, SEVERITIES, type Severity } from "../core/findings.ts";
import { readMoment } from "../core/measure/iso-dates.ts";
import { UNIT_SYSTEMS, type UnitSystem } from "../core/measure/shown-figures.ts";
import { INLAY_HINT_KINDS, type InlayHintKind } from "../features/types.ts";
import { folderKey } from "../reading/may-read.ts";

export interface Settings {
  /** The lowest level of finding that is shown. */
  readonly lowest: Severity;
  /** The kinds of inlay hints that are shown. */
  readonly inlayHints: readonly InlayHintKind[];
  /** What figures are told in; undefined: what the project or else the text says. */
  readonly units?: UnitSystem;
  /** Whether a line above every job says what it comes to. */
  readonly jobLenses: boolean;
  /** Folders whose recipes `use` may read besides those of the open folders, by absolute path or address. */
  readonly readAlso: readonly string[];
  /** Patterns, as in a `.gitignore` file, of what is no part of the open folders. */
  readonly exclude: readonly string[];
  /** A local ISO date or date-time from which plans go on; absent: from the last record of each job. */
  readonly today?: string;
}

export const DEFAULT_SETTINGS: Settings = {
  lowest: "hint",
  inlayHints: INLAY_HINT_KINDS,
  jobLenses: true,
  readAlso: [],
  exclude: [],
};

/** The setting of the units that leaves them to the project and the text. */
export const AS_WRITTEN = "asWritten";

/** Every setting by its full name, with the values that it takes. */
export const SETTING_SCHEMAS = {
  "finishwright.findings.lowest": z.enum(SEVERITIES),
  "finishwright.inlayHints.litres": z.boolean(),
  "finishwright.inlayHints.waits": z.boolean(),
  "finishwright.inlayHints.elapsed": z.boolean(),
  "finishwright.codeLens.jobs": z.boolean(),
  "finishwright.plan.today": z
    .string()
    .check(z.refine((text) => text.trim() === "" || readMoment(text) !== undefined)),
  "finishwright.figures.units": z.enum([AS_WRITTEN, ...UNIT_SYSTEMS]),
  "finishwright.files.exclude": z.array(z.string().check(z.maxLength(1000))).check(z.maxLength(100)),
  "finishwright.use.readAlso": z.array(z.string()).check(z.maxLength(100)),
  "finishwright.trace.server": z.enum(["off", "messages", "compact", "verbose"]),
} as const;

export interface ReadSettings {
  readonly settings: Settings;
  /** One sentence for every value that was not understood. */
  readonly complaints: readonly string[];
}

type SettingName = keyof typeof SETTING_SCHEMAS;

/** Reads what the client sent for the section; whatever is missing or wrong is the default. */
export const readSettings = (section: unknown): ReadSettings => {
  const complaints: string[] = [];
  const read = <T extends string | boolean | readonly string[]>(
    name: SettingName,
    schema: z.ZodMiniType<T>,
  ): T | undefined => {
    const value = lookUp(section, name.split(".").slice(1));
    if (value === undefined || value === null) return undefined;
    const result = schema.safeParse(value);
    if (result.success) return result.data;
    complaints.push(`The setting ${name} is ${JSON.stringify(value)}, but takes ${takenBy(name)}.`);
    return undefined;
  };
  const isOn = (
    name: `finishwright.inlayHints.${InlayHintKind}` | "finishwright.codeLens.jobs",
    otherwise: boolean,
  ): boolean => read(name, SETTING_SCHEMAS[name]) ?? otherwise;
  read("finishwright.trace.server", SETTING_SCHEMAS["finishwright.trace.server"]);
  const readAlso = read("finishwright.use.readAlso", SETTING_SCHEMAS["finishwright.use.readAlso"]) ?? [];
  for (const folder of readAlso.filter((given) => folderKey(given) === undefined)) {
    complaints.push(
      `The setting finishwright.use.readAlso has ${JSON.stringify(folder)}, which is not a folder: write its absolute path.`,
    );
  }
  const exclude = read("finishwright.files.exclude", SETTING_SCHEMAS["finishwright.files.exclude"]);
  const today = readMoment(read("finishwright.plan.today", SETTING_SCHEMAS["finishwright.plan.today"]) ?? "");
  const lowest = read("finishwright.findings.lowest", SETTING_SCHEMAS["finishwright.findings.lowest"]);
  const units =
    read("finishwright.figures.units", SETTING_SCHEMAS["finishwright.figures.units"]) ?? AS_WRITTEN;
  const settings: Settings = {
    lowest: lowest ?? DEFAULT_SETTINGS.lowest,
    inlayHints: INLAY_HINT_KINDS.filter((kind) =>
      isOn(`finishwright.inlayHints.${kind}`, DEFAULT_SETTINGS.inlayHints.includes(kind)),
    ),
    ...(units === AS_WRITTEN ? {} : { units }),
    jobLenses: isOn("finishwright.codeLens.jobs", DEFAULT_SETTINGS.jobLenses),
    exclude: exclude ?? DEFAULT_SETTINGS.exclude,
    readAlso: readAlso.filter((folder) => folderKey(folder) !== undefined),
    ...(today === undefined ? {} : { today }),
  };
  return { settings, complaints };
};

/** The values that a setting takes; none where they cannot be listed. */
export const valuesOf = (name: SettingName): readonly (string | boolean)[] => {
  const schema = SETTING_SCHEMAS[name];
  if (schema instanceof z.ZodMiniArray || schema instanceof z.ZodMiniString) return [];
  return "options" in schema ? schema.options : [true, false];
};

const takenBy = (name: SettingName): string => {
  const values = valuesOf(name);
  if (values.length > 0) return `one of: ${values.join(", ")}`;
  if (name === "finishwright.plan.today") return "a day, such as 2027-03-10 or 2027-03-10T14:00";
  return `a list of up to 100 ${name === "finishwright.files.exclude" ? "patterns" : "folders"}`;
};

/** Whether findings of this level are shown. */
export const isShown = (severity: Severity, settings: Settings): boolean =>
  isAtLeast(severity, settings.lowest);

/** The levels of findings that are shown, the gravest first. */
export const shownLevels = (settings: Settings): readonly Severity[] =>
  SEVERITIES.filter((severity) => isShown(severity, settings));

const lookUp = (value: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>(
    (inner, key) => (typeof inner === "object" && inner !== null ? Reflect.get(inner, key) : undefined),
    value,
  );
