/**
 * What an HTML sheet says on a telephone: what to do now, when the wait ends and what may go wrong, under the same three
 * headings at all times. Plain data in and out, see `bench-now.ts`.
 */
import { t, translated } from "../../../../grammar/src/translate.ts";
import { AIR_GEAR, STRIPPER_VAPOUR, THIN_VENEER, wornTogether } from "../../views/sheet/gear.ts";
import {
  asksLabel,
  type BenchNow,
  benchNow,
  doneAt,
  dueAt,
  freeAt,
  type Hazards,
  hazardsAt,
  isRags,
  type Order,
  type PageStep,
  type RunningWait,
  type Start,
  type Ticked,
  waitsRunning,
} from "./bench-now.ts";
import { later } from "./local-times.ts";
import { clockText, lastingText, leftText } from "./time-texts.ts";

/** A line with a smaller one below it; the second may be empty. */
export type TwoLines = readonly [string, string];

export interface LiveTexts {
  readonly is: BenchNow["is"];
  /** The step in hand, or the first one once there is something to do. */
  readonly step?: PageStep;
  /** What to do now, in the largest letters. */
  readonly what: string;
  /** Below it: for how long still, what of which surface, what to wear. */
  readonly more: readonly string[];
  /** What is to be done before it. */
  readonly first: readonly string[];
  readonly waits: readonly TwoLines[];
  readonly risksTitle: string;
  readonly risks: readonly TwoLines[];
  /** How many of them, the first, are new with the step in hand or the nearest; the others stand since earlier. */
  readonly newRisks: number;
  readonly next?: NextTexts;
  /** Of the button that ticks the step; absent where all is done. */
  readonly button?: string;
  /** Nothing is to be done yet. */
  readonly isEarly: boolean;
  /** Whose label is to be read, and what for. */
  readonly asks?: PageStep;
}

export interface NextTexts {
  readonly title: string;
  readonly what: string;
  readonly more: readonly string[];
  readonly first: readonly string[];
}

/** All that the page needs to know at a moment. */
interface Moment {
  readonly order: Order;
  readonly ticked: Ticked;
  readonly now: string;
  readonly running: readonly RunningWait[];
  readonly hazards: Hazards;
}

export function liveTexts(order: Order, ticked: Ticked, now: string): LiveTexts {
  const at: Moment = {
    order,
    ticked,
    now,
    running: waitsRunning(order, ticked, now),
    hazards: hazardsAt(order, ticked, now),
  };
  const bench = benchNow(order, ticked, now);
  const { is, current } = bench;
  if (current === undefined) return allDone(at);
  const asks = askedStep(at, current);
  return {
    is,
    step: current.step,
    ...(is === "now" ? inHand(at, current, bench.next) : notYet(at, current)),
    ...(asks ? { asks } : {}),
  };
}

const risksTitle = (): string => t`What may go wrong`;

const allDone = (at: Moment): LiveTexts => ({
  is: "done",
  what: t`All steps are ticked`,
  more: [],
  first: [],
  waits:
    at.running.length > 0 ? at.running.map((wait) => runningText(wait, at.now)) : [[t`No wait is left.`, ""]],
  risksTitle: risksTitle(),
  ...weighed([], risksOf(at, undefined)),
  isEarly: false,
});

type StateTexts = Omit<LiveTexts, "is" | "step" | "asks">;

/** Something is to be done, if it is only to stay and look. */
function inHand(at: Moment, current: Start, next: BenchNow["next"]): StateTexts {
  const { now } = at;
  const { step } = current;
  const what = whatToDo(current);
  return {
    what,
    more: [
      what === step.title ? "" : step.title,
      step.where,
      wearText(at, step),
      current.laid === undefined ? step.use : "",
    ].filter(Boolean),
    first: firstOf(step),
    waits: waitsInHand(at, current),
    risksTitle: risksTitle(),
    ...weighed([...whysOf(step), ...tooLate(at, step)], risksOf(at, step)),
    ...(next ? { next: nextText(next, current, now) } : {}),
    button: buttonText(current),
    isEarly: false,
  };
}

