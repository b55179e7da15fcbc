/**
 * One cause, one finding: missing duties of a recipe are told together, what follows from another finding becomes its
 * related place, and each part is still allowed, set and explained by its own rule.
 */
import { describe, expect, it } from "vitest";
import type { Finding } from "../../server/src/core/findings.ts";
import { groupFindings } from "../../server/src/core/rules/grouping.ts";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { partsOf } from "../../server/src/views/places/finding-parts.ts";
import { findingsOf, lineOf } from "../harness/check-text.ts";
import { sampleAnalyst } from "../harness/samples.ts";
import { applied } from "../harness/show-findings.ts";

const OILED = (...lines: readonly string[]) => `recipe oiled {
  for    wood
  safety no_ignition, gloves
  step   sand 120, 180
  step   dust
${lines.map((line) => `${line}\n`).join("")}  layer  oil_varnish, wiped off
  wait   until cured
}
`;

const shown = (text: string, findings: readonly FileFinding[] = findingsOf(text)) =>
  findings.map((finding) => ({
    at: lineOf(text, finding.span.start),
    severity: finding.severity,
    headline: finding.headline,
    parts: partsOf(finding).map(({ rule, span }) => `${lineOf(text, span.start)} ${rule}`),
  }));

describe("missing duties of one recipe", () => {
  it("are one finding, of the gravest level, where the gravest stands", () => {
    const text = OILED();
    expect(shown(text)).toEqual([
      {
        at: 6,
        severity: "error",
        headline: "Oily rags can catch fire by themselves; 2 more duties are not stated",
        parts: ["6 rags-not-wetted", "4 no-dust-mask", "6 no-ventilation"],
      },
    ]);
    const [finding] = findingsOf(text);
    // One sentence for each material or work.
    expect(finding!.why).toBe(
      "`oil_varnish` leaves rags that can heat up and catch fire by themselves and gives off the vapour of its mineral spirits.\nSanding throws fine dust.",
    );
    expect(finding!.related.map(({ span, message }) => [lineOf(text, span.start), message])).toEqual([
      [4, "`dust_mask` is not stated here"],
    ]);
  });

  it("are told with what to do for each, rags first", () => {
    const [finding] = findingsOf(OILED());
    expect(finding!.remedy).toMatch(
      /^Lay oily rags in water in a closed metal can, or spread them flat outdoors, at once/u,
    );
    expect(finding!.remedy).toContain("Wear a fitted particle filter (N95 or better) while dust flies.");
    expect(finding!.remedy).toContain("Move fresh air through the room");
    expect(finding!.remedy).toContain(
      "Then state so at the top of the recipe: `safety wet_rags, dust_mask, ventilate`",
    );
  });

  it("are stated by one fix above the first line that needs one", () => {
    const text = OILED();
    const [fix, ...others] = findingsOf(text)[0]!.fixes;
    expect(others).toEqual([]);
    expect(fix).toMatchObject({
      kind: "undertaking",
      title: "State that you keep to 3 safety duties: `wet_rags`, `dust_mask` and `ventilate`",
    });
    const fixed = applied(text, "test.finish", fix!);
    expect(fixed.split("\n")[3]).toBe("  safety wet_rags, dust_mask, ventilate");
    expect(findingsOf(fixed)).toEqual([]);
  });

  it("are allowed by part", () => {
    const text = OILED("  # allow rags-not-wetted: the cloths are burnt in the stove at once");
    expect(shown(text).map(({ severity, parts }) => [severity, parts])).toEqual([
      ["warning", ["4 no-dust-mask", "7 no-ventilation"]],
    ]);
    const one = OILED(
      "  # allow rags-not-wetted: the cloths are burnt in the stove at once",
      "  # allow no-ventilation: done in the yard",
    );
    // One alone reads as itself.
    expect(shown(one)).toEqual([
      {
        at: 4,
        severity: "warning",
        headline: "Fine dust to breathe: `dust_mask` is not stated",
        parts: ["4 no-dust-mask"],
      },
    ]);
  });

  it("are set by part in a project", () => {
    const text = OILED();
    const analyst = createAnalyst({
      resolve: (_, path) => path,
      config: () => ({ rules: { "rags-not-wetted": "off", "no-ventilation": "hint" }, complaints: [] }),
    });
    analyst.setFile("test.finish", text);
    expect(shown(text, analyst.analysis().findings("test.finish"))).toMatchObject([
      { severity: "warning", parts: ["4 no-dust-mask", "6 no-ventilation"] },
    ]);
  });

  it("of two recipes are two findings", () => {
    const text = OILED() + OILED().replace("oiled", "oiled_again");
    expect(shown(text).map(({ at }) => at)).toEqual([6, 14]);
  });
});

const FIRE = `material thinner {
  family mineral spirits
  flash  39 C
}
recipe cleaned {
  for    wood
  safety gloves
  step   dewax with thinner
  step   dust
  step   dewax with thinner
  step   clean with soap
}
piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing paste wax
  }
}
shop shed {
  air      21 C, 50 % RH
  ignition heater
}
job lid {
  piece box
  in    shed
  apply cleaned to lid
}
`;

