/** Where a person keeps what may be thrown away at any time, by the customs of their system. */
import path from "node:path";

/** `~/.cache`, or what XDG_CACHE_HOME names (XDG Base Directory Specification 0.8); `~/Library/Caches`; `%LOCALAPPDATA%`. */
export function cacheFolder(
  env: Readonly<Record<string, string | undefined>>,
  system: NodeJS.Platform,
  home: string,
): string {
  if (system === "win32")
    return path.join(env.LOCALAPPDATA || path.join(home, "AppData", "Local"), "finishwright");
  const said = env.XDG_CACHE_HOME ?? "";
  if (path.isAbsolute(said)) return path.join(said, "finishwright");
  return path.join(home, system === "darwin" ? "Library/Caches" : ".cache", "finishwright");
}
