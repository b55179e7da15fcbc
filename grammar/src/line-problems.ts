/**
 * Words the syntax errors of a line: what was expected, with an example of the line, and the fix where one is known.
 *
 * The parser says only what it wanted and where; class names of tokens never reach a message.  Two errors recur in every
 * grammar of a line and have one wording each: something is missing (`expected`), or something is too much (`extra`).
 */
import { gist, type Told, toldBy } from "./gist.ts";
import { endOf, type LexToken } from "./lexer.ts";
import { tokenSpan } from "./literals.ts";
import { lookUp } from "./look-up.ts";
import { weekdayName } from "./said-figures.ts";
import { Colon, Comma, Equals, LeftParen, NumberToken, RightParen } from "./tokens.ts";
import { t, translated } from "./translate.ts";
import type { Span, SyntaxProblem } from "./tree.ts";
import { RESERVED } from "./vocabulary.ts";

/** The line that is read: all its tokens, and an example of one that is right. */
export interface LineContext {
  readonly tokens: readonly LexToken[];
  readonly example: string | undefined;
  /** The plain form of the word that it starts with, where another was written. */
  readonly keyword?: string;
}

/** What takes a name of someone's choice. */
const NAMED = /^(?:a|the) (?:name|parameter|material|surface|recipe|job|thinner|tint)\b/u;

/** Something else, or nothing, stands where `what` was expected. */
export function expected(ctx: LineContext, what: Told, actual: LexToken | undefined): SyntaxProblem {
  const say = (reason: string): string =>
    gist((suchAs) => {
      const wanted = toldBy(what, suchAs);
      return t`expected ${wanted}${ctx.example === undefined ? "" : suchAs(ctx.example)}${reason}`;
    });
  if (actual === undefined) {
    const end = endOf(ctx.tokens.at(-1)!);
    return { message: say(""), span: { start: end, end } };
  }
  const isReserved =
    typeof what === "string" && NAMED.test(what) && RESERVED.some((word) => word === actual.text);
  const reason = isReserved ? t`; \`${actual.text}\` cannot be a name` : "";
  return { message: say(reason), span: tokenSpan(actual), ...sign(actual) };
}

