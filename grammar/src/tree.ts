/**
 * The syntax tree of a finish recipe file.
 *
 * Two views of the same text live side by side.  The *lossless* view is `FileTree.pieces`: every character of the
 * file belongs to exactly one token of exactly one piece; those of a declaration are made when they are asked for
 * (`tokens-of.ts`).  The *typed* view is `DeclarationTree.syntax`: what the lines of a declaration say, with every part
 * that may be missing typed as optional.
 *
 * All spans inside a declaration are relative to the start of that declaration, so that its tree stays the same
 * object while text above it changes; `DeclarationTree.offset` says where it stands in the file.
 * Nothing here knows what a name or a unit means: that is the analysis core's business.
 */

/** A half-open range of UTF-16 code units. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export type TokenKind =
  | "space"
  | "newline"
  | "comment"
  | "doc-comment"
  | "word"
  | "number"
  | "unit"
  | "string"
  | "date"
  | "time"
  | "punctuation"
  | "unknown";

/** One token of the lossless view. `kind` is its lexical class; trivia (space, newline, comment) are tokens too. */
export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  readonly start: number;
}

/** A syntax error: what was expected, in the words of the language, where, and the fix where one is known. */
export interface SyntaxProblem {
  readonly message: string;
  readonly span: Span;
  /** A change of the text that removes the error. */
  readonly fix?: Fix;
  /** Where it could mean two things: the fixes for the others. */
  readonly others?: readonly Fix[];
}

/** Replace `span` (relative like all spans) by `text`. */
export interface Fix {
  readonly title: string;
  readonly span: Span;
  readonly text: string;
}

/**
 * What was written in words of its own, and the plain form that `format` turns it into. The tree says the same for both;
 * an empty span is where something is put in, an empty text what is left out. No span goes over a line end.
 */
export interface Respelling {
  readonly span: Span;
  readonly text: string;
}

export interface FileTree {
  readonly text: string;
  /** Everything of the file in order: declarations, and the blank lines, comments and stray lines between them. */
  readonly pieces: readonly FilePiece[];
}

export type FilePiece = DeclarationTree | TriviaPiece | StrayPiece;

/** Blank lines and comments outside declarations (documentation comments belong to their declaration). */
export interface TriviaPiece {
  readonly kind: "trivia";
  readonly offset: number;
  readonly length: number;
  readonly tokens: readonly Token[];
}

/** A line at the top level that starts no declaration. Spans of its problems are relative to `offset`. */
export interface StrayPiece {
  readonly kind: "stray";
  readonly offset: number;
  readonly length: number;
  readonly tokens: readonly Token[];
  readonly problems: readonly SyntaxProblem[];
}

export interface DeclarationTree {
  readonly kind: "declaration";
  /** Where the declaration (its documentation comment included) starts in the file. */
  readonly offset: number;
  readonly length: number;
  /** `recipe hard_clear`; a second one of the same name is `recipe hard_clear#2`; without a name `recipe ?`. */
  readonly key: string;
  /** The content below depends on the declaration's own text only, and is the same object while that is the same. */
  readonly body: DeclarationBody;
}

/** What stands where the plain form starts a new line. */
export interface LineBreak extends Span {
  /**
   * The end of the line before it and the beginning of that behind it; if not said, a line end and two blanks, so that no word
   * stands where it would begin a declaration.
   */
  readonly text?: string;
}

/** What the text of one declaration says. Depends on that text alone; all spans relative to its start. */
export interface DeclarationBody {
  /** Its tokens are made from it when they are asked for: `tokensOfBody`. */
  readonly text: string;
  readonly problems: readonly SyntaxProblem[];
  /** In the order of the text, and apart. */
  readonly respellings: readonly Respelling[];
  /** Where the plain form starts a new line, in the order of the text. */
  readonly breaks: readonly LineBreak[];
  /** Whether each brace has its partner; else what stands in which block is a guess. */
  readonly bracesMatch: boolean;
  readonly syntax: Declaration;
}

