/** One question has one answer: what is advised on a line does not contradict or repeat what is advised beside it. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { exampleText } from "../../server/src/core/rules/explain.ts";
import { RULES } from "../../server/src/core/rules/registry.generated.ts";
import type { FileFinding } from "../../server/src/views/places/file-finding.ts";
import { findingsOf, lineOf } from "../harness/check-text.ts";
import { shareOf } from "../harness/share.ts";
import { casesFrom, nameOf, ORDERS, textOf, walkRemedies } from "../harness/walk-remedies.ts";

const found = (text: string, rule: string) => findingsOf(text).find((each) => each.rule === rule);

const PAINTED = (wait: string) => `material trim "Trim enamel" {
  family acrylic paint
  colour white
}
recipe painted {
  for    any
  safety gloves, ventilate, no_ignition, wet_rags
  layer  trim
${wait}  layer  oil_polyurethane
  wait   until cured
}
`;

describe("a clear that should be another", () => {
  it("is not told how long to wait for it, but for what takes its place", () => {
    const finding = found(PAINTED(""), "ambering-over-white");
    expect(finding?.also).toEqual([
      "Also: the coat below must dry first, so whatever goes on here, write `wait until recoat` above it.",
    ]);
    expect(finding?.message).not.toContain("1 day");
  });
  it("the same in place of a wait that is too short", () => {
    expect(found(PAINTED("  wait   30 min\n"), "ambering-over-white")?.also).toEqual([
      "Also: the coat below must dry first, so whatever goes on here, write `wait until recoat` in place of `wait 30 min`.",
    ]);
  });
  it("with the yellow allowed, the wait for it is told whole", () => {
    const text = PAINTED("").replace(
      "  layer  oil_",
      "  # allow ambering-over-white: ivory is wanted\n  layer  oil_",
    );
    expect(found(text, "recoat-too-early")?.remedy).toContain("`wait 1 day`");
  });
});

const USED = (...steps: readonly string[]) => `piece box "Box" {
  built 2015
  surface lid {
    shape    panel 300 mm x 200 mm
    wood     beech
    existing alkyd paint
  }
}
shop mill {
  country US
}
recipe renew {
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
${steps.map((step) => `  ${step}\n`).join("")}  layer  alkyd_paint
  wait   until cured
}
job boxes {
  piece box
  in    mill
  apply renew to lid
}
`;

describe("a used surface", () => {
  const unclean = "coat-on-unclean-surface";
  it("is cleaned before it is scuffed, and dusted after", () => {
    const finding = found(USED("step   scuff 220"), unclean);
    expect(finding?.headline).toBe("This layer goes on sanding dust, on a surface that was never cleaned");
    expect(finding?.remedy).toBe(
      "Clean before the scuffing, which rubs the grease in: `step clean with soap`, `step clean with water`, `wait overnight`. Dust after it: `step dust`.",
    );
  });
  it("by a fix that leaves nothing to say", () => {
    const cleaned = USED("step   clean with soap", "wait   overnight", "step   scuff 220", "step   dust");
    expect(found(cleaned, unclean)).toBeUndefined();
  });
});

const SHELLACKED = `piece table "Table" {
  surface top {
    shape panel 800 mm x 500 mm
    wood  oak
    wear  hard
  }
}
recipe polished {
  for    wood
  safety dust_mask, ventilate, no_ignition, gloves
  step   sand 120, 180
  step   dust
  layer  dewaxed_shellac
  wait   until cured
}
job tables {
  piece table
  apply polished to top
}
`;

it("nobody is told to add coats of what another finding has replaced", () => {
  const finding = found(SHELLACKED, "not-for-this-use");
  expect(finding?.also).toEqual([
    "Also: whatever goes on here, hard wear asks for three coats of a clear or an enamel, or two of hardwax oil or of a two-part clear.",
  ]);
});

describe("one kind of protection for the breath", () => {
  const sprayed = (clear: string) => `material hard "Isocyanate hardener" {
  family hardener
}
material bar_clear {
  family   two part polyurethane
  mix      2:1 with hard
  pot_life 4 h
}
piece bar {
  surface top {
    shape panel 800 mm x 500 mm
    wood  beech
  }
}
recipe sprayed(clear: material) {
  for    wood
  safety gloves, eye_protection, ventilate, no_ignition
  layer  ${clear}, by hvlp
  wait   until cured
}
job bars {
  piece bar
  apply sprayed(clear: bar_clear) to top
}
`;
  it("is supplied air for isocyanate, also where a parameter brings it", () => {
    const spoken = findingsOf(sprayed("clear")).map(({ message }) => message);
    expect(spoken.join("\n")).toContain("`safety supplied_air`");
    expect(spoken.join("\n")).not.toMatch(/cartridges that are right|vapour_respirator/u);
  });
});

const STRIPPED = (title: string) => `material remover "${title}" {
  family paint stripper
}
recipe bare {
  for    wood
  safety gloves, eye_protection, vapour_respirator, ventilate, no_ignition
  step   strip with remover
  step   clean with water
}
`;

describe("a stripper that should be another", () => {
  it("is replaced by a stripper, not by a thinner", () => {
    const finding = found(STRIPPED("Quick strip, with methanol"), "poisonous-solvent");
    expect(finding?.remedy).toMatch(/^Use a stripper without it/u);
  });
  it("is one finding where it holds two poisons", () => {
    const findings = findingsOf(STRIPPED("Strip with methylene chloride and methanol"));
    expect(findings.map(({ rule }) => rule)).toEqual(["banned-stripper"]);
    expect(findings[0]?.also).toEqual([
      "Also: `remover` holds methanol. The stripper in its place should hold neither.",
    ]);
  });
});

describe("a flame", () => {
  const noted = (line: string) =>
    findingsOf(`recipe work {\n  for  wood\n  ${line}\n}\n`).find(({ rule }) => rule === "open-flame")
      ?.remedy;
  it.each([
    ['step scrape "gas torch until it bubbles, then the knife"', /^Use no flame: take the coating off/u],
    ['note "Warm the paint with the blowlamp until it blisters, and scrape."', /^Use no flame: take/u],
    ['note "Set the lit gas stove beside the wet rack, then it is dry by noon."', /^Put the flame out/u],
  ])("%s", (line, remedy) => expect(noted(line)).toMatch(remedy));
});

describe("one time, and none for what is to be undone", () => {
  const filled = (wait: string) => `material pore_paste {
  family grain filler
  recoat 1 day
}
recipe filled {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  layer  pore_paste, wiped off
  wait   ${wait}
  layer  waterborne_lacquer
  wait   until cured
}
`;
  it("the cure of a filler, not its recoat time as well", () => {
    const findings = findingsOf(filled("6 h")).filter(
      ({ span }, _, all) => span.start === all[0]!.span.start,
    );
    expect(findings.map(({ rule }) => rule)).toEqual(["layers-at-odds"]);
  });
  it("no window for a stain that the film keeps out", () => {
    const text = `material old_clear {
  family oil varnish
  recoat 12 h to 3 days
}
recipe stained {
  for    wood
  safety gloves, ventilate, no_ignition, wet_rags
  layer  old_clear
  wait   30 days
  layer  oil_stain, wiped off after 10 min
  wait   24 h
  layer  oil_varnish
  wait   until cured
}
`;
    expect(found(text, "recoat-too-late")).toBeUndefined();
    const sealed = found(text, "stain-on-sealed-surface");
    expect(sealed?.parts?.map(({ rule }) => rule)).toContain("recoat-too-late");
    expect(sealed?.message).not.toContain("within 3 days");
  });
  it("nothing as flexible as mineral oil is looked for: it never dries", () => {
    const finding = found(
      USED("step   clean with soap", "wait   overnight").replace(
        "existing alkyd paint",
        "existing mineral oil",
      ),
      "hard-over-soft",
    );
    expect(finding?.message).not.toContain("flexible");
    expect(finding?.remedy).toBe("Renew it with mineral oil or wax instead, which hold on it.");
  });
});

it("untested lead and the way of working on it are one finding", () => {
  const text = USED('step   sand 80, 120 "orbital sander"').replace("built 2015", "built 1936");
  const lead = findingsOf(text).filter(({ rule }) => rule.startsWith("lead-"));
  expect(lead.map(({ rule }) => rule)).toEqual(["lead-not-tested"]);
  expect(lead[0]?.also?.join("\n")).toContain("A sander without a HEPA filter");
});

// ---------------------------------------------------------------------------------------------------------------
// All that is said of every example, every sample and every family begun on hard wear

/** Two demands that nobody can meet at once, where both are made of one line or of one declaration. */
interface Clash {
  readonly one: RegExp;
  readonly other: RegExp;
  readonly within: "line" | "declaration" | "file";
}

