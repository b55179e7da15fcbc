/**
 * What is said where something had less time than it needs: one text for the label's time and for what the air of each
 * job's shop makes of it, with times that add up, and a remedy that satisfies all of them.
 */

import { t, translated } from "../../../../grammar/src/translate.ts";
import { type Fix, gravest, type RelatedPlace, type Severity } from "../findings.ts";
import { factorText } from "../measure/figures.ts";
import { exactDuration, formatDuration, roundedUpHours, spokenDuration } from "../measure/format-amount.ts";
import { quantityText } from "../measure/read-quantity.ts";
import { figuresIn } from "../measure/shown-figures.ts";
import type { Material } from "../model/model.ts";
import { andList } from "../model/suggest.ts";
import { placeKey, sameDeclaration } from "../place.ts";
import type { LayerAction, WaitAction } from "../surface/actions.ts";
import type { DryingTime, Stage } from "../surface/drying-time.ts";
import type { SurfaceRun } from "../surface/run.ts";
import { type Coat, hasReached, type SurfaceState, sureHours, waitedOf } from "../surface/state.ts";
import { isWithinMargin, levelBeyondMargin, shortfallLevel, shortfallOf } from "../surface/wait-margin.ts";
import { shopAirText } from "../surface/wait-words.ts";
import type { NeededWait, Report, RunContext } from "./rule.ts";
import { fitting, insertAbove, related, replaceAt, useName } from "./texts.ts";

export interface ShortWaitSays {
  /** Headlines from the fullest to the shortest; the first that fits is taken. */
  readonly headlines: (had: string, needed: string) => readonly string[];
  /** What goes wrong at the bench. */
  readonly why: string;
  /** The line that waits long enough whatever the air: `wait until recoat`. */
  readonly instead: string;
  /** Where that line belongs, if not in place of the wait that is too short: "above `paste_wax`". */
  readonly where?: string;
  /** The wait that is too short, where the recipe has one. */
  readonly tooShort?: WaitAction | undefined;
  /** The wait that holds as well for what may take the place of the coat that comes too soon. */
  readonly ifReplaced?: string;
  /** What else helps, after "or". */
  readonly otherwise?: string;
  /** What else is to be said, after a semicolon. */
  readonly also?: string;
  /** What the time is of, where the line names only a parameter. */
  readonly of?: string;
  /** The coat that needs the time, by the name on the line. */
  readonly who?: string;
  /** The rule's own level. */
  readonly level: Severity;
  /** Cure before use has no margin. */
  readonly hasMargin?: false;
}

type Rest = Pick<Report, "related" | "fixes" | "causes" | "at">;

/** A report on a time that is too short, which the engine tells together with those of the jobs. */
export function shortWait(own: NeededWait, says: ShortWaitSays, rest: Rest = {}): Report {
  const sayAll = (waits: readonly NeededWait[]): Report => ({ ...textOf(waits, says), ...rest });
  return { ...sayAll([own]), wait: { ...own, sayAll } };
}

/** The needed time in a run, and whose air that is. */
export const neededIn = (
  { run, units }: Pick<RunContext, "run" | "units">,
  needed: DryingTime,
  had: number,
): NeededWait => ({
  units,
  needed,
  had,
  ...(run.job ? { job: run.job.name } : {}),
  ...(run.shop ? { shop: run.shop.name } : {}),
});

/** The matter of findings on one coat that is left before its cure. */
export const uncured = (coat: Coat): string => `uncured ${placeKey(coat.place)}`;

/** What a coat of this surface lacks to a stage; undefined where it lacks nothing, or that is not known. */
export function missingTo(
  state: SurfaceState,
  coat: Coat,
  stage: Stage,
): { readonly needed: DryingTime; readonly had: number } | undefined {
  const needed = coat.drying[stage];
  if (!needed || hasReached(state, coat, stage) !== "no") return undefined;
  return { needed, had: sureHours(waitedOf(state, coat)) };
}

/** The field that states the time to a stage, and the words for its line. */
const FIELDS: Readonly<
  Record<Stage, { readonly field: "touch" | "recoat" | "stackable" | "cure"; readonly told: () => string }>
> = {
  touch: { field: "touch", told: () => t`The label's time to touch dry` },
  recoat: { field: "recoat", told: () => t`The label's recoat time` },
  stackable: { field: "stackable", told: () => t`The label's time to stack` },
  cured: { field: "cure", told: () => t`The label's cure` },
};

/** A coat by its name, and the material where a parameter put it on. */
export const namedByParameter = (coat: Coat): Pick<ShortWaitSays, "of" | "who"> => ({
  who: briefCoatName(coat),
  ...(coat.material && coat.material.name !== coat.what
    ? { of: useName({ name: coat.what, material: coat.material }) }
    : {}),
});

