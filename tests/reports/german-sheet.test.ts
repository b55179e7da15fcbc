/** A sheet in German: its words, and those that its script says, which it carries with it. */
import { parse } from "parse5";
import { afterEach, expect, test } from "vitest";
import { speak } from "../../grammar/src/translate.ts";
import { languageOf } from "../../server/src/lsp/language.ts";
import { sheetDocument } from "../../server/src/reports/sheet-document.ts";
import { sheetsHtml } from "../../server/src/reports/sheet-html.ts";
import { orderOf, type PageStep } from "../../server/src/reports/sheet-page/bench-now.ts";
import { liveTexts } from "../../server/src/reports/sheet-page/live-texts.ts";
import { momentText } from "../../server/src/reports/sheet-page/time-texts.ts";
import { SHEET_SCRIPT_TEXTS } from "../../server/src/reports/sheet-script.generated.ts";
import { packedTexts } from "../../server/tools/texts.ts";
import { analyse } from "../harness/check-text.ts";

const SHELF = `piece shelf {
  surface board {
    shape panel 800 mm x 300 mm
    wood  beech
  }
}
recipe clear_coat {
  layer waterborne_polyurethane
  wait  until cured
}
job shelves {
  piece shelf
  apply clear_coat to board
}
`;

const sheet = (text = SHELF): string =>
  sheetsHtml(
    analyse({ "test.finish": text })
      .sheets("test.finish")
      .map((each) => sheetDocument(each, "test.finish", ({ file }) => file)),
  );

const german = () => languageOf("de", JSON.parse(packedTexts("de")));

const CARRIED = /<script type="application\/json" data-texts>(.*)<\/script>/u;

afterEach(() => speak(undefined));

test("an English sheet carries no texts", () => {
  expect(sheet()).not.toMatch(CARRIED);
});

test("a German sheet is German, well formed, and carries all that its script says", () => {
  speak(german());
  const html = sheet();
  const errors: string[] = [];
  parse(html, { onParseError: ({ code }) => errors.push(code) });
  expect(errors).toEqual([]);
  expect(html).toContain('<html lang="de">');
  expect(html).toContain(">Vor dem Beginn</h2>");
  const texts = JSON.parse(CARRIED.exec(html)![1]!);
  expect(Object.keys(texts).toSorted()).toEqual(SHEET_SCRIPT_TEXTS.split(" ").toSorted());
});

test("no text that is carried ends its element", () => {
  const key = SHEET_SCRIPT_TEXTS.split(" ")[0]!;
  speak({ tag: "de", template: () => undefined, keyed: (each) => (each === key ? "</script>" : undefined) });
  expect(JSON.parse(CARRIED.exec(sheet())![1]!)).toEqual({ [key]: "</script>" });
});

test("what is to be done is said in German, with what is worn and what can hurt", () => {
  speak(german());
  const step: PageStep = {
    title: "Klarlack",
    where: "Brett",
    surfaces: ["board"],
    pieces: ["0"],
    isCoat: true,
    use: "",
    wear: ["gloves"],
    dangers: ["fumes"],
    checks: [],
    waitH: 2,
    isCured: false,
    isUnknown: false,
    isLeftOn: false,
  };
  const texts = liveTexts(orderOf([step]), () => undefined, "2027-03-08T09:05");
  expect(texts.more).toEqual(["Brett", "Tragen: Handschuhe."]);
  expect(texts.waits).toEqual([
    ["Bis 11:05, wenn es jetzt getan wird", "Danach nicht berühren, Dauer: 2\u00a0h."],
  ]);
  expect(texts.risks).toEqual([["Dämpfe: weiter lüften", ""]]);
  expect(texts.button).toBe("Getan");
  expect(momentText("2027-04-12T10:00")).toBe("Mo\u00a012.\u00a0Apr.\u00a010:00");
});

const COATS = `${SHELF.replace("layer waterborne_polyurethane", "layer clear_coat_x x 3, between wait until recoat")}
material clear_coat_x "Clear" {
  family   waterborne polyurethane
  covers   10 m2/L
  recoat   2 h to 24 h
  pot_life 4 h
}
`;

test("how long a mix lasts stands with its line, and a remedy at the coat that it is for", () => {
  const partsOf = (html: string) => ({
    soon: html.split("<small>").filter((part) => /^(?:Use the mix within|Die Mischung innerhalb)/u.test(part))
      .length,
    sanded: [...html.matchAll(/data-checks="([^"]*)"/gu)].filter(([, checks]) =>
      /before coat|vor Schicht/u.test(checks!),
    ).length,
  });
  const english = partsOf(sheet(COATS));
  expect(english.soon).toBe(3);
  expect(english.sanded).toBe(1);
  speak(german());
  expect(partsOf(sheet(COATS))).toEqual(english);
});
