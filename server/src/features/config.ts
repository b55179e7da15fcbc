/**
 * `finishwright.config.json`: what a project says about the rules, and in which units its figures are told.
 *
 * Reading the file is the adapters' business; here its content is read. A wrong entry must never stop the findings: it
 * is named once, and the rest of the file counts. The JSON schema that editors use for the file is made from the same
 * table (`server/tools/config-schema.ts`).
 */
import * as z from "zod/mini";
import { type Eased, SEVERITIES, type Severity } from "../core/findings.ts";
import { UNIT_SYSTEMS, type UnitSystem } from "../core/measure/shown-figures.ts";
import { andList, didYouMean } from "../core/model/suggest.ts";
import { RULES } from "../core/rules/registry.generated.ts";
import { isAlwaysShown } from "../core/rules/registry.ts";
import type { Rule } from "../core/rules/rule.ts";
import { WAIT_MARGIN_PERCENT } from "../core/surface/wait-margin.ts";

export const CONFIG_FILE_NAME = "finishwright.config.json";

/** What a project makes of a rule: another level, or nothing at all. */
export const RULE_LEVELS = [...SEVERITIES, "off"] as const;
export type RuleLevel = (typeof RULE_LEVELS)[number];

/** Levels by rule id; rules that are not named keep their own. */
export type RuleLevels = Readonly<Record<string, RuleLevel>>;

export interface ProjectConfig {
  readonly rules: RuleLevels;
  /** What figures are told in; absent: the units that each text is written in. */
  readonly units?: UnitSystem;
  /** Percent of a needed wait that may be missing before the rule's own level holds; absent: all of the margin. */
  readonly waitMarginPercent?: number;
}

export const DEFAULT_CONFIG: ProjectConfig = { rules: {} };

const marginSchema = z.number().check(z.minimum(0), z.maximum(WAIT_MARGIN_PERCENT));

/** Whether a project may set the level of a rule. */
export const isAdjustable = ({ alwaysShown }: Rule): boolean => !alwaysShown;

const levelSchema = z.enum(RULE_LEVELS);
const unitsSchema = z.enum(UNIT_SYSTEMS);
const ENTRIES: readonly string[] = ["rules", "units", "waitMarginPercent"];

export interface ReadConfig {
  readonly config: ProjectConfig;
  /** One sentence for every entry that was not understood. */
  readonly complaints: readonly string[];
}

/** Reads the text of a configuration file. */
export function readConfig(text: string): ReadConfig {
  const content = parseJson(text);
  if ("complaint" in content) return { config: DEFAULT_CONFIG, complaints: [content.complaint] };
  const complaints = new Complaints();
  const top = entriesOf(content.value);
  if (!top) {
    return {
      config: DEFAULT_CONFIG,
      complaints: [`${CONFIG_FILE_NAME} must hold an object, such as ${EXAMPLE}.`],
    };
  }
  for (const [key] of top) {
    if (!ENTRIES.includes(key) && key !== "$schema")
      complaints.add(
        () =>
          `${CONFIG_FILE_NAME} has no entry \`${shown(key)}\`; it may have ${andList(ENTRIES.map((name) => `\`${name}\``))}.`,
      );
  }
  const entryOf = (name: string): unknown => top.find(([key]) => key === name)?.[1];
  const rules = readRules(entryOf("rules"), complaints);
  const margin = readMargin(entryOf("waitMarginPercent"), complaints);
  const units = readUnits(entryOf("units"), complaints);
  return {
    config: {
      rules,
      ...(units === undefined ? {} : { units }),
      ...(margin === undefined ? {} : { waitMarginPercent: margin }),
    },
    complaints: complaints.all,
  };
}

function readUnits(given: unknown, complaints: Complaints): UnitSystem | undefined {
  if (given === undefined) return undefined;
  const units = unitsSchema.safeParse(given);
  if (units.success) return units.data;
  complaints.add(() => `\`units\` is ${valueText(given)}, but takes one of: ${UNIT_SYSTEMS.join(", ")}.`);
  return undefined;
}

