/**
 * Reads a `job` declaration. Names of pieces, recipes, surfaces and shops are resolved later, against the program.
 */

import { gist } from "../../../../grammar/src/gist.ts";
import { t, translated } from "../../../../grammar/src/translate.ts";
import type {
  ApplyStatement,
  FieldStatement,
  FieldValue,
  JobDeclaration,
} from "../../../../grammar/src/tree.ts";
import { readRecords } from "./lower-record.ts";
import {
  fieldsByWord,
  type Lowering,
  notesIn,
  PIECES,
  placeOf,
  readAmount,
  readDate,
  readMoney,
  readTexts,
  readTime,
  report,
  SHARE,
  stated,
  within,
} from "./lowering.ts";
import type { Job, JobPiece, JobRecord, Named } from "./model.ts";

type Form<F extends FieldValue["form"]> = Extract<FieldValue, { form: F }>;

export function lowerJob(ctx: Lowering, syntax: JobDeclaration, named: Named): Job {
  const fields = fieldsByWord(ctx, "job", syntax.fields, syntax.headSpan);
  const applies = syntax.fields.filter((f): f is ApplyStatement => f.kind === "apply");
  const done = syntax.fields.filter((f) => f.kind === "done");
  const records = done.length > 0 ? (readRecords(ctx, done) ?? []) : [];
  if (applies.length === 0) {
    report(
      ctx,
      "missing-field",
      syntax.headSpan,
      t`This job applies no recipe\nAdd a line such as \`apply hard_clear(clear: hall_clear) to top\`.`,
    );
  }
  const spare = (fields.get("spare")?.[0]?.value as Form<"quantity"> | undefined)?.quantity;
  const spareAmount = readAmount(ctx, spare, ["share"], SHARE);
  const supplies = fields.get("supplies")?.[0];
  const suppliesAmount = readMoney(ctx, (supplies?.value as Form<"money"> | undefined)?.amount);
  const budget = fields.get("budget")?.[0];
  const budgetAmount = readMoney(ctx, (budget?.value as Form<"money"> | undefined)?.amount);
  return {
    ...named,
    kind: "job",
    records,
    ...(done.length > 0 && records.length === 0 ? { uncounted: placeOf(ctx, done[0]!.span) } : {}),
    pieces: distinctPieces(ctx, fields.get("piece") ?? []),
    shop: readReference(ctx, fields.get("in")?.[0]) as Job["shop"],
    start: readMoment(ctx, fields.get("start")?.[0]) ?? firstOf(records),
    ready: readMoment(ctx, fields.get("ready")?.[0]),
    budget:
      budgetAmount === undefined ? undefined : { amount: budgetAmount, place: placeOf(ctx, budget!.span) },
    applies: applies.map((apply) => ({ syntax: apply, place: placeOf(ctx, apply.span) })),
    spare: spareAmount ? stated(ctx, spareAmount.value, spareAmount.span) : { value: 10, origin: "default" },
    supplies: suppliesAmount === undefined ? undefined : stated(ctx, suppliesAmount, supplies!.span),
    after: readAfter(ctx, fields.get("after")?.[0]),
    owner: readTexts(fields.get("owner"))[0],
    delivery: readTexts(fields.get("delivery"))[0],
    notes: [
      ...inWords("Start", fields.get("start")?.[0]),
      ...inWords("Wanted", fields.get("ready")?.[0]),
      ...wantedFor(fields.get("ready")?.[0]),
      ...notesIn(syntax.fields),
    ],
  };
}

/** A day that only its writer can place, as a note. */
function inWords(word: string, statement: FieldStatement | undefined): readonly string[] {
  const value = statement?.value as Form<"moment"> | undefined;
  return value?.what && !value.date ? [`${word}: ${value.what.value}.`] : [];
}

/** What it is wanted for, as a note. */
function wantedFor(statement: FieldStatement | undefined): readonly string[] {
  const value = statement?.value as Form<"moment"> | undefined;
  return value?.what && value.date ? [t`Wanted by ${value.date.text} ${value.what.value}.`] : [];
}

/** A job whose line does not say when it begins has begun with its record. */
function firstOf([first]: readonly JobRecord[]): Job["start"] {
  return first && { date: first.at.slice(0, 10), time: first.at.slice(11), place: first.place };
}

function distinctPieces(ctx: Lowering, statements: readonly FieldStatement[]): readonly JobPiece[] {
  const seen = new Map<string, FieldStatement>();
  return statements.flatMap((statement) => {
    const value = statement.value as Form<"pieces">;
    if (!value.name) return [];
    const first = seen.get(value.name.text);
    if (first) {
      ctx.findings.push({
        rule: "repeated-field",
        span: statement.span,
        message: t`\`${value.name.text}\` already stands in this job\nSay how many with \`x\`, such as \`piece ${value.name.text} x 2\`.`,
        related: [{ span: first.span, message: t`It stands here first` }],
      });
      return [];
    }
    seen.set(value.name.text, statement);
    return [{ piece: value.name.text, count: readCount(ctx, value), place: placeOf(ctx, value.name.span) }];
  });
}

function readCount(ctx: Lowering, value: Form<"pieces">): number {
  const count = value.count;
  if (!count) return 1;
  const number = count.kind === "quantity" && count.parts.length === 1 ? count.parts[0]! : undefined;
  if (!number) {
    report(
      ctx,
      "syntax",
      count.span,
      gist((suchAs) => t`Expected how many pieces${suchAs("piece reading_table x 2")}.`),
    );
    return 1;
  }
  if (number.unit) {
    report(
      ctx,
      "wrong-unit",
      count.span,
      gist((suchAs) => t`A number of pieces has no unit${suchAs("piece reading_table x 2")}.`),
    );
    return 1;
  }
  if (!within(number.number.value, PIECES)) {
    report(ctx, "bad-number", count.span, t`The number of pieces must be ${translated(PIECES.words)}.`);
    return 1;
  }
  return number.number.value;
}

function readReference(
  ctx: Lowering,
  statement: FieldStatement | undefined,
): { name: string; place: ReturnType<typeof placeOf> } | undefined {
  const name = (statement?.value as Form<"name"> | undefined)?.name;
  return name && { name: name.text, place: placeOf(ctx, name.span) };
}

function readAfter(ctx: Lowering, statement: FieldStatement | undefined): Job["after"] {
  const reference = readReference(ctx, statement);
  return reference && { job: reference.name, place: reference.place };
}

function readMoment(ctx: Lowering, statement: FieldStatement | undefined): Job["start"] {
  const value = statement?.value as Form<"moment"> | undefined;
  const date = value?.date && readDate(ctx, value.date.text, value.date.span);
  const time = value?.time && readTime(ctx, value.time.text, value.time.span);
  if (!date || !statement) return undefined;
  const place = placeOf(ctx, statement.span);
  if (!value?.time || time === undefined) return { date, place };
  return {
    date,
    time: `${String(Math.floor(time / 60)).padStart(2, "0")}:${String(time % 60).padStart(2, "0")}`,
    place,
  };
}
