/** `textDocument/hover`: the figures behind a word, and where they come from. */
import type { Hover, HoverParams } from "vscode-languageserver";
import { markdownText } from "../../escape/markdown.ts";
import { SUMS_TITLE } from "../../features/hover/sums-title.ts";
import type { HoverInfo } from "../../features/types.ts";
import { sectionPicture } from "../../reports/section-svg.ts";
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
  const info = snapshot.analysis.hover(file, offsetOf(document, params.position));
  if (info === undefined) return null;
  const { facts } = session;
  return toHover(facts.hoverMarkdown && facts.hoverHtml ? drawn(info) : info, document, facts);
};

/** For a client that shows pictures in a hover and folds away what is in `details`. */
function drawn(info: HoverInfo): HoverInfo {
  const [head = "", ...sums] = info.markdown.split(`\n\n${SUMS_TITLE}\n\n`);
  const folded =
    sums.length === 0
      ? ""
      : `\n\n<details><summary>${SUMS_NAME}</summary>\n\n${sums.join("\n\n")}\n\n</details>`;
  const picture = info.section
    ? `![${markdownText(info.section.title)}](${sectionPicture(info.section)})\n\n`
    : "";
  return { ...info, markdown: `${picture}${head}${folded}` };
}

const SUMS_NAME = SUMS_TITLE.replaceAll("*", "");
