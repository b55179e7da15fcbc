/**
 * The Web Worker that the language server runs in: one for a window, started again when the server is.
 *
 * A worker whose script cannot be loaded says so by an event and nothing else, and the client would wait for its first
 * answer for ever. So the server posts a word of its own when it is there, and only then is the worker handed on.
 *
 * A worker that computes without end cannot be told to stop. It is watched from here: a request that it leaves without a
 * word is named, and in the end the worker is ended, upon which the client starts another.
 */
import {
  BrowserMessageReader,
  BrowserMessageWriter,
  type DataCallback,
  type Disposable,
  type Message,
  type MessageTransports,
} from "vscode-languageclient/browser";
import { WORKER_IS_READY } from "../../server/src/lsp/custom-requests.ts";
import { createSilenceWatch, type SilenceWatch } from "./silence-watch.ts";

/** As much of the browser's own as is used here; the project's types are those of Node. */
declare class Worker {
  constructor(script: string, options: { readonly name: string });
  onmessage: ((event: { readonly data: unknown }) => void) | null;
  onerror: ((event: { readonly message?: string }) => void) | null;
  terminate(): void;
}

/** A tick of the watch; 2 of silence are worth a word, and 12 are the end. */
const TICK_MS = 5000;
const BUSY_TICKS = 2;
const HANG_TICKS = 12;

export interface WorkerNews {
  /** What was asked for and has not been answered for a while, by the methods of the protocol. */
  readonly busy: (methods: readonly string[]) => void;
  /** The same, when the worker is ended for it. */
  readonly ended: (methods: readonly string[]) => void;
}

interface Running {
  readonly worker: Worker;
  readonly stopWatching: () => void;
}

let running: Running | undefined;

/**
 * Resolves when the server in it listens. The worker before, if there is one still, is ended. What comes back is the two
 * ways of talking and not the worker, since the editor puts a `Worker` of its own in the place of the browser's, and the
 * client would not know it again.
 */
export const startWorker = (script: string, news: WorkerNews): Promise<MessageTransports> => {
  endWorker();
  const worker = new Worker(script, { name: "Finishwright language server" });
  running = { worker, stopWatching: () => {} };
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }) => {
      if (data === WORKER_IS_READY) resolve(watchedTransports(worker, news));
    };
    worker.onerror = ({ message }) => {
      reject(new Error(`The language server could not be loaded from ${script}. ${message ?? ""}`.trim()));
    };
  });
};

export const endWorker = (): void => {
  running?.stopWatching();
  running?.worker.terminate();
  running = undefined;
};

function watchedTransports(worker: Worker, news: WorkerNews): MessageTransports {
  const watch = createSilenceWatch({
    busyTicks: BUSY_TICKS,
    hangTicks: HANG_TICKS,
    onBusy: news.busy,
    onHang: (methods) => {
      endWorker();
      news.ended(methods);
      reader.close();
    },
  });
  const reader = new WatchedReader(worker, watch);
  const timer = setInterval(watch.tick, TICK_MS);
  running = { worker, stopWatching: () => clearInterval(timer) };
  return { reader, writer: new WatchedWriter(worker, watch) };
}

class WatchedReader extends BrowserMessageReader {
  private readonly watch: SilenceWatch;

  constructor(worker: Worker, watch: SilenceWatch) {
    super(worker);
    this.watch = watch;
  }

  override listen(callback: DataCallback): Disposable {
    return super.listen((message) => {
      this.watch.received(message);
      callback(message);
    });
  }

  /** Tells the client that nothing more will come. */
  close(): void {
    this.fireClose();
  }
}

class WatchedWriter extends BrowserMessageWriter {
  private readonly watch: SilenceWatch;

  constructor(worker: Worker, watch: SilenceWatch) {
    super(worker);
    this.watch = watch;
  }

  override write(message: Message): Promise<void> {
    this.watch.sent(message);
    return super.write(message);
  }
}