/** The lines that a needed time comes from: the label's, and the air of the shop where it lengthens it. */
export function timePlaces(
  run: SurfaceRun,
  { factor, stage }: DryingTime,
  material: Material | undefined,
): readonly RelatedPlace[] {
  const { field, told } = FIELDS[stage];
  const label = material?.[field]?.place;
  const air = factor > 1.005 ? run.shop?.air?.place : undefined;
  return [...(label ? [related(label, told())] : []), ...(air ? [related(air, t`The air of the shop`)] : [])];
}

/** A coat by the name that stands on the line alone, for headlines. */
export const briefCoatName = (coat: Coat): string =>
  coat.origin === "existing" ? t`the old ${translated(coat.what)}` : `\`${coat.what}\``;

function textOf(waits: readonly NeededWait[], says: ShortWaitSays): Report {
  const distinct = distinctWaits(waits);
  const longest = distinct.toSorted((a, b) => missing(b) - missing(a))[0]!;
  return {
    headline: fitting(says.headlines(hadText(longest.had), needText(distinct))),
    why: `${says.why}\n${neededText(distinct, says)}`,
    remedy: remedyText(distinct, longest, says),
    brief: `${distinct.some(isTooCold) ? inWarmth(distinct, says) : t`Write \`${says.instead}\`${lengthText(distinct, says)}${whereText(says)}`}${says.also ? `; ${says.also}` : ""}.`,
    ...(says.ifReplaced === undefined ? {} : { ifReplaced: says.ifReplaced }),
    severity: gravest(distinct.map((wait) => severityOf(wait, says))),
    ...easedText(distinct, says),
  };
}

/** Set where all that is missing lies within the margin. */
function easedText(waits: readonly NeededWait[], { level, hasMargin }: ShortWaitSays): Pick<Report, "eased"> {
  const all = waits.map(({ needed, had }) => ({ needed, shortfall: shortfallOf(needed, had) }));
  if (hasMargin === false || !all.every(({ shortfall }) => isWithinMargin(shortfall))) return {};
  return {
    eased: {
      percent: Math.max(...all.map(({ shortfall }) => shortfall.percent)),
      severity: gravest(all.map(({ needed, shortfall }) => levelBeyondMargin(level, shortfall, needed))),
    },
  };
}

const severityOf = ({ needed, had }: NeededWait, { level, hasMargin }: ShortWaitSays): Severity =>
  hasMargin === false ? level : (shortfallLevel(level, needed, had) ?? level);

/** One for each job and time; of one job the longest. */
function distinctWaits(waits: readonly NeededWait[]): readonly NeededWait[] {
  const byJob = new Map<string, NeededWait>();
  for (const wait of waits) {
    const known = byJob.get(wait.job ?? "");
    if (!known || missing(wait) > missing(known)) byJob.set(wait.job ?? "", wait);
  }
  const all = [...byJob.values()];
  const [first] = all;
  // A job whose air leaves the label's time says nothing new.
  return all.filter(
    (wait) => wait === first || toldHours(wait) !== toldHours(first!) || missing(wait) !== missing(first!),
  );
}

/** Hours and minutes as they are told; what is missing is the difference of what is told. */
const toldHours = ({ needed }: NeededWait): number => roundedUpHours(needed.hours);
const toldHad = (had: number): number => Math.floor(had * 60 + 1e-6) / 60;
const missing = (wait: NeededWait): number => toldHours(wait) - toldHad(wait.had);

const hadText = (had: number): string => (toldHad(had) > 0 ? exactDuration(toldHad(had)) : "");

/**
 * `3 h`, or `1 day 4 h here` where the air of a job makes more of it. In the cold no time will do, so it is the label's, "in a
 * warm room".
 */
function needText(waits: readonly NeededWait[]): string {
  const hours = waits.map((wait) =>
    wait.needed.tooCold ? roundedUpHours(wait.needed.label) : toldHours(wait),
  );
  const [least, most] = [Math.min(...hours), Math.max(...hours)];
  const where = least < most ? t` here` : waits.some(isTooCold) ? t` in a warm room` : "";
  return `${spokenDuration(most)}${where}`;
}

/** "The label asks for 3 days; the air of `porch` (9 C) makes that 6 days 22 h for job `attic`." */
function neededText(waits: readonly NeededWait[], { of, who }: Pick<ShortWaitSays, "of" | "who">): string {
  const { label, isTypical, cause } = waits[0]!.needed;
  const told = formatDuration(label);
  const base =
    cause.law === "a night"
      ? t`Filler whose label states no time needs a night, ${told} at least`
      : isTypical
        ? of
          ? t`${told} is a typical figure for ${of}, the label decides`
          : t`${told} is a typical figure, the label decides`
        : of
          ? t`The label of ${of} asks for ${told}`
          : t`Its label asks for ${told}`;
  const shops = waits.filter(({ needed }) => needed.factor > 1.005 || needed.tooCold);
  if (shops.length === 0) return `${base}.`;
  const inShops = shops.slice(0, MOST_SHOPS).map(({ needed, shop, job, units }) => {
    const air = shopAirText(needed.cause, figuresIn(units));
    const where = shop ? t`the air of \`${shop}\`` : t`the shop's air`;
    const whose = waits.length > 1 && job ? t` for job \`${job}\`` : "";
    // By how much, the finding on its air says.
    if (needed.tooCold) {
      const room = `${shop ? `\`${shop}\`` : t`the shop`}${job && waits.length > 1 ? t` (job \`${job}\`)` : ""}`;
      return who ? t`${room} is too cold for ${who}` : t`${room} is too cold for it`;
    }
    return t`${where} (${air}) makes it ${spokenDuration(roundedUpHours(needed.hours))} (× ${factorText(needed.factor)})${whose}`;
  });
  const more =
    shops.length > MOST_SHOPS ? [t`${shops.length - MOST_SHOPS} more jobs have air of their own`] : [];
  return `${base}; ${andList([...inShops, ...more])}.`;
}

const MOST_SHOPS = 3;

/** `wait 12 h`, as it is written; nothing of a wait that states no time. */
function waitText({ syntax }: WaitAction): string | undefined {
  if (syntax.overnight) return "wait overnight";
  return syntax.time?.kind === "quantity" ? `wait ${quantityText(syntax.time)}` : undefined;
}

/** The one wait of the recipe's own between the last coat and what comes too soon. */
export function waitBefore({ moments }: SurfaceRun, index: number): WaitAction | undefined {
  const from = moments.slice(0, index).findLastIndex(({ action }) => action.op === "layer") + 1;
  const waits = waitsIn(moments, from, index).filter(({ between }) => !between);
  return waits.length === 1 ? waits[0] : undefined;
}

/** The waits from one moment to before another, in order. */
export const waitsIn = (moments: SurfaceRun["moments"], from: number, index: number): readonly WaitAction[] =>
  moments.slice(from, index).flatMap(({ action }) => (action.op === "wait" ? [action] : []));

/**
 * The fix that the finding speaks of: `line` in place of the wait that is too short, where the recipe of the coat has one,
 * else above the coat.
 */
export function waitLonger(
  title: string,
  { run, index, action }: { readonly run: SurfaceRun; readonly index: number; readonly action: LayerAction },
  line: string,
): Fix {
  const tooShort = waitBefore(run, index);
  if (tooShort === undefined || !sameDeclaration(tooShort.place, action.place))
    return insertAbove("undertaking", action, title, [line]);
  const { until, overnight, time } = tooShort.syntax;
  const said = until === undefined ? (overnight ?? time) : undefined;
  // The value alone, so that it stays in its column.
  return said
    ? replaceAt("undertaking", { ...tooShort.place, span: said.span }, title, line.replace(/^wait\s+/u, ""))
    : replaceAt("undertaking", tooShort.place, title, line);
}

const whereText = ({ where, tooShort }: ShortWaitSays): string => (where ? ` ${where}` : inPlaceOf(tooShort));

/** " in place of `wait 12 h`" */
export function inPlaceOf(tooShort: WaitAction | undefined): string {
  const short = tooShort && waitText(tooShort);
  return short ? t` in place of \`${short}\`` : "";
}

