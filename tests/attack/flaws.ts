/**
 * What an attack may find, and what one is: a way to draw inputs, and a check that says what went wrong on one of them.
 */
import type fc from "fast-check";
import type { FaultListener } from "../../server/src/core/internal-error.ts";

/**
 * `crash`: an exception, an `internal-error` or an end without a word. `hang`: more work than the input is worth, or no
 * answer at all. `stale`: an answer that another text was worth. `lost`: a word, comment or byte that is gone, or one
 * that came from where nothing may be read. `leak`: memory or a process that stays behind.
 */
export const FLAW_KINDS = ["crash", "hang", "stale", "lost", "leak"] as const;
export type FlawKind = (typeof FLAW_KINDS)[number];

export interface Flaw {
  readonly kind: FlawKind;
  readonly detail: string;
}

export interface Attack<Input> {
  readonly name: string;
  readonly input: fc.Arbitrary<Input>;
  /** Inputs drawn from one seed before the next seed comes. */
  readonly runs: number;
  /** Seconds of the processor that one input may take; undefined where the check itself watches what it starts. */
  readonly cpuSeconds?: number;
  check(input: Input): Promise<readonly Flaw[]>;
}

/** An exception as a flaw: its message, and the first of our own lines that it came through. */
export function crash(doing: string, error: unknown): Flaw {
  if (!(error instanceof Error)) return { kind: "crash", detail: `${doing}: ${String(error)}` };
  const frame = error.stack?.split("\n").find((line) => /\/(?:grammar|server)\//.test(line));
  const at = /((?:grammar|server)\/[^:)\s]+:\d+)/.exec(frame ?? "")?.[1];
  return { kind: "crash", detail: `${doing}: ${error.name}: ${error.message}${at ? ` (${at})` : ""}` };
}

/** Keeps what an analysis hides from people, so that no attack takes a guarded answer for a sound one. */
export function faultKeeper(): { readonly onFault: FaultListener; readonly flaws: () => readonly Flaw[] } {
  const flaws: Flaw[] = [];
  return { onFault: ({ part, error }) => flaws.push(crash(part, error)), flaws: () => flaws };
}

/** Flaws that are alike but for names and figures are one and the same. */
export const signatureOf = ({ kind, detail }: Flaw): string =>
  `${kind} ${detail
    .replace(/`[^`]*`|"[^"]*"/g, "…")
    .replace(/\d+/g, "0")
    .slice(0, 160)}`;