/** What is put on dries, or the plan has nothing yet. */
function notYet(at: Moment, current: Start): StateTexts {
  const { order, now, running } = at;
  const { step, laid } = current;
  const due = dueAt(order, current);
  const until = clockText(due, now);
  // What the headline waits for goes first.
  const waits = running
    .toSorted((a, b) => Number(b.free === due) - Number(a.free === due))
    .map((wait) => runningText(wait, now));
  return {
    what: laid === undefined ? t`Nothing to do until ${until}` : t`Leave the stripper on until ${until}`,
    more: [`${leftText(due, now)}. ${laid === undefined ? awayText(at) : t`Stay near.`}`],
    first: [],
    waits: waits.length > 0 ? waits : [[t`Nothing is drying.`, ""]],
    risksTitle: laid === undefined ? t`What may go wrong meanwhile` : risksTitle(),
    // How late the next coat may be stands with the wait.
    ...weighed(tooLate(at, step, "past"), risksOf(at, undefined), whysOf(step)),
    next: {
      title: t`Next, at ${until}`,
      what: laid === undefined ? (step.isLeftOn ? layOn() : step.title) : takeOff(),
      more: [step.isLeftOn ? step.title : "", step.where, wearText(at, step)].filter(Boolean),
      first: firstOf(step),
    },
    button: laid === undefined ? t`Done already` : t`Taken off`,
    isEarly: true,
  };
}

const awayText = ({ hazards }: Moment): string =>
  hazards.dangers.includes("fumes") ? t`You may go; leave the air moving.` : t`You may go.`;

// ---------------------------------------------------------------------------------------------------------------
// What to do

const layOn = (): string => t`Lay the stripper on`;
const takeOff = (): string => t`Take the stripper off`;

function whatToDo({ step, laid, why }: Start): string {
  if (laid !== undefined)
    return step.leaveH === undefined ? t`Stay here: the stripper acts, don’t touch it` : takeOff();
  if (why === "label") return t`Don’t touch it yet: read its label`;
  return step.isLeftOn ? layOn() : step.title;
}

const buttonText = ({ step, laid }: Start): string =>
  laid === undefined ? (step.isLeftOn ? t`Laid on` : t`Done`) : t`Taken off`;

/** With what keeps off the vapour of a stripper that lies on another surface. */
function wearText({ running }: Moment, step: PageStep): string {
  const beside = running.filter((wait) => wait.isLaid && wait.step !== step);
  const worn = wornTogether([
    ...step.wear,
    ...beside.flatMap((wait) => wait.step.wear.filter((item) => AIR_GEAR.has(item))),
  ]);
  return worn.length === 0 ? "" : t`Wear: ${worn.map(translated).join(", ")}.`;
}

function nextText(next: NonNullable<BenchNow["next"]>, current: Start, now: string): NextTexts {
  const { step, from, isLaid, isRightAfter } = next;
  const isActing = current.laid !== undefined && current.step.leaveH === undefined;
  return {
    // What nobody has to wait for goes on at once, whatever minute the plan has for it.
    title:
      from > now && !isRightAfter
        ? t`Next, from ${clockText(from, now)}`
        : isActing
          ? t`Next, once it is off`
          : isLaid
            ? t`Next, when its label time is up`
            : t`Next, right after this`,
    what: isLaid ? takeOff() : step.title,
    more: [step.where].filter(Boolean),
    first: firstOf(step),
  };
}

/** What was found on its line, as orders. */
const firstOf = ({ checks }: PageStep): readonly string[] => checks.map(({ order }) => t`First: ${order}`);

/** The step whose label alone knows how long it is left alone, as soon as somebody has to know. */
function askedStep({ order, running }: Moment, { step }: Start): PageStep | undefined {
  // What is taken off already has no time any more.
  const before = (order.before.get(step) ?? []).filter(({ isLeftOn }) => !isLeftOn);
  const waitedFor = [...running.map((wait) => wait.step), ...before];
  return [...(step.isLeftOn ? [step] : []), ...waitedFor].find(
    (each) => asksLabel(each) || each.labelH !== undefined,
  );
}

// ---------------------------------------------------------------------------------------------------------------
// When the wait ends

