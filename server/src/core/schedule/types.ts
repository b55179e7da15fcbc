/**
 * The scheduler's plain data: what goes in (a calendar and chains of work) and what comes out (a plan).
 *
 * A chain is the work on one piece's surface, its items in order; chains meet only in the crew they share.
 * Everything is in hours after the schedule's start; local ISO dates and date-times stand at the edges only, without
 * an offset, because the notation has no time zone. Money, names and places in the text are not known here.
 */
import type { OpeningSpan } from "../model/model.ts";

/** When hands can work, and how many pairs of them. */
export interface Calendar {
  /** Weekly opening spans; undefined: open day and night. */
  readonly hours?: readonly OpeningSpan[];
  /** Closed days, ISO dates, both ends included. */
  readonly closed: readonly { readonly from: string; readonly to: string }[];
  /** People at work at the same time, 1 or more. */
  readonly crew: number;
}

/** Work that holds one of the crew. */
export interface HandsItem {
  readonly kind: "hands";
  readonly id: string;
  /** Working hours, 0 or more. */
  readonly hours: number;
  /** Goes on in one go within opening hours if it fits some opening span; other tasks may pause at closing. */
  readonly nonPreemptive: boolean;
  /** Starts not later than `hours` after the end of `of`, an earlier task of the chain (a recoat window). */
  readonly maxLag?: { readonly of: string; readonly hours: number };
  /** Which tasks may be done in one go with it; without, none. */
  readonly session?: SessionRule;
  /** What it gives off; without, nothing that the room's air must carry away. */
  readonly vapour?: TaskVapour;
  /** Where a plan that was kept has it. */
  readonly kept?: KeptTask;
}

/** Where a plan that was kept has a task: a new plan puts it there again, and later only where something is in the way. */
export interface KeptTask {
  /** Local ISO date-times at which it begins, and the session that it is done in, with setting up. */
  readonly at: string;
  readonly begun: string;
  /** Tasks that are done in one session have the same. */
  readonly session: string;
}

/** Which solvent stands for one that nobody names. */
export type Stance = "usual" | "cautious";

/** What a task puts into the air of the room, evenly from its beginning until `afterHours` after its end. */
export interface TaskVapour {
  readonly afterHours: number;
  /**
   * For each of the input's `stretches`, the part of what the fresh air may carry away in such a stretch: by the usual
   * solvent of such a product, and by the strictest that stands for one that nobody names.
   */
  readonly usual: readonly number[];
  readonly cautious: readonly number[];
}

/** What tasks have in common that can be done in one session: sand all, dust all, coat all. */
export interface SessionRule {
  /** Tasks with the same kind may share a session. */
  readonly kind: string;
  /** Hours of stirring, setting up and cleaning, once a session, 0 or more. */
  readonly fixedHours: number;
  /** What is put on; going from one to another is a change of material. */
  readonly material?: string;
  /** Hours of work, without the fixed ones, that a session may hold at most: pot life, or what the air allows. */
  readonly mostHours?: number;
  /** `together`: all tasks of the kind are done in one session; `apart`: the kind is that of one chain. */
  readonly batch?: "together" | "apart";
  /** It makes dust, which spoils coats that are wet in the same room. */
  readonly makesDust?: true;
  /** Hours after its end until what it puts on is free of dust, 0 or more. */
  readonly wetHours?: number;
}

/** Drying, day and night. */
export interface WaitItem {
  readonly kind: "wait";
  readonly id: string;
  /** Hours, 0 or more. */
  readonly hours: number;
  /** Counts from the end of this earlier item of the chain; default the previous item. */
  readonly of?: string;
}

/** To the next morning at which the shop is open, 12 h or more after the previous item's end (open day and night: 12 h); without a calendar 16 h. */
export interface OvernightItem {
  readonly kind: "overnight";
  readonly id: string;
}

export type ChainItem = HandsItem | WaitItem | OvernightItem;

/** The work on one piece's surface; items in order, each starting when the one before has ended or later. */
export interface Chain {
  readonly key: string;
  readonly items: readonly ChainItem[];
  /** Key of its job among the input's `jobs`. */
  readonly job?: string;
}

/** A job among those that one shop does. */
export interface ShopJob {
  readonly key: string;
  /** Local ISO date (that day's opening) or date-time before which nothing of it begins. */
  readonly start?: string;
  /** Local ISO date-time at which its last item should have ended. */
  readonly due?: string;
  /** Keys of jobs whose last items have ended when this one begins. */
  readonly after?: string | readonly string[];
}

export interface ScheduleInput {
  readonly calendar?: Calendar;
  /** Local ISO date (that day's opening) or date-time. */
  readonly start?: string;
  readonly chains: readonly Chain[];
  /** Hours of the stretches in which vapour adds up; see `TaskVapour`. */
  readonly stretches?: readonly number[];
  /** The jobs that the chains belong to; without, all chains are one job. */
  readonly jobs?: readonly ShopJob[];
}

export interface PlannedItem {
  readonly id: string;
  /** Key of its chain. */
  readonly chain: string;
  /** Hours after the schedule's start. */
  readonly start: number;
  readonly end: number;
  /** Local ISO date-times without offset, when the schedule has a start. */
  readonly startAt?: string;
  readonly endAt?: string;
  /** When the work itself ends, where a plan in sessions rounds `end` up to five minutes; hours after the start. */
  readonly workEnd?: number;
  /** Hours it can slip without delaying the finish of its job or of another, crew order kept. */
  readonly slack: number;
  readonly critical: boolean;
  /** Closed time inside a hands item, hours after the schedule's start. */
  readonly pauses: readonly { readonly start: number; readonly end: number }[];
  /** It is over already, by the record of its job. */
  readonly done?: true;
}