// ---------------------------------------------------------------------------------------------------------------
// Parts

/** A word used as a name or as a word of a vocabulary. */
export interface Name {
  readonly kind: "name";
  readonly text: string;
  readonly span: Span;
}

/** One or more words in a row: `waterborne polyurethane`. */
export interface Words {
  readonly kind: "words";
  readonly words: readonly Name[];
  /** The words joined by one space. */
  readonly text: string;
  readonly span: Span;
}

export interface Title {
  readonly kind: "title";
  readonly value: string;
  readonly span: Span;
}

export interface NumberLiteral {
  readonly kind: "number";
  readonly text: string;
  readonly value: number;
  readonly span: Span;
}

/**
 * A number with its unit. `unit.text` is the plain form (`um`, `m2`, `C`), `unit.span` covers what was written; it is empty
 * where the unit stands behind a later number, as that of the 2 in `2-3 h`.
 */
export interface Measure {
  readonly number: NumberLiteral;
  readonly unit?: Name;
}

/** `72 h`, or the compound `5 ft 6 in`. One part without a unit is a plain number. */
export interface Quantity {
  readonly kind: "quantity";
  readonly parts: readonly Measure[];
  readonly span: Span;
}

/** A quantity, or the name of a parameter that stands for one. */
export type Value = Quantity | Name;

/** `2 h to 24 h`; without `to` there is only `from`. */
export interface Range {
  readonly kind: "range";
  readonly from: Value;
  readonly to?: Value;
  /** The unit stands once, as in `2-3 h`. */
  readonly isShort?: true;
  readonly span: Span;
}

/** `50 % RH`, `50 % to 65 % RH` */
export interface Humidity {
  readonly kind: "humidity";
  readonly value: Quantity;
  readonly to?: Quantity;
  readonly span: Span;
}

/** `4:1` */
export interface Ratio {
  readonly kind: "ratio";
  readonly a: NumberLiteral;
  readonly b: NumberLiteral;
  readonly span: Span;
}

/** `120/150/180`, given to a parameter. */
export interface Grits {
  readonly kind: "grits";
  readonly grits: readonly number[];
  readonly span: Span;
}

export interface DateLiteral {
  readonly kind: "date";
  readonly text: string;
  readonly span: Span;
}

export interface TimeLiteral {
  readonly kind: "time";
  readonly text: string;
  readonly span: Span;
}

/** `hard_clear(stain: walnut, clear: hall_clear)`; parentheses may be missing. */
export interface Call {
  readonly kind: "call";
  readonly name: Name;
  readonly arguments: readonly Argument[];
  readonly span: Span;
}

export interface Argument {
  readonly kind: "argument";
  readonly name?: Name;
  readonly value?: Value | Title | Ratio | Grits;
  readonly span: Span;
}

// ---------------------------------------------------------------------------------------------------------------
// Statements. `span` is the statement without its block and comment; `keyword` is the word that starts it.

interface StatementBase {
  readonly keyword: Name;
  readonly span: Span;
  /** `##` lines directly above (only kept for surfaces; empty elsewhere). */
  readonly docs: string;
}

