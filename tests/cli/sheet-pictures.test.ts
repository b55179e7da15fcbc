/** Pictures in `##` texts: inside the HTML sheet, read from where the recipes lie, and named with the reason where not. */
import { execFileSync } from "node:child_process";
import { mkdirSync, symlinkSync } from "node:fs";
import path from "node:path";
import { parse } from "parse5";
import { describe, expect, test } from "vitest";
import { boastingPng, plainJpeg, plainPng, tellingJpeg } from "../harness/pictures.ts";
import { runCli } from "./run-cli.ts";

const jobWith = (docs: string): string => `${docs
  .split("\n")
  .map((line) => `## ${line}`)
  .join("\n")}
job first "First" {
  piece board
  apply waxed
}
piece board "Board" {
  surface face {
    shape area 1 m2
    wood  beech
    wear  light
  }
}
recipe waxed {
  layer paste_wax
}
`;

const sheet = (files: Readonly<Record<string, string | Uint8Array>>, prepare?: (folder: string) => void) =>
  runCli(["sheet", "jobs/job.finish", "--format", "html"], {
    files: { "finishwright.config.json": "{}", ...files },
    ...(prepare ? { prepare } : {}),
  });

const sheetOf = (
  target: string,
  files: Readonly<Record<string, string | Uint8Array>> = {},
  prepare?: (folder: string) => void,
) => sheet({ "jobs/job.finish": jobWith(`As it came: ![Before](${target})`), ...files }, prepare);

interface Node {
  readonly nodeName: string;
  readonly attrs?: readonly { readonly name: string; readonly value: string }[];
  readonly childNodes?: readonly Node[];
}

const picturesIn = (html: string): readonly Readonly<Record<string, string>>[] => {
  const walk = (node: Node): readonly Node[] => [node, ...(node.childNodes ?? []).flatMap(walk)];
  return walk(parse(html) as unknown as Node)
    .filter(({ nodeName }) => nodeName === "img")
    .map(({ attrs = [] }) => Object.fromEntries(attrs.map(({ name, value }) => [name, value])));
};

const policyOf = (html: string): string =>
  /Content-Security-Policy" content="([^"]*)"/u.exec(html)?.[1] ?? "";

describe("is embedded", () => {
  test("without what the camera left in it, its words behind it, and loads from nowhere", async () => {
    const { stdout, status } = await sheetOf("photos/before.jpg", {
      "jobs/photos/before.jpg": tellingJpeg(),
    });
    expect(status).toBe(0);
    expect(picturesIn(stdout)).toEqual([
      {
        src: `data:image/jpeg;base64,${plainJpeg().toString("base64")}`,
        alt: "Before",
        width: "3",
        height: "2",
      },
    ]);
    expect(stdout).not.toContain("secret");
    expect(policyOf(stdout)).toContain("default-src 'none'");
    expect(policyOf(stdout)).toContain("img-src data:;");
  });

  test.each([
    ["beside the folder, but inside the project", "../photos/a.png", "photos/a.png"],
    ["with a blank in its name", "my%20photos/a.png", "jobs/my photos/a.png"],
    ["with another ending than its bytes have", "a.jpeg", "jobs/a.jpeg"],
  ])("%s", async (_, target, file) => {
    const { stdout } = await sheetOf(target, { [file]: plainPng() });
    expect(picturesIn(stdout)).toMatchObject([{ src: expect.stringMatching(/^data:image\/png;base64,/u) }]);
  });

  test("from where the text stands, not from where the job does, and once in a file", async () => {
    const { stdout } = await sheet({
      "jobs/job.finish": `use "../stock/wax.finish"\n${jobWith("Before and after: ![Before](a.png)\n\n![Again](a.png)").replace("paste_wax", "hall_wax")}`,
      "jobs/a.png": plainPng(),
      "stock/wax.finish": `## ![The tin](a.png)\nmaterial hall_wax "Hall wax" {\n  family paste wax\n}\n`,
      "stock/a.png": plainPng(4, 4),
    });
    expect(picturesIn(stdout).map(({ alt, width }) => [alt, width])).toEqual([
      ["Before", "3"],
      ["The tin", "4"],
    ]);
    expect(stdout).toContain("Again (picture a.png, which is shown above)");
  });
});

