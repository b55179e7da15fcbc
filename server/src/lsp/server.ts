/**
 * The language server: one client, from `initialize` to `exit`.
 *
 * This wires the parts together and decides nothing else. The order matters in one place only: what the client can do
 * is read before anything is registered, so that a method that was not declared is not answered either.
 */

import type { InitializeParams, InitializeResult } from "vscode-languageserver";
import { speak, t } from "../../../grammar/src/translate.ts";
import { errorText } from "../core/error-text.ts";
import { shownLines } from "../escape/shown-text.ts";
import { CONFIG_FILE_NAME } from "../features/config.ts";
import { createAllowedFolders } from "./allowed-folders.ts";
import { methodsOf, serverCapabilities } from "./capabilities.ts";
import { type Changes, createChanges } from "./changes.ts";
import { clientFacts } from "./client-facts.ts";
import { createClientState } from "./client-state.ts";
import type { Connection } from "./connection.ts";
import { pageTitle } from "./custom-requests.ts";
import { createDiagnosticCache } from "./diagnostic-cache.ts";
import { createFileReader } from "./file-reader.ts";
import { Files } from "./files.ts";
import { loadFolderFiles } from "./folder-files.ts";
import { guardNotification, type Log } from "./guard.ts";
import { HANDLERS } from "./handlers.ts";
import type { Host } from "./host.ts";
import { languageOf, tagOf } from "./language.ts";
import { loadSettings, registerForSettings } from "./load-settings.ts";
import { createPlanning, planHere } from "./planning.ts";
import { showProgress } from "./progress.ts";
import { createProjectConfigs } from "./project-configs.ts";
import { METHODS } from "./protocol.ts";
import { pushDiagnostics } from "./push-diagnostics.ts";
import { refreshDiagnostics } from "./refresh-diagnostics.ts";
import { refreshViews } from "./refresh-views.ts";
import { createSentTokens } from "./sent-tokens.ts";
import type { Session } from "./session.ts";
import { createTurns, type Turns } from "./slices.ts";

/** Serves `connection` until it closes. */
export const runServer = (connection: Connection, host: Host): void => {
  const session = createSession(connection, host);
  connection.onInitialize((params) => initialize(session, params));
  const begin = guardNotification("initialized", () => initialized(session), session.log);
  connection.onInitialized(() => begin(undefined));
  connection.listen();
};

const createSession = (connection: Connection, host: Host): Session => {
  const log = (message: string): void => connection.error(shownLines(message));
  const client = createClientState();
  const changes = createChanges();
  const allowed = createAllowedFolders();
  const reader = createFileReader(host, connection, () => client.facts, allowed);
  const configs = createProjectConfigs(reader, (complaint) => connection.warn(shownLines(complaint)));
  const planning = createPlanning({
    maker: host.planMaker?.() ?? planHere,
    onNews: (planned) => files.plansChanged(planned),
    isEarly: () => files.isReading,
    onBusy: (done) => {
      if (client.facts.showsProgress) showProgress(connection, t`Planning the jobs`, done);
    },
  });
  const units = () => client.settings.units;
  const files = new Files({ host, reader, changes, configs, units, allowed, planning, log });
  // The client knows best what it can show; without a word from it, it is the page that lies beside the server.
  const rulePage = (rule: string): string | undefined =>
    client.facts.rulePages === undefined
      ? host.rulePage(rule)
      : `${client.facts.rulePages}/${encodeURIComponent(client.facts.pageTitles ? pageTitle(rule) : `${rule}.md`)}`;
  const turns = createTurns(() => files.visible);
  readOpened(files, changes, turns, log);
  const diagnostics = createDiagnosticCache({ client, changes, files, turns, log, rulePage });
  const sentTokens = createSentTokens();
  // The state stays one object: what `initialize` and the settings put into it, all parts see.
  return Object.assign(client, {
    connection,
    host,
    changes,
    files,
    allowed,
    log,
    rulePage,
    diagnostics,
    sentTokens,
    planning,
    configs,
    reader,
    turns,
  });
};

/** Texts that are opened together come in within this time, and that which a person looks at is asked about. */
export const OPENING_MS = 50;

/** Has the opened texts read that nobody asks about, when there is nothing else to do. */
const readOpened = (files: Files, changes: Changes, turns: Turns, log: Log): void => {
  let isRunning = false;
  changes.listen(() => {
    if (isRunning || !files.isReading) return;
    isRunning = true;
    new Promise((resolve) => setTimeout(resolve, OPENING_MS))
      .then(() => turns.take({ begin: () => files.readRest(), isStale: () => false }))
      .catch((error: unknown) => log(`Reading the opened files failed: ${errorText(error)}`))
      .finally(() => {
        isRunning = false;
      });
  });
};

/** Texts are in the client's language from here on, where there is a table for it. */
const speakAs = (locale: unknown, { facts, host }: Session): void => {
  const tag = tagOf(locale);
  speak(tag === undefined ? undefined : languageOf(tag, facts.texts ?? host.texts?.(tag)));
};

const initialize = (session: Session, params: InitializeParams): InitializeResult => {
  session.facts = clientFacts(params);
  speakAs(params.locale, session);
  const { processId } = params;
  if (typeof processId === "number" && Number.isInteger(processId) && processId > 0)
    session.host.watchClient?.(processId);
  session.openFolders = session.facts.openFolders;
  session.allowed.changeWorkspace(session.openFolders, []);
  session.allowed.trust(session.facts.isTrusted);
  const capabilities = serverCapabilities(session.facts);
  const methods = methodsOf(capabilities);
  for (const handler of HANDLERS) {
    if (methods.includes(handler.method)) handler.register(session.connection, session);
  }
  if (!session.facts.pullsDiagnostics) session.pushed = pushDiagnostics(session);
  else if (session.facts.refreshesDiagnostics) refreshDiagnostics(session);
  refreshViews(session);
  return { capabilities, serverInfo: { name: "Finishwright", version: session.host.version } };
};

/** From here on the client may be asked. What it refuses is done without, and said in the log. */
const initialized = async (session: Session): Promise<void> => {
  const settings = loadSettings(session);
  const asked = [
    settings,
    registerForSettings(session),
    watchFiles(session),
    loadFolderFiles(session, settings),
  ];
  for (const outcome of await Promise.allSettled(asked)) {
    if (outcome.status === "rejected") session.log(`The client refused: ${errorText(outcome.reason)}`);
  }
};

const watchFiles = async (session: Session): Promise<void> => {
  if (!session.facts.watchedFilesRegistration) return;
  await session.connection.register(METHODS.filesChanged, {
    watchers: [{ globPattern: "**/*.finish" }, { globPattern: `**/${CONFIG_FILE_NAME}` }],
  });
};
