/**
 * Parses one logical line at a time, with one entry rule for each form of a line: this file has the heads of
 * declarations and the statements of recipes and jobs, `parser-fields.ts` the fields, `parser-parts.ts` what they share.
 *
 * The grammar is LL(2).  Which words a vocabulary has is not checked here, with two exceptions: a known verb says what
 * must follow it, and a tail starts with the word of a tail, since nothing could be read otherwise.
 */
import { EOF } from "chevrotain";
import * as make from "./literals.ts";
import { FieldParser } from "./parser-fields.ts";
import { type Draft, NO_SPAN } from "./parser-parts.ts";
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

export class LineParser extends FieldParser {
  constructor(options: { readonly validate: boolean }) {
    super(options);
    this.performSelfAnalysis();
  }

  // -------------------------------------------------------------------------------------------------------------
  // Heads

  readonly useHead = this.line(
    "useHead",
    (): { path?: tree.Title } => ({}),
    (line) => {
      line.path = make.makeTitle(this.CONSUME(t.StringToken, { ERR_MSG: "a file in double quotes" }));
    },
  );

  readonly head = this.line("head", emptyHead, (line) => {
    this.headName(line);
    this.OPTION2(() => {
      line.title = make.makeTitle(this.CONSUME(t.StringToken));
    });
  });

  readonly surfaceHead = this.line("surfaceHead", emptyHead, (line) => this.headName(line));

  readonly recipeHead = this.line("recipeHead", emptyHead, (line) => {
    const parameters: tree.Parameter[] = [];
    line.parameters = parameters;
    this.headName(line);
    this.OPTION2(() => {
      line.title = make.makeTitle(this.CONSUME1(t.StringToken));
    });
    this.OPTION3(() => {
      this.CONSUME(t.LeftParen);
      this.OPTION4(() => {
        this.SUBRULE1(this.parameter, { ARGS: [parameters] });
        this.MANY(() => {
          this.CONSUME(t.Comma);
          this.SUBRULE2(this.parameter, { ARGS: [parameters] });
        });
      });
      this.closeParen();
    });
    this.OPTION5(() => {
      const title = make.makeTitle(this.CONSUME2(t.StringToken));
      line.title ??= title;
    });
  });

  private headName(line: HeadLine): void {
    const name = this.OPTION1(() => this.CONSUME1(t.Word));
    this.ACTION(() => {
      if (name === undefined) {
        this.report(this.expectedNext("a name"));
      } else {
        line.name = this.nameOf(name);
      }
    });
  }

  // -------------------------------------------------------------------------------------------------------------
  // Steps

  readonly step = this.line(
    "step",
    (): StepLine => ({ grits: [], tails: [] }),
    (line) => {
      const tails: tree.Tail[] = [];
      line.tails = tails;
      this.SUBRULE(this.stepMain, { ARGS: [line] });
      this.tailList("step", tails);
    },
  );

  protected readonly stepMain = this.part("stepMain", (line: StepLine): void => {
    const verb = make.makeName(this.CONSUME1(t.Word, { ERR_MSG: "a verb" }));
    const known = Object.hasOwn(VERBS, verb.text) ? VERBS[verb.text] : undefined;
    const isForm = (...forms: VerbForm[]) => known === undefined || forms.includes(known.form);
    this.ACTION(() => {
      line.verb = verb;
      this.useExample(known?.example);
    });
    this.OR({
      DEF: [
        {
          GATE: () => isForm("material", "optional-material"),
          ALT: () => {
            this.CONSUME(t.With);
            const material = this.nameOf(this.CONSUME2(t.Word, { ERR_MSG: "a material" }));
            this.ACTION(() => {
              line.material = material;
            });
          },
        },
        {
          GATE: () => isForm("what"),
          ALT: () => {
            const what = make.makeTitle(this.CONSUME(t.StringToken));
            this.ACTION(() => {
              line.what = what;
            });
          },
        },
        {
          GATE: () => known?.form === "grits" || (known === undefined && !this.isTailNext()),
          ALT: () => this.SUBRULE(this.grits, { ARGS: [line] }),
        },
        { GATE: () => isForm("none", "optional-material"), ALT: () => undefined },
      ],
      ERR_MSG: needOf(known?.form),
    });
    this.OPTION({
      // `unmask` takes all of it off, so a name behind it would promise what is not done.
      GATE: () => known !== undefined && known.form !== "what" && verb.text !== "unmask",
      DEF: () => {
        const how = make.makeTitle(this.CONSUME2(t.StringToken));
        this.ACTION(() => {
          line.what = how;
        });
      },
    });
    this.endOfPart(undefined, (next) => t.TAIL_TYPES.has(next));
  });

  protected readonly grits = this.inner("grits", (line: StepLine): void => {
    const grits: tree.Value[] = [];
    this.ACTION(() => {
      line.grits = grits;
    });
    this.OPTION(() => {
      const wet = make.makeName(this.CONSUME(t.Wet));
      this.ACTION(() => {
        line.wet = wet;
      });
    });
    const first = this.SUBRULE1(this.value, { ARGS: ["a grit"] });
    this.ACTION(() => grits.push(first));
    this.MANY({
      GATE: () => this.isGritNext(),
      DEF: () => {
        this.CONSUME(t.Comma);
        const next = this.SUBRULE2(this.value, { ARGS: ["a grit"] });
        this.ACTION(() => grits.push(next));
      },
    });
  });

