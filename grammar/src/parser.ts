/**
 * Parses one logical line at a time, with one entry rule for each form of a line: this file has the heads of
 * declarations and the statements of recipes and jobs, `parser-fields.ts` the fields,
 * `parser-shapes.ts` shapes, `parser-parts.ts` what they share.
 *
 * The grammar is LL(2): what comes next is decided by one token, in a few places by two.  Which words a vocabulary has is not checked here, with two exceptions: a known verb says what
 * must follow it, and a tail starts with the word of a tail, since nothing could be read otherwise.
 */
import { gist } from "./gist.ts";
import { endOf } from "./lexer.ts";
import { AT_COMMA, type Draft, NO_SPAN, phrases } from "./line-reader.ts";
import * as make from "./literals.ts";
import { valueText } from "./parser-parts.ts";
import { AT_TAIL, type Line, type StepLine, StepParser } from "./parser-steps.ts";
import { METHOD_SPELLINGS, STAGE_SPELLINGS } from "./spellings.ts";
import type { TokenType } from "./tokens.ts";
import * as t from "./tokens.ts";
import type * as tree from "./tree.ts";
import { plainUnit } from "./units.ts";
import { TAILS } from "./vocabulary.ts";
import { DUTY_SPELLINGS } from "./word-spellings.ts";

type LayerLine = Line<tree.LayerStatement>;
type Owner = "step" | "layer";
type BareTail = "thin" | "mist" | "full" | "flooded";
type TailOf<K> = Draft<Extract<tree.Tail, { readonly kind: K }>>;

/** What the head of a declaration or surface says. */
export interface HeadLine {
  name?: tree.Name;
  title?: tree.Title;
  parameters: readonly tree.Parameter[];
}

export class LineParser extends StepParser {
  // -------------------------------------------------------------------------------------------------------------
  // Heads

  readonly useHead = this.line(
    (): { path?: tree.Title } => ({}),
    (line) => {
      line.path = make.makeTitle(this.take(t.StringToken, "a file in double quotes"));
    },
  );

  readonly head = this.line(emptyHead, (line) => {
    this.headName(line);
    if (this.at(t.StringToken)) {
      line.title = make.makeTitle(this.take(t.StringToken));
    }
  });

  readonly surfaceHead = this.line(emptyHead, (line) => this.headName(line));

  readonly recipeHead = this.line(emptyHead, (line) => {
    const parameters: tree.Parameter[] = [];
    line.parameters = parameters;
    this.headName(line);
    if (this.at(t.StringToken)) {
      line.title = make.makeTitle(this.take(t.StringToken));
    }
    if (this.at(t.LeftParen)) {
      this.take(t.LeftParen);
      if (this.at(t.Word)) {
        this.list(this.parameter, parameters);
      }
      this.closeParen();
    }
    if (this.at(t.StringToken)) {
      const title = make.makeTitle(this.take(t.StringToken));
      line.title ??= title;
    }
  });

  private headName(line: HeadLine): void {
    if (this.at(t.Word)) {
      line.name = this.nameOf(this.take(t.Word));
    } else {
      this.report(this.expectedNext("a name"));
    }
  }

  // -------------------------------------------------------------------------------------------------------------
  // Steps

  readonly step = this.line(
    (): StepLine => ({ grits: [], tails: [] }),
    (line) => {
      const tails: tree.Tail[] = [];
      line.tails = tails;
      this.stepMain(line);
      this.tailList("step", tails);
    },
  );

  // -------------------------------------------------------------------------------------------------------------
  // Layers and tails

  readonly layer = this.line(
    (): LayerLine => ({ tails: [] }),
    (line) => {
      const tails: tree.Tail[] = [];
      line.tails = tails;
      this.layerMain(line);
      this.tailList("layer", tails, line);
    },
  );

  protected readonly layerMain = this.part(AT_TAIL, (line: LayerLine): void => {
    if (this.at(t.NumberToken)) {
      this.coatsFirst(line);
    } else {
      line.material = this.nameOf(this.take(t.Word, "a material"));
      if (this.at(t.X)) {
        this.take(t.X);
        this.coats(line);
        this.leaveOut(COATS_BEHIND);
      } else if (this.at(t.NumberToken)) {
        this.coatsBehind(line);
      }
    }
    this.endOfPart(undefined, (next) => t.TAIL_TYPES.has(next));
  });