/** First what is to be taken off, then the step in hand, then what dries elsewhere. */
function waitsInHand({ running, now }: Moment, current: Start): readonly TwoLines[] {
  const textsOf = (list: readonly RunningWait[]): readonly TwoLines[] =>
    list.map((wait) => runningText(wait, now));
  const [laid, dries] = [running.filter(({ isLaid }) => isLaid), running.filter(({ isLaid }) => !isLaid)];
  const waits = [...textsOf(laid), ...ownWait(current, now), ...textsOf(dries)];
  if (waits.length > 0) return waits;
  // Said only where nothing else waits either: beside another wait it reads as its opposite.
  return [
    [current.why === "label" ? byLabel() : t`No wait after this step: go on as soon as it is done.`, ""],
  ];
}

/** The wait that the step begins when it is done, or laid on; nothing where it begins none, or its own label is still to be read. */
function ownWait({ step, laid, why, dry }: Start, now: string): readonly TwoLines[] {
  if (why === "label") return [];
  if (laid !== undefined)
    return [[t`Over since ${clockText(dry, now)}`, t`The stripper’s time is up: take it off at once.`]];
  const isToLay = step.isLeftOn;
  if (isToLay ? step.leaveH === undefined : step.isUnknown)
    return [
      [
        byLabel(),
        isToLay
          ? t`Once it is laid on, don’t touch it as long as its label says, then take it off at once.`
          : t`Once this is done, don’t touch it as long as its label says.`,
      ],
    ];
  const hours = isToLay ? step.leaveH : step.waitH;
  const free = hours === undefined ? freeAt(step, () => now) : later(now, hours);
  if (free === undefined || free <= now) return [];
  const until = clockText(free, now);
  if (hours === undefined) return [[t`Until ${until}`, t`Once this is done, don’t touch it.`]];
  const long = lastingText(Math.ceil(hours * 60));
  return isToLay
    ? [
        [
          t`Until ${until}, if it is laid on now`,
          t`Once it is laid on, don’t touch it for ${long}, then take it off at once.`,
        ],
      ]
    : [[t`Until ${until}, if it is done now`, t`Once this is done, don’t touch it for ${long}.`]];
}

const byLabel = (): string => t`When its label time is up`;

/** Of what lies there: until when, and whether one may touch it. */
function runningText({ step, on, done, free, isLaid }: RunningWait, now: string): TwoLines {
  const { latestH, lightH, fullH } = step;
  const since = clockText(done, now);
  const what = isLaid
    ? free === ""
      ? t`${on}: the stripper acts since ${since}. Don’t touch it before, then take it off at once.`
      : t`${on}: the stripper acts. Don’t touch it before.`
    : free === ""
      ? t`${on}: it dries since ${since}, don’t touch it.`
      : t`${on}: it dries, don’t touch it.`;
  const more = [
    what,
    latestH === undefined
      ? ""
      : t`Next coat by ${clockText(later(done, latestH), now)}, or sand it dull first.`,
    lightH === undefined ? "" : t`Light use from ${clockText(later(done, lightH), now)}.`,
    fullH === undefined ? "" : t`Full use from ${clockText(later(done, fullH), now)}.`,
  ];
  return [untilText(free, now, isLaid), more.filter(Boolean).join(" ")];
}

function untilText(free: string, now: string, isLaid: boolean): string {
  if (free === "") return byLabel();
  const moment = clockText(free, now);
  const left = leftText(free, now);
  return isLaid ? t`Take the stripper off at ${moment}, ${left}` : t`Until ${moment}, ${left}`;
}

// ---------------------------------------------------------------------------------------------------------------
// What may go wrong

/** What the cautions of the sheet ask for, in a few words; they and the labels say the rest. */
function actOf(danger: string): string {
  switch (danger) {
    case STRIPPER_VAPOUR:
      return t`Stripper’s vapour in the room: keep the respirator on`;
    case THIN_VENEER:
      return t`Thin veneer: don’t go through it, least at the edges`;
    case "fumes":
      return t`Fumes: keep the air moving`;
    case "fire":
      return t`Fire: no flame or spark in the room`;
    case "lead in old paint":
      return t`Lead in old paint: not before it is tested`;
    case "lead":
      return t`Lead: keep it wet, let no dust fly`;
    case "others in the room":
      return t`Others in the room: keep them out`;
    default:
      return translated(danger);
  }
}

/** All rags in one act; of them those with drying oil would still heat up in a dry can. */
function ragsRisk(rags: readonly string[]): readonly TwoLines[] {
  const [oily, solvent] = [rags.includes("oily rags"), rags.includes("solvent rags")];
  if (oily && solvent) return [[t`Rags catch fire: into the closed metal can, the oily ones in water`, ""]];
  if (oily) return [[t`Oily rags catch fire: in water in the closed metal can`, ""]];
  return solvent ? [[t`Solvent rags catch fire: into the closed metal can`, ""]] : [];
}

