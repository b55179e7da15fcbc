/**
 * Everything that the tool calculates, as one table: what it is, where a reader meets it, its formula, where the formula
 * is from, the code that does it and the test that holds it to an outside value.
 *
 * `server/docs/computations.md` is written from it. A test holds that files, functions and tests named here exist, and
 * that no function of the folders that calculate is left out. Nothing is computed from this table.
 */
import { COMPUTATIONS_OF_AIR } from "./computations/air.ts";
import { COMPUTATIONS_OF_COATS } from "./computations/coats.ts";
import { type Computation, TOPICS } from "./computations/computation.ts";
import { COMPUTATIONS_OF_KNOWLEDGE } from "./computations/knowledge.ts";
import { COMPUTATIONS_OF_WORK } from "./computations/work.ts";

export { type Computation, TOPICS, type Topic } from "./computations/computation.ts";

const BY_TOPIC: readonly Computation[] = [
  ...COMPUTATIONS_OF_COATS,
  ...COMPUTATIONS_OF_AIR,
  ...COMPUTATIONS_OF_WORK,
  ...COMPUTATIONS_OF_KNOWLEDGE,
];

/** The table, by topic. */
export const COMPUTATIONS: readonly Computation[] = TOPICS.flatMap((topic) =>
  BY_TOPIC.filter((row) => row.topic === topic),
);
