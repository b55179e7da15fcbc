/** What other extensions, and the tests, get from `activate`: small, and numbered so that it can be relied on. */
export interface FinishwrightApi {
  /** Goes up when something here is taken away or comes to mean something else. */
  readonly version: 1;
  /** Resolves when the language server answers for the first time; rejects when it could not be started. */
  readonly ready: Promise<void>;
}
