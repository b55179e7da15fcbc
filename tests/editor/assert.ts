/** The few assertions of the editor tests, since a browser has no `node:assert`. */

export function ok(value: unknown, message = "is not so"): asserts value {
  if (!value) throw new Error(message);
}

export const strictEqual = (actual: unknown, expected: unknown, message = "they differ"): void =>
  ok(Object.is(actual, expected), `${message}: ${JSON.stringify(actual)} is not ${JSON.stringify(expected)}`);

export const match = (text: string, pattern: RegExp): void =>
  ok(pattern.test(text), `${pattern} does not match\n${text}`);

/** For plain data, compared as it is written. */
export const same = (actual: unknown, expected: unknown): void =>
  strictEqual(JSON.stringify(actual), JSON.stringify(expected));

export const fails = async (action: PromiseLike<unknown>, pattern: RegExp): Promise<void> => {
  const outcome = await Promise.resolve(action).then(
    () => "did not fail",
    (error: unknown) => (error instanceof Error ? error.message : String(error)),
  );
  match(outcome, pattern);
};
