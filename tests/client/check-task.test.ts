/** The task that checks all recipes: its lines are those that the problem matcher reads. */
import { readFileSync } from "node:fs";
import { expect, test, vi } from "vitest";
import { checkText, lineOf } from "../../client/src/check-task.ts";

vi.mock("vscode", () => ({
  CustomExecution: class {},
  EventEmitter: class {},
  Task: class {},
  TaskGroup: {},
  TaskScope: {},
  tasks: {},
  workspace: {},
}));

const at = (line: number, character: number) => ({ start: { line, character } });
const early = {
  severity: 2,
  message: "`clear` needs 2 h and had 1 h\nIt stays soft.\nWait 2 h.",
  code: "recoat-too-early",
  range: at(11, 2),
};
const unread = { severity: 1, message: "expected a field", code: "syntax", range: at(0, 0) };

test("the problem matcher of the extension reads each line", () => {
  const { contributes } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
  const pattern = new RegExp(contributes.problemMatchers[0].pattern.regexp, "u");
  expect(pattern.exec(lineOf("mill/tables.finish", early))?.slice(1)).toEqual([
    "mill/tables.finish",
    "12",
    "3",
    "warning",
    "`clear` needs 2 h and had 1 h",
    "recoat-too-early",
  ]);
});

test("an error fails the check, a warning only where that is asked for", () => {
  const warned = [{ label: "a.finish", items: [early] }];
  expect(checkText(warned, false).fails).toBe(false);
  expect(checkText(warned, true).fails).toBe(true);
  expect(checkText([...warned, { label: "b.finish", items: [unread] }], false).fails).toBe(true);
});

test("the last lines count, and say what a check is not", () => {
  expect(
    checkText(
      [
        { label: "a.finish", items: [early, unread] },
        { label: "b.finish", items: [] },
      ],
      false,
    ).lines,
  ).toMatchInlineSnapshot(`
    [
      "a.finish:12:3: warning: \`clear\` needs 2 h and had 1 h [recoat-too-early]",
      "a.finish:1:1: error: expected a field [syntax]",
      "2 files checked: 1 error, 1 warning.",
      "Labels, safety data sheets and local rules come first: this advises, and certifies nothing as safe.",
    ]
  `);
  expect(checkText([{ label: "a.finish", items: [] }], false).lines[0]).toBe("1 file checked: no findings.");
});

test("information is counted as people say it", () => {
  const told = { ...early, severity: 3 };
  const { lines } = checkText([{ label: "a.finish", items: [told, told] }], true);
  expect(lines.at(-2)).toBe("1 file checked: 2 information.");
});
