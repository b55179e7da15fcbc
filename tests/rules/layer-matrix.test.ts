/**
 * The findings agree with the table of layers, cell by cell: for every pair of families the smallest recipe that lays one
 * over the other, judged as the verdict of `relation` has it.
 *
 * - "fine": silent on the fresh layer at its recoat time, and on an old one that was cleaned and scuffed.
 * - "fine if abraded": found on an old layer that was only cleaned; silent when it was scuffed.
 * - "fine after cure": found at the recoat time, silent after the cure.
 * - "needs a barrier": found even after the cure; silent with dewaxed shellac (for milk paint shellac primer) between.
 * - "no": found whatever the time.
 */
import { describe, expect, it } from "vitest";
import { family } from "../../server/src/core/knowledge/families.ts";
import type { FamilyName } from "../../server/src/core/knowledge/family-names.ts";
import type { Family } from "../../server/src/core/knowledge/family-schema.ts";
import { type RelationVerdict, relationMatrix } from "../../server/src/core/knowledge/layer-relation.ts";
import { summary } from "../harness/check-text.ts";
import { shareOf } from "../harness/share.ts";

const SAFETY =
  "safety dust_mask, ventilate, no_ignition, wet_rags, gloves, vapour_respirator, eye_protection";
const SCUFFED = ["step scuff 220", "step dust"];
const CURED = "wait until cured";

/** What is said of a recipe as a whole, and of lead in old paint, is not about the two layers. */
const OTHER_MATTERS = new Set([
  "unprotected-layer",
  "film-too-thin",
  "film-too-thick",
  "handled-before-dry",
  "lead-not-tested",
  "no-lead-safe-work",
  "lead-unsafe-method",
]);

const rules = (text: string): readonly string[] =>
  summary(text)
    .map((line) => line.split(" ")[1]!)
    .filter((rule) => !OTHER_MATTERS.has(rule));

const layer = (row: Family, more = ""): string =>
  `layer ${row.name.replaceAll(" ", "_")}${row.penetrating || row.name === "grain filler" ? ", wiped off" : ""}${more}`;

const recipe = (lines: readonly string[], head = "for wood\n  "): string =>
  `recipe work {\n  ${head}${SAFETY}\n  ${lines.join("\n  ")}\n}\n`;

const overOld = (below: FamilyName, lines: readonly string[]): readonly string[] =>
  rules(
    `piece box {\n  built 2010\n  surface lid {\n    shape area 1 m2\n    wood beech\n    existing ${below}\n  }\n}\n` +
      recipe(["step clean with soap", ...lines], "") +
      "job boxes {\n  piece box\n  apply work to lid\n}\n",
  );

/** A washcoat is thin, and a stain goes on it once it is scuffed. */
const isWashcoat = (over: Family, below: Family): boolean =>
  over.role === "stain" && below.evensStain === true && below.buildsFilm;

function checkCell(over: Family, below: Family, verdict: RelationVerdict): void {
  const scuffed =
    below.buildsFilm || ["epoxy filler", "polyester filler"].includes(below.name) ? SCUFFED : [];
  const end = [layer(over), CURED];
  const fresh = () => rules(recipe([layer(below), "wait until recoat", ...end]));
  const cured = () => rules(recipe([layer(below), CURED, ...scuffed, ...end]));
  const old = () => overOld(below.name, [...SCUFFED, ...end]);
  if (isWashcoat(over, below) && verdict === "fine if abraded") {
    const thinned = layer(
      below,
      `, thinned 1:1 with ${below.name === "sanding sealer" ? "acetone" : below.thinners[0]}`,
    );
    expect(rules(recipe([thinned, "wait until recoat", ...SCUFFED, ...end]))).toEqual([]);
    expect(fresh()).not.toEqual([]);
    return;
  }
  switch (verdict) {
    case "fine":
      expect(fresh()).toEqual([]);
      expect(old()).toEqual([]);
      return;
    case "fine if abraded":
      expect(overOld(below.name, end)).not.toEqual([]);
      expect(old()).toEqual([]);
      expect(cured()).toEqual([]);
      return;
    case "fine after cure":
      // A primer is cured, as far as coats above go, at its recoat time.
      if (below.recoat![0] < below.cure!) expect(fresh()).not.toEqual([]);
      expect(cured()).toEqual([]);
      expect(old()).toEqual([]);
      return;
    case "needs a barrier": {
      const barrier = over.binder === "casein" ? "layer shellac_primer" : "layer dewaxed_shellac";
      expect(cured()).not.toEqual([]);
      expect(old()).not.toEqual([]);
      expect(rules(recipe([layer(below), CURED, ...scuffed, barrier, "wait until recoat", ...end]))).toEqual(
        [],
      );
      return;
    }
    case "no":
      expect(fresh()).not.toEqual([]);
      expect(cured()).not.toEqual([]);
      expect(old()).not.toEqual([]);
  }
}

describe("findings follow the table of layers", () => {
  const names = [...new Set(relationMatrix().map(({ over }) => over))];
  it.each(names)("%s over every family", (name) => {
    // One cell in so many, so that over the families every one below has its turn.
    const wrong = shareOf(relationMatrix(), 7)
      .filter(({ over }) => over === name)
      .flatMap(({ over, below, relation }) => {
        try {
          checkCell(family(over), family(below), relation.verdict);
          return [];
        } catch (error) {
          return [`${over} over ${below} (${relation.verdict}): ${String(error).split("\n")[0]}`];
        }
      });
    expect(wrong).toEqual([]);
  });
});
