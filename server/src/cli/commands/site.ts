/** `site`: a library of recipes as pages to read. */
import { createHash } from "node:crypto";
import path from "node:path";
import { InvalidArgumentError, Option } from "commander";
import { andList } from "../../core/model/suggest.ts";
import type { TokenType } from "../../features/types.ts";
import { MANIFEST_NAME } from "../../reading/may-read.ts";
import { packageFacts, packageText } from "../../reading/package-facts.ts";
import { readPictures } from "../../reading/read-pictures.ts";
import { counted } from "../../reports/findings-text.ts";
import { pathOf } from "../../reports/reported.ts";
import type { PicturesOf } from "../../reports/sheet-html.ts";
import { picturesNamed, picturesNamedIn } from "../../reports/sheet-pictures.ts";
import { sheetReport } from "../../reports/sheet-report.ts";
import { siteFiles } from "../../reports/site/site.ts";
import type { ColouredPart } from "../../reports/site/site-model.ts";
import { words } from "../../views/sheet/words.ts";
import { libraryOf } from "../../views/site/library.ts";
import type { Library, LibraryRecipe } from "../../views/site/model.ts";
import { changedAt } from "../changed-at.ts";
import {
  type AddCommand,
  type CommandContext,
  PATHS,
  readAlsoOption,
  todayOption,
  unitsOption,
} from "../command-context.ts";
import { handedOnOf, withOption } from "../handed-on.ts";
import { type CliIo, type ExitStatus, UsageError, warn } from "../io.ts";
import { type Loaded, type LoadOptions, load, readNamedPicture } from "../load.ts";
import { originOf, withOwnMark, withOwnMarkInJson } from "../own-mark.ts";
import { recipesIn } from "../permits.ts";
import { mayReplaceMade } from "../write-made.ts";

interface SiteOptions extends LoadOptions {
  readonly output: string;
  readonly title?: string;
  readonly with?: string;
  readonly address?: string;
  readonly overwrite?: true;
}

export const addSite: AddCommand = (program, ctx) => {
  program
    .command("site")
    .summary("pages to read of a library of recipes, for a disk or any host")
    .description(
      "Makes static pages of recipes, pieces and jobs: each recipe with its drawing, steps, materials, cautions, findings, " +
        "sheet to print and text; lists by wood, finish, look, wear and hours; a search; links between them; feeds. They " +
        "need no server and load nothing. Made again, pages are replaced and those of recipes that are gone are taken away; " +
        "what somebody else wrote there is left alone. Owner, people, prices, delivery and photos are on them only when you ask with " +
        "`--with`; the text of a recipe is shown as it is written, of pieces and jobs none.",
    )
    .argument("[paths...]", PATHS)
    .addOption(new Option("-o, --output <folder>", "the folder of the pages").makeOptionMandatory())
    .addOption(new Option("--title <title>", "what the site is called; without it, the name of the folder"))
    .addOption(
      new Option(
        "--address <url>",
        "where the site will stand, such as https://example.org/recipes/; the feeds then name whole addresses",
      ).argParser(addressOf),
    )
    .addOption(withOption())
    .addOption(new Option("--overwrite", "replace pages whatever is in them"))
    .addOption(todayOption())
    .addOption(unitsOption())
    .addOption(readAlsoOption())
    .action(async (paths: string[], options: SiteOptions) => ctx.finish(await site(ctx, paths, options)));
};