/** What is new, and what stands since earlier. */
interface Risks {
  readonly fresh: readonly TwoLines[];
  readonly standing: readonly TwoLines[];
}

/** What is new first, with more weight; where nothing is, the first of what stands has it. */
const weighed = (
  own: readonly TwoLines[],
  { fresh, standing }: Risks,
  last: readonly TwoLines[] = [],
): Pick<LiveTexts, "risks" | "newRisks"> => ({
  risks: [...own, ...fresh, ...standing, ...last],
  newRisks: Math.max(1, own.length + fresh.length),
});

/** What the step in hand brings, and what earlier ones have left behind. */
function risksOf({ hazards, running }: Moment, step: PageStep | undefined): Risks {
  const isBeside = step !== undefined && running.some((wait) => wait.isLaid && wait.step !== step);
  const there = new Set(hazards.dangers);
  const dangers = [
    ...new Set([...(isBeside ? [STRIPPER_VAPOUR] : []), ...(step?.dangers ?? []), ...hazards.dangers]),
  ].filter((danger) => danger !== STRIPPER_VAPOUR || isBeside);
  const isFresh = (danger: string): boolean => !there.has(danger) || danger === STRIPPER_VAPOUR;
  const actsOf = (some: readonly string[]): readonly TwoLines[] =>
    some.filter((danger) => !isRags(danger)).map((danger): TwoLines => [actOf(danger), ""]);
  const rags = dangers.filter(isRags);
  const newRags = rags.some(isFresh);
  const soft: readonly TwoLines[] =
    hazards.soft.length === 0 ? [] : [[t`Dry but still soft: ${hazards.soft.join("; ")}`, ""]];
  const fresh = [
    ...leftTooLong(running, step),
    ...actsOf(dangers.filter(isFresh)),
    ...(newRags ? ragsRisk(rags) : []),
  ];
  const standing = [
    ...actsOf(dangers.filter((danger) => !isFresh(danger))),
    ...(newRags ? [] : ragsRisk(rags)),
    ...soft,
  ];
  return fresh.length + standing.length > 0
    ? { fresh, standing }
    : { fresh: [lesserRisk(step, running)], standing };
}

/** What has dried on comes off with more stripper only (common practice, no source); its label decides. */
const leftTooLong = (running: readonly RunningWait[], step: PageStep | undefined): readonly TwoLines[] =>
  running.some(({ isLaid }) => isLaid) || (step?.isLeftOn ?? false)
    ? [[t`Left on longer than its label says, the stripper dries on`, ""]]
    : [];

/** Where no danger is named. */
function lesserRisk(step: PageStep | undefined, running: readonly RunningWait[]): TwoLines {
  if (step?.wear.some((item) => item.includes("dust")))
    return [t`Dust: don’t breathe it, keep the mask on`, ""];
  if (step?.wear.includes("gloves")) return [t`On bare skin it does harm: gloves on`, ""];
  if (step !== undefined) return [t`What its label warns of: read it first`, ""];
  return running.length > 0
    ? [t`Touched too early, it keeps the mark`, ""]
    : [t`Nothing is known, and nothing is certified as safe`, ""];
}

const whysOf = ({ checks }: PageStep): readonly TwoLines[] =>
  checks.flatMap(({ why }) => (why === "" ? [] : [[why, ""] as const]));

/** A coat that comes after the window of the one below. */
function tooLate(
  { order, ticked, now }: Moment,
  step: PageStep,
  when: "past" | "any" = "any",
): readonly TwoLines[] {
  if (!step.isCoat) return [];
  const [end] = (order.before.get(step) ?? [])
    .flatMap((each) => {
      const done = doneAt(each, ticked);
      return done === undefined || each.latestH === undefined ? [] : [later(done, each.latestH)];
    })
    .toSorted();
  if (end === undefined || (when === "past" && end >= now)) return [];
  return end < now
    ? [[t`Too late for the next coat since ${clockText(end, now)}: sand it dull first`, ""]]
    : [[t`Later than ${clockText(end, now)}: sand it dull first`, ""]];
}
