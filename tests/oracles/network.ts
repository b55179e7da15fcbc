/**
 * The classic critical path method on a network of activities: early and late times, floats, the critical activities.
 *
 * Activities stand on nodes, with what must be finished before them. There is no calendar and no crew here: this is the
 * schedule's check against textbooks, and what `slack` means when nothing but order counts.
 */

export interface Activity {
  readonly id: string;
  /** Any unit, 0 or more. */
  readonly duration: number;
  /** Ids of the activities that must be finished before. */
  readonly after: readonly string[];
}

export interface ActivityTimes {
  readonly id: string;
  readonly earlyStart: number;
  readonly earlyFinish: number;
  readonly lateStart: number;
  readonly lateFinish: number;
  /** How far it can slip without delaying the whole. */
  readonly totalFloat: number;
  /** How far it can slip without delaying any other activity. */
  readonly freeFloat: number;
  readonly critical: boolean;
}

export interface NetworkTimes {
  readonly duration: number;
  /** In the order given. */
  readonly activities: readonly ActivityTimes[];
  /** One longest path, from a first activity to a last. */
  readonly criticalPath: readonly string[];
}

/** Works out a network, or returns undefined when activities wait for one another in a circle or for none that is there. */
export function calculateNetwork(activities: readonly Activity[]): NetworkTimes | undefined {
  const order = inOrder(activities);
  if (order === undefined) return undefined;
  const early = new Map<string, number>();
  for (const { id, duration, after } of order) {
    early.set(id, duration + Math.max(0, ...after.map((before) => early.get(before)!)));
  }
  const total = Math.max(0, ...early.values());
  const late = new Map(order.map(({ id }) => [id, total]));
  const nextStart = new Map(order.map(({ id }) => [id, total]));
  for (const { id, duration, after } of [...order].reverse()) {
    for (const before of after) {
      late.set(before, Math.min(late.get(before)!, late.get(id)! - duration));
      nextStart.set(before, Math.min(nextStart.get(before)!, early.get(id)! - duration));
    }
  }
  const times = activities.map(({ id, duration }) => {
    const earlyFinish = early.get(id)!;
    const totalFloat = late.get(id)! - earlyFinish;
    return {
      id,
      earlyStart: earlyFinish - duration,
      earlyFinish,
      lateStart: late.get(id)! - duration,
      lateFinish: late.get(id)!,
      totalFloat,
      freeFloat: nextStart.get(id)! - earlyFinish,
      critical: totalFloat <= 0,
    };
  });
  return { duration: total, activities: times, criticalPath: longestPath(activities, early, total) };
}

/** Every activity behind those it waits for; undefined when that cannot be. */
function inOrder(activities: readonly Activity[]): readonly Activity[] | undefined {
  const order: Activity[] = [];
  const done = new Set<string>();
  for (let left = [...activities]; left.length > 0; ) {
    const ready = left.filter(({ after }) => after.every((id) => done.has(id)));
    if (ready.length === 0) return undefined;
    for (const activity of ready) {
      order.push(activity);
      done.add(activity.id);
    }
    left = left.filter((activity) => !done.has(activity.id));
  }
  return order;
}

function longestPath(
  activities: readonly Activity[],
  early: ReadonlyMap<string, number>,
  total: number,
): readonly string[] {
  const path: string[] = [];
  let at = activities.find(({ id }) => early.get(id) === total);
  while (at !== undefined) {
    path.unshift(at.id);
    const start = early.get(at.id)! - at.duration;
    const { after } = at;
    at = activities.find(({ id }) => after.includes(id) && early.get(id) === start);
  }
  return path;
}