export interface Conflict {
  /** Ids of the items that cannot go together, the one that comes too late last. */
  readonly items: readonly string[];
  /** What is to be done in one session, and cannot. */
  readonly isBatch?: true;
  readonly reason: ConflictReason;
}

/** In words: `conflict-text.ts`. Times are hours. */
export type ConflictReason =
  | { readonly why: "never open" | "no date" | "crew" | "shop" | "batch" }
  /** No opening hours let the work begin within its window. */
  | { readonly why: "hours"; readonly within: number }
  /** More waits and work lie between than the window allows. */
  | { readonly why: "window"; readonly within: number; readonly needed: number }
  /** What is done together takes longer than any opening, or than its mix can be used. */
  | {
      readonly why: "opening" | "mix";
      readonly pieces: number;
      readonly taken: number;
      readonly within: number;
    };

export interface Schedule {
  /** `being planned`: its planner answers later, see `being-planned.ts`; nothing else of it is known then. */
  readonly status: "planned" | "impossible" | "being planned";
  /** In the order of the chains; empty when impossible or being planned. */
  readonly items: readonly PlannedItem[];
  readonly startAt?: string;
  readonly finishAt?: string;
  /** From the start to the end of the last item. */
  readonly elapsedHours: number;
  /** From the start to the end of the last task, rounded up to five minutes; where tasks are done in sessions. */
  readonly lastWorkHours?: number;
  readonly lastWorkAt?: string;
  /** No plan can finish in fewer hours; of sessions, no plan's last work can end in fewer. */
  readonly lowerBound: number;
  /** True when the search proved that no plan finishes earlier. */
  readonly exact: boolean;
  /** (elapsedHours − lowerBound) / lowerBound, of sessions with lastWorkHours; 0 for an empty schedule. */
  readonly gap: number;
  readonly conflicts: readonly Conflict[];
  /** In the order of their starts; where tasks are done in sessions. */
  readonly sessions?: readonly PlannedSession[];
  /** Of a plan that should be near one that was kept: it is, or it would have made a job late that need not be. */
  readonly kept?: "near" | "let go";
  /** Jobs that share the shop are planned one after the other, each fixed before the next, in the order in which they are due. */
  readonly inOrder?: true;
  /** Of a job that is planned with others of its shop. */
  readonly among?: Among;
  /** Sessions are smaller or later than hands and waits ask for, so that the room's air carries all vapour away: see `TaskVapour`. */
  readonly heldByAir?: Stance;
  /** At times more vapour is in the room than its air carries away, by the usual solvents; see `OverAir`. */
  readonly overAir?: OverAir;
  /** Dust and wet coats have to do with each other in this plan; see `Dust`. */
  readonly dust?: Dust;
}

/** Work that makes dust is kept from the hours in which coats are wet, or is not. */
export interface Dust {
  /** Where dust flies onto wet coats, in the order of time; none where the two are kept apart. */
  readonly meetings: readonly DustMeeting[];
  /**
   * By how many hours the last work of a plan that keeps them apart is later than that of one that does not; undefined
   * where no such plan was found.
   */
  readonly laterHours?: number;
  /** Of a job in the plan of its shop: the meetings are those of all its jobs, by the plan's own ids and hours. */
  readonly inShop?: DustInShop;
}

/** Which of the jobs of a plan a job is. */
export interface DustInShop {
  /** Among the plan's jobs, as `keyAt` counts them. */
  readonly place: number;
  /** Of all jobs of the plan. */
  readonly names: readonly string[];
  /** By how many hours the job starts after the plan. */
  readonly later: number;
}

/** A session that makes dust while the coat of another is wet. Hours after the schedule's start. */
export interface DustMeeting {
  readonly from: number;
  readonly to: number;
  readonly wetUntil: number;
  readonly dusty: DustWork;
  readonly wet: DustWork;
}

/** Tasks of one session. */
export interface DustWork {
  /** Their ids, in order. */
  readonly items: readonly string[];
}

/** Why a plan does not keep to the room's air. */
export interface OverAir {
  /** By how many hours the last work of a plan that does would be later; undefined where no such plan was found. */
  readonly laterHours?: number;
}

/** What sharing a shop with other jobs does to one of them. */
export interface Among {
  /** The names of all jobs in the plan, one list for all of them, and its own place among them: see `othersAmong`. */
  readonly names: readonly string[];
  readonly place: number;
  /** By how many hours its last work ends later than in a plan of it by itself, 0 or more. */
  readonly laterHours: number;
  /** What it waits for, the longest first, ten at most. */
  readonly heldBy: readonly Holdup[];
  /** See `Schedule.inOrder`. */
  readonly inOrder?: true;
}

/** Another job, and for how long a job waits for it. */
export interface Holdup {
  readonly job: string;
  /** Of `people`, their hours of work on the other job while this one waits for somebody; of `after`, hours until it has ended. */
  readonly hours: number;
  readonly why: "people" | "after";
}

/** Work of one person in one go: setting up, then the tasks one after the other. */
export interface PlannedSession {
  /** See `SessionRule`. */
  readonly kind: string;
  /** Hours after the schedule's start. */
  readonly start: number;
  readonly end: number;
  /** Hours of work in it. */
  readonly hours: number;
  /** Hours before its first task begins. */
  readonly fixed: number;
  /** 0 … crew − 1: who does it. */
  readonly person: number;
  /** Ids of its tasks, in order. */
  readonly items: readonly string[];
  /** When the whole of it began, where another job's tasks come first in it; hours after the schedule's start. */
  readonly since?: number;
}
