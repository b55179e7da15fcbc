/** The texts in tables of the explanations of the rules and of the computations. */
import { TROUBLES } from "../../../grammar/src/vocabulary.ts";
import { LAST_GRITS } from "../../src/core/knowledge/abrasives.ts";
import { CHEMICALS } from "../../src/core/knowledge/chemicals.ts";
import { DUTIES } from "../../src/core/knowledge/duties.ts";
import { IGNITION_SOURCES } from "../../src/core/knowledge/ignition.ts";
import { INCOMPATIBLE } from "../../src/core/knowledge/incompatible.ts";
import { irritationBy } from "../../src/core/knowledge/irritating-woods.ts";
import { troubleOf } from "../../src/core/knowledge/troubles.ts";
import { WOODS } from "../../src/core/knowledge/woods.ts";
import { KINDS } from "../../src/core/rules/group-bad-air.ts";
import { TRADE_RULES } from "../../src/core/rules/registry.ts";

export const ruleTexts = (): readonly string[] => [
  ...safetyTexts(),
  ...troubleTexts(),
  ...TRADE_RULES.flatMap(({ voids }) => voids ?? []),
];

const safetyTexts = (): readonly string[] => [
  ...DUTIES.flatMap(({ danger, doc, defer }) => [danger, doc, defer]),
  ...CHEMICALS.flatMap(({ name, harm, instead }) => [
    name,
    harm,
    ...(instead === undefined ? [] : [instead]),
  ]),
  ...INCOMPATIBLE.map(({ result }) => result),
  ...WOODS.flatMap(({ name }) => irritationBy(name) ?? []),
  ...IGNITION_SOURCES.flatMap(({ word, putOut, lights }) => (lights ? [word, putOut] : [])),
  ...KINDS,
  "thinner",
  ...Object.values(LAST_GRITS).map(({ where }) => where),
];

const troubleTexts = (): readonly string[] =>
  TROUBLES.flatMap((word) => {
    const { looks, causes, remedy } = troubleOf(word)!;
    return [word, looks, ...causes, remedy];
  });
