/**
 * Reads a `shop` declaration: air, room, opening hours, closed days, crew, money and sources of ignition.
 */
import { t } from "../../../../grammar/src/translate.ts";
import type { FieldStatement, FieldValue, ShopDeclaration, Span } from "../../../../grammar/src/tree.ts";
import { FIELDS, WEEKDAYS } from "../../../../grammar/src/vocabulary.ts";
import { countryCode } from "../knowledge/countries.ts";
import { IGNITION_SOURCES } from "../knowledge/ignition.ts";
import { wordList } from "../knowledge/words.ts";
import { readOutdoors } from "./lower-outdoors.ts";
import {
  COUNT,
  fieldsByWord,
  type Lowering,
  NOT_NEGATIVE,
  notesIn,
  onlyItem,
  POSITIVE,
  placeOf,
  readAmount,
  readDate,
  readMoney,
  readNumber,
  readRange,
  readTime,
  readWord,
  readWorse,
  report,
  SHARE,
  stated,
} from "./lowering.ts";
import type { Named, OpeningSpan, Shop } from "./model.ts";

type Form<F extends FieldValue["form"]> = Extract<FieldValue, { form: F }>;
type Fields = ReadonlyMap<string, readonly FieldStatement[]>;

export function lowerShop(ctx: Lowering, syntax: ShopDeclaration, named: Named): Shop {
  const fields = fieldsByWord(ctx, "shop", syntax.fields, syntax.headSpan);
  const value = <F extends FieldValue["form"]>(word: string): Form<F> | undefined =>
    fields.get(word)?.[0]?.value as Form<F> | undefined;
  const ignitionItem = onlyItem(ctx, value<"words">("ignition")?.items ?? [], FIELDS.shop.ignition!.example);
  const ignition = readWord(ctx, ignitionItem, wordList(IGNITION_SOURCES), "source of ignition");
  const currency = onlyItem(ctx, value<"words">("currency")?.items ?? [], FIELDS.shop.currency!.example);
  const hours = fields.get("hours")?.[0];
  const air = readAir(ctx, fields, "air");
  return {
    ...named,
    kind: "shop",
    country: readCountry(ctx, value<"words">("country")),
    ...readOutdoors(ctx, fields.get("outdoors")?.[0]),
    air,
    nightAir: readNightAir(ctx, fields, air),
    room: readRoom(ctx, fields),
    hours: hours && readHours(ctx, hours.value as Form<"hours">),
    hoursPlace: hours && placeOf(ctx, hours.span),
    closed: (fields.get("closed") ?? []).flatMap((statement) =>
      readClosed(ctx, statement.value as Form<"dates">),
    ),
    crew: readNumber(ctx, value<"number">("crew")?.number, COUNT) ?? 1,
    labourPerH: readLabour(ctx, value<"money">("labour")),
    currency: currency?.kind === "words" ? currency.text : currency?.value,
    notes: notesIn(syntax.fields),
    ignition: ignition ? stated(ctx, ignition, ignitionItem!.span) : { value: "none", origin: "default" },
  };
}

function readCountry(ctx: Lowering, value: Form<"words"> | undefined): Shop["country"] {
  const item = onlyItem(ctx, value?.items ?? [], FIELDS.shop.country!.example);
  if (!item) return undefined;
  const text = item.kind === "words" ? item.text : item.value;
  const code = countryCode(text);
  if (code) return stated(ctx, code, item.span);
  report(
    ctx,
    "unknown-word",
    item.span,
    t`No country has the code or name \`${text}\`\nGive its ISO 3166-1 code, such as \`US\`, or its English name.`,
  );
  return undefined;
}

/** The night's air counts beside the day's alone. */
function readNightAir(ctx: Lowering, fields: Fields, byDay: Shop["air"]): Shop["nightAir"] {
  const air = readAir(ctx, fields, "night_air");
  const statement = fields.get("night_air")?.[0];
  if (!air || !statement || byDay) return air;
  if (!fields.has("air")) {
    report(
      ctx,
      "missing-field",
      statement.span,
      t`This shop has \`night_air\`, but no \`air\`\nState the air by day as well, such as \`air 18 C, 60 % RH\`.`,
    );
  }
  return undefined;
}

