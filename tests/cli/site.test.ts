/** `site`: pages of a library, written with care. What stands on them is read off the files by hand. */
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { parse } from "parse5";
import { describe, expect, test } from "vitest";
import { hostileFiles, hostileName, hostileTexts } from "../harness/hostile.ts";
import { expectInert } from "../harness/inert.ts";
import { type CliInput, type CliOutcome, runCli } from "./run-cli.ts";

const STOCK = `material flat_clear "Flat clear" {
  family waterborne polyurethane
  covers 10 m2/L
  recoat 2 h to 24 h
  cure 1 day
  sheen flat
  packs 1 L for 16.00
}
shop mill_room "The mill" {
  hours Mon to Fri 09:00 to 17:00
  labour 20.00 per h
  currency EUR
}
## Three clears for what is used daily. More of it below.
recipe clear_it "Clear it"(coat: material = flat_clear) {
  step dust, takes 30 min
  layer coat x 2, takes 15 min
}
recipe thick "Thick" {
  step sand 120
  follow clear_it
}
`;
const TABLES = `use "stock.finish"

piece table "Reading table" {
  meant_for children
  surface top "The top" {
    shape panel 2 m x 1 m
    wood red oak
    wear hard
  }
  surface base {
    shape area 1 m2
    wood beech
  }
}
job tables "Tables of the hall" {
  owner "Aunt Ida"
  piece table
  in mill_room
  start 2027-03-08 09:00
  apply clear_it to top
}
`;
const FILES = { "stock.finish": STOCK, "a/tables.finish": TABLES.replace("stock", "../stock") };

type Pages = ReadonlyMap<string, string>;

function filesBelow(folder: string): Pages {
  const names = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => statSync(path.join(folder, name)).isFile())
    .toSorted();
  return new Map(
    names.map((name) => [name.replaceAll("\\", "/"), readFileSync(path.join(folder, name), "utf8")]),
  );
}

async function made(
  options: readonly string[] = [],
  input: CliInput = {},
): Promise<CliOutcome & { readonly pages: Pages }> {
  let pages: Pages = new Map();
  const outcome = await runCli(["site", "-o", "out", ...options], {
    files: FILES,
    ...input,
    look: (folder) => {
      const out = path.join(folder, "out");
      if (existsSync(out) && statSync(out).isDirectory()) pages = filesBelow(out);
    },
  });
  return { ...outcome, pages };
}

interface Element {
  readonly tagName?: string;
  readonly attrs?: readonly { readonly name: string; readonly value: string }[];
  readonly childNodes?: readonly Element[];
  readonly value?: string;
}

function* elements(node: Element): Generator<Element> {
  yield node;
  for (const child of node.childNodes ?? []) yield* elements(child);
}
const attribute = ({ attrs }: Element, name: string): string | undefined =>
  attrs?.find((each) => each.name === name)?.value;
const wordsOf = (node: Element): string => [...elements(node)].map(({ value }) => value ?? "").join("");
const allOf = (html: string, tag: string): readonly Element[] =>
  [...elements(parse(html) as unknown as Element)].filter(({ tagName }) => tagName === tag);

/** A heading with the links below it. */
function groups(html: string): Readonly<Record<string, readonly string[]>> {
  const found = allOf(html, "section").map((section) => {
    const all = [...elements(section)];
    const [heading] = all.filter(({ tagName }) => tagName === "h2");
    return [wordsOf(heading!), all.filter(({ tagName }) => tagName === "a").map(wordsOf)] as const;
  });
  return Object.fromEntries(found);
}

