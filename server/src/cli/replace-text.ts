/**
 * Puts a new text in the place of a file's, so that at no moment there is half a text and none is lost.
 *
 * The text is written beside the file and then given its name. The file is left alone when somebody has changed it since
 * it was read, or has no right to write it; a link stays a link, and the mode stays what it was.
 */
import { randomUUID } from "node:crypto";
import {
  access,
  constants,
  copyFile,
  type FileHandle,
  link,
  open,
  readFile,
  realpath,
  rename,
  rm,
  stat,
} from "node:fs/promises";
import path from "node:path";
import type { FileText } from "../reading/decode-text.ts";
import type { WriteOutcome } from "./io.ts";

export async function replaceText(file: string, read: FileText, text: string): Promise<WriteOutcome> {
  try {
    const mark = read.mark ?? "";
    if (!(await replaceBytes(file, Buffer.from(mark + read.text), mark + text))) {
      return { reason: "has changed since it was read and is left as it is. Format it again" };
    }
    return undefined;
  } catch (error) {
    return { reason: writeReasonOf(error) };
  }
}

/** The same for any file; false when what is there is no longer what was `read`. */
export async function replaceBytes(file: string, read: Buffer, text: string): Promise<boolean> {
  const real = await realpath(file);
  await access(real, constants.W_OK);
  const { mode, uid, gid } = await stat(real);
  if (!(await readFile(real)).equals(read)) return false;
  await writeBeside(real, text, {
    mode: 0o600,
    async before(handle) {
      // Only a superuser may give a file away; everybody else owns what they may write here.
      await handle.chown(uid, gid).catch(() => undefined);
      await handle.chmod(mode & 0o7777);
    },
    settle: (temporary) => rename(temporary, real),
  });
  return true;
}

/** Makes a file of this name with this text, at once and whole; fails with `EEXIST` where there is one by now. */
export const createFile = (file: string, text: string): Promise<void> =>
  writeBeside(file, text, {
    mode: 0o666,
    async settle(temporary) {
      try {
        // Unlike a renaming, a second name never takes the place of what somebody has made meanwhile.
        await link(temporary, file);
      } catch (error) {
        if (!NO_SECOND_NAMES.has(String(codeOf(error)))) throw error;
        await copyFile(temporary, file, constants.COPYFILE_EXCL);
      }
      await rm(temporary, { force: true });
    },
  });

/** What file systems without links of this kind answer. */
const NO_SECOND_NAMES: ReadonlySet<string> = new Set(["EPERM", "ENOTSUP", "EOPNOTSUPP", "ENOSYS", "EMLINK"]);

interface Manner {
  readonly mode: number;
  readonly before?: (handle: FileHandle) => Promise<void>;
  /** Gives what was written its name. */
  readonly settle: (temporary: string) => Promise<void>;
}

async function writeBeside(file: string, text: string, { mode, before, settle }: Manner): Promise<void> {
  const temporary = path.join(path.dirname(file), `.finishwright-${randomUUID()}.tmp`);
  try {
    const handle = await open(temporary, "wx", mode);
    try {
      await handle.writeFile(text);
      await before?.(handle);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await settle(temporary);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
}

const codeOf = (error: unknown): unknown => (error instanceof Error ? Reflect.get(error, "code") : undefined);

/** Why a file was not written, as the end of a sentence that begins with the file. */
export function writeReasonOf(error: unknown): string {
  switch (codeOf(error)) {
    case "EACCES":
    case "EPERM":
    case "EROFS":
      return "may not be written: you have no permission for it or its folder. Ask for it, or leave the file out";
    case "ENOSPC":
    case "EDQUOT":
      return "was not written: the disk is full. It is left as it was";
    case "ENAMETOOLONG":
      return "cannot be written: its name is too long. Give a shorter one";
    default:
      return `cannot be written: ${error instanceof Error ? error.message : String(error)}. It is left as it was`;
  }
}