/** What a field's value looks like, by the field's form (see `vocabulary.ts`). Everything may be missing. */
export type FieldValue =
  | { readonly form: "words"; readonly items: readonly (Words | Title)[] } // family, sheen, colour, meant_for, wear, ignition, rags, for, currency, safety words
  | {
      readonly form: "quantity";
      readonly quantity?: Value;
      /** `10 m2/L to 12 m2/L`: the other end. */
      readonly to?: Value;
    }
  | {
      readonly form: "range";
      readonly range?: Range;
      /** `recoat 4 h to 6 h "or after 24 h with sanding"` */
      readonly what?: Title;
    }
  | { readonly form: "air"; readonly temperature?: Range; readonly humidity?: Humidity } // air, rated, limits
  | {
      readonly form: "thin";
      readonly thinner?: Words;
      /** `5 % to 10 %`: the lower end. */
      readonly from?: Value;
      /** `1:20`: parts of the material to parts of the thinner, in place of a share. */
      readonly ratio?: Ratio;
      readonly upTo?: Value;
    }
  | {
      readonly form: "packs";
      readonly sizes: readonly {
        readonly amount?: Quantity;
        readonly price?: NumberLiteral;
        readonly span: Span;
      }[];
    }
  | {
      readonly form: "mix";
      readonly ratio?: Ratio;
      /** Absent where both parts come in one pack: `mix 10:1`. */
      readonly hardener?: Name;
      /** How it is made up, in words: `mix "250 g flakes to 1 L alcohol"`. */
      readonly made?: Title;
      /** `weight` or `volume`, when it is said. */
      readonly by?: Name;
    }
  | { readonly form: "money"; readonly amount?: NumberLiteral; readonly per?: Name } // labour: `per h`
  | { readonly form: "number"; readonly number?: NumberLiteral } // built, crew
  | { readonly form: "room"; readonly volume?: Quantity; readonly airChanges?: Quantity }
  | {
      readonly form: "hours";
      readonly spans: readonly {
        readonly from?: Name;
        readonly to?: Name;
        readonly opens?: TimeLiteral;
        readonly closes?: TimeLiteral;
        readonly span: Span;
      }[];
    }
  | {
      readonly form: "dates";
      readonly ranges: readonly {
        readonly from?: DateLiteral;
        readonly to?: DateLiteral;
        readonly span: Span;
      }[];
    } // closed
  | {
      readonly form: "moment";
      readonly date?: DateLiteral;
      readonly time?: TimeLiteral;
      /** `ready 2027-04-16 "for light use"` */
      readonly what?: Title;
    } // start, ready
  | { readonly form: "name"; readonly name?: Name } // in, after
  | { readonly form: "text"; readonly text?: Title } // note, owner, delivery
  | { readonly form: "pieces"; readonly name?: Name; readonly count?: Value } // piece reading_table x 2
  | { readonly form: "shape"; readonly shape?: ShapeSyntax }
  | {
      readonly form: "wood";
      readonly wood?: Words;
      /** What else is said of it: `"faded"`. */
      readonly state?: Title;
      readonly veneer?: { readonly thickness?: Quantity; readonly span: Span };
    }
  | {
      readonly form: "existing";
      readonly layers: readonly ExistingLayer[];
      readonly asLeftBy?: { readonly job?: Name; readonly span: Span };
    }
  | {
      readonly form: "lead";
      /** `none_found`, `found`, or `not_tested`, which is all of the line then */
      readonly result?: Name;
      /** `laboratory`, `xrf` or `swab` */
      readonly method?: Name;
      readonly date?: DateLiteral;
    }
  | { readonly form: "unknown" }; // a field word that the block does not have

export interface ExistingLayer {
  readonly material: Words;
  /** What state it is in: `"worn"`. */
  readonly state?: Title;
  /** `2 coats`; absent: 1. */
  readonly coats?: NumberLiteral;
  readonly span: Span;
}

/** `4 of post 75 mm to 50 mm x 700 mm, inside too, plus 10 %` */
export interface ShapeSyntax {
  readonly count?: NumberLiteral;
  readonly name: Name;
  /** The sizes between the `x` signs; for `area` the one quantity. */
  readonly sizes: readonly Range[];
  /** `both faces`, `inside too`, `no bottom`, `open` */
  readonly options: readonly Words[];
  readonly plus?: Quantity;
  readonly span: Span;
}

export interface FieldStatement extends StatementBase {
  readonly kind: "field";
  readonly value: FieldValue;
  /** Words behind the value, `pot_life 4 h "at 20 C"`: they say more of it, and no figure goes by them. */
  readonly said?: Title;
  /** What they say is one more of the figure before them, and does not count. */
  readonly isUncounted?: true;
  readonly kept?: KeptLine;
}

