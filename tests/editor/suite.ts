/**
 * What a user of the extension sees, tried in a real VS Code: by `run.ts` and `desktop.ts` with a machine behind the
 * editor, by `web.ts` with nothing but a browser.
 *
 * The folder that is open is a copy of `folder/`. Tests run in this order and leave the texts as they found them.
 */
import {
  commands,
  extensions,
  languages,
  Position,
  Selection,
  tasks,
  Uri,
  WorkspaceEdit,
  window,
  workspace,
} from "vscode";
import type { FinishwrightApi } from "../../client/src/api.ts";
import { fails, match, ok, same, strictEqual } from "./assert.ts";
import { serveMemoryFolder } from "./memory-folder.ts";
import { runTests, type Test } from "./report.ts";
import {
  callersAt,
  click,
  closeTab,
  coloursOf,
  completionsAt,
  definitionsAt,
  drawFindings,
  fileUri,
  findingsUntil,
  fixesAt,
  formattingOf,
  highlightsAt,
  hintsOf,
  hoverText,
  lensCommandsOf,
  linksOf,
  openFile,
  outlineOf,
  positionOf,
  referencesAt,
  renamingAt,
  replaceText,
  ruleOf,
  selectionsAt,
  shownPages,
  signatureAt,
  symbolsFor,
  tabLabels,
  textUntil,
  until,
  writeFile,
} from "./vscode-api.ts";

const ID = "finishwright.finishwright";
const MAIN = "reading-room.finish";

interface Binding {
  readonly key: string;
  readonly command: string;
  readonly when?: string;
}

