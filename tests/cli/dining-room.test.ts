/** A table and six chairs, varnished by one person: a plan that one can pin to the wall and work from. */
import { expect, test } from "vitest";
import { runCli } from "./run-cli.ts";

const surface = (name: string, lengthMm: number, widthMm: number): string => `  surface ${name} {
    shape panel ${lengthMm} mm x ${widthMm} mm
    wood  oak
  }
`;

const FILES = {
  "dining.finish": `material clear_varnish {
  family oil polyurethane
  recoat 6 h to 24 h
  packs  1 L for 30.00
}

piece table {
${surface("top", 1800, 900)}${surface("frame", 2400, 300)}}

piece chair {
${surface("seat", 450, 420)}${surface("frame", 1200, 300)}}

shop mill {
  air   20 C, 50 % RH
  crew  1
  hours Mon to Fri 09:00 to 17:00
}

recipe varnished {
  safety dust_mask, ventilate, no_ignition, gloves, wet_rags
  step   sand 120, 180
  step   dust
  layer  clear_varnish x 3, by brush, between sand 320
  wait   until cured
}

job table_job {
  piece table
  in    mill
  start 2027-03-08
  apply varnished to top, frame
}

job chairs_job {
  piece chair x 6
  in    mill
  start 2027-03-08
  apply varnished to seat, frame
}
`,
};

test("has a quarter of the lines and events that surface by surface it would have", async () => {
  // 14 surfaces, each sanded, dusted and coated three times, with 2 times sanding and dusting between and 3 waits, in two
  // lists: 14 · (2 + 3 + 4 + 3) = 168 lines and more for days and dates, 203 when each stood by itself; 14 · 9 = 126
  // events without the waits, 196 with what was between them.
  const { status, stdout } = await runCli(["schedule", "dining.finish"], { files: FILES });
  expect(status).toBe(0);
  expect(stdout.trimEnd().split("\n").length).toBeLessThanOrEqual(Math.floor(203 / 4));
  const { stdout: calendar } = await runCli(["schedule", "dining.finish", "--format", "ics"], {
    files: FILES,
  });
  expect(calendar.match(/BEGIN:VEVENT/gu)!.length).toBeLessThanOrEqual(196 / 4);
});

test("says under each day what to do on it, and when", async () => {
  const { stdout } = await runCli(["schedule", "dining.finish"], { files: FILES });
  const lines = stdout.split("\n");
  const tuesday = lines.indexOf("  Tue 9 Mar");
  expect(tuesday).toBeGreaterThan(0);
  // Begun on time, one thing a line, nothing to look up elsewhere.
  expect(lines[tuesday + 1]).toMatch(/^ {4}09:00 to \d\d:\d\d {2}\S.* {2}(table|chairs)_job: \S/u);
});
