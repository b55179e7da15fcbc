/**
 * The task "check": all recipes of the open folders, as the command line checks them and in the lines that it writes, so that
 * the problem matcher of the extension reads them. The server that is running does the work.
 */
import {
  CustomExecution,
  type Disposable,
  EventEmitter,
  l10n,
  type Pseudoterminal,
  Task,
  TaskGroup,
  TaskScope,
  tasks,
  workspace,
} from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { findingsCount } from "./findings-count.ts";

export const TASK_TYPE = "finishwright";
const CHECK = "check";

/** The numbers of the protocol, in the words of the command line. */
const LEVELS = ["error", "warning", "information", "hint"] as const;
type Level = (typeof LEVELS)[number];

/** A diagnostic as the protocol sends it. */
interface Found {
  readonly severity?: number;
  readonly message: string;
  readonly code?: number | string;
  readonly range: { readonly start: { readonly line: number; readonly character: number } };
}

export interface Checked {
  /** As the person sees it: from the open folder. */
  readonly label: string;
  readonly items: readonly Found[];
}

interface Report {
  readonly items: readonly {
    readonly kind: string;
    readonly uri: string;
    readonly items?: readonly Found[];
  }[];
}

const levelOf = ({ severity = 1 }: Found): Level => LEVELS[severity - 1] ?? "error";

/** `tables.finish:12:3: warning: The headline [rule]` */
export const lineOf = (label: string, found: Found): string => {
  const { line, character } = found.range.start;
  const [headline = ""] = found.message.split("\n");
  return `${label}:${line + 1}:${character + 1}: ${levelOf(found)}: ${headline} [${found.code ?? "finding"}]`;
};

/** What a check says, and whether it fails: an error does, and with `warnings` a warning as well. */
export const checkText = (
  files: readonly Checked[],
  warnings: boolean,
): { readonly lines: readonly string[]; readonly fails: boolean } => {
  const all = files.flatMap(({ label, items }) => items.map((found) => ({ label, found })));
  const levels = all.map(({ found }) => levelOf(found));
  const told = all.length === 0 ? "no findings" : findingsCount(levels.map((level) => LEVELS.indexOf(level)));
  const recipes = `${files.length} file${files.length === 1 ? "" : "s"}`;
  return {
    lines: [
      ...all.map(({ label, found }) => lineOf(label, found)),
      `${recipes} checked: ${told}.`,
      "Labels, safety data sheets and local rules come first: this advises, and certifies nothing as safe.",
    ],
    fails: levels.some((level) => level === "error" || (warnings && level === "warning")),
  };
};

export const registerCheckTask = (client: BaseLanguageClient): Disposable =>
  tasks.registerTaskProvider(TASK_TYPE, {
    provideTasks: () => [checkTask(client, { type: TASK_TYPE, task: CHECK })],
    resolveTask: ({ definition }) =>
      definition.task === CHECK
        ? checkTask(client, { ...definition, type: TASK_TYPE, task: CHECK })
        : undefined,
  });

interface CheckDefinition {
  readonly type: string;
  readonly task: string;
  /** A warning fails the check as an error does. */
  readonly warnings?: boolean;
}

const checkTask = (client: BaseLanguageClient, definition: CheckDefinition): Task => {
  const run = new CustomExecution(async () => terminalOf(client, definition.warnings === true));
  const task = new Task(definition, TaskScope.Workspace, l10n.t("check all recipes"), "finishwright", run, [
    "$finishwright",
  ]);
  task.group = TaskGroup.Test;
  return task;
};

const terminalOf = (client: BaseLanguageClient, warnings: boolean): Pseudoterminal => {
  const written = new EventEmitter<string>();
  const closed = new EventEmitter<number>();
  const run = async (): Promise<void> => {
    try {
      const report = await client.sendRequest<Report>("workspace/diagnostic", { previousResultIds: [] });
      const files = report.items.map(({ uri, items = [] }) => ({
        label: workspace.asRelativePath(client.protocol2CodeConverter.asUri(uri)),
        items,
      }));
      const { lines, fails } = checkText(files, warnings);
      written.fire(lines.map((line) => `${line}\r\n`).join(""));
      closed.fire(fails ? 1 : 0);
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      written.fire(
        `The check was not done: ${reason}\r\nRun “Finishwright: Restart Server”, and try again.\r\n`,
      );
      closed.fire(2);
    }
  };
  return {
    onDidWrite: written.event,
    onDidClose: closed.event,
    open: () => void run(),
    close: () => {},
  };
};
