/** Where a command has no recipe to work on, the ways to one are a click away. */
import { commands, l10n, window } from "vscode";

const WAYS = {
  [l10n.t("New Recipe")]: "finishwright.newRecipe",
  [l10n.t("Open the Samples")]: "finishwright.openSamples",
};

/** `why` says what the command would make of a recipe. */
export const offerRecipe = async (why: string): Promise<void> => {
  const ask = l10n.t("Open a finish recipe first: {0}", why);
  const picked = await window.showInformationMessage(ask, ...Object.keys(WAYS));
  const command = picked && WAYS[picked];
  if (command) await commands.executeCommand(command);
};