const isTooCold = ({ needed }: NeededWait): boolean => needed.tooCold !== undefined;

/** No wait in the cold is long enough: that, and how to find a warm room, is told once, by the finding on its air. */
const inWarmth = (waits: readonly NeededWait[], says: ShortWaitSays): string =>
  t`In a room that is warm enough, write \`${says.instead}\`${lengthText(waits, says)}${whereText(says)}`;

/** " (about 3 days)": what `cured` comes to, days before the next coat or weeks before use. */
function lengthText([wait]: readonly NeededWait[], { instead }: ShortWaitSays): string {
  const { label, isTypical } = wait!.needed;
  if (instead !== "wait until cured") return "";
  return isTypical ? t` (about ${formatDuration(label)})` : ` (${formatDuration(label)})`;
}

function remedyText(waits: readonly NeededWait[], longest: NeededWait, says: ShortWaitSays): string {
  const { instead, otherwise, also } = says;
  const there = whereText(says);
  const or = otherwise ? t`, or ${otherwise}` : "";
  const and = also ? `; ${also}` : "";
  if (waits.some(isTooCold)) return `${inWarmth(waits, says)}${and}.`;
  const longer = spokenDuration(missing(longest));
  const byAir = longest.needed.cause.law === "a night" ? "" : t` (it goes by the shop's air)`;
  return t`Write \`${instead}\`${there}${byAir}, or wait ${longer} longer${or}${and}.`;
}

/** Wax needs no hold on a film, and auxiliaries leave no layer. */
export const isAuxiliaryOrWax = (action: LayerAction): boolean => {
  const family = action.use.material?.family;
  return family?.role === "wax" || family?.group === "auxiliary";
};
