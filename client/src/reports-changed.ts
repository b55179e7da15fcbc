/** News of reports, for all who show some: a client has one handler for each notification, and a second would take its place. */
import { type Disposable, type Event, EventEmitter } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { REPORTS_CHANGED } from "../../server/src/lsp/custom-requests.ts";

export interface ReportsNews extends Disposable {
  /** Reports that were asked for may be others now. */
  readonly onChange: Event<void>;
}

export const listenForReports = (client: BaseLanguageClient): ReportsNews => {
  const changed = new EventEmitter<void>();
  const listening = client.onNotification(REPORTS_CHANGED, () => changed.fire());
  return {
    onChange: changed.event,
    dispose() {
      listening.dispose();
      changed.dispose();
    },
  };
};
