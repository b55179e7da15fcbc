/** A virtual folder: files that lie on no disk, as those of a repository that is only looked at. Read-only. */
import {
  Disposable,
  EventEmitter,
  FileSystemError,
  type FileSystemProvider,
  FileType,
  workspace,
} from "vscode";

/** Lets the editor find the texts under `vscode-vfs://memory/NAME` until it is disposed of. */
export const serveMemoryFolder = (texts: ReadonlyMap<string, string>): Disposable => {
  const bytesOf = (path: string): Uint8Array => {
    const text = texts.get(path.slice(1));
    if (text === undefined) throw FileSystemError.FileNotFound(path);
    return new TextEncoder().encode(text);
  };
  const readOnly = (): never => {
    throw FileSystemError.NoPermissions("read-only");
  };
  const provider: FileSystemProvider = {
    onDidChangeFile: new EventEmitter<never>().event,
    watch: () => new Disposable(() => {}),
    stat: ({ path }) =>
      path === "/"
        ? { type: FileType.Directory, ctime: 0, mtime: 0, size: 0 }
        : { type: FileType.File, ctime: 0, mtime: 0, size: bytesOf(path).length },
    readDirectory: () => [...texts.keys()].map((name) => [name, FileType.File]),
    readFile: ({ path }) => bytesOf(path),
    createDirectory: readOnly,
    writeFile: readOnly,
    delete: readOnly,
    rename: readOnly,
  };
  return workspace.registerFileSystemProvider("vscode-vfs", provider, { isReadonly: true });
};