/** The keys that an editor has by default, which it shows as JSON with comments at the ends of lines and lists behind it. */
function keysOf(text: string): readonly Binding[] {
  const rows = text.match(/\{ "key":[^\n]*(?:\n[^\n{]*)*\}/gu) ?? [];
  return rows.map((row) => JSON.parse(row));
}

const none = (findings: readonly string[]): boolean => findings.length === 0;
const has =
  (rule: string) =>
  (findings: readonly string[]): boolean =>
    findings.some((finding) => finding.endsWith(` ${rule}`));
const hasNo = (rule: string) => (findings: readonly string[]) => !has(rule)(findings);

/** Where the extension runs in a worker of a browser; `web.ts` then has the server spin when it is asked for this name. */
const IN_BROWSER = Reflect.has(globalThis, "WorkerGlobalScope");
const SPIN = "spin without end";

const TESTS: readonly Test[] = [
  {
    name: "the extension sleeps until a recipe is opened",
    async run() {
      strictEqual(extensions.getExtension(ID)?.isActive, false);
      const { document } = await openFile(MAIN);
      strictEqual(document.languageId, "finish");
      await findingsUntil(document.uri, has("wrong-unit"));
      strictEqual(extensions.getExtension(ID)?.isActive, true);
    },
  },
  {
    name: "a finding stands at the words at fault, with its rule, and the page that explains it",
    async run() {
      const { document } = await openFile(MAIN);
      await findingsUntil(document.uri, has("wrong-unit"));
      const finding = languages.getDiagnostics(document.uri).find((one) => ruleOf(one) === "wrong-unit");
      ok(finding);
      strictEqual(document.getText(finding.range), "3 h");
      strictEqual(finding.source, "finishwright");
      ok(typeof finding.code === "object");
      const { target } = finding.code;
      match((await workspace.openTextDocument(target)).getText(), /^# wrong-unit$/m);
      await commands.executeCommand("vscode.open", target);
      await until(async () => shownPages().includes("Wrong unit"));
      await closeTab("Wrong unit");
    },
  },
  {
    name: "names of a used file are known",
    async run() {
      await findingsUntil(fileUri(MAIN), hasNo("use-not-found"));
      await findingsUntil(fileUri(MAIN), hasNo("unknown-name"));
    },
  },
  {
    name: "findings come and go while one types",
    async run() {
      const editor = await openFile(MAIN);
      await replaceText(editor, "covers  3 h", "covers  14 m2/L");
      await findingsUntil(editor.document.uri, hasNo("wrong-unit"));
      await replaceText(editor, "covers  14 m2/L", "covers  3 h");
      await findingsUntil(editor.document.uri, has("wrong-unit"));
    },
  },
  {
    name: "hover tells about a material of another file",
    async run() {
      const { document } = await openFile(MAIN);
      const text = await hoverText(document, positionOf(document, "hall_clear) to"));
      match(text, /Waterborne satin clear/);
      match(text, /Rubs out well/);
    },
  },
  {
    name: "the outline lists declarations and what is in them",
    async run() {
      const { document } = await openFile(MAIN);
      const outline = await outlineOf(document);
      for (const name of ["hard_clear", "walnut", "reading_table", "  top", "tables"]) {
        ok(
          outline.some((line) => line.startsWith(name)),
          `${name} is not in\n${outline.join("\n")}`,
        );
      }
    },
  },
  {
    name: "completion offers what may start a declaration, a field and a family",
    async run() {
      const document = await workspace.openTextDocument({
        language: "finish",
        content: "\nmaterial new_clear {\n  \n  family \n}\n",
      });
      await window.showTextDocument(document);
      const offered = async (line: number, character: number, words: readonly string[]): Promise<void> => {
        const labels = await completionsAt(document, new Position(line, character));
        for (const word of words) ok(labels.includes(word), `${word} is not among ${labels.join(", ")}`);
      };
      await offered(0, 0, ["material", "piece", "shop", "recipe", "job", "use"]);
      await offered(2, 2, ["covers", "recoat", "packs"]);
      await offered(3, 9, ["waterborne polyurethane", "drying oil"]);
      await commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
    },
  },
  {
    name: "an unsaved recipe is checked, and nothing is left of it when it is closed",
    async run() {
      const document = await workspace.openTextDocument({
        language: "finish",
        content: "material a {\n  family drying oil\n  covers 3 h\n}\n",
      });
      await window.showTextDocument(document);
      await findingsUntil(document.uri, has("wrong-unit"));
      await commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
      await findingsUntil(document.uri, none);
    },
  },
  {
    name: "a file of the folder that nobody opened is checked as well, until it is deleted",
    async run() {
      const uri = fileUri("unopened.finish");
      await findingsUntil(uri, has("wrong-unit"));
      const bytes = await workspace.fs.readFile(uri);
      await workspace.fs.delete(uri);
      await findingsUntil(uri, none);
      await workspace.fs.writeFile(uri, bytes);
      await findingsUntil(uri, has("wrong-unit"));
    },
  },
  {
    name: "a used file that was missing is taken up when it appears, and missed when it goes",
    async run() {
      const late = fileUri("late.finish");
      const user = fileUri("late-user.finish");
      await writeFile(user, 'use "late.finish"\njob later {\n}\n');
      await openFile("late-user.finish");
      await findingsUntil(user, has("use-not-found"));
      await writeFile(late, "material late_oil {\n  family drying oil\n}\n");
      await findingsUntil(user, hasNo("use-not-found"));
      await workspace.fs.delete(late);
      await findingsUntil(user, has("use-not-found"));
      await commands.executeCommand("workbench.action.closeActiveEditor");
      await workspace.fs.delete(user);
      await findingsUntil(user, none);
    },
  },
  {
    name: "a recipe of a virtual folder knows the file that it uses, and misses the one that is not there",
    async run() {
      const texts = new Map([
        ["stock.finish", "material mill_oil {\n  family drying oil\n}\n"],
        ["job.finish", 'use "stock.finish"\nuse "gone.finish"\n\nrecipe oiled {\n  layer mill_oil\n}\n'],
      ]);
      const folder = serveMemoryFolder(texts);
      const uri = Uri.parse("vscode-vfs://memory/job.finish");
      await commands.executeCommand("vscode.open", uri, { preview: false });
      await findingsUntil(uri, has("use-not-found"));
      const messages = languages.getDiagnostics(uri).map(({ message }) => message);
      const missing = messages.filter((message) => /cannot be used/.test(message));
      strictEqual(missing.length, 1);
      match(missing[0] ?? "", /"gone\.finish" cannot be used: it does not exist$/m);
      ok(hasNo("unknown-name")(drawFindings(uri)));
      await commands.executeCommand("workbench.action.closeActiveEditor");
      await findingsUntil(uri, none);
      folder.dispose();
    },
  },
  {
    name: "the lowest level of finding is the user's choice",
    async run() {
      const { document } = await openFile(MAIN);
      const settings = workspace.getConfiguration("finishwright");
      await findingsUntil(document.uri, has("grit-jump"));
      await settings.update("findings.lowest", "error", true);
      await findingsUntil(document.uri, hasNo("grit-jump"));
      ok(has("wrong-unit")(drawFindings(document.uri)));
      await settings.update("findings.lowest", undefined, true);
      await findingsUntil(document.uri, has("grit-jump"));
    },
  },
  {
    name: "a project's configuration holds from when it is written until it is deleted",
    async run() {
      const { document } = await openFile(MAIN);
      const config = fileUri("finishwright.config.json");
      await findingsUntil(document.uri, has("grit-jump"));
      await writeFile(config, '{ "rules": { "grit-jump": "off" } }');
      await findingsUntil(document.uri, hasNo("grit-jump"));
      await workspace.fs.delete(config);
      await findingsUntil(document.uri, has("grit-jump"));
    },
  },
  {
    name: "figures stand behind the lines of a recipe, one hint a line, unless they are switched off",
    async run() {
      const { document } = await openFile(MAIN);
      await findingsUntil(document.uri, has("wrong-unit"));
      const line = positionOf(document, "layer   clear x coats").line + 1;
      const hints = await hintsOf(document);
      // 1.8 m × 0.9 m + 2 (1.8 m + 0.9 m) × 0.03 m = 1.782 m2; × 2 × 3 / 10 m2/L × 1.1 = 1.18 L
      match(hints.find((hint) => hint.startsWith(`${line} `)) ?? "", /^\d+ 1\.18 L · \+/);
      strictEqual(new Set(hints.map((hint) => hint.split(" ")[0])).size, hints.length);
      const settings = workspace.getConfiguration("finishwright");
      for (const kind of ["litres", "waits", "elapsed"]) {
        await settings.update(`inlayHints.${kind}`, false, true);
      }
      await until(async () => (await hintsOf(document)).length === 0);
      for (const kind of ["litres", "waits", "elapsed"]) {
        await settings.update(`inlayHints.${kind}`, undefined, true);
      }
      await until(async () => (await hintsOf(document)).length === hints.length);
    },
  },
  {
    name: "the line above a job leads to its schedule, its totals and its gravest finding",
    async run() {
      const { document } = await openFile(MAIN);
      await findingsUntil(document.uri, has("grit-jump"));
      // Until the job is planned it says so, and has no cost.
      let lenses = await lensCommandsOf(document);
      await until(
        async () => {
          lenses = await lensCommandsOf(document);
          return lenses.length === (IN_BROWSER ? 3 : 4);
        },
        () => `the line says\n${lenses.map(({ title }) => title).join(" | ")}`,
      );
      const [schedule, totals, findings, record] = lenses;
      ok(schedule && totals && findings);
      match(schedule.title, /^takes \d+ days/);
      match(findings.title, /^\d+ findings?$/);
      // In a browser a record is read and not counted.
      if (!IN_BROWSER) match(record?.title ?? "", /^Record as done now: /);

      await click(schedule);
      const shown = window.activeTextEditor?.document;
      ok(shown);
      strictEqual(shown.languageId, "plaintext");
      match(shown.getText(), /tables “Reading tables”[\s\S]*hall_clear, coat 1 of 3/);
      await click(totals);
      match(window.activeTextEditor?.document.getText() ?? "", /Materials\n +hall_clear +1\.18 L/);
      await commands.executeCommand("workbench.action.closeActiveEditor");

      await click(findings);
      const editor = window.activeTextEditor;
      ok(editor);
      strictEqual(editor.document.uri.path, document.uri.path);
      const own = languages
        .getDiagnostics(document.uri)
        .filter(({ range }) => range.start.isEqual(editor.selection.active));
      ok(own.length > 0, `no finding begins at line ${editor.selection.active.line + 1}`);
      await commands.executeCommand("closeMarkersNavigation");
    },
  },
  {
    name: "the commands show the reports of the recipe at hand, and these follow it",
    async run() {
      const offered = await commands.getCommands(true);
      for (const name of [
        "showSchedule",
        "showTotals",
        "showShoppingList",
        "saveCareCard",
        "saveShortRecipe",
      ]) {
        ok(offered.includes(`finishwright.${name}`), `there is no command ${name}`);
      }
      await openFile(MAIN);
      await commands.executeCommand("finishwright.showShoppingList");
      const list = window.activeTextEditor?.document;
      ok(list);
      strictEqual(list.isDirty, false);
      match(list.getText(), /Shopping list for tables\n\nhall_clear +1\.18 L/);
      const editor = await openFile(MAIN);
      await replaceText(editor, "coats: number = 3", "coats: number = 2");
      // 1.782 m2 × 2 × 2 / 10 m2/L × 1.1 = 0.78 L
      await textUntil(list, (text) => /hall_clear +0\.78 L/.test(text));
      await replaceText(editor, "coats: number = 2", "coats: number = 3");
      await textUntil(list, (text) => /hall_clear +1\.18 L/.test(text));
      await window.showTextDocument(list);
      await commands.executeCommand("workbench.action.closeActiveEditor");
    },
  },
  {
    name: "a quick fix takes its finding away",
    async run() {
      const { document } = await openFile(MAIN);
      await findingsUntil(document.uri, has("grit-jump"));
      const before = document.getText();
      const actions = await fixesAt(document, positionOf(document, "180"));
      const fix = actions.find(({ edit }) => edit !== undefined);
      ok(fix?.edit, `no fix among ${actions.map(({ title }) => title).join(", ")}`);
      await workspace.applyEdit(fix.edit);
      await findingsUntil(document.uri, hasNo("grit-jump"));
      await commands.executeCommand("undo");
      strictEqual(document.getText(), before);
      await findingsUntil(document.uri, has("grit-jump"));
    },
  },
  {
    name: "names lead to what they mean and to all their uses, also in files that nobody opened",
    async run() {
      const { document } = await openFile(MAIN);
      const clear = positionOf(document, "hall_clear) to");
      same(await definitionsAt(document, clear), ["stock/clears.finish: hall_clear"]);
      same(await definitionsAt(document, positionOf(document, "clear: hall_clear")), [`${MAIN}: clear`]);
      same((await referencesAt(document, clear)).toSorted(), [
        `${MAIN}: hall_clear`,
        "stock/clears.finish: hall_clear",
      ]);
      same(await highlightsAt(document, positionOf(document, "clear x coats")), [
        "2 clear",
        "1 clear",
        "1 clear",
      ]);
      same(await linksOf(document), ["stock/clears.finish: clears.finish"]);
      same(await callersAt(document, positionOf(document, "hard_clear(clear: m")), ["tables"]);
      ok((await symbolsFor("shlfoil")).includes("unopened.finish: shelf_oil"));
    },
  },
  {
    name: "a name is changed everywhere at once, or it is said why not",
    async run() {
      const { document } = await openFile(MAIN);
      await findingsUntil(document.uri, has("wrong-unit"));
      const findings = drawFindings(document.uri);
      const before = document.getText();
      const edit = await renamingAt(document, positionOf(document, "hall_clear) to"), "satin_clear");
      strictEqual(edit.size, 2);
      ok(await workspace.applyEdit(edit));
      match(document.getText(), /clear: satin_clear\)/);
      const stock = await openFile("stock/clears.finish");
      match(stock.document.getText(), /material satin_clear /);
      await findingsUntil(document.uri, hasNo("unknown-name"));
      same(drawFindings(document.uri), findings);
      const back = await renamingAt(stock.document, positionOf(stock.document, "satin_clear"), "hall_clear");
      ok(await workspace.applyEdit(back));
      strictEqual(document.getText(), before);
      await stock.document.save();
      await document.save();
      await fails(
        renamingAt(document, positionOf(document, "walnut"), "hall_clear"),
        /There already is a material `hall_clear`/,
      );
    },
  },
  {
    name: "lines that use a file follow when it is moved",
    async run() {
      const { document } = await openFile(MAIN);
      const before = document.getText();
      const move = async (from: string, to: string): Promise<void> => {
        const edit = new WorkspaceEdit();
        edit.renameFile(fileUri(from), fileUri(to));
        ok(await workspace.applyEdit(edit));
      };
      await move("stock/clears.finish", "satin.finish");
      match(document.getText(), /^use "satin.finish"$/m);
      await findingsUntil(document.uri, hasNo("use-not-found"));
      await move("satin.finish", "stock/clears.finish");
      strictEqual(document.getText(), before);
      await findingsUntil(document.uri, hasNo("use-not-found"));
      await document.save();
    },
  },
  {
    name: "a recipe is formatted by this extension, and what is broken stays",
    async run() {
      const document = await workspace.openTextDocument({
        language: "finish",
        content: "shop   mill {\n\tair 18°C,60%RH\ncrew = 2\n\n\n}",
      });
      await window.showTextDocument(document);
      strictEqual((await formattingOf(document)).length > 0, true);
      await commands.executeCommand("editor.action.formatDocument");
      strictEqual(document.getText(), "shop mill {\n  air 18 C, 60 % RH\ncrew = 2\n}\n");
      same(await formattingOf(document), []);
      await commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
    },
  },
  {
    name: "words are coloured by what they mean, a selection grows, and a call says what it takes",
    async run() {
      const { document } = await openFile(MAIN);
      const colours = await coloursOf(document);
      for (const colour of [
        "function.declaration hard_clear",
        "parameter clear",
        "variable.readonly hall_clear",
        "property family",
      ]) {
        ok(colours.includes(colour), `${colour} is not among ${colours.join(", ")}`);
      }
      const call = positionOf(document, "hall_clear) to");
      // The editor itself puts parts of words before the first.
      same((await selectionsAt(document, call)).slice(1, 4), [
        "hall_clear",
        "clear: hall_clear",
        "hard_clear(clear: hall_clear)",
      ]);
      same(await signatureAt(document, call), [
        "hard_clear(clear: material, coats: number = 3)",
        "clear: material",
      ]);
    },
  },
  {
    name: "a new recipe opens unsaved, and nothing is found in it",
    async run() {
      await commands.executeCommand("finishwright.newRecipe", {
        piece: "table",
        wood: "beech",
        now: "bare",
        look: "warm",
        place: "workshop",
        units: "metric",
      });
      const document = window.activeTextEditor?.document;
      ok(document);
      strictEqual(document.isUntitled, true);
      strictEqual(document.languageId, "finish");
      await until(async () => (await lensCommandsOf(document)).length > 0);
      same(drawFindings(document.uri), []);
      await commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
    },
  },
  {
    name: "a finding is explained by the page of its rule; without one, any rule can be chosen",
    async run() {
      const editor = await openFile(MAIN);
      await findingsUntil(editor.document.uri, has("grit-jump"));
      const grits = positionOf(editor.document, "180");
      editor.selection = new Selection(grits, grits);
      await commands.executeCommand("finishwright.explainFinding");
      await until(async () => shownPages().includes("Grit jump"));
      await closeTab("Grit jump");

      await openFile(MAIN);
      editor.selection = new Selection(0, 0, 0, 0);
      const explained = commands.executeCommand("finishwright.explainFinding");
      await until(async () => {
        await commands.executeCommand("workbench.action.acceptSelectedQuickOpenItem");
        return shownPages().length > 0;
      });
      await explained;
      for (const page of shownPages()) await closeTab(page);
    },
  },
  {
    name: "the bench sheet of the recipe at hand is shown, and follows it",
    async run() {
      const editor = await openFile(MAIN);
      await commands.executeCommand("finishwright.showBenchSheet");
      await until(async () => tabLabels().some((label) => label.includes("Bench sheet: reading-room.md")));
      const find = () => workspace.textDocuments.find(({ uri }) => uri.path.includes("Bench sheet"));
      await until(async () => find() !== undefined);
      const sheet = find();
      ok(sheet);
      strictEqual(sheet.languageId, "markdown");
      match(sheet.getText(), /^# Reading tables\n/m);
      match(sheet.getText(), /Coat 3 of 3/);
      await replaceText(editor, "coats: number = 3", "coats: number = 2");
      await textUntil(sheet, (text) => /Coat 2 of 2/.test(text));
      await replaceText(editor, "coats: number = 2", "coats: number = 3");
      await textUntil(sheet, (text) => /Coat 3 of 3/.test(text));
      await closeTab("Bench sheet");
    },
  },
  {
    name: "a search leads to what matches, while one types",
    async run() {
      const { document } = await openFile(MAIN);
      const place = positionOf(document, 'reading_table "');
      await commands.executeCommand("finishwright.findRecipes", "kind:piece oak");
      await until(async () => {
        await commands.executeCommand("workbench.action.acceptSelectedQuickOpenItem");
        return window.activeTextEditor?.selection.active.isEqual(place) === true;
      });
    },
  },
  {
    name: "what changed since a revision is shown by what it means, and follows the text before it is saved",
    async run() {
      // In a browser, and where a run has no repository, there is none to ask.
      if (workspace.getConfiguration("git").get("enabled") !== true || IN_BROWSER) return;
      const editor = await openFile(MAIN);
      await commands.executeCommand("finishwright.showChanges", "HEAD");
      const find = () => workspace.textDocuments.find(({ uri }) => uri.scheme === "finishwright-changes");
      await until(async () => find() !== undefined);
      const changes = find();
      ok(changes);
      await textUntil(changes, (text) => /^No change of meaning in \d+ files?\./m.test(text));
      await replaceText(editor, "coats: number = 3", "coats: number = 2");
      await textUntil(changes, (text) => /^\| coats \| 3 \| 2 \|/m.test(text));
      await replaceText(editor, "coats: number = 2", "coats: number = 3");
      await textUntil(changes, (text) => /^No change of meaning/m.test(text));
      await closeTab("What changed since HEAD");
    },
  },
  {
    name: "a snippet puts in a whole recipe",
    async run() {
      const document = await workspace.openTextDocument({ language: "finish", content: "" });
      await window.showTextDocument(document);
      await commands.executeCommand("editor.action.insertSnippet", {
        langId: "finish",
        name: "Recipe: an oil",
      });
      match(
        document.getText(),
        /^## Thin coats of oil.*\nrecipe oiled\(oil: material, coats: number = 3\) \{\n {2}for/,
      );
      await commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
    },
  },
  {
    name: "other extensions can wait for the server",
    async run() {
      const api: FinishwrightApi | undefined = extensions.getExtension(ID)?.exports;
      strictEqual(api?.version, 1);
      await api?.ready;
    },
  },
  {
    name: "Enter goes on with a documentation comment and indents a block",
    async run() {
      const document = await workspace.openTextDocument({ language: "finish", content: "## Thin coats." });
      const editor = await window.showTextDocument(document);
      await commands.executeCommand("cursorBottom");
      await commands.executeCommand("type", { text: "\n" });
      strictEqual(document.getText(), "## Thin coats.\n## ");
      await commands.executeCommand("editor.action.selectAll");
      await commands.executeCommand("type", { text: "shop a {" });
      await commands.executeCommand("type", { text: "\n" });
      strictEqual(document.getText(), "shop a {\n  \n}");
      strictEqual(editor.selection.active.line, 1);
      await commands.executeCommand("editor.action.commentLine");
      strictEqual(document.lineAt(1).text.trim(), "#");
      await commands.executeCommand("workbench.action.revertAndCloseActiveEditor");
    },
  },
  {
    name: "the keys of the extension are nobody else's in a recipe",
    async run() {
      const document = await workspace.openTextDocument(
        Uri.parse("vscode://defaultsettings/keybindings.json"),
      );
      const bindings = keysOf(document.getText());
      const own: readonly Binding[] = extensions.getExtension(ID)?.packageJSON.contributes.keybindings;
      strictEqual(own.length, 2);
      ok(bindings.length > 500, `only ${bindings.length} default keys were read`);
      for (const { key, command } of own) {
        const others = bindings.filter((each) => each.key === key && each.command !== command);
        // What holds in texts of another language holds in no recipe.
        same(
          others.filter(
            ({ when = "" }) => !/editorLangId == '?(?!finish)|notebook|terminalFocus/u.test(when),
          ),
          [],
        );
      }
    },
  },
  {
    name: "the workshop comes into view, and a task checks its recipes",
    async run() {
      await commands.executeCommand("finishwright.workshop.focus");
      const [task, ...others] = await tasks.fetchTasks({ type: "finishwright" });
      same(others, []);
      if (task === undefined) throw new Error("no task is offered");
      strictEqual(task.name, "check all recipes");
      const ended = new Promise<void>((resolve) => {
        const listening = tasks.onDidEndTask(({ execution }) => {
          if (execution.task.name !== "check all recipes") return;
          listening.dispose();
          resolve();
        });
      });
      await tasks.executeTask(task);
      await ended;
      await commands.executeCommand("workbench.view.explorer");
    },
  },
  {
    name: "the server can be restarted, and the findings come back",
    async run() {
      const { document } = await openFile(MAIN);
      await commands.executeCommand("finishwright.restartServer");
      await findingsUntil(document.uri, has("wrong-unit"));
      match(await hoverText(document, positionOf(document, "hall_clear) to")), /Waterborne satin clear/);
      await commands.executeCommand("finishwright.showOutput");
    },
  },
];

/** A worker cannot be told to stop: what answers afterwards is another one. */
const WITHOUT_A_MACHINE: readonly Test[] = [
  {
    name: "a server that spins is ended, and another takes its place",
    async run() {
      const { document } = await openFile(MAIN);
      // The question itself is never answered, or fails; either is right.
      await symbolsFor(SPIN).catch(() => []);
      const name = positionOf(document, "hall_clear) to");
      await until(async () => /Waterborne satin clear/.test(await hoverText(document, name)));
      await findingsUntil(document.uri, has("wrong-unit"));
    },
  },
];

export const run = (): Promise<void> => runTests([...TESTS, ...(IN_BROWSER ? WITHOUT_A_MACHINE : [])]);
