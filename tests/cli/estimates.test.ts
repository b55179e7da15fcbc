/** Estimates in the printed totals and the shopping list: fumes with the air that they ask for, and paper. */
import { describe, expect, test } from "vitest";
import { unbroken } from "../harness/unbroken.ts";
import { runCli } from "./run-cli.ts";

const files = {
  "job.finish": `material varnish {
  family oil varnish
  covers 10 m2/L
  voc    400 g/L
  touch  8 h
  rated  21 C, 50 % RH
}

piece board {
  surface face {
    shape area 2 m2
    wood  beech
    wear  light
  }
}

shop room {
  air  21 C, 50 % RH
  room 50 m3, 2 air changes/h
}

recipe work {
  safety dust_mask, wet_rags, no_ignition, ventilate 10 air changes/h
  step   sand 120, 150
  step   dust, takes 5 min
  layer  varnish x 2, takes 30 min {
    wait 3 days
    step scuff wet 220
    step dust
  }
  wait   until cured
}

job it {
  piece board x 3
  in    room
  start 2027-03-08 09:00
  spare 0 %
  apply work to face
}
`,
};

describe("totals", () => {
  test("grams by line with the air of a coat, and the shift that asks for most", async () => {
    const stdout = unbroken((await runCli(["totals", "job.finish"], { files })).stdout);
    // 2 m2 · 3 / 10 · 400 g/L = 240 g a coat; 240 000 mg / 8 h / 350 mg/m3 · 5 / 50 m3 = 8.6 an hour.
    expect(stdout).toMatch(/Fumes \([^)]*no calculation can show that\s+a room is safe\)\n/u);
    expect(stdout).toMatch(/VOC +480 g\n/u);
    expect(stdout).toMatch(
      /varnish, 2 coats +480 g {2}a coat needs 8\.6 air changes\/h by itself, 10 stated\n/u,
    );
    expect(stdout).toMatch(
      /worst 8 h +240 g {2}from Mon 8 Mar 2027 \d\d:\d\d: needs 8\.6 air changes\/h in 50 m3; 10 stated: enough by this estimate\n/u,
    );
  });

  test("grams by the hour, with the lines that give off most", async () => {
    const stdout = unbroken((await runCli(["totals", "job.finish"], { files })).stdout);
    // A board's 80 g leave from its first stroke to half of 8 h after its last, in 4 h 30 min: 17.78 g/h. Three boards
    // half an hour apart overlap: 53.3 g in an hour in which all three are wet, 240 g in all, twice.
    expect(stdout).toMatch(/most in an hour +53 g {2}from Mon 8 Mar 2027 \d\d:00\n/u);
    const days = [...stdout.matchAll(/ (\w+ \d+ Mar 2027) +(\d+) g {2}hourly from \d\d:00: ([\d ]+)\n/gu)];
    expect(days.map(([, , grams]) => grams)).toEqual(["240", "240"]);
    const hours = days[0]![3]!.split(" ").map(Number);
    expect(Math.max(...hours)).toBe(53);
    expect(hours.reduce((sum, grams) => sum + grams, 0)).toBeGreaterThan(237);
  });

  test("no air without a room", async () => {
    const text = files["job.finish"].replace(/ {2}room 50.*\n/u, "");
    const { stdout } = await runCli(["totals", "job.finish"], { files: { "job.finish": text } });
    expect(stdout).not.toContain("air changes");
    expect(stdout).not.toContain("worst 8 h");
  });

  test("paper by grit, as an estimate", async () => {
    const { stdout } = await runCli(["totals", "job.finish"], { files });
    // 6 m2 at 1.5 m2 a sheet, at 2 m2 a sheet for 220.
    expect(stdout).toContain("  Abrasives (an estimate by common practice, not in the cost)\n");
    expect(stdout).toMatch(/grit 120 +4 sheets {2}or 21 discs; 6 m2 in /u);
    expect(stdout).toMatch(/grit 220 +3 sheets {2}/u);
  });

  test("as JSON have none of it", async () => {
    const { stdout } = await runCli(["totals", "job.finish", "--format", "json"], { files });
    expect(stdout).not.toMatch(/sheets|air|grit/u);
  });
});

describe("shopping", () => {
  test("paper after the sum in the text, and to be ticked off in the checklist", async () => {
    const text = await runCli(["shopping"], { files });
    expect(text.stdout).toContain(
      "\nAbrasives, an estimate by common practice, not included in the total: 4 sheets of grit 120, 4 sheets of grit 150, 3 sheets of grit 220\n",
    );
    const list = await runCli(["shopping", "--format", "markdown"], { files });
    expect(list.stdout).toContain("- [ ] 3 sheets of grit 220\n");
    for (const format of ["json", "csv"]) {
      expect((await runCli(["shopping", "--format", format], { files })).stdout).not.toContain("grit");
    }
  });
});