  /** After the comma: a number, or a name that is the whole part. */
  private isGritNext(): boolean {
    const [next, after] = [this.LA(2).tokenType, this.LA(3).tokenType];
    const isAlone = after === t.Comma || after === EOF;
    return next === t.NumberToken || (next === t.Word && isAlone);
  }

  private isTailNext(): boolean {
    return t.TAIL_TYPES.has(this.LA(1).tokenType) && this.LA(1).tokenType !== t.Wet;
  }

  // -------------------------------------------------------------------------------------------------------------
  // Layers and tails

  readonly layer = this.line(
    "layer",
    (): LayerLine => ({ tails: [] }),
    (line) => {
      const tails: tree.Tail[] = [];
      line.tails = tails;
      this.SUBRULE(this.layerMain, { ARGS: [line] });
      this.tailList("layer", tails, line);
    },
  );

  protected readonly layerMain = this.part("layerMain", (line: LayerLine): void => {
    const material = this.nameOf(this.CONSUME(t.Word, { ERR_MSG: "a material" }));
    this.ACTION(() => {
      line.material = material;
    });
    this.OPTION(() => {
      this.CONSUME(t.X);
      const coats = this.SUBRULE(this.value, { ARGS: ["a number of coats"] });
      this.ACTION(() => {
        line.coats = coats;
      });
    });
    this.endOfPart(undefined, (next) => t.TAIL_TYPES.has(next));
  });

  private tailList(owner: Owner, tails: tree.Tail[], layer?: LayerLine): void {
    this.MANY({
      GATE: () => this.LA(1).tokenType === t.Comma || t.TAIL_TYPES.has(this.LA(1).tokenType),
      DEF: () => {
        this.commaBefore();
        this.SUBRULE(this.tail, { ARGS: [owner, tails, layer] });
      },
    });
  }

  protected readonly tail = this.part(
    "tail",
    (owner: Owner, tails: tree.Tail[], layer: LayerLine | undefined): void => {
      this.useExample(undefined);
      this.OR({
        DEF: [
          { ALT: () => this.SUBRULE(this.by, { ARGS: [tails] }) },
          { ALT: () => this.SUBRULE(this.wiped, { ARGS: [tails] }) },
          { ALT: () => this.SUBRULE(this.thinned, { ARGS: [tails] }) },
          { ALT: () => this.SUBRULE(this.tinted, { ARGS: [tails] }) },
          { ALT: () => this.SUBRULE(this.as, { ARGS: [tails] }) },
          { ALT: () => this.SUBRULE(this.wet, { ARGS: [tails] }) },
          { ALT: () => this.SUBRULE(this.takes, { ARGS: [tails] }) },
          { ALT: () => this.SUBRULE(this.uses, { ARGS: [tails] }) },
          {
            GATE: () => owner === "layer",
            ALT: () => {
              const sign = this.CONSUME(t.X);
              const coats = this.SUBRULE(this.value, { ARGS: ["a number of coats"] });
              this.ACTION(() => this.keepLateCoats(layer, sign.startOffset, coats));
            },
          },
        ],
        ERR_MSG: tailNames(owner),
      });
      this.ACTION(() => this.checkOwner(owner, tails.at(-1)));
      this.endOfPart(undefined, (next) => t.TAIL_TYPES.has(next));
    },
  );

  protected readonly by = this.tailRule("by", t.By, (draft: TailOf<"by">) => {
    draft.method = make.makeName(
      this.CONSUME2(t.Word, { ERR_MSG: "a method: brush, roller, pad or another" }),
    );
  });

  protected readonly wiped = this.tailRule("wiped", t.Wiped, (draft: TailOf<"wiped">) => {
    this.OPTION(() => {
      this.CONSUME(t.After);
      draft.after = this.SUBRULE(this.value, { ARGS: ["a time"] });
    });
  });

  protected readonly thinned = this.tailRule("thinned", t.Thinned, (draft: TailOf<"thinned">) => {
    draft.ratio = this.SUBRULE(this.ratio);
    this.CONSUME(t.With, { ERR_MSG: "`with` and a thinner" });
    draft.thinner = this.nameOf(this.CONSUME2(t.Word, { ERR_MSG: "a thinner" }));
  });

  protected readonly tinted = this.tailRule("tinted", t.Tinted, (draft: TailOf<"tinted">) => {
    draft.share = this.SUBRULE(this.value, { ARGS: ["a share in %"] });
    this.CONSUME(t.With, { ERR_MSG: "`with` and a tint" });
    draft.tint = this.nameOf(this.CONSUME2(t.Word, { ERR_MSG: "a tint" }));
  });

  protected readonly as = this.tailRule("as", t.As, (draft: TailOf<"as">) => {
    draft.role = make.makeName(this.CONSUME2(t.Word, { ERR_MSG: "`toner`" }));
  });

