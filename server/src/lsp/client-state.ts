/** What is known of the client, and what it wants; it introduces itself only after the server has been put together. */
import { type ClientFacts, clientFacts } from "./client-facts.ts";
import { DEFAULT_SETTINGS, type Settings } from "./settings.ts";

export interface ClientState {
  /** Known from `initialize` on, which comes before any other message. */
  facts: ClientFacts;
  settings: Settings;
  /** The addresses of the folders that are open. */
  openFolders: readonly string[];
}

/** A client that has not said anything yet. */
export const createClientState = (): ClientState => ({
  facts: clientFacts({ processId: null, rootUri: null, capabilities: {} }),
  settings: DEFAULT_SETTINGS,
  openFolders: [],
});
