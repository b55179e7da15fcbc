/**
 * One number for the state of everything that findings depend on: texts and settings.
 *
 * Whoever changes something bumps it; whoever has worked something out can tell by it whether that still holds, and
 * whoever waits for news can wait without asking again and again.
 */
import type { CancellationToken } from "vscode-languageserver";
import type { FileId } from "../core/place.ts";

/**
 * `edit`: the text of an open file changed, and a client that shows it asks again by itself. `plans`: jobs of these files
 * were planned, and it must be told. `other`: it must be told of anything else.
 */
export type Change =
  | { readonly kind: "edit"; readonly file: FileId }
  | { readonly kind: "plans"; readonly files: ReadonlySet<FileId> }
  | { readonly kind: "other" };

export interface Changes {
  readonly generation: number;
  bump(change: Change): void;
  listen(listener: (change: Change) => void): void;
  /** Resolves when the generation is another than `seen`, or when the token is cancelled. */
  after(seen: number, token: CancellationToken): Promise<void>;
}

export const createChanges = (): Changes => {
  let generation = 0;
  const listeners: ((change: Change) => void)[] = [];
  const waiting = new Set<() => void>();
  return {
    get generation() {
      return generation;
    },
    bump(change) {
      generation += 1;
      for (const wake of [...waiting]) wake();
      for (const listener of listeners) listener(change);
    },
    listen(listener) {
      listeners.push(listener);
    },
    after(seen, token) {
      if (generation !== seen || token.isCancellationRequested) return Promise.resolve();
      return new Promise((resolve) => {
        const cancelled = token.onCancellationRequested(() => wake());
        const wake = () => {
          waiting.delete(wake);
          cancelled.dispose();
          resolve();
        };
        waiting.add(wake);
      });
    },
  };
};
