/**
 * Parses one logical line at a time, with one entry rule for each form of a line: this file has the heads of
 * declarations and the other statements of recipes and jobs, `parser-safety.ts` duties, `parser-records.ts` the record of a
 * job, `parser-layers.ts` layers with `parser-coats.ts`, `parser-methods.ts` and `parser-tails.ts`, `parser-steps.ts` steps
 * and waits, `parser-fields.ts` the fields with `parser-labels.ts` those of labels, `parser-existing.ts` those of old
 * finishes and `parser-words.ts` those of words, `parser-shapes.ts` shapes, and `parser-parts.ts` what they share.
 *
 * The grammar is LL(2): what comes next is decided by one token, in a few places by two. Which words a vocabulary has is
 * not checked here, with two exceptions: a known verb says what must follow it, and a tail starts with the word of a tail,
 * since nothing could be read otherwise.
 */

import { newerNotation } from "./line-problems.ts";
import { AT_COMMA } from "./line-reader.ts";
import * as make from "./literals.ts";
import { SafetyParser } from "./parser-safety.ts";
import type { Line } from "./parser-steps.ts";
import type { TokenType } from "./tokens.ts";
import * as Token from "./tokens.ts";
import type * as tree from "./tree.ts";
import { NOTATION_VERSION } from "./vocabulary.ts";

/** What the head of a declaration or surface says. */
export interface HeadLine {
  name?: tree.Name;
  title?: tree.Title;
  parameters: readonly tree.Parameter[];
}

export class LineParser extends SafetyParser {
  // -------------------------------------------------------------------------------------------------------------
  // Heads

  readonly useHead = this.line(
    (): { path?: tree.Title; notation?: tree.NumberLiteral } => ({}),
    (line) => {
      if (this.isWordAt("notation", 1)) {
        this.skip(1);
        const version = make.makeNumber(
          this.take(Token.NumberToken, "the version, such as `use notation 0.2`"),
        );
        line.notation = version;
        if (isNewer(version.text, NOTATION_VERSION)) {
          this.report(newerNotation(version, NOTATION_VERSION));
        }
        return;
      }
      line.path = make.makeTitle(this.take(Token.StringToken, "a file in double quotes"));
    },
  );

  readonly head = this.line(emptyHead, (line) => {
    this.headName(line);
    if (this.at(Token.StringToken)) {
      line.title = make.makeTitle(this.take(Token.StringToken));
    }
  });

  readonly surfaceHead = this.head;

  readonly recipeHead = this.line(emptyHead, (line) => {
    const parameters: tree.Parameter[] = [];
    line.parameters = parameters;
    this.headName(line);
    if (this.at(Token.StringToken)) {
      line.title = make.makeTitle(this.take(Token.StringToken));
    }
    if (this.at(Token.LeftParen)) {
      this.take(Token.LeftParen);
      if (this.at(Token.Word)) {
        this.list(this.parameter, parameters);
      }
      this.closeParen();
    }
    if (this.at(Token.StringToken)) {
      const title = make.makeTitle(this.take(Token.StringToken));
      line.title ??= title;
    }
  });

  private headName(line: HeadLine): void {
    if (this.at(Token.Word)) {
      line.name = this.nameOf(this.take(Token.Word));
    } else {
      this.report(this.expectedNext("a name"));
    }
  }

  // -------------------------------------------------------------------------------------------------------------
  // Other statements

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
      line.text = this.textOfLine();
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
        [Token.To],
      );
      if (line.call?.name !== undefined && this.at(Token.End)) {
        // What it goes on is plain where the job has one surface.
        return;
      }
      this.take(Token.To, "`to` and a surface");
      this.list(this.target, targets);
    },
  );

  protected readonly target = this.part(AT_COMMA, (targets: tree.Target[]): void => {
    this.surfaceOf(targets);
    this.endOfPart(undefined, isAnd);
  });
}

const isAnd = (next: TokenType): boolean => next === Token.And;

function emptyHead(): HeadLine {
  return { parameters: [] };
}

/** Whether a version is later than another: 0.10 is later than 0.9. */
function isNewer(version: string, than: string): boolean {
  const [a = 0, b = 0] = version.split(".").map(Number);
  const [c = 0, d = 0] = than.split(".").map(Number);
  return a > c || (a === c && b > d);
}
