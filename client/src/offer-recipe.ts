/** Where a command has no recipe to work on, the ways to one are a click away. */
import { commands, window } from "vscode";

const WAYS = {
  "New Recipe": "finishwright.newRecipe",
  "Open the Samples": "finishwright.openSamples",
} as const;

/** `why` says what the command would make of a recipe. */
export const offerRecipe = async (why: string): Promise<void> => {
  const ways = Object.keys(WAYS) as readonly (keyof typeof WAYS)[];
  const picked = await window.showInformationMessage(`Open a finish recipe first: ${why}`, ...ways);
  if (picked) await commands.executeCommand(WAYS[picked]);
};