describe("the pages", () => {
  test("one for every recipe, piece and job, a sheet for every recipe, lists and feeds", async () => {
    const { status, stdout, stderr, pages } = await made();
    expect(stderr).toBe("");
    expect(status).toBe(0);
    expect(stdout).toBe(
      `Pages of 2 recipes, 1 piece and 1 job are in out. Open ${path.join("out", "index.html")}\n`,
    );
    expect([...pages.keys()]).toEqual([
      "by-finish.html",
      "by-hours.html",
      "by-look.html",
      "by-user.html",
      "by-wear.html",
      "by-wood.html",
      "feed.json",
      "feed.xml",
      "index.html",
      "jobs/tables.html",
      "pieces/table.html",
      "recipes/clear-it.html",
      "recipes/thick.html",
      "sheets/clear-it.html",
      "sheets/thick.html",
    ]);
  });

  test("lists name under each word what has it", async () => {
    const { pages } = await made();
    // The base is beech and has nothing done to it; `thick` is done nowhere.
    expect(groups(pages.get("by-wood.html")!)).toEqual({
      Beech: ["Reading table"],
      "Red oak": ["Clear it", "Reading table", "Tables of the hall"],
    });
    expect(groups(pages.get("by-look.html")!)).toEqual({
      "Dead flat": ["Clear it", "Thick", "Reading table", "Tables of the hall"],
    });
    // 30 min of dust and two coats of 15 min.
    expect(groups(pages.get("by-hours.html")!)).toEqual({ "Up to 2 hours": ["Tables of the hall"] });
    expect(pages.get("by-hours.html")).toContain("1\u00a0h hands-on");
  });

  test("recipes, pieces and jobs lead to each other, and every link to something", async () => {
    const { pages } = await made();
    expect(groups(pages.get("recipes/clear-it.html")!)).toMatchObject({
      "Done in these jobs": ["Tables of the hall"],
      "Done to these pieces": ["Reading table"],
      "Followed by": ["Thick"],
    });
    expect(groups(pages.get("recipes/thick.html")!)).toMatchObject({ Follows: ["Clear it"] });
    expect(groups(pages.get("jobs/tables.html")!)).toMatchObject({
      Recipes: ["Clear it"],
      Pieces: ["Reading table"],
    });
    for (const [name, html] of pages) {
      if (!name.endsWith(".html")) continue;
      const links = [...allOf(html, "a"), ...allOf(html, "link")];
      const ids = new Set(
        [...elements(parse(html) as unknown as Element)].flatMap((each) => attribute(each, "id") ?? []),
      );
      for (const link of links) {
        const to = attribute(link, "href")!;
        if (to.startsWith("#")) expect(ids).toContain(to.slice(1));
        else expect([...pages.keys()]).toContain(path.posix.join(path.posix.dirname(name), to));
      }
    }
  });

  test("a recipe has its steps, its text and what is written above it; the first page its first sentence", async () => {
    const { pages } = await made();
    const page = pages.get("recipes/clear-it.html")!;
    expect(allOf(page, "ol").map(wordsOf).join()).toContain("Take the dust off.");
    const [pre] = allOf(page, "pre").map(wordsOf);
    const from = STOCK.indexOf("## Three");
    expect(pre).toBe(STOCK.slice(from, STOCK.indexOf("recipe thick")).trim());
    expect(pages.get("index.html")).toContain("<p>Three clears for what is used daily.</p>");
  });

  test("owner and prices are told only when somebody asks", async () => {
    const { pages } = await made();
    const all = [...pages.values()].join("\n");
    expect(all).not.toContain("Aunt Ida");
    expect(all).not.toContain("EUR");
    expect(all).not.toContain("16.00");
    const asked = await made(["--with", "owner,prices"]);
    expect(asked.pages.get("jobs/tables.html")).toContain("Aunt Ida");
    // 2 m2 twice at 10 m2/L, with a tenth to spare, is one can of 16.00; an hour of work is 20.00.
    expect(asked.pages.get("by-cost.html")).toContain("36.00 EUR");
  });

  test("equal names get the names of their files, and no page that of another", async () => {
    const recipe = "recipe oil_it {\n  step dust\n}\n";
    const { pages } = await made([], {
      files: { "one.finish": recipe, "two.finish": recipe, "con.finish": "recipe con {\n  step dust\n}\n" },
    });
    expect([...pages.keys()].filter((name) => name.startsWith("recipes/"))).toEqual([
      "recipes/one-oil-it.html",
      "recipes/two-oil-it.html",
      "recipes/x-con.html",
    ]);
  });

  test("what is wrong with a recipe stands before its steps", async () => {
    const { pages } = await made([], {
      files: { "a.finish": "recipe a {\n  layer paste_wax\n  layer alkyd_paint\n}\n" },
    });
    const headings = allOf(pages.get("recipes/a.html")!, "h2").map(wordsOf);
    expect(headings.indexOf("What the check finds")).toBeGreaterThan(-1);
    expect(headings.indexOf("What the check finds")).toBeLessThan(headings.indexOf("Step by step"));
  });

  test("whatever is written in recipes becomes no markup, and no page asks anybody for anything", async () => {
    await fc.assert(
      fc.asyncProperty(hostileTexts, hostileName, async (texts, name) => {
        const files = hostileFiles(texts, { main: `${name}.finish`, used: `${name}-stock.finish` });
        const { pages, stderr } = await made([], { files });
        expectInert(stderr);
        for (const [file, html] of pages) {
          expectInert(html);
          if (!file.endsWith(".html") || file.startsWith("sheets/")) continue;
          for (const each of elements(parse(html) as unknown as Element)) {
            for (const { name: attr, value } of each.attrs ?? []) {
              expect(attr).not.toMatch(/^on|^src$|^style$/u);
              if (attr === "href") expect(value).toMatch(/^(?:\.\.\/)?[\w/-]+\.(?:html|xml|json)$|^#main$/u);
            }
            if (each.tagName === "script") expect(file).toBe("index.html");
          }
        }
      }),
      { numRuns: 4, endOnFailure: true },
    );
  });
});

describe("the feeds", () => {
  test("have the day of the commit that changed the recipe last", async () => {
    const { pages } = await made(["--address", "https://example.org/r"], {
      prepare: (folder) => {
        const git = (...args: readonly string[]) =>
          execFileSync("git", ["-c", "user.name=A", "-c", "user.email=a@example.org", ...args], {
            cwd: folder,
            env: { ...process.env, GIT_COMMITTER_DATE: "2026-05-04T10:00:00+02:00" },
            stdio: "ignore",
          });
        git("init", "-q");
        git("add", "-A");
        git("commit", "-q", "--no-gpg-sign", "-m", "one");
      },
    });
    const atom = pages.get("feed.xml")!;
    expect(atom.match(/<updated>[^<]*/gu)).toEqual(Array(3).fill("<updated>2026-05-04T10:00:00+02:00"));
    expect(atom).toContain('href="https://example.org/r/recipes/clear-it.html"');
    // RFC 4122, 4.1.3: version 5, and the variant of the RFC.
    for (const id of atom.match(/(?<=<id>)[^<]*/gu)!)
      expect(id).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/u);
    const feed = JSON.parse(pages.get("feed.json")!) as {
      readonly items: readonly { readonly url: string }[];
    };
    expect(feed.items.map(({ url }) => url)).toEqual([
      "https://example.org/r/recipes/clear-it.html",
      "https://example.org/r/recipes/thick.html",
    ]);
  });

  test("without a repository that of the disk; without an address they name no host", async () => {
    const { pages } = await made();
    expect(pages.get("feed.xml")).toMatch(/<updated>20\d\d-/u);
    expect(pages.get("feed.xml")).toContain('href="recipes/clear-it.html"');
    expect(pages.get("feed.json")).not.toContain('"url"');
  });
});

