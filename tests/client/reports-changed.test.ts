/** One handler hears the notification, and tells all who show reports. */
import { expect, test, vi } from "vitest";
import type { BaseLanguageClient } from "vscode-languageclient";
import { listenForReports } from "../../client/src/reports-changed.ts";

vi.mock("vscode", () => ({
  EventEmitter: class {
    #listeners: (() => void)[] = [];
    event = (listener: () => void) => this.#listeners.push(listener);
    fire = () => {
      for (const listener of this.#listeners) listener();
    };
    dispose() {}
  },
}));

test("all hear of it, although a client has one handler for each notification", () => {
  let handler: (() => void) | undefined;
  const client = {
    // As the library does it: the last one counts.
    onNotification: (_: string, next: () => void) => {
      handler = next;
      return { dispose() {} };
    },
  };
  const news = listenForReports(client as unknown as BaseLanguageClient);
  const heard: string[] = [];
  news.onChange(() => heard.push("report"));
  news.onChange(() => heard.push("tree"));
  handler?.();
  expect(heard).toEqual(["report", "tree"]);
});
