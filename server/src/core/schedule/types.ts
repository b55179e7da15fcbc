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

/** To the first opening 12 h or more after the previous item's end (open day and night: 12 h); without a calendar 16 h. */
export interface OvernightItem {
  readonly kind: "overnight";
  readonly id: string;
}

export type ChainItem = HandsItem | WaitItem | OvernightItem;

/** The work on one piece's surface; items in order, each starting when the one before has ended or later. */
export interface Chain {
  readonly key: string;
  readonly items: readonly ChainItem[];
}

export interface ScheduleInput {
  readonly calendar?: Calendar;
  /** Local ISO date (that day's opening) or date-time. */
  readonly start?: string;
  readonly chains: readonly Chain[];
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
  /** Hours it can slip without delaying the finish of this plan, crew order kept. */
  readonly slack: number;
  readonly critical: boolean;
  /** Closed time inside a hands item, hours after the schedule's start. */
  readonly pauses: readonly { readonly start: number; readonly end: number }[];
}

export interface Conflict {
  /** Ids of the items that cannot go together, the one that comes too late last. */
  readonly items: readonly string[];
  /** Why, as a clause: without the capital and the full stop of a sentence. */
  readonly reason: string;
}

export interface Schedule {
  /** `being planned`: its planner answers later, see `being-planned.ts`; nothing else of it is known then. */
  readonly status: "planned" | "impossible" | "being planned";
  /** In the order of the chains; empty when impossible or being planned. */
  readonly items: readonly PlannedItem[];
  readonly startAt?: string;
  readonly finishAt?: string;
  /** From the start to the end of the last item. */
  readonly elapsedHours: number;
  /** No plan can finish in fewer hours. */
  readonly lowerBound: number;
  /** True when the search proved that no plan finishes earlier. */
  readonly exact: boolean;
  /** (elapsedHours − lowerBound) / lowerBound; 0 for an empty schedule. */
  readonly gap: number;
  readonly conflicts: readonly Conflict[];
}
