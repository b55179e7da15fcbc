/**
 * What is saved or copied of a job: its sheet, its shopping list, its plan for a calendar, the care cards of its pieces and a
 * short recipe to publish. The server writes the text; where it goes, and what of a job is told that is kept back otherwise,
 * the person says. Whatever comes of it is said: what was saved and where it was opened, or what went wrong.
 */
import {
  commands,
  Disposable,
  env,
  l10n,
  ProgressLocation,
  type QuickPickItem,
  Uri,
  window,
  workspace,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import {
  BENCH,
  BENCH_EXPORT,
  type BenchAnswer,
  type BenchExportParams,
  type BenchParams,
  HANDED_ON,
  type HandedOn,
} from "../../server/src/lsp/custom-requests.ts";
import { targetOf } from "./active-recipe.ts";
import { offerRecipe } from "./offer-recipe.ts";

export type SavedAs = Exclude<BenchExportParams["as"], "markdown">;

/** Behind the name of the job. */
const ENDINGS: Readonly<Record<SavedAs, string>> = {
  html: "-sheet.html",
  csv: "-shopping.csv",
  ics: "-calendar.ics",
  care: "-care-card.html",
  recipe: "-recipe.md",
};

export const registerSaveExports = (client: BaseLanguageClient): Disposable =>
  Disposable.from(
    commands.registerCommand("finishwright.saveCareCard", (given?: unknown) =>
      saveOfRecipe(client, "care", given),
    ),
    commands.registerCommand("finishwright.saveShortRecipe", (given?: unknown) =>
      saveOfRecipe(client, "recipe", given),
    ),
  );

/** Of the job at the caret, or one that is picked. */
const saveOfRecipe = async (
  client: BaseLanguageClient,
  as: "care" | "recipe",
  given: unknown,
): Promise<void> => {
  const target = targetOf(client, given);
  if (target === undefined) {
    return offerRecipe(
      as === "care" ? l10n.t("care cards are made of its jobs.") : l10n.t("a short one is made of its jobs."),
    );
  }
  const uri = client.protocol2CodeConverter.asUri(target.uri);
  const job = target.job ?? (await jobOf(client, uri));
  if (job !== undefined) await saveExport(client, { uri, job, as });
};

const jobOf = async (client: BaseLanguageClient, uri: Uri): Promise<string | undefined> => {
  const shown = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
  const params: BenchParams = {
    textDocument: { uri: client.code2ProtocolConverter.asUri(uri) },
    ...(shown ? { line: shown.selection.active.line } : {}),
  };
  const answer = await client.sendRequest<BenchAnswer | null>(BENCH, params);
  if (answer === null || answer.jobs.length === 0) {
    void window.showInformationMessage(answer?.notes[0] ?? l10n.t("The recipe is not open any more."));
    return undefined;
  }
  const { jobs, bench } = answer;
  if (jobs.length === 1) return jobs[0]!.name;
  // That of the caret stands first.
  const inOrder = [...jobs].sort((a, b) => Number(b.name === bench?.name) - Number(a.name === bench?.name));
  const picked = await window.showQuickPick(
    inOrder.map(({ name, title }) => ({ label: title, description: name, name })),
    { title: l10n.t("Of which job?") },
  );
  return picked?.name;
};

export interface Saved {
  readonly uri: Uri;
  readonly job: string;
  readonly as: SavedAs;
}

/** Nothing is written where the person leaves a question open. */
export const saveExport = async (client: BaseLanguageClient, { uri, job, as }: Saved): Promise<void> => {
  const handedOn = as === "care" || as === "recipe" ? await pickHandedOn(as) : [];
  if (handedOn === undefined) return;
  const made = await exported(client, {
    textDocument: { uri: client.code2ProtocolConverter.asUri(uri) },
    job,
    as,
    ...(handedOn.length > 0 ? { with: handedOn } : {}),
  });
  if (made === undefined) return;
  const target = await window.showSaveDialog({ defaultUri: besideRecipe(uri, `${job}${ENDINGS[as]}`) });
  if (target === undefined) return;
  try {
    await workspace.fs.writeFile(target, new TextEncoder().encode(made));
  } catch (error) {
    void window.showErrorMessage(l10n.t("{0} was not saved: {1}", nameOf(target), reasonOf(error)));
    return;
  }
  if (as === "recipe") await window.showTextDocument(target);
  else if (as === "html" || as === "care") await openPage(target, as);
  else void window.showInformationMessage(l10n.t("Saved {0}. {1}", nameOf(target), AFTER[as]));
};

/** A recipe that is not saved yet lies nowhere: what is made of it goes into the open folder. */
const besideRecipe = (uri: Uri, name: string): Uri | undefined => {
  if (uri.scheme !== "untitled") return Uri.joinPath(uri, "..", name);
  const [folder] = workspace.workspaceFolders ?? [];
  return folder && Uri.joinPath(folder.uri, name);
};

/** The sheet as Markdown, for the text of an issue or a letter. */
export const copySheet = async (client: BaseLanguageClient, uri: Uri, job: string): Promise<void> => {
  const textDocument = { uri: client.code2ProtocolConverter.asUri(uri) };
  const made = await exported(client, { textDocument, job, as: "markdown" });
  if (made === undefined) return;
  try {
    await env.clipboard.writeText(made);
  } catch (error) {
    void window.showErrorMessage(l10n.t("The bench sheet was not copied: {0}", reasonOf(error)));
    return;
  }
  void window.showInformationMessage(l10n.t("The bench sheet is on the clipboard, as Markdown."));
};

/** What is to be done with what was saved. */
const AFTER: Readonly<Record<"csv" | "ics", string>> = {
  csv: l10n.t("Any spreadsheet opens it."),
  ics: l10n.t("Import it into your calendar; a later import moves what has moved and doubles nothing."),
};

const NOTHING_MADE: Readonly<Record<BenchExportParams["as"], string>> = {
  html: l10n.t("The text has no such job any more, so nothing was saved."),
  csv: l10n.t("The text has no such job any more, so nothing was saved."),
  markdown: l10n.t("The text has no such job any more, so nothing was copied."),
  ics: l10n.t("The job has no dates, so nothing was saved. The line above the job says why."),
  care: l10n.t("The text has no such job any more, or no work in it, so nothing was saved."),
  recipe: l10n.t("The text has no such job any more, or no work in it, so nothing was saved."),
};

/** Undefined where there is nothing, which is then said. A plan may take a while. */
const exported = async (
  client: BaseLanguageClient,
  params: BenchExportParams,
): Promise<string | undefined> => {
  try {
    const made = await window.withProgress(
      { location: ProgressLocation.Window, title: l10n.t("Finishwright: waiting for the plan") },
      () => client.sendRequest<string | null>(BENCH_EXPORT, params),
    );
    if (made !== null) return made;
    void window.showWarningMessage(NOTHING_MADE[params.as]);
  } catch (error) {
    void window.showErrorMessage(l10n.t("It could not be made: {0}", reasonOf(error)));
  }
  return undefined;
};

/** Pages are printed and read in a browser, which opens those on this machine alone. */
const openPage = async (target: Uri, as: "html" | "care"): Promise<void> => {
  const name = nameOf(target);
  const isOpen = target.scheme === "file" && (await isOpened(target));
  void window.showInformationMessage(
    isOpen
      ? as === "html"
        ? l10n.t("Saved {0} and opened it in the browser: print it from there.", name)
        : l10n.t("Saved {0} and opened it in the browser: print it or hand it on from there.", name)
      : as === "html"
        ? l10n.t("Saved {0}. It was not opened from here: open it in a browser to print it.", name)
        : l10n.t(
            "Saved {0}. It was not opened from here: open it in a browser to print it or hand it on.",
            name,
          ),
  );
};

const isOpened = (target: Uri): Promise<boolean> =>
  Promise.resolve(env.openExternal(target)).catch(() => false);

const nameOf = ({ path }: Uri): string => path.split("/").at(-1) ?? path;

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const TOLD: Readonly<Record<HandedOn, string>> = {
  owner: l10n.t("Whose the pieces are"),
  people: l10n.t("Who did the work, by the record"),
  prices: l10n.t("What it cost"),
  delivery: l10n.t("How and where it is handed over"),
  photos: l10n.t("File names of photos, by the record"),
};

/** Undefined where the person gives up; none are picked to begin with. */
const pickHandedOn = async (as: "care" | "recipe"): Promise<readonly HandedOn[] | undefined> => {
  const items = HANDED_ON.map((what): QuickPickItem & { readonly what: HandedOn } => ({
    label: what,
    description: TOLD[what],
    what,
  }));
  const picked = await window.showQuickPick(items, {
    canPickMany: true,
    title:
      as === "care"
        ? l10n.t("What else shall the care card say?")
        : l10n.t("What else shall the short recipe say?"),
    placeHolder: l10n.t("Nothing of this is told unless you tick it"),
  });
  return picked?.map(({ what }) => what);
};
