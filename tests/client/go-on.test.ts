/** A word that goes on offers what may follow when it has been chosen; a whole one does not. */
import { expect, test } from "vitest";
import { goingOn } from "../../client/src/go-on.ts";

test("words with a blank behind them go on, in a list and in what holds one", () => {
  const items = [
    { label: "step", insertText: "step " },
    { label: "dust", insertText: "dust" },
    { label: "note", insertText: { value: 'note "$0"' } },
    { label: "own", insertText: "own ", command: { command: "a", title: "" } },
  ];
  const commands = (list: readonly { readonly command?: { readonly command: string } }[]) =>
    list.map(({ command }) => command?.command);
  const wanted = ["editor.action.triggerSuggest", undefined, undefined, "a"];
  expect(commands(goingOn(structuredClone(items) as never))).toEqual(wanted);
  const list = goingOn({ isIncomplete: false, items: structuredClone(items) } as never) as never as {
    readonly items: typeof items;
  };
  expect(commands(list.items)).toEqual(wanted);
  expect(goingOn(null)).toBeNull();
  expect(goingOn(undefined)).toBeUndefined();
});
