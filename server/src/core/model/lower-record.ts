/** Reads the record of a job: its `done` lines, in the order of time. */
import { t } from "../../../../grammar/src/translate.ts";
import type { DoneFact, DoneStatement, Range, Span } from "../../../../grammar/src/tree.ts";
import { TROUBLES } from "../../../../grammar/src/vocabulary.ts";
import { dayAfter } from "../measure/iso-dates.ts";
import {
  COUNT,
  DURATION,
  type Lowering,
  NOT_NEGATIVE,
  POSITIVE,
  placeOf,
  readAmount,
  readDate,
  readMoney,
  readNumber,
  readTime,
  readWord,
  report,
} from "./lowering.ts";
import type { JobRecord } from "./model.ts";

type Facts = JobRecord["facts"];
type FactOf<K extends DoneFact["kind"]> = Extract<DoneFact, { readonly kind: K }>;

/** Undefined where the record is not at hand: see `recordBeside` of `client/bundles.ts`. */
export function readRecords(
  ctx: Lowering,
  lines: readonly DoneStatement[],
): readonly JobRecord[] | undefined {
  const records = lines.flatMap((syntax): readonly JobRecord[] => {
    const facts = readFacts(ctx, syntax);
    const at = readMoment(ctx, syntax);
    return at === undefined ? [] : [{ syntax, place: placeOf(ctx, syntax.span), at, facts }];
  });
  return records.toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}

function readMoment(ctx: Lowering, { date, time }: DoneStatement): string | undefined {
  const day = date && readDate(ctx, date.text, date.span);
  const minutes = time && readTime(ctx, time.text, time.span);
  if (day === undefined || (time && minutes === undefined)) return undefined;
  // Nobody knows when on that day: the end of it cuts no wait short.
  if (minutes === undefined || minutes === MIDNIGHT) return `${dayAfter(day)}T00:00`;
  const two = (figure: number): string => String(figure).padStart(2, "0");
  return `${day}T${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

const MIDNIGHT = 24 * 60;

function readFacts(ctx: Lowering, { facts }: DoneStatement): Facts {
  const seen = new Map<string, Span>();
  const read = facts.map((fact): Partial<Facts> => {
    const before = seen.get(fact.kind);
    if (before) {
      ctx.findings.push({
        rule: "repeated-field",
        span: fact.span,
        message: t`\`${fact.keyword.text}\` is stated twice on this line; only the first counts\nKeep one of the two.`,
        related: [{ span: before, message: t`It is stated here first` }],
      });
      return {};
    }
    seen.set(fact.kind, fact.span);
    return readFact(ctx, fact);
  });
  return Object.assign({}, ...read);
}

function readFact(ctx: Lowering, fact: DoneFact): Partial<Facts> {
  switch (fact.kind) {
    case "took":
      return defined("tookHours", readAmount(ctx, fact.time, ["time"], DURATION)?.value);
    case "used": {
      const amount = readAmount(ctx, fact.amount, ["volume", "mass"], NOT_NEGATIVE);
      return defined("used", amount && { dimension: amount.dimension, value: amount.value });
    }
    case "paid":
      return defined("paid", readMoney(ctx, fact.amount));
    case "air":
      return defined("air", readAir(ctx, fact));
    case "piece":
      return defined("pieces", readPieces(ctx, fact));
    case "trouble": {
      const word = readWord(ctx, fact.trouble, TROUBLES, "trouble");
      return defined("trouble", word && { word, place: placeOf(ctx, fact.span) });
    }
    default:
      return defined(fact.kind, fact.text?.value);
  }
}

const defined = <K extends keyof Facts>(key: K, value: Facts[K] | undefined): Partial<Facts> =>
  value === undefined ? {} : { [key]: value };

function readPieces(ctx: Lowering, { numbers }: FactOf<"piece">): readonly number[] | undefined {
  const read = numbers.map((number) => readNumber(ctx, number, COUNT));
  return read.every((number) => number !== undefined) ? [...new Set(read)] : undefined;
}

/** Of a range the middle. */
function readAir(ctx: Lowering, { temperature, humidity, span }: FactOf<"air">): Facts["air"] {
  const middle = <D extends "temperature" | "share">(
    range: Pick<Range, "from" | "to"> | undefined,
    dimension: D,
  ): number | undefined => {
    const ends = [range?.from, range?.to].flatMap((end) => {
      const read = readAmount(ctx, end, [dimension], dimension === "share" ? POSITIVE : ANY);
      return read ? [read.value] : [];
    });
    return ends.length === 0 ? undefined : ends.reduce((sum, end) => sum + end, 0) / ends.length;
  };
  const degrees = middle(temperature, "temperature");
  const share = middle(
    humidity && { from: humidity.value, ...(humidity.to ? { to: humidity.to } : {}) },
    "share",
  );
  if (temperature === undefined) {
    report(
      ctx,
      "missing-field",
      span,
      t`The air has no temperature\nWrite it in front, such as \`air 17 C, 60 % RH\`.`,
    );
  }
  if (degrees === undefined) return undefined;
  return { temperature: degrees, ...(share === undefined ? {} : { humidity: share }) };
}

/** In degrees C. */
const ANY = { min: -90, max: 90, words: "from -90 C to 90 C" };
