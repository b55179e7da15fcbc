/**
 * *Show What Changed*: what the changes since a revision mean at the bench, as a live preview. The editor's Git tells what is
 * different, the server what that means.
 */
import {
  commands,
  Disposable,
  type Event,
  EventEmitter,
  extensions,
  l10n,
  type QuickPickItem,
  QuickPickItemKind,
  type TextDocumentContentProvider,
  Uri,
  window,
  workspace,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { CHANGED, type ChangedParams } from "../../server/src/lsp/custom-requests.ts";
import { activeRecipe } from "./active-recipe.ts";
import { earlierTexts, type GitRepository, type GitState } from "./earlier-texts.ts";
import { createKeptPreview } from "./kept-preview.ts";
import type { ReportsNews } from "./reports-changed.ts";

const SCHEME = "finishwright-changes";

interface Repository extends GitRepository {
  readonly state: GitState & {
    readonly HEAD?: { readonly name?: string; readonly commit?: string };
    readonly onDidChange: Event<void>;
  };
  getRefs(query: { readonly sort?: "committerdate" }): Promise<readonly { readonly name?: string }[]>;
}

interface GitExports {
  readonly enabled: boolean;
  getAPI(version: 1): Git;
}

interface Git {
  /** `uninitialized` while repositories are still being looked for. */
  readonly state: string;
  readonly onDidChangeState: Event<unknown>;
  readonly repositories: readonly Repository[];
  getRepository(uri: Uri): Repository | null;
}

/** After the last news, ms. */
const PAUSE = 500;

/** With a revision as its argument the command asks nothing. */
export const registerShowChanges = (client: BaseLanguageClient, news: ReportsNews): Disposable => {
  const changed = new EventEmitter<Uri>();
  const preview = createKeptPreview();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const listened = new Map<string, Disposable>();
  const refresh = async (): Promise<void> => {
    for (const { uri } of workspace.textDocuments) if (uri.scheme === SCHEME) changed.fire(uri);
    await preview.refresh();
  };
  const soon = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void refresh(), PAUSE);
  };
  const listenTo = ({ rootUri, state }: Repository): void => {
    if (!listened.has(rootUri.toString())) listened.set(rootUri.toString(), state.onDidChange(soon));
  };
  const provider: TextDocumentContentProvider = {
    onDidChange: changed.event,
    provideTextDocumentContent: (uri) => readChanges(client, uri),
  };
  return Disposable.from(
    changed,
    workspace.registerTextDocumentContentProvider(SCHEME, provider),
    news.onChange(soon),
    {
      dispose() {
        clearTimeout(timer);
        for (const each of listened.values()) each.dispose();
      },
    },
    commands.registerCommand("finishwright.showChanges", async (given?: unknown) => {
      const repository = await chosenRepository();
      const revision = repository && (typeof given === "string" ? given : await askedRevision(repository));
      if (repository === undefined || revision === undefined) return;
      listenTo(repository);
      await preview.show(addressOf(repository, revision));
    }),
  );
};

/** The path is what the tab says, the query what is asked for. */
const addressOf = ({ rootUri }: Repository, revision: string): Uri =>
  Uri.from({
    scheme: SCHEME,
    path: `/${l10n.t("What changed since {0}", revision.replaceAll("/", "-"))}.md`,
    query: JSON.stringify({ root: rootUri.toString(), revision }),
  });

const readChanges = async (client: BaseLanguageClient, uri: Uri): Promise<string> => {
  const { root, revision } = JSON.parse(uri.query) as { readonly root: string; readonly revision: string };
  const repository = (await gitOf())?.repositories.find(({ rootUri }) => rootUri.toString() === root);
  if (repository === undefined) return `${l10n.t("This repository is not open any more.")}\n`;
  const unsaved = workspace.textDocuments.filter(({ isDirty }) => isDirty).map((document) => document.uri);
  try {
    const { before, renamed } = await earlierTexts(repository, revision, unsaved.filter(isIn(repository)));
    const params: ChangedParams = { folder: root, before, renamed };
    const told = await client.sendRequest<string | null>(CHANGED, params);
    return (
      told ?? `${l10n.t("What changed could not be worked out. The output of Finishwright says more.")}\n`
    );
  } catch {
    return `${l10n.t("Git cannot read “{0}”. Name a commit, a branch or a tag.", revision)}\n`;
  }
};

const isIn =
  ({ rootUri }: Repository) =>
  (uri: Uri): boolean =>
    uri.scheme === rootUri.scheme && uri.path.startsWith(`${rootUri.path}/`);

/** Undefined where the editor has no Git, or it is switched off. */
const gitOf = async (): Promise<Git | undefined> => {
  const extension = extensions.getExtension<GitExports>("vscode.git");
  const exported = await extension?.activate();
  if (!exported?.enabled) return undefined;
  const git = exported.getAPI(1);
  if (git.state !== "initialized") await new Promise((resolve) => once(git.onDidChangeState, resolve));
  return git;
};

const once = (event: Event<unknown>, then: (value: unknown) => void): void => {
  const listening = event((value) => {
    listening.dispose();
    then(value);
  });
};

/** That of the recipe at hand, else the only one, else one to choose; where there is none the person is told why. */
const chosenRepository = async (): Promise<Repository | undefined> => {
  const git = await gitOf();
  if (git === undefined) {
    void window.showWarningMessage(
      extensions.getExtension("vscode.git") === undefined
        ? l10n.t(
            "This editor has no Git, as in a browser, so earlier states cannot be read here. In a terminal, finishwright diff tells the same.",
          )
        : l10n.t("The editor's Git is switched off. Turn on the setting git.enabled, and try again."),
    );
    return undefined;
  }
  const recipe = activeRecipe()?.uri;
  const own = recipe && git.getRepository(recipe);
  if (own) return own;
  if (git.repositories.length === 0) {
    void window.showWarningMessage(
      l10n.t("No Git repository is open. Open the folder of one, and commit your recipes once."),
    );
    return undefined;
  }
  if (git.repositories.length === 1) return git.repositories[0];
  const items = git.repositories.map((repository) => ({ label: repository.rootUri.fsPath, repository }));
  return (await window.showQuickPick(items, { title: l10n.t("Which repository?") }))?.repository;
};

const askedRevision = async (repository: Repository): Promise<string | undefined> => {
  const { HEAD } = repository.state;
  if (HEAD?.commit === undefined) {
    void window.showWarningMessage(l10n.t("This repository has no commit yet. Commit your recipes once."));
    return undefined;
  }
  const refs = await repository.getRefs({ sort: "committerdate" });
  const names = [...new Set(refs.flatMap(({ name }) => (name === undefined ? [] : [name])))];
  const items: readonly (QuickPickItem & { readonly revision?: string })[] = [
    { label: l10n.t("The last commit"), description: HEAD.name ?? HEAD.commit.slice(0, 8), revision: "HEAD" },
    { label: l10n.t("Another revision…"), description: l10n.t("a commit, a branch or a tag") },
    { label: l10n.t("Branches and tags"), kind: QuickPickItemKind.Separator },
    ...names.map((name) => ({ label: name, revision: name })),
  ];
  const picked = await window.showQuickPick(items, { title: l10n.t("What changed since when?") });
  if (picked === undefined || picked.revision !== undefined) return picked?.revision;
  return window.showInputBox({
    title: l10n.t("What changed since when?"),
    prompt: l10n.t("a commit, a branch or a tag"),
    // It would be taken for an option.
    validateInput: (text) =>
      text.trim() === "" || text.startsWith("-") ? l10n.t("a commit, a branch or a tag") : undefined,
  });
};
