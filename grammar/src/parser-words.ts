/** The entry rules for fields of words: kinds, sheens and colours, texts of one's own, and woods. */

import { endOf } from "./lexer.ts";
import { AT_COMMA, type Draft, type LineRule, NO_SPAN, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { isNear } from "./own-words.ts";
import { ShapeParser } from "./parser-shapes.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import type * as tree from "./tree.ts";
import { isColourName, keyOf } from "./word-spellings.ts";

type Value<F> = Draft<Extract<tree.FieldValue, { readonly form: F }>>;
type WordsValue = Value<"words">;
type WoodValue = Value<"wood">;

const AT_VENEER: readonly TokenType[] = [Token.Comma, Token.Veneer, Token.StringToken];
/** What is said of a wood and is none: no sheet, no metal, no finish, and no slip of the pen for `veneer`. */
const WOOD_STATE =
  /^(?:\d[\d./ ]{0,6} ?(?:mm|cm|in|inch|inches)(?: thick)?$)|^(?!ven)(?!.{0,60}(?:ply|mdf|osb|board|lamin|melamin|metal|steel|iron|paint|varnish|lacquer|finish|unknown|\boil|wax|shellac))\p{L}{2,20}(?: (?!veneer)\p{L}{2,20}){0,4}(?=$| veneer)/iu;
/** A colour that is told by another, and by no name: `dark`, `as the library's table`, `walnut shade`. */
const IS_OWN_COLOUR =
  /^(?:(?:very )?(?:dark|light|pale|medium|mid|warm|cold|bright|coloured|colored)|(?:as|like|to match|matching) .{2,40}|(?:two|three|four|several|various|mixed|different)(?: colou?rs| shades| tones)?|\p{L}{2,20}(?: \p{L}{2,20})? (?:shade|tone|colou?r))$/iu;
/** Words of a colour that rules go by, and of a sheen. */
const NO_COLOURS =
  "clear,amber,white,transparent,gloss,glossy,shiny,satin,matte,matt,eggshell,flat,dull".split(",");
/** `barn red`, `mustard`: words that are near to none that a rule goes by. */
const isColourOfOwn = (text: string): boolean =>
  /^\p{L}{3,20}(?: \p{L}{2,20}){0,2}$/iu.test(text) &&
  text.split(" ").every((word) => !isNear(word, NO_COLOURS));
const OUTDOORS_SAID: ReadonlyMap<string, readonly string[]> = new Map(
  (
    [
      [
        ["rain", "sun"],
        [
          "yes",
          "true",
          "outside",
          "outdoors",
          "weather",
          "all weather",
          "fully exposed",
          "exposed",
          "rain and sun",
          "sun and rain",
        ],
      ],
      [
        ["sheltered"],
        [
          "covered",
          "under a roof",
          "under cover",
          "open shed",
          "under an open shed",
          "porch",
          "under a porch",
        ],
      ],
    ] as const
  ).flatMap(([plain, said]) => said.map((words) => [words, plain] as const)),
);
const SOLID = phrases("solid", "massive");

export class WordsParser extends ShapeParser {
  protected readonly words: LineRule<WordsValue> = this.line(
    (): WordsValue => ({ form: "words", items: [] }),
    (line) => {
      const items: (tree.Words | tree.Title)[] = [];
      line.items = items;
      this.list(this.wordsItem, items);
    },
  );

  protected readonly wordsItem = this.part(AT_COMMA, (items: (tree.Words | tree.Title)[]): void => {
    const own = this.ownText();
    if (this.keyword === "outdoors" && this.outdoorsInWords(items)) {
      return;
    }
    if (own !== undefined) {
      items.push(own);
    } else if (this.at(Token.StringToken)) {
      items.push(make.makeTitle(this.take(Token.StringToken)));
    } else {
      items.push(this.sheenInUnits() ?? this.speltWords() ?? this.otherWords());
    }
    this.endOfPart(undefined, (next) => next === Token.And);
  });

  private sheenInUnits(): tree.Words | undefined {
    const units = this.keyword === "sheen" ? this.glossUnits() : undefined;
    return units && { kind: "words", words: [units], text: units.text, span: units.span };
  }

  /** `outdoors yes`: all weather, the worse for the work; `outdoors under a roof`. */
  private outdoorsInWords(items: (tree.Words | tree.Title)[]): boolean {
    const said = OUTDOORS_SAID.get(keyOf(this.restOfPart()));
    const span = said && this.takeText(this.restOfPart());
    if (said === undefined || span === undefined) {
      return false;
    }
    this.respell(span, said.join(", "));
    items.push(
      ...said.map(
        (text): tree.Words => ({ kind: "words", words: [{ kind: "name", text, span }], text, span }),
      ),
    );
    return true;
  }

  /** A batch, a colour by its name or its number in a chart: a text, which the plain form quotes. */
  private ownText(): tree.Title | undefined {
    if ((this.keyword !== "batch" && this.keyword !== "colour") || this.at(Token.StringToken)) {
      return undefined;
    }
    const text = this.restOfPart();
    const isColour = isColourName(text) || IS_OWN_COLOUR.test(text) || isColourOfOwn(text);
    if (text === "" || (this.keyword === "colour" && !isColour)) {
      return undefined;
    }
    const span = this.takeText(text);
    if (span === undefined) {
      return undefined;
    }
    this.respell(span, `"${text.replaceAll("\\", "\\\\")}"`);
    return { kind: "title", value: text, span };
  }

  /** Words, or what is none of the notation's and has digits: `2K lacquer`. */
  private otherWords(): tree.Words {
    if (!this.at(Token.NumberToken) || this.keyword !== "family") {
      return make.makeWords(this.wordRun("a word", this.keyword === "outdoors" ? Token.And : undefined));
    }
    const said = this.restOfPart();
    const span = this.takeText(said) ?? make.tokenSpan(this.take(Token.Word, "a word"));
    // `2K` and `2 K` are one, since the layout has a blank before what may be a unit.
    const text = said.replace(/^(\d+) (?=\p{L}\b)/u, "$1");
    this.respell(span, text);
    return { kind: "words", words: [{ kind: "name", text, span }], text, span };
  }

  protected readonly wood: LineRule<WoodValue> = this.line(
    (): WoodValue => ({ form: "wood" }),
    (line) => {
      this.species(line);
      this.woodState(line);
      if (!this.isWordsBehind() && (this.at(Token.Comma) || this.at(Token.Veneer))) {
        if (this.at(Token.Veneer)) {
          // `oak veneer`
          const at = endOf(this.peek(0));
          this.respell({ start: at, end: at }, ",");
        } else {
          this.take(Token.Comma);
        }
        const veneer: Draft<NonNullable<WoodValue["veneer"]>> = { span: NO_SPAN };
        this.spanned(veneer, () => {
          this.take(Token.Veneer, "`veneer` and its thickness");
          line.veneer = veneer;
          if (!this.at(Token.End) && !this.isWordsBehind()) {
            veneer.thickness = this.quantity("the thickness of the veneer");
          }
        });
      }
    },
  );

  /** `walnut, faded`, `mahogany, Cuban veneer`, `oak "end grain"`: words of one's own, which the plain form quotes. */
  private woodState(line: WoodValue): void {
    if (this.at(Token.StringToken)) {
      line.state = make.makeTitle(this.take(Token.StringToken));
      return;
    }
    const said = this.at(Token.Comma) ? WOOD_STATE.exec(this.restBehindComma()) : null;
    if (!said) {
      return;
    }
    const comma = make.tokenSpan(this.take(Token.Comma));
    const span = this.takeText(said[0].trimEnd())!;
    this.respell({ start: comma.start, end: span.end }, ` "${said[0].trimEnd()}"`);
    line.state = { kind: "title", value: said[0].trimEnd(), span };
  }

  protected readonly species = this.part(AT_VENEER, (line: WoodValue): void => {
    this.leaveOut(SOLID, Token.Word);
    line.wood = this.speltWords() ?? this.withPly(make.makeWords(this.wordRun("a wood", Token.Veneer)));
    this.endOfPart(undefined, (next) => next === Token.Veneer || next === Token.StringToken);
  });

  /** `birch ply` */
  private withPly(wood: tree.Words): tree.Words {
    const last = wood.words.at(-1)!;
    if (wood.words.length < 2 || last.text.toLowerCase() !== "ply") {
      return wood;
    }
    this.respell(last.span, "plywood");
    const words = [...wood.words.slice(0, -1), { ...last, text: "plywood" }];
    return { ...wood, words, text: words.map(({ text }) => text).join(" ") };
  }
}