/** A line that the notation has nothing for, kept as a note: as what is said, or as what may be a fact by another name. */
export interface KeptLine {
  readonly as: "said" | "fact";
  /** The word that it begins with. */
  readonly word: string;
  /** The line that it may be meant for, where what is missing can be guessed. */
  readonly example?: string;
}

export interface SurfaceStatement extends StatementBase {
  readonly kind: "surface";
  readonly name?: Name;
  readonly title?: Title;
  readonly fields: readonly (FieldStatement | BrokenStatement)[];
}

export interface StepStatement extends StatementBase {
  readonly kind: "step";
  /** Absent where what is done is said in words of one's own: `step "lift the loose veneer"`. */
  readonly verb?: Name;
  /** `with M` */
  readonly material?: Name;
  /** Grits of `sand` and `scuff`. */
  readonly grits: readonly Value[];
  /** `sand wet 400` */
  readonly wet?: Name;
  /** `mask "what"`, or how it is done, as in `scrape "heat gun at 300 C"` */
  readonly what?: Title;
  /** `x 2`: how often it is done. */
  readonly times?: Value;
  readonly tails: readonly Tail[];
}

export interface LayerStatement extends StatementBase {
  readonly kind: "layer";
  readonly material?: Name;
  /** `x N` */
  readonly coats?: Value;
  /** `x coats - 1`: what is added to it or taken from it. */
  readonly coatsMore?: NumberLiteral;
  /** `x 2 to 3`: as many as this, when that turns out to be needed. */
  readonly coatsTo?: Value;
  /** `x 6 to 8 sessions`: of French polishing, each of many thin passes. */
  readonly sessions?: Name;
  readonly tails: readonly Tail[];
  /** `between sand 220`: what is done between coats, said on the line itself. */
  readonly between?: Between;
  /** Done between coats. Absent when the line has no `{`. */
  readonly block?: readonly RecipeStatement[];
}

/** `between sand 220`, `between wait 4 h and sand 220` */
export interface Between {
  readonly keyword: Name;
  /** Their keywords have empty spans. */
  readonly statements: readonly (StepStatement | WaitStatement)[];
  readonly span: Span;
}

