/** The hover of a client that draws pictures and folds: four facts of a job first, its sums folded away, and a small drawing. */
import { expect, test } from "vitest";
import type { Hover } from "vscode-languageserver/node";
import { createAnalyst } from "../../server/src/features/analyst.ts";
import { plan } from "../harness/planner.ts";
import { startClient } from "./harness.ts";

const URI = "file:///shop/a.finish";
const TEXT = `material satin {
  family waterborne polyurethane
  covers 10 m2/L
  packs  1 L for 20.00
}
piece table {
  surface top "<b>Top</b> & [rim](x)" {
    shape area 2 m2
    wood  red oak
  }
}
shop mill {
  hours    Mon to Fri 09:00 to 17:00
  currency EUR
}
recipe clear {
  step   sand 120, 150
  layer  satin x 3
  wait   until cured
}
job one "One" {
  piece table
  in    mill
  start 2027-03-08
  apply clear to top
}
job two "Two" {
  piece table
}
`;

const hoverAt = async (word: string, initializationOptions: object): Promise<string> => {
  const client = await startClient({
    host: { createAnalyst: (options) => createAnalyst({ ...options, plan }) },
    initializationOptions: { ...initializationOptions },
  });
  await client.open(URI, TEXT);
  await client.pull(URI);
  const lines = TEXT.split("\n");
  const line = lines.findIndex((each) => each.includes(word));
  const position = { line, character: lines[line]!.indexOf(word) };
  const hover = await client.request<Hover>("textDocument/hover", { textDocument: { uri: URI }, position });
  const { value } = hover.contents as { readonly value: string };
  await client.end();
  return value;
};

const HTML = { hoverHtml: true };

test("the hover of a job begins with when hands are off, full use, cost and findings; the sums are folded", async () => {
  const value = await hoverAt('one "One"', HTML);
  const [head, folded, ...others] = value.split(
    "\n\n<details><summary>All figures, with their sums</summary>\n\n",
  );
  expect(others).toEqual([]);
  expect(head!.split("\n")).toEqual([
    "**`one`** “One”, a job",
    "",
    "- last work Mon 8 Mar 2027 17:00",
    "- full use Mon 29 Mar 2027 17:00",
    "- cost 20.00 EUR",
    expect.stringMatching(/^- findings: \d/u),
  ]);
  expect(folded).toContain("hands-on ");
  expect(folded).toMatch(/\n\n<\/details>$/u);
});

test("without work it says what is missing, and has no sums", async () => {
  const value = await hoverAt('two "Two"', HTML);
  expect(value).toContain("- could not be calculated: no `apply`");
  expect(value).not.toMatch(/details|0 min|0\.00/u);
});

test("elsewhere the sums stand below, without HTML and pictures", async () => {
  const value = await hoverAt('one "One"', {});
  expect(value).toContain("\n\n**All figures, with their sums**\n\n- last work ");
  expect(await hoverAt("layer  satin", {})).not.toContain("data:image");
});

/** (lighter + 0.05) / (darker + 0.05) of relative luminances, WCAG 2.1. */
const contrast = (a: string, b: string): number => {
  const luminance = (colour: string): number => {
    const [red, green, blue] = [1, 3, 5].map((at) => {
      const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
      return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  };
  const [light, dark] = [luminance(a), luminance(b)].toSorted((x, y) => y - x);
  return (light! + 0.05) / (dark! + 0.05);
};

const pictureIn = (value: string): string => {
  const [, base64] = / src="data:image\/svg\+xml;base64,([A-Za-z0-9+/=]+)"/u.exec(value)!;
  return Buffer.from(base64!, "base64").toString("utf8");
};

test("a surface is drawn as the job leaves it, a layer as the line leaves it; hostile names stay words", async () => {
  const surface = await hoverAt("surface top", HTML);
  const svg = pictureIn(surface);
  expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/u);
  expect(svg.match(/data-step=/gu)).toHaveLength(3);
  // Below what it is, with the names of what it shows at its side, from the top down.
  expect(surface.split("\n\n")[1]).toMatch(
    /^<table><tr><td><img alt="&lt;b&gt;Top&lt;\/b&gt; &amp; \[rim\]\(x\)" src="[^"]+"><\/td><td>satin, 3 coats, [^<]+ each<br>red oak, taken as bare: nothing is stated<\/td><\/tr><\/table>$/u,
  );
  expect(svg).toContain("&lt;b&gt;Top&lt;/b&gt; &amp; [rim](x)");
  expect(svg).not.toMatch(/<(?:b|script|image|foreignObject)\b/u);
  // It has no ground and no text, so that it reads on a light one and on a dark one.
  expect(svg).not.toMatch(/background|<text/u);
  const strokes = [...svg.matchAll(/stroke="(#[0-9a-f]+)"(?! stroke-opacity)/gu)].map(([, stroke]) => stroke);
  expect(new Set(strokes)).toEqual(new Set(["#808080"]));
  // By WCAG 2.1, against a hover in light and in dark: lines want 3.
  expect(contrast("#808080", "#ffffff")).toBeCloseTo(3.95, 2);
  expect(contrast("#808080", "#202020")).toBeCloseTo(4.13, 2);
  const layer = pictureIn(await hoverAt("layer  satin", HTML));
  expect(layer.match(/data-step=/gu)).toHaveLength(3);
});
