/** What a job finds on a surface that earlier jobs worked on. */
import { describe, expect, test } from "vitest";
import { waitedOf } from "../../../server/src/core/surface/state.ts";
import { runsOf, stackOf } from "./run-of.ts";

const PIECES = `piece box {
  surface lid {
    shape    area 1 m2
    wood     beech
    existing oil varnish
  }
  surface base {
    shape    area 1 m2
    wood     beech
    existing alkyd paint
  }
}
piece same_box {
  surface lid {
    shape    area 1 m2
    wood     beech
    existing as left by first
  }
  surface base {
    shape    area 1 m2
    wood     beech
    existing as left by first
  }
}
recipe stripped {
  step strip with paint_stripper
}
recipe varnished {
  layer spar_varnish
}
recipe filled {
  step fill with wood_filler
  step sand 120
}
recipe waited {
  wait until cured
}
recipe shellacked {
  layer dewaxed_shellac
}
`;

const initial = (text: string, key: string) => runsOf(PIECES + text).get(key)!.initial;

describe("after", () => {
  test("goes on in the middle of the work: residue, dust and fillings are still there", () => {
    const text = `job first {
  piece box
  apply stripped to lid
  apply filled to base
}
job second {
  piece box
  after first
  apply varnished to lid, base
}
`;
    expect(initial(text, "second lid").residue).toBeDefined();
    const base = initial(text, "second base");
    expect(base.dust).toBeDefined();
    expect(base.grease).toBeDefined();
    // Sanded, and no coat was put on since.
    expect(base.fillings.map(({ sanded, from }) => [sanded, from])).toEqual([[true, base.nextSerial]]);
  });

  test("passes over a job that did nothing to the surface", () => {
    const text = `job first {
  piece box
  apply stripped to lid
}
job between {
  piece box
  after first
  apply varnished to base
}
job last {
  piece box
  after between
  apply shellacked to lid, base
}
`;
    expect(stackOf(initial(text, "last lid"))).toEqual([]);
    expect(stackOf(initial(text, "last base"))).toEqual(["alkyd paint", "spar varnish"]);
  });

  test("a wait counts from what the earlier job put on last", () => {
    const text = `job first {
  piece box
  start 2027-03-08 09:00
  apply shellacked to lid
}
job second {
  piece box
  after first
  start 2027-03-08 15:00
  apply waited to lid
}
`;
    const run = runsOf(PIECES + text).get("second lid")!;
    // The family's cure of dewaxed shellac is 7 days, of which 6 h have gone by.
    expect(run.final.clock.hours).toBe(7 * 24 - 6);
    expect(waitedOf(run.final, run.final.layers.at(-1)!).reached).toContain("cured");
  });
});

describe("after a time of use", () => {
  const jobs = (start: string, ...steps: readonly string[]) => `recipe rubbed_out {
  layer spar_varnish
  wait  72 h
  step  mask "brass"
  step  scuff 600
}
recipe bared {
  step strip with paint_stripper
  step scuff 220
}
job first {
  piece box
  start 2027-03-01 09:00
  ${steps.join("\n  ")}
}
job second {
  piece box
  after first
  start ${start} 09:00
  apply varnished to lid
}
`;
  const marks = (text: string) => {
    const { grease, dust, masks, layers, abrasions } = initial(text, "second lid");
    return {
      grease: grease !== undefined,
      dust: dust !== undefined,
      masks: masks.length,
      scuffed: abrasions.length + layers.reduce((sum, coat) => sum + coat.abrasions.length, 0),
    };
  };

  // The work takes 3 days and is over on 4 March; 30 days later it is 3 April.
  test("within 30 days the work lies as it was left", () => {
    const left = marks(jobs("2027-04-03", "apply stripped to lid", "apply rubbed_out to lid"));
    expect(left).toEqual({ grease: false, dust: true, masks: 1, scuffed: 2 });
  });

  test("later the finish is greasy and smooth, and nothing of the work is left on it", () => {
    const used = marks(jobs("2027-04-05", "apply stripped to lid", "apply rubbed_out to lid"));
    expect(used).toEqual({ grease: true, dust: false, masks: 0, scuffed: 0 });
  });

  test("bare wood is no finish that is used, and waits as it was left", () => {
    const bare = marks(jobs("2029-03-01", "apply bared to lid"));
    expect(bare).toEqual({ grease: false, dust: true, masks: 0, scuffed: 1 });
  });
});

describe("existing as left by", () => {
  test("takes the layers of the surface of the same name, old, greasy and unsanded by now", () => {
    const text = `job first {
  piece box
  apply varnished to lid
}
job years_later {
  piece same_box
  apply shellacked to lid
}
`;
    const lid = initial(text, "years_later lid");
    expect(stackOf(lid)).toEqual(["oil varnish", "spar varnish"]);
    expect(waitedOf(lid, lid.layers.at(-1)!).reached).toContain("cured");
    expect(lid.grease).toBeDefined();
  });

  test("takes a surface that the job did nothing to as that job found it", () => {
    const text = `job first {
  piece box
  apply varnished to lid
}
job years_later {
  piece same_box
  apply shellacked to base
}
`;
    expect(stackOf(initial(text, "years_later base"))).toEqual(["alkyd paint"]);
  });

  test("pieces that tell of each other's untouched surfaces come to an end", () => {
    const text = ["one", "two"]
      .map(
        (name, at) => `piece ${name} {
  surface lid {
    shape    area 1 m2
    wood     beech
    existing as left by on_${["two", "one"][at]}
  }
  surface base {
    shape area 1 m2
    wood  beech
  }
}
job on_${name} {
  piece ${name}
  apply varnished to base
}
job on_${name}_again {
  piece ${name}
  apply varnished to lid
}
`,
      )
      .join("");
    expect(stackOf(initial(text, "on_one_again lid"))).toEqual([]);
  });
});
