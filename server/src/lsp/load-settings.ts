/** Gets the settings from the client, by asking where it can be asked, and says what is wrong with them. */

import { shownLines } from "../escape/shown-text.ts";
import { loadFolderFiles } from "./folder-files.ts";
import { METHODS } from "./protocol.ts";
import type { Session } from "./session.ts";
import { readSettings } from "./settings.ts";

const SECTION = "finishwright";

/** `sent` is what came with the news of a change; a client that can be asked sends nothing of use there. */
export const loadSettings = async (session: Session, sent?: unknown): Promise<void> => {
  const section: unknown = session.facts.configurationRequest
    ? await session.connection.configuration(SECTION)
    : sectionOf(sent);
  const { settings, complaints } = readSettings(section);
  for (const complaint of complaints) session.connection.warn(shownLines(complaint));
  if (JSON.stringify(settings) === JSON.stringify(session.settings)) return;
  const isOtherDay = settings.today !== session.settings.today;
  session.settings = settings;
  if (isOtherDay) session.files.setToday(settings.today);
  session.allowed.setAlso(settings.readAlso);
  session.changes.bump({ kind: "other" });
};

/** What is no part of the folders may be other than before. */
export const changeSettings = async (session: Session, sent: unknown): Promise<void> => {
  const before = session.settings.exclude;
  await loadSettings(session, sent);
  if (JSON.stringify(session.settings.exclude) !== JSON.stringify(before)) await loadFolderFiles(session);
};

export const registerForSettings = async (session: Session): Promise<void> => {
  if (!session.facts.configurationRegistration) return;
  await session.connection.register(METHODS.configurationChanged, { section: SECTION });
};

const sectionOf = (sent: unknown): unknown =>
  typeof sent === "object" && sent !== null ? Reflect.get(sent, SECTION) : undefined;