async function site(
  { io }: CommandContext,
  paths: readonly string[],
  options: SiteOptions,
): Promise<ExitStatus> {
  if (paths.includes("-"))
    throw new UsageError("`-` is standard input, and a site is made of files. Name them, or their folder.");
  if (options.output === "") throw new UsageError("`-o` needs the name of a folder, such as `-o site`.");
  const handedOn = handedOnOf(options.with);
  const target = path.resolve(io.cwd, options.output);
  await refuseOtherSite(io, target, options);
  const loaded = await load(io, paths, { ...options, withProject: true });
  if (loaded.asked.length === 0) return 2;
  const { analysis } = loaded;
  const files = loaded.asked.map(({ path: file }) => file);
  const library = libraryOf(analysis, files, handedOn);
  const dates = await changedAt(io, files);
  const pictures = await picturesOf(io, loaded, library);
  const made = siteFiles({
    library,
    title: options.title ?? titleFor(io, paths),
    ...(options.address === undefined ? {} : { address: options.address }),
    changedAt: (file) => dates.get(file),
    label: (file) => pathOf(loaded.label(file)),
    sheetOf: ({ sheet }) => sheetReport(analysis, [sheet], "html", loaded.label, pictures),
    coloured: (recipe) => coloured(loaded, recipe),
    idOf,
    pictures,
    ...(await originFor(io, paths)),
  });
  const isWritten = await writeAll(io, target, options, made);
  if (!isWritten) return 2;
  const { recipes, pieces, jobs } = library;
  const what = andList([
    counted(recipes.length, "recipe"),
    counted(pieces.length, "piece"),
    counted(jobs.length, "job"),
  ]);
  io.stdout.write(
    `Pages of ${what} are in ${options.output}. Open ${path.join(options.output, "index.html")}\n`,
  );
  return loaded.complete ? 0 : 2;
}

const addressOf = (text: string): string => {
  const url = URL.canParse(text) ? new URL(text) : undefined;
  if (
    url === undefined ||
    !["https:", "http:"].includes(url.protocol) ||
    url.search !== "" ||
    url.hash !== ""
  )
    throw new InvalidArgumentError("Write a whole address, such as https://example.org/recipes/.");
  return url.href.endsWith("/") ? url.href : `${url.href}/`;
};

/** Author and licence of the package that the recipes are, where it is one that is for publishing. */
async function originFor(io: CliIo, paths: readonly string[]): Promise<{ readonly origin?: string }> {
  const [first = "."] = paths;
  const given = path.resolve(io.cwd, first);
  const folder = (await io.files.kind(given)) === "folder" ? given : path.dirname(given);
  const file = path.join(folder, MANIFEST_NAME);
  const read = await io.files.read(file, { ...recipesIn([folder]), purpose: "manifest" });
  const facts = "text" in read ? packageFacts(read.text) : undefined;
  if (facts === undefined || facts.isPrivate) return {};
  const { author, licence } = facts;
  const origin = packageText({ ...(author ? { author } : {}), ...(licence ? { licence } : {}) });
  return origin === "" ? {} : { origin };
}

/** `reading_room` as `Reading room`. */
function titleFor({ cwd }: CliIo, [first = "."]: readonly string[]): string {
  const name = words(path.basename(path.resolve(cwd, first)).replace(/\.finish$/iu, ""));
  return name === "" ? "Recipes" : name[0]!.toUpperCase() + name.slice(1);
}