describe("a heater in the shop", () => {
  it("and a missing `no_ignition` are one fire, told with the other duties", () => {
    expect(shown(FIRE)).toEqual([
      {
        at: 8,
        severity: "error",
        headline: "The shop's heater can light the vapour of `thinner`",
        parts: [
          "8 ignition-near-flammable",
          "10 ignition-near-flammable",
          "8 flames-not-kept-away",
          "8 no-ventilation",
        ],
      },
    ]);
    const [{ why, remedy, related, where, fixes }] = findingsOf(FIRE) as [FileFinding];
    expect(why).toContain("to the heater (job `lid`).");
    expect(remedy).toMatch(/^Switch the heater off .* `ignition none`.*\sMove fresh air through the room/su);
    expect(related.map(({ span, message }) => [lineOf(FIRE, span.start), message])).toEqual([
      [10, "The shop's heater can light the vapour of `thinner`"],
      [23, "The source of ignition"],
      [2, "What it is made of is stated here"],
    ]);
    // The missing duties hold in every job, so the finding names no job as its own.
    expect(where).toBeUndefined();
    // Stating the duties does not take the heater out of the shop.
    const fixed = applied(FIRE, "test.finish", fixes[0]!);
    expect(shown(fixed)).toMatchObject([
      { parts: ["9 ignition-near-flammable", "11 ignition-near-flammable"] },
    ]);
  });

  it("is a finding of its own where the duty is stated", () => {
    const stated = FIRE.replace("safety gloves", "safety gloves, no_ignition");
    expect(shown(stated).map(({ headline, parts }) => [headline, parts])).toEqual([
      ["Vapour that builds up: `ventilate` is not stated", ["8 no-ventilation"]],
      [
        "The shop's heater can light the vapour of `thinner`",
        ["8 ignition-near-flammable", "10 ignition-near-flammable"],
      ],
    ]);
  });

  it("is allowed by part", () => {
    const allow = (text: string) =>
      `  # allow ignition-near-flammable: the stove is cold all summer\n${text}`;
    const text = FIRE.replaceAll("  step   dewax with thinner\n", allow);
    expect(shown(text)).toMatchObject([{ parts: ["9 flames-not-kept-away", "9 no-ventilation"] }]);
  });
});

describe("bad air in one shop", () => {
  const COLD = `recipe first {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
recipe second {
  for   wood
  layer waterborne_polyurethane
  wait  until cured
}
piece box {
  built 2015
  surface lid {
    shape panel 300 mm x 200 mm
    wood  beech
  }
  surface body {
    shape panel 300 mm x 200 mm
    wood  beech
  }
}
shop porch {
  air 9 C, 88 % RH
}
job boxes {
  piece box
  in    porch
  apply first to lid
  apply second to body
}
`;

  it("is one finding on the first line, whatever the number of coats and recipes", () => {
    expect(shown(COLD)).toEqual([
      {
        at: 3,
        severity: "warning",
        headline: "The shop's air is too cold, too damp and near its dew point",
        parts: ["3 air-outside-limits", "3 near-dew-point", "8 air-outside-limits", "8 near-dew-point"],
      },
    ]);
    const [{ related, where }] = findingsOf(COLD) as [FileFinding];
    expect(where).toBe("Job `boxes`, surfaces `lid` and `body`.");
    expect(related.map(({ span, message }) => [lineOf(COLD, span.start), message])).toEqual([
      [8, "Here as well"],
      [23, "The air of the shop"],
    ]);
  });

  it("of two jobs is two findings", () => {
    const again = COLD.slice(COLD.indexOf("job boxes")).replace("boxes", "more_boxes");
    expect(shown(COLD + again)).toHaveLength(2);
  });

  it("also keeps a piece for hard wear from curing, which is told apart: no wait of months is asked for", () => {
    const hard = COLD.replaceAll("    wood  beech", "    wood  beech\n    wear  hard").replaceAll(
      "  wait  until cured\n",
      "",
    );
    const findings = findingsOf(hard).filter(({ rule }) => rule === "air-outside-limits");
    expect(findings.flatMap(partsOf).map(({ rule }) => rule)).not.toContain("in-service-before-cure");
    const uncured = findingsOf(hard).filter(({ rule }) => rule === "in-service-before-cure");
    expect(uncured.map(({ remedy }) => remedy)).toContainEqual(
      expect.stringMatching(/^In a room that is warm enough, write `wait until cured` \(about 21 days\)/u),
    );
    expect(findings[0]!.remedy).toContain("In the cold no wait is long enough");
    expect(JSON.stringify(findingsOf(hard))).not.toMatch(/\d+ days .*longer/u);
  });
});

