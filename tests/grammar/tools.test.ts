/** Tokens, positions, names and the editor's grammar: what the layers above build on. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lex } from "../../grammar/src/lexer.ts";
import { createLineIndex, positionAt } from "../../grammar/src/line-index.ts";
import { namesOf } from "../../grammar/src/names.ts";
import { parseDeclaration, parseFile } from "../../grammar/src/parse.ts";
import { textMateGrammar } from "../../grammar/src/textmate.ts";
import {
  matches,
  NumberToken,
  Space,
  TOKEN_TABLE,
  To,
  type TokenType,
  UnclosedString,
  Up,
  unclosedLength,
  Word,
} from "../../grammar/src/tokens.ts";
import { absoluteSpan, locate } from "../../grammar/src/walk.ts";
import { offsetAt } from "../oracles/offset-at.ts";
import { anyText, edited } from "./any-text.ts";
import { declarations } from "./declarations.ts";

/** The tokens of a text that are no blanks: `kind:text`. */
function tokensOf(text: string): string[] {
  return lex(text)
    .filter((token) => token.kind !== "space")
    .map((token) => `${token.kind}:${token.text}`);
}

/** Reads a text by the table alone, its patterns tried one after the other at every place. */
function byTable(text: string): string[] {
  const types: TokenType[] = [];
  const read: string[] = [];
  for (let start = 0; start < text.length; ) {
    const last = types.at(-1);
    const isAfterNumber = (last === Space ? types.at(-2) : last) === NumberToken;
    const found = TOKEN_TABLE.map(({ type, pattern, where, isOne }) => {
      pattern.lastIndex = start;
      const fits = where === undefined || (where === "at-number" ? last === NumberToken : isAfterNumber);
      const whole = fits ? pattern.exec(text)?.[0] : undefined;
      if (whole === undefined || (isOne && !isOne(whole))) return undefined;
      return { type, written: type === UnclosedString ? whole.slice(0, unclosedLength(whole)) : whole };
    }).find((match) => match !== undefined)!;
    types.push(found.type);
    read.push(`${found.type.kind}:${found.written}`);
    start += found.written.length;
  }
  return read;
}

describe("the lexer", () => {
  it("finds what the patterns of the table find", () => {
    const texts = fc.oneof(
      anyText,
      edited,
      fc
        .array(fc.constantFrom(...'0019.:/- \t"\\{}#°%²mhxXéª\u0301\u00a0\ufeff\u{1f600}_\r\n'), {
          maxLength: 30,
        })
        .map((signs) => signs.join("")),
    );
    fc.assert(
      fc.property(texts, (text) => {
        expect(lex(text).map((token) => `${token.kind}:${token.text}`)).toEqual(byTable(text));
      }),
      { numRuns: 700, seed: 20270308 },
    );
  });

  it("gives the words that mean something in a line a type of their own, within that of words", () => {
    expect(lex("up").map(({ type }) => [matches({ type }, Up), matches({ type }, Word)])).toEqual([
      [true, true],
    ]);
    expect(lex("to").map(({ type }) => [matches({ type }, To), matches({ type }, Word)])).toEqual([
      [true, false],
    ]);
  });
});

describe("tokens", () => {
  it.each([
    ["19mm", ["number:19", "unit:mm"]],
    ["1 1/2 in", ["number:1 1/2", "unit:in"]],
    ["-5 °C", ["number:-5", "unit:°C"]],
    ["2 air changes/h", ["number:2", "unit:air changes/h"]],
    ["10 m²/L", ["number:10", "unit:m²/L"]],
    ["72 hrs", ["number:72", "unit:hrs"]],
    ["72 hogsheads", ["number:72", "word:hogsheads"]],
    ["mm h", ["word:mm", "word:h"]],
    ["semi-gloss", ["word:semi-gloss"]],
    ["x 3", ["word:x", "number:3"]],
    ["10:1 09:00", ["number:10", "punctuation::", "number:1", "time:09:00"]],
    ["2027-03-08", ["date:2027-03-08"]],
    ['"a # \\" b" # c', ['string:"a # \\" b"', "comment:# c"]],
    ['"open {', ['string:"open', "punctuation:{"]],
    ["## d", ["doc-comment:## d"]],
    ["größe_2", ["word:größe_2"]],
    ["😀", ["unknown:😀"]],
    ["\0\0\0 @@!", ["unknown:\0\0\0", "unknown:@@", "unknown:!"]],
  ])("%s", (text, tokens) => {
    expect(tokensOf(text)).toEqual(tokens);
  });

  it("take in every character there is", () => {
    for (let code = 0; code < 0x11_0000; code += code < 0x1_0000 ? 1 : 97) {
      const text = `3 ${String.fromCodePoint(code)} a`;
      const image = lex(text)
        .map((token) => token.text)
        .join("");
      if (image !== text) {
        expect.fail(`U+${code.toString(16)}`);
      }
    }
  });
});

