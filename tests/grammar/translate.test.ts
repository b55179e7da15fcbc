/** Texts in the language of the process. */
import { afterEach, describe, expect, test } from "vitest";
import { lowerFirst, speak, spokenLanguage, t, textKey, translated } from "../../grammar/src/translate.ts";

const GERMAN: Readonly<Record<string, string>> = {
  "{0} goes over {1}": "Auf {1} kommt {0}",
  coats: "Anstriche",
};

afterEach(() => speak(undefined));

describe("a text", () => {
  test("is English where nothing else is spoken", () => {
    expect(spokenLanguage()).toBe("en");
    expect(t`${"wax"} goes over ${2} coats`).toBe("wax goes over 2 coats");
    expect(t``).toBe("");
    expect(translated("coats")).toBe("coats");
    expect(lowerFirst("Wait")).toBe("wait");
  });

  test("has its parts where the other language wants them", () => {
    speak({ tag: "de", template: (english) => GERMAN[english] });
    expect(spokenLanguage()).toBe("de");
    expect(t`${"Wachs"} goes over ${"Öl"}`).toBe("Auf Öl kommt Wachs");
    expect(translated("coats")).toBe("Anstriche");
    expect(lowerFirst("Warten")).toBe("Warten");
  });

  test("stays English where the other language has none, and does not look for places in its parts", () => {
    speak({ tag: "de", template: (english) => GERMAN[english] });
    expect(t`${"wax"} stays`).toBe("wax stays");
    expect(t`${"{1}"} goes over ${"{0}"}`).toBe("Auf {0} kommt {1}");
  });
});

// The vectors "", "a" and "foobar" of FNV-1a, 32 bits, by Landon Curt Noll's test suite (test_fnv.c), from memory.
test.each([
  ["", 0x811c9dc5],
  ["a", 0xe40c292c],
  ["foobar", 0xbf9cf968],
])("the key of “%s” has the lower 30 bits of its FNV-1a hash, six in a sign", (text, hash) => {
  // The alphabet of RFC 4648, section 5.
  const signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
  const value = [...textKey(text)].reduceRight((sum, sign) => sum * 64 + signs.indexOf(sign), 0);
  expect(textKey(text)).toHaveLength(5);
  expect(value).toBe(hash % 2 ** 30);
});
