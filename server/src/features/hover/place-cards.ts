/**
 * The cards of where things are: pieces and their surfaces with the sums of their areas, and shops with their air; and
 * what the jobs make of them.
 */

import { t, translated } from "../../../../grammar/src/translate.ts";
import { WEEKDAYS } from "../../../../grammar/src/vocabulary.ts";
import { dewPointC, saturationPressureKPa } from "../../core/air/psychrometrics.ts";
import { countryName } from "../../core/knowledge/countries.ts";
import { type LeadResult, leadNote } from "../../core/knowledge/lead.ts";
import { docOf } from "../../core/knowledge/vocabularies.ts";
import {
  airChangesText,
  dayText,
  exactArea,
  moneyText,
  percentText,
  roomText,
  thicknessText,
} from "../../core/measure/figures.ts";
import { formatDuration, formatNumber, formatWork } from "../../core/measure/format-amount.ts";
import type { ShownFigures } from "../../core/measure/shown-figures.ts";
import type { OpeningSpan, Piece, Shop, Surface } from "../../core/model/model.ts";
import { orList } from "../../core/model/suggest.ts";
import { testedFamilies } from "../../core/surface/initial-state.ts";
import { isSilentOnFinish } from "../../core/surface/taken-as-bare.ts";
import type { JobResult } from "../../core/totals/job-totals.ts";
import { pieceCosts } from "../../core/totals/piece-costs.ts";
import { outdoorsText } from "../../views/outdoors-text.ts";
import type { Portion } from "../../views/sums/portion-sums.ts";
import { bullets, code, docText, firstFew, heading, nested, paragraphs, plain } from "../markdown.ts";
import { portionBullets } from "./apply-card.ts";
import { allJobs, figuresHere, type HoverContext } from "./context.ts";
import { pieceWorking } from "./job-card.ts";
import { shopFumes } from "./shop-fumes.ts";

export function pieceCard(ctx: HoverContext, piece: Piece): string {
  const areas = piece.surfaces.map(({ areaM2 }) => areaM2);
  const area = areas.reduce((sum, each) => sum + each, 0);
  const sum = areas.length > 1 ? `${areas.map((each) => formatNumber(each, 4)).join(" + ")} = ` : "";
  return paragraphs(
    heading(piece.name, piece.title, t`a piece`),
    docText(piece.docs),
    bullets([
      ...piece.surfaces.map((surface) => `${code(surface.name)}: ${surfaceFacts(surface, figuresHere(ctx))}`),
      piece.surfaces.length > 0 ? t`area ${sum}${exactArea(area)}` : t`no surfaces yet`,
      leadOf(ctx, piece),
      piece.bought === undefined ? undefined : t`bought for ${moneyText(piece.bought)}`,
      piece.newPrice === undefined
        ? t`no \`new_price\`: what it saves is not computed`
        : t`a new one costs ${moneyText(piece.newPrice)}`,
      piece.sellPrice === undefined ? undefined : t`sells for ${moneyText(piece.sellPrice)} when it is done`,
      piece.useBy.origin === "stated"
        ? t`used by ${translated(piece.useBy.value)}`
        : t`used by ${translated(piece.useBy.value)} (taken where nothing is said)`,
      ...firstFew(
        allJobs(ctx.checker).filter(({ runs }) => runs.some((run) => run.piece === piece)),
        (result) => pieceInJob(result, piece),
        4,
      ),
    ]),
  );
}

/** In the shop of the first job that works on it; without a job the country is not known. */
function leadOf(ctx: HoverContext, piece: Piece): string | undefined {
  if (piece.surfaces.length > 0 && piece.surfaces.every(({ lead }) => lead)) return undefined;
  const run = allJobs(ctx.checker)
    .flatMap(({ runs }) => runs)
    .find((each) => each.piece === piece);
  return leadNote({ built: piece.built?.value, country: run?.shop?.country?.value });
}

/** How many of it, their area, and what each comes to. */
function pieceInJob(result: JobResult, piece: Piece): string {
  const runs = result.runs.filter((run) => run.piece === piece);
  const count = runs[0]?.pieces ?? 1;
  const areas = runs.map(
    (run) => `${code(run.surface?.name ?? run.label)} ${formatNumber(run.surface?.areaM2 ?? 0, 4)}`,
  );
  const one = runs.reduce((sum, run) => sum + (run.surface?.areaM2 ?? 0), 0);
  const sum = areas.length > 1 ? `(${areas.join(" + ")})` : areas[0];
  const cost = pieceCosts(result).find((each) => each.piece === piece.name);
  return nested(t`in ${code(result.job.name)}, ${count} of it`, [
    t`area ${sum ?? ""} × ${count} = ${exactArea(one * count)}`,
    cost && pieceWorking(cost, result.shop?.currency),
  ]);
}

