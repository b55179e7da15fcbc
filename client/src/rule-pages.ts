/**
 * The pages that explain the rules, as documents of the editor. They come with the extension in one file.
 *
 * In a browser the extension's own files have web addresses, which would be opened beside the editor, as raw text. A
 * scheme of our own keeps them inside of it, as on the desktop, and names each page of that file.
 */
import { type Disposable, FileSystemError, Uri, workspace } from "vscode";
import { pageNamed, pageTitle, withoutMarks } from "../../server/src/lsp/custom-requests.ts";

const SCHEME = "finishwright-rules";

/** What the server puts before the title of a page. */
export const RULE_PAGES = `${SCHEME}:`;

/** The address of a page by the name of its file, `wrong-unit.md`: its tab has the end of it, which is the page's title. */
export const pageUri = (file: string): Uri =>
  Uri.parse(`${RULE_PAGES}/${encodeURIComponent(pageTitle(file.replace(/\.md$/u, "")))}`);

export const LANGUAGE_PAGE = pageUri("language.md");

/** The pages on the language, which are files of their own and lead to each other and to the rules. */
const OTHERS = [
  "language",
  "computations",
  "hands-on-times",
  "json",
  "changes",
  "library",
  "packages",
  "ticks",
];

/** Their text, where somebody asks for it as text, without what only the server tells. They are shown by `page-view.ts`. */
export const serveRulePages = (extension: Uri): Disposable =>
  workspace.registerTextDocumentContentProvider(SCHEME, {
    provideTextDocumentContent: async (page) => withoutMarks(await readPage(extension, page)),
  });

/** `finishwright-rules:/Wrong unit`, from the pages that came with the extension, and the pages on the language beside it. */
export const readPage = async (extension: Uri, page: Uri): Promise<string> => {
  const name = nameOf(page);
  if (!isOnRules(page)) return read(extension, "server", "docs", name);
  const pages: Readonly<Record<string, string>> = JSON.parse(
    await read(extension, "client", "dist", "rule-pages.json"),
  );
  if (!Object.hasOwn(pages, name)) throw FileSystemError.FileNotFound(page);
  return pages[name]!;
};

const nameOf = ({ path }: Uri): string => `${pageNamed(path.slice(path.lastIndexOf("/") + 1))}.md`;

/** The page of a rule, or their list. */
export const isOnRules = (page: Uri): boolean => OTHERS.every((other) => nameOf(page) !== `${other}.md`);

const read = async (extension: Uri, ...way: readonly string[]): Promise<string> =>
  new TextDecoder().decode(await workspace.fs.readFile(Uri.joinPath(extension, ...way)));
