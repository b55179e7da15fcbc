/** `textDocument/hover`: the figures behind a word, and where they come from. */
import type { Hover, HoverParams } from "vscode-languageserver";
import { packagePath } from "../../core/model/package-path.ts";
import { htmlText } from "../../escape/html.ts";
import { markdownText } from "../../escape/markdown.ts";
import { sumsTitle } from "../../features/hover/sums-title.ts";
import type { HoverInfo } from "../../features/types.ts";
import { MANIFEST_NAME } from "../../reading/may-read.ts";
import { packageFacts, packageText } from "../../reading/package-facts.ts";
import { sectionLines, sectionPicture } from "../../reports/section-svg.ts";
import type { Section } from "../../views/section/model.ts";
import { offsetOf } from "../from-lsp.ts";
import type { Session } from "../session.ts";
import { toHover } from "../to-lsp.ts";
import { fileIdOf } from "../uri.ts";

export const hover = async (session: Session, params: HoverParams): Promise<Hover | null> => {
  const file = fileIdOf(params.textDocument.uri);
  await session.files.settled(file);
  const snapshot = session.files.snapshot();
  const document = snapshot.document(file);
  if (document === undefined) return null;
  const found = snapshot.analysis.hover(file, offsetOf(document, params.position));
  if (found === undefined) return null;
  const info = found.fromPackage ? await withPackage(session, found, found.fromPackage) : found;
  const { facts } = session;
  return toHover(facts.hoverMarkdown && facts.hoverHtml ? drawn(info) : info, document, facts);
};

/** With what the package says of itself, below its first line. */
async function withPackage(
  { reader, files }: Session,
  info: HoverInfo,
  { target, path }: NonNullable<HoverInfo["fromPackage"]>,
): Promise<HoverInfo> {
  const inPackage = packagePath(path)?.file;
  if (inPackage === undefined) return info;
  const folder = files.uriOf(target).split("/").slice(0, -inPackage.split("/").length).join("/");
  const read = await reader.read(`${folder}/${MANIFEST_NAME}`, "manifest");
  const facts = "text" in read ? packageFacts(read.text) : undefined;
  if (facts === undefined) return info;
  const said = [facts.description ?? "", packageText(facts)].filter((line) => line !== "").map(markdownText);
  const [title = "", ...rest] = info.markdown.split("\n\n");
  return { ...info, markdown: [title, ...said, ...rest].join("\n\n") };
}

/** For a client that shows pictures in a hover and folds away what is in `details`. */
function drawn(info: HoverInfo): HoverInfo {
  const [head = "", ...sums] = info.markdown.split(`\n\n${sumsTitle()}\n\n`);
  const folded =
    sums.length === 0
      ? ""
      : `\n\n<details><summary>${sumsTitle().replaceAll("*", "")}</summary>\n\n${sums.join("\n\n")}\n\n</details>`;
  const picture = info.section ? [pictured(info.section)] : [];
  // A hover is low: what the thing is stands over the picture, and what there is to say of it below.
  const [first = "", ...rest] = head.split("\n\n");
  return { ...info, markdown: `${[first, ...picture, ...rest].join("\n\n")}${folded}` };
}

/** The drawing with the names of what it shows at its side, where a hover has room. */
const pictured = (section: Section): string => {
  const lines = sectionLines(section).map(htmlText).join("<br>");
  const alt = htmlText(section.title);
  return `<table><tr><td><img alt="${alt}" src="${sectionPicture(section)}"></td><td>${lines}</td></tr></table>`;
};
