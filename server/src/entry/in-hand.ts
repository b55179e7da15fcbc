/**
 * What the server's own thread has in hand, in memory that the watching thread sees as well: that one looks only now and
 * then, so it is not woken for every message.
 *
 * The first number counts what is in hand. Slots follow for the newest of it: when it began (milliseconds since 1970), its
 * number (0 where the slot is free), the length of its text in bytes, the text. An old one loses its slot to a newer one,
 * since the newest are named.
 */

const SLOTS = 16;
const SLOT_BYTES = 512;
/** In a slot before the text. */
const SLOT_HEAD_BYTES = 16;
const START_BYTES = 8;

export interface SharedInHand {
  readonly memory: SharedArrayBuffer;
  readonly slotBytes: number;
  readonly slotHeadBytes: number;
  readonly startBytes: number;
}

export interface InHand {
  /** For the watching thread. */
  readonly shared: SharedInHand;
  /** Something begins; to be called when it is done. Of long texts only the beginning is kept. */
  begin(what: string): () => void;
}

export function createInHand(): InHand {
  const memory = new SharedArrayBuffer(START_BYTES + SLOTS * SLOT_BYTES);
  const whole = new Int32Array(memory);
  const times = new Float64Array(memory);
  const encoder = new TextEncoder();
  let last = 0;
  return {
    shared: { memory, slotBytes: SLOT_BYTES, slotHeadBytes: SLOT_HEAD_BYTES, startBytes: START_BYTES },
    begin(what) {
      last += 1;
      const id = last;
      const at = START_BYTES + (id % SLOTS) * SLOT_BYTES;
      const idAt = at / 4 + 2;
      Atomics.store(whole, idAt, 0);
      times[at / 8] = performance.timeOrigin + performance.now();
      const text = new Uint8Array(memory, at + SLOT_HEAD_BYTES, SLOT_BYTES - SLOT_HEAD_BYTES);
      whole[idAt + 1] = encoder.encodeInto(what, text).written;
      Atomics.store(whole, idAt, id);
      Atomics.add(whole, 0, 1);
      return () => {
        Atomics.compareExchange(whole, idAt, id, 0);
        Atomics.sub(whole, 0, 1);
      };
    },
  };
}