/** A tail after a comma; `keyword` is its first word. */
export type Tail =
  | {
      readonly kind: "by";
      readonly keyword: Name;
      readonly method?: Name;
      /** `by roller and brush`, `by spray or roller` */
      readonly and?: Name;
      /** The two are joined by `or`. */
      readonly or?: boolean;
      readonly span: Span;
    }
  | { readonly kind: "wiped"; readonly keyword: Name; readonly after?: Value; readonly span: Span }
  | {
      readonly kind: "thinned";
      readonly keyword: Name;
      /** Or the parameter that stands for it. */
      readonly ratio?: Ratio | Name;
      readonly thinner?: Name;
      readonly span: Span;
    }
  | {
      readonly kind: "tinted";
      readonly keyword: Name;
      readonly share?: Value;
      readonly tint?: Name;
      readonly span: Span;
    }
  | { readonly kind: "as"; readonly keyword: Name; readonly role?: Name; readonly span: Span }
  | {
      readonly kind: "wet";
      readonly keyword: Name;
      readonly thickness?: Value;
      readonly to?: Value;
      readonly span: Span;
    }
  | { readonly kind: "thin" | "mist" | "full" | "flooded"; readonly keyword: Name; readonly span: Span }
  /** `if needed`: whether it goes on at all is decided at the bench. */
  | { readonly kind: "if"; readonly keyword: Name; readonly what?: Title; readonly span: Span }
  /** `only 20 % "where it is worn"`, `only 0.3 m2`: a part of the surface. */
  | {
      readonly kind: "only";
      readonly keyword: Name;
      readonly share?: Quantity;
      /** `only 5 of 18`: so many of the pieces. */
      readonly of?: { readonly some: NumberLiteral; readonly all: NumberLiteral };
      readonly where?: Title;
      readonly span: Span;
    }
  /** `passes 3`: of one coat, wet on wet. */
  | { readonly kind: "passes"; readonly keyword: Name; readonly count?: Value; readonly span: Span }
  /** `buffed after 20 min`: each coat, so long after it was put on. */
  | {
      readonly kind: "buffed";
      readonly keyword: Name;
      readonly after?: Value;
      readonly span: Span;
    }
  /** `flash 10 min`: between passes. */
  | { readonly kind: "flash"; readonly keyword: Name; readonly time?: Value; readonly span: Span }
  /** Whether pieces are done in one go. */
  | { readonly kind: "together" | "apart"; readonly keyword: Name; readonly span: Span }
  | { readonly kind: "takes"; readonly keyword: Name; readonly time?: Value; readonly span: Span }
  /** `sheen satin`, `sheen 20`, or the parameter that stands for it. */
  | { readonly kind: "sheen"; readonly keyword: Name; readonly sheen?: Name; readonly span: Span }
  | { readonly kind: "costs"; readonly keyword: Name; readonly amount?: NumberLiteral; readonly span: Span }
  | { readonly kind: "uses"; readonly keyword: Name; readonly amount?: Value; readonly span: Span }
  /** `leave 30 min`: to act, before what comes next. */
  | { readonly kind: "leave"; readonly keyword: Name; readonly time?: Value; readonly span: Span }
  /** `transfer 65 %`, or the parameter that stands for so many percent. */
  | { readonly kind: "transfer"; readonly keyword: Name; readonly share?: Value; readonly span: Span }
  /** `wet_on_wet 20 min` */
  | { readonly kind: "wet_on_wet"; readonly keyword: Name; readonly time?: Value; readonly span: Span }
  /** `"with the 1.8 mm tip"`: anything else, in words. */
  | { readonly kind: "said"; readonly keyword: Name; readonly what: Title; readonly span: Span };

export interface WaitStatement extends StatementBase {
  readonly kind: "wait";
  readonly until?: Name; // touch | recoat | stackable | cured (or an unknown word)
  readonly overnight?: Name;
  readonly time?: Value; // a duration or a duration parameter
  /** `wait 2 h to 3 h`: the longest. */
  readonly timeTo?: Value;
  /** `wait 16 h "until it can be stacked"`: what is waited for, in words of one's own. */
  readonly what?: Title;
}

export interface SafetyStatement extends StatementBase {
  readonly kind: "safety";
  readonly duties: readonly {
    readonly name: Name;
    readonly airChanges?: Quantity;
    /** `gloves "butyl"`: what kind. */
    readonly what?: Title;
    readonly span: Span;
  }[];
  /** `"suit"`: what no rule asks for. */
  readonly said?: readonly Title[];
}

export interface FollowStatement extends StatementBase {
  readonly kind: "follow";
  readonly call?: Call;
}

export interface NoteStatement extends StatementBase {
  readonly kind: "note";
  readonly kept?: KeptLine;
  readonly text?: Title;
}

export interface ApplyStatement extends StatementBase {
  readonly kind: "apply";
  readonly call?: Call;
  /** `to top, table.base`; `to all` is one target named `all`. None where the job has one surface. */
  readonly targets: readonly Target[];
}

export interface Target {
  readonly kind: "target";
  /** `table` of `table.top` */
  readonly piece?: Name;
  readonly surface?: Name;
  readonly span: Span;
}

/** `done 2027-03-10 14:00 coat 2 of hall_clear on top, took 25 min`: what was really done, and when it was finished. */
export interface DoneStatement extends StatementBase {
  readonly kind: "done";
  readonly date?: DateLiteral;
  readonly time?: TimeLiteral;
  /** `coat 2 of hall_clear` */
  readonly coat?: { readonly keyword: Name; readonly number?: NumberLiteral; readonly span: Span };
  /** `strip`, of a step */
  readonly verb?: Name;
  /** What the coat is of, or `strip with slow_stripper`. */
  readonly material?: Name;
  /** The words of a step that is said in words of one's own. */
  readonly what?: Title;
  /** `on top and table.base`; none where the job has one surface. */
  readonly targets: readonly Target[];
  readonly facts: readonly DoneFact[];
}

