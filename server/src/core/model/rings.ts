/**
 * Rings of a graph: nodes that all reach each other (R. Tarjan, Depth-first search and linear graph algorithms, SIAM J.
 * Comput. 1 (1972), no. 2), in time that grows with its nodes and edges alone.
 */

/** Nodes that all reach each other; mostly one node that does not reach itself. */
export interface Ring {
  /** Counts in the order in which rings are closed: what a ring leads to has a smaller number. */
  readonly number: number;
  readonly nodes: readonly string[];
  /** Nodes of other rings that nodes of this one lead to, each ring once. */
  readonly exits: readonly string[];
}

/** A node on the way down, with the uses that are still to be followed. */
interface Visit {
  readonly node: string;
  readonly targets: readonly string[];
  next: number;
  /** The earliest node on the way that is reached from here. */
  low: number;
  readonly index: number;
}

/** The ring of a node, worked out as far as it is asked about. Without recursion, since a chain of nodes may be longer than the stack is deep. */
export function createRings(targets: (node: string) => readonly string[]): (node: string) => Ring {
  const rings = new Map<string, Ring>();
  let closed = 0;

  const search = (root: string): void => {
    const index = new Map<string, number>();
    /** Nodes whose ring is not closed yet. */
    const open: string[] = [];
    const way: Visit[] = [];
    const enter = (node: string): void => {
      way.push({ node, targets: targets(node), next: 0, low: index.size, index: index.size });
      index.set(node, index.size);
      open.push(node);
    };
    const close = (visit: Visit): void => {
      const nodes = open.splice(open.lastIndexOf(visit.node));
      const inRing = new Set(nodes);
      const exits = new Map<Ring, string>();
      for (const target of nodes.flatMap(targets)) {
        const ring = inRing.has(target) ? undefined : rings.get(target);
        if (ring !== undefined && !exits.has(ring)) exits.set(ring, target);
      }
      const ring: Ring = { number: closed++, nodes, exits: [...exits.values()] };
      for (const node of nodes) rings.set(node, ring);
    };
    enter(root);
    for (let visit = way.at(-1); visit !== undefined; visit = way.at(-1)) {
      const target = visit.targets[visit.next++];
      if (target === undefined) {
        if (visit.low === visit.index) close(visit);
        way.pop();
        const above = way.at(-1);
        if (above !== undefined) above.low = Math.min(above.low, visit.low);
      } else if (!rings.has(target)) {
        const before = index.get(target);
        if (before === undefined) enter(target);
        else visit.low = Math.min(visit.low, before);
      }
    }
  };

  return (node) => {
    if (!rings.has(node)) search(node);
    return rings.get(node)!;
  };
}