  /** `3`, `2 to 3`, `2-3`, `2 or 3` */
  private coats(line: LayerLine): void {
    const { from, to } = this.range("a number of coats");
    line.coats = from;
    if (to !== undefined) {
      line.coatsTo = to;
    } else if (this.isWordAt("or", 1) && this.at(t.NumberToken, 2)) {
      this.respell(make.tokenSpan(this.take(t.Word)), "to");
      line.coatsTo = this.value("a number of coats");
    }
  }

  /** `2 x clear`, `2 coats clear`, `2 coats of clear` */
  private coatsFirst(line: LayerLine): void {
    const { start } = this.peek(1);
    const isRead = this.apart(() => {
      this.coats(line);
      if (this.at(t.X)) {
        this.take(t.X);
      } else {
        this.take(t.Coats, "`x` and a material");
        this.leaveOut(OF);
      }
    });
    if (isRead) {
      line.material = this.nameOf(this.take(t.Word, "a material"));
      this.dropRespellings(start);
      this.respell({ start, end: line.material.span.end }, `${line.material.text} ${coatsText(line)}`);
    } else {
      throw this.mismatch("a material");
    }
  }

  /** `clear 2 coats` */
  private coatsBehind(line: LayerLine): void {
    const { start } = this.peek(1);
    if (this.apart(() => this.coatsWithWord(line))) {
      this.respell({ start, end: endOf(this.peek(0)) }, coatsText(line));
    }
  }

  private coatsWithWord(line: LayerLine): void {
    this.coats(line);
    this.take(t.Coats, "`x` and a number of coats");
  }

  private tailList(owner: Owner, tails: tree.Tail[], layer?: LayerLine): void {
    this.many(
      () => this.at(t.Comma) || t.TAIL_TYPES.has(this.peek(1).type),
      () => {
        this.commaBefore();
        this.tail(owner, tails, layer);
      },
    );
  }

  protected readonly tail = this.part(
    AT_TAIL,
    (owner: Owner, tails: tree.Tail[], layer: LayerLine | undefined): void => {
      this.useExample(undefined);
      const tail = this.tailsByType.get(this.peek(1).type);
      const bare = owner === "layer" ? t.BARE_TAILS.get(this.peek(1).type) : undefined;
      if (tail !== undefined) {
        tail(tails);
      } else if (bare !== undefined) {
        const keyword = make.makeName(this.take(t.Word));
        tails.push({ kind: bare, keyword, span: keyword.span });
        this.leaveOut(COATS_BEHIND);
      } else if (layer !== undefined && this.at(t.BetweenWord)) {
        this.between(layer);
      } else if (layer !== undefined && this.isBetweenSaidLast()) {
        this.betweenLast(layer);
      } else if (layer !== undefined && this.isAmount()) {
        const at = this.peek(1).start;
        this.respell({ start: at, end: at }, "wet");
        this.wetAmount(tails);
      } else if (layer !== undefined && (this.at(t.X) || this.at(t.NumberToken))) {
        this.lateCoats(layer);
      } else {
        throw this.mismatch(tailNames(owner));
      }
      this.checkOwner(owner, tails.at(-1));
      this.endOfPart(undefined, (next) => t.TAIL_TYPES.has(next));
    },
  );

  /** `30 g/m2`: how much goes on. */
  private isAmount(): boolean {
    const unit = this.peek(this.peek(2).type === t.NumberToken ? 3 : 2);
    return this.at(t.NumberToken) && unit.type === t.Unit && AMOUNTS.has(plainUnit(unit.text) ?? "");
  }

  private wetAmount(tails: tree.Tail[]): void {
    const { start } = this.peek(1);
    const { from, to } = this.range("an amount by area");
    const keyword: tree.Name = { kind: "name", text: "wet", span: { start, end: start } };
    const span = { start, end: endOf(this.peek(0)) };
    tails.push({ kind: "wet", keyword, thickness: from, ...(to && { to }), span });
  }

