/** A long list in parts, for a client that has asked for them: it shows the first while the rest is on its way. */
import { partsFor } from "./progress.ts";
import type { Session } from "./session.ts";

export const PART = 100;

/** What is left to answer: all of it without a token, nothing where every part has been sent. */
export const inParts = <T>(
  { connection }: Session,
  params: { readonly partialResultToken?: string | number },
  items: T[],
): T[] => {
  const tell = items.length > PART ? partsFor(connection, params) : undefined;
  if (tell === undefined) return items;
  for (let at = 0; at < items.length; at += PART) tell(items.slice(at, at + PART));
  return [];
};