const CLASHES: readonly Clash[] = [
  {
    one: /\b(?:add|put on) (?:another|one more|\d+ more) coats?\b/iu,
    other: /\bleave (?:\d+ |a |one |the last )?coats? out\b|\bfewer coats\b/iu,
    within: "declaration",
  },
  {
    one: /\bmore coats? of\b|\bwait \d[^.`]* longer\b/iu,
    other: /^(?:use a (?:material|waterborne clear)|finish (?:this surface|it|with))\b/iu,
    within: "line",
  },
  {
    one: /\bwait \d[^.`]* longer\b/iu,
    other: /^stain within\b|\bbefore the (?:window|label's latest)/iu,
    within: "line",
  },
  { one: /\bwith a finer grit\b|\bsand (?:it )?finer\b/iu, other: /^stop sanding at\b/iu, within: "line" },
  { one: /\bwarm (?:it|the room) to\b/iu, other: /\bcool (?:it|the room)\b/iu, within: "declaration" },
  {
    one: /\bwarm the room\b(?!.*let no flame or glowing heater)/iu,
    other: /\bswitch the heater off\b|\bwarmed by hot water\b/iu,
    within: "file",
  },
  // Dust that may hold lead is taken up wet or by a HEPA vacuum, and never made dry.
  {
    one: /^(?!.*\[wet\])(?:^(?:sand|scuff|scrape|dust)\b(?! wet)|\bthen (?:sand|scuff) and dust\b|(?<!in place of )`step (?:dust`|(?:sand|scuff) \d))/iu,
    other: /\bnot tested counts as lead\b|\bby `lead_safe`/iu,
    within: "file",
  },
  // What burns dry is worked on wet, whatever a test for lead finds.
  { one: /\bif it finds lead, work wet\b/iu, other: /\beven where no lead is found\b/iu, within: "line" },
  // One kind of protection for the breath, and none beside a ban.
  {
    one: /\bsupplied air\b|\bair-supplied\b/iu,
    other: /\bwear a respirator with vapour cartridges\b/iu,
    within: "line",
  },
  {
    one: /\bmay not be (?:used|sold)\b|\bis banned\b/iu,
    other: /\brespirator\b|\bcartridges?\b|\bsupplied air\b/iu,
    within: "line",
  },
];