describe("writing", () => {
  const twice =
    (between: (folder: string) => void): NonNullable<CliInput["prepare"]> =>
    (folder) => {
      mkdirSync(path.join(folder, "out/recipes"), { recursive: true });
      between(folder);
    };

  test("made again it is replaced, and pages of what is gone go", async () => {
    const before = await made();
    const old = before.pages.get("recipes/clear-it.html")!;
    const { status, stderr, pages } = await made([], {
      prepare: twice((folder) => {
        writeFileSync(path.join(folder, "out/recipes/gone.html"), old);
        writeFileSync(path.join(folder, "out/index.html"), before.pages.get("index.html")!);
      }),
    });
    expect(stderr).toBe("");
    expect(status).toBe(0);
    expect([...pages.keys()]).not.toContain("recipes/gone.html");
  });

  test("what somebody wrote stays, and is told", async () => {
    const page = (await made()).pages.get("recipes/clear-it.html")!;
    const { status, stderr, pages } = await made([], {
      prepare: twice((folder) => {
        writeFileSync(path.join(folder, "out/recipes/gone.html"), page.replace("Clear it", "Mine"));
        writeFileSync(path.join(folder, "out/recipes/thick.html"), "mine");
      }),
    });
    expect(status).toBe(2);
    expect(pages.get("recipes/thick.html")).toBe("mine");
    expect(pages.get("recipes/gone.html")).toContain("Mine");
    expect(stderr).toContain("was not made by `site`, so it was not changed");
    expect(stderr).toContain("does not belong to this site any more, and was edited, so it is left");
  });

  test("a folder with somebody else's first page is left as it is", async () => {
    const { status, stderr, pages } = await made([], {
      prepare: twice((folder) => writeFileSync(path.join(folder, "out/index.html"), "<h1>Mine</h1>")),
    });
    expect(status).toBe(2);
    expect(stderr).toContain("already exists and was not made by `site`");
    expect([...pages.keys()]).toEqual(["index.html"]);
    const asked = await made(["--overwrite"], {
      prepare: twice((folder) => writeFileSync(path.join(folder, "out/index.html"), "<h1>Mine</h1>")),
    });
    expect(asked.status).toBe(0);
  });

  test.each([
    [["site", "-o", "stock.finish"], "`stock.finish` is not a folder"],
    [["site", "-o", ""], "`-o` needs the name of a folder"],
    [["site"], "required option '-o, --output <folder>' not specified"],
    [["site", "-", "-o", "out"], "`-` is standard input, and a site is made of files"],
    [["site", "-o", "out", "--address", "recipes"], "Write a whole address"],
    [["site", "-o", "out", "--with", "names"], "`names` cannot be asked for"],
    [["site", "nowhere", "-o", "out"], "There is no `nowhere`"],
  ])("%j", async (argv, said) => {
    const { status, stderr } = await runCli(argv, { files: FILES });
    expect(status).toBe(2);
    expect(stderr).toContain(said);
  });
});

test("every page says whose recipes they are and under which licence, where they are a package for publishing", async () => {
  const manifest = {
    author: "The <town> library <hall@example.org>",
    license: "CC-BY-4.0",
    version: "1.0.0",
  };
  const footOf = async (text: string): Promise<readonly string[]> => {
    const { pages } = await made([], { files: { ...FILES, "package.json": text } });
    const html = [...pages].filter(([name]) => name.endsWith(".html") && !name.startsWith("sheets/"));
    return [
      ...new Set(html.map(([, page]) => wordsOf(allOf(page, "footer")[0]!).replace(/These recipes.*/su, ""))),
    ];
  };
  expect(
    await footOf(JSON.stringify({ ...manifest, author: "The town library <hall@example.org>" })),
  ).toEqual(["By The town library, CC-BY-4.0."]);
  expect(await footOf(JSON.stringify({ ...manifest, author: { name: "The <town>" } }))).toEqual([
    "By The <town>, CC-BY-4.0.",
  ]);
  for (const text of [JSON.stringify({ ...manifest, private: true }), "{", "{}"])
    expect(await footOf(text)).toEqual([""]);
});