  // -------------------------------------------------------------------------------------------------------------
  // Between coats

  /** `between sand 220`, `between wait 4 h and sand 220` */
  private between(layer: LayerLine): void {
    const draft = { keyword: make.makeName(this.take(t.BetweenWord)), statements: [], span: NO_SPAN };
    this.useExample(TAILS.between!.example);
    this.leaveOut(COATS_WORD);
    this.keepBetween(layer, draft);
    draft.span = { start: draft.keyword.span.start, end: endOf(this.peek(0)) };
  }

  /** Whether this part ends with `between` or `between coats`: `sand 400 between coats`. */
  private isBetweenSaidLast(): boolean {
    let ahead = 1;
    while (![t.Comma, t.End, t.BetweenWord].includes(this.peek(ahead).type)) ahead += 1;
    const behind = this.peek(ahead + 1).type;
    const last = behind === t.Coats ? this.peek(ahead + 2).type : behind;
    return ahead > 1 && this.peek(ahead).type === t.BetweenWord && (last === t.Comma || last === t.End);
  }

  private betweenLast(layer: LayerLine): void {
    const { start } = this.peek(1);
    const keyword: tree.Name = { kind: "name", text: "between", span: { start, end: start } };
    const draft = { keyword, statements: [], span: NO_SPAN };
    this.respell(keyword.span, "between");
    this.keepBetween(layer, draft);
    this.leaveOut(BETWEEN_COATS);
    draft.span = { start, end: endOf(this.peek(0)) };
  }

  private keepBetween(layer: LayerLine, draft: Draft<tree.Between>): void {
    const statements: (tree.StepStatement | tree.WaitStatement)[] = [];
    draft.statements = statements;
    const first = this.peek(1);
    if (layer.between === undefined) {
      layer.between = draft;
    } else {
      const span = { start: draft.keyword.span.start, end: endOf(first) };
      this.report({ message: "expected `between` once: put `and` between what is done", span });
    }
    statements.push(this.betweenItem());
    while (this.isWordAt("and", 1) || this.isWordAt("then", 1)) {
      const joint = this.take(t.Word);
      if (joint.text !== "and") {
        this.respell(make.tokenSpan(joint), "and");
      }
      statements.push(this.betweenItem());
    }
  }

  private betweenItem(): tree.StepStatement | tree.WaitStatement {
    const { start } = this.peek(1);
    const empty = { start, end: start };
    const isWait = this.isWordAt("wait", 1);
    if (isWait || this.at(t.NumberToken) || this.at(t.Overnight)) {
      if (isWait) {
        this.skip(1);
      } else {
        this.respell(empty, "wait");
      }
      const line = this.wait.empty();
      this.wait.body(line);
      const span = { start, end: endOf(this.peek(0)) };
      return { kind: "wait", keyword: { kind: "name", text: "wait", span: empty }, span, docs: "", ...line };
    }
    const line = this.step.empty();
    this.stepBody(line);
    const span = { start, end: endOf(this.peek(0)) };
    return { kind: "step", keyword: { kind: "name", text: "step", span: empty }, span, docs: "", ...line };
  }

  protected readonly by = this.tailRule("by", t.By, (draft: TailOf<"by">) => {
    this.leaveOut(ARTICLES, t.Word);
    draft.method =
      this.spelling(METHOD_SPELLINGS) ??
      make.makeName(this.take(t.Word, "a method: brush, roller, pad, spray or another"));
  });

  protected readonly wiped = this.tailRule("wiped", t.Wiped, (draft: TailOf<"wiped">) => {
    this.leaveOut(OFF);
    if (this.at(t.After)) {
      this.take(t.After);
      draft.after = this.value("a time");
    }
  });

  protected readonly thinned = this.tailRule("thinned", t.Thinned, (draft: TailOf<"thinned">) => {
    draft.ratio = this.thinning();
    this.take(t.With, "`with` and a thinner");
    draft.thinner = this.nameOf(this.take(t.Word, "a thinner"));
  });