const ROOMS = { line: 0, declaration: 1, file: 2 } as const;

/** Where a finding stands, from its line to its file. */
function placesOf(text: string, offset: number): readonly [string, string, string] {
  const above = text.slice(0, offset);
  const declaration = above.split(/^\}\n/mu).length;
  return [`line ${lineOf(text, offset)}`, `declaration ${declaration}`, "file"];
}

/** What is asked for, sentence by sentence; a remedy that says so first asks for all of it to be done wet, or gives way. */
const demandsOf = ({ remedy, also = [] }: FileFinding): readonly string[] =>
  [remedy, ...also].flatMap((part) => {
    const how = /\bwet by hand\b|\bfollow the finding on the lead instead\b/u.test(part) ? " [wet]" : "";
    return part.split(/(?<=[.;:])\s+/u).flatMap((each) => (each === "" ? [] : [`${each}${how}`]));
  });

function clashesOf(text: string, findings: readonly FileFinding[]): readonly string[] {
  const all = findings.flatMap((finding) =>
    demandsOf(finding).map((demand) => ({
      rule: finding.rule,
      demand,
      places: placesOf(text, finding.span.start),
    })),
  );
  return CLASHES.flatMap(({ one, other, within }) => {
    const room = ROOMS[within];
    return all
      .filter(({ demand }) => one.test(demand))
      .flatMap((a) =>
        all
          .filter((b) => b.places[room] === a.places[room] && b !== a && other.test(b.demand))
          .map((b) => `${a.rule} "${a.demand}" and ${b.rule} "${b.demand}"`),
      );
  });
}

const EXAMPLES = RULES.flatMap(({ id, failing }) =>
  failing.map((example) => [`${id}: ${example.title}`, `${exampleText(example)}\n`] as const),
);
/** One line of every family on hard wear: much is wrong with it, and all of it is told at once. */
const BEGINNINGS = casesFrom("sanded between, no last wait")
  .filter(({ surface, wear }) => wear === "hard" && ["pine", "old varnish"].includes(surface))
  .map((each) => [nameOf(each), textOf(each)] as const);
const MISTAKES = readFileSync(new URL("../../samples/mistakes.finish", import.meta.url), "utf8");
const TEXTS = [...EXAMPLES, ...BEGINNINGS, ["samples/mistakes.finish", MISTAKES] as const];

describe("no two remedies of one text contradict each other", () => {
  it("knows a contradiction when it sees one", () => {
    const texts = [
      "Add 1 more coat of `clear`: write `x 3`.",
      "Use a waterborne clear that stays pale.",
      "Scuff it with 220.",
      "Leave it alone: not tested counts as lead.",
    ];
    const at = { rule: "any", headline: "", why: "", span: { start: 0, end: 1 } } as const;
    const findings = texts.map((remedy) => ({ ...at, remedy }) as unknown as FileFinding);
    expect(clashesOf("a\n", findings)).toHaveLength(2);
  });
  it("in words", () => {
    const clashes = TEXTS.flatMap(([name, text]) =>
      clashesOf(text, findingsOf(text)).map((clash) => `${name}: ${clash}`),
    );
    expect(clashes).toEqual([]);
  });
  it.each(ORDERS)("by the %s fixes, which never lead back to a text that was left", (order) => {
    const astray = shareOf(EXAMPLES, 2).filter(([, text]) =>
      ["in a circle", "too long"].includes(walkRemedies(text, order).end),
    );
    expect(astray.map(([name]) => name)).toEqual([]);
  });
});
