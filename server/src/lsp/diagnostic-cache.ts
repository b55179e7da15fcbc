/**
 * The findings of a file as the protocol's diagnostics, with a name for exactly this set of them.
 *
 * The name (`resultId`) is worked out from the diagnostics themselves, so the same findings have the same name whatever
 * happened in between, and a client that has them already is told so in one word.
 */

import type { Diagnostic } from "vscode-languageserver";
import { t } from "../../../grammar/src/translate.ts";
import { errorText } from "../core/error-text.ts";
import { faultMessage, INTERNAL_ERROR } from "../core/internal-error.ts";
import { isSameList } from "../core/once.ts";
import type { FileId } from "../core/place.ts";
import type { Changes } from "./changes.ts";
import type { ClientState } from "./client-state.ts";
import type { Files } from "./files.ts";
import type { Log } from "./guard.ts";
import { marksOf } from "./line-marks.ts";
import { DiagnosticSeverity } from "./protocol.ts";
import { isShown } from "./settings.ts";
import type { Turns } from "./slices.ts";
import { SOURCE } from "./to-lsp.ts";

export interface FileDiagnostics {
  readonly resultId: string;
  readonly items: Diagnostic[];
}

export interface DiagnosticCache {
  /** Those of this moment; an unknown file has none. */
  of(file: FileId): FileDiagnostics;
  /** Does the work for them in slices; false where something changed meanwhile, so that they would be old ones. */
  prepare(file: FileId): Promise<boolean>;
  /** What a client was last told about a file. */
  readonly delivered: Map<FileId, string>;
  /** Open files whose findings a client has asked for since they were opened. */
  readonly asked: Set<FileId>;
  /** How often a file was opened, for those who began with one that may have been closed and opened again since. */
  readonly openings: Map<FileId, number>;
  /**
   * Files that were closed, of which the client may have something else than it was told: VS Code's drops what is
   * answered of a file whose tab is gone, and passes over what it is told of all files while such an answer is on its
   * way. So the next word on all files says everything of these.
   */
  readonly doubtful: Set<FileId>;
}

/** What diagnostics are made of: the texts, and what the client can show and wants to see. */
interface DiagnosedBy {
  readonly client: ClientState;
  readonly changes: Changes;
  readonly files: Files;
  readonly turns: Turns;
  readonly log: Log;
  rulePage(rule: string): string | undefined;
}

interface Cached {
  readonly generation: number;
  readonly found: FileDiagnostics;
  /** See `basisOf`. */
  readonly basis: readonly unknown[];
}

/**
 * What the diagnostics of a file are made of; of the same objects the same diagnostics. The analyst gives the same findings
 * for another generation only where nothing has changed that they speak of.
 */
const basisOf = ({ client, files }: DiagnosedBy, file: FileId): readonly unknown[] => {
  try {
    const { analysis } = files.snapshot(file);
    return [analysis.findings(file), files.uriOf(file), client.settings, client.facts];
  } catch {
    // What fails is the basis of nothing else.
    return [{}];
  }
};

export const createDiagnosticCache = (session: DiagnosedBy): DiagnosticCache => {
  const cache = new Map<FileId, Cached>();
  return {
    delivered: new Map(),
    asked: new Set(),
    openings: new Map(),
    doubtful: new Set(),
    prepare(file) {
      const { generation } = session.changes;
      if (cache.get(file)?.generation === generation) return Promise.resolve(true);
      let begun = generation;
      return session.turns.take({
        file,
        begin() {
          // Read before, since that may be a change by itself.
          const { analysis } = session.files.snapshot(file);
          begun = session.changes.generation;
          return analysis.steps(file);
        },
        isStale: () => session.changes.generation !== begun,
      });
    },
    of(file) {
      const { generation } = session.changes;
      const cached = cache.get(file);
      if (cached?.generation === generation) return cached.found;
      if (!session.files.isKnown(file)) {
        cache.delete(file);
        return toldOf(soundDiagnosticsOf(session, file));
      }
      const basis = basisOf(session, file);
      const found =
        cached && isSameList(cached.basis, basis) ? cached.found : toldOf(soundDiagnosticsOf(session, file));
      cache.set(file, { generation, found, basis });
      return found;
    },
  };
};

const toldOf = (items: Diagnostic[]): FileDiagnostics => ({
  resultId: fingerprint(JSON.stringify(items)),
  items,
});

/** Where findings fail, that is said in their place: nothing would read as a sound text, and old ones as of this text. */
const soundDiagnosticsOf = (session: DiagnosedBy, file: FileId): Diagnostic[] => {
  try {
    return diagnosticsOf(session, file);
  } catch (error) {
    session.log(`The findings of ${file} failed: ${errorText(error)}`);
    const start = { line: 0, character: 0 };
    return [
      {
        range: { start, end: start },
        severity: DiagnosticSeverity.Error,
        source: SOURCE,
        code: INTERNAL_ERROR,
        message: faultMessage([t`The check of this file`], error),
      },
    ];
  }
};

const diagnosticsOf = (session: DiagnosedBy, file: FileId): Diagnostic[] => {
  const snapshot = session.files.snapshot(file);
  const document = snapshot.document(file);
  if (document === undefined) return [];
  const shown = snapshot.analysis
    .findings(file)
    .filter((finding) => isShown(finding.severity, session.client.settings));
  return marksOf(shown, document, snapshot, session.client.facts, session.rulePage).map(
    ({ diagnostic }) => diagnostic,
  );
};

/** FNV-1a twice, from either end: short, and two different sets share it only by a very unlikely accident. */
const fingerprint = (text: string): string => {
  let forward = 0x811c9dc5;
  let backward = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) {
    forward = Math.imul(forward ^ text.charCodeAt(index), 0x01000193);
    backward = Math.imul(backward ^ text.charCodeAt(text.length - 1 - index), 0x01000193);
  }
  return `${(forward >>> 0).toString(36)}-${(backward >>> 0).toString(36)}-${text.length.toString(36)}`;
};