  protected readonly tinted = this.tailRule("tinted", t.Tinted, (draft: TailOf<"tinted">) => {
    draft.share = this.value("a share in %");
    this.take(t.With, "`with` and a tint");
    draft.tint = this.nameOf(this.take(t.Word, "a tint"));
  });

  protected readonly as = this.tailRule("as", t.As, (draft: TailOf<"as">) => {
    draft.role = make.makeName(this.take(t.Word, "`toner`"));
  });

  protected readonly wet = this.tailRule("wet", t.Wet, (draft: TailOf<"wet">) => {
    const { from, to } = this.range("a thickness");
    draft.thickness = from;
    if (to !== undefined) {
      draft.to = to;
    }
  });

  protected readonly takes = this.tailRule("takes", t.Takes, (draft: TailOf<"takes">) => {
    draft.time = this.value("a time");
  });

  protected readonly uses = this.tailRule("uses", t.Uses, (draft: TailOf<"uses">) => {
    draft.amount = this.value("an amount");
  });

  private tailRule<K extends Exclude<tree.Tail["kind"], BareTail>>(
    kind: K,
    type: TokenType,
    body: (draft: TailOf<K>) => void,
  ) {
    return (tails: tree.Tail[]): void => {
      const draft = { kind, keyword: undefined, span: NO_SPAN } as never as TailOf<K>;
      tails.push(draft as tree.Tail);
      this.spanned(draft as { span: tree.Span }, () => {
        (draft as { keyword: tree.Name }).keyword = make.makeName(this.take(type));
        this.useExample(TAILS[kind]!.example);
        body(draft);
      });
    };
  }

  private readonly tailsByType: ReadonlyMap<TokenType, (tails: tree.Tail[]) => void> = new Map([
    [t.By, this.by],
    [t.Wiped, this.wiped],
    [t.Thinned, this.thinned],
    [t.Tinted, this.tinted],
    [t.As, this.as],
    [t.Wet, this.wet],
    [t.Takes, this.takes],
    [t.Uses, this.uses],
  ]);

  /** `layer clear, x 3`, `layer clear, 3 coats`: the plain form has it behind the name. */
  private lateCoats(layer: LayerLine): void {
    const [comma, first] = [this.peek(0), this.peek(1)];
    const late: LayerLine = { tails: [] };
    if (this.at(t.X)) {
      this.take(t.X);
      this.coats(late);
      this.leaveOut(COATS_BEHIND);
    } else {
      this.coatsWithWord(late);
    }
    const end = endOf(this.peek(0));
    const nameEnd = layer.material?.span.end;
    if (nameEnd === undefined || layer.coats !== undefined) {
      const span = { start: first.start, end };
      this.report({
        message: gist((suchAs) => `expected the number of coats once${suchAs("layer clear x 3")}`),
        span,
      });
      return;
    }
    layer.coats = late.coats;
    layer.coatsTo = late.coatsTo;
    this.dropRespellings(first.start);
    this.respell({ start: nameEnd, end: nameEnd }, coatsText(late));
    this.respell({ start: comma.type === t.Comma ? comma.start : first.start, end }, "");
  }

  private checkOwner(owner: Owner, tail: tree.Tail | undefined): void {
    const on = tail === undefined ? "both" : TAILS[tail.kind]!.on;
    if (tail !== undefined && on !== "both" && on !== owner) {
      this.report({
        message: `expected ${tailNames(owner)}: \`${tail.kind}\` belongs to a ${on}`,
        span: tail.span,
      });
    }
  }

  // -------------------------------------------------------------------------------------------------------------
  // Other statements

  readonly wait = this.line(
    (): Line<tree.WaitStatement> => ({}),
    (line) => {
      if (this.at(t.Until)) {
        this.take(t.Until);
        this.useExample("wait until recoat");
        this.leaveOut(IT_IS);
        line.until =
          this.spelling(STAGE_SPELLINGS) ?? make.makeName(this.take(t.Word, "`touch`, `recoat` or `cured`"));
      } else if (this.at(t.Overnight)) {
        line.overnight = make.makeName(this.take(t.Overnight));
      } else if (this.longestIn(OVERNIGHT) !== undefined) {
        line.overnight = this.spelling(OVERNIGHT)!;
      } else {
        this.leaveOut(FOR, t.NumberToken);
        const { from, to } = this.lowerLimit(() => this.range("a time, `overnight`, or `until` and a stage"));
        line.time = from;
        if (to !== undefined) {
          line.timeTo = to;
        }
      }
    },
  );

