/**
 * What every handler works with: one client, what it can do, its settings and the texts it has.
 */

import type { AllowedFolders } from "./allowed-folders.ts";
import type { Changes } from "./changes.ts";
import type { ClientState } from "./client-state.ts";
import type { Connection } from "./connection.ts";
import type { DiagnosticCache } from "./diagnostic-cache.ts";
import type { FileReader } from "./file-reader.ts";
import type { Files } from "./files.ts";
import type { Log } from "./guard.ts";
import type { Host } from "./host.ts";
import type { Planning } from "./planning.ts";
import type { ProjectConfigs } from "./project-configs.ts";
import type { PushedDiagnostics } from "./push-diagnostics.ts";
import type { SentTokens } from "./sent-tokens.ts";
import type { Turns } from "./slices.ts";

export interface Session extends ClientState {
  readonly connection: Connection;
  readonly host: Host;
  readonly changes: Changes;
  readonly files: Files;
  readonly reader: FileReader;
  readonly allowed: AllowedFolders;
  readonly diagnostics: DiagnosticCache;
  readonly sentTokens: SentTokens;
  readonly planning: Planning;
  readonly configs: ProjectConfigs;
  readonly turns: Turns;
  /** The address of the page that explains a rule, where there is one. */
  rulePage(rule: string): string | undefined;
  /** Tells the user's output channel that something went wrong. */
  readonly log: Log;
  /** Only for a client that does not pull. */
  pushed?: PushedDiagnostics;
}
