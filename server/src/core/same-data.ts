/** Whether two values say the same: plain data, part by part, up to the first that differs. */

/**
 * Of objects and lists without functions, dates or circles; what is `undefined` differs from what is absent. Parts that are
 * the same objects are not gone through.
 */
export function isSameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a)) {
    if (!Array.isArray(b) || a.length !== b.length) return false;
    for (let index = 0; index < a.length; index += 1) if (!isSameData(a[index], b[index])) return false;
    return true;
  }
  return !Array.isArray(b) && hasSameParts(a as Parts, b as Parts);
}

type Parts = Readonly<Record<string, unknown>>;

function hasSameParts(a: Parts, b: Parts): boolean {
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  for (const key of keys) if (!Object.hasOwn(b, key) || !isSameData(a[key], b[key])) return false;
  return true;
}