it("wax left in used wood is one answer: dewaxing cleans as well", () => {
  const text = `recipe coated {
  for    wood
  safety dust_mask
  step   sand 120, 180
  step   dust
  layer  waterborne_polyurethane
  wait   until cured
}
piece box {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing waterborne polyurethane, paste wax
  }
}
job boxes {
  piece box
  apply coated to lid
}
`;
  const onCoat = shown(text).filter(({ parts }) => parts.some((part) => part.includes("wax")));
  expect(onCoat.map(({ parts }) => parts)).toContainEqual(["6 coat-over-wax", "6 coat-on-unclean-surface"]);
});

describe("consequences", () => {
  const at = (start: number, file = "a") => ({
    file,
    declaration: "recipe r",
    span: { start, end: start + 5 },
  });
  const finding = (rule: string, start: number, more: Partial<Finding> = {}): Finding => ({
    rule,
    severity: "warning",
    place: at(start),
    headline: `What ${rule} says`,
    why: "Why.",
    remedy: "Do this.",
    related: [],
    fixes: [],
    ...more,
  });
  const toCause = (rule: string) => (rule === "effect" ? ["cause"] : []);
  const rules = (findings: readonly Finding[]) => findings.map(({ rule }) => rule);

  it("on the line of the cause are told in a line of its message", () => {
    const grouped = groupFindings(
      [finding("effect", 0, { severity: "error" }), finding("cause", 2)],
      toCause,
    );
    expect(grouped).toHaveLength(1);
    expect(grouped[0]).toMatchObject({
      rule: "cause",
      severity: "error",
      headline: "What cause says",
      also: ["Also: What effect says. Do this."],
      related: [],
    });
    expect(grouped[0]!.parts?.map(({ rule }) => rule)).toEqual(["cause", "effect"]);
  });

  it("are told with the short remedy where they have one, and with all of it else", () => {
    const told = (more: Partial<Finding>) =>
      groupFindings([finding("effect", 0, more), finding("cause", 2)], toCause)[0]!.also;
    const remedy = "Wear a mask, e.g. of class P2. Then state so.";
    expect(told({ remedy, brief: "Wear a mask." })).toEqual(["Also: What effect says. Wear a mask."]);
    expect(told({ remedy })).toEqual([
      "Also: What effect says. Wear a mask, e.g. of class P2. Then state so.",
    ]);
    expect(told({ remedy, brief: "" })).toBeUndefined();
  });

  it("elsewhere are told apart, unless both name one cause", () => {
    expect(rules(groupFindings([finding("cause", 0), finding("effect", 40)], toCause))).toEqual([
      "cause",
      "effect",
    ]);
    const named = [
      finding("cause", 0, { causes: ["damp air"] }),
      finding("effect", 40, { causes: ["damp air"] }),
    ];
    expect(rules(groupFindings(named, toCause))).toEqual(["cause"]);
    expect(groupFindings(named, toCause)[0]!.related).toEqual([
      { place: at(40), message: "What effect says" },
    ]);
    const others = [
      finding("cause", 0, { causes: ["damp air"] }),
      finding("effect", 2, { causes: ["dust"] }),
    ];
    expect(rules(groupFindings(others, toCause))).toEqual(["cause", "effect"]);
  });

  it("and what to do about one matter is told whole once", () => {
    const again = { key: "lead of job a", of: "the old varnish", remedy: "do the same." };
    const told = (second: string) =>
      groupFindings(
        [finding("lead", 0, { again }), finding("lead", 40, { again: { ...again, key: second } })],
        toCause,
      ).map(({ remedy, related }) => [remedy, ...related.map(({ message }) => message)]);
    expect(told("lead of job a")).toEqual([
      ["Do this."],
      ["As told for the old varnish, do the same.", "What to do is told here"],
    ]);
    expect(told("lead of job b")).toEqual([["Do this."], ["Do this."]]);
  });

  it("stand alone where the cause is allowed", () => {
    expect(rules(groupFindings([finding("effect", 0)], toCause))).toEqual(["effect"]);
  });

  it("of rules that are secondary to each other are not lost", () => {
    const round = (rule: string) => (rule === "effect" ? ["cause"] : ["effect"]);
    expect(rules(groupFindings([finding("effect", 0), finding("cause", 2)], round)).length).toBeGreaterThan(
      0,
    );
  });

  it("lead through others to the first cause", () => {
    const chain = (rule: string) => ({ third: ["second"], second: ["first"] })[rule] ?? [];
    const grouped = groupFindings([finding("third", 0), finding("second", 1), finding("first", 2)], chain);
    expect(rules(grouped)).toEqual(["first"]);
    expect(grouped[0]!.parts?.map(({ rule }) => rule).sort()).toEqual(["first", "second", "third"]);
  });
});

it("no line of the file of mistakes carries more findings than it may", () => {
  const file = "mistakes.finish";
  const analysis = sampleAnalyst().analysis();
  const perLine = new Map<number, number>();
  for (const { span } of analysis.findings(file)) {
    const line = lineOf(analysis.text(file)!, span.start);
    perLine.set(line, (perLine.get(line) ?? 0) + 1);
  }
  expect(Math.max(...perLine.values())).toBeLessThanOrEqual(3);
});
