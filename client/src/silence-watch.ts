/**
 * Notices that a server which was asked something says nothing any more.
 *
 * It is told of every message and of the passing of time in ticks, and keeps no clock, so that a window that sleeps, whose
 * timers sleep as well, calls nobody silent.
 */

export interface SilenceWatch {
  /** A message goes to the server. */
  sent(message: unknown): void;
  /** A message comes from the server: it is alive. */
  received(message: unknown): void;
  tick(): void;
}

export interface SilenceOptions {
  /** Ticks of silence, with a request open, after which `onBusy` is called once. */
  readonly busyTicks: number;
  /** Ticks of silence, with a request open, after which `onHang` is called once. */
  readonly hangTicks: number;
  /** Called with the methods of the requests that are open, oldest first. */
  readonly onBusy: (methods: readonly string[]) => void;
  readonly onHang: (methods: readonly string[]) => void;
}

export function createSilenceWatch({ busyTicks, hangTicks, onBusy, onHang }: SilenceOptions): SilenceWatch {
  const open = new Map<number | string, string>();
  let silent = 0;
  let isOver = false;
  return {
    sent: (message) => {
      const { id, method } = partsOf(message);
      if (id !== undefined && method !== undefined) open.set(id, method);
    },
    received: (message) => {
      silent = 0;
      const { id, method } = partsOf(message);
      if (id !== undefined && method === undefined) open.delete(id);
    },
    tick: () => {
      if (isOver) return;
      silent = open.size === 0 ? 0 : silent + 1;
      if (silent === busyTicks) onBusy([...open.values()]);
      if (silent < hangTicks) return;
      isOver = true;
      onHang([...open.values()]);
    },
  };
}

interface Parts {
  readonly id?: number | string;
  readonly method?: string;
}

/** Id and method of a message of JSON-RPC: a request has both, a response an id alone. */
function partsOf(message: unknown): Parts {
  if (typeof message !== "object" || message === null) return {};
  const id: unknown = Reflect.get(message, "id");
  const method: unknown = Reflect.get(message, "method");
  return {
    ...(typeof id === "number" || typeof id === "string" ? { id } : {}),
    ...(typeof method === "string" ? { method } : {}),
  };
}