function readMargin(given: unknown, complaints: Complaints): number | undefined {
  if (given === undefined) return undefined;
  const margin = marginSchema.safeParse(given);
  if (margin.success) return margin.data;
  complaints.add(
    () =>
      `\`waitMarginPercent\` is ${valueText(given)}, but takes a number from 0 to ${WAIT_MARGIN_PERCENT}: the margin can be made smaller, never larger.`,
  );
  return undefined;
}

/** Nobody mends more at once. */
const MAX_COMPLAINTS = 20;

/** What is beyond the first few is counted, and not looked at: each suggestion costs a comparison with every rule. */
class Complaints {
  readonly #first: string[] = [];
  #rest = 0;

  add(complaint: () => string): void {
    if (this.#first.length < MAX_COMPLAINTS) this.#first.push(complaint());
    else this.#rest += 1;
  }

  get all(): readonly string[] {
    return this.#rest === 0
      ? this.#first
      : [...this.#first, `${this.#rest} other entries are not understood.`];
  }
}

const MAX_SHOWN = 60;

/** A key as far as anybody reads it. */
const shown = (key: string): string => (key.length <= MAX_SHOWN ? key : `${key.slice(0, MAX_SHOWN)}…`);

/** A value in a few words, however deep it is nested. */
function valueText(value: unknown): string {
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object" && value !== null) return "an object";
  return typeof value === "string" ? JSON.stringify(shown(value)) : String(value);
}

const EXAMPLE = '{ "rules": { "grit-jump": "off" } }';

function readRules(value: unknown, complaints: Complaints): RuleLevels {
  if (value === undefined) return {};
  const entries = entriesOf(value);
  if (!entries) {
    complaints.add(() => `\`rules\` in ${CONFIG_FILE_NAME} must be an object, such as ${EXAMPLE}.`);
    return {};
  }
  const ids = RULES.filter(isAdjustable).map((rule) => rule.id);
  return Object.fromEntries(
    entries.flatMap(([id, given]) => {
      const level = levelSchema.safeParse(given);
      if (isAlwaysShown(id))
        complaints.add(() => `\`${id}\` cannot be set: it says that something was not checked.`);
      else if (!ids.includes(id))
        complaints.add(() => `There is no rule \`${shown(id)}\`. ${didYouMean(shown(id), ids)}`.trimEnd());
      else if (!level.success)
        complaints.add(
          () => `\`${id}\` is ${valueText(given)}, but takes one of: ${RULE_LEVELS.join(", ")}.`,
        );
      else return [[id, level.data]];
      return [];
    }),
  );
}

function parseJson(text: string): { readonly value: unknown } | { readonly complaint: string } {
  try {
    return { value: JSON.parse(text.replace(/^\ufeff/u, "")) };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { complaint: `${CONFIG_FILE_NAME} is not valid JSON: ${reason}` };
  }
}

function entriesOf(value: unknown): readonly (readonly [string, unknown])[] | undefined {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return undefined;
  return Object.entries(value);
}

/** Whether a project has switched a rule off. */
export const isOff = ({ rules }: ProjectConfig, rule: string): boolean =>
  Object.hasOwn(rules, rule) && rules[rule] === "off" && !isAlwaysShown(rule);

/** What settings go by in a finding. */
interface Adjustable {
  readonly rule: string;
  readonly severity: Severity;
  readonly eased?: Eased;
}

/** The findings at the levels that a project has set; those of rules that are off are left out. */
export function applySettings<F extends Adjustable>(
  findings: readonly F[],
  { rules, waitMarginPercent = WAIT_MARGIN_PERCENT }: ProjectConfig,
): readonly F[] {
  return findings.flatMap((finding) => {
    const isSet = Object.hasOwn(rules, finding.rule) && !isAlwaysShown(finding.rule);
    const level = isSet ? rules[finding.rule] : undefined;
    if (level === "off") return [];
    const { eased } = finding;
    const isWithin = eased !== undefined && eased.percent <= waitMarginPercent;
    // Within the margin a finding stays the hint that it is, whatever the level of its rule.
    const severity = isWithin ? finding.severity : (level ?? eased?.severity ?? finding.severity);
    return [severity === finding.severity ? finding : { ...finding, severity }];
  });
}
