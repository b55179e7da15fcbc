/**
 * The entry rule for a field: its value, and the words before and behind it that say more of it, which the plain form puts in
 * quotes behind the value: `pot_life 4 h "at 20 C"`, `built 1840 "about"`.
 */
import { END_TOKEN, endOf } from "./lexer.ts";
import type { Draft, LineRule } from "./line-reader.ts";
import * as make from "./literals.ts";
import { isNear } from "./own-words.ts";
import { FieldParser } from "./parser-fields.ts";
import * as Token from "./tokens.ts";
import type * as tree from "./tree.ts";
import type { FieldForm } from "./vocabulary.ts";

/** What a line of a field says. */
export interface FieldLine {
  value: tree.FieldValue;
  said?: tree.Title;
  isUncounted?: true;
}

type Value = Draft<tree.FieldValue>;

export class BehindParser extends FieldParser {
  /** The form of the field that is read, while words about it may follow. */
  private form: FieldForm | undefined;

  /** The entry rule of a field of this form. */
  fieldRule(form: FieldForm): LineRule<FieldLine> {
    const rule = this.valueRules[form] as LineRule<tree.FieldValue>;
    if (form === "text") {
      return this.line(
        (): FieldLine => ({ value: rule.empty() }),
        ({ value }) => rule.body(value),
      );
    }
    return this.line(
      (): FieldLine => ({ value: rule.empty() }),
      (line) => {
        this.form = form;
        try {
          this.saidBefore = this.about();
          rule.body(line.value);
          this.behind(line, this.saidBefore);
        } finally {
          this.form = undefined;
        }
      },
    );
  }

  /** `about 1840`, `ca. 15 ft2` */
  private about(): string | undefined {
    const { start } = this.peek(1);
    const found = this.longestIn(ABOUT) ?? this.limit();
    const length = (found?.length ?? 0) + (found && this.at(Token.Dot, found.length + 1) ? 1 : 0);
    const isFigure = this.at(Token.NumberToken, length + 1) || this.at(Token.DateToken, length + 1);
    if (found === undefined || !isFigure || NOT_BEFORE[this.keyword]?.test(found.written)) {
      return undefined;
    }
    this.skip(length);
    this.respell({ start, end: endOf(this.peek(0)) }, "");
    return found.written;
  }

  /** `up to 400.00`, `after 2 h`, `before 2026-11-13` */
  private limit(): ReturnType<BehindParser["longestIn"]> {
    const found = this.longestIn(LIMITS);
    const isRead =
      found !== undefined &&
      (this.form === "moment"
        ? AT_A_DAY.test(found.written)
        : this.form === "money"
          ? AT_MOST.test(found.written)
          : this.form === "range"
            ? !/^(?:from|above)$/u.test(found.written)
            : this.form === "quantity" || this.form === "number");
    return isRead ? found : undefined;
  }

  private behind(line: FieldLine, about: string | undefined): void {
    if (this.at(Token.Comma) && this.at(Token.StringToken, 2)) {
      // `air 18 C, 55 % RH, "cooler at night"`
      this.respell(make.tokenSpan(this.take(Token.Comma)), "");
    }
    const { start } = this.peek(1);
    const at = endOf(this.peek(0));
    const isWritten = this.at(Token.StringToken);
    const written = isWritten
      ? make.makeTitle(this.take(Token.StringToken))
      : this.isWordsBehind()
        ? this.wordsToEnd()
        : undefined;
    const parts = [about, written?.value].filter((part) => part !== undefined);
    if (parts.length === 0) {
      return;
    }
    const value = parts.join(", ");
    const end = written === undefined ? at : endOf(this.peek(0));
    const span = { start: written === undefined ? at : isWritten ? start : at, end };
    if (written !== undefined && !isWritten && about === undefined && this.isCounted(value)) {
      // Left as it is, since its writer has to say what is meant by it.
      line.isUncounted = true;
    } else if (!isWritten || about !== undefined) {
      this.respell(span, ` "${value.replaceAll("\\", "\\\\").replaceAll('"', '\\"')}"`);
    }
    const said: tree.Title = { kind: "title", value, span };
    if (!keptInValue(line.value, said)) {
      line.said = said;
    }
  }

