/**
 * What `use "pkg:NAME/FILE"` names: a recipe of a package, as npm installs packages. No path of a disk begins so, so that
 * neither is ever taken for the other.
 */

export interface PackagePath {
  /** `shared-finishes`, `@town-library/finishes`. */
  readonly name: string;
  /** In the package, with `/`: `clears/hall.finish`. */
  readonly file: string;
}

const SCHEME = "pkg:";

/** A name as npm takes it for a package, in one or two parts; a segment never begins with a point. */
const NAME = /^(?:@[\w~-][\w.~-]*\/)?[\w~-][\w.~-]*(?=\/)/u;

export const isPackagePath = (path: string): boolean => path.startsWith(SCHEME);

/** Undefined for what is no path into a package, one that leads out of it among them. Backslashes are taken for slashes. */
export function packagePath(path: string): PackagePath | undefined {
  if (!isPackagePath(path)) return undefined;
  const rest = path.slice(SCHEME.length).replaceAll("\\", "/");
  const name = NAME.exec(rest)?.[0];
  if (name === undefined || name === "node_modules") return undefined;
  const file = rest.slice(name.length + 1);
  const isInside = file.split("/").every((step) => step !== "" && step !== "." && step !== "..");
  return isInside && /[^/]\.finish$/iu.test(file) ? { name, file } : undefined;
}
