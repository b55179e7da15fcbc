/**
 * Whether two large values are the same, as `toEqual` has it. Node compares trees and answers in a tenth of the time;
 * only what it finds different is looked at by `toEqual`, which lets members that are undefined pass, and says what differs.
 */
import { isDeepStrictEqual } from "node:util";
import { expect } from "vitest";

export function expectSame(actual: unknown, expected: unknown, about?: string): void {
  if (!isDeepStrictEqual(actual, expected)) expect(actual, about).toEqual(expected);
}

/** Whether a value is among others, as `toContainEqual` has it. */
export function expectAmong(all: readonly unknown[], one: unknown): void {
  if (!all.some((each) => isDeepStrictEqual(each, one))) expect(all).toContainEqual(one);
}