function readAir(ctx: Lowering, fields: Fields, word: "air" | "night_air"): Shop["air"] {
  const statement = fields.get(word)?.[0];
  const value = statement?.value as Form<"air"> | undefined;
  if (!statement || !value) return undefined;
  const temperature = readRange(ctx, value.temperature, "temperature", {
    min: -40,
    max: 60,
    words: "a temperature that people work in (−40 C to 60 C)",
  });
  const { value: wetness, to } = value.humidity ?? {};
  const humidity = readWorse(ctx, wetness, to, ["share"], SHARE, "high");
  // Of a range the cold end counts, in which everything dries slowest.
  if (!temperature) return undefined;
  return stated(ctx, { temperature: temperature.from, humidity: humidity?.value }, statement.span);
}

function readRoom(ctx: Lowering, fields: Fields): Shop["room"] {
  const statement = fields.get("room")?.[0];
  const value = statement?.value as Form<"room"> | undefined;
  const volume = readAmount(ctx, value?.volume, ["volume", "air change"], POSITIVE);
  if (statement && volume?.dimension === "air change") {
    report(
      ctx,
      "not-counted",
      statement.span,
      t`This \`room\` says too little to count\nHow much vapour a room holds depends on how large it is.\nWrite its volume as well, such as \`room 45 m3, 8 air changes/h\`.`,
    );
    return undefined;
  }
  const airChanges = readAmount(ctx, value?.airChanges, ["air change"], NOT_NEGATIVE);
  return volume && stated(ctx, { m3: volume.value / 1000, airChanges: airChanges?.value }, statement!.span);
}

function readLabour(ctx: Lowering, value: Form<"money"> | undefined): number | undefined {
  if (value?.per && !["h", "hour"].includes(value.per.text)) {
    report(ctx, "wrong-unit", value.per.span, t`Labour is stated per hour, such as \`labour 18.00 per h\`.`);
    return undefined;
  }
  return readMoney(ctx, value?.amount);
}

/** The opening hours; where a part of them cannot be read, none, so that no plan is made of the rest. */
function readHours(ctx: Lowering, value: Form<"hours">): readonly OpeningSpan[] | undefined {
  const spans = value.spans.map((span) => {
    const from = readWord(ctx, span.from, WEEKDAYS, "weekday");
    const to = span.to ? readWord(ctx, span.to, WEEKDAYS, "weekday") : from;
    const opens = span.opens && readTime(ctx, span.opens.text, span.opens.span);
    const closes = span.closes && readTime(ctx, span.closes.text, span.closes.span);
    if (!from || !to || opens === undefined || closes === undefined) return undefined;
    if (closes <= opens) {
      report(ctx, "bad-number", span.span, t`Closing time must come after opening time on the same day.`);
      return undefined;
    }
    return weekdaysBetween(from, to).map((weekday) => ({ weekday, opens, closes, span: span.span }));
  });
  const readable = spans.filter((span) => span !== undefined);
  // What could be read of a broken line may only seem to overlap.
  if (readable.length < spans.length || spans.length === 0) return undefined;
  return withoutOverlap(ctx, readable.flat());
}

/** Weekday numbers from one weekday to another, over the weekend if need be (`Sat to Mon`). */
function weekdaysBetween(from: (typeof WEEKDAYS)[number], to: (typeof WEEKDAYS)[number]): readonly number[] {
  const start = WEEKDAYS.indexOf(from);
  const length = ((WEEKDAYS.indexOf(to) - start + 7) % 7) + 1;
  return Array.from({ length }, (_, i) => ((start + i) % 7) + 1);
}

function withoutOverlap(
  ctx: Lowering,
  spans: readonly (OpeningSpan & { span: Span })[],
): readonly OpeningSpan[] {
  const sorted = [...spans].sort((a, b) => a.weekday - b.weekday || a.opens - b.opens);
  const kept: OpeningSpan[] = [];
  for (const { weekday, opens, closes, span } of sorted) {
    const last = kept[kept.length - 1];
    if (last && last.weekday === weekday && opens < last.closes) {
      report(ctx, "bad-number", span, t`These hours overlap others of the same day\nState every hour once.`);
      continue;
    }
    kept.push({ weekday, opens, closes });
  }
  return kept;
}

function readClosed(ctx: Lowering, value: Form<"dates">): Shop["closed"] {
  return value.ranges.flatMap((range) => {
    const from = range.from && readDate(ctx, range.from.text, range.from.span);
    const to = range.to ? readDate(ctx, range.to.text, range.to.span) : from;
    if (!from || !to) return [];
    if (to < from) {
      report(
        ctx,
        "bad-number",
        range.span,
        t`The closed days run backwards: the first date is the later one\nSwap the two.`,
      );
      return [];
    }
    return [{ from, to }];
  });
}
