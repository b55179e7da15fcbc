/** A file says in which notation it is written. */
import { describe, expect, test } from "vitest";
import { NOTATION_VERSION } from "../../grammar/src/vocabulary.ts";
import { findingsOf } from "../harness/check-text.ts";
import { formatted } from "./said.ts";

const REST = `
material clear {
  family waterborne polyurethane
}

recipe coated {
  safety dust_mask
  layer  clear x 2, between sand 320
}
`;
const messages = (head: string): readonly string[] =>
  findingsOf(head + REST)
    .filter(({ severity }) => severity === "error")
    .map(({ message }) => message);

describe("the notation of a file", () => {
  test.each([NOTATION_VERSION, "0.1", "0.0"])("%s is read, and left as it is", (version) => {
    const text = `use notation ${version}\n${REST}`;
    expect(messages(`use notation ${version}\n`)).toEqual([]);
    expect(formatted(text)).toBe(text);
    expect(formatted(`use   notation ${version} # ours\n${REST}`)).toBe(
      `use notation ${version}  # ours\n${REST}`,
    );
  });

  test.each(["0.3", "0.10", "1.0", "2"])("%s is newer than is read here", (version) => {
    const head = `use notation ${version}\n`;
    const [message, ...more] = messages(head);
    expect(more).toEqual([]);
    expect(message).toContain(`written in notation ${version}, and ${NOTATION_VERSION} is read here`);
    expect(message).toContain("Update Finishwright");
    expect(formatted(head + REST)).toBe(head + REST);
  });

  test("the version is a number", () => {
    expect(messages("use notation\n")[0]).toContain("such as `use notation 0.2`");
    expect(messages('use notation "0.2"\n')[0]).toContain("such as `use notation 0.2`");
  });
});