/** The line should have ended at `first`, or a comma should stand before it. */
export function extra(ctx: LineContext, first: LexToken, where: string): SyntaxProblem {
  const last = lastOfPart(ctx, first);
  const span = { start: first.start, end: endOf(last) };
  const part = ctx.tokens.slice(ctx.tokens.indexOf(first), ctx.tokens.indexOf(last) + 1);
  const isWords =
    where.startsWith("the end of the line") &&
    first.kind === "word" &&
    part.length > 1 &&
    part.every(({ text }) => !/["{}()]/u.test(text));
  const how = isWords
    ? t`\nWords of your own stand in quotes, such as \`"${part.map(({ text }) => text).join(" ")}"\`, or on a line \`note "…"\`.`
    : "";
  return { message: t`expected ${translated(where)}${how}`, span, ...sign(first) };
}

/** A part of the line starts without the comma before it. */
export function missingComma(ctx: LineContext, first: LexToken): SyntaxProblem {
  const idx = ctx.tokens.indexOf(first);
  const at = endOf(ctx.tokens[idx - 1] ?? first);
  return {
    message: t`expected a comma before \`${first.text}\``,
    span: tokenSpan(first),
    fix: { title: t`Add the comma`, span: { start: at, end: at }, text: "," },
  };
}

/** A name has a hyphen, which only words of a vocabulary may have. */
export function hyphenInName(token: LexToken): SyntaxProblem {
  const span = tokenSpan(token);
  const text = token.text.replaceAll("-", "_");
  return {
    message: t`a name has no hyphen: expected \`${text}\``,
    span,
    fix: { title: t`Write \`${text}\``, span, text },
  };
}

/** `sand softly 320`: what is said of how stands in quotes, behind the grit. */
export function unquotedHow(word: LexToken, grit: LexToken): SyntaxProblem {
  return {
    message: gist(
      (suchAs) =>
        t`\`${word.text}\` is not a grit: write how it is done in quotes behind the grit${suchAs(`${grit.text} "${word.text}"`)}`,
    ),
    span: tokenSpan(word),
    fix: {
      title: t`Write \`${grit.text} "${word.text}"\``,
      span: { start: word.start, end: endOf(grit) },
      text: `${grit.text} "${word.text}"`,
    },
  };
}

/** `sand only where rough`: the grit is missing before what is said of how. */
export function gritBefore(verb: string, how: string, span: Span): SyntaxProblem {
  return {
    message: t`expected the grit, and behind it how it is done\nWrite, for example, \`step ${verb} 320 "${how}"\`.`,
    span,
  };
}

/** `sand 180 then scuff 400` */
export function twoSteps(before: LexToken, verb: LexToken): SyntaxProblem {
  return {
    message: t`these are two steps\nWrite \`step ${verb.text} …\` on a line of its own.`,
    span: { start: endOf(before), end: endOf(verb) },
    fix: {
      title: t`Write them on two lines`,
      span: { start: endOf(before), end: verb.start },
      text: "\n  step ",
    },
  };
}

/** `clean with spirit and soap` */
export function twoMaterials(and: LexToken, second: LexToken, verb: string): SyntaxProblem {
  return {
    message: t`a step takes one material\nWrite \`step ${verb} with ${second.text}\` on a line of its own.`,
    span: { start: and.start, end: endOf(second) },
    fix: {
      title: t`Write them on two lines`,
      span: { start: and.start, end: and.start + and.text.length },
      text: `\n  step ${verb} with`,
    },
  };
}

/** `no oil`, `10 min each`: what is no tail may stand in quotes. */
export function wordsUnquoted(names: string, text: string, span: Span): SyntaxProblem {
  return {
    message: t`expected ${names}\nWords of your own stand in quotes: \`"${text}"\`.`,
    span,
    fix: { title: t`Write \`"${text}"\``, span, text: `"${text}"` },
  };
}

/** `loss waste` */
export function lossByName({ text, span }: { readonly text: string; readonly span: Span }): SyntaxProblem {
  return {
    message: t`expected how much lands on the piece\nWrite \`transfer ${text}\`, and let the parameter be so many percent.`,
    span,
    fix: { title: t`Write \`transfer ${text}\``, span, text },
  };
}

/** `strip by contractor, 11.00 each, 3 days` */
export function outsourced(ctx: LineContext, first: LexToken): SyntaxProblem {
  const verb = ctx.tokens[1]?.text ?? "strip";
  return {
    message: t`a step names what it is done with\nWork that others do is told in quotes, such as \`step "${verb} at the contractor's", costs 11.00\`, and its days as a \`wait\`.`,
    span: { start: (ctx.tokens[1] ?? first).start, end: endOf(ctx.tokens.at(-1)!) },
  };
}

/** `dewax with spirit x 1 to 2` */
export function onceOrTwice(span: Span, most: string): SyntaxProblem {
  return {
    message: t`a step is done a number of times\nWrite the most that it may take, \`x ${most}\`.`,
    span,
    fix: { title: t`Write \`x ${most}\``, span, text: most },
  };
}

/** `thinner 10-20 %`, `5-10 % water` on a coat */
export function thinnedBy(percent: string, thinner: string, span: Span): SyntaxProblem {
  const share = Number(percent);
  const parts = share > 0 ? `${Math.round(10_000 / share) / 100}:1` : "10:1";
  const text = `thinned ${parts} with ${thinner}`;
  return {
    message: t`a coat is thinned in one ratio\nWrite \`${text}\`.`,
    span,
    fix: { title: t`Write \`${text}\``, span, text },
  };
}

/** `16 h until recoat` */
export function eitherWait(time: string, stage: string, span: Span): SyntaxProblem {
  return {
    message: t`a wait has a time or a stage\nWrite \`wait ${time}\` or \`wait until ${stage}\`.`,
    span,
  };
}

/** `layer paint x 2, wait 30 min`, of several coats or of one. */
export function waitOnLayer(span: Span, hasCoats: boolean): SyntaxProblem {
  if (!hasCoats)
    return {
      message: t`a wait has a line of its own, below the layer\nWrite, for example, \`wait until recoat\`.`,
      span,
    };
  return {
    message: t`a wait between coats goes in braces below the layer\nWrite, for example, \`layer clear x 2, between wait until recoat\`; a wait after the last coat has a line of its own.`,
    span,
    fix: {
      title: t`Wait between the coats`,
      span: { start: span.start, end: span.start },
      text: "between ",
    },
  };
}

/** What is meant is clear enough to be offered, and not to be taken for granted. */
export function ambiguous(message: string, span: Span, text: string): SyntaxProblem {
  return { message, span, fix: { title: t`Write \`${text}\``, span, text } };
}

/** `3/4/2027` */
export function eitherDay(span: Span, dayFirst: string, monthFirst: string): SyntaxProblem {
  return {
    message: t`this may be two days: write \`${dayFirst}\` or \`${monthFirst}\``,
    span,
    fix: { title: t`Write \`${dayFirst}\` (day first)`, span, text: dayFirst },
    others: [{ title: t`Write \`${monthFirst}\` (month first)`, span, text: monthFirst }],
  };
}

/** `Friday 2026-12-10` */
export function otherWeekday(span: Span, date: string, is: number, said: number): SyntaxProblem {
  return ambiguous(
    gist(
      (suchAs) =>
        t`${date} is a ${weekdayName(is)}, not a ${weekdayName(said)}: write the date that is meant${suchAs(date)}`,
    ),
    span,
    date,
  );
}

/** `Friday 12:00`, `end of December`, `11/27` */
export function vagueDate(ctx: LineContext, first: LexToken): SyntaxProblem {
  const span = { start: first.start, end: endOf(ctx.tokens.at(-1)!) };
  return {
    message: gist(
      (suchAs) =>
        t`which day this is depends on who reads it: write the whole date${suchAs(ctx.example ?? "2027-03-08")}`,
    ),
    span,
  };
}

/** `thinned 50 %` */
export function eitherThinning(span: Span, share: number, added: string, mixed: string): SyntaxProblem {
  const parts = `${share} %`;
  return {
    message: gist(
      (suchAs) =>
        t`${parts} may be added to the material (${added}) or be a share of the mix (${mixed}): write the ratio${suchAs(`thinned ${added}`)}`,
    ),
    span,
    fix: { title: t`Write \`${added}\`: added to the material`, span, text: added },
    others: [{ title: t`Write \`${mixed}\`: a share of the mix`, span, text: mixed }],
  };
}

/** `sheen gloss 10` */
export function eitherSheen(span: Span, word: string, units: string): SyntaxProblem {
  return {
    message: t`${units} gloss units are not ${word}: write \`sheen ${units}\` or \`sheen ${word}\``,
    span,
    fix: { title: t`Write \`sheen ${units}\``, span, text: units },
    others: [{ title: t`Write \`sheen ${word}\``, span, text: word }],
  };
}

/** `1.480` */
export function eitherSum(span: Span, whole: string, decimal: string): SyntaxProblem {
  return {
    message: t`the point may stand for thousands or for decimals: write \`${whole}\` or \`${decimal}\``,
    span,
    fix: { title: t`Write \`${whole}\``, span, text: whole },
    others: [{ title: t`Write \`${decimal}\``, span, text: decimal }],
  };
}

/** `recoat 2-3 h`: both readings are common on labels. */
export function windowOrEarliest(span: Span, from: string, to: string): SyntaxProblem {
  return {
    message: t`this may be the earliest time (after ${from} to ${to}) or a window (not before ${from}, not after ${to}): write \`recoat ${to}\` for the one, \`recoat ${from} to ${to}\` for the other`,
    span,
    fix: { title: t`Write \`recoat ${to}\`: the earliest time`, span, text: to },
    others: [{ title: t`Write \`recoat ${from} to ${to}\`: a window`, span, text: `${from} to ${to}` }],
  };
}

export function unclosedString(token: LexToken): SyntaxProblem {
  const span = tokenSpan(token);
  return {
    message: t`expected \`"\` at the end of this text`,
    span,
    fix: { title: t`Close the quotes`, span: { start: span.end, end: span.end }, text: '"' },
  };
}

/** `covers: 10 m2/L`, `covers = 10 m2/L` */
export function signAfterKeyword(keyword: LexToken, sign: LexToken): SyntaxProblem {
  return {
    message: t`nothing stands between \`${keyword.text}\` and its value: remove \`${sign.text}\``,
    span: tokenSpan(sign),
    fix: {
      title: t`Remove the \`${sign.text}\``,
      span: { start: endOf(keyword), end: endOf(sign) },
      text: "",
    },
  };
}

/** Whether a token could be meant as a sign between keyword and value. */
export function isSign(token: LexToken | undefined): boolean {
  return token?.type === Colon || token?.type === Equals;
}

/** The last token before the comma, the closing parenthesis or the end after `first`. */
function lastOfPart(ctx: LineContext, first: LexToken): LexToken {
  const rest = ctx.tokens.slice(ctx.tokens.indexOf(first));
  let depth = 0;
  const end = rest.findIndex((token, idx) => {
    const isEnd = idx > 0 && depth === 0 && (token.type === Comma || token.type === RightParen);
    depth += token.type === LeftParen ? 1 : token.type === RightParen ? -1 : 0;
    return isEnd;
  });
  return rest[end < 0 ? rest.length - 1 : end - 1] ?? first;
}

/** Signs that are typed by habit, and what the notation has for them. */
const HABITS: Readonly<Record<string, string>> = {
  "×": " x ",
  "–": " to ",
  "—": " to ",
  ";": ",",
  "*": " x ",
};

function sign(token: LexToken): { readonly fix?: SyntaxProblem["fix"] } {
  const span = tokenSpan(token);
  if (/^x\d/u.test(token.text)) {
    const at = span.start + 1;
    return { fix: { title: t`Add a space after \`x\``, span: { start: at, end: at }, text: " " } };
  }
  if (token.type === NumberToken && token.text.startsWith("-")) {
    return {
      fix: { title: t`Write \`to\``, span: { start: span.start, end: span.start + 1 }, text: " to " },
    };
  }
  const text = lookUp(HABITS, token.text);
  return text === undefined ? {} : { fix: { title: t`Write \`${text.trim()}\``, span, text } };
}

/** `air outdoors`: where the work is done is a line of its own. */
export function placeOutdoors(span: Span): SyntaxProblem {
  return {
    message: t`\`air\` is a temperature and a humidity\nWrite \`outdoors rain, sun\` on a line of its own, and the air as \`air 12 C, 70 % RH\`.`,
    span,
  };
}

/** `existing shellac by alcohol_test`: what a test showed is a line of its own. */
export function testedBy(span: Span): SyntaxProblem {
  return {
    message: t`what a test showed is a line of its own\nWrite \`tested alcohol softens\`, and here what is on it, such as \`existing waxed shellac\`.`,
    span,
  };
}

/** `limits 8 C, no rain`: what is no figure is said in words. */
export function weatherInWords(span: Span, words: string): SyntaxProblem {
  return {
    message: t`limits are temperatures and a humidity\nPut the rest in a line above the material, \`## ${words}\`.`,
    span,
  };
}

/** `4 of 12 pieces` on a step */
export function onSomePieces(first: LexToken, last: LexToken): SyntaxProblem {
  return {
    message: t`a line is done on every piece\nDeclare those as a piece of their own, such as \`piece broken_chair\`, and apply a recipe with this line to them.`,
    span: { start: first.start, end: endOf(last) },
  };
}

/** `hours Mon to Fri from 16:00` */
export function openEnd(ctx: LineContext, first: LexToken, line: string): SyntaxProblem {
  return {
    message: t`opening hours need their end as well\nWrite, for example, \`${line}\`.`,
    span: { start: first.start, end: endOf(lastOfPart(ctx, first)) },
  };
}

/** `loss 60 %` of a whole job */
export function eitherLoss(span: Span, percent: number): SyntaxProblem {
  return {
    message: t`so much does not stay in pot and brush: write what does, such as \`spare 10 %\`, and what a gun sprays past the piece on the layer, \`by spray, transfer ${Math.round((100 - percent) * 100) / 100} %\``,
    span,
  };
}

/** `after ends racked`, `after carvers.trial` */
export function afterPart(ctx: LineContext, first: LexToken, job: string): SyntaxProblem {
  const span = { start: first.start, end: endOf(ctx.tokens.at(-1)!) };
  return {
    message: t`a job follows all of another one\nWrite \`after ${job}\`; what lies between is a job of its own.`,
    span,
    fix: { title: t`Write \`after ${job}\``, span, text: "" },
  };
}

/** `film 120 um`: wet it says how much goes on, dry what is left of it. */
export function filmOfLabel(span: Span): SyntaxProblem {
  return {
    message: t`a film may be the wet or the dry one\nWrite the wet one with its word, such as \`film 120 um wet\`, or how much goes on, such as \`covers 120 mL/m2\`.`,
    span,
  };
}

/** `use notation 0.9`, where less is known. */
export function newerNotation(
  { text, span }: { readonly text: string; readonly span: Span },
  known: string,
): SyntaxProblem {
  return {
    message: t`this file is written in notation ${text}, and ${known} is read here\nUpdate Finishwright.`,
    span,
  };
}
