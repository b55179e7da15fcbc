/**
 * Parses one logical line at a time, with one entry rule for each form of a line: this file has the heads of
 * declarations and the statements of recipes and jobs, `parser-fields.ts` the fields, `parser-parts.ts` what they share.
 *
 * The grammar is LL(2): what comes next is decided by one token, in a few places by two.  Which words a vocabulary has is not checked here, with two exceptions: a known verb says what
 * must follow it, and a tail starts with the word of a tail, since nothing could be read otherwise.
 */
import * as make from "./literals.ts";
import { FieldParser } from "./parser-fields.ts";
import { AT_COMMA, type Draft, NO_SPAN } from "./parser-parts.ts";
import type { TokenType } from "./tokens.ts";
import * as t from "./tokens.ts";
import type * as tree from "./tree.ts";
import { TAILS, VERBS, type VerbForm } from "./vocabulary.ts";

/** What a statement says, without keyword, span, documentation and block. */
type Line<S> = Draft<Omit<S, "kind" | "keyword" | "span" | "docs" | "block" | "fields">>;
type StepLine = Line<tree.StepStatement>;
type LayerLine = Line<tree.LayerStatement>;
type Owner = "step" | "layer";
type TailOf<K> = Draft<Extract<tree.Tail, { readonly kind: K }>>;

/** What the head of a declaration or surface says. */
export interface HeadLine {
  name?: tree.Name;
  title?: tree.Title;
  parameters: readonly tree.Parameter[];
}

/** Where a tail can begin, or what is taken for one. */
const AT_TAIL: readonly TokenType[] = [t.Comma, ...t.TAIL_TYPES, t.X];

export class LineParser extends FieldParser {
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

  protected readonly stepMain = this.part(AT_TAIL, (line: StepLine): void => {
    const verb = make.makeName(this.take(t.Word, "a verb"));
    const known = Object.hasOwn(VERBS, verb.text) ? VERBS[verb.text] : undefined;
    const isForm = (...forms: VerbForm[]) => known === undefined || forms.includes(known.form);
    line.verb = verb;
    this.useExample(known?.example);
    if (isForm("material", "optional-material") && this.at(t.With)) {
      this.take(t.With);
      line.material = this.nameOf(this.take(t.Word, "a material"));
    } else if (isForm("what") && this.at(t.StringToken)) {
      line.what = make.makeTitle(this.take(t.StringToken));
    } else if (
      known === undefined ? !this.isTailNext() && this.atValue() : known.form === "grits" && this.atValue()
    ) {
      this.grits(line);
    } else if (!isForm("none", "optional-material")) {
      throw this.mismatch(needOf(known?.form));
    }
    // `unmask` takes all of it off, so a name behind it would promise what is not done.
    const saysHow = known !== undefined && known.form !== "what" && verb.text !== "unmask";
    if (saysHow && this.at(t.StringToken)) {
      line.what = make.makeTitle(this.take(t.StringToken));
    }
    this.endOfPart(undefined, (next) => t.TAIL_TYPES.has(next));
  });

  private grits(line: StepLine): void {
    if (this.at(t.Wet)) {
      line.wet = make.makeName(this.take(t.Wet));
    }
    const grits = [this.value("a grit")];
    line.grits = grits;
    while (this.at(t.Comma) && this.isGritNext()) {
      this.take(t.Comma);
      grits.push(this.value("a grit"));
    }
  }

  /** After the comma: a number, or a name that is the whole part. */
  private isGritNext(): boolean {
    const [next, after] = [this.peek(2).type, this.peek(3).type];
    const isAlone = after === t.Comma || after === t.End;
    return next === t.NumberToken || (next === t.Word && isAlone);
  }