/** What is known of work that was done; `keyword` is its first word. */
export type DoneFact =
  | { readonly kind: "took"; readonly keyword: Name; readonly time?: Value; readonly span: Span }
  | { readonly kind: "used"; readonly keyword: Name; readonly amount?: Value; readonly span: Span }
  | { readonly kind: "paid"; readonly keyword: Name; readonly amount?: NumberLiteral; readonly span: Span }
  | {
      readonly kind: "air";
      readonly keyword: Name;
      readonly temperature?: Range;
      readonly humidity?: Humidity;
      readonly span: Span;
    }
  | { readonly kind: "trouble"; readonly keyword: Name; readonly trouble?: Name; readonly span: Span }
  /** `piece 2`, `pieces 1 and 3` */
  | {
      readonly kind: "piece";
      readonly keyword: Name;
      readonly numbers: readonly NumberLiteral[];
      readonly span: Span;
    }
  | {
      readonly kind: "by" | "photo" | "note";
      readonly keyword: Name;
      readonly text?: Title;
      readonly span: Span;
    };

/** A line whose first part could not be read as a statement; its problems are in `DeclarationBody.problems`. */
export interface BrokenStatement extends StatementBase {
  readonly kind: "broken";
}

export type RecipeStatement =
  | FieldStatement // for
  | StepStatement
  | LayerStatement
  | WaitStatement
  | SafetyStatement
  | FollowStatement
  | NoteStatement
  | BrokenStatement;

// ---------------------------------------------------------------------------------------------------------------
// Declarations

interface DeclarationBase {
  readonly keyword: Name;
  readonly name?: Name;
  readonly title?: Title;
  /** The `##` lines directly above, without their marks: Markdown. */
  readonly docs: string;
  /** From keyword to the end of the first line, without `{` and comment. */
  readonly headSpan: Span;
  /** The whole declaration without documentation. */
  readonly span: Span;
}

export interface UseDeclaration extends DeclarationBase {
  readonly kind: "use";
  readonly path?: Title;
  /** `use notation 0.2`: what the file is written in. */
  readonly notation?: NumberLiteral;
}
export interface MaterialDeclaration extends DeclarationBase {
  readonly kind: "material";
  readonly fields: readonly (FieldStatement | BrokenStatement)[];
}
export interface PieceDeclaration extends DeclarationBase {
  readonly kind: "piece";
  readonly fields: readonly (FieldStatement | SurfaceStatement | BrokenStatement)[];
}
export interface ShopDeclaration extends DeclarationBase {
  readonly kind: "shop";
  readonly fields: readonly (FieldStatement | BrokenStatement)[];
}
export interface RecipeDeclaration extends DeclarationBase {
  readonly kind: "recipe";
  readonly parameters: readonly Parameter[];
  readonly statements: readonly RecipeStatement[];
}
export interface JobDeclaration extends DeclarationBase {
  readonly kind: "job";
  readonly fields: readonly (FieldStatement | ApplyStatement | DoneStatement | BrokenStatement)[];
}

/** `clear: material = waterborne_polyurethane` */
export interface Parameter {
  readonly kind: "parameter";
  readonly name: Name;
  readonly type?: Name;
  readonly default?: Value | Ratio | Grits;
  readonly span: Span;
}

export type Declaration =
  | UseDeclaration
  | MaterialDeclaration
  | PieceDeclaration
  | ShopDeclaration
  | RecipeDeclaration
  | JobDeclaration;

export type Statement =
  | FieldStatement
  | SurfaceStatement
  | ApplyStatement
  | DoneStatement
  | Exclude<RecipeStatement, FieldStatement | BrokenStatement>
  | BrokenStatement;
