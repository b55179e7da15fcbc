/** *New Recipe*: a recipe that is complete but for the figures of one's own, as a file that is not saved yet. */
import { commands, type Disposable, window, workspace } from "vscode";
import { SKELETON } from "./starter-recipe.ts";

export const registerNewRecipe = (): Disposable =>
  commands.registerCommand("finishwright.newRecipe", async () => {
    const document = await workspace.openTextDocument({ language: "finish", content: SKELETON });
    await window.showTextDocument(document);
  });