  private isTailNext(): boolean {
    const { type } = this.peek(1);
    return t.TAIL_TYPES.has(type) && type !== t.Wet;
  }

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
    const material = this.nameOf(this.take(t.Word, "a material"));
    line.material = material;
    if (this.at(t.X)) {
      this.take(t.X);
      line.coats = this.value("a number of coats");
    }
    this.endOfPart(undefined, (next) => t.TAIL_TYPES.has(next));
  });

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
      if (tail !== undefined) {
        tail(tails);
      } else if (owner === "layer" && this.at(t.X)) {
        const sign = this.take(t.X);
        this.keepLateCoats(layer, sign.start, this.value("a number of coats"));
      } else {
        throw this.mismatch(tailNames(owner));
      }
      this.checkOwner(owner, tails.at(-1));
      this.endOfPart(undefined, (next) => t.TAIL_TYPES.has(next));
    },
  );

  protected readonly by = this.tailRule("by", t.By, (draft: TailOf<"by">) => {
    draft.method = make.makeName(this.take(t.Word, "a method: brush, roller, pad or another"));
  });

  protected readonly wiped = this.tailRule("wiped", t.Wiped, (draft: TailOf<"wiped">) => {
    if (this.at(t.After)) {
      this.take(t.After);
      draft.after = this.value("a time");
    }
  });

  protected readonly thinned = this.tailRule("thinned", t.Thinned, (draft: TailOf<"thinned">) => {
    draft.ratio = this.ratio();
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
    draft.thickness = this.value("a thickness");
  });

  protected readonly takes = this.tailRule("takes", t.Takes, (draft: TailOf<"takes">) => {
    draft.time = this.value("a time");
  });

  protected readonly uses = this.tailRule("uses", t.Uses, (draft: TailOf<"uses">) => {
    draft.amount = this.value("an amount");
  });

  private tailRule<K extends tree.Tail["kind"]>(kind: K, type: TokenType, body: (draft: TailOf<K>) => void) {
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

  /** `layer clear, x 3` */
  private keepLateCoats(layer: LayerLine | undefined, start: number, coats: tree.Value): void {
    const span = { start, end: coats.span.end };
    const message = "`x` and the number of coats follow the name without a comma, such as `layer clear x 3`";
    const nameEnd = layer?.material?.span.end;
    if (layer === undefined || nameEnd === undefined || layer.coats !== undefined || layer.tails.length > 0) {
      this.report({ message, span });
    } else {
      const fix = { title: "Remove the comma", span: { start: nameEnd, end: start }, text: " " };
      this.report({ message, span, fix });
    }
    if (layer !== undefined) {
      layer.coats ??= coats;
    }
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
        line.until = make.makeName(this.take(t.Word, "`touch`, `recoat` or `cured`"));
      } else if (this.at(t.Overnight)) {
        line.overnight = make.makeName(this.take(t.Overnight));
      } else {
        line.time = this.value("a time, `overnight`, or `until` and a stage");
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
      draft.name = make.makeName(this.take(t.Word, "a duty"));
      duties.push(draft);
      if (this.at(t.NumberToken)) {
        draft.airChanges = this.quantity("the air changes");
      }
    });
    this.endOfPart();
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
      draft.surface = this.nameOf(this.take(t.Word, "a surface"));
      if (this.at(t.Dot)) {
        this.take(t.Dot);
        draft.piece = draft.surface;
        draft.surface = undefined;
        draft.surface = this.nameOf(this.take(t.Word, "a surface after the piece"));
      }
    });
    this.endOfPart();
  });
}

function emptyHead(): HeadLine {
  return { parameters: [] };
}

/** What must follow a verb. */
function needOf(form: VerbForm | undefined): string {
  switch (form) {
    case "material":
      return "`with` and a material";
    case "grits":
      return "a grit";
    case "what":
      return "a text in double quotes";
    default:
      return "the end of the line or a comma";
  }
}

/** The words of the tails that may stand on a line. */
function tailNames(owner: Owner): string {
  const names = Object.keys(TAILS).filter((word) => TAILS[word]!.on === "both" || TAILS[word]!.on === owner);
  const quoted = names.map((name) => `\`${name}\``);
  return `${quoted.slice(0, -1).join(", ")} or ${quoted.at(-1)}`;
}