  readonly safety = this.line(
    (): Line<tree.SafetyStatement> => ({ duties: [] }),
    (line) => {
      const duties: tree.SafetyStatement["duties"][number][] = [];
      line.duties = duties;
      this.list(this.duty, duties);
    },
  );

  protected readonly duty = this.part(AT_COMMA, (duties: tree.SafetyStatement["duties"][number][]): void => {
    const draft = { name: undefined as never, span: NO_SPAN } as Draft<(typeof duties)[number]>;
    this.spanned(draft, () => {
      const said = this.spelt(DUTY_SPELLINGS);
      draft.name = said
        ? { kind: "name", text: said.plain, span: said.span }
        : make.makeName(this.take(t.Word, "a duty"));
      duties.push(draft);
      if (this.at(t.NumberToken)) {
        draft.airChanges = this.quantity("the air changes");
      }
    });
    this.endOfPart(undefined, isAnd);
  });

  readonly follow = this.line(
    (): Line<tree.FollowStatement> => ({}),
    (line) => {
      this.call((call) => {
        line.call = call;
      }, []);
    },
  );

  readonly note = this.line(
    (): Line<tree.NoteStatement> => ({}),
    (line) => {
      line.text = make.makeTitle(this.take(t.StringToken, "a text in double quotes"));
    },
  );

  readonly apply = this.line(
    (): Line<tree.ApplyStatement> => ({ targets: [] }),
    (line) => {
      const targets: tree.Target[] = [];
      line.targets = targets;
      this.call(
        (call) => {
          line.call = call;
        },
        [t.To],
      );
      this.take(t.To, "`to` and a surface");
      this.list(this.target, targets);
    },
  );

  protected readonly target = this.part(AT_COMMA, (targets: tree.Target[]): void => {
    const draft: Draft<tree.Target> = { kind: "target", span: NO_SPAN };
    targets.push(draft);
    this.spanned(draft, () => {
      draft.surface = this.spelling(ALL_SURFACES) ?? this.nameOf(this.take(t.Word, "a surface"));
      if (this.at(t.Dot)) {
        this.take(t.Dot);
        draft.piece = draft.surface;
        draft.surface = undefined;
        draft.surface = this.nameOf(this.take(t.Word, "a surface after the piece"));
      }
    });
    this.endOfPart(undefined, isAnd);
  });
}

const isAnd = (next: TokenType): boolean => next === t.And;
const ALL_SURFACES: Readonly<Record<string, string>> = { everything: "all", "all surfaces": "all" };
const AMOUNTS: ReadonlySet<string> = new Set(["g/m2", "mL/m2"]);
const COATS_WORD = phrases("coats");
const BETWEEN_COATS = phrases("between coats", "between");
const COATS_BEHIND = phrases("coats", "coat");
const OF = phrases("of");
const OFF = phrases("off");
const FOR = phrases("for");
const IT_IS = phrases("it is", "they are", "the coat is");
const ARTICLES = phrases("a", "the");
const OVERNIGHT: Readonly<Record<string, string>> = { "over night": "overnight", "one night": "overnight" };

/** `x 2 to 3` */
function coatsText({ coats, coatsTo }: LayerLine): string {
  const to = coatsTo === undefined ? "" : ` to ${valueText(coatsTo)}`;
  return coats === undefined ? "" : `x ${valueText(coats)}${to}`;
}

function emptyHead(): HeadLine {
  return { parameters: [] };
}

/** The words of the tails that may stand on a line. */
function tailNames(owner: Owner): string {
  const names = Object.keys(TAILS).filter((word) => TAILS[word]!.on === "both" || TAILS[word]!.on === owner);
  const quoted = names.map((name) => `\`${name}\``);
  return `${quoted.slice(0, -1).join(", ")} or ${quoted.at(-1)}`;
}
