/** The jobs of a shop as one input for the planner; every job's chains and items carry its place among them. */
import type { Chain, ChainItem, Schedule, ScheduleInput } from "../types.ts";

/** A job that may share its shop, with the plan of it by itself. */
export interface ShopMember {
  /** Unique among the jobs of the shop. */
  readonly key: string;
  /** As people call it. */
  readonly name: string;
  /** Of the job by itself. */
  readonly input: ScheduleInput;
  /** May still be being planned. */
  readonly alone: Schedule;
  /** Local ISO date-time at which its last item should have ended. */
  readonly due?: string;
  /** Keys of jobs that end before it begins. */
  readonly after: readonly string[];
}

/** Members that share people's hours, at least one; each by itself is planned in sessions. */
export function sharedInput(members: readonly ShopMember[]): ScheduleInput {
  const first = members[0]!;
  const starts = members.map(({ alone }) => alone.startAt!).toSorted();
  const stretches = members.find(({ input }) => input.stretches !== undefined)?.input.stretches;
  // Short, because it stands in every id.
  const places = new Map(members.map(({ key }, place) => [key, keyAt(place)]));
  return {
    ...(first.input.calendar ? { calendar: first.input.calendar } : {}),
    start: starts[0]!,
    chains: members.flatMap(({ input }, place) =>
      input.chains.map((chain) => chainOfJob(chain, keyAt(place))),
    ),
    ...(stretches ? { stretches } : {}),
    jobs: members.map(({ alone, due, after }, place) => {
      const before = after.flatMap((each) => places.get(each) ?? []);
      return {
        key: keyAt(place),
        start: alone.startAt!,
        ...(due === undefined ? {} : { due }),
        ...(before.length > 0 ? { after: before } : {}),
      };
    }),
  };
}

/** The key of a job in the input, by its place among the members. */
export const keyAt = (place: number): string => `j${place}`;

/** The place of such a key. */
export const placeOf = (key: string): number => Number(key.slice(1));

const inJob = (key: string, id: string): string => `${key}/${id}`;

/** The key of the job in front of an id or the key of a chain, and what stands behind it. */
export function splitKey(id: string): readonly [key: string, own: string] {
  const at = id.indexOf("/");
  return [id.slice(0, at), id.slice(at + 1)];
}

/** The same chain as long as its job keeps its place, which is nearly always so after an edit. */
function chainOfJob(chain: Chain, job: string): Chain {
  const before = IN_JOB.get(chain);
  if (before?.job === job) return before;
  const made = chainInJob(chain, job);
  IN_JOB.set(chain, made);
  return made;
}

const IN_JOB = new WeakMap<Chain, Chain>();

const chainInJob = ({ key, items }: Chain, job: string): Chain => ({
  key: inJob(job, key),
  job,
  items: items.map((item): ChainItem => {
    const id = inJob(job, item.id);
    if (item.kind === "wait")
      return { ...item, id, ...(item.of === undefined ? {} : { of: inJob(job, item.of) }) };
    if (item.kind !== "hands") return { ...item, id };
    const { maxLag, session } = item;
    return {
      ...item,
      id,
      ...(maxLag === undefined ? {} : { maxLag: { ...maxLag, of: inJob(job, maxLag.of) } }),
      // What one job does together or apart is no other's matter.
      ...(session?.batch === undefined ? {} : { session: { ...session, kind: inJob(job, session.kind) } }),
    };
  }),
});