function surfaceFacts(surface: Surface, say: ShownFigures): string {
  const { substrate, existing, asLeftBy } = surface;
  const below = asLeftBy
    ? t`as left by ${code(asLeftBy.job)}`
    : existing.map(({ what }) => translated(what)).join(", ");
  return [
    surface.areaGap ? t`area not known` : say.area(surface.areaM2),
    substrate.veneerMm === undefined
      ? translated(substrate.name)
      : t`${translated(substrate.name)} veneer of ${thicknessText(substrate.veneerMm)}`,
    below || (isSilentOnFinish(surface) ? t`taken as bare` : t`bare`),
    t`${translated(surface.wear.value)} wear`,
    surface.outdoors ? outdoorsText(surface.outdoors.value) : "",
    surface.moisture ? t`${percentText(surface.moisture.value)} moisture` : "",
  ]
    .filter((part) => part !== "")
    .join(", ");
}

/** A surface with the sum of its area, every shape's formula filled in. */
export function surfaceCard(ctx: HoverContext, surface: Surface, piece: Piece | undefined): string {
  const of = piece ? t`a surface of ${code(piece.name)}` : t`a surface`;
  const several = surface.shapes.length > 1;
  const { substrate, existing, asLeftBy, lead } = surface;
  return paragraphs(
    `${heading(surface.name, surface.title, of)}${surface.shapes.length === 0 ? "" : `: ${surfaceFacts(surface, figuresHere(ctx))}`}`,
    docText(surface.docs),
    surface.shapes.length === 0
      ? t`No \`shape\` yet: its area is not known.`
      : bullets([
          ...surface.shapes.map(({ working, taken }) =>
            taken ? `${plain(working)}; ${taken}` : plain(working),
          ),
          surface.areaGap
            ? t`together not known: a \`shape\` cannot be read`
            : several
              ? t`together ${surface.shapes.map(({ areaM2 }) => formatNumber(areaM2, 4)).join(" + ")} = ${exactArea(surface.areaM2)} for one piece`
              : undefined,
        ]),
    bullets([
      substrate.name
        ? `${translated(substrate.name)}: ${translated(docOf("wood", substrate.name) ?? "")}`
        : t`no \`wood\`: rules that depend on it stay silent`,
      substrate.veneerMm === undefined ? undefined : t`veneer ${thicknessText(substrate.veneerMm)}`,
      asLeftBy
        ? t`as left by the job ${code(asLeftBy.job)}`
        : isSilentOnFinish(surface)
          ? t`taken as bare, as nothing says what is on it: say it with \`existing\``
          : existing.length === 0
            ? t`nothing on it`
            : t`on it, from the wood up: ${existing.map(({ what, coats }) => (coats === 1 ? translated(what) : t`${translated(what)} (${coats} coats)`)).join(", ")}`,
      surface.moisture && t`holds ${percentText(surface.moisture.value)} moisture by a meter`,
      surface.outdoors && t`stands ${outdoorsText(surface.outdoors.value)}`,
      testedText(surface),
      lead && leadResultText(lead.value),
      surface.wear.origin === "stated"
        ? t`${translated(surface.wear.value)} wear`
        : t`${translated(surface.wear.value)} wear (taken where nothing is said)`,
    ]),
    portionBullets(portionsOn(ctx, surface), true),
  );
}

function testedText(surface: Surface): string | undefined {
  if (!surface.tested) return undefined;
  const may = testedFamilies(surface);
  const said = t`tested: ${surface.tested.map(({ value }) => translated(value)).join(", ")}`;
  return may ? t`${said}; so it may be ${orList(may.map(({ name }) => translated(name)))}` : said;
}

function leadResultText({ finding, method: word, date }: LeadResult): string {
  const method = translated(word);
  return finding === "found"
    ? date === undefined
      ? t`lead found by ${method}`
      : t`lead found by ${method} on ${dayText(date)}`
    : word === "laboratory"
      ? t`no lead found by ${method} on ${dayText(date!)}`
      : t`no lead found by ${method} on ${dayText(date!)}, which does not show that there is none`;
}

/** Everything that the jobs do to it. */
const portionsOn = (ctx: HoverContext, surface: Surface): readonly Portion[] =>
  allJobs(ctx.checker).flatMap((result) =>
    result.runs.flatMap((run) => (run.surface === surface ? [{ result, run, moments: run.moments }] : [])),
  );