  /** Whether words behind a figure have one more of the same. */
  private isCounted(words: string): boolean {
    return (this.form === "money" || this.keyword === "crew") && /\d/u.test(words);
  }

  private wordsToEnd(): { readonly value: string } {
    if (this.at(Token.Comma)) {
      this.take(Token.Comma);
    }
    return { value: this.takeRest() };
  }

  protected override isWordsBehind(): boolean {
    const { form } = this;
    if (form === undefined || this.at(Token.End) || (form === "words" && !OF_ONE_WORD.has(this.keyword))) {
      return false;
    }
    if (this.at(Token.StringToken)) {
      return form !== "existing";
    }
    const isApart = this.at(Token.Comma);
    if (isApart && this.at(Token.StringToken, 2)) {
      return TITLED_BEHIND.has(form);
    }
    const first = this.peek(isApart ? 2 : 1);
    if (form === "lead" && !isApart) {
      return false;
    }
    const isFigure = isApart && first.kind === "number" && (form === "lead" || this.keyword === "crew");
    const text = first.kind === "word" || isFigure ? this.textAhead(isApart ? 2 : 1) : undefined;
    if (isFigure) {
      return text !== undefined && (form === "lead" ? LEAD_CONTENT : OTHER_HANDS).test(text);
    }
    if (text === undefined || NEVER[form]?.test(text)) {
      return false;
    }
    if (isApart) {
      const isSaid =
        !HAS_FIGURE.test(text) || form === "money" || (IN_FIGURES.has(form) && GOES_ON.test(text));
      return isSaid && !(EXPECTED[form]?.some((word) => isNear(first.text, [word])) ?? false);
    }
    return (
      (BEGINS.test(text) && !(TIMES.has(this.keyword) && AS_A_TIME.test(text))) ||
      (IN_FIGURES.has(form) && !/\d/u.test(text) && !isNear(first.text, JOINTS))
    );
  }

