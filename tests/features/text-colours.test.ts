/** Colours that a text gives as numbers: where they stand, what they are, and how one is written. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { colourText } from "../../server/src/features/text-colours.ts";
import { analyse } from "../harness/check-text.ts";

const coloursOf = (text: string) => analyse({ "a.finish": text }).textColours("a.finish");

describe("colours of a text", () => {
  const text =
    '# one\n\nmaterial a {\n  colour "#5b3a24"\n}\n\nmaterial b "The #fff one" {\n  colour "#0F8"\n  family oil stain\n}\n';

  test("stand where their numbers stand, quotes included", () => {
    expect(coloursOf(text).map(({ span }) => text.slice(span.start, span.end))).toEqual([
      '"#5b3a24"',
      '"#0F8"',
    ]);
  });

  test("have their channels, three digits each twice", () => {
    // 0x5b = 91, 0x3a = 58, 0x24 = 36; 0x00 = 0, 0xff = 255, 0x88 = 136.
    const [brown, green] = coloursOf(text);
    expect(brown).toMatchObject({ red: 91 / 255, green: 58 / 255, blue: 36 / 255 });
    expect(green).toMatchObject({ red: 0, green: 1, blue: 136 / 255 });
  });

  test("words are none, nor numbers of another length, nor those in titles", () => {
    expect(
      coloursOf('material c "#ab" {\n  colour "dark oak"\n}\nmaterial d {\n  colour white\n}\n'),
    ).toEqual([]);
  });
});

test("what is picked is read as what was picked", () => {
  const channel = fc.integer({ min: 0, max: 255 }).map((value) => value / 255);
  fc.assert(
    fc.property(channel, channel, channel, (red, green, blue) => {
      const text = `material a {\n  colour ${colourText({ red, green, blue })}\n}\n`;
      expect(coloursOf(text)).toMatchObject([{ red, green, blue }]);
    }),
    { seed: 20270308 },
  );
});