describe("positions", () => {
  const text = "a\r\nbc\rd\n";
  const index = createLineIndex(text);

  it("go there and back", () => {
    expect(positionAt(index, 4)).toEqual({ line: 1, column: 1 });
    expect(positionAt(index, 99)).toEqual({ line: 3, column: 0 });
    expect(offsetAt(index, { line: 2, column: 0 })).toBe(6);
    expect(offsetAt(index, { line: 0, column: 99 })).toBe(1);
    expect(offsetAt(index, { line: 9, column: 0 })).toBe(text.length);
  });
});

const FILE = `# head

recipe r(clear: material = shellac, n: number = 3) {
  step clean with soap, takes 3 min
  layer clear x n, by pad {
    wait until recoat
  }
  follow other(a: clear)
}

job j {
  piece table x 2
  in room
  apply r(clear: c) to table.top, base
  apply r to all
}
`;

describe("an offset", () => {
  it("is found in its token, statement and nodes, also in a block", () => {
    const at = FILE.indexOf("recoat");
    const location = locate(parseFile(FILE), at + 2);
    expect(location?.token?.text).toBe("recoat");
    expect(location?.statement?.kind).toBe("wait");
    expect(location?.path.map((node) => node.kind)).toEqual(["recipe", "layer", "wait", "name"]);
    const span = absoluteSpan(location!.declaration!, location!.path.at(-1)!.span);
    expect(FILE.slice(span.start, span.end)).toBe("recoat");
  });

  it("may be outside of all declarations", () => {
    const location = locate(parseFile(FILE), 3);
    expect(location?.piece.kind).toBe("trivia");
    expect(location?.token?.kind).toBe("comment");
  });
});

describe("names", () => {
  it("have their parts to play", () => {
    const all = declarations(parseFile(FILE)).flatMap(({ body }) => namesOf(body));
    const drawn = all
      .filter(({ role }) => role !== "keyword" && role !== "vocabulary" && role !== "unit")
      .map(({ name, role }) => `${role} ${name.text}`);
    expect(drawn).toEqual([
      "declaration-name r",
      "parameter clear",
      "material-ref shellac",
      "parameter n",
      "material-ref soap",
      "material-ref clear",
      "parameter-ref n",
      "recipe-ref other",
      "argument-name a",
      "argument-value clear",
      "declaration-name j",
      "piece-ref table",
      "shop-ref room",
      "recipe-ref r",
      "argument-name clear",
      "argument-value c",
      "piece-ref table",
      "surface-ref top",
      "surface-ref base",
      "recipe-ref r",
    ]);
  });
});

describe("a new version of a file", () => {
  it("keeps the bodies of declarations whose text is the same", () => {
    const before = parseFile(FILE);
    const after = parseFile(FILE.replace("# head", "# another head\n").replace("in room", "in shed"), before);
    const [recipe, job] = declarations(after);
    expect(recipe!.body).toBe(declarations(before)[0]!.body);
    expect(job!.body).not.toBe(declarations(before)[1]!.body);
    expect(recipe!.offset).toBe(declarations(before)[0]!.offset + "another ".length + 1);
  });

  it("numbers declarations of the same name", () => {
    const keys = declarations(parseFile("shop a {\n}\nshop a {\n}\nshop {\n}\n")).map(({ key }) => key);
    expect(keys).toEqual(["shop a", "shop a#2", "shop ?"]);
  });
});

describe("documentation", () => {
  it("stands directly above, in Markdown", () => {
    expect(parseDeclaration("## One *word*.\n##\n## Two.\nshop a {\n}\n").syntax.docs).toBe(
      "One *word*.\n\nTwo.",
    );
    const apart = declarations(parseFile("## Apart.\n\nshop a {\n}\n"))[0]!;
    expect(apart.body.syntax.docs).toBe("");
  });

  it("may stand above a surface", () => {
    const { syntax } = parseDeclaration("piece p {\n  built 1936\n  ## The top.\n  surface top {\n  }\n}\n");
    expect(syntax.kind === "piece" && syntax.fields[1]?.docs).toBe("The top.");
  });
});

describe("the TextMate grammar", () => {
  it("is the one that the token table makes", () => {
    const file = new URL("../../client/syntaxes/finish.tmLanguage.json", import.meta.url);
    expect(JSON.parse(readFileSync(file, "utf8"))).toEqual(JSON.parse(JSON.stringify(textMateGrammar())));
  });
});
