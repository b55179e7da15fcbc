/**
 * The pages that explain the rules, as documents of the editor.
 *
 * In a browser the extension's own files have web addresses, which would be opened beside the editor, as raw text. A
 * scheme of our own keeps them inside of it, as on the desktop.
 */
import { type Disposable, Uri, workspace } from "vscode";

const SCHEME = "finishwright-rules";

/** What the server puts before `/RULE.md`. */
export const RULE_PAGES = `${SCHEME}:`;

const LANGUAGE = "language.md";
export const LANGUAGE_PAGE = `${RULE_PAGES}/${LANGUAGE}`;

/** Shows `finishwright-rules:/RULE.md`, from the folder of pages that came with the extension, and the language page beside it. */
export const serveRulePages = (extension: Uri): Disposable =>
  workspace.registerTextDocumentContentProvider(SCHEME, {
    async provideTextDocumentContent({ path }) {
      const name = path.slice(path.lastIndexOf("/") + 1);
      const folder = Uri.joinPath(extension, "server", "docs", ...(name === LANGUAGE ? [] : ["rules"]));
      const bytes = await workspace.fs.readFile(Uri.joinPath(folder, name));
      return new TextDecoder().decode(bytes);
    },
  });
