/**
 * Paths between files as `use` lines write them.
 */
import type { FileId } from "../core/place.ts";

/** The way from one file to another, with `/`; ids are paths or addresses. Undefined between two drives or hosts. */
export function relativePath(from: FileId, to: FileId): string | undefined {
  const here = from.replaceAll("\\", "/").split("/");
  const there = to.replaceAll("\\", "/").split("/");
  const scheme = SCHEME.exec(from)?.[0];
  if (scheme !== SCHEME.exec(to)?.[0]) return undefined;
  const isAddress = scheme !== undefined;
  // `file:`, nothing, host; or a drive: what must be the same.
  const root = isAddress ? 3 : /^[A-Za-z]:$/u.test(here[0] ?? "") ? 1 : 0;
  if (here.slice(0, root).join("/") !== there.slice(0, root).join("/")) return undefined;
  const folder = here.slice(0, -1);
  let same = 0;
  while (same < folder.length && same < there.length - 1 && folder[same] === there[same]) same += 1;
  const parts = [...folder.slice(same).map(() => ".."), ...there.slice(same)];
  return parts.map((part) => (isAddress ? decoded(part) : part)).join("/");
}

/** Two letters at least, so that a drive is none. */
const SCHEME = /^[a-z][a-z0-9+.-]+:/iu;

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
