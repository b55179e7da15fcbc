/** Colours for a terminal: only there, unless an option, `NO_COLOR` or `FORCE_COLOR` say otherwise. */
import picocolors from "picocolors";

export type Colours = ReturnType<typeof picocolors.createColors>;

export interface ColourFacts {
  readonly isTTY: boolean;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** What the person asked for, which goes before everything else. */
  readonly choice?: "auto" | "always" | "never";
}

/** `NO_COLOR` with any value wins; `FORCE_COLOR` with any value but `0` and `false` colours pipes and files, too. */
export function coloursFor({ isTTY, env, choice = "auto" }: ColourFacts): Colours {
  if (choice !== "auto") return picocolors.createColors(choice === "always");
  const forced = env.FORCE_COLOR;
  const isForced = forced !== undefined && forced !== "" && forced !== "0" && forced !== "false";
  const isForbidden = Boolean(env.NO_COLOR) || forced === "0" || forced === "false";
  return picocolors.createColors(!isForbidden && (isForced || (isTTY && env.TERM !== "dumb")));
}
