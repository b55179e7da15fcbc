/**
 * The tree "Workshop": jobs with what they come to, pieces, recipes and stock of the open folders. The server says what there
 * is; nothing is asked while the tree is not to be seen.
 */
import {
  commands,
  Disposable,
  EventEmitter,
  l10n,
  MarkdownString,
  Range,
  ThemeColor,
  ThemeIcon,
  type TreeDataProvider,
  TreeItem,
  TreeItemCollapsibleState,
  type TreeView,
  Uri,
  window,
} from "vscode";
import { type BaseLanguageClient, State } from "vscode-languageclient";
import {
  type FindingTarget,
  LENS_COMMANDS,
  WORKSHOP,
  type WorkshopItem,
} from "../../server/src/lsp/custom-requests.ts";
import type { ReportsNews } from "./reports-changed.ts";

type Kind = WorkshopItem["kind"];
type Severity = NonNullable<WorkshopItem["findings"]>["severity"];

const GROUPS: Readonly<Record<Kind, { readonly title: string; readonly icon: string }>> = {
  job: { title: l10n.t("Jobs"), icon: "checklist" },
  piece: { title: l10n.t("Pieces"), icon: "symbol-structure" },
  recipe: { title: l10n.t("Recipes"), icon: "list-ordered" },
  stock: { title: l10n.t("Stock"), icon: "beaker" },
};
const KINDS = Object.keys(GROUPS) as readonly Kind[];

/** An icon says it by its shape, and by its colour as well. */
const SIGNS: Readonly<Record<Severity, readonly [icon: string, colour: string]>> = {
  error: ["error", "list.errorForeground"],
  warning: ["warning", "list.warningForeground"],
  information: ["info", "foreground"],
  hint: ["lightbulb", "foreground"],
};

interface Group {
  readonly kind: Kind;
  readonly items: readonly WorkshopItem[];
}

/** What a command of the tree's menus is given: of a job enough to open what is made of it. */
export interface WorkshopNode extends WorkshopItem {
  readonly job?: string;
}

type Node = Group | WorkshopNode;

/** After the last news, ms. */
const PAUSE = 300;

export const registerWorkshopTree = (client: BaseLanguageClient, news: ReportsNews): Disposable => {
  const tree = new WorkshopTree(client);
  const view = window.createTreeView<Node>("finishwright.workshop", {
    treeDataProvider: tree,
    showCollapseAll: true,
  });
  tree.view = view;
  return Disposable.from(
    view,
    tree,
    view.onDidChangeVisibility(({ visible }) => {
      if (visible) tree.soon();
    }),
    news.onChange(() => tree.soon()),
    client.onDidChangeState(({ newState }) => {
      if (newState === State.Running) tree.soon();
    }),
    commands.registerCommand("finishwright.refreshWorkshop", () => tree.soon()),
    commands.registerCommand("finishwright.goToFirstFinding", ({ uri, findings }: WorkshopNode) =>
      findings === undefined
        ? undefined
        : commands.executeCommand(LENS_COMMANDS.findings, {
            uri,
            start: findings.start,
          } satisfies FindingTarget),
    ),
  );
};

class WorkshopTree implements TreeDataProvider<Node>, Disposable {
  readonly #client: BaseLanguageClient;
  readonly #changed = new EventEmitter<void>();
  readonly onDidChangeTreeData = this.#changed.event;
  view: TreeView<Node> | undefined;
  #items: readonly WorkshopItem[] = [];
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** Of what was asked last: an answer to an earlier question is thrown away. */
  #asked = 0;
  #isStale = true;

  constructor(client: BaseLanguageClient) {
    this.#client = client;
  }

  dispose(): void {
    clearTimeout(this.#timer);
    this.#changed.dispose();
  }

  /** Asks anew, at once where the tree is to be seen, else when it is. */
  soon(): void {
    this.#isStale = true;
    clearTimeout(this.#timer);
    if (this.view?.visible) this.#timer = setTimeout(() => void this.#ask(), PAUSE);
  }

  async #ask(): Promise<void> {
    if (this.#client.state !== State.Running) return;
    this.#asked += 1;
    const asked = this.#asked;
    const items = await this.#client.sendRequest<readonly WorkshopItem[]>(WORKSHOP, {});
    if (asked !== this.#asked) return;
    this.#isStale = false;
    if (JSON.stringify(items) === JSON.stringify(this.#items)) return;
    this.#items = items;
    this.#changed.fire();
  }

  async getChildren(node?: Node): Promise<Node[]> {
    if (node !== undefined) return "items" in node ? node.items.map(nodeOf) : [];
    if (this.#isStale) await this.#ask();
    return KINDS.flatMap((kind) => {
      const items = this.#items.filter((item) => item.kind === kind);
      return items.length > 0 ? [{ kind, items }] : [];
    });
  }

  getTreeItem(node: Node): TreeItem {
    return "items" in node ? groupItem(node) : leafItem(this.#client, node);
  }
}

const nodeOf = (item: WorkshopItem): WorkshopNode =>
  item.kind === "job" ? { ...item, job: item.name } : item;

function groupItem({ kind, items }: Group): TreeItem {
  const { title } = GROUPS[kind];
  const item = new TreeItem(
    title,
    kind === "job" ? TreeItemCollapsibleState.Expanded : TreeItemCollapsibleState.Collapsed,
  );
  item.id = kind;
  item.description = String(items.length);
  item.contextValue = "group";
  return item;
}

function leafItem(client: BaseLanguageClient, node: WorkshopNode): TreeItem {
  const { kind, title, name, detail, brief = detail, notes = [], uri, file, start, findings } = node;
  const item = new TreeItem(title);
  const told = [detail, findings?.text, ...notes].filter((text) => text !== undefined && text !== "");
  item.description = [brief, findings?.text].filter(Boolean).join(" · ");
  item.iconPath = iconOf(kind, findings?.severity);
  item.contextValue = findings ? `${kind} withFindings` : kind;
  // Hostile names are text: nothing of them is read as Markdown.
  item.tooltip = new MarkdownString().appendText([title, name, ...told, file].join("\n"));
  item.accessibilityInformation = { label: [title, ...told].join(", ") };
  const place = client.protocol2CodeConverter.asPosition(start);
  item.command = {
    command: "vscode.open",
    title: l10n.t("Open"),
    arguments: [Uri.parse(uri), { selection: new Range(place, place), preview: true }],
  };
  return item;
}

function iconOf(kind: Kind, severity: Severity | undefined): ThemeIcon {
  if (severity === undefined) return new ThemeIcon(GROUPS[kind].icon);
  const [icon, colour] = SIGNS[severity];
  return new ThemeIcon(icon, new ThemeColor(colour));
}