/** A UUID made of a name by SHA-1 (RFC 9562, version 5), in a name space of this program. */
function idOf(text: string): string {
  const space = Buffer.from("6f1ec9aa3dc04a5fa6f0b8c1f6c5d2e7", "hex");
  const hash = createHash("sha1").update(space).update(text).digest().subarray(0, 16);
  hash[6] = (hash[6]! & 0x0f) | 0x50;
  hash[8] = (hash[8]! & 0x3f) | 0x80;
  const hex = hash.toString("hex");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

/** Those of each file by themselves, so that a library has as many as it has files to show them. */
async function picturesOf(io: CliIo, loaded: Loaded, library: Library): Promise<PicturesOf> {
  const { recipes, pieces, jobs } = library;
  const named = [
    ...picturesNamed(recipes.map(({ sheet }) => sheet)),
    ...picturesNamedIn([...recipes, ...pieces, ...jobs].map(({ docs }) => docs)),
    ...picturesNamedIn(pieces.flatMap(({ surfaces }) => surfaces.map(({ docs }) => docs))),
  ];
  const byFile = new Map<string, PicturesOf>();
  for (const file of new Set(named.map((each) => each.file))) {
    const own = named.filter((each) => each.file === file);
    byFile.set(file, await readPictures(own, (picture) => readNamedPicture(io, loaded, picture)));
  }
  return (file) => byFile.get(file)?.(file) ?? (() => undefined);
}

const COLOURED_AS: Readonly<Record<TokenType, ColouredPart["as"]>> = {
  keyword: "word",
  operator: "word",
  property: "word",
  method: "word",
  enumMember: "plain",
  type: "plain",
  number: "figure",
  string: "text",
  comment: "comment",
  variable: "name",
  parameter: "name",
  function: "name",
  class: "name",
  struct: "name",
  namespace: "name",
  event: "name",
};

function coloured({ analysis }: Loaded, { file, source }: LibraryRecipe): readonly ColouredPart[] {
  const [start, end] = [source.offset, source.offset + source.text.length];
  const parts: ColouredPart[] = [];
  let at = start;
  const upTo = (to: number, as: ColouredPart["as"]): void => {
    if (to > at) parts.push({ text: source.text.slice(at - start, to - start), as });
    at = Math.max(at, to);
  };
  for (const { span, type } of analysis.semanticTokens(file, "all", { start, end })) {
    upTo(Math.min(end, Math.max(start, span.start)), "plain");
    upTo(Math.min(end, span.end), COLOURED_AS[type]);
  }
  upTo(end, "plain");
  return parts;
}

// ---------------------------------------------------------------------------------------------------------------
// Writing

const PAGE = "page of a site";

/** A folder whose first page is somebody else's is not begun with. */
async function refuseOtherSite(io: CliIo, folder: string, { output, overwrite }: SiteOptions): Promise<void> {
  const kind = await io.files.kind(folder);
  if (kind !== "folder" && kind !== "missing")
    throw new UsageError(
      `\`${output}\` is not a folder. Give a new name, or a folder of pages, after \`-o\`.`,
    );
  if (overwrite || (await io.files.kind(path.join(folder, "index.html"))) === "missing") return;
  const read = await io.files.read(path.join(folder, "index.html"));
  const verdict = "text" in read ? mayReplaceMade(read.text, PAGE, "site") : read.reason;
  if (verdict !== true) throw new UsageError(`\`${path.join(output, "index.html")}\` ${verdict}.`);
}

async function writeAll(
  io: CliIo,
  folder: string,
  { output, overwrite }: SiteOptions,
  files: readonly { readonly path: string; readonly text: string }[],
): Promise<boolean> {
  const problems: string[] = [];
  const said = (file: string, failed: { readonly reason: string } | undefined): void => {
    if (failed) problems.push(`\`${path.join(output, file)}\` ${failed.reason}.`);
  };
  for (const below of new Set(files.map((file) => path.posix.dirname(file.path)))) {
    const failed = await io.files.makeFolder(path.join(folder, below));
    if (failed) throw new UsageError(`The folder \`${path.join(output, below)}\` ${failed.reason}.`);
  }
  for (const file of files) {
    const text = file.path.endsWith(".json") ? withOwnMarkInJson(file.text) : withOwnMark(file.text, "html");
    const isOwn = (before: string): true | string => overwrite || mayReplaceMade(before, PAGE, "site");
    said(file.path, await io.files.write(path.join(folder, file.path), text, isOwn));
  }
  const kept = new Set(files.map((file) => file.path));
  for (const file of await io.files.search(folder, "{by-*,recipes/*,pieces/*,jobs/*,sheets/*}.html")) {
    if (kept.has(file)) continue;
    const isOwn = (text: string): true | string =>
      originOf(text) === "own" || "does not belong to this site any more, and was edited, so it is left";
    said(file, await io.files.remove(path.join(folder, file), isOwn));
  }
  for (const problem of problems) warn(io, problem);
  return problems.length === 0;
}