describe("is named as text, with the reason", () => {
  test.each<[string, string, Readonly<Record<string, string | Uint8Array>>, string]>([
    ["what is not there", "a.png", {}, "which does not exist"],
    ["what lies outside of the project", "../../secret.png", {}, "which lies outside of the folders"],
    [
      "a drawing under the name of a picture",
      "a.png",
      { "jobs/a.png": "<svg onload='alert(1)'/>" },
      "neither a PNG nor a JPEG by its first bytes",
    ],
    [
      "a recipe under the name of a picture",
      "a.jpg",
      { "jobs/a.jpg": "recipe r {\n}\n" },
      "neither a PNG nor a JPEG",
    ],
    ["half a picture", "a.jpg", { "jobs/a.jpg": plainJpeg().subarray(0, 150) }, "which is cut short"],
    [
      "a huge file",
      "a.png",
      { "jobs/a.png": Buffer.concat([plainPng(), Buffer.alloc(4 * 1024 * 1024)]) },
      "which is larger than 4 MB",
    ],
    [
      "a huge picture in a small file",
      "a.png",
      { "jobs/a.png": boastingPng(60_000, 60_000) },
      "more than 64 million points",
    ],
    ["another computer", "%2F%2Fnas/x.png", {}, "another computer"],
  ])("%s", async (_, target, files, reason) => {
    const { stdout, status } = await sheetOf(target, files);
    expect(status).toBe(0);
    expect(picturesIn(stdout)).toEqual([]);
    expect(stdout).toContain(`As it came: Before (picture ${target}, which `);
    expect(stdout).toContain(reason);
  });

  const outside = (folder: string): string => path.join(folder, "..", `${path.basename(folder)}-secret.png`);

  test.each<[string, (folder: string) => void, string]>([
    [
      "a link to a picture outside",
      (folder) =>
        symlinkSync(
          path.join(import.meta.dirname, "../../client/media/explained.png"),
          path.join(folder, "jobs/a.png"),
        ),
      "is a link to what lies outside of the folders",
    ],
    [
      "a link to a password file",
      (folder) => symlinkSync("/etc/passwd", path.join(folder, "jobs/a.png")),
      "is a link to what is not a picture",
    ],
    [
      "a link to a device",
      (folder) => symlinkSync("/dev/zero", path.join(folder, "jobs/a.png")),
      "is a link to what is not a picture",
    ],
    [
      "a broken link",
      (folder) => symlinkSync(outside(folder), path.join(folder, "jobs/a.png")),
      "is a broken link",
    ],
    ["a folder", (folder) => mkdirSync(path.join(folder, "jobs/a.png")), "is a folder, not a file"],
    [
      "a pipe, which nobody writes to",
      (folder) => execFileSync("mkfifo", [path.join(folder, "jobs/a.png")]),
      "is not a plain file",
    ],
  ])("%s", async (_, prepare, reason) => {
    const { stdout } = await sheetOf("a.png", {}, prepare);
    expect(picturesIn(stdout)).toEqual([]);
    expect(stdout).toContain(`Before (picture a.png, which ${reason}`);
  });

  test("the twenty-fifth", async () => {
    const names = Array.from({ length: 25 }, (_, i) => `${i}.png`);
    const { stdout } = await sheet({
      "jobs/job.finish": jobWith(names.map((name) => `- ![No ${name}](${name})`).join("\n")),
      ...Object.fromEntries(names.map((name, i) => [`jobs/${name}`, plainPng(i + 1, 1)])),
    });
    expect(picturesIn(stdout)).toHaveLength(24);
    expect(stdout).toContain(
      "No 24.png (picture 24.png, which is left out: a file of sheets takes 24 pictures)",
    );
  });
});

test.each(["text", "markdown"])("as %s a sheet names pictures and reads none", async (format) => {
  const { stdout } = await runCli(["sheet", "job.finish", "--format", format], {
    files: { "job.finish": jobWith("![Before](a.png)"), "a.png": plainPng() },
  });
  expect(stdout).toMatch(/Before \(picture a\.png\)/u);
});

test("without a picture the page may load none", async () => {
  const { stdout } = await sheet({ "jobs/job.finish": jobWith("Nothing to see.") });
  expect(policyOf(stdout)).not.toContain("img-src");
});