  protected readonly wet = this.tailRule("wet", t.Wet, (draft: TailOf<"wet">) => {
    draft.thickness = this.SUBRULE(this.value, { ARGS: ["a thickness"] });
  });

  protected readonly takes = this.tailRule("takes", t.Takes, (draft: TailOf<"takes">) => {
    draft.time = this.SUBRULE(this.value, { ARGS: ["a time"] });
  });

  protected readonly uses = this.tailRule("uses", t.Uses, (draft: TailOf<"uses">) => {
    draft.amount = this.SUBRULE(this.value, { ARGS: ["an amount"] });
  });

  private tailRule<K extends tree.Tail["kind"]>(
    kind: K,
    type: (typeof t)["By"],
    body: (draft: TailOf<K>) => void,
  ) {
    return this.inner(`${kind}Tail`, (tails: tree.Tail[]): void => {
      const draft = { kind, keyword: undefined, span: NO_SPAN } as never as TailOf<K>;
      this.ACTION(() => tails.push(draft as tree.Tail));
      this.spanned(draft as { span: tree.Span }, () => {
        (draft as { keyword: tree.Name }).keyword = make.makeName(this.CONSUME1(type));
        this.ACTION(() => this.useExample(TAILS[kind]!.example));
        body(draft);
      });
    });
  }

  /** `layer clear, x 3` */
  private keepLateCoats(layer: LayerLine | undefined, start: number, coats: tree.Value): void {
    const span = { start, end: coats.span.end };
    const message = "`x` and the number of coats follow the name without a comma, such as `layer clear x 3`";
    const nameEnd = layer?.material?.span.end;
    if (layer === undefined || nameEnd === undefined || layer.coats !== undefined || layer.tails.length > 0) {
      this.report({ message, span });
    } else {
      const mend = { title: "Remove the comma", span: { start: nameEnd, end: start }, text: " " };
      this.report({ message, span, mend });
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
    "wait",
    (): Line<tree.WaitStatement> => ({}),
    (line) => {
      this.OR({
        DEF: [
          {
            ALT: () => {
              this.CONSUME(t.Until);
              this.useExample("wait until recoat");
              line.until = make.makeName(this.CONSUME(t.Word, { ERR_MSG: "`touch`, `recoat` or `cured`" }));
            },
          },
          {
            ALT: () => {
              line.overnight = make.makeName(this.CONSUME(t.Overnight));
            },
          },
          {
            ALT: () => {
              line.time = this.SUBRULE(this.value, { ARGS: ["a time"] });
            },
          },
        ],
        MAX_LOOKAHEAD: 1,
        IGNORE_AMBIGUITIES: true,
        ERR_MSG: "a time, `overnight`, or `until` and a stage",
      });
    },
  );

  readonly safety = this.line(
    "safety",
    (): Line<tree.SafetyStatement> => ({ duties: [] }),
    (line) => {
      const duties: tree.SafetyStatement["duties"][number][] = [];
      line.duties = duties;
      this.list(this.duty, duties);
    },
  );

  protected readonly duty = this.part("duty", (duties: tree.SafetyStatement["duties"][number][]): void => {
    const draft = { name: undefined as never, span: NO_SPAN } as Draft<(typeof duties)[number]>;
    this.spanned(draft, () => {
      draft.name = make.makeName(this.CONSUME(t.Word, { ERR_MSG: "a duty" }));
      this.ACTION(() => duties.push(draft));
      this.OPTION(() => {
        draft.airChanges = this.SUBRULE(this.quantity, { ARGS: ["the air changes"] });
      });
    });
    this.endOfPart();
  });

  readonly follow = this.line(
    "follow",
    (): Line<tree.FollowStatement> => ({}),
    (line) => {
      this.SUBRULE(this.call, {
        ARGS: [
          (call) => {
            line.call = call;
          },
        ],
      });
    },
  );

  readonly note = this.line(
    "note",
    (): Line<tree.NoteStatement> => ({}),
    (line) => {
      line.text = make.makeTitle(this.CONSUME(t.StringToken, { ERR_MSG: "a text in double quotes" }));
    },
  );

  readonly apply = this.line(
    "apply",
    (): Line<tree.ApplyStatement> => ({ targets: [] }),
    (line) => {
      const targets: tree.Target[] = [];
      line.targets = targets;
      this.SUBRULE(this.call, {
        ARGS: [
          (call) => {
            line.call = call;
          },
        ],
      });
      this.CONSUME(t.To, { ERR_MSG: "`to` and a surface" });
      this.list(this.target, targets);
    },
  );

  protected readonly target = this.part("target", (targets: tree.Target[]): void => {
    const draft: Draft<tree.Target> = { kind: "target", span: NO_SPAN };
    this.ACTION(() => targets.push(draft));
    this.spanned(draft, () => {
      draft.surface = this.nameOf(this.CONSUME1(t.Word, { ERR_MSG: "a surface" }));
      this.OPTION(() => {
        this.CONSUME(t.Dot);
        draft.piece = draft.surface;
        draft.surface = undefined;
        draft.surface = this.nameOf(this.CONSUME2(t.Word, { ERR_MSG: "a surface after the piece" }));
      });
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
