/** Which file a `use` path means, for programs whose files have names and no folders. */
export const resolve = (from: string, path: string): string => {
  try {
    return new URL(path, `file:///${from}`).pathname.slice(1);
  } catch {
    return path;
  }
};