export function shopCard(ctx: HoverContext, shop: Shop): string {
  const results = allJobs(ctx.checker).filter((result) => result.shop === shop);
  return paragraphs(
    heading(shop.name, shop.title, t`a shop`),
    docText(shop.docs),
    bullets([
      shop.country
        ? t`in ${countryName(shop.country.value)}`
        : t`no \`country\`: old coatings count as lead paint, whatever their age`,
      shop.outdoors && t`the work is done ${outdoorsText(shop.outdoors.value)}`,
      airLine(shop, figuresHere(ctx)),
      roomLine(shop),
      shop.hours
        ? t`open ${openingText(shop.hours)}, ${weekText(shop.hours)}`
        : t`no \`hours\`: hands can work at any time`,
      ...(shop.closed.length > 0
        ? [
            t`closed ${shop.closed.map(({ from, to }) => (from === to ? dayText(from) : t`${dayText(from)} to ${dayText(to)}`)).join(", ")}`,
          ]
        : []),
      t`crew ${shop.crew}`,
      shop.labourPerH === undefined
        ? t`no \`labour\`: labour is not costed`
        : t`labour ${moneyText(shop.labourPerH, shop.currency)} an hour`,
      ...firstFew(results, labourText, 4),
      shop.ignition.value === "none" ? t`ignition: none` : t`ignition: ${translated(shop.ignition.value)}`,
      ...shop.notes.map(plain),
    ]),
    bullets(shopFumes(shop, results)),
  );
}

/** `work in two_tables: 3 h 10 min, 3.1667 h × 20.00 = 63.33 EUR` */
function labourText({ job, shop, totals }: JobResult): string {
  const { hands_on_h, labour_cost } = totals;
  if (hands_on_h === null) return t`work in ${code(job.name)}: not known`;
  const rate = shop?.labourPerH;
  const sum =
    rate === undefined || labour_cost === null
      ? ""
      : `, ${formatNumber(hands_on_h, 4)} h × ${moneyText(rate)} = ${moneyText(labour_cost, shop?.currency)}`;
  return t`work in ${code(job.name)}: ${formatWork(hands_on_h)}${sum}`;
}

function airLine({ air, nightAir }: Shop, say: ShownFigures): string {
  const night = nightAir
    ? t`; while it is closed ${say.air(nightAir.value)}, in which dries what dries overnight`
    : "";
  if (!air) return t`no \`air\`: the labels' times stand as they are`;
  const { temperature, humidity } = air.value;
  const at = t`air ${say.air(air.value)}`;
  if (humidity === undefined) return t`${at}; no humidity, so the labels' own is taken${night}`;
  const dew = say.degrees(dewPointC(temperature, humidity));
  const full = saturationPressureKPa(temperature);
  const vapour = t`${formatNumber(full, 3)} kPa at saturation × ${percentText(humidity)} = ${formatNumber((full * humidity) / 100, 3)} kPa`;
  return t`${at}; dew point ${dew} (${vapour}, which is saturation there)${night}`;
}

function roomLine({ room }: Shop): string | undefined {
  if (!room) return undefined;
  const { m3, airChanges } = room.value;
  if (airChanges === undefined) return t`room ${roomText(m3)}; its change of air is not stated`;
  return t`room ${roomText(m3)} × ${airChangesText(airChanges)} = ${formatNumber(m3 * airChanges, 1)} m3/h of fresh air`;
}

/** Neighbouring days with the same hours together. */
function openingText(hours: readonly OpeningSpan[]): string {
  const byDay = WEEKDAYS.map((_, i) =>
    hours
      .filter(({ weekday }) => weekday === i + 1)
      .map(({ opens, closes }) => t`${clock(opens)} to ${clock(closes)}`)
      .reduce((said, span) => (said === "" ? span : t`${said} and ${span}`), ""),
  );
  const groups: string[] = [];
  for (let day = 0; day < 7; day += 1) {
    let last = day;
    while (last < 6 && byDay[last + 1] === byDay[day]) last += 1;
    if (byDay[day] !== "") {
      const [first, end] = [translated(WEEKDAYS[day]!), translated(WEEKDAYS[last]!)];
      groups.push(`${day === last ? first : t`${first} to ${end}`} ${byDay[day]}`);
    }
    day = last;
  }
  return groups.join(", ");
}

/** Hours of a week: `5 × 8 h + 1 × 4 h = 44 h a week`. */
function weekText(hours: readonly OpeningSpan[]): string {
  const lengths = hours.map(({ opens, closes }) => (closes - opens) / 60);
  const counts = new Map<number, number>();
  for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1);
  const terms = [...counts].map(([length, count]) => `${count} × ${formatDuration(length)}`);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  return t`${terms.join(" + ")} = ${formatNumber(total, 2)} h a week`;
}

const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