  /**
   * What follows, where nothing of it opens or ends a title and it is no longer than a remark. It is asked for at every
   * comma of a list, so that a bound keeps the cost in proportion to the list.
   */
  private textAhead(from: number): string | undefined {
    let text = "";
    for (let ahead = from; this.peek(ahead) !== END_TOKEN; ahead += 1) {
      if (ahead - from >= MOST_TOKENS || /["{}#\\]/u.test(this.peek(ahead).text)) {
        return undefined;
      }
      text += `${ahead > from ? " " : ""}${this.peek(ahead).text}`;
    }
    return text;
  }
}

/** Puts the words where the form has a place for them. */
function keptInValue(value: Value, said: tree.Title): boolean {
  if ((value.form === "range" || value.form === "moment") && value.what === undefined) {
    value.what = said;
    return true;
  }
  if (value.form === "wood" && value.state === undefined && value.veneer === undefined) {
    value.state = said;
    return true;
  }
  return false;
}

const ABOUT: Readonly<Record<string, true>> = Object.fromEntries(
  "about|approx|approximately|around|roughly|some|ca|circa|nearly|almost"
    .split("|")
    .map((words) => [words, true]),
);
const LIMITS: Readonly<Record<string, true>> = Object.fromEntries(
  (
    "up to|max|maximum|at most|under|below|less than|over|more than|not over|not above|above|" +
    "after|in|on|within|before|by|until|not before|no sooner than|from"
  )
    .split("|")
    .map((words) => [words, true]),
);
const AT_MOST = /^(?:up to|max|maximum|at most|under|below|less than|over|more than|not over|not above)$/u;
const AT_A_DAY = /^(?:before|by|until|on|not before|no sooner than|from|after)$/u;

/** Where a limit is the other end of what the figure of a field says. */
const NOT_BEFORE: Readonly<Record<string, RegExp>> = {
  recoat: /^(?:up to|within|max|maximum|at most|under|below|less than|not over|not above|before|by|until)$/u,
  flash: /^(?:up to|max|maximum|at most|under|below|less than|not over|not above|before)$/u,
  ready: /^(?:not before|no sooner than|from|after|above|over|more than)$/u,
};

/** `4200 ppm`, `2.1 %`: how much lead was found. */
const LEAD_CONTENT = /^[\d.,]{1,9} ?(?:ppm|%|mg)(?:[ /]\p{L}{1,4}\d?)?(?= |$)/iu;
/** `2 helpers` */
const OTHER_HANDS = /^\d{1,2} \p{L}{3,20}(?= |$)/u;

/** Forms of which no part is a text in quotes. */
const TITLED_BEHIND: ReadonlySet<FieldForm> = new Set<FieldForm>([
  "quantity",
  "range",
  "air",
  "money",
  "number",
  "room",
  "hours",
  "dates",
  "moment",
  "lead",
  "shape",
]);

/** Forms that end with a figure, behind which any words say more of it. */
const IN_FIGURES: ReadonlySet<FieldForm> = new Set(["quantity", "range", "number", "money", "moment"]);
const JOINTS = ["with", "plus"];
/** How words with a figure of their own go on behind a comma. */
const GOES_ON =
  /^(?:better|light|full|then|in|at|with|when|if|after|once|until|more|less|at least|best|also|per)\b(?! \d+ ?(?:h|min|days?|hours?)$)/iu;

/** Words that begin what is said of a value and go on from no figure. */
const BEGINS =
  /^(?:at|in|on|with|without|for|if|as|when|while|once|until|but|per|inside|outside|by|under|over|because|since|including|incl|only|mostly|and (?:a|some)|or (?:so|more|less|a little)|each|from the|to the|given|according|exclusive|excluding|plus (?:a|some))(?= |$)/iu;
/** Nobody writes a longer remark behind a value, and a longer list is no remark. */
const MOST_TOKENS = 80;

/** Fields of words that have one value. */
const OF_ONE_WORD: ReadonlySet<string> = new Set(["family", "sheen", "colour"]);
/** Times that another time behind them could be a part of. */
const TIMES: ReadonlySet<string> = new Set(["recoat", "touch", "cure", "pot_life", "sandable", "stackable"]);
const AS_A_TIME = /^(?:if|as|until|but|or|to) .*\d/iu;
/** A figure with a unit behind a comma may be meant as a part of the value. */
const HAS_FIGURE = /\d ?(?:%|\p{L})|\d:\d/u;

/** What is never kept as words, since a figure or a rule goes by it. */
const NEVER: Partial<Readonly<Record<FieldForm, RegExp>>> = {
  quantity: /coats\b|^(?:per|in|by|of|an?) (?!coat$|layer$)\p{L}+$/iu,
  words:
    /part|pack|2k|component|catal|isocyan|hardener|solvent|spirit|alcohol|oil|nitro|acid|lacquer|shellac|epoxy|urethane|alkyd|water|wax|paint|^(?:white|black|amber|clear|matte?|satin|gloss|eggshell|flat|and|or)\b/iu,
  shape: /\b(?:faces?|sides?|edges?|bottom|top|back|front|ends?|open|both|plus|each)\b|inside too/iu,
  packs: /\d/u,
  air: /\d|^(?:no|not)\b/iu,
  hours: /\d|Mon|Tue|Wed|Thu|Fri|Sat|Sun/u,
  dates: /\d/u,
  pieces: /\d|^(?:and|x)\b/iu,
  name: /./u,
  mix: /weight|\d/iu,
  existing: /./u,
  money: /^per h/iu,
  thin: /\d/u,
  wood: /veneer|ply\b|paint|varnish|lacquer|finish|wax|shellac|\boil/iu,
};

/** What may be meant behind a comma. */
const EXPECTED: Partial<Readonly<Record<FieldForm, readonly string[]>>> = {
  shape: ["both", "open", "plus"],
  wood: ["veneer"],
  thin: ["up"],
};
