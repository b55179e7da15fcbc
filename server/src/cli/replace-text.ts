/**
 * Puts a new text in the place of a file's, so that at no moment there is half a text and none is lost.
 *
 * The text is written beside the file and then given its name. The file is left alone when somebody has changed it since
 * it was read, or has no right to write it; a link stays a link, and the mode stays what it was.
 */
import { randomUUID } from "node:crypto";
import { access, constants, open, readFile, realpath, rename, rm, stat } from "node:fs/promises";
import path from "node:path";
import type { FileText } from "../reading/decode-text.ts";
import type { WriteOutcome } from "./io.ts";

export async function replaceText(file: string, read: FileText, text: string): Promise<WriteOutcome> {
  try {
    const real = await realpath(file);
    await access(real, constants.W_OK);
    const mark = read.mark ?? "";
    if (!(await readFile(real)).equals(Buffer.from(mark + read.text))) {
      return { reason: "has changed since it was read and is left as it is. Format it again" };
    }
    await writeBeside(real, mark + text);
    return undefined;
  } catch (error) {
    return { reason: reasonOf(error) };
  }
}

async function writeBeside(file: string, text: string): Promise<void> {
  const temporary = path.join(path.dirname(file), `.finishwright-${randomUUID()}.tmp`);
  try {
    const { mode, uid, gid } = await stat(file);
    const handle = await open(temporary, "wx", 0o600);
    try {
      await handle.writeFile(text);
      // Only a superuser may give a file away; everybody else owns what they may write here.
      await handle.chown(uid, gid).catch(() => undefined);
      await handle.chmod(mode & 0o7777);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(temporary, file);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
}

function reasonOf(error: unknown): string {
  const code = error instanceof Error ? Reflect.get(error, "code") : undefined;
  switch (code) {
    case "EACCES":
    case "EPERM":
    case "EROFS":
      return "may not be written: you have no permission for it or its folder. Ask for it, or leave the file out";
    case "ENOSPC":
    case "EDQUOT":
      return "was not written: the disk is full. It is left as it was";
    default:
      return `cannot be written: ${error instanceof Error ? error.message : String(error)}. It is left as it was`;
  }
}
